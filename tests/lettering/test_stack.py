"""Lines stacked, justified and fitted; large initials, fractions and superior letters."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError, LetteringError
from heraldry.geometry.boolean import intersect, pieces
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.adjusting import own_stem
from heraldry.lettering.alphabets import STYLES, ParametricAlphabet
from heraldry.lettering.scan import ink_spans
from heraldry.lettering.setting.lay import ink_width
from heraldry.lettering.stack import (
    PLAIN,
    Manner,
    composed,
    fit_into,
    justified,
    set_stack,
    stacked,
    upright_stack,
)
from heraldry.lettering.stack.built import built_fraction, slanted_fraction, superior
from heraldry.lettering.stack.justify import LOOSEST_CAPS
from heraldry.lettering.stack.runs import Run, runs
from heraldry.shapes.lines import Box, Initials, lines

CAP = 4.0


@dataclass(frozen=True)
class Wide(ParametricAlphabet):
    """Our gothic, wider or narrower as it is asked for."""

    def widened(self, factor: float) -> Wide:
        return replace(self, parameters=replace(self.parameters, width=self.parameters.width * factor))


class OneWidth:
    """An alphabet that can be asked for neither width nor stem, as most fonts."""

    name = "one width"

    def set_line(self, text, cap_height_mm, figures="proportional"):
        return GOTHIC.set_line(text, cap_height_mm, figures)

    def with_stem(self, stem):
        raise LetteringError("there is no weight axis")


GOTHIC = Wide("gothic", STYLES["gothic"])
STEM = own_stem(GOTHIC)


def box_of(letters) -> object:
    return bounds(Outline.gather(letters))


def stem_of(letter: Outline, height: float) -> float:
    left, right = ink_spans(letter, height)[0]
    return right - left


class TestRuns:
    def test_plain_text_is_one_run(self) -> None:
        assert runs("HEKLA", PLAIN) == (Run("plain", "HEKLA"),)

    @pytest.mark.parametrize("written", ["4 3/4", "4 3⁄4", "4¾", "4 ¾"])
    def test_a_fraction_is_known_however_it_is_written(self, written: str) -> None:
        assert runs(written, PLAIN) == (Run("plain", "4"), Run("fraction", "3/4"))

    def test_a_space_before_a_lone_fraction_stays(self) -> None:
        assert runs("IN ½", PLAIN) == (Run("plain", "IN "), Run("fraction", "1/2"))
        assert runs("13/16", PLAIN) == (Run("fraction", "13/16"),)

    def test_plain_fractions_are_left_alone(self) -> None:
        assert runs("4 3/4", Manner(fractions="plain")) == (Run("plain", "4 3/4"),)

    def test_superior_letters_are_what_they_stand_for(self) -> None:
        assert runs("1ˢᵗ Nᵒ", PLAIN) == (
            Run("plain", "1"), Run("superior", "st"), Run("plain", " N"), Run("superior", "o"),
        )  # fmt: skip

    def test_the_first_letter_of_each_word_is_an_initial(self) -> None:
        found = runs("HEKLA & CO", Manner(1.5))
        assert [run.text for run in found if run.kind == "initial"] == ["H", "C"]


class TestComposed:
    def test_plain_text_is_set_as_the_alphabet_sets_it(self) -> None:
        mine, its = composed("HEKLA", GOTHIC, CAP, PLAIN), GOTHIC.set_line("HEKLA", CAP)
        assert [glyph.x_mm for glyph in mine.glyphs] == [glyph.x_mm for glyph in its.glyphs]
        assert mine.advance_mm == its.advance_mm

    def test_runs_are_kerned_as_one_word_is(self) -> None:
        """Initials hardly larger than their word stand as plain letters do: AV is kerned across the run's end."""
        alike = composed("AVA", GOTHIC, CAP, Manner(1.0 + 1e-9))
        plain = GOTHIC.set_line("AVA", CAP)
        assert [g.x_mm for g in alike.glyphs] == pytest.approx([g.x_mm for g in plain.glyphs], abs=1e-6)

    @pytest.mark.parametrize(("level", "foot"), [("feet", 0.0), ("heads", -0.5 * CAP)])
    def test_large_initials_share_feet_or_heads(self, level, foot: float) -> None:
        initial, other = composed("HI", GOTHIC, CAP, Manner(1.5, level)).glyphs
        assert bounds(initial.placed).height == pytest.approx(1.5 * CAP)
        assert bounds(initial.placed).bottom == pytest.approx(foot)
        assert bounds(other.placed).bottom == pytest.approx(0.0)

    def test_a_large_initial_is_neither_blot_nor_ghost(self) -> None:
        """Its stem grows by the square root of its height."""
        initial = composed("HI", GOTHIC, CAP, Manner(1.44)).glyphs[0].placed
        assert stem_of(initial, 1.0) == pytest.approx(STEM * CAP * 1.2, rel=0.01)

    def test_tracking_does_not_part_a_fraction(self) -> None:
        line = composed("4 3/4", GOTHIC, CAP, PLAIN)
        assert len(line.glyphs) == 2
        assert area(line.tracked(1.0).glyphs[1].outline) == area(line.glyphs[1].outline)


