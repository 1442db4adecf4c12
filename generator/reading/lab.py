"""The whole folder as one value: lab, procedures with classes and languages, every problem."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from generator.formulas.lab_file import LabFormulas, read_formulas
from generator.model import ID, ClassFile, Lab, LanguageFile, Procedure, Text
from generator.notation import Document, MapNode, Node, read_text
from generator.problems import Level, Location, Problem, by_place
from generator.reading.earlier import Earlier, earlier, remember
from generator.reading.fit import fit
from generator.reading.folder import Folder
from generator.reading.merge import merge_lab
from generator.reading.overlay import lay_over
from generator.reading.shape import shape_map
from generator.reading.sides import judge_translation, only_own, other_base, second_of


@dataclass(frozen=True, slots=True)
class ProcedureFile:
    """A procedure with its classes (procedures of their own, by tail) and its translations (by language)."""

    procedure: Procedure
    classes: Mapping[str, Procedure]
    class_files: Mapping[str, ClassFile]
    languages: Mapping[str, LanguageFile]


@dataclass(frozen=True, slots=True)
class LabRead:
    """What a folder holds; `lab` is None where it could not be understood at all."""

    folder: Folder
    lab: Lab | None
    procedures: Mapping[str, ProcedureFile]
    formulas: LabFormulas
    documents: Mapping[str, Document]
    problems: tuple[Problem, ...]


def read_lab(folder: Folder) -> LabRead:
    """Read every file of a folder; problems of form and structure of all files together."""
    nouns = read_nouns(folder)
    documents, problems = dict(nouns.documents), list(nouns.problems)
    procedures: dict[str, ProcedureFile] = {}
    for id in folder.procedures:
        one = read_one(nouns, id)
        procedures.update(one.procedures)
        documents.update(one.documents)
        problems += one.problems
    return LabRead(folder, nouns.lab, procedures, nouns.formulas, documents, by_place(problems))


def read_nouns(folder: Folder) -> LabRead:
    """Read all but the procedures."""
    documents: dict[str, Document] = {}
    problems: list[Problem] = list(folder.problems)
    lab = _read_nouns(folder, documents, problems)
    problems += _lost_sides(folder)
    formulas = _read_formulas(folder, problems)
    return LabRead(folder, lab, {}, formulas, documents, by_place(problems))


def read_one(nouns: LabRead, id: str) -> LabRead:
    """Read one procedure with its side files, and the problems of these files alone."""
    documents: dict[str, Document] = {}
    problems: list[Problem] = []
    file, data = nouns.folder.procedures[id]
    found = _read_procedure(nouns.folder, nouns.lab, id, file, data, documents, problems)
    procedures = {id: found} if found else {}
    return LabRead(nouns.folder, nouns.lab, procedures, nouns.formulas, documents, by_place(problems))


def _parse(
    file: str, data: bytes, documents: dict[str, Document], problems: list[Problem],
    last: Earlier | None = None,
) -> MapNode | None:  # fmt: skip
    document = read_text(data, file, last.document if last else None)
    documents[file] = document
    problems.extend(document.problems)
    if isinstance(document.root, MapNode) and document.root.items:
        return document.root
    if not document.problems:
        problems.append(_no_fields(document.root, file))
    return None


def _no_fields(root: Node | None, file: str) -> Problem:
    found = "the file is empty" if isinstance(root, MapNode) else "the file holds no fields"
    return Problem(
        "required-missing", Level.ERROR, Location(file), found, "write `title: ...` and the other fields"
    )


def _read_nouns(folder: Folder, documents: dict[str, Document], problems: list[Problem]) -> Lab | None:
    roots = [(file, _parse(file, data, documents, problems)) for file, data in folder.lab.items()]
    data, merged = merge_lab([(file, root) for file, root in roots if root])
    problems.extend(merged)
    first = next(iter(folder.lab), f"{folder.shown}/lab.yml")
    if any(root is None for _, root in roots) and not {"lab", "roles"} <= set(data):
        return None
    lab, found = fit(Lab, data, first)
    problems.extend(found)
    return lab


def _read_procedure(
    folder: Folder, lab: Lab | None, id: str, file: str, data: bytes,
    documents: dict[str, Document], problems: list[Problem],
) -> ProcedureFile | None:  # fmt: skip
    last = earlier(file)
    root = _parse(file, data, documents, problems, last)
    if root is None:
        return None
    procedure, found = _fit_procedure(root, Text(id, Location(file)), last)
    problems.extend(found)
    if procedure is None:
        return None
    if not problems:
        remember(documents[file], procedure)
    classes: dict[str, Procedure] = {}
    class_files: dict[str, ClassFile] = {}
    languages: dict[str, LanguageFile] = {}
    for (base, tail), (name, content) in folder.sides.items():
        side = _parse(name, content, documents, problems) if base == id else None
        if side is None:
            continue
        if side.get("language"):
            _read_language(procedure, lab, side, name, languages, problems)
        else:
            _read_class(root, side, id, tail, name, classes, class_files, problems)
    return ProcedureFile(procedure, classes, class_files, languages)


def _fit_procedure(
    root: MapNode, id: Text, last: Earlier | None
) -> tuple[Procedure | None, tuple[Problem, ...]]:
    """The procedure with the steps that are as they were; where anything is wrong, with none of them."""
    made = last.steps if last else {}
    fitted = fit(Procedure, {**shape_map(root, made), ID: id}, id.where.file)
    return fit(Procedure, {**shape_map(root), ID: id}, id.where.file) if made and fitted[1] else fitted


def _read_language(
    procedure: Procedure, lab: Lab | None, side: MapNode, name: str,
    languages: dict[str, LanguageFile], problems: list[Problem],
) -> None:  # fmt: skip
    side, foreign = only_own(LanguageFile, side)
    read, found = fit(LanguageFile, shape_map(side), name)
    problems.extend((*foreign, *found))
    if read is None:
        return
    problems.extend(judge_translation(read, procedure, lab))
    problems.extend(second_of(read.language, read.spot("language"), languages))
    languages.setdefault(str(read.language), read)


def _read_class(
    root: MapNode, side: MapNode, id: str, tail: str, name: str,
    classes: dict[str, Procedure], class_files: dict[str, ClassFile], problems: list[Problem],
) -> None:  # fmt: skip
    side, foreign = only_own(ClassFile, side)
    read, found = fit(ClassFile, shape_map(side), name)
    problems.extend((*foreign, *found))
    if read is None:
        return
    problems.extend(other_base(read, id))
    class_files[tail] = read
    base: dict[str, Any] = {**shape_map(root), ID: Text(f"{id}.{tail}", Location(name))}
    data, faults = lay_over(base, shape_map(side))
    problems.extend(faults)
    procedure, found = fit(Procedure, data, name)
    problems.extend(problem for problem in found if problem.where.file == name)
    if procedure:
        classes[tail] = procedure


def _read_formulas(folder: Folder, problems: list[Problem]) -> LabFormulas:
    """A lab's own formulas, read from their text; nothing of them is ever run."""
    if folder.formulas is None:
        return LabFormulas((), ())
    file, text = folder.formulas
    read = read_formulas(text, file)
    problems += [
        Problem(fault.rule, Level.ERROR, Location(file, fault.line, fault.column), fault.message, fault.fix)
        for fault in read.faults
    ]
    return read


def _lost_sides(folder: Folder) -> list[Problem]:
    return [
        Problem("unknown-name", Level.ERROR, Location(name), f'there is no procedure "{base}" for this file',
                f"name it after a procedure: {', '.join(sorted(folder.procedures)) or 'there is none yet'}")
        for (base, _), (name, _data) in folder.sides.items() if base not in folder.procedures
    ]  # fmt: skip
