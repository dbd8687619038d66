"""Monograms: the initials of a railroad as one sign.

================  ==================================================================================
``hand``          letters of one stem at every size
``clash``         where a letter may stand beside another, told roughly for a field of places
``cleanness``     how cleanly letters part where they cross
``crossings``     letters laid over and under one another, with gaps
``interlacing``   the places in which letters cross most cleanly
``arrangements``  the styles: interlaced, stacked, one letter large, in a row
``frames``        what encloses them: a ring, a diamond
``compose``       style and frame brought to one height
================  ==================================================================================
"""

from heraldry.lettering.monogram.arrangements import STYLES, Style
from heraldry.lettering.monogram.compose import Monogram, monogram
from heraldry.lettering.monogram.crossings import interlaced
from heraldry.lettering.monogram.frames import FRAMES, FrameName

__all__ = ["FRAMES", "STYLES", "FrameName", "Monogram", "Style", "interlaced", "monogram"]
