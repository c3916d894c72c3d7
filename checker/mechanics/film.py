"""Oil film between flanks at the pitch point, and what it means for their surfaces.

Line contact after Dowson and others, isothermal and fully flooded: real films are thinner where
the inlet heats up (from about 20 m/s) or starves.
"""

from math import cos, hypot, sin

from checker.mechanics.equation import OutOfRange, equation

_AGMA_925 = "AGMA 925-A03 (from memory)"
_PRESSURE_VISCOSITY = {"mineral": (0.010471, 0.1348), "PAO": (0.010326, 0.0507)}


@equation(
    "α_pv",
    "α_pv = k η^s, mineral k 0.010471, s 0.1348, PAO 0.010326, 0.0507; mm²/N, η in mPa s",
    unit="1/Pa",
    source=_AGMA_925,
    viscosity="η [Pa s]",
    base="base []",
)
def pressure_viscosity(viscosity: float, base: str) -> float:
    """Pressure-viscosity coefficient of an oil at the temperature of its viscosity [1/Pa].

    Raises:
        OutOfRange: nothing is known of that base stock.
    """
    if base not in _PRESSURE_VISCOSITY:
        raise OutOfRange(f"base: the pressure viscosity of {base} oils differs too much for a rule")
    k, s = _PRESSURE_VISCOSITY[base]
    return float(k * (viscosity * 1e3) ** s * 1e-6)


@equation(
    "R",
    "R = ρ_red / cos β_b",
    unit="m",
    source="normal section of the contact at the pitch point",
    curvature="ρ_red [m]",
    base_helix_angle="β_b [rad]",
)
def normal_curvature(curvature: float, base_helix_angle: float) -> float:
    """Relative radius of curvature across the contact line [m]."""
    return curvature / cos(base_helix_angle)


@equation(
    "u",
    "u = v_t sin α_wt",
    unit="m/s",
    source="both flanks roll alike at the pitch point; mean of the two",
    pitch_line_speed="v_t [m/s]",
    working_pressure_angle="α_wt [rad]",
)
def entraining_speed(pitch_line_speed: float, working_pressure_angle: float) -> float:
    """Mean speed with which the flanks draw oil in at the pitch point [m/s]."""
    return pitch_line_speed * sin(working_pressure_angle)


@equation(
    "E_r",
    "E_r = 2 / ((1 − ν_1²)/E_1 + (1 − ν_2²)/E_2)",
    unit="Pa",
    source="Dowson and Higginson, 1966; twice the modulus of Hertz",
    modulus_1="E_1 [Pa]",
    poisson_1="ν_1 [1]",
    modulus_2="E_2 [Pa]",
    poisson_2="ν_2 [1]",
)
def effective_modulus(
    modulus_1: float, poisson_1: float, modulus_2: float, poisson_2: float
) -> float:
    """Modulus that the film formulas take [Pa]."""
    return 2.0 / ((1.0 - poisson_1**2) / modulus_1 + (1.0 - poisson_2**2) / modulus_2)


_CONTACT = {
    "viscosity": "η_0 [Pa s]",
    "speed": "u [m/s]",
    "pressure_viscosity": "α_pv [1/Pa]",
    "modulus": "E_r [Pa]",
    "load": "w [N/m]",
    "radius": "R [m]",
}


def _groups(
    viscosity: float,
    speed: float,
    pressure_viscosity: float,
    modulus: float,
    load: float,
    radius: float,
) -> tuple[float, float, float]:
    """Speed, material and load parameter U, G, W."""
    if speed <= 0.0 or load <= 0.0:
        raise OutOfRange("speed or load: the contact neither rolls nor carries")
    return (
        viscosity * speed / (modulus * radius),
        pressure_viscosity * modulus,
        load / (modulus * radius),
    )


@equation(
    "h_min",
    "h_min = 2.65 R U^0.7 G^0.54 W^−0.13, U = η_0 u/(E_r R), G = α_pv E_r, W = w/(E_r R)",
    unit="m",
    source="Dowson and Higginson, Elasto-Hydrodynamic Lubrication, 1966",
    **_CONTACT,
)
def minimum_film(
    viscosity: float,
    speed: float,
    pressure_viscosity: float,
    modulus: float,
    load: float,
    radius: float,
) -> float:
    """Least film thickness of a line contact [m]; the modulus is 2/Σ((1 − ν²)/E).

    Raises:
        OutOfRange: the contact neither rolls nor carries.
    """
    u, g, w = _groups(viscosity, speed, pressure_viscosity, modulus, load, radius)
    return float(2.65 * radius * u**0.7 * g**0.54 * w**-0.13)


@equation(
    "h_c",
    "h_c = 3.06 R U^0.69 G^0.56 W^−0.10, U, G, W as for h_min",
    unit="m",
    source="Dowson and Toyoda, 1979, as quoted in tribology texts",
    **_CONTACT,
)
def central_film(
    viscosity: float,
    speed: float,
    pressure_viscosity: float,
    modulus: float,
    load: float,
    radius: float,
) -> float:
    """Film thickness in the middle of a line contact [m]; the modulus is 2/Σ((1 − ν²)/E).

    Raises:
        OutOfRange: the contact neither rolls nor carries.
    """
    u, g, w = _groups(viscosity, speed, pressure_viscosity, modulus, load, radius)
    return float(3.06 * radius * u**0.69 * g**0.56 * w**-0.10)


@equation(
    "λ",
    "λ = h / √(Rq_1² + Rq_2²)",
    unit="1",
    source=_AGMA_925,
    film="h [m]",
    roughness_1="Rq_1 [m]",
    roughness_2="Rq_2 [m]",
)
def specific_film(film: float, roughness_1: float, roughness_2: float) -> float:
    """Film thickness over the roughness of both flanks."""
    return film / hypot(roughness_1, roughness_2)


@equation(
    "Rq",
    "Rq = 1.25 Ra",
    unit="m",
    source="ground surfaces (from memory)",
    roughness="Ra [m]",
)
def rms_roughness(roughness: float) -> float:
    """Root mean square roughness of a ground surface of roughness Ra [m]."""
    return 1.25 * roughness


@equation(
    "regime",
    "λ below 0.4 boundary (regime I), to 1 mixed (II), above full (III)",
    unit="",
    source="Dudley's regimes in AGMA 925-A03 (from memory)",
    specific_film="λ [1]",
)
def lubrication_regime(specific_film: float) -> str:
    """Lubrication regime; the risk of micropitting is high in the first and some in the second."""
    if specific_film < 0.4:
        return "boundary"
    return "mixed" if specific_film < 1.0 else "full"
