"""Measures of the fits of bearing rings, hot and cold, and of growth along the shaft."""

from checker.known import Known, Unknown, Value, all_known, assumed, compute, merged
from checker.measures.bearings import BOTH_WAYS, ENGINE_WAY, NO_WAY, PROPELLER_WAY
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import bearing_fit, bearing_life, housing, iso_face_load, oil
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train.bearing_size import outside

_CASE = "case"
_WARMING_UP = "inner ring 20 K warmer than the outer one in a case still cold (from memory)"


@measure(
    "bearing", "m", "least interference of the outer ring, hot or cold", at="outer_interference"
)
def least_outer_interference(design: Design, bearing: Subject) -> Value:
    """U, least interference of the outer ring with the case at its hottest and its coldest [m].

    The hottest counts the soak after a stop. In warm-up the ring is warmer than its seat: tight.
    """
    states = [
        _outer_at(design, bearing, temperature, "low")
        for temperature in (_hottest(design), _coldest(design))
    ]
    unknown = [state for state in states if isinstance(state, Unknown)]
    return merged(unknown) if unknown else min(states, key=_number)


@measure("housing", "", "whether the fit of an outer ring in the warm case cannot be computed")
def seat_fit_unknown(design: Design, case: Subject) -> Value:
    """Whether data for the fit of any bearing in its seat are missing."""
    lacking = [
        bearing.label
        for bearing in design.subjects.all("bearing")
        if isinstance(design.measure("least_outer_interference", bearing), Unknown)
    ]
    inputs = tuple(Known(label, "", "bearing", origin="its fit is not known") for label in lacking)
    none = not design.subjects.all("bearing")
    return Known(none or bool(lacking), "", "fit unknown", origin="fits of bearings", inputs=inputs)


@measure("bearing", "", "whether the outer ring can creep in its seat", at="outer_retained")
def outer_ring_creeps(design: Design, bearing: Subject) -> Value:
    """Whether the ring is loose, hot or cold, and nothing else keeps it from turning.

    Unbalance and torque pulsation turn with the shaft, so that part of the load always turns.
    """
    turning = Known(True, "", "turning load", origin="unbalance and pulsation turn with the shaft")
    least = design.measure("least_outer_interference", bearing)
    if isinstance(least, Known) and least.number >= 0.0:
        return Known(False, "", "creep", inputs=(least,))
    return compute(bearing_fit.ring_creeps, least, turning, bearing.given("outer_retained"))


@measure("bearing", "m", "least interference of the inner ring", at="inner_interference")
def least_inner_interference(design: Design, bearing: Subject) -> Value:
    """U_i, least interference of the inner ring on its shaft as built [m]; play is negative."""
    return bearing.given("inner_interference", "U_i", "low")


@measure("bearing", "m", "clearance left at the coldest start", at="internal_clearance")
def cold_clearance(design: Design, bearing: Subject) -> Value:
    """G, least internal clearance in its seats at the coldest start [m]."""
    start = design.subjects.the("lubrication").given("cold_start_temperature", "T_start")
    return compute(
        bearing_fit.mounted_clearance,
        bearing.given("internal_clearance", "G₀", "low"),
        _outer_at(design, bearing, start, "high"),
        bearing.given("inner_interference", "U_i", "high"),
    )


@measure("bearing", "m", "clearance left while it warms up", at="internal_clearance")
def warm_up_clearance(design: Design, bearing: Subject) -> Value:
    """G_run, least clearance with the inner ring warm already and the case cold still [m]."""
    diameter = compute(bearing_life.mean_diameter, bearing.given("bore", "d"), outside(bearing))
    warmer = assumed(20.0, "ΔK", "ΔT_i", _WARMING_UP)
    mounted = design.measure("cold_clearance", bearing)
    return compute(bearing_fit.running_clearance, mounted, diameter, warmer)


@measure("bearing", "m", "clearance left in operation", at="internal_clearance")
def warm_clearance(design: Design, bearing: Subject) -> Value:
    """G_run, least clearance with the case hot and the inner ring warmer than the outer [m]."""
    mounted = compute(
        bearing_fit.mounted_clearance,
        bearing.given("internal_clearance", "G₀", "low"),
        _outer_at(design, bearing, _hottest(design), "high"),
        bearing.given("inner_interference", "U_i", "high"),
    )
    warmer = Known(10.0, "ΔK", "ΔT_i", origin="inner ring 10 K warmer (from memory)")
    diameter = compute(bearing_life.mean_diameter, bearing.given("bore", "d"), outside(bearing))
    return compute(bearing_fit.running_clearance, mounted, diameter, warmer)


@measure("bearing", "", "whether it floats beside a locating bearing", at="locates")
def floats(design: Design, bearing: Subject) -> Value:
    """Whether it locates nothing, stands in the case and carries load."""
    locates, rolls = bearing.given("locates"), design.measure("rolls_under_load", bearing)
    if isinstance(locates, Unknown) or isinstance(rolls, Unknown):
        return all_known(locates, rolls) or locates
    word = locates.value == NO_WAY and bool(rolls.value)
    return Known(word, "", "floats", inputs=(locates, rolls))


