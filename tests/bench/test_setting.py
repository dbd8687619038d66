"""How long setting lines takes, as ratios against the libraries below doing the same in the same run."""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
import uharfbuzz as hb
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.transformPen import TransformPen
from fontTools.ttLib import TTFont

from heraldry.geometry.offset import offset
from heraldry.geometry.point import ORIGIN
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.fonts import font_from_file
from heraldry.lettering.monogram import monogram
from heraldry.lettering.setting import on_circle, straight, whites
from heraldry.lettering.spacing import Profile, kern
from tests.faces import face_file

FONT = face_file("font_roboto", "Roboto-Bold.ttf")
LINES = ["THE QUICK BROWN FOX & JUMPS", "OVER 1907 LAZY DOGS AT NOON", "SALT VALLEY & WESTERN RY 42"] * 13
LETTERS = sum(len(line) for line in LINES)


def ratio_of(ours: Callable[[], object], theirs: Callable[[], object], rounds: int = 9) -> float:
    """How many times as long ours takes: least against least, taken in turns so that both meet the same load."""
    best = [float("inf"), float("inf")]
    for _ in range(rounds):
        for i, work in enumerate((ours, theirs)):
            begin = time.perf_counter()
            work()
            best[i] = min(best[i], time.perf_counter() - begin)
    return best[0] / best[1]


def set_ours() -> int:
    alphabet = font_from_file(FONT)
    return sum(straight(alphabet.set_line(text, 2.3), ORIGIN).outline.node_count for text in LINES)


def set_by_libraries() -> int:
    """uharfbuzz shapes, fontTools draws each letter through a pen that moves and scales it."""
    data = FONT.read_bytes()
    font, tables = hb.Font(hb.Face(data)), TTFont(FONT, lazy=True)
    glyph_set, scale, strokes = tables.getGlyphSet(), 2.3 / 1456, 0
    for text in LINES:
        buffer = hb.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        hb.shape(font, buffer, {})
        x = 0
        for info, position in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True):
            recorded = DecomposingRecordingPen(glyph_set)
            moved = TransformPen(recorded, (scale, 0, 0, scale, (x + position.x_offset) * scale, 0))
            glyph_set[tables.getGlyphName(info.codepoint)].draw(moved)
            strokes += len(recorded.value)
            x += position.x_advance
    return strokes


def test_a_thousand_letters_against_harfbuzz_and_fonttools(benchmark):
    assert LETTERS >= 1000
    benchmark(set_ours)
    ratio = ratio_of(set_ours, set_by_libraries, rounds=20)
    benchmark.extra_info["ratio"] = round(ratio, 3)
    assert ratio <= 1.5


def test_a_circle_costs_as_much_as_four_straight_lines(benchmark):
    """Round a circle letters are turned, their whites measured and their ink centred, each in a pass of its own."""
    line = font_from_file(FONT).set_line(LINES[0], 2.3)

    def round_circle() -> None:
        on_circle(line, ORIGIN, 30.0)

    def four_straight() -> None:
        for _ in range(4):
            whites(straight(line, ORIGIN).block)

    benchmark(round_circle)
    ratio = ratio_of(round_circle, four_straight, rounds=40)
    benchmark.extra_info["ratio"] = round(ratio, 3)
    assert ratio <= 2.0


def test_a_pair_is_kerned_optically_in_the_time_of_fifty_additions(benchmark):
    """The profiles are kept: what is left is arithmetic on rows of 32 numbers, some 14 µs on a desk computer."""
    drawn = {letter: font_from_file(FONT).set_line(letter, 1.0).glyphs[0] for letter in "AVH"}
    a, v, h = (Profile.of(drawn[letter].outline, 1.0, drawn[letter].advance_mm) for letter in "AVH")
    kern(a, v, h)

    def pairs() -> None:
        for _ in range(200):
            kern(a, v, h)

    def additions() -> None:
        for _ in range(200 * 50):
            np.add(a.right_recess, v.left_recess)

    benchmark(kern, a, v, h)
    ratio = ratio_of(pairs, additions)
    benchmark.extra_info["ratio"] = round(ratio, 3)
    assert ratio <= 2.0


def test_an_interlaced_monogram_costs_no_more_than_growing_its_letters_some_times(benchmark):
    sign = monogram("FVR", ours("gothic"), 12.0, frame="ring")

    def woven() -> object:
        return monogram("FVR", ours("gothic"), 12.0, frame="ring")

    def grown() -> object:
        return [offset(letter, 0.3) for letter in sign.letters]

    benchmark(woven)
    ratio = ratio_of(woven, grown, rounds=5)
    benchmark.extra_info["ratio"] = round(ratio, 3)
    assert ratio <= 14.0
