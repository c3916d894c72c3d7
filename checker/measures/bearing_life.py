"""Measures of the life of bearings over the duty cycle.

A matched set counts as one bearing: its loads are those of the set, set against its rating.
"""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.bearing_loads import is_ball
from checker.measures.bearing_ratings import BALLS, dynamic_rating, static_rating
from checker.measures.bearings import ring_speed
from checker.measures.bounded import more_is_worse
from checker.measures.design import Design
from checker.measures.oil_properties import viscosity
from checker.measures.registry import measure
from checker.mechanics import bearing as rolling
from checker.mechanics import bearing_life as life
from checker.mechanics import kinematics
from checker.mechanics.bearing_kinds import BEARING_KINDS
from checker.mechanics.equation import OutOfRange, equation_of
from checker.spec.subject import Subject
from checker.train.bearing_size import outside


@measure("bearing", "s", "basic rating life over the duty cycle", at="dynamic_rating")
def basic_life(design: Design, bearing: Subject) -> Value:
    """L_10h over the shares of the operation points [s]."""
    turned = _revolutions(design, bearing)
    if isinstance(turned, Unknown):
        return turned
    duties, speed = turned
    exponent = _exponent(bearing)
    if isinstance(exponent, Unknown):
        return exponent
    steady = [design.measure("equivalent_load", bearing, point) for point in design.points]
    forces = [
        _pulsating(design, bearing, point, load, exponent)
        for point, load in zip(design.points, steady, strict=True)
    ]
    return _life_of(design, bearing, (forces, steady), (duties, speed), exponent)


@measure("bearing", "1", "basic rating life over target life", at="dynamic_rating")
def life_over_target(design: Design, bearing: Subject) -> Value:
    """L_10h over the wanted life between overhauls."""
    target = design.subjects.the("drive").given("target_life", "t")
    return more_is_worse(
        design.measure("basic_life", bearing),
        lambda basic: compute(kinematics.quotient, basic, target),
    )


@measure("bearing", "1", "life with oil film and dirt over target life", at="contamination")
def modified_life_over_target(design: Design, bearing: Subject) -> Value:
    """L_nmh = a_ISO L_10h over the duty cycle, over the wanted life.

    The load swings with the torque of the survey; where that is not known, at best it is steady.
    """
    exponent = _exponent(bearing)
    if isinstance(exponent, Unknown):
        return exponent
    steady = {
        point.name: design.measure("equivalent_load", bearing, point)
        for point in design.points
        if not _stands(design, bearing, point)
    }
    swinging = {
        point.name: _pulsating(design, bearing, point, steady[point.name], exponent)
        for point in design.points
        if point.name in steady
    }
    found, best = (_modified_over_target(design, bearing, each) for each in (swinging, steady))
    if isinstance(found, Known) or isinstance(best, Unknown):
        return found
    return Unknown(found.missing, found.because, at_best=best)


def _stands(design: Design, bearing: Subject, point: Subject) -> bool:
    speed = ring_speed(design, bearing, point)
    return isinstance(speed, Known) and speed.number == 0.0


def _modified_over_target(design: Design, bearing: Subject, loads: dict[str, Value]) -> Value:
    """L_nmh over the wanted life, with a load [N] for each point in which the rings turn."""
    points = [point for point in design.points if point.name in loads]
    shares = [point.given("share", "q") for point in points]
    lives = [_modified_life(design, bearing, point, loads[point.name]) for point in points]
    unknown = all_known(*shares, *lives)
    if unknown is not None or not shares:
        return unknown or Unknown((("operation",),))
    inputs = tuple(each for each in (*shares, *lives) if isinstance(each, Known))
    half = len(shares)
    try:
        value = life.duty_life(
            tuple(each.number for each in inputs[:half]),
            tuple(each.number for each in inputs[half:]),
        )
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    duty = Known(value, "s", "L_nmh", origin=equation_of(life.duty_life), inputs=inputs)
    target = design.subjects.the("drive").given("target_life", "t")
    return compute(kinematics.quotient, duty, target)


