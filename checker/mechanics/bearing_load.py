"""Equivalent loads of the bearing kinds, matched pairs, and the axial force they induce.

Deep groove bearings are in ``bearing``. Radial forces are sizes; an axial force is what the bearing
itself carries, in a direction in which it carries.
"""

import itertools
import math

from checker.mechanics.equation import OutOfRange, equation

_ISO_281 = "ISO 281:2007 Table 3, angular contact ball bearings (from memory)"
_ISO_281_ROLLER = "ISO 281:2007 Table 8, radial roller bearings with contact angle (from memory)"
_ISO_76 = "ISO 76:2006 (from memory)"
_TRADE_SHARE = "makers' catalogues on adjusted pairs of bearings (from memory), zero clearance"
_DEGREE = 9

# Contact angle in degrees: single e, X, Y; pair Y1, X2, Y2; static Y0 single.
_ANGULAR = (
    (20.0, 0.57, 0.43, 1.00, 1.09, 0.70, 1.63, 0.42),
    (25.0, 0.68, 0.41, 0.87, 0.92, 0.67, 1.41, 0.38),
    (30.0, 0.80, 0.39, 0.76, 0.78, 0.63, 1.24, 0.33),
    (35.0, 0.95, 0.37, 0.66, 0.66, 0.60, 1.07, 0.29),
    (40.0, 1.14, 0.35, 0.57, 0.55, 0.57, 0.93, 0.26),
    (45.0, 1.34, 0.33, 0.50, 0.47, 0.54, 0.81, 0.22),
)


def _angular(contact_angle: float) -> tuple[float, ...]:
    """The factors at a contact angle, linear between the rows."""
    angle = round(math.degrees(contact_angle), _DEGREE)
    if not _ANGULAR[0][0] <= angle <= _ANGULAR[-1][0]:
        raise OutOfRange(f"contact_angle of {angle:.3g} deg is outside 20 to 45 deg")
    for below, above in itertools.pairwise(_ANGULAR):
        if angle <= above[0]:
            share = (angle - below[0]) / (above[0] - below[0])
            return tuple(a + share * (b - a) for a, b in zip(below, above, strict=True))
    raise AssertionError("the rows cover the range")


def _own_way(axial: float) -> None:
    if axial < 0:
        raise OutOfRange("axial acts against the one way in which the bearing carries")


