"""What stands beside a field's type: the one function that reads it, and what editors are told of it."""

from collections.abc import Callable
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema


class Reader:
    """A field that one function reads; the type beside it is for people and mypy and is not looked into."""

    def __init__(self, read: Callable[[Any], object], **schema: Any) -> None:
        self.read = read
        self.schema = schema

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return dict(self.schema)


class Before:
    """A function that shapes what is given before the type beside it is looked into."""

    def __init__(self, shape: Callable[[Any], object]) -> None:
        self.shape = shape

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.shape, handler(source))


class Kept:
    """A field that is our own and comes as it is."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.any_schema()
