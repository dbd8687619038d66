"""Letters from font files: the one door to HarfBuzz and fontTools.

=================  ==============================================================================
``files``          a font file becomes a ``Face``: read, unpacked, checked, or refused with a reason
``installed``      the fonts of this computer by family and style
``glyphs``         glyphs become outlines in font units, arcs of TrueType raised to cubics exactly
``axes``           variable fonts: axes by name, a stem or a width wished for and solved
``shaping``        text becomes placed glyphs, by HarfBuzz
``alphabet``       ``FontAlphabet``: all of it together, behind the ``Alphabet`` contract
``who_has``        who has a letter that a font lacks: our alphabets, the families of this computer
=================  ==============================================================================

Inside this room lengths are font units, y up; millimetres begin where a line leaves it.
"""

from heraldry.lettering.fonts.alphabet import FontAlphabet, font_from_family, font_from_file
from heraldry.lettering.fonts.installed import installed_families

__all__ = ["FontAlphabet", "font_from_family", "font_from_file", "installed_families"]
