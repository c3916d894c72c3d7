"""One gear against published tables and worked examples (tests/reference/gears.yaml)."""

from math import cos, degrees, pi, radians, sin, tan
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from checker.mechanics.equation import OutOfRange
from checker.mechanics.tooth import (
    base_diameter,
    base_helix_angle,
    curvature_radius_at_diameter,
    diameter_at_curvature_radius,
    helix_angle_at_diameter,
    in_modules,
    involute,
    normal_thickness_at_diameter,
    normal_tooth_thickness,
    pressure_angle_at_diameter,
    reference_diameter,
    tooth_thickness_at_diameter,
    transverse_base_pitch,
    transverse_module,
    transverse_pressure_angle,
    transverse_tooth_thickness,
)

INCH = 0.0254
MM = 1e-3
_FILE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}


def published(case_id, key):
    """The expected value of a case, with the case's own tolerance."""
    case = CASES[case_id]
    tolerance = case.get("tolerance_by_key", {}).get(key, case["tolerance"])
    return pytest.approx(case["expected"][key], rel=tolerance)


@pytest.mark.parametrize(
    ("case_id", "key", "angle"),
    [
        ("inv-20deg", "inv_rad", 20.0),  # Machinery's Handbook, involute tables
        ("inv-14p5-25-30", "inv_14p5_rad", 14.5),  # the same tables
        ("inv-14p5-25-30", "inv_25_rad", 25.0),
        ("inv-14p5-25-30", "inv_30_rad", 30.0),
    ],
)
def test_involute_function_against_handbook_tables(case_id, key, angle):
    assert involute(radians(angle)) == published(case_id, key)


def test_involute_is_the_integral_of_the_squared_tangent():
    # scipy: d(tan a - a)/da = tan² a
    assert involute(0.6) == pytest.approx(quad(lambda a: tan(a) ** 2, 0.0, 0.6)[0], rel=1e-12)


def test_involute_of_the_published_angle_over_pins():
    angle = CASES["over-pins-20T"]["expected"]["phi_deg"]
    assert involute(radians(angle)) == published("over-pins-20T", "inv_phi")


def test_spur_dimensions_of_shigley_13_4():
    module = INCH / 3.0
    alpha = radians(20.0)
    for teeth, key in ((21, "base_dia_1_in"), (28, "base_dia_2_in")):
        reference = reference_diameter(teeth, module, 0.0)
        assert base_diameter(reference, alpha) / INCH == published("spur-basic-21-28", key)
    pitch = transverse_base_pitch(module, alpha)
    assert pitch / INCH == published("spur-basic-21-28", "base_pitch_in")
    thickness = transverse_tooth_thickness(normal_tooth_thickness(module, alpha, 0.0, 0.0), 0.0)
    assert thickness / INCH == published("spur-basic-21-28", "tooth_thickness_in")


def test_helical_dimensions_of_shigley_13_2():
    psi, transverse = radians(25.0), INCH / 6.0
    normal = transverse * cos(psi)
    assert transverse_module(normal, psi) == pytest.approx(transverse)
    assert reference_diameter(18, normal, psi) / INCH == published("stock-helical-18T", "d_in")
    alpha_t = transverse_pressure_angle(radians(20.0), psi)
    assert degrees(alpha_t) == published("stock-helical-18T", "alpha_t_deg")
    assert pi * normal / INCH == published("stock-helical-18T", "pn_in")


def test_helical_dimensions_of_shigley_13_6():
    case, psi, alpha, module = "helical-17-34", radians(30.0), radians(20.0), INCH / 5.0
    assert reference_diameter(17, module, psi) / INCH == published(case, "d1_in")
    assert reference_diameter(34, module, psi) / INCH == published(case, "d2_in")
    alpha_t = transverse_pressure_angle(alpha, psi)
    assert degrees(alpha_t) == published(case, "alpha_t_deg")
    assert INCH / transverse_module(module, psi) == published(case, "Pt_per_in")
    # The normal base pitch is the transverse one seen along the base helix.
    base_pitch = transverse_base_pitch(transverse_module(module, psi), alpha_t)
    normal = base_pitch * cos(base_helix_angle(psi, alpha_t))
    assert normal / INCH == published(case, "pnb_in")


