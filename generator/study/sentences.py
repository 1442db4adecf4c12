"""The author's sentences with what they are for: a command, something to be seen, or a reason."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from generator.model import Lab, Procedure, Step, Text
from generator.problems import Location, Problem, RuleDoc
from generator.study.once import once_a_step

COMMAND = "command"
SEEN = "seen"
REASON = "reason"
TOLD = "told"


class Said(NamedTuple):
    """A sentence, its field as the author names it, its kind, and the step or place that it belongs to."""

    text: Text
    field: str
    kind: str
    step: Step | None = None
    place: str = ""

    def spot(self, start: int = 0, length: int = 0) -> Location:
        """Where a piece of it stands; the whole sentence where it runs over lines or holds escapes."""
        where, quotes = self.text.where, self.text.where.length - len(self.text)
        if not length or quotes not in (0, 2):
            return where
        return Location(where.file, where.line, where.column + start + quotes // 2, length)

    def found(
        self, doc: RuleDoc, message: str, fix: str, start: int = 0, length: int = 0, label: str = ""
    ) -> Problem:
        """A problem of a rule at this sentence, or at a piece of it."""
        step = str(self.step.id) if self.step else ""
        return doc.found(self.spot(start, length), message, fix, step=step, place=self.place, label=label)


@once_a_step
def of_step(step: Step) -> tuple[Said, ...]:
    """Every sentence of one step; a mend is a step of its own."""
    hold, watch, since, ask = step.hold, step.watch, step.since, step.ask
    fields = (
        ("say", COMMAND, step.say),
        ("card", COMMAND, step.card),
        ("when_it_sounds", COMMAND, step.when_it_sounds),
        ("fail.say", COMMAND, step.fail.say if step.fail else None),
        ("watch.fail.say", COMMAND, watch.fail.say if watch and watch.fail else None),
        ("look", SEEN, step.look),
        ("check", SEEN, step.check),
        ("watch.check", SEEN, watch.check if watch else None),
        ("hold.until", SEEN, hold.until if hold else None),
        ("why", REASON, step.why),
        ("since.because", REASON, since.because if since else None),
        ("ask.question", TOLD, ask.question if ask else None),
        ("ask.answer", TOLD, ask.answer if ask else None),
        ("picture.alt", TOLD, step.picture.alt if step.picture else None),
    )
    return tuple(Said(text, field, kind, step) for field, kind, text in fields if text is not None)


def of_procedure(it: Procedure, at_steps: Iterable[Said]) -> Iterator[Said]:
    """Every sentence of a procedure, those at its steps in their place."""
    yield from _some(TOLD, title=it.title)
    yield from _some(COMMAND, stop_rule=it.stop_rule)
    yield from _some(REASON, not_for=it.not_for)
    yield from (Said(text, "tell_us_first", REASON) for text in it.tell_us_first)
    for stage in it.stages:
        yield from _some(TOLD, title=stage.title)
    yield from at_steps
    for seen in it.you_may_see:
        yield from _some(TOLD, symptom=seen.symptom)
        yield from (Said(text, "causes", TOLD) for text in seen.causes)
        yield from _some(COMMAND, do_first=seen.do_first)
    for card in it.cards:
        yield from _some(TOLD, title=card.title)
        yield from _some(COMMAND, stop_rule=card.stop_rule)


def of_equipment(lab: Lab) -> Iterator[Said]:
    """What is asked at places, what is done when it is not right, and what is done when a timer sounds."""
    for id, place in lab.places.items():
        if place.look:
            yield Said(place.look, "look", SEEN, place=str(id))
        if place.not_right and place.not_right.say:
            yield Said(place.not_right.say, "not_right.say", COMMAND, place=str(id))
    for timer in lab.timers.values():
        yield from _some(COMMAND, when_it_sounds=timer.when_it_sounds)


def of_lab(lab: Lab, at_equipment: Iterable[Said]) -> Iterator[Said]:
    """Every sentence of the lab that a page or a card may show, those at its equipment first."""
    yield from at_equipment
    for place in lab.places.values():
        yield from _some(TOLD, title=place.title)
    for mixture in lab.mixtures.values():
        yield from _some(TOLD, title=mixture.title)
        yield from _some(COMMAND, if_contaminated=mixture.if_contaminated)
    for container in lab.waste.values():
        yield from _some(TOLD, title=container.title)
        yield from _some(REASON, never=container.never)
    for pair in lab.keep_apart:
        yield from _some(REASON, because=pair.because)
    for event in lab.emergencies:
        yield from _some(COMMAND, first=event.first, then=event.then)
    for entry in lab.glossary.values():
        yield from _some(TOLD, means=entry.means)


def _some(kind: str, **fields: Text | None) -> Iterator[Said]:
    return (Said(text, field, kind) for field, text in fields.items() if text is not None)
