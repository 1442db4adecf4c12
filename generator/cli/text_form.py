"""A report as text for people: each problem with its quoted line, and what was walked at the end."""

from collections.abc import Iterator

from generator.cli.lines import Line, Piece, text_line, visible
from generator.cli.quoting import GUTTER, quote_lines
from generator.cli.report import CAUTION, Report, Walked
from generator.problems import Level, Problem

_COUNTED = ((Level.ERROR, "error", "errors"), (Level.WARNING, "warning", "warnings"),
            (Level.NOTE, "note", "notes"), (Level.ACCEPTED, "accepted", "accepted"))  # fmt: skip


def text_form(report: Report, accepted: bool = False, width: int = 0) -> tuple[Line, ...]:
    """All lines of a report; quoted lines are cropped to `width` columns, or left whole at 0."""
    return (*listed_lines(report, accepted, width), *closing_lines(report))


def listed_lines(report: Report, accepted: bool = False, width: int = 0) -> Iterator[Line]:
    """Every problem that is to be listed, an empty line behind each."""
    for problem in report.listed(accepted):
        yield from problem_lines(problem, report.texts.get(problem.where.file, ""), width)
        yield Line()


def problem_lines(problem: Problem, text: str, width: int = 0) -> Iterator[Line]:
    """One problem: head, place, quoted line, path, fix, and what follows from it."""
    head = Piece(f"{problem.level}[{problem.rule}]", str(problem.level))
    yield Line((head, Piece(f": {visible(problem.message)}", "strong")), hang=4)
    quoted = tuple(quote_lines(problem, text, width))
    margin = GUTTER if not quoted else max(GUTTER, len(str(problem.where.line)))
    if problem.where.file:
        where = _stand(problem)
        yield Line((Piece(f"{' ' * (margin - 1)}--> ", "frame"), Piece(where)))
    yield from quoted
    for word, says in _facts(problem):
        pieces = (Piece(f"{' ' * margin}= ", "frame"), Piece(f"{word}", "fix"), Piece(visible(says)))
        yield Line(pieces, hang=margin + 2)


def _stand(problem: Problem) -> str:
    where = visible(str(problem.where)) if problem.where.line else visible(problem.where.file)
    if problem.step:
        return f"{where}  step {visible(problem.step)}"
    return f"{where}  place {visible(problem.place)}" if problem.place else where


def _facts(problem: Problem) -> Iterator[tuple[str, str]]:
    if problem.path:
        yield "on the path: ", problem.path
    yield "fix: ", problem.fix
    if problem.follows:
        yield "", f"and {problem.follows} more that follow{'s' * (problem.follows == 1)} from this"
    if problem.accepted:
        it = problem.accepted
        yield "accepted: ", f"by {it.who} until {it.until}, because: {it.because}"


def closing_lines(report: Report) -> Iterator[Line]:
    """Counts, what was walked, what was not made and for want of what, and what no checker can know."""
    yield count_line(report)
    yield text_line(_walked(report.walked))
    if report.walked and report.walked.unfinished:
        yield text_line(f"not walked to the end, being too long: {', '.join(report.walked.unfinished)}")
    for needs, rules in _by_needs(report).items():
        yield text_line(f"not made for want of {needs}: {', '.join(rules)}", hang=4)
    yield text_line(CAUTION)


def count_line(report: Report) -> Line:
    """How many problems of each level."""
    counts = (_count(report.count(level), one, many) for level, one, many in _COUNTED)
    return text_line(", ".join(counts), "strong")


def _walked(walked: Walked | None) -> str:
    if walked is None:
        return "nothing was walked: the lab's own files could not be understood, so most checks were not made"
    classes = f" and {_count(walked.classes, 'class', 'classes')}" if walked.classes else ""
    return (f"walked: {_count(walked.procedures, 'procedure', 'procedures')}{classes}, "
            f"{_count(walked.steps, 'step', 'steps')}, {_count(walked.paths, 'path', 'paths')}")  # fmt: skip


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"


def _by_needs(report: Report) -> dict[str, list[str]]:
    groups: dict[str, list[str]] = {}
    for rule, needs in report.not_made.items():
        groups.setdefault(" or ".join(needs), []).append(rule)
    return groups
