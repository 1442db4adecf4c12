"""What the lab keeps in cupboards and in baths, and how old its supplier's sheets are."""

from generator.hazards import Edition, label_statements, signal_word
from generator.model import Lab, Mixture, Portion, Substance
from generator.study import LabStudy
from generator.units import UNITS, Quantity, show_quantity
from generator.views.filling.hazard_words import words_of
from generator.views.filling.sheets_held import age_words, day_words, is_old
from generator.views.filling.words import chemical_link, joined, low, thing_title
from generator.views.lab_hazards import CellView, TableView

_DIGITS = 3
_PER_LITRE = UNITS["g/L"].dimension


def substances_table(study: LabStudy) -> TableView:
    """Every substance: number, hazards, what the cupboards hold, what stands in baths, its sheet."""
    rows = tuple(_substance_row(study, str(id), one) for id, one in study.lab.substances.items())
    lead = "Amounts in baths are worked out from what each bath is made of and its volume when it is full."
    return TableView(
        "as_bought", "As bought", ("Substance", "Hazards", "Kept", "In baths", "Sheet"), rows, lead
    )


def _substance_row(study: LabStudy, id: str, one: Substance) -> tuple[CellView, ...]:
    cas = f"CAS {one.cas}" if one.cas else "bought as a mixture" if one.mixture else "CAS number not said"
    kept = one.kept
    return (
        CellView(one.title, chemical_link(study.lab, id), cas),
        hazards_cell(study, id, one.not_classified),
        CellView(
            show_quantity(kept.amount) if kept and kept.amount else "not said",
            note=str(kept.cupboard) if kept and kept.cupboard else "",
        ),
        CellView("; ".join(in_baths(study.lab, id)) or "none"),
        sheet_cell(study, one),
    )


def hazards_cell(study: LabStudy, id: str, not_classified: bool) -> CellView:
    """Signal word and codes as declared; "not known" where nothing is declared."""
    codes = tuple(code for code in study.statements_of(id) if code[:1] in "HE")
    if not codes:
        return CellView("stated as not classified" if not_classified else "not known: not declared")
    shown = (line.code for line in label_statements(codes, Edition(study.lab.lab.ghs)))
    return CellView(signal_word(codes) or "no signal word", note=", ".join(shown))


def statements_words(study: LabStudy, id: str, not_classified: bool) -> str:
    """Signal word and statements in full, in one sentence."""
    cell = hazards_cell(study, id, not_classified)
    codes = tuple(code for code in study.statements_of(id) if code[:1] in "HE")
    lines = label_statements(codes, Edition(study.lab.lab.ghs))
    words = (sign.title for sign in words_of(study, id))
    said = "; ".join((*(f"{line.text} ({line.code})" for line in lines), *words))
    return f"{cell.text}: {said}" if said else cell.text


def sheet_cell(study: LabStudy, one: Substance) -> CellView:
    """How old the sheet is and where it stands."""
    if one.sheet is None:
        return CellView("no sheet named", mark="missing")
    where = str(one.sheet.held_at or "place not said")
    if one.sheet.dated is None:
        return CellView("date not said", note=where, mark="missing")
    age = f"{age_words(study.today - one.sheet.dated)} old"
    old = is_old(study, one)
    text = f"TOO OLD: {age}" if old else age
    return CellView(text, note=f"{where}, {day_words(one.sheet.dated)}", mark="missing" if old else "")


def in_baths(lab: Lab, id: str) -> tuple[str, ...]:
    """Amounts of a substance in the lab's mixtures: "3.02 kg in the acid copper bath"."""
    found = []
    for made in lab.mixtures.values():
        for part, portion in made.made_of.items():
            if part == id:
                found.append(f"{portion_amount(made, portion)} in {low(made.title)}")
    return tuple(found)


def portion_amount(made: Mixture, portion: Portion) -> str:
    """How much of a part stands in a full bath; in words where its volume or unit does not give it."""
    amount = portion.amount
    if amount is None:
        return "the rest"
    counted = f" as {portion.counted_as}" if portion.counted_as else ""
    whole = _whole(made, amount)
    if whole is None:
        return f"{show_quantity(amount)}{counted}"
    return f"{show_quantity(whole, digits=_DIGITS)}{counted}"


def _whole(made: Mixture, amount: Quantity) -> Quantity | None:
    if made.volume is None:
        return None
    litres = made.volume.to("L").number
    if amount.dimension == _PER_LITRE:
        return _mass(amount.to("g/L").number * litres)
    if amount.unit in ("mL/L", "% v/v"):
        millilitres = amount.number * litres * (10 if amount.unit == "% v/v" else 1)
        return Quantity(millilitres, "mL") if millilitres < 1000 else Quantity(millilitres / 1000, "L")
    if amount.unit == "% w/w" and made.density is not None:
        return _mass(amount.number * 10 * made.density.to("kg/L").number * litres)
    return None


def _mass(grams: float) -> Quantity:
    return Quantity(grams, "g") if grams < 1000 else Quantity(grams / 1000, "kg")


def mixtures_table(study: LabStudy) -> TableView:
    """Every mixture: volume, place, hazards, what it is made of, where leftovers go."""
    rows = tuple(_mixture_row(study, str(id), one) for id, one in study.lab.mixtures.items())
    heads = ("Mixture", "Hazards", "Volume and place", "Parts when full", "Leftovers")
    return TableView("made_here", "Made here", heads, rows)


def _mixture_row(study: LabStudy, id: str, one: Mixture) -> tuple[CellView, ...]:
    places = [place.title for place in study.lab.places.values() if place.holds == id]
    parts = (
        f"{low(thing_title(study.lab, str(part)))} {portion_amount(one, portion)}"
        for part, portion in one.made_of.items()
    )
    return (
        CellView(one.title, chemical_link(study.lab, id)),
        hazards_cell(study, id, one.not_classified),
        CellView(show_quantity(one.volume) if one.volume else "volume not said",
                 note=joined(places) or "stands in no place of its own"),
        CellView("; ".join(parts) or "not said"),
        CellView(thing_title(study.lab, str(one.leftovers)) if one.leftovers else "not said"),
    )  # fmt: skip
