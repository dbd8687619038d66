"""Drawings that would do harm, or are none: each is refused in one clear line, in less than a second."""

from __future__ import annotations

import gzip
import re
import time
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.shapes.drawing import drawing
from heraldry.shapes.drawing.shape import LANTERN

LONGEST_S = 1.0
"""Of this process's own time, so that a busy machine fails no test."""

SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 100">'
STEP, DOT, LARGER = "l1 1", '<rect width="1" height="1"/>', '<g transform="scale(1e8)">'
BOX = '<rect width="5" height="5"/></svg>'


def entity_bomb() -> str:
    names = "abcdefghij"
    steps = "".join(f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip(names, names[1:], strict=False))
    return f'<!DOCTYPE svg [<!ENTITY a "ha">{steps}]>{SVG}<text>&j;</text></svg>'


def use_bomb() -> str:
    """Ten uses of ten uses …, a thousand million boxes."""
    steps = "".join(f'<g id="r{i + 1}">' + f'<use href="#r{i}"/>' * 10 + "</g>" for i in range(9))
    return f'{SVG}<defs><rect id="r0" width="1" height="1"/>{steps}</defs><use href="#r9"/></svg>'


def clip_bomb() -> str:
    inside = '<rect width="50" height="50"/><rect width="20" height="50"/>'
    steps = "".join(
        f'<clipPath id="c{i + 1}"><g clip-path="url(#c{i})">{inside}</g><g clip-path="url(#c{i})">{inside}</g></clipPath>'
        for i in range(30)
    )
    return f'{SVG}<clipPath id="c0">{inside}</clipPath>{steps}<rect width="9" height="9" clip-path="url(#c30)"/></svg>'


def tangle(count: int) -> str:
    return "".join(f"L{(i * 37) % 101} {(i * 53) % 103}" for i in range(count))


