"""Measures of the vent: what it breathes, what pressure that leaves, and room for the oil."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, all_known, assumed, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.bounded import more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.stated import stated
from checker.mechanics import air, expansion, kinematics, line_liquid, oil, seal, transfer, vent
from checker.mechanics.equation import OutOfRange, equation_of
from checker.spec.subject import Subject

_WARMING = assumed(
    10.0 / 60.0,
    "K/s",
    "dT/dt",
    "common practice, no source: oil warms or cools by 10 K in a minute at most",
)
_CLOSED_AT = assumed(0.0, "m", "z_0", "a case without vent is closed at sea level, standard day")
_LEAST_AIR = assumed(0.06, "1", "a", "SAE 460209: gear trains entrain 6 to 20 % of air")
_MOST_AIR = assumed(0.20, "1", "a", "SAE 460209: gear trains entrain 6 to 20 % of air")


@measure("drive", "", "whether the case has no way to breathe")
def is_sealed(design: Design, drive: Subject) -> Value:
    """Whether the spec says that there is no vent, or that it or its catch bottle is closed."""
    present = design.subjects.presence("vent")
    the_vent = design.subjects.the("vent")
    if present is None:
        return Unknown((the_vent.path,))
    if not present:
        return Known(True, "", "sealed", path=the_vent.path)
    ends = the_vent.given("to", "vent")
    if isinstance(ends, Unknown):
        return ends
    if ends.value != "catch bottle":
        return Known(ends.value == "closed", "", "sealed", path=ends.path)
    bottle_breathes = the_vent.given("catch_bottle.vented")
    if isinstance(bottle_breathes, Unknown):
        return bottle_breathes
    return Known(not bottle_breathes.value, "", "sealed", inputs=(ends, bottle_breathes))


@varying_measure("drive", "Pa", "pressure in the case as if it had no vent", at="name")
def sealed_pressure(design: Design, drive: Subject, point: Subject) -> Value:
    """Δp, air warmed and squeezed by the oil less the air outside [Pa]; air alone at best."""
    lubrication = design.subjects.the("lubrication")
    filled = lubrication.given("fill_temperature", "T_0")
    hotter = design.measure("hotter_oil", lubrication, point)
    return more_is_worse(hotter, lambda oil: _sealed(design, point, filled, oil))


def _sealed(design: Design, point: Subject, filled: Value, running: Value) -> Value:
    """Δp of the sealed case with oil of a temperature [Pa]."""
    lubrication = design.subjects.the("lubrication")
    closed = compute(air.pressure, _CLOSED_AT)
    outside = compute(air.pressure, point.given("altitude", "z"))
    growth = compute(oil.thermal_growth, properties.density_15(design), filled, running)
    inside = compute(
        vent.sealed_case_pressure,
        closed,
        filled,
        running,
        lubrication.given("capacity", "V"),
        lubrication.given("volume", "V_oil"),
        growth,
    )
    gauge = compute(vent.gauge_pressure, inside, outside)
    if isinstance(gauge, Known):
        return gauge
    of_air = compute(vent.sealed_air_pressure, closed, filled, running)
    at_best = compute(vent.gauge_pressure, of_air, outside)
    if isinstance(at_best, Unknown) or at_best.number < 0.0:
        return gauge
    return Unknown(gauge.missing, gauge.because, at_best)


@varying_measure("drive", "1", "pressure of the sealed case over what its weakest seal bears")
def sealed_pressure_over_lip(design: Design, drive: Subject, point: Subject) -> Value:
    """Greatest share of a seal's limit that the sealed case would take."""
    return worst_share(design, design.measure("sealed_pressure", drive, point), point)


@varying_measure("drive", "Pa", "pressure in the case over the air outside")
def inside_pressure(design: Design, drive: Subject, point: Subject) -> Value:
    """p_in, by the vent: outlet pressure and line drop; sealed, or as the crankcase has it [Pa]."""
    sealed = design.measure("is_sealed", drive)
    if isinstance(sealed, Unknown):
        return sealed
    if sealed.value:
        return design.measure("sealed_pressure", drive, point)
    the_vent = design.subjects.the("vent")
    drop = design.measure("line_drop", the_vent, point)
    return compute(vent.case_pressure, design.measure("end_pressure", the_vent, point), drop)


@varying_measure("vent", "Pa", "pressure where the line ends, over the air outside", at="to")
def end_pressure(design: Design, the_vent: Subject, point: Subject) -> Value:
    """p_out, of the crankcase or of the stream that the outlet stands in [Pa]."""
    ends = the_vent.given("to")
    if isinstance(ends, Unknown):
        return ends
    if ends.value == "crankcase":
        return crankcase_pressure(design, point)
    facing = the_vent.given("outlet_faces", "outlet faces")
    if isinstance(facing, Known) and facing.value == "sheltered":
        return Known(0.0, "Pa", "p_out", origin="in the still air of a cowling", inputs=(facing,))
    altitude = compute(air.pressure, point.given("altitude", "z"))
    density = compute(air.density, altitude, point.given("air_temperature", "T_air"))
    stream = compute(
        transfer.slipstream_speed,
        point.given("airspeed", "w"),
        point.given("thrust", "T"),
        design.subjects.the("propeller").given("diameter", "D"),
        density,
    )
    return compute(transfer.outlet_pressure, facing, stream, density)


