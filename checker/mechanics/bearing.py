"""Load and life of rolling bearings: equivalent loads, basic life, static and axial limits.

Basic rating life only: no allowance for oil film, dirt or a reliability other than 90 %. Two tables
exist for deep groove bearings. They agree only near f_0 = 12.3; each has its own function here.
An axial load that a bearing takes either way counts by its amount.
"""

import math
from bisect import bisect
from collections.abc import Sequence

from checker.mechanics.equation import OutOfRange, equation

BALL_EXPONENT = 3.0
ROLLER_EXPONENT = 10 / 3

_LIFE = "ISO 281:2007, basic rating life (from memory)"
_GROOVE = "ISO 281:2007 Table 3, radial-contact groove ball bearings, normal clearance"
_SHORT = "Shigley's Mechanical Engineering Design, Table 11-1 (partly from memory)"
_STATIC = "ISO 76 as given on a bearing maker's catalogue page"

# Rows: relative axial load, e, Y; X is 0.56 throughout.
_BY_F0 = (  # f_0 F_a / C_0
    (0.172, 0.19, 2.30),
    (0.345, 0.22, 1.99),
    (0.689, 0.26, 1.71),
    (1.03, 0.28, 1.55),
    (1.38, 0.30, 1.45),
    (2.07, 0.34, 1.31),
    (3.45, 0.38, 1.15),
    (5.17, 0.42, 1.04),
    (6.89, 0.44, 1.00),
)
_BY_SHARE = (  # F_a / C_0
    (0.014, 0.19, 2.30),
    (0.021, 0.21, 2.15),
    (0.028, 0.22, 1.99),
    (0.042, 0.24, 1.85),
    (0.056, 0.26, 1.71),
    (0.070, 0.27, 1.63),
    (0.084, 0.28, 1.55),
    (0.110, 0.30, 1.45),
    (0.170, 0.34, 1.31),
    (0.280, 0.38, 1.15),
    (0.420, 0.42, 1.04),
    (0.560, 0.44, 1.00),
)
_GROOVE_X = 0.56
# Contact angle in degrees, induced axial force over radial force.
_INDUCED = ((20.0, 0.50), (25.0, 0.57), (30.0, 0.66), (40.0, 0.88))
_LIGHT_DIAMETER_SERIES = frozenset({8, 9, 0, 1})


@equation(
    "L_10",
    "L_10 = 10⁶ (C / P)^p",
    unit="1",
    source=_LIFE,
    rating="C [N]",
    load="P [N]",
    exponent="p [1]",
)
def basic_life(rating: float, load: float, exponent: float) -> float:
    """Revolutions that nine of ten bearings reach; p is 3 for balls, 10/3 for rollers.

    C [N] is the basic dynamic rating, P [N] the equivalent load, both radial or both axial.

    Source: ISO 281:2007. Valid up to P = 0.5 C.

    Raises:
        OutOfRange: no load, so no fatigue life.
    """
    if load <= 0:
        raise OutOfRange("the bearing carries no load: an unloaded bearing has no fatigue life")
    return float(1e6 * (rating / load) ** exponent)


@equation(
    "t",
    "t = 2 π L / ω",
    unit="s",
    source="kinematics",
    revolutions="L [1]",
    angular_speed="ω [rad/s]",
)
def duration(revolutions: float, angular_speed: float) -> float:
    """Time t [s] that so many revolutions take at angular speed ω [rad/s] between the rings.

    Source: kinematics.

    Raises:
        OutOfRange: the bearing does not turn.
    """
    if angular_speed <= 0:
        raise OutOfRange("the bearing does not turn")
    return revolutions * math.tau / angular_speed


