"""What a plain scalar of the spec means: text, a decimal number or a truth, and nothing by guess.

YAML programs differ in what they take ``no``, ``012`` or ``1:30`` for. Here such a scalar is a
problem, so that a spec means the same in each of them.
"""

import math
import re
from functools import lru_cache

_DIGITS = r"(?:0|[1-9][0-9]*)"
_WHOLE = re.compile(rf"[+-]?{_DIGITS}")
_DECIMAL = re.compile(rf"[+-]?(?:{_DIGITS}(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_LONGEST_NUMBER = 40
_BEGINS_NUMBER = frozenset("+-.0123456789")

_TRUTHS = {
    "true": True,
    "True": True,
    "TRUE": True,
    "false": False,
    "False": False,
    "FALSE": False,
}
_EMPTY = frozenset({"", "~", "null"})
_DOUBTFUL = frozenset({"yes", "no", "on", "off", "y", "n"})
_NOT_FINITE = frozenset({"nan", "inf", "infinity"})

# Numbers that YAML programs read differently: what one is, and what to write.
_UNCLEAR = tuple(
    (re.compile(pattern), message, expected)
    for pattern, message, expected in (
        (
            r"[+-]?0[xob][0-9a-fA-F_]+",
            "a number in another base than ten",
            "a decimal number, or text in quotes",
        ),
        (
            r"[+-]?[0-9][0-9.]*_[0-9_.]*(?:[eE][+-]?[0-9]+)?",
            "a number with an underscore",
            "digits without a gap, or text in quotes",
        ),
        (
            r"[+-]?[0-9]+(?::[0-9]+)+(?:\.[0-9]*)?",
            "some programs read this as a number in base sixty",
            "text in quotes",
        ),
        (
            r"[+-]?0[0-9]+(?:\.[0-9]*)?(?:[eE][+-]?[0-9]+)?",
            "some programs read a leading zero as octal",
            "the number without the zero, or text in quotes",
        ),
    )
)


class ScalarError(ValueError):
    """A plain scalar without a clear meaning: what is wrong, and what to write instead."""

    def __init__(self, message: str, expected: str) -> None:
        super().__init__(message, expected)
        self.message = message
        self.expected = expected


@lru_cache(maxsize=8192)
def resolve(text: str) -> str | int | float | bool:
    """Give a plain scalar its meaning.

    Raises:
        ScalarError: its meaning is not clear.

    >>> resolve("27"), resolve("1.5"), resolve("true"), resolve("75 hp"), resolve("2026-11-02")
    (27, 1.5, True, '75 hp', '2026-11-02')
    """
    if text in _TRUTHS:
        return _TRUTHS[text]
    word = text.lower()
    if word in _EMPTY:
        raise ScalarError("the value is empty", "a value, or unknown if it is not known")
    if word in _DOUBTFUL:
        raise ScalarError(
            "some programs read this as true or false", "true or false, or text in quotes"
        )
    if word.lstrip("+-").removeprefix(".") in _NOT_FINITE:
        raise ScalarError("the number is not finite", "a finite number, or text in quotes")
    return _number(text) if text[0] in _BEGINS_NUMBER else text


def _number(text: str) -> str | int | float:
    """Read a number, or leave the text as it is where it only begins like one."""
    if _DECIMAL.fullmatch(text):
        if len(text) > _LONGEST_NUMBER:
            raise ScalarError("the number is too long", f"at most {_LONGEST_NUMBER} characters")
        if _WHOLE.fullmatch(text):
            return int(text)
        value = float(text)
        if not math.isfinite(value):
            raise ScalarError("the number is too large", "a finite number")
        return value
    for pattern, message, expected in _UNCLEAR:
        if pattern.fullmatch(text):
            raise ScalarError(message, expected)
    return text
