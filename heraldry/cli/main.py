"""The ``heraldry`` command: a thin door on the library. Nothing heavy is imported before a command needs it."""

from __future__ import annotations

import logging

import typer

from heraldry.cli import drawing, finding, lettering, starting
from heraldry.cli.ideas import ideas

app = typer.Typer(
    name="heraldry",
    help="Lettering and heralds for a railroad of your own invention, as exact artwork for decals.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)

app.command("draw")(drawing.draw)
app.command("proof")(drawing.proof)
app.command("check")(drawing.check)
app.command("demo")(drawing.demo)
app.command("new")(starting.new)
app.command("templates")(starting.templates)
app.command("shapes")(finding.shapes)
app.command("alphabets")(lettering.alphabets)
app.command("specimen")(lettering.specimen)
app.command("ideas")(ideas)
app.command("regions")(finding.regions)
app.command("space")(finding.space)
app.command("scales")(finding.scales)
app.command("schema")(finding.schema)


def main() -> None:
    """Run the command line; what libraries log is no word of ours, and says nothing to a person."""
    logging.getLogger().addHandler(logging.NullHandler())
    app()
