from pathlib import Path

import pytest
import yaml
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import air
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference"


def cases(file):
    text = (REFERENCE / file).read_text(encoding="utf-8")
    return {case["id"]: case for case in yaml.safe_load(text)["cases"]}


LOADS, OIL = cases("loads-air.yaml"), cases("oil.yaml")
ALTITUDES = st.floats(-2000.0, 11_000.0)


def test_printed_temperatures_and_sound_speeds():
    case = LOADS["PR-04"]
    expected = case["expected"]
    for altitude, kelvin, sound in zip(
        case["inputs"]["geometric_altitude_m"],
        expected["temperature_K"],
        expected["speed_of_sound_m_s"],
        strict=True,
    ):
        temperature = air.temperature(altitude, 0.0)
        assert temperature == pytest.approx(kelvin, rel=case["tolerance"])
        assert air.speed_of_sound(temperature) == pytest.approx(sound, rel=case["tolerance"])


def test_printed_densities():
    case = LOADS["PR-05"]
    for altitude, expected in zip(
        case["inputs"]["geometric_altitude_m"], case["expected"]["density_kg_m3"], strict=True
    ):
        density = air.density(air.pressure(altitude), air.temperature(altitude, 0.0))
        assert density == pytest.approx(expected, rel=case["tolerance"])


def test_pressures_and_temperatures_at_altitudes_in_feet():
    case = OIL["OIL-A14"]
    expected = case["expected"]
    for feet, kilopascal, kelvin in zip(
        case["inputs"]["altitude_ft"], expected["p_kPa"], expected["T_K"], strict=True
    ):
        altitude = 0.3048 * feet
        assert air.pressure(altitude) == pytest.approx(1000 * kilopascal, rel=case["tolerance"])
        assert air.temperature(altitude, 0.0) == pytest.approx(kelvin, rel=case["tolerance"])


@pytest.mark.parametrize("altitude", [-1500.0, 0.0, 1234.5, 3048.0, 7000.0, 11_000.0])
def test_agrees_with_the_fluids_library(altitude):
    standard = ATMOSPHERE_1976(altitude)
    temperature, pressure = air.temperature(altitude, 0.0), air.pressure(altitude)
    assert air.geopotential_altitude(altitude) == pytest.approx(standard.H, rel=1e-9)
    assert temperature == pytest.approx(standard.T, rel=1e-6)
    assert pressure == pytest.approx(standard.P, rel=1e-5)
    assert air.density(pressure, temperature) == pytest.approx(standard.rho, rel=1e-5)
    assert air.speed_of_sound(temperature) == pytest.approx(standard.v_sonic, rel=1e-5)
    assert air.dynamic_viscosity(temperature) == pytest.approx(standard.mu, rel=1e-5)


@given(st.floats(-1900.0, 10_900.0))
def test_pressure_carries_the_air_above(altitude):
    """Hydrostatics dp/dz = -ρ g(z), with gravity falling off as the standard has it."""
    step = 1.0
    slope = (air.pressure(altitude + step) - air.pressure(altitude - step)) / (2 * step)
    gravity = air.STANDARD_GRAVITY * (6_356_766.0 / (6_356_766.0 + altitude)) ** 2
    density = air.density(air.pressure(altitude), air.temperature(altitude, 0.0))
    assert slope == pytest.approx(-density * gravity, rel=1e-6)


@given(ALTITUDES, st.floats(-40.0, 40.0))
def test_a_deviation_shifts_the_temperature_alone(altitude, deviation):
    shifted = air.temperature(altitude, deviation)
    assert shifted == pytest.approx(air.temperature(altitude, 0.0) + deviation, abs=1e-9)


@pytest.mark.parametrize("altitude", [-2001.0, 11_001.0])
def test_outside_the_troposphere_there_is_no_air_to_speak_of(altitude):
    with pytest.raises(OutOfRange, match="an altitude of"):
        air.pressure(altitude)


@pytest.mark.parametrize("formula", [air.speed_of_sound, air.dynamic_viscosity])
def test_temperatures_are_absolute(formula):
    with pytest.raises(OutOfRange, match="not above absolute zero"):
        formula(0.0)
