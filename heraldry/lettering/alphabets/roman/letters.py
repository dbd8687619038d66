"""The letters that the roman draws unlike the slab, by character."""

from __future__ import annotations

from heraldry.lettering.alphabets.table import Letters, enters

ROMAN: Letters = {}
letter = enters(ROMAN)
