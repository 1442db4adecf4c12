"""Sentences that a card shows in the base language because the other language lacks them."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.model import Card, Lab, Located, Step, Text
from generator.model.translation import sentence_at, translated
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="translation-missing",
    level=Level.NOTE,
    subject="words",
    what="A card shows another language, and its language file lacks sentences that the card shows.",
    why="What is missing is shown in the base language. A reader who has only the other one stops there.",
    bad="""cards:
  - {id: etch-card-es, title: Etch card, language: es, size: A3, read_from: 1.5 m, stages: [etch]}
# and no sentences for the stage etch in the file for es""",
    good="""language: es
stages: {etch: {title: Micrograbado}}
steps:
  etch-in: {say: Baje la placa. Quédese y cuente.}""",
    needs=("cards",),
)
_MOST = 8
# the start of a path, the noun there, and its field; the noun is None where nothing declares it
_Field = tuple[str, Located | None, str]


def find(study: Study) -> Iterator[Problem]:
    """Cards in a language that is not the lab's."""
    base = str(study.lab.lab.language)
    have = {language: translated(file) for language, file in study.languages.items()}
    for card in study.procedure.cards:
        if card.language is None or card.language == base:
            continue
        own = have.get(str(card.language), {})
        lacking = [path for path in shown_on(study, card) if path not in own]
        if lacking:
            more = f" and {len(lacking) - _MOST} more" if len(lacking) > _MOST else ""
            yield DOC.found(
                card.spot("language"),
                f'card "{card.id}" shows {len(lacking)} text{"s" * (len(lacking) > 1)} in {base} '
                f"that {card.language} lacks",
                f"translate {', '.join(lacking[:_MOST])}{more}",
            )


def shown_on(study: Study, card: Card) -> tuple[str, ...]:
    """The paths of all sentences that a card shows, each once."""
    shown = {f"{path}.{field}": sentence_at(noun, field) for path, noun, field in _fields(study, card)}
    own = f"cards.{card.id}.stop_rule"
    whole = {own if card.stop_rule else "stop_rule": card.stop_rule or study.procedure.stop_rule, **shown}
    return tuple(path for path, text in whole.items() if text is not None)


def _fields(study: Study, card: Card) -> Iterator[_Field]:
    """Every field of a card, its stages and their steps, and of what stands beside their sentences."""
    yield f"cards.{card.id}", card, "title"
    stages = {str(stage.stage): stage for stage in study.procedure.stages}
    yield from ((f"stages.{id}", stages.get(id), "title") for id in card.stages)
    for found in study.steps():
        if found.stage.stage in card.stages:
            yield from _of_step(found.step)
            yield from _beside(study.lab, found.step)


def _of_step(step: Step) -> Iterator[_Field]:
    path = f"steps.{step.id}"
    yield path, step, "card" if step.card else "say"
    if step.check:
        yield path, step, "check"
    if step.hold:
        yield path, step, "hold.until"
    if step.fail:
        yield path, step, "fail.say"
    if step.when_it_sounds:
        yield path, step, "when_it_sounds"
    if step.since:
        yield path, step, "since.because"
    if step.pause:
        yield path, step, "pause.keep"


def _beside(lab: Lab, step: Step) -> Iterator[_Field]:
    place = lab.places.get(step.at) if step.at else None
    if place:
        fields = ("title", "extraction", *(("look", "not_right.say") if step.do == "open" else ()))
        yield from ((f"lab.places.{step.at}", place, field) for field in fields)
    timer = step.alarm or (place.timer if place and step.for_ is not None and step.do == "put-in" else None)
    if timer:
        fields = ("title", *(() if step.when_it_sounds else ("when_it_sounds",)))
        yield from ((f"lab.timers.{timer}", lab.timers.get(timer), field) for field in fields)
    for noun, id in _named(step):
        yield f"lab.{noun}.{id}", getattr(lab, noun).get(id), "title"


def _named(step: Step) -> Iterator[tuple[str, Text | None]]:
    """The nouns whose titles stand beside a step, by kind and id."""
    for id in (*step.use, *([step.into] if step.into else [])):
        yield from (("mixtures", id), ("substances", id))
    yield "racks", step.rack
    yield "roles", step.hold.who if step.hold else None
    yield "roles", step.fail.call if step.fail else None
    yield from (("ppe", piece) for piece in (*step.put_on, *step.take_off))
    yield "waste", step.waste


RULE = Rule(DOC, in_procedure=find)
