"""The overview of a lab's hazards for whoever answers for the room."""

from generator.hazards import Edition
from generator.study import LabStudy
from generator.views.addresses import HAZARDS, labels_kind, sheet_path
from generator.views.filling.chemical import CAUTION
from generator.views.filling.home import help_facts
from generator.views.filling.inventory import mixtures_table, substances_table
from generator.views.filling.reactivity import keep_apart_table, reactivity_table
from generator.views.filling.sheets_held import day_words
from generator.views.filling.waste_streams import streams_table
from generator.views.filling.wear_table import wear_table
from generator.views.lab_hazards import LabHazardsView, TableView
from generator.views.shown import FactView

_FILES = (
    ("hazards", "This overview, A4, PDF"),
    *((labels_kind("waste-labels", paper), f"Waste labels on {paper}, PDF") for paper in ("A4", "Letter")),
)


def lab_hazards_view(study: LabStudy, files: frozenset[str] = frozenset()) -> LabHazardsView:
    """Tables of what the lab declares; one with nothing in it is left out, but for the reactivity."""
    room = study.lab.lab
    facts = (
        FactView("Room", f"{room.name}, {room.room}"),
        FactView("As of", day_words(study.today)),
        FactView("Statements after", Edition(room.ghs).full_name),
        FactView("Emergency line", str(room.help.emergency or "not said")),
        *help_facts(study.lab),
    )
    printed = tuple(
        FactView(label, path) for kind, label in _FILES if (path := sheet_path(HAZARDS, kind)) in files
    )
    return LabHazardsView("Hazards of this lab", CAUTION, facts, _tables(study), printed)


def _tables(study: LabStudy) -> tuple[TableView, ...]:
    tables = (
        substances_table(study),
        mixtures_table(study),
        wear_table(study),
        streams_table(study),
        keep_apart_table(study),
        reactivity_table(study),
    )
    return tuple(table for table in tables if table.rows)
