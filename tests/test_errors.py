"""Faults are one line each and of a length that can be read, whatever a file holds."""

from __future__ import annotations

import pytest

from heraldry.errors import LONGEST_FOUND, LONGEST_PART, NAMES_LISTED, Fault, nearest


@pytest.mark.parametrize("sign", ["\n", "\r", "\x1b", "\u2028", "\x00"])
def test_a_fault_is_one_line_with_no_unseen_sign(sign: str) -> None:
    told = str(Fault("one.toml", 3, f"a{sign}b", f"c{sign}d", f"e{sign}f"))
    assert told.isprintable()
    assert told.startswith("one.toml:3: a\\")


def test_a_long_text_is_shortened_in_its_middle() -> None:
    told = str(Fault("one.toml", 3, "no " + "W" * 5000 + " here", "x" * 5000, "y" * 5000))
    assert len(told) < 2 * LONGEST_PART + LONGEST_FOUND + 60
    assert " here, found x" in told


def test_many_known_names_are_not_all_listed() -> None:
    names = [f"name{i}" for i in range(300)]
    assert nearest("zzz", names).count("name") == NAMES_LISTED
    assert nearest("zzz", names).endswith("and 280 more")
