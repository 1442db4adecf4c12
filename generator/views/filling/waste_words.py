"""Where a substance or mixture ends: containers, caps, what never goes in, who fetches them."""

import datetime
from collections.abc import Iterator

from generator.hazards import gas_maker
from generator.model import Container, Mixture, Substance, Text
from generator.study import LabStudy
from generator.study.composition import substances_in
from generator.study.leaving import left_by
from generator.units import show_quantity
from generator.views.chemical import HazardLineView
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import joined, low, role_title, thing_title


def containers_of(study: LabStudy, id: str, noun: Mixture | Substance) -> Iterator[tuple[str, Container]]:
    """Containers that take its leftovers, the thing itself, or the residue that it leaves on the part."""
    lab = study.lab
    leftovers = str(noun.leftovers) if isinstance(noun, Mixture) and noun.leftovers else ""
    residues = {str(residue) for residue in lab.residues if id in left_by(lab, str(residue))}
    for name, container in lab.waste.items():
        if name == leftovers or id in container.takes or residues & set(map(str, container.takes)):
            yield str(name), container


def waste_lines(study: LabStudy, id: str, noun: Mixture | Substance) -> Iterator[HazardLineView]:
    """A line for each container; whom to ask where none is declared."""
    for _, container in containers_of(study, id, noun):
        yield HazardLineView(container_words(study, container), container.title)
    questions = study.lab.lab.help.waste_questions
    if questions:
        yield HazardLineView(role_title(study.lab, questions), "Questions about waste")


def container_words(study: LabStudy, container: Container) -> str:
    """What it takes, its cap, when it is full, who fetches it, what never goes in."""
    takes = joined(low(thing_title(study.lab, str(thing))) for thing in container.takes)
    drain = container.to_drain
    rest = (
        f"takes {takes}" if takes else "",
        f"cap {container.cap}" if container.cap else "",
        f"full at {show_quantity(container.full_at)}" if container.full_at else "",
        f"fetched by the {low(role_title(study.lab, container.pickup))}" if container.pickup else "",
        _drain_words(study, drain.decided_by, drain.decided) if drain else "",
    )
    never = f". Never: {container.never}" if container.never else ""
    return f"{', '.join(part for part in rest if part)}{never}."


def _drain_words(study: LabStudy, by: object, day: object) -> str:
    who = f", decided by the {low(role_title(study.lab, str(by)))}" if by else ", decided by nobody named"
    when = f", {day_words(day)}" if isinstance(day, datetime.date) else ""
    return f"to the drain{who}{when}"


def is_vented(study: LabStudy, id: str) -> bool:
    """Whether it may give off gas: by its parts' statements, a vented place, or a vented container for it."""
    lab = study.lab
    noun = lab.mixtures.get(Text(id)) or lab.substances.get(Text(id))
    if noun is None:
        return False
    codes = tuple(code for part in substances_in(lab, id) for code in study.statements_of(part))
    places = any(place.holds == id and place.vented for place in lab.places.values())
    ends = any(container.cap == "vented" for _, container in containers_of(study, id, noun))
    return (
        places or ends or (isinstance(noun, Mixture) and bool(gas_maker((*codes, *map(str, noun.hazards)))))
    )
