"""Inertia and stiffness of parts, stiffness of a mesh, and the tests on the bench."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import iso_root
from checker.mechanics import mesh_stiffness as mesh
from checker.mechanics import torsional_parts as parts
from checker.mechanics.equation import OutOfRange


def test_cylinder_by_its_mass():  # J = m (D² + d²) / 8, by hand
    mass = 7850 * math.pi / 4 * (0.24**2 - 0.04**2) * 0.02
    inertia = parts.cylinder_inertia(0.02, 0.24, 0.04, 7850)
    assert inertia == pytest.approx(mass * (0.24**2 + 0.04**2) / 8)


def test_thin_tube_twists_as_a_ring():  # C = 2 π r³ t G / l
    stiffness = parts.cylinder_stiffness(0.5, 0.1001, 0.0999, 80e9)
    assert stiffness == pytest.approx(2 * math.pi * 0.05**3 * 1e-4 * 80e9 / 0.5, rel=1e-3)


def test_bifilar_swing_of_a_bar():
    # A uniform bar of length l on wires at its ends (d = l): J = m l²/12, so τ = 2 π √(L/(3 g)).
    mass, length, wire = 9.8, 1.75, 2.0
    period = 2 * math.pi * math.sqrt(wire / (3 * 9.80665))
    inertia = parts.bifilar_inertia(mass, length, wire, period)
    assert inertia == pytest.approx(mass * length**2 / 12)


def test_trifilar_swing_of_a_ring_is_a_pendulum():
    # A thin ring on wires at its own radius: J = m R², and τ is that of a plain pendulum.
    period = 2 * math.pi * math.sqrt(1.5 / 9.80665)
    assert parts.trifilar_inertia(4.0, 0.3, 1.5, period) == pytest.approx(4.0 * 0.3**2)


def test_two_and_three_wires_agree():  # both are m g R²/L as a torsion spring
    two = parts.bifilar_inertia(5.0, 0.6, 2.0, 1.7)
    three = parts.trifilar_inertia(5.0, parts.radius(0.6), 2.0, 1.7)
    assert two == pytest.approx(three)


def test_blades_on_their_own_spring():  # one mass on a spring
    spring = parts.blade_stiffness(0.3, 60.0)
    assert math.sqrt(spring / 0.3) / math.tau == pytest.approx(60.0)


def test_twist_test():
    assert parts.static_stiffness(100.0, 0.4) == pytest.approx(250.0)
    assert parts.dynamic_stiffness(250.0, 1.4) == pytest.approx(350.0)
    with pytest.raises(OutOfRange, match="twist"):
        parts.static_stiffness(100.0, 0.0)


@given(st.floats(10.0, 500.0), st.floats(1.2, 3.0))
@settings(max_examples=30, deadline=None)
def test_clutch_stiffens_a_little_with_load_and_more_with_size(torque, more):
    given_ = (16, 1, 0.026, math.radians(3), 0.018)
    spring = parts.clutch_stiffness(torque, *given_)
    assert spring < parts.clutch_stiffness(more * torque, *given_) < more * spring
    wider = parts.clutch_stiffness(torque, 16, 2, *given_[2:])
    assert spring < wider < 2.0 * spring + 1e-9


def test_clutch_energy():
    # Work of the torque goes into the squeeze: T = dU/dφ with F_n φ r tan α = two approaches.
    torque, count, radius, angle, length = 100.0, 14, 0.026, math.radians(3), 0.018
    normal = torque / (count * radius * math.tan(angle))
    approach = 3.84e-5 * normal**0.9 / 18**0.8 * 1e-3
    twist = 2.0 * approach / (radius * math.tan(angle))
    spring = parts.clutch_stiffness(torque, count, 1, radius, angle, length)
    assert spring == pytest.approx(torque / twist)


def test_reflected_energy_is_the_same():
    assert parts.reflected_inertia(0.52, 2.5) * 2.5**2 == pytest.approx(0.52)
    with pytest.raises(OutOfRange, match="ratio"):
        parts.reflected_inertia(0.52, 0.0)
    with pytest.raises(OutOfRange, match="inside"):
        parts.cylinder_inertia(0.02, 0.04, 0.05, 7850)
    with pytest.raises(OutOfRange, match="share"):
        parts.share_of_inertia(1.0, 1.2)
    with pytest.raises(OutOfRange, match="part"):
        parts.rest_of_inertia(1.0, 1.2)


def test_steel_spur_teeth_are_as_stiff_as_the_standard_says():
    # ISO 6336-1:2006, 9.3.3 (from memory): c′ = 14 and c_γ = 20 N/(mm µm) as common values
    single = mesh.single_stiffness(25, 60, 0.2, 0.0, 1.25, math.radians(20), 0.0)
    assert single / 1e9 == pytest.approx(14.0, rel=0.1)
    assert mesh.mesh_stiffness(single, 1.6) / 1e9 == pytest.approx(20.0, rel=0.1)


def test_mesh_spring_on_the_driver():  # force over deflection on the line of action
    spring = mesh.torsional_mesh_stiffness(20e9, 0.03, 0.066)
    angle = 1e-5
    force = 20e9 * 0.03 * angle * 0.033
    assert spring * angle == pytest.approx(force * 0.033)


def test_virtual_teeth_of_a_spur_gear_are_its_own():
    assert iso_root.virtual_teeth(27, 0.0, 0.0) == 27
    assert iso_root.virtual_teeth(27, math.radians(16.9), math.radians(18)) > 27


def test_without_contact_between_pairs_there_is_no_stiffness():
    with pytest.raises(OutOfRange, match="contact is lost"):
        mesh.mesh_stiffness(14e9, 0.98)


@given(st.floats(17, 80), st.floats(17, 120), st.floats(0.0, 0.3))
@settings(max_examples=30, deadline=None)
def test_more_teeth_and_shift_stiffen_the_pair(teeth, mate, shift):
    angles = (math.radians(20), 0.0)
    base = mesh.single_stiffness(teeth, mate, shift, 0.0, 1.25, *angles)
    assert mesh.single_stiffness(teeth + 5, mate, shift, 0.0, 1.25, *angles) >= 0.999 * base
    assert mesh.single_stiffness(teeth, mate, shift + 0.1, 0.0, 1.25, *angles) > base
    with pytest.raises(OutOfRange, match="shift"):
        mesh.single_stiffness(teeth, mate, 2.5, 0.0, 1.25, *angles)
