"""The pages, papers and files of the lab itself, round the chapters of its procedures."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from generator.checks import docs
from generator.hazards import NotScreened, Screening, screen
from generator.outputs.pages.lab_units import Told, Unit, back_units, front_units
from generator.outputs.site import AnyFile, KeptFile, Site
from generator.pipeline.chapter import Display, Wanted
from generator.pipeline.given_files import given_files
from generator.pipeline.hazard_prints import PrintUnit, lab_print_units, print_unit
from generator.pipeline.kept import key_of
from generator.pipeline.looks import Ground, Watch, survey
from generator.pipeline.paper import print_all, set_check_off
from generator.pipeline.parts import Leaves, file_of, keep_files, lay_sheets, page_of, see_links
from generator.pipeline.shared_facts import Banners, shared_banners
from generator.pipeline.slips import Part
from generator.pipeline.standing import Standing, published_lab
from generator.posting.issue import Issue
from generator.problems import Level, Problem, by_place
from generator.study import LabStudy
from generator.study.composition import composition_of
from generator.views.filling.posted import posted_view
from generator.views.posted import PostedView

SUBJECTS = {
    "part": "The part",
    "person": "The person",
    "places": "Places and machines",
    "time": "Time",
    "people": "People and decisions",
    "chemicals": "Chemicals and waste",
    "words": "Words and form",
    "sums": "Sums and cards",
    "posting": "Issues and copies",
    "accepted": "Accepted warnings",
}


@dataclass(frozen=True, slots=True)
class Whole:
    """What the lab's pages are told from: every procedure's display, every problem, the rules not run."""

    displays: Mapping[str, Display]
    problems: tuple[Problem, ...]
    not_made: Mapping[str, tuple[str, ...]]


def finish(wanted: Wanted, leaves: Leaves, whole: Whole) -> tuple[Site | None, tuple[Problem, ...]]:
    """The site, None where something could not be printed, and every problem."""
    displays, ground = whole.displays, _shown_ground(wanted, whole.displays)
    screenings = _screenings(ground.study)
    parts = tuple(display.part for display in displays.values())
    units = lab_print_units(ground.study, screenings)
    prints = tuple(_printed(wanted, leaves, ground, unit) for unit in units)
    check_off, refused = set_check_off(ground.study, leaves.kept)
    found = (problem for part in (*parts, *prints) for problem in part.problems)
    problems = by_place([*whole.problems, *refused, *found])
    if any(problem.level is Level.ERROR for problem in problems):
        return None, problems
    files: tuple[AnyFile, ...] = (
        *given_files(wanted),
        *_each_once(file_of(leaves, slip) for part in (*parts, *prints) for slip in part.files),
        *(file_of(leaves, slip) for slip in keep_files(leaves, [check_off] if check_off else [])),
    )
    if wanted.every:
        sets = wanted.sets
        files = (*files, print_all(ground.study, sets.cards, sets.signs, sets.plans))
    paths = frozenset(file.path for file in files)
    summaries = tuple(summary for display in displays.values() for summary in display.summaries)
    told = Told(
        ground.study, summaries, tuple(wanted.formulas.values()), docs(), SUBJECTS, whole.problems,
        whole.not_made, _posted(wanted, ground.study, displays, paths), screenings, paths,
        _banners(wanted, ground.study, displays),
    )  # fmt: skip
    front = (_laid(wanted, leaves, ground, unit) for unit in front_units(told))
    back = (_laid(wanted, leaves, ground, unit) for unit in back_units(told))
    everything = (*front, *parts, *back)
    see_links(leaves, everything, paths)
    return _site(wanted, leaves, ground.study, everything, files), problems


def _each_once(files: Iterable[KeptFile]) -> Iterable[KeptFile]:
    """Two procedures may show the same posted picture."""
    return {file.path: file for file in files}.values()


def _shown_ground(wanted: Wanted, displays: Mapping[str, Display]) -> Ground:
    """The lab that its own pages speak of: as posted, where an issue is shown in place of the files."""
    issues = _issues(wanted, [id for id, display in displays.items() if display.replaced])
    if not issues:
        return wanted.ground
    shelf = wanted.shelf
    standings = [
        Standing(id, {}, "posted", {}, shelf.head(id), shelf.withdrawn(id), uses=frozenset(display.uses))
        for id, display in displays.items()
    ]
    return survey(published_lab(wanted.ground.study, issues, standings))


def _issues(wanted: Wanted, ids: Iterable[str]) -> tuple[Issue, ...]:
    found = (last.read() for id in ids if (last := wanted.shelf.last(id)))
    return tuple(issue for issue in found if issue)


def _banners(wanted: Wanted, shown: LabStudy, displays: Mapping[str, Display]) -> Banners:
    edited = {id: display.title for id, display in displays.items() if display.edited}
    issues = _issues(wanted, edited)
    titled = [(edited[str(issue.procedure.id)], issue) for issue in issues]
    return shared_banners(wanted.ground.study.lab, shown.lab, titled, wanted.draft)


def _posted(
    wanted: Wanted, lab: LabStudy, displays: Mapping[str, Display], paths: frozenset[str]
) -> PostedView:
    cards = tuple(card for display in displays.values() for card in display.cards)
    papers = tuple(paper for display in displays.values() for paper in display.papers)
    return posted_view(wanted.shelf, cards, papers, wanted.today, paths, _name(lab))


def _name(lab: LabStudy) -> str:
    room = lab.lab.lab
    return f"{room.title or room.room}, {room.name}"


def _printed(wanted: Wanted, leaves: Leaves, ground: Ground, unit: PrintUnit) -> Part:
    def make(watch: Watch) -> Part:
        made = print_unit(unit, watch.study, leaves.kept)
        return Part(files=keep_files(leaves, made.files), problems=made.problems)

    key = key_of("print", wanted.base, ground.rest, unit.name, unit.told)
    return leaves.known(key, Part, ground) or leaves.made(key, ground, make)


def _laid(wanted: Wanted, leaves: Leaves, ground: Ground, unit: Unit) -> Part:
    def make(watch: Watch) -> Part:
        return lay_sheets(leaves, unit.sheets(watch.study))

    key = key_of("unit", wanted.base, ground.rest, unit.name, unit.told)
    return leaves.known(key, Part, ground) or leaves.made(key, ground, make)


def _site(
    wanted: Wanted, leaves: Leaves, lab: LabStudy, parts: tuple[Part, ...], files: tuple[AnyFile, ...]
) -> Site:
    return Site(
        _name(lab),
        tuple(page_of(leaves, slip) for part in parts for slip in part.pages),
        files,
        tuple(entry for part in parts for entry in part.entries),
        str(lab.lab.lab.language),
        lab.today.isoformat(),
        wanted.draft,
    )


def _screenings(lab: LabStudy) -> dict[str, Screening | NotScreened]:
    found = {str(id): composition_of(lab.lab, str(id)) for id in lab.lab.mixtures}
    return {id: screen(composition) for id, composition in found.items() if composition is not None}
