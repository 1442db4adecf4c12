"""One rule explained: what it looks for, why, a bad and a good example."""

from collections.abc import Iterator
from difflib import get_close_matches

from generator.cli.lines import Line, Piece, text_line
from generator.problems import NewelError, RuleDoc

_LEVELS = {
    "error": "an error: it stops publishing",
    "warning": "a warning: it is published only with a role's reason, written under `accept`",
    "note": "a note on style: it stops nothing",
}


def explain(rule: str, docs: tuple[RuleDoc, ...]) -> tuple[Line, ...]:
    """A rule's document as lines; NewelError with the nearest id where there is no such rule."""
    doc = next((doc for doc in docs if doc.id == rule.strip().lower()), None)
    if doc is None:
        ids = [doc.id for doc in docs]
        near = get_close_matches(rule, ids, 3, 0.4)
        hint = f"did you mean {' or '.join(near)}?" if near else f"there are: {', '.join(sorted(ids))}"
        why = "a rule's id stands in brackets behind the level"
        raise NewelError("no-rule", f'there is no rule "{rule}"', why, hint)
    return tuple(_lines(doc))


def _lines(doc: RuleDoc) -> Iterator[Line]:
    more = f"; for some findings {_LEVELS[str(doc.sometimes)]}" if doc.sometimes else ""
    level = f"{_LEVELS[str(doc.level)]}{more}"
    yield Line((Piece(doc.id, "strong"), Piece(f"  ({doc.subject})  {level}")), hang=2)
    yield Line()
    yield text_line(doc.what)
    yield Line((Piece("why: ", "strong"), Piece(doc.why)), hang=5)
    for title, yaml in (("bad:", doc.bad), ("good:", doc.good)):
        if yaml.strip():
            yield Line()
            yield text_line(title, "strong")
            yield from (text_line(f"    {row}", hang=-1) for row in yaml.strip("\n").split("\n"))
    yield Line()
    if doc.needs:
        yield text_line(f"not made where one of these is missing: {', '.join(doc.needs)}")
    yield Line((Piece("source: ", "strong"), Piece(doc.source)), hang=8)
