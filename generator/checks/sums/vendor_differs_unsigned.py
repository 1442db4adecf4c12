"""House practice differs from a supplier's paper, and nobody signed for it."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="vendor-differs-unsigned",
    level=Level.WARNING,
    subject="sums",
    what="An entry under `vendor_papers` does not say which role decided to differ, or when.",
    why=(
        "When the supplier's paper is quoted after a mishap, somebody must be able to say why the lab does "
        "otherwise."
    ),
    bad="""vendor_papers:
  - paper: Cleaner sheet, issue 7
    differs: We soak longer.""",
    good="""vendor_papers:
  - paper: Cleaner sheet, issue 7
    differs: We soak longer.
    because: Our bath is cooler.
    decided_by: instructor
    decided: 2026-06-03""",
)


def find(study: Study) -> Iterator[Problem]:
    """Each entry that lacks one or both."""
    for entry in study.procedure.vendor_papers:
        lacking = [
            field
            for field, value in (("decided_by", entry.decided_by), ("decided", entry.decided))
            if value is None and field not in entry.marks
        ]
        if lacking:
            what = " and ".join({"decided_by": "who decided", "decided": "when"}[field] for field in lacking)
            yield DOC.found(
                entry.where,
                f'"{entry.paper}" is not followed, and nothing says {what}',
                "write " + " and ".join(f"`{field}: ...`" for field in lacking) + " (a role, and a day)",
            )
        elif entry.decided and entry.decided > study.today:
            yield DOC.found(
                entry.spot("decided"),
                f"the decision is dated {entry.decided}, which has not come yet",
                "write the day on which it was decided",
            )


RULE = Rule(DOC, in_procedure=find)
