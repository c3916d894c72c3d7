"""Propeller: tip speed, inertia, where vibration evidence is asked for."""

from pathlib import Path

import pytest
import yaml

from checker.known import Unknown

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}


def ask(design, name, point=None):
    propeller = design.subjects.the("propeller")
    return design.measure(name, propeller, design.subjects.the("point", point) if point else None)


def cruise_of(case):
    given = case["inputs"]
    return {
        "propeller.diameter": f"{given['diameter_m']} m",
        "operation.4.engine_speed": f"{given['propeller_speed_rpm'] * 67 / 27} rpm",
        "operation.4.airspeed": f"{given['true_airspeed_m_s']} m/s",
        "operation.4.altitude": f"{given['altitude_m']} m",
    }


def test_tip_mach_on_the_standard_day(solve):  # PR-06
    case = CASES["PR-06"]
    design = solve({**cruise_of(case), "operation.4.air_temperature": None})
    mach = ask(design, "helical_tip_mach", "cruise")
    assert mach.number == pytest.approx(case["expected"]["helical_tip_mach"], rel=case["tolerance"])
    assert any("standard day" in str(leaf.origin) for leaf in mach.leaves())


def test_stated_air_goes_before_the_standard_day(solve):  # PR-06, 281.65 K at 1000 m by PR-04
    case = CASES["PR-06"]
    design = solve({**cruise_of(case), "operation.4.air_temperature": "281.65 K"})
    mach = ask(design, "helical_tip_mach", "cruise")
    assert mach.number == pytest.approx(case["expected"]["helical_tip_mach"], rel=case["tolerance"])
    assert not any("standard day" in str(leaf.origin) for leaf in mach.leaves())


def test_without_air_and_altitude_the_air_is_asked_for(solve):
    design = solve({"operation.4.air_temperature": None, "operation.4.altitude": None})
    mach = ask(design, "helical_tip_mach", "cruise")
    assert isinstance(mach, Unknown)
    assert mach.missing == (("operation", 4, "air_temperature"),)


@pytest.mark.parametrize(("air", "temperature"), [("-20 degC", 253.15), ("35 degC", 308.15)])
def test_power_coefficient_in_the_stated_air(solve, air, temperature):
    # By hand: P / (ρ n³ D⁵) of one of three blades, 60 kW at 6000 rpm, ρ of 101325 Pa at sea level.
    design = solve({"operation.2.air_temperature": air})
    found = ask(design, "power_coefficient_of_blade", "take-off").number
    density = 101325.0 / (287.05287 * temperature)
    turns = 6000.0 / 60.0 * 27 / 67
    assert found == pytest.approx(60e3 / (density * turns**3 * 1.75**5) / 3, rel=1e-9)


def test_power_coefficient_on_the_standard_day_where_no_air_is_stated(solve):
    design = solve({"operation.2.air_temperature": None})
    found = ask(design, "power_coefficient_of_blade", "take-off")
    turns = 6000.0 / 60.0 * 27 / 67
    assert found.number == pytest.approx(60e3 / (1.225 * turns**3 * 1.75**5) / 3, rel=1e-4)
    assert any("standard day" in str(leaf.origin) for leaf in found.leaves())


def test_inertia_of_the_rod_is_the_upper_bound(solve):  # GY-09
    case = CASES["GY-09"]
    given, expected = case["inputs"], case["expected"]
    design = solve(
        {
            "propeller.mass": f"{given['propeller_mass_kg']} kg",
            "propeller.diameter": f"{given['diameter_m']} m",
            "propeller.inertia": f"{expected['rod_model_inertia_kgm2']} kg m2",
        }
    )
    assert ask(design, "inertia_over_rod").number == pytest.approx(1.0, rel=case["tolerance"])


def test_who_needs_vibration_evidence(solve):  # RG-02: 14 CFR 23.907 and 35.37
    case = CASES["RG-02"]
    blades = [
        {"propeller.material": "wood", "propeller.pitch": "fixed"},
        {"propeller.material": "metal"},
        {"propeller.material": "composite"},
    ]
    needed = [not ask(solve(changes), "is_fixed_wood").value for changes in blades]
    assert needed == case["expected"]["vibration_stress_evidence_required"]


@pytest.mark.parametrize(
    ("changes", "missing"),
    [
        ({"material": "wood", "pitch": "unknown"}, "pitch"),
        ({"material": "unknown", "pitch": "fixed"}, "material"),
    ],
)
def test_a_propeller_half_described_is_not_excepted(solve, changes, missing):
    design = solve({f"propeller.{field}": value for field, value in changes.items()})
    excepted = ask(design, "is_fixed_wood")
    assert isinstance(excepted, Unknown)
    assert excepted.missing == (("propeller", missing),)
