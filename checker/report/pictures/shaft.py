"""Bending moment and torque along a shaft, with what stands on it."""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from checker.known import Known, Unknown
from checker.measures.design import Design
from checker.report.pictures.chart import (
    SMALL,
    Axis,
    Drawing,
    Point,
    identifier,
    reach,
    rows_apart,
    shortened,
    text_width,
)
from checker.report.pictures.picture import Picture
from checker.spec.subject import Subject
from checker.spec.units import show
from checker.train.load_cases import LoadCase

_LEFT, _RIGHT = 62.0, 690.0
_FIELD = 100.0
_MM = 1000.0
_STEPS = 12
_BESIDE = 1e-7
"""How far from a station the moment is asked for, to see both sides of a couple [m]."""

Along = Callable[[float], float]


@dataclass(frozen=True, slots=True)
class _Part:
    """What stands on the shaft: a support, a gear, the propeller."""

    name: str
    shape: str
    station: float


def shaft_diagrams(design: Design, shaft: Subject, point: Subject) -> Picture | None:
    """Moment and torque along a shaft at an operation point; ``None`` where they are unknown."""
    case = design.reactions.cases.points[point.name]
    stations = design.reactions.diagram(shaft.name, case)
    torque = case.torque(shaft.name)
    if isinstance(stations, Unknown) or isinstance(torque, Unknown):
        return None
    parts = _parts(design, shaft, case)
    places = sorted({each.station for each in parts} | {each[0] for each in stations})
    title = f"Shaft {shaft.name} at {point.name}: bending moment and torque"
    drawing = Drawing(identifier("shaft", design.subjects.ratio_set, shaft.name), title)
    air = 0.06 * (places[-1] - places[0])
    x = Axis((places[0] - air) * _MM, (places[-1] + air) * _MM, _LEFT, _RIGHT)
    y = _stand(drawing, x, parts) + 44.0
    moments = _moments(design, shaft, case, [each[0] for each in stations])
    bending = _field(drawing, x, y, "bending", moments)
    for station, moment, _ in stations:
        drawing.mark("disc", x.at(station * _MM), bending.at(moment), size=2.5)
    _worst(drawing, x, bending, [(each[0], each[1]) for each in stations])
    y += _FIELD + 46.0
    turning = _torques(design, shaft, torque, places)
    level = _field(drawing, x, y, "torque", turning)
    _worst(drawing, x, level, turning)
    drawing.across(x, y + _FIELD, "mm")
    drawing.height = y + _FIELD + 24.0
    return drawing.picture(_words(title, parts, stations))


def greatest_point(design: Design, shaft: Subject) -> Subject | None:
    """The operation point at which a shaft bends the most; ``None`` where none is known."""
    worst: tuple[float, Subject] | None = None
    for point in design.points:
        found = design.reactions.diagram(shaft.name, design.reactions.cases.points[point.name])
        if isinstance(found, Unknown):
            continue
        most = max((moment for _, moment, _ in found), default=0.0)
        if worst is None or most > worst[0]:
            worst = most, point
    return None if worst is None or worst[0] <= 0.0 else worst[1]


def _parts(design: Design, shaft: Subject, case: LoadCase) -> list[_Part]:
    """Supports where they act, gears where they are stated, and what else loads the shaft."""
    supports = design.reactions.supports(shaft.name)
    parts = []
    if not isinstance(supports, Unknown):
        for support in supports:
            name = " and ".join(each.name for each in support.members)
            parts.append(_Part(name, "triangle", support.station.number))
    for gear in design.subjects.all("gear"):
        station = gear.given("station")
        if gear.raw("shaft") == shaft.name and isinstance(station, Known):
            parts.append(_Part(gear.name, "bar", station.number))
    there = {round(part.station, 6) for part in parts}
    for load in design.reactions.stations(shaft.name, case):
        if round(load.number, 6) not in there:
            there.add(round(load.number, 6))
            is_end = shaft.name == design.train.last
            parts.append(_Part("propeller" if is_end else "load", "diamond", load.number))
    return sorted(parts, key=lambda part: part.station)


