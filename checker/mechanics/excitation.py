"""What makes a drive vibrate: gas and inertia torque of the cylinders by order, blade passing.

Orders count per turn of the crankshaft. A torque is the sum of Re(T_h exp(i h θ)), θ being the
crank angle from the firing dead centre of the first cylinder. How strongly the cylinders add up
in an order follows from their firing angles alone: in line, V or boxer does not matter.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from checker.mechanics.equation import OutOfRange, equation

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

ORDERS = 12
"""Least number of orders that a survey looks at."""

_SAMPLES = 1440
ATMOSPHERE = 101_325.0
POLYTROPIC = 1.3
LEAST_INTAKE = 0.3
"""Intake pressure of a closed throttle over that of an open one (from memory)."""

MOST_THROTTLED = 14.0
"""Compression ratio above which an engine is taken to have no throttle (from memory)."""

MOST_UNBOOSTED = 1.5e6
"""Indicated mean pressure that an engine reaches without a blower, at most (from memory) [Pa]."""


@dataclass(frozen=True, slots=True)
class Cylinder:
    """One cylinder with its slider crank.

    Attributes:
        bore: [m].
        stroke: [m].
        rod_length: [m].
        compression_ratio: geometric.
        strokes: per cycle, 2 or 4.
    """

    bore: float
    stroke: float
    rod_length: float
    compression_ratio: float
    strokes: int


def survey_orders(strokes: int, cylinders: int) -> tuple[float, ...]:
    """The orders that an engine can excite, per turn of the crankshaft.

    The first twelve, or as many as reach three times the firing order.

    Source: common practice, no source; lower orders are the stronger ones.

    >>> survey_orders(4, 6)[-1]
    9.0
    """
    step = 0.5 if strokes == 4 else 1.0
    return tuple(step * number for number in range(1, max(ORDERS, 3 * cylinders) + 1))


@equation(
    "V_h",
    "V_h = π d² s / 4",
    unit="m3",
    source="definition",
    bore="d [m]",
    stroke="s [m]",
)
def displacement(bore: float, stroke: float) -> float:
    """Volume that the piston of one cylinder sweeps [m³].

    Source: definition.
    """
    return math.pi / 4.0 * bore**2 * stroke


@equation(
    "T_i",
    "T_i = T (1 + q_f)",
    unit="N m",
    source="definition: what the gas does less friction is what the crankshaft gives",
    torque="T [N m]",
    friction="q_f [1]",
)
def indicated_torque(torque: float, friction: float) -> float:
    """Torque of the gas at full load [N m] from that of the crankshaft and the share of friction.

    Source: definition.
    """
    return torque * (1.0 + friction)


@equation(
    "p_i",
    "p_i = 2 π T rev / (z V_h)",
    unit="Pa",
    source="definition of the mean pressure",
    torque="T [N m]",
    cylinders="z [1]",
    displacement="V_h [m3]",
    strokes="strokes [1]",
)
def mean_pressure(torque: float, cylinders: int, displacement: float, strokes: int) -> float:
    """Mean pressure [Pa] over the stroke that stands for a torque [N m]; rev is strokes/2.

    Source: definition.
    """
    return math.tau * torque * strokes / 2.0 / (cylinders * displacement)


@equation(
    "p_i/p_m",
    "p_i / p_m",
    unit="1",
    source="definition",
    indicated="p_i [Pa]",
    manifold="p_m [Pa]",
)
def pressure_per_charge(indicated: float, manifold: float) -> float:
    """Indicated mean pressure [Pa] over the absolute pressure in the manifold [Pa].

    It tells how much work a cylinder makes of its charge; by the heat in a charge of air and fuel
    there is a most.

    Source: definition.

    Raises:
        OutOfRange: no pressure in the manifold.
    """
    if manifold <= 0.0:
        raise OutOfRange("manifold must be above zero")
    return indicated / manifold


@equation(
    "λ_p",
    "λ_p = 1 + p_i (n − 1)(ε − 1) / (p_1 (ε^n − ε))",
    unit="1",
    source="work of a constant-volume cycle with one polytropic exponent, derived",
    indicated="p_i [Pa]",
    intake="p_1 [Pa]",
    compression_ratio="ε [1]",
)
def combustion_pressure_ratio(indicated: float, intake: float, compression_ratio: float) -> float:
    """Pressure after over before combustion that gives an indicated mean pressure p_i [Pa].

    Compression and expansion are polytropic with n = 1.3, combustion is at constant volume.

    Source: derived.

    Raises:
        OutOfRange: a compression ratio not above one, or no intake pressure.
    """
    if compression_ratio <= 1.0 or intake <= 0.0:
        raise OutOfRange("compression_ratio must be above one, the intake pressure above zero")
    span = float(compression_ratio**POLYTROPIC) - compression_ratio
    return 1.0 + indicated * (POLYTROPIC - 1.0) * (compression_ratio - 1.0) / (intake * span)


@dataclass(frozen=True)
class GasHarmonics:
    """Gas torque of one cylinder by order, in parts that scale each by itself.

    Attributes:
        charge: per pascal of intake pressure: compression and expansion without combustion.
        combustion: per pascal of indicated mean pressure.
        ambient: of the exhaust stroke and of the air below the piston, at one atmosphere.
    """

    charge: "Complex"
    combustion: "Complex"
    ambient: "Complex"

    def at(self, indicated: float, intake: float) -> "Complex":
        """T_h at an indicated mean pressure [Pa] and an intake pressure [Pa]."""
        return self.charge * intake + self.combustion * indicated + self.ambient


def slider_crank(stroke: float, rod_length: float) -> tuple["Real", "Real", "Real"]:
    """Crank angle over two turns, piston travel per radian, and its derivative.

    Raises:
        OutOfRange: a rod no longer than the crank.
    """
    import numpy as np

    crank = stroke / 2.0
    if rod_length <= crank:
        raise OutOfRange("rod_length must be above half the stroke")
    angle = np.arange(_SAMPLES) * (2.0 * math.tau / _SAMPLES)
    ratio = crank / rod_length
    sine, cosine = np.sin(angle), np.cos(angle)
    root = np.sqrt(1.0 - (ratio * sine) ** 2)
    travel = crank * (sine + ratio * sine * cosine / root)
    bend = crank * (
        cosine + ratio * (cosine**2 - sine**2) / root + ratio**3 * (sine * cosine) ** 2 / root**3
    )
    return np.asarray(angle, dtype=float), np.asarray(travel), np.asarray(bend)


def gas_harmonics(cylinder: Cylinder, orders: Sequence[float]) -> GasHarmonics:
    """Gas torque of one cylinder by order, from a pressure cycle of polytropes.

    The torque is pressure times piston area times piston travel per radian. A four-stroke
    expands, exhausts, draws in and compresses, half a turn each; a two-stroke expands and
    compresses.

    Source: slider crank and polytropes, derived; the exponent from memory.
    """
    import numpy as np

    angle, travel, _ = slider_crank(cylinder.stroke, cylinder.rod_length)
    crank = cylinder.stroke / 2.0
    ratio = crank / cylinder.rod_length
    down = crank * (1.0 - np.cos(angle)) + cylinder.rod_length * (
        1.0 - np.sqrt(1.0 - (ratio * np.sin(angle)) ** 2)
    )
    area = math.pi / 4.0 * cylinder.bore**2
    clearance = cylinder.stroke / (cylinder.compression_ratio - 1.0)
    squeezed = ((cylinder.stroke + clearance) / (down + clearance)) ** POLYTROPIC
    phase = angle % (cylinder.strokes / 2.0 * math.tau)
    if cylinder.strokes == 2:
        expanding, compressing = phase < math.pi, phase >= math.pi
        drawing = exhausting = np.zeros_like(expanding)
    else:
        expanding, compressing = phase < math.pi, phase >= 3.0 * math.pi
        drawing = (phase >= math.tau) & ~compressing
        exhausting = (phase >= math.pi) & (phase < math.tau)
    charge = np.where(expanding | compressing, squeezed, 0.0) + drawing
    rise = (combustion_pressure_ratio(1.0, 1.0, cylinder.compression_ratio) - 1.0) * squeezed
    combustion = np.where(expanding, rise, 0.0)
    ambient = ATMOSPHERE * (exhausting.astype(float) - 1.0)
    lever = area * travel
    return GasHarmonics(
        *(_harmonics(part * lever, orders) for part in (charge, combustion, ambient))
    )


def inertia_harmonics(
    mass: float, stroke: float, rod_length: float, orders: Sequence[float]
) -> "Complex":
    """Torque of one cylinder's reciprocating mass by order, per (rad/s)² of crank speed.

    Source: kinetic energy of the slider crank, derived: T = −m ω² x′ x″.
    """
    _, travel, bend = slider_crank(stroke, rod_length)
    return _harmonics(-mass * travel * bend, orders)


def _harmonics(torque: "Real", orders: Sequence[float]) -> "Complex":
    import numpy as np

    spectrum = np.fft.rfft(torque) * (2.0 / len(torque))
    return np.asarray(spectrum[[round(2.0 * order) for order in orders]])


def phase_vectors(
    orders: Sequence[float], angles: Sequence[float], weights: Sequence[float] | None = None
) -> "Complex":
    """Σ w_k exp(−i h φ_k) over the firing angles φ_k [rad], for each order: what cylinders add to.

    Args:
        orders: h, per turn of the crankshaft.
        angles: φ_k, of each cylinder.
        weights: w_k, its share of what each would do if all were alike; one where left out.

    Source: phase-vector sum, derived.
    """
    import numpy as np

    turned = np.multiply.outer(np.asarray(orders), np.asarray(angles))
    weighed = np.ones(len(angles)) if weights is None else np.asarray(weights, dtype=float)
    return np.asarray(np.exp(-1j * turned) @ weighed)


def cylinder_weights(cylinders: int, spread: float, weak: int = 0) -> tuple[float, ...]:
    """Work of each cylinder over the mean of all, where one is weak.

    A remainder is left in every order in which equal cylinders cancel, half orders above all. On
    one inertia and with even firing it is as large whichever cylinder is the weak one.

    Args:
        cylinders: z.
        spread: q, how far the weak one stays behind the mean; the others make up for it.
        weak: which one it is, from zero.

    Source: derived; the mean torque stays what it is.

    Raises:
        OutOfRange: a spread below none or above the whole.

    >>> cylinder_weights(3, 0.1, 1)
    (1.05, 0.9, 1.05)
    """
    if not 0.0 <= spread <= 1.0:
        raise OutOfRange("spread must lie between 0 and 1")
    if cylinders == 1:
        return (1.0,)
    others = 1.0 + spread / (cylinders - 1)
    return tuple(1.0 - spread if each == weak else others for each in range(cylinders))


@equation(
    "h_b",
    "h_b = z_b / i",
    unit="1",
    source="definition: each blade passes once per turn of the propeller",
    blades="z_b [1]",
    ratio="i [1]",
)
def blade_order(blades: int, ratio: float) -> float:
    """Blade-passing order per turn of the crankshaft, which turns i times as fast.

    Source: definition.
    """
    return blades / ratio
