"""A sketch drawn: its file, and what came of it, for rules to measure and for pages to show."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from heraldry.artwork import Artwork
from heraldry.build import artwork_of
from heraldry.describe.description import Description
from heraldry.describe.kinds import KINDS, model_of
from heraldry.describe.read_toml import parse_toml
from heraldry.ideas.sketch import Sketch
from heraldry.plates.compose import Composed, compose
from heraldry.resolve.herald import resolve_herald
from heraldry.resolve.resolved import ResolvedHerald


@dataclass(frozen=True, eq=False)
class Proof:
    """A sketch, its description, and its artwork."""

    sketch: Sketch
    text: str
    herald: ResolvedHerald
    composed: Composed
    artwork: Artwork


def described(text: str, path: Path, road: Description | None) -> Description:
    """The description that a file of this text would be."""
    source = parse_toml(text, path, KINDS)
    return Description(source, model_of(str(source.data["kind"])).model_validate(source.data), road)


def proof_of(sketch: Sketch, text: str, path: Path, road: Description) -> Proof:
    """A sketch drawn from its text; raises DescriptionError where a shape cannot be drawn with its numbers."""
    herald = resolve_herald(described(text, path, road))
    composed = compose(herald)
    return Proof(sketch, text, herald, composed, artwork_of(herald, composed))
