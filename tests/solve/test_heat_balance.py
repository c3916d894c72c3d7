import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from checker.known import Known, compute
from checker.mechanics import auxiliary_loss, bearing_loss, convection, heat, mesh_loss
from checker.mechanics.equation import OutOfRange
from checker.solve.case_wall import OIL_FILM, case_flow
from checker.solve.heat_balance import DAY, HeatModel, balanced_temperature
from checker.solve.oil_terms import Loaded, Oil, OilProperties, Term, loaded, term


def value(number, unit=""):
    return Known(number, unit, origin="for the test")


OIL = OilProperties(value(100e-6, "m2/s"), value(11.2e-6, "m2/s"), value(880.0, "kg/m3"))


def drive(torque=80.0, area=0.3, air=311.0, speed=30.0, joint=5.0, engine=370.0):
    """A mesh, a bearing and a seal; a case and a joint to the engine."""
    friction = Term(
        mesh_loss.mean_friction,
        (
            Loaded(value(2500.0)),
            value(0.03),
            value(13.0),
            value(8e-3),
            value(0.4e-6),
            value(1.0),
            Oil.DYNAMIC_VISCOSITY,
        ),
    )
    losses = {
        "mesh": Term(
            mesh_loss.mesh_loss, (Loaded(value(torque)), value(600.0), friction, value(0.14))
        ),
        "bearing": Term(
            bearing_loss.bearing_loss,
            (
                Term(
                    bearing_loss.oil_drag_moment,
                    (value(4.0), value(600.0), value(0.057), Oil.VISCOSITY),
                ),
                Term(
                    bearing_loss.load_moment,
                    (value(0.0007), Loaded(value(2000.0)), value(0.057)),
                ),
                value(600.0),
            ),
        ),
        "seal": Term(
            auxiliary_loss.lip_loss,
            (value(1), value("FKM"), value(0.05), value(240.0), value(100e-6), Oil.TEMPERATURE),
        ),
    }
    sinks = {
        "case": Term(
            case_flow,
            (
                Oil.TEMPERATURE,
                value(air),
                value(101325.0),
                value(speed),
                value(False),
                value(0.3),
                value(area),
                value(0.1),
                value(0.02),
                value(0.003),
                value(155.0),
                value(0.92),
            ),
        ),
        "joint": Term(heat.joint_flow, (value(joint), value(1.0), Oil.TEMPERATURE, value(engine))),
    }
    return HeatModel(OIL, losses, sinks, min(air, engine))


@settings(max_examples=40, deadline=None)
@given(
    st.floats(0.0, 300.0),
    st.floats(0.1, 0.6),
    st.floats(260.0, 320.0),
    st.floats(0.0, 60.0),
    st.floats(0.0, 40.0),
    st.floats(260.0, 390.0),
)
def test_energy_balance_closes(torque, area, air, speed, joint, engine):
    model = drive(torque, area, air, speed, joint, engine)
    found = model.steady()
    lost = model.lost(found.number)
    assert model.rejected(found.number) == pytest.approx(lost, rel=1e-9, abs=1e-7)


@settings(max_examples=15, deadline=None)
@given(st.floats(20.0, 150.0), st.floats(1.05, 2.0))
def test_more_torque_and_less_area_are_hotter(torque, more):
    assert drive(torque * more).steady().number > drive(torque).steady().number
    assert drive(torque, area=0.3 / more).steady().number > drive(torque).steady().number
    assert drive(torque, speed=30.0 * more).steady().number < drive(torque).steady().number


def test_steady_temperature_against_scipy():
    model = drive()
    expected = brentq(model.net, 311.0, 600.0, xtol=1e-10)
    assert model.steady().number == pytest.approx(expected, abs=1e-7)


def test_derivation_shows_the_sums_and_the_residual():
    found = drive().steady()
    trial, lost, rejected, residual = found.inputs
    assert found.value == trial.value == balanced_temperature(trial.value, 0.0, 0.0, 0.0)
    assert lost.number - rejected.number == pytest.approx(residual.number, abs=1e-9)
    assert abs(residual.number) <= 1e-9 * lost.number
    assert sum(part.number for part in lost.inputs) == pytest.approx(lost.number)
    assert "bracketed root" in trial.origin


