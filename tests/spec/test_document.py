"""Any bytes are a document with the place of every value, or problems with their places."""

import json

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.spec import document
from checker.spec.document import (
    DEEPEST,
    MOST_ALIASES,
    MOST_PROBLEMS,
    Document,
    read_document,
    survey_document,
)
from checker.spec.problem import SpecUnreadable
from checker.spec.source import MOST_BYTES

SPEC = """\
# An invented drive.
thrustline: 1
drive: {name: Marram, revision: "C"}
operation:
  - name: climb
    power: 60 kW
    share: 12 %   # of the time
  - {name: cruise, power: 45 kW}
gears:
  pinion:
    teeth: 27
    module: 3.0 +/- 0.01 mm
    helix: {angle: "18 deg", hand: right}
    notes: >
      Ground after
      hardening.
  wheel: &wheel
    teeth: 61
    known: true
  spare: *wheel
records: {drawn: 2026-11-02, place: unknown}
"""

LOADERS = [yaml.SafeLoader]
if yaml.__with_libyaml__:
    LOADERS.append(yaml.CSafeLoader)


@pytest.fixture(params=LOADERS)
def loader(request, monkeypatch):
    monkeypatch.setattr(document, "_LOADER", request.param)
    return request.param


def read(text: str | bytes) -> Document:
    return read_document(text if isinstance(text, bytes) else text.encode(), "drive.yaml")


def problems(text: str | bytes):
    with pytest.raises(SpecUnreadable) as caught:
        read(text)
    return caught.value.problems


@pytest.mark.usefixtures("loader")
def test_a_spec_becomes_plain_data():
    wheel = {"teeth": 61, "known": True}
    assert read(SPEC).data == {
        "thrustline": 1,
        "drive": {"name": "Marram", "revision": "C"},
        "operation": [
            {"name": "climb", "power": "60 kW", "share": "12 %"},
            {"name": "cruise", "power": "45 kW"},
        ],
        "gears": {
            "pinion": {
                "teeth": 27,
                "module": "3.0 +/- 0.01 mm",
                "helix": {"angle": "18 deg", "hand": "right"},
                "notes": "Ground after hardening.\n",
            },
            "wheel": wheel,
            "spare": wheel,
        },
        "records": {"drawn": "2026-11-02", "place": "unknown"},
    }


@pytest.mark.usefixtures("loader")
def test_places():
    spec = read(SPEC)
    assert spec.place(()) == (2, 1)
    assert spec.place(("thrustline",)) == (2, 13)
    assert spec.place(("operation", 0)) == (5, 5)
    assert spec.place(("operation", 0, "share")) == (7, 12)
    assert spec.key_place(("operation", 0, "share")) == (7, 5)
    assert spec.place(("operation", 1, "power")) == (8, 27)
    assert spec.place(("gears", "pinion", "helix", "angle")) == (13, 20)
    assert spec.place(("gears", "spare")) == (20, 10)


def test_a_place_that_is_not_there_falls_back_to_what_holds_it():
    spec = read(SPEC)
    assert spec.place(("gears", "pinion", "helix", "lead", 3)) == (13, 12)
    assert spec.key_place(("gears", "pinion", "helix", "lead")) == (13, 12)
    assert spec.key_place(("operation", 1)) == spec.place(("operation", 1))
    assert spec.place(("gears", "spare", "teeth")) == (20, 10)


def test_a_problem_stands_at_a_value_or_at_its_name():
    spec = read(SPEC)
    path = ("gears", "pinion", "teeth")
    at_value = spec.problem(path, "wrong", "27", "28", "a hint")
    at_name = spec.problem(path, "wrong", "27", "28", at_key=True)
    assert (at_value.path, at_value.line, at_value.column) == (path, 11, 12)
    assert (at_value.message, at_value.found, at_value.expected) == ("wrong", "27", "28")
    assert at_value.hint == "a hint"
    assert (at_name.line, at_name.column) == (11, 5)


