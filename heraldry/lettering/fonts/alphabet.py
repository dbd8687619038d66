"""``FontAlphabet``: a font file behind the ``Alphabet`` contract, at one place of its axes.

The font is scaled so that its cap height is the one asked for. The cap height is measured on the H, since
what a font states about itself is off by up to some per cent; the stated one counts where there is no H.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import pairwise, zip_longest
from pathlib import Path as FilePath

import numpy as np

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabet import Figures, SetGlyph, SetLine
from heraldry.lettering.fonts.axes import Location, Wish, axes_of, place_on_axes, solve
from heraldry.lettering.fonts.files import Face, read_face
from heraldry.lettering.fonts.glyphs import Glyphs
from heraldry.lettering.fonts.installed import find_installed
from heraldry.lettering.fonts.shaping import LETTERS_STAY_APART, Part, Shape, Shaper
from heraldry.lettering.scan import ink_spans
from heraldry.lettering.spacing import Spacing

Features = Mapping[str, bool | int]

STEM_LEVEL_CAPS = 0.25
"""Where the stem of H is measured: well above any serif and its bracket, well below the crossbar."""

_FIGURES = frozenset("0123456789")


@dataclass(frozen=True, eq=False)
class FontAlphabet:
    """A font at one place of its axes; made by ``font_from_file`` or ``font_from_family``."""

    name: str
    face: Face
    location: Location = field(default_factory=dict)
    features: Features = field(default_factory=dict)
    width: float | None = None
    """The width that was wished, in normal widths; None: as the axes have it."""
    optical: bool = False
    """Whether pairs are kerned by the white between them instead of by the font's own kerning."""

    def set_line(self, text: str, cap_height_mm: float, figures: Figures = "proportional") -> SetLine:
        """Set one line of text, kerned, at a cap height.

        Tabular figures are the font's own (``tnum``) where it has them; else each is centred on one advance,
        that of the widest. Raises LetteringError for a letter that the font lacks.
        """
        if not (cap_height_mm > 0 and np.isfinite(cap_height_mm)):
            raise LetteringError(f"a cap height is more than zero, found {cap_height_mm:g} mm")
        shapes, advance = self._shaper.shape(text, self._features_for(figures))
        if self.optical:
            shapes, advance = self._kerned_by_white(shapes, advance)
        if figures == "tabular":
            shapes, advance = self._on_one_advance(shapes, advance)
        scale = cap_height_mm / self.cap_height
        glyphs = tuple(
            SetGlyph(
                shape.text,
                self._scaled(shape.parts, scale),
                shape.x * scale,
                shape.advance * scale,
                shape.y * scale,
            )
            for shape in shapes
        )
        return SetLine(glyphs, advance * scale, cap_height_mm)

    @cached_property
    def cap_height(self) -> float:
        """The height of capitals in font units."""
        h = self._shaper.glyph("H")
        outline = self._glyphs.outline(h) if h is not None else None
        if outline is not None and not outline.is_empty:
            return bounds(outline).top
        stated = getattr(self.face.tables.get("OS/2"), "sCapHeight", 0)
        if not stated:
            raise LetteringError(f"the font {self.name} has no H and states no cap height to be sized by")
        return float(stated)

    @property
    def stem(self) -> float:
        """Thickness of the upright of H, in cap heights."""
        spans = ink_spans(self._h, STEM_LEVEL_CAPS * self.cap_height)
        if not spans:
            raise LetteringError(f"the stem of {self.name} cannot be measured, its H has none")
        return (spans[0][1] - spans[0][0]) / self.cap_height

    @property
    def h_width(self) -> float:
        """Width of the ink of H, in cap heights."""
        return bounds(self._h).width / self.cap_height

    def with_stem(self, stem: float) -> FontAlphabet:
        """The same font with uprights ``stem`` cap heights thick, its width as it was wished.

        Raises LetteringError where the font has no weight axis, or its weights do not reach so far.
        """
        return self.wished(stem, self.width)

    def widened(self, factor: float) -> FontAlphabet:
        """The same font, ``factor`` times as wide as it is now, its stems as thick as they are where it can.

        Raises LetteringError where the font has no width axis, or its widths do not reach so far.
        """
        axes = axes_of(self.face)
        if "wdth" not in axes:
            raise LetteringError(f"the letters of {self.name} have one width only, the font has no width axis")
        width = self.h_width / self._at({}).h_width
        return self.wished(self.stem if "wght" in axes else None, width * factor)

    def wished(self, stem: float | None, width: float | None) -> FontAlphabet:
        """The same font where its stem (cap heights) and its width (normal widths) are as wished."""
        normal_width = self._at({}).h_width if width is not None else 0.0
        wishes = []
        if width is not None:
            wishes.append(Wish("width", "wdth", width, lambda place: self._at(place).h_width / normal_width))
        if stem is not None:
            wishes.append(Wish("stem", "wght", stem, lambda place: self._at(place).stem))
        return replace(self, location=solve(self.face, self.location, tuple(wishes)), width=width)

    def _at(self, location: Location) -> FontAlphabet:
        return replace(self, location=location)

    @property
    def _h(self) -> Outline:
        h = self._shaper.glyph("H")
        if h is None:
            raise LetteringError(f"the font {self.name} has no H to measure a stem or a width on")
        return self._glyphs.outline(h)

    @cached_property
    def _glyphs(self) -> Glyphs:
        return Glyphs(self.face, tuple(sorted(self.location.items())))

    @cached_property
    def _shaper(self) -> Shaper:
        return Shaper(self.face, tuple(sorted(self.location.items())))

    @cached_property
    def _drawn(self) -> dict[tuple[tuple[Part, ...], float], Outline]:
        return {}

    @cached_property
    def _spacing(self) -> Spacing:
        def draw(letter: str) -> tuple[Outline, float]:
            (shape,), advance = self._shaper.shape(letter, self._features_for("proportional"))
            return self._letter(shape.parts).transformed(Affine.move(shape.x, shape.y)), advance

        return Spacing(draw, self.cap_height)

    def _features_for(self, figures: Figures) -> dict[str, bool | int]:
        figure_features = {"tnum": True, "pnum": False} if figures == "tabular" else {}
        kerning = {"kern": False} if self.optical else {}
        return {**LETTERS_STAY_APART, **figure_features, **kerning, **self.features}

    def _letter(self, parts: tuple[Part, ...]) -> Outline:
        return self._glyphs.joined(parts) if len(parts) > 1 else self._glyphs.outline(parts[0][0])

    def _scaled(self, parts: tuple[Part, ...], scale: float) -> Outline:
        key = (parts, scale)
        if key not in self._drawn:
            self._drawn[key] = self._letter(parts).transformed(Affine.scale(scale))
        return self._drawn[key]

    def _kerned_by_white(self, shapes: tuple[Shape, ...], advance: float) -> tuple[tuple[Shape, ...], float]:
        extras = [self._spacing.kern(one.text, other.text) for one, other in pairwise(shapes)]
        shifts = np.cumsum([0.0, *extras]) * self.cap_height
        moved = tuple(_moved(shape, float(shift)) for shape, shift in zip(shapes, shifts, strict=True))
        return moved, advance + (float(shifts[-1]) if shapes else 0.0)

    def _on_one_advance(self, shapes: tuple[Shape, ...], advance: float) -> tuple[tuple[Shape, ...], float]:
        """Figures centred on equal cells and not kerned, so that numbers stand in columns."""
        cell, shift, moved = self._figure_advance, 0.0, []
        for shape, following in zip_longest(shapes, shapes[1:]):
            is_figure = shape.text in _FIGURES
            spare = cell - shape.advance if is_figure else 0.0
            moved.append(_moved(shape, shift + spare / 2))
            shift += spare
            if following is not None and is_figure and following.text in _FIGURES:
                shift -= following.x - shape.x - shape.advance
        return tuple(moved), advance + shift

    @cached_property
    def _figure_advance(self) -> float:
        return max(
            self._shaper.shape(figure, self._features_for("tabular"))[0][0].advance
            for figure in sorted(_FIGURES)
            if self._shaper.glyph(figure) is not None
        )


