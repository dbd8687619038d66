"""Specimen pages: everything is shown, at its true size, on the grid, inside its margins and off everything else."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
import shapely

from heraldry.artwork import Artwork
from heraldry.describe.description import load
from heraldry.errors import DescriptionError, HeraldryError, LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting.lay import ink_width
from heraldry.pages.block import Block
from heraldry.pages.flow import TITLE_ROOM_MM, Section, flowed
from heraldry.pages.paper import FOOT_MM, GRID_MM, HEAD_MM, PAPERS, SIDE_MM, Paper, paper_named
from heraldry.pages.writing import broken, caption, samples
from heraldry.press.proof_reading import proof_read
from heraldry.specimen import Show, show_of, specimen_pages, style_entries
from heraldry.specimen.entry import COMMON_HEIGHTS_IN, at_a_glance, display_lines, millimetres, to_size
from heraldry.specimen.ranges import USUAL_WORD, shown_word, variations
from heraldry.specimen.showing import Shown, shown_style
from heraldry.units import HO, SCALES, parse_scale

MEASURE_MM = paper_named("A4").measure_mm
NAMES = ["O", "Kennebago", "Umbagog & Magalloway Railroad", "ÅRJÄNG–ÖRJE Şile", "W" * 150, "a " * 90]
BROKEN_ROAD = """kind = "road"
name = "Fern Hollow"
[alphabet.bold]
style = "gothic"
stem = 0.9
[alphabet.thin]
style = "gothik"
"""


def pages(text: str | None = None, scale: str = "HO", paper: str = "A4", road: Path | None = None) -> list[Artwork]:
    return specimen_pages([show_of(load(road) if road else None, text)], [parse_scale(scale)], paper_named(paper))


def inks(page: Artwork) -> Outline:
    return Outline.gather(plate.outline for plate in page.plates if plate.name != "paper")


def letter_boxes(outline: Outline) -> np.ndarray:
    """The boxes (left, bottom, right, top) of all rings."""
    return np.array([(*ring.min(axis=0), *ring.max(axis=0)) for ring in flatten(outline)])


def has_shape(page: Artwork, outline: Outline) -> bool:
    """Whether a letter stands somewhere on the page, wherever that is: rings as wide and as high to a nanometre."""
    boxes = letter_boxes(inks(page))
    sizes = boxes[:, 2:] - boxes[:, :2]
    return all(
        np.any(np.abs(sizes - (box[2:] - box[:2])).max(axis=1) < 5e-6) for box in letter_boxes(outline.quantised())
    )


# ---- pages


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
@pytest.mark.parametrize("name", NAMES, ids=lambda name: name[:12])
def test_pages_are_sound_and_keep_their_margins(name: str, paper: Paper) -> None:
    for page in pages(name, "HO", paper.name):
        proof_read(page)
        assert (page.width_mm, page.height_mm) == (paper.width_mm, paper.height_mm)
        box = bounds(inks(page))
        assert box.left >= SIDE_MM - 1e-6
        assert box.right <= paper.width_mm - SIDE_MM + 1e-6
        assert box.bottom >= FOOT_MM - 1e-6
        assert box.top <= paper.height_mm - HEAD_MM + 1e-6


@pytest.mark.parametrize("scale", [scale.name for scale in SCALES] + ["1:1", "1:1000"])
def test_every_scale_makes_pages(scale: str) -> None:
    """From full size, where nothing fits, to a thousandth, where nothing can be read."""
    for page in pages("Kennebago & Western", scale):
        proof_read(page)
        assert page.scale_name == parse_scale(scale).name


def test_lines_of_letters_do_not_reach_into_each_other(road_folder: Path) -> None:
    """Every letter's box lies apart from all that do not belong to its own line: none is clipped or overlapped."""
    page = pages(road=road_folder / "road.toml")[0]
    rings = flatten(inks(page))
    tree = shapely.STRtree([shapely.Polygon(ring) for ring in rings])
    pairs = tree.query(tree.geometries, predicate="overlaps")
    assert pairs.size == 0


def test_the_same_pages_twice() -> None:
    one, two = (pages("Kennebago")[0] for _ in range(2))
    assert inks(one).data.tobytes() == inks(two).data.tobytes()


def test_all_alphabets_of_a_road_and_all_of_ours_are_shown(road_folder: Path) -> None:
    road = load(road_folder / "road.toml")
    show = show_of(road)
    assert [shown.name for shown in show.alphabets] == ["title", "bold", "swift", *STYLES]
    assert show.text == "Umbagog & Magalloway Railroad"
    found = pages(road=road_folder / "road.toml")
    for shown in show.alphabets:
        for inches in COMMON_HEIGHTS_IN:
            line = shown.alphabet.set_line(show.text, HO.model_mm(inches * 25.4))
            assert any(has_shape(page, line.glyphs[0].outline) for page in found), (shown.name, inches)


