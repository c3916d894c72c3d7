"""What flows at an operation point, as plain numbers for pictures: heat, vented air, oil.

The numbers are those of the measures; where one of them is unknown, so is the whole, and says why.
"""

from dataclasses import dataclass

from checker.known import Known, Unknown, merged
from checker.measures.design import Design
from checker.measures.heat import heat_parts, steady
from checker.measures.supply_network import all_ways, way_runs
from checker.measures.vent import along, line_of
from checker.mechanics.equation import OutOfRange
from checker.mechanics.vent import stretch_drops
from checker.spec.subject import Subject


@dataclass(frozen=True, slots=True)
class Heat:
    """Heat of one part or on one way.

    Attributes:
        name: label of the part, with churning or windage of a gear; or case, tank, joint,
            engine oil, cooler.
        watts: heat into the oil of a source, out of it for a sink [W]; negative the other way.
    """

    name: str
    watts: float


@dataclass(frozen=True, slots=True)
class HeatBalance:
    """The heat of a point in its steady state on the hot day.

    Attributes:
        oil_temperature: of the oil [K].
        sources: losses of the parts.
        sinks: where it goes; the sums of both are equal.
    """

    oil_temperature: float
    sources: tuple[Heat, ...]
    sinks: tuple[Heat, ...]


@dataclass(frozen=True, slots=True)
class VentNode:
    """A place of the vent line.

    Attributes:
        name: case, or the stretch of line that ends here.
        along: distance from the case along the line [m].
        height: over the case bottom [m].
        bore: of the stretch that ends here [m]; 0 for the case.
        pressure: over the air outside [Pa].
    """

    name: str
    along: float
    height: float
    bore: float
    pressure: float


@dataclass(frozen=True, slots=True)
class VentLine:
    """The vent of a point.

    Attributes:
        flow: of air out of the case [m3/s]; negative where it comes in.
        to: where the line ends, as stated.
        nodes: from the case outwards; the last is the outlet, its exit loss taken off.
        end_pressure: where the line ends, over the air outside [Pa].
    """

    flow: float
    to: str
    nodes: tuple[VentNode, ...]
    end_pressure: float


@dataclass(frozen=True, slots=True)
class OilWay:
    """A way of the oil.

    Attributes:
        source: where it comes from, as stated.
        to: where it leads.
        kind: how, as stated.
        flow: m3/s; ``None`` where none is stated, as for dip and splash.
        runs: whether it has oil at the point; ``None`` where that is not shown.
    """

    source: str
    to: str
    kind: str
    flow: float | None
    runs: bool | None


def heat_balance(design: Design, point: Subject) -> HeatBalance | Unknown:
    """Sources and sinks of heat at a point, on the hot day."""
    temperature, found = steady(design, point, True), heat_parts(design, point)
    if isinstance(temperature, Unknown):
        return temperature
    if isinstance(found, Unknown):
        return found
    balance, parts = found
    return HeatBalance(
        temperature.number,
        tuple(Heat(name, parts[name].number) for name in balance.losses),
        tuple(Heat(name, parts[name].number) for name in balance.sinks),
    )


def vent_line(design: Design, point: Subject) -> VentLine | Unknown:
    """Pressure at every node of the vent line at a point."""
    the_vent = design.subjects.the("vent")
    flow = design.measure("breathing", the_vent, point)
    inside = design.measure("inside_pressure", design.subjects.the("drive"), point)
    mouth, ends = the_vent.given("inlet_height"), the_vent.given("to")
    line, rises = line_of(the_vent, point), along(the_vent, ("rise", "Δz"))
    missing = [
        each for each in (flow, inside, mouth, ends, line, rises) if isinstance(each, Unknown)
    ]
    if missing or not (isinstance(flow, Known) and isinstance(inside, Known)):
        return merged(missing)
    if isinstance(line, Unknown) or isinstance(rises, Unknown) or isinstance(mouth, Unknown):
        return merged(missing)
    try:
        drops = stretch_drops(flow.number, line.segments, line.density, line.viscosity)
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    names = [each.name or "stretch" for each in the_vent.raw("path")]
    nodes = [VentNode("case", 0.0, mouth.number, 0.0, inside.number)]
    for name, segment, rise, drop in zip(names, line.segments, rises, drops, strict=True):
        last = nodes[-1]
        nodes.append(
            VentNode(
                name,
                last.along + segment.length,
                last.height + rise.number,
                segment.bore,
                last.pressure - drop,
            )
        )
    return VentLine(flow.number, str(the_vent.raw("to")), tuple(nodes), nodes[-1].pressure)


def oil_ways(design: Design, point: Subject) -> tuple[OilWay, ...] | Unknown:
    """Every way of the oil, and whether it runs at a point in its attitude."""
    ways = all_ways(design)
    if isinstance(ways, Unknown):
        return ways
    return tuple(_oil_way(design, way, point) for way in ways)


def _oil_way(design: Design, way: Subject, point: Subject) -> OilWay:
    flow, runs = way.given("flow"), way_runs(design, way, point)
    return OilWay(
        str(way.raw("from") or ""),
        str(way.raw("to") or ""),
        str(way.raw("kind") or ""),
        flow.number if isinstance(flow, Known) else None,
        bool(runs.value) if isinstance(runs, Known) else None,
    )
