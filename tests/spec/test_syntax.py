"""Text that is not YAML: the place, and words of our own."""

import pytest
import yaml

from checker.spec import document
from checker.spec.document import read_document
from checker.spec.problem import SpecUnreadable

LOADERS = [yaml.SafeLoader]
if yaml.__with_libyaml__:
    LOADERS.append(yaml.CSafeLoader)


@pytest.mark.parametrize("loader", LOADERS)
@pytest.mark.parametrize(
    ("text", "place", "message", "found"),
    [
        ("a:\n\tb: 1\n", (2, 1), "a tab indents this line", "'\tb: 1'"),
        ("a: 'x\n", (1, 4), "a quote is opened here and never closed", "''x'"),
        ('a: "x\nb: 1\n', (1, 4), "a quote is opened here and never closed", "'\"x'"),
        ("a: 'x\n---\n'\n", (1, 4), "a quote is opened here and never closed", "''x'"),
        ("a: [1, 2\nb: 3\n", (1, 4), "a list is opened here and not closed", "'[1, 2'"),
        ("a: {b: 1\n", (1, 4), "a mapping is opened here and not closed", "'{b: 1'"),
        ("a: 1\nfoo\nb: 2\n", (2, 1), "this line has no colon", "'foo'"),
        ("a: b: c\n", (1, 5), "a colon stands where no field can begin", "': c'"),
        ("a: 1\n b: 2\n", (2, 3), "a colon stands where no field can begin", "': 2'"),
        ("a: 'x' y\n", (1, 8), "text follows a finished value", "'y'"),
        ("a: 'it's'\n", (1, 8), "text follows a finished value", "'s''"),
        ("a:\n  - 1\n b\n", (3, 2), "this line does not line up with the fields above", "'b'"),
        ("- a\nb: 1\n", (2, 1), "this does not line up with the items above", "'b: 1'"),
        ("a: @x\n", (1, 4), "plain text cannot begin with this character", "'@x'"),
        ("a: ]\n", (1, 4), "there is no value here", "']'"),
        (
            "a: >= 2 mm\n",
            (1, 5),
            "'|' or '>' begins a block of text on the lines below",
            "'= 2 mm'",
        ),
        ("a: *\n", (1, 5), "'&' or '*' has no name behind it", "the end of the line"),
        ("{a: 1}}\n", (1, 7), "this stands after the end of the fields", "'}'"),
        ("%YAML 3.0\n---\na: 1\n", (1, 1), "this version of YAML is not known", "'%YAML 3.0'"),
        ("%TAG\n---\na: 1\n", (1, 5), "this is not valid YAML", "the end of the line"),
    ],
)
def test_complaints(monkeypatch, loader, text, place, message, found):
    monkeypatch.setattr(document, "_LOADER", loader)
    with pytest.raises(SpecUnreadable) as caught:
        read_document(text.encode(), "drive.yaml")
    problem = caught.value.problems[-1]
    assert (problem.line, problem.column) == place
    assert problem.message == message
    assert problem.found == found
    assert problem.expected


def test_an_unknown_escape_is_shown():
    # The two parsers point at the backslash and behind it.
    with pytest.raises(SpecUnreadable, match="a backslash in double quotes"):
        read_document(b'a: "\\q"\n', "drive.yaml")


def test_what_was_found_before_the_fault_is_reported_with_it():
    with pytest.raises(SpecUnreadable) as caught:
        read_document(b"a: yes\nb: 'x\n", "drive.yaml")
    assert [problem.line for problem in caught.value.problems] == [1, 2]
