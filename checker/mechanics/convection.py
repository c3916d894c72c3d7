"""Heat from a surface to the air: still air, moving air, radiation, fins.

Air is taken at the mean of surface and air temperature, at the ambient pressure.
"""

import math
from collections.abc import Callable

from checker.mechanics import air
from checker.mechanics.equation import OutOfRange, equation

STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m² K⁴), exact
_PRANDTL_SCALE = {"plate": (0.492, 0.825), "cylinder": (0.559, 0.60)}
_CHURCHILL = "Churchill and Chu 1975 (from memory)"


@equation(
    "λ",
    "λ = 2.64638e-3 T^1.5/(T + 245.4 · 10^(-12/T))",
    unit="W/m K",
    source="U.S. Standard Atmosphere 1976 (from memory)",
    absolute_temperature="T [K]",
)
def air_conductivity(absolute_temperature: float) -> float:
    """Thermal conductivity ``λ`` of air, in W/(m K). Source: U.S. Standard Atmosphere 1976.

    Raises:
        OutOfRange: ``absolute_temperature`` is not above absolute zero.
    """
    if absolute_temperature <= 0.0:
        raise OutOfRange(f"absolute_temperature {absolute_temperature:g} K is not above zero")
    root = absolute_temperature**1.5
    below = absolute_temperature + 245.4 * 10.0 ** (-12.0 / absolute_temperature)
    return float(2.64638e-3 * root / below)


def air_prandtl(absolute_temperature: float) -> float:
    """Prandtl number of air, with its heat capacity taken as 1007 J/(kg K)."""
    viscosity = air.dynamic_viscosity(absolute_temperature)
    return viscosity * 1007.0 / air_conductivity(absolute_temperature)


@equation(
    "Nu",
    "Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))²",
    unit="1",
    source=_CHURCHILL + ", vertical plate",
    rayleigh="Ra [1]",
    prandtl="Pr [1]",
)
def plate_nusselt(rayleigh: float, prandtl: float) -> float:
    """Nusselt number ``Nu`` of a vertical plate in still air, by its height, to Ra 1e12.

    Source: Churchill and Chu (from memory).
    """
    return _churchill_chu(rayleigh, prandtl, "plate")


@equation(
    "Nu",
    "Nu = (0.60 + 0.387 Ra^(1/6)/(1 + (0.559/Pr)^(9/16))^(8/27))²",
    unit="1",
    source=_CHURCHILL + ", horizontal cylinder",
    rayleigh="Ra [1]",
    prandtl="Pr [1]",
)
def cylinder_nusselt(rayleigh: float, prandtl: float) -> float:
    """Nusselt number ``Nu`` of a lying cylinder in still air, by its diameter, to Ra 1e12.

    Source: Churchill and Chu (from memory).
    """
    return _churchill_chu(rayleigh, prandtl, "cylinder")


def _churchill_chu(rayleigh: float, prandtl: float, shape: str) -> float:
    scale, constant = _PRANDTL_SCALE[shape]
    below = (1.0 + (scale / prandtl) ** (9.0 / 16.0)) ** (8.0 / 27.0)
    return float((constant + 0.387 * max(rayleigh, 0.0) ** (1.0 / 6.0) / below) ** 2)


@equation(
    "h_n",
    "h_n = Nu λ/L, Nu of the vertical plate, Ra = g |T_s - T_a| L³ Pr/(T_f ν²)",
    unit="W/m2 K",
    source=_CHURCHILL,
    surface_temperature="T_s [K]",
    air_temperature="T_a [K]",
    height="L [m]",
    pressure="p [Pa]",
)
def still_air_coefficient(
    surface_temperature: float, air_temperature: float, height: float, pressure: float
) -> float:
    """Heat transfer coefficient ``h_n`` of a wall in still air, in W/(m² K).

    ``height`` of the wall in m, ambient ``pressure`` in Pa. Source: Churchill and Chu.
    """
    return _still(surface_temperature, air_temperature, height, pressure, plate_nusselt)


