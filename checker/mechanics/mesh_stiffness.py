"""Stiffness of a pair of teeth and of a mesh, ISO 6336-1 method B, and as a torsional spring."""

import math

from checker.mechanics.equation import OutOfRange, equation

_MEASURED_OVER_THEORY = 0.8
_SOURCE = "ISO 6336-1:2006, 9.3.1 method B (from memory)"
_PER_MICROMETRE = 1e9  # N/(mm µm) in N/m²


@equation(
    "c′",
    "c′ = 0.8 C_R C_B cos β / q′",
    unit="Pa",
    source=_SOURCE,
    teeth="z_n1 [1]",
    mate_teeth="z_n2 [1]",
    shift="x₁ [1]",
    mate_shift="x₂ [1]",
    dedendum="h_fP* [1]",
    pressure_angle="α_n [rad]",
    helix_angle="β [rad]",
)
def single_stiffness(
    teeth: float,
    mate_teeth: float,
    shift: float,
    mate_shift: float,
    dedendum: float,
    pressure_angle: float,
    helix_angle: float,
) -> float:
    """Largest stiffness c′ of one pair of teeth, per face width [N/m per m].

    q′ is the series of ISO 6336-1 Table 9 in virtual tooth numbers and profile shifts; solid
    discs (C_R = 1) of steel on steel; 0.8 holds theory against measurement.

    Source: ISO 6336-1:2006, 9.3.1 (from memory). Valid for x₁ ≥ x₂, -0.5 ≤ x₁ + x₂ ≤ 2 and a
    load of 100 N/mm and more.

    Raises:
        OutOfRange: the sum of profile shifts is outside that range.
    """
    if not -0.5 <= shift + mate_shift <= 2.0:
        raise OutOfRange("shift: the sum of profile shifts must be from -0.5 to 2")
    flexibility = (
        0.04723
        + 0.15551 / teeth
        + 0.25791 / mate_teeth
        - 0.00635 * shift
        - 0.11654 * shift / teeth
        - 0.00193 * mate_shift
        - 0.24188 * mate_shift / mate_teeth
        + 0.00529 * shift**2
        + 0.00182 * mate_shift**2
    )
    rack = (1.0 + 0.5 * (1.2 - dedendum)) * (1.0 - 0.02 * (20.0 - math.degrees(pressure_angle)))
    pair = _MEASURED_OVER_THEORY * rack * math.cos(helix_angle) / flexibility
    return pair * _PER_MICROMETRE


@equation(
    "c_γ",
    "c_γ = c′ (0.75 ε_α + 0.25)",
    unit="Pa",
    source=_SOURCE,
    single="c′ [Pa]",
    contact_ratio="ε_α [1]",
)
def mesh_stiffness(single: float, contact_ratio: float) -> float:
    """Mean stiffness c_γ of a mesh, per face width [N/m per m].

    Source: ISO 6336-1:2006, 9.3.1 (from memory). Valid for ε_α of 1.2 and more; below, for spur
    gears, up to a tenth lower.

    Raises:
        OutOfRange: ``contact_ratio`` is below 1.
    """
    if contact_ratio < 1.0:
        raise OutOfRange(
            f"contact_ratio: at {contact_ratio:.3g} contact is lost between pairs, and the"
            " stiffness has no meaning"
        )
    return single * (0.75 * contact_ratio + 0.25)


@equation(
    "C_m",
    "C_m = c_γ b (d_b1 / 2)²",
    unit="N m/rad",
    source="spring along the line of action, derived",
    stiffness="c_γ [Pa]",
    face_width="b [m]",
    base_diameter="d_b1 [m]",
)
def torsional_mesh_stiffness(stiffness: float, face_width: float, base_diameter: float) -> float:
    """The mesh as a torsional spring C_m [N m/rad] on the driver, whose base circle is d_b1.

    Source: derived.
    """
    return stiffness * face_width * (base_diameter / 2.0) ** 2
