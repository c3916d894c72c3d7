"""Plain bearings as measures: the bush, and its thrust face."""

import math

import pytest

from checker.known import Unknown

BUSH = {
    "bearings.input_rear.kind": "plain",
    "bearings.input_rear.locates": "towards propeller",
    "bearings.input_rear.axial_rating": None,
    "bearings.input_rear.bore": "45 mm",
    "bearings.input_rear.width": "40 mm",
    "bearings.input_rear.pressure_limit": "20 MPa",
    "bearings.input_rear.pv_limit": "60 MPa m/s",
}
FACE = {**BUSH, "bearings.input_rear.thrust_outside": "55 mm"}


def rear(design):
    return design.subjects.the("bearing", "input_rear")


def take_off(design):
    return next(point for point in design.points if point.name == "take-off")


def test_bush_by_hand(solve):
    """p = F_r/(d B) in the worst case, p v with v = ω d/2; no face, no axial force."""
    design = solve({**BUSH, "bearings.input_rear.locates": "none"}, "sorrel")
    cases = [*design.reactions.cases.points.values(), *design.reactions.cases.limits]
    radial = max(design.reactions.radial(rear(design), case).number for case in cases)
    share = design.measure("plain_pressure_share", rear(design))
    assert share.number == pytest.approx(radial / (0.045 * 0.040) / 20e6)
    point = take_off(design)
    force = design.reactions.radial(rear(design), design.reactions.cases.points[point.name]).number
    speed = design.motion.speed("input", point).number
    heat = design.measure("plain_heat_share", rear(design), point)
    assert heat.number == pytest.approx(force / (0.045 * 0.040) * speed * 0.0225 / 60e6)


def test_thrust_face_by_hand(solve):
    """F_a/A on the ring from 45 to 55 mm, at its mean radius of 25 mm."""
    design = solve(FACE, "sorrel")
    area = math.pi / 4 * (0.055**2 - 0.045**2)
    forces = design.reactions.forces
    axial = max(
        forces.net_axials("input", case)[0].number for case in design.reactions.cases.limits
    )
    share = design.measure("plain_pressure_share", rear(design))
    assert share.number == pytest.approx(axial / area / 20e6)
    assert design.measure("axial_load_limit", rear(design)).number == pytest.approx(20e6 * area)
    point = take_off(design)
    thrust = design.loads.net_thrust("input", point).number
    speed = design.motion.speed("input", point).number
    heat = design.measure("plain_heat_share", rear(design), point)
    assert heat.number == pytest.approx(thrust / area * speed * 0.025 / 60e6)


@pytest.mark.parametrize("measure", ["plain_pressure_share", "axial_load_limit"])
def test_without_a_limit_nothing_is_shown(solve, measure):
    unstated = {key: value for key, value in FACE.items() if "pressure" not in key}
    design = solve(unstated, "sorrel")
    unknown = design.measure(measure, rear(design))
    assert isinstance(unknown, Unknown)
    assert ("bearings", "input_rear", "pressure_limit") in unknown.missing
