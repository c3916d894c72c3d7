"""Hub moment of a propeller in yawed flow, against blade elements integrated over a turn."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.mechanics import load_cases, propeller
from checker.mechanics.equation import OutOfRange

AIR, SLOPE = 1.225, 2 * math.pi
DIAMETER, SPEED, CHORD = 1.75, 245.0, 0.11
RADIUS = DIAMETER / 2


def bound(thrust, airspeed, angle, blades=3, speed=SPEED):
    return load_cases.inflow_moment(
        load_cases.cross_flow(airspeed, angle),
        thrust,
        speed,
        propeller.disc_speed_of_thrust(thrust, airspeed, DIAMETER, AIR),
        CHORD,
        SLOPE,
        AIR,
        DIAMETER,
        blades,
    )


def turned(airspeed, angle, pitch, *, hub=0.0, taper=0.0, drag=0.0, wake=False):
    """Mean thrust, and the moments of three blades in both planes, by numerical integration.

    True angles at every section and azimuth; a blade of constant geometric pitch, its chord at two
    thirds of the radius as stated; induced speed by momentum. With ``wake``, it grows from front
    to rear by K x cos θ, K = tan(χ/2) of the skew angle χ (Coleman, NACA ARR L5E10; from memory).
    """
    radii = np.linspace(max(hub, 1e-3), 1.0, 400) * RADIUS
    chords = CHORD * (1 + taper * (radii / RADIUS - 2 / 3))
    twist = np.arctan(0.75 * RADIUS * math.tan(pitch) / radii)
    azimuths = np.linspace(0.0, math.tau, 36, endpoint=False)[:, None]

    def around(induced):
        along, across = airspeed * math.cos(angle), airspeed * math.sin(angle)
        skew = math.tan(math.atan2(across, along + induced) / 2) if wake else 0.0
        through = along + induced * (1 + skew * radii / RADIUS * np.cos(azimuths))
        turning = SPEED * radii + across * np.sin(azimuths)
        flow = np.arctan2(through, turning)
        pressure = AIR / 2 * chords * (through**2 + turning**2)
        lift = SLOPE * (twist - flow)
        per_length = pressure * (lift * np.cos(flow) - drag * np.sin(flow))
        moments = np.trapezoid(per_length * radii, radii)
        parts = (moments * np.sin(azimuths[:, 0]), moments * np.cos(azimuths[:, 0]))
        thrust = 3 * np.trapezoid(per_length, radii).mean()
        return thrust, *(3 * part.mean() for part in parts)

    disc = 2 * AIR * math.pi * RADIUS**2
    induced = brentq(lambda v: around(v)[0] - disc * (airspeed + v) * v, 0.0, 60.0)
    return around(induced)


@pytest.mark.parametrize(
    ("airspeed", "pitch"), [(15.0, 16.0), (30.0, 18.0), (30.0, 22.0), (45.0, 22.0), (60.0, 25.0)]
)
@pytest.mark.parametrize("angle", [3.0, 8.0, 15.0])
@pytest.mark.parametrize(
    "blade", [{}, {"hub": 0.2, "taper": -0.8, "drag": 0.01}], ids=["even", "tapered"]
)
def test_moment_bounds_that_of_blade_elements(airspeed, pitch, angle, blade):
    """Never below it, and above it by no more than cos φ, cos ψ and the hub leave."""
    angle = math.radians(angle)
    thrust, moment, other = turned(airspeed, angle, math.radians(pitch), **blade)
    found = bound(thrust, airspeed, angle)
    assert other == pytest.approx(0.0, abs=1e-9 * moment)
    assert 1.0 < found / moment < 1.25


@pytest.mark.parametrize(("airspeed", "pitch", "share"), [(15.0, 16.0, 0.4), (30.0, 18.0, 0.17)])
def test_bound_holds_with_the_wake_blown_aside(airspeed, pitch, share):
    angle, blade = math.radians(10.0), {"hub": 0.2, "taper": -0.8, "drag": 0.01}
    thrust, moment, other = turned(airspeed, angle, math.radians(pitch), wake=True, **blade)
    assert 0.1 < abs(other) / moment < share
    assert bound(thrust, airspeed, angle) > 0.99 * math.hypot(moment, other)


@given(st.floats(0.05, 0.4), st.floats(5.0, 60.0), st.floats(0.01, 0.2))
def test_moment_of_an_untwisted_rotor(pitch, through, angle):
    """Rotor theory for small inflow (from memory; W. Johnson, Helicopter Theory, and others).

    T = N ρ a c ω² R³ (θ/6 + λ/4) and a flapping moment of ρ a c ω² R⁴ μ (θ/3 + λ/4), λ upwards.
    """
    inflow, advance = -through / (SPEED * RADIUS), math.sin(angle) * 30.0 / (SPEED * RADIUS)
    blade = AIR * SLOPE * CHORD * SPEED**2
    thrust = 3 * blade * RADIUS**3 * (pitch / 6 + inflow / 4)
    moment = 3 / 2 * blade * RADIUS**4 * advance * (pitch / 3 + inflow / 4)
    if thrust >= 0.0:
        values = (CHORD, SLOPE, AIR, DIAMETER, 3)
        cross = load_cases.cross_flow(30.0, angle)
        found = load_cases.inflow_moment(cross, thrust, SPEED, through, *values)
        assert found == pytest.approx(moment, rel=1e-9)


def test_moment_is_of_the_order_of_a_fin_at_the_radius():
    """NACA Report 820, summary: a moment of the order of the side force at the radius.

    The side force is that of a fin of the projected side area of the blades, of aspect ratio 8, in
    the dynamic pressure at the disc. Without thrust a blade stands along the flow.
    """
    airspeed, angle = 50.0, math.radians(5.0)
    radii = np.linspace(1e-3, RADIUS, 2000)
    side = 3 / 2 * np.trapezoid(CHORD * np.sin(np.arctan(airspeed / (SPEED * radii))), radii)
    force = AIR / 2 * airspeed**2 * SLOPE * 8 / (8 + 2) * side * angle
    assert 0.5 < bound(0.0, airspeed, angle) / (force * RADIUS) < 2.0


def test_two_blades_double_the_moment():
    one, two = (bound(1200.0, 30.0, 0.15, blades) for blades in (3, 2))
    by_thrust = 30.0 * math.sin(0.15) * 1200.0 / SPEED
    assert two - 2 * by_thrust == pytest.approx(2 * 2 / 3 * (one - by_thrust))
    with pytest.raises(OutOfRange, match="two and more"):
        bound(1200.0, 30.0, 0.15, blades=1)
    with pytest.raises(OutOfRange, match="stands still"):
        bound(1200.0, 30.0, 0.15, speed=0.0)


def test_disc_speed_of_thrust():
    """PR-09: Irfan A. Khan, Fluid Mechanics, Example 5.8: 5372.2 lbf, an efficiency of 0.76."""
    airspeed = 220 * 0.44704
    through = propeller.disc_speed_of_thrust(
        5372.2 * 4.4482216, airspeed, 6 * 0.3048, 0.0022 * 515.3788
    )
    assert airspeed / through == pytest.approx(0.76027, rel=1e-3)
    assert propeller.disc_speed_of_thrust(-200.0, airspeed, 1.8, AIR) == airspeed
    with pytest.raises(OutOfRange, match="airspeed"):
        propeller.disc_speed_of_thrust(100.0, -1.0, 1.8, AIR)
