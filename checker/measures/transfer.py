"""Measures of what moves between the drive, the engine and the air: through vent and seals."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.bounded import more_is_worse
from checker.measures.design import Design
from checker.measures.losses import oil_flow
from checker.measures.registry import measure, varying_measure
from checker.measures.vent import along
from checker.mechanics import air, kinematics, line_liquid, oil, transfer, vent
from checker.mechanics import lubrication as oil_ways
from checker.mechanics.equation import OutOfRange, equation_of
from checker.spec.fields import NONE
from checker.spec.subject import Subject

_LIFTS_A_LIP = 1.0e3  # Pa from behind: what seals.lip-direction leaves to the garter spring


@varying_measure("vent", "m", "rise of the line beyond what the pressure lifts oil", at="path")
def lift_reserve(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Δh between the highest point of the line and the lift of oil, hot and light [m]."""
    pressure = compute(transfer.pressure_size, design.measure("end_pressure", the_vent, point))

    def reserve(hottest: Value) -> Value:
        density = compute(oil.density, properties.density_15(design), hottest)
        lift = compute(line_liquid.oil_lift, pressure, density)
        return compute(oil_ways.lift_reserve, _top(the_vent), lift)

    hottest = design.measure("hottest_oil", properties.lubrication(design))
    return more_is_worse(hottest, reserve)


