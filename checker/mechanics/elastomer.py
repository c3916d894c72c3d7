"""Elastomers of couplings: how hot they may run."""

from checker.mechanics.equation import OutOfRange, equation

_ZERO_CELSIUS = 273.15
# Highest temperature for a short time, in degrees Celsius. HNBR: AZoM article 537 (seen). NBR:
# trade comparison page (seen); seal handbooks give 100 for long (from memory). Natural rubber:
# rubber coupling maker's technical data page, the same for all its grades (seen). The others from
# memory.
_HOTTEST = {
    "NBR": 120.0,
    "HNBR": 150.0,
    "ACM": 150.0,
    "FKM": 200.0,
    "VMQ": 200.0,
    "EPDM": 130.0,
    "natural rubber": 100.0,
    "polyurethane": 100.0,
}


@equation(
    "T_max",
    "T_max = table(elastomer)",
    unit="K",
    source="AZoM article 537 (HNBR); trade pages (NBR, natural rubber); others from memory",
    elastomer="elastomer []",
)
def highest_temperature(elastomer: str) -> float:
    """Temperature T_max [K] that an elastomer bears for a short time; for long about 20 K less.

    Source: AZoM article 537 for HNBR, trade pages for NBR and natural rubber, others from memory.

    Raises:
        OutOfRange: an elastomer that is not listed.
    """
    if elastomer not in _HOTTEST:
        raise OutOfRange(f"no highest temperature is known for the elastomer {elastomer}")
    return _HOTTEST[elastomer] + _ZERO_CELSIUS


@equation(
    "ΔT",
    "ΔT = T_max − T",
    unit="ΔK",
    source="definition",
    limit="T_max [K]",
    temperature="T [K]",
)
def temperature_reserve(limit: float, temperature: float) -> float:
    """How far a temperature T [K] stays below its limit T_max [K].

    Source: definition.
    """
    return limit - temperature
