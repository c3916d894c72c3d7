"""A pair in mesh against worked examples, and against two involutes stepped through mesh."""

from dataclasses import dataclass, replace
from math import ceil, degrees, pi, radians, sin, sqrt, tan
from pathlib import Path

import numpy as np
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.mechanics.equation import OutOfRange
from checker.mechanics.involute import (
    addendum_path,
    face_width_ratio,
    form_clearance,
    hunting_common_factor,
    interference_reach,
    overlap_ratio,
    pitch_line_velocity,
    reference_centre_distance,
    start_of_active_profile,
    total_contact_ratio,
    transverse_contact_ratio,
    working_pitch_diameter,
    working_pressure_angle,
)
from checker.mechanics.rack import root_form_diameter
from checker.mechanics.tooth import (
    base_diameter,
    involute,
    reference_diameter,
    transverse_base_pitch,
    transverse_module,
    transverse_pressure_angle,
)

INCH = 0.0254
MM = 1e-3
RPM = pi / 30.0
_FILE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}


def published(case_id, key):
    """The expected value of a case, with the case's own tolerance."""
    case = CASES[case_id]
    tolerance = case.get("tolerance_by_key", {}).get(key, case["tolerance"])
    return pytest.approx(case["expected"][key], rel=tolerance)


@dataclass(frozen=True)
class Pair:
    """Two gears in mesh, as the formulas want them."""

    teeth: tuple[int, int]
    bases: tuple[float, float]
    tips: tuple[float, float]
    starts: tuple[float, float]
    centre: float
    alpha_wt: float
    base_pitch: float

    @classmethod
    def of(cls, z1, z2, module, alpha_n, *, addendum=None, tips=None, beta=0.0, centre=None):
        alpha_t = transverse_pressure_angle(alpha_n, beta)
        references = [reference_diameter(z, module, beta) for z in (z1, z2)]
        bases = tuple(base_diameter(d, alpha_t) for d in references)
        if tips is None:
            height = 1.0 if addendum is None else addendum / module
            tips = [d + 2.0 * module * height for d in references]
        reference_centre = reference_centre_distance(module, z1, z2, beta)
        centre = centre or reference_centre
        return cls(
            (z1, z2),
            bases,
            tuple(tips),
            bases,
            centre,
            working_pressure_angle(reference_centre, alpha_t, centre),
            transverse_base_pitch(transverse_module(module, beta), alpha_t),
        )

    def path(self, gear):
        mate = 1 - gear
        return addendum_path(
            self.tips[gear],
            self.bases[gear],
            self.starts[mate],
            self.bases[mate],
            self.centre,
            self.alpha_wt,
        )

    @property
    def contact_ratio(self):
        return transverse_contact_ratio(self.path(0), self.path(1), self.base_pitch)

    def reach(self, gear):
        """How much of the line of action the tip of a gear uses."""
        return interference_reach(self.tips[gear], self.bases[gear], self.centre, self.alpha_wt)

    @property
    def contact_ratio_of_tips_alone(self):
        """The formula in common use, which ignores where the involutes end."""
        reaches = self.reach(0) + self.reach(1) - 1.0
        return reaches * self.centre * sin(self.alpha_wt) / self.base_pitch


