"""Groups that never meet are together in one mixture, tray or container."""

from collections.abc import Iterator

from generator.checks.chemicals.contents import Brought, mixture
from generator.checks.chemicals.meeting import Meeting, meeting
from generator.checks.moments import found_at
from generator.checks.rule import Rule
from generator.model import Lab, Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of
from generator.walk import Moment

DOC = RuleDoc(
    id="keep-apart",
    level=Level.ERROR,
    subject="chemicals",
    what="Two groups of one `keep_apart` row are in one mixture, tray or container, or are put together "
    "by a step. Groups follow the residue to its place, its mixture and the substances in it.",
    why="Each of the two is safe alone. Together they burn, boil or burst, often hours later.",
    bad="""keep_apart:
  - {groups: [acid, base], because: heat and spray}
waste:
  drum-c: {title: Acid drum, takes: [copper-acid, cleaner-film], cap: closed}""",
    good="""keep_apart:
  - {groups: [acid, base], because: heat and spray}
waste:
  drum-c: {title: Acid drum, takes: [copper-acid], cap: closed}
  jug-a: {title: Cleaner jug, takes: [cleaner-film], cap: closed}""",
    needs=("keep_apart",),
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a mixture, one a container."""
    lab = study.lab
    for id, made in lab.mixtures.items():
        found = meeting(lab, map(str, made.made_of))
        if found:
            yield DOC.found(
                made.spot("made_of"),
                f"{title_of(lab, id)} holds {_told(lab, found)}",
                "take one of the two out of it, and ask the safety office about what is made already",
            )
    for id, container in lab.waste.items():
        taken = [str(what) for what in container.takes]
        found = meeting(lab, taken)
        if found and found.one.by != found.other.by:
            yield DOC.found(
                container.spot("takes"),
                f"{title_of(lab, id)} takes {_told(lab, found)}",
                f"give what comes from {title_of(lab, found.other.by)} a container of its own, and take "
                f"it out of `takes`",
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that puts them together, and one a rinse over a tray that still holds the other."""
    told: set[str] = set()
    for moment in study.walk.moments:
        found = _in_tray(study, moment) if moment.step.do == "rinse" else None
        if found and moment.step.id not in told:
            told.add(moment.step.id)
            yield _tray(study, moment, found)
    for located in study.steps():
        found = _by_step(study, located.step)
        if found:
            yield DOC.found(
                located.step.spot("use"),
                f"this step puts together {_told(study.lab, found)}",
                "do not do this; keep the two in vessels of their own and ask the safety office for "
                "another way",
                step=str(located.step.id),
            )


def _tray(study: Study, moment: Moment, found: Meeting) -> Problem:
    at = str(moment.step.at)
    return found_at(
        DOC,
        moment,
        f"the tray of {title_of(study.lab, at)} now holds {_told(study.lab, found)}",
        "empty and rinse the tray in a step before this one",
        moment.before.cause("tray", at),
    )


def _in_tray(study: Study, moment: Moment) -> Meeting | None:
    held = moment.after.value("tray", str(moment.step.at or ""))
    runs = held if isinstance(held, tuple) else ()
    return (
        meeting(study.lab, [residue for _, off in runs for residue in sorted(off)]) if len(runs) > 1 else None
    )


def _by_step(study: Study, step: Step) -> Meeting | None:
    """What a step puts together, unless the mixture it goes into is declared with both."""
    into = str(step.into or "")
    place = study.place(into)
    vessel = str(place.holds) if place and place.holds else into
    found = meeting(study.lab, [*map(str, step.use), *([vessel] if vessel else [])])
    declared = mixture(study.lab, vessel)
    both = declared and found and {found.one.substance, found.other.substance} <= set(declared.made_of)
    return None if both else found


def _told(lab: Lab, found: Meeting) -> str:
    return f"{_thing(lab, found.one)} and {_thing(lab, found.other)}, which never meet: {found.because}"


def _thing(lab: Lab, brought: Brought) -> str:
    holder = "" if brought.by == brought.substance else f", from {title_of(lab, brought.by)}"
    return f"{title_of(lab, brought.substance)} ({brought.group}{holder})"


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