@measure("drive", "1", "share of drives whose bearings all reach the target life")
def bearing_reliability(design: Design, drive: Subject) -> Value:
    """R of all loaded rolling bearings together, a matched set as one."""
    target = drive.given("target_life", "t")
    total: Value = Known(1.0, "1", "R", origin="before the first bearing")
    seen: set[str] = set()
    for bearing in design.subjects.all("bearing"):
        rolls = design.measure("rolls_under_load", bearing)
        group = bearing.raw("matched_set") or bearing.name
        if group in seen or (isinstance(rolls, Known) and not rolls.value):
            continue
        seen.add(group)
        each = compute(life.reliability_at, target, design.measure("basic_life", bearing))
        total = compute(life.system_reliability, total, each)
    return total if seen else Unknown((("bearings",),))


def _pulsating(
    design: Design, bearing: Subject, point: Subject, load: Value, exponent: Known
) -> Value:
    """P with the alternating torque of the survey at a point; as it is where no torque passes."""
    shaft = design.subjects.the("shaft", str(bearing.raw("shaft")))
    torque = design.motion.torque(shaft.name, point)
    if isinstance(torque, Known) and torque.number == 0.0:
        return load
    swing = design.measure("alternating_shaft_torque", shaft, point)
    return compute(life.pulsating_load, load, torque, swing, exponent)


def _life_of(
    design: Design,
    bearing: Subject,
    loads_at: tuple[list[Value], list[Value]],
    turned: tuple[tuple[Known, ...], Known],
    exponent: Known,
) -> Value:
    """L_10h with the pulsating loads; where these are not known, at best with the steady ones."""
    forces, steady = loads_at
    duties, speed = turned
    unknown = all_known(*forces)
    if unknown is not None:
        if all_known(*steady) is not None:
            return unknown
        best = _life_of(design, bearing, (steady, steady), turned, exponent)
        known_best = best if isinstance(best, Known) else None
        return Unknown(unknown.missing, unknown.because, at_best=known_best)
    known = tuple(force for force in forces if isinstance(force, Known))
    try:
        load = rolling.mean_equivalent_load(
            [force.number for force in known], [duty.number for duty in duties], exponent.number
        )
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    mean = Known(
        load,
        "N",
        "P_m",
        origin=equation_of(rolling.mean_equivalent_load),
        inputs=(*known, *duties, exponent),
    )
    revolutions = compute(rolling.basic_life, dynamic_rating(design, bearing), mean, exponent)
    return compute(rolling.duration, revolutions, speed)


def _exponent(bearing: Subject) -> Known | Unknown:
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    exponent = rolling.BALL_EXPONENT if kind.value in BALLS else rolling.ROLLER_EXPONENT
    return Known(exponent, "1", "p", origin="ISO 281:2007: 3 of balls, 10/3 of rollers")


def _revolutions(design: Design, bearing: Subject) -> tuple[tuple[Known, ...], Known] | Unknown:
    """Revolutions of the rings in each point per unit of time, and their sum: the mean speed."""
    duties = [
        compute(life.turning_share, point.given("share", "q"), ring_speed(design, bearing, point))
        for point in design.points
    ]
    unknown = all_known(*duties)
    if unknown is not None or not duties:
        return unknown or Unknown((("operation",),))
    known = tuple(duty for duty in duties if isinstance(duty, Known))
    mean = Known(
        sum(duty.number for duty in known),
        "rad/s",
        "ω_m",
        origin="sum over the points of share times speed between the rings",
        inputs=known,
    )
    return known, mean


def _modified_life(design: Design, bearing: Subject, point: Subject, load: Value) -> Value:
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    if not BEARING_KINDS[str(kind.value)].radial:
        return Unknown(because=f"{bearing.label}: a_ISO is set up for radial bearings")
    speed = ring_speed(design, bearing, point)
    diameter = compute(life.mean_diameter, bearing.given("bore", "d"), outside(bearing))
    film = compute(
        life.viscosity_ratio,
        viscosity(design, point.given("oil_temperature", "T_oil"), "low"),
        compute(life.reference_viscosity, speed, diameter),
    )
    factor = compute(
        life.ball_life_factor if kind.value in BALLS else life.roller_life_factor,
        film,
        bearing.given("contamination", "e_C"),
        compute(life.fatigue_load_limit, static_rating(design, bearing), is_ball(kind)),
        load,
    )
    ninety = Known(90, "1", "reliability in %", origin="basic reliability")
    revolutions = compute(
        rolling.basic_life, dynamic_rating(design, bearing), load, _exponent(bearing)
    )
    hours = compute(rolling.duration, revolutions, speed)
    return compute(life.modified_life, compute(life.reliability_factor, ninety), factor, hours)
