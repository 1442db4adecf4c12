"""A statement of an ingredient is lost on the way into a mixture."""

from collections.abc import Iterator

from generator.checks.evidence.contents import place_of, to_judge
from generator.checks.evidence.screened import dropped, implied
from generator.checks.rule import Rule
from generator.hazards import Dropped, shown_codes
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="hazard-dropped",
    level=Level.WARNING,
    subject="chemicals",
    what="An ingredient's statement is at or above its cut-off in the mixture, and the mixture carries "
    "neither it nor a stronger one. Classes that rest on a test (H272, H290) are left out.",
    why="The card of a bath shows the bath's statements, not those of its ingredients.",
    bad="""mixtures:
  etch-mix:
    made_of: {sodium-persulfate: 90 g/L, sulfuric-acid-96: 18 g/L as H2SO4, deionised-water: rest}
    hazards: [H314, H410]""",
    good="""mixtures:
  etch-mix:
    made_of: {sodium-persulfate: 90 g/L, sulfuric-acid-96: 18 g/L as H2SO4, deionised-water: rest}
    hazards: [H314, H317, H334, H410]""",
    needs=("mixtures",),
    source="UN GHS Rev. 10, cut-off values of chapters 3.1 to 4.1, as held in the data of this tool",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a mixture, with every statement that it lost."""
    wanted = to_judge(study)
    for id in (id for id in study.lab.mixtures if id in wanted):
        made, lost = study.lab.mixtures[id], dropped(study, str(id))
        if lost:
            found = (*(one.code for one in lost), *(one.code for one in implied(study, str(id))))
            codes = ", ".join(shown_codes(found))
            yield DOC.found(
                made.spot("hazards"),
                f"{title_of(study.lab, id)} does not carry {_told(study, lost)}",
                f"add {codes} to its `hazards`, or correct the amounts; ask the safety office if you are "
                f"unsure",
                place=place_of(study.lab, str(id)),
            )


def _told(study: LabStudy, lost: tuple[Dropped, ...]) -> str:
    return " and ".join(
        f"{one.code} of {title_of(study.lab, one.ingredient)} ({one.percent:.2g} % by weight, counts from "
        f"{one.cut_off:g} %)"
        for one in lost
    )


RULE = Rule(DOC, in_lab=find, in_procedure=find)
