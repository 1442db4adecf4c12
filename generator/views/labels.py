"""What stands on the label of a container: by the GHS, and what a workplace adds."""

from dataclasses import dataclass

from generator.views.chemical import LabelView


@dataclass(frozen=True, slots=True)
class ContainerLabelView:
    """A label: name as on the bottle, what is said under it, GHS elements, lines, blanks to fill in.

    `over` stands over the name ("WASTE"), `stop` is a rule in bold; `blanks` are labels of lines to write on.
    """

    title: str
    under: str
    label: LabelView
    lines: tuple[str, ...]
    blanks: tuple[str, ...]
    caution: str
    over: str = ""
    stop: str = ""
