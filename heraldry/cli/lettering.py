"""``alphabets`` and ``specimen``: what lettering there is, in a list and on pages."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from heraldry.cli.options import PAGE_DPI, USUAL_FORMATS, USUAL_OUT, USUAL_PAPER, Dpi, Formats, Out, PaperName
from heraldry.cli.progress import watched
from heraldry.cli.say import AsJson, as_json, faults_told
from heraldry.cli.writing import report, written

if TYPE_CHECKING:
    from heraldry.specimen import StyleEntry

Roads = Annotated[
    list[Path] | None,
    typer.Argument(metavar="[FILE]...", help="Road files, whose alphabets are shown too.", show_default=False),
]
Texts = Annotated[
    str | None, typer.Option("--text", help="What is lettered; else the road's name.", show_default=False)
]
SizedFor = Annotated[
    list[str] | None,
    typer.Option(
        "--scale", help="For models of which scale: HO unless named; several are compared too.", show_default=False
    ),
]


def specimen(
    files: Roads = None,
    text: Texts = None,
    scale: SizedFor = None,
    paper: PaperName = USUAL_PAPER,
    out: Out = USUAL_OUT,
    formats: Formats = USUAL_FORMATS,
    dpi: Dpi = PAGE_DPI,
    json: AsJson = False,
) -> None:
    """Show every alphabet on pages to choose from: a name in each, large and at the size of models, and its letters."""
    with faults_told():
        from heraldry.build import load_all  # imported where used: start-up time
        from heraldry.pages.paper import paper_named
        from heraldry.specimen import show_of, specimen_pages
        from heraldry.units import parse_scale

        sheet, scales = paper_named(paper), [parse_scale(name) for name in scale or ["HO"]]
        shows = [show_of(road, text) for road in load_all(files or [])] or [show_of(text=text)]
        pages = specimen_pages(shows, scales, sheet, lambda steps: watched(steps, "drawing", len(steps)))
        report(written(watched(pages, "writing", len(pages)), out, formats, dpi), out, json)


def alphabets(json: AsJson = False) -> None:
    """List our own alphabets with what can be asked of each, and the font families of this computer."""
    from heraldry.lettering.fonts import installed_families  # imported where used: start-up time
    from heraldry.specimen import style_entries

    entries, families = style_entries(), list(installed_families())
    if json:
        as_json({"styles": [_as_dict(entry) for entry in entries], "families": families})
        return
    for entry in entries:
        _tell(entry)
    typer.echo('Font families here, for family = "…": ' + (", ".join(families) or "none found"))


def _tell(entry: StyleEntry) -> None:
    style = entry.style
    typer.echo(f"{style.name}: {style.summary}; {len(style.letters)} letters, figures and signs")
    typer.echo(f"    {'key':<12} {'usual':>6}   {'sound range':<16}")
    for one in entry.choices:
        span = f"{one.least:.3g} to {one.most:.3g}"
        typer.echo(f"    {one.key:<12} {one.default:>6.3g}   {span:<16} {one.about}".rstrip())
    if entry.corners:
        typer.echo(f"    {'corner':<12} {entry.corners[0]:>6}   {' or '.join(entry.corners[1:])}")
    typer.echo(f"    {'stencil':<12} {'false':>6}   {'or true':<16} {_about('stencil')}\n")


def _as_dict(entry: StyleEntry) -> dict[str, Any]:
    return {
        "style": entry.style.name,
        "about": entry.style.summary,
        "parameters": [
            {"key": one.key, "default": one.default, "least": one.least, "most": one.most, "about": one.about}
            for one in entry.choices
        ],
        "corners": list(entry.corners),
        "letters": "".join(sorted(entry.style.letters)),
    }


def _about(key: str) -> str:
    from heraldry.describe.models import AlphabetTable  # imported where used: start-up time

    return AlphabetTable.model_fields[key].description or ""
