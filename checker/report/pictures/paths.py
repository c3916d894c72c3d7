"""The ways of vented air and of oil, with their pressures and flows."""

from checker.known import Unknown
from checker.measures import flows
from checker.measures.design import Design
from checker.measures.flows import VentLine
from checker.report.pictures.chart import (
    WIDTH,
    Axis,
    Drawing,
    identifier,
    reach,
    shortened,
    tick_text,
)
from checker.report.pictures.oil_ways import draw_ways, way_words
from checker.report.pictures.picture import Picture
from checker.spec.subject import Subject
from checker.spec.units import show

_LEFT, _RIGHT, _FIELD = 52.0, 560.0, 150.0


def vent_and_oil_paths(design: Design, point: Subject) -> Picture | None:
    """The vent line as it rises and falls, and every way of the oil, at an operation point."""
    vent, ways = flows.vent_line(design, point), flows.oil_ways(design, point)
    if isinstance(vent, Unknown) and (isinstance(ways, Unknown) or not ways):
        return None
    name = identifier("vent-and-oil", design.subjects.ratio_set)
    drawing = Drawing(name, f"Vent and oil at {point.name}")
    y, said = 8.0, []
    if not isinstance(vent, Unknown):
        y = _vent(drawing, vent, y)
        said.append(_vent_words(vent))
    if not isinstance(ways, Unknown) and ways:
        y = draw_ways(drawing, ways, y + 14.0)
        said += [f"Oil from {way.source} to {way.to}: {way_words(way)}." for way in ways]
    drawing.height = y + 8.0
    return drawing.picture(" ".join(said))


def _vent(drawing: Drawing, vent: VentLine, top: float) -> float:
    """The line to scale, along and up, with a pressure at each of its nodes."""
    way = "out" if vent.flow >= 0.0 else "in"
    words = f"Vent: {show(abs(vent.flow), 'm3/s')} of air {way}, by height over distance"
    drawing.text(2.0, top + 10.0, words, bold=True)
    top += 44.0
    x = Axis(0.0, max(node.along for node in vent.nodes) or 1.0, _LEFT, _RIGHT)
    y = Axis(*reach([node.height for node in vent.nodes], zero=False), top + _FIELD, top)
    drawing.upright(y, _LEFT, _RIGHT, "m", 4, key="height")
    points = [(x.at(node.along), y.at(node.height)) for node in vent.nodes]
    drawing.path(points, colour="steel", width=8.0)
    drawing.path(points, colour="series-1", width=1.5, key="line")
    listed = [f"{index}   {words}" for index, words in enumerate(_node_words(vent), 1)]
    with drawing.group("nodes"):
        for number, (right, down) in enumerate(points, 1):
            drawing.mark("disc", right, down, colour="series-1", size=8.0)
            drawing.text(
                right, down + 4.0, str(number), colour="ground", anchor="middle", bold=True
            )
    drawing.across(x, top + _FIELD, "m", key="along")
    row = top + _FIELD + 38.0
    for line in listed:
        drawing.text(_LEFT, row, shortened(line, WIDTH - _LEFT))
        row += 16.0
    return row


def _node_words(vent: VentLine) -> list[str]:
    """Each node with its pressure over the air outside, the last with where it leads."""
    words = []
    for node in vent.nodes:
        bore = f", bore {show(node.bore, 'm')}" if node.bore else ""
        words.append(f"{node.name}: {_pressure(node.pressure)}{bore}")
    words[-1] += f"; leads to {vent.to}"
    return words


def _pressure(pascals: float) -> str:
    """A pressure over the air outside; what is nothing but rounding is nothing."""
    rounded = round(pascals, 3) + 0.0
    return f"{tick_text(round(rounded, 2))} Pa" if abs(rounded) < 100.0 else show(rounded, "Pa")


def _vent_words(vent: VentLine) -> str:
    return f"{show(vent.flow, 'm3/s')} of air leave the case. " + ". ".join(_node_words(vent)) + "."
