"""A place or a mixture asks for less protection than its statements do."""

from collections.abc import Iterator

from generator.checks.evidence.protecting import CHEMICALS, asked, bare, known, listed, wear_fix
from generator.checks.rule import Rule
from generator.hazards import Protection
from generator.problems import Level, Location, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="wear-too-light",
    level=Level.ERROR,
    subject="people",
    what="The H statements of what a place holds, or of a mixture that stands at no place, ask for "
    "protection of a part of the body, and neither `wear` nor `base_wear` holds a piece that protects it "
    "against chemicals. A face shield over eye protection protects the eyes as well. Lungs are the matter "
    "of extraction.",
    why="The card prints what the place says. Nobody adds an apron that is not on it.",
    bad="""mixtures:
  etch-mix: {title: Micro-etch bath, hazards: [H314]}
places:
  etch: {title: Micro-etch, holds: etch-mix, wear: [gauntlets]}""",
    good="""mixtures:
  etch-mix: {title: Micro-etch bath, hazards: [H314]}
places:
  etch: {title: Micro-etch, holds: etch-mix, wear: [face-shield, gauntlets, apron]}""",
    needs=("ppe",),
    source="UN GHS Rev. 10 Annex 3, condition notes to P280; the rest common practice, no source",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a place that holds a mixture, one a mixture that stands nowhere."""
    lab = study.lab
    held = {str(place.holds) for place in lab.places.values() if place.holds}
    for id, place in lab.places.items():
        if place.holds and place.holds in lab.mixtures:
            always = place.wear if place.wear_when is None else ()
            wear = (*always, *lab.mixtures[place.holds].wear)
            yield from _judge(study, str(id), str(place.holds), wear, place.spot("wear"))
    for id, made in lab.mixtures.items() if held <= set(lab.mixtures) else ():
        if id not in held:
            yield from _judge(study, "", str(id), made.wear, made.spot("wear"))


def _judge(
    study: LabStudy, place: str, mixture: str, wear: tuple[str, ...], where: Location
) -> Iterator[Problem]:
    lab = study.lab
    worn = tuple(map(str, (*wear, *lab.lab.base_wear)))
    wanted = asked(study.statements_of(mixture))
    light = bare(lab, worn, (one.part for one in wanted), CHEMICALS)
    if light and known(lab, worn):
        holder = place or mixture
        yield DOC.found(
            where,
            f"`wear` of {title_of(lab, holder)} leaves {listed(light)} without protection against chemicals: "
            f"{_because(study, mixture, wanted, light)}",
            wear_fix(lab, light, CHEMICALS, f"`wear` of `{holder}`"),
            place=place,
        )


def _because(study: LabStudy, mixture: str, wanted: tuple[Protection, ...], light: tuple[str, ...]) -> str:
    first = next(one for one in wanted if one.part in light)
    return f"{title_of(study.lab, mixture)} has {first.because[0]}, {first.why}"


RULE = Rule(DOC, in_lab=find)
