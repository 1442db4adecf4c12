"""The lab as the walk needs it: look-ups by step, without judging."""

from dataclasses import dataclass

from generator.model import Lab, Mixture, Place, Procedure, Step
from generator.sums import Sums

_TOUCHING = frozenset(
    (
        "open",
        "close",
        "put-in",
        "take-out",
        "rinse",
        "dry",
        "clean",
        "empty",
        "mount",
        "set",
        "switch-off",
        "claim",
        "save",
        "release",
        "check",
        "weigh",
        "add",
        "mix",
        "pour",
        "act",
    )
)


@dataclass(frozen=True)
class Ground:
    """Lab, procedure and sums of one walk."""

    lab: Lab
    procedure: Procedure
    sums: Sums

    def place(self, step: Step) -> Place | None:
        """The place of a step."""
        return self.lab.places.get(step.at) if step.at else None

    def mixture(self, place: Place | None) -> Mixture | None:
        """What a place holds."""
        return self.lab.mixtures.get(place.holds) if place and place.holds else None

    def touches(self, step: Step) -> bool:
        """Whether the hands touch the place of the step."""
        return step.at is not None and step.do in _TOUCHING

    def on_hands(self, piece: str) -> bool:
        """Whether a piece of PPE is worn on the hands."""
        worn = self.lab.ppe.get(piece)  # type: ignore[call-overload]
        return bool(worn and worn.protects == "hands")

    def hot_when_used(self, place: Place | None) -> bool:
        """Whether a place is always hot: its hazard word says hot surface, and there is no `wear_when`."""
        return bool(place and "hot-surface" in place.hazards and place.wear_when is None)

    def hands_on(self, step: Step) -> float:
        """Seconds of hands-on work: what the step takes."""
        return step.takes.si if step.takes else 0.0

    def waiting(self, step: Step) -> float:
        """Seconds that the work itself needs: the step's `for`, worked out where a formula gives it."""
        found = self.sums.time_of(step)
        return found.si if found else 0.0
