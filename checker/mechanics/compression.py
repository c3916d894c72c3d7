"""Torque of a cylinder that compresses without firing: the least that holds a crankshaft back."""

import math

from checker.mechanics.equation import OutOfRange, equation
from checker.mechanics.excitation import ATMOSPHERE, POLYTROPIC, slider_crank


@equation(
    "T_c",
    "T_c = max of (p_1 ((s + c)/(x + c))^n − p_0) (π/4) d² dx/dφ, c = s/(ε − 1)",
    unit="N m",
    source="slider crank and polytropic compression, derived; n = 1.3 from memory",
    bore="d [m]",
    stroke="s [m]",
    rod_length="l [m]",
    compression_ratio="ε [1]",
    intake="p_1 [Pa]",
)
def compression_torque(
    bore: float, stroke: float, rod_length: float, compression_ratio: float, intake: float
) -> float:
    """Peak torque T_c [N m] at the crankshaft of one cylinder that is compressed and does not fire.

    x is the way of the piston from its upper dead centre, c the height of the clearance. The charge
    starts at p_1 [Pa] at the lower dead centre; air of one atmosphere p_0 stands below the piston.

    A lower bound of the torque by which an early spark turns the engine back: the spark comes on
    top of this pressure and multiplies it. At a slow crank leaks and cold walls take some of it,
    less than the spark adds. Also a lower bound of the peak that turns a dead engine, without its
    friction, if p_1 is that of a closed throttle.

    Source: derived. Valid for a compression over the whole stroke: late closing valves or ports
    take from the ratio.

    Raises:
        OutOfRange: a compression ratio not above one, or a rod no longer than the crank.
    """
    import numpy as np

    if compression_ratio <= 1.0:
        raise OutOfRange("compression_ratio must be above one")
    angle, travel, _ = slider_crank(stroke, rod_length)
    crank = stroke / 2.0
    tilt = np.sqrt(rod_length**2 - (crank * np.sin(angle)) ** 2)
    down = crank * (1.0 - np.cos(angle)) + rod_length - tilt
    clearance = stroke / (compression_ratio - 1.0)
    pressure = intake * ((stroke + clearance) / (down + clearance)) ** POLYTROPIC
    rising = np.where(travel < 0.0, -travel, 0.0)
    return float(np.max((pressure - ATMOSPHERE) * rising)) * math.pi / 4.0 * bore**2
