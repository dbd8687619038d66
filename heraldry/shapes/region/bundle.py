"""Make the bundled map files from the two public-domain sources, as published in TopoJSON form.

    python -m heraldry.shapes.region.bundle NODE_MODULES [DATA]

``NODE_MODULES`` holds the packages ``us-atlas`` and ``world-atlas`` (see data/SOURCES.txt for versions);
``DATA`` is the folder to write to, by default the one in this package. ISO 3166-1 letters come from the
package ``pycountry``, which nothing but this module needs. The same sources give the same bytes.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

import numpy as np

from heraldry.shapes.region.names import NAMES_FILE, AreaName, write_names
from heraldry.shapes.region.packed import Topology

Json = Mapping[str, Any]

STATE_FILE, COUNTY_OBJECT, STATE_OBJECT = "us-atlas/counties-10m.json", "counties", "states"
COUNTRY_FILE, COUNTRY_OBJECT = "world-atlas/countries-10m.json", "countries"

# Census state numbers with their ISO 3166-2:US letters: the postal letters (FIPS 5-2).
STATE_LETTERS_TEXT = """
01 AL  02 AK  04 AZ  05 AR  06 CA  08 CO  09 CT  10 DE  11 DC  12 FL  13 GA  15 HI  16 ID  17 IL  18 IN  19 IA
20 KS  21 KY  22 LA  23 ME  24 MD  25 MA  26 MI  27 MN  28 MS  29 MO  30 MT  31 NE  32 NV  33 NH  34 NJ  35 NM
36 NY  37 NC  38 ND  39 OH  40 OK  41 OR  42 PA  44 RI  45 SC  46 SD  47 TN  48 TX  49 UT  50 VT  51 VA  53 WA
54 WV  55 WI  56 WY  60 AS  66 GU  69 MP  72 PR  78 VI
"""
STATE_LETTERS = dict(zip(STATE_LETTERS_TEXT.split()[::2], STATE_LETTERS_TEXT.split()[1::2], strict=True))

# ISO 3166-1 turns some names about a comma and knows no common form of them; these are the plain ones.
PLAIN_NAMES = {
    "COD": "Democratic Republic of the Congo",
    "FSM": "Micronesia",
    "PSE": "Palestine",
    "SHN": "Saint Helena, Ascension and Tristan da Cunha",
    "VGB": "British Virgin Islands",
    "VIR": "United States Virgin Islands",
}

# Areas of the country map that ISO 3166-1 gives no letters: their own names, in full, are their codes,
# but for Kosovo, for which the user-assigned letters XK are in general use.
UNLETTERED = {
    "Kosovo": ("XK", "Kosovo"),
    "N. Cyprus": ("NORTHERN-CYPRUS", "Northern Cyprus"),
    "Indian Ocean Ter.": ("INDIAN-OCEAN-TERRITORIES", "Indian Ocean Territories"),
    "Coral Sea Is.": ("CORAL-SEA-ISLANDS", "Coral Sea Islands"),
    "Spratly Is.": ("SPRATLY-ISLANDS", "Spratly Islands"),
    "Clipperton I.": ("CLIPPERTON-ISLAND", "Clipperton Island"),
    "Cyprus U.N. Buffer Zone": ("CYPRUS-BUFFER-ZONE", "Cyprus Buffer Zone"),
    "USNB Guantanamo Bay": ("GUANTANAMO-BAY", "Guantanamo Bay"),
    "Ashmore and Cartier Is.": ("ASHMORE-AND-CARTIER-ISLANDS", "Ashmore and Cartier Islands"),
}

# A ring of fewer points than this (the first one again at the end) has been crushed by the map's grid.
RING_POINTS_MIN = 4


def bundle(modules: Path, data: Path) -> None:
    """Write the two topology files and the index of names."""
    united_states = json.loads((modules / STATE_FILE).read_bytes())
    world = json.loads((modules / COUNTRY_FILE).read_bytes())
    objects = united_states["objects"]
    states = [(_state_name(area), area) for area in _areas(objects[STATE_OBJECT])]
    counties = [(_county_name(area), area) for area in _areas(objects[COUNTY_OBJECT])]
    countries = [(_country_name(area), area) for area in _areas(world["objects"][COUNTRY_OBJECT])]
    names = [
        *_write_topology(united_states, states + counties, data / "united_states.topology.xz"),
        *_write_topology(world, countries, data / "world.topology.xz"),
    ]
    write_names(names, data / NAMES_FILE)


def _areas(collection: Json) -> Iterator[Json]:
    yield from sorted(collection["geometries"], key=lambda area: (area.get("id") or "", _map_name(area)))


def _map_name(area: Json) -> str:
    return str(area["properties"]["name"])


def _state_name(area: Json) -> AreaName:
    return AreaName(f"US-{STATE_LETTERS[area['id']]}", "state", _map_name(area), "United States")


def _county_name(area: Json) -> AreaName:
    state = f"US-{STATE_LETTERS[area['id'][:2]]}"
    return AreaName(area["id"], "county", _map_name(area), state)


def _country_name(area: Json) -> AreaName:
    import pycountry  # imported where used: only bundling needs it

    map_name = _map_name(area)
    if map_name in UNLETTERED or not area.get("id"):
        code, name = UNLETTERED.get(map_name, (map_name.upper().replace(" ", "-"), map_name))
        return AreaName(code, "country", name, "no ISO 3166-1 letters")
    country: Any = pycountry.countries.get(numeric=area["id"])
    short = getattr(country, "common_name", country.name)
    name = PLAIN_NAMES.get(country.alpha_3, short)
    return AreaName(country.alpha_2, "country", name, country.alpha_3, () if map_name == name else (map_name,))


def _write_topology(source: Json, named: Iterable[tuple[AreaName, Json]], path: Path) -> list[AreaName]:
    """Write the areas that have land left on the map's grid; return their names."""
    sizes = [len(arc) for arc in source["arcs"]]
    kept = []
    for name, area in named:
        polygons = [area["arcs"]] if area["type"] == "Polygon" else area["arcs"]
        whole = [rings for rings in (_whole_rings(polygon, sizes) for polygon in polygons) if rings]
        if whole:
            kept.append((name, whole))
    rings = [ring for _, polygons in kept for polygon in polygons for ring in polygon]
    steps = np.concatenate([np.array(arc, dtype=np.int64) for arc in source["arcs"]])
    streams = {
        "arc_sizes": _ints(sizes),
        "dx": steps[:, 0],
        "dy": steps[:, 1],
        "polygons": _ints(len(polygons) for _, polygons in kept),
        "rings": _ints(len(polygon) for _, polygons in kept for polygon in polygons),
        "refs_per_ring": _ints(len(ring) for ring in rings),
        "refs": _ints(ref for ring in rings for ref in ring),
    }
    transform = source["transform"]
    codes = tuple(name.code for name, _ in kept)
    Topology(tuple(transform["scale"]), tuple(transform["translate"]), codes, streams).write(path)
    return [name for name, _ in kept]


def _whole_rings(polygon: list[list[int]], sizes: list[int]) -> list[list[int]]:
    """The rings that still bound land; none when the outer one does not."""
    whole = [ring for ring in polygon if _point_count(ring, sizes) >= RING_POINTS_MIN]
    return whole if whole and whole[0] is polygon[0] else []


def _point_count(ring: list[int], sizes: list[int]) -> int:
    return 1 + sum(sizes[max(ref, ~ref)] - 1 for ref in ring)


def _ints(numbers: Iterable[int]) -> np.ndarray[Any, np.dtype[np.int64]]:
    return np.fromiter(numbers, dtype=np.int64)


if __name__ == "__main__":
    bundle(Path(sys.argv[1]), Path(sys.argv[2]) if len(sys.argv) > 2 else Path(__file__).parent / "data")
