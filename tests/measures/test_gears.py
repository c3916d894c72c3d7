"""Gears and meshes as a spec states them, against handbook pairs and plain geometry."""

import copy
from math import acos, cos, hypot, pi, radians, sin, sqrt, tan
from pathlib import Path

import pytest
import yaml
from scipy.optimize import brentq

from checker.known import Known, Unknown
from checker.measures.design import Design
from checker.spec.loading import load_spec
from checker.train.graph import build_train

REFERENCE = Path(__file__).parents[1] / "reference" / "gears.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(REFERENCE.read_text("utf-8"))["cases"]}
INCH = 25.4

BASE = {
    "thrustline": 1,
    "drive": {"name": "Test", "installation": "tractor", "build_temperature": "20 degC"},
    "engine": {
        "drives": "input",
        "rotation": "clockwise",
        "internal_reduction": "none",
        "cylinders": 4,
        "cycle": "four-stroke",
        "maximum_continuous": {"power": "60 kW", "speed": "5000 rpm"},
        "take_off": {"power": "60 kW", "speed": "5000 rpm"},
    },
    "operation": [
        {"name": "full", "engine_speed": "5000 rpm", "power": "60 kW", "thrust": "1200 N"}
    ],
    "shafts": {"input": {}, "prop": {}},
    "propeller": {"shaft": "prop"},
}


def gear(shaft, teeth, module, tip, **more):
    return {
        "shaft": shaft,
        "teeth": teeth,
        "module": f"{module} mm",
        "pressure_angle": "20 deg",
        "helix": "none",
        "tip_diameter": f"{tip} mm",
        "tip_chamfer": "0 mm",
        "face_width": "25 mm",
        "station": "100 mm",
        **more,
    }


def single(pinion, wheel, centre, **sections):
    """The design of one pair; centre distance and tips in mm, with tolerance as text."""
    data = copy.deepcopy(BASE)
    data["gears"] = {"pinion": gear("input", *pinion), "wheel": gear("prop", *wheel)}
    data["meshes"] = {
        "first": {"driver": "pinion", "driven": "wheel", "centre_distance": f"{centre} mm"}
    }
    for path, value in sections.items():
        *way, last = path.split("__")
        inner = data
        for step in way:
            inner = inner.setdefault(step, {})
        inner[last] = value
    spec = load_spec(yaml.safe_dump(data, sort_keys=False).encode(), "test.yaml").spec
    return Design(spec, build_train(spec))


def of_mesh(design, name, point=None):
    return design.measure(name, design.subjects.the("mesh", "first"), point)


def of_gear(design, name, gear_name):
    return design.measure(name, design.subjects.the("gear", gear_name))


@pytest.mark.parametrize(
    ("case", "z1", "z2", "module", "addendum", "expected"),
    [
        ("khurmi-12-3", 30, 80, 12, 10, "eps_alpha"),
        ("khurmi-12-4-and-5", 20, 40, 5, 5, "eps_alpha"),
        ("sarkar-48-30", 30, 48, 5, 5, "eps_alpha"),
        ("norton-19-37", 19, 37, INCH / 6, INCH / 6, "eps_alpha"),
        ("nasa-28T-test-gear", 28, 28, INCH / 8, INCH / 8, "eps_alpha"),
    ],
)
def test_contact_ratio_of_handbook_pairs(case, z1, z2, module, addendum, expected):
    design = single(
        (z1, module, z1 * module + 2 * addendum),
        (z2, module, z2 * module + 2 * addendum),
        module * (z1 + z2) / 2,
    )
    value = at_best(of_mesh(design, "transverse_contact_ratio"))
    assert value == pytest.approx(CASES[case]["expected"][expected], rel=CASES[case]["tolerance"])


def at_best(value):
    """The contact ratio with involutes to the base circle: all that a pair without tools shows."""
    assert isinstance(value, Unknown)
    assert any(path[-2:] == ("basic_rack", "dedendum") for path in value.missing)
    return value.at_best.number


