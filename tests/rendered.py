"""Drawings and outlines of them as the renderer resvg shows them: the reference for what SVG means."""

from __future__ import annotations

import io

import numpy as np
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic
from heraldry.shapes.drawing.tracing import Tracing


def picture(svg: str, width: int, height: int) -> NDArray[np.float64]:
    """Red, green, blue and coverage of each pixel, 0 to 1."""
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=width, height=height, dpi=96))
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"), dtype=np.float64) / 255


def path_data(outline: Outline) -> str:
    """An outline as SVG path data, written here anew so that the press is not part of the check."""
    commands = []
    for path in outline.with_arcs_as_cubics().paths:
        commands.append(f"M{path.segments[0].start.x:.6f} {-path.segments[0].start.y:.6f}")
        for segment in path:
            points = (segment.control1, segment.control2, segment.end) if isinstance(segment, Cubic) else (segment.end,)
            commands.append(("C" if len(points) == 3 else "L") + " ".join(f"{at.x:.6f} {-at.y:.6f}" for at in points))
        commands.append("Z")
    return "".join(commands)


def drawn_again(tracing: Tracing, page_width: float, page_height: float) -> str:
    """The areas of a drawing as SVG, in the frame that the drawing had (pixels)."""
    corner, opposite = tracing.onto_model(Point(0.0, 0.0)), tracing.onto_model(Point(page_width, page_height))
    box = f"{corner.x} {-corner.y} {opposite.x - corner.x} {corner.y - opposite.y}"
    areas = "".join(f'<path fill="{ink}" d="{path_data(area)}"/>' for ink, area in tracing.areas.items())
    size = f'width="{page_width}" height="{page_height}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}" fill-rule="evenodd">{areas}</svg>'
