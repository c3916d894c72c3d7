"""Torsionally soft couplings: stiffness from hot to cold, resonance factor, heat."""

import math
from typing import TYPE_CHECKING

from checker.mechanics.equation import OutOfRange, equation

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]

_SCATTER = "catalogue scatter of 20 %, flexible-coupling maker's catalogue, 2015, trade source"
HOT_OVER_COLD_STIFFNESS = 0.37
"""Least stiffness at 100 degC over that at 30 degC, rubber coupling maker's data page (seen)."""
HOT_OVER_COLD_DAMPING = 4.0 / 6.9
"""ψ ≈ 2π/M: magnifiers of that grade, 4 at 30 degC and 6.9 at 100 degC, same page (seen)."""


@equation(
    "C_low",
    "C_low = 0.8 C_hot",
    unit="N m/rad",
    source=_SCATTER,
    hot="C_hot [N m/rad]",
)
def softest(hot: float) -> float:
    """Lower end of the stiffness [N m/rad] to be reckoned with, from that of the hot coupling.

    Source: catalogue scatter, trade source.
    """
    return 0.8 * hot


@equation(
    "C_high",
    "C_high = 1.2 C_cold",
    unit="N m/rad",
    source=_SCATTER,
    cold="C_cold [N m/rad]",
)
def stiffest(cold: float) -> float:
    """Upper end of the stiffness [N m/rad] to be reckoned with, from that of the cold coupling.

    Source: catalogue scatter, trade source.
    """
    return 1.2 * cold


@equation(
    "ψ_low",
    "ψ_low = 0.8 ψ_hot",
    unit="1",
    source="damping scatters by 20 %, second coupling maker, trade source",
    hot="ψ_hot [1]",
)
def least_damping(hot: float) -> float:
    """Lower end of the relative damping to be reckoned with, from that of the hot coupling.

    Source: trade source.
    """
    return 0.8 * hot


@equation(
    "ψ_high",
    "ψ_high = 1.2 ψ",
    unit="1",
    source="damping scatters by 20 %, second coupling maker, trade source",
    stated="ψ [1]",
)
def most_damping(stated: float) -> float:
    """Upper end of the relative damping to be reckoned with: off resonance heat grows with it.

    Source: trade source.
    """
    return 1.2 * stated


@equation(
    "c_low",
    "c_low = 0.8 c_hot",
    unit="N m s/rad",
    source="damping scatters by 20 %, second coupling maker, trade source",
    hot="c_hot [N m s/rad]",
)
def least_coefficient(hot: float) -> float:
    """Lower end of a viscous damping coefficient [N m s/rad], from that of the hot damper.

    Source: trade source, on relative damping; taken for viscous damping too.
    """
    return 0.8 * hot


@equation(
    "c_high",
    "c_high = 1.2 c_cold",
    unit="N m s/rad",
    source="damping scatters by 20 %, second coupling maker, trade source",
    cold="c_cold [N m s/rad]",
)
def most_coefficient(cold: float) -> float:
    """Upper end of a viscous damping coefficient [N m s/rad], from that of the cold damper.

    Source: trade source, on relative damping; taken for viscous damping too.
    """
    return 1.2 * cold


@equation(
    "ψ_hot",
    "ψ_hot = k ψ",
    unit="1",
    source="definition of the factor",
    cold="ψ [1]",
    factor="k [1]",
)
def hot_damping(cold: float, factor: float) -> float:
    """Relative damping of a hot elastomer from that of the cold one.

    Source: definition.
    """
    return factor * cold


@equation(
    "C_T",
    "C_T = k C",
    unit="N m/rad",
    source="definition of the factor",
    stiffness="C [N m/rad]",
    factor="k [1]",
)
def stiffness_at(stiffness: float, factor: float) -> float:
    """Stiffness [N m/rad] of an elastomer at one temperature from that at another.

    Source: definition.
    """
    return factor * stiffness


