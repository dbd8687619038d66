"""The demo: every herald of the templates at three scales in every output, every class of cars in pictures."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

from heraldry.cli.drawing import DEMO_SCALES
from heraldry.cli.options import ALL_FORMATS
from heraldry.cli.starting import template_diagrams, template_heralds

Command = Callable[..., subprocess.CompletedProcess[str]]


def test_the_demo_draws_all_there_is(heraldry_command: Command, tmp_path: Path) -> None:
    result = heraldry_command("demo", "--dpi", "150")
    assert result.returncode == 0, result.stderr
    for path in template_heralds():
        for scale in DEMO_SCALES:
            made = tmp_path / "out" / path.parent.name / path.stem / scale
            endings = {file.suffix.removeprefix(".") for file in made.iterdir()}
            assert endings == {*ALL_FORMATS.split(","), "json"}
    for path in template_diagrams():
        made = tmp_path / "out" / path.parent.name / path.stem
        assert list(made.glob("*.pdf"))
        assert list((made / "contact").glob("*.png"))
