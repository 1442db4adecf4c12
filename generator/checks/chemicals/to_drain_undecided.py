"""Something runs to a drain and no role has decided it."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of

DOC = RuleDoc(
    id="to-drain-undecided",
    level=Level.ERROR,
    subject="chemicals",
    what="A drain under `waste` does not say which role decided it (`to_drain: {decided_by, decided}`), "
    "or a rinse at a place without tray and without `drains_to` names no `waste`, so that it runs away "
    "undecided.",
    why="What may go down a drain is a matter of permits, and nobody at the bench can see it in the water.",
    bad="""waste:
  silt-drain: {title: Sink drain with silt trap, takes: [dust], to_drain: {}}""",
    good="""waste:
  silt-drain:
    title: Sink drain with silt trap
    takes: [dust]
    to_drain: {decided_by: safety-office, decided: 2026-05-20}""",
    needs=("waste",),
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a drain."""
    for id, container in study.lab.waste.items():
        if container.to_drain is not None and container.to_drain.decided_by is None:
            yield DOC.found(
                container.spot("to_drain"),
                f"no role has decided that {title_of(study.lab, str(id))} may be used",
                "ask the safety office, then write `to_drain: {decided_by: ROLE, decided: DAY}`",
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a place where a step rinses and the water runs nobody says where."""
    told: set[str] = set()
    for found in study.steps():
        step, place = found.step, study.place(found.step.at)
        if step.do != "rinse" or place is None or step.waste is not None or str(step.at) in told:
            continue
        if place.water and not place.tray and place.drains_to is None:
            told.add(str(step.at))
            yield DOC.found(
                place.where,
                f"nothing says where the water of {title_of(study.lab, str(step.at))} runs, "
                f"and step {step.id} rinses there",
                "write `drains_to: ...` with the drain, and declare the drain "
                "under `waste` with the role that decided it",
                step=str(step.id),
                place=str(step.at),
            )


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
