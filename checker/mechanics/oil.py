"""Properties of lubricating oil: viscosity, density, thermal growth.

Viscosities are kinematic in m2/s unless named dynamic; the standards work in mm2/s (cSt).
"""

import math

from checker.mechanics.equation import OutOfRange, equation

CENTISTOKES = 1.0e-6  # m2/s
REFERENCE_TEMPERATURE = 288.15  # K: densities are stated at 15 °C

_D341_RANGE = (0.21, 2.0e7)  # mm2/s, of the one-term low-viscosity form (from memory)


def _function_of(centistokes: float) -> float:
    return centistokes + 0.7 + math.exp(-1.47 - 1.84 * centistokes - 0.51 * centistokes**2)


_FUNCTION_RANGE = (_function_of(_D341_RANGE[0]), _function_of(_D341_RANGE[1]))
_LOG_LOG_RANGE = tuple(math.log10(math.log10(value)) for value in _FUNCTION_RANGE)


@equation(
    "Z",
    "Z = ν + 0.7 + exp(-1.47 - 1.84 ν - 0.51 ν²), ν in mm²/s",
    unit="1",
    source="ASTM D341, low-viscosity form",
    viscosity="ν [m2/s]",
)
def viscosity_function(viscosity: float) -> float:
    """Viscosity function ``Z`` of ASTM D341 for a viscosity in m2/s.

    The exponential matters only below 2 mm2/s; above, this is the short form ν + 0.7. Valid from
    0.21 to 2e7 mm2/s. Source: ASTM D341.

    Raises:
        OutOfRange: ``viscosity`` lies outside the range.
    """
    centistokes = viscosity / CENTISTOKES
    lowest, highest = _D341_RANGE
    if not lowest <= centistokes <= highest:
        raise OutOfRange(
            f"a viscosity of {centistokes:.4g} cSt is outside {lowest:g} to {highest:g}"
        )
    return _function_of(centistokes)


@equation(
    "ν",
    "ν = x - exp(-0.7487 - 3.295 x + 0.6119 x² - 0.3193 x³), x = Z - 0.7, ν in mm²/s",
    unit="m2/s",
    source="ASTM D341, inverse of the low-viscosity form",
    function_value="Z [1]",
)
def viscosity_from_function(function_value: float) -> float:
    """Viscosity ``ν`` for a viscosity function ``Z`` of ASTM D341, in m2/s.

    Valid from 0.21 to 2e7 mm2/s. Source: ASTM D341; a fit, good to 0.02 % of the forward form
    from 0.5 mm2/s up.

    Raises:
        OutOfRange: ``function_value`` belongs to a viscosity outside the range.
    """
    lowest, highest = _FUNCTION_RANGE
    if not lowest <= function_value <= highest:
        raise OutOfRange(
            f"a viscosity function of {function_value:.4g} is outside {lowest:g} to {highest:g}"
        )
    centistokes = short = function_value - 0.7
    if short < 5.0:  # the correction is nothing above, and its cube would overflow
        centistokes -= math.exp(-0.7487 - 3.295 * short + 0.6119 * short**2 - 0.3193 * short**3)
    return centistokes * CENTISTOKES


@equation(
    "ν",
    "log log Z(ν) = A - B log T, A and B from (T_1, ν_1) and (T_2, ν_2)",
    unit="m2/s",
    source="ASTM D341",
    temperature="T [K]",
    viscosity_1="ν_1 [m2/s]",
    temperature_1="T_1 [K]",
    viscosity_2="ν_2 [m2/s]",
    temperature_2="T_2 [K]",
)
def kinematic_viscosity(
    temperature: float,
    viscosity_1: float,
    temperature_1: float,
    viscosity_2: float,
    temperature_2: float,
) -> float:
    """Viscosity ``ν`` of an oil at a temperature, from its viscosity at two others, in m2/s.

    Temperatures in K, viscosities in m2/s. Valid between the pour point and the start of boiling,
    0.21 to 2e7 mm2/s: cold behaviour is the limit of the oil's grade, not this line. Source:
    ASTM D341.

    Raises:
        OutOfRange: a temperature is not above absolute zero, ``temperature_2`` equals
            ``temperature_1``, ``viscosity_2`` does not fall as the temperature rises, or the
            viscosity at ``temperature`` leaves the range.
    """
    if min(temperature, temperature_1, temperature_2) <= 0.0:
        raise OutOfRange("a temperature of the oil is not above absolute zero")
    if temperature_1 == temperature_2:
        raise OutOfRange("both viscosities are at one temperature: two are needed")
    log_log_1 = math.log10(math.log10(viscosity_function(viscosity_1)))
    log_log_2 = math.log10(math.log10(viscosity_function(viscosity_2)))
    slope = (log_log_2 - log_log_1) / math.log10(temperature_2 / temperature_1)
    if slope >= 0.0:
        raise OutOfRange("the viscosity does not fall as the temperature rises")
    log_log = log_log_1 + slope * math.log10(temperature / temperature_1)
    thinnest, thickest = _LOG_LOG_RANGE
    if not thinnest <= log_log <= thickest:
        raise OutOfRange(
            f"at {temperature - 273.15:.4g} degC the viscosity of the oil is outside"
            f" {_D341_RANGE[0]:g} to {_D341_RANGE[1]:g} cSt"
        )
    return viscosity_from_function(math.pow(10.0, math.pow(10.0, log_log)))


