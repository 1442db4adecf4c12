"""What a sentence tells the hands to change: lid, part, current, wear, tray."""

import re
from collections.abc import Iterator
from functools import lru_cache

from generator.checks.evidence.english import clauses
from generator.model import Step
from generator.study import Study

_LID = re.compile(
    r"\b(?:lids?|cover)\b.*\b(?:on|off)\b|\b(?:open|close|shut|remove|replace|lift|put|take)\b.*\b(?:lids?|cover)\b"
)
_TRAY = re.compile(
    r"\b(?:empty|rinse|drain|tip out|pour out|clear) (?:out )?the (?:\w+ )?tray\b|\btray empty\b"
)
_TRAY_OUT = re.compile(r"\btray out\b")
_SUPPLY = r"(?:current|rectifier|power supply|supply|elements?|heater|power)"
_MORE_THAN_ONE = re.compile(r"[.!?;,]\s+\S| then ")
_SUPPLIES = re.compile(rf"\b{_SUPPLY}\b")
_ON = re.compile(
    rf"\b{_SUPPLY}\b.*\b(?:up|on)\b|\b(?:switch|turn) on\b.*\b{_SUPPLY}\b|"
    rf"\b(?:bring up|raise|increase|start)\b.*\b{_SUPPLY}\b"
)
_OFF = re.compile(
    rf"\b{_SUPPLY}\b.*\b(?:off|zero|down)\b|\b(?:switch|turn|bring) (?:off|down)\b.*\b{_SUPPLY}\b"
)
_WORN = ("gloves?|gauntlets?|apron|goggles|shield|visor|coat|mask|respirator|glasses|boots|overshoes|"
         "ear defenders|hood|sleeves")  # fmt: skip
_DRESS = re.compile(r"(?:put|pull) on\b|take off\b")
_WEAR = re.compile(r"\b(?:put|take|pull|slip|peel|on|off|down|up|remove|change|bin|don|doff|swap)\b")
_MOVES = re.compile(
    r"(?:slowly |gently |carefully |then )*(?:lower|lift|hang|slide|raise|insert|immerse|dip|withdraw|"
    r"mount|unhook|remove)\b"
)
_PLACES = re.compile(
    r"(?:slowly |gently |carefully |then )*(?:put|take|move|pull|place|set|load|unload|transfer|bring)\b"
    r".*\b(?:in|into|on|onto|out|off|from|to|down|up)\b"
)


def changes(study: Study, step: Step, text: str, worn: str) -> Iterator[str]:
    """The things that a sentence changes, each once, in its order; none where it has only one clause.

    A lid counts where the step's place has one (the door of an oven is opened by the hand that puts in), and
    "current off" counts only where there may be current: elsewhere it is a look, not an action.
    """
    part = study.procedure.part
    name = str(part.name).lower() if part else "part"
    things = _things(text, worn, name, _has_tray(study, step))
    yield from dict.fromkeys(thing.removesuffix(" off") for thing in things if _there(study, step, thing))


@lru_cache(maxsize=4096)
def _things(text: str, worn: str, part: str, catches: bool) -> tuple[str, ...]:
    """What each clause changes by its words, where there are several clauses."""
    several = clauses(text) if _MORE_THAN_ONE.search(text) else ()
    return tuple(thing for clause in several if (thing := _spoken_of(clause, worn, part, catches)))


def _spoken_of(clause: str, worn: str, part: str, catches: bool) -> str:
    """What one clause changes by its words; the first of lid, tray, current, wear, part that fits.

    `catches` says whether there is a tray that catches drips.
    """
    if _LID.search(clause):
        return "the lid"
    # The tray that comes out of an oven is what the part lies on: only a catch tray is a thing of its own.
    if _TRAY.search(clause) or (catches and _TRAY_OUT.search(clause)):
        return "the tray"
    if _SUPPLIES.search(clause):
        return "the current" if _ON.search(clause) else "the current off" if _OFF.search(clause) else ""
    if _DRESS.match(clause):
        return "what is worn"
    if re.search(worn, clause):
        return "what is worn" if _WEAR.search(clause) else ""
    return "the part" if _moves_part(part, clause) else ""


def _there(study: Study, step: Step, thing: str) -> bool:
    """Whether the step's place has the lid, and whether there may be a current to switch off."""
    if thing == "the lid":
        place = study.place(step.at)
        return place is not None and place.cover == "lid"
    return thing != "the current off" or _may_be_live(study, step)


def _has_tray(study: Study, step: Step) -> bool:
    place = study.place(step.at)
    return place is not None and place.tray


def worn_words(study: Study) -> str:
    """A pattern of what is worn in this lab, by the last word of each title, and the usual words."""
    last = {str(piece.title).lower().split()[-1] for piece in study.lab.ppe.values()}
    words = "|".join((_WORN, *(re.escape(word) for word in sorted(last))))
    return rf"\b(?:{words})\b"


def _moves_part(part: str, clause: str) -> bool:
    name = re.escape(part)
    verbless = re.match(rf"(?:the )?(?:{name}|part|rack|it) (?:in|into|on|onto|out|off|to)\b", clause)
    return bool(verbless or _MOVES.match(clause) or _PLACES.match(clause))


def _may_be_live(study: Study, step: Step) -> bool:
    """Whether the walk comes to this step with current or elements on, on some path."""
    return any(
        any(True for _ in moment.before.names("live"))
        for moment in study.walk.moments
        if moment.step.id == step.id
    )
