"""What was printed of a procedure, and what the print of everything is put together from."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from generator.outputs.site import SiteFile
from generator.problems import Problem
from generator.views.card import CardView
from generator.views.day_plan import DayPlanView

if TYPE_CHECKING:
    from generator.pipeline.cards import SetCard


@dataclass(frozen=True)
class Sets:
    """What the print of everything is put together from, as the chapters bring it."""

    cards: list["SetCard"] = field(default_factory=list)
    signs: list[CardView] = field(default_factory=list)
    plans: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class Printed:
    """Files, what could not be printed, and the day plans by procedure."""

    files: tuple[SiteFile, ...] = ()
    problems: tuple[Problem, ...] = ()
    days: Mapping[str, tuple[DayPlanView, ...]] = field(default_factory=dict)

    @property
    def paths(self) -> frozenset[str]:
        """Where the files stand."""
        return frozenset(file.path for file in self.files)
