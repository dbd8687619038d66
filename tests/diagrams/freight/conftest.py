"""An invented 50-ton box car of April 1957, to be altered at will."""

from fractions import Fraction

import pytest

from heraldry.diagrams.freight import Dimension, FreightCar, ReportingMark, StencilDate, Weighing

BUILT = StencilDate(1957, 4)


@pytest.fixture
def car():
    """Builds the car, with some of its data exchanged."""

    def build(**changed) -> FreightCar:
        data = {
            "mark": ReportingMark("UMGR"),
            "number": "0301",
            "built": BUILT,
            "axle": "D",
            "weighings": (Weighing(date=BUILT, light_weight_lb=45_000),),
            "cubic_feet": 3898,
            "designation": "XM",
            "dimensions": (Dimension("IL", Fraction(486)), Dimension("IW", Fraction(221, 2))),
        }
        return FreightCar(**(data | changed))

    return build
