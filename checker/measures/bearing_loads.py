"""Measures of what a bearing carries: reactions, equivalent loads and static safety.

A matched set counts as one bearing: its loads are those of the set, set against its rating.
"""

from collections.abc import Callable, Iterable

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.bearing_ratings import (
    BALLS,
    CYLINDERS,
    dynamic_rating,
    static_rating,
)
from checker.measures.bearings import BOTH_WAYS, ENGINE_WAY, PROPELLER_WAY
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import bearing as rolling
from checker.mechanics import bearing_life as life
from checker.mechanics import bearing_load as loads
from checker.mechanics import bearing_sizes as generic
from checker.mechanics import kinematics
from checker.spec.subject import Subject
from checker.train.bearing_size import outside
from checker.train.load_cases import LoadCase

_RADIAL_ONLY = (*CYLINDERS, "needle roller", "toroidal roller")
_THRUST = ("thrust ball", "double-direction thrust ball", "thrust roller")
_PAIRED = ("back-to-back", "face-to-face")
_WAY_SIGN = {PROPELLER_WAY: 1, ENGINE_WAY: -1}
_OPPOSITE = {PROPELLER_WAY: ENGINE_WAY, ENGINE_WAY: PROPELLER_WAY}


@measure("bearing", "", "whether it is a rolling bearing under load", at="kind")
def rolls_under_load(design: Design, bearing: Subject) -> Value:
    """Whether it rolls, and stands on a shaft that gear, propeller or a member on it loads."""
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    rolls = kind.value != "plain" and design.reactions.is_loaded(str(bearing.raw("shaft")))
    return Known(rolls, "", "rolls under load", inputs=(kind,))


@varying_measure("bearing", "N", "radial force on the bearing or its set", at="station")
def radial_force(design: Design, bearing: Subject, point: Subject) -> Value:
    """F_r at an operation point [N]."""
    return design.reactions.radial(bearing, design.reactions.cases.points[point.name])


@varying_measure("bearing", "N", "axial force on the bearing or its set", at="locates")
def axial_force(design: Design, bearing: Subject, point: Subject) -> Value:
    """F_a at an operation point [N]."""
    return axial_in(design, bearing, design.reactions.cases.points[point.name])


@varying_measure("bearing", "N", "equivalent dynamic load", at="dynamic_rating")
def equivalent_load(design: Design, bearing: Subject, point: Subject) -> Value:
    """P at an operation point [N], by the mean torque."""
    return dynamic_load(design, bearing, design.reactions.cases.points[point.name])


@measure("bearing", "1", "static safety in the worst state of load", at="static_rating")
def static_safety(design: Design, bearing: Subject) -> Value:
    """s_0 = C_0/P_0 in the worst of all operation points and limit cases."""
    cases = design.reactions.cases

    def margin(limits: Iterable[LoadCase]) -> Value:
        worst = worst_of(
            [*cases.points.values(), *limits],
            lambda case: static_load(design, bearing, case),
        )
        rating = static_rating(design, bearing)
        return more_is_worse(worst, lambda load: compute(rolling.static_margin, rating, load))

    return cases.judged(margin, str(bearing.raw("shaft")))


@measure("bearing", "1", "axial load over axial rating in the worst limit case", at="axial_rating")
def axial_share_at_limit(design: Design, bearing: Subject) -> Value:
    """F_a/F_a,max in the worst limit case, where the static rating does not count it as well.

    ISO 76 has no axial load in P_0 of a roller bearing without contact angle: what its ribs bear is
    for the maker to say.
    """
    cases = design.reactions.cases

    def share(limits: Iterable[LoadCase]) -> Value:
        worst = worst_of(limits, lambda case: axial_in(design, bearing, case))
        limit = design.measure("axial_load_limit", bearing)
        return more_is_worse(worst, lambda load: compute(rolling.axial_share, load, limit))

    return cases.judged(share, str(bearing.raw("shaft")))