class TestBuilt:
    def test_built_fraction_has_its_bar_at_half_the_cap_height(self) -> None:
        parts = sorted(pieces(built_fraction("3/7", GOTHIC, CAP).outline), key=lambda part: bounds(part).centre.y)
        under, bar, over = (bounds(part) for part in parts)
        assert bar.centre.y == pytest.approx(CAP / 2)
        assert bar.width > max(under.width, over.width)
        assert under.centre.x == pytest.approx(bar.centre.x) and over.centre.x == pytest.approx(bar.centre.x)
        assert over.bottom - bar.top == pytest.approx(0.09 * CAP)
        assert bar.bottom - under.top == pytest.approx(0.09 * CAP)

    def test_slanted_fraction_reaches_from_base_line_to_cap_line(self) -> None:
        whole = slanted_fraction("1/2", GOTHIC, CAP)
        assert bounds(whole.outline).bottom == pytest.approx(0.0)
        assert bounds(whole.outline).top == pytest.approx(CAP)
        parts = pieces(whole.outline)
        assert len(parts) == 3
        assert min(distance(a, b) for a in parts for b in parts if a is not b) > 0.04 * CAP

    def test_superior_letters_hang_from_the_cap_line_over_their_bar(self) -> None:
        letter, bar = pieces(superior("o", GOTHIC, CAP, bar=True).outline)
        if bounds(letter).top < bounds(bar).top:
            letter, bar = bar, letter
        assert bounds(letter).top == pytest.approx(CAP)
        assert bounds(bar).width == pytest.approx(bounds(letter).width)
        assert 0.0 < bounds(bar).bottom < bounds(bar).top < bounds(letter).bottom
        assert len(pieces(superior("o", GOTHIC, CAP, bar=False).outline)) == 1

    def test_small_figures_are_not_faint(self) -> None:
        """Merely reduced, the stem of a 1 would be half as thick as the letters'."""
        over = max(pieces(built_fraction("1/1", GOTHIC, CAP).outline), key=lambda part: bounds(part).top)
        assert stem_of(over, bounds(over).centre.y) > 0.6 * STEM * CAP

    def test_an_alphabet_without_small_letters_gives_small_capitals(self) -> None:
        class Capitals(OneWidth):
            def set_line(self, text, cap_height_mm, figures="proportional"):
                if text != text.upper():
                    raise LetteringError("capitals only")
                return super().set_line(text, cap_height_mm, figures)

        small = superior("o", Capitals(), CAP, bar=False)
        assert bounds(small.outline).height == pytest.approx(0.6 * CAP, rel=0.05)


