"""Who wrote the procedure also approves it."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="approves-own",
    level=Level.WARNING,
    subject="posting",
    what="`written_by` and `approver` are one role, or two roles held by one person now.",
    why="A second pair of eyes sees what the author no longer sees.",
    bad="written_by: technician\napprover: technician",
    good="written_by: technician\napprover: instructor",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a procedure."""
    it = study.procedure
    author, approver = study.role(it.written_by), study.role(it.approver)
    where = it.spot("approver")
    if it.written_by is not None and it.written_by == it.approver:
        yield DOC.found(
            where,
            f"{it.approver} approves what {it.written_by} has written",
            "name another role as `approver`",
        )
    elif author and approver and author.now and author.now == approver.now:
        yield DOC.found(
            where,
            f"{it.written_by} and {it.approver} are one person now",
            "name a role that somebody else holds as `approver`",
        )


RULE = Rule(DOC, in_procedure=find)
