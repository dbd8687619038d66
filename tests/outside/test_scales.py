"""The scales held against what standards and the trade say of them.

Sources: MOROP NEM 010 (2011), Table 1 and section 3.5, read in public copies. NMRA S-1.2: 3.5 mm to the foot
for HO from a summary of it, everything else of it from memory. British scales by millimetres to the foot:
2 1/16 mm (N) and 7 mm (O) from public summaries; 3 mm (TT) and 4 mm (OO) from memory. 1 ft = 304.8 mm
exactly: the international yard and pound agreement of 1959.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from heraldry.units import SCALES, parse_length, parse_scale

NINE_INCHES = parse_length("9 in").mm


@pytest.mark.parametrize(
    ("name", "ratio", "gauge_mm"),
    [  # NEM 010, Table 1: nominal size, scale, track gauge
        ("Z", 220, "6.5"),
        ("N", 160, "9"),
        ("TT", 120, "12"),
        ("HO 1:87", 87, "16.5"),
        ("S", 64, "22.5"),
        ("O 1:45", 45, "32"),
        ("Scale 1", 32, "45"),
        ("G 1:22.5", "22.5", "64"),
        ("Scale 3", 16, "89"),
    ],
)
def test_ratios_of_nem_010(name, ratio, gauge_mm):
    scale = parse_scale(name)
    assert scale.ratio == Fraction(ratio)
    assert "NEM 010" in scale.standard
    # The gauges of the table are those of 1,435 mm track, rounded: the ratio must bring them near it.
    assert float(scale.ratio) * float(gauge_mm) == pytest.approx(1435, rel=0.01)


@pytest.mark.parametrize(
    ("name", "mm_to_the_foot"),
    [
        ("HO", "3.5"),  # NMRA S-1.2, from a summary
        ("British N", "2.0625"),  # 2 1/16 mm, from a summary
        ("O 1:43.5", "7"),  # from a summary
        ("OO", "4"),  # from memory
        ("British TT", "3"),  # from memory
        ("O", "6.35"),  # 1/4 in to the foot, from memory
        ("S", "4.7625"),  # 3/16 in to the foot, from memory
        ("TT", "2.54"),  # 1/10 in to the foot, from memory
        ("Scale 1", "9.525"),  # 3/8 in to the foot, from memory
        ("G 1:24", "12.7"),  # 1/2 in to the foot, from memory
        ("G 1:20.3", "15"),  # from memory
    ],
)
def test_millimetres_to_the_foot(name, mm_to_the_foot):
    assert parse_scale(name).mm_to_the_foot == Fraction(mm_to_the_foot)


@pytest.mark.parametrize(
    ("name", "sold_as"),
    [  # the ratios printed on boxes: public summaries of the standards
        ("HO", "87.1"),
        ("British N", "148"),
        ("O 1:43.5", "43.5"),
        ("OO", "76.2"),
        ("G 1:20.3", "20.3"),
    ],
)
def test_ratios_as_models_are_sold_by_them(name, sold_as):
    assert float(parse_scale(name).ratio) == pytest.approx(float(sold_as), rel=0.002)


@pytest.mark.parametrize(
    ("name", "mm"),
    [  # worked by hand: 228.6 mm × mm to the foot / 304.8, or 228.6 mm / ratio
        ("HO", 2.625),
        ("N", 1.42875),
        ("OO", 3.0),
        ("S", 3.571875),
        ("O", 4.7625),
        ("Scale 1", 7.14375),
        ("G 1:22.5", 10.16),
    ],
)
def test_a_nine_inch_letter(name, mm):
    assert parse_scale(name).model_mm(NINE_INCHES) == mm


def test_a_nine_inch_letter_where_it_does_not_come_out_even():
    # worked by hand from the ratio 87.1 that is printed for HO: 228.6 / 87.1
    assert parse_scale("87.1").model_mm(NINE_INCHES) == pytest.approx(2.62457, abs=5e-6)
    assert parse_scale("Z").model_mm(NINE_INCHES) == pytest.approx(1.03909, abs=5e-6)
    assert parse_scale("G 1:29").model_mm(NINE_INCHES) == pytest.approx(7.882759, abs=5e-7)


def test_a_drawing_for_one_scale_used_for_another():
    # NEM 010, section 3.5: from a drawing at 1:45 to a model at 1:87 by the factor 0.517
    factor = parse_scale("O 1:45").ratio / parse_scale("HO 1:87").ratio
    assert round(float(factor), 3) == 0.517


def test_no_scale_is_without_its_source():
    assert {scale.standard.split(",")[0] for scale in SCALES} <= {
        "NMRA S-1.2",
        "MOROP NEM 010",
        "MOROP NEM 010 (II)",
        "MOROP NEM 010 (III)",
        "British practice",
        "large-scale practice",
    }
