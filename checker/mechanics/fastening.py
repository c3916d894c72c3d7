"""Torque through press fits, splines, lugs and wood; the bolts of the gear case."""

import math

from checker.mechanics.equation import OutOfRange, equation

_COULOMB = "derived: Coulomb friction"
_WOOD = {
    # N/mm² across the grain at 12 % moisture: FPL Wood Handbook (from memory)
    "birch": 6.7e6,
    "maple": 10.1e6,
}
_VDI_2230 = "VDI 2230:2015, rolled before hardening (from memory)"


@equation(
    "T_f",
    "T_f = μ p π d² L / 2",
    unit="N m",
    source=_COULOMB,
    friction="μ [1]",
    pressure="p [Pa]",
    diameter="d [m]",
    length="L [m]",
)
def press_fit_torque(friction: float, pressure: float, diameter: float, length: float) -> float:
    """Torque that a press fit holds by friction."""
    return friction * pressure * math.pi * diameter**2 * length / 2.0


@equation(
    "σ_h",
    "σ_h = p (D² + d²) / (D² − d²)",
    unit="Pa",
    source="Lamé, hub under pressure from within",
    pressure="p [Pa]",
    diameter="d [m]",
    outside="D [m]",
)
def hub_hoop_stress(pressure: float, diameter: float, outside: float) -> float:
    """Hoop stress at the bore of a hub.

    Raises:
        OutOfRange: the hub has no wall.
    """
    if diameter >= outside:
        raise OutOfRange("outside must be above diameter: the hub has no wall")
    return pressure * (outside**2 + diameter**2) / (outside**2 - diameter**2)


