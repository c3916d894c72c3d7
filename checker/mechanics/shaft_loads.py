"""Forces and couples on a shaft to the right and upwards, seen from engine to propeller.

The tooth forces are those of ``tooth_forces``; looking towards the propeller, what is right-handed
about the shaft turns from up over right to down. A couple in a plane is positive where it raises
the slope of the shaft in that plane.
"""

import math
from collections.abc import Sequence

from checker.mechanics.equation import OutOfRange, equation

_STATICS = "statics at the working pitch point; signs as in tooth_forces"


@equation(
    "e",
    "e = (x₂ − x₁) / √((x₂ − x₁)² + (y₂ − y₁)²)",
    unit="1",
    source="geometry: direction from an axis to that of its mate",
    own="x₁ [m]",
    mate="x₂ [m]",
    own_other="y₁ [m]",
    mate_other="y₂ [m]",
)
def direction(own: float, mate: float, own_other: float, mate_other: float) -> float:
    """Part along one axis of the unit vector from a shaft to its mate.

    Raises:
        OutOfRange: both axes are one.
    """
    distance = math.hypot(mate - own, mate_other - own_other)
    if distance == 0.0:
        raise OutOfRange("mate: both axes stand at one place")
    return (mate - own) / distance


@equation(
    "F_right",
    "F_right = −F_r e_right + F_θ e_up",
    unit="N",
    source=_STATICS,
    radial="F_r [N]",
    peripheral="F_θ [N]",
    right="e_right [1]",
    up="e_up [1]",
)
def force_to_the_right(radial: float, peripheral: float, right: float, up: float) -> float:
    """Tooth force to the right on a gear whose mate stands in direction e."""
    return -radial * right + peripheral * up


@equation(
    "F_up",
    "F_up = −F_r e_up − F_θ e_right",
    unit="N",
    source=_STATICS,
    radial="F_r [N]",
    peripheral="F_θ [N]",
    right="e_right [1]",
    up="e_up [1]",
)
def force_upwards(radial: float, peripheral: float, right: float, up: float) -> float:
    """Tooth force upwards on a gear whose mate stands in direction e."""
    return -radial * up - peripheral * right


@equation(
    "M",
    "M = −F_x (d_w/2) e",
    unit="N m",
    source=_STATICS,
    axial="F_x [N]",
    pitch_diameter="d_w [m]",
    direction="e [1]",
)
def couple_of_axial_force(axial: float, pitch_diameter: float, direction: float) -> float:
    """Couple of an axial tooth force in one plane, as it acts beside the axis."""
    return -axial * pitch_diameter / 2.0 * direction


@equation(
    "F_r",
    "F_r = √(R_right² + R_up²) + |R_turn| + |R_yaw|",
    unit="N",
    source="statics; a force that turns with the shaft adds up with the fixed one once a turn, "
    "that of yawed flow in the plane in which it is worst",
    right="R_right [N]",
    up="R_up [N]",
    turning="R_turn [N]",
    yawed="R_yaw [N]",
)
def radial_reaction(right: float, up: float, turning: float, yawed: float) -> float:
    """Largest radial force on a support.

    R_yaw is that of yawed flow in a plane of its own: climb, dive and skid to either side turn
    that plane about the shaft, and in the worst of them it adds to the rest.
    """
    return math.hypot(right, up) + abs(turning) + abs(yawed)


@equation(
    "−F",
    "F′ = −F",
    unit="N",
    source="action and reaction between two bodies",
    force="F [N]",
)
def opposite(force: float) -> float:
    """What a support of one shaft puts on the shaft that carries it."""
    return -force


@equation(
    "x_set",
    "x_set = (Σ x_i) / n",
    unit="m",
    source="a matched set counts as one support in its middle (common practice)",
    stations="x_i [m]",
)
def middle_of_set(stations: Sequence[float]) -> float:
    """Middle of the bearings of a matched set, in whatever order they are listed."""
    return math.fsum(stations) / len(stations)


