"""Lengths and scales, exactly.

A length is read as a modeller writes it (``2.6 mm``, ``1/8 in``, ``4 ft 3 1/2 in``, ``4' 3-1/2"``,
``9 in full``) and kept as a ``Fraction`` of millimetres, so that nothing is rounded before the drawing is:
1 in is 25.4 mm and 1 ft is 304.8 mm exactly (the international inch of 1959). A length is model size unless
it says ``full``.

A scale is the ratio of full size to model size. Ratios that a standard gives as millimetres to the foot are
kept so: HO is 3.5 mm to the foot, which is 1:87.0857…, not 1:87.

A hyphen without spaces joins (``4'-3"``, ``3-1/2 in``), as on drawings; a minus sign has a space before it.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

from heraldry.errors import LengthError, nearest

MM_PER_INCH = Fraction(254, 10)
MM_PER_FOOT = 12 * MM_PER_INCH
MM_PER_UNIT: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": MM_PER_INCH,
    "ft": MM_PER_FOOT,
    "pt": MM_PER_INCH / 72,
}
"""The units a file may name; ``pt`` is the point of desktop printing, 72 to the inch."""

UNIT_IN_FULL = {
    "inch": "in",
    "inches": "in",
    "ins": "in",
    "foot": "ft",
    "feet": "ft",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "point": "pt",
    "points": "pt",
}
"""Units in full, as people write them, and the unit that is meant."""

FOOT_MARKS = "'′’"
INCH_MARKS = '"″”'
MAX_LITERAL = 60
"""Characters of one written length; more is no length but a way to keep the machine busy."""
HOW_TO_WRITE = "write 2.6 mm, 1/8 in, 4 ft 3 1/2 in or 9 in full"


@dataclass(frozen=True)
class Length:
    """An exact length in millimetres: on the finished model, or (``full``) on the real thing.

    >>> str(Length(Fraction(13, 5)))
    '2.6 mm'
    >>> str(Length(MM_PER_INCH / 3, full=True))
    '127/15 mm full'
    """

    mm: Fraction
    full: bool = False

    def __neg__(self) -> Length:
        return Length(-self.mm, self.full)

    def __str__(self) -> str:
        """The length as ``parse_length`` reads it again, without loss."""
        return f"{_exact_text(self.mm)} mm" + (" full" if self.full else "")


def _exact_text(value: Fraction) -> str:
    """A decimal where there is a finite one, else a fraction.

    >>> _exact_text(Fraction(-1, 16)), _exact_text(Fraction(1, 3))
    ('-0.0625', '1/3')
    """
    places = max(_power(value.denominator, 2), _power(value.denominator, 5))
    if value.denominator != 2 ** _power(value.denominator, 2) * 5 ** _power(value.denominator, 5):
        return str(value)
    digits = f"{abs(value.numerator) * 10**places // value.denominator:0{places + 1}d}"
    sign = "-" if value < 0 else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def _power(number: int, prime: int) -> int:
    """How often ``prime`` divides ``number``."""
    count = 0
    while number % prime == 0:
        number //= prime
        count += 1
    return count


# How a length is written. The same patterns serve ``parse_length`` and the tokens of an expression.
_VULGAR = "[¼-¾⅐-⅞]"
_FRACTION = rf"(?:[0-9]+[/⁄][0-9]+|{_VULGAR})"
_MIXED = rf"[0-9]+(?:(?:\s+|(?P<{{0}}hyphen>-)){_FRACTION}|{_VULGAR})"
_DECIMAL = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_AMOUNT = rf"(?P<{{0}}amount>{_MIXED}|{_FRACTION}|{_DECIMAL})"
_WORD_END = "(?![A-Za-z_])"
_FEET = rf"\s*(?:ft{_WORD_END}|(?!'')[{FOOT_MARKS}])"
_INCHES = rf"\s*(?:in{_WORD_END}|''|[{INCH_MARKS}])"
_METRIC = rf"\s*(?P<unit>mm|cm|m|pt){_WORD_END}"
_FEET_AND_INCHES = rf"{_AMOUNT.format('feet_')}{_FEET}(?:(?:\s*|-){_AMOUNT.format('odd_')}{_INCHES})?"
_ONE_UNIT = rf"{_AMOUNT.format('one_')}(?:{_METRIC}|(?P<inches>{_INCHES}))"
_LITERAL = re.compile(rf"(?:{_FEET_AND_INCHES}|{_ONE_UNIT})(?P<full>\s+full{_WORD_END})?")
_BARE = re.compile(_AMOUNT.format("bare_"))
_BARE_IN_ARITHMETIC = re.compile(rf"{_MIXED.format('bare_')}|{_VULGAR}|{_DECIMAL}")
_DECIMAL_COMMA = re.compile(r"([0-9]+),([0-9]+)")
_UNIT_WORD = re.compile(rf"[-+]?\s*{_AMOUNT.format('')}\s*(?P<word>[^\W\d]\w*)")


def match_length(text: str, start: int = 0) -> tuple[Length | Fraction, int] | None:
    """The length, or the bare number, that begins at ``start``, and where it ends; None if there is none.

    Raises LengthError where digits begin that cannot be read: a decimal comma, ``3-1/2`` without a unit
    (which could be a difference), a fraction over zero. ``1/2`` without a unit is a division, so only its 1
    is taken; ``3 1/2`` and ``½`` are numbers.

    >>> match_length("1/8 in + rim")
    (Length(mm=Fraction(127, 40), full=False), 6)
    >>> match_length("width / 2 - rim", 8)
    (Fraction(2, 1), 9)
    """
    if _DECIMAL_COMMA.match(text, start):
        raise _decimal_comma(text, start)
    literal = _LITERAL.match(text, start)
    if literal:
        _check_size(literal)
        return Length(_literal_mm(literal), bool(literal["full"])), literal.end()
    bare = _BARE_IN_ARITHMETIC.match(text, start)
    return (_bare(bare), bare.end()) if bare else None


def _bare(number: re.Match[str]) -> Fraction:
    _check_size(number)
    if number["bare_hyphen"]:
        whole, _, part = number[0].partition("-")
        raise LengthError(
            f"'{number[0]}' can be read in two ways, write '{whole} {part}' for the sum "
            f"or '{whole} - {part}' for the difference"
        )
    return _amount(number[0])


def _check_size(match: re.Match[str]) -> None:
    if match.end() - match.start() > MAX_LITERAL:
        raise LengthError(f"a number is too long, found {match[0][:20]}…, write at most {MAX_LITERAL} characters")


def _decimal_comma(text: str, start: int = 0) -> LengthError:
    found = _DECIMAL_COMMA.search(text, start)
    assert found is not None
    return LengthError(
        f"a comma between figures, found {found[0]}, write {found[1]}.{found[2]} with a decimal point "
        f"(between two values: {found[1]}, {found[2]} with a space)"
    )


def _literal_mm(literal: re.Match[str]) -> Fraction:
    if literal["feet_amount"]:
        odd_inches = _amount(literal["odd_amount"]) if literal["odd_amount"] else 0
        return _amount(literal["feet_amount"]) * MM_PER_FOOT + odd_inches * MM_PER_INCH
    per_unit = MM_PER_INCH if literal["inches"] else MM_PER_UNIT[literal["unit"]]
    return _amount(literal["one_amount"]) * per_unit


def _amount(text: str) -> Fraction:
    """A whole, decimal, fractional or mixed number.

    >>> _amount("3-1/2"), _amount("3½"), _amount("2.50")
    (Fraction(7, 2), Fraction(7, 2), Fraction(5, 2))
    """
    spaced = re.sub(_VULGAR, lambda vulgar: " " + unicodedata.normalize("NFKC", vulgar[0]), text)
    try:
        return sum((Fraction(part) for part in spaced.replace("⁄", "/").replace("-", " ").split()), Fraction(0))
    except ZeroDivisionError:
        raise LengthError(f"a fraction over zero, found {text}, {HOW_TO_WRITE}") from None


def parse_length(text: str, default_unit: str = "mm") -> Length:
    """Read one written length; a bare number is in ``default_unit``.

    Raises LengthError: no number, an unknown unit, a decimal comma, anything after the length.

    >>> parse_length("4' 3-1/2\\" full") == parse_length("4 ft 3 1/2 in full")
    True
    >>> str(parse_length("4 ft 3 1/2 in"))
    '1308.1 mm'
    """
    written = text.strip()
    unsigned = written.removeprefix("-").lstrip()
    length = _whole_length(unsigned, default_unit)
    if length is None:
        raise _no_length(written)
    return -length if written.startswith("-") else length


def _whole_length(text: str, default_unit: str) -> Length | None:
    bare = _BARE.fullmatch(text)
    if bare:
        return Length(_bare(bare) * unit_mm(default_unit))
    found = match_length(text)
    return found[0] if found and isinstance(found[0], Length) and found[1] == len(text) else None


def unit_mm(unit: str) -> Fraction:
    """Millimetres in one of the named units; raises LengthError for an unknown one."""
    if unit not in MM_PER_UNIT:
        raise LengthError(f"unknown unit, found '{unit}', {unit_meant(unit)}")
    return MM_PER_UNIT[unit]


def unit_meant(word: str) -> str:
    """Say which unit is meant by a word that is none.

    >>> unit_meant("inches")
    "did you mean 'in'?"
    """
    meant = UNIT_IN_FULL.get(word.casefold())
    return f"did you mean '{meant}'?" if meant else nearest(word, MM_PER_UNIT)


def _no_length(text: str) -> LengthError:
    shown = f"'{text[:MAX_LITERAL]}'" if text else "nothing"
    if _DECIMAL_COMMA.search(text):
        return _decimal_comma(text)
    unit = _UNIT_WORD.match(text)
    if unit and unit["word"] == "full":
        return LengthError(f"a full-size length without its unit, found {shown}, write 9 in full")
    if unit and unit["word"] not in MM_PER_UNIT:
        return LengthError(f"unknown unit, found '{unit['word']}' in {shown}, {unit_meant(unit['word'])}")
    return LengthError(f"this is no length, found {shown}, {HOW_TO_WRITE}")


@dataclass(frozen=True)
class Scale:
    """A ratio of full size to model size, with the name the trade gives it.

    >>> float(HO.ratio)
    87.08571428571429
    >>> HO.model_mm(9 * MM_PER_INCH)
    2.625
    """

    name: str
    ratio: Fraction
    standard: str = ""

    @property
    def mm_to_the_foot(self) -> Fraction:
        """Model millimetres for one foot of the real thing."""
        return MM_PER_FOOT / self.ratio

    def model_mm(self, full_mm: Fraction | float) -> float:
        """A full-size length at model size, both in millimetres, rounded once."""
        return float(Fraction(full_mm) / self.ratio)

    def full_mm(self, model_mm: Fraction | float) -> float:
        """A model length at full size, both in millimetres, rounded once."""
        return float(Fraction(model_mm) * self.ratio)


def _to_the_foot(mm: str) -> Fraction:
    return MM_PER_FOOT / Fraction(mm)


NMRA = "NMRA S-1.2"
NEM = "MOROP NEM 010"
BRITISH = "British practice"
LARGE = "large-scale practice"

# Where each ratio comes from: Table 1 of NEM 010 (edition of 2011) was read for every row marked NEM. The
# sheet of S-1.2 was not read: HO's 3.5 mm to the foot is from a summary of it, its other rows from memory.
# British N's 2 1/16 mm and O's 7 mm to the foot are from summaries, the other British rows from memory. The
# large-scale rows are from memory: 15 mm to the foot (sold as 1:20.3), 1/2 in to the foot, and 1:29.
HO = Scale("HO", _to_the_foot("3.5"), NMRA)
SCALES: tuple[Scale, ...] = (
    Scale("Z", Fraction(220), NEM),
    Scale("N", Fraction(160), f"{NEM}, {NMRA}"),
    Scale("British N", _to_the_foot("2.0625"), BRITISH),
    Scale("TT", Fraction(120), f"{NEM}, {NMRA}"),
    Scale("British TT", _to_the_foot("3"), BRITISH),
    HO,
    Scale("HO 1:87", Fraction(87), NEM),
    Scale("OO", _to_the_foot("4"), f"{BRITISH}, {NMRA}"),
    Scale("S", Fraction(64), f"{NEM}, {NMRA}"),
    Scale("O", Fraction(48), NMRA),
    Scale("O 1:45", Fraction(45), NEM),
    Scale("O 1:43.5", _to_the_foot("7"), BRITISH),
    Scale("Scale 1", Fraction(32), f"{NEM}, {NMRA}"),
    Scale("G 1:29", Fraction(29), LARGE),
    Scale("G 1:24", Fraction(24), LARGE),
    Scale("G 1:22.5", Fraction("22.5"), f"{NEM} (II)"),
    Scale("G 1:20.3", _to_the_foot("15"), LARGE),
    Scale("Scale 3", Fraction(16), f"{NEM} (III)"),
)
"""The scales by name, small models first."""

_SCALE_BY_NAME = {scale.name.casefold(): scale for scale in SCALES}
_SPELLED_WITH_ZERO = {
    "h0": "ho",
    "00": "oo",
    "h0 1:87": "ho 1:87",
    "0 1:45": "o 1:45",
    "0 1:43.5": "o 1:43.5",
}
_RATIO = re.compile(r"(?P<one>1\s*:\s*)?(?P<ratio>[0-9]{1,5}(?:\.[0-9]{1,6})?)")
LARGEST_RATIO = 1000
"""Beyond 1:1000 a letter as tall as a car is 3 mm: a slip of the pen, not a model."""
HOW_TO_WRITE_A_SCALE = "write a name (HO, N, O, Scale 1) or a ratio (1:48)"


def parse_scale(text: str) -> Scale:
    """A scale by its name (``HO``, ``O 1:45``) or its ratio (``1:48``, ``48``).

    Raises LengthError: unknown, a bare ``1`` or ``0`` or ``G`` (which say too little), a ratio out of range.

    >>> parse_scale("ho") is HO
    True
    >>> parse_scale("48")
    Scale(name='1:48', ratio=Fraction(48, 1), standard='')
    """
    words = " ".join(text.split()).casefold()
    named = _SCALE_BY_NAME.get(_SPELLED_WITH_ZERO.get(words, words))
    if named:
        return named
    ratio = _RATIO.fullmatch(words)
    if words in ("0", "g") or not ratio:
        raise _no_scale(words, text)
    return _scale_of_ratio(Fraction(ratio["ratio"]), bool(ratio["one"]), text)


def _scale_of_ratio(ratio: Fraction, says_one_to: bool, text: str) -> Scale:
    if ratio == 1 and not says_one_to:
        raise LengthError(f"'{text}' could be two scales, write 'Scale 1' for 1:32 or '1:1' for full size")
    if not 1 <= ratio <= LARGEST_RATIO:
        raise LengthError(f"scale out of range, found '{text}', write a ratio from 1:1 to 1:{LARGEST_RATIO}")
    return Scale(f"1:{_exact_text(ratio)}", ratio)


def _no_scale(words: str, text: str) -> LengthError:
    if words in ("0", "g"):
        letter = "o" if words == "0" else "g"
        family = [scale.name for scale in SCALES if scale.name.casefold().split()[0] == letter]
        return LengthError(f"'{text}' is more than one scale, write " + " or ".join(family))
    shown = f"'{text[:MAX_LITERAL]}'" if words else "nothing"
    known = nearest(text[:MAX_LITERAL], [scale.name for scale in SCALES])
    return LengthError(f"unknown scale, found {shown}, {known}; {HOW_TO_WRITE_A_SCALE}")


@dataclass(frozen=True)
class Ruler:
    """What one file measures with: the unit of its bare numbers, and the scale of its full-size lengths.

    >>> Ruler("mm", HO).model_mm(parse_length("9 in full"))
    2.625
    """

    unit: str = "mm"
    scale: Scale | None = None

    def model_mm(self, length: Length) -> float:
        """A length at model size, mm; raises LengthError for a full-size length in a file without a scale."""
        if not length.full:
            return float(length.mm)
        if self.scale is None:
            raise LengthError(f'a full-size length in a file without a scale, found {length}, add scale = "HO"')
        return self.scale.model_mm(length.mm)

    @property
    def mm_per_unit(self) -> float:
        """Millimetres in one of the file's units; raises LengthError for an unknown unit."""
        return float(unit_mm(self.unit))


MILLIMETRES = Ruler()
