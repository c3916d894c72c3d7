"""Reference cases of warmth on backlash and span, and of viscosity under pressure."""

from math import acos, asin, atan, cos, degrees, radians, sin, tan
from pathlib import Path

import pytest
import yaml

from checker.mechanics import backlash, film, housing

REFERENCE = Path(__file__).parents[1] / "reference" / "oil-heat.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
MM = 1e-3


def case_of(name):
    case = CASES[f"OIL-{name}"]
    return case["inputs"], case["expected"], case["tolerance"]


def test_aluminium_case_round_steel_gears():
    given_, expected, tolerance = case_of("M01")
    centre, warming = given_["centre_distance_mm"] * MM, given_["dT_housing_K"]
    assert housing.thermal_expansion("aluminium") == pytest.approx(given_["alpha_housing"])
    warm = backlash.centre_distance_at_temperature(centre, given_["alpha_housing"], warming, 0.0)
    assert warm - centre == pytest.approx(expected["relative_da_mm"] * MM, rel=tolerance)
    angle = radians(given_["pressure_angle_deg"])
    # any pair of base circles that reaches the centre distance at that angle
    base = 2 * centre * cos(angle)
    opened = backlash.normal_backlash_gained(
        base / 3, 2 * base / 3, angle, _working(base, warm), 0.0
    )
    assert opened == pytest.approx(expected["backlash_change_normal_mm"] * MM, rel=tolerance)


def test_helical_pair_gains_as_much_normal_backlash():
    given_, expected, tolerance = case_of("M04")
    normal, helix = radians(given_["normal_pressure_angle_deg"]), radians(given_["helix_deg"])
    transverse = degrees(atan(tan(normal) / cos(helix)))
    assert transverse == pytest.approx(expected["alpha_t_deg"], rel=tolerance)
    moved, centre = given_["relative_da_mm"] * MM, 150.0 * MM
    base = 2 * centre * cos(radians(transverse))
    base_helix = asin(sin(helix) * cos(normal))
    opened = backlash.normal_backlash_gained(
        base / 2, base / 2, radians(transverse), _working(base, centre + moved), base_helix
    )
    assert opened == pytest.approx(expected["normal_mm"] * MM, rel=0.005)  # exact against linear


def test_least_backlash_of_the_report():
    given_, expected, tolerance = case_of("M05")
    rows = zip(
        given_["centre_distance_mm"],
        given_["module_mm"],
        expected["jbn_min_formula_mm"],
        strict=True,
    )
    for centre, module, least in rows:
        found = backlash.recommended_normal_backlash(centre * MM, module * MM)
        assert found == pytest.approx(least * MM, rel=tolerance)


def test_span_grows_away_from_the_shaft():
    given_, expected, tolerance = case_of("M10")
    span = given_["span_mm"] * MM
    grown = backlash.centre_distance_at_temperature(
        span, given_["alpha_housing"], given_["dT_K"], 0.0
    )
    assert grown - span == pytest.approx(expected["relative_axial_mm"] * MM, rel=tolerance)


def test_pressure_viscosity_of_a_mineral_oil():
    given_, expected, tolerance = case_of("V18")
    for thick, correlated, table in zip(
        given_["eta_mPas"],
        expected["alpha_agma925_mineral_GPa_inv"],
        expected["alpha_table_GPa_inv"],
        strict=True,
    ):
        found = film.pressure_viscosity(thick * 1e-3, "mineral") * 1e9
        assert found == pytest.approx(correlated, rel=0.005)
        assert found == pytest.approx(table, rel=tolerance)


def _working(base_sum, centre):
    return acos(base_sum / (2 * centre))
