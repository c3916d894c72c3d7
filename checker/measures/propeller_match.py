"""Measures of whether propeller, ratio, power and engine suit each other."""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import engine, kinematics, load_cases
from checker.mechanics import propeller as formulas
from checker.spec.subject import Subject
from checker.train.outside_air import air_density


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
        air_density(point),
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


@varying_measure("propeller", "", "whether the point states its own yawed flow besides the worst")
def own_inflow_stated(design: Design, propeller: Subject, point: Subject) -> Value:
    """Whether the inflow of the point can be held against the worst one of the propeller."""
    own = isinstance(point.given("inflow_angle"), Known)
    both = own and propeller.raw("yawed_flow") is not None
    return Known(both, "", "both stated", origin="inflow angle of the point and worst yawed flow")


@varying_measure("propeller", "1", "cross flow at the point over the worst one", at="yawed_flow")
def cross_flow_over_worst(design: Design, propeller: Subject, point: Subject) -> Value:
    """V sin ψ of the point over that of the worst yawed flow, with which the limit cases reckon."""
    return compute(
        kinematics.quotient,
        compute(
            load_cases.cross_flow, point.given("airspeed", "V"), point.given("inflow_angle", "ψ")
        ),
        compute(
            load_cases.cross_flow,
            propeller.given("yawed_flow.airspeed", "V"),
            propeller.given("yawed_flow.angle", "ψ"),
        ),
    )


@measure("propeller", "", "whether swing of the blade thrust and yawed flow are both stated")
def swing_and_yawed_flow_stated(design: Design, propeller: Subject) -> Value:
    """Whether the stated swing of the thrust can be held against the yawed flow."""
    stated = isinstance(propeller.given("blade_thrust_variation"), Known)
    both = stated and propeller.raw("yawed_flow") is not None
    return Known(both, "", "both stated", origin="swing of the blade thrust and yawed flow")


@measure("propeller", "1", "moment by stated swing over yawed flow", at="blade_thrust_variation")
def swing_over_yawed_flow(design: Design, propeller: Subject) -> Value:
    """M_1P by the stated swing over that by the yawed flow, at maximum continuous power."""
    forces = design.reactions.forces
    case = design.reactions.cases.gyroscopic[0]  # all of them have the same thrust and speed
    return compute(kinematics.quotient, forces.swing_moment(case), forces.inflow_moment(case))
