"""What was looked up in a lab while something was made from it, to tell later whether it still holds."""

import dataclasses
import hashlib
from collections.abc import Callable, Hashable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from generator.model import Lab, Located, Text
from generator.posting.used import Named, Stock, stock_of
from generator.study import LabStudy
from generator.study.answers import Answer, Answers

# (noun, id) -> digest of what stood there, "" for nothing; an id of ours stands for all ids in their order.
Looks = Mapping[str, Mapping[str, str]]
_ALL = "\0all"
_WORDS = "\0words"


@dataclass(frozen=True)
class Ground:
    """A lab's study with the digest of every noun by id, one of what is not looked up by id, one of all.

    `answers` are those of all watches, each with the look-ups that it needed.
    """

    study: LabStudy
    digests: Looks
    rest: str
    stock: Stock
    seal: str
    answers: dict[Any, tuple[Any, Looks]] = field(default_factory=dict, repr=False, compare=False)

    def holds(self, looks: Looks) -> bool:
        """Whether every look-up would find the same again."""
        return all(
            self.digests.get(noun, {}).get(id, "") == digest
            for noun, found in looks.items()
            for id, digest in found.items()
        )


def survey(study: LabStudy) -> Ground:
    """Digest a lab noun by noun, with the places in the files where everything stands."""
    nouns = _nouns(study.lab)
    digests: dict[str, Mapping[str, str]] = {noun: _digest_ids(ids) for noun, ids in nouns.items()}
    stock = stock_of(study.lab)
    digests[_WORDS] = {word: repr(names) for word, names in stock.ids.items()}
    apart = (*nouns, "marks", "where")
    rest = {name: value for name, value in study.lab.__dict__.items() if name not in apart}
    # A sentence that is no id is not noted as one that was not there; an id with a gap in it would be one.
    rest["gaps"] = tuple(word for word in stock.ids if " " in word)
    seal = hashlib.sha256(repr(digests).encode("utf-8", "surrogatepass")).hexdigest()
    return Ground(study, digests, digest_of(rest), stock, seal)


def _nouns(lab: Lab) -> dict[str, Mapping[Any, Any]]:
    return {
        name: value
        for name, value in lab.__dict__.items()
        if isinstance(value, Mapping) and name not in ("marks", "lab")
    }


def _digest_ids(ids: Mapping[Any, Any]) -> dict[str, str]:
    found = {str(id): digest_of((id, value)) for id, value in ids.items()}
    return {**found, _ALL: digest_of(tuple(ids))}


def digest_of(value: object) -> str:
    """A digest of a value of the model down to the last text and its place."""
    digest = hashlib.sha256("\0".join(_texts(value)).encode("utf-8", "surrogatepass"))
    return digest.hexdigest()[:24]


def _texts(value: object) -> Iterator[str]:
    """Every part of a value as text, each kind of value marked, so that no two values give the same row."""
    if isinstance(value, Text):
        yield f"t{len(value)}:{value}"
        yield repr(value.where)
    elif isinstance(value, Located):
        yield f"n{type(value).__name__}"
        yield from _texts(value.__dict__)
    elif isinstance(value, Mapping):
        yield f"m{len(value)}"
        for key, inner in value.items():
            yield from _texts(key)
            yield from _texts(inner)
    elif isinstance(value, tuple | list):
        yield f"l{len(value)}"
        for item in value:
            yield from _texts(item)
    elif dataclasses.is_dataclass(value):
        yield f"d{type(value).__name__}"
        for one in dataclasses.fields(value):
            yield from _texts(getattr(value, one.name))
    else:
        shown = repr(value)
        yield f"r{len(shown)}:{shown}"


class Watch:
    """A lab's study and its stock of plain nouns, both of which note every look-up by noun and id."""

    def __init__(self, ground: Ground) -> None:
        self._found: dict[str, dict[str, str]] = {}
        lab = ground.study.lab
        watched = {
            noun: _Watched(ids, ground.digests[noun], self._found.setdefault(noun, {}))
            for noun, ids in _nouns(lab).items()
        }
        answers = _Answers(ground, self._found)
        self.study = replace(ground.study, lab=lab.model_copy(update=watched), answers=answers)
        words = self._found.setdefault(_WORDS, {})
        self.stock = Stock(
            _WatchedStock(ground.stock.nouns, ground.digests, self._found),
            _Watched(ground.stock.ids, ground.digests[_WORDS], words),
        )

    @property
    def looks(self) -> Looks:
        """What was looked up so far."""
        return {noun: found for noun, found in self._found.items() if found}


class _Answers(Answers):
    """Answers worked out under a watch of their own, whose look-ups are noted for each that asks."""

    def __init__(self, ground: Ground, found: dict[str, dict[str, str]]) -> None:
        self._ground, self._found = ground, found

    def of(self, study: object, work: Callable[..., Answer], *asked: Hashable) -> Answer:  # noqa: ARG002
        """The answer, from a study of the same lab; what it was worked out from is noted."""
        known = self._ground.answers
        if (work, asked) not in known:
            apart = Watch(self._ground)
            known[work, asked] = (work(apart.study, *asked), apart.looks)
        answer: Answer = known[work, asked][0]
        for noun, ids in known[work, asked][1].items():
            self._found[noun].update(ids)
        return answer


@dataclass(frozen=True, slots=True, eq=False)
class _Watched(Mapping[Any, Any]):
    """One kind of noun; asking for an id notes that id, going through them notes all."""

    ids: Mapping[Any, Any]
    digests: Mapping[str, str]
    found: dict[str, str] = field(repr=False)

    def __getitem__(self, id: Any) -> Any:
        if id not in self.found:
            _note(self.found, self.digests, id)
        return self.ids[id]

    def get(self, id: Any, default: Any = None) -> Any:
        if id not in self.found:
            _note(self.found, self.digests, id)
        return self.ids.get(id, default)

    def __contains__(self, id: object) -> bool:
        if id not in self.found:
            _note(self.found, self.digests, id)
        return id in self.ids

    def __iter__(self) -> Iterator[Any]:
        self.found[_ALL] = self.digests[_ALL]
        return iter(self.ids)

    def __len__(self) -> int:
        self.found[_ALL] = self.digests[_ALL]
        return len(self.ids)


@dataclass(frozen=True, slots=True, eq=False)
class _WatchedStock(Mapping[Named, dict[str, Any]]):
    """Plain nouns by (noun, id). Their order alone tells nothing: going through them notes nothing."""

    nouns: Mapping[Named, dict[str, Any]]
    digests: Looks
    found: dict[str, dict[str, str]] = field(repr=False)

    def __getitem__(self, name: Named) -> dict[str, Any]:
        noun, id = name
        _note(self.found[noun], self.digests[noun], id)
        return self.nouns[name]

    def __iter__(self) -> Iterator[Named]:
        return iter(self.nouns)

    def __len__(self) -> int:
        return len(self.nouns)


def _note(found: dict[str, str], digests: Mapping[str, str], id: object) -> None:
    if isinstance(id, str) and (" " not in id or id in digests):
        found[str(id)] = digests.get(id, "")
