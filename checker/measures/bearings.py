"""Measures of bearings: which shaft they stop, which way, and what that loads them with.

The word pairs are those of the spec: a bearing stops its shaft "towards propeller", "towards
engine", "both" ways or not at all ("none"). A matched set counts as one bearing.
"""

from checker.known import Known, Unknown, Value, all_known, assumed, compute
from checker.measures.bearing_ratings import own_static_rating
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import bearing as rolling
from checker.mechanics import bearing_sizes, kinematics, plain_bearing
from checker.mechanics.bearing_kinds import (
    BEARING_KINDS,
    SET_AXIAL,
    Axial,
    BearingKind,
    tandem_axial_rating,
)
from checker.spec.subject import Subject
from checker.train.bearing_size import outside
from checker.train.carrier import carrier_of

PROPELLER_WAY, ENGINE_WAY, BOTH_WAYS, NO_WAY = (
    "towards propeller",
    "towards engine",
    "both",
    "none",
)
_OPPOSITE = {PROPELLER_WAY: ENGINE_WAY, ENGINE_WAY: PROPELLER_WAY}
_LIGHT_SERIES = 0
_LIGHT_SERIES_SOURCE = (
    "the lightest series is taken, as the spec states no axial_rating; a bearing of diameter "
    "series 2, 3 or 4 carries twice as much"
)


@measure("bearing", "", "whether the bearing belongs to a matched set", at="matched_set")
def in_matched_set(design: Design, bearing: Subject) -> Value:
    """Whether the bearing names a matched set."""
    named = bearing.raw("matched_set") is not None
    return Known(named, "", "in a set", path=bearing.place("matched_set"))


@measure("bearing", "", "whether the matched set is one", at="matched_set")
def set_state(design: Design, bearing: Subject) -> Value:
    """``matched``, or what keeps the set from being one."""
    members = _set_of(design, bearing)
    if len(members) == 1:
        return Known("has one member", "", "set", path=bearing.place("matched_set"))
    for field, word in (
        ("shaft", "shafts differ"),
        ("kind", "kinds differ"),
        ("set_arrangement", "arrangements differ"),
    ):
        stated = [member.given(field) for member in members]
        unknown = all_known(*stated)
        if unknown is not None:
            return unknown
        known = tuple(each for each in stated if isinstance(each, Known))
        if len({each.value for each in known}) > 1:
            return Known(word, "", "set", inputs=known)
    return Known("matched", "", "set", path=bearing.place("matched_set"))


@measure("bearing", "", "ways in which it can carry axial force by its construction", at="kind")
def carries_axially(design: Design, bearing: Subject) -> Value:
    """``none``, ``one way`` or ``both ways``, by its kind or that of its set."""
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    able = _kind(kind).axial
    face = bearing.given("thrust_outside", "D_t")
    if kind.value == "plain" and isinstance(face, Known):
        return Known(Axial.ONE_WAY.value, "", "carries", inputs=(kind, face))
    if able is not Axial.ONE_WAY or bearing.raw("matched_set") is None:
        return Known(able.value, "", "carries", inputs=(kind,))
    arrangement = bearing.given("set_arrangement", "arrangement")
    if isinstance(arrangement, Unknown):
        return arrangement
    able = SET_AXIAL[str(arrangement.value)]
    return Known(able.value, "", "carries", inputs=(kind, arrangement))


@measure("bearing", "", "whether it can do what it is said to locate", at="locates")
def claim_within_kind(design: Design, bearing: Subject) -> Value:
    """Whether the kind can stop the shaft the ways that ``locates`` claims."""
    claimed, able = bearing.given("locates"), design.measure("carries_axially", bearing)
    if isinstance(claimed, Unknown) or isinstance(able, Unknown):
        return all_known(claimed, able) or claimed
    within = (
        claimed.value == NO_WAY
        or able.value == Axial.BOTH_WAYS.value
        or (able.value == Axial.ONE_WAY.value and claimed.value != BOTH_WAYS)
    )
    return Known(within, "", "within", inputs=(claimed, able))


@measure("bearing", "", "ways in which it stops its shaft", at="locates")
def stops(design: Design, bearing: Subject) -> Value:
    """The ways that it is built in to locate and able to; none where the claim goes beyond."""
    claimed, within = bearing.given("locates"), design.measure("claim_within_kind", bearing)
    if isinstance(claimed, Unknown) or isinstance(within, Unknown):
        return all_known(claimed, within) or claimed
    word = claimed.value if within.value else NO_WAY
    return Known(word, "", "stops", inputs=(claimed, within))


