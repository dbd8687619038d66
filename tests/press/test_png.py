"""The PNG, read by Pillow; and what happens where cairo is missing."""

import importlib.abc
import io
import struct
import sys

import numpy as np
import pytest
from PIL import Image

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.errors import PressError
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.press import OUTPUTS, render

# Pixels a metre, from 25.4 mm to the inch: 600 / 0.0254 = 23622.05, 1200 / 0.0254 = 47244.09.
PER_METRE = {600: 23622, 1200: 47244}


def chunks(png: bytes) -> list[tuple[bytes, bytes]]:
    found, at = [], 8
    while at < len(png):
        size, kind = struct.unpack(">I4s", png[at : at + 8])
        found.append((kind, png[at + 8 : at + 8 + size]))
        at += 12 + size
    return found


def box(left: float, bottom: float, right: float, top: float) -> Outline:
    corners = [Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top)]
    return Outline.of([Path.through(corners, closed=True)])


def square_artwork(page: Bounds, outline: Outline) -> Artwork:
    return Artwork("square", page, (Plate("square", Ink("black", "#000000"), outline),))


@pytest.mark.parametrize("dpi", [600, 1200])
def test_size_and_resolution(artwork, dpi):
    png = render(artwork, "png", dpi)
    picture = Image.open(io.BytesIO(png))
    picture.load()  # checks the sums of all chunks
    assert picture.mode == "RGBA"
    assert picture.size == (np.ceil(24 / 25.4 * dpi), np.ceil(20 / 25.4 * dpi))
    assert picture.info["dpi"] == pytest.approx((dpi, dpi), abs=0.003)
    kinds = [kind for kind, _ in chunks(png)]
    assert kinds[:2] == [b"IHDR", b"pHYs"]
    assert chunks(png)[1][1] == struct.pack(">IIB", PER_METRE[dpi], PER_METRE[dpi], 1)


def test_six_hundred_dpi_unless_asked_otherwise(artwork):
    assert render(artwork, "png") == render(artwork, "png", 600)


@pytest.mark.parametrize("plate", ["under", "ring", "title"])
def test_the_computed_area_is_covered(artwork, areas, alone, plate):
    picture = Image.open(io.BytesIO(render(alone(artwork, plate), "png", 1200)))
    alpha = np.asarray(picture, dtype=float)[..., 3]
    assert alpha.sum() / 255 * (25.4 / 1200) ** 2 == pytest.approx(areas[plate], rel=1e-3)


def test_the_ground_is_transparent_and_inks_are_not(artwork):
    picture = Image.open(io.BytesIO(render(artwork, "png")))
    assert picture.getpixel((0, 0))[3] == 0
    assert picture.getpixel((round(19.5 / 25.4 * 600), picture.height // 2)) == (200, 16, 46, 255)


def test_a_page_of_broken_pixels_keeps_the_scale_exact():
    """Edges on whole pixels stay sharp although the page is 590.55 pixels wide: nothing is squeezed."""
    page = Bounds(0.0, 0.0, 25.0, 25.0)
    art = square_artwork(page, box(2.54, 25.0 - 22.86, 22.86, 25.0 - 2.54))
    alpha = np.asarray(Image.open(io.BytesIO(render(art, "png", 600))))[..., 3]
    assert alpha.shape == (591, 591)
    assert np.all(alpha[60:540, 60:540] == 255)
    assert alpha.astype(int).sum() == 480 * 480 * 255


def test_a_picture_too_large_names_the_resolution_that_would_do():
    art = square_artwork(Bounds(0, 0, 900, 600), box(1, 1, 2, 2))
    with pytest.raises(PressError, match=r"42520 × 28347 pixels at 1200 dpi .* (\d+) dpi is the most") as caught:
        render(art, "png", 1200)
    dpi = int(str(caught.value).split("large, ")[1].split()[0])
    assert 600 <= dpi < 1200
    width, height = 900 / 25.4 * dpi, 600 / 25.4 * dpi
    assert max(width, height) <= 32_767
    assert width * height <= 400_000_000


@pytest.mark.parametrize("dpi", [0, -300])
def test_a_resolution_is_above_zero(artwork, dpi):
    with pytest.raises(PressError, match=f"above 0, found {dpi}"):
        render(artwork, "png", dpi)


class NoCairo(importlib.abc.MetaPathFinder):
    """What the import does on a machine without the system's cairo."""

    def find_spec(self, name, path=None, target=None):
        if name == "cairosvg":
            raise OSError('no library called "cairo-2" was found')
        return


def test_without_cairo_every_other_output_works(artwork, monkeypatch):
    monkeypatch.delitem(sys.modules, "cairosvg", raising=False)
    monkeypatch.setattr(sys, "meta_path", [NoCairo(), *sys.meta_path])
    with pytest.raises(PressError, match="package libcairo2"):
        render(artwork, "png")
    for name in OUTPUTS:
        if name != "png":
            assert len(render(artwork, name)) > 500
