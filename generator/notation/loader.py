"""PyYAML's C parser without its resolver: nothing in a file has a type, so there is none to look for."""

import yaml

_TAGS = {
    yaml.ScalarNode: "tag:yaml.org,2002:str",
    yaml.SequenceNode: "tag:yaml.org,2002:seq",
    yaml.MappingNode: "tag:yaml.org,2002:map",
}


class Loader(yaml.CBaseLoader):
    """The C parser; a node without a tag gets that of its kind, which the resolver finds in more steps."""

    def resolve(self, kind: type[yaml.Node], value: object, implicit: object) -> str:  # noqa: ARG002
        """The tag of the kind."""
        return _TAGS[kind]

    def descend_resolver(self, current_node: object, current_index: object) -> None:
        """No tag hangs on a path."""

    def ascend_resolver(self) -> None:
        """No tag hangs on a path."""