@equation(
    "ν",
    "log log Z(ν) = A - B log T, A and B from ν_40 at 313.15 K and ν_100 at 373.15 K",
    unit="m2/s",
    source="ASTM D341",
    temperature="T [K]",
    viscosity_40="ν_40 [m2/s]",
    viscosity_100="ν_100 [m2/s]",
)
def viscosity_at(temperature: float, viscosity_40: float, viscosity_100: float) -> float:
    """Viscosity ``ν`` of an oil at a temperature in K, from those at 40 and 100 °C, in m2/s.

    Valid as ``kinematic_viscosity``. Source: ASTM D341.

    Raises:
        OutOfRange: as ``kinematic_viscosity``.
    """
    return kinematic_viscosity(temperature, viscosity_40, 313.15, viscosity_100, 373.15)


# ASTM D2270, appendix: L = a Y² + b Y + c and H = d Y² + e Y + f up to each Y, in mm2/s (seen in
# two public programs, which agree); they fit table 1 of the standard to a few parts in ten
# thousand.
_INDEX_FITS = (
    (3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077),
    (4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183),
    (5.0, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119),
    (6.4, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557),
    (7.0, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656),
    (7.7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61),
    (9.0, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24),
    (12.0, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81),
    (15.0, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49),
    (18.0, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93),
    (22.0, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73),
    (28.0, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23),
    (40.0, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75),
    (55.0, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62),
    (70.0, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94),
    (math.inf, 0.8353, 14.67, -216.0, 0.1684, 11.85, -97.0),
)


@equation(
    "VI",
    "VI = 100 (L - U)/(L - H) if U ≥ H, else 100 + (10^N - 1)/0.00715, N = log(H/U)/log Y",
    unit="1",
    source="ASTM D2270, procedures A and B, L and H after its appendix",
    viscosity_40="U [m2/s]",
    viscosity_100="Y [m2/s]",
)
def viscosity_index(viscosity_40: float, viscosity_100: float) -> float:
    """Viscosity index ``VI`` from the viscosities at 40 and 100 °C in m2/s, unrounded.

    L and H are the 40 °C viscosities in mm2/s of the reference oils of index 0 and 100. Valid from
    2 mm2/s at 100 °C. Source: ASTM D2270.

    Raises:
        OutOfRange: ``viscosity_100`` is below 2 mm2/s, or not below ``viscosity_40``.
    """
    at_40, at_100 = viscosity_40 / CENTISTOKES, viscosity_100 / CENTISTOKES
    if at_100 < 2.0:
        raise OutOfRange(
            f"at 100 degC the oil has {at_100:.4g} cSt; below 2 cSt no index is defined"
        )
    if at_100 >= at_40:
        raise OutOfRange("the viscosity at 100 degC is not below that at 40 degC")
    _, a, b, c, d, e, f = next(fit for fit in _INDEX_FITS if at_100 <= fit[0])
    low_index = a * at_100**2 + b * at_100 + c
    high_index = d * at_100**2 + e * at_100 + f
    if at_40 >= high_index:
        return 100.0 * (low_index - at_40) / (low_index - high_index)
    exponent = math.log(high_index / at_40) / math.log(at_100)
    return (math.pow(10.0, exponent) - 1.0) / 0.00715 + 100.0


# Thermal expansion of the lubricating-oil group times the base density: 0.34878 kg/m3 per °F
# (seen), here per kelvin. The base of 60 °F is 0.56 K above 15 °C, which moves densities by less
# than 1 part in 40 000.
_EXPANSION_CONSTANT = 0.34878 * 1.8
_EXPANSION_SOURCE = "API MPMS 11.1 (ASTM D1250), lubricating-oil group"


