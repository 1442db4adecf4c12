"""A person where a role belongs."""

from collections.abc import Iterable, Iterator

from generator.checks.evidence.persons import is_person, people, role_of, sentences
from generator.checks.evidence.references import Reference, unknown_in_lab, unknown_in_procedure
from generator.checks.rule import Rule
from generator.model import Lab
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study

DOC = RuleDoc(
    id="call-names-a-person",
    level=Level.ERROR,
    subject="people",
    what="A person's name stands where a role belongs, or a sentence names a person who is under `now` of "
    "a role.",
    why="Cards hang for years and people move on. The role stays, and `now` under it is the one line to "
    "change.",
    bad="""fail: {redo: dry-2, at_most: 3, call: Odalys Quillfeather}""",
    good="""fail: {redo: dry-2, at_most: 3, call: technician}""",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a field of the lab's files, one a sentence."""
    yield from _fields(study.lab, unknown_in_lab(study))
    yield from _sentences(study.lab, study.lab)


def find(study: Study) -> Iterator[Problem]:
    """One problem a field of the procedure, one a sentence."""
    yield from _fields(study.lab, unknown_in_procedure(study))
    yield from _sentences(study.lab, study.procedure)


def _fields(lab: Lab, found: Iterable[Reference]) -> Iterator[Problem]:
    for reference in found:
        if is_person(lab, reference):
            name = str(reference.name)
            yield DOC.found(
                reference.name.where,
                f'`{reference.field}` names a person, "{name}", where a role belongs',
                _fix(lab, name),
                step=reference.step,
                place=reference.place,
            )


def _sentences(lab: Lab, thing: object) -> Iterator[Problem]:
    full = [name for name in people(lab) if " " in name]
    told = sentences(thing) if full else []
    all_words = "\n".join(words for words, _ in told)
    named = [name for name in full if name in all_words]
    for words, step in told if named else ():
        for name in named:
            if name in words and name != words:
                yield DOC.found(
                    words.where, f'the sentence names a person, "{name}"', _fix(lab, name), step=step
                )


def _fix(lab: Lab, name: str) -> str:
    role = role_of(lab, name)
    if role:
        return f"write the role: `{role}`"
    return f"write a role, one of: {', '.join(map(str, lab.roles))}; the name stands only under its `now`"


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
