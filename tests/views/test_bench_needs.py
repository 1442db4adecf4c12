"""Every field that an author may write on a step is at the bench, or is left out for a reason given here."""

import dataclasses
import datetime
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from generator.model import Place, Stage, Step
from generator.model.step import Fail, Hold, Pause, PowerOn, Since, Watch
from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.sums import Known
from generator.views.filling.card import CardFacts, card_view
from generator.views.filling.run_sheet import run_sheet_view
from generator.views.filling.step import step_view
from generator.views.filling.telling import telling

BASE = Path(__file__).parents[1] / "checks" / "base" / "lab.yml"
PROCEDURE = """
title: Everything at once
who: operator
also_present: buddy
approver: instructor
stop_rule: Stop at once.
job: {dose: 12 g}
stages:
  - stage: all
    title: All of it
    repeat: 4 rounds
    steps:
      - {id: book, do: claim, at: machine, who: technician, say: Turn the slot.}
      - {id: on, do: wear, put_on: [nitrile, apron], fresh: true, say: Put on everything.}
      - {id: rack, do: mount, rack: plastic-rack, say: Put the plate in it.}
      - {id: dose, do: add, at: hood, use: {caustic: dose, deionised-water: 300 mL}, into: bath-mix,
         repeat: 3 cups, say: Long words., card: Short words.}
      - {id: lid-off, do: open, at: bath, say: Lid off.}
      - id: in
        do: put-in
        at: bath
        say: Lower the plate in.
        for: 7 min
        stay: near
        rock: 5 times
        since: {step: rack, time: up to 9 min, because: it dulls}
        set: {program: 2}
        power: {to: 2 A, ramp: 30 s}
        watch: {every: 2 min, check: bubbles rise, fail: {say: Current off., call: instructor}}
        why: It is so.
        ask: {question: Why so?, answer: So.}
        picture: {file: x.svg, alt: A plate.}
      - {id: rest, do: wait, at: bath, for: 3 min, stay: away, alarm: oven-timer, when_it_sounds: Come back.,
         say: Leave it.}
      - {id: out, do: take-out, at: bath, for: 20 s, takes: 40 s, say: Lift.}
      - {id: asked, do: hold, hold: {who: technician, until: they nod}, say: Call.}
      - id: look
        do: check
        at: bench
        say: Look at it.
        check: no film
        record: {gap: up to 3 mm, mood: text}
        fail:
          say: Keep the plate.
          mend: {id: mended, do: dry, at: blower, say: Blow it dry.}
          redo: out
          at_most: 2
          call: instructor
      - {id: lid-on, do: close, at: bath, say: Lid on., waste: bag}
      - {id: door, do: open, at: oven, look: shelves free, say: Door open.}
      - id: off
        do: wear
        take_off: [apron, nitrile]
        wash_hands: true
        say: All off.
        pause: {keep: dry in a bag, time: up to 2 days}
cards:
  - {id: all-card, title: All card, size: A3, read_from: 0.7 m, stages: [all]}
"""
LAB = (
    ("    timer: bench-timer\n", "    timer: bench-timer\n    power: {supply: rectifier, most: 12 A}\n"),
    ("  bench: {title: Dry bench}\n", "  bench: {title: Dry bench}\n"
     "  hood: {title: Hood, extraction: sash at the line}\n"),
    ("    arrive: any\n", "    arrive: dry\n    hazards: [hot-surface]\n"),
)  # fmt: skip
NOT, READ = "not: ", "is read by the checker"
OVER = f"{NOT}over the list"
IDS, TEACHES = f"{NOT}an id", f"{NOT}teaching, for the page"
# A number or a word of the lab: where it stands on card, run sheet and bench page, or why it does not.
# One text for all three, or three of them.
STEP: dict[str, str | tuple[str, str, str]] = {
    "id": IDS,
    "was": IDS,
    "say": "Lower the plate in.",
    "card": ("Short words.", "Short words.", "Long words."),
    "do": ("PUT IN", "PUT IN", "Put in"),
    "at": "Cleaner bath",
    "into": ("Cleaner", "into Cleaner", "Cleaner"),
    "use": (
        "Sodium hydroxide: 12 g in all; Deionised water: 300 mL in all",
        "Sodium hydroxide: 12 g in all", "300 mL",
    ),
    "for_": "7 min",
    "takes": (f"{NOT}an estimate, for planning", f"{NOT}an estimate, for planning", "about 40 s"),
    "stay": ("stay NEAR", f"{NOT}the card says it", "stay near"),
    "alarm": ("Oven timer: Come back.", f"{NOT}the card says it", "Oven timer"),
    "when_it_sounds": ("Come back.", f"{NOT}the card says it", "Come back."),
    "look": ("shelves free", f"{NOT}the card says it", "shelves free"),
    "check": "no film",
    "record": ("gap (up to 3 mm)", "Mood", "Mood"),
    "fail": ("Keep the plate.", f"{NOT}the card says it", "Keep the plate."),
    "hold": "they nod",
    "since": "up to 9 min",
    "pause": "dry in a bag",
    "put_on": ("Nitrile gloves (a fresh pair), Chemical apron", f"{NOT}the card says it", "Chemical apron"),
    "take_off": ("Chemical apron, Nitrile gloves", f"{NOT}the card says it", "Nitrile gloves"),
    "fresh": ("a fresh pair", f"{NOT}the card says it", "a fresh pair"),
    "wash_hands": ("wash your hands", f"{NOT}the card says it", "Wash your hands"),
    "rack": ("Plastic rack", f"{NOT}nothing is set or read at it", "Plastic rack"),
    "rock": "5 times",
    "set": ("program 2", "program 2", "Program"),
    "power": "2 A",
    "watch": "bubbles rise",
    "waste": ("Solid waste bag", f"{NOT}the card says it", "Solid waste bag"),
    "repeat": "3 cups",
    "who": ("Duty technician", f"{NOT}whoever did it signs", "Duty technician"),
    "why": (TEACHES, TEACHES, "It is so."),
    "ask": (TEACHES, TEACHES, "Why so?"),
    "picture": (TEACHES, TEACHES, "A plate."),
    "formulas": TEACHES,
    "given": f"{NOT}an input of a sum, on the page of the sum",
}
NESTED: dict[str, str | tuple[str, str, str]] = {
    "Hold.who": "Duty technician",
    "Hold.until": "they nod",
    "Since.step": ("after step 3", "after step 3", "step 3"),
    "Since.time": "up to 9 min",
    "Since.because": (TEACHES, TEACHES, "it dulls"),
    "Pause.keep": "dry in a bag",
    "Pause.time": "up to 2 days",
    "PowerOn.to": "2 A",
    "PowerOn.ramp": "30 s",
    "Watch.every": ("every 2 min", "every 2 min", "2 min"),
    "Watch.check": "bubbles rise",
    "Watch.record": f"{NOT}stands where `check` does",
    "Watch.fail": ("Current off.", f"{NOT}the card says it", "Current off."),
    "Fail.say": ("Keep the plate.", f"{NOT}the card says it", "Keep the plate."),
    "Fail.mend": ("Blow it dry.", f"{NOT}the card says it", "Blow it dry."),
    "Fail.redo": ("back to step 8", f"{NOT}the card says it", "8"),
    "Fail.at_most": ("twice at most", f"{NOT}the card says it", "at most twice"),
    "Fail.call": ("Course instructor", f"{NOT}the card says it", "course instructor"),
    "Stage.stage": IDS,
    "Stage.was": IDS,
    "Stage.title": (f"{NOT}a card has its own title", f"{NOT}steps are numbered through", OVER),
    "Stage.repeat": ("4 rounds, steps 1 to 13", "from step 1, until 4 rounds are done", OVER),
    "Stage.steps": IDS,
}
PLACE: dict[str, str] = {
    "number": "1",
    "title": "Cleaner bath",
    "holds": "Causes serious eye irritation",
    "cover": f"{NOT}has steps of its own",
    "vented": f"{NOT}{READ}; the sentence names the lid",
    "room_for": f"{NOT}{READ}",
    "temperature": "40 to 50 °C",
    "time": "5 to 10 min",
    "arrive": "goes in DRY",
    "allows": f"{NOT}{READ}",
    "clears": f"{NOT}{READ}",
    "leaves": f"{NOT}{READ}",
    "makes": f"{NOT}{READ}",
    "wear": "Chemical apron",
    "wear_when": f"{NOT}{READ}; what is worn at any step is in the row WEAR",
    "fresh_gloves": f"{NOT}{READ}; the step that puts them on says so",
    "hazards": "Hot surface",
    "extraction": "sash at the line",
    "power": "never above 12 A",
    "water": f"{NOT}the mark LAST mains water",
    "drains_to": f"{NOT}WASTE INTO at a rinse or a cleaning",
    "tray": f"{NOT}{READ}; emptying it is a step",
    "shows": f"{NOT}{READ}, and on the page of the place",
    "look": "liquid between the two lines",
    "not_right": "Lid on.",
    "timer": "Bench timer: Lift the part.",
    "keeper": f"{NOT}whom to call stands in `not_right`",
    "shared": f"{NOT}BOOK, SAVE and FREE are steps",
    "book": "paper slots on the door",
    "out_of_use": f"{NOT}a banner on the pages, for a card hangs longer",
}


