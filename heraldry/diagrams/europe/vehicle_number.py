"""Twelve-digit wagon numbers, and the six- or seven-digit numbers of engines, with their check digits.

The check digit is Luhn's: from the right the digits before it count 2, 1, 2, 1… times, and the digits of the
products are summed; it makes the sum a multiple of ten (UIC leaflet 438, from public descriptions of it; the
leaflet itself was not read). A number may be given without its check digit: then it is worked out.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from stdnum import luhn

from heraldry.errors import NumberError

WAGON_DIGITS = 11
"""Digits before the check digit."""
ENGINE_DIGITS = 6
"""The same, of engine numbers with a class of three digits and a number of three."""
LONGEST_SHOWN = 30
_SEPARATORS = re.compile(r"[ \-–.]")
_COUNTRY = re.compile("[A-Z]{1,3}")
_KEEPER = re.compile("[A-ZÄÖÜ]{2,5}")


@dataclass(frozen=True, slots=True)
class WagonNumber:
    """A wagon number whose check digit is right: exchange code, country, type, serial, check digit.

    >>> number = wagon_number("21 81 2471 217")
    >>> str(number)
    '21 81 2471 217-3'
    """

    digits: str

    @property
    def exchange(self) -> str:
        """Digits 1 and 2: how the wagon may be exchanged."""
        return self.digits[:2]

    @property
    def country(self) -> str:
        """Digits 3 and 4: the country of registration; the owning railway before 2006."""
        return self.digits[2:4]

    @property
    def type(self) -> str:
        """Digits 5 to 8: the kind of wagon."""
        return self.digits[4:8]

    @property
    def serial(self) -> str:
        """Digits 9 to 11: the wagon among its kind."""
        return self.digits[8:11]

    @property
    def check_digit(self) -> str:
        """Digit 12."""
        return self.digits[11]

    def __str__(self) -> str:
        return f"{self.exchange} {self.country} {self.type_and_serial}"

    @property
    def type_and_serial(self) -> str:
        """The last line on a wagon: ``2471 217-3``."""
        return f"{self.type} {self.serial}-{self.check_digit}"

    def lines(self, exchange_sign: str = "", country_letters: str = "", keeper: str = "") -> tuple[str, str, str]:
        """The three lines at the left of a wagon's side, as carried since 2006.

        Letters after the digits are optional: the sign of exchange (RIV, TEN…), then country and keeper, with
        a hyphen. Raises NumberError: a country of other than 1 to 3 letters, a keeper of other than 2 to 5, a
        keeper without a country.

        >>> wagon_number("21 81 2471 217-3").lines("RIV", "A", "UMR")
        ('21 RIV', '81 A-UMR', '2471 217-3')
        """
        _check_letters(country_letters, keeper)
        owner = "-".join(filter(None, (country_letters, keeper)))
        return f"{self.exchange} {exchange_sign}".strip(), f"{self.country} {owner}".strip(), self.type_and_serial


@dataclass(frozen=True, slots=True)
class EngineNumber:
    """An engine number whose check digit is right.

    >>> str(engine_number("118 098"))
    '118 098-3'
    """

    digits: str

    def __str__(self) -> str:
        return f"{self.digits[:3]} {self.digits[3:6]}-{self.digits[6]}"


def wagon_number(text: str) -> WagonNumber:
    """A wagon number from 12 digits, whose last one is checked, or from 11, to which it is added.

    Spaces, hyphens and points between the digits are passed over. Raises NumberError.
    """
    return WagonNumber(_checked(text, WAGON_DIGITS, "a wagon number"))


def engine_number(text: str) -> EngineNumber:
    """An engine number from 7 digits, whose last one is checked, or from 6, to which it is added."""
    return EngineNumber(_checked(text, ENGINE_DIGITS, "an engine number"))


def _checked(text: str, count: int, what: str) -> str:
    digits = _SEPARATORS.sub("", text.strip())
    shown = f"'{text.strip()[:LONGEST_SHOWN]}'" if text.strip() else "nothing"
    if not re.fullmatch("[0-9]+", digits):
        raise NumberError(f"{what} is digits, spaces and a hyphen, found {shown}")
    if len(digits) not in (count, count + 1):
        raise NumberError(f"{what} has {count} digits and a check digit, found {len(digits)} digits in {shown}")
    right = luhn.calc_check_digit(digits[:count])
    if digits[count:] not in ("", right):
        raise NumberError(f"the check digit is wrong, found {digits[count]} in {shown}, {right} would be right")
    return digits[:count] + right


def _check_letters(country: str, keeper: str) -> None:
    if country and not _COUNTRY.fullmatch(country):
        raise NumberError(f"a country is 1 to 3 capital letters, found '{country[:LONGEST_SHOWN]}'")
    if keeper and not _KEEPER.fullmatch(keeper):
        raise NumberError(f"a keeper is 2 to 5 capital letters, found '{keeper[:LONGEST_SHOWN]}'")
    if keeper and not country:
        raise NumberError(f"a keeper follows its country's letters, found '{keeper}' alone, give country_letters too")
