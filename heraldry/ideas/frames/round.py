"""Round heralds: letters on a ring, a field in its middle. Lengths are shares of the width; the radius is a half."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from heraldry.ideas.eras import LATE, OLD
from heraldry.ideas.fields import Field, Room
from heraldry.ideas.frames.frame import Composer, Frame
from heraldry.ideas.hands import EASY, caps_long
from heraldry.ideas.kit import RING_FILLS, Kit, ring_line
from heraldry.ideas.sketch import Part, Sketch, Tone, at, one, share, together

RADIUS = 0.5
ROUND_FIELDS = (
    "land", "land and initials", "initials", "one large", "star", "compass", "pines", "mountains",
    "mountains and water", "sunrise", "wheel", "rail", "track", "interlaced",
)  # fmt: skip
ALL_ROUND_DEG = 360.0
SHORTER_BELOW = 1.15
"""How much wider than in step with the upper text the lower one may be set."""
MARK_ROOM_CAPS = 2.5
"""Arc between two texts that a star or dot stands well in."""
NEAR_ENOUGH = 1.03
"""What is added to a length that is only estimated, so that letters need not be made lower afterwards."""
BETWEEN_CAPS = 1.4
"""White between the upper and the lower text, in cap heights, with a small star or dot in its middle."""

Ground = Literal["dark band", "light band", "dark disc", "dark middle"]


@dataclass(frozen=True)
class Edge:
    """What runs round outside: its art, how far it reaches inward, and the radius where what is dark may begin."""

    part: Part
    inside: float


def plain_edge(kit: Kit, ground: Ground) -> Edge:
    """A fine line, or a heavy one round a light band; nothing round a dark disc but a line let into it."""
    if ground == "dark disc":
        return Edge(Part(), RADIUS)
    line = "heavy" if ground in ("light band", "dark middle") else "fine"
    thick = kit.heavy if line == "heavy" else kit.fine
    return Edge(one("rim", "first", ring="width / 2", width=line), RADIUS - thick - kit.fine)


def rope_edge(kit: Kit, _ground: Ground) -> Edge:
    """A rope laid round."""
    thick = 0.052
    part = one("rope", "first", rope="width / 2", width=share(thick), strands=44, gap="fine * 0.72")
    return Edge(part, RADIUS - thick - kit.fine)


def beads_edge(kit: Kit, _ground: Ground) -> Edge:
    """A ring of beads."""
    size = 0.036
    return Edge(one("beads", "first", beads="width / 2", size=share(size), count=54), RADIUS - size - kit.fine)


def seal_edge(kit: Kit, _ground: Ground) -> Edge:
    """The notched edge of a seal."""
    part = one("edge", "first", seal="width / 2", count=48, depth=share(0.022), width=share(0.052))
    return Edge(part, RADIUS - 0.052 - kit.fine)


def scallop_edge(kit: Kit, _ground: Ground) -> Edge:
    """An edge of arcs."""
    part = one("edge", "first", scallop="width / 2", count=28, depth=share(0.02), width=share(0.052))
    return Edge(part, RADIUS - 0.052 - kit.fine)


def gear_edge(kit: Kit, _ground: Ground) -> Edge:
    """The teeth of a gear wheel."""
    bore = RADIUS - 0.086
    return Edge(one("gear", "first", gear="width / 2", teeth=30, bore=share(bore)), bore - kit.fine)


def broken_edge(kit: Kit, _ground: Ground) -> Edge:
    """A heavy ring in four pieces."""
    part = one("rim", "first", broken_ring="width / 2", width="heavy", count=4, gap=share(0.05))
    return Edge(part, RADIUS - kit.heavy - kit.fine)


def rays_edge(kit: Kit, _ground: Ground) -> Edge:
    """Rays all round."""
    inner = RADIUS - 0.1
    part = one("rays", "first", rays=36, inner=share(inner), outer="width / 2", share=0.5)
    return Edge(part, inner - kit.fine)


EDGES: dict[str, tuple[str, Callable[[Kit, Ground], Edge], frozenset[str]]] = {
    "plain": ("ring", plain_edge, frozenset()),
    "rope": ("rope", rope_edge, OLD),
    "beads": ("beaded ring", beads_edge, OLD),
    "seal": ("seal", seal_edge, OLD),
    "scallop": ("scalloped seal", scallop_edge, frozenset({"1880s", "1950s"})),
    "gear": ("gear", gear_edge, frozenset({"1920s", "1970s"})),
    "broken": ("broken ring", broken_edge, LATE),
    "rays": ("sunburst", rays_edge, frozenset({"1920s", "1950s"})),
}
"""Edges: how each is called, how it is drawn, and which eras have it (none named: all)."""


def round_frame(edge_name: str, ground: Ground) -> Composer:
    """The composer of round heralds with one edge and one ground."""

    def compose(kit: Kit, field: Field) -> Sketch | None:
        called, draw_edge, _ = EDGES[edge_name]
        edge = draw_edge(kit, ground)
        band = 0.152 if edge_name in ("plain", "broken") else 0.138
        outer = edge.inside - (2 * kit.fine if ground == "dark disc" else 0.0)
        inner = outer - band
        text_tone: Tone = "first" if ground in ("light band", "dark middle") else "bare"
        grounds, room = _grounds(kit, ground, outer, band, inner)
        made = field.draw(kit, room)
        letters = _ring_letters(kit, field, outer - band / 2, band, text_tone)
        if made is None or letters is None:
            return None
        names = tuple(letters.shapes)
        part = together([edge.part, grounds, letters, made.part])
        texts = tuple(name for name in names if name in ("name", "second"))
        return Sketch(
            f"{edge_name} {ground}",
            field.name,
            "ring",
            f"{called}, {field.called}",
            part,
            made.subject,
            kit.fine,
            texts,
            band,
            inside=made.names,
        )

    return compose


def _grounds(kit: Kit, ground: Ground, outer: float, band: float, inner: float) -> tuple[Part, Room]:
    """What is dark under letters and field, and the room that is left for the field."""
    room = Room(0.0, 0.0, 2 * inner, 2 * inner, is_round=True, ink="second").shrunk(kit.fine)
    if ground == "dark band":
        return one("band", "first", ring=share(outer), width=share(band)), room
    if ground == "dark disc":
        line = one("line", "bare", "first", ring=share(inner), width="fine")
        outline = one("outline", "bare", "first", ring=share(outer + kit.fine), width="fine")
        inside = replace(room.shrunk(2 * kit.fine), ink="bare", ground="first")
        return one("disc", "first", circle=share(outer + 2 * kit.fine)) + outline + line, inside
    if ground == "dark middle":
        return one("middle", "second", circle=share(inner)), replace(room, ink="bare", ground="second")
    return one("line", "first", ring=share(inner), width="fine"), room.shrunk(2 * kit.fine)


def _ring_letters(kit: Kit, field: Field, middle: float, band: float, tone: Tone) -> Part | None:
    """The texts above and below, the first that go round in letters that fill the band, with a mark between them."""
    for texts in _texts(kit, field):
        for fill in RING_FILLS:
            around = ALL_ROUND_DEG - 2 * math.degrees(BETWEEN_CAPS * band * fill / middle)
            if _needs(kit, (texts.above, texts.below), band * fill, middle) <= around:
                return _set_round(kit, texts, middle, band * fill, around, tone)
    return None


def _set_round(kit: Kit, texts: Texts, middle: float, cap: float, around: float, tone: Tone) -> Part:
    """Two texts on a ring, of which ``around`` may be covered; the lower one leaves the upper one what it needs."""
    over: tuple[Tone, ...] = ("first",) if tone == "bare" else ()
    low, low_angle = Part(), 0.0
    if texts.below:
        left = around - _needs(kit, (texts.above,), cap, middle)
        wished = min(texts.low_deg, SHORTER_BELOW * len(texts.below) / len(texts.above) * texts.high_deg, left)
        low, low_angle = ring_line("second", texts.below, kit.title, cap, middle, tone, over, left, wished, low=True)
    most = around - low_angle
    wished = min(most, texts.high_deg)
    high, angle = ring_line("name", texts.above, kit.title, cap, middle, tone, over, most, wished)
    free = (ALL_ROUND_DEG - low_angle - angle) / 2
    marks = _marks(kit, middle, cap, free, angle, tone, over) if texts.below else _foot_mark(middle, cap, tone, over)
    return high + low + marks


@dataclass(frozen=True)
class Texts:
    """What stands above and below on a ring, and the arcs that both would like."""

    above: str
    below: str
    high_deg: float
    low_deg: float


def _texts(kit: Kit, field: Field) -> Iterator[Texts]:
    """The body and what comes second, else the body in two halves."""
    words = kit.words
    if field.says_initials and words.second == words.initials:
        yield Texts(words.body, "", 250.0, 0.0)
    else:
        yield Texts(words.body, words.second, 232.0, 96.0)
    if len(words.halves) == 2:
        yield Texts(*words.halves, 180.0, 140.0)


def _needs(kit: Kit, texts: tuple[str, ...], cap: float, middle: float) -> float:
    """The angle that texts take at least on a ring, with letters as narrow as they may be."""
    hand = kit.title
    narrowest = sum(caps_long(hand, text, hand.least) + EASY * len(text) for text in texts if text) * cap
    return math.degrees(narrowest / (middle - cap / 2)) * NEAR_ENOUGH


def _marks(kit: Kit, middle: float, cap: float, free: float, angle: float, tone: Tone, over: tuple[Tone, ...]) -> Part:
    """A small mark half way between the texts on either side, where there is room for it."""
    if math.radians(free) * middle < MARK_ROOM_CAPS * cap:
        return Part()
    turn = math.radians(90.0 - angle / 2 - free / 2)
    x, y = middle * math.cos(turn), middle * math.sin(turn)
    keys = _mark_keys(kit.era, cap)
    right = one("mark", tone, over, **keys, centre=at(x, y))
    left = one("other_mark", tone, over, **keys, centre=at(-x, y))
    return right + left


def _mark_keys(era: str, cap: float) -> dict[str, object]:
    """A star in old eras, a dot in later ones."""
    if era in OLD:
        return {"star": 5, "radius": share(cap * 0.42)}
    return {"circle": share(cap * 0.2)}


def _foot_mark(middle: float, cap: float, tone: Tone, over: tuple[Tone, ...]) -> Part:
    return one("mark", tone, over, star=5, radius=share(cap * 0.5), centre=at(0.0, -middle))


GROUNDS: tuple[tuple[str, Ground], ...] = (
    ("plain", "dark band"),
    ("plain", "dark disc"),
    ("plain", "dark middle"),
    ("rope", "dark band"),
    ("rope", "dark disc"),
    ("beads", "dark band"),
    ("beads", "dark disc"),
    ("seal", "dark band"),
    ("seal", "dark middle"),
    ("scallop", "dark band"),
    ("gear", "dark middle"),
    ("gear", "dark band"),
    ("broken", "dark middle"),
    ("broken", "dark band"),
    ("rays", "dark band"),
)
FRAMES = tuple(
    Frame(f"{edge} {ground}", "round", round_frame(edge, ground), ROUND_FIELDS, EDGES[edge][2])
    for edge, ground in GROUNDS
)
