"""The command and its list of subcommands, each loaded only when it is called."""

import os
import sys
from importlib import import_module
from io import TextIOWrapper

import click

from generator.cli.failing import CANNOT_RUN, failure_lines, own_fault
from generator.cli.screen import show
from generator.problems import NewelError

INTERRUPTED = 130
COMMANDS = (
    ("init", "generator.cli.init", "Write a new lab's folder, which checks clean."),
    ("check", "generator.cli.check", "Say what is wrong in a lab, where, and how to mend it."),
    ("build", "generator.cli.build", "Check, then write the site."),
    ("serve", "generator.cli.serve", "Show the draft in a browser, and each edit at once."),
    ("changes", "generator.cli.changes", "Say what an edit changes against what is posted."),
    ("post", "generator.cli.post", "Freeze what was approved as an issue, and list the copies to replace."),
    ("withdraw", "generator.cli.withdraw", "Say that a procedure must not be followed any more."),
    ("copies", "generator.cli.copies", "Keep the list of laminated copies: which hang where, what is wrong."),
    ("calculate", "generator.cli.calculate", "Work a formula out, or list them all."),
    ("screen", "generator.cli.screen_mixture", "Say what a mixture implies by its composition."),
    ("schema", "generator.cli.schema", "Write the JSON Schemas that help an editor complete and check."),
)


class _Commands(click.Group):
    """A group that knows names and short helps without loading the commands."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        return [name for name, _, _ in COMMANDS]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        home = next((module for name, module, _ in COMMANDS if name == cmd_name), None)
        found = getattr(import_module(home), "command", None) if home else None
        return found if isinstance(found, click.Command) else None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        with formatter.section("Commands"):
            formatter.write_dl([(name, says) for name, _, says in COMMANDS])


@click.command(
    cls=_Commands,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="Exit status: 0 no errors, 1 errors found, 2 cannot run.",
)
@click.version_option(package_name="newel", message="newel %(version)s")
def newel() -> None:
    """Newel checks, publishes and posts the bench procedures of a teaching lab."""


def main(arguments: list[str] | None = None) -> None:
    """Run the command and leave with its exit status; nothing shows a traceback."""
    # What else is installed has no say in how a lab is read, and looking for it takes a while.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    sys.exit(_run(arguments))


def _run(arguments: list[str] | None) -> int:
    try:
        status = newel.main(args=arguments, prog_name="newel", standalone_mode=False)
    except click.Abort:
        return INTERRUPTED
    except click.ClickException as wrong:
        wrong.show()
        return CANNOT_RUN
    except BrokenPipeError:
        # Whoever read our output has left; what is still buffered must not be written when Python ends.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return CANNOT_RUN
    except NewelError as error:
        show(failure_lines(error), sys.stderr)
        return CANNOT_RUN
    except Exception as fault:  # the last door: an author has no use for a traceback
        show(failure_lines(own_fault(fault)), sys.stderr)
        return CANNOT_RUN
    return status if isinstance(status, int) else 0
