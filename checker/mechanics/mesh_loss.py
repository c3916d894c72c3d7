"""Sliding loss of a gear mesh in the form of ISO/TR 14179-2.

Loss factor and friction belong together: part 1 of the report pairs another loss factor with a
friction of its own, a quarter of this one, and neither half of it is used here.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_SOURCE = "ISO/TR 14179-2, after Ohlendorf and Niemann (from memory)"
_LEAST_LINE_LOAD = 150.0e3  # N/m: the friction is not known to fall on below (from memory)


@equation(
    "H_v",
    "H_v = π (u + 1)/(z₁ u cos β_b) (1 - ε_α + ε₁² + ε₂²)",
    unit="1",
    source=_SOURCE,
    driver_teeth="z₁ [1]",
    driven_teeth="z₂ [1]",
    base_helix_angle="β_b [rad]",
    driver_contact_ratio="ε₁ [1]",
    driven_contact_ratio="ε₂ [1]",
)
def tooth_loss_factor(
    driver_teeth: int,
    driven_teeth: int,
    base_helix_angle: float,
    driver_contact_ratio: float,
    driven_contact_ratio: float,
) -> float:
    """Tooth loss factor ``H_v``: mean sliding over pitch-line speed, weighted with the load.

    ``ε₁`` and ``ε₂`` are the parts of the contact ratio beyond the pitch point at the tips of
    driver and driven gear, u = z₂/z₁. Valid for transverse contact ratios from 1 to below 2.
    Source: ISO/TR 14179-2 (from memory).

    Raises:
        OutOfRange: the transverse contact ratio, the sum of both parts, lies outside 1 to 2.
    """
    total = driver_contact_ratio + driven_contact_ratio
    if not 1.0 <= total < 2.0:
        raise OutOfRange(f"the transverse contact ratio {total:.3g} is outside 1 to 2")
    ratio = driven_teeth / driver_teeth
    shape = 1.0 - total + driver_contact_ratio**2 + driven_contact_ratio**2
    return math.pi * (ratio + 1.0) / (driver_teeth * ratio * math.cos(base_helix_angle)) * shape


@equation(
    "v_Σ",
    "v_Σ = 2 v sin α_wt",
    unit="m/s",
    source="Kinematics of the involute at the pitch point",
    pitch_line_velocity="v [m/s]",
    working_pressure_angle="α_wt [rad]",
)
def sum_velocity(pitch_line_velocity: float, working_pressure_angle: float) -> float:
    """Sum ``v_Σ`` of the two surface speeds at the pitch point, in m/s.

    ``pitch_line_velocity`` in m/s, ``working_pressure_angle`` transverse, in rad. Source:
    kinematics.
    """
    return 2.0 * pitch_line_velocity * math.sin(working_pressure_angle)


@equation(
    "ρ_C",
    "ρ_C = a_w sin α_wt u/((u + 1)² cos β_b)",
    unit="m",
    source="Curvature of the involute at the pitch point",
    centre_distance="a_w [m]",
    working_pressure_angle="α_wt [rad]",
    driver_teeth="z₁ [1]",
    driven_teeth="z₂ [1]",
    base_helix_angle="β_b [rad]",
)
def reduced_radius(
    centre_distance: float,
    working_pressure_angle: float,
    driver_teeth: int,
    driven_teeth: int,
    base_helix_angle: float,
) -> float:
    """Reduced radius of curvature ``ρ_C`` at the pitch point, in m.

    ``centre_distance`` in m, angles in rad, u = z₂/z₁. Valid for external gears. Source: geometry.
    """
    ratio = driven_teeth / driver_teeth
    transverse = centre_distance * math.sin(working_pressure_angle) * ratio / (ratio + 1.0) ** 2
    return transverse / math.cos(base_helix_angle)


@equation(
    "Ra",
    "Ra = (Ra₁ + Ra₂)/2",
    unit="m",
    source=_SOURCE,
    driver_roughness="Ra₁ [m]",
    driven_roughness="Ra₂ [m]",
)
def mean_roughness(driver_roughness: float, driven_roughness: float) -> float:
    """Mean roughness ``Ra`` of the two flanks, in m. Source: ISO/TR 14179-2 (from memory)."""
    return (driver_roughness + driven_roughness) / 2.0


@equation(
    "X_L",
    "X_L = 1 mineral and ester, 0.8 PAO, 0.75 PAG",
    unit="1",
    source=_SOURCE + "; PAG without its small dependence on speed, ester as mineral",
    base="base []",
)
def lubricant_factor(base: str) -> float:
    """Lubricant factor ``X_L`` of the mesh friction by base stock.

    Source: ISO/TR 14179-2 (from memory).

    Raises:
        OutOfRange: ``base`` is none of the four.
    """
    factors = {"mineral": 1.0, "ester": 1.0, "PAO": 0.8, "PAG": 0.75}
    if base not in factors:
        raise OutOfRange(f"base {base!r} is none of {', '.join(factors)}")
    return factors[base]


@equation(
    "F_bt",
    "F_bt = |F_t|/cos α_wt",
    unit="N",
    source="Statics at the line of action",
    tangential_force="F_t [N]",
    working_pressure_angle="α_wt [rad]",
)
def base_tangential_force(tangential_force: float, working_pressure_angle: float) -> float:
    """Force ``F_bt`` along the line of action in the transverse plane, in N.

    ``tangential_force`` at the working circle in N, of either sign. Source: statics.
    """
    return abs(tangential_force) / math.cos(working_pressure_angle)


@equation(
    "μ_mz",
    "μ_mz = 0.048 (F_bt/b / (v_Σ ρ_C))^0.2 η^-0.05 Ra^0.25 X_L, F_bt/b from 150 N/mm; N, mm, m/s, "
    "mPa s, µm",
    unit="1",
    source="ISO/TR 14179-2, after Schlenk and Michaelis (from memory)",
    base_force="F_bt [N]",
    face_width="b [m]",
    sum_velocity="v_Σ [m/s]",
    reduced_radius="ρ_C [m]",
    roughness="Ra [m]",
    lubricant_factor="X_L [1]",
    dynamic_viscosity="η [Pa s]",
)
def mean_friction(
    base_force: float,
    face_width: float,
    sum_velocity: float,
    reduced_radius: float,
    roughness: float,
    lubricant_factor: float,
    dynamic_viscosity: float,
) -> float:
    """Mean friction coefficient ``μ_mz`` of a mesh.

    SI arguments. Below a line load of 150 N/mm that load is taken. Valid to about 50 m/s of
    pitch-line speed for ground steel flanks. Source: ISO/TR 14179-2 (from memory).

    Raises:
        OutOfRange: the gears stand still, their faces do not meet, or the oil has no viscosity.
    """
    if sum_velocity <= 0.0:
        raise OutOfRange(f"sum_velocity {sum_velocity:g} m/s: the gears stand still")
    if dynamic_viscosity <= 0.0:
        raise OutOfRange(f"dynamic_viscosity {dynamic_viscosity:g} Pa s: this is no oil")
    if face_width <= 0.0:
        raise OutOfRange(f"face_width {face_width:g} m: the faces do not meet")
    line_load = max(base_force / face_width, _LEAST_LINE_LOAD) * 1.0e-3
    pressure = line_load / (sum_velocity * reduced_radius * 1.0e3)
    viscosity = dynamic_viscosity * 1.0e3
    return float(
        0.048 * pressure**0.2 * viscosity**-0.05 * (roughness * 1.0e6) ** 0.25 * lubricant_factor
    )


@equation(
    "P_mesh",
    "P_mesh = |T₁| ω₁ μ_mz H_v",
    unit="W",
    source=_SOURCE,
    torque="T₁ [N m]",
    speed="ω₁ [rad/s]",
    friction="μ_mz [1]",
    loss_factor="H_v [1]",
)
def mesh_loss(torque: float, speed: float, friction: float, loss_factor: float) -> float:
    """Sliding loss ``P_mesh`` of a mesh, in W.

    ``torque`` (N m, of either sign) and ``speed`` (rad/s) of the driver, friction and loss factor
    of the same part of ISO/TR 14179. Source: ISO/TR 14179-2 (from memory).
    """
    return abs(torque) * speed * friction * loss_factor
