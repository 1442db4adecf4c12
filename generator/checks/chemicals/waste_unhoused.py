"""Something has no container to end in."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="waste-unhoused",
    level=Level.ERROR,
    subject="chemicals",
    what="A residue that water rinses off is taken by no container, or a mixture has no `leftovers`.",
    why="What has no container ends in the sink.",
    bad="""mixtures:
  soak-mix: {title: Soak cleaner bath, hazards: [H319]}
waste:
  jug-a: {title: Cleaner rinse jug, takes: [mains-salts]}""",
    good="""mixtures:
  soak-mix: {title: Soak cleaner bath, hazards: [H319], leftovers: drum-a}
waste:
  jug-a: {title: Cleaner rinse jug, takes: [mains-salts, cleaner-film]}
  drum-a: {title: Spent cleaner drum, takes: [soak-mix]}""",
    needs=("waste",),
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a residue, one a mixture."""
    lab = study.lab
    taken = {str(what) for container in lab.waste.values() for what in container.takes}
    told: set[str] = set()
    for id, place in lab.places.items():
        for residue in place.clears if place.water else ():
            if residue in lab.residues and residue not in taken and residue not in told:
                told.add(str(residue))
                yield DOC.found(
                    residue.where,
                    f"{title_of(lab, str(residue))} is rinsed off at {title_of(lab, str(id))}, "
                    "and no container takes it",
                    f"write `{residue}` under `takes` of the container that it "
                    "may go into, after asking the safety office",
                    place=str(id),
                )
    for id, made in lab.mixtures.items():
        if made.leftovers is None:
            takers = [str(name) for name, container in lab.waste.items() if id in container.takes]
            offer = (
                takers[0] if takers else "the container that it may go into, after asking the safety office"
            )
            yield DOC.found(
                made.where,
                f"{title_of(lab, str(id))} has no `leftovers`: nobody knows where it ends",
                f"write `leftovers: {offer}`" if takers else f"write `leftovers: ...` with {offer}",
            )


RULE = Rule(DOC, in_lab=find)
