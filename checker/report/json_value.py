"""What every JSON output is made of: plain data, values, and one way to write it."""

import json
import math
import re
from collections.abc import Mapping, Sequence

from checker.known import Known, Plain, Unknown, Value
from checker.report import words
from checker.text import plain

Json = str | int | float | bool | None | Sequence["Json"] | Mapping[str, "Json"]

_ESCAPED = re.compile(r'\\[^"]')
"""What JSON escapes, apart from quotation marks: control characters and backslashes."""


def json_text(data: Json) -> str:
    """Data as JSON on one line, with no control or invisible character even once it is decoded."""
    text = _written(data)
    if _ESCAPED.search(text) or plain(text) != text:  # seldom, and slow to go through
        text = _written(_harmless(data))
    return f"{text}\n"


def _written(data: Json) -> str:
    return json.dumps(data, ensure_ascii=False, allow_nan=False)


def _harmless(node: Json) -> Json:
    """The same data with every control and invisible character of its texts spelled out.

    JSON would escape some of them, but a program that decodes and prints a text would not.
    """
    if isinstance(node, str):
        return node if node.isascii() and node.isprintable() else plain(node)
    if isinstance(node, dict):
        return {plain(key): _harmless(value) for key, value in node.items()}
    if isinstance(node, list):
        return [_harmless(each) for each in node]
    return node


def value_json(known: Known) -> dict[str, Json]:
    """A value with its unit, and as an engineer reads it."""
    return {
        "value": finite(known.value),
        "unit": known.unit,
        "shown": words.value_text(known),
    }


def value_or_none(value: Value) -> Json:
    """A value, or nothing where it is not known."""
    return None if isinstance(value, Unknown) else value_json(value)


def finite(value: Plain) -> Json:
    """A number that JSON can hold; one that is not finite has only its shown text."""
    return None if isinstance(value, float) and not math.isfinite(value) else value
