"""The headings of a hazard summary, in the order of a safety data sheet, each with its number there."""

from collections.abc import Iterable, Iterator

from generator.hazards import Advice, Edition, Precaution, advice, effects, statement_text
from generator.model import Mixture, Substance, Text
from generator.study import LabStudy
from generator.study.reactivity import CHART
from generator.units import Window, show_quantity, show_window
from generator.views.chemical import HazardHeadingView, HazardLineView
from generator.views.filling.bench_wear import see_sheet, wear_lines
from generator.views.filling.hazard_words import word_sign, words_of
from generator.views.filling.never_together import groups_of, never_with, reaction_words, reacts_with
from generator.views.filling.sheets_held import sheet_lines
from generator.views.filling.waste_words import is_vented, waste_lines
from generator.views.filling.words import joined, low, thing_title

Lines = Iterator[HazardLineView]
# Way in (as effects name it) -> topic of the advice, for the first action.
_WAYS = (("Eyes", "eyes"), ("Skin", "skin"), ("Lungs", "lungs"), ("Swallowed", "swallowed"), ("Then", "call"))
# What is worn stands behind as many others.
_WORN = 7


def headings(study: LabStudy, id: str, noun: Mixture | Substance) -> tuple[HazardHeadingView, ...]:
    """Everything declared of one substance or mixture, and what the tables of its statements advise."""
    worn = HazardHeadingView("Worn here", tuple(wear_lines(study, id, noun)), "8")
    others = study.answers.of(study, _but_worn, id)
    return (*others[:_WORN], worn, *others[_WORN:])


def _but_worn(study: LabStudy, id: str) -> tuple[HazardHeadingView, ...]:
    """All headings but what is worn, which a procedure's own steps may say: the same in every procedure."""
    noun = study.lab.mixtures.get(Text(id)) or study.lab.substances[Text(id)]
    codes = tuple(str(code) for code in noun.hazards if str(code)[:1] in "HE")
    found = advice(codes, Edition(study.lab.lab.ghs))
    rows = (
        ("Name and sheet", "1", sheet_lines(study, id, noun)),
        ("Made of", "3", _made_of(study, noun)),
        ("First action", "4", _first(study, found)),
        ("Fire", "5", _fire(study, noun, codes, found)),
        ("Spill", "6", _spill(study, noun, found)),
        ("Handling", "7", _handling(study, id, found)),
        ("Storage", "7", _storage(study, id, noun, found)),
        ("Measured", "9", _measured(noun)),
        ("Never mix with", "10", _never(study, id)),
        ("What it does", "11, 12", _does(study, id, codes)),
        ("Waste", "13", waste_lines(study, id, noun)),
        ("Transport and law", "14, 15", iter((HazardLineView(f"Not held here. S{see_sheet(noun)[1:]}."),))),
    )
    return tuple(HazardHeadingView(title, tuple(lines), sheet) for title, sheet, lines in rows)


def _made_of(study: LabStudy, noun: Mixture | Substance) -> Lines:
    if isinstance(noun, Substance):
        if noun.strength:
            yield HazardLineView(show_quantity(noun.strength), "Strength here")
        if noun.mixture:
            yield HazardLineView("Bought as a mixture; its parts are not declared here.")
        return
    for part, portion in noun.made_of.items():
        counted = f" as {portion.counted_as}" if portion.counted_as else ""
        amount = f"{show_quantity(portion.amount)}{counted}" if portion.amount else "the rest"
        bought = study.lab.substances.get(part)
        cas = f" (CAS {bought.cas})" if bought and bought.cas else ""
        yield HazardLineView(f"{amount}{cas}", thing_title(study.lab, str(part)))


def _first(study: LabStudy, found: Advice) -> Lines:
    for label, topic in _WAYS:
        rows = found.about(topic)
        if rows:
            yield HazardLineView(_said(rows), label)
    help = study.lab.lab.help
    if help.emergency:
        yield HazardLineView(help.emergency, "Emergency line")
    if help.eyewash:
        yield HazardLineView(help.eyewash, "Eyewash")


def _said(rows: Iterable[Precaution]) -> str:
    return " ".join(f"{one.bench.rstrip('.')}. ({one.code})" for one in rows)


