"""What is seen from the line: pines, mountains, water, the sun, a star, a compass rose."""

from __future__ import annotations

from heraldry.ideas.eras import EARLY, LATE, OLD
from heraldry.ideas.fields.made import Field, Made
from heraldry.ideas.fields.room import Room
from heraldry.ideas.kit import Kit
from heraldry.ideas.sketch import Part, at, one, share

CREST, WAVE, TROUGH, SHORE = 1.2, 1.4, 1.7, 1.5
"""Waves in fine lines: how high they swing, how thick they are, the white between rows, and that over them."""
WATER = 2 * WAVE + TROUGH + CREST
"""How deep two rows are, in fine lines."""
LOWEST_PEAKS, SMALLEST_SUN = 0.42, 0.36
"""In the width of the field: lower mountains and smaller suns have no room for water under them."""


def star(_kit: Kit, room: Room) -> Made:
    """A star of five points; its middle stands a little low, so that it looks level."""
    radius = min(room.width, room.height) / 2 * (0.9 if room.is_round else 0.98)
    return Made(
        one("star", room.ink, room.over, star=5, radius=share(radius), centre=at(room.x, room.y - radius * 0.05)),
        "star",
    )


def compass(_kit: Kit, room: Room) -> Made:
    """A compass rose; the waist is stout enough to be printed."""
    radius = min(room.width, room.height) / 2 * 0.95
    keys = {"compass_rose": share(radius), "points": 8, "waist": share(radius * 0.2), "line": "fine * 0.5"}
    return Made(one("rose", room.ink, room.over, **keys, centre=at(room.x, room.y)), "rose")


def pines(_kit: Kit, room: Room) -> Made:
    """Three pines, the tallest in the middle."""
    _, tall = room.fitting(1.05, 0.92)
    keys = {"pine": share(tall), "count": 3, "tiers": 4, "width": share(tall * 0.5)}
    return Made(one("pines", room.ink, room.over, **keys, centre=at(room.x, room.y - tall / 2)), "pines")


def pine(_kit: Kit, room: Room) -> Made:
    """One pine."""
    _, tall = room.fitting(1.7, 0.95)
    keys = {"pine": share(tall), "width": share(tall * 0.56), "tiers": 4}
    return Made(one("pine", room.ink, room.over, **keys, centre=at(room.x, room.y - tall / 2)), "pine")


def _range(wide: float, tall: float) -> dict[str, object]:
    """The keys of three mountains without snow, whose points would be too fine to print at these sizes."""
    return {"mountains": share(wide), "height": share(tall), "count": 3, "snow": 0, "line": "fine"}


def _water(room: Room, wide: float, shore: float) -> Part:
    """Two rows of waves under a shore, long and flat enough to stay apart from it and from each other."""
    return one(
        "water",
        room.ink,
        room.over,
        waves=share(wide),
        rows=2,
        count=3,
        height=f"fine * {CREST:g}",
        width=f"fine * {WAVE:g}",
        gap=f"fine * {TROUGH:g}",
        centre=[share(room.x), f"{share(shore)} - fine * {SHORE + WATER / 2:g}"],
    )


def mountains(_kit: Kit, room: Room) -> Made:
    """Three mountains."""
    wide, tall = room.fitting(0.55, 0.92)
    keys = _range(wide, tall)
    return Made(one("mountains", room.ink, room.over, **keys, centre=at(room.x, room.y - tall * 0.46)), "mountains")


def mountains_and_water(kit: Kit, room: Room) -> Made | None:
    """Mountains over two rows of waves."""
    wide, tall = room.fitting(0.74, 0.94)
    peaks = tall - (SHORE + WATER) * kit.fine
    if peaks < wide * LOWEST_PEAKS:
        return None
    shore = room.y + tall / 2 - peaks
    upper = one("mountains", room.ink, room.over, **_range(wide, peaks), centre=at(room.x, shore))
    return Made(upper + _water(room, wide * 0.8, shore), "mountains")


def sunrise_and_water(kit: Kit, room: Room) -> Made | None:
    """Half a sun over two rows of waves."""
    wide, tall = room.fitting(0.78, 0.95)
    radius = min(wide / 2, tall - (SHORE + WATER) * kit.fine)
    if radius < wide * SMALLEST_SUN:
        return None
    horizon = room.y + (radius + (SHORE + WATER) * kit.fine) / 2 - radius
    sun = one(
        "sun",
        room.ink,
        room.over,
        sunrise=share(radius),
        disc=share(radius * 0.46),
        count=9,
        gap="fine * 1.2",
        short=0.78,
        centre=at(room.x, horizon),
    )
    return Made(sun + _water(room, radius * 1.72, horizon), "sun")


FIELDS = (
    Field("star", "a star", star),
    Field("compass", "a compass rose", compass, EARLY),
    Field("pines", "pines", pines),
    Field("pine", "a pine", pine),
    Field("mountains", "mountains", mountains),
    Field("mountains and water", "mountains, water", mountains_and_water, OLD | LATE),
    Field("sunrise", "sunrise", sunrise_and_water, EARLY),
)
