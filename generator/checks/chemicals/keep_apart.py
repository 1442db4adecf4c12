"""Groups that never meet are together in one mixture, vessel, tray or container, or stand side by side."""

from collections.abc import Iterator

from generator.checks.evidence.contents import Brought, behind, place_of
from generator.checks.evidence.kept_together import in_container, in_cupboards, in_mixture
from generator.checks.evidence.meeting import Meeting, meetings_among
from generator.checks.evidence.moments import at_places, called, causes_of, found_at, part
from generator.checks.evidence.vessels import Together, put_together, side_by_side
from generator.checks.rule import Rule
from generator.model import Lab, Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of
from generator.units import show_quantity
from generator.walk import Moment

DOC = RuleDoc(
    id="keep-apart",
    level=Level.ERROR,
    sometimes=Level.WARNING,
    subject="chemicals",
    what="Two groups of one `keep_apart` row, or two groups that the reactivity chart EPA-600/2-80-076 calls "
    "dangerous, come together. Looked at are the ingredients of a mixture, what a run puts into one vessel, "
    "what runs into one tray, what one container takes; and, as warnings, bottles that share a cupboard, "
    "things used one after the other at one place, and what rides on the part into a bath. Groups follow the "
    "residue to its place, its mixture and the substances in it; a group of the chart follows the CAS "
    "number, or stands in `chart_groups`. A row is an error. The chart is an error where it says fire, "
    "explosion, toxic or flammable gas or violent polymerisation, and a warning where it says heat, harmless "
    "gas or dissolving, where a cell is doubtful, and inside a mixture that the lab declares. A row with a "
    "`small` amount does not count where the lesser of the two, added up over the run, is known and below "
    "it; trays, containers and cupboards always count. The pairs of 20 of the chart's 41 groups are held: "
    "no finding is no statement of safety.",
    why="Each of the two is safe alone. Together they burn, boil or burst, often hours later.",
    bad="""keep_apart:
  - {groups: [acid, base], because: heat and spray}
waste:
  drum-c: {title: Acid drum, takes: [copper-acid, cleaner-film], cap: closed}""",
    good="""keep_apart:
  - groups: [acid, base]
    because: heat and spray
    small:
      below: 25 mL
      decided_by: safety-office
      decided: 2026-05-20
      because: A titration warms its flask by a degree or two.
waste:
  drum-c: {title: Acid drum, takes: [copper-acid], cap: closed}
  jug-a: {title: Cleaner jug, takes: [cleaner-film], cap: closed}""",
    source="rows: the lab's own; chart: EPA-600/2-80-076 (April 1980), read in a transcription",
    needs=("substances",),
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a pair of substances in a mixture or a cupboard, one a container."""
    lab = study.lab
    for id, made in lab.mixtures.items():
        for found in in_mixture(lab, made):
            yield DOC.found(
                made.spot("made_of"),
                f"{title_of(lab, id)} holds {_told(lab, found)}",
                "take one of the two out of it, and ask the safety office about what is made already",
                place=place_of(lab, str(id)),
                level=Level.ERROR if found.row else Level.WARNING,
            )
    for name, container in lab.waste.items():
        met = sorted(in_container(lab, tuple(map(str, container.takes))), key=lambda one: not one.severe)
        if met:
            yield DOC.found(
                container.spot("takes"),
                f"{title_of(lab, str(name))} takes {_told(lab, met[0])}",
                f"give what comes from {title_of(lab, met[0].other.by)} a container of its own, and take "
                f"it out of `takes`",
                level=met[0].level,
            )
    for bottle, cupboard, found in in_cupboards(lab):
        yield DOC.found(
            lab.substances[Text(bottle)].spot("kept"),
            f"{_told(lab, found)}; both are kept in one place, {cupboard}",
            "keep one of the two elsewhere, or in a tray of its own, and say so in `kept: {where: ...}`",
            level=Level.WARNING,
        )


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that puts them together, and one a rinse over a tray that still holds the other."""
    told: set[str] = set()
    for moment in study.walk.by_verb.get("rinse", ()):
        found = _in_tray(study, moment)
        if found and moment.step.id not in told:
            told.add(str(moment.step.id))
            yield _tray(study, moment, found)
    yield from _ridden(study)
    for together in put_together(study):
        yield DOC.found(
            together.step.spot("use"),
            f"this step puts together {_told(study.lab, together.found)}{_limit(together.found)}",
            "do not do this; keep the two in vessels of their own and ask the safety office for another way",
            step=str(together.step.id),
            level=together.found.level,
        )
    for together in side_by_side(study):
        yield _beside(study, together)


def _beside(study: Study, together: Together) -> Problem:
    assert together.earlier is not None
    at = str(together.step.at)
    return DOC.found(
        together.step.spot("use"),
        f"right after step {together.earlier.id}, at the same place, {_told(study.lab, together.found)}"
        f"{_limit(together.found)}",
        f"clean {title_of(study.lab, at)} in a step between the two, or do one of them at another place",
        step=str(together.step.id),
        level=Level.WARNING,
    )


def _tray(study: Study, moment: Moment, found: Meeting) -> Problem:
    at = str(moment.step.at)
    return found_at(
        DOC,
        moment,
        f"the tray of {title_of(study.lab, at)} now holds {_told(study.lab, found)}",
        "empty and rinse the tray in a step before this one",
        moment.before.cause("tray", at),
        level=found.level,
    )


def _in_tray(study: Study, moment: Moment) -> Meeting | None:
    held = moment.after.value("tray", str(moment.step.at or ""))
    runs = held if isinstance(held, tuple) else ()
    if len(runs) < 2:
        return None
    met = tuple(meetings_among(study.lab, [residue for _, off in runs for residue in sorted(off)]))
    return next((one for one in met if one.severe), met[0] if met else None)


def _ridden(study: Study) -> Iterator[Problem]:
    """What rides on the part into a bath that it never meets; the first time that a step does it."""
    told: set[str] = set()
    for moment, at, place in at_places(study, "put-in"):
        riding = sorted(moment.before.names("residue"))
        if not riding or not place.holds or moment.step.id in told:
            continue
        bath = str(place.holds)
        met = meetings_among(study.lab, [*riding, bath])
        found = next((one for one in met if bath in one.holders), None)
        if found:
            told.add(str(moment.step.id))
            ridden = [name for name in riding if found.holders & {*behind(study.lab, name)}]
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} carries {called(study, *ridden)} into {called(study, at)}: "
                f"{_told(study.lab, found)}",
                "rinse it off in a step before this one",
                *causes_of(moment.before, "residue", ridden),
                level=Level.WARNING,
            )


def _told(lab: Lab, found: Meeting) -> str:
    return f"{_thing(lab, found, found.one)} and {_thing(lab, found, found.other)}, {_never(found)}"


def _never(found: Meeting) -> str:
    return f"which never meet: {found.because}" if found.row else f"which react: {found.because}"


def _limit(found: Meeting) -> str:
    small = found.row.small if found.row else None
    from_here = f"from {show_quantity(small.below)} on" if small else ""
    return f" (the row counts {from_here}, or where no amount is stated)" if small else ""


def _thing(lab: Lab, found: Meeting, brought: Brought) -> str:
    holder = "" if brought.by == brought.substance else f", from {title_of(lab, brought.by)}"
    group = brought.group if found.row else f"group {brought.group}"
    return f"{title_of(lab, brought.substance)} ({group}{holder})"


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
