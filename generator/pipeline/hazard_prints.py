"""Print the hazard summaries, labels and safety-office sheets that go with the pages."""

from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import partial

from generator.hazards import NotScreened, Screening
from generator.outputs.press.hazard_documents import chemical_pdf, office_pdf, overview_pdf, summary_pdf
from generator.outputs.press.labels import container_labels_pdf, waste_labels_pdf
from generator.outputs.site import SiteFile
from generator.pipeline.standing import Shown
from generator.problems import Level, Location, NewelError, Problem
from generator.study import LabStudy, Study
from generator.views.addresses import (
    HAZARDS,
    mixture_address,
    procedure_address,
    sheet_path,
    substance_address,
)
from generator.views.filling.chemical import mixture_view, substance_view
from generator.views.filling.container_labels import chemical_label, waste_labels
from generator.views.filling.hazards import hazards_view
from generator.views.filling.lab_hazards import lab_hazards_view
from generator.views.filling.office import office_view
from generator.views.filling.sheets_held import day_words
from generator.views.print_setting import PrintSetting

_WORKERS = 2
Screenings = Mapping[str, Screening | NotScreened]


@dataclass(frozen=True, slots=True)
class _Job:
    """A file to print, and where its noun stands for when it cannot be."""

    path: str
    make: Callable[[], bytes]
    where: Location


@dataclass(frozen=True, slots=True)
class HazardPrints:
    """The printed files, and what could not be printed."""

    files: tuple[SiteFile, ...]
    problems: tuple[Problem, ...]


def print_hazards(shown: Shown, screenings: Screenings, every: bool = False) -> HazardPrints:
    """Everything of the lab; of procedures those that post cards, or with `every` all of them.

    A document takes some 50 ms to set, so that a thousand procedures without a card wait until asked for.
    """
    jobs = [*_lab_jobs(shown.lab, screenings)]
    for study in shown.studies:
        if every or study.procedure.cards:
            jobs += _procedure_jobs(shown, study)
    with ThreadPoolExecutor(_WORKERS) as pool:
        found = tuple(pool.map(_printed, jobs))
    files = tuple(one for one in found if isinstance(one, SiteFile))
    return HazardPrints(files, tuple(one for one in found if isinstance(one, Problem)))


def _printed(job: _Job) -> SiteFile | Problem:
    try:
        return SiteFile(job.path, job.make())
    except NewelError as bad:
        return Problem("unreadable", Level.ERROR, job.where, bad.what, bad.hint or "write it in other words")


def _lab_jobs(study: LabStudy, screenings: Screenings) -> Iterator[_Job]:
    lab, setting = study.lab, _setting(study)
    for id in map(str, lab.mixtures):
        make = partial(chemical_pdf, mixture_view(study, id, (), screenings.get(id)), setting)
        yield from _chemical_jobs(study, id, mixture_address(id), make)
    for id in map(str, lab.substances):
        make = partial(chemical_pdf, substance_view(study, id, ()), setting)
        yield from _chemical_jobs(study, id, substance_address(id), make)
    if lab.substances or lab.mixtures:
        overview = lab_hazards_view(study)
        yield _Job(sheet_path(HAZARDS, "hazards"), lambda: overview_pdf(overview, setting), lab.where)
    waste = waste_labels(study)
    if waste and (lab.substances or lab.mixtures):
        yield _Job(sheet_path(HAZARDS, "waste-labels"), lambda: waste_labels_pdf(waste, setting), lab.where)


def _chemical_jobs(study: LabStudy, id: str, address: str, make: Callable[[], bytes]) -> Iterator[_Job]:
    noun = study.lab.mixtures.get(id) or study.lab.substances[id]  # type: ignore[call-overload,index]
    setting, label = _setting(study), chemical_label(study, id)
    yield _Job(sheet_path(address, "hazards"), make, noun.where)
    yield _Job(sheet_path(address, "labels"), lambda: container_labels_pdf(label, setting), noun.where)


def _procedure_jobs(shown: Shown, study: Study) -> Iterator[_Job]:
    draft = "DRAFT" if shown.of(study).status == "draft" else ""
    setting = _setting(study, draft)
    address, where = procedure_address(study.procedure.id), study.procedure.where
    yield _Job(sheet_path(address, "hazards"), lambda: summary_pdf(hazards_view(study), setting), where)
    yield _Job(sheet_path(address, "office"), lambda: office_pdf(office_view(study), setting), where)


def _setting(study: LabStudy, draft: str = "") -> PrintSetting:
    room = study.lab.lab
    foot = f"{room.name}, room {room.room}. Printed from the files of {day_words(study.today)}."
    return PrintSetting(str(room.language), study.today.isoformat(), foot, draft)
