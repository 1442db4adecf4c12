"""A procedure as a safety office reads it: process to training, in the usual order of a university."""

from collections.abc import Iterator

from generator.hazards import Edition
from generator.model import Mixture, Substance, Text
from generator.study import Study
from generator.units import show_quantity, show_window
from generator.views.addresses import hazards_address, office_address, procedure_address, sheet_path
from generator.views.chemical import HazardHeadingView, HazardLineView
from generator.views.filling.chemical import CAUTION
from generator.views.filling.hazard_words import word_sign
from generator.views.filling.hazards import met_steps
from generator.views.filling.headings import headings
from generator.views.filling.inventory import statements_words
from generator.views.filling.office_approvals import (
    approval_lines,
    prior_lines,
    signing_roles,
    training_lines,
)
from generator.views.filling.office_work import cleaning_lines, control_lines, wear_by_stage
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import joined, low, role_title, thing_title
from generator.views.lab_hazards import OfficeView
from generator.views.shown import BannerView, FactView, LinkView

Lines = Iterator[HazardLineView]


def office_view(
    study: Study, banners: tuple[BannerView, ...] = (), files: frozenset[str] = frozenset()
) -> OfficeView:
    """Everything that the lab and the procedure declare, sorted as an office asks for it."""
    procedure, room = study.procedure, study.lab.lab
    printed = sheet_path(procedure_address(procedure.id), "office")
    found = _summaries(study)
    rows = (
        ("Process", _process(study)),
        ("Hazards", _hazards(study)),
        ("Protective equipment", wear_by_stage(study)),
        ("Controls", control_lines(study)),
        ("Handling and storage", _from(found, "Handling", "Storage", "Never mix with")),
        ("Spill and first action", _spill(study, found)),
        ("Waste", _from(found, "Waste")),
        ("Decontamination", cleaning_lines(study)),
        ("Approvals", approval_lines(study)),
        ("Training", training_lines(study)),
        ("Operations that need prior approval", prior_lines(study)),
    )
    facts = (
        FactView("Place", f"{room.name}, {room.room}"),
        FactView("Done by", role_title(study.lab, procedure.who)),
        FactView("As of", day_words(study.today)),
        FactView("Statements after", Edition(room.ghs).full_name),
        FactView("Address", office_address(procedure.id)),
    )
    return OfficeView(
        procedure.id,
        f"Safety office sheet: {low(procedure.title)}",
        LinkView("Back to the procedure", procedure_address(procedure.id)),
        LinkView("Its hazard summary in full", hazards_address(procedure.id)),
        CAUTION,
        facts,
        tuple(HazardHeadingView(title, tuple(lines)) for title, lines in rows),
        signing_roles(study),
        (FactView("This sheet, A4, PDF", printed),) if printed in files else (),
        banners,
    )


def _process(study: Study) -> Lines:
    procedure, lab = study.procedure, study.lab
    yield HazardLineView(procedure.title, "What is done")
    for stage in procedure.stages:
        count = len(stage.steps)
        places = dict.fromkeys(str(step.at) for step in stage.steps if step.at)
        where = joined(low(thing_title(lab, id)) for id in places)
        at = f" at {where}" if where else ""
        yield HazardLineView(f"{count} step{'s' * (count > 1)}{at}", stage.title)
    for name, window in procedure.limits.items():
        yield HazardLineView(show_window(window), f"Limit: {name.replace('_', ' ').replace('-', ' ')}")
    if procedure.not_for:
        yield HazardLineView(procedure.not_for, "Not for")
    if procedure.stop_rule:
        yield HazardLineView(procedure.stop_rule, "Stop rule")


def _hazards(study: Study) -> Lines:
    lab = study.lab
    for id, steps in met_steps(study).items():
        noun = lab.mixtures.get(Text(id)) or lab.substances.get(Text(id))
        if noun is None:
            continue
        strength = (
            f", {show_quantity(noun.strength)}" if isinstance(noun, Substance) and noun.strength else ""
        )
        span = steps[0] if len(steps) == 1 else f"{steps[0]} to {steps[-1]}"
        said = statements_words(study, id, noun.not_classified)
        yield HazardLineView(f"{said} (steps {span})", f"{noun.title}{strength}")
    for place_id in dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at):
        place = study.place(place_id)
        for word in place.hazards if place else ():
            yield HazardLineView(word_sign(lab, str(word)).title, place.title if place else "")


def _summaries(study: Study) -> tuple[tuple[str, tuple[HazardHeadingView, ...]], ...]:
    found = []
    for id in met_steps(study):
        noun: Mixture | Substance | None = study.lab.mixtures.get(Text(id)) or study.lab.substances.get(
            Text(id)
        )
        if noun is not None and not noun.not_classified:
            found.append((str(noun.title), headings(study, id, noun)))
    return tuple(found)


def _from(found: tuple[tuple[str, tuple[HazardHeadingView, ...]], ...], *titles: str) -> Lines:
    """The lines of these headings, each once, with the names of what they are about."""
    about: dict[str, list[str]] = {}
    for name, rows in found:
        for heading in rows:
            for line in heading.lines if heading.title in titles else ():
                about.setdefault(_whole(heading.title, line), []).append(name)
    for text, names in about.items():
        whole = len(set(names)) == len(found) > 1
        yield HazardLineView(text, "All of them" if whole else joined(dict.fromkeys(names)))


def _whole(heading: str, line: HazardLineView) -> str:
    """A line as it reads among those of other headings."""
    if heading == "Never mix with" and not line.text.endswith("."):
        return f"Never with {line.text}" + (f" ({low(line.label)})" if line.label else "")
    if line.label.startswith("P"):
        return f"{line.text} ({line.label})"
    return f"{line.label}: {line.text}" if line.label else line.text


def _spill(study: Study, found: tuple[tuple[str, tuple[HazardHeadingView, ...]], ...]) -> Lines:
    help = study.lab.lab.help
    places = (
        ("Emergency line", help.emergency), ("Eyewash", help.eyewash), ("Shower", help.shower),
        ("Spill kit", help.spill_kit), ("First aid", help.first_aid), ("Extinguisher", help.extinguisher),
    )  # fmt: skip
    for label, text in places:
        yield HazardLineView(str(text or "not said"), label)
    for one in study.lab.emergencies:
        yield HazardLineView(f"{one.first} {one.then or ''}".strip(), one.when.capitalize())
    yield from _from(
        tuple((name, tuple(h for h in rows if h.title == "Spill")) for name, rows in found), "Spill"
    )
