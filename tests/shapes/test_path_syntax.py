"""Path data read by our reader, against svgpathtools and against the wording of SVG 1.1, chapter 8."""

from __future__ import annotations

import warnings

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st
from svgpathtools import parse_path

from heraldry.geometry.measure import length
from heraldry.geometry.segments import Arc, Cubic, Line
from heraldry.shapes.path_syntax import read_path

quickly = settings(max_examples=60, deadline=None, derandomize=True)

NUMBER = st.floats(-50, 50).map(lambda value: f"{value:.3f}")
RADIUS = st.floats(0.5, 60).map(lambda value: f"{value:.3f}")
FLAG = st.sampled_from("01")
NUMBERS = {"L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2}


def command(letter: str) -> st.SearchStrategy[str]:
    numbers = st.lists(NUMBER, min_size=NUMBERS[letter], max_size=NUMBERS[letter])
    return st.tuples(st.sampled_from((letter, letter.lower())), numbers).map(lambda one: one[0] + " ".join(one[1]))


ARC = st.tuples(st.sampled_from("Aa"), RADIUS, RADIUS, NUMBER, FLAG, FLAG, NUMBER, NUMBER).map(
    lambda one: f"{one[0]}{one[1]} {one[2]} {one[3]} {one[4]}{one[5]}{one[6]} {one[7]}"
)
DATA = st.lists(st.one_of(ARC, *map(command, NUMBERS)), min_size=1, max_size=8).map(lambda rest: "M3 4" + "".join(rest))


@quickly
@given(DATA)
def test_the_same_curves_as_another_reader_finds(data):
    ours = read_path(data).paths
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            theirs = parse_path(data)
        except AssertionError:  # it does not take an arc to where the pen is; ours draws nothing then, see below
            reject()
        total = sum(piece.length(error=1e-5) for piece in theirs)
    assert complex(*ours[0].segments[-1].end) == pytest.approx(theirs[-1].end, abs=1e-9)
    assert length(ours[0]) == pytest.approx(total, rel=1e-4, abs=1e-4)


@pytest.mark.parametrize(
    ("short", "plain"),
    [
        ("M0 0 10 0 10 5", "M0 0L10 0L10 5"),
        ("m1 1 10 0 0 5", "M1 1L11 1L11 6"),
        ("M0,0H5V6h-2v-2", "M0 0L5 0L5 6L3 6L3 4"),
        ("M1-.5.5-1.5e1", "M1 -.5L.5 -15"),
        ("M0 0a5 5 0 015 5", "M0 0A5 5 0 0 1 5 5"),
        ("M0 0L5 0zl0 5", "M0 0L5 0ZM0 0L0 5"),
        ("  M0 0 L 5 0  ", "M0 0L5 0"),
    ],
)
def test_short_forms(short, plain):
    assert read_path(short) == read_path(plain)
    assert not read_path(short).error


def test_what_is_closed_by_the_letter_and_what_only_meets_its_beginning():
    closed, open_ = read_path("M0 0h5v5z").paths[0], read_path("M0 0h5v5L0 0").paths[0]
    assert (closed.closed, open_.closed) == (True, False)
    assert closed.segments == open_.segments


def test_arcs_of_circles_stay_arcs_and_those_of_ellipses_become_cubics():
    kinds = [
        {type(segment) for segment in read_path(data).paths[0]} for data in ("M0 0a5 5 0 015 5", "M0 0a5 4 0 015 5")
    ]
    assert kinds == [{Arc}, {Cubic}]


def test_arcs_out_of_range():
    """Radii of 0 are a line, radii too small grow until they reach, an arc to where one is is none (appendix F.6)."""
    assert read_path("M0 0A0 5 0 0 1 9 0").paths[0].segments == read_path("M0 0L9 0").paths[0].segments
    (grown,) = read_path("M0 0A1 1 0 0 1 10 0").paths[0].segments
    assert isinstance(grown, Arc)
    assert grown.radius == pytest.approx(5)
    assert read_path("M0 0A5 5 0 0 1 0 0").paths == ()


@pytest.mark.parametrize(
    ("data", "error"),
    [
        ("L5 5", "begins with M"),
        ("M0 0L5", "a number is wanted at character 7"),
        ("M0 0 5 5 X", "a number is wanted"),
        ("M0 0A5 5 0 2 1 9 9", "0 or 1 is wanted"),
        ("M0 0z5 5", "a command such as M or L"),
        ("M0 0L1e99 0", "a number up to 1e+12"),
    ],
)
def test_errors_say_what_is_wanted_and_where(data, error):
    assert error in read_path(data).error


def test_what_stands_before_an_error_is_kept():
    read = read_path("M0 0L5 0L5 5L nonsense")
    assert read.paths[0].segments == read_path("M0 0L5 0L5 5").paths[0].segments
    assert all(isinstance(segment, Line) for segment in read.paths[0])
