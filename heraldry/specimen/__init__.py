"""Specimens: pages that show lettering as a person chooses it, in their own words and at the size of their models.

=============  ==================================================================================
``catalogue``  what each style of ours can be asked for: parameters, defaults, sound ranges
``showing``    the alphabets to be shown and what is said of each: ours, and those of a road
``entry``      one alphabet at a glance; the ends of what a style can be; names at several scales
``pages``      the sections of a specimen
=============  ==================================================================================
"""

from heraldry.specimen.catalogue import StyleEntry, style_entries
from heraldry.specimen.pages import specimen_pages
from heraldry.specimen.showing import Show, show_of

__all__ = ["Show", "StyleEntry", "show_of", "specimen_pages", "style_entries"]
