"""Files appear whole or not at all, and no good old file is lost."""

import os
import shutil
import tempfile
from pathlib import Path

import pytest

from heraldry.errors import PressError
from heraldry.press.whole_files import put_files

OLD = {"a.svg": b"old a", "b.svg": b"old b"}
NEW = {"a.svg": b"new a", "b.svg": b"new b", "c.svg": b"new c"}


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir()) if path.is_file()}


@pytest.fixture
def folder(tmp_path):
    for name, content in OLD.items():
        (tmp_path / name).write_bytes(content)
    return tmp_path


@pytest.fixture
def open_folder():
    """A folder that other users may look into, for tests that give up the rights of the superuser."""
    path = Path(tempfile.mkdtemp(prefix="press-"))
    path.chmod(0o755)
    yield path
    shutil.rmtree(path)


@pytest.fixture
def ordinary_user():
    """The superuser may write anywhere, so that nothing is read-only: be somebody else for a while."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(65534)  # nobody
    try:
        yield
    finally:
        os.seteuid(0)


def test_files_are_replaced_and_nothing_else_is_left(folder):
    put_files(folder, NEW)
    assert contents(folder) == NEW
    assert len(list(folder.iterdir())) == 3


def test_folders_are_made(tmp_path):
    put_files(tmp_path / "out" / "today", {"a.svg": b"x"})
    assert contents(tmp_path / "out" / "today") == {"a.svg": b"x"}


def test_files_have_the_usual_rights(folder):
    (folder / "plain").write_bytes(b"")
    put_files(folder, NEW)
    assert (folder / "c.svg").stat().st_mode == (folder / "plain").stat().st_mode


def test_a_folder_in_the_way(folder):
    (folder / "c.svg").mkdir()
    with pytest.raises(PressError, match=r"c\.svg: cannot be written: a folder of that name is in the way"):
        put_files(folder, NEW)
    assert contents(folder) == OLD
    assert sorted(path.name for path in folder.iterdir()) == ["a.svg", "b.svg", "c.svg"]


def test_a_file_where_the_folder_should_be(folder):
    with pytest.raises(PressError, match=r"a\.svg.*: cannot be written: "):
        put_files(folder / "a.svg", NEW)
    assert contents(folder) == OLD


def test_a_read_only_folder(open_folder, ordinary_user):
    if os.geteuid() == open_folder.stat().st_uid:  # else it is another's folder, and shut anyway
        open_folder.chmod(0o555)
    with pytest.raises(PressError, match=f"{open_folder}: cannot be written: Permission denied"):
        put_files(open_folder, NEW)
    assert list(open_folder.iterdir()) == []


def test_a_disk_that_is_full(folder):
    """The system's own limit on the size of a file stands in for the end of the disk."""
    import resource

    usual = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, usual[1]))
    try:
        with pytest.raises(PressError, match=r"c\.svg: cannot be written: File too large"):
            put_files(folder, NEW | {"c.svg": b"x" * 5000})
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, usual)
    assert contents(folder) == OLD
    assert len(list(folder.iterdir())) == 2


@pytest.mark.parametrize("links", [True, False], ids=["links", "no links on this disk"])
@pytest.mark.parametrize("failing", ["b.svg", "c.svg"])
def test_a_rename_that_fails_undoes_those_before_it(folder, monkeypatch, failing, links):
    rename = Path.replace

    def refuse(self, target):
        if self.parent.name == "new" and self.name == failing:
            raise PermissionError(13, "the file is open elsewhere")
        return rename(self, target)

    monkeypatch.setattr(Path, "replace", refuse)
    if not links:
        monkeypatch.setattr(os, "link", lambda *_: (_ for _ in ()).throw(OSError(95, "not supported")))
    with pytest.raises(PressError, match=f"{failing}: cannot be written: the file is open elsewhere"):
        put_files(folder, NEW)
    assert contents(folder) == OLD
    assert len(list(folder.iterdir())) == 2


def test_an_interrupted_run_undoes_itself_too(folder, monkeypatch):
    rename = Path.replace

    def interrupt(self, target):
        if self.name == "c.svg":
            raise KeyboardInterrupt
        return rename(self, target)

    monkeypatch.setattr(Path, "replace", interrupt)
    with pytest.raises(KeyboardInterrupt):
        put_files(folder, NEW)
    assert contents(folder) == OLD
    assert len(list(folder.iterdir())) == 2


def test_files_that_come_one_by_one_are_put_in_place_together_or_not_at_all(folder):
    seen = []

    def failing():
        yield "a.svg", b"new a"
        seen.append(contents(folder))
        raise ValueError("the next one cannot be made")

    with pytest.raises(ValueError, match="the next one cannot be made"):
        put_files(folder, failing())
    assert seen == [OLD]  # nothing is in place before all are safe
    assert contents(folder) == OLD
    put_files(folder, iter(NEW.items()))
    assert contents(folder) == NEW


def test_a_folder_that_was_made_in_vain_is_not_left_behind(tmp_path):
    def failing():
        raise ValueError
        yield

    with pytest.raises(ValueError):
        put_files(tmp_path / "out" / "today", failing())
    assert list(tmp_path.iterdir()) == []
