"""How the lab's nouns are named in a sentence, and how a role is called."""

from collections.abc import Iterable

from generator.formulas import Input
from generator.model import Lab, NotRight, Role, Step
from generator.study import LabStudy
from generator.units import Quantity, Window, show_quantity, show_window
from generator.views.addresses import mixture_address, place_address, substance_address
from generator.views.shown import CallView, LinkView, SignView, StationView

_VERBS = {"put-in": "Put in", "take-out": "Take out", "switch-off": "Switch off"}
_PLURALS = {1: "once", 2: "at most twice"}


def verb_word(verb: str) -> str:
    """The verb as it stands over a sentence."""
    return _VERBS.get(verb, verb.capitalize())


def low(title: str) -> str:
    """A title inside a sentence: its first letter small, unless it is an abbreviation or formula."""
    return title[:1].lower() + title[1:] if title[1:2].islower() or title[1:2] in ("-", " ") else title


def named(id: str) -> str:
    """An id or key as words: "hole-1" is "Hole 1"."""
    words = id.replace("-", " ").replace("_", " ")
    return words[:1].upper() + words[1:]


def input_words(wanted: Input) -> str:
    """An input by its name, which its meaning may begin with in full: "density" is the current density."""
    means = wanted.means.partition(",")[0]
    return named(means if means.endswith(f" {wanted.name}") else wanted.name)


def joined(words: Iterable[str], last: str = "and") -> str:
    """Words as an enumeration."""
    found = tuple(words)
    return f"{', '.join(found[:-1])} {last} {found[-1]}" if len(found) > 1 else "".join(found)


def counted(count: int, noun: str) -> str:
    """A number and its noun: "1 step", "12 steps"."""
    return f"{count:,} {noun}{'' if count == 1 else 's'}".replace(",", "\N{NARROW NO-BREAK SPACE}")


def times(count: int | None) -> str:
    """How often something may be done again."""
    return _PLURALS.get(count or 1, f"at most {count} times")


def spoken_time(seconds: float) -> str:
    """A span as a reader plans with it: "45 s", "12 min", "2 h 05 min"."""
    if seconds < 60:
        return f"{round(seconds)}\N{NO-BREAK SPACE}s"
    hours, rest = divmod(round(seconds / 60), 60)
    minutes = f"{rest}\N{NO-BREAK SPACE}min"
    if not hours:
        return minutes
    shown = show_quantity(Quantity(hours, "h"))
    return f"{shown}\N{NO-BREAK SPACE}{minutes}" if rest else shown


def window_words(window: Window | None) -> str:
    """A window, or nothing."""
    return show_window(window) if window else ""


def role_title(lab: Lab, id: str | None) -> str:
    """A role's title; its id where it is not declared."""
    role = _role(lab, id)
    return str(role.title) if role else str(id or "")


def _role(lab: Lab, id: str | None) -> Role | None:
    return lab.roles.get(id) if id else None  # type: ignore[call-overload]


def call_sentence(lab: Lab, id: str | None) -> str:
    """Whom to call and where: "Call the duty technician: room B12 or extension 417."."""
    role = _role(lab, id)
    if role is None:
        return ""
    reach = f": {role.reach}" if role.reach else ""
    return f"Call the {low(role.title)}{reach}."


def call_view(lab: Lab, id: str | None) -> CallView | None:
    """A role to call with the one behind it."""
    role = _role(lab, id)
    if role is None:
        return None
    backup = f"then the {low(role_title(lab, role.backup))}" if role.backup else ""
    return CallView(role.title, role.reach or "not said how to reach", backup)


def fail_sentence(lab: Lab, wrong: NotRight | None) -> str:
    """What to do when the look at a place fails."""
    return (
        " ".join(part for part in (wrong.say or "", call_sentence(lab, wrong.call)) if part) if wrong else ""
    )


def station_view(study: LabStudy, id: str | None) -> StationView | None:
    """A place beside a step."""
    place = study.place(id)
    if place is None:
        return None
    return StationView("" if place.number is None else str(place.number), place.title, place_address(str(id)))


def worn_sign(lab: Lab, id: str, detail: str = "") -> SignView:
    """A piece of protective equipment by its sign and title."""
    piece = lab.ppe.get(id)  # type: ignore[call-overload]
    return SignView(piece.symbol or "", piece.title, detail) if piece else SignView("", id, detail)


def chemical_link(lab: Lab, id: str) -> LinkView | None:
    """The page of a mixture or substance, under its title."""
    if id in lab.mixtures:
        return LinkView(lab.mixtures[id].title, mixture_address(id))  # type: ignore[index]
    if id in lab.substances:
        return LinkView(lab.substances[id].title, substance_address(id))  # type: ignore[index]
    return None


def thing_title(lab: Lab, id: str) -> str:
    """The title of whatever can ride along, end in a container, or carry the part."""
    nouns = (
        lab.residues,
        lab.mixtures,
        lab.substances,
        lab.waste,
        lab.racks,
        lab.timers,
        lab.places,
        lab.ppe,
    )
    for noun in nouns:
        if id in noun:
            return str(noun[id].title)  # type: ignore[index]
    return named(id)


def stands_elsewhere(lab: Lab, step: Step) -> bool:
    """Whether a place other than the step's holds what the step makes: nobody may pour it in there."""
    return bool(step.into and step.at) and any(
        place.holds == step.into and id != step.at for id, place in lab.places.items()
    )
