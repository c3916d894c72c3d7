from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics.oil import CENTISTOKES
from checker.mechanics.oil_grades import (
    ENGINE_GRADES,
    ENGINE_WINTER_GRADES,
    GEAR_GRADES,
    GEAR_WINTER_GRADES,
    engine_oil_grades,
    gear_oil_grade,
    high_shear_viscosity,
    iso_viscosity_grade,
)

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}


def test_iso_grades():
    case = CASES["OIL-V09"]
    grades = [iso_viscosity_grade(nu * CENTISTOKES) for nu in case["inputs"]["nu40_cSt"]]
    assert [grade or "none" for grade in grades] == case["expected"]["grade"]


def test_engine_grades_with_their_high_shear_limit():
    case = CASES["OIL-V10"]
    for given_, expected in zip(case["inputs"], case["expected"], strict=True):
        (grade,) = engine_oil_grades(given_["nu100_cSt"] * CENTISTOKES)
        limit = high_shear_viscosity(grade, given_["w_grade"])
        assert grade == expected["hot_grade"]
        assert (given_["HTHS_mPas"] / 1000 >= limit) == expected["meets"]


@pytest.mark.parametrize(
    ("centistokes", "grades"),
    # OIL-V10 and V12, source: SAE J300, January 2015, table 1; the thin bands overlap.
    [(3.9, ()), (4.0, ("8",)), (5.5, ("8", "12")), (7.0, ("12", "16", "20")), (26.1, ())],
)
def test_thin_engine_grades_overlap(centistokes, grades):
    assert engine_oil_grades(centistokes * CENTISTOKES) == grades


@pytest.mark.parametrize(
    ("grade", "winter_grade", "milli"),
    # SAE J300, January 2015, table 1 (public reproduction).
    [("8", "", 1.7), ("16", "0W", 2.3), ("30", "5W", 2.9), ("40", "", 3.7), ("60", "25W", 3.7)],
)
def test_high_shear_limits(grade, winter_grade, milli):
    assert high_shear_viscosity(grade, winter_grade) == pytest.approx(milli / 1000)


def test_cold_limits_of_engine_oils():
    case = CASES["OIL-V12"]
    expected = case["expected"]
    for index, name in enumerate(case["inputs"]["w_grade"]):
        grade = ENGINE_WINTER_GRADES[name]
        assert 1000 * grade.cranking_viscosity == expected["cranking_mPas_max"][index]
        assert grade.cranking_temperature == expected["cranking_t_C"][index] + 273.15
        assert 1000 * grade.pumping_viscosity == expected["pumping_mPas_max"][index]
        assert grade.pumping_temperature == expected["pumping_t_C"][index] + 273.15
        assert grade.viscosity_100 == expected["nu100_min_cSt"][index] * CENTISTOKES


def test_gear_grades():
    case = CASES["OIL-V13"]
    grades = [gear_oil_grade(nu * CENTISTOKES) for nu in case["inputs"]["nu100_cSt"]]
    assert grades == case["expected"]["grade"]


def test_gear_grades_are_those_since_2005():
    case = CASES["OIL-V14"]
    grade = gear_oil_grade(case["inputs"]["nu100_cSt"] * CENTISTOKES)
    assert grade == case["expected"]["grade_2005_on"]


@pytest.mark.parametrize(
    ("name", "celsius", "centistokes"),
    # SAE J306, February 2019 (OIL-V13, note, and its table of lowest viscosities).
    [("70W", -55, 3.8), ("75W", -40, 3.8), ("80W", -26, 8.5), ("85W", -12, 11.0)],
)
def test_cold_limits_of_gear_oils(name, celsius, centistokes):
    grade = GEAR_WINTER_GRADES[name]
    assert grade.temperature == pytest.approx(celsius + 273.15)
    assert grade.viscosity_100 == pytest.approx(centistokes * CENTISTOKES)


def test_a_gear_90_is_an_engine_40_to_50():
    case = CASES["OIL-V15"]
    gear_low, gear_high = GEAR_GRADES["90"]
    for grade, expected in case["expected"]["overlap_cSt_100C"].items():
        low, high = ENGINE_GRADES[grade]
        assert [max(low, gear_low), min(high, gear_high)] == expected


@given(st.floats(3.8, 60.0))
def test_gear_grades_leave_no_gap(centistokes):
    assert gear_oil_grade(centistokes * CENTISTOKES) in GEAR_GRADES


def test_thinner_than_the_thinnest_gear_grade():
    assert gear_oil_grade(3.7 * CENTISTOKES) is None