@equation(
    "φ",
    "φ = T / C",
    unit="rad",
    source="definition of the stiffness",
    torque="T [N m]",
    stiffness="C [N m/rad]",
)
def twist(torque: float, stiffness: float) -> float:
    """Angle [rad] by which a torque twists a coupling.

    Source: definition.
    """
    return torque / stiffness


@equation(
    "V",
    "V = √((1 + (ψ/2π)²) / ((1 − r²)² + (ψ/2π)²))",
    unit="1",
    source="DIN 740-2:1986 (from memory), derived from complex stiffness",
    ratio="r [1]",
    damping="ψ [1]",
)
def resonance_factor(ratio: float, damping: float) -> float:
    """Torque in the coupling of two masses over that of a rigid one, r being f over f_n.

    Source: DIN 740-2:1986 (from memory).

    Raises:
        OutOfRange: resonance without damping.
    """
    loss = (damping / math.tau) ** 2
    below = (1.0 - ratio**2) ** 2 + loss
    if below == 0.0:
        raise OutOfRange("damping must be above zero at resonance")
    return math.sqrt((1.0 + loss) / below)


@equation(
    "T_el",
    "T_el = T / √(1 + (ψ/2π)²)",
    unit="N m",
    source="complex stiffness, derived",
    torque="T [N m]",
    damping="ψ [1]",
)
def elastic_torque(torque: float, damping: float) -> float:
    """Elastic part [N m] of the torque amplitude in a coupling.

    Source: complex stiffness, derived.
    """
    return torque / math.sqrt(1.0 + (damping / math.tau) ** 2)


@equation(
    "P",
    "P = ψ f T_el² / (2 C)",
    unit="W",
    source="DIN 740-2:1986 (from memory); energy balance, derived",
    damping="ψ [1]",
    frequency="f [Hz]",
    torque="T_el [N m]",
    stiffness="C [N m/rad]",
)
def heat(damping: float, frequency: float, torque: float, stiffness: float) -> float:
    """Heat P [W] of one order in a coupling. Heats of several orders add up, amplitudes do not.

    Source: DIN 740-2:1986 (from memory), re-derived.
    """
    return damping * frequency * torque**2 / (2.0 * stiffness)


@equation(
    "P",
    "P = c (2 π f)² T² / (2 (C² + (2 π f c)²))",
    unit="W",
    source="mean power of a spring and a viscous damper side by side, derived",
    coefficient="c [N m s/rad]",
    frequency="f [Hz]",
    torque="T [N m]",
    stiffness="C [N m/rad]",
)
def viscous_heat(coefficient: float, frequency: "Real", torque: "Real", stiffness: float) -> "Real":
    """Heat P [W] of one order in a viscous damper beside a spring, by the whole torque T.

    Source: derived.
    """
    turning = math.tau * frequency
    return (
        coefficient
        * (turning * torque) ** 2
        / (2.0 * (stiffness**2 + (turning * coefficient) ** 2))
    )


@equation(
    "T",
    "T = T_air + (T_limit − T_ref) P / P_rated",
    unit="K",
    source="heat flow grows in proportion to the temperature difference, derived",
    air="T_air [K]",
    limit="T_limit [K]",
    reference="T_ref [K]",
    heat_made="P [W]",
    heat_rating="P_rated [W]",
)
def elastomer_temperature(
    air: float, limit: float, reference: float, heat_made: float, heat_rating: float
) -> float:
    """Temperature [K] of a coupling that makes heat P, of which P_rated heats it to its limit.

    The rating is taken to hold in air of T_ref: there P_rated brings it to T_limit.

    Source: derived.

    Raises:
        OutOfRange: a limit that is not above the reference, or no rating.
    """
    if limit <= reference or heat_rating <= 0.0:
        raise OutOfRange("heat_rating must be above zero and hold above the air's temperature")
    return air + (limit - reference) * heat_made / heat_rating
