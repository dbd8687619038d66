"""What no model has room for is refused, so that a forgotten `full` is told; what is large and meant is not."""

from __future__ import annotations

import pytest

from heraldry.errors import LengthError
from heraldry.resolve.largest import refuse_huge
from heraldry.units import Scale, parse_scale


@pytest.mark.parametrize(
    ("length_mm", "scale"), [(1676.4, "O"), (501.0, None), (900.0, "HO"), (2001.0, "1:1"), (1676.4, "G 1:20.3")]
)
def test_a_forgotten_full_is_told(length_mm: float, scale: str | None) -> None:
    with pytest.raises(LengthError, match="unless it says full"):
        refuse_huge("wide", length_mm, scale_of(scale))


@pytest.mark.parametrize(("length_mm", "scale"), [(500.0, None), (500.0, "Z"), (762.0, "1:8"), (1676.4, "1:1")])
def test_what_is_large_and_meant_is_drawn(length_mm: float, scale: str | None) -> None:
    refuse_huge("wide", length_mm, scale_of(scale))


def scale_of(name: str | None) -> Scale | None:
    return parse_scale(name) if name else None
