"""Who turns whom, how fast, which way, and what the meshes push."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.known import Unknown
from checker.train.graph import TrainUnclear, build_train

CASES = yaml.safe_load(
    (Path(__file__).parents[1] / "reference" / "trains.yaml").read_text(encoding="utf-8")
)["cases"]
CASE = {case["id"]: case for case in CASES}
RPM = 2 * math.pi / 60


def compound(*teeth, module="3 mm", helix=None, **more):
    """Gears in pairs, each pair between two shafts: in, lay1 ... out."""
    steps = len(teeth) // 2
    names = ["in", *(f"lay{step}" for step in range(1, steps)), "out"]
    gears, meshes = {}, {}
    for step in range(steps):
        gears[f"p{step}"] = (names[step], teeth[2 * step], module, helix)
        gears[f"w{step}"] = (names[step + 1], teeth[2 * step + 1], module, helix)
        meshes[f"m{step}"] = (f"p{step}", f"w{step}", {})
    return {"gears": gears, "meshes": meshes, **more}


def only_point(design):
    return design.points[0]


def test_compound_train_after_wentzell(make_design):
    case = CASE["wentzell-11-1-compound"]
    design = make_design(**compound(*case["inputs"]["teeth"]))
    drive = design.subjects.the("drive")
    point = only_point(design)
    assert design.measure("computed_ratio", drive).number == case["expected"]["ratio"]
    out = design.motion.speed("out", point).number / RPM
    assert out == pytest.approx(case["expected"]["n_out_rpm"])
    torque_ratio = (
        design.motion.torque("out", point).number / design.motion.torque("in", point).number
    )
    inputs = case["inputs"]
    assert torque_ratio * inputs["T_in_lbf_in"] == pytest.approx(case["expected"]["T_out_lbf_in"])
    assert design.measure("computed_arrangement", drive).value == "compound"


def test_idler_train_after_wentzell(make_design):
    case = CASE["wentzell-11-2-idler"]
    a, b, c, d, e = case["inputs"]["teeth_A_B_C_D_E"]
    design = make_design(
        gears={
            "A": ("in", a, "3 mm", None),
            "B": ("lay", b, "3 mm", None),
            "C": ("lay", c, "3 mm", None),
            "D": ("idler", d, "3 mm", None),
            "E": ("out", e, "3 mm", None),
        },
        meshes={"ab": ("A", "B", {}), "cd": ("C", "D", {}), "de": ("D", "E", {})},
    )
    point = only_point(design)
    ratio = design.measure("computed_ratio", design.subjects.the("drive")).number
    assert ratio == pytest.approx(case["expected"]["ratio"], rel=case["tolerance"])
    out = design.motion.speed("out", point).number / RPM * case["inputs"]["n_in_rpm"] / 3600
    assert out == pytest.approx(case["expected"]["n_out_rpm"], rel=case["tolerance"])
    same = design.motion.sense("out").value == design.motion.sense("in").value
    assert same is case["expected"]["direction_same_as_input"]
    assert design.measure("computed_arrangement", design.subjects.the("drive")).value == "mixed"


def test_tooth_forces_of_two_meshes_after_shigley(make_design):
    """The case is at standard centres, where the working circle is the reference circle."""
    case = CASE["shigley-13-30-two-mesh-shaft"]
    z = case["inputs"]["z"]
    tables = compound(*z, module="2 DP")
    for step in range(2):
        centre = (z[2 * step] + z[2 * step + 1]) / 4
        tables["meshes"][f"m{step}"][2]["centre_distance"] = f"{centre} in"
    tables["operation"] = [{"name": "full", "engine_speed": "1800 rpm", "power": "200 hp"}]
    design = make_design(**tables)
    point = only_point(design)
    pound = 4.4482216152605
    expected = case["expected"]
    for mesh, tangential, radial in (
        ("m0", "Wt_23_lbf", "Wr_23_lbf"),
        ("m1", "Wt_45_lbf", "Wr_45_lbf"),
    ):
        subject = design.subjects.the("mesh", mesh)
        assert design.loads.tangential(subject, point).number / pound == pytest.approx(
            expected[tangential], rel=case["tolerance"]
        )
        tolerance = case["tolerance_by_key"].get(radial, case["tolerance"])
        assert design.loads.radial(subject, point).number / pound == pytest.approx(
            expected[radial], rel=tolerance
        )


def test_an_idler_turns_on_without_net_thrust(make_design):
    design = make_design(
        gears={
            "a": ("in", 27, "2.5 mm", ("18 deg", "right")),
            "b": ("idler", 41, "2.5 mm", ("18 deg", "left")),
            "c": ("out", 67, "2.5 mm", ("18 deg", "right")),
        },
        meshes={
            "ab": ("a", "b", {"centre_distance": "90 mm"}),
            "bc": ("b", "c", {"centre_distance": "142 mm"}),
        },
    )
    point = only_point(design)
    assert design.motion.sense("out").value == design.motion.sense("in").value
    thrusts = [thrust.number for _, thrust in design.loads.gear_thrusts("idler", point)]
    assert thrusts[0] == pytest.approx(-thrusts[1])
    assert abs(thrusts[0]) > 100
    assert design.loads.net_thrust("idler", point).number == pytest.approx(0.0, abs=1e-9)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    teeth=st.lists(st.integers(12, 90), min_size=2, max_size=8).filter(lambda z: len(z) % 2 == 0),
    rotation=st.sampled_from(["clockwise", "anticlockwise"]),
)
def test_power_passes_through_and_each_mesh_reverses(make_design, teeth, rotation):
    design = make_design(**compound(*teeth, engine={"rotation": rotation}))
    point = only_point(design)
    for shaft in design.train.path_shafts:
        power = design.motion.torque(shaft, point).number * design.motion.speed(shaft, point).number
        assert power == pytest.approx(60e3)
    steps = len(teeth) // 2
    turned = design.motion.sense("out").value * design.motion.sense("in").value
    assert turned == (-1) ** steps


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    z1=st.integers(17, 40),
    z2=st.integers(17, 80),
    angle=st.floats(5, 35),
    hand=st.sampled_from(["right", "left"]),
    rotation=st.sampled_from(["clockwise", "anticlockwise"]),
)
def test_thrusts_of_a_mesh_cancel(make_design, z1, z2, angle, hand, rotation):
    other = {"right": "left", "left": "right"}[hand]
    centre = 3e-3 * (z1 + z2) / 2 / math.cos(math.radians(angle)) + 1e-4
    design = make_design(
        gears={
            "a": ("in", z1, "3 mm", (f"{angle} deg", hand)),
            "b": ("out", z2, "3 mm", (f"{angle} deg", other)),
        },
        meshes={"ab": ("a", "b", {"centre_distance": f"{centre} m"})},
        engine={"rotation": rotation},
    )
    point = only_point(design)
    mesh = design.subjects.the("mesh", "ab")
    pair = design.pairs["ab"]
    first = design.loads.axial(mesh, pair.driver, point).number
    second = design.loads.axial(mesh, pair.driven, point).number
    assert first == pytest.approx(-second)
    radius = 3e-3 * z1 / 2 / math.cos(math.radians(angle))
    torque = 60e3 / (3600 * RPM)
    assert abs(first) == pytest.approx(torque * math.tan(math.radians(angle)) / radius)


def test_internal_reduction_slows_and_turns(make_design):
    engine = {"internal_reduction": {"ratio": 2.0, "reverses": True}}
    design = make_design(**compound(20, 40, engine=engine))
    point = only_point(design)
    assert design.motion.speed("in", point).number / RPM == pytest.approx(1800)
    assert design.motion.torque("in", point).number == pytest.approx(60e3 / (1800 * RPM))
    assert design.motion.sense("in").value == -1
    assert design.motion.sense("out").value == 1


def test_without_a_word_on_the_internal_reduction_no_speed_is_shown(make_design):
    design = make_design(**compound(20, 40, engine={"internal_reduction": "unknown"}))
    speed = design.motion.speed("out", only_point(design))
    assert isinstance(speed, Unknown)
    assert speed.missing == (("engine", "internal_reduction"),)


def clutched(**more):
    tables = compound(20, 40, shafts=["crank"], engine={"drives": "crank"}, **more)
    tables["clutch"] = {"between": ["crank", "in"]}
    return tables


def test_behind_an_overrunning_clutch_the_propeller_sets_the_speed(make_design):
    glide = {"name": "glide", "engine_speed": "1500 rpm", "driving": "propeller"}
    design = make_design(**clutched(operation=[{**glide, "propeller_speed": "1200 rpm"}]))
    point = only_point(design)
    assert design.motion.overruns(point)
    speeds = {
        shaft: design.motion.speed(shaft, point).number / RPM for shaft in ("crank", "in", "out")
    }
    assert speeds == pytest.approx({"crank": 1500, "in": 2400, "out": 1200})
    assert design.motion.torque("out", point).value == 0.0


def test_overrun_without_the_propeller_speed_is_not_shown(make_design):
    glide = {"name": "glide", "engine_speed": "1500 rpm", "driving": "propeller"}
    design = make_design(**clutched(operation=[glide]))
    speed = design.motion.speed("in", only_point(design))
    assert speed.missing == (("operation", 0, "propeller_speed"),)


def test_without_a_clutch_the_propeller_drives_the_engine(make_design):
    glide = {"name": "glide", "engine_speed": "1500 rpm", "power": "2 kW", "driving": "propeller"}
    design = make_design(**compound(20, 40, operation=[glide]))
    point = only_point(design)
    assert design.motion.torque("in", point).number == pytest.approx(-2e3 / (1500 * RPM))
    assert design.motion.speed("out", point).number / RPM == pytest.approx(750)


def test_a_branch_carries_no_torque(make_design):
    tables = compound(20, 40)
    tables["gears"]["pump"] = ("pump shaft", 20, "3 mm", None)
    tables["meshes"]["pump drive"] = ("w0", "pump", {})
    design = make_design(**tables)
    point = only_point(design)
    assert design.motion.torque("pump shaft", point).value == 0.0
    assert design.motion.speed("pump shaft", point).number == pytest.approx(3600 * RPM)


def test_unclear_trains_name_every_fault(make_spec):
    tables = compound(20, 40, shafts=["lost", "stray"])
    with pytest.raises(TrainUnclear) as caught:
        build_train(make_spec(**tables))
    assert [fault.path for fault in caught.value.faults] == [
        ("shafts", "lost"),
        ("shafts", "stray"),
    ]
