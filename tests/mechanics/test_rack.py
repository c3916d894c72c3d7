"""Undercut and root form against published limits and against a tooth cut by brute force."""

from math import ceil, cos, radians, sin, tan
from pathlib import Path

import numpy as np
import pytest
import yaml

from checker.mechanics.equation import OutOfRange
from checker.mechanics.rack import (
    form_dedendum_factor,
    generating_profile_shift,
    minimum_profile_shift,
    root_diameter,
    root_form_diameter,
    undercut_margin,
)
from checker.mechanics.tooth import (
    base_diameter,
    normal_tooth_thickness,
    reference_diameter,
    transverse_pressure_angle,
)

MM = 1e-3
_FILE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}


@pytest.mark.parametrize(
    ("alpha", "limit_key", "teeth_key"),
    [
        # Machinery's Handbook, limits for a form dedendum of one module
        (14.5, "z_lim_14p5", "z_min_14p5"),
        (20.0, "z_lim_20", "z_min_20"),
        (25.0, "z_lim_25", "z_min_25"),
    ],
)
def test_least_teeth_without_profile_shift(alpha, limit_key, teeth_key):
    case = CASES["undercut-limits"]
    teeth = case["expected"][teeth_key]
    assert minimum_profile_shift(1.0, teeth, radians(alpha), 0.0) <= 0.0
    assert minimum_profile_shift(1.0, teeth - 1, radians(alpha), 0.0) > 0.0
    # The limit grows by sin²(α)/2 with each tooth, so one tooth tells where it is zero.
    limit = 1.0 / (1.0 - minimum_profile_shift(1.0, 1, radians(alpha), 0.0))
    assert limit == pytest.approx(case["expected"][limit_key], rel=case["tolerance"])
    assert ceil(limit) == teeth


def test_profile_shift_that_saves_twelve_teeth():
    case = CASES["undercut-shift-12T"]
    shift = minimum_profile_shift(1.0, 12, radians(20.0), 0.0)
    assert shift == pytest.approx(case["expected"]["x_min"], rel=case["tolerance"])
    assert undercut_margin(0.3, shift) > 0.0 > undercut_margin(0.29, shift)


def test_helical_undercut_limit():
    # gears-notes.md: z_min = 2 h sin⁻²(α_t) cos β (spur form in the transverse section)
    beta = radians(25.0)
    alpha_t = transverse_pressure_angle(radians(20.0), beta)
    teeth = 2.0 * cos(beta) / sin(alpha_t) ** 2
    assert minimum_profile_shift(1.0, ceil(teeth), alpha_t, beta) <= 0.0
    assert minimum_profile_shift(1.0, ceil(teeth) - 1, alpha_t, beta) > 0.0


def test_form_dedendum_of_the_standard_rack_is_one_module():
    # ISO 53 rack A (from memory): h_fP 1.25, ρ_fP 0.38, straight flank one module deep
    assert form_dedendum_factor(1.25, 0.38, radians(20.0)) == pytest.approx(1.0, abs=5e-4)


def test_tip_radius_must_fit_the_tool():
    # By hand: half tip width π/4 − 1.25 tan 20° = 0.3304; times cos 20° / (1 − sin 20°) = 0.4719
    assert form_dedendum_factor(1.25, 0.4718, radians(20.0)) > 0.0
    with pytest.raises(OutOfRange, match=r"^a root fillet radius of .* room for 0\.4719"):
        form_dedendum_factor(1.25, 0.48, radians(20.0))


def test_root_diameters_of_the_shifted_pair():
    # Elements of Metric Gear Technology, positive-shifted spur pair
    case = CASES["profile-shift-12-24"]
    for teeth, shift, key in ((12, 0.6, "df1_mm"), (24, 0.36, "df2_mm")):
        reference = reference_diameter(teeth, 3.0 * MM, 0.0)
        root = root_diameter(reference, 3.0 * MM, 1.25, shift)
        assert root / MM == pytest.approx(case["expected"][key], rel=case["tolerance"])


def test_generating_profile_shift_makes_the_thinner_tooth():
    module, alpha_n = 3.0 * MM, radians(20.0)
    shift = generating_profile_shift(0.25, 0.06 * MM, module, alpha_n)
    thinned = normal_tooth_thickness(module, alpha_n, 0.25, 0.06 * MM)
    assert normal_tooth_thickness(module, alpha_n, shift, 0.0) == pytest.approx(thinned, rel=1e-14)


