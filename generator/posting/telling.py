"""Changes in the trade's words: "step 45 etch-in, Micro-etch: time 50 s -> 40 s"."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.posting.change import Change
from generator.posting.facts import Facts
from generator.units import UnitsError, read_quantity, read_window, show_quantity, show_window

ARROW = "\N{RIGHTWARDS ARROW}"
_LONGEST = 300
_BETWEEN = "; "
_LABELS: Mapping[str, str] = {
    "say": "sentence",
    "card": "card's sentence",
    "for": "time",
    "takes": "hands-on time",
    "do": "verb",
    "at": "place",
    "into": "into",
    "check": "what must be seen",
    "fail.say": "what if it is not seen",
    "fail.redo": "goes back to",
    "fail.at_most": "how often again",
    "fail.call": "whom to call",
    "fail.mend": "mended by",
    "hold.who": "whom to wait for",
    "hold.until": "wait until",
    "since.time": "in time",
    "since.step": "time counted from",
    "pause.keep": "how it is kept in a pause",
    "pause.time": "pause",
    "power.to": "current",
    "power.ramp": "current brought up over",
    "watch.check": "what to watch",
    "watch.every": "look every",
    "watch.fail.say": "what if it is not so",
    "put_on": "put on",
    "take_off": "take off",
    "stay": "stay",
    "when_it_sounds": "what to do when it sounds",
    "wear": "what is worn",
    "made_of": "made of",
    "hazards": "hazards",
    "reach": "how to reach",
    "temperature": "temperature",
    "answer": "",
    "base_wear": "worn all the time",
    "who": "who",
    "also_present": "also present",
    "approver": "approver",
    "review_every": "review every",
    "stop_rule": "stop rule",
    "tell_us_first": "tell us first",
    "stages": "stages",
    "post_at": "hangs at",
    "read_from": "read from",
    "holds": "holds",
    "look": "look",
    "not_right.say": "what if it does not look right",
    "not_right.call": "whom to call",
    "number": "station number",
}
_STEP_FIELDS = {"time": "window"}
_NOUNS: Mapping[str, str] = {
    "step": "step",
    "stage": "stage",
    "card": "card",
    "symptom": "what you may see",
    "paper": "paper",
    "roles": "role",
    "signoffs": "sign-off",
    "ppe": "wear",
    "hazard_words": "hazard",
    "substances": "substance",
    "mixtures": "mixture",
    "places": "place",
    "racks": "rack",
    "timers": "timer",
    "residues": "residue",
    "waste": "container",
    "calculators": "calculator",
    "keep_apart": "keep apart",
    "language": "translation",
    "class": "class",
    "picture": "picture",
    "sum": "worked out",
    "procedure": "procedure",
    "room": "room",
}


@dataclass(frozen=True)
class Naming:
    """How things are named: titles from the facts, numbers from the order of the steps."""

    facts: Facts
    numbers: Mapping[str, str]

    def title(self, noun: str, id: str) -> str:
        """A noun as people say it; a place with its station."""
        title = self.facts.get((noun, id, "title"), id)
        number = self.facts.get(("places", id, "number"), "") if noun == "places" else ""
        return f"{title} (station {number})" if number else title

    def step(self, id: str) -> str:
        """A step with its number and place."""
        number = self.numbers.get(id)
        at = self.facts.get(("step", id, "at"), "")
        place = f", {self.facts.get(('places', at, 'title'), at)}" if at else ""
        return f"step {number} {id}{place}" if number else f"step {id}{place}"

    def _sum(self, id: str) -> str:
        """ "step 48 copper-in, Copper cell, current as worked out", with its class."""
        tail, _, key = id.rpartition("/")
        step, _, field = key.rpartition(".")
        what = {"for": "time", "power": "current"}.get(field, field.replace("_", " "))
        whose = f" for the class {tail}" if tail else ""
        return f"{self.step(step) if step else what}, {what if step else 'value'} as worked out{whose}"

    def subject(self, noun: str, id: str) -> str:
        """What a change is about."""
        if noun == "step":
            return self.step(id)
        if noun == "procedure":
            return ""
        if noun == "sum":
            return self._sum(id)
        if noun in ("places", "mixtures", "substances", "ppe", "roles", "timers", "racks", "waste"):
            return self.title(noun, id)
        name = f" {self.title(noun, id)}" if id else ""
        return f"{_NOUNS.get(noun, noun)}{name}"


def naming(old: Facts, new: Facts) -> Naming:
    """Names as they are now; what is gone keeps its last one."""
    numbers: dict[str, str] = {}
    for facts in (old, new):
        stages = facts.get(("procedure", "", "stages"), "").split(", ")
        steps = [step for stage in stages for step in facts.get(("stage", stage, "steps"), "").split(", ")]
        numbers.update({step: str(number) for number, step in enumerate(steps, 1)})
    return Naming({**old, **new}, numbers)


def tell(change: Change, names: Naming) -> str:
    """One change as a line."""
    subject = names.subject(change.noun, change.id)
    if change.kind == "renamed":
        return f"{_NOUNS[change.noun]} {change.old} is now called {change.new}"
    if change.kind == "moved":
        return f"{subject}: moved, was {change.old}, now {change.new}"
    if change.kind in ("new", "gone"):
        said = change.new or change.old
        own = change.noun in ("step", "sum")
        about = subject if own else f"{_NOUNS.get(change.noun, change.noun)} {change.id}"
        what = "new here" if change.kind == "new" else "taken out"
        return f"{about}: {what}, {_short(said)}" if said else f"{about}: {what}"
    label = _label(change)
    return f"{subject}: {label} {_values(change)}".replace("  ", " ").removeprefix(": ")


def tell_apart(change: Change) -> str:
    """How a fact differs from the same fact here: "window 5 to 10 min, here 5 to 9 min"."""
    old, new = (shown_value(text) or "nothing" for text in (change.old, change.new))
    return f"{_label(change)} {old}, here {new}"


def _label(change: Change) -> str:
    if change.noun in ("picture", "sum"):
        return ""
    if change.noun == "places" and change.field in _STEP_FIELDS:
        return _STEP_FIELDS[change.field]
    path = change.field.split(".", 2)[-1] if change.field.startswith("steps.") else change.field
    step = f"step {change.field.split('.')[1]} " if path != change.field else ""
    if path in _LABELS:
        return f"{step}{_LABELS[path]}"
    return step + path.removeprefix("help.").replace(".", " ").replace("_", " ").replace("-", " ")


def _values(change: Change) -> str:
    if change.noun == "picture":
        return "is another picture"
    if {change.old, change.new} == {"", "true"}:
        return "now" if change.new else "no longer"
    if change.noun == "sum":
        return f"{worked_out(change.old)} {ARROW} {worked_out(change.new)}"
    old, new = (shown_value(text) for text in _apart(change.old, change.new))
    if not old:
        return f"{new} (new)"
    return f"{old} {ARROW} {new}" if new else f"{old} (taken out)"


def _apart(old: str, new: str) -> tuple[str, str]:
    """Of two lists of sentences those that differ; all of them where only their order does."""
    olds, news = old.split(_BETWEEN), new.split(_BETWEEN)
    if not old or not new or max(len(olds), len(news)) == 1:
        return old, new
    went, came = [one for one in olds if one not in news], [one for one in news if one not in olds]
    return (_BETWEEN.join(went), _BETWEEN.join(came)) if went or came else (old, new)


def worked_out(text: str) -> str:
    """A sum with as many figures as a person reads: "5.00 A"; "nothing" where there was none."""
    try:
        return show_quantity(read_quantity(text), 3)
    except UnitsError:
        return text or "nothing"


def shown_value(text: str) -> str:
    """A quantity or window as it is printed; a sentence in quotation marks."""
    try:
        return show_quantity(read_quantity(text))
    except UnitsError:
        pass
    try:
        return show_window(read_window(text))
    except UnitsError:
        sentence = text.endswith(".") or (" " in text and ", " not in text)
        return f"“{_short(text)}”" if sentence else _short(text)


def _short(text: str) -> str:
    return text if len(text) <= _LONGEST else f"{text[:_LONGEST]} …"