def stepped_contact_ratio(pair, steps_per_pitch=400):
    """Contact ratio, and the deepest overlap, from stepping two involute flanks through mesh.

    Both flanks are drawn point by point from where they start to where they end, the first is
    turned in small steps and the second by the tooth ratio. At each step the gap between them is
    found as a function of the radius on the first. The flanks touch where the gap comes down to
    nothing and opens again inside the common stretch: a corner in touch is no rolling contact.
    """
    (z1, z2), alpha_wt = pair.teeth, pair.alpha_wt

    def polar(radius, base):
        angle = np.arccos(np.clip(base / (2.0 * radius), None, 1.0))
        return tan(alpha_wt) - alpha_wt - (np.tan(angle) - angle)

    # Drawn in equal steps of the unwound thread: equal steps of radius are too coarse at the base.
    ends = [sqrt(end**2 - pair.bases[0] ** 2) for end in (pair.starts[0], pair.tips[0])]
    radius = np.hypot(pair.bases[0], np.linspace(*ends, 4001)) / 2.0
    flank = polar(radius, pair.bases[0])
    reach_of_two = pair.centre * sin(alpha_wt) / (pair.bases[0] / 2.0)  # widest possible turn
    pitch_angle = 2.0 * pi / z1
    count, deepest = 0, 0.0
    turns = np.arange(-reach_of_two, reach_of_two, pitch_angle / steps_per_pitch)
    for turn in turns:
        x, y = radius * np.cos(flank + turn), radius * np.sin(flank + turn)
        from_mate = np.hypot(pair.centre - x, y)
        common = (from_mate >= pair.starts[1] / 2.0) & (from_mate <= pair.tips[1] / 2.0)
        if common.sum() < 5:
            continue
        mate_flank = polar(from_mate, pair.bases[1]) - turn * z1 / z2
        gap = (from_mate * (np.arctan2(-y, pair.centre - x) - mate_flank))[common]
        low = gap[1:-1]
        touching = (low <= gap[:-2]) & (low <= gap[2:]) & (np.abs(low) < 1e-8 * pair.centre)
        count += bool(touching.any())
        deepest = min(deepest, gap.min())
    return count / steps_per_pitch, deepest


PUBLISHED_PAIRS = [
    # case, key, teeth, module, pressure angle, addendum
    ("khurmi-12-3", "eps_alpha", 30, 80, 12.0 * MM, 20.0, 10.0 * MM),
    ("khurmi-12-4-and-5", "eps_alpha", 20, 40, 5.0 * MM, 20.0, 5.0 * MM),
    ("bevan-28-45", "eps_14p5", 28, 45, 1.0 * MM, 14.5, 1.0 * MM),
    ("bevan-28-45", "eps_20", 28, 45, 1.0 * MM, 20.0, 1.0 * MM),
    ("sarkar-48-30", "eps_alpha", 30, 48, 5.0 * MM, 20.0, 5.0 * MM),
    ("shigley-21-28-drawn", "eps_alpha_exact", 21, 28, INCH / 3.0, 20.0, 0.33333 * INCH),
    ("norton-19-37", "eps_alpha", 19, 37, INCH / 6.0, 20.0, 0.166667 * INCH),
    ("nasa-28T-test-gear", "eps_alpha", 28, 28, INCH / 8.0, 20.0, 0.125 * INCH),
]


@pytest.mark.parametrize(
    ("case_id", "key", "z1", "z2", "module", "alpha", "addendum"), PUBLISHED_PAIRS
)
def test_contact_ratio_of_published_pairs(case_id, key, z1, z2, module, alpha, addendum):
    pair = Pair.of(z1, z2, module, radians(alpha), addendum=addendum)
    assert pair.contact_ratio == published(case_id, key)


@pytest.mark.parametrize(
    ("z1", "z2", "options"),
    [
        (30, 80, {"addendum": 10.0 / 12.0 * MM}),
        (19, 37, {}),
        (19, 37, {"centre": 28.0 * MM * 1.02}),
        (21, 49, {"beta": radians(20.0)}),
        (12, 36, {}),  # interference from here on
        (10, 40, {}),
        (13, 17, {}),
    ],
)
def test_contact_ratio_against_flanks_stepped_through_mesh(z1, z2, options):
    pair = Pair.of(z1, z2, MM, radians(20.0), **options)
    stepped, deepest = stepped_contact_ratio(pair)
    assert pair.contact_ratio == pytest.approx(stepped, abs=1.01 / 400)
    # The flanks overlap exactly where a tip uses more than the line of action. The drawing is good
    # to about 1e-18 m; the slightest of these overlaps (13/17) is 1.6e-12 m.
    assert (deepest < -1e-14) == (max(pair.reach(0), pair.reach(1)) > 1.0)


