"""What never meets, and what among some things meets all the same."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from generator.checks.evidence.contents import Brought, behind, brought_by
from generator.hazards import Meeting as ChartMeeting
from generator.hazards import meeting as on_chart
from generator.model import KeepApart, Lab
from generator.problems import Level
from generator.study.composition import substances_in
from generator.study.reactivity import CHART, WATER_GROUP, has_water, placed_in
from generator.units import Quantity

SEVERE = frozenset(("GT", "GF", "F", "E", "P", "107"))
Amounts = Mapping[str, Quantity]


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two things of different groups that a row of the lab or the reactivity chart keeps apart.

    `severe` is True for every row of the lab, and for fire, explosion, toxic or flammable gas and violent
    polymerisation on the chart; `row` is None for the chart.
    """

    one: Brought
    other: Brought
    because: str
    severe: bool
    row: KeepApart | None = None

    @property
    def level(self) -> Level:
        """An error where it is severe, else a warning that a named role may live with."""
        return Level.ERROR if self.severe else Level.WARNING

    @property
    def pair(self) -> frozenset[str]:
        """The two substances."""
        return frozenset((self.one.substance, self.other.substance))

    @property
    def holders(self) -> frozenset[str]:
        """The two things that bring them: mixtures, or the substances themselves."""
        return frozenset((self.one.by, self.other.by))


@dataclass(frozen=True, slots=True)
class _Judged:
    """What the rows have judged: pairs of substances, and pairs of things of which little meets."""

    pairs: set[frozenset[str]]
    small: set[frozenset[str]]


def meeting(lab: Lab, names: Iterable[str], amounts: Amounts | None = None) -> Meeting | None:
    """The gravest of `meetings_among`, None where nothing is kept apart."""
    found = tuple(meetings_among(lab, names, amounts))
    return next((one for one in found if one.severe), found[0] if found else None)


def meetings_among(lab: Lab, names: Iterable[str], amounts: Amounts | None = None) -> Iterator[Meeting]:
    """Every pair of substances among some things that never meets, the lab's rows before the chart.

    `amounts` says how much there is of a thing; a row with a `small` amount does not count where the lesser
    of the two is below it, and what has no amount always counts. What is in one mixture is that mixture's
    own affair. A pair that a row has judged is not looked up on the chart again,
    and where it let small amounts of two things pass, the chart is asked for what is severe alone.
    """
    things = tuple(dict.fromkeys(names))
    judged = _Judged(set(), set())
    yield from _by_rows(lab, things, amounts or {}, judged)
    yield from _by_chart(lab, things, judged)


def _by_rows(lab: Lab, things: tuple[str, ...], amounts: Amounts, judged: _Judged) -> Iterator[Meeting]:
    brought = [one for name in things for one in brought_by(lab, name)] if lab.keep_apart else []
    for row in lab.keep_apart:
        for one, other in combinations([b for b in brought if b.group in row.groups], 2):
            pair = frozenset((one.substance, other.substance))
            if one.group == other.group or one.by == other.by or len(pair) < 2 or pair in judged.pairs:
                continue
            judged.pairs.add(pair)
            if is_small(lab, row, (one.by, other.by), amounts):
                judged.small.add(frozenset((one.by, other.by)))
            else:
                yield Meeting(one, other, str(row.because), True, row)


def is_small(lab: Lab, row: KeepApart, things: Iterable[str], amounts: Amounts) -> bool:
    """Whether the lesser of two things lies below the amount from which a row counts."""
    if row.small is None:
        return False
    stated = [_as_amount_of(lab, thing, amounts.get(thing), row.small.below) for thing in things]
    return any(amount is not None and amount.si < row.small.below.si for amount in stated)


def _as_amount_of(lab: Lab, thing: str, amount: Quantity | None, limit: Quantity) -> Quantity | None:
    """An amount in the dimension of a limit, through the thing's density where needed; None where unknown."""
    if amount is None or amount.dimension == limit.dimension:
        return amount
    noun = lab.substances.get(thing) or lab.mixtures.get(thing)  # type: ignore[call-overload]
    density: Quantity | None = noun.density if noun else None
    kinds = (amount.dimension.name, limit.dimension.name)
    if density is None or set(kinds) != {"volume", "mass"}:
        return None
    mass = kinds[0] == "mass"
    return Quantity(amount.si / density.si, "m3") if mass else Quantity(amount.si * density.si, "kg")


def _by_chart(lab: Lab, things: tuple[str, ...], judged: _Judged) -> Iterator[Meeting]:
    """Pairs on the chart; one problem a pair of substances, with all that the chart says of their groups."""
    placed = [
        Brought(str(group), substance, by)
        for thing in things
        for by in behind(lab, thing)
        for substance, group in placed_in(lab, by)
    ]
    told: dict[frozenset[str], tuple[Brought, Brought, list[ChartMeeting]]] = {}
    for one, other in combinations(placed, 2):
        pair = frozenset((one.substance, other.substance))
        if one.by == other.by or len(pair) < 2 or pair in judged.pairs:
            continue
        found = on_chart(int(one.group), int(other.group))
        if found.reacts and _counts(lab, one, other, found):
            told.setdefault(pair, (one, other, []))[2].append(found)
    for pair, (one, other, cells) in told.items():
        severe = any(_is_severe(cell) for cell in cells)
        # Heat and solution are over where one of the two is made of both already.
        if not severe and (
            frozenset((one.by, other.by)) in judged.small
            or any(pair <= {*substances_in(lab, by)} for by in (one.by, other.by))
        ):
            continue
        yield Meeting(one, other, _said(cells), severe)


def _is_severe(found: ChartMeeting) -> bool:
    return found.certain and bool(SEVERE & set(found.codes))


def _counts(lab: Lab, one: Brought, other: Brought, found: ChartMeeting) -> bool:
    """Water counts only where it makes more than heat or a solution, and what is made with it has met it."""
    if str(WATER_GROUP) not in (one.group, other.group):
        return True
    holders = [each.by for each in (one, other) if each.group != str(WATER_GROUP)]
    return _is_severe(found) and not any(has_water(lab, by) for by in holders)


def _said(cells: list[ChartMeeting]) -> str:
    words = ", ".join(dict.fromkeys(word for cell in cells for word in cell.words))
    doubt = "" if all(cell.certain for cell in cells) else "; a doubtful cell, look at the chart itself"
    return f"{words} (chart {CHART}{doubt})"
