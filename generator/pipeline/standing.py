"""How each procedure stands: what is shown of it, and the lab as it was posted."""

import datetime
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from generator.formulas import Formula
from generator.model import Card, Lab
from generator.model.posted import IssueHead, Withdrawal
from generator.pipeline.check import Checked
from generator.pipeline.contents import Drafted, all_drafted, card_codes, known_formulas, picture_digests
from generator.pipeline.posted_pictures import as_posted
from generator.posting.facts import facts_of
from generator.posting.issue import Issue
from generator.posting.shelf import Posted, Shelf
from generator.posting.used import LIVE, NOUNS, Stock
from generator.reading import LabRead
from generator.study import LabStudy, Study, study_lab, study_procedure
from generator.sums import Known, Sum, Sums, work_out
from generator.units import Quantity, read_quantity
from generator.views.card import Status

_AT_ONCE = ("emergencies", "glossary")
_NEVER = datetime.date.min


@dataclass(frozen=True)
class Standing:
    """One procedure as it is shown: its studies by class, its newest issue, the codes of its cards.

    `codes` are a draft's; those of an issue stand in its head. `issue` is the newest where the files differ
    from it; `uses` are the lab's nouns of a procedure that is posted just as its files stand.
    """

    id: str
    studies: Mapping[str, Study]
    status: Status
    codes: Mapping[str, str] = field(default_factory=dict)
    head: IssueHead | None = None
    withdrawn: Withdrawal | None = None
    issue: Issue | None = None
    uses: frozenset[tuple[str, str]] = frozenset()

    @property
    def edited(self) -> bool:
        """Whether the files differ from what is posted."""
        return self.issue is not None

    def card(self, study: Study, card: Card) -> tuple[str, str]:
        """Issue and check code that a card bears; a draft has no issue."""
        tail = str(study.procedure.id).partition(".")[2]
        name = f"{tail}/{card.id}" if tail else str(card.id)
        if self.status != "draft" and self.head and name in self.head.cards:
            found = self.head.cards[name]
            return str(found.issue), str(found.code)
        return "", self.codes.get(name, "")


@dataclass(frozen=True)
class Shown:
    """All procedures as they are shown, and the lab that their pages speak of."""

    lab: LabStudy
    standings: tuple[Standing, ...]

    @property
    def studies(self) -> tuple[Study, ...]:
        """Every study that has a page."""
        return tuple(study for one in self.standings for study in one.studies.values())

    def of(self, study: Study) -> Standing:
        """The standing of a study's procedure."""
        id = str(study.procedure.id).partition(".")[0]
        return next(one for one in self.standings if one.id == id)


def show_standing(
    read: LabRead, checked: Checked, draft: bool, stock: Stock | None = None,
    pictures: Mapping[str, str] | None = None, coded: Collection[str] | None = None,
    formulas: Mapping[str, Formula] | None = None,
) -> tuple[tuple[Standing, ...], tuple[Issue, ...]]:  # fmt: skip
    """The posted issues where they differ from the files, or with `draft` the files as they stand.

    Beside them the issues that are shown in place of the files. `stock`, `pictures` (digests by name) and
    `formulas` by name are worked out where not given. `coded` are the classes whose cards get their codes,
    all where not given.
    """
    known, shelf = known_formulas(read) if formulas is None else formulas, checked.shelf
    found: list[Standing] = []
    issues: list[Issue] = []
    for drafted in all_drafted(read, checked, stock, pictures).values():
        issue = _differing_issue(shelf, drafted)
        if issue and not draft:
            issues.append(issue)
        found.append(_standing(read, checked, drafted, issue, draft, known, coded))
    gone = () if draft else tuple(_without_file(read, checked, issues))
    return (*found, *gone), tuple(issues)


def _differing_issue(shelf: Shelf, drafted: Drafted) -> Issue | None:
    """The newest issue, where it says anything else than the files."""
    last = shelf.last(drafted.id)
    if last is None or last.head is None or last.head.check_code == drafted.code:
        return None
    issue = last.read()
    # Another code alone may come from another way of writing facts down.
    return issue if issue and facts_of(issue.content) != dict(drafted.facts) else None


def _standing(
    read: LabRead,
    checked: Checked,
    drafted: Drafted,
    issue: Issue | None,
    draft: bool,
    formulas: Mapping[str, Formula],
    coded: Collection[str] | None,
) -> Standing:
    head, withdrawn = checked.shelf.head(drafted.id), checked.shelf.withdrawn(drafted.id)
    studies = drafted.studies
    if issue and not draft:
        studies = posted_studies(issue, read, checked)
    status: Status = "posted" if head and (issue is None or not draft) else "draft"
    if withdrawn and status == "posted":
        status = "withdrawn"
    wanted = {tail: study for tail, study in studies.items() if coded is None or tail in coded}
    codes = card_codes(wanted, formulas) if status == "draft" else {}
    uses = frozenset[tuple[str, str]]()
    if head and issue is None and not withdrawn:
        nouns = drafted.content["lab"]
        uses = frozenset((noun, id) for noun in NOUNS for id in nouns.get(noun, ()))
    return Standing(drafted.id, studies, status, codes, head, withdrawn, issue, uses)


