"""Inertia and torsional stiffness of parts: by shape, by test, and as seen through gears."""

import math

from checker.mechanics.equation import OutOfRange, equation

_GRAVITY = 9.80665


@equation(
    "J_red",
    "J_red = J / i²",
    unit="kg m2",
    source="kinetic energy is the same at both speeds, derived",
    inertia="J [kg m2]",
    ratio="i [1]",
)
def reflected_inertia(inertia: float, ratio: float) -> float:
    """Inertia [kg m²] as the crankshaft sees it, i being crankshaft speed over own speed.

    Source: equal kinetic energy, derived.

    Raises:
        OutOfRange: the ratio is not above zero.
    """
    return inertia / _square(ratio)


@equation(
    "C_red",
    "C_red = C / i²",
    unit="N m/rad",
    source="elastic energy is the same at both speeds, derived",
    stiffness="C [N m/rad]",
    ratio="i [1]",
)
def reflected_stiffness(stiffness: float, ratio: float) -> float:
    """Torsional stiffness [N m/rad] as the crankshaft sees it, i being crank over own speed.

    Source: equal elastic energy, derived.

    Raises:
        OutOfRange: the ratio is not above zero.
    """
    return stiffness / _square(ratio)


def _square(ratio: float) -> float:
    if ratio <= 0.0:
        raise OutOfRange(f"ratio must be above zero, not {ratio:g}")
    return ratio * ratio


@equation(
    "J",
    "J = π ρ l (D⁴ − d⁴) / 32",
    unit="kg m2",
    source="polar inertia of a hollow cylinder, derived",
    length="l [m]",
    outside="D [m]",
    inside="d [m]",
    density="ρ [kg/m3]",
)
def cylinder_inertia(length: float, outside: float, inside: float, density: float) -> float:
    """Inertia J [kg m²] of a hollow cylinder about its axis.

    Source: derived.

    Raises:
        OutOfRange: the bore is not smaller than the outside.
    """
    return math.pi * density * length * _fourth_powers(outside, inside) / 32.0


@equation(
    "C",
    "C = G π (D⁴ − d⁴) / (32 l)",
    unit="N m/rad",
    source="Saint-Venant torsion of a round bar, derived",
    length="l [m]",
    outside="D [m]",
    inside="d [m]",
    shear_modulus="G [Pa]",
)
def cylinder_stiffness(length: float, outside: float, inside: float, shear_modulus: float) -> float:
    """Torsional stiffness C [N m/rad] of a hollow cylinder.

    Source: Saint-Venant torsion.

    Raises:
        OutOfRange: no length, or the bore is not smaller than the outside.
    """
    if length <= 0.0:
        raise OutOfRange("length must be above zero")
    return shear_modulus * math.pi * _fourth_powers(outside, inside) / (32.0 * length)


def _fourth_powers(outside: float, inside: float) -> float:
    if not 0.0 <= inside < outside:
        raise OutOfRange("inside must be smaller than the outside diameter")
    return float(outside**4 - inside**4)


@equation(
    "C",
    "1/C = 1/C₁ + 1/C₂",
    unit="N m/rad",
    source="springs one behind the other, derived",
    first="C₁ [N m/rad]",
    second="C₂ [N m/rad]",
)
def in_series(first: float, second: float) -> float:
    """Stiffness [N m/rad] of two springs that carry the same torque.

    Source: derived.
    """
    return 1.0 / (1.0 / first + 1.0 / second)


@equation(
    "J",
    "J = J₁ + J₂",
    unit="kg m2",
    source="definition",
    first="J₁ [kg m2]",
    second="J₂ [kg m2]",
)
def joined_inertia(first: float, second: float) -> float:
    """Inertia [kg m²] of two bodies that turn as one.

    Source: definition.
    """
    return first + second


@equation(
    "J",
    "J = J₁ − J₂",
    unit="kg m2",
    source="definition",
    whole="J₁ [kg m2]",
    part="J₂ [kg m2]",
)
def rest_of_inertia(whole: float, part: float) -> float:
    """What is left of an inertia [kg m²] when a part of it is counted elsewhere.

    Source: definition.

    Raises:
        OutOfRange: the part is larger than the whole.
    """
    if part > whole:
        raise OutOfRange("part must not be larger than the whole inertia")
    return whole - part


@equation(
    "J",
    "J = q J₀",
    unit="kg m2",
    source="definition of the share",
    inertia="J₀ [kg m2]",
    share="q [1]",
)
def share_of_inertia(inertia: float, share: float) -> float:
    """The part of an inertia [kg m²] that a share q stands for.

    Source: definition.

    Raises:
        OutOfRange: a share below zero or above one.
    """
    if not 0.0 <= share <= 1.0:
        raise OutOfRange(f"share must be from 0 to 1, not {share:g}")
    return share * inertia


@equation(
    "q′",
    "q′ = 1 − q",
    unit="1",
    source="definition",
    share="q [1]",
)
def remainder(share: float) -> float:
    """What a share leaves of the whole.

    Source: definition.
    """
    return 1.0 - share


@equation(
    "f",
    "f = √(C (J₁ + J₂) / (J₁ J₂)) / (2 π)",
    unit="Hz",
    source="two masses on a spring; DIN 740-2 (from memory)",
    stiffness="C [N m/rad]",
    first="J₁ [kg m2]",
    second="J₂ [kg m2]",
)
def two_mass_frequency(stiffness: float, first: float, second: float) -> float:
    """Natural frequency f [Hz] of two inertias on one spring, both at one speed.

    Source: DIN 740-2 (from memory), derived.
    """
    return math.sqrt(stiffness * (first + second) / (first * second)) / math.tau


