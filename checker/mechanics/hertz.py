"""Hertz contact of two cylinders along a line: pressure, width and depth of the greatest shear."""

import math

from checker.mechanics.equation import OutOfRange, equation

_HERTZ = "Hertz line contact, Boresi & Schmidt, Advanced Mechanics of Materials (6e), Ch 17"


@equation(
    "E*",
    "1/E* = (1 − ν_1²)/E_1 + (1 − ν_2²)/E_2",
    unit="Pa",
    source=_HERTZ,
    modulus_1="E_1 [Pa]",
    poisson_1="ν_1 [1]",
    modulus_2="E_2 [Pa]",
    poisson_2="ν_2 [1]",
)
def reduced_modulus(
    modulus_1: float, poisson_1: float, modulus_2: float, poisson_2: float
) -> float:
    """Reduced modulus E* [Pa] of two bodies in contact, from moduli [Pa] and Poisson's ratios [1].

    Source: Boresi & Schmidt (6e), Ch 17. Some handbooks use a modulus twice as large.
    """
    return 1 / ((1 - poisson_1**2) / modulus_1 + (1 - poisson_2**2) / modulus_2)


@equation(
    "R",
    "1/R = 1/r_1 + 1/r_2",
    unit="m",
    source=_HERTZ,
    radius_1="r_1 [m]",
    radius_2="r_2 [m]",
)
def reduced_radius(radius_1: float, radius_2: float) -> float:
    """Reduced radius R [m] of two cylinders; the radius of a concave surface is negative.

    A flat has an infinite radius. Source: Boresi & Schmidt (6e), Ch 17.

    Raises:
        OutOfRange: the surfaces conform, so that they do not touch along a line.
    """
    curvature = 1 / radius_1 + 1 / radius_2
    if curvature <= 0:
        raise OutOfRange(
            f"surfaces of radius {radius_1 * 1e3:.4g} mm and {radius_2 * 1e3:.4g} mm do not touch"
            " along a line: a hollow must be wider than what runs in it"
        )
    return 1 / curvature


@equation(
    "p_0",
    "p_0 = √(F E* / (π L R))",
    unit="Pa",
    source=_HERTZ,
    force="F [N]",
    length="L [m]",
    radius="R [m]",
    modulus="E* [Pa]",
)
def line_contact_pressure(force: float, length: float, radius: float, modulus: float) -> float:
    """Greatest pressure p_0 [Pa] under force F [N] on a contact of length L [m].

    R [m] is the reduced radius and E* [Pa] the reduced modulus. Even pressure along the length:
    neither edge stress nor misalignment.

    Source: Boresi & Schmidt (6e), Ch 17. Valid for elastic bodies.
    """
    return math.sqrt(force * modulus / (math.pi * length * radius))


@equation(
    "F",
    "F = π L R p_0² / E*",
    unit="N",
    source=_HERTZ,
    pressure="p_0 [Pa]",
    length="L [m]",
    radius="R [m]",
    modulus="E* [Pa]",
)
def line_contact_force(pressure: float, length: float, radius: float, modulus: float) -> float:
    """Force F [N] that brings a line contact to pressure p_0 [Pa]; symbols as in the pressure.

    Source: Boresi & Schmidt (6e), Ch 17, solved for the force.
    """
    return math.pi * length * radius * pressure**2 / modulus


@equation(
    "b",
    "b = √(4 F R / (π L E*))",
    unit="m",
    source=_HERTZ,
    force="F [N]",
    length="L [m]",
    radius="R [m]",
    modulus="E* [Pa]",
)
def line_contact_half_width(force: float, length: float, radius: float, modulus: float) -> float:
    """Half the width b [m] of the contact band; symbols as in the pressure.

    Source: Boresi & Schmidt (6e), Ch 17.
    """
    return math.sqrt(4 * force * radius / (math.pi * length * modulus))


@equation(
    "z",
    "z = 0.786 b",
    unit="m",
    source=_HERTZ,
    half_width="b [m]",
)
def depth_of_greatest_shear(half_width: float) -> float:
    """Depth z [m] of the greatest shear stress below the surface, from half-width b [m].

    A hardened case must be several times as deep.

    Source: Boresi & Schmidt (6e), Ch 17.
    """
    return 0.786 * half_width
