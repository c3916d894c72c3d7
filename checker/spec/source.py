"""From the bytes of a spec file to a text that can be YAML."""

import re
from itertools import islice
from typing import Final

from checker.spec.problem import Place, Problem, SpecUnreadable

MOST_BYTES: Final = 2_000_000
_MOST_PROBLEMS = 20

_BYTE_ORDER_MARK = "\ufeff"
_OTHER_ENCODINGS = {
    b"\xff\xfe": "UTF-16 text",
    b"\xfe\xff": "UTF-16 text",
}
# What YAML forbids, and the three characters that YAML takes for line breaks but editors do not.
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufffe\uffff]")
_LINE_BREAK = re.compile(r"\r\n|\r|\n")


def text_of(source: bytes, name: str) -> str:
    """Decode the bytes of a spec file.

    Raises:
        SpecUnreadable: they are too many, not UTF-8, or hold control characters.
    """
    if len(source) > MOST_BYTES:
        size = f"{MOST_BYTES // 1_000_000} MB"
        raise _unreadable(name, f"more than {size}", f"at most {size}", "the file is too large")
    for mark, encoding in _OTHER_ENCODINGS.items():
        if source.startswith(mark):
            hint = "save it as UTF-8"
            raise _unreadable(name, encoding, "UTF-8", "the file is in another encoding", hint)
    if b"\0" in source:
        found = f"a NUL at byte {source.index(0)}"
        raise _unreadable(name, found, "UTF-8 text", "the file is not a text")
    try:
        text = source.decode()
    except UnicodeDecodeError as error:
        before = source[: error.start].decode().removeprefix(_BYTE_ORDER_MARK)
        found = f"0x{source[error.start]:02x} at byte {error.start}"
        place = _end_of(before)
        problem = Problem((), *place, found, "UTF-8", "the file is not UTF-8", "save it as UTF-8")
        raise SpecUnreadable(name, (problem,)) from None
    text = text.removeprefix(_BYTE_ORDER_MARK)
    _refuse_controls(text, name)
    return text


def lines_of(text: str) -> list[str]:
    """The lines of a text, broken where YAML breaks them."""
    return _LINE_BREAK.split(text)


def _unreadable(
    name: str, found: str, expected: str, message: str, hint: str = ""
) -> SpecUnreadable:
    return SpecUnreadable(name, (Problem((), 1, 1, found, expected, message, hint),))


def _refuse_controls(text: str, name: str) -> None:
    problems = tuple(
        Problem(
            (),
            *_end_of(text[: match.start()]),
            f"U+{ord(match.group()):04X}",
            "text without control characters",
            "a control character",
        )
        for match in islice(_CONTROL.finditer(text), _MOST_PROBLEMS)
    )
    if problems:
        raise SpecUnreadable(name, problems)


def _end_of(text: str) -> Place:
    """The place behind a text."""
    lines = lines_of(text)
    return Place(len(lines), len(lines[-1]) + 1)