def test_contact_ends_at_the_tangent_point():
    # gears-notes.md: 12/36 full-depth teeth, 20 degrees: 1.556 by the tip circles, 1.405 real
    pair = Pair.of(12, 36, MM, radians(20.0))
    assert pair.contact_ratio_of_tips_alone == pytest.approx(1.556, abs=5e-4)
    assert pair.contact_ratio == pytest.approx(1.405, abs=5e-4)


def test_contact_ends_at_the_fillet_of_an_undercut_pinion():
    pair = Pair.of(12, 36, MM, radians(20.0))
    form = root_form_diameter(12.0 * MM, MM, radians(20.0), 0.0, 1.25, 0.38, 0.0)
    undercut = replace(pair, starts=(form, pair.starts[1]))
    stepped, _ = stepped_contact_ratio(undercut)
    assert undercut.contact_ratio == pytest.approx(stepped, abs=1.01 / 400)
    assert undercut.contact_ratio < pair.contact_ratio - 0.1


@given(
    z1=st.integers(min_value=18, max_value=40),
    z2=st.integers(min_value=18, max_value=90),
    spread=st.floats(min_value=0.0, max_value=0.02),
    scale=st.floats(min_value=0.1, max_value=10.0),
)
@settings(max_examples=60)
def test_laws_of_the_contact_ratio(z1, z2, spread, scale):
    def pair(teeth, module, factor):
        centre = reference_centre_distance(module, *teeth, 0.0) * factor
        return Pair.of(*teeth, module, radians(20.0), centre=centre)

    here = pair((z1, z2), MM, 1.0 + spread).contact_ratio
    assert pair((z2, z1), MM, 1.0 + spread).contact_ratio == pytest.approx(here, rel=1e-12)
    assert pair((z1, z2), scale * MM, 1.0 + spread).contact_ratio == pytest.approx(here, rel=1e-12)
    assert pair((z1, z2), MM, 1.001 + spread).contact_ratio < here


def test_path_and_sliding_of_khurmi():
    pair = Pair.of(30, 80, 12.0 * MM, radians(20.0), addendum=10.0 * MM)
    path = pair.path(0) + pair.path(1)
    assert path / MM == published("khurmi-12-3", "path_mm")
    case = "khurmi-12-4-and-5"
    pair = Pair.of(20, 40, 5.0 * MM, radians(20.0))
    assert pair.contact_ratio * 360.0 / 20.0 == published(case, "pinion_angle_deg")
    # The pinion drives: contact starts at the gear's tip and ends at the pinion's. Sliding is the
    # sum of both angular speeds times the distance from the pitch point.
    for gear, key in ((1, "slide_at_start_mm_s"), (0, "slide_at_end_mm_s")):
        slide = pair.path(gear) * (2000.0 + 1000.0) * RPM
        assert slide / MM == published(case, key)


@pytest.mark.parametrize("pinion", [13, 14, 15, 16, 17])
def test_interference_table_at_20_degrees(pinion):
    # Shigley, table after Eq. 13-12: the largest gear that each pinion takes
    largest = CASES["interference-table-20"]["expected"][f"gear_max_{pinion}"]
    assert Pair.of(pinion, largest, MM, radians(20.0)).reach(1) <= 1.0
    assert Pair.of(pinion, largest + 1, MM, radians(20.0)).reach(1) > 1.0


@pytest.mark.parametrize(
    ("case_id", "key", "ratio"),
    [
        ("smallest-pinion-13-8", "np_equal", 1.0),
        ("smallest-pinion-13-8", "np_2p5", 2.5),
        ("smallest-pinion-ratio-4", "np", 4.0),
    ],
)
def test_smallest_pinion_without_interference(case_id, key, ratio):
    def reach_to_spare(teeth):
        return Pair.of(teeth, ratio * teeth, MM, radians(20.0)).reach(1) - 1.0

    limit = brentq(reach_to_spare, 8.0, 20.0)
    assert limit == published(case_id, key)
    assert ceil(limit) == CASES[case_id]["expected"][f"{key}_int"]


