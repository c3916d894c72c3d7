"""Air in oil, oil in air: what a resting oil gives up, how the rest grows, how drops fall."""

import math

from checker.mechanics.air import STANDARD_GRAVITY
from checker.mechanics.equation import OutOfRange, equation

# ASTM D892 counts bubbles of 10 to 1000 µm as entrained air.
SMALLEST, LARGEST = 10.0e-6, 1000.0e-6


@equation(
    "w",
    "w = √(4 g d Δρ/(3 C_D ρ_a)), C_D = 24/Re to Re 1, 24/Re (1 + 0.15 Re^0.687) above",
    unit="m/s",
    source="Stokes to Re 1, Schiller-Naumann above (from memory)",
    diameter="d [m]",
    density="ρ [kg/m3]",
    gas_density="ρ_a [kg/m3]",
    gas_viscosity="μ_a [Pa s]",
)
def drop_fall_speed(
    diameter: float, density: float, gas_density: float, gas_viscosity: float
) -> float:
    """Speed ``w`` at which a drop of oil falls through air, in m/s.

    SI arguments. Valid to Re 800. Source: Stokes; Schiller and Naumann (from memory).
    """
    difference = STANDARD_GRAVITY * (density - gas_density)
    stokes = difference * diameter**2 / (18.0 * gas_viscosity)
    viscosity = gas_viscosity / gas_density
    if stokes * diameter / viscosity <= 1.0:
        return stokes
    low, high = 0.0, stokes  # w (1 + 0.15 Re^0.687) grows with w and passes the Stokes speed
    for _ in range(60):
        speed = (low + high) / 2.0
        resisted = speed * (1.0 + 0.15 * (speed * diameter / viscosity) ** 0.687)
        low, high = (speed, high) if resisted < stokes else (low, speed)
    return (low + high) / 2.0


@equation(
    "d_c",
    "d_c = √(18 ν h ρ/(g Δρ t_r))",
    unit="m",
    source="Stokes' law, solved for the bubble that just rises",
    depth="h [m]",
    time="t_r [s]",
    viscosity="ν [m2/s]",
    density="ρ [kg/m3]",
    gas_density="ρ_a [kg/m3]",
)
def cleared_bubble(
    depth: float, time: float, viscosity: float, density: float, gas_density: float
) -> float:
    """Smallest bubble ``d_c`` that rises through resting oil while it rests, in m.

    ``depth`` of the quiet oil in m, ``time`` it rests in s. Valid for bubbles to Re 1, about a
    millimetre in warm oil. Source: Stokes' law.

    Raises:
        OutOfRange: ``time`` is not positive, or the oil is no denser than the gas.
    """
    if time <= 0.0:
        raise OutOfRange(f"time {time:g} s: the oil does not rest")
    if density <= gas_density:
        raise OutOfRange(f"density {density:g} kg/m³: nothing rises in so light a liquid")
    lift = STANDARD_GRAVITY * (density - gas_density) * time
    return math.sqrt(18.0 * viscosity * density * depth / lift)


@equation(
    "a_out",
    "a_out = a_in · lg(d_c/10 µm)/2, within 0 and a_in",
    unit="1",
    source="Bubbles of 10 to 1000 µm (ASTM D892) spread evenly over the logarithm of their size: "
    "common practice, no source",
    entrained="a_in [1]",
    cleared="d_c [m]",
)
def retained_air(entrained: float, cleared: float) -> float:
    """Share of air ``a_out`` still in the oil that leaves to the pump.

    ``entrained`` share that comes from the gears, ``cleared`` bubble size in m.
    """
    decades = math.log10(max(cleared, SMALLEST) / SMALLEST) / math.log10(LARGEST / SMALLEST)
    return entrained * min(decades, 1.0)


@equation(
    "V/V_0",
    "V/V_0 = (1 + ε)/(1 - a p_0/p)",
    unit="1",
    source="Thermal growth over an oil that holds air; ideal gas under another pressure",
    oil_growth="ε [1]",
    air_share="a [1]",
    pressure_ratio="p_0/p [1]",
)
def aerated_growth(oil_growth: float, air_share: float, pressure_ratio: float) -> float:
    """Growth ``V/V_0`` of a fill that warms and takes up air.

    ``air_share`` by volume at the reference pressure; under a lower pressure it swells. Source:
    ideal gas law.

    Raises:
        OutOfRange: the air fills the volume.
    """
    share = air_share * pressure_ratio
    if share >= 1.0:
        raise OutOfRange(f"air_share {air_share:g} at a pressure ratio of {pressure_ratio:g}: foam")
    return (1.0 + oil_growth) / (1.0 - share)


@equation(
    "r",
    "r = p_0/(p_0 + p)",
    unit="1",
    source="Ideal gas at constant temperature",
    ambient_pressure="p_0 [Pa]",
    gauge_pressure="p [Pa]",
)
def swelling(ambient_pressure: float, gauge_pressure: float) -> float:
    """Volume ``r`` of the same air in a case under suction, over that at ambient pressure.

    Raises:
        OutOfRange: nothing is left of the pressure.
    """
    absolute = ambient_pressure + gauge_pressure
    if absolute <= 0.0:
        raise OutOfRange(f"gauge_pressure {gauge_pressure:g} Pa leaves no air")
    return ambient_pressure / absolute


@equation(
    "x",
    "x = V/V_0 - 1",
    unit="1",
    source="Definition",
    growth="V/V_0 [1]",
)
def growth_share(growth: float) -> float:
    """Growth ``x`` as a share of the fill."""
    return growth - 1.0