class TestStacked:
    LINES = ("HEKLA", "NORTHERN", "RY")

    @pytest.mark.parametrize(("align", "edge"), [("left", "left"), ("right", "right")])
    def test_ends_of_ink_stand_in_line(self, align, edge: str) -> None:
        found = set_stack(self.LINES, GOTHIC, CAP, align)
        assert [getattr(box_of(line), edge) for line in found.lines] == pytest.approx([0.0] * 3, abs=1e-9)

    def test_middles_of_ink_stand_in_line(self) -> None:
        found = set_stack(self.LINES, GOTHIC, CAP, "centre")
        assert [box_of(line).centre.x for line in found.lines] == pytest.approx([0.0] * 3, abs=1e-9)

    def test_leading_is_from_base_line_to_base_line(self) -> None:
        feet = [box_of(line).bottom for line in set_stack(("HE", "HI", "HL"), GOTHIC, CAP, leading_mm=5.5).lines]
        assert feet == pytest.approx([0.0, -5.5, -11.0])
        usual = [box_of(line).bottom for line in set_stack(("HE", "HI"), GOTHIC, CAP).lines]
        assert usual[1] == pytest.approx(-1.3 * CAP)  # ISO 3098-0:1997, type B, capitals only: b3 = 13/10 h

    def test_justified_lines_are_of_one_width_and_keep_their_stems(self) -> None:
        found = set_stack(("HEKLA", "NORTHERN"), GOTHIC, CAP, "justified")
        widths = [box_of(line).width for line in found.lines]
        assert widths[0] == pytest.approx(widths[1], abs=1e-6)
        assert [stem_of(line[0], -i * 1.3 * CAP + 1.0) for i, line in enumerate(found.lines)] == pytest.approx(
            [STEM * CAP] * 2, rel=1e-6
        )
        assert found.notes == ()

    def test_a_line_that_cannot_be_justified_is_spoken_of(self) -> None:
        found = set_stack(("UMBAGOG AND MAGALLOWAY",), GOTHIC, CAP, "justified", width_mm=10.0)
        assert len(found.notes) == 1 and found.notes[0].startswith("'UMBAGOG AND MAGALLOWAY': the letters would touch")

    def test_upright_letters_are_centred_by_ink_at_even_steps(self) -> None:
        found = upright_stack("HIL", GOTHIC, CAP, gap_mm=1.0)
        boxes = [box_of(line) for line in found.lines]
        assert [box.centre.x for box in boxes] == pytest.approx([0.0] * 3, abs=1e-9)
        assert [box.bottom for box in boxes] == pytest.approx([0.0, -CAP - 1.0, -2 * CAP - 2.0])
        spaced = upright_stack("H L", GOTHIC, CAP, gap_mm=1.0)
        assert box_of(spaced.lines[1]).bottom == pytest.approx(-1.5 * (CAP + 1.0))

    def test_lines_do_not_overlap(self) -> None:
        one, two = (Outline.gather(line) for line in set_stack(("QUEENSJAM", "ÅGÖ"[1:2] + "NORTH"), GOTHIC, CAP).lines)
        assert area(intersect(one, two)) == 0.0


class TestJustified:
    def test_a_small_difference_is_tracked(self) -> None:
        line = GOTHIC.set_line("HEKLA", CAP)
        found = justified(lambda a: a.set_line("HEKLA", CAP), GOTHIC, ink_width(line) + 0.5)
        assert found.widened == 1.0
        assert ink_width(found.line) == pytest.approx(ink_width(line) + 0.5)

    @settings(derandomize=True, deadline=None, max_examples=15)
    @given(share=st.floats(0.72, 1.9))
    def test_any_width_within_reach_is_met_with_even_tracking(self, share: float) -> None:
        line = GOTHIC.set_line("HEKLA", CAP)
        found = justified(lambda a: a.set_line("HEKLA", CAP), GOTHIC, ink_width(line) * share)
        assert ink_width(found.line) == pytest.approx(ink_width(line) * share, abs=1e-6)
        assert stem_of(found.line.glyphs[0].placed, 1.0) == pytest.approx(STEM * CAP, rel=1e-6)

    def test_condensed_letters_are_widened_from_where_they_are(self) -> None:
        narrow = GOTHIC.widened(0.7)
        line = narrow.set_line("HEKLA", CAP)
        found = justified(lambda a: a.set_line("HEKLA", CAP), narrow, ink_width(line) * 1.5)
        assert 1.1 < found.widened < 1.8
        assert ink_width(found.line) == pytest.approx(ink_width(line) * 1.5)

    def test_letters_widen_before_they_fall_apart(self) -> None:
        line = GOTHIC.set_line("HEKLA", CAP)
        found = justified(lambda a: a.set_line("HEKLA", CAP), GOTHIC, ink_width(line) * 1.5)
        untracked = GOTHIC.widened(found.widened).set_line("HEKLA", CAP)
        tracking = (ink_width(found.line) - ink_width(untracked)) / 4 / CAP
        assert found.widened > 1.1
        assert tracking == pytest.approx(LOOSEST_CAPS, abs=0.01)

    def test_letters_of_one_width_are_tracked_alone(self) -> None:
        line = GOTHIC.set_line("HEKLA", CAP)
        found = justified(lambda a: a.set_line("HEKLA", CAP), OneWidth(), ink_width(line) * 1.5)
        assert found.widened == 1.0
        assert bounds(found.line.glyphs[0].outline).width == bounds(line.glyphs[0].outline).width
        assert ink_width(found.line) == pytest.approx(ink_width(line) * 1.5)


