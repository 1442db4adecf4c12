"""Precautionary statements: texts, and the short list chosen for a bench."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from generator.hazards.edition import Edition
from generator.hazards.evidence import Evidence
from generator.hazards.statements import statement
from generator.hazards.tables import read_table

Purpose = Literal["bench", "all"]

# CLP art. 28(3): not more than six on a label unless more are necessary (from memory). The UN sets no number.
BENCH_MOST = 6


@dataclass(frozen=True, slots=True)
class Precaution:
    """A P statement of one edition; `bench` is the text with its open places (... and [ ]) filled."""

    code: str
    text: str
    bench: str
    edition: Edition
    evidence: Evidence

    @property
    def group(self) -> str:
        """general, prevention, response, storage or disposal."""
        return _GROUPS[self.code[1]]


_GROUPS = {"1": "general", "2": "prevention", "3": "response", "4": "storage", "5": "disposal"}


@dataclass(frozen=True, slots=True)
class Precautions:
    """The chosen statements, the codes left out of it, and the H codes whose P codes are not held."""

    edition: Edition
    chosen: tuple[Precaution, ...]
    left_out: tuple[str, ...]
    not_held: tuple[str, ...]


def _precaution(code: str, row: dict[str, Any], edition: Edition) -> Precaution:
    text = row[edition.value]
    word = row.get("clp_evidence", "memory") if edition is Edition.CLP else "secondary"
    return Precaution(code, text, row.get("bench", text), edition, Evidence(word))


@cache
def _all(edition: Edition) -> dict[str, Precaution]:
    rows = read_table("precautions")["statements"]
    return {code: _precaution(code, row, edition) for code, row in rows.items() if edition.value in row}


def precaution(code: str, edition: Edition) -> Precaution | None:
    """One P statement of one edition, single or combined; None if that edition has none such.

    A combination that the table does not list is put together from its parts, as both editions allow.
    """
    known = _all(edition)
    if code in known:
        return known[code]
    parts = [known.get(part) for part in code.split("+")]
    held = [part for part in parts if part is not None]
    if len(held) < 2 or len(held) != len(parts):
        return None
    text, bench = (" ".join(getattr(part, name) for part in held) for name in ("text", "bench"))
    return Precaution(code, text, bench, edition, Evidence.MEMORY)


def precaution_text(code: str, edition: Edition) -> str | None:
    """The text of a P code in one edition, or None."""
    found = precaution(code, edition)
    return found.text if found else None


def precautions(codes: tuple[str, ...], edition: Edition, purpose: Purpose = "bench") -> Precautions:
    """P statements for a set of H codes: "all" that the tables give, or the short list for a bench.

    The short list: no statement that another one says better, none with an empty place to fill, none of
    storage, disposal or labels (place, waste and sheet say those), at most six, the most urgent first.
    """
    singles = tuple(dict.fromkeys(part for code in codes for part in code.split("+")))
    found = [(code, statement(code)) for code in singles]
    lists = [(code, held.precautions(edition) if held else None) for code, held in found]
    not_held = tuple(c for c, listed in lists if listed is None or not (listed or c.startswith("EUH")))
    union = tuple(dict.fromkeys(p for _, listed in lists for p in listed or ()))
    wanted = union if purpose == "all" else _short_list(union)
    chosen = tuple(text for code in wanted if (text := precaution(code, edition)) is not None)
    kept = {row.code for row in chosen}
    return Precautions(edition, chosen, tuple(code for code in union if code not in kept), not_held)


def _short_list(union: tuple[str, ...]) -> tuple[str, ...]:
    said = {weak for strong in union for weak in _SAYS_MORE.get(strong, ())}
    ranked = [code for code in _BENCH_ORDER if code in union and code not in said]
    return tuple(ranked[:BENCH_MOST])


# Our choice for a bench (common practice, no source): what to do at once, then what keeps it from happening.
_BENCH_ORDER = (
    "P305+P354+P338",
    "P302+P361+P354",
    "P303+P361+P353",
    "P305+P351+P338",
    "P316",
    "P310",
    "P260",
    "P280",
    "P262",
    "P223",
    "P222",
    "P210",
    "P342+P316",
    "P342+P311",
    "P304+P340",
    "P301+P330+P331",
    "P301+P316",
    "P301+P310",
    "P203",
    "P201",
    "P261",
    "P302+P352",
    "P302+P335+P334",
    "P306+P360",
    "P220",
    "P284",
    "P317",
    "P263",
    "P301+P317",
    "P301+P312",
    "P308+P316",
    "P308+P311",
    "P308+P313",
    "P336+P317",
    "P336+P315",
    "P273",
    "P272",
    "P264+P265",
    "P264",
    "P270",
    "P271",
    "P333+P317",
    "P333+P313",
    "P337+P317",
    "P337+P313",
    "P332+P317",
    "P332+P313",
    "P390",
    "P391",
    "P234",
    "P233",
)

# A statement on the left makes those on the right needless on a short list.
_SAYS_MORE: dict[str, tuple[str, ...]] = {
    "P260": ("P261",),
    "P305+P354+P338": ("P305+P351+P338", "P337+P317"),
    "P302+P361+P354": ("P302+P352", "P332+P317", "P362+P364"),
    "P303+P361+P353": ("P302+P352", "P332+P313", "P362+P364"),
    "P264+P265": ("P264",),
    "P301+P330+P331": ("P301+P317", "P301+P312"),
    "P301+P316": ("P301+P317",),
    "P301+P310": ("P301+P312",),
    "P342+P316": ("P304+P340",),
    "P342+P311": ("P304+P340",),
}
