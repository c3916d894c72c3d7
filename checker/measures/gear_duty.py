"""Whether the load that the gears are rated for is the load of the engine at its ratings."""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.rating import worst
from checker.measures.registry import measure
from checker.mechanics import engine as engine_mechanics
from checker.spec.subject import Subject

_TAKE_OFF = "take-off"
_RATINGS = ("maximum_continuous", "take_off")


@measure("drive", "1", "how far the operation points reach the stated ratings")
def ratings_reached(design: Design, drive: Subject) -> Value:
    """Power and torque of the fullest point over those of a rating, of the rating least reached.

    The continuous rating is to be reached outside take-off, since it may be held for hours. A point
    without any share of the time reaches nothing.
    """
    engine = design.subjects.the("engine")
    reached = []
    for rating in _RATINGS:
        if rating == "take_off" and engine.raw("take_off.power") is None:
            continue
        points = [each for each in design.points if _may_stand_for(each, rating)]
        reached.append(_reached(engine, rating, points))
    return worst(reached)


def _may_stand_for(point: Subject, rating: str) -> bool:
    share = point.given("share")
    if isinstance(share, Known) and share.number == 0.0:
        return False
    return rating == "take_off" or point.raw("kind") != _TAKE_OFF


def _reached(engine: Subject, rating: str, points: list[Subject]) -> Value:
    rated = engine.given(f"{rating}.power", "P_rated"), engine.given(f"{rating}.speed", "ω_rated")
    shares = [
        compute(
            engine_mechanics.rating_reached,
            point.given("power", "P"),
            point.given("engine_speed", "ω"),
            *rated,
        )
        for point in points
    ]
    known = [each for each in shares if isinstance(each, Known)]
    if known:
        return max(known, key=lambda each: each.number)
    return all_known(*shares) or Unknown((("operation",),), f"no point runs at {rating}")


@measure("point", "", "whether its power holds the torque pulses")
def holds_pulses(design: Design, point: Subject) -> Value:
    """Whether the powers of the points hold the vibratory torque, so that they exceed the mean."""
    return _in_spectrum(design)


@measure("drive", "", "whether the spectrum is said to hold the torque pulses")
def spectrum_holds_pulses(design: Design, drive: Subject) -> Value:
    """Whether the powers of the operation points are said to hold the vibratory torque."""
    return _in_spectrum(design)


def _in_spectrum(design: Design) -> Value:
    stated = design.subjects.the("drive").raw("application_factor.in_spectrum")
    return Known(stated is True, "", "holds pulses", origin="drive.application_factor.in_spectrum")


@measure("drive", "1", "torque of the spectrum over rated torque with its pulses")
def pulses_in_spectrum(design: Design, drive: Subject) -> Value:
    """Largest torque of the points over the largest rated mean torque with the surveyed pulses."""
    engine = design.subjects.the("engine")
    rated = _largest_torque(
        [
            (engine.given(f"{rating}.power", "P"), engine.given(f"{rating}.speed", "ω"))
            for rating in _RATINGS
            if rating == "maximum_continuous" or engine.raw("take_off.power") is not None
        ]
    )
    held = [
        (
            each,
            compute(
                engine_mechanics.mean_torque,
                each.given("power", "P"),
                each.given("engine_speed", "ω"),
            ),
        )
        for each in design.points
    ]
    unknown = all_known(rated, *(torque for _, torque in held))
    if unknown is not None or not held:
        return unknown or Unknown((("operation",),))
    point, torque = max(held, key=lambda each: each[1].number if isinstance(each[1], Known) else 0)
    pulses = worst(
        [design.measure("application_factor", mesh, point) for mesh in design.subjects.all("mesh")],
        largest=True,
    )
    return compute(engine_mechanics.pulses_held, torque, rated, pulses)


def _largest_torque(ratings: list[tuple[Value, Value]]) -> Value:
    torques = [compute(engine_mechanics.mean_torque, *each) for each in ratings]
    return worst(torques, largest=True)