@cache
def study() -> Study:
    with TemporaryDirectory() as folder:
        lab = BASE.read_text("utf-8")
        for old, new in LAB:
            assert lab.count(old) >= 1
            lab = lab.replace(old, new, 1)
        (Path(folder) / "lab.yml").write_text(lab, "utf-8")
        (Path(folder) / "all.yml").write_text(PROCEDURE.strip() + "\n", "utf-8")
        return check(read_lab(open_folder(Path(folder), "lab")), datetime.date(2026, 11, 25)).studies["all"]


def texts(value: object) -> Iterator[str]:
    if dataclasses.is_dataclass(value):
        for one in dataclasses.fields(value):
            if one.name != "words":
                yield from texts(getattr(value, one.name))
    elif isinstance(value, tuple):
        for item in value:
            yield from texts(item)
    elif isinstance(value, str):
        yield value.replace("\u00a0", " ")


@cache
def printed() -> tuple[str, str, str]:
    """All that the card, the run sheet and the bench page say, each as one text."""
    formulas = {formula.name: formula for formula in Known().all()}
    facts = CardFacts(formulas, "https://x.example/")
    (card,) = study().procedure.cards
    told = telling(study(), formulas)
    page = tuple(step_view(told, step) for step in study().procedure.steps)
    return (
        "\n".join(texts(card_view(study(), card, facts))),
        "\n".join(texts(run_sheet_view(study(), facts))),
        "\n".join(texts(page)),
    )