@equation(
    "h_n",
    "h_n = Nu λ/D, Nu of the lying cylinder, Ra = g |T_s - T_a| D³ Pr/(T_f ν²)",
    unit="W/m2 K",
    source=_CHURCHILL,
    surface_temperature="T_s [K]",
    air_temperature="T_a [K]",
    diameter="D [m]",
    pressure="p [Pa]",
)
def cylinder_coefficient(
    surface_temperature: float, air_temperature: float, diameter: float, pressure: float
) -> float:
    """Heat transfer coefficient ``h_n`` of a cylinder in still air, in W/(m² K).

    ``diameter`` in m, ambient ``pressure`` in Pa. Source: Churchill and Chu.
    """
    return _still(surface_temperature, air_temperature, diameter, pressure, cylinder_nusselt)


@equation(
    "h_f",
    "h_f = 0.664 Re^0.5 Pr^(1/3) λ/L, laminar",
    unit="W/m2 K",
    source="Laminar boundary layer of a flat plate (handbooks)",
    air_speed="v [m/s]",
    length="L [m]",
    film_temperature="T_f [K]",
    pressure="p [Pa]",
)
def laminar_coefficient(
    air_speed: float, length: float, film_temperature: float, pressure: float
) -> float:
    """Mean coefficient ``h_f`` along a plate in laminar flow, in W/(m² K): the lower bound.

    Source: flat plate handbook law.
    """
    reynolds = _reynolds(air_speed, length, film_temperature, pressure)
    nusselt = 0.664 * math.sqrt(reynolds) * air_prandtl(film_temperature) ** (1.0 / 3.0)
    return float(nusselt * air_conductivity(film_temperature) / length)


@equation(
    "h_f",
    "h_f = 0.037 Re^0.8 Pr^(1/3) λ/L, turbulent from the edge",
    unit="W/m2 K",
    source="Turbulent boundary layer of a flat plate (handbooks)",
    air_speed="v [m/s]",
    length="L [m]",
    film_temperature="T_f [K]",
    pressure="p [Pa]",
)
def turbulent_coefficient(
    air_speed: float, length: float, film_temperature: float, pressure: float
) -> float:
    """Mean coefficient ``h_f`` along a plate in flow that is turbulent from its edge, in W/(m² K).

    For ducted air, which the duct has tripped. Source: flat plate handbook law.
    """
    reynolds = _reynolds(air_speed, length, film_temperature, pressure)
    nusselt = 0.037 * reynolds**0.8 * air_prandtl(film_temperature) ** (1.0 / 3.0)
    return float(nusselt * air_conductivity(film_temperature) / length)


@equation(
    "h",
    "h = (h_n³ + h_f³)^(1/3)",
    unit="W/m2 K",
    source="Mixed convection, handbook form with exponent 3 (from memory)",
    still="h_n [W/m2 K]",
    forced="h_f [W/m2 K]",
)
def mixed_coefficient(still: float, forced: float) -> float:
    """Coefficient ``h`` of natural and forced convection together, in W/(m² K).

    Source: handbook form (from memory).
    """
    return float((still**3 + forced**3) ** (1.0 / 3.0))


@equation(
    "h_r",
    "h_r = ε σ (T_s² + T_a²)(T_s + T_a)",
    unit="W/m2 K",
    source="Stefan-Boltzmann law of a small body in large surroundings",
    emissivity="ε [1]",
    surface_temperature="T_s [K]",
    surroundings_temperature="T_a [K]",
)
def radiation_coefficient(
    emissivity: float, surface_temperature: float, surroundings_temperature: float
) -> float:
    """Coefficient ``h_r`` of radiation, in W/(m² K). Source: Stefan-Boltzmann law."""
    squares = surface_temperature**2 + surroundings_temperature**2
    total = surface_temperature + surroundings_temperature
    return emissivity * STEFAN_BOLTZMANN * squares * total


