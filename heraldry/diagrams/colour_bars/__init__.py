"""The colour-bar identification plate that North American cars wore from 1967 to 1977.

``code`` says which colours its thirteen lines have, ``plate`` draws them at a scale.
"""

from heraldry.diagrams.colour_bars.code import EQUIPMENT, Bar, Stripe, bars, check_digit, is_worn_in
from heraldry.diagrams.colour_bars.plate import PlateArt, draw_plate

__all__ = ["EQUIPMENT", "Bar", "PlateArt", "Stripe", "bars", "check_digit", "draw_plate", "is_worn_in"]
