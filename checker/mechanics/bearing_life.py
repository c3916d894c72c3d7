"""Rating life beyond the basic one: reliability, oil film, dirt; least load; many bearings."""

import math

from checker.mechanics.equation import OutOfRange, equation

_A1 = "ISO 281:2007 Table 12 (from memory); the edition of 1990 had 0.62, 0.53, 0.44, 0.33, 0.21"
_AISO = "ISO 281:2007, 9.3.3 (from memory)"
_NU1 = "ISO 281:2007, 9.3.2.3 (from memory)"
_RELIABILITY = {90: 1.0, 95: 0.64, 96: 0.55, 97: 0.47, 98: 0.37, 99: 0.25}
# Weibull slope of bearing lives. Source: ISO 281 background, 1.5 (from memory).
WEIBULL_SLOPE = 1.5
_SLOW = 1000.0
_MOST = 50.0


@equation(
    "a_1",
    "a_1 = table(reliability)",
    unit="1",
    source=_A1,
    percent="reliability in % [1]",
)
def reliability_factor(percent: int) -> float:
    """Life factor a_1 for a reliability of 90, 95, 96, 97, 98 or 99 per cent.

    Raises:
        OutOfRange: another reliability.
    """
    if percent not in _RELIABILITY:
        raise OutOfRange(f"percent: no a_1 is listed for {percent} %")
    return _RELIABILITY[percent]


@equation(
    "R",
    "R = exp(−ln(1/0.9) (t / L_10h)^1.5)",
    unit="1",
    source="two-parameter Weibull distribution, slope 1.5 (from memory)",
    time="t [s]",
    life="L_10h [s]",
)
def reliability_at(time: float, life: float) -> float:
    """Share of bearings of basic life L_10h that are still whole after a time t."""
    return math.exp(-math.log(1.0 / 0.9) * (time / life) ** WEIBULL_SLOPE)


@equation(
    "R",
    "R = R₁ R₂",
    unit="1",
    source="series system; U. C. Jindal, Machine Design, Ch 18, Example 18-8",
    reliability="R₁ [1]",
    other="R₂ [1]",
)
def system_reliability(reliability: float, other: float) -> float:
    """Reliability of two things that both must hold."""
    return reliability * other


@equation(
    "ν_1",
    "ν_1 = 45000 n^−0.83 d_m^−0.5 below 1000 rpm, else 4500 n^−0.5 d_m^−0.5; mm²/s, rpm, mm",
    unit="m2/s",
    source=_NU1,
    angular_speed="ω [rad/s]",
    mean_diameter="d_m [m]",
)
def reference_viscosity(angular_speed: float, mean_diameter: float) -> float:
    """Viscosity ν_1 at which the film just parts the surfaces.

    Raises:
        OutOfRange: the bearing does not turn.
    """
    if angular_speed <= 0.0:
        raise OutOfRange("angular_speed must be above zero: no film without motion")
    speed, diameter = angular_speed * 60.0 / math.tau, mean_diameter * 1e3
    if speed < _SLOW:
        return float(45000.0 * speed**-0.83 * diameter**-0.5 * 1e-6)
    return float(4500.0 * speed**-0.5 * diameter**-0.5 * 1e-6)


@equation(
    "d_m",
    "d_m = (d + D) / 2",
    unit="m",
    source="definition",
    bore="d [m]",
    outside="D [m]",
)
def mean_diameter(bore: float, outside: float) -> float:
    """Mean diameter of a bearing."""
    return (bore + outside) / 2.0


@equation(
    "κ",
    "κ = ν / ν_1",
    unit="1",
    source=_NU1,
    viscosity="ν [m2/s]",
    reference="ν_1 [m2/s]",
)
def viscosity_ratio(viscosity: float, reference: float) -> float:
    """Viscosity in service over the one that just parts the surfaces."""
    return viscosity / reference


@equation(
    "C_u",
    "C_u = C_0 / 22 of balls, C_0 / 8.2 of rollers, for d_m up to 100 mm",
    unit="N",
    source="ISO 281:2007 Annex B, simplified (from memory)",
    static_rating="C_0 [N]",
    balls="balls []",
)
def fatigue_load_limit(static_rating: float, balls: bool) -> float:
    """Load C_u below which clean, well oiled raceways do not tire."""
    return static_rating / (22.0 if balls else 8.2)


def _film_term(ratio: float, rows: tuple[tuple[float, float, float], ...]) -> float:
    """The term of ISO 281 in κ, by the range that κ lies in."""
    if ratio < 0.1:
        raise OutOfRange(f"viscosity_ratio {ratio:.3g} is below 0.1: no film to count on")
    bounded = min(ratio, 4.0)
    for upper, (start, factor, power) in zip((0.4, 1.0, 4.0), rows, strict=True):
        if bounded <= upper:
            return start - factor / float(bounded**power)
    raise AssertionError("the rows cover the range")


