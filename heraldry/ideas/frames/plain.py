"""Plain heralds: letters, stripes and arrows without a frame round them, and flags. Lengths are shares of the width."""

from __future__ import annotations

from dataclasses import replace

from heraldry.ideas.eras import LATE, OLD
from heraldry.ideas.fields import Field, Room
from heraldry.ideas.frames.frame import Frame, of_initials
from heraldry.ideas.frames.pieces import lined
from heraldry.ideas.hands import Fitted, Hand, fitted, overhang
from heraldry.ideas.kit import Kit, level_line, stack
from heraldry.ideas.sketch import Part, Sketch, art, at, hidden, one, share

FULL = 0.998
"""Lines of lettering as wide as the herald keep a trace inside its finished width."""
WIDEST = 1.65
"""Letters that stand alone may be wider than those of a line among others."""
BODY_CAP, KIND_CAP = 0.24, 0.13
"""The highest lines of a name set as a block, and of the kind of company in it."""


def _leaning(hand: Hand, slant: float) -> Hand:
    return hand if hand.is_fixed or hand.style != "gothic" else replace(hand, slant=slant)


def _wide(hand: Hand) -> Hand:
    """A hand that may be drawn out as wide as letters ever look sound."""
    return hand if hand.is_fixed else replace(hand, most=WIDEST)


def _name_under(kit: Kit, top: float, wide: float, cap: float, x: float = 0.0) -> Part:
    """The name under something that ends at a height."""
    line = fitted(kit.title, kit.words.body, cap, wide, wide)
    gap = max(kit.fine * 2.4, line.cap * 0.55) + overhang(line.hand, line.text)[0] * line.cap
    return level_line("name", line, "first", (), x, top - gap - line.cap / 2)


def _tail(line: Fitted) -> float:
    """How far the letters of a line hang below its base line."""
    return overhang(line.hand, line.text)[1] * line.cap


def justified(kit: Kit, _field: Field) -> Sketch | None:
    """Every line of the name as long as the others, between two heavy bars."""
    words, hand = kit.words, _wide(kit.letters)
    caps = [(text, BODY_CAP) for text in words.lines(2)] + [(words.kind, KIND_CAP)] * bool(words.kind)
    lines = [fitted(hand, text, cap, FULL) for text, cap in caps]
    gap, bar = kit.fine * 2.6, kit.heavy
    accents = [overhang(hand, line.text)[0] * line.cap for line in lines]
    tall = sum(line.cap for line in lines) + sum(accents) + gap * (len(lines) + 1) + 2 * bar
    y = tall / 2 - bar - gap
    part = one("upper_bar", "second", box="width", height="heavy", centre=at(0.0, tall / 2 - bar / 2))
    for i, line in enumerate(lines):
        y -= accents[i]
        part = part + level_line(f"line_{i + 1}", line, "first", (), 0.0, y - line.cap / 2)
        y -= line.cap + gap
    part = part + one("lower_bar", "second", box="width", height="heavy", centre=at(0.0, bar / 2 - tall / 2))
    return Sketch(
        "lines", "none", f"{len(lines)} justified lines", "the name between bars", part, "line", kit.fine,
    )  # fmt: skip


@of_initials
def speed_band(kit: Kit, _field: Field) -> Sketch | None:
    """Initials in a leaning box that trails stripes, the name beneath."""
    tall, lean = 0.26, 18.0
    box = one("band", "first", box=share(0.56), height=share(tall), slant=lean, centre=at(0.1784, 0.0))
    stripes = one(
        "stripes", "second", stripes=4, length=share(0.384), width=share(tall * 0.16), gap=share(tall * 0.12),
        step=share(0.075), slant=lean, toward="right", centre=at(-0.2656, 0.0),
    )  # fmt: skip
    line = fitted(_leaning(kit.letters, lean), kit.words.initials, tall * 0.6, 0.42)
    letters = level_line("initials", line, "bare", "first", 0.1784, 0.0)
    name = _name_under(kit, -tall / 2, 0.92, 0.085, -0.02)
    return Sketch(
        "speed band", "initials", "line under", "initials with speed stripes", stripes + box + letters + name,
        "initials", kit.fine,
    )  # fmt: skip


def block(kit: Kit, field: Field) -> Sketch | None:
    """A field in a square block with round corners, the name under it."""
    tall = 0.78
    box = one("block", "first", box=share(tall), height=share(tall), corner="round", radius=share(0.12))
    made = field.draw(kit, Room(0.0, 0.0, tall * 0.8, tall * 0.76, ink="bare", ground="first"))
    if made is None:
        return None
    name = _name_under(kit, -tall / 2, FULL, 0.12)
    return Sketch(
        "block", field.name, "line under", f"block, {field.called}", box + made.part + name, made.subject, kit.fine,
        inside=made.names,
    )  # fmt: skip


def disc(kit: Kit, field: Field) -> Sketch | None:
    """A field in a plain disc, the name under it."""
    radius = 0.37
    body = one("disc", "first", circle=share(radius))
    made = field.draw(kit, Room(0.0, 0.0, radius * 1.84, radius * 1.84, is_round=True, ink="bare", ground="first"))
    if made is None:
        return None
    name = _name_under(kit, -radius, FULL, 0.11)
    return Sketch(
        "disc", field.name, "line under", f"disc, {field.called}", body + made.part + name, made.subject, kit.fine,
        inside=made.names,
    )  # fmt: skip


