"""The sentences of a procedure and its lab by path: a translation and a card name the same ones."""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from generator.model.lab import Lab
from generator.model.located import MARKS, WHERE, Located, Text
from generator.model.procedure import Procedure
from generator.model.side import LanguageFile
from generator.model.step import Step
from generator.problems import Location

_WHOLE = ("title", "stop_rule", "not_for")
_STEP = (
    "say", "card", "look", "check", "hold.until", "when_it_sounds", "fail.say", "watch.check",
    "watch.fail.say", "why", "ask.question", "ask.answer", "picture.alt", "since.because", "pause.keep",
)  # fmt: skip
_NOUNS = {
    "places": ("title", "look", "not_right.say", "extraction", "book"),
    "timers": ("title", "when_it_sounds"),
    "roles": ("title", "reach"),
    "signoffs": ("title",),
    "ppe": ("title", "change"),
    "racks": ("title",),
    "residues": ("title",),
    "mixtures": ("title", "renew", "if_contaminated"),
    "substances": ("title",),
    "hazard_words": ("title",),
    "waste": ("title", "never"),
    "glossary": ("term", "means"),
}
_CARD = ("title", "stop_rule")
_HELP = ("emergency", "eyewash", "shower", "spill_kit", "first_aid", "extinguisher")
_EVENT = ("when", "first", "then")
_SEEN = ("symptom", "do_first")
# A translator may write the sentence alone where the field holds nothing else to translate.
_SHORT = {"hold": "hold.until", "fail": "fail.say", "not_right": "not_right.say"}


def sentences_of(procedure: Procedure) -> dict[str, Text]:
    """Every sentence of a procedure by path: `title`, `stages.etch.title`, `steps.etch-in.hold.until`."""
    return dict(_of_procedure(procedure))


def _of_procedure(it: Procedure) -> Iterator[tuple[str, Text]]:
    yield from _fields(it, "", _WHOLE)
    yield from _numbered("tell_us_first", it.tell_us_first)
    for stage in it.stages:
        yield from _fields(stage, f"stages.{stage.stage}.", ("title",))
        for step in stage.steps:
            yield from _of_step(step)
    for index, seen in enumerate(it.you_may_see):
        yield from _fields(seen, f"you_may_see.{index}.", _SEEN)
        yield from _numbered(f"you_may_see.{index}.causes", seen.causes)
    for card in it.cards:
        yield from _fields(card, f"cards.{card.id}.", _CARD)


def _of_step(step: Step) -> Iterator[tuple[str, Text]]:
    yield from _fields(step, f"steps.{step.id}.", _STEP)
    if step.fail and step.fail.mend:
        yield from _of_step(step.fail.mend)


def lab_sentences_of(lab: Lab) -> dict[str, Text]:
    """Every sentence of a lab that a page or a card shows, by path: `lab.places.etch.title`."""
    return dict(_of_lab(lab))


def _of_lab(lab: Lab) -> Iterator[tuple[str, Text]]:
    for name, fields in _NOUNS.items():
        for id, noun in getattr(lab, name).items():
            yield from _fields(noun, f"lab.{name}.{id}.", fields)
    yield from _fields(lab.lab, "lab.", ("unattended_notice",))
    yield from _fields(lab.lab.help, "lab.help.", _HELP)
    for index, event in enumerate(lab.emergencies):
        yield from _fields(event, f"lab.emergencies.{index}.", _EVENT)


def _fields(noun: Located, path: str, fields: tuple[str, ...]) -> Iterator[tuple[str, Text]]:
    for field in fields:
        text = sentence_at(noun, field)
        if text is not None:
            yield path + field, text


def sentence_at(noun: Located | None, field: str) -> Text | None:
    """The sentence in a field of a noun, or in a field of that field (`hold.until`); None without one."""
    value: Any = noun
    for part in _parts(field):
        value = getattr(value, part, None)
    return value if isinstance(value, Text) else None


@cache
def _parts(field: str) -> tuple[str, ...]:
    return tuple(field.split("."))


def _numbered(path: str, texts: tuple[Text, ...]) -> Iterator[tuple[str, Text]]:
    return ((f"{path}.{index}", text) for index, text in enumerate(texts))


def translated(file: LanguageFile) -> dict[str, Text]:
    """Every sentence of a language file by the same paths as in the base language."""
    return {path: text for path, text, _ in _leaves(file) if isinstance(text, Text) and is_sentence(path)}


def values_in(file: LanguageFile) -> tuple[tuple[str, Location], ...]:
    """What stands in a language file and is no sentence, by path."""
    return tuple(
        (path, where)
        for path, text, where in _leaves(file)
        if not (isinstance(text, Text) and is_sentence(path))
    )


def is_sentence(path: str) -> bool:
    """Whether a path names a field that holds a sentence, whatever the id in it."""
    head, _, rest = path.partition(".")
    _, _, field = rest.partition(".")
    if head == "lab":
        return _is_lab_sentence(rest)
    if head == "tell_us_first":
        return rest.isdigit()
    if head == "you_may_see":
        return field in _SEEN or re.fullmatch(r"causes\.\d+", field) is not None
    allowed = {"stages": ("title",), "cards": _CARD, "steps": _STEP}
    return field in allowed.get(head, ()) if rest else path in _WHOLE


def _is_lab_sentence(path: str) -> bool:
    noun, _, rest = path.partition(".")
    if noun == "help":
        return rest in _HELP
    _, _, field = rest.partition(".")
    return field in (_EVENT if noun == "emergencies" else _NOUNS.get(noun, ())) or path == "unattended_notice"


def _leaves(file: LanguageFile) -> Iterator[tuple[str, object, Location]]:
    for field in _WHOLE:
        value = getattr(file, field)
        if value is not None:
            yield field, value, file.spot(field)
    for field in ("tell_us_first", "stages", "steps", "cards", "you_may_see", "lab"):
        yield from _below(field, getattr(file, field), file.spot(field))


def _below(path: str, value: object, where: Location) -> Iterator[tuple[str, object, Location]]:
    if isinstance(value, Mapping):
        marks = value.get(MARKS, {})
        for key, inner in value.items():
            if key not in (WHERE, MARKS):
                yield from _below(f"{path}.{key}", inner, marks.get(key, where))
    elif isinstance(value, list | tuple):
        for index, inner in enumerate(value):
            yield from _below(f"{path}.{index}", inner, getattr(inner, "where", where))
    else:
        yield _whole(path), value, getattr(value, "where", where)


def _whole(path: str) -> str:
    """A path with its last field written out, where the translator wrote the sentence alone."""
    start, _, last = path.rpartition(".")
    if last in _SHORT:
        return f"{start}.{_SHORT[last]}"
    return f"{path}.title" if start in ("stages", "cards") else path
