"""Measures of the air in the oil: what rises while it rests, what is left, what it swells to."""

from checker.known import Unknown, Value, assumed, compute
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import air, bubbles, expansion, kinematics, oil
from checker.spec.fields import NONE
from checker.spec.subject import Subject

_MOST_AIR = assumed(0.20, "1", "a", "SAE 460209: gear trains entrain 6 to 20 % of air")


@varying_measure("lubrication", "m", "smallest bubble that rises while the oil rests")
def cleared_bubble(design: Design, lubrication: Subject, point: Subject) -> Value:
    """d_c at the stated oil temperature of the point [m]."""
    running = point.given("oil_temperature", "T")
    return compute(
        bubbles.cleared_bubble,
        lubrication.given("settling_depth", "h"),
        design.measure("residence_time", lubrication),
        properties.viscosity(design, running, "high"),
        compute(oil.density, properties.density_15(design), running),
        compute(air.density, compute(air.pressure, point.given("altitude", "z")), running),
    )


@varying_measure("lubrication", "1", "air still in the oil that leaves to the parts")
def outlet_air(design: Design, lubrication: Subject, point: Subject) -> Value:
    """a_out, with the most air that gears entrain."""
    return compute(
        bubbles.retained_air, _MOST_AIR, design.measure("cleared_bubble", lubrication, point)
    )


@varying_measure("lubrication", "1", "room over the oil over what warm and aired oil takes")
def room_for_growth(design: Design, lubrication: Subject, point: Subject) -> Value:
    """e over the growth by warmth and by air, which swells under the suction of a crankcase."""
    running = point.given("oil_temperature", "T_2")
    filled = lubrication.given("fill_temperature", "T_1")
    growth = compute(oil.thermal_growth, properties.density_15(design), filled, running)
    inside = design.measure("inside_pressure", design.subjects.the("drive"), point)
    ambient = compute(air.pressure, point.given("altitude", "z"))
    grown = compute(
        bubbles.aerated_growth, growth, _MOST_AIR, compute(bubbles.swelling, ambient, inside)
    )
    room = compute(
        expansion.expansion_space,
        lubrication.given("capacity", "V"),
        lubrication.given("volume", "V_oil"),
    )
    return compute(kinematics.quotient, room, compute(bubbles.growth_share, grown))


@measure("lubrication", "1", "oil said to stand quiet over the oil there", at="settling_volume")
def settling_share(design: Design, lubrication: Subject) -> Value:
    """V_settled over the oil of the tank, or over all the oil where there is no tank."""
    reservoir = lubrication.raw("reservoir")
    if reservoir is None:
        return Unknown((lubrication.place("reservoir"),))
    field = "volume" if reservoir == NONE else "reservoir.oil_volume"
    settled = lubrication.given("settling_volume", "V_settled")
    return compute(kinematics.quotient, settled, lubrication.given(field, "V_oil"))