def crankcase_pressure(design: Design, point: Subject) -> Value:
    """Gauge pressure in the engine crankcase at a point [Pa]; suction is negative."""
    here = point.given("crankcase_pressure", "p_crankcase")
    if isinstance(here, Known):
        return here
    return design.subjects.the("engine").given("crankcase.pressure", "p_crankcase")


@measure("vent", "m", "height of the vent's mouth above the highest oil level", at="inlet_height")
def inlet_above_oil(design: Design, the_vent: Subject) -> Value:
    """Δh, mouth of the vent over the oil [m]."""
    level = design.measure("highest_oil", design.subjects.the("lubrication"))
    mouth = the_vent.given("inlet_height", "h_mouth")
    return more_is_worse(level, lambda oil: compute(vent.height_above_oil, mouth, oil))


@measure("vent", "m", "depth of the deepest low loop of the line", at="path")
def trapped_depth(design: Design, the_vent: Subject) -> Value:
    """h, depth of liquid that the line keeps [m]."""
    rises = along(the_vent, ("rise", "Δz"))
    if isinstance(rises, Unknown):
        return rises
    depth = line_liquid.trapped_depth(tuple(each.number for each in rises))
    return Known(
        depth, "m", "h", origin=equation_of(line_liquid.trapped_depth), inputs=tuple(rises)
    )


@measure("vent", "m", "smallest bore of the line", at="path")
def smallest_bore(design: Design, the_vent: Subject) -> Value:
    """d, smallest inside diameter along the line [m]."""
    bores = along(the_vent, ("bore", "d"))
    if isinstance(bores, Unknown):
        return bores
    return min(bores, key=lambda each: each.number)