_BALL_ROWS = ((2.5671, 2.2649, 0.054381), (2.5671, 1.9987, 0.19087), (2.5671, 1.9987, 0.071739))
_ROLLER_ROWS = ((1.5859, 1.3993, 0.054381), (1.5859, 1.2348, 0.19087), (1.5859, 1.2348, 0.071739))


def _life_factor(inner: float, power: float) -> float:
    if inner <= 0.0:
        return _MOST
    return min(_MOST, 0.1 * float(inner**power))


@equation(
    "a_ISO",
    "a_ISO = 0.1 [1 − (2.5671 − x_1/κ^x_2)^0.83 (e_C C_u/P)^(1/3)]^−9.3, at most 50",
    unit="1",
    source=_AISO,
    film="κ [1]",
    contamination="e_C [1]",
    limit="C_u [N]",
    load="P [N]",
)
def ball_life_factor(film: float, contamination: float, limit: float, load: float) -> float:
    """Life factor a_ISO of radial ball bearings.

    Raises:
        OutOfRange: viscosity ratio below 0.1, or no load.
    """
    if load <= 0.0:
        raise OutOfRange("load must be above zero: an unloaded bearing has no fatigue life")
    term = _film_term(film, _BALL_ROWS) ** 0.83
    return _life_factor(1.0 - term * (contamination * limit / load) ** (1.0 / 3.0), -9.3)


@equation(
    "a_ISO",
    "a_ISO = 0.1 [1 − (1.5859 − x_1/κ^x_2) (e_C C_u/P)^0.4]^−9.185, at most 50",
    unit="1",
    source=_AISO,
    film="κ [1]",
    contamination="e_C [1]",
    limit="C_u [N]",
    load="P [N]",
)
def roller_life_factor(film: float, contamination: float, limit: float, load: float) -> float:
    """Life factor a_ISO of radial roller bearings.

    Raises:
        OutOfRange: viscosity ratio below 0.1, or no load.
    """
    if load <= 0.0:
        raise OutOfRange("load must be above zero: an unloaded bearing has no fatigue life")
    term = _film_term(film, _ROLLER_ROWS)
    return _life_factor(1.0 - term * (contamination * limit / load) ** 0.4, -9.185)


@equation(
    "L_nmh",
    "L_nmh = a_1 a_ISO L_10h",
    unit="s",
    source="ISO 281:2007, modified rating life (from memory)",
    reliability="a_1 [1]",
    film="a_ISO [1]",
    life="L_10h [s]",
)
def modified_life(reliability: float, film: float, life: float) -> float:
    """Life at another reliability, with the oil film and its dirt."""
    return reliability * film * life


@equation(
    "P_min",
    "P_min = 0.01 C of balls, 0.02 C of rollers",
    unit="N",
    source="makers' catalogues, guidance against skidding (from memory)",
    rating="C [N]",
    balls="balls []",
)
def least_load(rating: float, balls: bool) -> float:
    """Load below which rolling elements may skid at speed."""
    return (0.01 if balls else 0.02) * rating


@equation(
    "L_10h",
    "L_10h = 1 / Σ (q_k / L_10h,k)",
    unit="s",
    source="linear summation of damage over the shares of the running time",
    shares="q_k [1]",
    lives="L_10h,k [s]",
)
def duty_life(shares: tuple[float, ...], lives: tuple[float, ...]) -> float:
    """Life over a duty cycle from the life at each point; an endless life takes no share.

    Raises:
        OutOfRange: no point with load, so nothing that tires.
    """
    damage = sum(share / life for share, life in zip(shares, lives, strict=True))
    if damage <= 0.0:
        raise OutOfRange("lives: no point of operation tires the bearing")
    return sum(shares) / damage


@equation(
    "N_k",
    "N_k = q ω",
    unit="rad/s",
    source="definition: turning in a point for each unit of the whole time",
    share="q [1]",
    angular_speed="ω [rad/s]",
)
def turning_share(share: float, angular_speed: float) -> float:
    """What a point adds to the mean speed of a bearing, and its weight in the mean load."""
    return share * angular_speed


@equation(
    "P_a",
    "P_a = P (mean of |1 + (T_a/T) sin φ|^p over a cycle)^(1/p)",
    unit="N",
    source="ISO 281:2007 with linear summation of damage over a cycle of the torque, derived; all "
    "of the load is taken to swing with the torque",
    load="P [N]",
    mean="T [N m]",
    swing="T_a [N m]",
    exponent="p [1]",
)
def pulsating_load(load: float, mean: float, swing: float, exponent: float) -> float:
    """Steady load that wears a bearing as one that swings with the torque does.

    Args:
        load: P at the mean torque [N].
        mean: T, either way [N m]; without any the load is taken as it is.
        swing: T_a, amplitude of the torque [N m].
        exponent: p of the life.
    """
    if mean == 0.0:
        return load
    steps = 360
    share = swing / abs(mean)
    worn = sum(
        abs(1.0 + share * math.sin(math.tau * (step + 0.5) / steps)) ** exponent
        for step in range(steps)
    )
    return float(load * (worn / steps) ** (1.0 / exponent))
