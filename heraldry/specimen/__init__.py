"""Specimens: pages that show lettering as a person chooses it, in their own words and at the size of their models.

=============  ==================================================================================
``catalogue``  what each style of ours can be asked for: parameters, defaults, sound ranges
``showing``    the alphabets to be shown and what is said of each: ours, and those of a road
``paper``      sheets of paper, margins, the grid that base lines stand on
``block``      a piece of a page: a height, and ink in two tones
``writing``    text in blocks: captions, samples, lines broken at words
``entry``      one alphabet at a glance; the ends of what a style can be; names at several scales
``pages``      entries flow on pages, which become artworks
=============  ==================================================================================

Millimetres on paper; inside a block y runs down from 0 at its top into the negative.
"""

from heraldry.specimen.catalogue import StyleEntry, style_entries
from heraldry.specimen.pages import specimen_pages
from heraldry.specimen.paper import PAPERS, paper_named
from heraldry.specimen.showing import Show, show_of

__all__ = ["PAPERS", "Show", "StyleEntry", "paper_named", "show_of", "specimen_pages", "style_entries"]
