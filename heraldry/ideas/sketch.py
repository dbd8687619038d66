"""A sketch: a herald as it is composed, before it is drawn; every length a share of the herald's width.

A sketch is made of parts. A part has shapes, as a herald file has them, and layers that say which ink each lies in
and what it is cut out of; laid one over another, they give the art of each plate. No two inks lie on one another:
what is laid over an ink is cut out of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Literal

Tone = Literal["first", "second", "bare"]
"""In the first ink, in the second, or as bare film."""
INKS: tuple[Tone, ...] = ("first", "second")

Table = Mapping[str, Any]
"""The keys of one table of a herald file."""

HEAVY = 2.4
"""Line weights come in two steps: a heavy line in fine ones."""

DECIMALS = 5
"""Of a share of the width: a tenth of a micrometre of a herald 10 mm wide."""


def share(part: float) -> str | float:
    """A length as a share of the herald's width, as it is written in its file.

    >>> share(0.25), share(-0.1), share(0)
    ('width * 0.25', '-width * 0.1', 0.0)
    """
    rounded = round(part, DECIMALS)
    if rounded == 0:
        return 0.0
    return f"{'-' if rounded < 0 else ''}width * {abs(rounded):.7g}"


def at(x: float, y: float) -> list[str | float]:
    """A place, from the herald's middle."""
    return [share(x), share(y)]


@dataclass(frozen=True)
class Layer:
    """A piece of art in a tone, laid over what comes before it; ``over`` are the inks that it is cut out of."""

    art: str
    tone: Tone
    over: tuple[Tone, ...] = ()


@dataclass(frozen=True)
class Part:
    """Shapes, layers and alphabets; parts are laid over one another with ``+``."""

    shapes: Mapping[str, Table] = field(default_factory=dict)
    layers: tuple[Layer, ...] = ()
    alphabets: Mapping[str, Table] = field(default_factory=dict)

    def __add__(self, other: Part) -> Part:
        return Part(
            {**self.shapes, **other.shapes}, (*self.layers, *other.layers), {**self.alphabets, **other.alphabets}
        )


NOTHING = Part()


def one(name: str, tone: Tone, over: Tone | tuple[Tone, ...] = (), **keys: Any) -> Part:
    """A part of one shape; it is cut out of the inks it lies over."""
    return Part({name: keys}, (Layer(name, tone, (over,) if isinstance(over, str) else over),))


def hidden(name: str, **keys: Any) -> Part:
    """A shape that other layers make use of, not drawn by itself."""
    return Part({name: keys})


def art(text: str, tone: Tone, over: Tone | tuple[Tone, ...] = ()) -> Part:
    """A layer of set arithmetic on shapes."""
    return Part(layers=(Layer(text, tone, (over,) if isinstance(over, str) else over),))


def together(parts: Iterable[Part]) -> Part:
    """Parts laid one over another."""
    whole = NOTHING
    for part in parts:
        whole = whole + part
    return whole


def plate_art(layers: Iterable[Layer], tone: Tone) -> str:
    """The art of one ink's plate: what is laid in it, less what is laid over it later.

    >>> plate_art([Layer("disc", "first"), Layer("name", "bare", ("first",)), Layer("dot", "first")], "first")
    'disc - name + dot'
    """
    text = ""
    for layer in layers:
        piece = f"({layer.art})" if " " in layer.art and not layer.art.endswith(")") else layer.art
        if layer.tone == tone:
            text = f"{text} + {piece}" if text else piece
        elif text and tone in layer.over:
            text = f"{text} - {piece}"
    return text


def in_one_ink(part: Part) -> Part:
    """The same with all that lies in the second ink in the first."""
    merged: dict[Tone, Tone] = {"first": "first", "second": "first", "bare": "bare"}
    layers = [
        Layer(layer.art, merged[layer.tone], tuple(dict.fromkeys(merged[tone] for tone in layer.over)))
        for layer in part.layers
    ]
    return replace(part, layers=tuple(layers))


@dataclass(frozen=True)
class Sketch:
    """A composed herald: what it is made of, in words too, and what its rules want to know.

    ``subject`` is the shape that is to be the one large thing; ``band`` the thickness of a ring that letters stand in,
    ``inside`` the shapes of a field that keeps clear of its frame.
    """

    frame: str
    field: str
    lettering: str
    caption: str
    part: Part
    subject: str
    fine: float
    ring_letters: tuple[str, ...] = ()
    band: float = 0.0
    inside: tuple[str, ...] = ()
