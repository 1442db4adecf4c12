"""Fill the view of a wall card from a study: an extract for one work position, nothing left to decide."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.formulas import Formula
from generator.hazards import signal_word, statement_in
from generator.hazards.edition import Edition
from generator.model import Card, Step
from generator.study import Study
from generator.views.addresses import procedure_address
from generator.views.card import CardHazard, CardHelp, CardView, CardWear, Status
from generator.views.card_words import CardWords, card_words
from generator.views.filling.called import called
from generator.views.filling.card_phrases import phrases
from generator.views.filling.card_rows import card_steps, step_numbers
from generator.views.filling.card_tables import card_tables
from generator.views.filling.hazard_words import word_sign
from generator.views.filling.translation import Words

# ISO 7010 warning signs for what a statement says; what has no sign of its own carries the general one.
_SIGNS = (
    ("W023", ("H290", "H314", "H318")),
    ("W021", ("H224", "H225", "H226", "H228")),
    ("W028", ("H270", "H271", "H272")),
    ("W016", ("H300", "H301", "H310", "H311", "H330", "H331")),
)
_GENERAL = "W001"
# The body from the head down, hands last: gloves go on over everything.
_DOWN = ("eyes", "face", "hearing", "lungs", "body", "feet", "hands")


@dataclass(frozen=True, slots=True)
class CardFacts:
    """What a build knows beside the study: the formulas, the site's address, what is posted."""

    formulas: Mapping[str, Formula]
    site: str = ""
    status: Status = "draft"
    issue: str = ""
    check_code: str = ""
    good_until: str = ""
    dated: str = ""


def card_view(study: Study, card: Card, facts: CardFacts) -> CardView:
    """The card of a procedure; a card without stages shows only what its `show` lists."""
    words = Words(study, study.languages.get(str(card.language)) if card.language else None)
    fixed = card_words(words.language)
    steps = _steps(study, card)
    everything = not card.show
    room, procedure = study.lab.lab, study.procedure
    address = f"{facts.site}{procedure_address(str(procedure.id))}/"
    codes = _codes(study, steps) if card.stages else study.used_codes()
    hazards = everything or "hazards" in card.show
    calls = called(study, steps, str(card.stop_rule or procedure.stop_rule or ""))
    return CardView(
        card=str(card.id),
        procedure=str(procedure.id),
        title=_title(words, card),
        language=words.language,
        size=card.size,
        read_from=card.read_from.to("mm").number,
        dated=facts.dated or study.today.isoformat(),
        address=address,
        caution=fixed.caution,
        procedure_title=_procedure_title(study, words),
        lab_title=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        orientation="landscape" if card.turned else "either",
        status=facts.status,
        issue=facts.issue,
        check_code=facts.check_code,
        good_until=facts.good_until,
        address_shown=address.removeprefix("https://").removesuffix("/"),
        stations=_stations(study, steps),
        wear=_wear(study, steps, words) if everything or "wear" in card.show else (),
        stop_rule=words.stop_rule(card) if everything or "stop-rule" in card.show else "",
        help=_help(words, fixed, calls) if everything or "help" in card.show else (),
        signal=_signal(codes, fixed) if hazards else "",
        hazards=hazard_views(study, steps, codes, words) if hazards else (),
        steps=card_steps(study, card, words, fixed, facts.formulas, calls),
        tables=card_tables(study, steps, facts.formulas, step_numbers(study), phrases(words.language)),
        words=fixed,
    )


def _title(words: Words, card: Card) -> str:
    """The card's own title; in another language that of its only stage where only that is translated."""
    own = words.card(str(card.id), "")
    if own or len(card.stages) != 1 or not words.file:
        return own or str(card.title)
    return words.stage(str(card.stages[0]), str(card.title))


def _procedure_title(study: Study, words: Words) -> str:
    """A class goes by its own title, or its cards could not be told from those of the whole procedure."""
    title, base = study.procedure.title, study.class_of
    return words.whole("title", title) if base is None or base.title == title else str(title)


