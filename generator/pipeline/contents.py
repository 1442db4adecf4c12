"""What each procedure would be posted as now: content, facts, check code, and the codes of its cards."""

import dataclasses
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property, partial

from generator.formulas import Formula
from generator.model import Procedure
from generator.pipeline.check import Checked
from generator.pipeline.posted_pictures import picture_digest
from generator.posting.code import check_code
from generator.posting.content import Content, content_of
from generator.posting.facts import Key, facts_of
from generator.posting.used import Stock, stock_of
from generator.reading import LabRead
from generator.study import Study
from generator.sums import Known
from generator.views.card import CardView
from generator.views.filling.card import CardFacts, card_view

# Added to a card after its content, or ours and the same on every card.
_ADDED = (
    "status",
    "issue",
    "check_code",
    "good_until",
    "dated",
    "address",
    "address_shown",
    "withdrawn",
    "words",
    "caution",
)


@dataclass(frozen=True)
class Drafted:
    """A procedure as its files stand: its studies by class ("" for itself), content, facts and check code.

    The content is put together by `gather` when it is first asked for: one never posted mostly needs none.
    """

    id: str
    studies: Mapping[str, Study]
    gather: Callable[[], Content] = field(repr=False)

    @cached_property
    def content(self) -> Content:
        """What an issue of it would hold."""
        return self.gather()

    @cached_property
    def facts(self) -> Mapping[Key, str]:
        """The content as a flat map of texts."""
        return facts_of(self.content)

    @cached_property
    def code(self) -> str:
        """The check code of the facts."""
        return check_code(self.facts.items())

    @property
    def procedure(self) -> Procedure:
        """The procedure itself."""
        return self.studies[""].procedure


def all_drafted(
    read: LabRead, checked: Checked, stock: Stock | None = None, pictures: Mapping[str, str] | None = None
) -> dict[str, Drafted]:
    """Every procedure that was studied, by id; `stock` and `pictures` are worked out where not given."""
    if read.lab is None:
        return {}
    stock = stock or stock_of(read.lab)
    pictures = picture_digests(read) if pictures is None else pictures
    return {
        id: draft_of(read, checked, id, stock, pictures) for id in read.procedures if id in checked.studies
    }


def draft_of(
    read: LabRead,
    checked: Checked,
    id: str,
    stock: Stock | None = None,
    pictures: Mapping[str, str] | None = None,
) -> Drafted:
    """One procedure with its classes, as its files stand."""
    assert read.lab is not None
    file = read.procedures[id]
    studies = {"": checked.studies[id]}
    studies |= {tail: checked.studies[it.id] for tail, it in file.classes.items() if it.id in checked.studies}
    gather = partial(
        content_of,
        read.lab,
        file.procedure,
        {tail: study.sums for tail, study in studies.items()},
        file.class_files,
        file.languages,
        picture_digests(read) if pictures is None else pictures,
        stock,
    )
    return Drafted(id, studies, gather)


def picture_digests(read: LabRead, wanted: Collection[str] | None = None) -> dict[str, str]:
    """A short digest of each picture, or of those wanted: another picture under the same name is a change."""
    folder = read.folder.path / "pictures"
    return {
        name: picture_digest((folder / name).read_bytes())
        for name in sorted(read.folder.pictures)
        if wanted is None or name in wanted
    }


def known_formulas(read: LabRead) -> dict[str, Formula]:
    """Library and lab's own by name."""
    return {formula.name: formula for formula in Known(read.formulas.formulas).all()}


Print = tuple[tuple[str, str], ...]


def card_prints(studies: Mapping[str, Study], formulas: Mapping[str, Formula]) -> dict[str, Print]:
    """What every card prints, by name: `etch-card`, or `second-year/etch-card` for that of a class."""
    facts = CardFacts(formulas)
    return {
        f"{tail}/{card.id}" if tail else str(card.id): print_of(card_view(study, card, facts))
        for tail, study in studies.items()
        for card in study.procedure.cards
    }


def card_codes(studies: Mapping[str, Study], formulas: Mapping[str, Formula]) -> dict[str, str]:
    """The check code of every card by name."""
    return {name: check_code(texts) for name, texts in card_prints(studies, formulas).items()}


def card_code(view: CardView) -> str:
    """The check code of all that a card prints, itself and its standing left out."""
    return check_code(print_of(view))


def print_of(view: CardView) -> Print:
    """All texts of a card by their place on it, its own standing left out."""
    return tuple((path, text) for path, text in _texts("", view) if path.split(".")[0] not in _ADDED)


def _texts(path: str, value: object) -> Iterator[tuple[str, str]]:
    """Every text of a view by its path; what is empty prints nothing."""
    if dataclasses.is_dataclass(value):
        for one in dataclasses.fields(value):
            yield from _texts(f"{path}.{one.name}" if path else one.name, getattr(value, one.name))
    elif isinstance(value, tuple):
        for index, item in enumerate(value):
            yield from _texts(f"{path}.{index}", item)
    elif value not in ("", None, False):
        yield path, str(value)
