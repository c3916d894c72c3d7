"""What moves air and oil between drive, engine and air."""

import math

import pytest
from fluids import dP_from_K
from fluids.friction import friction_laminar

from checker.mechanics import propeller, transfer
from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange


@pytest.mark.parametrize("airspeed", [1.0, 25.0, 60.0])
def test_slipstream_is_as_far_beyond_the_disc_as_the_disc_beyond_the_air(airspeed):
    """Momentum theory: the disc meets the mean of the speeds ahead and behind."""
    power, diameter, density = 60e3, 1.7, 1.1
    disc = propeller.disc_speed(power, airspeed, diameter, density)
    thrust = propeller.ideal_thrust(power, airspeed, diameter, density)
    behind = transfer.slipstream_speed(airspeed, thrust, diameter, density)
    assert (airspeed + behind) / 2 == pytest.approx(disc, rel=1e-6)
    assert transfer.slipstream_speed(airspeed, -200.0, diameter, density) == airspeed


def test_outlet_takes_the_dynamic_pressure_by_its_facing():
    # 50 m/s at 1.225 kg/m3: 1531 Pa
    assert transfer.outlet_pressure("forward", 50.0, 1.225) == pytest.approx(1531.25)
    assert transfer.outlet_pressure("aft", 50.0, 1.225) == pytest.approx(-1531.25)
    assert transfer.outlet_pressure("sheltered", 50.0, 1.225) == 0.0
    with pytest.raises(OutOfRange, match="facing"):
        transfer.outlet_pressure("up", 50.0, 1.225)


def test_siphon_against_fluids():
    density, viscosity, bore, length, rise = 850.0, 0.012, 0.012, 1.2, 0.4
    pressure = density * STANDARD_GRAVITY * rise + 500.0
    flow = transfer.siphon_flow(-pressure, rise, density, viscosity, (bore,), (length,))
    speed = flow / (math.pi * bore**2 / 4)
    friction = friction_laminar(density * speed * bore / viscosity) * length / bore
    assert dP_from_K(friction, rho=density, V=speed) == pytest.approx(500.0)
    assert transfer.siphon_flow(3000.0, rise, density, viscosity, (bore,), (length,)) == 0.0
    halves = transfer.siphon_flow(
        pressure, rise, density, viscosity, (bore, bore), (length / 2, length / 2)
    )
    assert halves == pytest.approx(flow)
    with pytest.raises(OutOfRange, match="length"):
        transfer.siphon_flow(pressure, rise, density, viscosity, (), ())


def test_leak_against_fluids():
    flow = transfer.leak_flow(-4000.0, 0.042, 0.1e-3, 860.0)
    speed = -flow / (math.pi * 0.042 * 0.1e-3)
    assert dP_from_K(1 / 0.6**2, rho=860.0, V=speed) == pytest.approx(4000.0)
    assert flow < 0.0
    with pytest.raises(OutOfRange, match="gap"):
        transfer.leak_flow(100.0, 0.042, -1e-4, 860.0)


def test_share_in_an_hour():
    assert transfer.share_in_an_hour(-1e-3 / 3600.0, 4e-3) == pytest.approx(0.25)
    assert transfer.pressure_size(-3.0) == 3.0
    with pytest.raises(OutOfRange, match="no oil"):
        transfer.share_in_an_hour(1e-6, 0.0)
