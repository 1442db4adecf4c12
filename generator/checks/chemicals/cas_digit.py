"""A CAS number whose check digit is wrong."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.hazards import cas_check_digit, cas_digit_right, substance_by_name
from generator.model import Substance
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="cas-digit",
    level=Level.ERROR,
    subject="chemicals",
    what="A CAS number has not the form 7664-93-9, or its last digit does not fit the others.",
    why="A digit read wrongly leads to the data sheet of something else.",
    bad="""substances:
  sulfuric-acid-96: {title: Sulfuric acid 96 %, cas: 7664-93-6, hazards: [H290, H314]}""",
    good="""substances:
  sulfuric-acid-96: {title: Sulfuric acid 96 %, cas: 7664-93-9, hazards: [H290, H314]}""",
    source="CAS: check digit verification of CAS registry numbers",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a number; its form is judged while reading."""
    for id, bought in study.lab.substances.items():
        cas = str(bought.cas or "")
        if cas and not cas_digit_right(cas):
            digit = cas_check_digit(cas[:-2])
            yield DOC.found(
                bought.spot("cas"),
                f"the CAS number {cas} of {title_of(study.lab, id)} does not add up: these digits end in "
                f"{digit}, not in {cas[-1]}",
                _fix(bought),
            )


def _fix(bought: Substance) -> str:
    known = substance_by_name(bought.title.rstrip("0123456789 %"))
    hint = f" ({known.cas} is held here for that name)" if known else ""
    return f"copy the number again from section 3 of the supplier's sheet{hint}"


RULE = Rule(DOC, in_lab=find, found_by="reading")
