"""What the commands of posting share: the lab as checked, and the folder that their files are written to."""

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


def wanted_procedure(read: LabRead, id: str) -> str:
    """The id of a procedure that is there; NewelError otherwise."""
    if id in read.procedures:
        return id
    known = ", ".join(sorted(read.procedures)) or "none yet"
    raise NewelError(
        "no-procedure", f'{read.folder.shown} holds no procedure "{id}"', hint=f"there is: {known}"
    )
