"""Print the hazard summaries, labels and safety-office sheets that go with the pages."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from generator.hazards import NotScreened, Screening
from generator.outputs.press.hazard_documents import chemical_pdf, office_pdf, overview_pdf, summary_pdf
from generator.outputs.press.labels import container_labels_pdf, waste_labels_pdf
from generator.outputs.site import SiteFile
from generator.pipeline.kept import NOTHING_KEPT, Kept, kept_or_made, key_of
from generator.pipeline.standing import Shown
from generator.problems import Level, Location, NewelError, Problem
from generator.study import LabStudy, Study
from generator.views.addresses import (
    HAZARDS,
    labels_kind,
    mixture_address,
    procedure_address,
    sheet_path,
    substance_address,
)
from generator.views.chemical import ChemicalView
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
    """A file to print, by what and from what, and where its noun stands for when it cannot be."""

    path: str
    print: Callable[..., bytes]
    view: Callable[[], object]
    setting: PrintSetting
    where: Location
    paper: str = ""


@dataclass(frozen=True, slots=True)
class HazardPrints:
    """The printed files, and what could not be printed."""

    files: tuple[SiteFile, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class PrintUnit:
    """Papers of the lab made together: a name, what they are made from beside the lab, and how from it."""

    name: str
    told: tuple[object, ...]
    jobs: Callable[[LabStudy], Iterator[_Job]]


def print_procedure(shown: Shown, studies: Iterable[Study], kept: Kept = NOTHING_KEPT) -> HazardPrints:
    """The hazard summary and the safety office's sheet of some of the studies shown."""
    return _print(tuple(job for study in studies for job in _procedure_jobs(shown, study)), kept)


def print_unit(unit: PrintUnit, lab: LabStudy, kept: Kept = NOTHING_KEPT) -> HazardPrints:
    """The papers of a unit."""
    return _print(tuple(unit.jobs(lab)), kept)


def _print(jobs: tuple[_Job, ...], kept: Kept) -> HazardPrints:
    if not jobs:
        return HazardPrints((), ())
    with ThreadPoolExecutor(_WORKERS) as pool:
        found = tuple(pool.map(lambda job: _printed(job, kept), jobs))
    files = tuple(one for one in found if isinstance(one, SiteFile))
    return HazardPrints(files, tuple(one for one in found if isinstance(one, Problem)))


def _printed(job: _Job, kept: Kept) -> SiteFile | Problem:
    try:
        view = job.view()
        more = (job.paper,) if job.paper else ()
        key = key_of(job.print.__name__, view, job.setting, *more)
        return SiteFile(job.path, kept_or_made(kept, key, lambda: job.print(view, job.setting, *more)))
    except NewelError as bad:
        return Problem("unreadable", Level.ERROR, job.where, bad.what, bad.hint or "write it in other words")


def lab_print_units(study: LabStudy, screenings: Screenings) -> Iterator[PrintUnit]:
    """Hazard papers and labels of every substance and mixture, and those of the whole lab."""
    lab = study.lab
    for id in map(str, lab.mixtures):
        yield _mixture_unit(id, screenings.get(id))
    for id in map(str, lab.substances):
        yield PrintUnit(f"substance {id}", (), lambda lab, id=id: _substance_jobs(lab, id))  # type: ignore[misc]
    if lab.substances or lab.mixtures:
        yield PrintUnit("hazards", (), _overview_jobs)


def _mixture_unit(id: str, screening: Screening | NotScreened | None) -> PrintUnit:
    def jobs(study: LabStudy) -> Iterator[_Job]:
        view = mixture_view(study, id, (), screening)
        return _chemical_jobs(study, id, mixture_address(id), view)

    return PrintUnit(f"mixture {id}", (screening,), jobs)


def _substance_jobs(study: LabStudy, id: str) -> Iterator[_Job]:
    return _chemical_jobs(study, id, substance_address(id), substance_view(study, id))


def _overview_jobs(study: LabStudy) -> Iterator[_Job]:
    setting, where = _setting(study), study.lab.where
    overview = lab_hazards_view(study)
    yield _Job(sheet_path(HAZARDS, "hazards"), overview_pdf, lambda: overview, setting, where)
    waste = waste_labels(study)
    for paper in study.lab.lab.paper if waste else ():
        path = sheet_path(HAZARDS, labels_kind("waste-labels", paper))
        yield _Job(path, waste_labels_pdf, lambda: waste, setting, where, paper)


def _chemical_jobs(study: LabStudy, id: str, address: str, view: ChemicalView) -> Iterator[_Job]:
    noun = study.lab.mixtures.get(id) or study.lab.substances[id]  # type: ignore[call-overload,index]
    setting, label = _setting(study), chemical_label(study, id)
    yield _Job(sheet_path(address, "hazards"), chemical_pdf, lambda: view, setting, noun.where)
    for paper in study.lab.lab.paper:
        path = sheet_path(address, labels_kind("labels", paper))
        yield _Job(path, container_labels_pdf, lambda: label, setting, noun.where, paper)


def _procedure_jobs(shown: Shown, study: Study) -> Iterator[_Job]:
    draft = "DRAFT" if shown.of(study).status == "draft" else ""
    setting = _setting(study, draft)
    address, where = procedure_address(study.procedure.id), study.procedure.where
    yield _Job(sheet_path(address, "hazards"), summary_pdf, lambda: hazards_view(study), setting, where)
    yield _Job(sheet_path(address, "office"), office_pdf, lambda: office_view(study), setting, where)


def _setting(study: LabStudy, draft: str = "") -> PrintSetting:
    room = study.lab.lab
    foot = f"{room.name}, room {room.room}. Printed from the files of {day_words(study.today)}."
    return PrintSetting(str(room.language), study.today.isoformat(), foot, draft)
