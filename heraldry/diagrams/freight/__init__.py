"""North American freight cars: what is stencilled on a car, in the year that it is shown in.

=================  ==========================================================================
``reporting_mark`` two to four letters, and whom the last of them belongs to
``journals``       the weight that axles may bring on the rail, by size and year
``car``            a car as its owner knows it: dates, weighings, dimensions, shop records
``weights``        what its weight lines say in a year, and what does not add up
``years``          which line is carried in which years, and how high its letters are
``service_marks``  the black panels of shop stencils, and the wheel-inspection dot
``data_block``     the lines themselves, with full-size heights
``findings``       what does not add up
=================  ==========================================================================

Pounds and inches, as on the cars; heights are full size.
"""

from heraldry.diagrams.freight.car import Dimension, FreightCar, ServiceRecord, StencilDate, Weighing
from heraldry.diagrams.freight.data_block import DataLine, data_block, end_block
from heraldry.diagrams.freight.findings import car_findings, line_findings
from heraldry.diagrams.freight.reporting_mark import ReportingMark
from heraldry.diagrams.freight.service_marks import StencilPanel, WheelDot, stencil_panels, wheel_dot
from heraldry.diagrams.freight.weights import StencilledWeights, weights_of

__all__ = [
    "DataLine",
    "Dimension",
    "FreightCar",
    "ReportingMark",
    "ServiceRecord",
    "StencilDate",
    "StencilPanel",
    "StencilledWeights",
    "Weighing",
    "WheelDot",
    "car_findings",
    "data_block",
    "end_block",
    "line_findings",
    "stencil_panels",
    "weights_of",
    "wheel_dot",
]
