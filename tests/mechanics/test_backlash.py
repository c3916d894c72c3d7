"""Clearances of a pair: a handbook pair, and two routes to the same backlash."""

from math import ceil, cos, radians, tan
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.mechanics.backlash import (
    backlash_sum,
    centre_distance_at_temperature,
    circular_backlash,
    normal_backlash,
    normal_backlash_gained,
    recommended_normal_backlash,
    tip_clearance,
)
from checker.mechanics.involute import (
    reference_centre_distance,
    working_pitch_diameter,
    working_pressure_angle,
)
from checker.mechanics.rack import generating_profile_shift
from checker.mechanics.tooth import (
    base_diameter,
    base_helix_angle,
    involute,
    normal_tooth_thickness,
    reference_diameter,
    tooth_thickness_at_diameter,
    transverse_pressure_angle,
    transverse_tooth_thickness,
)

MM = 1e-3
ALPHA_N = radians(20.0)
_FILE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}


def thickness_at_work(teeth, mate, module, beta, shift, reduction, centre):
    """Transverse thickness of a gear's teeth at its working circle."""
    reference = reference_diameter(teeth, module, beta)
    normal = normal_tooth_thickness(module, ALPHA_N, shift, reduction)
    return tooth_thickness_at_diameter(
        transverse_tooth_thickness(normal, beta),
        reference,
        base_diameter(reference, transverse_pressure_angle(ALPHA_N, beta)),
        working_pitch_diameter(teeth, mate, centre),
    )


def backlash_from_thicknesses(z1, z2, module, beta, shifts, reductions, centre):
    """Circular backlash of a pair by the tooth thicknesses."""
    return circular_backlash(
        working_pitch_diameter(z1, z2, centre),
        z1,
        thickness_at_work(z1, z2, module, beta, shifts[0], reductions[0], centre),
        thickness_at_work(z2, z1, module, beta, shifts[1], reductions[1], centre),
    )


def test_shifted_pair_meets_without_backlash_and_with_the_clearance_of_the_rack():
    # Elements of Metric Gear Technology; diameters printed to 0.01 mm, the centre distance to
    # 0.0001 mm; clearance of the rack 0.25 modules
    case = CASES["profile-shift-12-24"]["expected"]
    centre = case["centre_mm"] * MM
    backlash = backlash_from_thicknesses(12, 24, 3.0 * MM, 0.0, (0.6, 0.36), (0.0, 0.0), centre)
    assert backlash == pytest.approx(0.0, abs=5e-5 * MM)
    for tip, root in (("da1_mm", "df2_mm"), ("da2_mm", "df1_mm")):
        clearance = tip_clearance(centre, case[tip] * MM, case[root] * MM)
        assert clearance == pytest.approx(0.75 * MM, abs=0.006 * MM)


def test_backlash_of_standard_teeth_is_what_was_taken_off_them():
    # By hand: at the reference centre distance of a spur pair the pitch is two full thicknesses.
    centre = reference_centre_distance(3.0 * MM, 27, 62, 0.0)
    reductions = (0.05 * MM, 0.08 * MM)
    backlash = backlash_from_thicknesses(27, 62, 3.0 * MM, 0.0, (0.0, 0.0), reductions, centre)
    assert backlash == pytest.approx(0.13 * MM, rel=1e-9)
    assert normal_backlash(backlash, ALPHA_N, 0.0) == pytest.approx(0.13 * MM * cos(ALPHA_N))


def test_too_close_centres_jam():
    centre = reference_centre_distance(3.0 * MM, 27, 62, 0.0) - 0.1 * MM
    backlash = backlash_from_thicknesses(27, 62, 3.0 * MM, 0.0, (0.0, 0.0), (0.0, 0.0), centre)
    assert backlash < 0.0


@given(
    z1=st.integers(min_value=17, max_value=40),
    z2=st.integers(min_value=17, max_value=90),
    beta=st.floats(min_value=0.0, max_value=0.5),
    shifts=st.tuples(*[st.floats(min_value=-0.1, max_value=0.5)] * 2),
    reductions=st.tuples(*[st.floats(min_value=0.0, max_value=1e-4)] * 2),
    growth=st.floats(min_value=-1e-4, max_value=3e-4),
)
@settings(max_examples=100)
def test_backlash_from_thicknesses_and_from_centres_agree(z1, z2, beta, shifts, reductions, growth):
    module = 3.0 * MM
    alpha_t = transverse_pressure_angle(ALPHA_N, beta)
    beta_b = base_helix_angle(beta, alpha_t)
    reference = reference_centre_distance(module, z1, z2, beta)
    generating = [
        generating_profile_shift(shift, reduction, module, ALPHA_N)
        for shift, reduction in zip(shifts, reductions, strict=True)
    ]
    # no backlash where inv α_w = inv α_t + 2 tan α_n (x1 + x2)/(z1 + z2)
    there = involute(alpha_t) + 2.0 * tan(ALPHA_N) * sum(generating) / (z1 + z2)
    closed = brentq(lambda angle: involute(angle) - there, 0.0, 1.5, xtol=1e-16)
    centre = reference * cos(alpha_t) / cos(closed) + growth
    alpha_wt = working_pressure_angle(reference, alpha_t, centre)
    circular = backlash_from_thicknesses(z1, z2, module, beta, shifts, reductions, centre)
    bases = [base_diameter(reference_diameter(z, module, beta), alpha_t) for z in (z1, z2)]
    gained = normal_backlash_gained(*bases, closed, alpha_wt, beta_b)
    assert normal_backlash(circular, alpha_wt, beta_b) == pytest.approx(gained, abs=1e-13)
    # A step in between changes nothing: backlash measured at one centre carries to another.
    halfway = (closed + alpha_wt) / 2.0
    parts = normal_backlash_gained(*bases, closed, halfway, beta_b) + normal_backlash_gained(
        *bases, halfway, alpha_wt, beta_b
    )
    assert parts == pytest.approx(gained, abs=1e-15)


@pytest.mark.parametrize(
    ("module", "centre", "printed"),
    [
        # ISO/TR 10064-2:1996, table of recommended least backlash in mm (from memory); it prints
        # hundredths, rounded up.
        (1.5, 50, 0.09),
        (1.5, 100, 0.11),
        (2, 50, 0.10),
        (2, 100, 0.12),
        (3, 50, 0.12),
        (3, 100, 0.14),
        (3, 200, 0.17),
        (3, 400, 0.24),
        (5, 100, 0.18),
        (5, 200, 0.21),
        (5, 400, 0.28),
    ],
)
def test_recommended_backlash_after_its_table(module, centre, printed):
    least = recommended_normal_backlash(centre * MM, module * MM)
    assert ceil(least / MM * 100.0 - 1e-9) / 100.0 == pytest.approx(printed)


def test_a_light_case_draws_the_shafts_together_in_the_cold():
    """By hand: 126 mm x 11.5e-6 x 40 K = 0.058 mm, and an iron case opens a little."""
    cold = centre_distance_at_temperature(126 * MM, 23.0e-6, 253.15, 293.15)
    assert 126 * MM - cold == pytest.approx(0.05796 * MM, rel=1e-3)
    assert centre_distance_at_temperature(126 * MM, 10.5e-6, 253.15, 293.15) > 126 * MM


def test_backlash_adds_up():
    assert backlash_sum(0.1 * MM, -0.04 * MM) == pytest.approx(0.06 * MM)
