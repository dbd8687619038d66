"""The treatments of the sign trade: what is done to letters once they are laid.

Each is a pure function on a clean outline, millimetres in, a clean outline out; it knows nothing of alphabets.

============  ===========================================================================================
``lines``     letters drawn as a line, a second line round them, a clear margin round them
``crotches``  letters made smaller all round, their crotches sharp
``inline``    a thin line let into each stroke
``shades``    drop shade, block shade at any angle, block shade split into two inks
``bands``     letters cut out of a band, a stripe through them or behind them
``sweep``     what a block shade is made of: the faces that an outline leaves behind where it is moved
``strokes``   how thick the strokes of letters are
============  ===========================================================================================
"""

from heraldry.lettering.treatments.bands import in_band, stripe_behind, stripe_through
from heraldry.lettering.treatments.inline import inline, inline_line
from heraldry.lettering.treatments.lines import double_outline, halo, outer_line, outline
from heraldry.lettering.treatments.shades import SplitShade, block_shade, drop_shade, split_shade
from heraldry.lettering.treatments.sweep import swept

__all__ = [
    "SplitShade",
    "block_shade",
    "double_outline",
    "drop_shade",
    "halo",
    "in_band",
    "inline",
    "inline_line",
    "outer_line",
    "outline",
    "split_shade",
    "stripe_behind",
    "stripe_through",
    "swept",
]
