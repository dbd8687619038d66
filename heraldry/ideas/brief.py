"""What is asked for on a page of ideas, as far as it is known; the rest is chosen by the seed."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.describe.description import Description
from heraldry.errors import DescriptionError, ExpressionError, HeraldryError
from heraldry.ideas.eras import Era, era_named
from heraldry.ideas.words import Words, words_of
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes.region.names import by_code, find, folded
from heraldry.units import Ruler, parse_scale

ROAD_FILE = "road.toml"
USUAL_WIDTH, USUAL_SCALE = "20 mm", "HO"
WIDTHS_MM = (6.0, 500.0)
"""Smaller heralds have no lettering that can be read; larger ones are no decals."""


@dataclass(frozen=True)
class Brief:
    """A railroad, its land, its colours, its era, the herald's size, and the seed of all chance."""

    words: Words
    region: tuple[str, ...] = ()
    colours: tuple[str, ...] = ()
    on: str = ""
    era: Era | None = None
    seed: int = 1
    width: str = USUAL_WIDTH
    width_mm: float = 20.0
    scale: str = USUAL_SCALE
    road: Description | None = None
    road_file: str = ROAD_FILE
    """How the herald's file names its road."""


def brief_of(
    name: str | None = None,
    initials: str | None = None,
    region: tuple[str, ...] = (),
    colours: tuple[str, ...] = (),
    on: str = "",
    era: str | None = None,
    seed: int = 1,
    width: str = USUAL_WIDTH,
    scale: str = USUAL_SCALE,
    road: Description | None = None,
    road_file: str = ROAD_FILE,
) -> Brief:
    """A brief from what a user says; what a road file says of the name holds where nothing else is said.

    Raises HeraldryError for what cannot be meant: no name, an unknown era, land or scale, no width.
    """
    if road is not None and road.kind != "road":
        what = f"ideas want a road file, the file is a {road.kind}"
        raise DescriptionError([road.fault(("kind",), what, "", 'name a file with kind = "road"')])
    identity = road.identity if road else None
    called = name or (identity.name if identity else None)
    if not called:
        raise HeraldryError("ideas want the name of a railroad, or a road file that says it")
    known = initials or (identity.initials if identity and not name else None)
    words = words_of(called, known, identity.founded if identity else None)
    return Brief(
        words,
        checked_region(region) or region_in(words),
        colours,
        on,
        era_named(era) if era else None,
        seed,
        width,
        _width_mm(width, scale),
        scale,
        road,
        road_file,
    )


def _width_mm(width: str, scale: str) -> float:
    """The finished width; raises HeraldryError for one that is no decal's."""
    ruler = Ruler("mm", parse_scale(scale))
    try:
        width_mm = Yardstick({}, ruler).length_mm(width)
    except ExpressionError as error:
        raise HeraldryError(f"the width '{width}' is no length: {error}") from None
    low, high = WIDTHS_MM
    if not low <= width_mm <= high:
        raise HeraldryError(f"a herald is {low:g} to {high:g} mm wide, found {width} which is {width_mm:g} mm")
    return width_mm


def checked_region(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Codes of lands that a map has; raises HeraldryError for another, with what may be meant."""
    for code in codes:
        if code.upper() not in by_code():
            like = ", ".join(f"{area.code} ({area.name})" for area in find(code)[:3])
            raise HeraldryError(f"no land has the code '{code}'" + (f", did you mean {like}?" if like else ""))
    return tuple(code.upper() for code in codes)


def region_in(words: Words) -> tuple[str, ...]:
    """A state or country that the railroad is named after, if one is."""
    name = f" {folded(words.body)} "
    found = [area for area in by_code().values() if area.kind != "county" and f" {folded(area.name)} " in name]
    return (max(found, key=lambda area: (len(area.name), area.code)).code,) if found else ()
