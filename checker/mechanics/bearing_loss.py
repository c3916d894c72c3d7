"""Friction of rolling bearings after Palmgren."""

import math
from typing import NamedTuple

from checker.mechanics.equation import OutOfRange, equation

_SOURCE = "Palmgren, in older bearing catalogues and ISO/TR 14179-2 (from memory)"
_SPLIT = 2000.0  # mm²/s times rpm: below, the oil drag no longer falls with speed


class FrictionFactors(NamedTuple):
    """Factors of the load-free and of the load-dependent moment of a kind of bearing."""

    oil_drag: float
    load: float


# f0 with a little oil, the high end where tables give a range, and f1 as a mean of the kind. Deep
# groove: reference case OIL-P06; the rest after Harris, Rolling Bearing Analysis (from memory).
_FACTORS = {
    "deep groove ball": FrictionFactors(2.0, 0.0007),
    "angular contact ball": FrictionFactors(3.3, 0.001),
    "double-row angular contact ball": FrictionFactors(6.5, 0.001),
    "four-point contact ball": FrictionFactors(4.0, 0.001),
    "self-aligning ball": FrictionFactors(2.0, 0.0004),
    "cylindrical roller N": FrictionFactors(2.2, 0.0003),
    "cylindrical roller NU": FrictionFactors(2.2, 0.0003),
    "cylindrical roller NJ": FrictionFactors(2.2, 0.0003),
    "cylindrical roller NUP": FrictionFactors(2.2, 0.0003),
    "needle roller": FrictionFactors(12.0, 0.001),
    "toroidal roller": FrictionFactors(2.2, 0.0004),
    "tapered roller": FrictionFactors(4.0, 0.0004),
    "spherical roller": FrictionFactors(4.0, 0.0005),
    "thrust ball": FrictionFactors(1.5, 0.0008),
    "double-direction thrust ball": FrictionFactors(1.5, 0.0008),
    "thrust roller": FrictionFactors(3.0, 0.0015),
}
_JET = 2.0  # oil jets and full baths about double f0 (from memory)


@equation(
    "f_0",
    "f_0 by kind of bearing, doubled for oil jet and oil bath",
    unit="1",
    source=_SOURCE,
    kind="kind []",
    lubrication="lubrication []",
)
def oil_drag_factor(kind: str, lubrication: str) -> float:
    """Factor ``f_0`` of the moment that oil and speed make. Source: Palmgren (from memory).

    Raises:
        OutOfRange: ``kind`` is a plain bearing.
    """
    doubled = lubrication in ("oil jet", "oil bath")
    return _factors(kind).oil_drag * (_JET if doubled else 1.0)


@equation("f_1", "f_1 by kind of bearing", unit="1", source=_SOURCE, kind="kind []")
def load_factor(kind: str) -> float:
    """Factor ``f_1`` of the moment that the load makes. Source: Palmgren (from memory).

    Raises:
        OutOfRange: ``kind`` is a plain bearing.
    """
    return _factors(kind).load


@equation(
    "F",
    "F = (F_r + F_a)/N",
    unit="N",
    source="Upper estimate: both parts of the load added by size; a matched set shares it alike",
    radial="F_r [N]",
    axial="F_a [N]",
    sharing="N [1]",
)
def load_of_reactions(radial: float, axial: float, sharing: int) -> float:
    """Load ``F`` on one of ``sharing`` bearings on a support, for its friction, in N.

    Raises:
        OutOfRange: ``sharing`` is not positive.
    """
    if sharing <= 0:
        raise OutOfRange("sharing: no bearing carries the load")
    return (radial + axial) / sharing


@equation(
    "F",
    "F = Σ F_b/N + |F_x|",
    unit="N",
    source="Upper estimate: tooth forces added by size and shared alike, all thrust on one bearing",
    tooth_forces="F_b [N]",
    bearings="N [1]",
    thrust="F_x [N]",
)
def estimated_load(tooth_forces: tuple[float, ...], bearings: int, thrust: float) -> float:
    """Load ``F`` on a bearing for its friction alone, in N.

    Its friction by load is a small part of the losses; where it stands to the meshes is left out.

    Raises:
        OutOfRange: ``bearings`` is not positive.
    """
    if bearings <= 0:
        raise OutOfRange("bearings: none carries the shaft")
    return sum(tooth_forces) / bearings + abs(thrust)


@equation(
    "M_0",
    "M_0 = 1e-7 f_0 (ν n)^(2/3) d_m³, from ν n = 2000; 160e-7 f_0 d_m³ below; N mm, mm²/s, rpm, mm",
    unit="N m",
    source=_SOURCE,
    factor="f_0 [1]",
    speed="ω [rad/s]",
    diameter="d_m [m]",
    viscosity="ν [m2/s]",
)
def oil_drag_moment(factor: float, speed: float, diameter: float, viscosity: float) -> float:
    """Moment ``M_0`` of a bearing without load, in N m; 0 at rest.

    SI arguments. Source: Palmgren (from memory).
    """
    if speed <= 0.0:
        return 0.0
    product = viscosity * 1.0e6 * speed * 30.0 / math.pi
    drag = product ** (2.0 / 3.0) if product >= _SPLIT else 160.0
    return float(1.0e-7 * factor * drag * (diameter * 1.0e3) ** 3 * 1.0e-3)


@equation(
    "M_1",
    "M_1 = f_1 F d_m",
    unit="N m",
    source=_SOURCE,
    factor="f_1 [1]",
    load="F [N]",
    diameter="d_m [m]",
)
def load_moment(factor: float, load: float, diameter: float) -> float:
    """Moment ``M_1`` that the load on a bearing makes, in N m. Source: Palmgren (from memory)."""
    return factor * load * diameter


@equation(
    "P_b",
    "P_b = (M_0 + M_1) ω",
    unit="W",
    source=_SOURCE,
    oil_moment="M_0 [N m]",
    load_moment="M_1 [N m]",
    speed="ω [rad/s]",
)
def bearing_loss(oil_moment: float, load_moment: float, speed: float) -> float:
    """Friction power ``P_b`` of a bearing, in W. Source: Palmgren (from memory)."""
    return (oil_moment + load_moment) * speed


def _factors(kind: str) -> FrictionFactors:
    if kind not in _FACTORS:
        raise OutOfRange(f"kind {kind!r} is no rolling bearing: its friction is another law")
    return _FACTORS[kind]
