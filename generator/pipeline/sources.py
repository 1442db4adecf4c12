"""Where each step stands in the author's files, for whoever wants to edit it."""

from collections.abc import Iterator, Mapping
from pathlib import Path

from generator.model import Procedure, Step
from generator.reading import EditAddress, LabRead
from generator.views.shown import SourceView

# By procedure, then by step.
Sources = Mapping[str, Mapping[str, SourceView]]


def step_sources(read: LabRead, edit: EditAddress | None, preview: bool) -> Sources:
    """The line of every step: in a preview as file and line, else as an address where one is known.

    A step that has another id since it was posted is found by the posted one too.
    """
    if edit is None and not preview:
        return {}
    return {
        id: dict(_of_steps(file.procedure, "" if preview or edit is None else edit.of(_file(read, id))))
        for id, file in read.procedures.items()
    }


def _file(read: LabRead, id: str) -> Path:
    name, _ = read.folder.procedures[id]
    return read.folder.path / name.removeprefix(f"{read.folder.shown}/")


def _of_steps(procedure: Procedure, address: str) -> Iterator[tuple[str, SourceView]]:
    for step in procedure.steps:
        source = _source(step, address)
        if step.was:
            yield str(step.was), source
        yield str(step.id), source


def _source(step: Step, address: str) -> SourceView:
    line = str(step.where.line)
    return SourceView(f"{step.where.file}:{line}", address.replace("{line}", line))
