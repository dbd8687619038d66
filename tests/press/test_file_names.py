from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.press.file_names import FileStems


def file_stems(names):
    stems = FileStems()
    return [stems.next(name) for name in names]


# What no file name may hold on one system or another.
FORBIDDEN = set('<>:"/\\|?*\n\r\t\0 ')


@settings(derandomize=True, deadline=None)
@given(st.lists(st.text(max_size=300), max_size=6))
def test_any_names_become_safe_and_different(names):
    stems = file_stems(names)
    assert len({stem.casefold() for stem in stems}) == len(names)
    for stem in stems:
        assert stem
        assert not FORBIDDEN & set(stem)
        assert stem[0] not in ".-"
        assert len(stem.encode()) <= 240


def test_plain_names_are_kept():
    assert file_stems(["herald", "side_left", "No.7"]) == ["herald", "side_left", "No.7"]


def test_blanks_and_slashes_become_hyphens():
    assert file_stems(["Fern & Hollow / north"]) == ["Fern-Hollow-north"]


def test_letters_of_other_scripts_stay():
    assert file_stems(["Grüne Öl-Bahn", "Grüne Öl-Bahn"]) == ["Grüne-Öl-Bahn", "Grüne-Öl-Bahn-2"]


def test_device_names_are_avoided():
    assert file_stems(["CON", "com1.left", "console"]) == ["CON-", "com1.left-", "console"]


def test_a_number_that_is_taken_is_passed_over():
    assert file_stems(["a", "a-2", "A", "a"]) == ["a", "a-2", "A-3", "a-4"]