@measure("bearing", "", "whether it works only against a second bearing", at="kind")
def needs_partner(design: Design, bearing: Subject) -> Value:
    """Whether radial load drives it apart, and its own set does not hold it together."""
    kind = bearing.given("kind")
    able = design.measure("carries_axially", bearing)
    if isinstance(kind, Unknown) or isinstance(able, Unknown):
        return all_known(kind, able) or kind
    needs = _kind(kind).needs_partner and able.value != Axial.BOTH_WAYS.value
    return Known(needs, "", "needs a partner", inputs=(kind, able))


@measure("bearing", "", "whether another bearing holds against it", at="locates")
def has_partner(design: Design, bearing: Subject) -> Value:
    """Whether another bearing of the shaft stops it the way that this one does not."""
    own = design.measure("stops", bearing)
    if isinstance(own, Unknown):
        return own
    opposite = _OPPOSITE.get(str(own.value))
    if opposite is None:
        return Known(False, "", "partner", inputs=(own,))
    found = _locators(design, str(bearing.raw("shaft")), opposite)
    if isinstance(found, Unknown):
        return found
    return Known(bool(found), "", "partner", inputs=(own, *found))


@measure("bearing", "N", "axial load it may carry for long", at="axial_rating")
def axial_load_limit(design: Design, bearing: Subject) -> Value:
    """Axial load [N] that the bearing, or the tandem set it belongs to, may carry for long.

    A deep groove bearing without stated rating counts as one of its generic series, or else of the
    lightest. A thrust face bears its pressure limit.
    """
    rating = bearing.given("axial_rating", "F_a,max")
    if isinstance(rating, Unknown) and bearing.raw("kind") == "deep groove ball":
        static = own_static_rating(bearing)
        if isinstance(static, Unknown):
            return all_known(rating, static) or rating
        series = _diameter_series(bearing)
        rating = compute(rolling.deep_groove_axial_limit, static, series)
    if isinstance(rating, Unknown) and bearing.raw("kind") == "plain":
        face = bearing.given("thrust_outside", "D_t"), bearing.given("bore", "d")
        rating = compute(
            plain_bearing.axial_limit,
            bearing.given("pressure_limit", "p_lim"),
            compute(plain_bearing.thrust_face, *face),
        )
    if bearing.raw("matched_set") is None or bearing.raw("set_arrangement") != "tandem":
        return rating
    named = [member.given("matched_set") for member in _set_of(design, bearing)]
    known = tuple(each for each in named if isinstance(each, Known))
    members = Known(len(known), "1", "N", inputs=known)
    return compute(tandem_axial_rating, rating, members)


def _diameter_series(bearing: Subject) -> Value:
    if bearing.raw("generic_series") is None:
        return assumed(_LIGHT_SERIES, "1", "diameter series", _LIGHT_SERIES_SOURCE)
    return compute(bearing_sizes.diameter_series, bearing.given("generic_series", "series"))


@varying_measure("bearing", "1", "axial load over axial rating", at="axial_rating")
def axial_share(design: Design, bearing: Subject, point: Subject) -> Value:
    """Part of its axial rating that the net thrust of its shaft takes; 0 where another takes it.

    Where several bearings stop the same way, any of them may get the whole load.
    """
    own = design.measure("stops", bearing)
    shaft = design.subjects.the("shaft", str(bearing.raw("shaft")))
    thrust = design.measure("net_thrust", shaft, point)
    unknown = all_known(own, thrust)
    if unknown is not None or not (isinstance(own, Known) and isinstance(thrust, Known)):
        return unknown or own
    way = PROPELLER_WAY if thrust.number > 0.0 else ENGINE_WAY
    if own.value not in (way, BOTH_WAYS):
        return Known(0.0, "1", "F_a/F_a,max", inputs=(own, thrust))
    return compute(rolling.axial_share, thrust, design.measure("axial_load_limit", bearing))


@varying_measure("bearing", "rad/s", "speed between the rings")
def ring_speed(design: Design, bearing: Subject, point: Subject) -> Value:
    """Speed between the rings [rad/s]: of the shaft, or against the shaft under its other ring."""
    shaft = str(bearing.raw("shaft"))
    speed = design.motion.speed(shaft, point)
    carrier = carrier_of(design.subjects, bearing)
    if carrier is None:
        return speed
    return compute(kinematics.relative_speed, speed, design.motion.speed(carrier, point))


