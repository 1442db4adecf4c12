"""What declared statements say by the way in: eyes, skin, lungs, swallowing; later, water, metals, fire."""

from dataclasses import dataclass

# By the classes of UN GHS parts 2 to 4: chapters 3.1 to 3.3 name the ways in, 3.4 the way of sensitising,
# 3.5 to 3.10 what comes later. H314 stands under swallowing too, since its table of precautions does
# (P301+P330+P331); EUH codes after the words of their own texts.
_WAYS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Eyes", ("H314", "H318", "H319", "H320", "EUH070")),
    ("Skin", ("H310", "H311", "H312", "H313", "H314", "H315", "H316", "H317", "EUH066", "EUH208")),
    ("Lungs", ("H33", "EUH029", "EUH031", "EUH032", "EUH071")),
    ("Swallowing", ("H300", "H301", "H302", "H303", "H304", "H305", "H314")),
    ("Long after", ("H34", "H35", "H36", "H37", "EUH38", "EUH43", "EUH44", "EUH45")),
    ("Life in water", ("H4", "EUH059")),
    ("Metals", ("H290",)),
    ("Fire and reaction", ("H2", "EUH0", "EUH209")),
)  # fmt: skip
# H290 (chapter 2.16) asks for P234, P390 and P406: for its container, and for nothing against fire.
_NOT_FIRE = ("H290", "EUH029", "EUH031", "EUH032", "EUH059", "EUH066", "EUH070", "EUH071")


@dataclass(frozen=True, slots=True)
class Effect:
    """A way in, or a kind of harm, with the declared codes that speak of it; none says nothing about it."""

    way: str
    codes: tuple[str, ...]


def effects(codes: tuple[str, ...]) -> tuple[Effect, ...]:
    """Every way, in a fixed order, with the codes that speak of it; empty where nothing is declared."""
    singles = tuple(dict.fromkeys(part for code in codes for part in code.replace(" ", "").split("+")))
    return tuple(
        Effect(way, tuple(code for code in singles if _speaks(code, way, heads))) for way, heads in _WAYS
    )


def _speaks(code: str, way: str, heads: tuple[str, ...]) -> bool:
    return code.startswith(heads) and not (way == "Fire and reaction" and code in _NOT_FIRE)
