"""PyYAML's C parser without its resolver: nothing in a file has a type, so there is none to look for."""

import yaml

DEEPEST = 40
MOST_VALUES = 200_000
_TAGS = {
    yaml.ScalarNode: "tag:yaml.org,2002:str",
    yaml.SequenceNode: "tag:yaml.org,2002:seq",
    yaml.MappingNode: "tag:yaml.org,2002:map",
}


class TooDeepError(yaml.YAMLError):
    """Collections stand more than DEEPEST deep inside one another."""


class TooManyError(yaml.YAMLError):
    """A file holds more than MOST_VALUES names, values and collections."""


class Loader(yaml.CBaseLoader):
    """The C parser; a node without a tag gets that of its kind, which the resolver finds in more steps.

    The parser tells its resolver of every node that it goes into and comes out of. That is where depth is
    counted, before the parser's own stack can run out.
    """

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.depth = 0
        self.values = 0

    def resolve(self, kind: type[yaml.Node], value: object, implicit: object) -> str:  # noqa: ARG002
        """The tag of the kind."""
        return _TAGS[kind]

    def descend_resolver(self, current_node: object, current_index: object) -> None:  # noqa: ARG002
        """Into a node, which may be a scalar in the deepest collection or an empty collection there."""
        self.depth += 1
        self.values += 1
        if self.depth > DEEPEST + 1:
            raise TooDeepError
        if self.values > MOST_VALUES:
            raise TooManyError

    def ascend_resolver(self) -> None:
        """Out of a node."""
        self.depth -= 1
