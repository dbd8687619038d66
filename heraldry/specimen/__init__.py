"""Specimens: lettering as a person chooses it, in their own words and at the size of their models; and all shapes.

===============  ================================================================================
``catalogue``    what each style of ours can be asked for: parameters, defaults, sound ranges
``showing``      the alphabets to be shown and what is said of each: ours, and those of a road
``entry``        one alphabet at a glance
``ranges``       a style of ours at both ends of every number it takes
``sizes``        names at several scales
``pages``        the sections of a specimen of lettering
``shape_pages``  every kind of shape, what else it can be, and its keys
===============  ================================================================================
"""

from heraldry.specimen.catalogue import StyleEntry, style_entries
from heraldry.specimen.pages import specimen_pages
from heraldry.specimen.showing import Show, show_of

__all__ = ["Show", "StyleEntry", "show_of", "specimen_pages", "style_entries"]