def test_letters_at_size_are_as_high_as_they_will_be() -> None:
    """9 in at 3.5 mm to the foot: 9 / 12 · 3.5 = 2.625 mm, worked by hand."""
    shown = shown_style(style_entries()[0])
    block = to_size(shown.alphabet, "HI", HO.model_mm(9 * 25.4), 100.0)
    assert bounds(block.marks[0].outline).height == pytest.approx(2.625, abs=1e-9)
    assert millimetres(2.625) == "2.63 mm"


def test_base_lines_stand_on_the_grid() -> None:
    """The foot of every letter of a row, and of lines at their size, is a whole step of the grid from the top."""
    for name in ("HE", "HEH HEH " * 12):
        for block in at_a_glance(shown_style(style_entries()[0]), name.strip(), HO, MEASURE_MM):
            assert block.height_mm / GRID_MM == pytest.approx(round(block.height_mm / GRID_MM), abs=1e-9)
            assert block.base_mm is None or block.base_mm % GRID_MM == pytest.approx(0.0, abs=1e-9)


def test_pages_are_numbered_only_where_there_are_several() -> None:
    names = [page.name for page in pages("Kennebago")]
    assert names == [f"specimen {i + 1}" for i in range(len(names))] if len(names) > 1 else names == ["specimen"]


def test_several_scales_are_compared(road_folder: Path) -> None:
    show = show_of(load(road_folder / "road.toml"))
    scales = [parse_scale(name) for name in ("HO", "N", "O")]
    alone, compared = (specimen_pages([show], some, paper_named("A4")) for some in (scales[:1], scales))
    assert len(compared) > len(alone)
    for scale in scales:
        line = show.of_road[0].alphabet.set_line(show.text, scale.model_mm(9 * 25.4))
        assert any(has_shape(page, line.glyphs[0].outline) for page in compared[len(alone) :]), scale.name


def test_nothing_to_show_is_said() -> None:
    with pytest.raises(HeraldryError, match="at one scale at least"):
        specimen_pages([show_of()], [], paper_named("A4"))
    with pytest.raises(HeraldryError, match="no paper is called 'A5', known: A4, Letter"):
        paper_named("A5")


# ---- flowing


def test_an_entry_stays_whole_where_a_page_holds_it() -> None:
    tall = tuple(Block(30.0) for _ in range(3))
    found = flowed(Section("", "", (tall, tall, tall)), 200.0 + TITLE_ROOM_MM)
    assert [len(blocks) for blocks in found] == [6, 3]


def test_an_entry_higher_than_a_page_is_parted_between_its_blocks() -> None:
    marks = shown_style(style_entries()[0])
    block = Block(40.0, caption(marks.name, 50.0).marks)
    found = flowed(Section("", "", ((block,) * 7,)), 100.0 + TITLE_ROOM_MM)
    assert [len(blocks) for blocks in found] == [2, 2, 2, 1]


def test_any_number_of_alphabets_flows_on_pages() -> None:
    shown = shown_style(style_entries()[0])
    many = Show("Many", "Kennebago", tuple(Shown(f"number {i}", shown.alphabet, ()) for i in range(17)), ())
    found = specimen_pages([many], [HO, parse_scale("O")], paper_named("Letter"))
    assert len(found) >= 6
    for page in found:
        proof_read(page)


# ---- breaking


def test_display_is_as_wide_as_the_measure_or_as_large_as_it_may_be() -> None:
    gothic = ours("gothic")
    for text in NAMES:
        lines, cap_mm = display_lines(gothic, text, 172.0)
        widest = max(ink_width(gothic.set_line(line, cap_mm)) for line in lines)
        assert widest == pytest.approx(172.0) if cap_mm < 13.0 else widest <= 172.0
        assert " ".join(lines) == " ".join(text.split())
    assert len(display_lines(gothic, "Umbagog & Magalloway Railroad", 172.0)[0]) == 1
    assert len(display_lines(gothic, "Umbagog & Magalloway Railroad " * 2, 172.0)[0]) == 2


def test_breaking_keeps_every_letter() -> None:
    assert broken("to be or not", lambda line: len(line) <= 5) == ["to be", "or", "not"]
    assert broken("a incomprehensible b", lambda line: len(line) <= 6) == ["a", "incomp", "rehens", "ible b"]


