"""Who has a letter that a font lacks: our own alphabets, and the font families of this computer."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Sequence
from functools import cache

from heraldry.lettering.alphabets import STYLES
from heraldry.lettering.fonts.installed import FC_LIST_SECONDS, installed_families

NAMED_AT_MOST = 3
"""Families that are named; of more only the number is told."""


def who_has(letters: str) -> str:
    """In words, who has all the letters.

    >>> who_has("AÉ").split(",")[0]
    'our gothic'
    """
    ours = [f"our {name}" for name, style in STYLES.items() if set(letters) <= set(style.letters)]
    known = [*ours, *_families_with("".join(sorted(set(letters))))]
    if not known:
        return "no alphabet of ours and no installed family has it" if len(letters) == 1 else "none known has them all"
    return f"{_some(known)} {'has' if len(known) == 1 else 'have'} {'it' if len(letters) == 1 else 'them'}"


def _some(names: Sequence[str]) -> str:
    more = len(names) - NAMED_AT_MOST
    if more > 0:
        return f"{', '.join(names[:NAMED_AT_MOST])} and {more} more"
    return " and ".join([*([", ".join(names[:-1])] if names[:-1] else []), names[-1]])


@cache
def _families_with(letters: str) -> tuple[str, ...]:
    """Installed families, sorted, as fontconfig knows their letters; none where there is no fontconfig."""
    lister = shutil.which("fc-list")
    if lister is None:
        return ()
    pattern = ":charset=" + " ".join(f"{ord(letter):x}" for letter in letters)
    try:
        answer = subprocess.run(
            [lister, pattern, "--format", "%{family[0]}\\n"],
            capture_output=True,
            text=True,
            timeout=FC_LIST_SECONDS,
            check=True,
        )
    except (OSError, subprocess.SubprocessError):
        return ()
    return tuple(sorted(set(answer.stdout.splitlines()) & set(installed_families())))
