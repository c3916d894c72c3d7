"""Measures of whether propeller, ratio, power and engine suit each other."""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.propeller import air_temperature
from checker.measures.registry import measure, varying_measure
from checker.mechanics import air, engine, kinematics, load_cases
from checker.mechanics import propeller as formulas
from checker.spec.subject import Subject


@varying_measure("propeller", "1", "advance ratio", at="diameter")
def advance_ratio(design: Design, propeller: Subject, point: Subject) -> Value:
    """J, way flown in a turn over the diameter."""
    return compute(
        formulas.advance_ratio,
        point.given("airspeed", "V"),
        design.motion.speed(design.train.last, point),
        propeller.given("diameter", "D"),
    )


@varying_measure("propeller", "m/s", "speed of the blade tips about the axis", at="diameter")
def tip_speed(design: Design, propeller: Subject, point: Subject) -> Value:
    """v_tip [m/s]."""
    return compute(
        formulas.tip_speed,
        propeller.given("diameter", "D"),
        design.motion.speed(design.train.last, point),
    )


@varying_measure("propeller", "1", "power coefficient of one blade", at="diameter")
def power_coefficient_of_blade(design: Design, propeller: Subject, point: Subject) -> Value:
    """C_P over the number of blades: what the diameter takes up at this speed."""
    whole = compute(
        formulas.power_coefficient,
        point.given("power", "P"),
        _density(point),
        design.motion.speed(design.train.last, point),
        propeller.given("diameter", "D"),
    )
    return compute(kinematics.quotient, whole, propeller.given("blades", "N"))


@varying_measure("propeller", "", "whether the propeller takes up power at the point")
def takes_power(design: Design, propeller: Subject, point: Subject) -> Value:
    """Whether the engine drives in the air at this point: take-off, climb or cruise."""
    kind = point.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    takes = kind.value in ("take-off", "climb", "cruise")
    return Known(takes, "", "takes power", inputs=(kind,))


@varying_measure("propeller", "Pa", "thrust over the swept area")
def disc_loading(design: Design, propeller: Subject, point: Subject) -> Value:
    """T/A of the stated thrust [Pa]."""
    return compute(
        formulas.disc_loading, point.given("thrust", "F_p"), propeller.given("diameter", "D")
    )


@varying_measure("propeller", "1", "stated thrust over that of an ideal propeller", at="diameter")
def thrust_over_ideal(design: Design, propeller: Subject, point: Subject) -> Value:
    """Stated thrust over the actuator disc's, which no propeller reaches."""
    ideal = design.reactions.cases.ideal_thrust(point)
    return compute(kinematics.quotient, point.given("thrust", "F_p"), ideal)


@measure("propeller", "1", "nearest distance of a blade order and a firing order", at="blades")
def blade_order_distance(design: Design, propeller: Subject) -> Value:
    """Least |N k/(i h) − 1| for the first two blade orders and the first three firing orders.

    Both counted for a turn of the crank: k N/i of the blades passing the cowl, h of the firing.
    """
    ratio = design.measure("computed_ratio", design.subjects.the("drive"))
    engine_part = design.subjects.the("engine")
    first = compute(
        engine.firing_events_per_revolution,
        engine_part.given("cylinders", "z"),
        compute(engine.strokes_of, engine_part.given("cycle", "cycle")),
    )
    found = [
        compute(
            load_cases.order_distance,
            propeller.given("blades", "N"),
            Known(multiple, "1", "k", origin="multiple of the blade order"),
            ratio,
            first,
            Known(order, "1", "j", origin="multiple of the firing order"),
        )
        for multiple in (1, 2)
        for order in (1, 2, 3)
    ]
    unknown = all_known(*found)
    known = [each for each in found if isinstance(each, Known)]
    return unknown or min(known, key=lambda each: each.number)


@varying_measure("propeller", "1", "distance of firing and first blade frequency", at="blades")
def blade_frequency_distance(design: Design, propeller: Subject, point: Subject) -> Value:
    """|f_firing/f_blade − 1| at the point."""
    engine_part = design.subjects.the("engine")
    first = compute(
        engine.firing_events_per_revolution,
        engine_part.given("cylinders", "z"),
        compute(engine.strokes_of, engine_part.given("cycle", "cycle")),
    )
    frequency = compute(engine.excitation_frequency, first, point.given("engine_speed", "ω_e"))
    return compute(
        kinematics.relative_difference,
        frequency,
        propeller.given("first_blade_frequency", "f_b"),
    )


def _density(point: Subject) -> Value:
    """ρ at the stated altitude and air temperature [kg/m3]."""
    pressure = compute(air.pressure, point.given("altitude", "z"))
    return compute(air.density, pressure, air_temperature(point))