@pytest.mark.usefixtures("loader")
@pytest.mark.parametrize(
    ("text", "place", "path", "message"),
    [
        ("", (1, 1), (), "the file holds no fields"),
        ("# nothing\n", (1, 1), (), "the file holds no fields"),
        ("a:\n", (1, 3), ("a",), "the value is empty"),
        ("a:\n  - \n", (2, 4), ("a", 0), "the value is empty"),
        ("a: {b: yes}\n", (1, 8), ("a", "b"), "some programs read this as true or false"),
        ("a: 1\nb: 2\na: 3\n", (3, 1), ("a",), "the field is given twice"),
        ("'a': 1\na: 3\n", (2, 1), ("a",), "the field is given twice"),
        ("a: {x: 1}\na: {x: 1}\n", (2, 1), ("a",), "the field is given twice"),
        ("on: 1\n", (1, 1), ("on",), "some programs read this as true or false"),
        ("no: 1\n", (1, 1), ("no",), "some programs read this as true or false"),
        ("1: 1\n", (1, 1), ("1",), "a field name is not a text"),
        ("a: {7: 1}\n", (1, 5), ("a", "7"), "a field name is not a text"),
        ("true: 1\n", (1, 1), ("true",), "a field name is not a text"),
        ("012: 1\n", (1, 1), ("012",), "some programs read a leading zero as octal"),
        ("'': 1\n", (1, 1), ("",), "a field has no name"),
        ("[a]: 1\n", (1, 1), (), "a field name is not a text"),
        ("? {a: 1}\n: 2\n", (1, 3), (), "a field name is not a text"),
        ("a: &x b\n*x : 1\n", (2, 1), (), "a field name is not a text"),
        ("a: &x {b: 1}\nc:\n  <<: *x\n", (3, 3), ("c", "<<"), "merging is not supported"),
        ("a: !!python/name:os.system 1\n", (1, 4), ("a",), "a tag is not allowed"),
        ("a: !!str 1\n", (1, 4), ("a",), "a tag is not allowed"),
        ("a: !gear {b: 1}\n", (1, 4), ("a",), "a tag is not allowed"),
        ("!key a: 1\n", (1, 1), ("a",), "a tag is not allowed"),
        ("a: *x\n", (1, 4), ("a",), "the alias has no anchor"),
        ("a: &x\n  b: *x\n", (2, 6), ("a", "b"), "the alias repeats what it stands in"),
        ("a: &x [*x]\n", (1, 8), ("a", 0), "the alias repeats what it stands in"),
        ("a: 1\n---\nb: 2\n", (2, 1), (), "a second document begins"),
    ],
)
def test_problems_of_content(text, place, path, message):
    (problem,) = problems(text)
    assert (problem.line, problem.column) == place
    assert problem.path == path
    assert problem.message == message
    assert problem.expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a: {7: 1}\n", "a name that begins with a letter"),
        ("a: {[b]: 1}\n", "a name that begins with a letter"),
        ("on: 1\n", "a name that begins with a letter; in quotes, if it must be this one"),
        ("a: &x {b: 1}\nc: {<<: *x}\n", "the fields themselves, written out"),
    ],
)
def test_what_a_field_could_be_named_instead(text, expected):
    assert [each.expected for each in problems(text)] == [expected]


def test_a_survey_goes_on_past_what_cannot_be_read():
    spec = survey_document(b"a: {b: yes, c: 1}\n7: x\n[d]: {e: 1}\nf: *g\nh: 2\n", "drive.yaml")
    assert spec.data == {"a": {"b": "yes", "c": 1}, "7": "x", "f": None, "h": 2}
    assert [each.path for each in spec.problems] == [("a", "b"), ("7",), (), ("f",)]


def test_of_a_field_given_twice_a_survey_keeps_the_first():
    spec = survey_document(b"a: {x: 1}\na: {x: 2, y: 3}\n", "drive.yaml")
    assert spec.data == {"a": {"x": 1}}
    assert spec.place(("a", "x")) == (1, 8)


@pytest.mark.parametrize("text", ["a: 'open\n", "a: 1\n---\nb: 2\n", "", "- yes\n" * 200])
def test_a_survey_of_what_is_no_document_is_refused(text):
    with pytest.raises(SpecUnreadable):
        survey_document(text.encode(), "drive.yaml")


def test_a_field_given_twice_names_both_places():
    (problem,) = problems("a: 1\nb: 2\n  \na: 3\n")
    assert "line 1, column 1" in problem.expected
    assert problem.line == 4


def test_all_problems_are_collected_in_the_order_of_the_file():
    found = problems("a: yes\nb: {c: 012, d: }\ne:\n  - 1:30\n  - .nan\na: 2\n")
    assert [".".join(map(str, each.path)) for each in found] == [
        "a",
        "b.c",
        "b.d",
        "e.0",
        "e.1",
        "a",
    ]


def test_reading_stops_after_many_problems():
    found = problems("- yes\n" * 5000)
    assert len(found) == MOST_PROBLEMS + 1
    assert "reading stops" in found[-1].message


@pytest.mark.parametrize(
    ("source", "place", "found", "message"),
    [
        (b"a: \xff\n", (1, 4), "0xff at byte 3", "the file is not UTF-8"),
        (b"\xef\xbb\xbfa: 1\nb: \xe9\n", (2, 4), "0xe9 at byte 11", "the file is not UTF-8"),
        (b"a: \x00\n", (1, 1), "a NUL at byte 3", "the file is not a text"),
        ("a: 1\n".encode("utf-16"), (1, 1), "UTF-16 text", "the file is in another encoding"),
        (b"\xfe\xff\x00a", (1, 1), "UTF-16 text", "the file is in another encoding"),
        (b"a: 1\nb: \x1b[2J\n", (2, 4), "U+001B", "a control character"),
        ("a: 1\u2028b: 2\n".encode(), (1, 5), "U+2028", "a control character"),
        (b"a" * (MOST_BYTES + 1), (1, 1), "more than 2 MB", "the file is too large"),
    ],
)
def test_problems_of_bytes(source, place, found, message):
    (problem,) = problems(source)
    assert (problem.line, problem.column) == place
    assert problem.found == found
    assert problem.message == message


