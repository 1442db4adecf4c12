"""The lab's own part of the reactivity chart: only its groups, in letters and in words."""

from generator.hazards import (
    NOT_HELD_SAYS,
    Meeting,
    group_count,
    group_name,
    held_groups,
    meeting,
    source_of,
)
from generator.model import KeepApart
from generator.study import LabStudy
from generator.study.reactivity import CHART, chart_groups_of
from generator.units import show_quantity
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import joined, low, role_title, thing_title
from generator.views.lab_hazards import CellView, TableView

BLANK = "not a statement of safety"
UNKNOWN = "not held here; look at the chart"


def reactivity_table(study: LabStudy) -> TableView:
    """Groups against groups, with words in every cell; and which substances are not on the chart."""
    placed = _placed(study)
    groups = tuple(sorted(placed))
    rows = tuple(
        (_head(study, row, placed[row]), *(_cell(row, column) for column in groups)) for row in groups
    )
    foot = (
        f"Letters and words of the chart {CHART}. A blank is {BLANK}: the chart says nothing there.",
        *_not_held(groups),
        *_not_placed(study),
        source_of("compatibility"),
    )
    heads = ("Group", *(f"Group {group}" for group in groups))
    return TableView("reactivity", "What reacts here", heads, rows, foot=foot) if groups else _none(foot)


def _none(foot: tuple[str, ...]) -> TableView:
    return TableView("reactivity", "What reacts here", ("Group",), (), foot=foot)


def _placed(study: LabStudy) -> dict[int, list[str]]:
    placed: dict[int, list[str]] = {}
    for id in map(str, study.lab.substances):
        for group in chart_groups_of(study.lab, id):
            placed.setdefault(group, []).append(id)
    return placed


def _head(study: LabStudy, group: int, ids: list[str]) -> CellView:
    members = joined(low(thing_title(study.lab, id)) for id in ids)
    return CellView(f"{group} {group_name(group) or ''}".strip(), note=members)


def _cell(row: int, column: int) -> CellView:
    if row == column:
        return CellView(f"same group; {BLANK}", mark="blank")
    found: Meeting = meeting(row, column)
    if found.says == NOT_HELD_SAYS:
        return CellView(UNKNOWN, note=BLANK, mark="unknown")
    if not found.reacts:
        return CellView(BLANK, mark="blank")
    doubt = "" if found.certain else " (doubtful: look at the chart)"
    return CellView(" ".join(found.codes), note=f"{', '.join(found.words)}{doubt}", mark="reacts")


def _not_held(groups: tuple[int, ...]) -> tuple[str, ...]:
    """Of how many groups the pairs are known here, and which of this lab's groups are not among them."""
    held = held_groups()
    missing = [f"{group} ({low(group_name(group) or '')})" for group in groups if group not in held]
    known = f"Pairs of {len(held)} of the chart's {group_count()} groups are held here."
    if not missing:
        return (known,)
    named = joined(missing)
    return (f"{known} Of this lab's groups the pairs of {named} are not: {UNKNOWN}. That is {BLANK}.",)


def _not_placed(study: LabStudy) -> tuple[str, ...]:
    left = [id for id in map(str, study.lab.substances) if not chart_groups_of(study.lab, id)]
    if not left:
        return ()
    named = joined(low(thing_title(study.lab, id)) for id in left)
    return (f"Not placed on the chart, so not in this table: {named}. That says nothing about them.",)


def keep_apart_table(study: LabStudy) -> TableView:
    """The lab's own pairs of groups that never meet, with the substances of each."""
    rows = tuple(
        (
            CellView(joined((_members(study, str(group)) for group in pair.groups), "never with")),
            CellView(pair.because, note=_small(study, pair)),
        )
        for pair in study.lab.keep_apart
    )
    return TableView("kept_apart", "Kept apart by this lab", ("Never together", "Because"), rows)


def _small(study: LabStudy, pair: KeepApart) -> str:
    """From which amount on a row counts, and who decided it."""
    small = pair.small
    if small is None:
        return ""
    by = low(role_title(study.lab, small.decided_by))
    when = f", {day_words(small.decided)}" if small.decided else ""
    return f"Counts from {show_quantity(small.below)} on. {small.because} Decided by: {by}{when}."


def _members(study: LabStudy, group: str) -> str:
    ids = [str(id) for id, one in study.lab.substances.items() if group in one.groups]
    named = ", ".join(low(thing_title(study.lab, id)) for id in ids)
    return f"{group} ({named})" if named else f"{group} (none declared)"
