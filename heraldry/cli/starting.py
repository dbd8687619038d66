"""``new`` and ``templates``: a railroad to start from."""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from typing import Annotated

import typer

from heraldry.cli.say import AsJson, as_json, faults_told
from heraldry.errors import HeraldryError, nearest

USUAL_TEMPLATE = "umbagog"


def templates_folder() -> Path:
    """Where the templates lie: inside an installed package, or beside it in a checkout."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "templates"
    return inside if inside.is_dir() else package.parent / "templates"


def template_folders() -> dict[str, Path]:
    """Every template by its name, sorted after the one that ``new`` takes if none is named."""
    folders = (path for path in templates_folder().iterdir() if path.is_dir())
    return {path.name: path for path in sorted(folders, key=lambda path: (path.name != USUAL_TEMPLATE, path.name))}


def template_heralds() -> list[Path]:
    """Every herald file of every template, sorted."""
    return _template_files("herald")


def template_diagrams() -> list[Path]:
    """Every diagram file of every template, sorted."""
    return _template_files("diagram")


def _template_files(kind: str) -> list[Path]:
    return [path for folder in template_folders().values() for path in _files_of(folder, kind)]


def _files_of(folder: Path, kind: str) -> list[Path]:
    """The files of a kind in a folder, by name."""
    says_kind = re.compile(rf'^kind\s*=\s*"{kind}"', re.MULTILINE)
    return [path for path in sorted(folder.glob("*.toml")) if says_kind.search(path.read_text(encoding="utf-8"))]


def new(
    folder: Annotated[Path, typer.Argument(metavar="DIR", help="The folder to make.")],
    template: Annotated[str | None, typer.Option("--from", help="Which template.")] = None,
    drawing: Annotated[
        Path | None, typer.Option("--drawing", metavar="FILE", help="An SVG or DXF drawing to begin with.")
    ] = None,
) -> None:
    """Start a railroad of your own from a template, or from an old drawing."""
    with faults_told():
        if drawing is not None and template is not None:
            raise HeraldryError(
                "a railroad is begun from a template or with a drawing, found both --from and --drawing"
            )
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise HeraldryError(f"{folder} is there already and not empty, nothing was written: name another folder")
        if drawing is not None:
            _begun(drawing, folder)
        else:
            _from_template(USUAL_TEMPLATE if template is None else template, folder)
    typer.echo(f"{folder} is ready, now run: heraldry draw {folder / _first_herald(folder)}")


def _from_template(template: str, folder: Path) -> None:
    known = template_folders()
    if template not in known:
        raise HeraldryError(f"no template is called '{template}', {nearest(template, known)}")
    _copied(known[template], folder)


def _begun(drawing: Path, folder: Path) -> None:
    """Write what a drawing is the beginning of; what of it cannot be kept is said."""
    from heraldry.cli.from_drawing import begun_with  # imported where used: start-up time
    from heraldry.press.whole_files import put_files

    begun = begun_with(drawing)
    put_files(folder, begun.files)
    for note in begun.notes:
        typer.echo(f"{drawing.name}: {note}", err=True)
    typer.echo(f"inks: {', '.join(begun.inks)}")


def templates(json: AsJson = False) -> None:
    """List the templates that a railroad of your own can start from."""
    rows = [
        {"template": name, "file": path.name, "about": _about(path)}
        for name, folder in template_folders().items()
        for path in sorted(folder.glob("*.toml"))
    ]
    if json:
        as_json(rows)
        return
    for row in rows:
        typer.echo(f"{row['template']:<12} {row['file']:<18} {row['about']}")


def _copied(template: Path, folder: Path) -> None:
    try:
        shutil.copytree(template, folder, dirs_exist_ok=True)
    except OSError as error:
        raise HeraldryError(f"{folder} cannot be written: {error.strerror}") from None


def _first_herald(folder: Path) -> str:
    return _files_of(folder, "herald")[0].name


def _about(path: Path) -> str:
    """A template says what it is in the comment on its first line."""
    first = path.read_text(encoding="utf-8").partition("\n")[0]
    return first.lstrip("# ").strip()
