"""What all tests share: a folder with a railroad to draw, and the real command."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from heraldry.cli.starting import templates_folder

Command = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def road_folder(tmp_path: Path) -> Path:
    """A copy of the first invented railroad, free to be spoiled."""
    return Path(shutil.copytree(templates_folder() / "umbagog", tmp_path / "umbagog"))


@pytest.fixture
def heraldry_command(tmp_path: Path) -> Command:
    """Runs the real command in a folder of its own."""

    def run(*arguments: str | Path, cwd: Path = tmp_path, **environment: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-m", "heraldry", *map(str, arguments)],
            cwd=cwd,
            env={**os.environ, **environment},
            capture_output=True,
            text=True,
            timeout=120,
        )

    return run
