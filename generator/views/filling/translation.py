"""A procedure's words in one language: the translation where there is one, else the base language."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from generator.model import Card, LanguageFile, Step
from generator.model.translation import translated
from generator.study import Study


@dataclass(frozen=True)
class Words:
    """Look-ups of an author's words; nothing is ever invented, what lacks stands in the base language."""

    study: Study
    file: LanguageFile | None = None

    @property
    def language(self) -> str:
        """The BCP 47 tag of these words."""
        return str(self.file.language if self.file else self.study.lab.lab.language)

    @cached_property
    def _there(self) -> Mapping[str, str]:
        """Every translated sentence by its path."""
        return {path: str(text) for path, text in translated(self.file).items()} if self.file else {}

    def _of(self, path: str, base: str | None) -> str:
        return self._there.get(path) or str(base or "")

    def step(self, step: Step, field: str, base: str | None) -> str:
        """A step's sentence by its field: `say`, `check`, `hold.until`, `fail.say`, `watch.check`."""
        return self._of(f"steps.{step.id}.{field}", base)

    def sentence(self, step: Step) -> str:
        """What a card says for a step: its shorter words, else its sentence; a translation goes first."""
        translation = self.step(step, "card", None) or self.step(step, "say", None)
        return translation or str(step.card or step.say)

    def lab(self, noun: str, id: str, field: str, base: str | None) -> str:
        """A field of a noun of the lab (`places`, `roles`, `timers`, `ppe`, `waste`) by its id."""
        return self._of(f"lab.{noun}.{id}.{field}", base)

    def help(self, field: str, base: str | None) -> str:
        """Where help is: `emergency`, `eyewash`, `shower`, `first_aid`."""
        return self._of(f"lab.help.{field}", base)

    def lab_field(self, field: str, base: str | None) -> str:
        """A sentence of the room itself: `unattended_notice`."""
        return self._of(f"lab.{field}", base)

    def whole(self, field: str, base: str | None) -> str:
        """A sentence of the whole procedure: `title`, `stop_rule`."""
        return self._of(field, base)

    def stop_rule(self, card: Card) -> str:
        """When to stop at a card: its own rule, else that of the procedure."""
        own = card.stop_rule
        return self._of(f"cards.{card.id}.stop_rule", own) if own else self.whole(
            "stop_rule", self.study.procedure.stop_rule
        )

    def stage(self, id: str, base: str) -> str:
        """The title of a stage."""
        return self._of(f"stages.{id}.title", base)

    def card(self, id: str, base: str) -> str:
        """The title of a card."""
        return self._of(f"cards.{id}.title", base)

    def place(self, id: str | None) -> str:
        """The title of a place, empty without one."""
        place = self.study.place(id)
        return self.lab("places", str(id), "title", place.title) if place else ""

    def role(self, id: str | None) -> str:
        """The title of a role, empty without one."""
        role = self.study.role(id)
        return self.lab("roles", str(id), "title", role.title) if role else ""

    def reached(self, id: str) -> str:
        """A role and where it is reached: "Duty technician: room B12 or extension 417"."""
        role = self.study.role(id)
        reach = self.lab("roles", id, "reach", role.reach) if role else ""
        return f"{self.role(id)}: {reach}" if reach else self.role(id)
