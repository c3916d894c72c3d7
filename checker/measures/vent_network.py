"""Measures of the vent line as it runs: warm-up, mist, blocked; and the inlet of the pump."""

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.losses import oil_flow
from checker.measures.registry import varying_measure
from checker.measures.vent import along, line_drop_of, worst_share
from checker.mechanics import air, bubbles, expansion, kinematics, line_liquid, oil, vent
from checker.mechanics import lubrication as oil_ways
from checker.spec.subject import Subject

_DROP = assumed(
    0.2e-3, "m", "d_o", "drop of coarse mist; finer mist leaves by any vent (common practice)"
)


@varying_measure("vent", "Pa", "pressure drop while the cold drive warms", at="path")
def warm_up_drop(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Δp along the line at the heating rate of the cold drive under the power of the point [Pa]."""
    lubrication = properties.lubrication(design)
    fill = lubrication.given("volume", "V_oil")
    start = lubrication.given("cold_start_temperature", "T")
    flow = compute(
        vent.warm_up_breathing_flow,
        compute(expansion.air_volume, lubrication.given("capacity", "V"), fill),
        start,
        fill,
        compute(oil.thermal_expansion, properties.density_15(design), start),
        design.measure("cold_heating_rate", lubrication, point),
    )
    still = Known(0.0, "m3/s", "Q_climb", origin="it warms on the ground")
    whole = compute(vent.vent_flow, still, flow, point.given("case_air_flow", "Q_case"))
    return line_drop_of(the_vent, point, whole)


@varying_measure("vent", "1", "that drop over what the weakest seal bears", at="path")
def warm_up_drop_over_lip(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Greatest share of a seal's limit that the warm-up takes."""
    return worst_share(design, design.measure("warm_up_drop", the_vent, point), point)


@varying_measure("vent", "1", "speed in the vent over that at which mist falls", at="path")
def mist_carried(design: Design, the_vent: Subject, point: Subject) -> Value:
    """v in the widest bore, where mist can settle, over the fall of a drop of 0.2 mm."""
    bores = along(the_vent, ("bore", "d"))
    if isinstance(bores, Unknown):
        return bores
    widest = max(bores, key=lambda each: each.number)
    running = point.given("oil_temperature", "T")
    ambient = compute(air.pressure, point.given("altitude", "z"))
    fall = compute(
        bubbles.drop_fall_speed,
        _DROP,
        compute(oil.density, properties.density_15(design), running),
        compute(air.density, ambient, running),
        compute(air.dynamic_viscosity, running),
    )
    speed = compute(oil_ways.vent_speed, design.measure("breathing", the_vent, point), widest)
    return compute(kinematics.quotient, speed, fall)


@varying_measure("vent", "1", "pressure that a full low loop holds, over what a seal bears")
def loop_over_lip(design: Design, the_vent: Subject, point: Subject) -> Value:
    """Blocking pressure ρ g h of the deepest low loop over the weakest seal's limit."""
    held = compute(
        line_liquid.blocking_pressure,
        design.measure("trapped_depth", the_vent),
        properties.density_15(design),
    )
    return worst_share(design, held, point)


@varying_measure("lubrication", "Pa", "absolute pressure at the inlet of the pump")
def pump_inlet(design: Design, lubrication: Subject, point: Subject) -> Value:
    """p_s at the running oil of the point; air comes out of the oil where it is low [Pa]."""
    return _inlet(design, lubrication, point, point.given("oil_temperature", "T"))


@varying_measure("lubrication", "Pa", "pressure at the inlet of the pump in the coldest oil")
def cold_pump_inlet(design: Design, lubrication: Subject, point: Subject) -> Value:
    """p_s at the coldest start, with the flow at idle of the points on the ground [Pa]."""
    start = lubrication.given("cold_start_temperature", "T")
    return _inlet(design, lubrication, point, start)


def _inlet(design: Design, lubrication: Subject, point: Subject, temperature: Value) -> Value:
    density = compute(oil.density, properties.density_15(design), temperature)
    viscosity = properties.viscosity(design, temperature, "high")
    lost = compute(
        oil_ways.suction_loss,
        oil_flow(design, point),
        lubrication.given("pump_suction.bore", "d"),
        lubrication.given("pump_suction.length", "L"),
        compute(oil.dynamic_viscosity, viscosity, density),
        density,
    )
    return compute(
        oil_ways.pump_inlet_pressure,
        compute(air.pressure, point.given("altitude", "z")),
        design.measure("inside_pressure", design.subjects.the("drive"), point),
        density,
        lubrication.given("pump_suction.head", "h"),
        lost,
    )