def _fire(study: LabStudy, noun: Mixture | Substance, codes: tuple[str, ...], found: Advice) -> Lines:
    edition = Edition(study.lab.lab.ghs)
    physical = next(one.codes for one in effects(codes) if one.way == "Fire and reaction")
    for code in physical:
        yield HazardLineView(statement_text(code, edition) or "no text in this edition", code)
    if not physical:
        yield HazardLineView("No statement about fire is declared. That does not say that it cannot burn.")
    for one in found.about("fire"):
        yield HazardLineView(one.bench, one.code)
    if study.lab.lab.help.extinguisher:
        yield HazardLineView(study.lab.lab.help.extinguisher, "Extinguisher")
    yield HazardLineView(f"What to put it out with: {see_sheet(noun)}.")


def _spill(study: LabStudy, noun: Mixture | Substance, found: Advice) -> Lines:
    for one in found.about("spill"):
        yield HazardLineView(one.bench, one.code)
    if study.lab.lab.help.spill_kit:
        yield HazardLineView(study.lab.lab.help.spill_kit, "Spill kit")
    if isinstance(noun, Mixture) and noun.if_contaminated:
        yield HazardLineView(noun.if_contaminated, "If something else got in")


def _handling(study: LabStudy, id: str, found: Advice) -> Lines:
    vented = is_vented(study, id)
    for one in found.about("handling"):
        if not (vented and "P233" in one.code):
            yield HazardLineView(one.bench, one.code)
    if vented:
        yield HazardLineView("Under a vented lid or cap, never sealed.", "Cover")
    for place in study.lab.places.values():
        # What the place itself can do, as a hot bath scalds, stands in no statement of what is in it.
        for word in place.hazards if place.holds == id else ():
            yield HazardLineView(word_sign(study.lab, str(word)).title, f"At the {low(place.title)}")


def _storage(study: LabStudy, id: str, noun: Mixture | Substance, found: Advice) -> Lines:
    if isinstance(noun, Substance) and noun.kept and noun.kept.cupboard:
        amount = f"{show_quantity(noun.kept.amount)} in the " if noun.kept.amount else "in the "
        yield HazardLineView(f"{amount}{low(noun.kept.cupboard)}", "Kept here")
    for place in study.lab.places.values():
        if place.holds == id:
            yield HazardLineView(place.title, "Stands in")
    vented = is_vented(study, id)
    for one in found.about("storage"):
        if not (vented and ("P233" in one.code or "P404" in one.code)):
            yield HazardLineView(one.bench, one.code)
    if isinstance(noun, Mixture) and noun.use_within:
        yield HazardLineView(show_quantity(noun.use_within), "Use within")
    if isinstance(noun, Mixture) and noun.renew:
        yield HazardLineView(noun.renew, "Renew")


def _measured(noun: Mixture | Substance) -> Lines:
    if noun.density:
        yield HazardLineView(show_quantity(noun.density), "Density")
    ph = noun.ph if isinstance(noun, Mixture) else None
    if isinstance(ph, Window):
        yield HazardLineView(show_window(ph), "pH")


def _never(study: LabStudy, id: str) -> Lines:
    for text in never_with(study, groups_of(study.lab, id)):
        yield HazardLineView(text)
    by_words: dict[str, list[str]] = {}
    for other, found in reacts_with(study.lab, id):
        by_words.setdefault(reaction_words(found), []).append(low(thing_title(study.lab, other)))
    for words, others in by_words.items():
        yield HazardLineView(f"{joined(others)}: {words}", f"By the chart {CHART}")
    yield HazardLineView("What is not named here is not said to be safe.")


def _does(study: LabStudy, id: str, codes: tuple[str, ...]) -> Lines:
    edition = Edition(study.lab.lab.ghs)
    for effect in effects(codes):
        if effect.way == "Fire and reaction" or (effect.way == "Metals" and not effect.codes):
            continue
        said = (
            f"{statement_text(code, edition) or 'no text in this edition'} ({code})" for code in effect.codes
        )
        yield HazardLineView("; ".join(said) or "nothing is declared", effect.way)
    for sign in words_of(study, id):
        yield HazardLineView(sign.title, "Besides")
