"""Fill the list by which a lab is opened and closed: every place by what its own data asks for."""

from collections.abc import Iterator

from generator.model import NotRight, Place
from generator.study import LabStudy
from generator.units import show_quantity, show_window
from generator.units.showing import NO_BREAK
from generator.views.filling.words import role_title
from generator.views.paper import TICK, PaperBlanks, PaperCell, PaperTable, PaperView

_NUMBERED = 10_000
_NOTHING = PaperCell("\u00a0")
_NO_HELP = PaperCell("Clear the way to it. If it is missing: no work.")
_NO_DRAUGHT = PaperCell("No work here.")


def check_off_view(study: LabStudy) -> PaperView | None:
    """Opening and closing on one sheet; None for a lab that declares no places."""
    lab, room = study.lab, study.lab.lab
    opening = [*_help(study), *(row for id in _order(study) for row in _opening(study, id))]
    closing = [*(row for id in _order(study) for row in _closing(study, id)), *_waste(study)]
    if not lab.places or not (opening or closing):
        return None
    return PaperView(
        id="open-and-close",
        title="Open and close the lab",
        dated=study.today.isoformat(),
        about=f"{room.name}, {room.title or ''} {room.room}".replace(",  ", ", "),
        identity="Made of what the lab declares; what was not declared is not on it.",
        language=str(room.language),
        status="posted",
        parts=(
            PaperBlanks(("Date", "Opened by", "Closed by")),
            PaperTable("Opening", ("Place", "Look for", "If not", ""), (2.6, 4.4, 3.6, 0.6), tuple(opening)),
            PaperTable("Closing", ("Place", "Leave it", "Note", ""), (2.6, 4.4, 3.6, 0.6), tuple(closing)),
            PaperBlanks(("Not right, told whom",)),
        ),
    )


def _order(study: LabStudy) -> list[str]:
    """Numbered places first, as the eye goes along the line; then the others as declared."""
    places = study.lab.places
    return sorted(map(str, places), key=lambda id: _number(study.place(id)))


def _number(place: Place | None) -> int:
    return place.number if place and place.number is not None else _NUMBERED


def _name(place: Place) -> PaperCell:
    number = str(place.number) if place.number is not None else ""
    return PaperCell(place.title, number)


def _help(study: LabStudy) -> Iterator[tuple[PaperCell, ...]]:
    """The points of help are there and can be reached."""
    help = study.lab.lab.help
    names = ("eyewash", "shower", "spill_kit", "first_aid", "extinguisher")
    for name in names:
        where = getattr(help, name)
        if where:
            title = name.replace("_", " ").capitalize()
            yield PaperCell(title), PaperCell(f"{where}; nothing stands before it"), _NO_HELP, TICK


def _opening(study: LabStudy, id: str) -> Iterator[tuple[PaperCell, ...]]:
    place = study.place(id)
    if place is None:
        return
    if place.out_of_use:
        until = f" until {place.out_of_use.until.isoformat()}" if place.out_of_use.until else ""
        yield _name(place), PaperCell(str(place.out_of_use.because), f"OUT OF USE{until}:"), _NOTHING, TICK
        return
    wanted = [str(place.look)] if place.look else []
    if place.temperature and place.look:
        wanted.append(show_window(place.temperature).replace(" ", NO_BREAK))
    if place.extraction:
        wanted.append(f"extraction: {place.extraction}")
    if wanted:
        yield _name(place), PaperCell("; ".join(wanted)), _answer(study, place), TICK


def _answer(study: LabStudy, place: Place) -> PaperCell:
    """What the place says to do; of extraction alone, that no work is done without it."""
    return _NO_DRAUGHT if place.extraction and not place.not_right else _if_not(study, place.not_right)


def _if_not(study: LabStudy, not_right: NotRight | None) -> PaperCell:
    if not_right is None:
        return _NOTHING
    role = study.role(str(not_right.call)) if not_right.call else None
    reach = f" ({role.reach})" if role and role.reach else ""
    call = f"Call: {role_title(study.lab, str(not_right.call))}{reach}." if not_right.call else ""
    return PaperCell(" ".join(part for part in (str(not_right.say or ""), call) if part))


def _closing(study: LabStudy, id: str) -> Iterator[tuple[PaperCell, ...]]:
    place = study.place(id)
    if place is None:
        return
    left = []
    if place.power:
        left.append(f"{place.power.supply} off")
    if place.cover == "lid":
        left.append("vented lid on" if place.vented else "lid on")
    if place.cover == "door":
        left.append("empty, door shut")
    if place.tray:
        left.append("tray empty")
    if place.water or place.drains_to:
        left += ["water off"] if place.water else []
    if left:
        yield _name(place), PaperCell(", ".join(left)), _NOTHING, TICK


def _waste(study: LabStudy) -> Iterator[tuple[PaperCell, ...]]:
    for container in study.lab.waste.values():
        if container.to_drain:
            continue
        caps = {"closed": "closed", "vented": "vented cap on", "open": "open"}
        wanted = [caps[container.cap]] if container.cap else []
        if container.full_at:
            wanted.append(f"below {show_quantity(container.full_at)}")
        pickup = f"Full: {role_title(study.lab, str(container.pickup))}" if container.pickup else ""
        if wanted:
            yield PaperCell(container.title), PaperCell(", ".join(wanted)), PaperCell(pickup), TICK
