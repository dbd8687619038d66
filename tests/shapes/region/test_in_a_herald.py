"""A map in a herald file, as a modeller writes it: neighbours, waters, a route with stops, rings and rays, frames."""

from __future__ import annotations

import json

import pytest
import shapely

import heraldry
from heraldry.geometry import boolean
from heraldry.shapes.region.examples import WATERS

HERALD = """
kind  = "herald"
scale = "HO"
width = "30 mm"

[ink.black]
colour = "#000000"

[shape.disc]
circle = "15 mm"

[shape.field]
circle = "14 mm"

[shape.land]
region = ["US-VT"]
height = "18 mm"
place.town = { lat = 44.0, lon = -72.7 }
place.port = { lat = 44.48, lon = -73.21 }

[shape.around]
neighbours = "land"
borders    = "0.25 mm"

[shape.river]
map_lines = "waters.geojson"
on     = "land"
where  = "kind = river"
width  = "0.4 mm"
smooth = true

[shape.lake]
map_areas = "waters.geojson"
on        = "land"
feature   = "the example's lake"

[shape.line]
route  = ["land.port", "land.town", { lat = 43.0, lon = -72.5, on = "land" }]
width  = "0.5 mm"
stops  = "1.2 mm"
smooth = true

[shape.town]
rings  = "2.4 mm"
width  = "0.25 mm"
gap    = "0.45 mm"
count  = 2
centre = "land.town"

[shape.beams]
rays   = 16
inner  = "2.8 mm"
outer  = "4 mm"
centre = "land.town"

[shape.frame]
follow = "land"
by     = "1 mm"
width  = "0.5 mm"

[plate.black]
ink = "black"
art = "ART"
"""


@pytest.fixture
def drawn(tmp_path):
    (tmp_path / "waters.geojson").write_bytes(WATERS.read_bytes())

    def draw(art, more=""):
        path = tmp_path / "map.toml"
        path.write_text(HERALD.replace("ART", art) + more)
        (artwork,) = heraldry.draw(heraldry.load(path))
        (plate,) = artwork.plates
        return boolean.to_polygon(plate.outline)

    return draw


def test_the_land_is_clipped_by_a_frame_and_its_neighbours_fill_it(drawn):
    field, land = drawn("field"), drawn("land & field")
    around = drawn("(around - offset(land, 0.3 mm)) & field")
    assert field.buffer(0.002).contains(shapely.union(land, around))
    assert land.distance(around) == pytest.approx(0.3, abs=0.001)
    assert around.area > 0.3 * field.area


def test_waters_are_cut_out_of_the_land(drawn):
    land, wet = drawn("land"), drawn("land - river - lake")
    assert 0.8 * land.area < wet.area < 0.98 * land.area


def test_a_route_has_its_stops_and_a_town_its_rings_and_rays(drawn):
    line, town, beams = drawn("line"), drawn("town"), drawn("beams")
    middle = town.centroid
    assert line.contains(middle.buffer(0.59))
    assert town.bounds[2] - town.bounds[0] == pytest.approx(4.8, abs=0.001)
    assert len(shapely.get_parts(town)) == 2
    assert beams.centroid.distance(middle) < 0.001
    assert len(shapely.get_parts(beams)) == 16


def test_a_route_through_towns_in_degrees_is_the_same_line(drawn):
    more = """
[shape.in_degrees]
map_route = [[-73.21, 44.48], [-72.7, 44.0], [-72.5, 43.0]]
on     = "land"
width  = "0.5 mm"
stops  = "1.2 mm"
smooth = true
"""
    assert shapely.symmetric_difference(drawn("in_degrees", more), drawn("line")).area < 1e-9


def test_a_frame_follows_the_land(drawn):
    assert drawn("frame").distance(drawn("land")) == pytest.approx(1.0, abs=0.03)


def test_a_place_holds_the_land_in_the_frame(drawn):
    more = '\n[shape.near]\nregion = ["US-VT"]\nheight = "60 mm"\nheld_by = "town"\n'
    more += "place.town = { lat = 44.0, lon = -72.7 }\n"
    assert drawn("near & field", more).area > 0.9 * drawn("field").area


def test_faults_of_maps_are_told_with_their_line(tmp_path):
    (tmp_path / "waters.geojson").write_text(json.dumps({"type": "FeatureCollection", "features": []}))
    path = tmp_path / "map.toml"
    path.write_text(HERALD.replace("ART", "land - river"))
    with pytest.raises(heraldry.errors.HeraldryError, match=r"map.toml:\d+: .*waters.geojson"):
        heraldry.draw(heraldry.load(path))
