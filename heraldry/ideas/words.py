"""The words of a railroad's name, as heralds use them: the body, what kind of company it is, lines, initials.

Heralds are lettered in capitals. "Fern Valley & Western Railroad" has the body FERN VALLEY & WESTERN and the kind
RAILROAD; a small word stays on one line with the word after it.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.errors import HeraldryError
from heraldry.pages.writing import balanced

KINDS = frozenset(
    [
        "RAILROAD",
        "RAILWAY",
        "RAIL",
        "ROAD",
        "LINE",
        "LINES",
        "ROUTE",
        "SYSTEM",
        "COMPANY",
        "CO",
        "CO.",
        "RY",
        "RY.",
        "RR",
        "R.R.",
        "TRAMWAY",
        "TRACTION",
        "TRANSIT",
        "BAHN",
        "EISENBAHN",
        "CHEMIN",
        "FERROCARRIL",
    ]
)
"""Words at the end of a name that say what kind of company it is."""
JOINED_TO_THE_NEXT = frozenset(["OF", "THE", "DE", "DU", "DES", "LA", "LE", "LES"])
"""Small words that stand on one line with the word after them."""
JOINERS = frozenset(["&", "AND", "ET", "Y", "OG", "UND"])
LONGEST_NAME = 80
MOST_INITIALS = 4


@dataclass(frozen=True)
class Words:
    """The texts that heralds of one railroad are lettered with; an empty one is not there."""

    name: str
    body: str
    kind: str
    initials: str
    founded: str = ""

    @property
    def second(self) -> str:
        """What stands under the body: the kind of company, else since when, else the initials."""
        return self.kind or self.founded or self.initials

    def lines(self, count: int) -> tuple[str, ...]:
        """The body on so many lines, or fewer, as even as can be."""
        return parted(self.body, count)

    @property
    def halves(self) -> tuple[str, ...]:
        """The body in two, an ampersand with what follows it, for two places that are apart."""
        return parted(self.body, 2, JOINED_TO_THE_NEXT | JOINERS)


def words_of(name: str, initials: str | None = None, founded: int | None = None) -> Words:
    """The words of a name; initials follow from it unless they are given. Raises HeraldryError for no name.

    >>> words = words_of("Fern Valley & Western Railroad")
    >>> words.body, words.kind, words.initials
    ('FERN VALLEY & WESTERN', 'RAILROAD', 'FVW')
    """
    clean = " ".join(name.split())
    if not any(sign.isalpha() for sign in clean):
        raise HeraldryError(f"a railroad's name has letters, found '{name}'")
    if len(clean) > LONGEST_NAME or "{" in clean or "}" in clean:
        raise HeraldryError(f"a railroad's name has at most {LONGEST_NAME} letters and no braces, found '{name}'")
    body, kind = _parts(clean.upper().split())
    known = _given(initials) if initials else _derived(body, kind)
    return Words(clean, body, kind, known, f"SINCE {founded}" if founded else "")


def _parts(words: list[str]) -> tuple[str, str]:
    end = len(words)
    while end > 1 and words[end - 1] in KINDS:
        end -= 1
    while end > 1 and words[end - 1] in JOINED_TO_THE_NEXT | JOINERS:
        end -= 1
    return " ".join(words[:end]), " ".join(words[end:])


def _given(initials: str) -> str:
    clean = "".join(initials.split()).upper()
    if not 1 <= len(clean) <= 2 * MOST_INITIALS or not any(sign.isalpha() for sign in clean):
        raise HeraldryError(f"initials are 1 to {2 * MOST_INITIALS} letters, found '{initials}'")
    return clean


def _derived(body: str, kind: str) -> str:
    """First letters; of two words joined by an ampersand with it, of a short name with that of its kind.

    A name of one short word is its own initials.
    """
    words = body.split()
    named = (word for word in words if word not in JOINED_TO_THE_NEXT | JOINERS)
    firsts = [sign for word in named if (sign := next(filter(str.isalnum, word), ""))]
    if "&" in words and len(firsts) == 2:
        return f"{firsts[0]}&{firsts[1]}"
    if len(firsts) == 1 and not kind and len(body) <= MOST_INITIALS:
        return body
    if len(firsts) < 3 and kind:
        firsts.extend(filter(str.isalnum, kind[:1]))
    return "".join(firsts[:MOST_INITIALS]) or next(filter(str.isalnum, body + kind))


def parted(text: str, count: int, small: frozenset[str] = JOINED_TO_THE_NEXT) -> tuple[str, ...]:
    """A text on so many lines, or as many as it has words, the longest line as short as can be.

    ``small`` words are not parted from the one after them.

    >>> parted("UMBAGOG, MAGALLOWAY & NORTHERN", 2)
    ('UMBAGOG, MAGALLOWAY', '& NORTHERN')
    """
    words = _unbreakable(text.split(), small)
    if count < 2 or len(words) < 2:
        return (text,)
    return tuple(balanced(words, [len(word) for word in words], min(count, len(words)), space=1))


def _unbreakable(words: list[str], small: frozenset[str]) -> list[str]:
    """Words with the small words before them."""
    joined: list[str] = []
    together: list[str] = []
    for word in words:
        together.append(word)
        if word not in small:
            joined.append(" ".join(together))
            together = []
    return [*joined, *together]
