"""The gear case as it warms up."""

from checker.mechanics.equation import equation

_BEARING_STEEL = 12.5e-6  # 1/K, through-hardened (from memory)

# Round figures per kelvin; cast aluminium alloys lie between 21 and 24e-6 (from memory).
_EXPANSION = {"aluminium": 23.0e-6, "magnesium": 26.0e-6, "steel": 11.5e-6, "cast iron": 10.5e-6}


@equation(
    "α_h",
    "α_h = 23e-6 aluminium, 26e-6 magnesium, 11.5e-6 steel, 10.5e-6 cast iron",
    unit="1/K",
    source="Handbook round figures (from memory)",
    material="material []",
)
def thermal_expansion(material: str) -> float:
    """Linear expansion ``α_h`` of a housing material, per kelvin.

    Valid around room temperature. Source: handbook round figures (from memory).

    Raises:
        KeyError: ``material`` is none of the four.
    """
    return _EXPANSION[material]


@equation(
    "ΔD",
    "ΔD = D (α_h - 12.5e-6/K) ΔT",
    unit="m",
    source="Thermal expansion of a steel ring in its bore",
    diameter="D [m]",
    housing_expansion="α_h [1/K]",
    warming="ΔT [ΔK]",
)
def seat_loosening(diameter: float, housing_expansion: float, warming: float) -> float:
    """Interference ``ΔD`` that a bearing seat loses as ring and case warm alike, in m of diameter.

    ``diameter`` of the seat in m, ``housing_expansion`` per K, ``warming`` in K. Valid for a
    through-hardened steel ring as warm as its seat; negative where the seat grows less. Source:
    thermal expansion.
    """
    return diameter * (housing_expansion - _BEARING_STEEL) * warming


@equation(
    "θ_hot",
    "θ_hot = max(θ_1, θ_2)",
    unit="K",
    source="definition",
    one="θ_1 [K]",
    other="θ_2 [K]",
)
def hotter(one: float, other: float) -> float:
    """The higher of two temperatures [K]."""
    return max(one, other)


@equation(
    "θ_cold",
    "θ_cold = min(θ_1, θ_2)",
    unit="K",
    source="definition",
    one="θ_1 [K]",
    other="θ_2 [K]",
)
def colder(one: float, other: float) -> float:
    """The lower of two temperatures [K]."""
    return min(one, other)


@equation(
    "Σ m",
    "Σ m = Σ m_i",
    unit="kg",
    source="definition",
    masses="m_i [kg]",
)
def mass_of_parts(masses: tuple[float, ...]) -> float:
    """Mass [kg] of parts together."""
    return sum(masses)