@equation(
    "x_m",
    "x_m = (x₁ + x₂) / 2",
    unit="m",
    source="geometry: half way between",
    station="x₁ [m]",
    other="x₂ [m]",
)
def middle(station: float, other: float) -> float:
    """Middle between two stations."""
    return (station + other) / 2.0


@equation(
    "x_blade",
    "x_blade = x_outermost + l",
    unit="m",
    source="definition",
    outermost="x_outermost [m]",
    overhang="l [m]",
)
def overhung_station(outermost: float, overhang: float) -> float:
    """Station of the blade plane beyond the outermost bearing."""
    return outermost + overhang


@equation(
    "M",
    "M = √(M_right² + M_up²) + |M_yaw|",
    unit="N m",
    source="statics: two planes across each other, yawed flow in the plane in which it is worst",
    right="M_right [N m]",
    up="M_up [N m]",
    yawed="M_yaw [N m]",
)
def resultant_moment(right: float, up: float, yawed: float) -> float:
    """Bending moment from its parts in two planes and that of yawed flow in any plane."""
    return math.hypot(right, up) + abs(yawed)


@equation(
    "θ",
    "θ = √(Δθ_right² + Δθ_up²) + |Δθ_yaw|",
    unit="rad",
    source="geometry: slopes in two planes across each other, yawed flow in the worst plane",
    right="Δθ_right [rad]",
    up="Δθ_up [rad]",
    yawed="Δθ_yaw [rad]",
)
def resultant_slope(right: float, up: float, yawed: float) -> float:
    """Angle between two shafts at their mesh, or of a shaft in its bearing."""
    return math.hypot(right, up) + abs(yawed)


@equation(
    "v",
    "v = v_own + v₁ + (v₂ − v₁) (x − x₁) / (x₂ − x₁)",
    unit="m",
    source="geometry: a member on a bent shaft moves with its seats",
    own="v_own [m]",
    station="x [m]",
    first="x₁ [m]",
    last="x₂ [m]",
    first_moved="v₁ [m]",
    last_moved="v₂ [m]",
)
def moved_seat(
    own: float, station: float, first: float, last: float, first_moved: float, last_moved: float
) -> float:
    """Deflection of a member at a station: its own, and that of the line through its seats.

    Raises:
        OutOfRange: both seats stand at one station.
    """
    tilt = tilted_seat(0.0, station, first, last, first_moved, last_moved)
    return own + first_moved + tilt * (station - first)


@equation(
    "θ",
    "θ = θ_own + (v₂ − v₁) / (x₂ − x₁)",
    unit="rad",
    source="geometry: a member on a bent shaft tilts with its seats",
    own="θ_own [rad]",
    station="x [m]",
    first="x₁ [m]",
    last="x₂ [m]",
    first_moved="v₁ [m]",
    last_moved="v₂ [m]",
)
def tilted_seat(
    own: float, station: float, first: float, last: float, first_moved: float, last_moved: float
) -> float:
    """Slope of a member: its own, and that of the line through its seats, at any station.

    Raises:
        OutOfRange: both seats stand at one station.
    """
    if first == last:
        raise OutOfRange("last: both seats stand at one station")
    return own + (last_moved - first_moved) / (last - first)


@equation(
    "Δv",
    "Δv = v₁ − v₂",
    unit="m",
    source="definition",
    deflection="v₁ [m]",
    other="v₂ [m]",
)
def deflection_difference(deflection: float, other: float) -> float:
    """Deflection of one shaft against another in one plane."""
    return deflection - other


@equation(
    "Δv",
    "Δv = √(Δv_right² + Δv_up²) + |Δv_yaw|",
    unit="m",
    source="geometry: deflections in two planes, yawed flow in the worst plane",
    right="Δv_right [m]",
    up="Δv_up [m]",
    yawed="Δv_yaw [m]",
)
def relative_deflection(right: float, up: float, yawed: float) -> float:
    """How far two shafts move against each other at their mesh."""
    return math.hypot(right, up) + abs(yawed)


@equation(
    "f_sh",
    "f_sh = b |Δθ · t|",
    unit="m",
    source="ISO 6336-1:2006, 7: equivalent misalignment by shaft bending (from memory)",
    face_width="b [m]",
    slope="Δθ·t [rad]",
)
def misalignment(face_width: float, slope: float) -> float:
    """Gap at the end of the faces by the slope of the shafts along the line of action."""
    return face_width * abs(slope)


