"""The group of each change, which decides who must approve it: a tag on every field of the model."""

import re
from collections import Counter
from collections.abc import Mapping
from math import isclose
from typing import Literal

from generator.units import UnitsError, read_window

Group = Literal["wording", "time", "limit", "ppe", "chemical", "order", "new hazard"]
ORDER: tuple[Group, ...] = ("new hazard", "chemical", "ppe", "limit", "time", "order", "wording")

_STEP: Mapping[str, str] = {
    "wording": "say card look check why ask picture when_it_sounds fail.say hold.until since.because "
    "pause.keep watch.check watch.fail.say id",
    "time": "for takes since.time pause.time watch.every power.ramp alarm",
    "limit": "record watch.record fail.at_most watch.fail.at_most repeat rock set power given formulas",
    "ppe": "put_on take_off fresh wash_hands",
    "chemical": "use waste",
    "order": "do at into stay fail hold since pause watch rack who",
}
_TABLE: Mapping[str, Mapping[str, str]] = {
    "step": _STEP,
    "stage": {"wording": "title stage", "limit": "repeat", "order": "steps"},
    "procedure": {
        "wording": "title tell_us_first stop_rule not_for part.name written_by",
        "time": "review_every",
        "limit": "limits job",
        "chemical": "part",
        "order": "who also_present approver stages",
    },
    "card": {
        "wording": "id title size turned read_from language show stop_rule there",
        "order": "stages post_at",
    },
    "symptom": {"wording": "symptom causes do_first at"},
    "paper": {"wording": "paper differs because", "limit": "decided_by decided"},
    "room": {
        "wording": "name room title language help ghs paper unattended_notice",
        "time": "unattended_at_most",
        "ppe": "base_wear",
        "order": "working_alone",
    },
    "roles": {"wording": "title reach", "order": "backup needs"},
    "signoffs": {"wording": "title", "time": "valid", "order": "given_by"},
    "ppe": {"wording": "title symbol", "ppe": "protects against over change used_again"},
    "hazard_words": {"wording": "title symbol", "ppe": "protect"},
    "substances": {
        "wording": "title sheet",
        "chemical": "cas mixture strength density hazards not_classified groups "
        "chart_groups needs_extraction",
    },
    "mixtures": {
        "wording": "title if_contaminated cost_to_replace",
        "time": "use_within",
        "limit": "renew",
        "ppe": "wear",
        "chemical": "made_of volume density ph viscosity hazards not_classified leftovers",
    },
    "places": {
        "wording": "title look not_right.say extraction book",
        "time": "time timer",
        "limit": "temperature power room_for number shows",
        "ppe": "wear wear_when fresh_gloves",
        "chemical": "holds allows clears leaves hazards water drains_to tray vented",
        "order": "cover arrive makes not_right keeper shared",
    },
    "racks": {"wording": "title", "limit": "conducts stands"},
    "timers": {"wording": "title when_it_sounds", "time": "at_most"},
    "residues": {"wording": "title"},
    "waste": {"wording": "title", "chemical": "takes cap full_at never to_drain", "order": "pickup"},
    "calculators": {"limit": "defaults usual never_above"},
    "keep_apart": {"chemical": "because small"},
    "language": {
        "wording": "language translated_by checked_against title stop_rule not_for "
        "tell_us_first stages steps cards you_may_see lab"
    },
    "class": {"wording": "class_of title because accept", "limit": "job", "order": "approver cards"},
    "picture": {"wording": "content"},
}
GROUP_OF: Mapping[str, Mapping[str, Group]] = {
    noun: {field: group for group, fields in rows.items() for field in fields.split()}  # type: ignore[misc]
    for noun, rows in _TABLE.items()
}
# The group of a noun that a procedure newly uses, or uses no more, where it brings no hazard.
NOUN_GROUP: Mapping[str, Group] = {
    "substances": "chemical",
    "mixtures": "chemical",
    "residues": "chemical",
    "waste": "chemical",
    "keep_apart": "chemical",
    "ppe": "ppe",
    "hazard_words": "chemical",
    "timers": "time",
    "calculators": "limit",
    "language": "wording",
    "symptom": "wording",
    "paper": "wording",
    "picture": "wording",
    "card": "order",
    "sum": "limit",
}
_NEVER_DECIDE = ("title", "why", "ask", "picture", "book", "cost_to_replace", "because", "causes", "symptom")
_DECIDING = re.compile(
    r"[^\s]*\d[^\s]*|\b(?:not|never|no|none|nothing|nobody|without|unless|only|except|wet|dry|first|"
    r"two|three|four|five|six|seven|eight|nine|ten|twelve|once|twice|half|double)\b",
    re.IGNORECASE,
)
# One word of a pair put for the other turns the sense; that one of them goes or comes need not.
_OPPOSITES = (
    ("on", "off"), ("left", "right"), ("before", "after"), ("above", "below"), ("over", "under"),
    ("open", "shut"), ("open", "closed"), ("hot", "cold"), ("warm", "cool"), ("up", "down"), ("more", "less"),
    ("more", "fewer"), ("top", "bottom"), ("in", "out"), ("always", "sometimes"), ("slowly", "quickly"),
    ("must", "may"),
)  # fmt: skip


def group_of(noun: str, field: str, old: str, new: str) -> Group:
    """The group of one changed fact.

    The same quantity in another spelling is wording. A sentence that gains or loses a number or a word that
    turns its sense (not, never, only, dry, first, two ...), or has a word's opposite put for it (on, off), is
    more than wording: a limit.
    """
    group = _tagged(noun, field)
    if group == "wording":
        return "limit" if _decides(noun, field, old, new) else "wording"
    return "wording" if _same_value(old, new) else group


def _tagged(noun: str, field: str) -> Group:
    if noun == "sum":
        return "time" if field.endswith(".for") else "limit"
    if noun == "class" and field.startswith("steps."):
        return _longest("step", field.split(".", 2)[-1])
    return _longest(noun, field)


def _longest(noun: str, field: str) -> Group:
    """The tag of the longest part of a path that has one; a path that has none is the approver's."""
    rows, path = GROUP_OF.get(noun, {}), field
    while path:
        if path in rows:
            return rows[path]
        path = path.rpartition(".")[0]
    return "order"


def _same_value(old: str, new: str) -> bool:
    """Whether two texts are one quantity or one window, in whatever unit."""
    try:
        first, second = read_window(old), read_window(new)
    except UnitsError:
        return False
    pairs = ((first.low, second.low), (first.high, second.high))
    return first.dimension == second.dimension and all(
        one is other or (one is not None and other is not None and isclose(one.si, other.si))
        for one, other in pairs
    )


def _decides(noun: str, field: str, old: str, new: str) -> bool:
    parts = field.split(".")
    sentence = noun in ("step", "places", "timers", "procedure", "mixtures", "symptom", "language")
    sentence = sentence or (noun == "card" and parts[-1] == "stop_rule")
    if not sentence or any(part in _NEVER_DECIDE for part in parts) or not old or not new:
        return False
    return _deciding(old) != _deciding(new) or _is_turned(old, new)


def _deciding(text: str) -> list[str]:
    return sorted(word.lower().strip(".,;:()") for word in _DECIDING.findall(text))


def _is_turned(old: str, new: str) -> bool:
    before, after = (Counter(re.findall(r"[a-z]+", text.lower())) for text in (old, new))
    went, came = before - after, after - before
    return any(
        (one in went and other in came) or (other in went and one in came) for one, other in _OPPOSITES
    )
