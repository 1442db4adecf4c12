"""Hazard statements: their texts, and the classes, categories, signs and words that bring them."""

from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from typing import Any

from generator.hazards.edition import Edition
from generator.hazards.evidence import Evidence
from generator.hazards.tables import read_table

DANGER = "Danger"
WARNING = "Warning"


@dataclass(frozen=True, slots=True)
class Use:
    """One class with its categories under one statement, with pictograms and signal word ("" for none)."""

    hazard_class: str
    short: str
    categories: tuple[str, ...]
    pictograms: tuple[str, ...]
    signal: str
    rev10: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Statement:
    """An H or EUH statement; `clp_precautions` is None where the CLP set of codes is not held."""

    code: str
    text: str
    clp_text: str
    uses: tuple[Use, ...]
    withdrawn: tuple[Edition, ...]
    absent: tuple[Edition, ...]
    clp_precautions: tuple[str, ...] | None
    evidence: Evidence

    def in_edition(self, edition: Edition) -> bool:
        """Whether the edition has this statement today."""
        return edition not in self.withdrawn and edition not in self.absent

    def words(self, edition: Edition) -> str:
        """The text as that edition spells it."""
        return self.clp_text if edition is Edition.CLP else self.text

    @property
    def pictograms(self) -> tuple[str, ...]:
        """Pictograms of its gravest use."""
        return self.uses[0].pictograms if self.uses else ()

    @property
    def signal(self) -> str:
        """The strongest signal word of its uses; "" where it has none."""
        words = {use.signal for use in self.uses}
        return DANGER if DANGER in words else WARNING if WARNING in words else ""

    def precautions(self, edition: Edition) -> tuple[str, ...] | None:
        """P codes of that edition, in the order of its table; None where they are not held."""
        if edition is Edition.CLP:
            return self.clp_precautions
        return tuple(dict.fromkeys(code for use in self.uses for code in use.rev10))


def _use(row: dict[str, Any]) -> Use:
    return Use(
        row["class"],
        row["short"],
        tuple(row["categories"]),
        tuple(row["pictograms"]),
        row["signal"],
        tuple(row["rev10"]),
    )


def _statement(code: str, row: dict[str, Any]) -> Statement:
    clp = row.get("clp")
    return Statement(
        code,
        row["text"],
        row.get("clp_text", row["text"]),
        tuple(_use(use) for use in row.get("uses", ())),
        tuple(Edition(name) for name in row.get("withdrawn", ())),
        tuple(Edition(name) for name in row.get("not_in", ())),
        tuple(clp) if clp is not None else None,
        Evidence(row.get("evidence", "memory" if "withdrawn" in row else "secondary")),
    )


@cache
def _all() -> dict[str, Statement]:
    table = read_table("hazard_statements")
    held = {code: _statement(code, row) for code, row in table["statements"].items()}
    extra = {
        code: _statement(code, {**row, "not_in": ["rev10"], "clp": []})
        for code, row in table["supplements"].items()
    }
    return held | extra


def statement(code: str) -> Statement | None:
    """The statement of one code ("H314", "H360FD", "EUH031", also "H302+H312"), or None if there is none."""
    return _all().get(code.replace(" ", ""))


def statement_codes() -> tuple[str, ...]:
    """Every code held, single ones first, then the combined ones, then EUH."""
    return tuple(_all())


def is_statement(code: str) -> bool:
    """Whether a lab may write this code: one that was never withdrawn everywhere, alone or combined."""
    return statement_text(code, Edition.REV10) is not None or statement_text(code, Edition.CLP) is not None


def is_withdrawn(code: str, edition: Edition) -> bool:
    """Whether an edition had this statement once and has it no more."""
    known = statement(code)
    return known is not None and edition in known.withdrawn


def nearest_code(code: str) -> str:
    """The known code most like a mistyped one, or ""."""
    found = get_close_matches(code.strip().upper(), _all(), n=1, cutoff=0.6)
    return found[0] if found else ""


def statement_text(code: str, edition: Edition) -> str | None:
    """The text of a single or combined code in one edition; None if the edition has no such statement.

    A combination that the edition lists has its own text; any other is its parts joined by "; ".
    """
    known = statement(code)
    if known is not None:
        return known.words(edition) if known.in_edition(edition) else None
    parts = [statement(part) for part in code.replace(" ", "").split("+")]
    texts = [part.words(edition) for part in parts if part is not None and part.in_edition(edition)]
    return "; ".join(texts) if len(texts) == len(parts) > 1 else None


_ROUTES = (("H300", "H310", "H330"), ("H301", "H311", "H331"), ("H302", "H312", "H332"))


def combine_codes(codes: tuple[str, ...]) -> tuple[str, ...]:
    """The same codes, routes of one acute-toxicity category put together: H302 and H332 -> H302+H332."""
    out = list(codes)
    for routes in _ROUTES:
        present = [code for code in routes if code in out]
        if len(present) > 1:
            out[out.index(present[0])] = "+".join(present)
            out = [code for code in out if code not in present]
    return tuple(out)
