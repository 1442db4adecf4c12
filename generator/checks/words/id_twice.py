"""One id for two things."""

from collections.abc import Iterable, Iterator

from generator.checks.rule import Rule
from generator.model import Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="id-twice",
    level=Level.ERROR,
    subject="words",
    what=(
        "An id is given twice: to two steps, two stages or two cards of a procedure, or to two nouns of the "
        "lab."
    ),
    why=(
        "Addresses, QR codes, run records and redos are made of ids. With two of them, one leads to the "
        "wrong place."
    ),
    bad="""- {id: open-1, do: open, at: soak, say: Lid off.}
- {id: open-1, do: open, at: cond, say: Lid off.}""",
    good="""- {id: open-1, do: open, at: soak, say: Lid off.}
- {id: open-2, do: open, at: cond, say: Lid off.}""",
)


def find(study: Study) -> Iterator[Problem]:
    """Steps (mends too), stages and cards; ids in two of the lab's files are found where they are read."""
    it = study.procedure
    yield from _twice("step", ((found.step.id, str(found.step.id)) for found in study.steps()))
    yield from _twice("stage", ((stage.stage, "") for stage in it.stages))
    yield from _twice("card", ((card.id, "") for card in it.cards))


def _twice(kind: str, ids: Iterable[tuple[Text, str]]) -> Iterator[Problem]:
    first: dict[str, Text] = {}
    for id, step in ids:
        known = first.setdefault(str(id), id)
        if known is not id:
            yield DOC.found(
                id.where,
                f'the {kind} "{id}" is already there, in line {known.where.line}',
                f"give this one an id of its own, such as `{_free(str(id), first)}`",
                step=step,
            )


def _free(id: str, taken: dict[str, Text]) -> str:
    stem, dash, number = id.rpartition("-")
    stem = stem if dash and number.isdigit() else id
    return next(name for count in range(2, 10_000) if (name := f"{stem}-{count}") not in taken)


RULE = Rule(DOC, in_procedure=find)
