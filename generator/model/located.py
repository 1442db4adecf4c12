"""What every noun of the lab shares: it is frozen, refuses unknown fields and knows where it was written."""

from collections.abc import Mapping
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field
from pydantic.fields import FieldInfo
from pydantic.json_schema import SkipJsonSchema

from generator.model.reader import Kept
from generator.notation import Text
from generator.problems import Location
from generator.problems.location import NOWHERE

WHERE = "\x00where"
MARKS = "\x00marks"
ID = "\x00id"
__all__ = ["ID", "MARKS", "WHERE", "Located", "Text"]


class Located(BaseModel):
    """A noun: `where` is the place of its mapping, `marks` the place of each field's value."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    where: SkipJsonSchema[Annotated[Location, Kept()]] = Field(
        default=NOWHERE, validation_alias=WHERE, repr=False, exclude=True
    )
    marks: SkipJsonSchema[Annotated[Mapping[str, Location], Kept()]] = Field(
        default={}, validation_alias=MARKS, repr=False, exclude=True
    )

    @classmethod
    def fields(cls) -> dict[str, FieldInfo]:
        """The fields by name; a noun that was named before it was declared is found now."""
        cls.model_rebuild()
        return cls.model_fields

    def spot(self, field: str) -> Location:
        """Where a field's value stands; the noun's own place where the field is absent."""
        return self.marks.get(field, self.where)
