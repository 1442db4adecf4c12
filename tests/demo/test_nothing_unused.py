"""Each verb, noun, field and rule, and what exercises it: the demo lab, a small lab, or a case of a rule."""

from collections.abc import Callable, Iterator, Mapping
from functools import cache, partial
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from generator import model
from generator.checks import RULES
from generator.model import VERBS, Lab, Located
from generator.model.procedure import SHOWN, SIZES
from generator.reading import LabRead, find_folder, open_folder, read_lab
from tests.checks.cases import Case, read_cases, write_lab

ROOT = Path(__file__).parents[2]
LABS = (ROOT / "procedures", *sorted(path for path in (ROOT / "tests" / "labs").iterdir() if path.is_dir()))
CASES = sorted((ROOT / "tests" / "checks").rglob("*.cases"))
NOT_THE_AUTHORS = {"where", "marks"}
NOT_WRITTEN = {"Procedure.id"}  # the name of its file
# Nouns that posting writes and reads back; tests/posting exercises them.
WRITTEN_BY_US = "generator.model.posted"
HOME = Located.__module__
Used = dict[str, str]


@cache
def _read(folder: Path) -> LabRead:
    return read_lab(open_folder(find_folder(folder), folder.name))


def _objects(value: object) -> Iterator[Located]:
    """A noun and every noun inside it."""
    if isinstance(value, Located):
        yield value
        for name in type(value).model_fields:
            if name not in NOT_THE_AUTHORS:
                yield from _objects(getattr(value, name))
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _objects(inner)
    elif isinstance(value, tuple | list):
        for inner in value:
            yield from _objects(inner)


def _written(read: LabRead) -> Iterator[tuple[str, Located]]:
    """Every noun that a lab's files write, with who writes it."""
    home = read.folder.shown
    for noun in _objects(read.lab):
        yield f"{home}/lab", noun
    for id, file in read.procedures.items():
        for owner in (file.procedure, *file.class_files.values(), *file.languages.values()):
            for noun in _objects(owner):
                yield f"{home}/{id}", noun


@cache
def _case_texts() -> tuple[tuple[Case, str], ...]:
    """The cases with all that each writes, so that a field or a word can be looked for in it."""
    return tuple((case, _text(case)) for path in CASES for case in read_cases(path))


def _text(case: Case) -> str:
    return "\n".join((*case.sections.values(), *(data.decode("latin-1") for data in case.files.values())))


@cache
def _read_case(index: int) -> LabRead:
    with TemporaryDirectory() as folder:
        home = Path(folder) / "procedures"
        write_lab(_case_texts()[index][0], home)
        return read_lab(open_folder(home, "procedures"))


def _from_cases(word: str, wanted: Callable[[Located], bool]) -> str:
    """The first case that writes a noun as wanted; only cases whose text has the word are read."""
    for index, (case, text) in enumerate(_case_texts()):
        if word in text and any(wanted(noun) for _, noun in _written(_read_case(index))):
            return f"case {case.rule}: {case.title}"
    return ""


def _verbs() -> Used:
    used = dict.fromkeys(VERBS, "")
    for folder in LABS:
        for owner, noun in _written(_read(folder)):
            if isinstance(noun, model.Step):
                used[noun.do] = used[noun.do] or f"{owner}, step {noun.id}"
    return used


def _nouns() -> Used:
    used = dict.fromkeys(Lab.model_fields.keys() - NOT_THE_AUTHORS, "")
    for folder in LABS:
        lab = _read(folder).lab
        for name in used:
            if lab is not None and getattr(lab, name):
                used[name] = used[name] or f"{_read(folder).folder.shown}/lab"
    return used


def _fields() -> Used:
    used = {
        f"{kind.__name__}.{field.alias or name}": ""
        for kind in _kinds()
        for name, field in kind.model_fields.items()
        if name not in NOT_THE_AUTHORS and f"{kind.__name__}.{name}" not in NOT_WRITTEN
    }
    for folder in LABS:
        for owner, noun in _written(_read(folder)):
            for name in noun.model_fields_set - NOT_THE_AUTHORS:
                key = f"{type(noun).__name__}.{type(noun).model_fields[name].alias or name}"
                if key in used:
                    used[key] = used[key] or owner
    for key, owner in used.items():
        used[key] = owner or _from_cases(f"{key.partition('.')[2]}:", partial(_writes, key))
    return used


def _writes(key: str, noun: Located) -> bool:
    kind, _, name = key.partition(".")
    written = {type(noun).model_fields[field].alias or field for field in noun.model_fields_set}
    return type(noun).__name__ == kind and name in written


def _kinds() -> list[type[Located]]:
    """Every kind of noun that the model has, the inner ones too."""
    found: list[type[Located]] = []
    waiting = [Located]
    while waiting:
        kind = waiting.pop()
        waiting += kind.__subclasses__()
        if kind.__module__.startswith("generator.model.") and kind.__module__ not in (HOME, WRITTEN_BY_US):
            found.append(kind)
    return sorted(found, key=lambda each: each.__name__)


def _words_of_cards() -> Used:
    """Parts and sizes of cards, ways to stay and kinds of cover: closed lists that somebody must use."""
    used = dict.fromkeys((*(f"show {part}" for part in SHOWN), *(f"size {size}" for size in SIZES),
                          "stay here", "stay near", "stay away", "cover lid", "cover door"), "")  # fmt: skip
    for folder in LABS:
        for owner, noun in _written(_read(folder)):
            for key in _closed(noun):
                used[key] = used[key] or owner
    for key, owner in used.items():
        used[key] = owner or _from_cases(key.partition(" ")[2], partial(_says, key))
    return used


def _says(key: str, noun: Located) -> bool:
    return key in _closed(noun)


def _closed(noun: Located) -> Iterator[str]:
    match noun:
        case model.Card():
            yield f"size {noun.size}"
            yield from (f"show {part}" for part in noun.show)
        case model.Step():
            yield f"stay {noun.stay}"
        case model.Place() if noun.cover:
            yield f"cover {noun.cover}"


def _rules() -> Used:
    used = {rule.doc.id: "" for rule in RULES}
    for case, _ in _case_texts():
        if case.expected:
            used[case.rule] = used.get(case.rule) or f"case: {case.title}"
    return used


@pytest.mark.parametrize(
    ("what", "find"),
    [("verb", _verbs), ("noun", _nouns), ("field", _fields), ("word", _words_of_cards), ("rule", _rules)],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_nothing_is_unused(what: str, find: object, capsys: pytest.CaptureFixture[str]) -> None:
    assert callable(find)
    used: Used = find()
    with capsys.disabled():
        print(f"\n{what}s, and what exercises each:")
        for name, owner in sorted(used.items()):
            print(f"  {name:<38} {owner or 'NOTHING'}")
    assert used
    assert [name for name, owner in used.items() if not owner] == []


def test_every_verb_stands_in_the_demo_lab() -> None:
    assert [verb for verb, owner in _verbs().items() if not owner.startswith("procedures/")] == []


def test_every_noun_stands_in_the_demo_lab() -> None:
    assert [noun for noun, owner in _nouns().items() if not owner.startswith("procedures/")] == []
