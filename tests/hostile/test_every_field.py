"""Every field of every noun with hostile words: refused where it stands, or shown as what was written."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, get_args, get_origin

import pytest

from generator.model import ClassFile, Lab, LanguageFile, Located, Procedure
from generator.model.reader import Reader
from generator.model.scalars import text
from generator.reading import read_lab
from tests.hostile.doors import DAY
from tests.hostile.spoilt import LAB, all_spots, errors, folder_of, spoil, trees
from tests.hostile.taken import taken

UNSEEN = ("\x07", "\x00", "\x1b[31m", "\u202e", "\u2067", "\u2028")


def kinds() -> tuple[type[Located], ...]:
    """Every noun that an author writes, off the model."""
    found: dict[type[Located], None] = {}
    waiting: list[type[Located]] = [Lab, Procedure, ClassFile, LanguageFile]
    while waiting:
        kind = waiting.pop()
        if kind not in found:
            found[kind] = None
            waiting += [
                inner for info in kind.model_fields.values() for inner in nouns_in(info.annotation)
            ]
    return tuple(found)


def nouns_in(annotation: Any) -> Iterator[type[Located]]:
    if isinstance(annotation, type) and issubclass(annotation, Located):
        yield annotation
    for part in get_args(annotation):
        yield from nouns_in(part)


def takes_words(metadata: Any, annotation: Any) -> bool:
    """Whether a field, or what is inside it, is read as the author's words."""
    if any(isinstance(mark, Reader) and mark.read is text for mark in metadata):
        return True
    if get_origin(annotation) is Annotated:
        return takes_words(annotation.__metadata__, annotation.__origin__)
    return any(takes_words((), part) for part in get_args(annotation) if not isinstance(part, type(Located)))


def text_fields() -> set[str]:
    """Every field of every noun that takes words, as the author names it."""
    return {
        f"{kind.__name__}.{info.alias or name}"
        for kind in kinds()
        for name, info in kind.model_fields.items()
        if takes_words(info.metadata, info.annotation)
    }


def written(value: object) -> Iterator[str]:
    """Every field that is written in a noun or in one inside it."""
    if isinstance(value, Located):
        for name in value.model_fields_set - {"where", "marks"}:
            yield f"{type(value).__name__}.{type(value).model_fields[name].alias or name}"
            yield from written(getattr(value, name))
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from written(inner)
    elif isinstance(value, tuple | list):
        for inner in value:
            yield from written(inner)


def test_the_lab_has_every_field_that_takes_words() -> None:
    """A new field of the model fails here until the lab has it."""
    read = read_lab(folder_of(trees()))
    file = read.procedures["clean-a-plate"]
    owners = (read.lab, file.procedure, *file.class_files.values(), *file.languages.values())
    there = {field for owner in owners for field in written(owner)}
    wanted = text_fields()
    assert len(wanted) > 100
    assert sorted(wanted - there) == []


def test_the_lab_is_good() -> None:
    assert errors(trees(), DAY) == ()


def test_hostile_words_are_refused_or_taken_as_words() -> None:
    """Each place that refuses them says so in its own line."""
    assert len(all_spots()) > 400
    assert len(taken()) > 120
    never = ("id", "stage", "do", "who", "approver", "language", "at", "rack")
    assert [spot for spot in taken() if spot[-1] in never] == []


@pytest.mark.parametrize("sign", UNSEEN, ids=lambda sign: f"U+{ord(sign[0]):04X}")
def test_what_nobody_sees_is_refused_in_every_field(sign: str) -> None:
    """In all places at once: as many problems as places, each in its line."""
    files = trees()
    places = [spot for spot in all_spots() if spot[-1] is not None]
    for name, *path in places:
        spoil(files[name], tuple(path), lambda old: f"{old}{sign}")
    found = [problem for problem in errors(files, DAY) if "invisible" in problem.message
             or "line separator" in problem.message]  # fmt: skip
    assert {problem.where.file for problem in found} == {f"lab/{name}" for name in files}
    assert len({(p.where.file, p.where.line, p.where.column) for p in found}) == len(places)


def test_the_lab_on_disk_is_the_one_tried() -> None:
    assert {path.name for path in LAB.glob("*.yml")} == set(trees())