REFUSED: dict[str, tuple[str | bytes, str]] = {
    "entity bomb": (entity_bomb(), "declares an entity"),
    "external entity": (f'<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hosts">]>{SVG}<text>&x;</text>{BOX}', "entity"),
    "external document type": (f'<!DOCTYPE svg SYSTEM "http://x.invalid/e.dtd">{SVG}{BOX}', "document type of its own"),
    "parameter entity": (f'<!DOCTYPE svg [<!ENTITY % x SYSTEM "http://x.invalid/e">%x;]>{SVG}{BOX}', "entity"),
    "use of another file": (f'{SVG}<use href="http://x.invalid/a.svg#b"/>{BOX}', "from elsewhere"),
    "xlink to another file": (f'{SVG}<use xlink:href="../secret.svg#b"/>{BOX}', "from elsewhere"),
    "style sheet imported": (f'{SVG}<style>@import url("http://x.invalid/a.css");</style>{BOX}', "@import"),
    "style sheet beside": (f'<?xml-stylesheet href="a.css"?>{SVG}{BOX}', "style sheet of another file"),
    "nested 10,000 deep": (f"{SVG}{'<g>' * 10_000}{'</g>' * 10_000}</svg>", "200 deep"),
    "huge number": (f'{SVG}<rect width="1e300" height="1e300"/></svg>', "1e+300"),
    "huge numbers in a path": (f'{SVG}<path d="M0 0L1e308 1e308L0 5z"/></svg>', "nothing"),
    "huge by transforms": (
        f"{SVG}{LARGER * 40}<rect width='9' height='9'/>{'</g>' * 40}</svg>",
        "",
    ),
    "a thousand million dashes": (
        f'{SVG}<path d="M0 9H100" stroke="red" stroke-dasharray="1e-7"/></svg>',
        "500,000,000 dashes",
    ),
    "use bomb": (use_bomb(), "10,000 elements"),
    "clip bomb": (clip_bomb(), ""),
    "uses itself": (f'{SVG}<g id="a"><use href="#a"/></g></svg>', "'a' inside itself"),
    "clips itself": (
        f'{SVG}<clipPath id="a"><rect width="9" height="9" clip-path="url(#a)"/></clipPath>'
        f'<rect width="9" height="9" clip-path="url(#a)"/></svg>',
        "'a' inside itself",
    ),
    "50 MB": (b"<svg>" + b" " * 50_000_000, "48 MB, a drawing may have 16 MB"),
    "50 MB in 50 kB": (gzip.compress(b"<svg>" + b" " * 50_000_000), "more than 16 MB"),
    "a path of 10 MB": (f'{SVG}<path d="M0 0{STEP * 2_500_000}"/></svg>', "10,000,004 characters"),
    "40,000 segments": (f'{SVG}<path d="M0 0{STEP * 40_000}"/></svg>', "30,000 segments"),
    "50,000 elements": (f"{SVG}{'<g/>' * 50_000}</svg>", "10,000 elements"),
    "a million rules": (f"{SVG}<style>{'*{fill:red}' * 50_000}</style>{BOX}", "1,000 rules"),
    "rules for all": (
        f"{SVG}<style>{'g *{fill:red}' * 900}</style>{DOT * 5_000}</svg>",
        "too large",
    ),
    "a tangle": (f'{SVG}<path d="M0 0{tangle(3_000)}z"/></svg>', "crosses itself"),
    "a crowd": (
        SVG + "".join(f'<circle cx="{i % 99}" cy="9" r="40" fill="#{i % 16:x}00"/>' for i in range(3_000)) + "</svg>",
        "over one another",
    ),
    "not in UTF-8": (f'{SVG}<rect id="caf\xe9" width="5" height="5"/></svg>'.encode("latin-1"), "not well-formed"),
    "an unknown encoding": (f'<?xml version="1.0" encoding="klingon"?>{SVG}{BOX}', "unknown encoding"),
    "empty": (b"", "is empty"),
    "blank": (b" \n ", "is empty"),
    "truncated": (f'{SVG}<rect width="5" ', "unclosed token"),
    "truncated in between": (f"{SVG}<g>", "no element found"),
    "nothing in it": (f"{SVG}</svg>", "nothing that could be drawn"),
    "a web page": ("<html><body/></html>", "root must be 'svg', found 'html'"),
    "no XML": ("hello", "no sound SVG"),
    "a page without size": (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 0"><rect width="5" height="5"/></svg>',
        "size",
    ),
    "nothing but a line without width": (f'{SVG}<path d="M0 0L5 5"/></svg>', "nothing of the drawing can be seen"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_refused_in_words_and_at_once(tmp_path: Path, name: str) -> None:
    content, said = REFUSED[name]
    file = tmp_path / "old.svg"
    file.write_bytes(content if isinstance(content, bytes) else content.encode())
    begun = time.process_time()
    with pytest.raises(GeometryError) as caught:
        drawing(file, width=20.0)
    assert time.process_time() - begun < LONGEST_S
    message = str(caught.value)
    assert said in message
    assert "\n" not in message
    assert len(message) < 250


PICTURES = {
    "PNG": b"\x89PNG\r\n\x1a\n",
    "JPEG": b"\xff\xd8\xff\xe0",
    "GIF": b"GIF89a",
    "BMP": b"BM\x00\x00",
    "TIFF": b"II*\x00",
    "WebP": b"RIFF\x00\x00\x00\x00WEBPVP8 ",
}


@pytest.mark.parametrize("kind", PICTURES)
def test_pictures_of_dots_are_known_by_their_content_and_refused_with_advice(tmp_path: Path, kind: str) -> None:
    file = tmp_path / "looks_like.svg"
    file.write_bytes(PICTURES[kind] + bytes(40))
    with pytest.raises(GeometryError, match=rf"{kind} picture.*trace it"):
        drawing(file)


@pytest.mark.parametrize(
    ("kind", "start"), [("PDF", b"%PDF-1.7"), ("PostScript", b"%!PS-Adobe-3.0"), ("ZIP", b"PK\x03\x04")]
)
def test_other_formats_are_refused_with_advice(tmp_path: Path, kind: str, start: bytes) -> None:
    file = tmp_path / "old.svg"
    file.write_bytes(start + bytes(40))
    with pytest.raises(GeometryError, match=rf"{kind} file.*save it as SVG"):
        drawing(file)


def test_the_plain_document_type_of_svg_is_no_harm(tmp_path: Path) -> None:
    file = tmp_path / "old.svg"
    public = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'
    file.write_text(f"{public}{SVG}{BOX}")
    assert drawing(file).outline.node_count == 4


def test_another_encoding_that_is_named_is_read(tmp_path: Path) -> None:
    file = tmp_path / "old.svg"
    named = f'<?xml version="1.0" encoding="ISO-8859-1"?>{SVG}<rect id="caf\xe9" width="5" height="5"/></svg>'
    file.write_bytes(named.encode("latin-1"))
    assert drawing(file, part="café").outline.node_count == 4


PIECES = (
    "<g>",
    "</g>",
    '"',
    "<",
    ">",
    "url(#glass)",
    "#rib",
    "1e400",
    "-",
    "%",
    ";",
    "}",
    "{",
    "matrix(",
    "M",
    "z",
    "NaN",
    "\x00",
)
SPOILING = st.tuples(st.integers(0, 2_000), st.integers(0, 40), st.one_of(st.sampled_from(PIECES), st.text(max_size=4)))


@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.lists(SPOILING, min_size=1, max_size=4))
def test_a_spoiled_drawing_is_drawn_or_refused_in_words(tmp_path_factory, spoilings):
    """Some characters of the lantern are put in another's place: there is never any other error."""
    text = LANTERN.read_text()
    for place, length, piece in spoilings:
        place %= len(text)
        text = text[:place] + piece + text[place + length :]
    file = tmp_path_factory.mktemp("spoiled") / "old.svg"
    file.write_text(text, encoding="utf-8", errors="surrogatepass")
    try:
        outline = drawing(file, width=20.0).outline
    except GeometryError as error:
        assert "\n" not in str(error)
    else:
        assert not outline.is_empty


EXTREMES = ("0", "-1", "1e9", "-1e9", "1e-9", "1e-300", "1e400", "0.0001", "1000000", "nan", "")
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.lists(st.tuples(st.integers(0, 500), st.sampled_from(EXTREMES)), min_size=1, max_size=5))
def test_extreme_numbers_are_drawn_or_refused_in_words(tmp_path_factory, changes):
    """Some numbers of the lantern are replaced, of which it has two hundred."""
    text = LANTERN.read_text()
    for which, number in changes:
        found = list(NUMBER.finditer(text))
        place = found[which % len(found)]
        text = text[: place.start()] + number + text[place.end() :]
    file = tmp_path_factory.mktemp("extreme") / "old.svg"
    file.write_text(text)
    begun = time.process_time()
    try:
        assert np.isfinite(drawing(file, width=20.0).outline.data).all()
    except GeometryError as error:
        assert "\n" not in str(error)
    assert time.process_time() - begun < 10.0
