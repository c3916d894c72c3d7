"""How far shafts, bearings and case turn the flanks of a mesh against each other under load.

The one place from which the face load factor of the gear rating takes it: as the spec states it;
else by the estimate of ISO 6336-1, method C, which knows the pinion between its bearings alone, or
by the bending of both shafts under all that loads them, whichever is larger. The bending is that of
the point with the largest tooth force and grows with the load; it does not rest on the rating.
"""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute, merged
from checker.measures.design import Design
from checker.mechanics import iso_face_load, shaft_loads
from checker.spec.subject import Subject
from checker.train.pair import Pair, Wheel

_ARRANGEMENT = assumed(
    0.8, "1", "K'", "ISO 6336-1:2006, Fig. 13, pinion that does not stiffen its shaft (from memory)"
)


def flank_misalignment(design: Design, mesh: Subject) -> Callable[[Pair, Value], Value]:
    """Misalignment over the common face [m], as a function of the pair and its line load."""
    stated = mesh.given("misalignment", "f_sh", "high")
    support = _support(design, _pinion(design.pairs[mesh.name]).subject)
    slope, force = _governing_slope(design, mesh)

    def misalignment(pair: Pair, load: Value) -> Value:
        if isinstance(stated, Known):
            return stated
        if isinstance(load, Unknown):
            return load
        estimated = _estimate(pair, support, load)
        width = pair.common_face_width
        bent = compute(shaft_loads.misalignment_under, width, slope, force, load)
        if isinstance(estimated, Known) and isinstance(bent, Known):
            return compute(shaft_loads.larger_misalignment, estimated, bent)
        for found in (estimated, bent):
            if isinstance(found, Known):
                return found
        return merged([each for each in (stated, estimated, bent) if isinstance(each, Unknown)])

    return misalignment


def _governing_slope(design: Design, mesh: Subject) -> tuple[Value, Value]:
    """Slope along the line of action and tooth force where the force is largest [rad, N]."""
    forces = [(point, design.loads.tangential(mesh, point)) for point in design.points]
    known = [(point, force) for point, force in forces if isinstance(force, Known)]
    if not known or len(known) < len(forces):
        missing = merged([force for _, force in forces if isinstance(force, Unknown)])
        return missing, missing
    point, force = max(known, key=lambda each: each[1].number)
    return design.measure("bending_slope", mesh, point), force


def _estimate(pair: Pair, support: tuple[Value, Value, Value], load: Value) -> Value:
    span, offset, diameter = support
    return compute(
        iso_face_load.shaft_misalignment,
        load,
        _ARRANGEMENT,
        span,
        offset,
        _pinion(pair).reference_diameter,
        diameter,
        pair.common_face_width,
    )


def _support(design: Design, pinion: Subject) -> tuple[Value, Value, Value]:
    """Span of the bearings, distance of the pinion from their middle, diameter of its shaft [m]."""
    station = pinion.given("station", "x")
    if isinstance(station, Unknown):
        return station, station, station
    shaft = design.subjects.the("shaft", str(pinion.raw("shaft")))
    behind, ahead = _neighbours(design, shaft, station)
    return (
        compute(iso_face_load.distance_between, behind, ahead),
        compute(iso_face_load.offset_from_middle, station, behind, ahead),
        _diameter_at(shaft, station),
    )


def _pinion(pair: Pair) -> Wheel:
    counts = (pair.driver.teeth, pair.driven.teeth)
    if all(isinstance(each, Known) for each in counts):
        driver, driven = (each.number for each in counts if isinstance(each, Known))
        return pair.driven if driven < driver else pair.driver
    return pair.driver


def _neighbours(design: Design, shaft: Subject, station: Known) -> tuple[Value, Value]:
    """Stations of the nearest bearings behind and ahead of a station on a shaft."""
    on_shaft = [each for each in design.subjects.all("bearing") if each.raw("shaft") == shaft.name]
    stations = [each.given("station", "x") for each in on_shaft]
    known = [each for each in stations if isinstance(each, Known)]
    behind = [each for each in known if each.number < station.number]
    ahead = [each for each in known if each.number > station.number]
    none = Unknown(
        tuple(each.place("station") for each in on_shaft if each.raw("station") is None),
        f"the gear at {1e3 * station.number:g} mm on {shaft.label} does not stand between bearings",
    )
    return (
        max(behind, key=lambda each: each.number) if behind else none,
        min(ahead, key=lambda each: each.number) if ahead else none,
    )


def _diameter_at(shaft: Subject, station: Known) -> Value:
    """Outside diameter of the shaft under the middle of the gear [m]."""
    for number, section in enumerate(shaft.raw("sections") or ()):
        start, end, outside = section.from_, section.to, section.outside
        if start is None or end is None or outside is None:
            continue
        if start.value <= station.number <= end.value:
            place = (*shaft.place("sections"), number, "outside")
            return Known(outside.value, "m", "d_sh", path=place)
    return Unknown((shaft.place("sections"),))