def test_hotter_engine_heats_the_drive():
    model = drive(torque=5.0, engine=390.0, joint=20.0)
    found = model.steady().number
    assert model.breakdown(value(found, "K"))["joint"].number < 0.0
    assert found > drive(torque=5.0, engine=390.0, joint=0.0).steady().number


def test_without_any_surface_nothing_settles():
    model = drive()
    bare = HeatModel(OIL, model.losses, {}, 311.0)
    assert bare.settle() is None
    assert "nothing that is stated cools" in bare.steady().because


def test_far_too_hot_is_said_as_it_is():
    """Answers far above a limit mean that a cooler is missing (note of OIL-H10)."""
    found = drive(torque=3000.0, area=0.05, speed=0.0, joint=0.0).steady()
    assert found.number > 473.15


def test_power_at_a_limit():
    model = drive()
    limit = 383.15
    factor = model.power_factor(limit, 50.0)
    assert model.net(limit, factor) == pytest.approx(0.0, abs=1e-6)
    assert factor > 1.0
    assert model.power_factor(limit, 1.01) == 1.01
    hot = drive(air=375.0, engine=400.0, joint=60.0)
    assert hot.power_factor(376.0, 4.0) == 0.0


def test_warm_up_against_scipy():
    model, content = drive(air=273.15, engine=273.15, joint=0.0), 20e3
    time = model.warm_up(273.15, 313.15, content)
    solved = solve_ivp(
        lambda _, state: [model.net(state[0]) / content],
        (0.0, time),
        [273.15],
        rtol=1e-9,
        atol=1e-9,
    )
    assert solved.y[0][-1] == pytest.approx(313.15, abs=0.02)
    assert model.warm_up(313.15, 300.0, content) == 0.0
    assert model.warm_up(273.15, 500.0, content) == DAY


def test_wall_lies_between_oil_and_air():
    arguments = (311.0, 101325.0, 20.0, False, 0.3, 0.3, 0.0, 0.0, 0.0, 155.0, 0.92)
    flow = case_flow(373.15, *arguments)
    wall = 373.15 - flow / (OIL_FILM * 0.3)
    assert 311.0 < wall < 373.15
    assert case_flow(311.0, *arguments) == 0.0
    assert case_flow(300.0, *arguments) < 0.0
    with pytest.raises(OutOfRange, match="no surface"):
        case_flow(373.15, *arguments[:5], 0.0, *arguments[6:])


def test_fins_radiate_no_more_than_the_case_they_stand_on():
    """By hand at the wall found: Stefan and Boltzmann on A alone, h on A and the fins.

    Still air with h from the plate law; 20 mm fins of 3 mm aluminium: eta = tanh(m L)/(m L),
    m = sqrt(2 h/(lambda t)), L lengthened by t/2 or not changes it by less than 1e-3.
    """
    flow = case_flow(373.15, 311.0, 101325.0, 0.0, False, 0.3, 0.3, 0.2, 0.02, 0.003, 155.0, 0.92)
    wall = 373.15 - flow / (OIL_FILM * 0.3)
    radiated = 0.92 * 5.670374e-8 * 0.3 * (wall**4 - 311.0**4)
    h = convection.still_air_coefficient(wall, 311.0, 0.3, 101325.0)
    m = math.sqrt(2.0 * h / (155.0 * 0.003))
    share = math.tanh(m * 0.02) / (m * 0.02)
    carried = h * (0.3 + share * 0.2) * (wall - 311.0)
    assert flow == pytest.approx(radiated + carried, rel=2e-3)


def test_ducted_air_cools_more_than_open():
    arguments = (0.3, 0.3, 0.0, 0.0, 0.0, 155.0, 0.25)
    ducted = case_flow(373.15, 311.0, 101325.0, 20.0, True, *arguments)
    assert ducted > case_flow(373.15, 311.0, 101325.0, 20.0, False, *arguments)


def test_a_term_names_all_that_is_missing():
    from checker.known import Unknown

    missing = term(heat.surface_flow, Unknown((("a",),)), value(1.0), loaded(Unknown((("b",),))))
    assert missing.missing == (("a",), ("b",))


def test_a_term_gives_one_number_both_ways():
    model = drive()
    states = model.oil.known(value(350.0, "K"))
    for name, each in model.losses.items():
        assert each.known(states).number == pytest.approx(each.at(model.state(350.0)), rel=1e-12), (
            name
        )
    assert compute(heat.cooler_than, value(3.0, "K"), value(1.0, "ΔK")).number == 2.0
