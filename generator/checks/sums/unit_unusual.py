"""An allowed unit that is not the one used for this field."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.checks.rule import Rule
from generator.model import Lab, Located, Place, Procedure, Step
from generator.problems import Level, Location, Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.study.once import once_a_step
from generator.units import DimensionError, Quantity, Window, show_unit, write_quantity

DOC = RuleDoc(
    id="unit-unusual",
    level=Level.WARNING,
    subject="sums",
    what="A quantity stands in a unit that is allowed, but is not the one used for this field.",
    why=(
        "Next to its neighbours on the card the number is read in their unit: 122 among degrees Celsius "
        "scalds."
    ),
    bad="temperature: 108 to 118 degF",
    good="temperature: 42 to 48 degC",
)
_SHORT = ("s", "min", "h")
_MINUTES = ("s", "min")
_LONG = ("s", "min", "h", "day", "week")
_DATED = ("day", "week", "month", "year")
_DENSITY = ("kg/L", "g/mL", "g/cm3", "kg/m3", "g/L")


_MANY = 10_000
# Nobody drips, rinses or blows dry for hours.
_BRIEF = ("take-out", "rinse", "dry")


@dataclass(frozen=True, slots=True)
class _Field:
    name: str
    value: object
    odd: Quantity
    units: tuple[str, ...]
    where: Location
    step: str = ""
    place: str = ""


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """Places, racks, what is kept and made, and how long training and sheets are good for."""
    for field in _of_lab(study.lab):
        yield _problem(field)


def find(study: Study) -> Iterator[Problem]:
    """Steps, cards, and when the procedure is looked at again."""
    for field in _of_procedure(study.procedure):
        yield _problem(field)
    for found in study.steps():
        for field in _of_step(found.step):
            yield _problem(field)


def _of_lab(lab: Lab) -> Iterator[_Field]:
    yield from _own(lab.lab, "pack_up", _SHORT)
    yield from _own(lab.lab, "sheets_good_for", _DATED)
    for signoff in lab.signoffs.values():
        yield from _own(signoff, "valid", _DATED)
    for id, place in lab.places.items():
        yield from _of_place(str(id), place)
    for rack in lab.racks.values():
        yield from _own(rack, "stands", ("degC",))
    for bought in lab.substances.values():
        yield from _own(bought, "density", _DENSITY)
    for made in lab.mixtures.values():
        yield from _own(made, "density", _DENSITY)
        yield from _own(made, "volume", ("L", "mL", "m3"))
        yield from _own(made, "use_within", _LONG)
    for container in lab.waste.values():
        yield from _own(container, "full_at", ("%", "L", "mL", "kg", "g", "pieces"))


def _own(
    noun: Located, name: str, units: tuple[str, ...], step: str = "", place: str = ""
) -> Iterator[_Field]:
    """A field of a noun, where it is given in none of its usual units."""
    value = getattr(noun, f"{name}_" if name == "for" else name)
    odd = next((end for end in _ends(value) if end is not None and end.unit not in units), None)
    if odd is not None:
        yield _Field(name, value, odd, units, noun.spot(name), step, place)


def _ends(value: object) -> tuple[Quantity | None, ...]:
    if isinstance(value, Quantity):
        return (value,)
    return (value.low, value.high) if isinstance(value, Window) else ()


def _of_place(id: str, place: Place) -> Iterator[_Field]:
    yield from _own(place, "temperature", ("degC",), place=id)
    yield from _own(place, "time", _LONG, place=id)
    if place.power:
        yield from _own(place.power, "most", ("A",), place=id)


def _of_procedure(procedure: Procedure) -> Iterator[_Field]:
    yield from _own(procedure, "review_every", _DATED)
    for card in procedure.cards:
        yield from _own(card, "read_from", ("m",))


@once_a_step
def _of_step(step: Step) -> tuple[_Field, ...]:
    return tuple(_in_step(step, str(step.id)))


def _in_step(step: Step, id: str) -> Iterator[_Field]:
    if step.for_:
        yield from _own(step, "for", _MINUTES if step.do in _BRIEF else _LONG, id)
    if step.takes:
        yield from _own(step, "takes", _SHORT, id)
    if step.since:
        yield from _own(step.since, "time", _LONG, id)
    if step.pause:
        yield from _own(step.pause, "time", _LONG, id)
    if step.watch:
        yield from _own(step.watch, "every", _SHORT, id)
    if step.power:
        yield from _own(step.power, "to", ("A", "V", "W", "kW", "%"), id)
        yield from _own(step.power, "ramp", _MINUTES, id)


def _problem(field: _Field) -> Problem:
    usual = field.units[0] if len(field.units) == 1 else f"one of {', '.join(map(show_unit, field.units))}"
    return DOC.found(
        field.where,
        f"`{field.name}` is given in {show_unit(field.odd.unit)}; used for it is "
        f"{show_unit(usual) if len(field.units) == 1 else usual}",
        _fix(field, field.value),
        step=field.step,
        place=field.place,
    )


def _fix(field: _Field, value: object) -> str:
    """The value in the first of the usual units that measures the same; its number where that is absurd."""
    if isinstance(value, Quantity) and _absurd(value, field.units[0]):
        return f"did you mean `{field.name}: {_tidy(Quantity(value.number, field.units[0]))}`?"
    for unit in field.units:
        try:
            return f"write `{field.name}: {_in_unit(value, unit)}`"
        except DimensionError:
            continue
    return f"write it in {field.units[0]}"


def _absurd(value: Quantity, unit: str) -> bool:
    """Whether nobody would say so: hours of dripping, in seconds."""
    try:
        return value.to(unit).number >= _MANY
    except DimensionError:
        return False


def _in_unit(value: object, unit: str) -> str:
    if isinstance(value, Quantity):
        return _tidy(value.to(unit))
    assert isinstance(value, Window)
    low, high = (_tidy(end.to(unit)) if end else "" for end in (value.low, value.high))
    if low and high and low != high:
        return f"{low.removesuffix(f' {unit}')} to {high}"
    return low if low == high else f"at least {low}" if low else f"up to {high}"


def _tidy(value: Quantity) -> str:
    return write_quantity(Quantity(float(f"{value.number:.4g}"), value.unit))


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
