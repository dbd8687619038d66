"""European wagons and engines: their numbers with check digits, and the load grid."""

from heraldry.diagrams.europe.load_grid import LINE_CLASSES, LoadLimit, load_grid
from heraldry.diagrams.europe.vehicle_number import EngineNumber, WagonNumber, engine_number, wagon_number

__all__ = ["LINE_CLASSES", "EngineNumber", "LoadLimit", "WagonNumber", "engine_number", "load_grid", "wagon_number"]
