"""A report as workflow commands, which GitHub shows beside the changed lines."""

from generator.cli.lines import plain_text
from generator.cli.report import Report, whole_message
from generator.cli.text_form import closing_lines
from generator.problems import Level, Problem

_COMMANDS = {Level.ERROR: "error", Level.WARNING: "warning", Level.NOTE: "notice", Level.ACCEPTED: "notice"}


def github_form(report: Report, accepted: bool = False) -> str:
    """One command a problem, then the closing lines as plain text."""
    commands = "".join(f"{_command(problem)}\n" for problem in report.listed(accepted))
    return commands + plain_text(closing_lines(report))


def _command(problem: Problem) -> str:
    where = problem.where
    facts = {
        "file": where.file,
        "line": str(max(where.line, 1)),
        "col": str(max(where.column, 1)),
        "endColumn": str(max(where.column, 1) + where.length),
        "title": f"{problem.level}[{problem.rule}]" + (f" step {problem.step}" if problem.step else ""),
    }
    written = ",".join(f"{name}={_property(value)}" for name, value in facts.items() if value)
    says = _data(f"{whole_message(problem)}\nfix: {problem.fix}")
    return f"::{_COMMANDS[problem.level]} {written}::{says}"


def _data(text: str) -> str:
    """A message: the signs that end a command, written as GitHub's own runner reads them."""
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
