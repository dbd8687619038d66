"""Values as the standard library reads them, the line of every key, and faults in a modeller's words."""

from __future__ import annotations

import ast
import inspect
import tomllib
from pathlib import Path
from tomllib import _parser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.key_lines import MAX_NESTING, depth_fault, key_lines
from heraldry.describe.read_toml import _WORDS_FOR, MAX_KEYS, parse_toml, read_toml
from heraldry.errors import DescriptionError

BOUNDED = settings(derandomize=True, deadline=None, max_examples=200)
KINDS = ("herald", "road", "printer")


def paths(value, path=()):
    """Every path into nested values, tables and lists included."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, below in items:
        yield (*path, key)
        yield from paths(below, (*path, key))


KEYS = [  # as written, as meant
    ("rim", "rim"),
    ("cap-height", "cap-height"),
    ("1_2", "1_2"),
    ('"US-VT"', "US-VT"),
    ('"a = [b] # c.d"', "a = [b] # c.d"),
    (r'"\u00e9\"]"', 'é"]'),
    ("'say \"{\"'", 'say "{"'),
    ('""', ""),
]
SCALARS = [
    "1",
    "0xff",
    "2.60",
    "1_000e-3",
    "true",
    "nan",
    "-inf",
    "1979-05-27 07:32:00Z",
    "1979-05-27T07:32:00.5-07:00",
    "1979-05-27",
    "07:32:00",
    '"width / 2 - rim"',
    r'"a \" ] } # = \\"',
    "'C:\\maps\\'",
    "''",
    '""',
    '"""one"""',
    '"""\nfirst [\n second = 3 "quoted" ""\\""" \\\n   third"""""',
    "'''\n# no comment '' \\\n[no.table]\n'''''",
]


class Writer:
    """Writes a valid TOML text at random, and keeps its own account of the line of every key."""

    def __init__(self, random):
        self.random = random
        self.text = ""
        self.lines = {}

    def put(self, text):
        self.text += text

    def line(self):
        return self.text.count("\n") + 1

    def blank(self):
        self.put(self.random.choice(["", "", " ", "\t "]))

    def filling(self):
        self.put(self.random.choice(["", "", " ", "\n", " # note = [\n", "\n\n\t", '\n#"""\n']))

    def keys(self, count):
        return self.random.sample(KEYS, min(count, len(KEYS)))

    def pair(self, path, key, depth):
        """``key = value``, the key perhaps dotted."""
        inner = [self.random.choice(KEYS)] if self.random.random() < 0.3 else []
        self.lines[(*path, key[1])] = self.line()
        self.put(key[0])
        for written, meant in inner:
            self.blank()
            self.put(".")
            self.blank()
            self.lines[(*path, key[1], meant)] = self.line()
            self.put(written)
        self.blank()
        self.put("=")
        self.blank()
        self.value((*path, key[1], *(meant for _, meant in inner)), depth)

    def value(self, path, depth):
        kind = self.random.random() if depth else 1.0
        if kind < 0.25:
            self.items(path, depth - 1)
        elif kind < 0.45:
            self.inline_table(path, depth - 1)
        else:
            self.put(self.random.choice(SCALARS))

    def items(self, path, depth):
        self.put("[")
        self.filling()
        count = self.random.randrange(4)
        for i in range(count):
            self.lines[(*path, i)] = self.line()
            self.value((*path, i), depth)
            self.filling()
            if i < count - 1 or self.random.random() < 0.5:
                self.put(",")
                self.filling()
        self.put("]")

    def inline_table(self, path, depth):
        self.put("{")
        self.blank()
        for i, key in enumerate(self.keys(self.random.randrange(4))):
            if i:
                self.put(",")
                self.blank()
            self.pair(path, key, depth)
            self.blank()
        self.put("}")

    def pairs(self, path, keys):
        for key in keys:
            self.blank()
            self.pair(path, key, depth=3)
            self.put(self.random.choice(["\n", " # ' note\n", "\n\n", "\t\r\n"]))

    def header(self, names, brackets):
        self.blank()
        self.put("[" * brackets)
        self.blank()
        self.put(".".join(names))
        self.blank()
        self.put("]" * brackets + "\n")

    def document(self):
        names = ["shape", "plate", "let", "'odd name'"]
        self.random.shuffle(names)
        self.filling()
        self.put("\n")
        self.pairs((), self.keys(3))
        for name in names[: self.random.randrange(5)]:
            self.random.choice([self.table, self.inner_table_first, self.tables])(name, name.strip("'"))
        return self.text

    def table(self, written, name):
        self.lines[(name,)] = self.line()
        self.header([written], 1)
        *first, last = self.keys(3)
        self.pairs((name,), first)
        self.lines[(name, last[1])] = self.line()
        self.header([written, last[0]], 1)
        self.pairs((name, last[1]), self.keys(2))

    def inner_table_first(self, written, name):
        self.lines[(name,)] = self.lines[(name, "inner")] = self.lines[(name, "inner", "x")] = self.line()
        self.header([written, "inner", "x"], 1)
        self.pairs((name, "inner", "x"), self.keys(2))
        self.lines[(name,)] = self.line()
        self.header([written], 1)
        self.pairs((name,), self.keys(2))

    def tables(self, written, name):
        for row in range(self.random.randrange(1, 4)):
            self.lines.setdefault((name,), self.line())
            self.lines[(name, row)] = self.line()
            self.header([written], 2)
            self.pairs((name, row), self.keys(2))
            self.lines[(name, row, "part")] = self.line()
            self.header([written, "part"], 1)
            self.pairs((name, row, "part"), self.keys(1))
            for piece in range(self.random.randrange(3)):
                self.lines.setdefault((name, row, "pieces"), self.line())
                self.lines[(name, row, "pieces", piece)] = self.line()
                self.header([written, "pieces"], 2)


