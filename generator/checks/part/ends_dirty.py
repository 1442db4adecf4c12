"""The part ends wet or with a residue, unlike `part.ends`."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, causes_of, found_at_end, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import START

DOC = RuleDoc(
    id="ends-dirty",
    level=Level.ERROR,
    subject="part",
    what="At the end the part is wet, or carries a residue, unlike what `part.ends` says.",
    why="What rides on a finished part goes home, into the machine and onto the next hands.",
    bad="""part: {name: board, ends: {at: drill, wet: false,
   residues: []}}   # and no rinse behind the last bath""",
    good="""- {id: rinse-6, do: rinse, at: di, for: 120 s, waste: drum-c, say: Spray both sides.}""",
    needs=("part",),
)


def find(study: Study) -> Iterator[Problem]:
    """At the end of every path, wetness and residues against `part.ends`."""
    told = study.procedure.part
    if told is None or told.ends is None:
        return
    for end in study.walk.ends:
        left = sorted(set(end.state.names("residue")) - set(told.ends.residues))
        if left:
            since = end.state.atom("residue", left[0]).since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"at the end the {part(study)} still carries {called(study, *left)}",
                f"put a step that takes it off behind {'the start' if since == START else since}",
                *causes_of(end.state, "residue", left),
            )
        if end.state.has("wet") and not told.ends.wet:
            since = end.state.atom("wet").since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"at the end the {part(study)} is still wet, and `part.ends` says dry",
                f"put a `do: dry` step behind {since}",
                end.state.cause("wet"),
            )


RULE = Rule(DOC, in_procedure=find)
