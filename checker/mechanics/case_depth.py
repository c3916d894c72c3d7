"""How deep a hardened case has to be, and how deep it may be. Depths in m to the hardness limit."""

from math import cos, sin

from checker.mechanics.equation import equation

_HARDENING = {"ML": 44e9, "MQ": 66e9, "ME": 66e9}  # Pa, hardening process factor


@equation(
    "CHD_H",
    "CHD_H = σ_H d_w1 sin α_wt / (U_H cos β_b) z_2/(z_1 + z_2), U_H = 44 000 MPa (ML), 66 000 (MQ,"
    " ME)",
    unit="m",
    source="ISO 6336-5:2003, case depth against shear below the flank; AGMA 2001-D04 alike (from"
    " memory)",
    contact_stress="σ_H [Pa]",
    working_diameter="d_w1 [m]",
    working_pressure_angle="α_wt [rad]",
    base_helix_angle="β_b [rad]",
    teeth="z_1 [1]",
    teeth_of_mate="z_2 [1]",
    quality="quality []",
)
def depth_for_contact(
    contact_stress: float,
    working_diameter: float,
    working_pressure_angle: float,
    base_helix_angle: float,
    teeth: int,
    teeth_of_mate: int,
    quality: str,
) -> float:
    """Effective case depth that carries the shear below the flank at a contact stress [m]."""
    share = teeth_of_mate / (teeth + teeth_of_mate)
    arm = working_diameter * sin(working_pressure_angle) * share
    return contact_stress * arm / (_HARDENING[quality] * cos(base_helix_angle))


@equation(
    "CHD_max",
    "CHD_max = min(0.4 m_n, 0.56 s_an)",
    unit="m",
    source="ANSI/AGMA 2001-D04, heaviest case; ISO 6336-5 has 0.4 m_n (both from memory)",
    normal_module="m_n [m]",
    tip_thickness="s_an [m]",
)
def deepest_case(normal_module: float, tip_thickness: float) -> float:
    """Case depth beyond which the tooth is hardened through at its tip or too far inwards [m]."""
    return min(0.4 * normal_module, 0.56 * tip_thickness)


@equation(
    "l",
    "l = l* m_n",
    unit="m",
    source="definition: a length from normal modules",
    modules="l* [1]",
    normal_module="m_n [m]",
)
def length_of_modules(modules: float, normal_module: float) -> float:
    """A length [m] that is given in normal modules."""
    return modules * normal_module
