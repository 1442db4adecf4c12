"""Names as on the bottle, where the supplier's sheets are held and how old they are, and whom to ask."""

import datetime
from collections.abc import Iterator

from generator.model import Lab, Mixture, Substance, Text
from generator.study import LabStudy
from generator.study.composition import substances_in
from generator.units.showing import NO_BREAK
from generator.views.chemical import HazardLineView
from generator.views.filling.bench_wear import places_of
from generator.views.filling.words import thing_title

_YEAR = 365.25
_MONTH = _YEAR / 12


def sheet_lines(study: LabStudy, id: str, noun: Mixture | Substance) -> Iterator[HazardLineView]:
    """Name, CAS number, where each sheet is and its date, and the roles to ask."""
    lab = study.lab
    yield HazardLineView(noun.title, "Name on the bottle")
    if isinstance(noun, Substance) and not noun.mixture:
        yield HazardLineView(str(noun.cas or "not said"), "CAS number")
    if isinstance(noun, Mixture):
        yield HazardLineView(
            "Mixed in this lab: no supplier’s sheet covers it. Its parts have these:", "Sheet"
        )
    for part in substances_in(lab, id):
        label = "Sheet" if isinstance(noun, Substance) else thing_title(lab, part)
        yield HazardLineView(held_words(study, lab.substances[Text(part)]), label)
    for role in _roles(lab, id):
        found = study.role(role)
        if found:
            yield HazardLineView(f"{found.title}{f': {found.reach}' if found.reach else ''}", "Whom to ask")


def _roles(lab: Lab, id: str) -> tuple[str, ...]:
    keepers = [str(place.keeper) for place in places_of(lab, id) if place.keeper]
    questions = lab.lab.help.waste_questions
    return tuple(dict.fromkeys((*keepers, *([str(questions)] if questions else []))))


def held_words(study: LabStudy, bought: Substance) -> str:
    """ "yellow binder tab 4, dated 11 February 2026 (9 months old)", or that no sheet is named."""
    sheet = bought.sheet
    if sheet is None or sheet.dated is None:
        return lasting_words(bought)
    old = ", older than this lab allows" if is_old(study, bought) else ""
    return f"{lasting_words(bought)} ({age_words(study.today - sheet.dated)} old{old})"


def lasting_words(bought: Substance) -> str:
    """The same without the age, for what is stuck to a bottle and read years later."""
    sheet = bought.sheet
    if sheet is None:
        return "no sheet is named" if bought.not_classified else "no sheet is named. Ask for it before use."
    where = str(sheet.held_at or "where it is held is not said")
    if sheet.dated is None:
        return f"{where}, date not said"
    return f"{where}, dated {day_words(sheet.dated).replace(' ', NO_BREAK)}"


def day_words(day: datetime.date) -> str:
    """ "11 February 2026"."""
    return f"{day.day} {day:%B %Y}"


def age_words(age: datetime.timedelta) -> str:
    """An age in whole days, months or years."""
    if age.days < 0:
        return "not yet a day"
    for unit, days in (("year", _YEAR), ("month", _MONTH)):
        count = int(age.days / days)
        if count:
            return f"{count} {unit}{'s' * (count > 1)}"
    return f"{age.days} day{'s' * (age.days != 1)}"


def is_old(study: LabStudy, bought: Substance) -> bool:
    """Whether a sheet is older than the lab lets one become; False where either is not said."""
    good_for, sheet = study.lab.lab.sheets_good_for, bought.sheet
    if good_for is None or sheet is None or sheet.dated is None:
        return False
    return study.today - sheet.dated > datetime.timedelta(seconds=good_for.si)
