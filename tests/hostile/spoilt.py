"""Hostile texts, and a lab with every field of the model in which each place that takes words carries one."""

from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

from generator.model.described import described
from generator.notation import ListNode, MapNode, as_yaml, plain, read_text
from generator.pipeline import check
from generator.problems import Level, Problem
from generator.reading import open_folder, read_lab
from generator.reading.folder import Folder

# Each would show itself if it were executed or read as markup anywhere.
TEXTS = (
    "<script>window.__ran=1</script>",
    "<img src=x onerror='window.__ran=1'>",
    "[link](javascript:window.__ran=1)",
    "{{ 7 * 191 }} {% raise %}",
    '#panic("typst") $sum$ *strong* @ref',
    "</style><style>body{display:none}</style>",
    "\"><svg onload=window.__ran=1>",
    "' onmouseover='window.__ran=1",
    "</script><script>window.__ran=1</script>",
    "<math><mi>x</mi></math> ${7*191}",
    "<a href='javascript:window.__ran=1'>a</a>",
    "]]> --> &lt;b&gt; `code` \\u003c",
)
LAB = Path(__file__).parent / "lab"
FIELDS = frozenset(field.name for noun in described() for field in noun.fields)
Spot = tuple[Any, ...]  # file, then keys and indexes; None at the end stands for the key itself
Trees = dict[str, Any]


@cache
def _texts() -> dict[str, str]:
    return {path.relative_to(LAB).as_posix(): path.read_text("utf-8") for path in sorted(LAB.glob("*.yml"))}


def trees() -> Trees:
    """The lab's files as plain data, fresh each time."""
    found = {}
    for name, text in _texts().items():
        root = read_text(text.encode(), name).root
        assert root is not None
        found[name] = plain(root)
    return found


def spots(tree: Any, path: Spot = ()) -> Iterator[Spot]:
    """Every scalar of a tree, and every name that an author chose."""
    if isinstance(tree, dict):
        for key, value in tree.items():
            if key not in FIELDS:
                yield (*path, key, None)
            yield from spots(value, (*path, key))
    elif isinstance(tree, list):
        for index, value in enumerate(tree):
            yield from spots(value, (*path, index))
    else:
        yield path


def spoil(tree: Any, path: Spot, put: Callable[[str], str]) -> None:
    """Give other words to one place."""
    *way, last = path if path[-1] is not None else path[:-1]
    for part in way:
        tree = tree[part]
    if path[-1] is None:
        items = [(put(key) if key == last else key, value) for key, value in tree.items()]
        tree.clear()
        tree.update(items)
    else:
        tree[last] = put(tree[last])


def written(files: Trees) -> dict[str, bytes]:
    """The lab's files as YAML."""
    return {name: as_yaml(tree).encode() for name, tree in files.items()}


def folder_of(files: Trees) -> Folder:
    """The lab's folder in memory."""
    real = open_folder(LAB, "lab")
    data = written(files)
    return Folder(
        LAB,
        "lab",
        {"lab/lab.yml": data["lab.yml"]},
        {"clean-a-plate": ("lab/clean-a-plate.yml", data["clean-a-plate.yml"])},
        {("clean-a-plate", tail): (f"lab/clean-a-plate.{tail}.yml", data[f"clean-a-plate.{tail}.yml"])
         for tail in ("morning", "de")},
        real.pictures,
        None,
        (),
    )  # fmt: skip


@cache
def all_spots() -> tuple[Spot, ...]:
    """Every place of the lab, the file first."""
    return tuple((name, *path) for name, tree in trees().items() for path in spots(tree))


def spoil_all(places: Iterable[Spot], put: Callable[[Spot, str], str]) -> Trees:
    """The lab with other words in all these places; names come last, since they are the way to values."""
    files = trees()
    for place in sorted(places, key=lambda place: (place[-1] is None, -len(place))):
        name, *path = place
        spoil(files[name], tuple(path), lambda old, place=place: put(place, old))  # type: ignore[misc]
    return files


def errors(files: Trees, day: Any) -> tuple[Problem, ...]:
    """The errors of the lab with these files: of reading, and where there are none of checking."""
    read = read_lab(folder_of(files))
    found = tuple(problem for problem in read.problems if problem.level is Level.ERROR)
    return found or tuple(p for p in check(read, day).problems if p.level is Level.ERROR)


def lines(files: Trees) -> dict[tuple[str, int], list[Spot]]:
    """The places that stand on each line of each file as it is written."""
    found: dict[tuple[str, int], list[Spot]] = {}
    for (name, tree), (_, data) in zip(files.items(), written(files).items(), strict=True):
        root = read_text(data, name).root
        for path, where in _wheres(root, tree, ()):
            found.setdefault((f"lab/{name}", where), []).append((name, *path))
    return found


def _wheres(node: Any, tree: Any, path: Spot) -> Iterator[tuple[Spot, int]]:
    """The line of every place; `tree` has the same shape, and `path` is told in its names."""
    if isinstance(node, MapNode):
        for (key, value), (name, inner) in zip(node.items, tree.items(), strict=True):
            yield (*path, name, None), key.where.line
            yield from _wheres(value, inner, (*path, name))
    elif isinstance(node, ListNode):
        for index, value in enumerate(node.items):
            yield from _wheres(value, tree[index], (*path, index))
    else:
        yield path, node.where.line
