"""What a wall card must show, read plainly from model and walk; whoever filled the card is not asked."""

from collections.abc import Iterator, Mapping, Set

from generator.hazards import hazard_word, statement_in
from generator.hazards.edition import Edition
from generator.model import Card, Step
from generator.study import Study
from generator.units import Quantity, show_quantity
from generator.views.card import CardStep, CardView
from generator.views.filling.translation import Words

# Kind of thing -> id of a step, "" for the whole card -> the words that are printed.
Things = Mapping[str, Mapping[str, Set[str]]]

_WEAR, _HAZARDS, _STOP = "wear", "hazards", "the stop rule"
_STEPS, _HOLDS, _MARKS = "the row", "the hold point", "a mark"
_SEEN, _IF_NOT, _ALARM, _WASTE = (
    "what must be seen",
    "what to do if not",
    "what the alarm asks",
    "the container",
)
_AMOUNTS, _EXTRACTION = "the amount", "the extraction"


def shown(view: CardView) -> Things:
    """All that a finished card says, by kind and step."""
    whole = {
        _WEAR: {piece.title for piece in view.wear},
        _HAZARDS: {hazard.text for hazard in view.hazards},
        _STOP: {view.stop_rule},
        _EXTRACTION: {step.extraction for step in view.steps},
    }
    rows = {
        kind: {step.id: _said(step, kind) for step in view.steps}
        for kind in (_STEPS, _HOLDS, _MARKS, _AMOUNTS, _SEEN, _IF_NOT, _ALARM, _WASTE)
    }
    return {**{kind: {"": words} for kind, words in whole.items()}, **rows}


def _said(step: CardStep, kind: str) -> Set[str]:
    match kind:
        case "the row":
            return {step.sentence}
        case "a mark":
            return {mark.kind for mark in step.marks}
        case "the amount":
            large = f": {step.amount_shown}" if step.amount_shown else ""
            return set(_amounts(step.amounts + large))
        case "what must be seen":
            return _parts(step.check) | _parts(step.watch) | _parts(step.before)
        case "what to do if not":
            return _parts(step.if_not) | _parts(step.watch_if_not) | _parts(step.before_if_not)
        case "the container":
            return {step.container.partition(": ")[0]}
    return _parts(step.hold if kind == _HOLDS else step.alarm)


def _parts(text: str) -> Set[str]:
    """A text, the pieces that were put together in it, and its first sentences."""
    pieces = {text, *text.split("; ")}
    sentences = text.split(". ")
    first = {". ".join(sentences[:count]) for count in range(1, len(sentences))}
    first |= {f"{sentence}." for sentence in first}
    return pieces | {piece.partition(": ")[2] for piece in pieces} | first


def _amounts(text: str) -> Iterator[str]:
    """What is used, where an amount stands behind it; and both together."""
    for piece in text.split("; "):
        name, _, amount = piece.rpartition(": ")
        yield from (name, piece) if name and amount else ()


def demanded(study: Study, card: Card) -> Things:
    """All that the steps of a card's stages ask for; nothing for a card without stages."""
    steps = [
        found.step for found in study.steps() if found.stage.stage in card.stages and found.mends is None
    ]
    words = Words(study, study.languages.get(str(card.language)) if card.language else None)
    found: dict[str, dict[str, Set[str]]] = {kind: {} for kind in shown_kinds()}
    for step in steps:
        for kind, things in _of_step(study, words, step):
            found[kind][str(step.id)] = things
    for id, pieces in _worn(study, card).items():
        titles = {words.lab("ppe", piece, "title", study.lab.ppe[piece].title) for piece in pieces}  # type: ignore[index]
        found[_WEAR][id] = titles
    if steps and (card.stop_rule or study.procedure.stop_rule):
        found[_STOP][str(steps[0].id)] = {words.stop_rule(card)}
    return found


def shown_kinds() -> tuple[str, ...]:
    """Every kind, in the order in which it is told."""
    return (
        _HAZARDS, _WEAR, _EXTRACTION, _STOP, _STEPS, _HOLDS, _MARKS, _AMOUNTS, _SEEN, _IF_NOT, _ALARM, _WASTE,
    )  # fmt: skip