@BOUNDED
@given(st.randoms(use_true_random=False))
def test_every_key_of_a_generated_text_has_its_line(random):
    writer = Writer(random)
    text = writer.document()
    found = key_lines(text.replace("\r\n", "\n"))
    assert set(found) == set(paths(tomllib.loads(text)))
    assert found == writer.lines


SIGNS = (
    ".",
    "=",
    "[",
    "]",
    "[[",
    "]]",
    "{",
    "}",
    ",",
    "#",
    '"',
    "'",
    "\\",
    '"""',
    "'''",
    " ",
    "\t",
    "\n",
    "\r\n",
)
PIECES = ("a", "b", '"x"', "[a]\n", "[[a]]\n", "a = 1\n", "b = [1,\n", "c={", "d=1", "1979-05-27 07:00:00")


@settings(derandomize=True, deadline=None, max_examples=1500)
@given(st.lists(st.sampled_from(SIGNS + PIECES), max_size=14).map("".join))
def test_any_text_that_the_standard_library_takes_has_a_line_for_every_key(text):
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return
    lines = key_lines(text.replace("\r\n", "\n"))
    assert set(lines) == set(paths(values))
    assert all(1 <= line <= text.count("\n") + 1 for line in lines.values())


@BOUNDED
@given(st.text(max_size=60) | st.text("ab=[]{}\"'\\#.,\n \t1_-", max_size=60))
def test_any_text_is_read_or_refused(text):
    try:
        source = parse_toml('kind = "road"\n' + text, Path("a.toml"), KINDS)
    except DescriptionError as refusal:
        (fault,) = refusal.faults
        assert 1 <= fault.line <= text.count("\n") + 2
        assert fault.what
    else:
        assert set(source.lines) == set(paths(source.data))


EXAMPLE = """\
kind  = "herald"
unit  = "mm"

[shape.land]
region = [
    "US-VT",   # Vermont
    "US-NH",
]
place.junction = { lat = 43.65, lon = -72.32 }
"""


def test_a_fault_stands_at_its_key_or_at_the_table_that_lacks_it():
    source = parse_toml(EXAMPLE, Path("vt.toml"), KINDS)
    assert source.data["shape"]["land"]["place"]["junction"]["lon"] == -72.32
    assert source.line(("shape", "land", "region", 1)) == 7
    assert source.line(("shape", "land", "place", "junction", "lon")) == 9
    assert source.line(("shape", "land", "height")) == 4
    assert source.line(("plate", "black")) == 1
    assert str(source.fault(("unit",), "no such unit", "'mn'", "did you mean 'mm'?")) == (
        "vt.toml:2: no such unit, found 'mn', did you mean 'mm'?"
    )


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("ink = ochre", 2, "text needs straight quotation marks, found 'ink = ochre', write \"ochre\""),
        ("name = Fern Hollow # road", 2, 'write "Fern Hollow"'),
        ("width = 24 mm", 2, 'write "24 mm"'),
        ("colour = #cc9900", 2, 'write "#cc9900"'),
        (
            "name = “Fern Hollow”",
            2,
            "straight quotation marks, found 'name = “Fern Hollow”', write \"Fern Hollow\"",
        ),
        ("width = 2,5", 2, "a comma between figures, found 'width = 2,5', write 2.5 with a decimal point"),
        ("width = -.5", 2, "a number begins with a figure, found 'width = -.5', write -0.5"),
        ("number = 0471", 2, 'write "0471"'),
        ("width =", 2, "a value is missing, found 'width =', write key"),
        ("width", 2, "a key without its value, found 'width', write key = \"value\""),
        ('name = "Lake\nShore"', 2, "text is not closed on its line, found 'name = \"Lake'"),
        ('name = "Lake" Shore', 2, "something is left over after the value"),
        ('name = """Lake\nShore', 3, "text is not closed, found 'Shore'"),
        ("list = [1, 2\n\n", 2, "a list is not closed or lacks a comma, found 'list = [1, 2'"),
        ("list = [1 2]", 2, "a list is not closed or lacks a comma"),
        ("at = { x = 1", 2, "braces are not closed"),
        ("a = 1\nb = 2\na = 3", 4, "this key is there twice, found 'a = 3', leave one of them out"),
        ("[let]\n[let]", 3, "this table is there twice, found '[let]', join the two"),
        ("[let", 2, "a table's name is not closed, found '[let', write [name]"),
        ("[shape.big disc]", 2, "a table's name has no space in it"),
        ("big disc = 3", 2, "a key has no space in it"),
        ("at = { x = 1,\n  y = 2 }", 2, "braces go on over the end of their line, found 'at = { x = 1,'"),
        ('width = "66" full"', 2, "a foot or inch mark within the same quotation marks"),
        ("width = '5' 6 in full'", 2, "a foot or inch mark within the same quotation marks"),
        ("[größe]", 2, "a key is missing or has a sign in it that wants quotation marks"),
        (
            "größe = 1",
            2,
            "a sign in it that wants quotation marks, found 'größe = 1', keys are the letters a to z",
        ),
        ('file = "C:\\maps"', 2, "a backslash that stands for nothing"),
        ("a = '\x1b[31m'", 2, "found 'a = '<U+001B>[31m''"),
        ("n = " + "1" * 5000, 2, "a number is too long, found more than 4,300 figures"),
        ("é" * 100, 2, "found '" + "é" * 60 + "'"),
    ],
)
def test_faults_of_the_text_are_told_in_words(text, line, said):
    with pytest.raises(DescriptionError) as refusal:
        parse_toml('kind = "road"\n' + text, Path("a.toml"), KINDS)
    (fault,) = refusal.value.faults
    assert said in str(fault)
    assert fault.line == line
    assert str(fault).startswith(f"a.toml:{line}: ")


