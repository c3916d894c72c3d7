from math import exp
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import oil
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
CST = oil.CENTISTOKES
AT_40, AT_100 = 313.15, 373.15


def viscosity(celsius, at_40, at_100):
    kelvin = celsius + 273.15
    return oil.kinematic_viscosity(kelvin, at_40 * CST, AT_40, at_100 * CST, AT_100) / CST


def test_viscosity_of_the_worked_sheet():
    case = CASES["OIL-V01"]
    given_ = case["inputs"]
    between = viscosity(given_["t_C"], given_["nu1_cSt"], given_["nu2_cSt"])
    assert between == pytest.approx(case["expected"]["nu_cSt"], rel=case["tolerance"])


def test_viscosity_over_the_range_of_a_gear_oil():
    case = CASES["OIL-V03"]
    given_ = case["inputs"]
    for celsius, expected in zip(given_["t_C"], case["expected"]["nu_cSt"], strict=True):
        computed = viscosity(celsius, given_["nu40_cSt"], given_["nu100_cSt"])
        assert computed == pytest.approx(expected, rel=case["tolerance"])


def test_low_viscosity_form_and_its_inverse():
    case = CASES["OIL-V04"]
    expected = case["expected"]
    for centistokes, function, back in zip(
        case["inputs"]["nu_cSt"], expected["Z"], expected["nu_back_cSt"], strict=True
    ):
        computed = oil.viscosity_function(centistokes * CST)
        assert computed == pytest.approx(function, rel=case["tolerance"])
        returned = oil.viscosity_from_function(computed) / CST
        assert returned == pytest.approx(back, rel=case["tolerance"])


@given(st.floats(2.0, 1e6))
def test_above_two_the_form_is_the_short_one(centistokes):
    short = centistokes + 0.7
    assert oil.viscosity_function(centistokes * CST) == pytest.approx(short, rel=3e-4)


@pytest.mark.parametrize("function", [1.0, 2.1e7])
def test_viscosity_function_outside_its_range(function):
    with pytest.raises(OutOfRange, match="viscosity function"):
        oil.viscosity_from_function(function)


OILS = st.tuples(st.floats(20.0, 400.0), st.floats(0.1, 0.25)).map(
    lambda pair: (pair[0], 3.5 + pair[0] * pair[1] / 3)
)


@given(OILS)
def test_the_line_passes_through_its_two_points(pair):
    assert viscosity(40, *pair) == pytest.approx(pair[0], rel=1e-6)
    assert viscosity(100, *pair) == pytest.approx(pair[1], rel=1e-6)


@given(OILS, st.floats(0.0, 150.0), st.floats(0.0, 150.0))
def test_hotter_oil_is_thinner(pair, one, other):
    cold, hot = sorted((one, other))
    assert viscosity(hot, *pair) <= viscosity(cold, *pair)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        ((0.0, 1e-4, AT_40, 1e-5, AT_100), "above absolute zero"),
        ((350.0, 1e-4, AT_40, 1e-5, AT_40), "both viscosities are at one temperature"),
        ((350.0, 1e-5, AT_40, 1e-4, AT_100), "does not fall as the temperature rises"),
        ((350.0, 1e-5, AT_40, 1e-7, AT_100), "a viscosity of 0.1 cSt"),
        ((150.0, 1e-4, AT_40, 1e-5, AT_100), "at -123.1 degC"),
        ((5000.0, 1e-4, AT_40, 1e-5, AT_100), "at 4727 degC"),
    ],
)
def test_viscosities_without_meaning(arguments, named):
    with pytest.raises(OutOfRange, match=named):
        oil.kinematic_viscosity(*arguments)


@pytest.mark.parametrize("case", [CASES["OIL-V05"], CASES["OIL-V06"]], ids=lambda case: case["id"])
def test_viscosity_index_of_the_standards_examples(case):
    index = oil.viscosity_index(case["inputs"]["nu40_cSt"] * CST, case["inputs"]["nu100_cSt"] * CST)
    expected = case["expected"]
    assert index == pytest.approx(expected["VI_unrounded"], rel=case["tolerance"])
    assert round(index) == expected["VI"]


