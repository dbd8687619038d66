"""Test art (a disc and a ring of arcs, a title of letters from a font), and Ghostscript to separate it."""

import math
import shutil
import subprocess
from pathlib import Path as FilePath

import font_source_serif_pro
import numpy as np
import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont
from PIL import Image

from heraldry.artwork import Artwork, Finding, Ink, Plate
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path

WHITE = Ink("white", "#ffffff", opaque=True)
RED = Ink("signal red", "#c8102e")
NAVY = Ink("navy", "#10306b")
MM_PER_FONT_UNIT = 0.004
TITLE = "R&B"


def circle(x: float, y: float, radius: float, sign: int = 1) -> Path:
    return Path((Arc.about(Point(x, y), radius, 0.0, sign * math.tau),), closed=True)


class OutlinePen(BasePen):
    """Glyphs as closed paths in millimetres; quadratic curves arrive raised to cubics."""

    def __init__(self, glyph_set, x_units: float) -> None:
        super().__init__(glyph_set)
        self.x_units, self.paths, self.strokes = x_units, [], []

    def place(self, xy) -> Point:
        return Point((xy[0] + self.x_units) * MM_PER_FONT_UNIT - 4.5, xy[1] * MM_PER_FONT_UNIT - 1.4)

    def _moveTo(self, pt) -> None:  # noqa: N802
        self.start = self.here = self.place(pt)

    def _lineTo(self, pt) -> None:  # noqa: N802
        self.strokes.append(Line(self.here, self.place(pt)))
        self.here = self.place(pt)

    def _curveToOne(self, pt1, pt2, pt3) -> None:  # noqa: N802
        self.strokes.append(Cubic(self.here, self.place(pt1), self.place(pt2), self.place(pt3)))
        self.here = self.place(pt3)

    def _closePath(self) -> None:  # noqa: N802
        if self.here != self.start:
            self.strokes.append(Line(self.here, self.start))
        self.paths.append(Path(tuple(self.strokes), closed=True))
        self.strokes = []


@pytest.fixture(scope="session")
def title():
    """Letters with counters, outer rings counter-clockwise, and their area by fontTools, mm²."""
    font = TTFont(font_source_serif_pro.SourceSerifProBold)
    glyphs, cmap, x_units, area, paths = font.getGlyphSet(), font.getBestCmap(), 0, 0.0, []
    for letter in TITLE:
        glyph = glyphs[cmap[ord(letter)]]
        pen, measure = OutlinePen(glyphs, x_units), AreaPen(glyphs)
        glyph.draw(pen)
        glyph.draw(measure)
        paths += pen.paths
        area += measure.value
        x_units += glyph.width
    if area < 0:
        paths = [path.reversed() for path in paths]
    return Outline.of(paths), abs(area) * MM_PER_FONT_UNIT**2


@pytest.fixture(scope="session")
def artwork(title) -> Artwork:
    """White disc under a red ring and a navy title, on a page that does not begin at 0."""
    plates = (
        Plate("under", WHITE, Outline.of([circle(0.0, 0.0, 9.5)])),
        Plate("ring", RED, Outline.of([circle(0.0, 0.0, 9.0), circle(0.0, 0.0, 6.0, -1)])),
        Plate("title", NAVY, title[0]),
    )
    finding = Finding(
        "fine line", "a line of 0.08 mm is finer than 0.1 mm", place=Point(1.0, 2.0), plate="title",
        measured_mm=0.08, limit_mm=0.1,
    )  # fmt: skip
    return Artwork("Herald of the road", Bounds(-12.0, -10.0, 12.0, 10.0), plates, "HO", "#1f3b2d", (finding,))


@pytest.fixture(scope="session")
def areas(title) -> dict[str, float]:
    """The plates' areas in closed form (circles) and by fontTools (letters), mm²."""
    return {"under": math.pi * 9.5**2, "ring": math.pi * (9.0**2 - 6.0**2), "title": title[1]}


@pytest.fixture(scope="session")
def alone():
    """One plate of an artwork by itself, to be measured without its neighbours."""

    def one(artwork: Artwork, name: str) -> Artwork:
        plates = tuple(plate for plate in artwork.plates if plate.name == name)
        return Artwork(artwork.name, artwork.page, plates, artwork.scale_name)

    return one


@pytest.fixture(scope="session")
def ghostscript():
    """Run Ghostscript; these tests are about separations, and nothing else on a test machine shows them."""
    program = shutil.which("gs")
    assert program, "these tests need Ghostscript: apt install ghostscript"

    def run(*arguments: str) -> str:
        command = [program, "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", *arguments]
        done = subprocess.run(command, capture_output=True, text=True, check=True)
        return done.stdout + done.stderr

    return run


@pytest.fixture
def separations(ghostscript, tmp_path):
    """The inked area of every separation of a file, mm², as Ghostscript's tiffsep prints it at 1200 dpi."""

    def inked(file: FilePath, *arguments: str) -> dict[str, float]:
        folder = tmp_path / f"separations of {file.name}"
        folder.mkdir()
        device = ("-sDEVICE=tiffsep", "-r1200", "-dGraphicsAlphaBits=4")
        ghostscript(*device, *arguments, "-o", f"{folder}/all.tif", str(file))
        plates = {}
        for tif in folder.glob("all(*).tif"):
            ink = 255.0 - np.asarray(Image.open(tif).convert("L"), dtype=float)
            plates[tif.name[4:-5]] = float(ink.sum() / 255 * (25.4 / 1200) ** 2)
        return plates

    return inked
