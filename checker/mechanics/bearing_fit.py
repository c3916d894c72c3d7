"""Fits of bearing rings, cold and hot, the clearance they leave, and growth along the shaft.

An interference is a difference of diameters, positive where the parts press on each other, negative
where there is play.
"""

from checker.mechanics.equation import OutOfRange, equation

_PRACTICE = "rolling bearing practice (from memory)"
STEEL_EXPANSION = 12.0e-6  # 1/K, shafts of steel (from memory)


@equation(
    "U_hot",
    "U = U₀ − ΔD",
    unit="m",
    source="thermal expansion of a ring in its seat",
    interference="U₀ [m]",
    loosening="ΔD [m]",
)
def interference_at(interference: float, loosening: float) -> float:
    """Interference of a ring in its seat after the seat has grown past it by ΔD.

    Args:
        interference: U₀, as assembled [m].
        loosening: ΔD, what warmth takes from it; negative in the cold, where the seat grips [m].
    """
    return interference - loosening


@equation(
    "G",
    "G = G₀ − 0.7 U_o − 0.8 U_i, an interference counted, a play not",
    unit="m",
    source=f"{_PRACTICE}: a steel ring passes on 0.7 to 0.8 of its interference",
    clearance="G₀ [m]",
    outer="U_o [m]",
    inner="U_i [m]",
)
def mounted_clearance(clearance: float, outer: float, inner: float) -> float:
    """Radial internal clearance of a bearing in its seats; below zero it is preloaded.

    Args:
        clearance: G₀, before mounting [m].
        outer: U_o, interference of the outer ring in its bore [m].
        inner: U_i, interference of the inner ring on its shaft [m].
    """
    return clearance - 0.7 * max(0.0, outer) - 0.8 * max(0.0, inner)


@equation(
    "G_run",
    "G_run = G − α d_m ΔT_i",
    unit="m",
    source=f"{_PRACTICE}: the inner ring runs warmer than the outer",
    mounted="G [m]",
    mean_diameter="d_m [m]",
    difference="ΔT_i [ΔK]",
)
def running_clearance(mounted: float, mean_diameter: float, difference: float) -> float:
    """Clearance when the inner ring is warmer than the outer one."""
    return mounted - STEEL_EXPANSION * mean_diameter * difference


@equation(
    "Δl",
    "Δl = l (α_h − α_s) ΔT",
    unit="m",
    source="thermal expansion",
    span="l [m]",
    housing_expansion="α_h [1/K]",
    warming="ΔT [ΔK]",
)
def span_growth(span: float, housing_expansion: float, warming: float) -> float:
    """Growth of the case between two bearings beyond that of the steel shaft."""
    return span * (housing_expansion - STEEL_EXPANSION) * warming


@equation(
    "creep",
    "creep = play, no retention and a load that turns in the ring",
    unit="",
    source=f"{_PRACTICE}: a loose ring under a load that turns in it walks",
    interference="U [m]",
    turning_load="turning load []",
    retained="retained []",
)
def ring_creeps(interference: float, turning_load: bool, retained: bool) -> bool:
    """Whether a ring can creep in its seat.

    Args:
        interference: U, of the ring in its seat when hot [m].
        turning_load: whether the load turns relative to this ring.
        retained: whether it is pinned, keyed or clamped.
    """
    return interference < 0.0 and turning_load and not retained


@equation(
    "p",
    "p = U / (d [1/E (C_h + ν_h) + 1/E_s (C_s − ν_s)])",
    unit="Pa",
    source="Lamé; Shigley's Mechanical Engineering Design, Eq. 3-56",
    interference="U [m]",
    diameter="d [m]",
    outside="D_h [m]",
    bore="d_b [m]",
    hub_modulus="E [Pa]",
    hub_poisson="ν_h [1]",
    shaft_modulus="E_s [Pa]",
    shaft_poisson="ν_s [1]",
)
def fit_pressure(
    interference: float,
    diameter: float,
    outside: float,
    bore: float,
    hub_modulus: float,
    hub_poisson: float,
    shaft_modulus: float,
    shaft_poisson: float,
) -> float:
    """Pressure of a press fit of a hub of outside D_h on a shaft of bore d_b.

    Raises:
        OutOfRange: no interference, or no wall in hub or shaft.
    """
    if interference <= 0.0:
        raise OutOfRange("interference must be above zero: a loose fit presses on nothing")
    if not bore < diameter < outside:
        raise OutOfRange("diameter must lie between bore and outside: a part has no wall")
    hub = (outside**2 + diameter**2) / (outside**2 - diameter**2) + hub_poisson
    shaft = (diameter**2 + bore**2) / (diameter**2 - bore**2) - shaft_poisson
    return interference / (diameter * (hub / hub_modulus + shaft / shaft_modulus))


@equation(
    "|Δl|/s",
    "|Δl| / s",
    unit="1",
    source="definition",
    growth="Δl [m]",
    axial_float="s [m]",
)
def growth_use(growth: float, axial_float: float) -> float:
    """Growth over what a floating bearing may move.

    Raises:
        OutOfRange: it cannot move.
    """
    if axial_float <= 0.0:
        raise OutOfRange("axial_float must be above zero: the bearing does not float")
    return abs(growth) / axial_float


@equation(
    "s",
    "s = s₀ − arrangement · Δl",
    unit="m",
    source="geometry: a case that grows parts the outer rings",
    play="s₀ [m]",
    growth="Δl [m]",
    arrangement="arrangement [1]",
)
def play_after_growth(play: float, growth: float, arrangement: int) -> float:
    """End play of two bearings set against each other after the case has grown by Δl.

    Args:
        play: s₀, as built [m].
        growth: Δl, of the case beyond the shaft between them [m].
        arrangement: +1 back-to-back, −1 face-to-face.
    """
    return play - arrangement * growth


@equation(
    "x_r",
    "x_r = x − b/2",
    unit="m",
    source="definition",
    station="x [m]",
    width="b [m]",
)
def rear_edge(station: float, width: float) -> float:
    """Edge of a bearing towards the engine."""
    return station - width / 2.0


@equation(
    "x_f",
    "x_f = x + b/2",
    unit="m",
    source="definition",
    station="x [m]",
    width="b [m]",
)
def front_edge(station: float, width: float) -> float:
    """Edge of a bearing towards the propeller."""
    return station + width / 2.0
