"""Rubber couplings: resonance factor, heat, stiffness from hot to cold, temperature."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import coupling, elastomer
from checker.mechanics.equation import OutOfRange
from checker.review.rulebook import shipped_rulebook

_REFERENCE = Path(__file__).parents[1] / "reference" / "torsion.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}


def test_resonance_factor():  # TV-16, DIN 740-2
    case = CASES["TV-16"]
    psi = case["inputs"]["relative_damping_psi"]
    found = [coupling.resonance_factor(r, psi) for r in case["inputs"]["frequency_ratio_r"]]
    assert found == pytest.approx(case["expected"]["amplification_V"], rel=case["tolerance"])


def test_all_dampings_cross_at_root_two():  # TV-17; the case rounds √2 to six figures
    case = CASES["TV-17"]
    for psi, expected in zip(
        case["inputs"]["relative_damping_psi"],
        case["expected"]["amplification_V"],
        strict=True,
    ):
        exact = coupling.resonance_factor(2**0.5, psi)
        assert exact == pytest.approx(expected, rel=case["tolerance"])


def test_at_resonance():  # TV-18
    case = CASES["TV-18"]
    found = coupling.resonance_factor(1.0, case["inputs"]["relative_damping_psi"])
    assert found == pytest.approx(case["expected"]["V_at_resonance_exact"], rel=case["tolerance"])
    with pytest.raises(OutOfRange, match="damping"):
        coupling.resonance_factor(1.0, 0.0)


def test_heat_of_one_order():  # CP-01, energy balance
    case = CASES["CP-01"]
    given_, expected = case["inputs"], case["expected"]
    psi, frequency = given_["relative_damping_psi"], given_["frequency_Hz"]
    torque, stiffness = (
        given_["elastic_torque_amplitude_Nm"],
        given_["dynamic_stiffness_Nm_rad"],
    )
    close = {"rel": case["tolerance"]}
    heat = coupling.heat(psi, frequency, torque, stiffness)
    assert heat == pytest.approx(expected["dissipated_power_W"], **close)
    elastic = coupling.elastic_torque(torque, psi)
    heat = coupling.heat(psi, frequency, elastic, stiffness)
    assert heat == pytest.approx(expected["same_if_60Nm_is_total_torque_W"], **close)


def test_scatter_is_that_of_the_catalogue():  # CP-03
    expected = CASES["CP-03"]["expected"]
    assert coupling.softest(100.0) == pytest.approx(
        100 * (1 - expected["dynamic_stiffness_tolerance"])
    )
    assert coupling.stiffest(100.0) == pytest.approx(
        100 * (1 + expected["dynamic_stiffness_tolerance"])
    )


def test_hot_rubber_is_that_of_the_softest_grade():  # CP-05
    expected = CASES["CP-05"]["expected"]
    assert min(expected["stiffness_factor_at_100C"]) == coupling.HOT_OVER_COLD_STIFFNESS
    cold, hot = expected["dynamic_magnifier_at_30C"], expected["dynamic_magnifier_at_100C"]
    least = min(one / other for one, other in zip(cold, hot, strict=True))
    assert least == pytest.approx(coupling.HOT_OVER_COLD_DAMPING)
    assert coupling.stiffness_at(100.0, 0.37) == pytest.approx(37.0)
    assert coupling.hot_damping(1.0, 0.58) == pytest.approx(0.58)
    assert coupling.least_damping(1.0) == pytest.approx(0.8)


def test_elastomers_bear_what_the_sources_say():  # CP-06 and CP-07
    found = [elastomer.highest_temperature(name) - 273.15 for name in ("HNBR", "NBR")]
    expected = CASES["CP-06"]["expected"]["service_temperature_C"]
    assert found == pytest.approx([high for _, high in expected])
    rubber = elastomer.highest_temperature("natural rubber") - 273.15
    assert rubber == pytest.approx(CASES["CP-07"]["expected"]["max_listed_temperature_C"])
    assert shipped_rulebook().rule("damper.elastomer-temperature") is not None


@given(st.floats(250.0, 320.0), st.floats(0.0, 300.0), st.floats(50.0, 400.0))
@settings(max_examples=30, deadline=None)
def test_rated_heat_in_rated_air_gives_the_limit(air, heat, rating):
    at_rating = coupling.elastomer_temperature(313.15, 393.15, 313.15, rating, rating)
    assert at_rating == pytest.approx(393.15)
    found = coupling.elastomer_temperature(air, 393.15, 313.15, heat, rating)
    assert found >= air
    with pytest.raises(OutOfRange, match="heat_rating"):
        coupling.elastomer_temperature(air, 300.0, 313.15, heat, rating)
