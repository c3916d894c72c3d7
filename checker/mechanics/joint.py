"""Joints that pass torque: bolted flange, key and spline; preload and tightening of their bolts."""

import math
from dataclasses import dataclass

from checker.mechanics.equation import OutOfRange, equation

_WENTZELL = "Wentzell, Machine Design, Ch 6, Example 6.1"
_ISO_898 = "ISO 898-1 (from memory)"
_J429 = "SAE J429 as tabulated in Shigley & Mischke 5e p. 341"
_KSI = 6.894757293168e6
_INCH = 0.0254
# Diameters are equal within this [m]: inches and millimetres round in the last digit.
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class BoltClass:
    """Least strengths of one class of steel bolts over a range of nominal diameters.

    Attributes:
        name: the class, as marked on the bolt head or listed by its standard.
        above: nominal diameters of the range lie above this [m].
        up_to: and reach to this, itself included [m].
        proof: proof stress [Pa].
        yield_strength: yield strength or 0.2 % proof strength [Pa].
        tensile_strength: tensile strength [Pa].
        source: standard.
    """

    name: str
    above: float
    up_to: float
    proof: float
    yield_strength: float
    tensile_strength: float
    source: str


def _metric(
    name: str, above: float, up_to: float, proof: float, yielding: float, tensile: float
) -> BoltClass:
    """From millimetres and megapascals, as the standard prints them."""
    return BoltClass(
        name, above / 1e3, up_to / 1e3, proof * 1e6, yielding * 1e6, tensile * 1e6, _ISO_898
    )


def _inch(
    name: str, above: float, up_to: float, proof: float, yielding: float, tensile: float
) -> BoltClass:
    """From inches and ksi, as the standard prints them."""
    return BoltClass(
        name, above * _INCH, up_to * _INCH, proof * _KSI, yielding * _KSI, tensile * _KSI, _J429
    )


# Aircraft bolts (AN) are not listed: their standards state no proof stress.
BOLT_CLASSES = (
    _metric("8.8", 0, 16, 580, 640, 800),
    _metric("8.8", 16, 39, 600, 660, 830),
    _metric("10.9", 0, 39, 830, 940, 1040),
    _metric("12.9", 0, 39, 970, 1100, 1220),
    _inch("SAE 2", 0, 0.75, 55, 57, 74),
    _inch("SAE 2", 0.75, 1.5, 33, 36, 60),
    _inch("SAE 5", 0, 1, 85, 92, 120),
    _inch("SAE 5", 1, 1.5, 74, 81, 105),
    _inch("SAE 8", 0, 1.5, 120, 130, 150),
)


def bolt_class(name: str, diameter: float) -> BoltClass:
    """The strengths of a class, such as 8.8 or SAE 5, at a nominal diameter [m].

    Raises:
        OutOfRange: class not listed, or not for this diameter.
    """
    of_this_name = [listed for listed in BOLT_CLASSES if listed.name == name]
    if not of_this_name:
        raise OutOfRange(f"the bolt class {name} is not listed")
    for listed in of_this_name:
        if listed.above + _SAME < diameter <= listed.up_to + _SAME:
            return listed
    raise OutOfRange(f"a bolt diameter of {diameter * 1e3:.4g} mm is outside bolt class {name}")


@equation(
    "S_p",
    "S_p = table(class, d)",
    unit="Pa",
    source=f"{_ISO_898}; {_J429}",
    name="class []",
    diameter="d [m]",
)
def proof_stress(name: str, diameter: float) -> float:
    """Proof stress S_p [Pa] of a bolt class at nominal diameter d [m].

    Source: ISO 898-1 (from memory) and SAE J429.

    Raises:
        OutOfRange: class not listed, or not for this diameter.
    """
    return bolt_class(name, diameter).proof


@equation(
    "A_s",
    "A_s = π/4 (d − 0.9382 P)²",
    unit="m2",
    source="ISO 898-1, thread profile of ISO 724 (from memory)",
    diameter="d [m]",
    pitch="P [m]",
)
def stress_area(diameter: float, pitch: float) -> float:
    """Stress area A_s [m²] of a metric thread of nominal diameter d and pitch P [m].

    Source: ISO 898-1 (from memory). Inch threads have 0.9743 for 0.9382.
    """
    return math.pi / 4 * (diameter - 0.9382 * pitch) ** 2