def _stand(drawing: Drawing, x: Axis, parts: list[_Part]) -> float:
    """The shaft as a line with what stands on it; the height that is used up."""
    names = [shortened(part.name, 200.0) for part in parts]
    spans = []
    for part, name in zip(parts, names, strict=True):
        half, middle = text_width(name) / 2.0, x.at(part.station * _MM)
        spans.append((middle - half, middle + half))
    rows = rows_apart(spans)
    y = 26.0 + 14.0 * max(rows, default=0)
    with drawing.group("parts"):
        drawing.path([(x.start, y), (x.end, y)], colour="steel", width=7.0)
        for part, name, row in zip(parts, names, rows, strict=True):
            at = x.at(part.station * _MM)
            drawing.text(at, y - 14.0 - 14.0 * row, name, anchor="middle", size=SMALL)
            if part.shape == "triangle":
                drawing.mark("triangle", at, y + 9.0, size=5.0)
            else:
                size = 8.0 if part.shape == "bar" else 6.0
                drawing.mark(part.shape, at, y, colour="series-1", size=size)
    y += 30.0
    x0 = _LEFT
    for shape, words in (
        ("triangle", "bearing"),
        ("bar", "gear"),
        ("diamond", "propeller or load"),
    ):
        drawing.mark(shape, x0, y - 4.0, colour="ink" if shape == "triangle" else "series-1")
        drawing.text(x0 + 10.0, y, words, colour="faint")
        x0 += 74.0
    return y


def _moments(design: Design, shaft: Subject, case: LoadCase, stations: list[float]) -> list[Point]:
    """The moment from station to station, on both sides of each."""
    line = []
    for start, end in pairwise(stations):
        steps = [
            start + _BESIDE + (end - start - 2.0 * _BESIDE) * i / _STEPS for i in range(_STEPS + 1)
        ]
        for station in steps:
            moment = design.reactions.moment(shaft.name, case, Known(station, "m", "x"))
            if isinstance(moment, Known):
                line.append((station, moment.number))
    return line


def _torques(design: Design, shaft: Subject, torque: Known, places: list[float]) -> list[Point]:
    """The torque between each two places, as steps."""
    line: list[Point] = []
    for start, end in pairwise(places):
        middle = Known((start + end) / 2.0, "m", "x")
        passed = design.reactions.torque_at(shaft.name, torque, middle)
        if isinstance(passed, Known):
            line += [(start, passed.number), (end, passed.number)]
    return line


def _field(drawing: Drawing, x: Axis, top: float, key: str, line: list[Point]) -> Axis:
    """A filled field of a value along the shaft; its axis."""
    axis = Axis(*reach([value for _, value in line] or [0.0]), top + _FIELD, top)
    points = [(x.at(station * _MM), axis.at(value)) for station, value in line]
    drawing.text(_LEFT, top - 8.0, f"{key}, N m", bold=True)
    if points:
        base = axis.at(0.0)
        outline = [(points[0][0], base), *points, (points[-1][0], base)]
        drawing.path(outline, width=0.0, closed=True, fill="steel")
    drawing.upright(axis, _LEFT, _RIGHT, "", 4, key=f"y-{key}")
    if points:
        drawing.path(points, colour="series-1", width=2.0, key=key)
    return axis


def _worst(drawing: Drawing, x: Axis, axis: Axis, line: list[Point]) -> None:
    """The largest value, written at its place."""
    if not line:
        return
    station, value = max(line, key=lambda each: abs(each[1]))
    where = x.at(station * _MM)
    near_end = where > _RIGHT - 60.0
    drawing.text(
        where - 6.0 if near_end else where + 6.0,
        axis.at(value) + 14.0,
        show(value, "N m"),
        anchor="end" if near_end else "start",
        over=True,
    )


def _words(title: str, parts: list[_Part], stations: list[tuple[float, float, float]]) -> str:
    stand = ", ".join(f"{part.name} at {show(part.station, 'm')}" for part in parts)
    figures = "; ".join(
        f"at {show(x, 'm')} {show(round(moment, 6), 'N m')} and {show(torque, 'N m')}"
        for x, moment, torque in stations
    )
    return f"{title}. On it: {stand}. Moment and torque: {figures}."