def test_a_byte_order_mark_and_any_line_break_are_read():
    assert read(b"\xef\xbb\xbfa: 1\r\nb: 2\r\n").data == {"a": 1, "b": 2}
    assert read(b"\xef\xbb\xbfa: 1").place(("a",)) == (1, 4)


# Nine aliases of nine aliases ...: 9**9 values from a few hundred bytes.
BOMB = "a0: &a0 [1]\n" + "".join(
    f"a{level}: &a{level} [{', '.join([f'*a{level - 1}'] * 9)}]\n" for level in range(1, 10)
)
# Each anchor holds the one before it forty deep.
TOWER = "a0: &a0 1\n" + "".join(
    f"a{level}: &a{level} {'[' * 30}*a{level - 1}{']' * 30}\n" for level in range(1, 50)
)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("[" * 1_000_000, "the spec nests too deep"),
        ("{a: " * 400_000, "the spec nests too deep"),
        ("- " * 900_000, "the spec nests too deep"),
        (TOWER, "the spec nests too deep"),
        (BOMB, "the spec is too large"),
        ("- 1\n" * 60_000, "the spec is too large"),
        ("a: &x 1\nb: [" + "*x, " * (MOST_ALIASES + 1) + "]\n", "too many aliases"),
    ],
)
def test_bounds(text, message):
    assert problems(text)[-1].message == message


def test_a_spec_within_the_bounds_is_read():
    assert read("a: " + "[" * (DEEPEST - 1) + "1" + "]" * (DEEPEST - 1)).data["a"]
    assert len(read("a: &x 1\nb: [" + "*x, " * MOST_ALIASES + "]\n").data["b"]) == MOST_ALIASES


TEXT = st.text(
    st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp"), exclude_characters="\ufffe\uffff"),
    max_size=20,
)
DATA = st.dictionaries(
    TEXT.filter(bool),
    st.recursive(
        TEXT | st.booleans() | st.integers(-(10**9), 10**9) | st.floats(-1e9, 1e9),
        lambda inner: (
            st.lists(inner, max_size=4) | st.dictionaries(TEXT.filter(bool), inner, max_size=4)
        ),
        max_leaves=12,
    ),
    max_size=5,
)


@settings(max_examples=100, deadline=None)
@given(DATA)
def test_json_is_read_as_json_reads_it(data):
    assert read(json.dumps(data, ensure_ascii=False)).data == data


def composed_places(node, path=()):
    """Line and column of every value as PyYAML's own composer marks them."""
    yield path, (node.start_mark.line + 1, node.start_mark.column + 1)
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield from composed_places(value, (*path, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for index, value in enumerate(node.value):
            yield from composed_places(value, (*path, index))


@settings(max_examples=60, deadline=None)
@given(DATA, st.booleans())
def test_places_are_those_of_the_composer(data, flow):
    text = yaml.safe_dump(data, default_flow_style=flow, allow_unicode=True, default_style='"')
    text = text.replace("!!", "").replace("int ", "").replace("float ", "").replace("bool ", "")
    spec = read(text)
    places = {path: spec.place(path) for path in spec.marks}
    assert places == dict(composed_places(yaml.compose(text)))


def read_or_refuse(source: bytes) -> None:
    try:
        assert isinstance(read(source), Document)
    except SpecUnreadable as unreadable:
        assert unreadable.problems
        assert all(problem.line >= 1 and problem.column >= 1 for problem in unreadable.problems)
        assert len(str(unreadable).splitlines()) == len(unreadable.problems)


@settings(deadline=None)
@given(
    st.binary(max_size=60) | st.text(max_size=60).map(lambda text: text.encode("utf-8", "ignore"))
)
def test_any_bytes_are_read_or_refused(source):
    read_or_refuse(source)


@settings(max_examples=300, deadline=None)
@given(st.text(alphabet=" \n\t:-[]{}&*!|>'\"%@#?,<~ab01.\\x", max_size=40))
def test_any_punctuation_is_read_or_refused(text):
    read_or_refuse(text.encode())


@settings(max_examples=150, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.integers(0, len(SPEC)),
            st.integers(0, 12),
            st.text(max_size=3)
            | st.sampled_from(["\t", ": ", "- ", "[", "'", "&a ", "*a", "\n  "]),
        ),
        min_size=1,
        max_size=4,
    )
)
def test_a_damaged_spec_is_read_or_refused(cuts):
    text = SPEC
    for start, length, put in cuts:
        text = text[:start] + put + text[start + length :]
    read_or_refuse(text.encode("utf-8", "ignore"))
