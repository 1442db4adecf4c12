"""Several parts through shared places: how far apart they may start, what holds them up, how many fit."""

from generator.planning.cycle import Cycle, smallest_cycle
from generator.planning.occupied import (
    HANDS,
    Busy,
    PlannedRun,
    Pointer,
    Rest,
    Since,
    planned_run,
    run_stretches,
)
from generator.planning.parts import PartsPlan, TimedRun, plan_parts
from generator.planning.points import PointOfNoReturn, points_of_no_return
from generator.planning.spacing import (
    bottleneck,
    clear_spacing,
    load_of,
    operators_needed,
    parts_within,
    series_spacing,
)

__all__ = [
    "HANDS",
    "Busy",
    "Cycle",
    "PartsPlan",
    "PlannedRun",
    "PointOfNoReturn",
    "Pointer",
    "Rest",
    "Since",
    "TimedRun",
    "bottleneck",
    "clear_spacing",
    "load_of",
    "operators_needed",
    "parts_within",
    "plan_parts",
    "planned_run",
    "points_of_no_return",
    "run_stretches",
    "series_spacing",
    "smallest_cycle",
]