@varying_measure("vent", "m3/s", "oil that the pressure draws along a wet line", at="path")
def siphoned(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Q_s of oil along the vent once its mouth is wet [m3/s]; most with hot, thin oil."""
    return more_is_worse(
        design.measure("hotter_oil", properties.lubrication(design), point),
        lambda running: _siphoned(design, the_vent, point, running),
    )


def _siphoned(design: Design, the_vent: Subject, point: Subject, running: Value) -> Value:
    pressure, top = design.measure("end_pressure", the_vent, point), _top(the_vent)
    density = compute(oil.density, properties.density_15(design), running)
    viscosity = properties.viscosity(design, running, "low")
    thin = compute(oil.dynamic_viscosity, viscosity, density)
    lines = along(the_vent, ("bore", "d"), ("length", "L"))
    values = (pressure, top, density, thin)
    known = [each for each in values if isinstance(each, Known)]
    if isinstance(lines, Unknown) or len(known) < len(values):
        return merged([each for each in (*values, lines) if isinstance(each, Unknown)])
    driving, rise, heavy, resisting = (each.number for each in known)
    bores = tuple(each.number for each in lines[::2])
    lengths = tuple(each.number for each in lines[1::2])
    try:
        flow = transfer.siphon_flow(driving, rise, heavy, resisting, bores, lengths)
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    printed = equation_of(transfer.siphon_flow)
    return Known(flow, "m3/s", printed.symbol, origin=printed, inputs=(*known, *lines))


@varying_measure("vent", "1", "share of the oil that a wet line moves in an hour", at="path")
def siphoned_share(design: Design, the_vent: Subject, point: Subject) -> Value:
    """x_h, oil that goes along the line in an hour over the fill."""
    fill = properties.lubrication(design).given("volume", "V_oil")
    moved = design.measure("siphoned", the_vent, point)
    return more_is_worse(moved, lambda flow: compute(transfer.share_in_an_hour, flow, fill))


@varying_measure("vent", "", "which way air goes between drive and crankcase", at="to")
def transferred(design: Design, the_vent: Subject, point: Subject) -> Value:
    """``out of the drive`` or ``into the drive``, by the flow of air in the line."""
    flow = design.measure("breathing", the_vent, point)
    if isinstance(flow, Unknown):
        return flow
    word = "out of the drive" if flow.number >= 0.0 else "into the drive"
    return Known(word, "", "transfer", inputs=(flow,))


@varying_measure("vent", "1", "air stated for the case over what the scavenge pump takes")
def stated_air_share(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Q_case over the air that the drains take beyond the oil, in proportion to the oil flow."""
    lubrication = properties.lubrication(design)
    ratio = design.measure("drain_share", lubrication)
    surplus = compute(vent.scavenged_air_flow, oil_flow(design, point), ratio)
    if isinstance(surplus, Known) and surplus.number == 0.0:
        return Known(1.0, "1", "Q_case/Q_s", origin="no air is scavenged", inputs=(surplus,))
    return compute(kinematics.quotient, point.given("case_air_flow", "Q_case"), surplus)


@measure("vent", "", "whether the case is pumped dry", at="path")
def is_scavenged(design: Design, the_vent: Subject) -> Value:
    """Whether a pump serves the drive and its oil rests apart from the case."""
    lubrication = properties.lubrication(design)
    system, reservoir = lubrication.given("system"), lubrication.raw("reservoir")
    if isinstance(system, Unknown) or reservoir is None:
        missing = Unknown((lubrication.place("reservoir"),)) if reservoir is None else None
        return merged([each for each in (system, missing) if isinstance(each, Unknown)])
    pumped = "pump" in str(system.value) and reservoir != NONE
    return Known(pumped, "", "scavenged", inputs=(system,))


@varying_measure("seal", "m3/s", "air that passes the seal, outwards positive", at="leak_gap")
def air_leak(design: Design, seal: Subject, point: Subject) -> Value:
    """Q_l of air; 0 under a lip that stays on the shaft [m3/s]."""
    running = point.given("oil_temperature", "T")
    density = compute(air.density, compute(air.pressure, point.given("altitude", "z")), running)
    return _leak(design, seal, point, density)


@varying_measure("seal", "m3/s", "oil that passes the wetted seal at most", at="leak_gap")
def oil_leak(design: Design, seal: Subject, point: Subject) -> Value:
    """Q_l of oil, outwards positive; 0 under a lip that stays on the shaft [m3/s]."""
    if seal.raw("kind") == "labyrinth":
        above = design.measure("height_over_oil", seal, point)
        if isinstance(above, Unknown):
            return above
        if above.number >= 0.0:
            return Known(0.0, "m3/s", "Q_l", origin="it stands above the oil", inputs=(above,))
    running = point.given("oil_temperature", "T")
    density = compute(oil.density, properties.density_15(design), running)
    return _leak(design, seal, point, density)


@varying_measure("seal", "1", "share of the oil that passes the seal in an hour", at="leak_gap")
def oil_leak_share(design: Design, seal: Subject, point: Subject) -> Value:
    """x_h, oil that a wetted gap passes either way in an hour over the fill."""
    fill = properties.lubrication(design).given("volume", "V_oil")
    return compute(transfer.share_in_an_hour, design.measure("oil_leak", seal, point), fill)


@measure("seal", "", "whether oil can stand on both sides of the seal", at="other_side")
def parts_two_oils(design: Design, seal: Subject) -> Value:
    """Whether the engine crankcase is beyond it."""
    beyond = seal.given("other_side")
    if isinstance(beyond, Unknown):
        return beyond
    return Known(beyond.value == "engine crankcase", "", "two boxes", inputs=(beyond,))


def _leak(design: Design, seal: Subject, point: Subject, density: Value) -> Value:
    """What passes a seal: nothing while a lip stays on the shaft, else what its gap lets through.

    A lip stays where the pressure is one it bears and does not come from behind.
    """
    across, kind = design.measure("pressure_across", seal, point), seal.given("kind")
    if isinstance(across, Unknown) or isinstance(kind, Unknown):
        return merged([each for each in (across, kind) if isinstance(each, Unknown)])
    gap = seal.given("leak_gap", "g")
    if kind.value != "labyrinth":
        stays = _stays(design, seal, point)
        if isinstance(stays, Unknown):
            return stays
        if stays.value:
            return Known(0.0, "m3/s", "Q_l", origin="the lip stays on the shaft", inputs=(stays,))
    return compute(transfer.leak_flow, across, seal.given("diameter", "d"), gap, density)


def _stays(design: Design, seal: Subject, point: Subject) -> Value:
    share = design.measure("pressure_share", seal, point)
    behind = design.measure("pressure_behind_lip", seal, point)
    if isinstance(share, Unknown) or isinstance(behind, Unknown):
        return merged([each for each in (share, behind) if isinstance(each, Unknown)])
    stays = share.number <= 1.0 and behind.number <= _LIFTS_A_LIP
    return Known(stays, "", "lip stays", inputs=(share, behind))


def _top(the_vent: Subject) -> Value:
    """Height of the highest point of the line over its mouth [m]."""
    rises = along(the_vent, ("rise", "Δz"))
    if isinstance(rises, Unknown):
        return rises
    return Known(
        oil_ways.highest_rise(tuple(each.number for each in rises)),
        "m",
        "z_max",
        origin=equation_of(oil_ways.highest_rise),
        inputs=tuple(rises),
    )