def test_every_message_of_the_standard_library_has_words_of_ours():
    calls = [node for node in ast.walk(ast.parse(inspect.getsource(_parser))) if isinstance(node, ast.Call)]
    said = [call.args[2] for call in calls if getattr(call.func, "id", "") == "suffixed_err"]
    beginnings = [message.values[0] if isinstance(message, ast.JoinedStr) else message for message in said]
    assert len(beginnings) > 20
    ours = ("Invalid value", *_WORDS_FOR)
    for beginning in (message.value for message in beginnings):
        assert any(beginning.startswith(known) or known.startswith(beginning) for known in ours), beginning


def test_what_the_standard_library_says_is_never_passed_on_as_it_is():
    for text in (
        "=",
        "a",
        "a=",
        "[",
        "[[a]",
        "a=[",
        "a={",
        "a='",
        'a="\\x"',
        'a="\\uD800"',
        "#\x00",
        "a=1 b=2",
    ):
        with pytest.raises(DescriptionError) as refusal:
            parse_toml(text, Path("a.toml"), KINDS)
        assert "this is not TOML" not in str(refusal.value)


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ('name = "x"', 1, "'kind' is missing, begin with kind = \"…\"; known: herald, printer, road"),
        ("", 1, "'kind' is missing"),
        ('\nkind = "hearld"', 2, "unknown kind, found 'hearld', did you mean 'herald'?"),
        ("unit = 1\nkind = 3", 2, "'kind' is no text, found 3, write kind = \"herald\""),
        ('kind = ["road"]', 1, "'kind' is no text"),
    ],
)
def test_a_file_says_its_kind(text, line, said):
    with pytest.raises(DescriptionError) as refusal:
        parse_toml(text, Path("a.toml"), KINDS)
    assert said in str(refusal.value)
    assert refusal.value.faults[0].line == line


def test_files_from_every_editor_are_read(tmp_path):
    for name, content in {
        "plain": b'kind = "road"\nname = "\xc3\x89t\xc3\xa9"',
        "marked": b'\xef\xbb\xbfkind = "road"\nname = "\xc3\x89t\xc3\xa9"',
        "dos": b'kind = "road"\r\nname = "\xc3\x89t\xc3\xa9"\r\n',
    }.items():
        path = tmp_path / f"{name}.toml"
        path.write_bytes(content)
        source = read_toml(path, KINDS)
        assert source.data == {"kind": "road", "name": "Été"}
        assert source.line(("name",)) == 2
        assert source.path == path


def test_nesting_is_allowed_as_deep_as_it_says_and_no_deeper():
    text = "a = " + "[" * MAX_NESTING + "]" * MAX_NESTING
    assert depth_fault(text) is None
    assert depth_fault("\n" + text.replace("[", "[[", 1)) == 2
    assert depth_fault(".".join("a" * (MAX_NESTING + 1)) + " = 1") is None
    assert depth_fault(".".join("a" * (MAX_NESTING + 2)) + " = 1") == 1
    assert depth_fault("a = [" + "1.5, " * 1000 + "]") is None
    assert depth_fault('a = "' + "[" * 1000 + '"\n#' + "{" * 1000 + "\nb = '''" + "[" * 1000) is None


def test_more_keys_than_a_description_can_have_are_refused():
    text = 'kind = "road"\n' + "".join(f"k{i} = 1\n" for i in range(MAX_KEYS - 1))
    assert len(parse_toml(text, Path("a.toml"), KINDS).data) == MAX_KEYS
    with pytest.raises(DescriptionError, match=f"too many keys, found {MAX_KEYS + 1}, write at most {MAX_KEYS}"):
        parse_toml(text + "x = 1", Path("a.toml"), KINDS)
