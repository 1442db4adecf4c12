"""Data into a noun of the model: every misfit becomes a problem, and what still fits is kept."""

from difflib import get_close_matches
from re import fullmatch
from typing import Any, TypeVar, get_args

from pydantic import ValidationError

from generator.model import MARKS, WHERE, Located, Text
from generator.problems import Cause, Level, Location, Problem, missing

_Noun = TypeVar("_Noun", bound=Located)
_ROUNDS = 8
_FILLERS = {
    "do": "act",
    "id": "unnamed",
    "stage": "unnamed",
    "read_from": "1 m",
    "from": "00:00",
    "until": "23:59",
}
_MOST = 200
_KINDS = {"steps": "step", "cards": "card"}


def fit(noun: type[_Noun], data: dict[str, Any], file: str) -> tuple[_Noun | None, tuple[Problem, ...]]:
    """The noun, with wrong fields left out so that checking can go on; None where that cannot be done."""
    problems: tuple[Problem, ...] = ()
    tried: set[tuple[str | int, ...]] = set()
    for turn in range(_ROUNDS):
        try:
            return noun.model_validate(data), problems
        except ValidationError as bad:
            faults = bad.errors(include_url=False)
            # All misfits are seen at once; what shows up later comes from our own mending.
            if turn == 0:
                problems = tuple(dict.fromkeys(_describe(noun, data, fault, file) for fault in faults))[
                    :_MOST
                ]
            for fault in reversed(faults):
                _mend(data, fault, tried)
    return None, problems


def _describe(noun: type[Located], data: Any, fault: Any, file: str) -> Problem:
    path, kind = fault["loc"], fault["type"]
    own = _key_place(data, path[:-1]) if path and path[-1] == "[key]" else None
    where = own or _place(data, path, file)
    step = _step_of(data, path)
    if kind == "missing":
        holder = _holder(data, path[:-1])
        return Problem(
            "required-missing",
            Level.ERROR,
            where,
            f'{holder} has no "{path[-1]}"',
            f"write a line `{path[-1]}: ...` here",
            step,
            causes=(_lacking(path, where.file),),
        )
    if kind == "extra_forbidden":
        return _unknown_key(noun, data, path, _key_place(data, path) or where, step)
    if kind == "too_short":
        return Problem(
            "required-missing",
            Level.ERROR,
            where,
            f'"{path[-1]}" is an empty list',
            "write at least one entry",
            step,
        )
    context = fault.get("ctx", {})
    if "fix" in context:
        said, fix = f"{_field(path)}: {context['message']}", context["fix"]
        return Problem(kind, Level.ERROR, where, said, fix, step, explains=_id_meant(path, fix, file))
    return Problem("unreadable", Level.ERROR, where, *_no_fields(path, _reach(data, path)), step)


def _no_fields(path: tuple[str | int, ...], value: Any) -> tuple[str, str]:
    if value == "":
        return f"{_field(path)}: an entry is empty here", "delete its dash, or write its fields behind it"
    return (
        f"{_field(path)}: fields with values are expected here",
        "write `{field: value}` or indented lines `field: value`",
    )


def _id_meant(path: tuple[str | int, ...], fix: str, file: str) -> tuple[Cause, ...]:
    """The step or card that a slip in its id hides from the side files that name it."""
    kind = _KINDS.get(str(path[-3])) if len(path) > 2 and path[-1] == "id" else None
    meant = fullmatch(r"write `([a-z0-9-]+)`", fix)
    return (missing(kind, meant[1], file),) if kind and meant else ()


def _field(path: tuple[str | int, ...]) -> str:
    return next((str(part) for part in reversed(path) if isinstance(part, str) and part != "[key]"), "file")


def _unknown_key(noun: type[Located], data: Any, path: Any, where: Location, step: str) -> Problem:
    key = str(path[-1])
    known = _fields(noun, path[:-1])
    near = get_close_matches(key, known, 1)
    fix = f"did you mean `{near[0]}`?" if near else f"use one of: {', '.join(known)}"
    holder = _holder(data, path[:-1])
    explains = (_lacking((*path[:-1], near[0]), where.file),) if near else ()
    said = f'{holder} has no field named "{key}"'
    return Problem("unknown-key", Level.ERROR, where, said, fix, step, explains=explains)


