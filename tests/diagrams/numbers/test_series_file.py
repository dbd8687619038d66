"""A table with a row a car: sound rows are read, every broken one is told, no matter what the file holds."""

import csv
import io
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from heraldry.diagrams.numbers.series_file import MAX_BYTES, MAX_CELL, MAX_FAULTS, MAX_ROWS, read_series

BOUNDED = settings(
    derandomize=True, deadline=None, max_examples=120, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@pytest.fixture
def table(tmp_path):
    """Writes a table and reads it."""

    def read(content: str | bytes):
        file = tmp_path / "series.csv"
        file.write_bytes(content.encode("utf-8") if isinstance(content, str) else content)
        return read_series(file)

    return read


def said(result) -> list[str]:
    """The faults without the folder."""
    return [f"{Path(fault.file).name}:{str(fault).removeprefix(fault.file + ':')}" for fault in result.faults]


def test_rows_with_their_values_and_row_numbers(table):
    result = table('number,name,built\n0301,"Lake, Upper",4-57\n\n302,,5-57\n')
    assert result.faults == ()
    assert [(row.number, dict(row.values), row.row) for row in result.rows] == [
        ("0301", {"name": "Lake, Upper", "built": "4-57"}, 2),
        ("302", {"name": "", "built": "5-57"}, 4),
    ]


@pytest.mark.parametrize(
    "content",
    [
        "number,name\r\n301,Élan\r\n",
        "\ufeffnumber,name\n301,Élan",
        "number;name\n301;Élan\n",
        " number , name \r301 , Élan \r",
        "\n\nnumber,name,,\n301,Élan,,\n,,,\n",
        '"number","name"\n"301","Élan"\n',
    ],
)
def test_ways_of_spreadsheets_to_write_the_same(table, content):
    result = table(content)
    assert said(result) == []
    assert [(row.number, dict(row.values)) for row in result.rows] == [("301", {"name": "Élan"})]


def test_values_cannot_be_changed(table):
    row = table("number,name\n301,Mica\n").rows[0]
    with pytest.raises(TypeError):
        row.values["name"] = "Mist"


def test_a_broken_row_does_not_stop_the_others(table):
    result = table(
        'number,name\n301,Mica\nabc,Mist\n"302,Moss\n303\n304,Moor,x\n301,Marl\n305,a\x07b\n1234567,M\n306,Mere\n'
    )
    assert [row.number for row in result.rows] == ["301", "306"]
    assert said(result) == [
        "series.csv:3: row 3, column number: this is no road number, found 'abc', write digits only, such as 301",
        "series.csv:4: a quotation mark out of place, found '\"302,Moss', "
        'write "a, b" round a whole cell, and "" for a mark in it',
        "series.csv:5: row 5, column name: there is no such cell, found 1 of 2 cells, "
        "leave a cell empty, but write its comma",
        "series.csv:6: row 6: a cell beyond the last column, name, found 'x', quote a text with commas",
        "series.csv:7: row 7, column number: a number given twice, found 301, it is in row 2 already",
        "series.csv:8: row 8, column name: a character that cannot be lettered, found U+0007, remove it",
        "series.csv:9: row 9, column number: a road number of 7 digits, found 1234567, at most 6 are carried",
    ]


@pytest.mark.parametrize(
    ("content", "fault"),
    [
        ("", "1: the table is empty, found no header row, begin with a row of column names, such as number"),
        (" \n,,\n", "1: the table is empty, found no header row, begin with a row of column names, such as number"),
        ("number,name\n", "1: the table has no cars, found a header row alone, write a row for each car"),
        ("name,Number\nx,301\n", "1: there is no column 'number', found name, Number, did you mean 'number'?"),
        ("number,name,name\n", "1: two columns have one name, found 'name', name them apart"),
        ("number,,name\n", "1: column 2 has no proper name, found nothing, write letters, digits and _"),
        ("\nnumber,built in\n", "2: column 2 has no proper name, found 'built in', write letters, digits and _"),
        (b"number,name\n301,\xe9lan\n", "2: the text is not UTF-8, found byte 0xE9, save it as UTF-8"),
        (b"\xff\xfen\x00", "1: the text is not UTF-8, found byte 0xFF, save it as UTF-8"),
        (
            "number," + ",".join(f"c{i}" for i in range(100)),
            "1: the table has too many columns, found 101, at most 100",
        ),
        (b"number\n" + b"1\n" * MAX_BYTES, "1: the table is too large, found over 1,000,000 bytes, divide it"),
    ],
)
def test_a_file_that_is_no_table_has_one_fault_and_no_rows(table, content, fault):
    result = table(content)
    assert result.rows == ()
    assert said(result) == [f"series.csv:{fault}"]


def test_a_cell_too_long_is_the_fault_of_its_row(table):
    result = table(f"number,name\n301,{'m' * (MAX_CELL + 1)}\n302,{'m' * MAX_CELL}\n")
    assert said(result) == ["series.csv:2: row 2, column name: the cell is too long, found 201 characters, at most 200"]
    assert [row.number for row in result.rows] == ["302"]


def test_no_more_cars_than_are_drawn(table):
    result = table("number\n" + "\n".join(map(str, range(1, MAX_ROWS + 6))))
    assert len(result.rows) == MAX_ROWS
    assert said(result) == [
        f"series.csv:{MAX_ROWS + 2}: the table has too many cars, found 10,005, at most 10,000 are read"
    ]


def test_no_more_faults_than_anybody_reads(table):
    result = table("number\n" + "x\n" * 5_000)
    assert len(result.faults) == MAX_FAULTS + 1
    assert said(result)[-1].endswith("the table is not read any further, found 100 faults, mend those first")


@pytest.mark.parametrize(("name", "reason"), [("none.csv", "no such file"), ("", "is a directory"), ("\0", "null")])
def test_a_file_that_cannot_be_read(tmp_path, name, reason):
    result = read_series(tmp_path / name)
    assert result.rows == () and len(result.faults) == 1
    assert "the table cannot be read" in str(result.faults[0]) and reason in str(result.faults[0])


CELLS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Zl", "Zp"]), max_size=12)


@BOUNDED
@given(st.lists(st.tuples(st.integers(0, 999_999), CELLS), min_size=1, max_size=20, unique_by=lambda row: row[0]))
def test_what_the_csv_module_writes_is_read_back(table, rows):
    text = io.StringIO()
    csv.writer(text).writerows([("number", "name"), *rows])
    result = table(text.getvalue())
    assert result.faults == ()
    assert [(row.number, row.values["name"]) for row in result.rows] == [(str(n), name.strip()) for n, name in rows]


@BOUNDED
@given(st.binary(max_size=200) | st.text(alphabet='number,;"301\n\r\t', max_size=60).map(str.encode))
def test_any_bytes_give_rows_or_faults(table, content):
    result = table(b"number,name\n301,Mica\n" + content)
    assert result.faults or result.rows[0].number == "301"
    assert len({row.number for row in result.rows}) == len(result.rows)
    assert all(set(row.values) == {"name"} for row in result.rows)