@measure("bearing", "1", "growth of the case over the float of the bearing", at="axial_float")
def growth_over_float(design: Design, bearing: Subject) -> Value:
    """|Δl| between this bearing and the one that locates the shaft, over what it may move."""
    shaft = str(bearing.raw("shaft"))
    locators = [
        each
        for each in design.subjects.all("bearing")
        if each.raw("shaft") == shaft and each.raw("locates") not in (None, NO_WAY)
    ]
    if not locators:
        return Unknown((("bearings",),), f"no bearing of shafts.{shaft} is said to locate it")
    span = compute(
        iso_face_load.distance_between,
        bearing.given("station", "x₁"),
        locators[0].given("station", "x₂"),
    )
    growth = _worst_growth(design, span)
    return compute(bearing_fit.growth_use, growth, bearing.given("axial_float", "s"))


@measure("shaft", "", "whether two bearings set against each other locate the shaft")
def is_adjusted(design: Design, shaft: Subject) -> Value:
    """Whether one bearing stops it each way, apart from each other and not as a matched set."""
    return Known(
        _adjusted_pair(design, shaft) is not None,
        "",
        "adjusted pair",
        origin="locates of the bearings on the shaft",
    )


@measure("shaft", "m", "end play left hot or cold", at="end_play")
def least_end_play(design: Design, shaft: Subject) -> Value:
    """Least axial play of two bearings set against each other, at the hottest and the coldest [m].

    Where their pressure centres lie outside them a growing case takes the play up; where they lie
    between, a shrinking one does.
    """
    pair = _adjusted_pair(design, shaft)
    if pair is None:
        return Unknown((shaft.place("end_play"),), "no two bearings are set against each other")
    front, rear = pair
    span = compute(
        iso_face_load.distance_between, rear.given("station", "x₁"), front.given("station", "x₂")
    )
    outward = Known(
        1 if front.raw("locates") == ENGINE_WAY else -1,
        "1",
        "arrangement",
        origin="+1 back-to-back, -1 face-to-face, by what each bearing locates",
    )
    plays = [
        compute(
            bearing_fit.play_after_growth,
            shaft.given("end_play", "s₀", "low"),
            _growth(design, span, temperature),
            outward,
        )
        for temperature in (_hottest(design), _coldest(design))
    ]
    unknown = [play for play in plays if isinstance(play, Unknown)]
    if unknown:
        return merged(unknown)
    return min((play for play in plays if isinstance(play, Known)), key=lambda play: play.number)


def _adjusted_pair(design: Design, shaft: Subject) -> tuple[Subject, Subject] | None:
    """The two bearings that stop a shaft one way each, the one nearer the propeller first."""
    ways: dict[str, Subject] = {}
    for bearing in design.subjects.all("bearing"):
        if bearing.raw("shaft") == shaft.name and bearing.raw("matched_set") is None:
            way = bearing.raw("locates")
            if way == BOTH_WAYS:
                return None
            if way in (PROPELLER_WAY, ENGINE_WAY):
                ways[way] = bearing
    if len(ways) < 2:
        return None
    first, second = ways[PROPELLER_WAY], ways[ENGINE_WAY]
    stations = [each.given("station") for each in (first, second)]
    if isinstance(stations[0], Known) and isinstance(stations[1], Known):
        ahead = stations[0].number > stations[1].number
        return (first, second) if ahead else (second, first)
    return second, first


def _outer_at(design: Design, bearing: Subject, temperature: Value, end: str) -> Value:
    stated = bearing.given("outer_interference", "U₀", end)
    seat = bearing.given("outer_seat", "seat")
    if isinstance(seat, Unknown):
        return merged([seat, *([stated] if isinstance(stated, Unknown) else [])])
    if seat.value != _CASE:
        return stated
    loosening = compute(
        housing.seat_loosening,
        outside(bearing),
        _expansion(design),
        _warming(design, temperature),
    )
    return compute(bearing_fit.interference_at, stated, loosening)


def _worst_growth(design: Design, span: Value) -> Value:
    growths = [_growth(design, span, each) for each in (_hottest(design), _coldest(design))]
    unknown = [growth for growth in growths if isinstance(growth, Unknown)]
    if unknown:
        return merged(unknown)
    known = [growth for growth in growths if isinstance(growth, Known)]
    return max(known, key=lambda growth: abs(growth.number))


def _growth(design: Design, span: Value, temperature: Value) -> Value:
    return compute(bearing_fit.span_growth, span, _expansion(design), _warming(design, temperature))


def _expansion(design: Design) -> Value:
    material = design.subjects.the("housing").given("material", "material")
    return compute(housing.thermal_expansion, material)


def _hottest(design: Design) -> Value:
    """The case at its hottest [K]: in operation, or in the soak after a stop.

    Without heat of its own the case goes towards the engine it is bolted to, and not beyond.
    """
    case = design.subjects.the("housing")
    running = case.given("highest_temperature", "T_case")
    if case.raw("engine_joint") == NONE:
        return running
    engine = case.given("engine_joint.engine_temperature", "T_engine")
    return compute(housing.hotter, running, engine)


def _number(value: Value) -> float:
    return value.number if isinstance(value, Known) else 0.0


def _coldest(design: Design) -> Value:
    return design.subjects.the("housing").given("cold_soak_temperature", "T_cold")


def _warming(design: Design, temperature: Value) -> Value:
    built = design.subjects.the("drive").given("build_temperature", "T_build")
    return compute(oil.temperature_reserve, temperature, built)
