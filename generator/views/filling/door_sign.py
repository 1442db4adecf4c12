"""Fill the sign that hangs on the door while a step runs and nobody is there."""

from generator.hazards import statement_text
from generator.hazards.edition import Edition
from generator.model import Step
from generator.study import Study
from generator.views.addresses import procedure_address
from generator.views.card import CardHelp, CardTable, CardView
from generator.views.card_words import CardWords, card_words
from generator.views.filling.called import called
from generator.views.filling.card import CardFacts, hazard_views
from generator.views.filling.card_phrases import phrases
from generator.views.filling.card_rows import step_numbers
from generator.views.filling.translation import Words
from generator.views.told import show_time

# A door is read from the corridor (common practice, no source).
_READ_FROM = 1500.0


def unattended_steps(study: Study) -> tuple[Step, ...]:
    """The steps that a procedure leaves running with nobody there."""
    return tuple(found.step for found in study.steps() if found.step.stay == "away")


def door_sign_view(study: Study, step: Step, facts: CardFacts) -> CardView:
    """What runs, where, the lab's own notice, whom to call, what can harm, and blanks for since when."""
    words = Words(study)
    fixed = card_words(words.language)
    room, procedure = study.lab.lab, study.procedure
    address = f"{facts.site}{procedure_address(str(procedure.id))}/"
    place = study.place(step.at)
    edition = Edition(room.ghs)
    codes = study.statements_of(str(place.holds)) if place and place.holds else ()
    return CardView(
        card=f"door-{step.id}",
        procedure=str(procedure.id),
        title=fixed.unattended,
        language=words.language,
        size="A4",
        read_from=_READ_FROM,
        dated=facts.dated or study.today.isoformat(),
        address=address,
        caution=fixed.caution,
        procedure_title=procedure.title,
        lab_title=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        status=facts.status,
        issue=facts.issue,
        check_code=facts.check_code,
        good_until=facts.good_until,
        address_shown=address.removeprefix("https://").removesuffix("/"),
        stations=(str(place.number),) if place and place.number is not None else (),
        stop_rule=words.lab_field("unattended_notice", room.unattended_notice),
        help=_help(study, words, fixed),
        hazards=hazard_views(study, (step,), tuple(c for c in codes if statement_text(c, edition)), words),
        tables=(_left(study, step, facts, words, fixed),),
        words=fixed,
    )


def _help(study: Study, words: Words, fixed: CardWords) -> tuple[CardHelp, ...]:
    """Whom the notice names, or whoever the procedure calls; then the emergency line."""
    notice = str(study.lab.lab.unattended_notice or "")
    who = called(study, (found.step for found in study.steps()), notice)
    role = study.role(who)
    reach = words.lab("roles", who, "reach", role.reach) if role else ""
    emergency = words.help("emergency", study.lab.lab.help.emergency)
    rows = (
        (fixed.call, f"{words.role(who)}: {reach}" if reach else words.role(who)),
        (fixed.emergency, emergency),
    )
    return tuple(CardHelp(label, text) for label, text in rows if text)


def _left(study: Study, step: Step, facts: CardFacts, words: Words, fixed: CardWords) -> CardTable:
    """What is running, with blanks for since when, until when and who."""
    place = words.place(step.at) or words.sentence(step)
    time = show_time(study, step, facts.formulas)
    number = step_numbers(study).get(str(step.id), "")
    step_named = phrases(words.language).at_step(number) if number else ""
    title = " · ".join(part for part in (place, time, step_named) if part)
    heads = (fixed.since_when, fixed.until_when, fixed.whose)
    return CardTable(title, heads, (("", "", ""), ("", "", "")), step=str(step.id))
