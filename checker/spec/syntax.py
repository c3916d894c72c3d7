"""Where a spec is not YAML at all: the parser's complaint in a builder's words."""

from typing import NamedTuple

import yaml

from checker.spec.problem import Problem, quoted
from checker.spec.source import lines_of


class _Complaint(NamedTuple):
    """Words of the parser, what they mean here, and whether the trouble lies where it began."""

    words: str
    message: str
    expected: str
    at_start: bool = False


# The first that fits; words that both parsers of PyYAML use.
_COMPLAINTS = (
    _Complaint("tab character", "a tab indents this line", "spaces"),
    _Complaint("end of stream", "a quote is opened here and never closed", "a closing quote", True),
    _Complaint(
        "unexpected document", "a quote is opened here and never closed", "a closing quote", True
    ),
    _Complaint(
        "block scalar", "'|' or '>' begins a block of text on the lines below", "text in quotes"
    ),
    _Complaint("',' or ']'", "a list is opened here and not closed", "items in [ ]", True),
    _Complaint("',' or '}'", "a mapping is opened here and not closed", "fields in { }", True),
    _Complaint("expected ':'", "this line has no colon", "'field: value'", True),
    _Complaint(
        "mapping values are not allowed",
        "a colon stands where no field can begin",
        "one 'field: value' per line, fields of one mapping at one indentation; "
        "or the text in quotes",
    ),
    _Complaint(
        "unknown escape",
        "a backslash in double quotes begins no known escape",
        "text in single quotes",
    ),
    _Complaint("<document start>", "this stands after the end of the fields", "nothing more"),
    _Complaint(
        "block collection",
        "this does not line up with the items above",
        "'- ' at their indentation",
    ),
    _Complaint("alphabetic or numeric", "'&' or '*' has no name behind it", "text in quotes"),
    _Complaint("incompatible", "this version of YAML is not known", "no %YAML line"),
    _Complaint("nesting depth", "the spec nests too deep", "fewer levels"),
    _Complaint("node content", "there is no value here", "a value"),
)
_INDENTED = _Complaint(
    "",
    "this line does not line up with the fields above",
    "fields of one mapping at one indentation",
)
_TRAILING = _Complaint("", "text follows a finished value", "the whole value in one pair of quotes")
_TAB = _COMPLAINTS[0]
_RESERVED = _Complaint("", "plain text cannot begin with this character", "text in quotes")
_OTHER = _Complaint("", "this is not valid YAML", "'field: value' lines")


def syntax_problem(error: yaml.YAMLError, text: str) -> Problem:
    """Say where and why a text is not YAML."""
    mark = getattr(error, "problem_mark", None)
    if mark is None:
        return Problem((), 1, 1, "", _OTHER.expected, _OTHER.message)
    lines = lines_of(text)
    line, column = _within(lines, mark.line, mark.column)
    complaint = _complaint(error, lines[line], column)
    start = getattr(error, "context_mark", None)
    if complaint.at_start and start is not None:
        line, column = _within(lines, start.line, start.column)
    rest = lines[line][column:].rstrip()
    found = quoted(rest) if rest else "the end of the line"
    return Problem((), line + 1, column + 1, found, complaint.expected, complaint.message)


def _within(lines: list[str], line: int, column: int) -> tuple[int, int]:
    """The place, or the end of the text where the parser points past it."""
    if line >= len(lines):
        line, column = len(lines) - 1, len(lines[-1])
    if line and line == len(lines) - 1 and not lines[line]:
        line, column = line - 1, len(lines[line - 1])
    return line, column


def _complaint(error: yaml.YAMLError, line: str, column: int) -> _Complaint:
    words = f"{getattr(error, 'context', '')}: {getattr(error, 'problem', '')}"
    if "cannot start any token" in words:
        return _TAB if line[column : column + 1] == "\t" else _RESERVED
    for complaint in _COMPLAINTS:
        if complaint.words in words:
            return complaint
    if "block mapping" in words:
        return _TRAILING if line[:column].strip() else _INDENTED
    return _OTHER