def test_active_profile_starts_where_the_tip_of_the_mate_reaches():
    # By hand in the triangle of centres: contact at the gear's tip lies on both circles.
    pair = Pair.of(20, 40, 5.0 * MM, radians(20.0))
    start = start_of_active_profile(
        pair.bases[0], pair.tips[1], pair.bases[1], pair.centre, pair.alpha_wt
    )
    along = pair.path(1)  # from the pitch point towards the pinion's tangent point
    x = 50.0 * MM - along * sin(radians(20.0))
    y = along * sqrt(1.0 - sin(radians(20.0)) ** 2)
    assert start == pytest.approx(2.0 * np.hypot(x, y), rel=1e-12)
    assert form_clearance(start, start - 0.2 * MM) == pytest.approx(0.1 * MM)


def test_active_profile_starts_at_the_base_circle_with_interference():
    pair = Pair.of(12, 36, MM, radians(20.0))
    start = start_of_active_profile(
        pair.bases[0], pair.tips[1], pair.bases[1], pair.centre, pair.alpha_wt
    )
    assert start == pair.bases[0]
    form = root_form_diameter(12.0 * MM, MM, radians(20.0), 0.0, 1.25, 0.38, 0.0)
    assert form_clearance(start, form) < 0.0


def test_working_angle_of_shigley_13_1():
    case, module = "shigley-13-1-wider-centre", INCH / 2.0
    reference = reference_centre_distance(module, 16, 40, 0.0)
    assert reference / INCH == published(case, "centre_in")
    centre = 14.25 * INCH
    alpha_w = working_pressure_angle(reference, radians(20.0), centre)
    assert degrees(alpha_w) == published(case, "alpha_w_deg")
    assert working_pitch_diameter(16, 40, centre) / INCH == published(case, "d1_new_in")
    assert working_pitch_diameter(40, 16, centre) / INCH == published(case, "d2_new_in")


def test_centre_distance_up_two_per_cent():
    reference = reference_centre_distance(INCH / 6.0, 19, 37, 0.0)
    alpha_w = working_pressure_angle(reference, radians(20.0), 1.02 * reference)
    assert degrees(alpha_w) == published("norton-2pct-centre", "alpha_w_deg")
    # Note of the case: the contact ratio falls from 1.621 to 1.102.
    pair = Pair.of(19, 37, INCH / 6.0, radians(20.0), centre=1.02 * reference)
    assert pair.contact_ratio == pytest.approx(1.102, abs=5e-4)


@pytest.mark.parametrize(
    ("z1", "z2", "module", "key"),
    [
        # Shigley, Prob. 13-1 to 13-3
        (17, 35, INCH / 8.0, "a_centre_in"),
        (15, 60, 3.0 * MM, "b_centre_mm"),
        (20, 56, 4.0 * MM, "c_centre_mm"),
    ],
)
def test_reference_centre_distance(z1, z2, module, key):
    unit = INCH if key.endswith("in") else MM
    distance = reference_centre_distance(module, z1, z2, 0.0)
    assert distance / unit == published("centre-distance-basic", key)


def test_profile_shifted_pair():
    # Elements of Metric Gear Technology, positive-shifted spur pair
    case, module, alpha = "profile-shift-12-24", 3.0 * MM, radians(20.0)
    reference = reference_centre_distance(module, 12, 24, 0.0)
    centre = CASES[case]["expected"]["centre_mm"] * MM
    alpha_w = working_pressure_angle(reference, alpha, centre)
    assert involute(alpha_w) == published(case, "inv_alpha_w")
    assert degrees(alpha_w) == published(case, "alpha_w_deg")
    assert working_pitch_diameter(12, 24, centre) / MM == published(case, "dw1_mm")
    assert working_pitch_diameter(24, 12, centre) / MM == published(case, "dw2_mm")
    spread = (centre - reference) / module
    assert spread == published(case, "y")
    # The handbook shortens the tips so that the tip clearance stays that of the rack.
    shortening = spread - 0.6 - 0.36
    tips = [
        reference_diameter(z, module, 0.0) + 2.0 * module * (1.0 + x + shortening)
        for z, x in ((12, 0.6), (24, 0.36))
    ]
    assert tips[0] / MM == published(case, "da1_mm")
    assert tips[1] / MM == published(case, "da2_mm")
    pair = Pair.of(12, 24, module, alpha, tips=tips, centre=centre)
    assert pair.contact_ratio == published(case, "eps_alpha")


