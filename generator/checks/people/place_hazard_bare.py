"""A place has a hazard and asks for nothing against it."""

from collections.abc import Iterator

from generator.checks.evidence.protecting import bare, known, listed, protected_parts, wear_fix
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="place-hazard-bare",
    level=Level.ERROR,
    subject="people",
    what="A place has a hazard word that asks for a part of the body to be covered, and neither its "
    "`wear` nor `base_wear` holds a piece that protects this part against it. A place with `extraction` "
    "needs no mask.",
    why="A hot oven looks like a cold one.",
    bad="""places:
  oven: {title: Fixing oven, cover: door, hazards: [hot-surface]}""",
    good="""ppe:
  heat-gloves: {title: Heat gloves, protects: hands, against: [hot-surface]}
places:
  oven: {title: Fixing oven, cover: door, hazards: [hot-surface], wear: [heat-gloves]}""",
    needs=("ppe", "places"),
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a place and hazard word."""
    lab = study.lab
    for id, place in lab.places.items():
        worn = tuple(map(str, (*place.wear, *lab.lab.base_wear)))
        for word in map(str, place.hazards):
            drawn_off = {"lungs"} if place.extraction else set()
            parts = [part for part in protected_parts(lab, word) if part not in drawn_off]
            light = bare(lab, worn, parts, word)
            if light and known(lab, worn):
                yield DOC.found(
                    place.spot("hazards"),
                    f"{title_of(lab, str(id))} has the hazard {title_of(lab, word).replace('-', ' ')}, and "
                    f"nothing in its `wear` protects {listed(light)} against it",
                    wear_fix(lab, light, word, f"`wear` of `{id}`"),
                    place=str(id),
                )


RULE = Rule(DOC, in_lab=find)
