"""What a sentence tells the hands to change: lid, part, current, wear, tray."""

import re
from collections.abc import Iterator

from generator.checks.words.english import clauses
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


def changes(study: Study, step: Step, text: str, worn: re.Pattern[str]) -> Iterator[str]:
    """The things that a sentence changes, each once, in its order; none where it has only one clause.

    A lid counts where the step's place has one (the door of an oven is opened by the hand that puts in), and
    "current off" counts only where there may be current: elsewhere it is a look, not an action.
    """
    seen: dict[str, None] = {}
    if not _MORE_THAN_ONE.search(text):
        return
    for clause in clauses(text):
        thing = _changed(study, step, clause, worn)
        if thing:
            seen[thing] = None
    yield from seen


def _changed(study: Study, step: Step, clause: str, worn: re.Pattern[str]) -> str:
    """What one clause changes; the first of lid, tray, current, wear, part that fits."""
    if _LID.search(clause):
        place = study.place(step.at)
        return "the lid" if place and place.cover == "lid" else ""
    # The tray that comes out of an oven is what the part lies on: only a catch tray is a thing of its own.
    if _TRAY.search(clause) or (_TRAY_OUT.search(clause) and _has_tray(study, step)):
        return "the tray"
    if _ON.search(clause) or (_OFF.search(clause) and _may_be_live(study, step)):
        return "the current"
    if _SUPPLIES.search(clause):
        return ""
    if _DRESS.match(clause):
        return "what is worn"
    if worn.search(clause):
        return "what is worn" if _WEAR.search(clause) else ""
    return "the part" if _moves_part(study, clause) else ""


def _has_tray(study: Study, step: Step) -> bool:
    place = study.place(step.at)
    return place is not None and place.tray


def worn_words(study: Study) -> re.Pattern[str]:
    """What is worn in this lab, by the last word of each title, and the usual words."""
    last = {str(piece.title).lower().split()[-1] for piece in study.lab.ppe.values()}
    words = "|".join((_WORN, *(re.escape(word) for word in sorted(last))))
    return re.compile(rf"\b(?:{words})\b")


def _moves_part(study: Study, clause: str) -> bool:
    part = study.procedure.part
    name = re.escape(str(part.name).lower()) if part else "part"
    verbless = re.match(rf"(?:the )?(?:{name}|part|rack|it) (?:in|into|on|onto|out|off|to)\b", clause)
    return bool(verbless or _MOVES.match(clause) or _PLACES.match(clause))


def _may_be_live(study: Study, step: Step) -> bool:
    """Whether the walk comes to this step with current or elements on, on some path."""
    return any(
        any(True for _ in moment.before.names("live"))
        for moment in study.walk.moments
        if moment.step.id == step.id
    )
