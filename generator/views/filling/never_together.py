"""What a substance or mixture must never meet: the lab's own pairs, then the reactivity chart."""

from collections.abc import Iterable, Iterator

from generator.hazards import Meeting, meetings
from generator.model import Lab, Text
from generator.study import LabStudy
from generator.study.composition import substances_in
from generator.study.reactivity import WATER_GROUP, chart_groups, chart_groups_of


def groups_of(lab: Lab, id: str) -> tuple[str, ...]:
    """The lab's groups of all substances in a mixture, or of the substance itself."""
    found = (lab.substances[Text(part)].groups for part in substances_in(lab, id))
    return tuple(dict.fromkeys(str(group) for groups in found for group in groups))


def never_with(study: LabStudy, groups: Iterable[str]) -> Iterator[str]:
    """What these groups never meet by the lab's own word, and why."""
    ours = set(map(str, groups))
    for pair in study.lab.keep_apart:
        others = [str(group) for group in pair.groups if group not in ours]
        if len(others) < len(pair.groups):
            yield f"{', '.join(others) or 'more of its own kind'}: {pair.because}"


def reacts_with(lab: Lab, id: str) -> Iterator[tuple[str, tuple[Meeting, ...]]]:
    """Ids of the lab's other substances that the chart names a danger with, and what it says.

    A mixture's own parts are left out, and water for what is made with water already.
    """
    ours = chart_groups(lab, id)
    made = lab.mixtures.get(Text(id))
    inside = {str(part) for part in made.made_of} if made else {id}
    ours = tuple(group for group in ours if group != WATER_GROUP) if made else ours
    for other in lab.substances:
        theirs = chart_groups_of(lab, str(other))
        if str(other) in inside or (made and WATER_GROUP in theirs):
            continue
        found = meetings(ours, theirs)
        if found:
            yield str(other), found


def reaction_words(found: tuple[Meeting, ...]) -> str:
    """Codes of the chart in words, each once, with a mark where a cell is doubtful."""
    words = dict.fromkeys(word for one in found for word in one.words)
    doubt = "" if all(one.certain for one in found) else " (a doubtful cell: look at the chart)"
    return f"{', '.join(words)}{doubt}"