@equation(
    "k",
    "k = F / (S_p A_s)",
    unit="1",
    source=_WENTZELL,
    force="F [N]",
    proof="S_p [Pa]",
    area="A_s [m2]",
)
def preload_fraction(force: float, proof: float, area: float) -> float:
    """Preload F [N] of a bolt as a fraction k of its proof load, usually 0.75 to 0.85.

    Source: Wentzell, Machine Design, Ch 6, solved for the fraction.
    """
    return force / (proof * area)


@equation(
    "T",
    "T = K d F",
    unit="N m",
    source=_WENTZELL,
    nut_factor="K [1]",
    diameter="d [m]",
    force="F [N]",
)
def tightening_torque(nut_factor: float, diameter: float, force: float) -> float:
    """Wrench torque T [N·m] that gives preload F [N] to a bolt of diameter d [m].

    K is about 0.2 dry and 0.15 to 0.18 oiled, and scatters. The running torque of a self-locking
    nut comes on top.

    Source: Wentzell, Machine Design, Ch 6.
    """
    return nut_factor * diameter * force


@equation(
    "T_f",
    "T_f = N μ F r",
    unit="N m",
    source="derived: Coulomb friction",
    bolts="N [1]",
    friction="μ [1]",
    force="F [N]",
    radius="r [m]",
)
def friction_torque(bolts: int, friction: float, force: float, radius: float) -> float:
    """Torque T_f [N·m] that N bolts of preload F [N] hold by friction at effective radius r [m].

    To be set against the limit torque. Bolts in shear and drive lugs are the back-up.

    Source: derived, Coulomb friction.
    """
    return bolts * friction * force * radius


@equation(
    "p",
    "p = N F / A",
    unit="Pa",
    source="derived: even pressure",
    bolts="N [1]",
    force="F [N]",
    area="A [m2]",
)
def clamping_pressure(bolts: int, force: float, area: float) -> float:
    """Pressure p [Pa] of N bolts of preload F [N] on a clamped face of area A [m²].

    The upper bound of the preload on a wooden hub, as the friction torque is the lower.

    Source: derived.
    """
    return bolts * force / area


@equation(
    "τ",
    "τ = 2 T / (D b L)",
    unit="Pa",
    source="Wentzell, Machine Design, Ch 15, Example 15.1",
    torque="T [N m]",
    diameter="D [m]",
    width="b [m]",
    length="L [m]",
)
def key_shear_stress(torque: float, diameter: float, width: float, length: float) -> float:
    """Shear stress τ [Pa] of a key of width b and length L [m] in a shaft of diameter D [m].

    Source: Wentzell, Machine Design, Ch 15.
    """
    return 2 * torque / (diameter * width * length)


@equation(
    "σ",
    "σ = 4 T / (D h L)",
    unit="Pa",
    source="Wentzell, Machine Design, Ch 15, Example 15.1",
    torque="T [N m]",
    diameter="D [m]",
    height="h [m]",
    length="L [m]",
)
def key_side_pressure(torque: float, diameter: float, height: float, length: float) -> float:
    """Pressure σ [Pa] on the side of a key of height h [m], half of which is in the shaft.

    Source: Wentzell, Machine Design, Ch 15.
    """
    return 4 * torque / (diameter * height * length)


@equation(
    "p",
    "p = 8 T / (n L (D² − d²))",
    unit="Pa",
    source="derived: even pressure on every flank at the mean radius",
    torque="T [N m]",
    splines="n [1]",
    length="L [m]",
    outer_diameter="D [m]",
    inner_diameter="d [m]",
)
def spline_side_pressure(
    torque: float, splines: int, length: float, outer_diameter: float, inner_diameter: float
) -> float:
    """Pressure p [Pa] on the sides of n splines that touch over length L [m].

    D and d [m] bound the flanks in contact: T = p n L (D − d)/2 · (D + d)/4. Every spline is taken
    to carry alike; often a quarter to a half of them do (from memory).

    Source: derived.

    Raises:
        OutOfRange: no flank between the diameters.
    """
    if outer_diameter <= inner_diameter:
        raise OutOfRange(
            "the outer diameter of the spline is not above the inner one: there is no flank"
        )
    return 8 * torque / (splines * length * (outer_diameter**2 - inner_diameter**2))
