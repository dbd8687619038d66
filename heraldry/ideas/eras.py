"""Eras: the letters and the colours that an era would have taken. Common practice, no source, as all of taste is.

Roman and slab-serifed letters to about 1910, upright gothic to the 1930s, wide and leaning gothic with the
streamliners, plain heavy gothic after that.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.errors import HeraldryError, nearest
from heraldry.ideas.hands import Hand


@dataclass(frozen=True)
class Era:
    """Hands for names and for initials; pairs of colours, the first one dark enough for a ground."""

    name: str
    since: int
    """The first year in which its letters are taken."""
    titles: tuple[Hand, ...]
    initials: tuple[Hand, ...]
    colours: tuple[tuple[str, str], ...]


ROMAN = Hand("roman", 0.17, least=0.6, most=1.15)
SLAB = Hand("slab", 0.18, least=0.6, most=1.2)
GOTHIC = Hand("gothic", 0.19, least=0.58, most=1.15)
GOTHIC_CUT = Hand("gothic", 0.2, "cut", least=0.6, most=1.15)
WIDE = Hand("gothic", 0.19, least=0.6, most=1.5)
LEANING = Hand("gothic", 0.2, slant=12.0, least=0.65, most=1.45)
HEAVY = Hand("gothic", 0.22, least=0.62, most=1.4)
HEAVY_CUT = Hand("gothic", 0.22, "cut", least=0.62, most=1.3)

ERAS = {
    "1880s": Era(
        "1880s",
        0,
        (ROMAN, SLAB, SLAB),
        (ROMAN, SLAB),
        (("#16352a", "#a33322"), ("#4a1518", "#a8741a"), ("#1d2d4f", "#a8261d"), ("#2b2119", "#8c5a1c")),
    ),
    "1920s": Era(
        "1920s",
        1910,
        (GOTHIC, GOTHIC, GOTHIC_CUT, SLAB),
        (GOTHIC_CUT, SLAB, HEAVY),
        (("#1e4a36", "#b3321f"), ("#1a1816", "#b3321f"), ("#17345e", "#b06a17"), ("#5a1f1c", "#23402f")),
    ),
    "1950s": Era(
        "1950s",
        1938,
        (LEANING, WIDE, GOTHIC),
        (LEANING, HEAVY),
        (("#16365f", "#c2331d"), ("#7c1d22", "#2a3a4c"), ("#1b4a43", "#c8741a"), ("#2c2f57", "#c2461d")),
    ),
    "1970s": Era(
        "1970s",
        1962,
        (HEAVY, WIDE, HEAVY_CUT),
        (HEAVY, HEAVY_CUT),
        (("#10406e", "#d0461c"), ("#174b32", "#d08a12"), ("#1e1d1f", "#c8321e"), ("#5b2a1c", "#d0761c")),
    ),
}
FIRST_YEAR = 1825
"""The first public railway with engines of steam was opened; from memory."""
OLD = frozenset({"1880s", "1920s"})
EARLY = OLD | {"1950s"}
LATE = frozenset({"1950s", "1970s"})
"""Eras that have some frame or field in common."""

LIGHT_COLOURS = (("#f2ead2", "#e2b33c"), ("#ffffff", "#e2b33c"), ("#efe3bd", "#d98a5a"))
"""For dark paint: lettering in a light colour, and a warm second one."""


def era_named(text: str) -> Era:
    """An era by its name or by a year in it; raises HeraldryError for what is neither.

    >>> era_named("1920s").name, era_named("1936").name, era_named("1891").name
    ('1920s', '1920s', '1880s')
    """
    clean = text.strip().lower().removesuffix("s")
    if not (clean.isdigit() and len(clean) == 4):
        raise HeraldryError(f"an era is a year or a decade, found '{text}', {nearest(text, ERAS)}")
    year = int(clean)
    if year < FIRST_YEAR:
        raise HeraldryError(f"there was no railroad in {year}, an era is one from {FIRST_YEAR} on")
    return max((era for era in ERAS.values() if era.since <= year), key=lambda era: era.since)