@equation(
    "P_m",
    "P_m = (Σ N_k P_k^p / Σ N_k)^(1/p)",
    unit="N",
    source=_LIFE + ", with linear summation of damage",
    loads="P_k [N]",
    revolutions="N_k [1]",
    exponent="p [1]",
)
def mean_equivalent_load(
    loads: Sequence[float], revolutions: Sequence[float], exponent: float
) -> float:
    """Steady load [N] that wears a bearing as loads P_k [N] over revolutions N_k do together.

    The weights are revolutions, not hours; shares of the revolutions do as well.

    Source: linear summation of damage with the basic life of ISO 281:2007.

    Raises:
        OutOfRange: no revolutions.
    """
    turned = sum(revolutions)
    if turned <= 0:
        raise OutOfRange("the bearing does not turn under any of its loads")
    damage = sum(count * load**exponent for load, count in zip(loads, revolutions, strict=True))
    return float((damage / turned) ** (1 / exponent))


@equation(
    "P",
    "P = F_r if |F_a|/F_r ≤ e, else 0.56 F_r + Y |F_a|; e and Y by f_0 |F_a| / C_0",
    unit="N",
    source=_GROOVE,
    radial="F_r [N]",
    axial="F_a [N]",
    static_rating="C_0 [N]",
    f0="f_0 [1]",
)
def deep_groove_load(radial: float, axial: float, static_rating: float, f0: float) -> float:
    """Equivalent dynamic load P [N] of a deep groove ball bearing whose f_0 is known.

    Linear between the rows; below the first row (0.172) its e and Y hold.

    Source: ISO 281:2007 Table 3, normal clearance. Valid up to f_0 F_a / C_0 = 6.89.

    Raises:
        OutOfRange: axial load beyond the last row.
    """
    thrust = abs(axial)
    limit, factor = _groove_factors(_BY_F0, f0 * thrust / static_rating, "f_0 F_a / C_0")
    return _combined(radial, thrust, limit, _GROOVE_X, factor)


@equation(
    "P",
    "P = F_r if |F_a|/F_r ≤ e, else 0.56 F_r + Y |F_a|; e and Y by |F_a| / C_0",
    unit="N",
    source=_SHORT,
    radial="F_r [N]",
    axial="F_a [N]",
    static_rating="C_0 [N]",
)
def deep_groove_load_without_f0(radial: float, axial: float, static_rating: float) -> float:
    """Equivalent dynamic load P [N] of a deep groove ball bearing whose f_0 is not known.

    Linear between the rows; below the first row (0.014) its e and Y hold. The table is that of
    f_0 = 12.3: for a smaller f_0 the load comes out a little low, for a larger one high.

    Source: Shigley's Mechanical Engineering Design, Table 11-1. Valid up to F_a / C_0 = 0.56.

    Raises:
        OutOfRange: axial load beyond the last row.
    """
    thrust = abs(axial)
    limit, factor = _groove_factors(_BY_SHARE, thrust / static_rating, "F_a / C_0")
    return _combined(radial, thrust, limit, _GROOVE_X, factor)


@equation(
    "F_ind",
    "F_ind = R F_r, R by contact angle",
    unit="N",
    source="bearing engineering article on two single-row angular contact bearings, trade source",
    radial="F_r [N]",
    contact_angle="α [rad]",
)
def induced_axial_force(radial: float, contact_angle: float) -> float:
    """Axial force [N] by which a radial load F_r [N] drives an angular contact bearing apart.

    Linear between the source's angles of 20, 25, 30 and 40 deg.

    Source: trade source. Valid from 20 to 40 deg, zero clearance.

    Raises:
        OutOfRange: contact angle outside 20 to 40 deg.
    """
    # Degrees come back from radians with a last digit more or less.
    angle = round(math.degrees(contact_angle), 9)
    if not _INDUCED[0][0] <= angle <= _INDUCED[-1][0]:
        raise OutOfRange(f"a contact angle of {angle:.3g} deg is outside 20 to 40 deg")
    (factor,) = _interpolated(_INDUCED, angle)
    return factor * radial