@equation(
    "ρ",
    "ρ = ρ₁₅ exp(-α ΔT (1 + 0.8 α ΔT)), α = 0.6278/ρ₁₅, ΔT = T - 288.15 K",
    unit="kg/m3",
    source=_EXPANSION_SOURCE,
    density_15="ρ₁₅ [kg/m3]",
    temperature="T [K]",
)
def density(density_15: float, temperature: float) -> float:
    """Density ``ρ`` of an oil at a temperature in K, in kg/m3.

    ``density_15`` at 15 °C in kg/m3. Valid for mineral oils of 800 to 1164 kg/m3 at atmospheric
    pressure, -50 to 150 °C (from memory); used for synthetic oils too, for want of better.
    Source: API MPMS 11.1.

    Raises:
        OutOfRange: ``density_15`` is not positive.
    """
    growth = _expansion_at_15(density_15) * (temperature - REFERENCE_TEMPERATURE)
    return density_15 * math.exp(-growth * (1.0 + 0.8 * growth))


@equation(
    "β",
    "β = α (1 + 1.6 α ΔT), α = 0.6278/ρ₁₅, ΔT = T - 288.15 K",
    unit="1/K",
    source=_EXPANSION_SOURCE + ", differentiated",
    density_15="ρ₁₅ [kg/m3]",
    temperature="T [K]",
)
def thermal_expansion(density_15: float, temperature: float) -> float:
    """Volume expansion ``β`` of an oil per kelvin at a temperature in K.

    ``density_15`` at 15 °C in kg/m3. Valid as ``density``. Source: API MPMS 11.1.

    Raises:
        OutOfRange: ``density_15`` is not positive.
    """
    at_15 = _expansion_at_15(density_15)
    return at_15 * (1.0 + 1.6 * at_15 * (temperature - REFERENCE_TEMPERATURE))


@equation(
    "ε",
    "ε = ρ(T_1)/ρ(T_2) - 1",
    unit="1",
    source=_EXPANSION_SOURCE,
    density_15="ρ₁₅ [kg/m3]",
    temperature_1="T_1 [K]",
    temperature_2="T_2 [K]",
)
def thermal_growth(density_15: float, temperature_1: float, temperature_2: float) -> float:
    """Growth ``ε`` of a volume of oil from one temperature to another, as a fraction.

    ``density_15`` at 15 °C in kg/m3, temperatures in K. Valid as ``density``. Source: API MPMS
    11.1.

    Raises:
        OutOfRange: ``density_15`` is not positive.
    """
    return density(density_15, temperature_1) / density(density_15, temperature_2) - 1.0


@equation(
    "η",
    "η = ν ρ",
    unit="Pa s",
    source="Definition",
    viscosity="ν [m2/s]",
    oil_density="ρ [kg/m3]",
)
def dynamic_viscosity(viscosity: float, oil_density: float) -> float:
    """Dynamic viscosity ``η`` in Pa s from ``viscosity`` in m2/s and ``oil_density`` in kg/m3.

    Valid with both at the same temperature. Source: definition.
    """
    return viscosity * oil_density


@equation(
    "ν_40,req",
    "ν_40,req = 500/√v, in mm²/s",
    unit="m2/s",
    source="ASM Handbook rule, 7000/√v with v in ft/min (from memory)",
    pitch_line_speed="v [m/s]",
)
def required_viscosity_40(pitch_line_speed: float) -> float:
    """Viscosity ``ν_40,req`` at 40 °C that gears want at a pitch-line speed in m/s, in m2/s.

    Valid for mineral oils and enclosed steel gears, as a first choice before the film is computed.
    Source: ASM Handbook rule (from memory).

    Raises:
        OutOfRange: ``pitch_line_speed`` is not positive.
    """
    if pitch_line_speed <= 0.0:
        raise OutOfRange("the gears stand still: their pitch lines have no speed")
    return 500.0 * CENTISTOKES / math.sqrt(pitch_line_speed)


@equation(
    "ΔT",
    "ΔT = T_upper - T_lower",
    unit="ΔK",
    source="Definition",
    upper="T_upper [K]",
    lower="T_lower [K]",
)
def temperature_reserve(upper: float, lower: float) -> float:
    """Distance ``ΔT`` of a temperature from one that it must stay below, or above, in K.

    ``upper`` and ``lower`` in K; negative where they are the wrong way round. Source: definition.
    """
    return upper - lower


def _expansion_at_15(density_15: float) -> float:
    if density_15 <= 0.0:
        raise OutOfRange(f"an oil density of {density_15:.4g} kg/m3 is not above zero")
    return _EXPANSION_CONSTANT / density_15
