"""Gloves against chemicals."""

from generator.study import Study
from generator.walk import State


def chemical_gloves(study: Study, state: State) -> tuple[str, ...]:
    """What is worn on the hands against chemicals, innermost first; everybody's own wear is left out."""
    base = set(study.lab.lab.base_wear)
    return tuple(piece for piece in state.gloves() if piece not in base and _against(study, piece))


def _against(study: Study, piece: str) -> bool:
    worn = study.lab.ppe.get(piece)  # type: ignore[call-overload]
    return bool(worn and "chemicals" in worn.against)
