"""The strip of a run says what the walk believes, piece by piece, and in words."""

import datetime
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import pytest

from generator.outputs.strip import strip_html
from generator.outputs.strip_scale import THINNEST, scale_of, tick_text, wrapped
from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.views.filling.strip import strip_view
from generator.views.strip import BandView, StripView

ROOT = Path(__file__).parents[2]
LABS = ("procedures", "tests/labs/resin", "tests/labs/furnace", "tests/labs/soil", "tests/labs/minimum")
TODAY = datetime.date(2026, 11, 25)
MINUTE = 60.0


@cache
def studies(folder: str) -> dict[str, Study]:
    """The studies of a lab by id."""
    return dict(check(read_lab(open_folder(ROOT / folder, folder)), TODAY).studies)


def demo() -> tuple[Study, StripView]:
    """The demo's study and its strip."""
    study = studies("procedures")["copper-the-holes"]
    view = strip_view(study)
    assert view is not None
    return study, view


def band(view: StripView, kind: str) -> BandView:
    """The band of a kind."""
    return next(one for one in view.bands if one.kind == kind)


def ids(view: StripView, start: float, end: float) -> tuple[str, str]:
    """First and last step under a piece."""
    return view.visits[int(start)].id, view.visits[int(end - 0.001)].id


def test_places_are_those_between_put_in_and_take_out() -> None:
    """Read off the procedure by hand: six places, and the copper cell until the current is off."""
    _, view = demo()
    (lane,) = band(view, "place").lanes
    assert [(span.text, *ids(view, span.start, span.end)) for span in lane.spans] == [
        ("1 Soak cleaner", "soak-in", "soak-in"),
        ("2 Conditioner", "cond-in", "cond-in"),
        ("3 Graphite", "black-in", "black-in"),
        ("4 Fixing oven", "fix", "fix"),
        ("5 Micro-etch", "etch-in", "etch-in"),
        ("6 Copper cell", "copper-in", "power-down"),
    ]


def test_a_lid_is_open_from_its_open_step_to_the_step_before_its_close() -> None:
    _, view = demo()
    (lane,) = band(view, "open").lanes
    found = [(span.text[0], *ids(view, span.start, span.end)) for span in lane.spans if span.text[0] != "4"]
    assert found == [
        ("1", "open-1", "soak-out"),
        ("2", "open-2", "cond-out"),
        ("3", "open-3", "black-out"),
        ("5", "open-5", "rinse-5"),
        ("6", "open-6", "copper-out"),
    ]


def test_fresh_gloves_begin_a_piece_of_their_own() -> None:
    _, view = demo()
    gloves = next(lane for lane in band(view, "worn").lanes if lane.name == "Nitrile gloves")
    starts = [view.visits[int(span.start)].id for span in gloves.spans]
    assert starts == ["wear-clean", "fresh-gloves", "etch-wear"]


def test_the_limit_runs_from_the_spray_to_the_cell_and_has_time_to_spare() -> None:
    """Lid 15 s, tray 60 s, look 60 s, rack 120 s, lid 60 s: 5 min 15 s of 8 min used, 2 min 45 s to spare."""
    _, view = demo()
    (lane,) = band(view, "limit").lanes
    used, spare = lane.spans
    assert ids(view, used.start, used.end) == ("close-5", "open-6")
    start, goal = view.visits[int(used.start)].start, view.visits[int(used.end)].start
    assert goal - start == pytest.approx(5.25)
    cell = view.visits[int(spare.start)]
    assert (spare.end - spare.start) * (cell.end - cell.start) == pytest.approx(2.75)
    assert "step 48 up to 8\u00a0min after step 42" in lane.name


def test_attention_adds_up_to_the_run() -> None:
    for folder in LABS:
        for study in studies(folder).values():
            view = strip_view(study)
            assert view is not None
            (lane,) = band(view, "attention").lanes
            assert [span.start for span in lane.spans[1:]] == [span.end for span in lane.spans[:-1]]
            assert (lane.spans[0].start, lane.spans[-1].end) == (0, len(view.visits))


def test_every_row_says_what_the_walk_believes() -> None:
    study, view = demo()
    at = {name: number for number, name in enumerate(view.columns)}
    for moment, row in zip(study.walk.straight, view.rows, strict=True):
        assert bool(row[at["Part is wet"]]) == moment.after.has("wet")
        assert bool(row[at["Part is in"]]) == moment.after.has("in")
        assert len(row[at["Open"]].split(", ")) == max(len(list(moment.after.names("open"))), 1)
        assert bool(row[at["Current or heat on"]]) == any(moment.after.names("live"))


@pytest.mark.parametrize("folder", LABS)
def test_time_runs_evenly_and_every_step_is_seen(folder: str) -> None:
    for study in studies(folder).values():
        view = strip_view(study)
        assert view is not None
        scale = scale_of(view)
        widths = [right - left for left, right in zip(scale.lefts, scale.rights, strict=True)]
        assert min(widths) >= THINNEST - 1e-9
        times = [visit.end - visit.start for visit in view.visits]
        rates = {round(w / t, 6) for w, t in zip(widths, times, strict=True) if t and w > THINNEST + 1e-9}
        assert len(rates) <= 1
        ticks = [place for place, _ in scale.ticks()]
        assert ticks == sorted(ticks)


@pytest.mark.parametrize("folder", LABS)
def test_the_drawing_is_sound_without_styles_and_inside_its_paper(folder: str) -> None:
    for study in studies(folder).values():
        view = strip_view(study)
        assert view is not None
        html = strip_html(view)
        root = ElementTree.fromstring(f"<div>{html}</div>")
        assert "style=" not in html
        drawing = root.find(".//svg[@role='img']")
        assert drawing is not None and drawing.findtext("title") and drawing.findtext("desc")
        wide = float(drawing.attrib["width"])
        for rect in drawing.iter("rect"):
            assert float(rect.attrib["x"]) + float(rect.attrib["width"]) <= wide
        assert len(root.findall(".//tbody/tr")) == len(view.visits)
        links = {a.attrib["href"] for a in root.findall(".//tbody//a")}
        assert links == {f"#{visit.id}" for visit in view.visits}


def test_authors_text_is_escaped() -> None:
    _, view = demo()
    lane = view.bands[0].lanes[0]
    evil = type(lane)('<script>"&', lane.spans)
    changed = type(view)(
        view.procedure,
        "<b>",
        "<i>",
        view.visits,
        view.stages,
        (type(view.bands[0])("worn", "<u>", (evil,)),),
        (),
    )
    html = strip_html(changed)
    assert "<script>" not in html and "<b>" not in html and "<i>" not in html


def test_small_words() -> None:
    assert [tick_text(minute) for minute in (0, 45, 120, 90, 2880)] == [
        "0", "45\u00a0min", "2\u00a0h", "1\u00a0h\u00a030", "2\u00a0d",
    ]  # fmt: skip
    assert wrapped("Receive the board and free the drill", 80, 6) == ("Receive the", "board and", "free the…")
    assert wrapped("Unsplittable", 40, 6) == ("Unspl…",)
