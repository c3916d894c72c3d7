"""Strength of a shaft section in bending and torsion: fatigue after Goodman, yield, stiffness.

A load fixed in the airframe (tooth force, weight, a gyroscopic couple) bends a turning shaft fully
reversed: an amplitude without a mean. The torque has its mean and its own amplitude.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

_SHIGLEY = "Shigley's Mechanical Engineering Design"
_MARIN = f"{_SHIGLEY}, Eqs. 6-8 and 6-19 to 6-29 (from memory)"
# Factor and exponent of k_a with the tensile strength in MPa; Table 6-2 (from memory).
_FINISH = {
    "ground": (1.58, -0.085),
    "machined": (4.51, -0.265),
    "forged": (272.0, -0.995),
}
_RELIABILITY = {50: 1.0, 90: 0.897, 95: 0.868, 99: 0.814, 99.9: 0.753}


@equation(
    "k_a",
    "k_a = a R_m^b by finish, at most 1",
    unit="1",
    source=_MARIN,
    tensile="R_m [Pa]",
    finish="finish []",
)
def surface_factor(tensile: float, finish: str) -> float:
    """Factor of the surface finish: ground, machined or forged.

    Raises:
        OutOfRange: another finish.
    """
    if finish not in _FINISH:
        raise OutOfRange(f"finish {finish!r} is not one of " + ", ".join(_FINISH))
    factor, exponent = _FINISH[finish]
    return float(min(1.0, factor * (tensile / 1e6) ** exponent))


@equation(
    "k_b",
    "k_b = 1.24 d^−0.107 up to 51 mm, else 1.51 d^−0.157, d in mm",
    unit="1",
    source=_MARIN,
    diameter="d [m]",
)
def size_factor(diameter: float) -> float:
    """Factor of the size of a turning round section; at most 1, flat above 254 mm."""
    millimetres = min(diameter * 1e3, 254.0)
    if millimetres <= 51.0:
        return float(min(1.0, 1.24 * millimetres**-0.107))
    return float(1.51 * millimetres**-0.157)


@equation(
    "k_e",
    "k_e = table(reliability)",
    unit="1",
    source=f"{_SHIGLEY}, Table 6-5 (from memory)",
    percent="reliability in % [1]",
)
def reliability_factor(percent: float) -> float:
    """Factor of the scatter of fatigue strength.

    Raises:
        OutOfRange: no factor is listed for that reliability.
    """
    if percent not in _RELIABILITY:
        raise OutOfRange(f"percent: no factor is listed for {percent:g} %")
    return _RELIABILITY[percent]


@equation(
    "S_e",
    "S_e = k_a k_b k_e S′_e, S′_e = 0.5 R_m up to 700 MPa",
    unit="Pa",
    source=_MARIN,
    tensile="R_m [Pa]",
    surface="k_a [1]",
    size="k_b [1]",
    reliability="k_e [1]",
)
def endurance_limit(tensile: float, surface: float, size: float, reliability: float) -> float:
    """Endurance limit of the finished section in bending."""
    return surface * size * reliability * min(0.5 * tensile, 700e6)


@equation(
    "σ",
    "σ = 32 D M / (π (D⁴ − d⁴))",
    unit="Pa",
    source="Beer, Johnston & DeWolf, Mechanics of Materials (from memory)",
    moment="M [N m]",
    outside="D [m]",
    inside="d [m]",
)
def bending_stress(moment: float, outside: float, inside: float) -> float:
    """Nominal bending stress at the outer fibre of a round hollow section.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    _wall(outside, inside)
    return 32.0 * outside * moment / (math.pi * (outside**4 - inside**4))


@equation(
    "τ",
    "τ = 16 D T / (π (D⁴ − d⁴))",
    unit="Pa",
    source="Beer, Johnston & DeWolf, Mechanics of Materials, Ch 3",
    torque="T [N m]",
    outside="D [m]",
    inside="d [m]",
)
def torsion_stress(torque: float, outside: float, inside: float) -> float:
    """Nominal shear stress at the outer fibre of a round hollow section.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    _wall(outside, inside)
    return 16.0 * outside * torque / (math.pi * (outside**4 - inside**4))


@equation(
    "T_y",
    "T_y = π (D⁴ − d⁴) R_e / (16 √3 D)",
    unit="N m",
    source="Beer, Johnston & DeWolf, Mechanics of Materials, Ch 3, with the distortion energy",
    yield_strength="R_e [Pa]",
    outside="D [m]",
    inside="d [m]",
)
def yield_torque(yield_strength: float, outside: float, inside: float) -> float:
    """Torque [N m] at which the outer fibre of a round hollow section begins to yield.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    return yield_strength / math.sqrt(3.0) / torsion_stress(1.0, outside, inside)


