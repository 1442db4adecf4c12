"""The role to call cannot be reached."""

from collections.abc import Iterator

from generator.checks.evidence.references import Reference, calls
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="cannot-be-reached",
    level=Level.ERROR,
    subject="people",
    what="A role that a step or a place says to call, or one of its backups, has no `reach`; or the "
    "backups go round and come back to the first.",
    why="A card that says whom to call and not how leaves a student alone with an open bath.",
    bad="""roles:
  technician: {title: Duty technician, reach: extension 417, backup: instructor}
  instructor: {title: Course instructor, backup: technician}""",
    good="""roles:
  technician: {title: Duty technician, reach: extension 417, backup: instructor}
  instructor: {title: Course instructor, reach: extension 422}""",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a role without `reach`, one a ring of backups."""
    called: dict[str, list[Reference]] = {}
    for reference in calls(study):
        called.setdefault(str(reference.name), []).append(reference)
    mute: dict[str, str] = {}
    rings: dict[frozenset[str], list[str]] = {}
    for role, uses in called.items():
        chain, ring = _backups(study, role)
        for index, id in enumerate(chain):
            mute.setdefault(id, _asked(study, chain[index - 1] if index else "", uses))
        if ring:
            rings.setdefault(frozenset(ring), chain)
    yield from (_no_reach(study, id, why) for id, why in mute.items() if _lacks_reach(study, id))
    yield from (_goes_round(study, chain, ring) for ring, chain in rings.items())


def _lacks_reach(study: LabStudy, id: str) -> bool:
    role = study.role(id)
    return role is not None and role.reach is None


def _backups(study: LabStudy, role: str) -> tuple[list[str], list[str]]:
    """The declared roles from one to its last backup, and those of them that go round."""
    chain: list[str] = []
    here = study.role(role)
    name = role
    while here is not None and name not in chain:
        chain.append(name)
        name = str(here.backup or "")
        here = study.role(name)
    return chain, chain[chain.index(name) :] if name in chain else []


def _asked(study: LabStudy, before: str, uses: list[Reference]) -> str:
    if before:
        return f"is the backup of {title_of(study.lab, before)}"
    first = uses[0]
    where = f"at step {first.step}" if first.step else f"at {title_of(study.lab, first.place)}"
    more = f" and {len(uses) - 1} more times" if len(uses) > 1 else ""
    return f"is called {where}{more}"


def _no_reach(study: LabStudy, id: str, why: str) -> Problem:
    role = study.role(id)
    assert role is not None
    return DOC.found(
        role.where,
        f"{title_of(study.lab, id)} {why}, but nothing says how to reach that role",
        f"write at the role `{id}`: `reach: ...` with a room or an extension",
    )


def _goes_round(study: LabStudy, chain: list[str], ring: frozenset[str]) -> Problem:
    last = study.role(chain[-1])
    assert last is not None
    names = [title_of(study.lab, id) for id in chain if id in ring]
    other = next((str(id) for id, role in study.lab.roles.items() if id not in ring and role.reach), "")
    instead = f"name a role outside the ring, such as `{other}`, or " if other else ""
    return DOC.found(
        last.spot("backup"),
        f"the backups go round: {', then '.join([*names, names[0]])}",
        f"{instead}delete this `backup`: the last one of the chain has none",
    )


RULE = Rule(DOC, in_lab=find)