def test_contact_ratio_and_tips_of_a_shifted_pair():
    case = CASES["profile-shift-12-24"]["expected"]
    design = single((12, 3, case["da1_mm"]), (24, 3, case["da2_mm"]), case["centre_mm"])
    assert at_best(of_mesh(design, "transverse_contact_ratio")) == pytest.approx(
        case["eps_alpha"], rel=1e-4
    )
    assert of_mesh(design, "working_pressure_angle").number == pytest.approx(
        radians(case["alpha_w_deg"]), rel=6e-5
    )


def test_contact_that_does_not_exist_is_not_counted():
    """gears-notes: 12 and 36 teeth at 20 degrees show 1.556 by the formula and have 1.405."""
    design = single((12, 2, 28), (36, 2, 76), 48)
    assert at_best(of_mesh(design, "transverse_contact_ratio")) == pytest.approx(1.405, abs=5e-4)
    assert of_gear(design, "interference_reach", "pinion").number > 1.0
    assert of_gear(design, "interference_reach", "wheel").number < 1.0


def contact_by_stepping(z1, z2, module, tip1, tip2, centre):
    """Contact ratio by walking along the line of action until a tip circle is left."""
    alpha = radians(20.0)
    base1, base2 = (z * module * cos(alpha) / 2 for z in (z1, z2))
    working = acos((base1 + base2) / centre)
    length = centre * sin(working)  # between the tangent points, from gear 1 to gear 2
    end = brentq(lambda s: hypot(base1, s) - tip1 / 2, 0.0, 2 * length)
    start = length - brentq(lambda s: hypot(base2, s) - tip2 / 2, 0.0, 2 * length)
    return (min(end, length) - max(start, 0.0)) / (pi * module * cos(alpha))


def test_worst_corner_of_contact():
    design = single(
        (24, 3, "78 +0/-0.2"),
        (60, 3, "186 +0/-0.3"),
        "126.3 +0.1/-0.05",
        **_rack("pinion", 1.25),
        **_rack("wheel", 1.25),
    )
    nominal = contact_by_stepping(24, 60, 3, 78, 186, 126.3)
    worst = contact_by_stepping(24, 60, 3, 77.8, 185.7, 126.4)
    assert of_mesh(design, "transverse_contact_ratio").number == pytest.approx(nominal)
    least = of_mesh(design, "transverse_contact_ratio_least")
    assert least.number == pytest.approx(worst)
    assert of_mesh(design, "single_pair_share").number == pytest.approx((2 - worst) / worst)
    assert {leaf.path for leaf in least.leaves()} >= {
        ("gears", "pinion", "tip_diameter"),
        ("gears", "wheel", "tip_diameter"),
        ("meshes", "first", "centre_distance"),
    }


def _rack(name, dedendum):
    return {
        f"gears__{name}__basic_rack": {
            "addendum": 1.0,
            "dedendum": dedendum,
            "root_radius": 0.38,
        },
        f"gears__{name}__profile_shift": 0.0,
        f"gears__{name}__thickness_allowance": "0 mm",
    }


def test_the_root_fillet_ends_contact_where_the_tool_is_stated():
    """A shallow tool leaves the involute of the pinion short of the wheel's tip."""
    pair = ((24, 3, 78), (60, 3, 186), 126)
    wheel = _rack("wheel", 1.25)
    free = at_best(of_mesh(single(*pair), "transverse_contact_ratio"))
    deep = single(*pair, **_rack("pinion", 1.25), **wheel)
    assert of_mesh(deep, "transverse_contact_ratio").number == pytest.approx(free)
    assert of_gear(deep, "form_clearance", "pinion").number > 0.0
    shallow = single(*pair, **_rack("pinion", 0.9), **wheel)
    assert of_mesh(shallow, "transverse_contact_ratio").number < free - 0.05
    assert of_gear(shallow, "form_clearance", "pinion").number < 0.0


