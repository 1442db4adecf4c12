"""Who must approve what: wording its author, the rest the approver, a new hazard the safety office too."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.model import Lab, Procedure
from generator.posting.change import Change

SAFETY_OFFICE = "safety-office"


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why an issue may not be posted as asked, and what to do."""

    what: str
    fix: str


def refusals(
    lab: Lab, procedure: Procedure, changes: Iterable[Change], approved_by: str, safety_seen_by: str
) -> Iterator[Refusal]:
    """Every rule of approval that is not kept; a first issue comes with all that it holds as changes."""
    found = tuple(changes)
    groups = {change.group for change in found}
    unknown = [role for role in (approved_by, safety_seen_by) if role and role not in lab.roles]
    if unknown:
        yield Refusal(f"there is no role {unknown[0]}", _role_meant(lab, unknown[0]))
        return
    author = str(procedure.written_by or "")
    if groups <= {"wording"}:
        yield from _wording(procedure, author, approved_by)
    else:
        yield from _more(lab, procedure, found, author, approved_by)
    if "new hazard" in groups:
        # A safety office that approves has seen what it approves.
        seen = safety_seen_by or (approved_by if approved_by == safety_office(lab) else "")
        yield from _hazard(lab, found, author, seen)


def _role_meant(lab: Lab, word: str) -> str:
    """A role is named by its id; its title, or the person's name, leads there."""
    named = word.casefold()
    for id, role in lab.roles.items():
        if named in (str(role.title).casefold(), str(role.now or "").casefold(), str(id).casefold()):
            return f"a role is named by its id: write {id}"
    return f"name one of: {', '.join(map(str, lab.roles))}"


def _wording(procedure: Procedure, author: str, approved_by: str) -> Iterator[Refusal]:
    if approved_by not in (author, procedure.approver):
        may = " or ".join(dict.fromkeys(role for role in (author, str(procedure.approver)) if role))
        yield Refusal(f"{approved_by or 'nobody'} may not post this wording", f"write --approved-by {may}")


def _more(
    lab: Lab, procedure: Procedure, changes: tuple[Change, ...], author: str, approved_by: str
) -> Iterator[Refusal]:
    kinds = ", ".join(dict.fromkeys(change.group for change in changes if change.group != "wording"))
    approver = deciding_approver(lab, procedure, changes)
    if approved_by != approver:
        named = "the posted issue names another approver" if approver != procedure.approver else ""
        why = f"this changes more than wording ({kinds}), and {approved_by or 'nobody'} is not its approver"
        yield Refusal(
            f"{why}; {named}, who must hand it over" if named else why,
            f"write --approved-by {approver} once the {approver} has approved it",
        )
    elif is_same_person(lab, author, approver):
        yield Refusal(
            f"{approver} would approve what {author} has written: that is one person",
            "name another role as `approver`",
        )


def deciding_approver(lab: Lab, procedure: Procedure, changes: Iterable[Change]) -> str:
    """Who must approve what is more than wording: the approver, or who was it while the file names another.

    Otherwise whoever edits the file would choose who approves the edit.
    """
    old = next((one.old for one in changes if (one.noun, one.field) == ("procedure", "approver")), "")
    return old if old in lab.roles else str(procedure.approver)


def _hazard(lab: Lab, changes: tuple[Change, ...], author: str, safety_seen_by: str) -> Iterator[Refusal]:
    office = safety_office(lab)
    new = next(change for change in changes if change.group == "new hazard")
    what = f"there is a new hazard ({new.noun} {new.id})"
    if not office:
        yield Refusal(f"{what}, and the lab names no safety office", f"declare a role `{SAFETY_OFFICE}`")
    elif safety_seen_by != office:
        yield Refusal(f"{what}, and the safety office has not seen it", f"write --safety-seen-by {office}")
    elif is_same_person(lab, author, office):
        yield Refusal(
            f"{office} would see what {author} has written: that is one person", "ask another person"
        )


def safety_office(lab: Lab) -> str:
    """The role `safety-office`, or else the one that answers questions about waste; "" for none."""
    if SAFETY_OFFICE in lab.roles:
        return SAFETY_OFFICE
    return str(lab.lab.help.waste_questions or "")


def is_same_person(lab: Lab, one: str, other: str) -> bool:
    """Whether two roles are one, or are held by one person now."""
    if not one or not other:
        return False
    first, second = lab.roles.get(one), lab.roles.get(other)  # type: ignore[call-overload]
    return one == other or bool(first and second and first.now and first.now == second.now)
