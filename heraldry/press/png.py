"""PNG on a transparent ground, drawn by cairo from our own SVG at a resolution in dots per inch.

The drawing keeps its exact scale: one inch is ``dpi`` pixels, to the last bit. The page is therefore grown to
whole pixels at its right and lower edges instead of being squeezed into them, and the resolution is written
into the file's pHYs chunk, in whole pixels a metre, as the PNG Specification 1.2, 4.2.4.2, has it.
"""

from __future__ import annotations

import math
import struct
import zlib
from collections.abc import Callable

from heraldry.artwork import Artwork
from heraldry.errors import PressError
from heraldry.press.number_format import PIXEL_DECIMALS
from heraldry.press.svg import SvgWriter
from heraldry.press.writer import MM_PER_INCH, frame_y_down

DEFAULT_DPI = 600
MAX_SIDE_PX = 32_767
"""cairo counts in 24.8 fixed point and refuses larger surfaces."""
MAX_AREA_PX = 400_000_000
"""Four bytes a pixel: 1.6 GB, an A3 sheet at 1200 dpi and a half."""

# A page of 5100.0000001 pixels is meant to be one of 5100: lengths come out of sums of rounded numbers.
_PIXEL_SLACK = 1e-3
# The file signature (8 bytes) and the IHDR chunk (25 bytes) come first in every PNG; pHYs goes right after.
_AFTER_IHDR = 33


def size_px(artwork: Artwork, dpi: int) -> tuple[int, int]:
    """Width and height in pixels; raises PressError for a size that cannot be drawn."""
    per_mm = dpi / MM_PER_INCH
    width, height = (max(1, math.ceil(side * per_mm - _PIXEL_SLACK)) for side in (artwork.width_mm, artwork.height_mm))
    if max(width, height) > MAX_SIDE_PX or width * height > MAX_AREA_PX:
        raise PressError(
            f"{artwork.name}: a PNG of {width} × {height} pixels at {dpi} dpi is too large, "
            f"{_largest_dpi(artwork)} dpi is the most for {artwork.width_mm:g} × {artwork.height_mm:g} mm"
        )
    return width, height


def _largest_dpi(artwork: Artwork) -> int:
    by_side = MAX_SIDE_PX / max(artwork.width_mm, artwork.height_mm)
    by_area = math.sqrt(MAX_AREA_PX / (artwork.width_mm * artwork.height_mm))
    return max(1, int(min(by_side, by_area) * MM_PER_INCH) - 1)


class PngWriter(SvgWriter):
    """One PNG file: an SVG whose unit is the pixel, rasterised when it is finished."""

    def __init__(self, artwork: Artwork, dpi: int) -> None:
        width, height = size_px(artwork, dpi)
        frame = frame_y_down(artwork.page, dpi / MM_PER_INCH)
        super().__init__(frame, width, height, "", PIXEL_DECIMALS)
        self._dpi = dpi

    def finish(self) -> bytes:
        """The file; raises PressError where cairo is missing."""
        picture: bytes = _rasteriser()(bytestring=super().finish(), dpi=self._dpi)
        return picture[:_AFTER_IHDR] + _resolution_chunk(self._dpi) + picture[_AFTER_IHDR:]


def _rasteriser() -> Callable[..., bytes]:
    try:
        import cairosvg  # imported where used: start-up time
    except (ImportError, OSError) as error:
        raise PressError(
            "a PNG needs the cairo library of the system, which was not found: install the package libcairo2 "
            "(apt install libcairo2; brew install cairo on macOS); all other outputs work without it"
        ) from error
    rasterise: Callable[..., bytes] = cairosvg.svg2png
    return rasterise


def _resolution_chunk(dpi: int) -> bytes:
    """The pHYs chunk: pixels per unit along x and y, unit 1 for the metre."""
    per_metre = round(dpi / MM_PER_INCH * 1000)
    body = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    return struct.pack(">I", len(body) - 4) + body + struct.pack(">I", zlib.crc32(body))
