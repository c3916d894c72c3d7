"""Heat through the wall of the case: the wall is as warm as lets in what it gives off."""

from checker.mechanics import convection, heat
from checker.mechanics.equation import OutOfRange, equation
from checker.solve.root import bracketed_root

OIL_FILM = 200.0  # W/(m² K), oil that splashes on the wall (ISO/TR 14179-2, from memory)


@equation(
    "Φ_case",
    "Φ_case = h_oil A (T_oil - T_w) = (h(T_w) (A + η_f A_f) + h_r(T_w) A) (T_w - T_a), h from "
    "still and moving air (h_n³ + h_f³)^(1/3), h_oil = 200 W/m² K; T_w found by a bracketed root",
    unit="W",
    source="Series of oil film and outside (handbooks); h_oil ISO/TR 14179-2 (from memory)",
    oil_temperature="T_oil [K]",
    air_temperature="T_a [K]",
    pressure="p [Pa]",
    air_speed="v [m/s]",
    ducted="ducted []",
    height="L [m]",
    plain="A [m2]",
    fins="A_f [m2]",
    fin_length="L_f [m]",
    fin_thickness="t_f [m]",
    conductivity="λ [W/m K]",
    emissivity="ε [1]",
)
def case_flow(
    oil_temperature: float,
    air_temperature: float,
    pressure: float,
    air_speed: float,
    ducted: bool,
    height: float,
    plain: float,
    fins: float,
    fin_length: float,
    fin_thickness: float,
    conductivity: float,
    emissivity: float,
) -> float:
    """Heat ``Φ_case`` that leaves the oil through the case wall, in W; negative in hotter air.

    SI arguments. ``ducted`` air is turbulent from the edge, any other taken as laminar, the lower
    bound. The metal of the wall itself resists next to nothing. Fins see each other and radiate no
    more than the envelope ``A`` they stand on. Source: handbook series.

    Raises:
        OutOfRange: the case has no surface.
    """
    if plain <= 0.0:
        raise OutOfRange("plain: the case has no surface")

    def outside(wall: float) -> float:
        film = (wall + air_temperature) / 2.0
        still = convection.still_air_coefficient(wall, air_temperature, height, pressure)
        along = convection.turbulent_coefficient if ducted else convection.laminar_coefficient
        moving = along(air_speed, height, film, pressure) if air_speed > 0.0 else 0.0
        carried = convection.mixed_coefficient(still, moving)
        radiated = convection.radiation_coefficient(emissivity, wall, air_temperature)
        area = plain
        if fins > 0.0:
            share = convection.fin_efficiency(carried, conductivity, fin_thickness, fin_length)
            area = heat.effective_area(plain, fins, share)
        return heat.surface_flow(carried, area, wall, air_temperature) + heat.surface_flow(
            radiated, plain, wall, air_temperature
        )

    def inside(wall: float) -> float:
        return heat.surface_flow(OIL_FILM, plain, oil_temperature, wall)

    if oil_temperature == air_temperature:
        return 0.0
    root = bracketed_root(
        lambda wall: inside(wall) - outside(wall),
        oil_temperature,
        air_temperature,
        tolerance=1.0e-12 * OIL_FILM * plain * abs(oil_temperature - air_temperature),
    )
    return inside(root.value)
