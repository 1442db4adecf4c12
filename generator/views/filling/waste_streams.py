"""Where everything ends: containers with what runs into them and the hazards that this brings."""

from generator.hazards import Edition, label_statements
from generator.model import Container, Text
from generator.study import LabStudy
from generator.study.leaving import left_by
from generator.units import show_quantity
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import joined, low, role_title, thing_title
from generator.views.lab_hazards import CellView, TableView


def streams_table(study: LabStudy) -> TableView:
    """Every container."""
    rows = tuple(_row(study, one) for one in study.lab.waste.values())
    heads = ("Container", "Takes", "Brings", "Cap and level", "Never", "Fetched by")
    foot = (
        "“Brings” lists the statements of the baths behind each stream, undiluted. What a residue is by "
        "itself is not declared.",
    )
    return TableView("waste_streams", "Waste streams", heads, rows, foot=foot)


def _row(study: LabStudy, one: Container) -> tuple[CellView, ...]:
    takes = joined(low(thing_title(study.lab, str(thing))) for thing in one.takes)
    level = f"full at {show_quantity(one.full_at)}" if one.full_at else "level not said"
    return (
        CellView(one.title),
        CellView(takes or "nothing declared"),
        CellView(", ".join(brought_codes(study, one)) or "no statement declared"),
        CellView(f"cap {one.cap}" if one.cap else "cap not said", note=level),
        CellView(str(one.never or "–")),
        CellView(_end(study, one)),
    )


def _end(study: LabStudy, one: Container) -> str:
    if one.to_drain:
        by = role_title(study.lab, one.to_drain.decided_by) if one.to_drain.decided_by else "nobody named"
        when = f", {day_words(one.to_drain.decided)}" if one.to_drain.decided else ""
        return f"runs to the drain; decided by: {low(by)}{when}"
    return role_title(study.lab, one.pickup) if one.pickup else "not said"


def behind(study: LabStudy, one: Container) -> tuple[str, ...]:
    """Ids of the mixtures and substances that a container takes, or whose residues it takes."""
    found: dict[str, None] = {}
    for thing in map(str, one.takes):
        if Text(thing) in study.lab.residues:
            found.update(dict.fromkeys(left_by(study.lab, thing)))
        elif Text(thing) in study.lab.mixtures or Text(thing) in study.lab.substances:
            found[thing] = None
    return tuple(found)


def declared_codes(study: LabStudy, one: Container) -> tuple[str, ...]:
    """The H and EUH codes of everything behind a container, each once."""
    found = (code for id in behind(study, one) for code in study.statements_of(id))
    return tuple(dict.fromkeys(str(code) for code in found if str(code)[:1] in "HE"))


def brought_codes(study: LabStudy, one: Container) -> tuple[str, ...]:
    """The same, weaker ones left out, as a label lists them."""
    lines = label_statements(declared_codes(study, one), Edition(study.lab.lab.ghs))
    return tuple(line.code for line in lines)