def test_lines_that_belong_together_are_equally_far_apart() -> None:
    """Marks over capitals and tails under small letters included."""
    gothic = ours("gothic")
    block = samples([gothic.set_line(text, 9.0) for text in ("HgH", "ÅÉH", "HHH")])
    feet = sorted({round(bounds(mark.outline).bottom, 6) for mark in block.marks})
    assert len(feet) == 3
    for one, other in combinations(block.marks, 2):
        high, low = sorted((bounds(one.outline), bounds(other.outline)), key=lambda box: -box.top)
        assert high.bottom - low.top >= 0.8 - 1e-9


def test_what_is_too_large_is_said_in_words() -> None:
    gothic = ours("gothic")
    words = caption("too large for this page", 126.0)
    for text, cap_mm in (("KENNEBAGO", 228.6), ("A B C D E F G H", 50.0), ("I", 101.6)):
        block = to_size(gothic, text, cap_mm, 126.0)
        assert [mark.outline.data.tobytes() for mark in block.marks] == [
            mark.outline.data.tobytes() for mark in words.marks
        ]


# ---- letters that are not there


def test_an_alphabet_without_a_letter_says_so_and_the_page_is_made() -> None:
    found = pages("Жeleznice")
    (finding, *_) = found[0].findings
    assert finding.message == (
        "alphabet gothic cannot letter 'Жeleznice', it has no U+0416 (Cyrillic capital letter zhe)"
    )
    shown = shown_style(style_entries()[0])
    assert shown.lacking("Жeleznice") == ("Ж",)
    for page in found:
        proof_read(page)


def test_many_missing_letters_are_counted() -> None:
    (finding, *_) = pages("Дорога железная")[0].findings
    assert finding.message.count("U+") == 4
    assert finding.message.endswith("and 7 more")  # eleven different letters in all


# ---- what a style can be


@pytest.mark.parametrize("entry", style_entries(), ids=lambda entry: entry.style.name)
def test_every_parameter_is_listed_with_a_default_inside_its_range(entry) -> None:
    for choice in entry.choices:
        assert choice.least - 1e-9 <= choice.default <= choice.most + 1e-9, choice.key
        assert choice.about, choice.key
        for end in (choice.least, choice.most):
            asked = LetterParameters(**{choice.parameter: end})
            assert ours(entry.style.name, asked).set_line("H", 1.0).advance_mm > 0


@pytest.mark.parametrize("entry", style_entries(), ids=lambda entry: entry.style.name)
def test_variations_differ_from_each_other(entry) -> None:
    plain = ours(entry.style.name)
    for row in variations(entry, plain, "Magalloway"):
        drawn = [alphabet.set_line("Magalloway", 1.0).outline.data.tobytes() for alphabet in row.alphabets]
        assert len({plain.set_line("Magalloway", 1.0).outline.data.tobytes(), *drawn}) >= 2, row.label


def test_the_word_shown_can_be_lettered() -> None:
    entry = style_entries()[0]
    assert shown_word(entry, "The Umbagog Railroad") == "Railroad"
    assert shown_word(entry, "Ж " + "W" * 40) == USUAL_WORD


# ---- roads


def test_only_a_road_is_shown(road_folder: Path) -> None:
    with pytest.raises(DescriptionError, match=r"rings.toml:\d+: a specimen shows the alphabets of a road"):
        show_of(load(road_folder / "rings.toml"))


def test_every_alphabet_that_cannot_be_made_is_told_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "road.toml").write_text(BROKEN_ROAD)
    with pytest.raises(DescriptionError) as told:
        show_of(load(tmp_path / "road.toml"))
    first, second = str(told.value).splitlines()
    assert "road.toml:5: alphabet.bold.stem: stem 0.9 was asked, its sound range is" in first
    assert "road.toml:7: alphabet.thin.style: no style is called 'gothik', did you mean 'gothic'?" in second


@pytest.mark.parametrize("text", ["", "  \n\t "])
def test_an_empty_text_is_refused(text: str) -> None:
    with pytest.raises(LetteringError, match="letters a text, found none"):
        show_of(text=text)


def test_a_text_of_too_many_letters_is_refused() -> None:
    with pytest.raises(LetteringError, match="found 201 letters, at most 200"):
        show_of(text="x" * 201)


def test_moving_a_block_moves_its_ink() -> None:
    block = caption("Kennebago", 60.0)
    moved = block.shifted(3.0, -4.0)
    expected = block.marks[0].outline.transformed(Affine.move(3.0, -4.0))
    assert moved[0].outline.data.tobytes() == expected.data.tobytes()
