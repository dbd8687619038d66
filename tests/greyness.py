"""How evenly grey a set word looks: blurred by a quarter of its cap height, by its dark and light bands."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabet import SetLine

_WORDS = """
VALLEY WESTERN SALT LAVATORY HALT TAVERN AVATAR PAVILION RAILWAY FORTY LATHE WATER YARDS TALLY KAYAK AWAY
LOYALTY VAULT TATTOO PLATO TOPAZ HAZEL MINNOW HILLTOP BRIDGE QUARRY JUNCTION COAST FERRY OTTER LAKE EAGLE RIVER
NORTH TIMBER LOGGING CANYON PRAIRIE GRANITE SUMMIT HARBOR MEADOW CEDAR POPLAR TUNNEL ORCHARD COPPER TRESTLE
WINTER VIADUCT AXLE BOXCAR CABOOSE DEPOT ENGINE FREIGHT GONDOLA HOPPER INLAND JETTY KETTLE LUMBER MILLPOND
NARROW OPEN PASSENGER QUARTZ REFRIGERATOR SIGNAL TANK UPLAND VESTIBULE WAGON YELLOW ZINC ALDER BIRCH CYPRESS
DOGWOOD ELM FIR HEMLOCK IRON JUNIPER KNOLL LARCH MAPLE NUT OAK PINE ROWAN SPRUCE TAMARACK UMBER WILLOW YEW ASH
BAY CAPE DELTA ESTUARY FALLS GORGE HOLLOW ISLAND KILN LAGOON MARSH NECK OUTLET POINT QUAY RAPIDS SOUND TARN VALE
WHARF BASIN BROOK CREEK DALE EDDY FORD GLEN HEATH INLET LANDING MOUNTAIN NOTCH ORE PASS RIDGE SHORE TRAIL UNION
VISTA WEIR BUTTE CLIFF DUNE FELL GULCH MESA PLATEAU SADDLE TERRACE AMBER BASALT CHALK DOLOMITE FLINT GARNET JADE
LIMESTONE MARBLE ONYX PYRITE RUBY SLATE TOURMALINE WOLFRAM BARLEY CLOVER FLAX HOPS MILLET OATS RYE SORGHUM
TURNIP WHEAT BEAVER CRANE DOE EGRET FALCON GROUSE HERON IBEX JAY KESTREL LYNX MARTEN NEWT OSPREY PIKE QUAIL
RAVEN STORK TROUT VIXEN WOLF APPLE ANVIL BELLOWS CHIMNEY DYNAMO FURNACE GIRDER HEARTH
"""
WORDS = _WORDS.split()
"""200 words in capitals: things of landscapes, trades and cars; those with pairs that are hard to space come first."""

BLUR_CAPS, STEP_CAPS = 0.25, 0.01
_HEIGHTS = np.linspace(0.0, 1.0, 201)


def greyness(line: SetLine) -> float:
    """How uneven a word is once it is blurred: deviation of its darkness over the mean.

    Read along the middle of the capitals, from the middle of the first letter to the middle of the last.
    """
    cap = line.cap_height_mm
    columns = np.arange(-1.0, line.advance_mm / cap + 1.0, STEP_CAPS)
    dark = darkness(line.outline, columns * cap, cap)
    kernel = _bell(np.arange(-100, 101) * STEP_CAPS)
    blurred = np.convolve(dark, kernel / kernel.sum(), "same")
    first, last = ((glyph.x_mm + glyph.advance_mm / 2) / cap for glyph in (line.glyphs[0], line.glyphs[-1]))
    read = blurred[(columns >= first) & (columns <= last)]
    return float(read.std() / read.mean())


def darkness(outline: Outline, columns: NDArray[np.float64], cap: float) -> NDArray[np.float64]:
    """How much of each upright line between base line and cap line is ink, weighed by the blur about the middle.

    An edge that is crossed on the way up counts the weight below it, against the ink where the ink begins, for it
    where the ink ends: no level is sampled, so that thin bars count for what they are.
    """
    rings = flatten(outline, 0.005 * cap)
    start = np.concatenate(rings)[:, :, None]
    end = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])[:, :, None]
    run = end[:, 0] - start[:, 0]
    crossed = (start[:, 0] <= columns) != (end[:, 0] <= columns)
    share = (columns - start[:, 0]) / np.where(run == 0.0, 1.0, run)
    heights = (start[:, 1] + share * (end[:, 1] - start[:, 1])) / cap
    return np.asarray((np.where(crossed, -np.sign(run), 0.0) * _weight_below(heights)).sum(axis=0))


def _weight_below(heights: NDArray[np.float64]) -> NDArray[np.float64]:
    """The share of the blur's weight that lies below a height: 0 at the base line, 1 at the cap line."""
    weights = np.concatenate(([0.0], np.cumsum(_bell((_HEIGHTS[1:] + _HEIGHTS[:-1]) / 2 - 0.5))))
    return np.interp(heights, _HEIGHTS, weights / weights[-1])


def _bell(off: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(np.exp(-((off / BLUR_CAPS) ** 2) / 2))
