"""PDF 1.6 for a printer of spot plates: exact page box, curves kept, one optional-content layer a plate.

Every spot ink is a Separation colour. Its alternate is DeviceRGB, because an ink is described by the sRGB
colour that a screen shows in its place: a CMYK alternate would need a conversion that nobody asked for, and
the file would no longer look on a screen as the SVG does.

Every plate overprints. Knockouts and traps have been drawn into the plates already, so that nothing below may
be cleared by what lies above; without overprint the white plate under the colours comes out empty. (ISO
32000-1: 8.6.6.4 for Separation; its clauses on overprint control and on optional content for the rest.)
Points of 1/72 in; origin at the lower left of the page.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from io import BytesIO
from typing import TYPE_CHECKING

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.press.number_format import COLOUR_DECIMALS, POINT_DECIMALS, fixed, rounded
from heraldry.press.path_text import POSTFIX_WORDS, spell
from heraldry.press.writer import POINTS_PER_MM, Ring, frame_y_up

if TYPE_CHECKING:
    import pikepdf

# Optional content came with 1.5, PrintScaling (do not shrink to fit, the size is the point) with 1.6.
_MIN_VERSION = "1.6"


class PdfWriter:
    """One PDF file of one page."""

    keeps_arcs = False

    def __init__(self, artwork: Artwork) -> None:
        self.frame = frame_y_up(artwork.page, POINTS_PER_MM)
        self._artwork = artwork
        self._inks = tuple(dict.fromkeys(plate.ink for plate in artwork.plates))
        self._layers: list[str] = []
        self._lines = ["/overprint gs"]

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Write one plate into its layer."""
        self._lines += [f"/OC /layer{len(self._layers)} BDC", self._fill_colour(plate.ink)]
        for ring in rings:
            self._lines += spell(ring, POSTFIX_WORDS, POINT_DECIMALS)
        self._lines += ["f*", "EMC"]
        self._layers.append(plate.name)

    def _fill_colour(self, ink: Ink) -> str:
        if ink.spot:
            return f"/ink{self._inks.index(ink)} cs 1 scn"
        return " ".join(fixed(value, COLOUR_DECIMALS) for value in ink.rgb) + " rg"

    def finish(self) -> bytes:
        """The file; its identifier is made from its contents, and it bears no date."""
        import pikepdf  # imported where used: start-up time

        with pikepdf.new() as pdf:
            layers = [pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name=name)) for name in self._layers]
            self._add_page(pdf, layers)
            shown = pikepdf.Dictionary(Name="plates", Order=layers, ON=layers, BaseState=pikepdf.Name.ON)
            pdf.Root.OCProperties = pikepdf.Dictionary(OCGs=layers, D=shown)
            pdf.Root.ViewerPreferences = pikepdf.Dictionary(PrintScaling=pikepdf.Name("/None"))
            pdf.docinfo["/Title"] = self._artwork.name
            file = BytesIO()
            pdf.save(file, min_version=_MIN_VERSION, deterministic_id=True)
        return file.getvalue()

    def _add_page(self, pdf: pikepdf.Pdf, layers: Sequence[pikepdf.Object]) -> None:
        import pikepdf  # imported where used: start-up time

        width, height = self._artwork.width_mm * POINTS_PER_MM, self._artwork.height_mm * POINTS_PER_MM
        page = pdf.add_blank_page(page_size=(72, 72))  # any size will do, the true one follows and may be tiny
        box = [0, 0, rounded(width, POINT_DECIMALS), rounded(height, POINT_DECIMALS)]
        page.MediaBox = page.TrimBox = pikepdf.Array(box)
        page.Contents = pdf.make_stream("\n".join(self._lines).encode("ascii"))
        page.Resources = pikepdf.Dictionary(
            ColorSpace={f"/ink{i}": _separation(ink) for i, ink in enumerate(self._inks) if ink.spot},
            ExtGState={"/overprint": pikepdf.Dictionary(OP=True, op=True, OPM=1)},
            Properties={f"/layer{i}": layer for i, layer in enumerate(layers)},
        )


def _separation(ink: Ink) -> pikepdf.Array:
    """A Separation colour space: tint 0 is bare paper, tint 1 the ink's screen colour, linear between."""
    import pikepdf  # imported where used: start-up time

    full = [rounded(value, COLOUR_DECIMALS) for value in ink.rgb]
    tint = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1, 1, 1], C1=full, N=1)
    name = pikepdf.Name("/" + ink.name)
    return pikepdf.Array([pikepdf.Name.Separation, name, pikepdf.Name.DeviceRGB, tint])
