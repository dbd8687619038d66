"""Road numbers: one of them, a series of them, or a table with a row a car.

Numbers are text, for a car may carry leading zeros.
"""

from heraldry.diagrams.numbers.road_number import NORTH_AMERICAN_DIGITS, road_number
from heraldry.diagrams.numbers.series import parse_series
from heraldry.diagrams.numbers.series_file import SeriesRow, SeriesTable, read_series

__all__ = ["NORTH_AMERICAN_DIGITS", "SeriesRow", "SeriesTable", "parse_series", "read_series", "road_number"]
