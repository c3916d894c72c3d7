"""Gears that turn in oil or in air: churning and windage."""

import math

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange, equation

_CHANGENET = "Changenet and Velex 2007 (from memory)"
_SLOW, _FAST = 6000.0, 9000.0  # critical Reynolds number of the two laws


@equation(
    "h",
    "h = max(r_a - (y - y_oil), 0), at most 2 r_a",
    unit="m",
    source="Plane geometry",
    axis_height="y [m]",
    tip_diameter="d_a [m]",
    oil_height="y_oil [m]",
)
def dip_depth(axis_height: float, tip_diameter: float, oil_height: float) -> float:
    """Depth ``h`` to which a gear dips into the oil, in m; 0 where it runs clear.

    Heights of axis and oil over the same datum, m. Source: geometry.
    """
    return min(max(tip_diameter / 2.0 - axis_height + oil_height, 0.0), tip_diameter)


@equation(
    "S_m",
    "S_m = r²(2θ - sin 2θ) + 2 r b θ + 2 z h_t b θ/(π cos α_t cos β), h_t = (d_a - d_f)/2, "
    "cos θ = 1 - h/r",
    unit="m2",
    source=_CHANGENET,
    dip="h [m]",
    pitch_diameter="d_w [m]",
    face_width="b [m]",
    teeth="z [1]",
    tip_diameter="d_a [m]",
    root_diameter="d_f [m]",
    pressure_angle="α_t [rad]",
    helix_angle="β [rad]",
)
def wetted_surface(
    dip: float,
    pitch_diameter: float,
    face_width: float,
    teeth: int,
    tip_diameter: float,
    root_diameter: float,
    pressure_angle: float,
    helix_angle: float,
) -> float:
    """Surface ``S_m`` of a gear under oil: both faces, rim and flanks, in m2.

    Lengths in m, angles in rad; ``dip`` under the tip circle is taken from the pitch circle, as
    the source does. Source: Changenet and Velex (from memory).
    """
    radius = pitch_diameter / 2.0
    depth = min(dip, pitch_diameter)
    angle = math.acos(1.0 - depth / radius)
    faces = radius**2 * (2.0 * angle - math.sin(2.0 * angle))
    rim = pitch_diameter * face_width * angle
    flanks = teeth * (tip_diameter - root_diameter) * face_width * angle
    return faces + rim + flanks / (math.pi * math.cos(pressure_angle) * math.cos(helix_angle))


@equation(
    "P_ch",
    "P_ch = ½ ρ ω³ r³ S_m C_m; Re_c = ω r b/ν, Fr = ω² r/g; Re_c < 6000: C_m = 1.366 (h/d)^0.45 "
    "(V/d³)^0.1 Fr^-0.6 Re_c^-0.21 (b/r)^0.21; Re_c > 9000: C_m = 3.644 (h/d)^0.1 (V/d³)^-0.35 "
    "Fr^-0.88 (b/r)^0.85; linear between",
    unit="W",
    source=_CHANGENET,
    speed="ω [rad/s]",
    dip="h [m]",
    wetted="S_m [m2]",
    pitch_diameter="d_w [m]",
    face_width="b [m]",
    oil_volume="V [m3]",
    density="ρ [kg/m3]",
    viscosity="ν [m2/s]",
)
def churning_loss(
    speed: float,
    dip: float,
    wetted: float,
    pitch_diameter: float,
    face_width: float,
    oil_volume: float,
    density: float,
    viscosity: float,
) -> float:
    """Power ``P_ch`` that a dipping gear loses to the oil, in W; 0 where it runs clear.

    SI arguments; ``oil_volume`` stands in the case. Valid for one gear in a bath, as in the
    experiments of the source. Source: Changenet and Velex (from memory).

    Raises:
        OutOfRange: ``oil_volume`` is not positive while the gear dips.
    """
    if dip <= 0.0 or speed <= 0.0:
        return 0.0
    if oil_volume <= 0.0:
        raise OutOfRange(f"oil_volume {oil_volume:g} m³: there is no oil to dip into")
    radius = pitch_diameter / 2.0
    froude = speed**2 * radius / STANDARD_GRAVITY
    reynolds = speed * radius * face_width / viscosity
    depth, volume = min(dip, pitch_diameter) / pitch_diameter, oil_volume / pitch_diameter**3
    aspect = face_width / radius

    def slow(number: float) -> float:
        scale = depth**0.45 * volume**0.1 * froude**-0.6
        return float(1.366 * scale * number**-0.21 * aspect**0.21)

    fast = 3.644 * depth**0.1 * volume**-0.35 * froude**-0.88 * aspect**0.85
    if reynolds <= _SLOW:
        drag = slow(reynolds)
    elif reynolds >= _FAST:
        drag = fast
    else:
        share = (reynolds - _SLOW) / (_FAST - _SLOW)
        drag = slow(_SLOW) * (1.0 - share) + fast * share
    return float(0.5 * density * speed**3 * radius**3 * wetted * drag)


@equation(
    "P_w",
    "P_w = 2.82e-7 (1 + 2.3 b/r) n^2.8 r^4.6 (0.028 η + 0.019)^0.2 kW, rpm, m, mPa s",
    unit="W",
    source="Anderson and Loewenthal, NASA TP-1622 (from memory)",
    speed="ω [rad/s]",
    face_width="b [m]",
    pitch_diameter="d_w [m]",
    dynamic_viscosity="η [Pa s]",
)
def windage_loss(
    speed: float, face_width: float, pitch_diameter: float, dynamic_viscosity: float
) -> float:
    """Power ``P_w`` that a gear loses to the oily air round it, in W.

    ``speed`` in rad/s, lengths in m, ``dynamic_viscosity`` of the oil in Pa s. Valid as an order of
    size: another form differs by a factor of two. Source: NASA TP-1622 (from memory).
    """
    turns = speed * 30.0 / math.pi
    radius = pitch_diameter / 2.0
    mixture = (0.028 * dynamic_viscosity * 1.0e3 + 0.019) ** 0.2
    shape = 1.0 + 2.3 * face_width / radius
    return float(2.82e-4 * shape * turns**2.8 * radius**4.6 * mixture)