def _steps(study: Study, card: Card) -> tuple[Step, ...]:
    wanted = set(card.stages)
    return tuple(located.step for located in study.steps() if located.stage.stage in wanted)


def _stations(study: Study, steps: tuple[Step, ...]) -> tuple[str, ...]:
    numbers = {place.number for step in steps if (place := study.place(step.at)) and place.number is not None}
    return tuple(str(number) for number in sorted(numbers))


def _wear(study: Study, steps: tuple[Step, ...], words: Words) -> tuple[CardWear, ...]:
    """All that work is done in, from the head down, in the order in which it goes on."""
    ids = {id(step) for step in steps}
    worn = dict.fromkeys(map(str, study.lab.lab.base_wear), 0)
    here = set(worn)
    for number, moment in enumerate(study.walk.straight, 1):
        on = {*moment.before.names("worn"), *moment.after.names("worn")}
        for piece in on:
            worn.setdefault(piece, number)
        if id(moment.step) in ids:
            # Where clothes are changed, what comes off is told by the step.
            off = moment.step.take_off if moment.step.do == "wear" else ()
            here |= on - set(map(str, off))
    pieces = [(name, piece) for name, piece in study.lab.ppe.items() if name in here]
    pieces.sort(key=lambda pair: (_DOWN.index(pair[1].protects), worn[pair[0]], pair[1].over is not None))
    return tuple(
        CardWear(str(piece.symbol or ""), words.lab("ppe", str(name), "title", piece.title))
        for name, piece in pieces
    )


def _help(words: Words, fixed: CardWords, calls: str) -> tuple[CardHelp, ...]:
    help = words.study.lab.lab.help
    rows = (
        (fixed.call, words.reached(calls)),
        (fixed.emergency, words.help("emergency", help.emergency)),
        (fixed.eyewash, words.help("eyewash", help.eyewash)),
        (fixed.shower, words.help("shower", help.shower)),
        (fixed.first_aid, "" if help.eyewash else words.help("first_aid", help.first_aid)),
    )
    return tuple(CardHelp(label, text) for label, text in rows if text)


def _codes(study: Study, steps: tuple[Step, ...]) -> tuple[str, ...]:
    met = (id for step in steps for id in _met(study, step))
    return tuple(dict.fromkeys(code for id in met for code in study.statements_of(id)))


def _met(study: Study, step: Step) -> Iterator[str]:
    """What a step has to do with: the bath at its place, what it uses, and what this goes into."""
    place = study.place(step.at)
    yield from (str(id) for id in (place.holds if place else None, *step.use, step.into) if id)


def _signal(codes: tuple[str, ...], fixed: CardWords) -> str:
    word = signal_word(tuple(code for code in codes if code.startswith("H")))
    return {"Danger": fixed.danger, "Warning": fixed.warning}.get(str(word or ""), "")


def _grave(code: str) -> int:
    """Danger before Warning before none; what no statement names has no signal word."""
    word = signal_word((code,)) if code.startswith("H") else ""
    return {"Danger": 0, "Warning": 1}.get(str(word), 2)


def hazard_views(
    study: Study, steps: tuple[Step, ...], codes: tuple[str, ...], words: Words
) -> tuple[CardHazard, ...]:
    """Statements in full, the gravest first, then hazards without one; of all steps where a card has none."""
    edition = Edition(study.lab.lab.ghs)
    found: dict[str, CardHazard] = {}
    for code in sorted(codes, key=_grave):
        text = statement_in(code, edition, words.language)
        if text:
            found[code] = CardHazard(next((sign for sign, group in _SIGNS if code in group), _GENERAL), text)
    for step in steps or tuple(located.step for located in study.steps()):
        place = study.place(step.at)
        met = (word for id in _met(study, step) for word in study.statements_of(id))
        for word in dict.fromkeys((*map(str, place.hazards if place else ()), *met)):
            if word in found or statement_in(word, edition, words.language):
                continue
            sign = word_sign(study.lab, word)
            title = words.lab("hazard_words", word, "title", sign.title)
            found[word] = CardHazard(sign.symbol or _GENERAL, title)
    return tuple(found.values())
