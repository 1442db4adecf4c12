"""Which piece of protective equipment covers which part of the body, and against what."""

from collections.abc import Iterable

from generator.model import Lab, Ppe, Text

CHEMICALS = "chemicals"


def piece(lab: Lab, id: str) -> Ppe | None:
    """The piece of PPE of an id, or None."""
    return lab.ppe.get(Text(id))


def covers(lab: Lab, id: str, part: str, against: str) -> bool:
    """Whether a piece protects a part of the body; a face shield over eye protection counts for eyes too."""
    worn = piece(lab, id)
    if worn is None or against not in worn.against:
        return False
    under = piece(lab, str(worn.over)) if worn.over else None
    shields_eyes = (
        worn.protects == "face" and part == "eyes" and under is not None and under.protects == "eyes"
    )
    return worn.protects == part or shields_eyes


def pieces_over(lab: Lab, worn: Iterable[str], part: str, against: str) -> tuple[str, ...]:
    """Ids of the pieces among those worn that cover a part."""
    return tuple(dict.fromkeys(id for id in worn if covers(lab, id, part, against)))
