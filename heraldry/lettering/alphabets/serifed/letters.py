"""The letters with serifs, by character; the other files of this room enter them."""

from __future__ import annotations

from heraldry.lettering.alphabets.table import Letters, enters

SERIFED: Letters = {}
letter = enters(SERIFED)
