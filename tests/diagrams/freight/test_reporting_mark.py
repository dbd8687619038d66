"""Reporting marks; the marks here are invented."""

import pytest

from heraldry.diagrams.freight import ReportingMark
from heraldry.errors import DataError


@pytest.mark.parametrize(
    ("painted", "letters", "owner"),
    [
        ("UM", "UM", "railroad"),
        ("U&M", "UM", "railroad"),
        ("U. & M. R.", "UMR", "railroad"),
        ("UMGR", "UMGR", "railroad"),
        ("UMGX", "UMGX", "private owner"),
        ("UMGU", "UMGU", "container owner"),
        ("UMGZ", "UMGZ", "trailer owner"),
        ("XUM", "XUM", "railroad"),
    ],
)
def test_the_last_letter_says_whose_the_car_is(painted, letters, owner):
    mark = ReportingMark(painted)
    assert (mark.letters, mark.owner) == (letters, owner)


@pytest.mark.parametrize(
    ("painted", "said"),
    [
        ("", "found nothing"),
        ("um", "found 'um', write capital letters"),
        ("U-M", "found 'U-M'"),
        ("ÜM", "found 'ÜM'"),
        ("UM1", "found 'UM1'"),
        ("U", "2 to 4 letters, found 1 in 'U'"),
        ("UMGRR", "2 to 4 letters, found 5"),
        ("& .", "found 0 in '& .'"),
        ("U" + " " * 100 + "M", "no reporting mark"),
    ],
)
def test_what_is_no_mark_is_refused(painted, said):
    with pytest.raises(DataError) as caught:
        ReportingMark(painted)
    assert said in str(caught.value)
