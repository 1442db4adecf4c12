"""The walk: carry part, person, places and clock through every path."""

from generator.walk.ground import Ground
from generator.walk.state import START, Atom, Clock, State
from generator.walk.timeline import Stretch, Totals, stretches, totals
from generator.walk.walk import MOST_MOMENTS, MOST_STEPS, End, Moment, Rest, Walk, walk_through
from generator.walk.wearing import worn_as

__all__ = [
    "MOST_MOMENTS",
    "MOST_STEPS",
    "START",
    "Atom",
    "Clock",
    "End",
    "Ground",
    "Moment",
    "Rest",
    "State",
    "Stretch",
    "Totals",
    "Walk",
    "stretches",
    "totals",
    "walk_through",
    "worn_as",
]
