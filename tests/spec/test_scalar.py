"""Plain scalars: decimal numbers, truths and text; anything YAML programs differ on is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.spec.scalar import ScalarError, resolve


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("27", 27),
        ("0", 0),
        ("-3", -3),
        ("+3", 3),
        ("1.5", 1.5),
        ("2.", 2.0),
        (".5", 0.5),
        ("-0.25", -0.25),
        ("1e3", 1000.0),
        ("1.5E-3", 0.0015),
        ("true", True),
        ("False", False),
        ("unknown", "unknown"),
        ("none", "none"),
        ("2026-11-02", "2026-11-02"),
        ("75 hp", "75 hp"),
        ("+/- 2 mm", "+/- 2 mm"),
        ("12:30 local", "12:30 local"),
        ("-", "-"),
        (".", "."),
        ("1.2.3", "1.2.3"),
        ("nanny", "nanny"),
        ("input_gear", "input_gear"),
        ("=", "="),
    ],
)
def test_meanings(text, value):
    assert resolve(text) == value
    assert type(resolve(text)) is type(value)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        *((text, "the value is empty") for text in ("", "~", "null", "Null", "NULL")),
        *(
            (text, "true or false")
            for text in ("yes", "No", "ON", "off", "y", "N")  # bool of YAML 1.1
        ),
        *((text, "base sixty") for text in ("1:30", "27:61", "190:20:30", "1:30.5")),
        *((text, "leading zero") for text in ("012", "-07", "00", "01.5", "09")),
        *((text, "base than ten") for text in ("0x1F", "0o17", "0b101", "-0x1f")),
        *((text, "underscore") for text in ("1_000", "1_000.5", "0_7")),
        *((text, "not finite") for text in (".nan", ".NaN", ".inf", "-.inf", "nan", "Infinity")),
        ("1e999", "too large"),
        ("1" * 41, "too long"),
    ],
)
def test_unclear_scalars(text, message):
    with pytest.raises(ScalarError) as caught:
        resolve(text)
    assert message in caught.value.message
    assert caught.value.expected


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_every_number_that_python_writes_is_read_back(number):
    assert resolve(repr(number)) == number


@given(st.text(alphabet="0123456789+-._:eExob~nyaif", max_size=12))
def test_any_scalar_is_given_a_meaning_or_refused(text):
    try:
        value = resolve(text)
    except ScalarError:
        return
    assert isinstance(value, bool) or value == text or value == float(text)
