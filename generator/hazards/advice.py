"""All that the tables advise for a set of statements, by what a reader looks for; open places left out."""

from dataclasses import dataclass, replace

from generator.hazards.edition import Edition
from generator.hazards.precautionary import Precaution, precautions
from generator.hazards.stronger import shown_codes

# By the first part of a code: 30x and its follow-ups name the way in (UN GHS Annex 3, section 2: matrix).
_TOPICS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("eyes", ("P305", "P337", "P338", "P351")),
    ("skin", ("P302", "P303", "P306", "P332", "P333", "P334", "P335", "P336", "P352", "P353", "P354",
              "P360", "P361", "P362", "P363", "P364")),
    ("lungs", ("P304", "P340", "P342")),
    ("swallowed", ("P301", "P330", "P331")),
    ("call", ("P308", "P31", "P32")),
    ("fire", ("P37", "P38")),
    ("spill", ("P39",)),
    ("worn", ("P28",)),
    ("handling", ("P2",)),
    ("storage", ("P4",)),
    ("waste", ("P5",)),
)  # fmt: skip
_OPEN = ("...", "…", "[")
# A list that the supplier may lengthen ("doctor/...") is whole without its open end.
OPEN_END = "/..."
_SAYS_MORE = {
    "P260": ("P261",),
    "P264+P265": ("P264",),
    "P305+P354+P338": ("P305+P351+P338",),
    "P302+P361+P354": ("P302+P352",),
    "P303+P361+P353": ("P302+P352",),
    "P403+P233": ("P403", "P233"),
    "P403+P235": ("P403",),
}


@dataclass(frozen=True, slots=True)
class Advice:
    """Statements by topic; `open_places` are codes with a place that only the supplier fills."""

    edition: Edition
    topics: dict[str, tuple[Precaution, ...]]
    open_places: tuple[str, ...]
    not_held: tuple[str, ...]

    def about(self, topic: str) -> tuple[Precaution, ...]:
        """The statements of one topic: eyes, skin, lungs, swallowed, call, fire, spill, worn, handling..."""
        return self.topics.get(topic, ())


def advice(codes: tuple[str, ...], edition: Edition) -> Advice:
    """Everything of one edition, without what a stronger one of the same set says better."""
    found = precautions(shown_codes(codes), edition, "all")
    said = {weak for strong in found.chosen for weak in _SAYS_MORE.get(strong.code, ())}
    kept = tuple(
        replace(one, bench=one.bench.replace(OPEN_END, "")) for one in found.chosen if one.code not in said
    )
    whole = tuple(one for one in kept if not any(mark in one.bench for mark in _OPEN))
    topics: dict[str, list[Precaution]] = {}
    for one in whole:
        topics.setdefault(_topic(one.code), []).append(one)
    return Advice(
        edition,
        {name: tuple(rows) for name, rows in topics.items()},
        tuple(one.code for one in kept if one not in whole),
        found.not_held,
    )


def _topic(code: str) -> str:
    return next((name for name, heads in _TOPICS if code.startswith(heads)), "handling")
