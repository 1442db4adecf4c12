"""Quantities, windows and the table of units; nothing here asks a unit library to read an author's text."""

from generator.units.calendar import read_clock, read_date
from generator.units.dimension import Dimension
from generator.units.errors import DimensionError, UnitsError
from generator.units.quantity import Clock, Counted, Quantity, Tolerance, Window
from generator.units.reading import (
    read_counted,
    read_number,
    read_numbers_window,
    read_quantity,
    read_tolerance,
    read_unit,
    read_window,
)
from generator.units.showing import (
    show_counted,
    show_number,
    show_quantity,
    show_tolerance,
    show_unit,
    show_window,
    write_quantity,
)
from generator.units.spelling import find_unit, nearest_unit, normalise
from generator.units.table import UNITS, Unit

__all__ = [
    "UNITS",
    "Clock",
    "Counted",
    "Dimension",
    "DimensionError",
    "Quantity",
    "Tolerance",
    "Unit",
    "UnitsError",
    "Window",
    "find_unit",
    "nearest_unit",
    "normalise",
    "read_clock",
    "read_counted",
    "read_date",
    "read_number",
    "read_numbers_window",
    "read_quantity",
    "read_tolerance",
    "read_unit",
    "read_window",
    "show_counted",
    "show_number",
    "show_quantity",
    "show_tolerance",
    "show_unit",
    "show_window",
    "write_quantity",
]
