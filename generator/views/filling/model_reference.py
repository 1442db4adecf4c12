"""The reference of nouns, fields and verbs, from what the model says of itself."""

from generator.model import VERBS
from generator.model.described import DescribedField, DescribedNoun, described
from generator.views.reference import FieldView, NounView, ReferenceView


def reference_view() -> ReferenceView:
    """Every noun that an author writes, from the files inwards, and every verb."""
    return ReferenceView(tuple(_noun(noun) for noun in described()), tuple(VERBS.items()))


def _noun(noun: DescribedNoun) -> NounView:
    return NounView(_anchor(noun.title), noun.title, noun.says, tuple(_field(field) for field in noun.fields))


def _field(field: DescribedField) -> FieldView:
    anchor = _anchor(field.noun) if field.noun else ""
    return FieldView(field.name, field.means, field.takes, field.must, field.noun, anchor)


def _anchor(title: str) -> str:
    """An anchor of ours: its underscore keeps it apart from every author's id."""
    return f"noun_{title.lower().replace(' ', '_')}"
