"""A set line is laid: straight, round a circle, along any path; and fitted to a width or an angle.

==============  ====================================================================
``block``       many letters held as one outline
``laid``        what laying gives: letters in place, and what has to be said about them
``whites``      the white between neighbouring letters, and the tracking that keeps it
``tracks``      base lines by their arc length: a circle, a path
``placing``     letters put on a track: turned, upright or bent
``lay``         ``straight``, ``on_circle``, ``along``
``base_lines``  paths to go along: an arc through three points, a shape's edge, lifted
``fit``         tracking that fills a width or an angle
==============  ====================================================================

Places are told by ink: a line that starts at a point has the ink of its first letter there, not its bearing.
"""

from heraldry.lettering.setting.block import Block
from heraldry.lettering.setting.fit import Fitted, fit_to_angle, fit_to_width
from heraldry.lettering.setting.laid import InkAngles, Laid, ink_angles
from heraldry.lettering.setting.lay import along, on_circle, straight
from heraldry.lettering.setting.whites import whites

__all__ = [
    "Block",
    "Fitted",
    "InkAngles",
    "Laid",
    "along",
    "fit_to_angle",
    "fit_to_width",
    "ink_angles",
    "on_circle",
    "straight",
    "whites",
]
