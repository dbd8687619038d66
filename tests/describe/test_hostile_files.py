"""Files that are no descriptions, by mistake or by malice: each is refused in words, and nothing breaks."""

from __future__ import annotations

import os
import tracemalloc
from pathlib import Path

import pytest

from heraldry.describe.read_toml import MAX_BYTES, parse_toml, read_toml
from heraldry.errors import DescriptionError

KINDS = ("herald", "road", "printer")


def refusal_of(path):
    with pytest.raises(DescriptionError) as refusal:
        read_toml(Path(path), KINDS)
    (fault,) = refusal.value.faults
    assert fault.file == str(path)
    return fault


def test_a_missing_file_is_told_with_the_nearest_there_is(tmp_path):
    (tmp_path / "herald.toml").write_text('kind = "herald"')
    assert str(refusal_of(tmp_path / "hearld.toml")).endswith(
        f"there is no such file, found 'hearld.toml', in {tmp_path}: did you mean 'herald.toml'?"
    )
    assert "check the name and the folder" in str(refusal_of(tmp_path / "nowhere" / "herald.toml"))


def test_a_folder_is_no_file(tmp_path):
    assert "this is a folder, name a .toml file in it" in str(refusal_of(tmp_path))


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    assert "no ordinary file, found a device or a pipe" in str(refusal_of(tmp_path / "pipe.toml"))
    assert "no ordinary file" in str(refusal_of("/dev/zero"))


def test_a_file_that_may_not_be_read_is_told(tmp_path, monkeypatch):
    def forbidden(self, *_):
        raise PermissionError(13, "Permission denied", str(self))

    path = tmp_path / "a.toml"
    path.write_text('kind = "road"')
    monkeypatch.setattr(Path, "open", forbidden)  # a mode of 000 would not stop root
    assert "the file cannot be read, found permission denied" in str(refusal_of(path))


def test_names_that_no_file_can_have_are_told(tmp_path):
    assert refusal_of(tmp_path / ("x" * 5000)).what
    assert refusal_of(tmp_path / "a\0b").what


def test_a_link_that_leads_round_in_a_circle_is_told(tmp_path):
    (tmp_path / "a.toml").symlink_to(tmp_path / "b.toml")
    (tmp_path / "b.toml").symlink_to(tmp_path / "a.toml")
    assert refusal_of(tmp_path / "a.toml").what


def test_a_file_of_50_mb_is_refused_before_it_is_read_whole(tmp_path):
    path = tmp_path / "large.toml"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    tracemalloc.start()
    fault = refusal_of(path)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert "too large for a description, found 50,000,000 bytes, at most 1,000,000" in str(fault)
    assert peak < 3 * MAX_BYTES


def test_a_file_that_just_fits_is_read(tmp_path):
    path = tmp_path / "long.toml"
    path.write_bytes(b'kind = "road" #'.ljust(MAX_BYTES, b"-"))
    assert read_toml(path, KINDS).data == {"kind": "road"}
    path.write_bytes(b'kind = "road" #'.ljust(MAX_BYTES + 1, b"-"))
    assert "too large" in str(refusal_of(path))


@pytest.mark.parametrize(
    ("content", "line", "said"),
    [
        (
            b'kind = "road"\nname = "Caf\xe9"',
            2,
            "not UTF-8, found byte 0xE9 at place 12 of the line, save it as UTF-8",
        ),
        (b"\xff\xfek\x00i\x00", 1, "not UTF-8, found UTF-16"),
        ('kind = "road"'.encode("utf-16-be"), 1, "no text file"),
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", 3, "no text file, found a byte of value 0"),
        (b"\x80", 1, "found byte 0x80 at place 1"),
        (b"\xed\xa0\x80", 1, "not UTF-8"),
        (b'kind = "road"\rname = 1', 1, "left over"),
        (b"", 1, "'kind' is missing"),
        (b"PK\x03\x04", 1, "a key without its value, found 'PK<U+0003><U+0004>'"),
    ],
)
def test_what_is_no_text_is_told_by_byte_and_line(tmp_path, content, line, said):
    path = tmp_path / "a.toml"
    path.write_bytes(content)
    fault = refusal_of(path)
    assert said in str(fault)
    assert fault.line == line


@pytest.mark.parametrize(
    "text",
    [
        "a = " + "[" * 10_000,
        "a = " + "[" * 10_000 + "]" * 10_000,
        "a = " + "{a = " * 10_000,
        "[" * 10_000,
        ".".join("a" * 10_000) + " = 1",
        "[" + ".".join("a" * 400_000) + "]",
        '"a".' * 200_000 + "b = 1",
    ],
    ids=lambda text: text[:12],
)
def test_nesting_by_the_thousand_is_refused(text):
    with pytest.raises(DescriptionError, match="nested too deep, at most 40"):
        parse_toml(text, Path("a.toml"), KINDS)


@pytest.mark.parametrize(
    "text",
    [sign * (MAX_BYTES // len(sign)) for sign in ("'", '"', "=", "#", " ", "\n", "\r", "a", "[]\n", "a.a\n", "\\", "é")]
    + [
        'a = "' + "\\" * MAX_BYTES,
        'a = """' + '""x' * 300_000,
        "a = " + "x " * 400_000,
        "a = 1" + "_1" * 400_000,
    ],
    ids=lambda text: repr(text[:8]),
)
def test_a_million_of_the_same_sign_neither_hangs_nor_breaks(text):
    with pytest.raises(DescriptionError) as refusal:
        parse_toml(text, Path("a.toml"), KINDS)
    assert len(str(refusal.value)) < 400
