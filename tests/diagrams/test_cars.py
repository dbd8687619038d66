"""The cars of a class: series, tables with faults in some rows, freight data and what does not add up."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.drawing import artworks
from heraldry.errors import DescriptionError, HeraldryError

AClass = Callable[..., ClassOfCars]
NUMBER = '[item.number]\ntext = "{car.number}"\ncap_height = 3\nx = 20\ny = 20\nink = "white"\n'
NAME = '[item.name]\ntext = "{car.name}"\ncap_height = 2\nx = 20\ny = 10\nink = "white"\n'
TABLE = '[series]\ncars = "list.csv"\n'
DATA = '[data]\nyear = 1955\nbuilt = "1941-06"\njournal = "D"\nlight_weight = 45000\n'


def test_every_column_of_a_table_is_a_text(a_class: AClass) -> None:
    cars = a_class(TABLE + NUMBER + NAME, list_csv="number,name\n7,PINE\n9,BIRCH\n")
    assert [car.texts["car.name"] for car in cars.roster.cars] == ["PINE", "BIRCH"]
    assert [one.name for one in artworks(cars)] == ["cars 7 left", "cars 9 left"]


def test_a_broken_row_names_file_row_and_column_and_the_others_are_drawn(a_class: AClass) -> None:
    table = "number,name\n7,PINE\nx9,BIRCH\n10\n11,♞♞\n12,FIR\n"
    drawn = artworks(a_class(TABLE + NUMBER + NAME, list_csv=table))
    names = []
    with pytest.raises(DescriptionError) as refused:
        for artwork in drawn:
            names.append(artwork.name)
    assert names == ["cars 7 left", "cars 12 left"]
    told = [str(fault) for fault in refused.value.faults]
    assert len(told) == 3
    assert all("list.csv:" in line for line in told)
    assert "row 3, column number" in told[0]
    assert "row 4, column name" in told[1]
    assert "row 5: column name: item.name: alphabet gothic has no letter '♞'" in told[2]


def test_a_column_that_is_not_there_is_told_once_with_the_nearest(a_class: AClass) -> None:
    with pytest.raises(DescriptionError) as refused:
        a_class(TABLE + NAME.replace("car.name", "car.nam"), list_csv="number,name\n7,PINE\n9,BIRCH\n")
    (fault,) = refused.value.faults
    assert "did you mean 'car.name'" in str(fault)


def test_only_some_cars_may_be_asked_for(a_class: AClass) -> None:
    cars = a_class('[series]\nnumbers = "301-325"\nspares = 1\n' + NUMBER)
    assert [one.name for one in artworks(cars, ["305", "301"])] == ["cars 305 left", "cars 301 left"]
    with pytest.raises(HeraldryError, match="no car of the class has the number 399"):
        next(artworks(cars, ["399"]))


def test_weights_follow_from_the_axles_and_the_year(a_class: AClass) -> None:
    item = (
        '[item.w]\ntext = "{data.capacity} {data.load_limit_lb} {data.light_weight}"\ncap_height = 2\nink = "white"\n'
    )
    cars = a_class(DATA + item + '[series]\nnumbers = "5"\n')
    texts = cars.roster.cars[0].texts
    # 169,000 lb on four D axles until 1962 (steam-era freight car mailing list, message 56171): − 45,000 = 124,000.
    assert texts["data.load_limit_lb"] == "124000"
    assert texts["data.capacity"] == "CAPY 100000"
    assert texts["data.light_weight"] == "LT WT 45000 NEW 6-41"


def test_given_weights_that_do_not_add_up_are_found_unless_starred(a_class: AClass) -> None:
    def kinds(more: str) -> list[str]:
        cars = a_class(DATA.replace("45000", "59400") + more + NUMBER + '[series]\nnumbers = "5"\n')
        return [one.kind for one in next(artworks(cars)).findings]

    assert "load limit" in kinds("load_limit = 102300\n")
    assert "load limit" not in kinds("load_limit = 102300\nstarred = true\n")
    assert "load limit" not in kinds("load_limit = 109600\n")


def test_columns_go_before_the_data_of_all_and_are_blamed_by_row_and_column(a_class: AClass) -> None:
    item = '[item.w]\ntext = "{data.light_weight_lb}"\ncap_height = 2\nink = "white"\n'
    table = "number,light_weight,weighed\n1,44000,\n2,,1953-02\n3,heavy,\n4,45000,1953-13\n"
    cars = a_class(DATA + TABLE + item, list_csv=table)
    assert [car.texts["data.light_weight_lb"] for car in cars.roster.cars] == ["44000", "45000"]
    assert [car.texts["data.weighed"] for car in cars.roster.cars] == ["NEW 6-41", "NEW 2-53"]
    told = [str(fault) for fault in cars.roster.faults]
    assert "list.csv:4: row 4: column light_weight: a whole number is wanted, found 'heavy'" in told[0]
    assert "list.csv:5: row 5: column weighed: a month is 1 to 12, found 13" in told[1]


def test_wagon_and_container_numbers_get_their_check_digits(a_class: AClass) -> None:
    text = '[data]\nwagon = "21 81 2471 {car.number}"\nexchange = "RIV"\ncountry = "A"\nkeeper = "KNR"\n'
    text += 'tare = 11100\naxles = 2\ncontainer = "CSQU 305{car.number}"\n[series]\nnumbers = "217, 438"\n'
    item = '[item.w]\ntext = "{data.wagon_3}"\ncap_height = 2\nink = "white"\n'
    first, second = a_class(text + item).roster.cars
    # 21 81 2471 217-3: published worked example of UIC numbers; CSQU 305438 3: of ISO 6346.
    assert [first.texts[f"data.wagon_{i}"] for i in (1, 2, 3)] == ["21 RIV", "81 A-KNR", "2471 217-3"]
    assert (second.texts["data.container"], second.texts["data.container_check"]) == ("CSQU 305438", "3")
    assert [first.texts[f"data.load_{letter}"] for letter in "ABC"] == ["20.5", "24.5", "28.5"]


def test_engine_numbers_get_their_check_digit_and_size_codes_are_looked_at(a_class: AClass) -> None:
    item = '[item.n]\ntext = "{data.engine} {data.size_and_type}"\ncap_height = 2\nink = "white"\n'
    data = '[data]\nengine = "118 {car.number}"\nsize_and_type = "22G1"\n[series]\nnumbers = "098"\n'
    (car,) = a_class(data + item).roster.cars
    assert (car.texts["data.engine"], car.texts["data.size_and_type"]) == ("118 098-3", "22G1")  # mec-bergheim.de
    with pytest.raises(DescriptionError, match="found '22'"):
        a_class(data.replace("22G1", "22") + item)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('[series]\nnumbers = "25-1"\n', "a range runs upwards"),
        ('[series]\nnumbers = "1-3"\ncars = "list.csv"\n', "give numbers or cars, not both"),
        ('[series]\ncars = "none.csv"\n', "cannot be read"),
        ('[data]\nyear = 1955\n[series]\nnumbers = "1"\n', "built is missing"),
    ],
)
def test_a_series_that_gives_no_cars_is_refused_in_words(a_class: AClass, text: str, told: str) -> None:
    with pytest.raises(DescriptionError, match=told):
        a_class(text + NUMBER)


def test_marks_and_numbers_lower_than_federal_rules_ask_are_found_on_long_sides(a_class: AClass) -> None:
    end = '[side.end]\nwidth = "10 ft full"\nheight = "10 ft full"\n'
    item = (
        '[item.{name}]\ntext = "{{car.number}}"\ncap_height = "{inches} in full"\nsides = ["{side}"]\nink = "white"\n'
    )
    items = item.format(name="low", inches=6, side="left") + item.format(name="on_end", inches=4, side="end")

    def told(year: int) -> list[str]:
        data = DATA.replace("1955", str(year)) + '[series]\nnumbers = "5"\n'
        found = [one for artwork in artworks(a_class(end + data + items)) for one in artwork.findings]
        return [one.message for one in found if one.kind == "letter height"]

    # 49 CFR 215.301, in force 1980: at least 7 in on each side.
    assert told(1985) == ["low is 6 in high, 49 CFR 215.301 asks for 7 in at least"]
    assert told(1970) == []
