"""The house: data flows one way, the public face is short, the command starts light."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

import heraldry

PACKAGE = Path(heraldry.__file__).parent
FLOORS = (
    "errors",
    "units",
    "geometry",
    "artwork",
    "lettering",
    "shapes",
    "describe",
    "resolve",
    "plates",
    "guard",
    "pages",
    "diagrams",
    "specimen",
    "press",
    "build",
    "ideas",
    "cli",
    "__main__",
)
"""From the ground up: a module may import its own floor and those before it."""
HEAVY = (
    "numpy",
    "shapely",
    "pydantic",
    "pyproj",
    "cairosvg",
    "ezdxf",
    "pikepdf",
    "svgpathtools",
    "uharfbuzz",
    "fontTools",
)
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path != PACKAGE / "__init__.py")


def floor_of(module: str) -> int:
    return FLOORS.index(module.split(".")[1])


def imports_of(path: Path) -> list[str]:
    """Every heraldry module that a file imports, lazily or not."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("heraldry"):
            found += (
                [f"{node.module}.{alias.name}" for alias in node.names] if node.module == "heraldry" else [node.module]
            )
        elif isinstance(node, ast.Import):
            found += [alias.name for alias in node.names if alias.name.startswith("heraldry.")]
    return found


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_imports_go_down_only(path: Path) -> None:
    name = "heraldry." + ".".join(path.relative_to(PACKAGE).with_suffix("").parts)
    climbing = [wanted for wanted in imports_of(path) if floor_of(wanted) > floor_of(name)]
    assert climbing == []


def test_no_file_has_grown_into_a_folder() -> None:
    long = {path.name: count for path in MODULES if (count := len(path.read_text().splitlines())) > 500}
    assert long == {}


def test_public_names_are_what_they_say() -> None:
    assert all(getattr(heraldry, name) is not None for name in heraldry.__all__)
    with pytest.raises(AttributeError, match="no attribute 'drow'"):
        heraldry.drow  # noqa: B018


def test_help_imports_nothing_heavy() -> None:
    program = (
        "import sys\n"
        "from heraldry.cli.main import app\n"
        "try:\n    app(['--help'])\nexcept SystemExit:\n    pass\n"
        f"heavy = [name for name in {HEAVY!r} if name in sys.modules]\n"
        "print('HEAVY', heavy)\n"
    )
    result = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert "draw" in result.stdout
    assert result.stdout.splitlines()[-1] == "HEAVY []"
