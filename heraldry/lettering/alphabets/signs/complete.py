"""From an alphabet's own letters to its whole set: signs, crossed letters, letters with marks."""

from __future__ import annotations

# Importing these two enters their signs in the table.
from heraldry.lettering.alphabets.signs import punctuation, reckoning  # noqa: F401
from heraldry.lettering.alphabets.signs.crossed import crossed
from heraldry.lettering.alphabets.signs.marks import marked
from heraldry.lettering.alphabets.signs.table import SIGNS
from heraldry.lettering.alphabets.table import Letters


def complete(own: Letters) -> Letters:
    """An alphabet's letters and everything that follows from them; what it draws itself stands."""
    bare = {**SIGNS, **own}
    bare = {**crossed(bare), **bare}
    return {**marked(bare), **bare}
