"""What stands on a label for a set of statements, by the precedence rules."""

from dataclasses import dataclass

from generator.hazards.edition import Edition
from generator.hazards.statements import DANGER, WARNING, combine_codes, statement, statement_text
from generator.hazards.stronger import shown_codes

IRRITANT = frozenset({"H315", "H319"})
SENSITISER = frozenset({"H317"})

OPEN_QUESTION = (
    "CLP art. 26(1)(c): where GHS05 applies, GHS07 shall not appear for skin or eye irritation. It does not "
    "say why GHS05 applies. Where only H290 (corrosive to metals) brings GHS05, this product keeps GHS07 for "
    "H315 and H319: a sign too many still warns, a sign too few does not. ECHA's view was not read."
)


def _codes(codes: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(part for code in codes for part in code.replace(" ", "").split("+")))


def signal_word(codes: tuple[str, ...]) -> str:
    """ "Danger", "Warning" or "": Danger drops Warning (UN GHS 1.4.10.5.3.2)."""
    words = {found.signal for code in _codes(codes) if (found := statement(code)) is not None}
    return DANGER if DANGER in words else WARNING if WARNING in words else ""


def pictograms(codes: tuple[str, ...]) -> tuple[str, ...]:
    """The pictograms that a label needs, GHS01 first; those that the rules make optional are left off.

    Source: CLP art. 26 (read in a public consolidated copy); UN GHS 1.4.10.5.3.1 has the three health points.
    See OPEN_QUESTION for GHS05 that comes from H290 alone.
    """
    singles = _codes(codes)
    brought = _brought(singles)
    kept = set(brought) - _dropped(brought, singles)
    return tuple(sorted(kept))


def _brought(codes: tuple[str, ...]) -> dict[str, set[str]]:
    """Pictogram -> the statements that bring it."""
    brought: dict[str, set[str]] = {}
    for code in codes:
        found = statement(code)
        for sign in found.pictograms if found else ():
            brought.setdefault(sign, set()).add(code)
    return brought


def _dropped(brought: dict[str, set[str]], codes: tuple[str, ...]) -> set[str]:
    gone: set[str] = set()
    if "GHS01" in brought and not _both_needed(codes):
        gone |= {"GHS02", "GHS03"}
    if "GHS02" in brought or "GHS06" in brought:
        gone.add("GHS04")
    if "GHS06" in brought or not _exclamation_left(brought):
        gone.add("GHS07")
    return gone


def _both_needed(codes: tuple[str, ...]) -> bool:
    """GHS01 and GHS02 both belong to type B self-reactives and peroxides (art. 26(1)(a), the exception)."""
    return "H241" in codes


def _exclamation_left(brought: dict[str, set[str]]) -> bool:
    """Whether anything but what the other pictograms say still asks for GHS07."""
    left = set(brought.get("GHS07", ()))
    if brought.get("GHS05", set()) - {"H290"}:
        left -= IRRITANT
    if "H334" in brought.get("GHS08", ()):
        left -= IRRITANT | SENSITISER
    return bool(left)


@dataclass(frozen=True, slots=True)
class LabelLine:
    """One statement as printed: its code, single or combined, and its text."""

    code: str
    text: str


def label_statements(codes: tuple[str, ...], edition: Edition) -> tuple[LabelLine, ...]:
    """Statements for a label, in the order of their codes: no weaker ones, acute routes combined.

    A code that the edition does not have (H401 under CLP) is left out: `missing_in` names it.
    """
    shown = combine_codes(tuple(sorted(shown_codes(_codes(codes)))))
    texts = ((code, statement_text(code, edition)) for code in shown)
    return tuple(LabelLine(code, text) for code, text in texts if text is not None)


def missing_in(codes: tuple[str, ...], edition: Edition) -> tuple[str, ...]:
    """Codes for which this edition has no statement."""
    return tuple(code for code in _codes(codes) if statement_text(code, edition) is None)
