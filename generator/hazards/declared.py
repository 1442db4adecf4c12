"""Ingredients for a screening from what a lab declares, completed from the substances that ship."""

from dataclasses import replace

from generator.hazards.classification import HazardClass, classes_of
from generator.hazards.composition import Ingredient
from generator.hazards.statements import statement
from generator.hazards.stronger import covered_by
from generator.hazards.substances import KnownSubstance, substance_by_cas
from generator.units import Quantity


def declared_ingredient(
    name: str,
    amount: Quantity | None,
    hazards: tuple[str, ...] | None,
    *,
    cas: str = "",
    counted_as: str = "",
    strength: Quantity | None = None,
    density: Quantity | None = None,
    bought_mixture: bool = False,
) -> Ingredient:
    """An ingredient as the lab declares it: statements as bought (None: not declared, (): not classified).

    The lab's list decides which classes there are. An entry that ships, found by CAS number, adds what a
    list of statements cannot say: sub-categories, specific limits, M-factors, known estimates. For a solution
    of stated strength the entry's classes are used whole: its statements depend on the strength.
    """
    codes = tuple(code for code in hazards if statement(code) is not None) if hazards is not None else None
    bare = Ingredient(
        name,
        amount,
        None if codes is None else classes_of(codes),
        cas=cas,
        counted_as=counted_as,
        strength=strength,
        density=density,
        supplements=tuple(code for code in codes or () if code.startswith("EUH")),
        notes=("bought as a mixture: its own make-up is not known",) if bought_mixture and codes else (),
    )
    entry = substance_by_cas(cas) if cas else None
    return bare if entry is None else _completed(bare, entry, codes)


def _completed(bare: Ingredient, entry: KnownSubstance, codes: tuple[str, ...] | None) -> Ingredient:
    whole = bare.strength is not None or codes is None
    kept = tuple(one for one in entry.classes if whole or covered_by(one.code, codes or ()))
    short_names = {one.short for one in kept}
    entry_codes = tuple(one.code for one in entry.classes)
    extra = tuple(one for one in bare.classes or () if not covered_by(one.code, entry_codes))
    return replace(
        bare,
        classes=(*kept, *extra),
        limits=tuple(
            one for one in entry.limits if whole or _wanted(one.hazard_class, short_names, codes or ())
        ),
        ate=entry.ate,
        m_acute=entry.m_acute,
        m_chronic=entry.m_chronic,
        supplements=tuple(dict.fromkeys((*bare.supplements, *entry.supplements))),
        formula=entry.formula,
        of_pure=bare.strength is not None or bool(bare.counted_as),
        evidence=entry.evidence if kept else None,
        notes=(*bare.notes, *_set_aside(entry, kept, codes)),
    )


def _wanted(of: HazardClass, short_names: set[str], codes: tuple[str, ...]) -> bool:
    return of.short in short_names or bool(covered_by(of.code, codes)) or of.code.startswith("EUH")


def _set_aside(
    entry: KnownSubstance, kept: tuple[HazardClass, ...], codes: tuple[str, ...] | None
) -> tuple[str, ...]:
    gone = sorted({one.code for one in entry.classes} - {one.code for one in kept})
    if not gone or codes is None:
        return ()
    return (f"{', '.join(gone)}: in the entry that ships ({entry.evidence.words}), not in the lab's list",)
