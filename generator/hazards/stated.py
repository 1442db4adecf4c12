"""An ingredient from words on a command line: "sulphuric acid=190 g/L", completed from what ships."""

import re
from dataclasses import replace
from difflib import get_close_matches

from generator.hazards.composition import Ingredient, ScreeningProblem
from generator.hazards.declared import declared_ingredient
from generator.hazards.statements import is_statement, nearest_code
from generator.hazards.substances import (
    KnownSubstance,
    known_substances,
    plain_name,
    substance_by_cas,
    substance_by_name,
)
from generator.units import Quantity, UnitsError, read_quantity

EXAMPLE = "sulphuric acid=190 g/L"
# name = amount [as H2SO4] [of 96 % w/w] [at 1.84 kg/L] [with H314 H302, or with none]
_PART = re.compile(
    r"(?P<name>[^=]+?)\s*=\s*(?P<amount>.+?)(?:\s+as\s+(?P<species>\w[\w ()+.-]*?))?"
    r"(?:\s+of\s+(?P<strength>.+?))?(?:\s+at\s+(?P<density>.+?))?(?:\s+with\s+(?P<codes>.+))?"
)
# A name so near to a known one is a slip: taken as unknown, its hazards would be lost in silence.
_SLIP = 0.84


def stated_ingredient(text: str) -> Ingredient | ScreeningProblem:
    """Read one ingredient, or say what is wrong with its words; nothing is guessed."""
    found = _PART.fullmatch(text.strip())
    if found is None:
        return ScreeningProblem("", f'"{text}" is no part: a name, =, an amount', f'write "{EXAMPLE}"')
    name = found["name"].strip()
    try:
        amount = None if found["amount"] == "rest" else read_quantity(found["amount"])
        strength = read_quantity(found["strength"]) if found["strength"] else None
        density = read_quantity(found["density"]) if found["density"] else None
    except UnitsError as bad:
        return ScreeningProblem(name, bad.message, bad.fix)
    codes = _codes(name, found["codes"])
    if isinstance(codes, ScreeningProblem):
        return codes
    wrong = _wrong_kind(name, strength, density)
    return wrong or _ingredient(name, amount, codes, found["species"] or "", strength, density)


def _wrong_kind(name: str, strength: Quantity | None, density: Quantity | None) -> ScreeningProblem | None:
    if strength is not None and strength.unit != "% w/w":
        return ScreeningProblem(name, "the strength after `of` is no % w/w", "write `of 96 % w/w`")
    if density is not None and density.dimension != read_quantity("1 kg/L").dimension:
        return ScreeningProblem(name, "the density after `at` is none", "write `at 1.84 kg/L`")
    return None


def _codes(name: str, text: str | None) -> tuple[str, ...] | ScreeningProblem | None:
    if text is None:
        return None
    words = tuple(word for word in re.split(r"[\s,]+", text.strip()) if word)
    if words == ("none",):
        return ()
    for word in words:
        if not is_statement(word):
            near = nearest_code(word)
            fix = f"did you mean {near}?" if near else "copy it again from section 2 of the supplier's sheet"
            return ScreeningProblem(name, f"{word} is no H statement", fix)
    return words


def _ingredient(
    name: str,
    amount: Quantity | None,
    codes: tuple[str, ...] | None,
    species: str,
    strength: Quantity | None,
    density: Quantity | None,
) -> Ingredient | ScreeningProblem:
    entry = substance_by_cas(name) or substance_by_name(name)
    near = "" if entry or codes is not None else _near(name)
    if near:
        return ScreeningProblem(
            name, f"no substance that ships is called {name}",
            f'did you mean "{near}"? If it is another one, write its statements: '
            f'"{name}=... with H302 H319", or "with none"',
        )  # fmt: skip
    made = declared_ingredient(
        name,
        amount,
        codes,
        cas=entry.cas if entry else "",
        counted_as=species,
        strength=strength,
        density=density,
    )
    return made if entry is None else _as_pure(_named(made, entry), entry, codes, strength)


def _named(made: Ingredient, entry: KnownSubstance) -> Ingredient:
    """With a word on which of several forms was taken, where the name does not say it."""
    said = plain_name(made.name)
    if said in (plain_name(entry.id), entry.cas) or not plain_name(entry.id).startswith(said):
        return made
    return replace(made, notes=(*made.notes, f"taken as {entry.id} (CAS {entry.cas})"))


def _as_pure(
    made: Ingredient, entry: KnownSubstance, codes: tuple[str, ...] | None, strength: Quantity | None
) -> Ingredient:
    """Of a substance that ships, an amount without a strength speaks of the pure substance."""
    if codes is not None or strength is not None:
        return made
    return replace(made, of_pure=True, evidence=entry.evidence if entry.classes else None)


def _near(name: str) -> str:
    known = [word for one in known_substances() for word in (one.name, *one.also)]
    lowered = {word.lower(): word for word in known}
    found = get_close_matches(name.lower(), list(lowered), 1, _SLIP)
    return lowered[found[0]] if found else ""
