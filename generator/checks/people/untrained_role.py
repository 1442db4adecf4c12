"""A role without training works with what takes training."""

from collections.abc import Iterator

from generator.checks.evidence.contents import in_use, substance
from generator.checks.rule import Rule
from generator.hazards import grave_as_bought, needs_sign_off
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Located, Study, title_of

DOC = RuleDoc(
    id="untrained-role",
    level=Level.ERROR,
    subject="people",
    what="H314, H330, H334 or H350 is in use, and the role that does the step (`who` of the step, else of "
    "the procedure) needs no sign-off. What a step uses as bought is told by concentrate-in-student-step.",
    why="Whoever has never been shown learns it from the first splash.",
    bad="""roles:
  operator: {title: Student}""",
    good="""roles:
  operator: {title: Trained student, needs: [acid-module]}
signoffs:
  acid-module: {title: Acid handling module, valid: 12 months, given_by: safety-office}""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a role."""
    grave: dict[str, dict[str, tuple[str, ...]]] = {}
    where: dict[str, Located] = {}
    for found in study.steps():
        who = str(found.step.who or study.procedure.who)
        role = study.role(who)
        if role is None or role.needs:
            continue
        for id in in_use(study, found.step):
            codes = _codes(study, id)
            if codes:
                grave.setdefault(who, {}).setdefault(id, codes)
                where.setdefault(who, found)
    for who, things in grave.items():
        yield _untrained(study, who, things, where[who])


def _codes(study: Study, id: str) -> tuple[str, ...]:
    """The codes that ask for a sign-off, but for what another rule tells of something as bought."""
    codes = needs_sign_off(study.statements_of(id))
    return () if substance(study.lab, id) and grave_as_bought(study.statements_of(id)) else codes


def _untrained(study: Study, who: str, things: dict[str, tuple[str, ...]], found: Located) -> Problem:
    own = found.step.who is not None
    told = [f"{title_of(study.lab, id)} ({', '.join(codes)})" for id, codes in things.items()]
    signoffs = ", ".join(map(str, study.lab.signoffs))
    declared = (
        f"the sign-off that covers it ({signoffs})" if signoffs else "a sign-off declared under `signoffs`"
    )
    return DOC.found(
        found.step.spot("who") if own else study.procedure.spot("who"),
        f"{title_of(study.lab, who)} works with {' and '.join(told[:3])} and needs no sign-off",
        f"write `needs: [...]` at the role `{who}` with {declared}, or give the work to a trained role",
        step=str(found.step.id) if own else "",
        causes=(Cause(f"signoff:{who}", "lab"),),
    )


RULE = Rule(DOC, in_procedure=find)
