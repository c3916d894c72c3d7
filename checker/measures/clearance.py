"""Room between parts on neighbouring shafts: what turns or sits on one must clear the other."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import clearance, torsional_parts
from checker.spec.subject import Subject
from checker.train.bearing_size import outside, width


@dataclass(frozen=True, slots=True)
class _Envelope:
    """A part as a cylinder about the axis of its shaft."""

    subject: Subject
    shaft: str
    start: Value
    end: Value
    radius: Value


@measure("bearing", "", "whether anything stands beside the bearing on another shaft")
def has_neighbour(design: Design, bearing: Subject) -> Value:
    """Whether a bearing, gear or shaft section of another axis stands beside it."""
    return _stands_beside(_least_gap(design, _of_bearing(bearing)))


@measure("gear", "", "whether anything stands beside the gear on another shaft")
def gear_has_neighbour(design: Design, gear: Subject) -> Value:
    """Whether a bearing, shaft section or gear not mated stands beside it."""
    return _stands_beside(_least_gap(design, _of_gear(design, gear)))


def _stands_beside(gap: Value | None) -> Known:
    return Known(gap is not None, "", "beside", origin="parts that overlap along their axes")


@measure("bearing", "m", "room between the bearing and the parts on other shafts", at="station")
def room(design: Design, bearing: Subject) -> Value:
    """Least gap to a bearing, gear or shaft section of another axis beside it."""
    return _or_nothing(_least_gap(design, _of_bearing(bearing)))


@measure("gear", "m", "room between the gear and the parts on other shafts", at="station")
def gear_room(design: Design, gear: Subject) -> Value:
    """Least gap to a bearing or shaft section of another axis beside it, and to gears not mated."""
    return _or_nothing(_least_gap(design, _of_gear(design, gear)))


def _or_nothing(gap: Value | None) -> Value:
    return Unknown(because="nothing stands beside it on another shaft") if gap is None else gap


def _of_bearing(bearing: Subject) -> _Envelope:
    station, along = bearing.given("station", "x"), width(bearing)
    return _Envelope(
        bearing,
        str(bearing.raw("shaft")),
        compute(clearance.start, station, along),
        compute(clearance.end, station, along),
        compute(torsional_parts.radius, outside(bearing)),
    )


def _of_gear(design: Design, gear: Subject) -> _Envelope:
    station, width = gear.given("station", "x"), gear.given("face_width", "b")
    return _Envelope(
        gear,
        str(gear.raw("shaft")),
        compute(clearance.start, station, width),
        compute(clearance.end, station, width),
        compute(torsional_parts.radius, design.wheels[gear.name].tip_diameter("high")),
    )


def _of_sections(shaft: Subject) -> list[_Envelope]:
    found = []
    for index, part in enumerate(shaft.raw("sections") or ()):
        section = Subject("shaft", shaft.name, (*shaft.place("sections"), index), part)
        found.append(
            _Envelope(
                section,
                shaft.name,
                section.given("from", "x₁"),
                section.given("to", "x₂"),
                compute(torsional_parts.radius, section.given("outside", "D")),
            )
        )
    return found


def _others(design: Design, own: _Envelope) -> list[_Envelope]:
    subjects = design.subjects
    every = [
        *(_of_bearing(each) for each in subjects.all("bearing")),
        *(_of_gear(design, each) for each in subjects.all("gear")),
        *(section for each in subjects.all("shaft") for section in _of_sections(each)),
    ]
    mates = {
        name
        for mesh in subjects.spec.meshes.values()
        for name in (mesh.driver, mesh.driven)
        if own.subject.kind == "gear" and own.subject.name in (mesh.driver, mesh.driven)
    }
    return [
        each
        for each in every
        if each.shaft != own.shaft
        and not (each.subject.kind == "gear" and each.subject.name in mates)
    ]


def _least_gap(design: Design, own: _Envelope) -> Value | None:
    """The least gap of a part, at best that to parts with size and place; ``None`` without any."""
    unknown: list[Unknown] = []
    gaps: list[Known] = []
    for other in _others(design, own):
        gap = _gap(design, own, other)
        if isinstance(gap, Unknown):
            unknown.append(gap)
        elif gap is not None:
            gaps.append(gap)
    least = min(gaps, key=lambda each: each.number, default=None)
    if unknown:
        missing = merged(unknown)
        return Unknown(missing.missing, missing.because, at_best=least)
    return least


def _gap(design: Design, own: _Envelope, other: _Envelope) -> Value | None:
    """Gap between two parts; ``None`` where they stand on one axis or not side by side."""
    distance = _distance(design, own.shaft, other.shaft)
    values = (distance, own.start, own.end, own.radius, other.start, other.end, other.radius)
    unknown = [each for each in values if isinstance(each, Unknown)]
    if unknown:
        return merged(unknown)
    numbers = [each.number for each in values if isinstance(each, Known)]
    if numbers[0] == 0.0 or numbers[1] >= numbers[5] or numbers[4] >= numbers[2]:
        return None
    return compute(clearance.gap, distance, own.radius, other.radius)


def _distance(design: Design, one: str, other: str) -> Value:
    axes = [
        design.subjects.the("shaft", name).given(f"centre.{way}", symbol)
        for name, which in ((one, "₁"), (other, "₂"))
        for way, symbol in (("right", f"y{which}"), ("up", f"z{which}"))
    ]
    return compute(clearance.axis_distance, *axes)