def test_helical_dimensions_of_jindal_26_1():
    case, beta, module = "jindal-26-1-overlap-width", radians(15.0), 4.0 * MM
    assert transverse_module(module, beta) / MM == published(case, "mt_mm")
    assert degrees(transverse_pressure_angle(radians(20.0), beta)) == published(case, "alpha_t_deg")
    for teeth, key in ((20, "da1_mm"), (50, "da2_mm")):
        reference = reference_diameter(teeth, module, beta)
        assert (reference + 2.0 * module) / MM == published(case, key)  # an addendum of one module


def test_helical_dimensions_of_mott_10_3():
    psi = radians(15.0)
    normal = INCH / 9.66 * cos(psi)
    assert reference_diameter(15, normal, psi) / INCH == published("mott-10-3-axial-pitch", "d1_in")
    alpha_t = transverse_pressure_angle(radians(20.0), psi)
    assert degrees(alpha_t) == published("mott-10-3-axial-pitch", "alpha_t_deg")


@pytest.mark.parametrize("beta", [0.0, 0.2, 0.5])
def test_base_helix_angle_agrees_with_its_other_form(beta):
    # sin β_b = sin β cos α_n: the other form of the same definition (from memory: ISO 21771)
    alpha_n = radians(20.0)
    angle = base_helix_angle(beta, transverse_pressure_angle(alpha_n, beta))
    assert sin(angle) == pytest.approx(sin(beta) * cos(alpha_n), rel=1e-14)


def test_thickness_with_profile_shift():
    # Elements of Metric Gear Technology, Table 10-1
    case = "chordal-thickness-spur-shifted"
    thickness = normal_tooth_thickness(10.0 * MM, radians(20.0), 0.3, 0.0)
    assert thickness / MM == published(case, "s_mm")
    half_angle = thickness / reference_diameter(12, 10.0 * MM, 0.0)
    assert degrees(half_angle) == published(case, "half_angle_deg")
    assert normal_tooth_thickness(10.0 * MM, radians(20.0), 0.3, 0.1 * MM) == pytest.approx(
        thickness - 0.1 * MM
    )


def test_tip_width_of_a_nearly_pointed_tooth():
    module, alpha = MM, radians(20.0)
    reference = reference_diameter(12, module, 0.0)
    base = base_diameter(reference, alpha)
    thickness = normal_tooth_thickness(module, alpha, 0.6, 0.0)
    width = tooth_thickness_at_diameter(thickness, reference, base, 15.2 * MM)
    assert width / MM == published("tip-width-12T-shift", "tip_width_mm")
    assert in_modules(width, module) == published("tip-width-12T-shift", "tip_width_mm")
    beyond_the_point = tooth_thickness_at_diameter(thickness, reference, base, 16.0 * MM)
    assert beyond_the_point < 0.0


def test_normal_thickness_at_a_diameter_is_seen_along_the_helix_there():
    # At the reference circle it must be the normal thickness that the transverse one came from.
    alpha_n, beta, module = radians(20.0), radians(18.0), 3.0 * MM
    reference = reference_diameter(27, module, beta)
    base = base_diameter(reference, transverse_pressure_angle(alpha_n, beta))
    normal = normal_tooth_thickness(module, alpha_n, 0.2, 0.05 * MM)
    transverse = transverse_tooth_thickness(normal, beta)
    there = tooth_thickness_at_diameter(transverse, reference, base, reference)
    helix = helix_angle_at_diameter(beta, reference, reference)
    assert normal_thickness_at_diameter(there, helix) == pytest.approx(normal, rel=1e-13)


@given(st.floats(min_value=0.02, max_value=0.4), st.floats(min_value=1.0, max_value=1.6))
@settings(max_examples=50)
def test_curvature_radius_and_diameter_undo_each_other(base, factor):
    diameter = base * factor
    radius = curvature_radius_at_diameter(base, diameter)
    assert diameter_at_curvature_radius(base, radius) == pytest.approx(diameter, rel=1e-12)
    # Pythagoras on the tangent to the base circle
    assert 4.0 * radius**2 == pytest.approx(diameter**2 - base**2, rel=1e-9, abs=1e-15)


@pytest.mark.parametrize("formula", [pressure_angle_at_diameter, curvature_radius_at_diameter])
def test_no_involute_inside_the_base_circle(formula):
    with pytest.raises(OutOfRange, match=r"^a diameter of .* mm lies inside the base circle"):
        formula(0.060, 0.0599)