def test_no_field_is_forgotten() -> None:
    """A new field of the model fails here until somebody has said where it is printed, or why not."""
    assert set(STEP) == set(Step.model_fields) - {"where", "marks"}
    nested = {"Hold": Hold, "Since": Since, "Pause": Pause, "PowerOn": PowerOn, "Watch": Watch, "Fail": Fail}
    fields = {f"{name}.{field}" for name, kind in (*nested.items(), ("Stage", Stage)) for field in own(kind)}
    assert set(NESTED) == fields
    assert set(PLACE) == own(Place)


def own(kind: type) -> set[str]:
    return set(getattr(kind, "model_fields")) - {"where", "marks"}  # noqa: B009


@pytest.mark.parametrize("field", [*STEP, *NESTED])
def test_a_field_is_where_it_is_needed(field: str) -> None:
    wanted = {**STEP, **NESTED}[field]
    three = (wanted,) * 3 if isinstance(wanted, str) else wanted
    for where, text, expected in zip(("card", "run sheet", "page"), printed(), three, strict=True):
        assert expected.startswith(NOT) or expected in text, f"{field} on the {where}"


@pytest.mark.parametrize("field", PLACE)
def test_what_a_place_asks_for_is_on_the_card(field: str) -> None:
    assert PLACE[field].startswith(NOT) or PLACE[field] in printed()[0]