def _moved(shape: Shape, by: float) -> Shape:
    return Shape(shape.text, shape.parts, shape.x + by, shape.y, shape.advance)


def font_from_file(
    path: FilePath,
    face: int = 0,
    axes: Mapping[str, float] | None = None,
    stem: float | None = None,
    width: float | None = None,
    features: Iterable[str] = (),
    optical: bool = False,
    licensed: bool = False,
) -> FontAlphabet:
    """An alphabet from a TTF, OTF, TTC, woff or woff2 file.

    ``axes``
        places on the axes of a variable font, by axis name or tag.
    ``stem``
        thickness of the upright of H in cap heights, solved on the weight axis.
    ``width``
        width of the H in its normal widths, solved on the width axis.
    ``features``
        OpenType feature tags to switch on (``"ss01"``), or off (``"-kern"``).

    Raises LetteringError, saying why, for whatever of this the file cannot give.
    """
    opened = read_face(path, face, licensed)
    place = place_on_axes(opened, axes or {})
    alphabet = FontAlphabet(opened.name, opened, place, parse_features(features), optical=optical)
    return alphabet.wished(stem, width)


def font_from_family(
    family: str,
    style: str = "",
    axes: Mapping[str, float] | None = None,
    stem: float | None = None,
    width: float | None = None,
    features: Iterable[str] = (),
    optical: bool = False,
    licensed: bool = False,
) -> FontAlphabet:
    """An alphabet from a font installed on this computer; parameters as for ``font_from_file``.

    Raises LetteringError, naming the nearest family or the styles there are, when it is not installed.
    """
    found = find_installed(family, style)
    return font_from_file(found.path, found.number, axes, stem, width, features, optical, licensed)


def parse_features(tags: Iterable[str]) -> Features:
    """Feature tags as HarfBuzz takes them; raises LetteringError for what is no tag of four letters.

    >>> parse_features(["ss01", "-kern"])
    {'ss01': True, 'kern': False}
    """
    features: dict[str, bool | int] = {}
    for tag in tags:
        name = tag.removeprefix("-")
        if len(name) != 4 or not name.isascii() or not name.isalnum():
            raise LetteringError(f"an OpenType feature has a tag of four letters or digits, found {tag!r}")
        features[name] = not tag.startswith("-")
    return features
