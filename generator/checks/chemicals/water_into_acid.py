"""Water is added into an acid concentrate."""

from collections.abc import Iterator

from generator.checks.evidence.contents import is_water, substance
from generator.checks.rule import Rule
from generator.model import Lab, Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study, title_of

DOC = RuleDoc(
    id="water-into-acid",
    level=Level.ERROR,
    subject="chemicals",
    what="Water goes into an acid as bought: straight into its bottle or beaker, or into a mixture that "
    "so far holds the acid and no water, or it stands behind the acid in one step's `use`.",
    why="The first drops of water boil on the acid and throw it out.",
    bad="""steps:
  - {id: acid, do: add, at: hood, use: {sulfuric-acid-96: 20 mL}, into: dip, say: Pour the acid.}
  - {id: water, do: add, at: hood, use: {deionised-water: 1 L}, into: dip, say: Add the water.}""",
    good="""steps:
  - {id: water, do: add, at: hood, use: {deionised-water: 1 L}, into: dip, say: Pour the water.}
  - {id: acid, do: add, at: hood, use: {sulfuric-acid-96: 20 mL}, into: dip, say: Add the acid slowly.}""",
    needs=("substances",),
    source="general laboratory practice; common practice, no source",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that adds the water."""
    holding: dict[str, list[str]] = {}
    for step in study.procedure.steps:
        if step.do not in ("add", "mix", "pour"):
            continue
        vessel = str(step.into or step.at or "")
        before = holding.setdefault(vessel, [] if _empty(study, vessel) else [_bath(study, vessel)])
        for id in map(str, step.use):
            acid = next((other for other in before if _acid(study.lab, other)), "")
            if acid and is_water(study.lab, id) and not any(is_water(study.lab, other) for other in before):
                yield _poured(study, step, id, acid)
            before.append(id)


def _poured(study: Study, step: Step, water: str, acid: str) -> Problem:
    first, second = title_of(study.lab, water), title_of(study.lab, acid)
    where = next(id.where for id in step.use if id == water)
    return DOC.found(
        where,
        f"{first} goes into {second}, which is an acid as bought",
        f"turn it round: {first} first, then {second} slowly into it",
        step=str(step.id),
    )


def _acid(lab: Lab, id: str) -> bool:
    """Whether something is an acid as bought."""
    bought = substance(lab, id)
    return bool(bought and ("acid" in bought.groups or "heats-with-water" in bought.groups))


def _empty(study: Study, vessel: str) -> bool:
    """Whether a vessel starts empty: a mixture still to be made, or a place that holds none."""
    place = study.place(vessel)
    return not (place and place.holds) and substance(study.lab, vessel) is None


def _bath(study: Study, vessel: str) -> str:
    place = study.place(vessel)
    return str(place.holds) if place and place.holds else vessel


RULE = Rule(DOC, in_procedure=find)