@equation(
    "Δθ·t",
    "Δθ·t = |Δθ_right t_right + Δθ_up t_up| + |Δθ_yaw|",
    unit="rad",
    source="geometry: slopes along the transverse line of action, yawed flow in the worst plane",
    right="Δθ_right [rad]",
    up="Δθ_up [rad]",
    yawed="Δθ_yaw [rad]",
    along_right="t_right [1]",
    along_up="t_up [1]",
)
def slope_along(
    right: float, up: float, yawed: float, along_right: float, along_up: float
) -> float:
    """Slope between two shafts in the direction in which the teeth press on each other."""
    return abs(right * along_right + up * along_up) + abs(yawed)


@equation(
    "M",
    "M = M₁ + M₂",
    unit="N m",
    source="statics: couples in one plane add",
    couple="M₁ [N m]",
    other="M₂ [N m]",
)
def plane_couple(couple: float, other: float) -> float:
    """Sum of two couples in one plane, each with its sign."""
    return couple + other


@equation(
    "Δθ",
    "Δθ = θ₁ − θ₂",
    unit="rad",
    source="definition",
    slope="θ₁ [rad]",
    other="θ₂ [rad]",
)
def slope_difference(slope: float, other: float) -> float:
    """Slope of one shaft against another in one plane."""
    return slope - other


@equation(
    "t",
    "t = F₁ / √(F₁² + F₂²), 0 without force",
    unit="1",
    source="geometry: the line of action lies along the tooth force",
    force="F₁ [N]",
    across="F₂ [N]",
)
def share_of_resultant(force: float, across: float) -> float:
    """Part of a direction along one axis, from the two parts of a force."""
    size = math.hypot(force, across)
    return force / size if size > 0.0 else 0.0


@equation(
    "f_sh",
    "f_sh = b |Δθ · t| (w b / F_t)",
    unit="m",
    source="ISO 6336-1:2006, 7, f_sh by shaft bending (from memory); bending grows with its load",
    face_width="b [m]",
    slope="Δθ·t [rad]",
    force="F_t [N]",
    load="w [N/m]",
)
def misalignment_under(face_width: float, slope: float, force: float, load: float) -> float:
    """Gap at the end of the faces under a line load, from the slope under a tooth force.

    Raises:
        OutOfRange: no tooth force bends the shafts.
    """
    if force <= 0.0:
        raise OutOfRange("force must be above zero: the mesh carries no load")
    return misalignment(face_width, slope) * load * face_width / force


@equation(
    "f_sh",
    "f_sh = max(f_sh,C, f_sh,B)",
    unit="m",
    source="ISO 6336-1:2006, 7: method C, or the computed bending (from memory)",
    estimated="f_sh,C [m]",
    bent="f_sh,B [m]",
)
def larger_misalignment(estimated: float, bent: float) -> float:
    """The larger of the misalignment by method C and of the one by bending of both shafts."""
    return max(estimated, bent)


@equation(
    "f_sh,B − f_sh",
    "f_sh,B − f_sh",
    unit="m",
    source="definition",
    bent="f_sh,B [m]",
    stated="f_sh [m]",
)
def misalignment_beyond(bent: float, stated: float) -> float:
    """Misalignment by bending of both shafts beyond the stated one; below zero within it."""
    return bent - stated


@equation(
    "T′",
    "T′ = T · T_peak / T_m",
    unit="N m",
    source="derived: a swinging torque swings every tooth force of its shaft with it, once",
    torque="T [N m]",
    peak="T_peak [N m]",
    mean="T_m [N m]",
)
def torque_at_peak(torque: float, peak: float, mean: float) -> float:
    """Torque in the moment in which the torque of a shaft is at its peak.

    Raises:
        OutOfRange: the shaft passes no torque.
    """
    if mean <= 0.0:
        raise OutOfRange("mean must be above zero: the shaft passes no torque")
    return torque * (peak / mean)
