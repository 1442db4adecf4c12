"""Nothing is said about the hazards of something."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="hazard-silent",
    level=Level.ERROR,
    subject="chemicals",
    what="A substance or mixture has no `hazards`, or an empty list, and does not say `not_classified: "
    "true`; or it says both, a hazard and that it is not classified.",
    why="An empty list may be forgotten. Unknown is not none.",
    bad="""substances:
  sodium-carbonate: {title: Sodium carbonate, cas: 497-19-8, hazards: []}""",
    good="""substances:
  sodium-carbonate: {title: Sodium carbonate, cas: 497-19-8, hazards: [H319]}
  sodium-chloride: {title: Sodium chloride, cas: 7647-14-5, hazards: [], not_classified: true}""",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a substance or mixture that says nothing."""
    lab = study.lab
    for kind, nouns in (("supplier's sheet", lab.substances), ("sheets of what it is made of", lab.mixtures)):
        for id, noun in nouns.items():
            if noun.not_classified and any(str(code)[:1] == "H" for code in noun.hazards):
                yield DOC.found(
                    noun.spot("not_classified"),
                    f"{title_of(lab, id)} says that it is not classified, and has {', '.join(noun.hazards)}",
                    f"delete the one of the two that the {kind} does not say",
                )
            if not noun.hazards and not noun.not_classified:
                yield DOC.found(
                    noun.spot("hazards"),
                    f"nothing is said about the hazards of {title_of(lab, id)}",
                    f"copy the H statements from the {kind}: `hazards: [H319]`; where there are none, "
                    "write `hazards: []` and `not_classified: true`",
                )


RULE = Rule(DOC, in_lab=find)
