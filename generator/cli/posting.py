"""What the commands of posting share: the lab as checked, and the folder that their files are written to."""

from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path

from generator.cli.day import day_of_run
from generator.pipeline import Checked, check
from generator.problems import Level, NewelError
from generator.reading import LabRead


def check_posted(read: LabRead) -> Checked:
    """The lab with what is posted; NewelError where its own files cannot be understood."""
    checked = check(read, day_of_run())
    if checked.lab is None:
        errors = checked.count(Level.ERROR)
        raise NewelError(
            "not-understood",
            f"the lab's own files cannot be understood ({errors} error{'s' * (errors != 1)})",
            "what is posted can only be compared with a lab that can be read",
            "run `newel check`",
        )
    return checked


def wanted_procedure(read: LabRead, word: str) -> str:
    """The id of a procedure that is meant by its id or its file; NewelError otherwise."""
    id = plain_id(word)
    if id in read.procedures:
        return id
    raise NewelError(
        "no-procedure",
        f'{read.folder.shown} holds no procedure "{word}"',
        hint=nearest_hint(id, sorted(read.procedures)),
    )


def plain_id(word: str) -> str:
    """A procedure's id, also where somebody names its file."""
    return Path(word).name.partition(".")[0] if word.endswith((".yml", ".yaml")) else word


def nearest_hint(word: str, known: Sequence[str]) -> str:
    """Which name was meant, or which there are."""
    near = get_close_matches(word, known, 1)
    return f"did you mean {near[0]}?" if near else f"there is: {', '.join(known) or 'none yet'}"


def said(option: str, text: str, what: str) -> str:
    """What must be said in words; NewelError where nothing is."""
    words = " ".join(text.split())
    if words:
        return words
    raise NewelError(f"no-{option}", f"--{option} is not said: {what}", hint=f'write --{option} "..."')