def test_viscosity_index_of_very_thick_oils():
    case = CASES["OIL-V08"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        index = oil.viscosity_index(given_["nu40_cSt"] * CST, given_["nu100_cSt"] * CST)
        assert index == pytest.approx(expected["VI_unrounded"], rel=case["tolerance"])


@given(st.sampled_from([3.8, 4.4, 5, 6.4, 7, 7.7, 9, 12, 15, 18, 22, 28, 40, 55, 70]))
def test_viscosity_index_is_continuous_where_its_fits_meet(limit):
    """The fits meet within their own error: half an index point at both procedures."""
    at_40 = limit**1.75
    below, above = (oil.viscosity_index(at_40 * CST, y * CST) for y in (limit, limit * (1 + 1e-9)))
    assert above == pytest.approx(below, abs=0.5)


@pytest.mark.parametrize(
    ("at_40", "at_100", "named"),
    [(5.0, 1.9, "has 1.9 cSt"), (5.0, 6.0, "not below that at 40 degC")],
)
def test_viscosity_index_without_meaning(at_40, at_100, named):
    with pytest.raises(OutOfRange, match=named):
        oil.viscosity_index(at_40 * CST, at_100 * CST)


@pytest.mark.parametrize("density_15", [820.0, 880.0, 950.0])
@pytest.mark.parametrize("celsius", [-20.0, 60.0, 120.0])
def test_density_agrees_with_the_fahrenheit_form_of_the_standard(density_15, celsius):
    """API MPMS 11.1 as published: CTL = exp(-α₆₀ dT (1 + 0.8 α₆₀ dT)), α₆₀ = 0.34878/ρ₆₀ per °F."""
    density_60f = oil.density(density_15, (60.0 + 459.67) / 1.8)
    expansion, step = 0.34878 / density_60f, 1.8 * celsius + 32.0 - 60.0
    published = density_60f * exp(-expansion * step * (1.0 + 0.8 * expansion * step))
    assert oil.density(density_15, celsius + 273.15) == pytest.approx(published, rel=1 / 40_000)


def test_growth_from_15_to_110_degrees():
    """7.4 %: API MPMS 11.1 worked by hand for 880 kg/m3; a flat 0.0007/K would give 6.65 %."""
    assert oil.thermal_growth(880.0, 288.15, 383.15) == pytest.approx(0.074, abs=0.0005)


@given(st.floats(800.0, 1050.0), st.floats(250.0, 400.0))
def test_expansion_is_the_slope_of_the_density(density_15, kelvin):
    growth = oil.thermal_growth(density_15, kelvin - 0.01, kelvin + 0.01)
    assert oil.thermal_expansion(density_15, kelvin) == pytest.approx(growth / 0.02, rel=1e-4)


@given(st.floats(800.0, 1050.0), st.floats(250.0, 400.0), st.floats(250.0, 400.0))
def test_oil_shrinks_back_to_where_it_was(density_15, one, other):
    there = 1.0 + oil.thermal_growth(density_15, one, other)
    back = 1.0 + oil.thermal_growth(density_15, other, one)
    assert there * back == pytest.approx(1.0)


def test_oil_without_weight_has_no_density():
    with pytest.raises(OutOfRange, match="oil density"):
        oil.density(0.0, 300.0)


def test_dynamic_viscosity():
    """100 mm2/s at 0.9 g/cm3 is 90 mPa s: definition."""
    assert oil.dynamic_viscosity(100 * CST, 900.0) == pytest.approx(0.090)


def test_required_viscosity():
    case = CASES["OIL-L06"]
    expected = case["expected"]
    for speed, metric, imperial in zip(
        case["inputs"]["v_m_s"],
        expected["nu40_metric_form_cSt"],
        expected["nu40_cSt"],
        strict=True,
    ):
        computed = oil.required_viscosity_40(speed) / CST
        assert computed == pytest.approx(metric, rel=case["tolerance"])
        assert computed == pytest.approx(imperial, rel=case["tolerance"])


def test_gears_that_stand_still_want_no_viscosity():
    with pytest.raises(OutOfRange, match="stand still"):
        oil.required_viscosity_40(0.0)


def test_temperature_reserve():
    """Definition: 20 K from 90 up to 110 °C, none left above."""
    assert oil.temperature_reserve(383.15, 363.15) == pytest.approx(20.0)
    assert oil.temperature_reserve(383.15, 388.15) == pytest.approx(-5.0)


@given(st.floats(0.0, 120.0))
def test_viscosity_from_40_and_100_degrees_is_that_from_any_two_points(celsius):
    """ASTM D341 at the two temperatures that data sheets state."""
    at_40, at_100, temperature = 100e-6, 11.2e-6, celsius + 273.15
    assert oil.viscosity_at(temperature, at_40, at_100) == oil.kinematic_viscosity(
        temperature, at_40, 313.15, at_100, 373.15
    )
