"""What the railroad is made of: wheel, rail, track to the horizon, crossed ties, an arrow."""

from __future__ import annotations

from heraldry.ideas.eras import EARLY, LATE, OLD
from heraldry.ideas.fields.made import Field, Made
from heraldry.ideas.fields.room import Room
from heraldry.ideas.kit import Kit
from heraldry.ideas.sketch import at, one, share

REACH = 0.8
"""The share of the way to the horizon that a track is drawn: farther ties would clot."""


def wheel(_kit: Kit, room: Room) -> Made:
    """A spoked driving wheel with its counterweight."""
    radius = min(room.width, room.height) / 2 * (0.9 if room.is_round else 0.98)
    keys = {
        "wheel": share(radius),
        "spokes": 10,
        "rim": share(radius * 0.15),
        "hub": share(radius * 0.26),
        "bore": share(radius * 0.09),
        "spoke": share(radius * 0.07),
        "weight": 84,
    }
    return Made(one("wheel", room.ink, room.over, **keys, centre=at(room.x, room.y)), "wheel")


def rail(_kit: Kit, room: Room) -> Made:
    """A rail cut across."""
    _, tall = room.fitting(1.16, 0.9)
    return Made(one("rail", room.ink, room.over, rail_section=share(tall), centre=at(room.x, room.y)), "rail")


def track(_kit: Kit, room: Room) -> Made:
    """A track that runs off to the horizon."""
    wide, tall = room.fitting(0.96, 0.96)
    keys = {
        "vanishing_track": share(wide),
        "height": share(tall / REACH),
        "reach": REACH,
        "count": 9,
        "tie": 0.42,
        "gauge": share(wide * 0.6),
        "rail": share(wide * 0.075),
    }
    return Made(one("track", room.ink, room.over, **keys, centre=at(room.x, room.y - tall / 2)), "track")


def arrow(_kit: Kit, room: Room) -> Made:
    """An arrow that goes both ways."""
    wide, tall = room.fitting(0.42, 0.98)
    keys = {
        "arrow": share(wide),
        "width": share(tall * 0.36),
        "head": share(tall),
        "point": share(tall * 0.62),
        "barb": share(tall * 0.1),
        "double": True,
    }
    return Made(one("arrow", room.ink, room.over, **keys, centre=at(room.x, room.y)), "arrow")


FIELDS = (
    Field("wheel", "a driving wheel", wheel, EARLY),
    Field("rail", "a rail", rail, OLD | {"1970s"}),
    Field("track", "a track", track, EARLY | LATE),
    Field("arrow", "an arrow", arrow, LATE),
)
