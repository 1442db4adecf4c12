"""Build a lab's site: every procedure's chapter, stop on errors, then the pages of the lab itself.

Whatever was made before from the same text and the same look-ups is taken out of the store.
"""

import datetime
import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from generator.checks import RULES
from generator.outputs.site import Site
from generator.pipeline.accept import accept_in_lab
from generator.pipeline.chapter import Chapter, Wanted, write_chapter
from generator.pipeline.check import check, in_lab
from generator.pipeline.contents import picture_digests
from generator.pipeline.edition import edition_of, find_edition, keep_edition, revised, site_of
from generator.pipeline.fold import fold_missing
from generator.pipeline.kept import NOTHING_KEPT, Kept, plain_key
from generator.pipeline.looks import survey
from generator.pipeline.memory import Memory
from generator.pipeline.parts import Leaves
from generator.pipeline.posted_pictures import altered_pictures
from generator.pipeline.posted_problems import posted_in_lab
from generator.posting.shelf import open_shelf
from generator.problems import Level, Problem, by_place
from generator.reading import (
    EditAddress,
    Folder,
    LabRead,
    edit_address,
    open_folder,
    read_lab,
    read_nouns,
    site_address,
)
from generator.study import study_lab
from generator.sums import Known, settings_problems

_Named = list[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Outcome:
    """The site, None where an error stopped it, and every problem found."""

    site: Site | None
    problems: tuple[Problem, ...]


def build_site(
    folder: Path, today: datetime.date, draft: bool = False, shown: str = "", whole_print: bool = False,
    kept: Kept = NOTHING_KEPT, preview: bool = False, memory: Memory | None = None,
) -> Outcome:  # fmt: skip
    """Read a lab's folder and build its site; `shown` is how the author names the folder in messages.

    A `preview` on the author's own machine says by each step in which line of which file it stands. `memory`
    is that of a process which builds again and again.
    """
    opened, site, edit = open_folder(folder, shown), site_address(folder), edit_address(folder)
    return build_folder(opened, today, draft, site, whole_print, kept, edit, preview, memory)


def build_folder(
    folder: Folder, today: datetime.date, draft: bool, site_url: str, whole_print: bool = False,
    kept: Kept = NOTHING_KEPT, edit: EditAddress | None = None, preview: bool = False,
    memory: Memory | None = None,
) -> Outcome:  # fmt: skip
    """The same from a folder already opened, with the addresses of the site and of its files' editor.

    `whole_print` adds one PDF of all that must be posted, and hazard papers of procedures without cards.
    `kept` holds what was made before; with it or without it the outcome is the same.
    """
    nouns = read_nouns(folder)
    if nouns.lab is None:
        return Outcome(None, check(read_lab(folder), today).problems)
    wanted = ask(nouns, today, draft, site_url, whole_print, edit, preview)
    return build_wanted(wanted, Leaves(kept, memory))


def build_wanted(wanted: Wanted, leaves: Leaves) -> Outcome:
    """Build what is asked for; `leaves` keep what is made on the way."""
    own = _own_files(wanted.nouns.folder)
    keys = _keys(wanted, own)
    ground = _ground(wanted, own, keys)
    last = find_edition(wanted, leaves, ground, keys)
    edition = last and revised(leaves, last, keys, partial(_chapter, wanted, leaves))
    if edition:
        keep_edition(wanted, leaves, edition)
        return Outcome(site_of(wanted, leaves, edition), edition.problems)
    outcome = _whole(wanted, leaves, keys)
    if ground and outcome.site:
        keep_edition(wanted, leaves, edition_of(wanted, ground, keys, outcome.site, outcome.problems))
    return outcome


def _whole(wanted: Wanted, leaves: Leaves, keys: Mapping[str, str]) -> Outcome:
    """Every chapter, then the pages of the lab round them."""
    from generator.pipeline.lab_parts import Whole, finish  # an edit of words alone does without

    chapters = dict(_chapters(wanted, leaves, keys))
    problems = _problems(wanted, chapters)
    if _stops(problems):
        return Outcome(None, problems)
    displays = {id: chapter.display for id, chapter in chapters.items() if chapter.display}
    whole = Whole(displays, problems, _not_made(wanted, chapters))
    return Outcome(*finish(wanted, leaves, whole))


def ask(
    nouns: LabRead, today: datetime.date, draft: bool, site_url: str, every: bool, edit: EditAddress | None,
    preview: bool,
) -> Wanted:  # fmt: skip
    """What a build is asked for, with all it has beside the procedures; the lab must have been understood."""
    assert nouns.lab is not None
    study = study_lab(nouns.lab, {}, nouns.folder.pictures, today)
    formulas = {formula.name: formula for formula in Known(nouns.formulas.formulas).all()}
    shelf = open_shelf(nouns.folder.posted, nouns.folder.shown)
    pictures = picture_digests(nouns)
    folder, ground = nouns.folder, survey(study)
    shots = (tuple(pictures.items()), tuple(sorted(folder.kept_pictures)))
    told = (folder.shown, folder.formulas, shots, today.isoformat(), draft, site_url, repr(edit), preview)
    return Wanted(
        nouns, ground, shelf, today, draft, site_url, formulas, pictures, edit, preview,
        plain_key("build", *told), every,
    )  # fmt: skip


def _keys(wanted: Wanted, own: Mapping[str, _Named]) -> dict[str, str]:
    """The key of every procedure's chapter: what it is made from besides what it looks up in the lab."""
    folder = wanted.nouns.folder
    gone = [] if wanted.draft else [id for id in wanted.shelf.issues if id not in folder.procedures]
    return {
        id: plain_key("chapter", wanted.base, wanted.ground.rest, id, own.get(id, []))
        for id in (*folder.procedures, *gone)
    }


def _ground(wanted: Wanted, own: Mapping[str, _Named], keys: Mapping[str, str]) -> str:
    """Names all that a build is made from besides the files of its procedures; "" for one never kept."""
    folder = wanted.nouns.folder
    files = [_named(file) for file in folder.lab.items()]
    apart = [rows for id, rows in own.items() if id not in keys]
    found = (*wanted.nouns.problems, *altered_pictures(folder))
    return "" if wanted.every else plain_key("ground", wanted.base, files, apart, found)


def _chapters(wanted: Wanted, leaves: Leaves, keys: Mapping[str, str]) -> Iterator[tuple[str, Chapter]]:
    """Every procedure's; once an error was found those that follow are checked and no more."""
    stopped = _stops(wanted.nouns.problems)
    for id, key in keys.items():
        chapter = _chapter(wanted, leaves, id, "" if wanted.every else key, stopped)
        stopped = stopped or _stops(chapter.problems)
        yield id, chapter


def _chapter(wanted: Wanted, leaves: Leaves, id: str, key: str, stopped: bool = False) -> Chapter:
    ground = wanted.ground
    found = leaves.known(key, Chapter, ground)
    if found is None and stopped:
        key = key and plain_key("checked", key)
        found = leaves.known(key, Chapter, ground)
    return found or leaves.made(
        key, ground, lambda watch: write_chapter(wanted, leaves, id, watch, checked_only=stopped)
    )


def _own_files(folder: Folder) -> dict[str, _Named]:
    """Name and digest of each procedure's own files: itself, side files, issues."""
    own: dict[str, _Named] = {id: [_named(file)] for id, file in folder.procedures.items()}
    for (base, _), file in folder.sides.items():
        own.setdefault(base, []).append(_named(file))
    for file in folder.posted.items():
        own.setdefault(file[0].rsplit("/", 2)[-2], []).append(_named(file))
    return own


def _named(file: tuple[str, bytes]) -> tuple[str, str]:
    return file[0], hashlib.sha256(file[1]).hexdigest()


def _problems(wanted: Wanted, chapters: Mapping[str, Chapter]) -> tuple[Problem, ...]:
    """Of form, of the lab, of what is posted, of every procedure."""
    nouns, study = wanted.nouns, wanted.ground.study
    lab = replace(study, uses={id: it.uses for id, it in chapters.items() if it.uses})
    found = [*nouns.problems, *in_lab(lab), *posted_in_lab(lab, wanted.shelf, nouns.folder.procedures)]
    found += altered_pictures(nouns.folder)
    if not nouns.formulas.faults:
        found += settings_problems(lab.lab, Known(nouns.formulas.formulas))
    found += (problem for chapter in chapters.values() for problem in chapter.problems)
    misread = bool(nouns.problems) or any(chapter.misread for chapter in chapters.values())
    return by_place(accept_in_lab(lab, fold_missing(found), whole=not misread))


def _stops(problems: tuple[Problem, ...]) -> bool:
    return any(problem.level is Level.ERROR for problem in problems)


def _not_made(wanted: Wanted, chapters: Mapping[str, Chapter]) -> dict[str, tuple[str, ...]]:
    """Rules not run because a noun is missing everywhere, with the missing nouns."""
    ran = {id for chapter in chapters.values() for id in chapter.ran}
    lab = wanted.ground.study
    return {
        rule.doc.id: rule.doc.needs
        for rule in RULES
        if rule.doc.needs and not (rule.doc.id in ran if rule.in_procedure else rule.can_run(lab))
    }