def test_tip_thickness_of_a_nearly_pointed_tooth():
    case = CASES["tip-width-12T-shift"]
    design = single(
        (12, 1, 15.2),
        (40, 1, 42),
        26.5,
        gears__pinion__profile_shift=0.6,
        gears__pinion__thickness_allowance="0 mm",
    )
    value = of_gear(design, "tip_thickness", "pinion").number
    assert value == pytest.approx(case["expected"]["tip_width_mm"], rel=case["tolerance"])


def test_undercut_margin_against_the_classic_limit():
    """Handbook limit without tip radius: x_min of 12 teeth is 0.2981 (case undercut-shift-12T)."""
    rack = {"addendum": 1.0, "dedendum": 1.0, "root_radius": 0.0}
    design = single(
        (12, 2, 28),
        (36, 2, 76),
        48,
        gears__pinion__basic_rack=rack,
        gears__pinion__profile_shift=0.3,
        gears__pinion__thickness_allowance="0 mm",
    )
    least = CASES["undercut-shift-12T"]["expected"]["x_min"]
    assert of_gear(design, "undercut_margin", "pinion").number == pytest.approx(
        0.3 - least, abs=1e-4
    )


def test_tip_clearance_at_the_worst_corner():
    """126 - 0.02 - (78 + 178.6) / 2 = -2.32 mm for a root cut 0.1 mm high; by hand."""
    design = single(
        (24, 3, "77.9 +0.1/-0.1"),
        (60, 3, 186),
        "126 +/- 0.02",
        gears__wheel__root_diameter="172.5 +0.1/-0 mm",
    )
    assert of_gear(design, "tip_clearance", "pinion").number == pytest.approx(
        (125.98 - (78.0 + 172.6) / 2) / 3
    )


def test_backlash_of_an_unshifted_pair_by_hand():
    """At the reference centres j_wt is the sum of the two thinnings; by hand."""
    thinned = {
        f"gears__{name}__{field}": value
        for name in ("pinion", "wheel")
        for field, value in (("profile_shift", 0.0), ("thickness_allowance", "0.05 +/- 0.01 mm"))
    }
    design = single((24, 3, 78), (60, 3, 186), "126 +/- 0.02", **thinned)
    pair = design.pairs["first"]
    assert pair.circular_backlash().number == pytest.approx(0.1e-3)
    # Closing the centres by 0.02 mm takes 2 tan(20 deg) of it to first order.
    least = 0.08e-3 - 2 * tan(radians(20)) * 0.02e-3
    assert of_mesh(design, "backlash_least").number == pytest.approx(
        least * cos(radians(20)), rel=2e-3
    )


def test_cold_backlash_needs_the_case():
    design = single((24, 3, 78), (60, 3, 186), "126 +/- 0.02", meshes__first__backlash="0.12 mm")
    value = of_mesh(design, "backlash_least_cold")
    assert isinstance(value, Unknown)
    assert ("housing", "material") in value.missing
    cold = single(
        (24, 3, 78),
        (60, 3, 186),
        "126",
        meshes__first__backlash="0.12 mm",
        housing={"material": "aluminium", "cold_soak_temperature": "-20 degC"},
    )
    # 0.12 mm at the pitch circle less 2 tan(20 deg) x 0.058 mm, as a normal backlash; by hand.
    by_hand = (0.12e-3 - 2 * tan(radians(20)) * 0.05796e-3) * cos(radians(20))
    assert of_mesh(cold, "backlash_least_cold").number == pytest.approx(by_hand, rel=5e-3)