def test_profile_shifted_pair_without_tip_shortening():
    case, module, alpha = "iso-spur-shifted-full", 4.0 * MM, radians(20.0)
    reference = reference_centre_distance(module, 20, 43, 0.0)
    centre = CASES[case]["expected"]["a_w"] * MM
    assert degrees(working_pressure_angle(reference, alpha, centre)) == published(case, "alpha_wt")
    tips = [
        reference_diameter(z, module, 0.0) + 2.0 * module * (1.0 + x)
        for z, x in ((20, 0.3), (43, 0.2))
    ]
    pair = Pair.of(20, 43, module, alpha, tips=tips, centre=centre)
    assert pair.contact_ratio == published(case, "eps_a")


def test_base_circles_that_touch_have_no_line_of_action():
    with pytest.raises(OutOfRange, match=r"^at a centre distance of .* mm the base circles"):
        working_pressure_angle(0.1, radians(20.0), 0.0939)


def test_tip_inside_its_base_circle():
    with pytest.raises(OutOfRange, match=r"inside the base circle"):
        interference_reach(0.0500, 0.0501, 0.1, radians(20.0))


def test_overlap_ratio_of_jindal_26_1():
    width = CASES["jindal-26-1-overlap-width"]["expected"]["b_for_overlap_1_mm"] * MM
    ratio = overlap_ratio(width, radians(15.0), 4.0 * MM)
    assert ratio == pytest.approx(1.0, rel=CASES["jindal-26-1-overlap-width"]["tolerance"])
    assert total_contact_ratio(1.6, ratio) == pytest.approx(1.6 + ratio)
    assert overlap_ratio(width, 0.0, 4.0 * MM) == 0.0


def test_overlap_ratio_of_mott_10_3():
    # Two axial pitches of face; the transverse diametral pitch is stated.
    case, psi = CASES["mott-10-3-axial-pitch"], radians(15.0)
    width = case["expected"]["face_2px_in"] * INCH
    ratio = overlap_ratio(width, psi, INCH / 9.66 * np.cos(psi))
    assert ratio == pytest.approx(2.0, rel=case["tolerance"])


@pytest.mark.parametrize(
    ("case_id", "diameter", "rpm", "key", "unit"),
    [
        ("nasa-pitch-line-velocity", 3.5 * INCH, 10000.0, "V_m_s", 1.0),
        ("nasa-pitch-line-velocity", 3.5 * INCH, 10000.0, "V_ft_min", 0.3048 / 60.0),
        ("wentzell-12-1-spur", 2.5 * INCH, 1725.0, "V_ft_min", 0.3048 / 60.0),
        ("wentzell-13-1-helical", 2.0 * INCH, 1750.0, "V_ft_min", 0.3048 / 60.0),
    ],
)
def test_pitch_line_velocity(case_id, diameter, rpm, key, unit):
    assert pitch_line_velocity(rpm * RPM, diameter) / unit == published(case_id, key)


def test_hunting_tooth_counts():
    # W. C. Foiles, Gear Frequencies Using the Euclidean Algorithm
    expected = CASES["hunting-tooth"]["expected"]
    for pair in CASES["hunting-tooth"]["inputs"]["pairs"]:
        z1, z2 = map(int, pair.split("/"))
        assert hunting_common_factor(z1, z2) == expected[f"gcd_{z1}_{z2}"]
    # the same teeth meet again after z2/gcd turns of the pinion
    assert 50 // hunting_common_factor(20, 50) == expected["pinion_revs_to_repeat_20_50"]
    assert 67 // hunting_common_factor(23, 67) == expected["pinion_revs_to_repeat_23_67"]


def test_face_width_ratio():
    assert face_width_ratio(0.036, 0.080) == pytest.approx(0.45)
