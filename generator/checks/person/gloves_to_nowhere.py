"""Used gloves come off and no bin is named."""

from collections.abc import Iterator

from generator.checks.evidence.gloves import chemical_gloves
from generator.checks.evidence.moments import called, found_at, moments
from generator.checks.rule import Rule
from generator.model.scalars import Ref
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="gloves-to-nowhere",
    level=Level.WARNING,
    subject="person",
    what="Gloves against chemicals come off and the step names no `waste`. What is `used_again` needs none.",
    why="Used gloves lie where the next person puts a hand.",
    bad="""- {id: unwear, do: wear, take_off: [nitrile], wash_hands: true,
   say: Gloves off. Wash your hands.}""",
    good="""- {id: unwear, do: wear, take_off: [nitrile], wash_hands: true, waste: bag-s,
   say: Gloves off. Wash your hands.}""",
    needs=(
        "ppe",
        "waste",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each taking-off of chemical gloves on the straight run, a change for fresh ones included."""
    for moment in moments(study, straight=True):
        step = moment.step
        touched = (*step.take_off, *(step.put_on if step.fresh else ()))
        if not touched or step.waste is not None:
            continue
        thrown = {str(piece) for piece in touched if not _used_again(study, piece)}
        off = sorted(thrown.intersection(chemical_gloves(study, moment.before)))
        if off:
            bins = [id for id, bin in study.lab.waste.items() if "gloves" in bin.takes]
            yield found_at(
                DOC,
                moment,
                f"{called(study, *off)} come off and the step does not say into which container",
                f"write `waste: {bins[0]}`"
                if bins
                else "declare a container that takes gloves, and name it here",
            )


def _used_again(study: Study, piece: Ref) -> bool:
    worn = study.lab.ppe.get(piece)
    return bool(worn and worn.used_again)


RULE = Rule(DOC, in_procedure=find)