def _lacking(path: tuple[str | int, ...], file: str) -> Cause:
    """A field that is not there; where it was mistyped, whoever asks for it or translates it lacks it."""
    return missing("field", ".".join(map(str, path)), file)


def _fields(noun: type[Located], path: tuple[str | int, ...]) -> list[str]:
    """The author's names of the fields of the noun that a path leads to."""
    here: Any = noun
    for part in path:
        model = _model_in(here)
        if model and isinstance(part, str) and part in _by_alias(model):
            here = _by_alias(model)[part]
    model = _model_in(here)
    return [name for name in _by_alias(model) if "\x00" not in name] if model else []


def _by_alias(model: type[Located]) -> dict[str, Any]:
    return {
        str(field.validation_alias or field.alias or name): field.annotation
        for name, field in model.fields().items()
    }


def _model_in(annotation: Any) -> type[Located] | None:
    if isinstance(annotation, type) and issubclass(annotation, Located):
        return annotation
    for part in reversed(get_args(annotation)):
        found = _model_in(part)
        if found:
            return found
    return None


def _holder(data: Any, path: tuple[str | int, ...]) -> str:
    """The thing that lacks a field, as the author would name it."""
    here, name = data, "the file"
    for at, part in enumerate(path):
        here = _get(here, part)
        if isinstance(here, dict):
            own = next((here[key] for key in ("id", "stage") if isinstance(here.get(key), str)), None)
            listed = isinstance(part, int) and at > 0
            entry = f"entry {int(part) + 1} under `{path[at - 1]}`" if listed else f'"{part}"'
            name = f'"{own}"' if own else entry
    return name


def _get(here: Any, part: str | int) -> Any:
    try:
        return here[part]
    except (KeyError, IndexError, TypeError):
        return None


def _place(data: Any, path: tuple[str | int, ...], file: str) -> Location:
    """The closest place that is known on the way to a path's end."""
    here = data
    place = Location(file)
    for part in path:
        if isinstance(here, dict):
            key = next((name for name in here if name == part), None)
            place = here.get(WHERE, place)
            if part is path[-1] and key is not None:
                place = getattr(key, "where", here.get(MARKS, {}).get(part, place))
        here = _get(here, part) if part != "[key]" else here
        place = _own_place(here) or place
    return place


def _key_place(data: Any, path: tuple[str | int, ...]) -> Location | None:
    """Where the last field's own name stands."""
    holder = _reach(data, path[:-1])
    key = next((name for name in holder if name == path[-1]), None) if isinstance(holder, dict) else None
    return getattr(key, "where", None)


def _own_place(here: Any) -> Location | None:
    if isinstance(here, Text):
        return here.where
    if isinstance(here, dict):
        return here.get(WHERE)
    return None


def _step_of(data: Any, path: tuple[str | int, ...]) -> str:
    here, step = data, ""
    for part in path:
        here = _get(here, part)
        if isinstance(here, dict) and "do" in here and isinstance(here.get("id"), str):
            step = str(here["id"])
    return step


def _mend(data: Any, fault: Any, tried: set[tuple[str | int, ...]]) -> None:
    """Take the wrong value out, or put a stand-in where something required is missing.

    Where a stand-in did not fit either, the noun that holds it goes.
    """
    path = tuple(part for part in fault["loc"] if part != "[key]")
    if path in tried:
        _remove(data, path[:-1])
    elif fault["type"] == "missing":
        tried.add(path)
        _stand_in(_reach(data, path[:-1]), path[-1])
    else:
        _remove(data, path)


def _reach(data: Any, path: tuple[str | int, ...]) -> Any:
    for part in path:
        data = _get(data, part)
    return data


def _stand_in(holder: Any, name: str | int) -> None:
    if not isinstance(holder, dict):
        return
    where = holder.get(WHERE, Location(""))
    holder[name] = Text(_FILLERS.get(str(name), "…"), where)
    if name in ("lab", "roles"):
        holder[name] = {WHERE: where}
    elif name in ("steps", "stages"):
        holder[name] = []


def _remove(data: Any, path: tuple[str | int, ...]) -> None:
    holder, last = _reach(data, path[:-1]), path[-1] if path else None
    if isinstance(holder, dict):
        holder.pop(last, None)
    elif isinstance(holder, list) and isinstance(last, int) and last < len(holder):
        del holder[last]
