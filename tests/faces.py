"""Open typefaces that the registries carry, for comparison: each a package and a file of it."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from heraldry.lettering.fonts import FontAlphabet, font_from_file

GOTHIC_FACES = (
    ("font_roboto", "Roboto-Regular.ttf"),
    ("font_roboto", "Roboto-Bold.ttf"),
    ("font_roboto", "Roboto-Black.ttf"),
    ("font_lato", "Lato-Light.ttf"),
    ("font_lato", "Lato-Regular.ttf"),
    ("font_lato", "Lato-Bold.ttf"),
    ("font_source_sans_pro", "SourceSansPro-Regular.otf"),
    ("font_source_sans_pro", "SourceSansPro-Bold.otf"),
    ("font_manrope", "Manrope-Regular.ttf"),
    ("font_manrope", "Manrope-Bold.ttf"),
    ("font_hanken_grotesk", "HankenGrotesk-Regular.otf"),
    ("font_fjallaone", "FjallaOne-Regular.ttf"),
)
SERIF_FACES = (
    ("font_source_serif_pro", "SourceSerifPro-Regular.otf"),
    ("font_source_serif_pro", "SourceSerifPro-Bold.otf"),
)


def face_file(package: str, file: str) -> Path:
    """Where one of them lies on this computer."""
    return Path(str(files(package) / "files" / file))


def face(package: str, file: str, **wishes: object) -> FontAlphabet:
    """The alphabet of one of them."""
    return font_from_file(face_file(package, file), **wishes)
