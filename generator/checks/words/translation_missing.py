"""Sentences that a card shows in the base language because the other language lacks them."""

from collections.abc import Iterator, Mapping

from generator.checks.rule import Rule
from generator.model import Card, Lab, Step, Text
from generator.model.translation import lab_sentences_of, translated
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.study.once import once_a_lab

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
                f'card "{card.id}" shows {len(lacking)} texts in {base} that {card.language} lacks',
                f"translate {', '.join(lacking[:_MOST])}{more}",
            )


def shown_on(study: Study, card: Card) -> tuple[str, ...]:
    """The paths of all sentences that a card shows, each once."""
    steps = [found.step for found in study.steps() if str(found.stage.stage) in card.stages]
    wanted: dict[str, None] = dict.fromkeys(("stop_rule", f"cards.{card.id}.title"))
    for stage in card.stages:
        wanted[f"stages.{stage}.title"] = None
    for step in steps:
        wanted.update(dict.fromkeys(_of_step(study, step)))
    of_lab = _sentences(study.lab)
    return tuple(path for path in wanted if path in study.sentences or path in of_lab)


@once_a_lab
def _sentences(lab: Lab) -> Mapping[str, Text]:
    return lab_sentences_of(lab)


def _of_step(study: Study, step: Step) -> Iterator[str]:
    start = f"steps.{step.id}."
    yield start + ("card" if step.card else "say")
    yield from (
        start + field
        for field in ("check", "hold.until", "fail.say", "when_it_sounds", "since.because", "pause.keep")
    )
    place = study.place(step.at)
    if step.at:
        yield from (f"lab.places.{step.at}.{field}" for field in ("title", "extraction"))
        if step.do == "open":
            yield from (f"lab.places.{step.at}.{field}" for field in ("look", "not_right.say"))
    timer = step.alarm or (place.timer if place and step.for_ is not None and step.do == "put-in" else None)
    if timer:
        yield f"lab.timers.{timer}.title"
        if not step.when_it_sounds:
            yield f"lab.timers.{timer}.when_it_sounds"
    used = (*map(str, step.use), *([str(step.into)] if step.into else []))
    yield from (f"lab.{noun}.{id}.title" for id in used for noun in ("mixtures", "substances"))
    if step.rack:
        yield f"lab.racks.{step.rack}.title"
    for role in (step.hold.who if step.hold else None, step.fail.call if step.fail else None):
        if role:
            yield f"lab.roles.{role}.title"
    yield from (f"lab.ppe.{piece}.title" for piece in (*step.put_on, *step.take_off))
    if step.waste:
        yield f"lab.waste.{step.waste}.title"


RULE = Rule(DOC, in_procedure=find)
