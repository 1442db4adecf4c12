"""A substance with hazards of which the lab holds no supplier's sheet."""

from collections.abc import Iterator

from generator.checks.evidence.contents import to_judge
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="sheet-missing",
    level=Level.WARNING,
    subject="chemicals",
    what="A substance has hazard statements and no `sheet`, or its sheet says neither where it is held nor "
    "of what day it is.",
    why="The statements here are copied. Whoever has to know more, after a splash, needs the sheet itself.",
    bad="""substances:
  sodium-persulfate: {title: Sodium persulfate, cas: 7775-27-1, hazards: [H272, H302]}""",
    good="""substances:
  sodium-persulfate:
    title: Sodium persulfate
    cas: 7775-27-1
    hazards: [H272, H302]
    sheet: {held_at: yellow binder tab 6, dated: 2025-11-02}""",
    source="29 CFR 1910.1200(g)(8): sheets are kept and readily accessible; from memory",
    needs=("substances",),
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a substance."""
    wanted = to_judge(study)
    for id, bought in study.lab.substances.items():
        if id not in wanted or not bought.hazards:
            continue
        name, sheet = title_of(study.lab, id), bought.sheet
        if sheet is None:
            what = f"no supplier's sheet of {name} is held"
        elif sheet.held_at is None or (sheet.dated is None and "dated" not in sheet.marks):
            missing = "where it is held" if sheet.held_at is None else "of what day it is"
            what = f"the sheet of {name} does not say {missing}"
        else:
            continue
        fix = (
            "get the current sheet, compare `hazards` with its section 2, and write "
            "`sheet: {held_at: ..., dated: ...}`"
        )
        yield DOC.found(bought.spot("sheet"), what, fix)


RULE = Rule(DOC, in_lab=find, in_procedure=find)