@equation(
    "σ_x",
    "σ_x = 4 F_x / (π (D² − d²))",
    unit="Pa",
    source="definition",
    force="F_x [N]",
    outside="D [m]",
    inside="d [m]",
)
def axial_stress(force: float, outside: float, inside: float) -> float:
    """Nominal stress of an axial force.

    Raises:
        OutOfRange: the bore leaves no wall.
    """
    _wall(outside, inside)
    return 4.0 * force / (math.pi * (outside**2 - inside**2))


def _wall(outside: float, inside: float) -> None:
    if inside >= outside:
        raise OutOfRange("inside must be below outside: the section has no wall")


@equation(
    "σ_a",
    "σ_a = √((K_f σ)² + 3 (K_fs τ)²)",
    unit="Pa",
    source=f"{_SHIGLEY}, Eqs. 7-5 and 7-6",
    bending="σ [Pa]",
    torsion="τ [Pa]",
    bending_factor="K_f [1]",
    torsion_factor="K_fs [1]",
)
def distortion_energy_stress(
    bending: float, torsion: float, bending_factor: float, torsion_factor: float
) -> float:
    """Von Mises stress of bending and torsion with their notch factors: amplitude or mean."""
    return math.hypot(bending_factor * bending, math.sqrt(3.0) * torsion_factor * torsion)


@equation(
    "u",
    "u = σ_a/S_e + σ_m/R_m",
    unit="1",
    source=f"{_SHIGLEY}, Eq. 7-7, DE-Goodman: u = 1/n",
    amplitude="σ_a [Pa]",
    mean="σ_m [Pa]",
    endurance="S_e [Pa]",
    tensile="R_m [Pa]",
)
def goodman_use(amplitude: float, mean: float, endurance: float, tensile: float) -> float:
    """Use of the fatigue strength for endless life, DE-Goodman: 1 at the limit."""
    return amplitude / endurance + mean / tensile


@equation(
    "u_y",
    "u_y = √((σ + σ_x)² + 3 τ²) / R_e",
    unit="1",
    source=f"{_SHIGLEY}, Eqs. 7-15 and 7-16: u = 1/n_y",
    bending="σ [Pa]",
    axial="σ_x [Pa]",
    torsion="τ [Pa]",
    yield_strength="R_e [Pa]",
)
def yield_use(bending: float, axial: float, torsion: float, yield_strength: float) -> float:
    """Use of the yield strength, von Mises at the outer fibre: 1 at first yield."""
    return math.hypot(abs(bending) + abs(axial), math.sqrt(3.0) * torsion) / yield_strength


@equation(
    "n",
    "n = 1 / u",
    unit="1",
    source="definition of a safety factor",
    use="u [1]",
)
def safety_of_use(use: float) -> float:
    """Safety factor from the use of a strength.

    Raises:
        OutOfRange: no load.
    """
    if use <= 0.0:
        raise OutOfRange("use must be above zero: nothing loads the part")
    return 1.0 / use


@equation(
    "T_a",
    "T_a = T_limit − T",
    unit="N m",
    source="derived: the factor of the regulations stands for the pulsation, once",
    limit="T_limit [N m]",
    mean="T [N m]",
)
def torque_swing(limit: float, mean: float) -> float:
    """Amplitude of the torque that the limit torque of the regulations allows for."""
    return limit - mean


@equation(
    "T_max",
    "T_max = T + T_a",
    unit="N m",
    source="definition",
    mean="T [N m]",
    swing="T_a [N m]",
)
def swung_torque(mean: float, swing: float) -> float:
    """Highest torque of a cycle from its mean and its amplitude."""
    return mean + swing
