"""Molar masses from formulas, for amounts counted as something else ("60 mg/L as chloride")."""

import re

from generator.problems import NewelError

# Standard atomic weights, abridged to five figures (IUPAC 2021, from memory); the test compares with molmass.
_ATOMS = {
    "H": 1.008, "Li": 6.94, "B": 10.81, "C": 12.011, "N": 14.007, "O": 15.999, "F": 18.998, "Na": 22.990,
    "Mg": 24.305, "Al": 26.982, "Si": 28.085, "P": 30.974, "S": 32.06, "Cl": 35.45, "K": 39.098, "Ca": 40.078,
    "Ti": 47.867, "Cr": 51.996, "Mn": 54.938, "Fe": 55.845, "Co": 58.933, "Ni": 58.693, "Cu": 63.546,
    "Zn": 65.38, "Br": 79.904, "Mo": 95.95, "Pd": 106.42, "Ag": 107.87, "Cd": 112.41, "Sn": 118.71,
    "I": 126.90, "Ba": 137.33, "Pt": 195.08, "Au": 196.97, "Hg": 200.59, "Pb": 207.2,
}  # fmt: skip

# What the trade says when it means an element or a salt's ion.
_WORDS = {
    "chloride": "Cl", "copper": "Cu", "nickel": "Ni", "zinc": "Zn", "tin": "Sn", "silver": "Ag", "gold": "Au",
    "palladium": "Pd", "iron": "Fe", "lead": "Pb", "chromium": "Cr", "sulphate": "SO4", "sulfate": "SO4",
    "cyanide": "CN", "fluoride": "F", "ammonia": "NH3", "sulphuric acid": "H2SO4", "sulfuric acid": "H2SO4",
}  # fmt: skip

_PIECE = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|\)(\d*)")


def atoms_of(formula: str) -> dict[str, int]:
    """How many of each atom: "CuSO4.5H2O", "(NH4)2S2O8", or a word: "chloride". NewelError if unreadable."""
    formula = _WORDS.get(formula.strip().lower(), formula.strip())
    total: dict[str, int] = {}
    for part in re.split(r"[.·*]", formula):
        lead = re.match(r"\d+", part)
        for atom, count in _count_atoms(part[lead.end() :] if lead else part, formula).items():
            total[atom] = total.get(atom, 0) + count * (int(lead[0]) if lead else 1)
    return total


def _count_atoms(part: str, whole: str) -> dict[str, int]:
    stack: list[dict[str, int]] = [{}]
    at = 0
    while at < len(part):
        piece = _PIECE.match(part, at)
        if piece is None or (piece[1] and piece[1] not in _ATOMS) or (part[at] == ")" and len(stack) < 2):
            raise _unreadable(whole)
        at = piece.end()
        if piece[3]:
            stack.append({})
            continue
        inner = {piece[1]: 1} if piece[1] else stack.pop()
        times = int((piece[2] if piece[1] else piece[4]) or 1)
        for atom, count in inner.items():
            stack[-1][atom] = stack[-1].get(atom, 0) + count * times
    if len(stack) != 1 or not stack[0]:
        raise _unreadable(whole)
    return stack[0]


def _unreadable(formula: str) -> NewelError:
    return NewelError(
        "formula-of-substance",
        f"This is no chemical formula that can be weighed here: {formula!r}.",
        "The amount is counted as it, so its molar mass is needed.",
        "Write a formula such as H2SO4 or CuSO4.5H2O, or a word such as chloride.",
    )


def molar_mass(formula: str) -> float:
    """Molar mass in g/mol."""
    return sum(_ATOMS[atom] * count for atom, count in atoms_of(formula).items())


def mass_of_whole(part: str, whole: str) -> float:
    """Grams of the whole substance that bring one gram of the part: chloride in HCl -> 36.46/35.45.

    NewelError where the part is not in the whole.
    """
    inside, all_of = atoms_of(part), atoms_of(whole)
    if any(atom not in all_of for atom in inside):
        raise NewelError(
            "counted-as",
            f"{part} is not part of {whole}.",
            "The amount cannot be counted so.",
            f"Count it as {whole}, or as something that is in it.",
        )
    times = min(all_of[atom] / count for atom, count in inside.items())
    return molar_mass(whole) / (times * molar_mass(part))