@varying_measure("bearing", "m/s", "speed parameter")
def speed_parameter(design: Design, bearing: Subject, point: Subject) -> Value:
    """n d_m [m/s]; 1 m/s is 60 000 mm·rpm in the trade's unit."""
    return compute(
        rolling.speed_parameter,
        bearing.given("bore", "d"),
        outside(bearing),
        design.measure("ring_speed", bearing, point),
    )


@varying_measure("bearing", "1", "speed over speed limit", at="speed_limit")
def speed_share(design: Design, bearing: Subject, point: Subject) -> Value:
    """Speed between the rings over the maker's limit for the lubrication."""
    return compute(
        kinematics.quotient,
        design.measure("ring_speed", bearing, point),
        bearing.given("speed_limit", "ω_lim"),
    )


@measure("shaft", "1", "bearings that stop the shaft towards the propeller")
def locators_towards_propeller(design: Design, shaft: Subject) -> Value:
    """Number of bearings, or matched sets, that stop the shaft towards the propeller."""
    return _count(design, shaft, PROPELLER_WAY)


@measure("shaft", "1", "bearings that stop the shaft towards the engine")
def locators_towards_engine(design: Design, shaft: Subject) -> Value:
    """Number of bearings, or matched sets, that stop the shaft towards the engine."""
    return _count(design, shaft, ENGINE_WAY)


@measure("shaft", "1", "ways in which the shaft is located")
def located_ways(design: Design, shaft: Subject) -> Value:
    """Number of the two ways in which some bearing stops the shaft."""
    counts = [_count(design, shaft, way) for way in _OPPOSITE]
    known = tuple(each for each in counts if isinstance(each, Known))
    located = sum(each.number > 0 for each in known)
    return all_known(*counts) or Known(located, "1", "N_ways", inputs=known)


@measure("shaft", "1", "bearings that carry radial load")
def radial_bearings(design: Design, shaft: Subject) -> Value:
    """Number of bearings that carry the shaft radially."""
    kinds = [bearing.given("kind", "kind") for bearing in _bearings_on(design, shaft.name)]
    known = tuple(each for each in kinds if isinstance(each, Known))
    radial = sum(_kind(each).radial for each in known)
    return (
        _no_bearing(design, shaft.name)
        or all_known(*kinds)
        or Known(radial, "1", "N_radial", inputs=known)
    )


def _kind(kind: Known) -> BearingKind:
    return BEARING_KINDS[str(kind.value)]


def _bearings_on(design: Design, shaft: str) -> list[Subject]:
    return [each for each in design.subjects.all("bearing") if each.raw("shaft") == shaft]


def _no_bearing(design: Design, shaft: str) -> Unknown | None:
    if _bearings_on(design, shaft):
        return None
    return Unknown((("bearings",),), f"no bearing of shafts.{shaft} is listed")


def _set_of(design: Design, bearing: Subject) -> list[Subject]:
    name = bearing.raw("matched_set")
    if name is None:
        return [bearing]
    return [each for each in design.subjects.all("bearing") if each.raw("matched_set") == name]


def _locators(design: Design, shaft: str, way: str) -> tuple[Known, ...] | Unknown:
    """What stops a shaft one way: one value for each bearing, and one for each matched set."""
    stopping: dict[tuple[str, str], Known] = {}
    values = [(each, design.measure("stops", each)) for each in _bearings_on(design, shaft)]
    for bearing, value in values:
        if isinstance(value, Known) and value.value in (way, BOTH_WAYS):
            name = bearing.raw("matched_set")
            stopping[("set", name) if name else ("single", bearing.name)] = value
    unknown = all_known(*(value for _, value in values)) or _no_bearing(design, shaft)
    return unknown or tuple(stopping.values())


def _count(design: Design, shaft: Subject, way: str) -> Value:
    found = _locators(design, shaft.name, way)
    if isinstance(found, Unknown):
        return found
    stated = [design.measure("stops", each) for each in _bearings_on(design, shaft.name)]
    asked = tuple(each for each in stated if isinstance(each, Known))
    return Known(len(found), "1", "N_loc", inputs=asked)
