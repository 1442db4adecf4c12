"""Which groups of the reactivity chart stand behind a substance, a mixture or a residue."""

from generator.hazards import group_name, substance_by_cas
from generator.model import Lab, Text
from generator.study.composition import substances_in
from generator.study.once import once_a_lab

CHART = "EPA-600/2-80-076"
WATER_GROUP = 106


def chart_groups_of(lab: Lab, substance: str, diluted: bool = False) -> tuple[int, ...]:
    """Groups of one substance: those that the lab states, else by its CAS number; none says nothing of it.

    `diluted` is for a substance in a mixture with water: a strong oxidising acid is then a plain one.
    """
    bought = lab.substances[Text(substance)]
    if bought.chart_groups is not None:
        return tuple(group for group in bought.chart_groups if group_name(group))
    entry = substance_by_cas(str(bought.cas)) if bought.cas else None
    if entry is None:
        return ()
    return entry.epa_groups_diluted if diluted else entry.epa_groups


def chart_groups(lab: Lab, id: str) -> tuple[int, ...]:
    """Groups of all parts of a mixture that can be placed on the chart, or of the substance itself."""
    return tuple(dict.fromkeys(group for _, group in placed_in(lab, id)))


@once_a_lab
def placed_in(lab: Lab, id: str) -> tuple[tuple[str, int], ...]:
    """Each substance of a mixture with each of its groups; what has none is not placed on the chart."""
    inside = substances_in(lab, id)
    wet = len(inside) > 1 and any(WATER_GROUP in chart_groups_of(lab, part) for part in inside)
    return tuple((part, group) for part in inside for group in chart_groups_of(lab, part, diluted=wet))


def has_water(lab: Lab, id: str) -> bool:
    """Whether a mixture is made with water, or the substance is water."""
    return WATER_GROUP in chart_groups(lab, id)
