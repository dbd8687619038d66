"""Drawings read in: an old SVG or DXF file becomes an outline, or one for each of its colours.

The way of a drawing, each stage one file or folder::

    file ─▶ opening ─┬▶ svg/ ─┬▶ picture ─▶ tracing ─▶ shape
            what is  └▶ dxf ──┘  marks in   areas of
            it?                  order      colour

``svg/`` knows elements, styles and units, ``dxf`` layers and chains; both hand on marks, which are chains of lines,
arcs and cubics with a colour. ``tracing`` draws their lines as outlines (``strokes``, ``dashes``) and gives every
place its topmost colour. Nothing is ever read but the one file; what cannot be kept of it is said in notes.
"""

from __future__ import annotations

from heraldry.shapes.drawing.opening import read_drawing
from heraldry.shapes.drawing.shape import drawing, traced_at_own_size

__all__ = ["drawing", "read_drawing", "traced_at_own_size"]