@varying_measure("bearing", "1", "load over the least that keeps it rolling", at="dynamic_rating")
def least_load_margin(design: Design, bearing: Subject, point: Subject) -> Value:
    """P in straight flight over the load below which rolling elements may skid."""
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    least = compute(life.least_load, dynamic_rating(design, bearing), is_ball(kind))
    load = dynamic_load(design, bearing, design.reactions.cases.straight(point))
    return compute(kinematics.quotient, load, least)


def worst_of(cases: Iterable[LoadCase], value_in: Callable[[LoadCase], Value]) -> Value:
    """The greatest value over states of load, with the case that governs among its inputs.

    Where it is unknown in any of them, it is at best the greatest of the others.
    """
    values = [_named(case, value_in(case)) for case in cases]
    return largest(values) if values else Unknown((("operation",),))


def _named(case: LoadCase, value: Value) -> Value:
    """A value with the case in which it stands among its inputs."""
    if isinstance(value, Unknown):
        best = value.at_best
        return value if best is None else Unknown(value.missing, value.because, _in(case, best))
    return _in(case, value)


def _in(case: LoadCase, value: Known) -> Known:
    return Known(
        value.value,
        value.unit,
        value.symbol,
        origin=value.origin,
        inputs=(*value.inputs, case.known_name),
    )


def axial_in(design: Design, bearing: Subject, case: LoadCase) -> Value:
    """F_a on a bearing or its set in a state of load [N], the largest of any thrust in it."""
    own = design.measure("stops", bearing)
    able = design.measure("carries_axially", bearing)
    partner = design.measure("needs_partner", bearing)
    unknown = all_known(own, able, partner)
    if unknown is not None or not (
        isinstance(own, Known) and isinstance(able, Known) and isinstance(partner, Known)
    ):
        return unknown or own
    nets = design.reactions.forces.net_axials(str(bearing.raw("shaft")), case)
    if partner.value and own.value in _WAY_SIGN:
        way = str(own.value)
        return largest([_adjusted(design, bearing, way, net, case) for net in nets])
    set_carries = bearing.raw("matched_set") is not None and able.value == "both ways"
    stopped = Known(BOTH_WAYS, "", "stops", inputs=(own,)) if set_carries else own
    return largest([_stopped(stopped, net) for net in nets])


def _stopped(stops: Known, net: Value) -> Value:
    """Axial load of a bearing that stops one way or both; none where another one does [N]."""
    if isinstance(net, Unknown):
        return net
    way = PROPELLER_WAY if net.number > 0.0 else ENGINE_WAY
    if stops.value in (way, BOTH_WAYS):
        return compute(loads.axial_size, net)
    return Known(0.0, "N", "F_a", inputs=(stops, net))


def _adjusted(design: Design, bearing: Subject, way: str, net: Value, case: LoadCase) -> Value:
    """Axial load of one of two bearings set against each other, induced forces included."""
    others = [
        each
        for each in design.subjects.all("bearing")
        if each.raw("shaft") == bearing.raw("shaft")
        and each is not bearing
        and _stops(design, each) == _OPPOSITE[way]
    ]
    if not others:
        return Unknown((("bearings",),), f"{bearing.label} has no bearing that holds against it")
    sign = Known(_WAY_SIGN[way], "1", "way", origin=f"pressed by a force {way}")
    return compute(
        loads.adjusted_axial_load,
        _induced(design, bearing, case),
        _induced(design, others[0], case),
        compute(loads.pressing_force, net, sign),
    )


def _stops(design: Design, bearing: Subject) -> object:
    value = design.measure("stops", bearing)
    return value.value if isinstance(value, Known) else None


def _induced(design: Design, bearing: Subject, case: LoadCase) -> Value:
    radial, angle = design.reactions.radial(bearing, case), bearing.given("contact_angle", "α")
    if bearing.raw("kind") == "angular contact ball":
        return compute(rolling.induced_axial_force, radial, angle)
    if bearing.raw("kind") == "tapered roller":
        return compute(loads.tapered_induced_force, radial, angle)
    return Known(0.0, "N", "F_ind", origin="its kind induces no axial force")


