"""A grave substance as bought is handled by a role that nobody has trained."""

from collections.abc import Iterator

from generator.checks.evidence.contents import substance
from generator.checks.rule import Rule
from generator.hazards import grave_as_bought
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study, title_of

DOC = RuleDoc(
    id="concentrate-in-student-step",
    level=Level.ERROR,
    subject="chemicals",
    what="A step uses a substance with H300, H310, H314 or H330 as bought, and the role that does it "
    "needs no sign-off.",
    why="A bath forgives a splash for some seconds. A concentrate does not.",
    bad="""roles:
  student: {title: Student}
steps:
  - {id: add-acid, do: add, at: hood, use: {sulfuric-acid-96: 10 mL}, into: etch-mix, say: Add the acid.}""",
    good="""steps:
  - id: add-acid
    do: add
    at: hood
    who: bath-keeper
    use: {sulfuric-acid-96: 10 mL}
    into: etch-mix
    say: Add the acid slowly.""",
    needs=("substances",),
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step."""
    for found in study.steps():
        step = found.step
        who = str(step.who or study.procedure.who)
        role = study.role(who)
        if role is None or role.needs:
            continue
        for id in step.use:
            bought = substance(study.lab, str(id))
            codes = grave_as_bought(tuple(map(str, bought.hazards))) if bought else ()
            if codes:
                yield DOC.found(
                    id.where,
                    f"{title_of(study.lab, who)} uses {title_of(study.lab, str(id))} as bought "
                    f"({', '.join(codes)}) and needs no sign-off for it",
                    _fix(study, who),
                    step=str(step.id),
                    causes=(Cause(f"signoff:{who}", "lab"),),
                )


def _fix(study: Study, who: str) -> str:
    signed = next((str(id) for id, role in study.lab.roles.items() if role.needs and id != who), "")
    other = f"give the step to a trained role, as `who: {signed}`, or " if signed else ""
    return f"{other}write `needs: [...]` at the role `{who}` with the sign-off that covers it"


RULE = Rule(DOC, in_procedure=find)
