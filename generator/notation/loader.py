"""PyYAML's C parser without its resolver: nothing in a file has a type, so there is none to look for."""

import yaml

_TAGS = {f"tag:yaml.org,2002:{kind}" for kind in ("str", "seq", "map")}


@dataclass(frozen=True, slots=True)
class Document:
    """One file as read: its text (for quoting lines), its tree where it could be parsed, what was wrong."""

    file: str
    text: str
    root: Node | None
    problems: tuple[Problem, ...]


def read_text(data: bytes, file: str) -> Document:
    """A file's bytes as a located tree, with all that is wrong with its form; never raises on bad input."""
    text, problems = decode(data, file)
    if problems:
        return Document(file, text, None, problems)
    found = list(scan(text, file))
    if _too_deep(text):
        found.append(
            Problem(
                "unreadable",
                Level.ERROR,
                Location(file),
                f"lists or braces stand more than {DEEPEST} deep inside one another",
                "look for brackets that are never closed",
            )
        )
        return Document(file, text, None, by_place(found))
    root = _compose(text, file, found)
    return Document(file, text, root, by_place(found))


def _compose(text: str, file: str, found: list[Problem]) -> Node | None:
    loader = _Loader(text)
    try:
        node = loader.get_single_node()
    except yaml.YAMLError as bad:
        if not any(problem.level is Level.ERROR for problem in found):
            found.append(_parser_problem(bad, file))
        return None
    if node is None:
        return MapNode((), Location(file))
    return _Convert(file, found).node(node)


def _too_deep(text: str) -> bool:
    """A cheap upper bound first; the events are counted only where it says that the depth may be too much."""
    widest = max((len(line) - len(line.lstrip(" -?")) for line in text.split("\n")), default=0)
    if text.count("[") + text.count("{") + widest < DEEPEST:
        return False
    depth = 0
    try:
        for count, event in enumerate(yaml.parse(text, Loader=_Loader)):
            depth += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
            if depth > DEEPEST or count > _MOST_NODES:
                return True
    except yaml.YAMLError:
        return False
    return False


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