@equation(
    "P_0",
    "P_0 = max(0.6 F_r + 0.5 |F_a|, F_r)",
    unit="N",
    source=_STATIC,
    radial="F_r [N]",
    axial="F_a [N]",
)
def deep_groove_static_load(radial: float, axial: float) -> float:
    """Equivalent static load P_0 [N] of a deep groove ball bearing.

    Source: ISO 76 as given on a bearing maker's catalogue page.
    """
    return max(0.6 * radial + 0.5 * abs(axial), radial)


@equation(
    "s_0",
    "s_0 = C_0 / P_0",
    unit="1",
    source=_STATIC,
    static_rating="C_0 [N]",
    static_load="P_0 [N]",
)
def static_margin(static_rating: float, static_load: float) -> float:
    """Static load safety factor s_0: rating C_0 over the equivalent static load P_0 [N].

    Source: ISO 76 as given on a bearing maker's catalogue page.

    Raises:
        OutOfRange: no load.
    """
    if static_load <= 0:
        raise OutOfRange("the static load is not above zero: there is nothing to compare with")
    return static_rating / static_load


@equation(
    "F_a,max",
    "F_a,max = 0.5 C_0, 0.25 C_0 for diameter series 8, 9, 0, 1",
    unit="N",
    source=_STATIC,
    static_rating="C_0 [N]",
    diameter_series="diameter series [1]",
)
def deep_groove_axial_limit(static_rating: float, diameter_series: int) -> float:
    """Axial load [N] that a deep groove ball bearing may carry without radial load.

    The diameter series of ISO 15 is the third digit from the right of the common designation (0
    of 6008, 2 of 6208). Bores to about 12 mm count as light too (from memory).

    Source: ISO 76 as given on a bearing maker's catalogue page.

    Raises:
        OutOfRange: no diameter series of deep groove bearings.
    """
    if diameter_series in _LIGHT_DIAMETER_SERIES:
        return 0.25 * static_rating
    if diameter_series in {2, 3, 4}:
        return 0.5 * static_rating
    raise OutOfRange(f"diameter series {diameter_series} is not one of 8, 9, 0, 1, 2, 3, 4")


@equation(
    "F_a/F_a,max",
    "|F_a| / F_a,max",
    unit="1",
    source="definition",
    axial="F_a [N]",
    axial_rating="F_a,max [N]",
)
def axial_share(axial: float, axial_rating: float) -> float:
    """Part of its axial rating [N] that a bearing carries, whichever way the force F_a [N] acts.

    Whether the bearing takes force that way at all is for ``bearing_kinds``.

    Source: definition.
    """
    return abs(axial) / axial_rating


@equation(
    "n d_m",
    "n d_m = (ω / 2 π) (d + D) / 2",
    unit="m/s",
    source="definition",
    bore="d [m]",
    outside="D [m]",
    angular_speed="ω [rad/s]",
)
def speed_parameter(bore: float, outside: float, angular_speed: float) -> float:
    """Speed parameter n d_m: revolutions per second times mean diameter, from bore d and D [m].

    In the trade's unit 1 m/s is 60 000 mm·rpm.

    Source: definition.
    """
    return angular_speed / math.tau * (bore + outside) / 2


def _combined(radial: float, axial: float, limit: float, x: float, y: float) -> float:
    return radial if axial <= limit * radial else x * radial + y * axial


def _groove_factors(
    table: Sequence[Sequence[float]], relative: float, name: str
) -> tuple[float, ...]:
    """The factors e and Y at a relative axial load; below the first row its own hold."""
    first, last = table[0][0], table[-1][0]
    if relative > last:
        raise OutOfRange(f"the axial load is too high: {name} = {relative:.3g} is above {last:g}")
    return _interpolated(table, max(relative, first))


def _interpolated(table: Sequence[Sequence[float]], at: float) -> tuple[float, ...]:
    """The columns after the first, linear in the first, between the first row and the last."""
    upper = min(bisect(table, at, key=lambda row: row[0]), len(table) - 1)
    below, above = table[upper - 1], table[upper]
    share = (at - below[0]) / (above[0] - below[0])
    return tuple(low + share * (high - low) for low, high in zip(below[1:], above[1:], strict=True))
