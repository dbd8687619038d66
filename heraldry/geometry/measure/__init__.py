"""What an outline or a path measures, in closed form on its true curves: millimetres and square millimetres.

===========================  =====================================================================
``area``, ``centroid``       Green's theorem: exact for lines, arcs and cubics
``bounds``                   true extrema, not those of control points
``perimeter``, ``length``    arcs exactly, cubics to 1e-9 mm
``ArcLength``                a path by its length: point, tangent, normal, and back to the length
===========================  =====================================================================
"""

from heraldry.geometry.measure.along import ArcLength, Stations
from heraldry.geometry.measure.areas import area, centroid, ring_areas
from heraldry.geometry.measure.extent import bounds
from heraldry.geometry.measure.lengths import length, perimeter

__all__ = ["ArcLength", "Stations", "area", "bounds", "centroid", "length", "perimeter", "ring_areas"]
