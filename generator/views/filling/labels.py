"""Label elements from declared statements; an empty list that is not stated is said to be unknown."""

from generator.hazards import (
    Edition,
    label_statements,
    missing_in,
    pictogram_alt,
    pictograms,
    precautions,
    signal_word,
)
from generator.hazards.advice import OPEN_END
from generator.views.chemical import LabelView, PictogramView, StatementView


def label_view(
    codes: tuple[str, ...], not_classified: bool, edition: Edition, declared: str, vented: bool = False
) -> LabelView:
    """Signal word, pictograms and statements in the lab's edition, and what that edition does not hold.

    `vented` leaves out the advice to close tightly (P233), which would burst what gives off gas.
    """
    codes = tuple(code for code in codes if code[:1] in "HE")
    if not codes:
        unknown = (
            "" if not_classified else "No hazards are declared. Ask for the supplier’s sheet before use."
        )
        said = "Stated as not classified." if not_classified else declared
        return LabelView(unknown=unknown, declared=said)
    chosen = precautions(codes, edition)
    return LabelView(
        signal_word(codes),
        tuple(PictogramView(code, pictogram_alt(code)) for code in pictograms(codes)),
        tuple(StatementView(line.code, line.text) for line in label_statements(codes, edition)),
        tuple(
            StatementView(one.code, one.bench.replace(OPEN_END, ""))
            for one in chosen.chosen
            if not (vented and "P233" in one.code)
        ),
        declared,
        _not_held(codes, edition, chosen.not_held),
    )


def _not_held(codes: tuple[str, ...], edition: Edition, without: tuple[str, ...]) -> str:
    missing = missing_in(codes, edition)
    texts = f"This edition has no text for {', '.join(missing)}." if missing else ""
    advice = f"No precautions are held for {', '.join(without)}." if without else ""
    return f"{texts} {advice}".strip()
