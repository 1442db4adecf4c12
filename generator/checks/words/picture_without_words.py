"""A picture without words for those who do not see it."""

from collections.abc import Iterator
from pathlib import PurePosixPath

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="picture-without-words",
    level=Level.WARNING,
    subject="words",
    what="A picture has no `alt`, or one that says nothing.",
    why=(
        "The words stand in for the picture on a screen reader, on a bad copy and when the file does not "
        "load."
    ),
    bad="picture: {file: clear-and-plugged.svg}",
    good="""picture:
  alt: "Left: round bright hole. Right: hole half covered by a pale plug."
  file: clear-and-plugged.svg""",
    source="WCAG 2.2, success criterion 1.1.1 (non-text content)",
)
_EMPTY = {"picture", "image", "photo", "drawing", "figure", "diagram", "alt"}


def find(study: Study) -> Iterator[Problem]:
    """Pictures of steps."""
    for found in study.steps():
        picture = found.step.picture
        if picture is None:
            continue
        words = str(picture.alt or "").strip().rstrip(".").lower()
        if (
            not words
            or words in _EMPTY
            or words in (picture.file.lower(), PurePosixPath(picture.file).stem.lower())
        ):
            said = f'only says "{picture.alt}"' if words else "has no words"
            yield DOC.found(
                picture.spot("alt"),
                f"the picture {picture.file} {said}",
                "write `alt: ...` with what a person must see in it",
                step=str(found.step.id),
            )


RULE = Rule(DOC, in_procedure=find)
