"""Lines of lettering stacked, justified, fitted into a box, and composed of more than plain letters.

============  ================================================================================
``manner``    how a line is composed: large initials, fractions, superior letters
``runs``      a text parted into runs that are set alike
``built``     fractions and superior letters as one piece each
``composed``  the runs of a line on one base line
``justify``   a line brought to a width by tracking, then by the width of its letters
``stacking``  lines one over another, letters one under another
``box``       lettering as large as a box allows, never below a floor
============  ================================================================================
"""

from heraldry.lettering.stack.box import Boxed, fit_into
from heraldry.lettering.stack.composed import composed
from heraldry.lettering.stack.justify import Justified, justified
from heraldry.lettering.stack.manner import PLAIN, Fractions, Level, Manner
from heraldry.lettering.stack.stacking import Align, Stacked, set_stack, stacked, upright_stack

__all__ = [
    "PLAIN",
    "Align",
    "Boxed",
    "Fractions",
    "Justified",
    "Level",
    "Manner",
    "Stacked",
    "composed",
    "fit_into",
    "justified",
    "set_stack",
    "stacked",
    "upright_stack",
]