@equation(
    "P",
    "P = F_r if F_a/F_r ≤ e, else X F_r + Y F_a; e, X, Y by contact angle",
    unit="N",
    source=_ISO_281,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def angular_single_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent dynamic load of one single-row angular contact ball bearing.

    Raises:
        OutOfRange: contact angle outside 20 to 45 deg, or axial force the other way.
    """
    _own_way(axial)
    _, limit, x, y, *_ = _angular(contact_angle)
    return radial if axial <= limit * radial else x * radial + y * axial


@equation(
    "P",
    "P = F_r + Y₁ F_a if F_a/F_r ≤ e, else X F_r + Y₂ F_a; by contact angle",
    unit="N",
    source=_ISO_281,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def angular_pair_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent dynamic load of a matched pair, or of a double-row or four-point bearing.

    Set against the rating of the pair. Axial force counts by its amount, either way.

    Raises:
        OutOfRange: contact angle outside 20 to 45 deg.
    """
    thrust = abs(axial)
    _, limit, _, _, y1, x2, y2, _ = _angular(contact_angle)
    return radial + y1 * thrust if thrust <= limit * radial else x2 * radial + y2 * thrust


@equation(
    "P_0",
    "P_0 = max(0.5 F_r + Y₀ F_a, F_r); Y₀ by contact angle",
    unit="N",
    source=_ISO_76,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def angular_single_static_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent static load of one single-row angular contact ball bearing.

    Raises:
        OutOfRange: contact angle outside 20 to 45 deg, or axial force the other way.
    """
    _own_way(axial)
    return max(0.5 * radial + _angular(contact_angle)[7] * axial, radial)


@equation(
    "P_0",
    "P_0 = F_r + 2 Y₀ F_a; Y₀ by contact angle",
    unit="N",
    source=_ISO_76,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def angular_pair_static_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent static load of a matched pair, set against the static rating of the pair.

    Raises:
        OutOfRange: contact angle outside 20 to 45 deg.
    """
    return radial + 2.0 * _angular(contact_angle)[7] * abs(axial)


def _roller_angle(contact_angle: float) -> float:
    if not 0.0 < contact_angle < math.pi / 4.0:
        raise OutOfRange("contact_angle must be above 0 and below 45 deg")
    return 1.0 / math.tan(contact_angle)


@equation(
    "P",
    "P = F_r if F_a/F_r ≤ 1.5 tan α, else 0.4 F_r + 0.4 cot α F_a",
    unit="N",
    source=_ISO_281_ROLLER,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def tapered_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent dynamic load of one single-row tapered roller bearing.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg, or axial force the other way.
    """
    _own_way(axial)
    cotangent = _roller_angle(contact_angle)
    if axial <= 1.5 / cotangent * radial:
        return radial
    return 0.4 * radial + 0.4 * cotangent * axial


@equation(
    "P_0",
    "P_0 = max(0.5 F_r + 0.22 cot α F_a, F_r)",
    unit="N",
    source=_ISO_76,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def tapered_static_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent static load of one single-row tapered roller bearing.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg, or axial force the other way.
    """
    _own_way(axial)
    return max(0.5 * radial + 0.22 * _roller_angle(contact_angle) * axial, radial)


@equation(
    "P",
    "P = F_r + 0.45 cot α F_a if F_a/F_r ≤ 1.5 tan α, else 0.67 F_r + 0.67 cot α F_a",
    unit="N",
    source=_ISO_281_ROLLER,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def double_row_roller_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent dynamic load of a spherical roller bearing or a matched pair of tapered ones.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg.
    """
    thrust, cotangent = abs(axial), _roller_angle(contact_angle)
    if thrust <= 1.5 / cotangent * radial:
        return radial + 0.45 * cotangent * thrust
    return 0.67 * radial + 0.67 * cotangent * thrust


@equation(
    "P_0",
    "P_0 = F_r + 0.44 cot α F_a",
    unit="N",
    source=_ISO_76,
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def double_row_static_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent static load of a spherical, self-aligning or paired tapered bearing.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg.
    """
    return radial + 0.44 * _roller_angle(contact_angle) * abs(axial)


@equation(
    "P",
    "P = F_r + 0.42 cot α F_a if F_a/F_r ≤ 1.5 tan α, else 0.65 F_r + 0.65 cot α F_a",
    unit="N",
    source="ISO 281:2007 Table 3, self-aligning ball bearings (from memory)",
    radial="F_r [N]",
    axial="F_a [N]",
    contact_angle="α [rad]",
)
def self_aligning_load(radial: float, axial: float, contact_angle: float) -> float:
    """Equivalent dynamic load of a self-aligning ball bearing.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg.
    """
    thrust, cotangent = abs(axial), _roller_angle(contact_angle)
    if thrust <= 1.5 / cotangent * radial:
        return radial + 0.42 * cotangent * thrust
    return 0.65 * radial + 0.65 * cotangent * thrust


@equation(
    "P",
    "P = F_r",
    unit="N",
    source="ISO 281:2007, radial roller bearings of zero contact angle (from memory)",
    radial="F_r [N]",
)
def radial_load(radial: float) -> float:
    """Equivalent load, dynamic and static, of a cylindrical, needle or toroidal bearing.

    Its ribs may carry axial force within the rating of their maker; that does not tire the
    raceways.
    """
    return radial


@equation(
    "P",
    "P = F_a, without radial force",
    unit="N",
    source="ISO 281:2007, thrust bearings of 90 deg (from memory)",
    axial="F_a [N]",
)
def thrust_load(axial: float) -> float:
    """Equivalent load, dynamic and static, of a thrust ball or roller bearing.

    It carries no radial force, so that it is no support of its shaft.
    """
    return abs(axial)


@equation(
    "F_ind",
    "F_ind = F_r / (2 Y), Y = 0.4 cot α",
    unit="N",
    source="makers' catalogues on tapered roller bearings (from memory), zero clearance",
    radial="F_r [N]",
    contact_angle="α [rad]",
)
def tapered_induced_force(radial: float, contact_angle: float) -> float:
    """Axial force [N] by which a radial force drives a tapered bearing apart.

    Raises:
        OutOfRange: contact angle outside 0 to 45 deg.
    """
    return radial / (0.8 * _roller_angle(contact_angle))


@equation(
    "F_a",
    "F_a = max(F_ind, F_ind,2 + K)",
    unit="N",
    source=_TRADE_SHARE,
    own_induced="F_ind [N]",
    partner_induced="F_ind,2 [N]",
    outside="K [N]",
)
def adjusted_axial_load(own_induced: float, partner_induced: float, outside: float) -> float:
    """Axial force [N] on one of two bearings set against each other, without clearance.

    Args:
        own_induced: F_ind, what its own radial force induces [N].
        partner_induced: F_ind,2, what that of its partner induces [N].
        outside: K, force on the shaft, positive where it presses on this bearing [N].
    """
    return max(own_induced, partner_induced + outside)


@equation(
    "C_set",
    "C_set = N^q C, q = 0.7 of balls, 7/9 of rollers",
    unit="N",
    source="ISO 281:2007, i rows of one bearing (from memory)",
    rating="C [N]",
    members="N [1]",
    rows_exponent="q [1]",
)
def set_dynamic_rating(rating: float, members: int, rows_exponent: float) -> float:
    """Dynamic rating of a matched set of N bearings that share the load."""
    return rating * float(members**rows_exponent)


@equation(
    "C_0,set",
    "C_0,set = N C_0",
    unit="N",
    source=_ISO_76,
    rating="C_0 [N]",
    members="N [1]",
)
def set_static_rating(rating: float, members: int) -> float:
    """Static rating of a matched set of N bearings that share the load."""
    return rating * members


@equation(
    "x_P",
    "x_P = x ∓ (d + D)/4 · tan α",
    unit="m",
    source="geometry: where the lines of contact meet the axis",
    station="x [m]",
    bore="d [m]",
    outside="D [m]",
    contact_angle="α [rad]",
    way="way [1]",
)
def pressure_centre(
    station: float, bore: float, outside: float, contact_angle: float, way: int
) -> float:
    """Where a single angular contact or tapered bearing supports its shaft [m].

    Args:
        station: x, middle of the bearing [m].
        bore: d [m].
        outside: D [m].
        contact_angle: α [rad].
        way: +1 where it stops the shaft towards the propeller, −1 towards the engine. The lines of
            contact then meet on the engine's side of it, or on the propeller's.
    """
    return station - way * (bore + outside) / 4.0 * math.tan(contact_angle)


@equation(
    "K",
    "K = way · ΣF_x",
    unit="N",
    source="definition",
    net="ΣF_x [N]",
    way="way [1]",
)
def pressing_force(net: float, way: int) -> float:
    """Force on the shaft, positive where it presses on the bearing that stops it this way."""
    return net * way


@equation(
    "F_a",
    "F_a = |ΣF_x|",
    unit="N",
    source="definition",
    net="ΣF_x [N]",
)
def axial_size(net: float) -> float:
    """Axial force on the bearing that stops the shaft the way it is pushed."""
    return abs(net)
