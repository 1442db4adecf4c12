"""What a safety office asks about the work itself: wear by stage, controls, cleaning up."""

from collections.abc import Iterator

from generator.study import Study
from generator.units import show_quantity
from generator.views.chemical import HazardLineView
from generator.views.filling.words import joined, low, role_title, thing_title

Lines = Iterator[HazardLineView]
_ALONE = {
    "never": "Nobody works alone in this room.",
    "low-hazard only": "Only low-hazard work may be done alone.",
    "allowed": "Working alone is allowed in this room.",
}


def wear_by_stage(study: Study) -> Lines:
    """All pieces that are on at some step of each stage, by the walk; then when each is changed."""
    lab = study.lab
    worn: dict[str, dict[str, None]] = {}
    for moment in study.walk.straight:
        pieces = (*moment.before.names("worn"), *moment.after.names("worn"))
        worn.setdefault(str(moment.stage.title), {}).update(dict.fromkeys(pieces))
    for title, pieces_on in worn.items():
        yield HazardLineView(joined(thing_title(lab, id) for id in pieces_on) or "nothing special", title)
    used = dict.fromkeys(piece for pieces_on in worn.values() for piece in pieces_on)
    for id in used:
        piece = lab.ppe.get(id)  # type: ignore[call-overload]
        if piece and piece.change:
            yield HazardLineView(f"changed {piece.change}", piece.title)
    yield HazardLineView("Which glove material: see the supplier’s sheets.")


def control_lines(study: Study) -> Lines:
    """Extraction, covers, current, alarms, company, work left running."""
    lab = study.lab
    for id in dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at):
        place = study.place(id)
        if place is None:
            continue
        rest = (
            f"extraction: {place.extraction}" if place.extraction else "",
            f"{'vented ' if place.vented else ''}{place.cover}" if place.cover else "",
            f"at most {show_quantity(place.power.most)} from the {low(place.power.supply)}"
            if place.power and place.power.most
            else "",
            f"{'checked when opened' if place.cover else 'looked at first'}: {place.look}"
            if place.look
            else "",
        )
        said = "; ".join(part for part in rest if part)
        if said:
            yield HazardLineView(said, place.title)
    yield HazardLineView(_ALONE.get(str(lab.lab.working_alone), "not said"), "Working alone")
    if study.procedure.also_present:
        yield HazardLineView(role_title(lab, study.procedure.also_present), "Also present")
    away = [str(found.step.say) for found in study.steps() if found.step.stay == "away"]
    if away:
        notice = lab.lab.unattended_notice
        sign = f" Door sign: {' '.join(notice.split())}" if notice else " No door sign is declared."
        yield HazardLineView(f"{len(away)} step{'s' * (len(away) > 1)}.{sign}", "Left running")


def cleaning_lines(study: Study) -> Lines:
    """Steps that clean, empty, or end with washed hands, by number; then where gloves and wipes go."""
    numbers = {step.id: str(number) for number, step in enumerate(study.procedure.steps, 1)}
    found = [
        step for step in study.procedure.steps if step.wash_hands or step.do in ("clean", "empty", "rinse")
    ]
    for step in found:
        where = f" ({low(thing_title(study.lab, str(step.waste)))})" if step.waste else ""
        yield HazardLineView(f"{step.say}{where}", f"Step {numbers[step.id]}")
    if not found:
        yield HazardLineView("No step of this procedure cleans or empties anything.")
    for container in study.lab.waste.values():
        solids = [str(thing) for thing in container.takes if thing in ("gloves", "wipes")]
        if solids:
            yield HazardLineView(container.title, joined(solids).capitalize())
