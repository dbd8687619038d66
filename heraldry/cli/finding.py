"""``shapes``, ``regions``, ``space``, ``scales`` and ``schema``: what there is to write in a description."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from heraldry.cli.options import PAGE_DPI, USUAL_FORMATS, USUAL_OUT, USUAL_PAPER, Dpi
from heraldry.cli.say import AsJson, as_json, faults_told
from heraldry.cli.writing import report, written
from heraldry.errors import HeraldryError


def regions(
    word: Annotated[str, typer.Argument(help="A name or a part of one, or a code.")], json: AsJson = False
) -> None:
    """Find the codes of states, counties and countries for `region = [...]`."""
    from heraldry.shapes.region.names import find  # imported where used: start-up time

    with faults_told():
        found = find(word)
        if json:
            as_json([{"code": one.code, "name": one.name, "kind": one.kind, "in": one.detail} for one in found])
            return
        if not found:
            raise HeraldryError(f"no state, county or country is called '{word}', try a part of its name")
    for one in found:
        typer.echo(f"{one.code:<8} {one.name:<32} {one.kind:<8} {one.detail}".rstrip())


def space(
    file: Annotated[Path, typer.Argument(help="A diagram file.", show_default=False)],
    text: Annotated[str, typer.Option("--text", help="The text that is to go there.")],
    side: Annotated[str, typer.Option("--side", help="On which side.")] = "left",
    alphabet: Annotated[str, typer.Option("--alphabet", help="In which alphabet.")] = "gothic",
    clear: Annotated[str, typer.Option("--clear", help="A length that it keeps from everything.")] = "0 mm",
    mask: Annotated[
        Path | None,
        typer.Option("--mask", help="Write what is free as a drawing: free.svg, free.dxf.", show_default=False),
    ] = None,
    json: AsJson = False,
) -> None:
    """Find where on a lettered side a further text can be largest, and how large."""
    from heraldry.build import free_space  # imported where used: start-up time

    with faults_told():
        room, free = free_space(file, side, text, alphabet, clear)
        if mask is not None:
            from heraldry.press import write

            write(free, mask)
    box = room.box
    if json:
        edges = {"left_mm": box.left, "right_mm": box.right, "bottom_mm": box.bottom, "top_mm": box.top}
        as_json({"cap_height_mm": room.cap_height_mm, **edges})
        return
    typer.echo(f"{text}: capitals up to {room.cap_height_mm:.2f} mm")
    typer.echo(f"from {box.left:.2f} to {box.right:.2f} mm across, from {box.bottom:.2f} to {box.top:.2f} mm up")


def scales(json: AsJson = False) -> None:
    """List the scales by name, with their ratios and whose standard they are."""
    from heraldry.units import SCALES  # imported where used: start-up time

    if json:
        as_json(
            [
                {
                    "name": one.name,
                    "ratio": float(one.ratio),
                    "mm_to_the_foot": float(one.mm_to_the_foot),
                    "standard": one.standard,
                }
                for one in SCALES
            ]
        )
        return
    for one in SCALES:
        typer.echo(
            f"{one.name:<12} 1:{float(one.ratio):<9.5g} "
            f"{float(one.mm_to_the_foot):>8.4g} mm to the foot   {one.standard}"
        )


def schema(kind: Annotated[str, typer.Argument(help="herald, road or printer.")]) -> None:
    """Print the JSON Schema of a kind of file."""
    from heraldry.describe.schema import json_schema  # imported where used: start-up time

    with faults_told():
        as_json(json_schema(kind))


def shapes(
    out: Annotated[
        Path | None, typer.Option("--out", help="Picture them all on pages, in this folder.", show_default=False)
    ] = None,
    formats: Annotated[
        str | None, typer.Option("--as", help="Which outputs of pages: svg, pdf, png, dxf, eps.", show_default=False)
    ] = None,
    paper: Annotated[str | None, typer.Option("--paper", help="Of pages: A4 or Letter.", show_default=False)] = None,
    dpi: Dpi = PAGE_DPI,
    json: AsJson = False,
) -> None:
    """List the kinds of shape with their keys, and the functions of set arithmetic; or picture them all on pages."""
    if out is None and formats is None and paper is None:
        _list_shapes(json)
        return
    with faults_told():
        from heraldry.pages.paper import paper_named  # imported where used: start-up time
        from heraldry.specimen.shape_pages import shape_pages

        folder, sheet = out or USUAL_OUT, paper_named(USUAL_PAPER if paper is None else paper)
        report(written(shape_pages(sheet), folder, USUAL_FORMATS if formats is None else formats, dpi), folder, json)


def _list_shapes(json: bool) -> None:
    from heraldry.plates.vocabulary import art_functions, shape_kinds  # imported where used: start-up time

    kinds, functions = shape_kinds(), art_functions()
    if json:
        as_json({"shapes": kinds, "functions": functions})
        return
    for kind in kinds:
        typer.echo(f"{kind['shape']}: {kind['about']}")
        typer.echo(f"    {', '.join(kind['keys'])}\n")
    typer.echo("Functions in art:")
    for function in functions:
        typer.echo(f"    {function['usage']:<32} {function['about']}")
