"""Quantities as people write them, and what is said of those that cannot be read."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.spec.quantity import Quantity, QuantityError, parse_quantity
from checker.spec.units import DIMENSIONS, units_of


@pytest.mark.parametrize(
    ("text", "dimension", "value", "low", "high"),
    [
        ("75 hp", "power", 55927.4904, 55927.4904, 55927.4904),  # 550 ft lbf/s each
        ("76.20 +/- 0.02 mm", "length", 0.0762, 0.07618, 0.07622),
        ("76.20 ± 0.02 mm", "length", 0.0762, 0.07618, 0.07622),
        ("76.20±0.02mm", "length", 0.0762, 0.07618, 0.07622),
        ("76.20 +- 0.02 mm", "length", 0.0762, 0.07618, 0.07622),
        (
            "20 +0.1/-0.0 deg",
            "angle",
            math.radians(20),
            math.radians(20),
            math.radians(20.1),
        ),
        ("60 -0.01/-0.03 mm", "length", 0.06, 0.05997, 0.05999),
        ("60 +0.015/+0.002 mm", "length", 0.06, 0.060002, 0.060015),
        ("60 +0.002 / +0.015 mm", "length", 0.06, 0.060002, 0.060015),
        ("60 0/-0.02 mm", "length", 0.06, 0.05998, 0.06),
        ("-12 degC", "temperature", 261.15, 261.15, 261.15),
        ("−12 °C", "temperature", 261.15, 261.15, 261.15),
        ("85 +/- 5 degC", "temperature", 358.15, 353.15, 363.15),
        ("212 +/- 9 degF", "temperature", 373.15, 368.15, 378.15),
        ("-273.15 degC", "temperature", 0.0, 0.0, 0.0),
        ("-459.67 degF", "temperature", 0.0, 0.0, 0.0),
        ("30 K", "temperature_difference", 30.0, 30.0, 30.0),
        ("1.5e-3 m", "length", 0.0015, 0.0015, 0.0015),
        (".5 in", "length", 0.0127, 0.0127, 0.0127),
        ("+5 mm", "length", 0.005, 0.005, 0.005),
        ("8 DP", "module", 0.003175, 0.003175, 0.003175),
        ("3 mm", "module", 0.003, 0.003, 0.003),
        ("5800 1/min", "angular_speed", 607.3746, 607.3746, 607.3746),
        ("12 %", "ratio", 0.12, 0.12, 0.12),
        ("0.12", "ratio", 0.12, 0.12, 0.12),
        ("60 +/- 2 HRC", "hardness", 60.0, 58.0, 62.0),
        ("  3   N·m  ", "torque", 3.0, 3.0, 3.0),
    ],
)
def test_quantities(text, dimension, value, low, high):
    quantity = parse_quantity(text, dimension)
    assert quantity.nominal == quantity.value == pytest.approx(value, rel=1e-7, abs=1e-9)
    assert quantity.low == pytest.approx(low, rel=1e-7, abs=1e-9)
    assert quantity.high == pytest.approx(high, rel=1e-7, abs=1e-9)
    assert quantity.text == text


def test_a_quantity_keeps_what_was_written():
    assert parse_quantity("700 HV", "hardness") == Quantity(
        700.0, 0.0, 0.0, "HV", "hardness_vickers", "700 HV"
    )


@pytest.mark.parametrize(
    ("text", "dimension", "message", "hint"),
    [
        ("", "length", "the quantity is empty", "unknown"),
        ("1,5 mm", "length", "a comma", "decimal point"),
        ("1,500 rpm", "angular_speed", "a comma", "no separator"),
        ("1 500 rpm", "angular_speed", "broken up", "without a gap"),
        ("1_500 rpm", "angular_speed", "broken up", "without a gap"),
        ("1'500 rpm", "angular_speed", "broken up", "without a gap"),
        ("1.2.3 mm", "length", "broken up", "without a gap"),
        ("nan mm", "length", "not finite", ""),
        ("-inf mm", "length", "not finite", ""),
        ("1e400 mm", "length", "not finite", ""),
        ("1e308 GPa", "pressure", "not finite", ""),
        ("1 1/2 in", "length", "a fraction", "decimal"),
        ("3/8 in", "length", "a fraction", "such as 0.375 mm"),
        ("58-62 HRC", "hardness", "a range", "such as 60 +/- 2 HRC"),
        ("58-62 kW", "power", "a range", "such as 60 +/- 2 kW"),
        ("58 to 62 HRC", "hardness", "a range", "tolerance"),
        ("HRC 60", "hardness", "does not begin with a number", ""),
        ("- 12 degC", "temperature", "does not begin with a number", ""),
        ("76 mm +/- 1 mm", "length", "tolerance cannot be read", "76.20 +/- 0.02 mm"),
        ("76 N +/- 1 N", "force", "tolerance cannot be read", "76.20 +0.1/-0.05 N"),
        ("76 +/- -1 mm", "length", "tolerance cannot be read", "before the unit"),
        ("76 +1 mm", "length", "tolerance cannot be read", "before the unit"),
        ("1500/-2 mm", "length", "tolerance cannot be read", "before the unit"),
        ("60", "length", "the unit is missing", ""),
        ("60 mN", "force", "the unit is not known", ""),
        ("60 KW", "power", "the unit is not known", "did you mean kW?"),
        ("60 lb", "force", "of another kind", "did you mean lbf?"),
        ("30 degC", "temperature_difference", "of another kind", ""),
        ("8 DP", "length", "of another kind", ""),
        ("0 DP", "module", "teeth per inch", ""),
        ("-8 DP", "module", "teeth per inch", ""),
        ("8 +/- 1 DP", "module", "teeth per inch", ""),
        ("-273.16 degC", "temperature", "below absolute zero", ""),
        ("10 +/- 20 K", "temperature", "below absolute zero", ""),
        ("5 1", "ratio", "broken up", "without a gap"),
        ("٣ mm", "length", "does not begin with a number", ""),
        ("1" * 101 + " mm", "length", "too long", ""),
        ("unknown", "length", "does not begin with a number", ""),
    ],
)
def test_what_cannot_be_read_is_explained(text, dimension, message, hint):
    with pytest.raises(QuantityError) as caught:
        parse_quantity(text, dimension)
    assert message in caught.value.message
    assert hint in caught.value.hint
    assert bool(hint) == bool(caught.value.hint)
    assert units_of(dimension)[0] in caught.value.expected


def test_a_unit_of_another_kind_is_named_with_the_right_ones():
    with pytest.raises(QuantityError) as caught:
        parse_quantity("2 kg", "length")
    assert caught.value.found == "'kg', a mass"
    assert caught.value.expected == "a length: mm, cm, m, um, km, in, ft, thou"
    assert str(caught.value) == (
        "the unit is of another kind; found 'kg', a mass; "
        "expected a length: mm, cm, m, um, km, in, ft, thou"
    )


def test_an_unknown_dimension_is_a_mistake_of_the_program():
    with pytest.raises(KeyError):
        parse_quantity("2 kg", "heaviness")


@given(st.text(max_size=30), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_is_a_quantity_or_explained(text, dimension):
    try:
        quantity = parse_quantity(text, dimension)
    except QuantityError as error:
        assert error.message
        assert error.expected
    else:
        assert math.isfinite(quantity.value)


@given(
    st.text(alphabet="0123456789.,+-/± eEmNDP°%k'_to", max_size=20),
    st.sampled_from(["length", "ratio", "torque", "module", "temperature"]),
)
def test_any_numeric_text_is_a_quantity_or_explained(text, dimension):
    try:
        quantity = parse_quantity(text, dimension)
    except QuantityError as error:
        assert error.message
    else:
        assert quantity.low <= quantity.high


@given(
    st.decimals(-1000, 1000, places=3),
    st.decimals(0, 10, places=3),
    st.sampled_from(["mm", "in", "ft", "um"]),
)
def test_a_symmetrical_tolerance_lies_evenly_about_the_value(value, tolerance, unit):
    quantity = parse_quantity(f"{value} +/- {tolerance} {unit}", "length")
    alone = parse_quantity(f"{value} {unit}", "length")
    assert quantity.value == alone.value == alone.low == alone.high
    assert quantity.plus == quantity.minus
    assert quantity.low <= quantity.value <= quantity.high
