"""Every feature of SVG that is followed, in drawings made up here, against the renderer resvg."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from heraldry.shapes.drawing.opening import read_drawing
from heraldry.shapes.drawing.tracing import Size, traced
from tests.rendered import drawn_again, picture

PIXELS = 300
ALLOWED_SHARE = 0.003
"""Of the frame, mean difference of all four channels; the blur of edges alone is about a third of it."""

WAY = "M15 80 L35 20 L50 75 L62 30 C70 0 90 40 85 80"
LEAN = "matrix(1 .3 -.5 .8 30 0)"
FEATURES = {
    "miter": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="7"/>',
    "miter limit 10": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="7" stroke-miterlimit="10"/>',
    "miter limit 1": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="7" stroke-miterlimit="1"/>',
    "bevel, square": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="9" stroke-linejoin="bevel" stroke-linecap="square"/>',
    "bevel, round": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="9" stroke-linejoin="bevel" stroke-linecap="round"/>',
    "round": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="9" stroke-linejoin="round" stroke-linecap="round"/>',
    "closed bevel": '<path d="M20 20H80L50 80z" fill="none" stroke="#000" stroke-width="12" stroke-linejoin="bevel"/>',
    "closed miter": '<path d="M20 20H80L50 80z" fill="red" stroke="#000" stroke-width="6" stroke-miterlimit="8"/>',
    "dashes": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="4" stroke-dasharray="9 3 2"/>',
    "dashes, square": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="3" stroke-dasharray="8 6" stroke-dashoffset="5" stroke-linecap="square"/>',
    "dots": f'<path d="{WAY}" fill="none" stroke="#000" stroke-width="4" stroke-dasharray="0 7" stroke-linecap="round"/>',
    "dashes round a box": '<rect x="20" y="20" width="60" height="50" rx="9" fill="none" stroke="#000" stroke-width="5" stroke-dasharray="13 5" stroke-dashoffset="6"/>',
    "dashes round a triangle": '<path d="M20 20H80L50 80z" fill="none" stroke="#000" stroke-width="5" stroke-dasharray="20 6"/>',
    "a leaning stroke": f'<g transform="{LEAN}"><path d="{WAY}" fill="none" stroke="#000" stroke-width="8"/></g>',
    "a flattened ring": '<circle r="30" fill="none" stroke="#000" stroke-width="9" transform="translate(50 50) rotate(30) scale(1.3 .5)"/>',
    "stroke under fill": '<rect x="20" y="20" width="60" height="50" fill="red" stroke="#000" stroke-width="12" paint-order="stroke"/>',
    "fill under stroke": '<rect x="20" y="20" width="60" height="50" fill="red" stroke="blue" stroke-width="12"/>',
    "a tight curve, broad": '<path d="M20 80C20 10 30 10 32 80" fill="none" stroke="#000" stroke-width="16"/>',
    "a ring broader than its radius": '<circle cx="50" cy="50" r="9" fill="none" stroke="#000" stroke-width="30"/>',
    "a circle as a path": '<path d="M20 50a30 30 0 1 0 60 0a30 30 0 1 0-60 0z" fill="red" stroke="#000" stroke-width="8" stroke-linejoin="bevel"/>',
    "an open circle": '<path d="M20 50a30 30 0 1 0 60 0a30 30 0 1 0-60 0" fill="none" stroke="#000" stroke-width="8" stroke-linecap="square"/>',
    "one line each": '<path d="M10 20H90M10 50L90 60M20 90v-.01" stroke="#000" stroke-width="9" stroke-linecap="round"/><path d="M10 35H90" stroke="red" stroke-width="5" stroke-linecap="square"/>',
    "a closed line": '<path d="M20 50H80z" fill="none" stroke="#000" stroke-width="9" stroke-linejoin="round"/>',
    "a cusp": '<path d="M20 80C90 10 10 10 80 80" fill="none" stroke="#000" stroke-width="6"/>',
    "a loop": '<path d="M20 70C120 0 -20 0 80 70" fill="#0a0" stroke="#000" stroke-width="3"/>',
    "there and back": '<path d="M20 50H80H40" fill="none" stroke="#000" stroke-width="9" stroke-linejoin="bevel"/>',
    "stars, nonzero": '<path d="M50 5L79 95L2 38H98L21 95z" fill="#04c"/>',
    "stars, evenodd": '<path d="M50 5L79 95L2 38H98L21 95z" fill="#04c" fill-rule="evenodd"/>',
    "arcs": '<path d="M10 50a20 10 30 1 0 30-10M50 50A30 18 -20 0 1 90 60L60 90z" fill="#c40"/>',
    "quadratics": '<path d="M10 50Q30 0 50 50T90 50L90 90H10z"/>',
    "smooth cubics": '<path d="M10 50C10 10 40 10 50 50S90 90 90 50V90H10z"/>',
    "ellipses": '<ellipse cx="40" cy="50" rx="30" ry="12" transform="rotate(25 40 50)"/><rect x="60" y="60" width="30" height="30" rx="12" ry="5" fill="red"/>',
    "skews": '<g transform="skewX(20)"><rect x="10" y="10" width="30" height="30"/></g><rect x="60" y="5" width="20" height="30" transform="skewY(25)" fill="red"/>',
    "uses": '<defs><g id="g"><circle r="8"/><rect x="4" width="20" height="4" fill="red"/></g></defs><use href="#g" x="20" y="20"/><use href="#g" transform="translate(50 60) rotate(45) scale(1.5)"/>',
    "inherited by use": '<defs><path id="p" d="M0 0h20v20z"/></defs><use href="#p" x="10" y="10" fill="red"/><g fill="blue"><use href="#p" x="50" y="50"/></g>',
    "symbols": '<symbol id="s" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMin slice"><circle cx="5" cy="5" r="5"/></symbol><use href="#s" x="10" y="10" width="50" height="30"/><use href="#s" x="60" y="60" width="30" height="30" fill="red"/>',
    "inner svg": '<svg x="10" y="20" width="70" height="40" viewBox="0 0 10 10"><rect width="10" height="10" fill="red"/><circle cx="10" cy="5" r="4"/></svg>',
    "clip": '<clipPath id="c"><path d="M50 5L79 95L2 38H98L21 95z" clip-rule="evenodd"/></clipPath><g clip-path="url(#c)"><rect width="60" height="99"/><circle cx="70" cy="50" r="30" fill="red"/></g>',
    "a clip under a transform": '<clipPath id="c" transform="rotate(20)"><rect x="10" width="50" height="50"/></clipPath><g transform="translate(20 10)"><circle cx="30" cy="30" r="30" clip-path="url(#c)"/></g>',
    "a clipped clip": '<clipPath id="d"><circle cx="50" cy="50" r="30"/></clipPath><clipPath id="c" clip-path="url(#d)"><rect x="30" y="30" width="60" height="60"/></clipPath><rect width="99" height="99" clip-path="url(#c)"/>',
    "a use that clips": '<defs><circle id="k" cx="50" cy="50" r="30"/></defs><clipPath id="c"><use href="#k" x="10"/></clipPath><rect width="60" height="99" clip-path="url(#c)"/>',
    "layers": '<rect width="80" height="80"/><circle cx="50" cy="50" r="30" fill="#fff"/><circle cx="60" cy="50" r="20" fill="red"/><path d="M0 50h100" stroke="#000" stroke-width="5"/>',
    "style sheets": '<style>.a,.b>circle{fill:red}.b circle.c{fill:blue}#d{fill:green!important}circle{stroke:#000;stroke-width:3}</style><circle class="a" cx="20" cy="20" r="12"/><g class="b"><circle cx="60" cy="20" r="12"/><circle class="c" cx="20" cy="60" r="12"/><circle id="d" class="c" style="fill:red" cx="60" cy="60" r="12"/></g>',
    "colours": '<rect width="30" height="30" fill="hsl(200 80% 40%)"/><rect x="40" width="30" height="30" fill="rgb(10% 50% 90%)"/><g color="teal"><rect y="40" width="30" height="30" fill="currentColor"/></g><rect x="40" y="40" width="30" height="30" fill="#f80c"/>'.replace("#f80c", "#f80f"),
    "percentages": '<rect x="10%" y="20%" width="50%" height="30%"/><circle cx="80%" cy="80%" r="10%" stroke="red" stroke-width="2%"/>',
    "units": '<rect x="2mm" y="3pt" width="1cm" height=".3in" stroke="red" stroke-width="1mm"/>',
    "a switch": '<switch><rect width="50" height="50" fill="red"/><rect width="90" height="90"/></switch>',
    "hidden and seen": '<g visibility="hidden"><rect width="90" height="40"/><rect y="50" width="40" height="40" visibility="visible"/></g><g display="none"><rect width="99" height="99" display="inline"/></g>',
    "off the page": '<rect x="-20" y="40" width="140" height="20" stroke="red" stroke-width="6"/>',
}  # fmt: skip

ROOTS = {
    "square": 'width="100" height="100" viewBox="0 0 100 100"',
    "shifted": 'width="100" height="100" viewBox="-20 -10 150 130"',
    "wide": 'width="100" height="100" viewBox="0 0 100 60" preserveAspectRatio="xMinYMax slice"',
    "stretched": 'width="100" height="100" viewBox="0 0 100 50" preserveAspectRatio="none"',
}


def assert_same_picture(file: Path) -> None:
    tracing = traced(read_drawing(file), Size(width=25.0))
    original, ours = (
        picture(file.read_text(), PIXELS, PIXELS),
        picture(drawn_again(tracing, 100.0, 100.0), PIXELS, PIXELS),
    )
    assert float(np.abs(original - ours).mean()) <= ALLOWED_SHARE


@pytest.mark.parametrize("feature", FEATURES)
def test_a_feature_looks_as_it_should(tmp_path: Path, feature: str) -> None:
    file = tmp_path / "old.svg"
    file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {ROOTS["square"]}>{FEATURES[feature]}</svg>')
    assert_same_picture(file)


@pytest.mark.parametrize("root", ROOTS)
def test_a_page_lies_as_it_should(tmp_path: Path, root: str) -> None:
    file = tmp_path / "old.svg"
    file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {ROOTS[root]}>{FEATURES["layers"]}</svg>')
    assert_same_picture(file)
