"""From an alphabet's table (or its bare name) to the alphabet itself: one of ours, or a font."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from heraldry.describe.description import Description
from heraldry.describe.models import AlphabetTable
from heraldry.errors import DescriptionError, Fault, HeraldryError, LetteringError, key_named, nearest
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.fonts import font_from_family, font_from_file
from heraldry.resolve.yardstick import Yardstick

PARAMETER_NAMES = {"slant": "slant_deg"}
"""Keys whose parameter says its unit in its name."""
NUMBER_KEYS = ("stem", "bar", "width", "contrast", "slant", "aperture", "serif", "bracket", "letter_gap", "word_gap")
WORD_KEYS = ("corner", "stencil")
SAYS_KEY_WITHIN = 5
"""Words of an error in which the key that it is about is named: alphabet NAME has KEY."""
FONT_KEYS = ("face", "axes", "features", "optical", "licensed")
OUR_KEYS = ("bar", "contrast", "slant", "aperture", "serif", "bracket", "letter_gap", "word_gap", *WORD_KEYS)


def alphabet_finder(description: Description, yardstick: Yardstick) -> Callable[[str], Alphabet]:
    """A function from a name to an alphabet: the file's own, its road's, or one of ours by its style.

    The function raises LetteringError for an unknown name, and DescriptionError for a table that makes no alphabet:
    a fault of the table, in whichever file it stands, and not of those that are lettered with it.
    """
    tables = description.store("alphabet")

    @cache
    def find(name: str) -> Alphabet:
        if name in tables:
            owner, table = tables[name]
            try:
                return _made(name, table, owner.folder, yardstick)
            except HeraldryError as error:
                raise DescriptionError([_fault(owner, name, table, str(error))]) from None
        if name in STYLES:
            return ours(name)
        raise LetteringError(f"no alphabet is called '{name}', {nearest(name, [*tables, *STYLES])}")

    return find


def _fault(owner: Description, name: str, table: AlphabetTable, message: str) -> Fault:
    """What is wrong with a table, at the key that the message names, in the words of the file."""
    for key, parameter in PARAMETER_NAMES.items():
        message = message.replace(parameter, key)
    told = message.removeprefix(f"alphabet {table.style}: ")
    key_told = key_named(told, table.model_fields_set, SAYS_KEY_WITHIN)
    path = ("alphabet", name, key_told) if key_told else ("alphabet", name)
    return owner.fault(path, f"{'.'.join(path)}: {told}")


def _made(name: str, table: AlphabetTable, folder: Path, yardstick: Yardstick) -> Alphabet:
    sources = [key for key in ("style", "file", "family") if getattr(table, key) is not None]
    if len(sources) != 1:
        raise LetteringError(
            f"alphabet '{name}' needs one of style, file or family, found {' and '.join(sources) or 'none of them'}"
        )
    if table.style is not None:
        return _of_ours(name, table, yardstick)
    return _font(name, table, folder, yardstick)


def _of_ours(name: str, table: AlphabetTable, yardstick: Yardstick) -> Alphabet:
    _refuse(name, table, FONT_KEYS, "a matter of fonts")
    words = {key: getattr(table, key) for key in WORD_KEYS if getattr(table, key) is not None}
    given: dict[str, Any] = {**_numbers(table, yardstick), **words}
    parameters = {PARAMETER_NAMES.get(key, key): value for key, value in given.items()}
    return ours(str(table.style), LetterParameters(**parameters), name)


def _font(name: str, table: AlphabetTable, folder: Path, yardstick: Yardstick) -> Alphabet:
    _refuse(name, table, OUR_KEYS, "a matter of our own alphabets")
    numbers = _numbers(table, yardstick)
    wishes: dict[str, Any] = {
        "axes": table.axes or {},
        "stem": numbers.get("stem"),
        "width": numbers.get("width"),
        "features": tuple(table.features or ()),
        "optical": bool(table.optical),
        "licensed": bool(table.licensed),
    }
    if table.family is not None:
        return font_from_family(table.family, str(table.face or ""), **wishes)
    if isinstance(table.face, str):
        raise LetteringError(f"alphabet '{name}' has face = '{table.face}', in a font file a face is a number")
    return font_from_file(folder / str(table.file), table.face or 0, **wishes)


def _numbers(table: AlphabetTable, yardstick: Yardstick) -> dict[str, float]:
    given = ((key, getattr(table, key)) for key in NUMBER_KEYS)
    return {key: yardstick.number(raw) for key, raw in given if raw is not None}


def _refuse(name: str, table: AlphabetTable, keys: tuple[str, ...], whose: str) -> None:
    """A key that the alphabet cannot follow is an error, not a wish."""
    wrong = [key for key in keys if getattr(table, key) is not None]
    if wrong:
        raise LetteringError(f"alphabet '{name}' has {' and '.join(wrong)}, which is {whose}: leave it out")
