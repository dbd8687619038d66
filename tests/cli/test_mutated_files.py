"""Five hundred spoiled descriptions: each is drawn or refused in words, in a moment, and nothing is half written."""

from __future__ import annotations

import random
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

import pytest

import heraldry
from heraldry.errors import HeraldryError

FILES = 500
HANG_S = 20
"""A watchdog for a hang, not a measure of speed: a file takes some tenths of a second."""
BATCHES = 10

WORDS = (
    '"', "'", "[", "]", "{", "}", "=", "\n", "#", "-", "1e308", "-1", "0", "9" * 400, "nan", "inf", "true",
    '"mm"', '"width / 0"', '"width * width"', '"a" * 9', "{ lat = 91, lon = 0 }", '["US-XX"]', "\x00", "\ud7ff", "é",
    '"' + "(" * 300 + '"', "offset(land, 1e6)", '"land - land"', '"inner"', "region", "text", "circle", "1 / 0 in",
    '"4000 in full"', '"0.0000001 mm"', '"1000 m"', "[let]", "[shape.name]", "[plate.spruce]", '"around(rim, 1000000)"',
)  # fmt: skip


def spoiled(text: str, dice: random.Random) -> str:
    """One to three random cuts, doublings, exchanges and insertions."""
    for _ in range(dice.randint(1, 3)):
        text = dice.choice((cut_out, doubled, word_in, lines_exchanged, value_exchanged))(text, dice)
    return text


def cut_out(text: str, dice: random.Random) -> str:
    at = dice.randrange(len(text))
    return text[:at] + text[at + dice.randint(1, 30) :]


def doubled(text: str, dice: random.Random) -> str:
    lines = text.splitlines(keepends=True)
    at = dice.randrange(len(lines))
    return "".join([*lines[: at + 1], lines[at], *lines[at + 1 :]])


def word_in(text: str, dice: random.Random) -> str:
    at = dice.randrange(len(text))
    return text[:at] + dice.choice(WORDS) + text[at:]


def lines_exchanged(text: str, dice: random.Random) -> str:
    lines = text.splitlines(keepends=True)
    one, other = dice.randrange(len(lines)), dice.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]
    return "".join(lines)


def value_exchanged(text: str, dice: random.Random) -> str:
    lines = text.splitlines(keepends=True)
    keyed = [i for i, line in enumerate(lines) if "=" in line]
    if not keyed:
        return text
    at = dice.choice(keyed)
    lines[at] = lines[at].partition("=")[0] + "= " + dice.choice(WORDS) + "\n"
    return "".join(lines)


@contextmanager
def watched() -> Iterator[None]:
    def bark(number: int, frame: FrameType | None) -> None:
        raise TimeoutError(f"a spoiled file kept the machine busy for {HANG_S} s")

    before = signal.signal(signal.SIGALRM, bark)
    signal.alarm(HANG_S)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def draw_or_refuse(path: Path, out: Path) -> str | None:
    """The refusal, or None when it was drawn."""
    try:
        with watched():
            heraldry.press.write_all(heraldry.draw(heraldry.load(path)), out, ["svg"])
    except HeraldryError as error:
        return str(error)
    return None


@pytest.mark.parametrize("batch", range(BATCHES))
@pytest.mark.parametrize("name", ["rings.toml"])
def test_spoiled_files_are_drawn_or_refused_in_words(road_folder: Path, batch: int, name: str) -> None:
    dice = random.Random(batch)
    good = (road_folder / name).read_text()
    path, refused = road_folder / name, 0
    for i in range(FILES // BATCHES):
        path.write_text(spoiled(good, dice), errors="surrogatepass")
        out = road_folder / f"out{i}"
        refusal = draw_or_refuse(path, out)
        if refusal is None:
            assert (out / "rings.svg").read_bytes().endswith(b"</svg>\n")
        else:
            refused += 1
            assert all(str(path) in line or "road.toml" in line or ":" in line for line in refusal.splitlines())
            assert not out.exists()
    assert refused > FILES // BATCHES // 3
