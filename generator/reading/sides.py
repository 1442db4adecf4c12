"""What a side file may not hold: a class brings values alone, a language file sentences alone."""

from collections.abc import Iterator
from typing import Any

from generator.model import ClassFile, Lab, LanguageFile, Procedure
from generator.model.translation import lab_sentences_of, sentences_of, translated, values_in
from generator.notation import MapNode
from generator.problems import Level, Location, Problem, missing
from generator.reading.nearest import nearest

_OWN = {
    ClassFile: ("class-changes-order", "a class may not have \"{}\" of its own",
                "delete it; a class has its own job, cards and approver, and times and settings of steps"),
    LanguageFile: ("side-file-holds-values", "a language file holds sentences alone, and \"{}\" is none",
                   "delete it; the value comes from the procedure"),
}  # fmt: skip


def only_own(
    noun: type[ClassFile] | type[LanguageFile], side: MapNode
) -> tuple[MapNode, tuple[Problem, ...]]:
    """The side file without the fields that only a whole procedure has, and a problem for each of them."""
    rule, message, fix = _OWN[noun]
    known = {str(field.alias or name) for name, field in noun.model_fields.items()}
    foreign = {str(field.alias or name) for name, field in Procedure.model_fields.items()} - known
    problems = tuple(
        Problem(rule, Level.ERROR, key.where, message.format(key), fix)
        for key, _ in side.items
        if key in foreign
    )
    return MapNode(tuple(item for item in side.items if item[0] not in foreign), side.where), problems


def judge_translation(file: LanguageFile, procedure: Procedure, lab: Lab | None) -> Iterator[Problem]:
    """Values in a language file, and sentences for ids that the procedure and its lab do not have."""
    for path, where in values_in(file):
        name = path.rpartition(".")[2]
        yield Problem(
            "side-file-holds-values",
            Level.ERROR,
            where,
            f'a language file holds sentences alone, and "{name}" is none',
            "delete it; the value comes from the procedure and its lab",
        )
    known = {_holder(path) for path in (*sentences_of(procedure), *(lab_sentences_of(lab) if lab else ()))}
    told: set[str] = set()
    for path, text in translated(file).items():
        holder = _holder(path)
        if holder not in known and holder not in told and (lab or not path.startswith("lab.")):
            told.add(holder)
            yield _unknown(holder, text.where, known, procedure)


def _holder(path: str) -> str:
    """The noun that a sentence belongs to: `steps.etch-in`, `lab.places.etch`, `title`."""
    parts = path.split(".")
    return ".".join(parts[:3] if parts[0] == "lab" else parts[:2])


def _unknown(holder: str, where: Location, known: set[str], procedure: Procedure) -> Problem:
    group, _, id = holder.rpartition(".")
    ids = [name.rpartition(".")[2] for name in known if name.rpartition(".")[0] == group]
    kind = "field" if not group else group[:-1] if group in ("steps", "stages", "cards") else ""
    where_not = f"under `{group.removeprefix('lab.')}`" if group else "in the procedure"
    return Problem(
        "unknown-name",
        Level.ERROR,
        where,
        f'there is no "{id}" {where_not} to translate',
        nearest(id, ids),
        causes=(missing(kind, id, procedure.where.file),) if kind else (),
    )


def other_base(side: ClassFile, id: str) -> Iterator[Problem]:
    """A class whose `class_of` is not the procedure that its file is named after."""
    if side.class_of != id:
        yield Problem(
            "unknown-name",
            Level.ERROR,
            side.spot("class_of"),
            f'the file is named after "{id}", and `class_of` says "{side.class_of}"',
            f"write `class_of: {id}`",
        )


def second_of(language: str, where: Location, taken: dict[str, Any]) -> Iterator[Problem]:
    """A second file for one language."""
    if language in taken:
        yield Problem(
            "given-twice",
            Level.ERROR,
            where,
            f'two files hold the language "{language}"',
            "keep one of the two",
        )
