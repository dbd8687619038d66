"""Container numbers of ISO 6346: owner code, category, serial number, check digit; and the size and type code.

The check digit: letters count from A = 10, passing over the multiples of 11; the ten characters are weighted
1, 2, 4…, and the sum is taken modulo 11, a remainder of 10 being written 0 (ISO 6346, by way of python-stdnum).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from stdnum import iso6346

from heraldry.errors import NumberError

CATEGORIES: Mapping[str, str] = MappingProxyType(
    {"U": "freight container", "J": "detachable equipment", "Z": "trailer or chassis"}
)
LONGEST_SHOWN = 30
_PARTS = re.compile("(?P<owner>[A-Z]{3})(?P<category>[A-Z])(?P<serial>[0-9]{6})(?P<check>[0-9]?)")
_SIZE_AND_TYPE = re.compile("[0-9A-Z]{4}")


@dataclass(frozen=True, slots=True)
class ContainerNumber:
    """A container number whose check digit is right; ``str()`` is how it is lettered, without the box round the last.

    >>> str(container_number("CSQU305438"))
    'CSQU 305438 3'
    """

    owner: str
    category: str
    serial: str
    check_digit: str

    def __str__(self) -> str:
        return f"{self.owner}{self.category} {self.serial} {self.check_digit}"

    @property
    def kind(self) -> str:
        """What the category letter says it is."""
        return CATEGORIES[self.category]


def container_number(text: str) -> ContainerNumber:
    """A container number from 11 characters, the last of which is checked, or from 10, to which it is added.

    Spaces and hyphens are passed over. Raises NumberError: not three letters, a category and six digits; a
    category other than U, J and Z; a wrong check digit.
    """
    shown = f"'{text.strip()[:LONGEST_SHOWN]}'" if text.strip() else "nothing"
    match = _PARTS.fullmatch(re.sub("[ -]", "", text.strip()))
    if not match:
        raise NumberError(f"this is no container number, found {shown}, write 3 letters, U, J or Z, and 6 digits")
    if match["category"] not in CATEGORIES:
        known = ", ".join(f"{letter} {kind}" for letter, kind in CATEGORIES.items())
        raise NumberError(f"the fourth letter is a category, found {match['category']} in {shown}, known: {known}")
    right = iso6346.calc_check_digit(match["owner"] + match["category"] + match["serial"])
    if match["check"] not in ("", right):
        raise NumberError(f"the check digit is wrong, found {match['check']} in {shown}, {right} would be right")
    return ContainerNumber(match["owner"], match["category"], match["serial"], right)


def size_and_type(text: str) -> str:
    """A size and type code (``22G1``) as it is lettered; its four characters are not interpreted.

    Raises NumberError for anything but four capital letters and digits.
    """
    code = text.strip()
    if not _SIZE_AND_TYPE.fullmatch(code):
        shown = f"'{code[:LONGEST_SHOWN]}'" if code else "nothing"
        raise NumberError(f"a size and type code is 4 capital letters and digits, found {shown}, write such as 22G1")
    return code
