"""Something that must not be breathed is used where no extraction is."""

from collections.abc import Iterator

from generator.checks.evidence.contents import substance
from generator.checks.rule import Rule
from generator.hazards import needs_extraction
from generator.model import Step
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of

DOC = RuleDoc(
    id="extraction-missing",
    level=Level.ERROR,
    subject="chemicals",
    what="A place holds a mixture with H330, H331 or H334, or a step there uses one, or a substance with "
    "`needs_extraction: true`, and the place names no `extraction`.",
    why="What poisons or sensitises the lungs is drawn off where it rises. A mask on a student is no plan.",
    bad="""places:
  etch: {number: 5, title: Micro-etch, holds: etch-mix}""",
    good="""places:
  etch: {number: 5, title: Micro-etch, holds: etch-mix, extraction: "side slot on, paper strip drawn in"}""",
    needs=("places",),
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a place that holds such a mixture."""
    for id, place in study.lab.places.items():
        codes = needs_extraction(study.statements_of(str(place.holds))) if place.holds else ()
        if codes and place.extraction is None:
            yield DOC.found(
                place.where,
                f"{title_of(study.lab, id)} holds {title_of(study.lab, str(place.holds))} "
                f"({', '.join(codes)}) "
                "and names no extraction",
                f"write at the place `{id}`: `extraction: ...` with how one sees "
                "that it draws; where it has none, move the mixture to a place that has",
                place=str(id),
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a step; steps at one place follow from the first."""
    for found in study.steps():
        step = found.step
        place = study.place(step.at)
        if (step.at is not None and place is None) or (place and place.extraction is not None):
            continue
        for id in map(str, step.use):
            because = _because(study, id)
            if because and not (place and place.holds == id):
                yield _missing(study, step, id, because)


def _because(study: Study, id: str) -> str:
    codes = needs_extraction(study.statements_of(id))
    bought = substance(study.lab, id)
    return ", ".join(codes) or ("it needs extraction" if bought and bought.needs_extraction else "")


def _missing(study: Study, step: Step, id: str, because: str) -> Problem:
    where = f"at {title_of(study.lab, step.at)}, which has no extraction" if step.at else "at no place"
    drawn = [str(name) for name, place in study.lab.places.items() if place.extraction]
    offer = (
        f"do it at `{drawn[0]}`, which has extraction"
        if drawn
        else "do it in a hood, and declare it as a place"
    )
    return DOC.found(
        step.spot("at"),
        f"{title_of(study.lab, id)} ({because}) is used {where}",
        f"{offer}; or, where there is extraction, write it at the place: `extraction: ...`",
        step=str(step.id),
        causes=(Cause(f"extraction:{step.at or ''}", "lab"),),
    )


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
