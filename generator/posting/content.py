"""What an issue holds: one procedure with everything it uses, as plain data in the model's own nouns."""

from collections.abc import Mapping
from typing import Any

from generator.model import ClassFile, Lab, LanguageFile, Procedure
from generator.posting.plain import plain_noun, plain_value
from generator.posting.used import LIVE, NOUNS, Stock, stock_of, words_in
from generator.sums import Sums

Content = dict[str, Any]
# A translator's own notes change after the posting, and change nothing that is shown.
_NOTES = ("translated_by", "checked_against")


def content_of(
    lab: Lab,
    procedure: Procedure,
    sums: Mapping[str, Sums],
    classes: Mapping[str, ClassFile],
    languages: Mapping[str, LanguageFile],
    pictures: Mapping[str, str],
    stock: Stock | None = None,
) -> Content:
    """`sums` by class ("" for the procedure itself), `pictures` a short digest by file name."""
    whole = plain_noun(procedure)
    sides = {tail: plain_noun(file) for tail, file in classes.items()}
    used = {"procedure": whole, "classes": sides}
    out: Content = {"lab": _lab(lab, used, stock or stock_of(lab)), "procedure": whole}
    if sides:
        out["classes"] = sides
    if languages:
        out["languages"] = {str(name): plain_noun(file, _NOTES) for name, file in languages.items()}
    answers = {name: answer for tail, found in sums.items() for name, answer in _answers(tail, found)}
    if answers:
        out["sums"] = answers
    shown = {file: pictures[file] for file in sorted(set(words_in(used)) & set(pictures))}
    if shown:
        out["pictures"] = shown
    return out


def _answers(tail: str, sums: Sums) -> list[tuple[str, str]]:
    prefix = f"{tail}/" if tail else ""
    return [(f"{prefix}{key}", plain_value(_rounded(sum.answer))) for key, sum in sums.by_key.items()]


def _rounded(quantity: Any) -> Any:
    """Six digits: more than any card prints, and the same on every machine."""
    return type(quantity)(float(f"{quantity.number:.6g}"), quantity.unit)


def _lab(lab: Lab, said: Any, stock: Stock) -> dict[str, Any]:
    room = plain_noun(lab.lab, LIVE["lab"])
    used = stock.reached([*words_in(said), *words_in(room)])
    out: dict[str, Any] = {"lab": room}
    for noun in NOUNS:
        ids = [id for kind, id in stock.nouns if kind == noun and (kind, id) in used]
        if ids:
            out[noun] = {id: stock.nouns[noun, id] for id in ids}
    groups = {group for one in out.get("substances", {}).values() for group in one.get("groups", ())}
    apart = [plain_noun(row) for row in lab.keep_apart if groups & set(map(str, row.groups))]
    return {**out, "keep_apart": apart} if apart else out