def _without_file(read: LabRead, checked: Checked, issues: list[Issue]) -> Iterable[Standing]:
    """Withdrawn procedures whose file is gone: their cards may still hang, and their page must say so."""
    for id in checked.shelf.issues:
        last, withdrawn = checked.shelf.last(id), checked.shelf.withdrawn(id)
        issue = last.read() if last and withdrawn and id not in read.procedures else None
        if issue:
            issues.append(issue)
            yield Standing(id, posted_studies(issue, read, checked), "withdrawn", {}, issue.head, withdrawn)


def posted_studies(issue: Issue, read: LabRead, checked: Checked) -> dict[str, Study]:
    """An issue studied as a lab of its own, with what is true of the room today."""
    assert checked.lab is not None
    lab = _live(issue.lab, checked.lab.lab)
    everywhere = study_lab(lab, {}, checked.lab.pictures, checked.lab.today)
    known, answers = Known(read.formulas.formulas), issue.content.get("sums", {})
    posted = Posted(checked.shelf.issues.get(str(issue.procedure.id), ()))
    out: dict[str, Study] = {}
    shown = issue.content.get("pictures", {})
    live = picture_digests(read, shown)
    for tail, frozen in {"": issue.procedure, **issue.classes}.items():
        procedure = as_posted(frozen, shown, live, read.folder)
        sums = _as_posted(work_out(lab, procedure, known)[0], f"{tail}/" if tail else "", answers)
        base = issue.procedure if tail else None
        out[tail] = study_procedure(everywhere, procedure, sums, base, issue.languages, posted)
    return out


def _as_posted(sums: Sums, prefix: str, answers: Mapping[str, str]) -> Sums:
    """A formula that gives another answer today changes nothing that is posted."""
    kept = {key: _answered(sum, answers.get(f"{prefix}{key}")) for key, sum in sums.by_key.items()}
    return Sums(kept)


def _answered(sum: Sum, text: str | None) -> Sum:
    posted = read_quantity(text) if text else None
    if posted is None or _near(posted, sum.answer):
        return sum
    return replace(sum, answer=posted)


def _near(one: Quantity, other: Quantity) -> bool:
    return one.unit == other.unit and abs(one.number - other.number) <= 1e-5 * abs(other.number)


def _live(posted: Lab, live: Lab) -> Lab:
    """A posted lab with the fields that no issue holds, as they are today."""
    room = {name: getattr(live.lab, name) for name in LIVE["lab"]}
    update: dict[str, Any] = {"lab": posted.lab.model_copy(update=room)}
    update |= {name: getattr(live, name) for name in _AT_ONCE}
    for noun, fields in LIVE.items():
        if noun != "lab":
            there = getattr(live, noun)
            update[noun] = {
                id: one.model_copy(update={field: getattr(there[id], field) for field in fields})
                if id in there
                else one
                for id, one in getattr(posted, noun).items()
            }
    return posted.model_copy(update=update)


def published_lab(live: LabStudy, issues: Iterable[Issue], standings: Sequence[Standing]) -> LabStudy:
    """The lab with each noun as the newest issue that names it has it, so that all pages agree.

    Where that issue says what the files say, the noun is as in the files; a withdrawn issue gives only what
    nothing else has.
    """
    lab, newest = live.lab, _newest(standings)
    there_still = {one.id for one in standings if not one.withdrawn}
    for issue in sorted(issues, key=lambda issue: issue.head.posted):
        posted, gone = _live(issue.lab, live.lab), str(issue.procedure.id) not in there_still
        for noun in NOUNS:
            there = getattr(lab, noun)
            taken = {
                id: one
                for id, one in getattr(posted, noun).items()
                if id not in there or not (gone or newest.get((noun, str(id)), _NEVER) >= issue.head.posted)
            }
            lab = lab.model_copy(update={noun: {**there, **taken}}) if taken else lab
    return study_lab(lab, {}, live.pictures, live.today)


def _newest(standings: Iterable[Standing]) -> dict[tuple[str, str], datetime.date]:
    """For each noun the last day on which it was posted just as the files have it."""
    found: dict[tuple[str, str], datetime.date] = {}
    for one in standings:
        posted = one.head.posted if one.head else _NEVER
        found |= {name: max(found.get(name, _NEVER), posted) for name in one.uses}
    return found
