"""A supplier's sheet older than the lab trusts."""

import datetime
from collections.abc import Iterator

from generator.checks.evidence.contents import to_judge
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of
from generator.units import show_quantity

DOC = RuleDoc(
    id="sheet-old",
    level=Level.WARNING,
    subject="chemicals",
    what="The supplier's sheet is older than the lab's `sheets_good_for`, or dated in days to come.",
    why="Suppliers change recipes and statements. Hazards copied from an old sheet may be too few.",
    bad="""lab: {sheets_good_for: 3 years}
substances:
  sodium-persulfate:
    sheet: {held_at: yellow binder tab 6, dated: 2021-11-02}""",
    good="""lab: {sheets_good_for: 3 years}
substances:
  sodium-persulfate:
    sheet: {held_at: yellow binder tab 6, dated: 2025-11-02}""",
    needs=("substances",),
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a sheet; nothing where the lab does not say how long a sheet is good for."""
    good_for = study.lab.lab.sheets_good_for
    wanted = to_judge(study)
    for id in (id for id in study.lab.substances if id in wanted):
        sheet = study.lab.substances[id].sheet
        if good_for is None or sheet is None or sheet.dated is None:
            continue
        name = title_of(study.lab, id)
        if sheet.dated > study.today:
            yield DOC.found(
                sheet.spot("dated"),
                f"the sheet of {name} is dated {sheet.dated}, a day to come",
                "write the date that stands on the sheet",
            )
        elif (study.today - sheet.dated) > datetime.timedelta(seconds=good_for.si):
            yield DOC.found(
                sheet.spot("dated"),
                f"the sheet of {name} is dated {sheet.dated}, longer ago than {show_quantity(good_for)}",
                "ask the supplier for the current sheet, compare its section 2 with `hazards`, and write "
                "its date",
            )


RULE = Rule(DOC, in_lab=find, in_procedure=find)
