"""One idea as an ordinary herald file, with the file of its road if there is none."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from heraldry.errors import HeraldryError
from heraldry.ideas.brief import ROAD_FILE
from heraldry.ideas.choosing import COUNT, Desk, Idea, new_road_toml
from heraldry.press.whole_files import put_files


def take(ideas: Sequence[Idea], number: int, desk: Desk, folder: Path) -> Path:
    """Write an idea by its number into a folder, and say where; what is there already is kept.

    Raises HeraldryError for a number that the page has not, and where another file of that name is in the way.
    """
    if not 1 <= number <= len(ideas):
        raise HeraldryError(f"the page has ideas 1 to {COUNT}, found {number}")
    files = {f"idea-{number}.toml": herald_file(ideas[number - 1], number, desk)}
    if desk.brief.road is None:
        files[ROAD_FILE] = new_road_toml(desk.brief, desk.inks)
    fresh = {name: text for name, text in files.items() if not _is_there(folder / name, text)}
    if fresh:
        put_files(folder, {name: text.encode() for name, text in fresh.items()})
    return folder / f"idea-{number}.toml"


def herald_file(idea: Idea, number: int, desk: Desk) -> str:
    """The text of an idea's file, which says where it comes from."""
    title, _, rest = idea.proof.text.partition("\n")
    return f"{title} (idea {number} of seed {desk.brief.seed})\n{rest}"


def _is_there(path: Path, text: str) -> bool:
    """Whether a file holds just that text; raises HeraldryError where it holds another, which would be lost."""
    if not path.exists():
        return False
    if path.is_file() and path.read_bytes() == text.encode():
        return True
    what = "a road of its own: name it with --road" if path.name == ROAD_FILE else "another file of that name"
    raise HeraldryError(f"{path} is there already, {what}, or name another folder with --out")
