"""The good inputs that strange ones are made from."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

from generator.units import UNITS
from tests.hostile.doors import BETWEEN

_TESTS = Path(__file__).parents[1]
LABS = ("checks/base", "labs/minimum", "labs/wheels", "labs/furnace")
_VALUES = (
    "8 min", "6 to 10 min", "up to 8 min", "at least 90 s", "0.90 +/- 0.05 mm", "0.90 ± 0.05 mm", "4 points",
    "16:40", "2026-06-03", "1.9 A/dm2", "45 °C", "-18 degC", "1,5 mL", "6–10 mL", "20 C", "12 mL/(A h)",
    "9.5 to 10.4", "1e3 g", "5 % w/w", "3 hours", "½ L", "1 000 L", "8 min 30 s", "10 times", "1.84 kg/L",
)  # fmt: skip


@cache
def labs() -> tuple[bytes, ...]:
    """A lab and a procedure of it, each."""
    return tuple(_lab(_TESTS / name) for name in LABS)


def _lab(folder: Path) -> bytes:
    procedure = next(path for path in sorted(folder.glob("*.yml")) if path.name != "lab.yml")
    return (folder / "lab.yml").read_bytes() + BETWEEN + procedure.read_bytes()


def files() -> tuple[bytes, ...]:
    """One file each, good ones and nasty ones."""
    nasty = (path for path in sorted((_TESTS / "hostile" / "nasty").rglob("*.yml")))
    good = (path for name in LABS for path in sorted((_TESTS / name).glob("*.yml")))
    return tuple(path.read_bytes() for path in (*good, *nasty))


def values() -> tuple[bytes, ...]:
    """Quantities, windows, times and days, right and wrong."""
    return tuple(text.encode() for text in (*_VALUES, *(f"7.5 {symbol}" for symbol in UNITS)))


SEEDS: dict[str, Callable[[], tuple[bytes, ...]]] = {
    "reader": files,
    "units": values,
    "walk": labs,
    "views": labs,
}
