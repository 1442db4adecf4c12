"""Fill the page of a day plan: each session's parts, people, places and work, told in tables."""

from collections.abc import Iterator, Sequence

from generator.study import Study
from generator.units import Clock
from generator.views.addresses import day_plan_path, procedure_address
from generator.views.day_page import DayPageView, DaySectionView
from generator.views.day_plan import DayPlanView, LaneView
from generator.views.filling.class_day import planned_work
from generator.views.filling.day_plan import (
    ASKED_HEADS,
    CAUTION,
    LATEST_HEADS,
    PART_HEADS,
    asked_rows,
    plan_facts,
    plan_rows,
)
from generator.views.lab_hazards import CellView, TableView
from generator.views.shown import BannerView, FactView, LinkView


def day_page_view(
    study: Study, days: Sequence[DayPlanView], banners: tuple[BannerView, ...], files: frozenset[str]
) -> DayPageView:
    """The page of all its sessions."""
    id = str(study.procedure.id)
    pdf = day_plan_path(id)
    return DayPageView(
        id,
        f"Day plan: {study.procedure.title}",
        LinkView(study.procedure.title, procedure_address(id)),
        CAUTION,
        tuple(_section(study, day, f"day_{number}") for number, day in enumerate(days, start=1)),
        (FactView("Print the day plan", pdf),) if pdf in files else (),
        banners,
    )


def _section(study: Study, day: DayPlanView, anchor: str) -> DaySectionView:
    title = f"{day.session}, {day.sitting}" if day.sitting else day.session
    facts = tuple(FactView(label, text) for label, text in plan_facts(study, day))
    return DaySectionView(anchor, title, facts, tuple(_tables(day, anchor)))


def _tables(day: DayPlanView, anchor: str) -> Iterator[TableView]:
    yield _table(f"{anchor}_parts", "Who has which part", PART_HEADS, plan_rows(day))
    yield _table(f"{anchor}_places", "Which places are busy", ("Place", "Part and times"), [
        (lane.label, _times(lane)) for lane in day.places
    ])  # fmt: skip
    if day.hands:
        rows = [(lane.label, _times(lane)) for lane in day.hands]
        yield _table(f"{anchor}_hands", "Whose hands are busy", ("Operator", "Part and times"), rows)
    if day.latest:
        yield _table(f"{anchor}_latest", "Latest moments", LATEST_HEADS, day.latest)
    if day.asked:
        yield _table(f"{anchor}_asked", "Who is asked to come", ASKED_HEADS, asked_rows(day))
    lines = sorted(planned_work(day), key=lambda line: (line.start.minutes, line.part))
    clock = [(str(one.start), str(one.end), one.part, one.told, one.place) for one in lines]
    yield _table(f"{anchor}_clock", "By the clock", ("From", "Until", "Part", "What", "Where"), clock)


def _times(lane: LaneView) -> str:
    return "; ".join(
        f"{bar.text}: {Clock(round(bar.start))} to {Clock(round(bar.end))}" for bar in lane.bars
    )


def _table(anchor: str, title: str, heads: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> TableView:
    return TableView(anchor, title, heads, tuple(tuple(map(CellView, row)) for row in rows))
