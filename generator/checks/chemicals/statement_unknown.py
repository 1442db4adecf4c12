"""A hazard code that is neither a statement nor a hazard word."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.hazards import Edition, hazard_word_ids, is_statement, is_withdrawn, nearest_code
from generator.model import Lab, Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, nearest, title_of

DOC = RuleDoc(
    id="statement-unknown",
    level=Level.ERROR,
    subject="chemicals",
    what="A code under `hazards` is no H statement, or one that the lab's edition (`ghs`) has withdrawn, and "
    "no hazard word of the lab or of the table that ships.",
    why="A mistyped code brings no pictogram, no gloves and no warning.",
    bad="""substances:
  sulfuric-acid-96: {title: Sulfuric acid 96 %, cas: 7664-93-9, hazards: [H290, H341a]}""",
    good="""substances:
  sulfuric-acid-96: {title: Sulfuric acid 96 %, cas: 7664-93-9, hazards: [H290, H314]}""",
    source="UN GHS Rev. 10 Annex 3; Regulation (EC) No 1272/2008 for EUH statements",
)


_OTHER = {
    Edition.REV10: "where the lab works after CLP, write `ghs: clp` under `lab`",
    Edition.CLP: "where the lab works after UN GHS Rev. 10, write `ghs: rev10` under `lab`",
}


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a code and noun."""
    lab = study.lab
    edition = Edition(lab.lab.ghs)
    words = {*hazard_word_ids(), *map(str, lab.hazard_words)}
    for id, place, code in _codes(lab):
        if not is_statement(code) and str(code) not in words:
            yield DOC.found(
                code.where,
                f'{title_of(lab, id)} has the hazard "{code}", which is no H statement and no hazard word',
                _fix(str(code), words),
                place=place,
            )
        elif is_withdrawn(str(code), edition):
            yield DOC.found(
                code.where,
                f'{title_of(lab, id)} has the hazard "{code}", which is withdrawn in {edition.full_name}',
                f"copy the statements from section 2 of the supplier's current sheet; {_OTHER[edition]}",
                place=place,
            )


def _codes(lab: Lab) -> Iterator[tuple[Text, str, Text]]:
    """(id of the noun, its id once more where it is a place, code)."""
    for nouns in (lab.substances, lab.mixtures):
        for id, noun in nouns.items():
            yield from ((id, "", code) for code in noun.hazards)
    for id, place in lab.places.items():
        yield from ((id, str(id), code) for code in place.hazards)


def _fix(code: str, words: set[str]) -> str:
    if code.upper().startswith("P") and code[1:2].isdigit():
        return f"delete {code}: precautionary statements are worked out from the H statements"
    near = nearest_code(code) if any(sign.isdigit() for sign in code) else ""
    if near:
        return f"copy it again from the supplier's sheet; did you mean `{near}`?"
    return f"{nearest(code, words)} Or declare it under `hazard_words`.".replace("? Or", "? Or else")


RULE = Rule(DOC, in_lab=find)