@varying_measure("vent", "m3/s", "air that the vent passes")
def breathing(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Q, breathing by climb and warming, with what the case is fed besides; out is positive."""
    lubrication = design.subjects.the("lubrication")
    fill = lubrication.given("volume", "V_oil")
    room = compute(expansion.air_volume, lubrication.given("capacity", "V"), fill)
    outside = compute(air.pressure, point.given("altitude", "z"))
    density = compute(air.density, outside, point.given("air_temperature", "T_air"))
    climb = compute(
        vent.climb_breathing_flow, room, density, outside, point.given("vertical_speed", "w")
    )
    running = point.given("oil_temperature", "T")
    growth = compute(oil.thermal_expansion, properties.density_15(design), running)
    warming = compute(vent.warm_up_breathing_flow, room, running, fill, growth, _WARMING)
    return compute(vent.vent_flow, climb, warming, point.given("case_air_flow", "Q_case"))


@varying_measure("vent", "Pa", "pressure drop along the line", at="path")
def line_drop(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Δp from the case to the end of the line; negative while it breathes in [Pa]."""
    return line_drop_of(the_vent, point, design.measure("breathing", the_vent, point))


@varying_measure("vent", "1", "line drop over what the weakest seal bears", at="path")
def line_drop_over_lip(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Greatest share of a seal's limit that the line drop takes."""
    return worst_share(design, design.measure("line_drop", the_vent, point), point)


@measure("vent", "", "whether the crankcase pressure is stated with its evidence")
def crankcase_pressure_shown(design: Design, the_vent: Subject) -> Value:
    """True where pressure and evidence are stated; there is no default for either."""
    engine = design.subjects.the("engine")
    return stated(engine, "crankcase.pressure", "crankcase.pressure_evidence")


@varying_measure("vent", "", "whether the crankcase pressure of the point is stated", at="to")
def crankcase_pressure_here(design: Design, the_vent: Subject, point: Subject) -> Value:
    """True where the operation point itself states it."""
    return stated(point, "crankcase_pressure")


@measure("vent", "", "whether a pump scavenges the crankcase it is vented into")
def crankcase_is_scavenged(design: Design, the_vent: Subject) -> Value:
    """Whether a dry-sump pump draws on the crankcase."""
    return design.subjects.the("engine").given("crankcase.scavenged")


@measure("vent", "", "what the oils that meet in the crankcase are to each other")
def oils_that_meet(design: Design, the_vent: Subject) -> Value:
    """same oil, same class, clash or never mix."""
    return properties.oils_together(design)


@measure("vent", "1", "catch bottle over the oil of the drive", at="catch_bottle.volume")
def bottle_share(design: Design, the_vent: Subject) -> Value:
    """Volume of the catch bottle over that of the oil."""
    return compute(
        kinematics.quotient,
        the_vent.given("catch_bottle.volume", "V_bottle"),
        design.subjects.the("lubrication").given("volume", "V_oil"),
    )


@measure("lubrication", "1", "air over the oil over the whole capacity", at="capacity")
def expansion_share(design: Design, lubrication: Subject) -> Value:
    """V_air / V, expansion space as the regulations count it."""
    return compute(
        expansion.air_share,
        lubrication.given("capacity", "V"),
        lubrication.given("volume", "V_oil"),
    )


@measure("lubrication", "1", "expansion space over the least that the oil needs", at="capacity")
def expansion_over_least_need(design: Design, lubrication: Subject) -> Value:
    """e / e_req with the least air that gear trains entrain."""
    return _expansion_over_need(design, lubrication, _LEAST_AIR)


@measure("lubrication", "1", "expansion space over the most that the oil needs", at="capacity")
def expansion_over_most_need(design: Design, lubrication: Subject) -> Value:
    """e / e_req with the most air that gear trains entrain."""
    return _expansion_over_need(design, lubrication, _MOST_AIR)


def _expansion_over_need(design: Design, lubrication: Subject, entrained: Known) -> Value:
    space = compute(
        expansion.expansion_space,
        lubrication.given("capacity", "V"),
        lubrication.given("volume", "V_oil"),
    )

    def over_need(hottest: Value) -> Value:
        growth = compute(
            oil.thermal_growth,
            properties.density_15(design),
            lubrication.given("fill_temperature", "T_1"),
            hottest,
        )
        needed = compute(expansion.expansion_space_required, growth, entrained)
        return compute(kinematics.quotient, space, needed)

    return more_is_worse(design.measure("hottest_oil", lubrication), over_need)


def worst_share(design: Design, pressure: Value, point: Subject) -> Value:
    """Greatest share of a limit over all seals; at best, that of the seals that can be computed."""
    seals = design.subjects.all("seal")
    if not seals:
        return Unknown((("seals",),))
    shares = [_share(pressure, design.measure("pressure_borne", each, point)) for each in seals]
    unknown = [share for share in shares if isinstance(share, Unknown)]
    best = [share if isinstance(share, Known) else share.at_best for share in shares]
    worst = max((each for each in best if each), key=lambda each: each.number, default=None)
    if worst is not None and not unknown:
        return worst
    missing = merged(unknown)
    return Unknown(missing.missing, missing.because, worst)


def _share(pressure: Value, borne: Value) -> Value:
    share = compute(seal.pressure_share, pressure, borne)
    if isinstance(share, Known) or isinstance(pressure, Known) or pressure.at_best is None:
        return share
    at_best = compute(seal.pressure_share, pressure.at_best, borne)
    return Unknown(share.missing, share.because, at_best if isinstance(at_best, Known) else None)


@dataclass(frozen=True, slots=True)
class Line:
    """The vent line with what runs through it.

    Attributes:
        segments: its stretches.
        density: of the air in it [kg/m3].
        viscosity: of that air [Pa s].
        inputs: the values all this comes from.
    """

    segments: tuple[vent.Segment, ...]
    density: float
    viscosity: float
    inputs: tuple[Known, ...]


def line_of(the_vent: Subject, point: Subject) -> Line | Unknown:
    """The vent line at a point, with air as warm as the oil."""
    lengths = along(the_vent, ("bore", "d"), ("length", "L"), ("loss_coefficient", "ζ"))
    running = point.given("oil_temperature", "T")
    density = compute(air.density, compute(air.pressure, point.given("altitude", "z")), running)
    viscosity = compute(air.dynamic_viscosity, running)
    if isinstance(lengths, Unknown) or not (
        isinstance(density, Known) and isinstance(viscosity, Known)
    ):
        stretches = [lengths] if isinstance(lengths, Unknown) else lengths
        return all_known(*stretches, density, viscosity) or Unknown()
    segments = tuple(
        vent.Segment(*(each.number for each in lengths[start : start + 3]))
        for start in range(0, len(lengths), 3)
    )
    return Line(segments, density.number, viscosity.number, (*lengths, density, viscosity))


def line_drop_of(the_vent: Subject, point: Subject, flow: Value) -> Value:
    """Δp along the line of a flow at a point [Pa]; negative where it runs in."""
    line = line_of(the_vent, point)
    if isinstance(line, Unknown) or isinstance(flow, Unknown):
        return merged([each for each in (line, flow) if isinstance(each, Unknown)])
    try:
        drop = vent.line_pressure_drop(flow.number, line.segments, line.density, line.viscosity)
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    printed = equation_of(vent.line_pressure_drop)
    inputs = (flow, *line.inputs)
    return Known(drop, printed.unit, printed.symbol, origin=printed, inputs=inputs)


def along(the_vent: Subject, *fields: tuple[str, str]) -> list[Known] | Unknown:
    """Fields of every stretch of the line in turn; unknown where any of them is."""
    path = the_vent.raw("path")
    place = the_vent.place("path")
    if not path:
        return Unknown((place,))
    values = [
        Subject("stretch", each.name or "", (*place, index), each).given(field, symbol)
        for index, each in enumerate(path)
        for field, symbol in fields
    ]
    missing = [value for value in values if isinstance(value, Unknown)]
    return merged(missing) if missing else [value for value in values if isinstance(value, Known)]
