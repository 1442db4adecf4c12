"""A picture whose file is not there."""

from collections.abc import Iterator
from difflib import get_close_matches

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="picture-missing",
    level=Level.ERROR,
    subject="words",
    what="The file of a picture is not in the folder `pictures`, or its path leads out of it.",
    why=(
        "A page with a hole where the picture should be teaches nothing, and a picture from elsewhere is "
        "gone tomorrow."
    ),
    bad="picture: {file: ../desktop/hole.png, alt: A clear hole.}",
    good="picture: {file: hole.png, alt: A clear hole.}",
)


def find(study: Study) -> Iterator[Problem]:
    """Pictures of steps."""
    for found in study.steps():
        picture = found.step.picture
        if picture is None or str(picture.file) in study.pictures:
            continue
        where, step = picture.spot("file"), str(found.step.id)
        if _leads_out(picture.file):
            yield DOC.found(
                where,
                f'"{picture.file}" leads out of the folder `pictures`',
                "copy the file into `pictures`, and write its name alone",
                step=step,
            )
        else:
            yield DOC.found(
                where,
                f'there is no file "{picture.file}" in the folder `pictures`',
                _nearest(picture.file, study.pictures),
                step=step,
            )


def _leads_out(file: str) -> bool:
    parts = file.replace("\\", "/").split("/")
    return ".." in parts or file.startswith(("/", "\\", "~")) or ":" in file


def _nearest(file: str, known: frozenset[str]) -> str:
    by_small_letters = {name.lower(): name for name in sorted(known)}
    near = get_close_matches(file.lower(), by_small_letters, 1)
    return f"did you mean `{by_small_letters[near[0]]}`?" if near else "put the file there"


RULE = Rule(DOC, in_procedure=find)
