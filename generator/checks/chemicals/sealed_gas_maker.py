"""Something that gives off gas is shut in."""

from collections.abc import Iterator

from generator.checks.evidence.contents import brought_by, mixture, substance
from generator.checks.evidence.meeting import meeting
from generator.checks.rule import Rule
from generator.hazards import gas_maker, oxidiser
from generator.model import Lab
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of
from generator.study.composition import substances_in

DOC = RuleDoc(
    id="sealed-gas-maker",
    level=Level.ERROR,
    subject="chemicals",
    what="A mixture with an oxidiser stands under a cover that is not `vented`, or its waste is kept "
    "under `cap: closed`. An ingredient counts by its group `oxidiser` or by H270, H271, H272; the "
    "mixture itself also by H260, H261, EUH029, EUH031, EUH032.",
    why="Oxidisers go on giving off gas. A closed drum of spent etch bursts days later, when nobody is near.",
    bad="""places:
  etch: {number: 5, title: Micro-etch, holds: etch-mix, cover: lid}
waste:
  drum-p: {title: Etch drum, takes: [etch-mix], cap: closed}""",
    good="""places:
  etch: {number: 5, title: Micro-etch, holds: etch-mix, cover: lid, vented: true}
waste:
  drum-p: {title: Etch drum, takes: [etch-mix], cap: vented, full_at: 60 %}""",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a place, one a container."""
    lab = study.lab
    for id, place in lab.places.items():
        because = _gas(lab, str(place.holds)) if place.holds else ""
        if because and place.cover and not place.vented:
            yield DOC.found(
                place.spot("cover"),
                f"{title_of(lab, id)} is covered by a {place.cover} that is not vented, but {because}",
                "get a vented cover and write `vented: true` at the place",
                place=str(id),
            )
    for id, container in lab.waste.items():
        gassing = [because for taken in container.takes if (because := _gas(lab, str(taken)))]
        if container.cap == "closed" and gassing and not meeting(lab, map(str, container.takes)):
            yield DOC.found(
                container.spot("cap"),
                f"{title_of(lab, id)} has a closed cap, but {gassing[0]}",
                f"fit a vented cap, write `cap: vented` at `{id}`, and keep it well below full",
            )


def _gas(lab: Lab, id: str) -> str:
    """Why something gives off gas, in words; empty where nothing says so."""
    own = mixture(lab, id)
    codes = gas_maker(tuple(map(str, own.hazards))) if own else ()
    if codes:
        return f"{title_of(lab, id)} gives off gas ({', '.join(codes)})"
    makers = [brought.substance for brought in brought_by(lab, id) if brought.group == "oxidiser"]
    makers += [name for name in substances_in(lab, id) if oxidiser(_codes(lab, name))]
    return f"{title_of(lab, makers[0])} in {title_of(lab, id)} gives off gas" if makers else ""


def _codes(lab: Lab, id: str) -> tuple[str, ...]:
    bought = substance(lab, id)
    return tuple(map(str, bought.hazards)) if bought else ()


RULE = Rule(DOC, in_lab=find)
