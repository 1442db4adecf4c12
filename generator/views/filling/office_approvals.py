"""Who wrote and approved a procedure, what its people are trained in, what needs approval beforehand."""

from collections.abc import Iterator

from generator.hazards import grave_as_bought, needs_sign_off
from generator.model import Text
from generator.study import Study
from generator.units import show_quantity
from generator.views.chemical import HazardLineView
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import joined, low, role_title

Lines = Iterator[HazardLineView]
# 29 CFR 1910.1450(e)(3)(viii) names select carcinogens, reproductive toxins and substances of high acute
# toxicity as particularly hazardous (clause number from memory); the codes for them are our own reading.
_PARTICULAR = ("H300", "H310", "H330", "H340", "H341", "H350", "H351", "H360", "H361", "H362")


def signing_roles(study: Study) -> tuple[str, ...]:
    """Titles of the roles with a line to sign on: writer, approver, safety office as the lab names it."""
    procedure, lab = study.procedure, study.lab
    questions = lab.lab.help.waste_questions
    roles = (procedure.written_by, procedure.approver, questions)
    return tuple(dict.fromkeys(role_title(lab, role) for role in roles if role))


def approval_lines(study: Study) -> Lines:
    """Writer, approver, review, decisions against a supplier's paper, warnings that the lab lives with."""
    procedure, lab = study.procedure, study.lab
    writer = role_title(lab, procedure.written_by) if procedure.written_by else "not said"
    yield HazardLineView(writer, "Written by")
    yield HazardLineView(role_title(lab, procedure.approver), "Approver")
    review = f"every {show_quantity(procedure.review_every)}" if procedure.review_every else "not said"
    yield HazardLineView(review, "Review")
    for paper in procedure.vendor_papers:
        by = role_title(lab, paper.decided_by) if paper.decided_by else "nobody yet"
        when = f", {day_words(paper.decided)}" if paper.decided else ""
        yield HazardLineView(f"{paper.differs} Decided by: {low(by)}{when}.", f"Differs from {paper.paper}")
    for entry in procedure.accept:
        by = low(role_title(lab, entry.who))
        yield HazardLineView(
            f"{entry.because} ({by}, until {day_words(entry.until)})", f"Warning accepted: {entry.rule}"
        )


def training_lines(study: Study) -> Lines:
    """What each role of the procedure must have signed off, how long that is good, and who gives it."""
    procedure, lab = study.procedure, study.lab
    roles = dict.fromkeys(str(role) for role in (procedure.who, procedure.also_present) if role)
    for id in roles:
        role = study.role(id)
        needs = [lab.signoffs[need] for need in role.needs if need in lab.signoffs] if role else []
        if not needs:
            yield HazardLineView("no sign-off is declared", role_title(lab, id))
        for need in needs:
            valid = f", valid {show_quantity(need.valid)}" if need.valid else ""
            given = f", given by the {low(role_title(lab, need.given_by))}" if need.given_by else ""
            yield HazardLineView(f"{need.title}{valid}{given}", role_title(lab, id))
    for text in procedure.tell_us_first:
        yield HazardLineView(text, "To say beforehand")


def prior_lines(study: Study) -> Lines:
    """Holds, steps of another role, grave substances, work left running: each with who approves."""
    numbers = {step.id: str(number) for number, step in enumerate(study.procedure.steps, 1)}
    any_said = False
    for step in study.procedure.steps:
        for text in _step_needs(study, step.id):
            any_said = True
            yield HazardLineView(text, f"Step {numbers[step.id]}")
    for text in _grave(study):
        any_said = True
        yield HazardLineView(text, "By what is used")
    if not any_said:
        yield HazardLineView("None is declared. The safety office may name some.")


def _step_needs(study: Study, id: Text) -> Iterator[str]:
    step = study.step(str(id))
    if step is None:
        return
    if step.hold:
        who = low(role_title(study.lab, step.hold.who)) if step.hold.who else "nobody named"
        yield f"held until the {who} has agreed: {step.hold.until}"
    if step.who and step.who != study.procedure.who:
        yield f"done by the {low(role_title(study.lab, step.who))} alone"
    if step.stay == "away":
        yield "left running with nobody in the room"
    bought = [str(name) for name in step.use if grave_as_bought(study.statements_of(str(name)))]
    for name in bought:
        title = study.lab.substances[Text(name)].title if Text(name) in study.lab.substances else name
        yield f"uses {low(str(title))} as bought"


def _grave(study: Study) -> Iterator[str]:
    codes = study.used_codes()
    particular = [code for code in codes if code.startswith(_PARTICULAR)]
    if particular:
        yield f"particularly hazardous by {joined(particular)}: approval of the safety office"
    trained = needs_sign_off(codes)
    if trained:
        yield f"{joined(trained)} in use: nobody without the sign-offs under Training"