class CutTooth:
    """A tooth space cut by rolling a point-by-point rack: no envelope equation is used.

    At a radius, each point of the rack crosses the circle at two positions of the rack; the
    deepest crossing of all points is the cut surface. Lengths in normal modules.
    """

    def __init__(self, teeth, beta, shift, dedendum, tip_radius):
        alpha_n = radians(20.0)
        self.radius = teeth / (2.0 * cos(beta))
        self.alpha_t = np.arctan(tan(alpha_n) / cos(beta))
        straight_end = dedendum - tip_radius * (1.0 - sin(alpha_n)) - shift
        flank = np.linspace(-1.5, straight_end, 6001)
        turn = np.linspace(alpha_n, np.pi / 2.0, 6001)[1:]
        arc_depth = straight_end + tip_radius * (np.sin(turn) - sin(alpha_n))
        arc_offset = straight_end * tan(alpha_n) + tip_radius * (cos(alpha_n) - np.cos(turn))
        self.depth = np.concatenate([flank, arc_depth])
        self.offset = np.concatenate([flank * tan(alpha_n), arc_offset]) / cos(beta)
        self.end_of_flank = flank.size - 1

    def cut(self, radius):
        """Polar angle of the cut surface at a radius, and whether the straight flank made it."""
        square = radius**2 - (self.radius - self.depth) ** 2
        across = np.sqrt(np.where(square < 0.0, np.nan, square))
        best = [
            np.arctan2(side * across, self.radius - self.depth)
            - (side * across - self.offset) / self.radius
            for side in (-1.0, 1.0)
        ]
        angles = np.fmin(*best)
        deepest = int(np.nanargmin(angles))
        return float(angles[deepest]), deepest < self.end_of_flank

    def involute(self, radius):
        """Polar angle of the involute through the flank's place on the reference circle."""
        angle = np.arccos(self.radius * np.cos(self.alpha_t) / radius)
        return float(np.tan(self.alpha_t) - self.alpha_t - (np.tan(angle) - angle))


@pytest.mark.parametrize(
    ("teeth", "beta", "shift", "dedendum", "tip_radius"),
    [
        (30, 0.0, 0.0, 1.25, 0.38),
        (20, 0.0, 0.3, 1.25, 0.38),
        (24, radians(20.0), -0.1, 1.40, 0.30),
        (13, 0.0, 0.35, 1.25, 0.38),
        # undercut
        (12, 0.0, 0.0, 1.25, 0.38),
        (9, 0.0, 0.1, 1.25, 0.25),
        (10, radians(22.0), -0.2, 1.25, 0.38),
        (12, 0.0, 0.0, 1.25, 0.0),
    ],
)
def test_root_form_diameter_against_a_tooth_cut_by_brute_force(
    teeth, beta, shift, dedendum, tip_radius
):
    module = 3.0 * MM
    reference = reference_diameter(teeth, module, beta)
    form = root_form_diameter(
        reference, module, radians(20.0), beta, dedendum, tip_radius, shift
    ) / (2.0 * module)
    tooth = CutTooth(teeth, beta, shift, dedendum, tip_radius)
    above, made_by_flank = tooth.cut(form * 1.0005)
    assert made_by_flank
    assert above == pytest.approx(tooth.involute(form * 1.0005), abs=1e-6)
    base = base_diameter(reference, transverse_pressure_angle(radians(20.0), beta)) / (2 * module)
    below = max(form * 0.9995, base)
    assert not tooth.cut(below)[1]


def test_undercut_shows_where_the_margin_is_negative():
    # Notes: a numeric rack corner removes involute at x = 0.29 and none from 0.297 for 12 teeth.
    module, alpha = 1.0 * MM, radians(20.0)
    reference = reference_diameter(12, module, 0.0)
    form = {
        shift: root_form_diameter(reference, module, alpha, 0.0, 1.25, 0.38, shift)
        for shift in (0.0, 0.1, 0.2, 0.29, 0.297, 0.4)
    }
    assert form[0.0] > form[0.1] > form[0.2] > form[0.29] > base_diameter(reference, alpha)
    assert form[0.4] > form[0.297]