class TestBox:
    @staticmethod
    def setting(alphabet, cap):
        return set_stack(("UMBAGOG", "NORTHERN"), alphabet, cap, tracking_mm=0.1)

    @pytest.mark.parametrize(("width", "height"), [(30.0, 8.0), (20.0, 40.0), (12.0, 12.0)])
    def test_fills_its_box_one_way_and_keeps_inside_it(self, width: float, height: float) -> None:
        found = fit_into(self.setting, GOTHIC, width, height, 0.5)
        ink = bounds(found.stack.outline)
        assert ink.width <= width + 1e-5 and ink.height <= height + 1e-5
        assert max(ink.width / width, ink.height / height) == pytest.approx(1.0, abs=1e-4)

    def test_at_the_floor_letters_are_narrowed_and_keep_their_stems(self) -> None:
        free = fit_into(self.setting, GOTHIC, 20.0, 30.0, 0.5)
        floor = free.cap_mm * 1.2
        found = fit_into(self.setting, GOTHIC, 20.0, 30.0, floor)
        assert found.cap_mm == floor and found.widened < 1.0
        assert bounds(found.stack.outline).width == pytest.approx(20.0, abs=0.02)
        h = found.stack.lines[1][4]
        assert stem_of(h, bounds(h).bottom + 0.5) == pytest.approx(STEM * floor, rel=1e-6)

    @pytest.mark.parametrize("alphabet", [GOTHIC, OneWidth()], ids=["ours", "one width"])
    def test_below_the_floor_nothing_is_set(self, alphabet) -> None:
        with pytest.raises(LetteringError, match=r"only at a cap height of \d\.\d+ mm, the floor is 6 mm"):
            fit_into(self.setting, alphabet, 20.0, 30.0, 6.0)


class TestShape:
    def test_lines_are_centred_where_they_are_told(self) -> None:
        drawn = lines("HEKLA\nNORTHERN", cap_height=CAP, centre=Point(5, -3))
        assert abs(bounds(drawn.outline).centre - Point(5, -3)) < 1e-9

    def test_box_and_stem_and_initials(self) -> None:
        room = Box(20.0, 10.0, 1.0)
        plain, large = (lines("HEKLA\nLINE", room=room, initials=i) for i in (None, Initials(1.4, "heads")))
        for drawn in (plain, large):
            ink = bounds(drawn.outline)
            assert ink.width <= 20.0 + 1e-5 and ink.height <= 10.0 + 1e-5
        assert area(plain.outline) != pytest.approx(area(large.outline), rel=1e-3)
        assert stem_of(lines("I", cap_height=CAP, stem=0.6).outline, 0.0) == pytest.approx(0.6)

    def test_upright_lines_stand_under_one_another(self) -> None:
        ink = bounds(lines("HOTEL", cap_height=2.0, upright=True, leading=2.5).outline)
        assert ink.height == pytest.approx(2.0 + 4 * 2.5, abs=0.1)

    def test_the_same_twice(self) -> None:
        one, two = (lines("Nᵒ 4¾", cap_height=CAP).outline for _ in range(2))
        assert np.array_equal(one.data, two.data)

    @pytest.mark.parametrize(
        ("asked", "says"),
        [
            (lambda: lines("HI"), "lines have a cap_height or a room, found neither"),
            (lambda: lines("HI", cap_height=1.0, room=Box(1.0, 1.0, 1.0)), "found both"),
            (lambda: lines(" \n ", cap_height=1.0), "lines of lettering have no letters"),
            (lambda: lines("HI\n\nHI", cap_height=1.0), "a line of lettering has no letters"),
            (lambda: lines("HI\n" * 50, cap_height=1.0), "at most 40 lines of 200 letters, found 50"),
            (lambda: lines("HI", cap_height=1.0, leading=-1.0), "it must be more than 0"),
            (lambda: lines("HI", cap_height=1.0, initials=Initials(0.5)), "found 0.5"),
            (lambda: lines("HI", room=Box(-1.0, 1.0, 1.0)), "a box's width is above zero, found -1 mm"),
            (lambda: lines("HI", cap_height=-1.0), "cap_height is -1"),
            (lambda: lines("HI", cap_height=1.0, align="justified", width=-2.0), "above zero, found -2 mm"),
        ],
    )
    def test_what_cannot_be_done_is_said(self, asked, says: str) -> None:
        with pytest.raises((LetteringError, GeometryError), match=says):
            asked()


def test_a_stack_needs_a_leading() -> None:
    with pytest.raises(LetteringError, match="it must be more than 0"):
        stacked([GOTHIC.set_line("HI", CAP)], 0.0)