def _of_step(study: Study, words: Words, step: Step) -> Iterator[tuple[str, Set[str]]]:
    place = study.place(step.at)
    yield _STEPS, {words.sentence(step)}
    yield _HAZARDS, set(_harm(study, words, step))
    if place and place.extraction:
        yield _EXTRACTION, {words.lab("places", str(step.at), "extraction", place.extraction)}
    if step.use:
        yield _AMOUNTS, set(_used(study, words, step))
    if step.hold:
        yield _HOLDS, {words.step(step, "hold.until", step.hold.until)}
    yield _SEEN, set(_seen(words, step))
    yield _IF_NOT, set(_if_not(words, step))
    if step.when_it_sounds and step.for_ is not None:
        yield _ALARM, {words.step(step, "when_it_sounds", step.when_it_sounds)}
    marks = {"current-first"} if step.power else set[str]()
    if step.do == "put-in" and place and place.arrive in ("dry", "wet"):
        marks |= {str(place.arrive)}
    yield _MARKS, marks
    container = study.container(step.waste)
    if container:
        yield _WASTE, {words.lab("waste", str(step.waste), "title", container.title)}


def _seen(words: Words, step: Step) -> Iterator[str]:
    place = words.study.place(step.at)
    if place and place.look and step.do == "open" and not step.look:
        yield words.lab("places", str(step.at), "look", place.look)
    if step.check:
        yield words.step(step, "check", step.check)
    if step.watch and step.watch.check:
        yield words.step(step, "watch.check", step.watch.check)


def _if_not(words: Words, step: Step) -> Iterator[str]:
    if step.fail and step.fail.say:
        yield words.step(step, "fail.say", step.fail.say)
    if step.watch and step.watch.fail and step.watch.fail.say:
        yield words.step(step, "watch.fail.say", step.watch.fail.say)


def _used(study: Study, words: Words, step: Step) -> Iterator[str]:
    """Each chemical by its name, with its amount where the step gives one as a number."""
    lab = study.lab
    for id, amount in step.use.items():
        noun = "mixtures" if id in lab.mixtures else "substances"
        thing = lab.mixtures.get(id) or lab.substances.get(id)
        name = words.lab(noun, str(id), "title", thing.title) if thing else str(id).replace("-", " ")
        once = isinstance(amount, Quantity) and not step.repeat
        yield f"{name}: {show_quantity(amount)}" if once and isinstance(amount, Quantity) else name


def _harm(study: Study, words: Words, step: Step) -> Iterator[str]:
    """Statements of what the place holds, the step uses and makes, and the hazards without a statement."""
    place = study.place(step.at)
    touched = [str(id) for id in (*step.use, step.into) if id]
    if place and place.holds:
        touched.append(str(place.holds))
    for id in touched:
        edition = Edition(study.lab.lab.ghs)
        texts = (statement_in(code, edition, words.language) for code in study.statements_of(id))
        yield from (text for text in texts if text)
    codes = (code for id in touched for code in study.statements_of(id))
    for word in map(str, (*(place.hazards if place else ()), *codes)):
        own, shipped = study.lab.hazard_words.get(word), hazard_word(word)  # type: ignore[call-overload]
        title = str(own.title) if own else shipped.title if shipped else ""
        if title:
            yield words.lab("hazard_words", word, "title", title)


def _worn(study: Study, card: Card) -> dict[str, Set[str]]:
    """What is on at each step as the walk carries it, and what the step's place asks for outright.

    Where clothes are changed, what comes off is told by the step itself.
    """
    found: dict[str, Set[str]] = {}
    for moment in study.walk.straight:
        if moment.stage.stage in card.stages:
            place = study.place(moment.step.at)
            asked = {str(piece) for piece in place.wear} if place and not place.wear_when else set[str]()
            off = moment.step.take_off if moment.step.do == "wear" else ()
            worn = (set(moment.before.names("worn")) - set(map(str, off))) | asked
            found[str(moment.step.id)] = {piece for piece in worn if piece in study.lab.ppe}
    return found
