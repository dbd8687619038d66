"""``ideas``: a page of heralds to choose from, and one of them as a file to go on with."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from heraldry.cli.options import PAGE_DPI, USUAL_FORMATS, USUAL_OUT, USUAL_PAPER, Dpi, Formats, Out, PaperName
from heraldry.cli.progress import watched
from heraldry.cli.say import AsJson, as_json, faults_told
from heraldry.cli.writing import report, written

if TYPE_CHECKING:
    from heraldry.describe.description import Description
    from heraldry.ideas import Desk, Idea

Name = Annotated[str | None, typer.Argument(help="The railroad's name; a road file may say it.", show_default=False)]
Initials = Annotated[str | None, typer.Option("--initials", help="Else they follow from the name.")]
Region = Annotated[
    list[str] | None,
    typer.Option("--region", help="A land it serves, by its code: US-NH, 33007, IS. As often as need be."),
]
Colour = Annotated[list[str] | None, typer.Option("--colour", help="A colour like #1e4a36; two of them at most.")]
On = Annotated[str, typer.Option("--on", help="The paint it will lie on: of the road, or a colour.")]
Era = Annotated[str | None, typer.Option("--era", help="A year or a decade: 1920s. All of them if left out.")]
Seed = Annotated[int, typer.Option("--seed", help="Another number gives another page.")]
Width = Annotated[str, typer.Option("--width", help="The finished width: '20 mm', '66 in full'.")]
ScaleName = Annotated[str, typer.Option("--scale", help="The scale of the models: HO, O, 1:48.")]
RoadFile = Annotated[Path | None, typer.Option("--road", help="A road file, whose name, inks and alphabets are used.")]
Take = Annotated[int | None, typer.Option("--take", help="Write the idea of this number as a herald file.")]


def ideas(
    name: Name = None,
    initials: Initials = None,
    region: Region = None,
    colour: Colour = None,
    on: On = "",
    era: Era = None,
    seed: Seed = 1,
    width: Width = "20 mm",
    scale: ScaleName = "HO",
    road: RoadFile = None,
    take: Take = None,
    paper: PaperName = USUAL_PAPER,
    out: Out = USUAL_OUT,
    formats: Formats = USUAL_FORMATS,
    dpi: Dpi = PAGE_DPI,
    json: AsJson = False,
) -> None:
    """Compose 24 heralds for a railroad on a page to choose from; --take 7 writes the seventh as a herald file."""
    with faults_told():
        from heraldry.ideas import ROAD_FILE, brief_of, contact_page, desk_of  # imported where used: start-up time
        from heraldry.pages.paper import paper_named

        sheet = paper_named(paper)
        described = _road(road) if road else None
        brief = brief_of(
            name, initials, tuple(region or ()), tuple(colour or ()), on, era, seed, width, scale, described,
            _from(out, road) if road else ROAD_FILE,
        )  # fmt: skip
        desk = desk_of(brief)
        made = _made(desk)
        if take is not None:
            _taken(made, take, desk, out, json)
            return
        report(written(contact_page(made, brief, desk.inks.paint_hex, sheet), out, formats, dpi), out, json)


def _road(path: Path) -> Description:
    from heraldry.build import load  # imported where used: start-up time

    return load(path)


def _from(folder: Path, road: Path) -> str:
    """How a file in a folder names the road file."""
    try:
        return Path(os.path.relpath(road, folder)).as_posix()
    except ValueError:  # on another drive there is no way from here to there
        return road.resolve().as_posix()


def _made(desk: Desk) -> tuple[Idea, ...]:
    from heraldry.ideas import COUNT, SPARE, chosen, sound_ideas  # imported where used: start-up time

    return chosen(watched(sound_ideas(desk), "composing", COUNT + SPARE))


def _taken(made: tuple[Idea, ...], number: int, desk: Desk, out: Path, json: bool) -> None:
    from heraldry.ideas import take  # imported where used: start-up time

    path = take(made, number, desk, out)
    if json:
        as_json({"file": str(path), "idea": number, "about": made[number - 1].sketch.caption})
        return
    typer.echo(f"{path} is ready, now run: heraldry draw {path}")
