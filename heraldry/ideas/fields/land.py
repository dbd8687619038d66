"""The land that the railroad serves: by itself, or behind its initials."""

from __future__ import annotations

from heraldry.ideas.fields.letters import letters_wide
from heraldry.ideas.fields.made import Field, Made
from heraldry.ideas.fields.room import Room
from heraldry.ideas.hands import fitted
from heraldry.ideas.kit import Kit, level_line
from heraldry.ideas.sketch import Part, Tone, art, at, one, share

ROUND_FILL, BOX_FILL = 0.94, 0.97
HEAVY_SHARE = 0.35
"""In a box a land is moved by this share of the way from the middle of its box to that of its area."""
SMALLEST_PART, COARSENESS = 0.7, 0.16
"""Islands smaller than this many fine lines are left out; a coast is drawn as coarse as this share of one."""
WIDE_ENOUGH = 0.75
"""A land narrower than this for its height is lost behind letters."""
HALO = 1.1
"""White round letters on the land, in fine lines."""


def land(kit: Kit, room: Room) -> Made | None:
    """The land alone."""
    part = _land(kit, room)
    return None if part is None else Made(part, "land")


def _land(kit: Kit, room: Room) -> Part | None:
    land = kit.land
    if land is None or not land.is_handy:
        return None
    if room.is_round:
        height = min(room.width, room.height) / 2 * ROUND_FILL / land.radius
        aside, above = land.aside, land.above
    else:
        height = min(room.height, room.width / land.wide) * BOX_FILL
        aside, above = land.heavy_aside * HEAVY_SHARE, land.heavy_above * HEAVY_SHARE
        aside = max(-(free := (room.width / height - land.wide) / 2), min(free, aside))
        above = max(-(free := (room.height / height - 1) / 2), min(free, above))
    return one(
        "land",
        room.ink,
        room.over,
        region=list(land.codes),
        height=share(height),
        centre=at(room.x - aside * height, room.y - above * height),
        islands=f"fine * {SMALLEST_PART * 2:g}",
        detail=f"fine * {COARSENESS:g}",
    )


def land_and_initials(kit: Kit, room: Room) -> Made | None:
    """The initials across the land, in the frame's ink with white round them."""
    part = _land(kit, room)
    if part is None or kit.land is None or kit.land.wide < WIDE_ENOUGH or len(kit.words.initials) > 4:
        return None
    reach = room.width * (0.86 if room.is_round else 0.94)
    cap = min(room.height * 0.34, reach / letters_wide(kit, kit.words.initials))
    line = fitted(kit.letters, kit.words.initials, cap, reach, cap * letters_wide(kit, kit.words.initials))
    margin_over, letters_over = ((room.ink,), (room.ink,)) if room.ground == "bare" else ((), room.over)
    margin = art(f"offset(initials, fine * {HALO:g})", room.ground, margin_over)
    tone: Tone = "first" if room.ground == "bare" else "bare"
    return Made(part + margin + level_line("initials", line, tone, letters_over, room.x, room.y), "land")


FIELDS = (
    Field("land", "the land", land),
    Field("land and initials", "initials on the land", land_and_initials, says_initials=True),
)