@of_initials
def underlined(kit: Kit, _field: Field) -> Sketch | None:
    """Large initials over stripes that grow thinner, the name last."""
    line = fitted(_wide(kit.letters), kit.words.initials, 0.34, FULL)
    letters = level_line("initials", line, "first", (), 0.0, 0.0)
    y = -line.cap / 2 - kit.fine * 2 - _tail(line)
    stripes = Part()
    for i, thick in enumerate((kit.heavy, kit.heavy * 0.6)):
        stripes = stripes + one(
            f"stripe_{i + 1}", "second", box="width", height=share(thick), centre=at(0.0, y - thick / 2)
        )
        y -= thick + kit.fine
    name = _name_under(kit, y + kit.fine, FULL, 0.1)
    return Sketch(
        "underlined", "initials", "line under", "large initials, stripes", letters + stripes + name, "initials",
        kit.fine,
    )  # fmt: skip


@of_initials
def striped_through(kit: Kit, _field: Field) -> Sketch | None:
    """Large initials with a stripe running through them and out on both sides."""
    hand = _leaning(kit.letters, 12.0)
    line = fitted(hand, kit.words.initials, 0.4, 0.8)
    letters = level_line("initials", line, "first", (), 0.0, 0.0)
    thick = min(kit.heavy, line.cap * 0.15)
    margin = one("margin", "bare", "first", box="width", height=share(thick + 2 * kit.fine))
    stripe = one("stripe", "second", box="width", height=share(thick))
    name = _name_under(kit, -line.cap / 2 - _tail(line), 0.8, 0.1)
    return Sketch(
        "striped through", "initials", "line under", "initials with a stripe", letters + margin + stripe + name,
        "initials", kit.fine,
    )  # fmt: skip


@of_initials
def arrow(kit: Kit, _field: Field) -> Sketch | None:
    """Large initials over an arrow the whole width, the name on its shaft."""
    line = fitted(_leaning(kit.letters, 12.0), kit.words.initials, 0.32, 0.7)
    tall = 0.3
    y = -line.cap / 2 - kit.fine * 2 - tall * 0.27 - _tail(line)
    letters = level_line("initials", line, "second", (), -0.12, -y / 2)
    body = one(
        "arrow", "first", arrow="width", width=share(tall * 0.54), head=share(tall), point=share(0.2), barb=share(0.03),
        centre=at(0.0, y / 2),
    )  # fmt: skip
    name = fitted(kit.title, kit.words.body, tall * 0.29, 0.72)
    text = level_line("name", name, "bare", "first", -0.08, y / 2)
    return Sketch(
        "arrow", "initials", "arrow", "initials over an arrow", letters + body + text, "initials", kit.fine,
    )  # fmt: skip


def swallowtail(kit: Kit, field: Field) -> Sketch | None:
    """A swallow-tailed flag with a field by the hoist and the name beside it."""
    tall = 0.5
    flag = hidden("flag", flag="width", height=share(tall), notch=share(0.16))
    body = flag + lined("flag", "first")
    made = field.draw(kit, Room(-0.31, 0.0, 0.26, 0.34, ink="bare", ground="first"))
    if made is None:
        return None
    words = kit.words
    name, lines = stack("name", words.lines(2), kit.title, "bare", "first", (0.055, 0.0, 0.39, 0.25))
    return Sketch(
        "swallow-tail", field.name, f"{len(lines)} lines", f"flag, {field.called}", body + made.part + name,
        made.subject, kit.fine, inside=made.names,
    )  # fmt: skip


@of_initials
def pennant(kit: Kit, _field: Field) -> Sketch | None:
    """A pennant with the initials large at the hoist and the name running out to its tip."""
    tall = 0.46
    flag = hidden("flag", pennant="width", height=share(tall), tip=share(0.14))
    body = flag + art("flag", "first")
    bar = one("bar", "second", box=share(0.035), height=share(tall), centre=at(-0.4825, 0.0))
    margin = one(
        "margin",
        "bare",
        "first",
        box=share(0.035 + kit.fine),
        height=share(tall),
        centre=at(-0.4825 + kit.fine / 2, 0.0),
    )
    line = fitted(kit.letters, kit.words.initials, 0.22, 0.3)
    letters = level_line("initials", line, "bare", "first", -0.425 + line.length / 2 + 0.01, 0.0)
    rest = 0.86 - line.length - 0.07
    name, _ = stack("name", kit.words.lines(2), kit.title, "bare", "first", (0.44 - rest / 2 - 0.01, 0.0, rest, 0.15))
    return Sketch(
        "pennant", "initials", "lines beside", "pennant, initials", body + margin + bar + letters + name, "initials",
        kit.fine,
    )  # fmt: skip


BLOCK_FIELDS = ("initials", "land", "one large", "track", "arrow", "mountains", "pine", "star")
FLAG_FIELDS = ("star", "land", "pine", "compass", "wheel")
FRAMES = (
    Frame("lines", "lines", justified),
    Frame("speed band", "slanted", speed_band, (), LATE),
    Frame("block", "block", block, BLOCK_FIELDS, LATE),
    Frame("disc", "disc", disc, BLOCK_FIELDS, LATE),
    Frame("underlined", "letters", underlined, (), LATE),
    Frame("striped through", "letters", striped_through, (), LATE),
    Frame("arrow", "letters", arrow, (), LATE),
    Frame("swallow-tail", "flag", swallowtail, FLAG_FIELDS, OLD),
    Frame("pennant", "flag", pennant, (), frozenset({"1920s", "1950s"})),
)
