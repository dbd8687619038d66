"""Letters put on a track, in one of three ways.

``turned``   each letter stays as it is and is turned as a whole, about the middle of its advance
``upright``  each letter stays as it is and stands upright there
``bent``     every point of a letter goes to the track's point at its x, and off it by its y

A turned letter takes the direction of the chord under its advance. On a circle that is the tangent at its
middle; at the corners of a path it is what the eye expects, half of the turn.
"""

from __future__ import annotations

from typing import Literal

import numpy as np

from heraldry.geometry import bezier
from heraldry.geometry.affine import Affine
from heraldry.geometry.bezier import Floats
from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.lettering.alphabet import SetGlyph, SetLine
from heraldry.lettering.setting.block import Block
from heraldry.lettering.setting.tracks import Track

Letters = Literal["turned", "upright", "bent"]

BENT_WITHIN_MM = 0.001
"""A bent curve is cut until its cubics are this near to the true image: half of what is promised."""

MAX_HALVINGS = 10
"""A cubic's error falls sixteenfold with each halving; a curve a metre long needs four."""

CURVATURE_STEP_MM = 1e-4
"""The track's curvature is read between two stations this far apart: above rounding, below any letter."""

# Where the image of a cut curve is compared with the cubic that stands for it.
_PROBES = np.array([0.25, 0.5, 0.75])


def put(line: SetLine, track: Track, offset_mm: float, letters: Letters) -> Block:
    """The letters of a line on a track; the line's origin comes after ``offset_mm`` of it."""
    if letters == "bent":
        flat = Block.straight(line)
        return Block(bend(flat.outline, track, offset_mm), flat.ring_counts)
    frames = _frames(line, track, offset_mm, letters == "turned")
    return Block.of(glyph.outline for glyph in line.glyphs).framed(frames)


def _frames(line: SetLine, track: Track, offset_mm: float, turned: bool) -> list[Affine]:
    half = np.array([glyph.advance_mm / 2 for glyph in line.glyphs])
    middle = offset_mm + np.array([glyph.x_mm for glyph in line.glyphs]) + half
    here = track.at(middle)
    angles = _chord_directions(track, middle, half, here.angles_rad) if turned else np.zeros(len(middle))
    return [
        _frame(glyph, place, angle)
        for glyph, place, angle in zip(line.glyphs, here.points.tolist(), angles.tolist(), strict=True)
    ]


def _frame(glyph: SetGlyph, place: list[float], angle_rad: float) -> Affine:
    turn = Affine.turn(float(np.degrees(angle_rad)))
    return Affine.move(*place) @ turn @ Affine.move(-glyph.advance_mm / 2, glyph.y_mm)


def _chord_directions(track: Track, middle: Floats, half: Floats, tangent: Floats) -> Floats:
    """Directions from one end of each advance to the other; the tangent where an advance has no length."""
    chord = track.at(middle + half).points - track.at(middle - half).points
    return np.where(np.hypot(*chord.T) > 0.0, np.arctan2(chord[:, 1], chord[:, 0]), tangent)


def bend(outline: Outline, track: Track, offset_mm: float) -> Outline:
    """An outline bent to a track: (x, y) goes y to the left of the track's point after offset + x."""
    if outline.is_empty:
        return outline
    straightened = outline.with_arcs_as_cubics() if np.any(outline.kinds == ARC) else outline
    upright = (straightened.kinds == LINE) & (straightened.data[:, 0, 0] == straightened.data[:, 3, 0])
    cubics = _lines_as_cubics(straightened)
    order = np.arange(len(cubics), dtype=np.float64)
    pieces, keys = _bent_pieces(cubics, order, track, offset_mm)
    owner = np.floor(keys).astype(np.int64)
    rings = np.searchsorted(owner, straightened.rings)
    last = rings[1:] - 1
    following = np.arange(1, len(pieces) + 1)
    following[last] = rings[:-1]
    pieces[:, 3] = pieces[following, 0]  # neighbours meet to the last bit
    kinds = np.where(upright[owner], LINE, CUBIC).astype(np.uint8)
    pieces[kinds == LINE, 1], pieces[kinds == LINE, 2] = pieces[kinds == LINE, 0], pieces[kinds == LINE, 3]
    return Outline(kinds, pieces, rings.astype(np.int64))


def _lines_as_cubics(outline: Outline) -> Floats:
    start, end = outline.data[:, :1], outline.data[:, 3:]
    thirds = np.concatenate((start, start + (end - start) / 3, end - (end - start) / 3, end), axis=1)
    return np.where((outline.kinds == LINE)[:, None, None], thirds, outline.data)


def _bent_pieces(cubics: Floats, keys: Floats, track: Track, offset_mm: float) -> tuple[Floats, Floats]:
    """Images of cubics as cubics, in order; a key's whole part tells the cubic that a piece comes from."""
    done: list[tuple[Floats, Floats]] = []
    share = 1.0
    for halving in range(MAX_HALVINGS + 1):
        images = _hermite_images(cubics, track, offset_mm)
        near = _stray(cubics, images, track, offset_mm) <= BENT_WITHIN_MM
        if halving == MAX_HALVINGS:
            near[:] = True
        done.append((images[near], keys[near]))
        if near.all():
            break
        first, second = bezier.halves(cubics[~near])
        share /= 2
        cubics, keys = np.concatenate((first, second)), np.concatenate((keys[~near], keys[~near] + share))
    pieces, all_keys = np.concatenate([part for part, _ in done]), np.concatenate([key for _, key in done])
    sequence = np.argsort(all_keys, kind="stable")
    return pieces[sequence], all_keys[sequence]


def _hermite_images(cubics: Floats, track: Track, offset_mm: float) -> Floats:
    """The cubics that share ends and end tangents with the images of ``cubics``."""
    start, one, two, end = (cubics[:, i] for i in range(4))
    leave = _push(start, one - start, track, offset_mm)
    arrive = _push(end, end - two, track, offset_mm)
    first, last = _image(start, track, offset_mm), _image(end, track, offset_mm)
    return np.stack((first, first + leave, last - arrive, last), axis=1)


def _image(xy: Floats, track: Track, offset_mm: float) -> Floats:
    here = track.at(offset_mm + xy[..., 0])
    return np.asarray(here.points + here.normals * xy[..., 1:])


def _push(xy: Floats, vector: Floats, track: Track, offset_mm: float) -> Floats:
    """Vectors carried along by the map: along the tangent by dx (1 − κ y), along the normal by dy."""
    s = offset_mm + xy[:, 0]
    here = track.at(s)
    turn = track.at(s + CURVATURE_STEP_MM).angles_rad - track.at(s - CURVATURE_STEP_MM).angles_rad
    curvature = np.angle(np.exp(1j * turn)) / (2 * CURVATURE_STEP_MM)
    along = vector[:, 0] * (1.0 - curvature * xy[:, 1])
    return np.asarray(here.tangents * along[:, None] + here.normals * vector[:, 1:])


def _stray(cubics: Floats, images: Floats, track: Track, offset_mm: float) -> Floats:
    """How far each cubic strays from the true image, at the probes."""
    truth = _image(bezier.points(cubics[:, None], _PROBES), track, offset_mm)
    off = bezier.points(images[:, None], _PROBES) - truth
    return np.asarray(np.hypot(off[..., 0], off[..., 1]).max(axis=1))
