"""What the steps of a run put together, vessel by vessel, and what they use side by side."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.checks.evidence.meeting import Amounts, Meeting, meetings_among
from generator.model import FormulaRef, Step
from generator.study import Located, Study
from generator.study.composition import substances_in
from generator.units import Quantity

_INTO_PLACE = ("add", "mix", "pour")
_CLEARING = ("rinse", "clean", "empty")


@dataclass(frozen=True, slots=True)
class Together:
    """A step, the step that brought the other thing where that is an earlier one, and what meets."""

    step: Step
    earlier: Step | None
    found: Meeting


def put_together(study: Study) -> Iterator[Together]:
    """What never meets and is put into one vessel, by one step or by several until it is emptied.

    Amounts of one thing in one vessel are added up over the run, with every repeat.
    """
    held: dict[str, dict[str, Quantity | None]] = {}
    told: set[tuple[str, frozenset[str]]] = set()
    for located in study.steps():
        step = located.step
        if step.do == "empty":
            for name in (*map(str, step.use), _at(study, str(step.at or ""))):
                held.pop(name, None)
        if not step.use:
            continue
        vessel = vessel_of(study, step)
        inside = held.setdefault(vessel, {})
        for name, amount in used(study, located).items():
            inside[name] = _added(inside[name], amount) if name in inside else amount
        for found in _meeting_in(study, vessel, inside):
            if (vessel, found.pair) not in told and found.holders & {*map(str, step.use)}:
                told.add((vessel, found.pair))
                yield Together(step, None, found)


def side_by_side(study: Study) -> Iterator[Together]:
    """What never meets and is used one after the other at one place, nothing cleaned between."""
    last: dict[str, Located] = {}
    for located in study.steps():
        step, at = located.step, str(located.step.at or "")
        if step.do in _CLEARING:
            last.pop(at, None)
        elif step.use and at:
            before = last.get(at)
            if before and vessel_of(study, before.step) != vessel_of(study, step):
                yield from _beside(study, before, located)
            last[at] = located


def _beside(study: Study, before: Located, located: Located) -> Iterator[Together]:
    first, then = used(study, before), used(study, located)
    names = [name for name in then if name not in first]
    for found in meetings_among(study.lab, [*first, *names], known({**then, **first})):
        if found.holders & first.keys() and found.holders & {*names}:
            yield Together(located.step, before.step, found)
            return


def _meeting_in(study: Study, vessel: str, inside: dict[str, Quantity | None]) -> tuple[Meeting, ...]:
    """What meets in a vessel, unless the mixture that it holds is declared with both."""
    mixed = vessel in study.lab.mixtures
    declared = {*substances_in(study.lab, vessel)} if mixed else set()
    found = meetings_among(study.lab, [*inside, *([vessel] if mixed else [])], known(inside))
    return tuple(one for one in found if not one.pair <= declared)


def vessel_of(study: Study, step: Step) -> str:
    """Into what a step puts things: the mixture of a place, the place, or a vessel of the step's own."""
    named = str(step.into or (step.at if step.do in _INTO_PLACE and step.at else ""))
    return _at(study, named) if named else f"vessel of {step.id}"


def _at(study: Study, id: str) -> str:
    place = study.place(id)
    return str(place.holds) if place and place.holds else id


def used(study: Study, located: Located) -> dict[str, Quantity | None]:
    """The things that a step uses with their amounts over all repeats; None where a step does not say."""
    step, stage = located.step, located.stage
    times = (step.repeat.number if step.repeat else 1) * (stage.repeat.number if stage.repeat else 1)
    return {str(name): _times(_amount(study, step, amount), times) for name, amount in step.use.items()}


def known(amounts: dict[str, Quantity | None]) -> Amounts:
    """The amounts that are known."""
    return {name: amount for name, amount in amounts.items() if amount is not None}


def _amount(study: Study, step: Step, amount: Quantity | str) -> Quantity | None:
    if isinstance(amount, Quantity):
        return amount
    value = step.given.get(amount) or study.procedure.job.get(amount)
    if isinstance(value, FormulaRef):
        found = study.sums.by_key.get(f"job.{amount}")
        return found.answer if found else None
    return value if isinstance(value, Quantity) else None


def _times(amount: Quantity | None, times: int) -> Quantity | None:
    return Quantity(amount.number * times, amount.unit) if amount else None


def _added(one: Quantity | None, other: Quantity | None) -> Quantity | None:
    """The sum of two amounts; unknown where either is, or where they are of two kinds."""
    if one is None or other is None or one.dimension != other.dimension:
        return None
    return Quantity(one.number + other.to(one.unit).number, one.unit)
