"""Tooth forces of an external cylindrical pair at the working circle, friction left out.

Signs. The x axis runs along the shafts, from the engine towards the propeller; an angle, a speed
or a torque about it is positive when right-handed about +x (it advances a right-hand screw along
+x). Of a gear:

* ``rotation`` is +1 where it turns positively about +x, -1 where it turns the other way;
* ``role`` is +1 where the mate drives it, -1 where it drives the mate;
* ``hand`` is +1 for a right-hand helix, -1 for a left-hand one. A hand looks the same from both
  ends of the shaft, so it needs no axis.

The mate pushes a driven tooth forward, the way it turns, and holds a driving tooth back. So the
peripheral force on the gear is ``rotation * role * F_tw`` about +x. The contact force has no part
along the tooth trace, which turns by +tan(β)/r per unit of x on a right-hand gear; the part along
x is therefore ``-hand * tan(β_w)`` times the peripheral force. The radial force always points from
the mesh to the gear's own axis. With the mate's axis in direction ψ from the gear's (in the plane
across the shafts, right-handed about +x), e_r = (cos ψ, sin ψ) and e_θ = (−sin ψ, cos ψ), the force
on the gear across the shafts is −F_r e_r + F_θ e_θ. All act at the working pitch point, (d_w/2) e_r
from the axis, so the couple of F_x belongs in the bearing reactions. An idler has one such set of
forces at each mesh.
"""

from math import cos, tan
from typing import Literal

from checker.mechanics.equation import equation

Sign = Literal[-1, 1]

_FORCES = "statics of the contact normal at the working pitch point (from memory: ISO 6336-1, 2006)"


@equation(
    "F_tw",
    "F_tw = 2 |T| / d_w",
    unit="N",
    source=_FORCES,
    torque="T [N m]",
    working_pitch_diameter="d_w [m]",
)
def tangential_force(torque: float, working_pitch_diameter: float) -> float:
    """Size of the tangential force at the working circle that carries the gear's torque."""
    return 2.0 * abs(torque) / working_pitch_diameter


@equation(
    "F_r",
    "F_r = F_tw tan α_wt",
    unit="N",
    source=_FORCES,
    tangential_force="F_tw [N]",
    working_pressure_angle="α_wt [rad]",
)
def radial_force(tangential_force: float, working_pressure_angle: float) -> float:
    """Force that parts the shafts, at any centre distance; it points to the gear's own axis.

    The textbook form with the pressure angle of the reference circle is low at spread centres.
    """
    return tangential_force * tan(working_pressure_angle)


@equation(
    "F_θ",
    "F_θ = rotation · role · F_tw",
    unit="N",
    source=_FORCES,
    tangential_force="F_tw [N]",
    rotation="rotation [1]",
    role="role [1]",
)
def peripheral_force(tangential_force: float, rotation: Sign, role: Sign) -> float:
    """Tangential force on the gear with its sense: positive is right-handed about +x."""
    return rotation * role * tangential_force


@equation(
    "F_x",
    "F_x = −hand · rotation · role · F_tw tan β_w",
    unit="N",
    source=_FORCES,
    tangential_force="F_tw [N]",
    working_helix_angle="β_w [rad]",
    hand="hand [1]",
    rotation="rotation [1]",
    role="role [1]",
)
def axial_force(
    tangential_force: float, working_helix_angle: float, hand: Sign, rotation: Sign, role: Sign
) -> float:
    """Axial force on the gear along +x, from the engine towards the propeller.

    In numbers it equals T tan β / r at the reference circle: the lead, and with it the thrust, does
    not change with the centre distance.
    """
    return -hand * peripheral_force(tangential_force, rotation, role) * tan(working_helix_angle)


@equation(
    "F_x",
    "F_x = +F_p for a tractor, −F_p for a pusher",
    unit="N",
    source="statics; positive towards the propeller",
    thrust="F_p [N]",
    installation="installation []",
)
def thrust_on_shaft(thrust: float, installation: str) -> float:
    """Propeller thrust as an axial force on its shaft along +x."""
    return thrust if installation == "tractor" else -thrust


@equation(
    "ΣF_x",
    "ΣF_x = F_x,1 + F_x,2",
    unit="N",
    source="statics: forces on one body add",
    force="F_x,1 [N]",
    other="F_x,2 [N]",
)
def axial_sum(force: float, other: float) -> float:
    """Sum of two axial forces on one shaft."""
    return force + other


@equation(
    "Σ|F_x|",
    "Σ|F_x| = |F_x,1| + |F_x,2|",
    unit="N",
    source="definition",
    force="F_x,1 [N]",
    other="F_x,2 [N]",
)
def axial_size_sum(force: float, other: float) -> float:
    """Sum of the sizes of axial forces on one shaft, as if none balanced another."""
    return abs(force) + abs(other)


@equation(
    "q_x",
    "q_x = |ΣF_x| / Σ|F_x|, 0 without forces",
    unit="1",
    source="definition",
    net_force="ΣF_x [N]",
    size_sum="Σ|F_x| [N]",
)
def residual_thrust_share(net_force: float, size_sum: float) -> float:
    """What is left of the axial forces on a shaft: 0 where they cancel, 1 where they add up."""
    return abs(net_force) / size_sum if size_sum > 0.0 else 0.0


@equation(
    "M_x",
    "M_x = |F_x| d_w / 2",
    unit="N m",
    source="statics: force times radius",
    axial_force="F_x [N]",
    working_pitch_diameter="d_w [m]",
)
def axial_couple(axial_force: float, working_pitch_diameter: float) -> float:
    """Size of the couple by which the axial force of a mesh tilts the shaft.

    The bearings take it as radial load, also where the axial forces themselves cancel.
    """
    return 0.5 * abs(axial_force) * working_pitch_diameter


@equation(
    "ΣM_x",
    "ΣM_x = M_x,1 + M_x,2",
    unit="N m",
    source="definition; the most the couples can be, whatever the directions of the meshes",
    couple="M_x,1 [N m]",
    other="M_x,2 [N m]",
)
def couple_sum(couple: float, other: float) -> float:
    """Sum of the sizes of two couples on one shaft."""
    return couple + other


@equation(
    "w_n",
    "w_n = w_t / (cos α_t cos β_b)",
    unit="N/m",
    source="the tangential load at the reference circle turned normal to the flank",
    line_load="w_t [N/m]",
    transverse_pressure_angle="α_t [rad]",
    base_helix_angle="β_b [rad]",
)
def normal_line_load(
    line_load: float, transverse_pressure_angle: float, base_helix_angle: float
) -> float:
    """Load normal to the flanks per face width [N/m]."""
    return line_load / (cos(transverse_pressure_angle) * cos(base_helix_angle))
