"""Each rule is kept by a herald that keeps it, and broken by one that breaks it; sizes worked out by hand."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from heraldry.errors import DescriptionError
from heraldry.ideas.proofs import Proof, described, proof_of
from heraldry.ideas.rules import (
    RULES,
    alignment,
    balance,
    clear,
    coverage,
    fineness,
    line_weights,
    one_large,
    reading,
    ring_letters,
    size,
)
from heraldry.ideas.sketch import Part, Sketch

ROAD = described('kind = "road"\nname = "Fern Hollow"\n[ink.black]\ncolour = "#111111"\n', Path("road.toml"), None)
HEAD = 'kind = "herald"\nroad = "road.toml"\nwidth = "20 mm"\n'


def proof(shapes: str, art: str, width: str = "20 mm", **sketch: object) -> Proof:
    """A herald of these shapes, 20 mm wide, in black."""
    known = {"subject": "disc", "fine": 0.016, **sketch}
    text = f'{HEAD.replace("20 mm", width)}{shapes}[plate.black]\nink = "black"\nart = "{art}"\n'
    return proof_of(Sketch("a", "b", "c", "d", Part(), **known), text, Path("x.toml"), ROAD)  # type: ignore[arg-type]


def text(name: str, cap: float, at: str = "[0, 0]", words: str = "FERN") -> str:
    return f'[shape.{name}]\ntext = "{words}"\ncap_height = {cap}\nat = {at}\n'


DISC = "[shape.disc]\ncircle = 10\n"
HALF = "[shape.disc]\nring = 10\nwidth = 3\n"


def test_every_rule_has_its_name_once() -> None:
    assert len({rule.name for rule in RULES}) == len(RULES) == 10


def test_ink_covers_a_third_to_two_thirds() -> None:
    half = proof(HALF, "disc")
    assert coverage.inked(half) == pytest.approx(1 - 0.7**2, abs=0.003)  # a ring by its two radii
    assert coverage.falls_short(half) == 0.0
    assert coverage.inked(proof(DISC, "disc")) == pytest.approx(1.0, abs=0.003)
    assert coverage.falls_short(proof(DISC, "disc")) == 1.0
    assert coverage.falls_short(proof("[shape.disc]\nring = 10\nwidth = 0.5\n", "disc")) > 0.9


def test_the_centre_of_mass_is_near_the_middle() -> None:
    assert balance.falls_short(proof(HALF, "disc")) == 0.0
    wedge = proof("[shape.disc]\npolygon = [[0, 0], [20, 0], [0, 20]]\n", "disc")
    # the centre of a right triangle lies at a third of its sides, a sixth from the middle of its box
    assert balance.offset(wedge) == pytest.approx((-1 / 6, -1 / 6))
    assert balance.falls_short(wedge) == 1.0


def test_one_thing_is_large() -> None:
    large = proof(HALF + text("name", 3.0), "disc + name")
    assert one_large.dominance(large) == pytest.approx(20 / 3)
    assert one_large.falls_short(large) == 0.0
    rivals = proof(HALF + text("name", 3.0) + text("other", 2.9, "[0, 4]"), "disc + name + other", subject="name")
    assert one_large.falls_short(rivals) > 0.5


def test_line_weights_come_in_two_steps() -> None:
    def rings(*weights: float) -> Proof:
        names = [f"r{i}" for i in range(len(weights))]
        shapes = [
            f"[shape.{n}]\nring = {10 - 2 * i}\nwidth = {w}\n"
            for i, (n, w) in enumerate(zip(names, weights, strict=True))
        ]
        return proof("".join(shapes), " + ".join(names))

    assert line_weights.weights(rings(0.3, 0.7, 0.31)) == (0.3, 0.7)
    assert line_weights.falls_short(rings(0.3, 0.7)) == 0.0
    assert line_weights.falls_short(rings(0.3, 0.5, 0.8)) == 0.5
    assert line_weights.falls_short(rings(0.2, 0.3, 0.5, 0.8)) == 1.0


def ring_proof(cap: float, below: str = "RY", above: str = "FERN HOLLOW & LAKE") -> Proof:
    """Two texts on a ring of 3 mm, their capitals about a radius of 8.5 mm."""
    around = (
        f'[shape.name]\ntext = "{above}"\ncap_height = {cap}\n'
        f'round = {{ radius = {8.5 - cap / 2}, reads = "outside" }}\n'
        f'[shape.low]\ntext = "{below}"\ncap_height = {cap}\n'
        f'round = {{ radius = {8.5 + cap / 2}, reads = "inside", middle = "bottom" }}\n'
    )
    return proof(HALF + around, "disc - name - low", ring_letters=("name", "low"), band=0.15)


def test_letters_fill_their_ring_and_leave_room_between() -> None:
    good = ring_proof(1.8, "RY")
    assert ring_letters.fills(good) == pytest.approx([0.6, 0.6])
    assert ring_letters.falls_short(good) == 0.0
    assert ring_letters.falls_short(ring_proof(1.2, "RY")) == 1.0
    crowded = ring_proof(1.8, "RAILROAD", "FERN HOLLOW & LAKE TOWN")
    assert ring_letters.least_free_mm(crowded) < 1.35 < ring_letters.least_free_mm(good)
    assert ring_letters.falls_short(crowded) == 1.0


def test_a_herald_without_a_ring_keeps_the_rule_of_rings() -> None:
    assert ring_letters.falls_short(proof(HALF, "disc")) == 0.0
    assert ring_letters.least_free_mm(proof(HALF, "disc")) == math.inf


def test_nothing_nearly_touches() -> None:
    def bars(apart: float) -> Proof:
        shapes = f"[shape.disc]\nbox = 20\nheight = 5\n[shape.low]\nbox = 20\nheight = 5\ncentre = [0, {-5 - apart}]\n"
        return proof(shapes, "disc + low")

    assert fineness.falls_short(bars(1.0)) == 0.0
    assert 0.0 < fineness.falls_short(bars(0.1)) < 1.0
    assert fineness.falls_short(bars(0.01)) == 1.0


def test_lettering_can_be_read() -> None:
    assert reading.falls_short(proof(HALF + text("name", 2.0), "disc + name")) == 0.0
    assert reading.falls_short(proof(HALF + text("name", 0.4), "disc + name")) == 1.0
    assert 0.0 < reading.falls_short(proof(HALF + text("name", 0.6), "disc + name")) < 1.0


def test_middles_are_aligned_or_clearly_apart() -> None:
    def two(aside: float) -> Proof:
        return proof(HALF + text("name", 2.0) + text("low", 2.0, f"[{aside}, -4]"), "disc + name + low")

    assert alignment.near_misses(two(0.0)) == 0
    assert alignment.near_misses(two(0.2)) == 1  # a hundredth of the width
    assert alignment.near_misses(two(2.0)) == 0
    assert alignment.falls_short(two(0.2)) == 0.25


def test_a_field_keeps_clear_of_its_frame() -> None:
    def star(radius: float) -> Proof:
        shapes = f"{HALF}[shape.star]\nstar = 5\nradius = {radius}\n"
        return proof(shapes, "disc + star", inside=("star",))

    assert clear.stray(star(5.0)) == 0.0
    assert clear.falls_short(star(5.0)) == 0.0
    assert clear.falls_short(star(9.0)) == 1.0


def test_the_ink_is_as_wide_as_was_asked() -> None:
    assert size.falls_short(proof(HALF, "disc")) == 0.0
    assert size.falls_short(proof(HALF, "disc", "22 mm")) == 1.0
    with pytest.raises(DescriptionError, match="reaches over the finished width of 19"):
        proof(HALF, "disc", "19 mm")