@equation(
    "C_b",
    "C_b = J_b (2 π f_b)²",
    unit="N m/rad",
    source="one mass on a spring, derived",
    inertia="J_b [kg m2]",
    frequency="f_b [Hz]",
)
def blade_stiffness(inertia: float, frequency: float) -> float:
    """Stiffness C_b [N m/rad] that gives the blades' share of the inertia their own frequency.

    The frequency is that of the blades with the hub held.

    Source: one mass on a spring, derived.

    Raises:
        OutOfRange: nothing swings.
    """
    if inertia <= 0.0:
        raise OutOfRange("inertia must be above zero: without it nothing swings")
    return inertia * (math.tau * frequency) ** 2


@equation(
    "J",
    "J = m g d² τ² / (16 π² L)",
    unit="kg m2",
    source="small swing on two wires (bifilar pendulum), derived",
    mass="m [kg]",
    spacing="d [m]",
    length="L [m]",
    period="τ [s]",
)
def bifilar_inertia(mass: float, spacing: float, length: float, period: float) -> float:
    """Inertia J [kg m²] of a body that swings about a vertical axis on two parallel wires.

    The wires hang d apart, at equal distances from the centre of mass, and are L long; τ is the
    time of one whole swing. The axis wanted is the vertical one.

    Source: derived. Valid for small swings, up to about 10 deg, and L well above d.
    """
    return mass * _GRAVITY * spacing**2 * period**2 / (16.0 * math.pi**2 * length)


@equation(
    "J",
    "J = m g R² τ² / (4 π² L)",
    unit="kg m2",
    source="small swing on three wires (trifilar pendulum), derived",
    mass="m [kg]",
    radius="R [m]",
    length="L [m]",
    period="τ [s]",
)
def trifilar_inertia(mass: float, radius: float, length: float, period: float) -> float:
    """Inertia J [kg m²] of a body that swings about a vertical axis on three parallel wires.

    The wires are fixed at radius R about the axis and are L long; the inertia of a plate that
    carries the body is taken off afterwards.

    Source: derived. Valid for small swings, up to about 10 deg.
    """
    return mass * _GRAVITY * radius**2 * period**2 / (4.0 * math.pi**2 * length)


@equation(
    "C",
    "C = T / φ",
    unit="N m/rad",
    source="definition of stiffness",
    torque="T [N m]",
    twist="φ [rad]",
)
def static_stiffness(torque: float, twist: float) -> float:
    """Stiffness C [N m/rad] from a static twist test. Rubber is stiffer when it vibrates.

    Source: definition.

    Raises:
        OutOfRange: no twist was measured.
    """
    if twist <= 0.0:
        raise OutOfRange("twist must be above zero")
    return torque / twist


@equation(
    "C_dyn",
    "C_dyn = k_dyn C",
    unit="N m/rad",
    source="definition of the dynamic factor",
    stiffness="C [N m/rad]",
    factor="k_dyn [1]",
)
def dynamic_stiffness(stiffness: float, factor: float) -> float:
    """Dynamic stiffness [N m/rad] from a static one.

    Source: definition.
    """
    return factor * stiffness


@equation(
    "l",
    "l = x₂ − x₁",
    unit="m",
    source="definition",
    start="x₁ [m]",
    end="x₂ [m]",
)
def section_length(start: float, end: float) -> float:
    """Length l [m] of a stretch of a shaft.

    Source: definition.

    Raises:
        OutOfRange: it ends before it begins.
    """
    if end <= start:
        raise OutOfRange("end must lie beyond start")
    return end - start


@equation(
    "R",
    "R = d / 2",
    unit="m",
    source="definition",
    whole="d [m]",
)
def radius(whole: float) -> float:
    """Radius R [m] of a circle of diameter d [m].

    Source: definition.
    """
    return whole / 2.0


@equation(
    "C_c",
    "C_c = n z r_i² tan²α F_n / (2 δ), δ = 3.84e-5 F_n^0.9 / L^0.8 (N, mm)",
    unit="N m/rad",
    source="Palmgren line contact approach (from memory), geometry derived",
    torque="T [N m]",
    elements="z [1]",
    rows="n [1]",
    race_radius="r_i [m]",
    gripping_angle="α [rad]",
    length="L [m]",
)
def clutch_stiffness(
    torque: float,
    elements: int,
    rows: int,
    race_radius: float,
    gripping_angle: float,
    length: float,
) -> float:
    """Torsional stiffness C_c [N m/rad] of an engaged sprag or roller clutch at torque T [N m].

    Each element is squeezed at two line contacts; the squeeze lets it roll on by δ / tan α. The
    give of the races as rings is left out, so the true stiffness is lower.

    Source: Palmgren (from memory), geometry derived.

    Raises:
        OutOfRange: no torque, so nothing is squeezed.
    """
    if torque <= 0.0:
        raise OutOfRange("torque must be above zero: an unloaded clutch has no stiffness")
    tangent = math.tan(gripping_angle)
    count = elements * rows
    normal = torque / (count * race_radius * tangent)
    approach = 3.84e-5 * normal**0.9 / (1e3 * length) ** 0.8 * 1e-3
    stiffness: float = count * (race_radius * tangent) ** 2 * normal / (2.0 * approach)
    return stiffness