@equation(
    "ε",
    "ε = 0.1 bare, 0.25 oxidised, 0.92 painted",
    unit="1",
    source="Handbook emissivities of aluminium and paint (from memory)",
    finish="finish []",
)
def emissivity(finish: str) -> float:
    """Emissivity ``ε`` of a case by its finish. Source: handbooks (from memory).

    Raises:
        OutOfRange: ``finish`` is none of the three.
    """
    values = {"bare": 0.1, "oxidised": 0.25, "painted": 0.92}
    if finish not in values:
        raise OutOfRange(f"finish {finish!r} is none of {', '.join(values)}")
    return values[finish]


@equation(
    "η_f",
    "η_f = tanh(m L_c)/(m L_c), m = √(2 h/(λ t)), L_c = L + t/2",
    unit="1",
    source="Straight fin with adiabatic tip and corrected length (handbooks)",
    coefficient="h [W/m2 K]",
    conductivity="λ [W/m K]",
    thickness="t [m]",
    length="L [m]",
)
def fin_efficiency(
    coefficient: float, conductivity: float, thickness: float, length: float
) -> float:
    """Efficiency ``η_f`` of a straight fin. Source: handbook form.

    Raises:
        OutOfRange: ``thickness`` or ``length`` is not positive.
    """
    if thickness <= 0.0 or length <= 0.0:
        raise OutOfRange("thickness and length of a fin must be positive")
    corrected = length + thickness / 2.0
    argument = math.sqrt(2.0 * coefficient / (conductivity * thickness)) * corrected
    return math.tanh(argument) / argument if argument > 0.0 else 1.0


@equation(
    "λ",
    "λ = 155 aluminium, 75 magnesium, 45 steel, 50 cast iron",
    unit="W/m K",
    source="Handbook round figures of cast alloys (from memory)",
    material="material []",
)
def case_conductivity(material: str) -> float:
    """Thermal conductivity ``λ`` of a case material, in W/(m K). Source: handbooks (from memory).

    Raises:
        OutOfRange: ``material`` is none of the four.
    """
    values = {"aluminium": 155.0, "magnesium": 75.0, "steel": 45.0, "cast iron": 50.0}
    if material not in values:
        raise OutOfRange(f"material {material!r} is none of {', '.join(values)}")
    return values[material]


def _reynolds(speed: float, length: float, film: float, pressure: float) -> float:
    return speed * length * air.density(pressure, film) / air.dynamic_viscosity(film)


def _still(
    surface: float,
    ambient: float,
    size: float,
    pressure: float,
    nusselt: Callable[[float, float], float],
) -> float:
    film = (surface + ambient) / 2.0
    viscosity = air.dynamic_viscosity(film) / air.density(pressure, film)
    prandtl = air_prandtl(film)
    buoyancy = air.STANDARD_GRAVITY * abs(surface - ambient) * size**3
    rayleigh = buoyancy * prandtl / (film * viscosity**2)
    return nusselt(rayleigh, prandtl) * air_conductivity(film) / size


@equation(
    "Φ_tank",
    "Φ_tank = (h_n + h_r) A (T_oil - T_a), h_n of the lying cylinder, ε = 0.1",
    unit="W",
    source="Churchill and Chu 1975 (from memory); a bare tank in still air, as warm as its oil",
    oil_temperature="T_oil [K]",
    air_temperature="T_a [K]",
    pressure="p [Pa]",
    diameter="D [m]",
    area="A [m2]",
)
def tank_flow(
    oil_temperature: float, air_temperature: float, pressure: float, diameter: float, area: float
) -> float:
    """Heat ``Φ_tank`` that an oil tank gives to still air, in W; negative in hotter air.

    SI arguments. Source: Churchill and Chu (from memory).
    """
    still = cylinder_coefficient(oil_temperature, air_temperature, diameter, pressure)
    radiated = radiation_coefficient(emissivity("bare"), oil_temperature, air_temperature)
    return (still + radiated) * area * (oil_temperature - air_temperature)