def dynamic_load(design: Design, bearing: Subject, case: LoadCase) -> Value:
    """P of a bearing or its set in a state of load [N]."""
    kind, radial = bearing.raw("kind"), design.reactions.radial(bearing, case)
    if kind is None:
        return bearing.given("kind")
    if kind in _RADIAL_ONLY:
        return compute(loads.radial_load, radial)
    axial = axial_in(design, bearing, case)
    if kind in _THRUST:
        return compute(loads.thrust_load, axial)
    if kind == "deep groove ball":
        return _groove_load(design, bearing, radial, axial)
    formula = {
        "angular contact ball": loads.angular_pair_load
        if _paired(bearing)
        else loads.angular_single_load,
        "double-row angular contact ball": loads.angular_pair_load,
        "four-point contact ball": loads.angular_pair_load,
        "self-aligning ball": loads.self_aligning_load,
        "tapered roller": loads.double_row_roller_load if _paired(bearing) else loads.tapered_load,
        "spherical roller": loads.double_row_roller_load,
    }.get(kind)
    if formula is None:
        return Unknown(because=f"{bearing.label}: a {kind} bearing has no rating life")
    return compute(formula, radial, axial, bearing.given("contact_angle", "α"))


def static_load(design: Design, bearing: Subject, case: LoadCase) -> Value:
    """P_0 of a bearing or its set in a state of load [N]."""
    kind, radial = bearing.raw("kind"), design.reactions.radial(bearing, case)
    if kind is None:
        return bearing.given("kind")
    if kind in _RADIAL_ONLY:
        return compute(loads.radial_load, radial)
    axial = axial_in(design, bearing, case)
    if kind in _THRUST:
        return compute(loads.thrust_load, axial)
    if kind == "deep groove ball":
        return compute(rolling.deep_groove_static_load, radial, axial)
    formula = {
        "angular contact ball": loads.angular_pair_static_load
        if _paired(bearing)
        else loads.angular_single_static_load,
        "double-row angular contact ball": loads.angular_pair_static_load,
        "four-point contact ball": loads.angular_pair_static_load,
        "self-aligning ball": loads.double_row_static_load,
        "tapered roller": loads.double_row_static_load
        if _paired(bearing)
        else loads.tapered_static_load,
        "spherical roller": loads.double_row_static_load,
    }.get(kind)
    if formula is None:
        return Unknown(because=f"{bearing.label}: a {kind} bearing has no static rating")
    return compute(formula, radial, axial, bearing.given("contact_angle", "α"))


def _groove_load(design: Design, bearing: Subject, radial: Value, axial: Value) -> Value:
    static = static_rating(design, bearing)
    factor = bearing.given("f0", "f_0")
    if isinstance(factor, Known):
        return compute(rolling.deep_groove_load, radial, axial, static, factor)
    if bearing.raw("generic_series") is not None:
        factor = compute(generic.generic_f0, bearing.given("bore", "d"), outside(bearing))
        return compute(rolling.deep_groove_load, radial, axial, static, factor)
    return compute(rolling.deep_groove_load_without_f0, radial, axial, static)


def _paired(bearing: Subject) -> bool:
    return bearing.raw("matched_set") is not None and bearing.raw("set_arrangement") in _PAIRED


def is_ball(kind: Known) -> Known:
    """Whether its kind rolls on balls."""
    return Known(kind.value in BALLS, "", "balls", inputs=(kind,))


@varying_measure("bearing", "", "whether it works in power at the point", at="kind")
def works_in_power(design: Design, bearing: Subject, point: Subject) -> Value:
    """Whether it rolls under load in take-off, climb or cruise."""
    rolls, phase = design.measure("rolls_under_load", bearing), point.given("kind", "phase")
    if isinstance(rolls, Unknown) or isinstance(phase, Unknown):
        return all_known(rolls, phase) or rolls
    working = bool(rolls.value) and phase.value in ("take-off", "climb", "cruise")
    return Known(working, "", "works in power", inputs=(rolls, phase))
