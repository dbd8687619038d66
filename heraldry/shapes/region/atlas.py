"""The one door to the bundled maps: land by code.

States and counties of the United States come from the Census Bureau, countries from Natural Earth; see
data/SOURCES.txt.
"""

from __future__ import annotations

from functools import cache

from heraldry.errors import RegionError, nearest
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.names import DATA_DIR, AreaName, by_code, find
from heraldry.shapes.region.packed import Areas, Topology

_FILES = {
    "country": "world.topology.xz",
    "state": "united_states.topology.xz",
    "county": "united_states.topology.xz",
}

# How many areas an error offers.
OFFERS_MAX = 5


def named(code: str) -> AreaName:
    """The area of a code, capitals or not; raises RegionError that offers what the code may have meant."""
    area = by_code().get(code.strip().upper())
    if area is None:
        raise RegionError(f"no region has the code '{code}'; {_offer(code)}")
    return area


def outlines(code: str) -> Land:
    """The land of one code; raises RegionError for a code that nothing has.

    >>> outlines("US-VT").name
    'Vermont'
    """
    area = named(code)
    file = _FILES[area.kind]
    areas = _areas(file)
    return Land(area.name, areas.polygons(area.code), file, areas.grid_deg)


def is_bundled(land: Land) -> bool:
    """Whether a land comes from here, and not from a user's file."""
    return land.source in _FILES.values()


@cache
def _areas(file: str) -> Areas:
    return Areas(Topology.read(DATA_DIR / file))


def _offer(word: str) -> str:
    """What a wrong code may have meant: areas of such a name, else codes that look like it."""
    areas = find(word)[:OFFERS_MAX]
    if areas:
        return "did you mean " + ", ".join(f"'{area.code}' ({area.name}, {area.detail})" for area in areas) + "?"
    offer = nearest(word, by_code())
    if offer.startswith("known"):
        return "wanted are ISO 3166 codes such as 'IS' or 'US-VT', or five digits for a county ('33007')"
    return offer
