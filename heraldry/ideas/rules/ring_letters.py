"""Letters on a ring fill 55 to 65 % of its band, and between the upper and the lower text a letter's width is free."""

from __future__ import annotations

import math

from heraldry.geometry.point import Point
from heraldry.ideas.proofs import Proof
from heraldry.ideas.rules.rule import Rule, beyond

LEAST, MOST = 0.55, 0.65
"""Cap height in the thickness of the band. Common practice, no source."""
FILL_ALLOWANCE = 0.12
LETTER_OF_CAP = 0.75
"""A letter is about three quarters as wide as it is high."""


def fills(proof: Proof) -> list[float]:
    """The cap height of each text on the ring, in the thickness of its band."""
    band = proof.sketch.band * proof.artwork.width_mm
    return [float(_cap(proof, name)) / band for name in proof.sketch.ring_letters]


def _cap(proof: Proof, name: str) -> float:
    return next(float(shape.arguments["cap_height"]) for shape in proof.herald.shapes if shape.name == name)


def least_free_mm(proof: Proof) -> float:
    """The arc between the ends of the two texts, mm, less than nothing where they overlap; endless for one text."""
    names = proof.sketch.ring_letters
    if len(names) < 2:
        return math.inf
    high, low = (proof.composed.stage.drawn[name].places for name in names)
    radius = (abs(high["end"]) + abs(low["end"])) / 2
    taken = _turn(high["end"], high["start"]) + _turn(low["start"], low["end"])
    return (math.tau - taken) / 2 * radius


def _turn(one: Point, other: Point) -> float:
    """The angle from one direction to another, counter-clockwise, below a whole turn."""
    return math.atan2(one.cross(other), one.dot(other)) % math.tau


def falls_short(proof: Proof) -> float:
    """Unsound where texts come together; else how far the letters are from filling their band."""
    if not proof.sketch.ring_letters:
        return 0.0
    caps = max(_cap(proof, name) for name in proof.sketch.ring_letters)
    if least_free_mm(proof) < LETTER_OF_CAP * caps:
        return 1.0
    return max(beyond(fill, LEAST, MOST, FILL_ALLOWANCE) for fill in fills(proof))


RULE = Rule("ring letters", falls_short)
