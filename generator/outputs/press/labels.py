"""Container and waste labels on sheets of paper: as large as the container asks, or on a larger label."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from generator.hazards import pictogram_svg
from generator.outputs.press.drawing import Box, Text, moved, plain_mark
from generator.outputs.press.label_layout import Pictogram, label_texts, laid_out
from generator.outputs.press.label_sizes import CLASSES, LABELS, Tiling, VolumeClass, tiling
from generator.outputs.press.template_door import print_template
from generator.outputs.press.texts import demand, unprintable_in
from generator.problems import NewelError
from generator.views.labels import ContainerLabelView
from generator.views.print_setting import PrintSetting

Mark = Text | Box | Pictogram
# One size for jugs and drums alike: that of the larger ones.
_WASTE = replace(CLASSES[3], name="up to 500 L")
_GROWN = (1.6, 1.45, 1.3, 1.2, 1.1, 1.0)


@dataclass(frozen=True, slots=True)
class SetLabel:
    """A label that fits: for which containers, its size in mm, its marks from its top left corner."""

    view: ContainerLabelView
    volume: VolumeClass
    size: tuple[float, float]
    marks: tuple[Mark, ...]


def set_label(view: ContainerLabelView, volume: VolumeClass, paper: str = "A4") -> SetLabel | None:
    """The smallest label on which everything stands at the least sizes, never smaller; None if none does."""
    demand(view.title, unprintable_in(label_texts(view)))
    for size in LABELS:
        if size[0] >= volume.label[0] and tiling(size, paper):
            marks = _largest(view, volume, size)
            if marks is not None:
                return SetLabel(view, volume, size, marks)
    return None


def _largest(
    view: ContainerLabelView, volume: VolumeClass, size: tuple[float, float]
) -> tuple[Mark, ...] | None:
    """The label with the largest letters that fill it, never under the least."""
    ways = (laid_out(view, replace(volume, x_height=volume.x_height * grown), size) for grown in _GROWN)
    return next((marks for marks in ways if marks is not None), None)


@lru_cache(maxsize=500)
def container_labels_pdf(view: ContainerLabelView, setting: PrintSetting, paper: str = "A4") -> bytes:
    """A sheet of equal labels for each class of volume; NewelError where one needs more than a sheet."""
    found = [_demanded(view, volume, paper) for volume in CLASSES]
    pages = [_page([one] * _count(one.size, paper), paper) for one in found]
    return _print(f"Labels: {view.title}", pages, setting)


@lru_cache(maxsize=20)
def waste_labels_pdf(
    views: tuple[ContainerLabelView, ...], setting: PrintSetting, paper: str = "A4"
) -> bytes:
    """A label for each container, fit for all up to 500 L, as many as go on a sheet."""
    found = [_demanded(view, _WASTE, paper) for view in views]
    pages = []
    for size in dict.fromkeys(one.size for one in found):
        same = [one for one in found if one.size == size]
        step = _count(size, paper)
        pages += [_page(same[n : n + step], paper) for n in range(0, len(same), step)]
    return _print("Waste-container labels", pages, setting)


def _demanded(view: ContainerLabelView, volume: VolumeClass, paper: str) -> SetLabel:
    found = set_label(view, volume, paper)
    if found is None:
        raise NewelError(
            "label-too-small",
            f"the label of {view.title!r} for containers {volume.name} needs more than a sheet of {paper}",
            "a label is never set in smaller letters than its container asks for",
            "shorten what is written on it",
        )
    return found


def _count(size: tuple[float, float], paper: str) -> int:
    way = _tiled(size, paper)
    return way.columns * way.rows


def _tiled(size: tuple[float, float], paper: str) -> Tiling:
    way = tiling(size, paper)
    assert way is not None
    return way


def _page(labels: Sequence[SetLabel], paper: str) -> dict[str, object]:
    way = _tiled(labels[0].size, paper)
    marks: list[Mark] = []
    for number, one in enumerate(labels):
        row, column = divmod(number, way.columns)
        x, y = way.left + column * one.size[0], way.top + row * one.size[1]
        marks += _lines_to_cut(one, x, y)
        marks += (moved(mark, x, y) for mark in one.marks)
    first = labels[0]
    wide, high = first.size
    words = f"For containers {first.volume.name}: {high:g} × {wide:g} mm"
    return {
        "width": way.width,
        "height": way.height,
        "marks": [plain_mark(mark) for mark in marks],
        "words": words,
    }


def _lines_to_cut(one: SetLabel, x: float, y: float) -> Iterable[Mark]:
    yield Box(x, y, one.size[0], one.size[1], line=0.1)


def _print(title: str, pages: list[dict[str, object]], setting: PrintSetting) -> bytes:
    if not pages:
        raise NewelError("nothing-to-print", f"{title}: there is nothing to label")
    codes = {mark["code"] for page in pages for mark in page["marks"] if mark["kind"] == "Pictogram"}  # type: ignore[attr-defined]
    drawings = {code: pictogram_svg(code) for code in sorted(codes)}
    data = {"pages": pages, "drawings": drawings, "draft": setting.draft}
    return print_template("labels.typ", data, title, setting.language, setting.dated)
