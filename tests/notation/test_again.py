"""A text that is read again after an edit gives the tree that it gives when it is read alone."""

import random
from pathlib import Path

import pytest

from generator.notation import Document, ListNode, MapNode, Node, Text, read_text

DEMO = Path(__file__).parents[2] / "procedures" / "copper-the-holes.yml"
LISTS = """\
title: a
words:
- first
- "over
  two lines"
- # a dash by itself
  id: behind its dash
  folded: |
    One
    - two

    Three
- - inside
  - a list
- {a: 1,
   b: [1, 2,
    3]}
- id: k
  say: plain words
    go on
    - here
  sub:
  - a: b
    kept: >+
      fold

      more

  - d: e
# a comment
steps:
  - id: one
    say: Lid off.
    use: {acid: 1 mL}
  - {id: two, say: Lid on.}
  - id: three
    say: "Wait."
"""
PIECES = (
    "- ", "  ", '"', "'", "|", ">", "{", "}", "[", "]", ": ", "#", " #", "&a ", "*a", "!x ", "...", "---",
    "? ", ", ", "\\", "\t", "- id: q\n", "key: v\n", "  - w\n", "|+\n", ">-\n\n", '"a\n  b"', "<<: ", "%",
    " word", " now.",
)  # fmt: skip


def told(node: Node | None) -> object:
    """All that a tree says, the place of each text too: two texts are equal wherever they stand."""
    if isinstance(node, MapNode):
        return node.where, [(told(key), told(value)) for key, value in node.items]
    if isinstance(node, ListNode):
        return node.where, [told(item) for item in node.items]
    return None if node is None else (str(node), node.where)


def edited(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    to = min(len(lines), at + chance.randrange(1, 6))
    line, column = lines[at], chance.randrange(len(lines[at]) + 1)
    kind = chance.randrange(6)
    if kind == 0:
        del lines[at:to]
    elif kind == 1:
        lines[at:at] = lines[at:to]
    elif kind == 2:
        lines[at] = line[: chance.randrange(3)] + line[chance.randrange(3) :]
    elif kind == 3:
        lines[at] = line + " now"
    else:
        lines[at] = line[:column] + chance.choice(PIECES) + line[column + chance.randrange(2) :]
    return "\n".join(lines)


@pytest.mark.parametrize("text", [LISTS, DEMO.read_text(encoding="utf-8")], ids=["lists", "demo"])
def test_after_any_edits_the_tree_is_that_of_the_text_alone(text: str) -> None:
    chance, shared = random.Random(5), 0
    last = read_text(text.encode(), "x.yml")
    for _ in range(1500 if text is LISTS else 100):
        new = edited(chance, last.text)
        new = edited(chance, new) if chance.random() < 0.3 else new
        again, alone = read_text(new.encode(), "x.yml", last), read_text(new.encode(), "x.yml")
        assert told(again.root) == told(alone.root), (last.text, new)
        assert again.problems == alone.problems
        shared += any(one is other for one in parts(again) for other in parts(last))
        last = again if not again.problems and len(new) < 2 * len(text) else read_text(text.encode(), "x.yml")
    assert shared > 20


DEEP = 37
STRANGE = {
    "the document ends": ("say: Lid on.}", "say: Lid on.}\n..."),
    "a name without a value": ("    use: {acid: 1 mL}", "    ? use"),
    "an anchor that is there already": ("    use: {acid", "    &a use: {acid"),
    "deeper than can be read": ("acid: 1 mL", f"acid: {'[' * DEEP}1{']' * DEEP}"),
    "a quote that is not closed": ("Lid off.", '"Lid off.'),
    "an item that is gone": ('  - id: three\n    say: "Wait."\n', ""),
    "another indent": ("  - id: three", " - id: three"),
    "two items of one": ("    use: {acid: 1 mL}", "  - id: new"),
}


@pytest.mark.parametrize("edit", STRANGE.values(), ids=STRANGE)
def test_what_is_strange_is_read_as_it_is_in_the_whole_text(edit: tuple[str, str]) -> None:
    before = LISTS.replace("title: a", "&a title: a")
    last = read_text(before.encode(), "x.yml")
    assert not last.problems
    new = before.replace(*edit)
    assert new != before
    again, alone = read_text(new.encode(), "x.yml", last), read_text(new.encode(), "x.yml")
    assert (told(again.root), again.problems) == (told(alone.root), alone.problems)


def parts(document: Document) -> tuple[Node, ...]:
    root = document.root
    assert root is None or isinstance(root, MapNode)
    return tuple(value for _, value in root.items if not isinstance(value, Text)) if root else ()


def steps(document: Document) -> tuple[Node, ...]:
    assert isinstance(document.root, MapNode)
    listed = document.root.get("steps")
    assert isinstance(listed, ListNode)
    return listed.items


def test_what_no_edit_touched_is_what_it_was() -> None:
    last = read_text(LISTS.encode(), "x.yml")
    again = read_text(
        LISTS.replace("off.", "off now.").replace("Wait.", "Wait here.").encode(), "x.yml", last
    )
    kept = [one is other for one, other in zip(steps(again), steps(last), strict=True)]
    assert kept == [False, True, False]


def test_what_stands_behind_a_new_line_is_moved_down() -> None:
    last = read_text(LISTS.encode(), "x.yml")
    new = LISTS.replace("Lid off.\n", "Lid off.\n    why: It sticks.\n  - id: one-more\n    say: Look.\n")
    again = read_text(new.encode(), "x.yml", last)
    assert len(steps(again)) == 4
    assert [step.where.line for step in steps(again)[2:]] == [step.where.line + 3 for step in steps(last)[1:]]


def test_a_file_with_another_name_is_another_file() -> None:
    last = read_text(LISTS.encode(), "x.yml")
    again = read_text(LISTS.encode(), "y.yml", last)
    assert {step.where.file for step in steps(again)} == {"y.yml"}
