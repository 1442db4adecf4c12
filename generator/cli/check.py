"""newel check: problems with line and fix, or one rule explained, or one procedure traced."""

import sys

import click

from generator.cli.resting import collector_at_rest
from generator.cli.screen import screen_width, show

FORMS = ("text", "json", "github", "sarif")


@click.command("check")
@click.argument("words", nargs=-1, metavar="[FOLDER] [ID]")
@click.option("--format", "form", type=click.Choice(FORMS), default="text", help="How problems are written.")
@click.option("--accepted", is_flag=True, help="List the accepted warnings too.")
@click.option("--only", default="", metavar="ID", help="Check this procedure alone.")
@click.option("--explain", default="", metavar="RULE", help="Say what a rule looks for, and why.")
@click.option("--trace", default="", metavar="ID", help="Say step by step what the walk believes.")
def command(words: tuple[str, ...], form: str, accepted: bool, only: str, explain: str, trace: str) -> int:
    """Check a lab and its procedures.

    FOLDER holds lab.yml or lab/; without it, this folder or the folder procedures in it. ID is a
    procedure's id, which is the name of its file.
    """
    if explain:
        return _explain(explain)
    if trace:
        return _trace(words, trace)
    with collector_at_rest():
        return _check(words, form, accepted, only)


def _check(words: tuple[str, ...], form: str, accepted: bool, only: str) -> int:
    from generator.cli.checking import check_target
    from generator.cli.target import read_target
    from generator.problems import Level

    report = check_target(read_target(words, only))
    if form == "text":
        from generator.cli.text_form import text_form

        show(text_form(report, accepted, screen_width()))
    elif form == "json":
        from generator.cli.json_form import json_form

        sys.stdout.write(json_form(report))
    elif form == "github":
        from generator.cli.github_form import github_form

        sys.stdout.write(github_form(report, accepted))
    else:
        from importlib.metadata import version

        from generator.cli.sarif_form import sarif_form

        sys.stdout.write(sarif_form(report, version("newel")))
    return 1 if report.count(Level.ERROR) else 0


def _explain(rule: str) -> int:
    from generator.checks import docs
    from generator.cli.explanation import explain

    show(explain(rule, docs()))
    return 0


def _trace(words: tuple[str, ...], id: str) -> int:
    from generator.cli.checking import study_target
    from generator.cli.target import read_target
    from generator.cli.trace_form import trace_lines

    show(trace_lines(study_target(read_target(words, id), id)))
    return 0