def test_forces_and_speed_of_a_helical_pair_after_wentzell():
    case = CASES["wentzell-13-1-helical"]
    psi = radians(case["inputs"]["psi_deg"])
    module = INCH / 12 * cos(psi)  # transverse pitch 12 per inch
    helix = [{"angle": "15 deg", "hand": hand} for hand in ("right", "left")]
    design = single(
        (24, module, 54),
        (48, module, 106),
        36 * INCH / 12,
        gears__pinion__helix=helix[0],
        gears__wheel__helix=helix[1],
        operation=[{"name": "full", "engine_speed": "1750 rpm", "power": "5 hp"}],
    )
    point = design.points[0]
    pound, foot_per_minute = 4.4482216152605, 0.00508
    expected = case["expected"]
    assert of_mesh(design, "pitch_line_velocity", point).number == pytest.approx(
        expected["V_ft_min"] * foot_per_minute, rel=1e-4
    )
    assert of_mesh(design, "tangential_force", point).number == pytest.approx(
        expected["Ft_lbf"] * pound, rel=1e-4
    )
    assert of_mesh(design, "radial_force", point).number == pytest.approx(
        expected["Fr_lbf"] * pound, rel=1e-4
    )
    # Thumb rule (handbooks, from memory): the right hand for a right-hand driver, fingers the way
    # it turns; the thumb shows its thrust, here away from the engine.
    axial = of_mesh(design, "axial_force_driver", point).number
    assert axial == pytest.approx(expected["Fa_lbf"] * pound, rel=1e-4)


def test_overlap_over_the_common_face():
    """b sin(beta) / (pi m_n) with 20 mm of common face: 0.6563; by hand."""
    design = single(
        (24, 3, 78),
        (60, 3, 186),
        131,
        gears__pinion__helix={"angle": "18 deg", "hand": "right"},
        gears__wheel__helix={"angle": "18 deg", "hand": "left"},
        gears__wheel__station="105 mm",
    )
    assert of_mesh(design, "overlap_ratio").number == pytest.approx(
        20 * sin(radians(18)) / (3 * pi)
    )
    assert of_mesh(design, "face_overlap_share").number == pytest.approx(0.8)
    assert of_mesh(design, "hands_opposed").value is True


def test_axes_close_to_the_centre_distance():
    design = single(
        (24, 3, 78),
        (60, 3, 186),
        "126 +/- 0.02",
        shafts__prop={"centre": {"right": "60 mm", "up": "111 mm"}},
    )
    by_hand = sqrt(60**2 + 111**2) - 126.02
    assert of_mesh(design, "axes_disagreement").number == pytest.approx(by_hand * 1e-3)


@pytest.mark.parametrize(
    ("lubrication", "word"),
    [
        ({"system": "splash"}, "splash"),
        ({"system": "pump and jets"}, "jet"),
        ({"system": "pump and jets", "paths": [{"to": "first", "kind": "dip"}]}, "splash"),
        (
            {"paths": [{"to": "first", "kind": "drip"}, {"to": "first", "kind": "pressure"}]},
            "jet",
        ),
        ({"system": "splash", "paths": [{"to": "reservoir", "kind": "jet"}]}, "splash"),
    ],
)
def test_how_a_mesh_is_oiled(lubrication, word):
    design = single((24, 3, 78), (60, 3, 186), 126, lubrication=lubrication)
    assert of_mesh(design, "oiling").value == word


@pytest.mark.parametrize(
    "lubrication",
    [{}, {"system": "pump and splash"}, {"paths": [{"to": "first"}], "system": "splash"}],
)
def test_oiling_that_is_not_shown(lubrication):
    design = single((24, 3, 78), (60, 3, 186), 126, lubrication=lubrication)
    assert isinstance(of_mesh(design, "oiling"), Unknown)


def test_peak_torque_is_never_met_in_this_version():
    """60 kW at 5000 rpm is 114.6 N m; four cylinders of a four-stroke double it (CS-VLA 361)."""
    design = single((24, 3, 78), (60, 3, 186), 126, gears__wheel__peak_torque_rating="700 N m")
    value = of_gear(design, "peak_torque_margin", "wheel")
    assert isinstance(value, Unknown)
    assert isinstance(value.at_best, Known)
    assert value.at_best.number == pytest.approx(700 / (2 * 114.592 * 60 / 24), rel=1e-5)
