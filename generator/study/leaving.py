"""What stands behind a residue that rides on the part."""

from generator.model import Lab
from generator.study.once import once_a_lab


@once_a_lab
def left_by(lab: Lab, residue: str) -> tuple[str, ...]:
    """Ids of the mixtures that leave a residue on the part."""
    held = [str(place.holds) for place in lab.places.values() if place.holds and residue in place.leaves]
    return tuple(dict.fromkeys(held))
