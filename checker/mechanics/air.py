"""Air: the standard atmosphere up to the tropopause, the hot day, and the viscosity of air.

Altitudes are geometric. Pressure belongs to the standard day alone; a deviation from it is a
temperature offset at the same pressure, as altimeters and performance charts take it.
"""

import math

from checker.mechanics.equation import OutOfRange, equation

STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition
AIR_GAS_CONSTANT = 287.05287  # J/(kg K), ISO 2533:1975 (from memory)
HEAT_CAPACITY_RATIO = 1.4
SEA_LEVEL_TEMPERATURE = 288.15  # K
SEA_LEVEL_PRESSURE = 101_325.0  # Pa
TROPOSPHERE_LAPSE = 6.5e-3  # K per metre of geopotential altitude

_EARTH_RADIUS = 6_356_766.0  # m, the nominal radius of both standards
_LOWEST_ALTITUDE = -2_000.0  # m, start of the ISO 2533 tables (from memory)
_HIGHEST_ALTITUDE = 11_000.0  # m, just under the geometric altitude of the tropopause
_STANDARD = "U.S. Standard Atmosphere 1976; ISO 2533:1975 is the same model (from memory)"


@equation(
    "H",
    "H = r₀ z / (r₀ + z)",
    unit="m",
    source=_STANDARD,
    altitude="z [m]",
)
def geopotential_altitude(altitude: float) -> float:
    """Altitude ``H`` at which constant gravity would give the same potential, in m.

    ``altitude`` is geometric, in m, from -2000 to 11 000. Source: U.S. Standard Atmosphere 1976.

    Raises:
        OutOfRange: ``altitude`` lies outside the troposphere tables.
    """
    if not _LOWEST_ALTITUDE <= altitude <= _HIGHEST_ALTITUDE:
        raise OutOfRange(
            f"an altitude of {altitude:.4g} m is outside {_LOWEST_ALTITUDE:g} to"
            f" {_HIGHEST_ALTITUDE:g} m"
        )
    return _EARTH_RADIUS * altitude / (_EARTH_RADIUS + altitude)


@equation(
    "T",
    "T = T₀ - 0.0065 H + ΔT",
    unit="K",
    source=_STANDARD,
    altitude="z [m]",
    deviation="ΔT [K]",
)
def temperature(altitude: float, deviation: float) -> float:
    """Air temperature ``T`` at a geometric altitude, in K.

    ``deviation`` is the offset from the standard day in K, 0 on the day itself. Valid from -2000
    to 11 000 m. Source: U.S. Standard Atmosphere 1976.

    Raises:
        OutOfRange: ``altitude`` lies outside the troposphere tables.
    """
    return SEA_LEVEL_TEMPERATURE - TROPOSPHERE_LAPSE * geopotential_altitude(altitude) + deviation


@equation(
    "p",
    "p = p₀ (1 - 0.0065 H / T₀)^(g₀/(0.0065 R))",
    unit="Pa",
    source=_STANDARD,
    altitude="z [m]",
)
def pressure(altitude: float) -> float:
    """Ambient pressure ``p`` of the standard day at a geometric altitude, in Pa.

    Valid from -2000 to 11 000 m. Source: U.S. Standard Atmosphere 1976.

    Raises:
        OutOfRange: ``altitude`` lies outside the troposphere tables.
    """
    exponent = STANDARD_GRAVITY / (TROPOSPHERE_LAPSE * AIR_GAS_CONSTANT)
    ratio = temperature(altitude, 0.0) / SEA_LEVEL_TEMPERATURE
    return SEA_LEVEL_PRESSURE * math.pow(ratio, exponent)


@equation(
    "ρ",
    "ρ = p / (R T)",
    unit="kg/m3",
    source="Ideal gas, R = 287.05287 J/(kg K) of the standard atmosphere",
    absolute_pressure="p [Pa]",
    absolute_temperature="T [K]",
)
def density(absolute_pressure: float, absolute_temperature: float) -> float:
    """Density ``ρ`` of dry air at a pressure in Pa and a temperature in K, in kg/m3.

    Valid for dry air near ambient conditions. Source: ideal gas law.

    Raises:
        OutOfRange: ``absolute_temperature`` is not above absolute zero.
    """
    _require_above_zero(absolute_temperature)
    return absolute_pressure / (AIR_GAS_CONSTANT * absolute_temperature)


@equation(
    "a",
    "a = √(1.4 R T)",
    unit="m/s",
    source=_STANDARD,
    absolute_temperature="T [K]",
)
def speed_of_sound(absolute_temperature: float) -> float:
    """Speed of sound ``a`` in dry air at a temperature in K, in m/s.

    Valid for dry air near ambient conditions. Source: U.S. Standard Atmosphere 1976.

    Raises:
        OutOfRange: ``absolute_temperature`` is not above absolute zero.
    """
    _require_above_zero(absolute_temperature)
    return math.sqrt(HEAT_CAPACITY_RATIO * AIR_GAS_CONSTANT * absolute_temperature)


@equation(
    "μ",
    "μ = 1.458e-6 T^1.5 / (T + 110.4)",
    unit="Pa s",
    source="Sutherland's law with the constants of the U.S. Standard Atmosphere 1976",
    absolute_temperature="T [K]",
)
def dynamic_viscosity(absolute_temperature: float) -> float:
    """Dynamic viscosity ``μ`` of air at a temperature in K, in Pa s.

    Valid from about 100 to 1900 K (from memory). Source: Sutherland's law, U.S. Standard
    Atmosphere 1976.

    Raises:
        OutOfRange: ``absolute_temperature`` is not above absolute zero.
    """
    _require_above_zero(absolute_temperature)
    return 1.458e-6 * math.pow(absolute_temperature, 1.5) / (absolute_temperature + 110.4)


def _require_above_zero(absolute_temperature: float) -> None:
    if absolute_temperature <= 0.0:
        raise OutOfRange("the temperature of the air is not above absolute zero")
