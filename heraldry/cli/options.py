"""What several commands can be told, and what they do untold."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

Files = Annotated[list[Path], typer.Argument(help="Description files (TOML).", show_default=False)]
Out = Annotated[Path, typer.Option("--out", help="Folder that receives what is drawn.")]
Scales = Annotated[
    list[str] | None,
    typer.Option("--scale", help="Another scale: HO, O, 1:48, 48. May be given more than once.", show_default=False),
]
Formats = Annotated[str, typer.Option("--as", help="Which outputs: svg, pdf, png, dxf, eps.")]
PrinterFile = Annotated[
    Path | None,
    typer.Option("--printer", help="A printer file: what the printer can do.", show_default=False),
]
Dpi = Annotated[int, typer.Option("--dpi", min=72, max=2400, help="Dots per inch of PNG pictures.")]
PaperName = Annotated[str, typer.Option("--paper", help="A4 or Letter.")]
Cars = Annotated[
    str | None,
    typer.Option("--cars", help="Only these cars of a class: 301,305.", show_default=False),
]
Variants = Annotated[
    list[str] | None,
    typer.Option(
        "--variant",
        help="Only this variant of a herald; 'herald' is the herald itself. May be given more than once.",
        show_default=False,
    ),
]
Jobs = Annotated[int, typer.Option("--jobs", min=1, max=64, help="Draw a class by so many processes.")]

USUAL_OUT = Path("out")
USUAL_FORMATS = "svg,pdf,png"
ALL_FORMATS = "svg,pdf,png,dxf,eps"
USUAL_PAPER = "A4"

PRINT_DPI = 600
"""Of decals: as fine as a usual laser printer."""
PAGE_DPI = 300
"""Of pages that are looked at on a screen or printed by an office printer."""
PROOF_DPI = 200
"""Of pictures that are looked at and not printed as decals."""
