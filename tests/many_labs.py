"""Labs of any size: the small wet room of the rule cases with as many procedures as asked for, all sound."""

import shutil
from collections.abc import Iterator
from pathlib import Path

from generator.notation import as_yaml, plain, read_text

_BASE = Path(__file__).parent / "checks" / "base"
_ROUND = 8
_SYLLABLES = ("ba", "den", "fo", "gri", "hul", "ker", "lim", "mos", "nar", "pel", "rus", "sta", "tov", "wen")
_WHY = (
    "A film of cleaner that stays on the plate holds the next coat off, and nobody sees it before the {word} "
    "test. The lid keeps the warm bath from drying out, and it keeps a dropped tool from falling in. What "
    "drips beside the tray ends on the floor, where the next person of the {word} group stands."
)


def write_many(folder: Path, count: int, steps: int = 12) -> Path:
    """A folder `procedures` with `count` procedures of `steps` steps each; returns it."""
    home = folder / "procedures"
    home.mkdir(parents=True)
    shutil.copy(_BASE / "lab.yml", home / "lab.yml")
    for number in range(count):
        (home / f"{procedure_id(number)}.yml").write_text(procedure_text(number, steps), encoding="utf-8")
    return home


def procedure_id(number: int) -> str:
    """The id of a generated procedure."""
    return f"clean-{number:04d}"


def procedure_text(number: int, steps: int = 12) -> str:
    """One procedure as YAML, in words of its own: rounds of eight steps, each ending in a check."""
    root = read_text((_BASE / "procedure.yml").read_bytes(), "procedure.yml").root
    assert root is not None
    procedure = plain(root)
    assert isinstance(procedure, dict)
    procedure["title"] = f"Clean a plate of the {_word(number)} kind"
    procedure["stages"] = list(_stages(number, steps))
    return as_yaml(procedure)


def _stages(number: int, steps: int) -> Iterator[dict[str, object]]:
    rounds, idle = divmod(steps - 4, _ROUND)
    yield {"stage": "begin", "title": "Begin", "steps": [
        _step("rack", "mount", "Put the plate in the rack.", rack="plastic-rack", takes="1 min"),
        _step("wear-on", "wear", "Put on gloves and apron.", put_on=["nitrile", "apron"], takes="2 min"),
        *(_step(f"book-{n}", "act", "Write the time into the book.", takes="1 min") for n in range(idle)),
    ]}  # fmt: skip
    for turn in range(rounds):
        yield {"stage": f"clean-{turn}", "title": f"Clean {_word(turn)}", "steps": [*_round(number, turn)]}
    yield {"stage": "end", "title": "End", "steps": [
        _step("wear-off", "wear", "Gloves and apron off. Wash your hands.", take_off=["apron", "nitrile"],
              wash_hands="true", waste="bag", takes="2 min"),
        _step("look", "check", "Tilt the plate under the lamp.", at="bench", takes="2 min",
              check="no film on the plate", fail={"say": "Keep the plate.", "call": "technician"}),
    ]}  # fmt: skip


def _round(number: int, turn: int) -> Iterator[dict[str, object]]:
    why = _WHY.format(word=_word(number * 31 + turn))
    question = f"The {_word(number)} plate drips beside the tray. What now?"
    ask = {"question": question, "answer": "Wipe it up at once."}
    yield _step(f"lid-off-{turn}", "open", "Lid off.", at="bath", takes="1 min", why=why)
    yield _step(f"in-{turn}", "put-in", "Lower the plate in.", at="bath", rock="5 times", stay="near",
                ask=ask, why=why, **{"for": "7 min"})  # fmt: skip
    yield _step(f"out-{turn}", "take-out", "Lift slowly and let it drip.", at="bath", why=why,
                **{"for": "20 s"})  # fmt: skip
    yield _step(f"lid-on-{turn}", "close", "Lid on.", at="bath", takes="15 s", why=why)
    yield _step(f"spray-{turn}", "rinse", "Spray both sides over the tray.", at="spray", waste="jug", why=why,
                **{"for": "90 s"})  # fmt: skip
    yield _step(f"tray-{turn}", "empty", "Empty the tray.", at="spray", takes="1 min", waste="jug", why=why)
    yield _step(f"blow-{turn}", "dry", "Dry both faces.", at="blower", takes="4 min", ask=ask, why=why)
    again = {"say": "Clean it once more.", "redo": f"lid-off-{turn}", "at_most": "2", "call": "technician"}
    yield _step(f"see-{turn}", "check", "Look along the plate.", takes="1 min", check="no film on the plate",
                fail=again)  # fmt: skip


def _step(id: str, do: str, say: str, **fields: object) -> dict[str, object]:
    return {"id": id, "do": do, "say": say, **fields}


def _word(number: int) -> str:
    """A word of its own for each number, without figures."""
    size = len(_SYLLABLES)
    return "".join(_SYLLABLES[(number // size**place) % size] for place in range(3))
