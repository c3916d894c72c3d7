"""Generic bearings: their ratings lie near what catalogues print for the same sizes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import bearing_sizes as sizes
from checker.mechanics.equation import OutOfRange


@pytest.mark.parametrize(
    ("series", "bore", "dynamic", "static", "f0"),
    [
        # deep groove ratings as makers print them for these sizes (from memory), kN
        ("10", 0.040, 17.8, 11.0, 15.3),
        ("02", 0.040, 32.5, 19.0, 14.0),
        ("03", 0.035, 35.1, 19.0, 13.1),
        ("03", 0.045, 55.3, 31.5, 13.0),
        ("03", 0.060, 85.2, 52.0, 13.2),
    ],
)
def test_generic_balls_are_within_a_fifth_of_catalogues(series, bore, dynamic, static, f0):
    outside = sizes.generic_outside(series, bore)
    assert sizes.generic_ball_rating(bore, outside) / 1e3 == pytest.approx(dynamic, rel=0.2)
    assert sizes.generic_ball_static_rating(bore, outside) / 1e3 == pytest.approx(static, rel=0.2)
    assert sizes.generic_f0(bore, outside) == pytest.approx(f0, rel=0.06)


@pytest.mark.parametrize(
    ("series", "bore", "dynamic", "static"),
    [("02", 0.035, 56.0, 48.0), ("02", 0.040, 62.0, 53.0), ("02", 0.050, 76.5, 69.5)],
)
def test_generic_rollers_are_not_above_catalogues(series, bore, dynamic, static):
    """Catalogue figures are of reinforced cages with more rollers (from memory)."""
    outside, width = sizes.generic_outside(series, bore), sizes.generic_width(series, bore)
    found = sizes.generic_roller_rating(bore, outside, width) / 1e3
    assert 0.55 * dynamic < found < 1.05 * dynamic
    found = sizes.generic_roller_static_rating(bore, outside, width) / 1e3
    assert 0.5 * static < found < 1.05 * static


@given(st.sampled_from(sizes.SERIES), st.sampled_from([15, 20, 25, 30, 35, 40, 45, 50, 55]))
def test_a_larger_bearing_of_a_series_carries_more(series, bore):
    def rating(nominal):
        inside = nominal / 1e3
        return sizes.generic_ball_rating(inside, sizes.generic_outside(series, inside))

    assert rating(bore + 15) > rating(bore)


def test_sizes_not_listed_are_refused():
    with pytest.raises(OutOfRange, match="41"):
        sizes.generic_outside("02", 0.041)
    with pytest.raises(OutOfRange, match="series"):
        sizes.generic_width("99", 0.04)
