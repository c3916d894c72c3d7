"""Crossings of the survey: the torque of a mode, and what damping it meets."""

import math

import numpy as np
import pytest

from checker.known import Unknown
from tests.train.test_torsional_survey import CLUTCH, STIFF, ask, design

BLADES = {"propeller.blade_inertia_share": "60 %", "propeller.first_blade_frequency": "60 Hz"}


def crossing(solved, order, mode):
    return next(
        each for each in solved.resonances.crossings if each.order == order and each.mode == mode
    )


@pytest.mark.parametrize(("order", "mode"), [(1.0, 2), (2.0, 2), (1.0, 1)])
def test_torque_of_a_mode_agrees_with_the_forced_response(order, mode):
    # The forced response at resonance, where hardly anything but the mode answers.
    solved = design({**BLADES, "damper.relative_damping": 0.1})
    found = crossing(solved, order, mode)
    survey = solved.survey
    index = survey.excitation.orders.index(order)
    largest = 0.0
    for state, modes in zip(survey.model.states, survey.modes, strict=True):
        speed = np.array([math.tau * modes.frequency[mode] / order])
        response = survey.response(state, speed, survey.law(speed))
        largest = max(largest, abs(response.torque[0, found.node, 0, index]))
    assert found.torque == pytest.approx(largest, rel=0.15)


@pytest.mark.parametrize("order", [0.5, 1.0, 2.0])
def test_each_state_is_excited_as_at_its_own_crossing(order):
    # Little damping: the mode is all there is at its resonance. The survey is asked at the
    # speed and mean torque at which each state crosses.
    rubber = {
        "damper.kind": "elastomer",
        "damper.hot_stiffness": "900 N m/rad",
        "damper.cold_stiffness": "2000 N m/rad",
        "damper.relative_damping": 0.24,
        "damper.hot_relative_damping": 0.12,
    }
    survey = design(rubber).survey
    found = crossing(design(rubber), order, 1)
    index = survey.excitation.orders.index(order)
    each = []
    for state, modes in zip(survey.model.states, survey.modes, strict=True):
        speed = np.array([math.tau * modes.frequency[1] / order])
        response = survey.response(state, speed, survey.law(speed))
        each.append(abs(response.torque[0, found.node, 0, index]))
    assert found.torque == pytest.approx(max(each), rel=0.02)
    assert max(each) > 1.2 * min(each)


def test_the_blades_count_as_a_joint():
    solved = design(BLADES)
    assert solved.survey.model.nodes[crossing(solved, 1.0, 2).node].kind == "blades"


def test_crank_throws_count_as_joints():
    crank = {
        "throw_inertia": "0.01 kg m2",
        "throw_stiffness": "20000 N m/rad",
        "output_stiffness": "20000 N m/rad",
        "cylinders_per_throw": 1,
        "firing_order": [1, 2],
    }
    solved = design({"engine.crankshaft": crank})
    kinds = {solved.survey.model.nodes[each.node].kind for each in solved.resonances.crossings}
    assert "crank" in kinds


def test_a_contradiction_in_stiffness_is_not_shown_and_names_the_fields():
    rubber = {"damper.kind": "elastomer", "damper.cold_stiffness": "1500 N m/rad"}
    survey = design(rubber).survey
    assert isinstance(survey, Unknown)
    assert ("damper", "cold_stiffness") in survey.missing
    assert "must not be above" in survey.because
    assert isinstance(design({**rubber, "damper.hot_stiffness": "1900 N m/rad"}).survey, Unknown)


VISCOUS = {"damper.kind": "viscous", "damper.relative_damping": None}


def viscous(coefficient, hot=1.0, cold=1.0):
    """A viscous damper, with the factors by which its coefficient changes hot and cold."""
    fields = {
        "damping_coefficient": 1.0,
        "hot_damping_coefficient": hot,
        "cold_damping_coefficient": cold,
    }
    return {
        **VISCOUS,
        **{
            f"damper.{field}": f"{float(coefficient) * factor!r} N m s/rad"
            for field, factor in fields.items()
        },
    }


def test_a_viscous_damper_states_its_coefficient():
    survey = design(VISCOUS).survey
    fields = ("hot_damping_coefficient", "cold_damping_coefficient", "damping_coefficient")
    assert survey.missing == tuple(("damper", field) for field in fields)
    for missing in fields:
        stated = {f"damper.{field}": "3 N m s/rad" for field in fields if field != missing}
        assert design({**VISCOUS, **stated}).survey.missing == (("damper", missing),)
    wrong = {**viscous(3), "damper.hot_damping_coefficient": "3.1 N m s/rad"}
    assert "hot_damping_coefficient must not be above" in design(wrong).survey.because


def test_a_viscous_damper_damps_in_proportion_to_speed():
    # At the frequency where ω c = C ψ/2π the two kinds of damping are the same.
    rubber = design({}).survey
    state = rubber.model.states[rubber.model.running]
    order, column = 3, 150
    turning = rubber.speed[column] * rubber.excitation.orders[order]
    coefficient = state.damping * state.stiffness / math.tau / turning
    dashpot = design(viscous(coefficient)).survey
    node = dashpot.model.joint("damper")
    found, expected = (
        each.responses[each.model.running].torque[0, node, column, order]
        for each in (dashpot, rubber)
    )
    assert found == pytest.approx(expected, rel=1e-9)
    apart = dashpot.responses[dashpot.model.running].torque[0, node, 399, order]
    assert apart != pytest.approx(
        rubber.responses[rubber.model.running].torque[0, node, 399, order]
    )


def test_heat_of_a_viscous_damper_is_the_power_that_goes_in():
    survey = design(viscous(3)).survey
    state = survey.model.states[1]
    response = survey.responses[1]
    node = survey.model.joint("damper")
    turning = np.multiply.outer(survey.speed, survey.orders)
    twist = response.torque[0, node] / (state.stiffness + 1j * turning * state.viscous)
    power = (0.5 * turning * (response.torque[0, node] * twist.conj()).imag).sum(axis=-1)
    assert survey.heat(response, state, survey.speed) == pytest.approx(power, rel=1e-9)


def test_a_mesh_of_an_accessory_carries_no_torque_of_the_propeller():
    solved = design(
        {
            "shafts.pump": {"inertia": "1e-4 kg m2", "torsional_stiffness": STIFF},
            "gears.d": {"shaft": "pump", "teeth": 30, "inertia": "1e-4 kg m2"},
            "meshes.pump": {"driver": "p", "driven": "d", "stiffness": STIFF},
        }
    )
    assert ask(solved, "mesh", "carries", "cruise", "pump").value is False
    assert ask(solved, "mesh", "carries", "cruise", "m").value is True
    assert ask(solved, "mesh", "on_power_path", part="pump").value is False


def test_an_open_clutch_passes_nothing_in_any_mesh():
    assert ask(design(CLUTCH), "mesh", "carries", "descent", "m").value is False
