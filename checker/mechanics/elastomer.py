"""Elastomers of couplings: how hot they may run."""

from checker.mechanics.equation import OutOfRange, equation

_ZERO_CELSIUS = 273.15
_OIL_FILM = 200.0  # W/(m² K), as oil that splashes on a wall (from memory)
_RUBBER = 0.2  # W/(m K), low end of handbook values for filled rubber (from memory)
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


@equation(
    "ΔT_e",
    "ΔT_e = P/(h A) + P t/(4 λ A), h = 200 W/m² K, λ = 0.2 W/m K",
    unit="ΔK",
    source="Slab with even heat, wetted on both faces (handbooks); h and λ from memory, low end",
    heat="P [W]",
    surface="A [m2]",
    thickness="t [m]",
)
def wetted_rise(heat: float, surface: float, thickness: float) -> float:
    """How much hotter ``ΔT_e`` the middle of a wetted elastomer is than the oil round it, in K.

    ``heat`` of hysteresis spread evenly, ``surface`` of both wetted faces together in m2,
    ``thickness`` between them in m. Source: conduction with even heat, film of splashed oil.

    Raises:
        OutOfRange: ``surface`` is not positive.
    """
    if surface <= 0.0:
        raise OutOfRange("surface: no face of the elastomer is wetted")
    return heat / (_OIL_FILM * surface) + heat * thickness / (4.0 * _RUBBER * surface)


@equation(
    "T_e",
    "T_e = T_oil + ΔT + ΔT_e",
    unit="K",
    source="Series of oil, film and rubber",
    oil="T_oil [K]",
    oil_rise="ΔT [ΔK]",
    rise="ΔT_e [ΔK]",
)
def wetted_temperature(oil: float, oil_rise: float, rise: float) -> float:
    """Temperature ``T_e`` in the middle of a wetted elastomer, in K. Source: definition."""
    return oil + oil_rise + rise


@equation(
    "T_long",
    "T_long = T_max - 20 K",
    unit="K",
    source="as highest_temperature; 20 K less for long (from memory)",
    elastomer="elastomer []",
)
def lasting_temperature(elastomer: str) -> float:
    """Temperature ``T_long`` that an elastomer bears for long, in K.

    Raises:
        OutOfRange: an elastomer that is not listed.
    """
    return highest_temperature(elastomer) - 20.0