@equation(
    "τ",
    "τ = 16 T D_r / (π (D_r⁴ − d⁴))",
    unit="Pa",
    source="ANSI B92.1 practice: torsion of the root section (from memory)",
    torque="T [N m]",
    root_diameter="D_r [m]",
    bore="d [m]",
)
def spline_root_shear(torque: float, root_diameter: float, bore: float) -> float:
    """Shear stress of a splined shaft under its teeth.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    if bore >= root_diameter:
        raise OutOfRange("bore must be below root_diameter: the shaft has no wall")
    return 16.0 * torque * root_diameter / (math.pi * (root_diameter**4 - bore**4))


@equation(
    "τ",
    "τ = 4 T / (π D_p² L k), teeth half a pitch thick",
    unit="Pa",
    source="ANSI B92.1 practice: shear at the pitch line (from memory)",
    torque="T [N m]",
    pitch_diameter="D_p [m]",
    length="L [m]",
    carrying="k [1]",
)
def spline_tooth_shear(
    torque: float, pitch_diameter: float, length: float, carrying: float
) -> float:
    """Shear stress of spline teeth at the pitch line, of which a share k carries."""
    return 4.0 * torque / (math.pi * pitch_diameter**2 * length * carrying)


@equation(
    "p_k",
    "p_k = p / k",
    unit="Pa",
    source="a quarter to a half of the splines carry (from memory)",
    pressure="p [Pa]",
    carrying="k [1]",
)
def uneven_pressure(pressure: float, carrying: float) -> float:
    """Side pressure where only a share k of the splines carries.

    Raises:
        OutOfRange: share not above 0 and at most 1.
    """
    if not 0.0 < carrying <= 1.0:
        raise OutOfRange("carrying must be above 0 and at most 1")
    return pressure / carrying


@equation(
    "τ",
    "τ = 4 T / (N π d² r)",
    unit="Pa",
    source="derived: even shear of all bolts or lugs",
    torque="T [N m]",
    number="N [1]",
    diameter="d [m]",
    radius="r [m]",
)
def pin_shear(torque: float, number: int, diameter: float, radius: float) -> float:
    """Shear stress of bolts or drive lugs on a circle of radius r that carry all of the torque.

    The back-up, once friction has let go.

    Raises:
        OutOfRange: no lug.
    """
    if number < 1:
        raise OutOfRange("number must be at least 1")
    return 4.0 * torque / (number * math.pi * diameter**2 * radius)


@equation(
    "n",
    "n = R_e / (√3 τ)",
    unit="1",
    source="distortion energy: shear yield is R_e/√3",
    yield_strength="R_e [Pa]",
    shear="τ [Pa]",
)
def shear_yield_factor(yield_strength: float, shear: float) -> float:
    """Safety against yield in shear.

    Raises:
        OutOfRange: no stress.
    """
    if shear <= 0.0:
        raise OutOfRange("shear must be above zero: there is nothing to compare with")
    return yield_strength / (math.sqrt(3.0) * shear)


@equation(
    "p_c",
    "p_c = table(species)",
    unit="Pa",
    source="FPL Wood Handbook, compression across the grain at 12 % moisture (from memory)",
    species="species []",
)
def wood_crush_limit(species: str) -> float:
    """Pressure across the grain that birch or maple bears.

    Raises:
        OutOfRange: another species.
    """
    if species not in _WOOD:
        raise OutOfRange(f"species {species!r} is not one of " + ", ".join(_WOOD))
    return _WOOD[species]


@equation(
    "T_case",
    "T_case = s_p T_p − s_e T_e",
    unit="N m",
    source="statics: the case takes what propeller and engine torque leave",
    propeller_torque="T_p [N m]",
    engine_torque="T_e [N m]",
    propeller_sense="s_p [1]",
    engine_sense="s_e [1]",
)
def case_torque(
    propeller_torque: float, engine_torque: float, propeller_sense: int, engine_sense: int
) -> float:
    """Torque that the bolts between case and engine carry, about the shafts.

    Where the propeller turns with the engine it is their difference, else their sum. Both torques
    are to be of one moment: peaks of two shafts are not.
    """
    return propeller_sense * propeller_torque - engine_sense * engine_torque


@equation(
    "F_s",
    "F_s = |T| / (N r) + F / N",
    unit="N",
    source="derived: even shares of a bolt circle",
    torque="T [N m]",
    force="F [N]",
    bolts="N [1]",
    radius="r [m]",
)
def bolt_shear_force(torque: float, force: float, bolts: int, radius: float) -> float:
    """Shear of the most loaded case bolt: torque and cross force at their worst together."""
    return abs(torque) / (bolts * radius) + abs(force) / bolts


@equation(
    "F_t",
    "F_t = 2 |M| / (N r) + F_x / N",
    unit="N",
    source="derived: bending of a bolt circle about its own axis",
    moment="M [N m]",
    thrust="F_x [N]",
    bolts="N [1]",
    radius="r [m]",
)
def bolt_tension(moment: float, thrust: float, bolts: int, radius: float) -> float:
    """Tension of the most loaded bolt from a moment across and a thrust that pulls.

    Raises:
        OutOfRange: no bolts.
    """
    if bolts < 1:
        raise OutOfRange("bolts must be one or more: no bolt holds the face")
    return 2.0 * abs(moment) / (bolts * radius) + max(0.0, thrust) / bolts


@equation(
    "u",
    "u = F_s / (μ (F_V − F_t))",
    unit="1",
    source=f"{_COULOMB}: a bolt's tension takes from the clamping of the face",
    friction="μ [1]",
    preload="F_V [N]",
    tension="F_t [N]",
    shear="F_s [N]",
)
def slip_use(friction: float, preload: float, tension: float, shear: float) -> float:
    """Use of the friction of a bolted face: 1 where it slips.

    Raises:
        OutOfRange: the tension opens the face.
    """
    if tension >= preload:
        raise OutOfRange("tension must be below preload: the face opens")
    return shear / (friction * (preload - tension))


@equation(
    "S_open",
    "S_open = F_V / F_t",
    unit="1",
    source="definition",
    preload="F_V [N]",
    tension="F_t [N]",
)
def opening_factor(preload: float, tension: float) -> float:
    """Preload over the tension that would open the face.

    Raises:
        OutOfRange: no tension.
    """
    if tension <= 0.0:
        raise OutOfRange("tension must be above zero: nothing opens the face")
    return preload / tension


@equation(
    "σ_a",
    "σ_a = Φ F_t / A_s",
    unit="Pa",
    source="VDI 2230:2015 (from memory): the load swings fully reversed or between 0 and F_t",
    load_share="Φ [1]",
    tension="F_t [N]",
    area="A_s [m2]",
)
def bolt_stress_amplitude(load_share: float, tension: float, area: float) -> float:
    """Stress amplitude in a bolt that takes a share Φ of a fully reversed working load."""
    return load_share * tension / area


@equation(
    "σ_A",
    "σ_A = 0.85 (150 mm/d + 45) MPa",
    unit="Pa",
    source=_VDI_2230,
    diameter="d [m]",
)
def bolt_fatigue_strength(diameter: float) -> float:
    """Stress amplitude that a bolt of class 8.8 to 12.9 bears for ever. Valid for M6 to M40."""
    return 0.85 * (0.150 / diameter + 45.0) * 1e6


@equation(
    "D_p",
    "D_p = (D + d) / 2",
    unit="m",
    source="definition: middle of the flanks",
    outer="D [m]",
    inner="d [m]",
)
def pitch_diameter(outer: float, inner: float) -> float:
    """Middle diameter of spline flanks."""
    return (outer + inner) / 2.0


@equation(
    "F",
    "F = √(W² + (n_W m g)²)",
    unit="N",
    source="CS-VLA 363, the side load taken together with the weight",
    weight="W [N]",
    mass="m [kg]",
    factor="n_W [1]",
)
def cross_force(weight: float, mass: float, factor: float) -> float:
    """Force across the shafts on the face: weight and side load at once, on the careful side."""
    return math.hypot(weight, factor * mass * 9.80665)


@equation(
    "M_W",
    "M_W = −W (x − x_f)",
    unit="N m",
    source="statics of a weight beside the face",
    weight="W [N]",
    station="x [m]",
    face="x_f [m]",
)
def weight_moment(weight: float, station: float, face: float) -> float:
    """Moment of a weight about the mounting face in the vertical plane."""
    return -weight * (station - face)


@equation(
    "M",
    "M = M₁ + M₂ + M₃",
    unit="N m",
    source="statics: moments in one plane add",
    first="M₁ [N m]",
    second="M₂ [N m]",
    third="M₃ [N m]",
)
def moment_sum(first: float, second: float, third: float) -> float:
    """Sum of three moments in one plane."""
    return first + second + third


@equation(
    "m",
    "m = m₁ + m₂",
    unit="kg",
    source="definition",
    mass="m₁ [kg]",
    other="m₂ [kg]",
)
def mass_sum(mass: float, other: float) -> float:
    """Mass of drive and propeller together, as it hangs on the face."""
    return mass + other
