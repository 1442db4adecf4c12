"""Why the command cannot go on, in the four parts of the error."""

import traceback

from generator.cli.lines import Line, Piece
from generator.problems import NewelError

CANNOT_RUN = 2


def failure_lines(error: NewelError) -> tuple[Line, ...]:
    """What happened with its id, then why, then what to do next."""
    head, *more = error.what.splitlines() or [""]
    lines = [Line((Piece(f"cannot go on[{error.id}]", "error"), Piece(f": {head}", "strong")), hang=4)]
    lines += [Line((Piece(f"    {line}"),), hang=4) for line in more]
    if error.why:
        lines.append(Line((Piece("   = ", "frame"), Piece("why: ", "strong"), Piece(error.why)), hang=10))
    if error.hint:
        lines.append(Line((Piece("   = ", "frame"), Piece("next: ", "strong"), Piece(error.hint)), hang=11))
    return tuple(lines)


def own_fault(fault: Exception) -> NewelError:
    """A fault of the program itself, named by where it arose."""
    last = traceback.extract_tb(fault.__traceback__)[-1]
    spot = f"{last.name}, line {last.lineno} of {last.filename}"
    return NewelError(
        "own-fault",
        f"Newel itself failed in {spot}: {type(fault).__name__}: {fault}",
        "this is a mistake in the program and not in your files",
        "report this text together with the files that you checked",
    )
