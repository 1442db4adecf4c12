"""Text to a located tree: the raw scan first, then PyYAML's C parser, no implicit types."""

from dataclasses import dataclass

import yaml

from generator.notation.again import compose_again
from generator.notation.composer import DEEPEST, MOST_VALUES, Composer, TooDeepError, TooManyError
from generator.notation.decode import decode
from generator.notation.parser_words import parser_problem
from generator.notation.scan import scan
from generator.notation.tree import MapNode, Node
from generator.problems import Level, Location, Problem, by_place


@dataclass(frozen=True, slots=True)
class Document:
    """One file as read: its text (for quoting lines), its tree where it could be parsed, what was wrong."""

    file: str
    text: str
    root: Node | None
    problems: tuple[Problem, ...]


def read_text(data: bytes, file: str, last: Document | None = None) -> Document:
    """A file's bytes as a located tree, with all that is wrong with its form; never raises on bad input.

    What no edit touched since the `last` reading of the file is taken from there.
    """
    text, problems = decode(data, file)
    if problems:
        return Document(file, text, None, problems)
    found = list(scan(text, file))
    root = _composed_again(text, file, last) if last and not found else None
    if root is None:
        root = _compose(text, file, found)
    return Document(file, text, root, by_place(found))


def _composed_again(text: str, file: str, last: Document) -> Node | None:
    # No text can hold more values than it is long.
    if last.root is None or last.file != file or last.problems or len(text) > MOST_VALUES:
        return None
    return compose_again(last.root, last.text, text, file)


def _compose(text: str, file: str, found: list[Problem]) -> Node | None:
    composer = Composer(text, file, found)
    try:
        root = composer.document()
    except TooDeepError:
        found.append(
            Problem(
                "unreadable",
                Level.ERROR,
                Location(file),
                f"lists or braces stand more than {DEEPEST} deep inside one another",
                "look for brackets that are never closed",
            )
        )
        return None
    except TooManyError:
        found.append(
            Problem(
                "unreadable",
                Level.ERROR,
                Location(file),
                f"the file holds more than {MOST_VALUES:,} values",
                "split it: one procedure a file",
            )
        )
        return None
    except yaml.YAMLError as bad:
        if not any(problem.level is Level.ERROR for problem in found):
            found.append(parser_problem(bad, file, text))
        return None
    found += composer.found
    return MapNode((), Location(file)) if root is None else root
