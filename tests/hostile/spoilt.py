"""Hostile texts, and a lab in which every free text carries one of them, each in its turn."""

from collections.abc import Iterator
from itertools import cycle
from pathlib import Path

from generator.notation import as_yaml, plain, read_text

# Each would show itself if it were executed or read as markup anywhere.
TEXTS = (
    "<script>window.__ran = 1</script>",
    "<img src=x onerror='window.__ran = 1'>",
    "[link](javascript:window.__ran=1)",
    "{{ 7 * 191 }} {% raise %}",
    '#panic("typst") $sum$ *strong*',
    "</style><style>body{display:none}</style>",
)
# Fields whose words are shown and nothing else hangs on.
FREE = frozenset(("say", "why", "title", "stop_rule", "question", "answer", "because", "symptom", "note"))


def spoil(value: object, turn: Iterator[str], field: str = "") -> object:
    """The same nouns with a hostile text at the end of each free text."""
    if isinstance(value, dict):
        return {key: spoil(inner, turn, str(key)) for key, inner in value.items()}
    if isinstance(value, list):
        return [spoil(inner, turn, field) for inner in value]
    return f"{value} {next(turn)}" if field in FREE and isinstance(value, str) else value


def write_spoilt(source: Path, target: Path) -> Path:
    """A copy of a lab's folder in which all free texts are hostile."""
    turn = cycle(TEXTS)
    for path in _files(source):
        fresh = target / path.relative_to(source)
        fresh.parent.mkdir(parents=True, exist_ok=True)
        if path.suffix != ".yml":
            fresh.write_bytes(path.read_bytes())
            continue
        root = read_text(path.read_bytes(), path.name).root
        assert root is not None
        spoilt = spoil(plain(root), turn)
        assert isinstance(spoilt, dict)
        fresh.write_text(as_yaml(spoilt), encoding="utf-8")
    return target


def _files(source: Path) -> Iterator[Path]:
    return (path for path in sorted(source.rglob("*")) if path.is_file())
