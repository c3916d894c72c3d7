"""What the oil of the drive gives its heat to, and the balance of an operation point.

Two days are asked for: that of the operation point, which its stated oil temperature belongs to,
and the stated hot day.
"""

from checker.known import Known, Unknown, Value, assumed, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.losses import loss_terms, oil_flow
from checker.measures.oil_properties import End
from checker.mechanics import air, convection, heat
from checker.mechanics import cooler as oil_cooler
from checker.solve.case_wall import case_flow
from checker.solve.heat_balance import HeatModel
from checker.solve.oil_terms import Oil, OilProperties, Term, term
from checker.spec.fields import NONE
from checker.spec.subject import Subject

_IN_THE_OPEN = assumed(0.0, "ΔK", "ΔT_air", "the slipstream is as warm as the air")
_STILL = assumed(0.0, "m/s", "v", "still air in a cowling without duct")
_AIR_HEAT = assumed(1006.0, "J/kg K", "c_air", "air near ambient conditions (from memory)")
_COOLANT = (
    assumed(1060.0, "kg/m3", "ρ_c", "water and glycol by halves, 80 °C (from memory)"),
    assumed(3500.0, "J/kg K", "c_c", "water and glycol by halves, 80 °C (from memory)"),
)
_RATED_AT = assumed(363.15, "K", "T_r", "an oil cooler is rated with oil of 90 °C")

Sinks = dict[str, Term | Unknown]


@kept
def heat_model(design: Design, point: Subject, hot: bool) -> HeatModel | Unknown:
    """Everything that heats and cools the oil at a point, on its own day or the hot day."""
    losses = loss_terms(design, point)
    sinks, references = _sinks(design, point, hot)
    oil = oil_properties(design)
    missing = [
        each
        for each in (*losses.values(), *sinks.values(), *references, oil)
        if isinstance(each, Unknown)
    ]
    if missing or isinstance(oil, Unknown):
        return merged(missing)
    return HeatModel(
        oil,
        {name: each for name, each in losses.items() if isinstance(each, Term)},
        {name: each for name, each in sinks.items() if isinstance(each, Term)},
        min(each.number for each in references if isinstance(each, Known)),
    )


def outside_air(design: Design, point: Subject, hot: bool) -> Value:
    """T_air of the outside air at a point [K]."""
    if not hot:
        return point.given("air_temperature", "T_air")
    day = design.subjects.the("housing").given("hot_day", "T_0")
    return compute(heat.hot_day, day, point.given("altitude", "z"))


def case_sink(
    design: Design, point: Subject, outside: Value, speed: Value | None = None
) -> Term | Unknown:
    """Heat through the wall of the case to the air round it, of a speed or that of the point."""
    case = design.subjects.the("housing")
    around = case.given("cooling_air")
    if isinstance(around, Unknown):
        return around
    rise = _IN_THE_OPEN if around.value == "slipstream" else case.given("air_rise", "ΔT_air")
    ducted = Known(around.value == "cowled with ducted air", "", "ducted", inputs=(around,))
    return term(
        case_flow,
        Oil.TEMPERATURE,
        compute(heat.warmer, outside, rise),
        compute(air.pressure, point.given("altitude", "z")),
        speed or _air_speed(design, point, str(around.value)),
        ducted,
        case.given("height", "L"),
        case.given("surface", "A"),
        *_fins(case),
        compute(convection.case_conductivity, case.given("material")),
        compute(convection.emissivity, case.given("finish")),
    )


def _fins(case: Subject) -> tuple[Value, Value, Value]:
    surface = case.given("fin_surface", "A_f")
    if isinstance(surface, Known) and surface.number == 0.0:
        none = Known(0.0, "m", "L_f, t_f", origin="there are no fins", inputs=(surface,))
        return surface, none, none
    return surface, case.given("fin_length", "L_f"), case.given("fin_thickness", "t_f")


def _air_speed(design: Design, point: Subject, around: str) -> Value:
    if around == "cowled, still air":
        return _STILL
    airspeed = point.given("airspeed", "w")
    if around == "slipstream":
        return airspeed
    case = design.subjects.the("housing")
    rated = case.given("cooling_air_speed", "v_r")
    return compute(heat.ducted_speed, rated, airspeed, _cruise_speed(design))


def _cruise_speed(design: Design) -> Value:
    cruises = [each for each in design.points if each.raw("kind") == "cruise"]
    if not cruises:
        return design.kinds_missing or Unknown(
            (("operation",),), "no point of kind cruise is stated"
        )
    return cruises[0].given("airspeed", "w_r")


def _sinks(design: Design, point: Subject, hot: bool) -> tuple[Sinks, list[Value]]:
    outside = outside_air(design, point, hot)
    sinks: Sinks = {"case": case_sink(design, point, outside)}
    references: list[Value] = [outside]
    case, lubrication = design.subjects.the("housing"), properties.lubrication(design)
    if isinstance(lubrication.given("reservoir.surface"), Known):
        sinks["tank"] = term(
            convection.tank_flow,
            Oil.TEMPERATURE,
            outside,
            compute(air.pressure, point.given("altitude", "z")),
            lubrication.given("reservoir.diameter", "D"),
            lubrication.given("reservoir.surface", "A"),
        )
    joint = case.raw("engine_joint")
    if joint is None:
        sinks["joint"] = Unknown((case.place("engine_joint"),))
    elif joint != NONE:
        engine_side = case.given("engine_joint.engine_temperature", "T_e")
        sinks["joint"] = term(
            heat.joint_flow,
            case.given("engine_joint.conductance", "h_c"),
            case.given("engine_joint.area", "A_j"),
            Oil.TEMPERATURE,
            engine_side,
        )
        references.append(engine_side)
    shared = lubrication.given("shared_with_engine")
    if isinstance(shared, Unknown):
        sinks["engine oil"] = shared
    elif shared.value:
        inlet = lubrication.given("engine_oil_temperature", "T_in")
        flow = _at_engine_speed(design, point, lubrication.given("engine_flow", "Q_r"))
        sinks["engine oil"] = term(
            heat.stream_flow, Oil.DENSITY, Oil.HEAT_CAPACITY, flow, Oil.TEMPERATURE, inlet
        )
        references.append(inlet)
    cooler = case.given("cooler")
    if isinstance(cooler, Unknown):
        sinks["cooler"] = cooler
    elif cooler.value != NONE:
        by_air = cooler.value == "oil to air"
        coolant = outside if by_air else case.given("coolant_temperature", "T_c")
        sinks["cooler"] = _cooler(design, point, by_air, coolant)
        references.append(coolant)
    return sinks, references


def _cooler(design: Design, point: Subject, by_air: bool, coolant: Value) -> Term | Unknown:
    opening = design.subjects.the("housing").given("thermostat", "T_th")
    flow = term(
        oil_cooler.cooler_flow,
        cooler_conductance(design, by_air),
        term(oil_cooler.capacity_rate, Oil.DENSITY, Oil.HEAT_CAPACITY, oil_flow(design, point)),
        coolant_rates(design, point, by_air, coolant),
        Oil.TEMPERATURE,
        coolant,
    )
    if isinstance(opening, Known) and opening.value == NONE:
        return flow
    return term(oil_cooler.behind_thermostat, flow, Oil.TEMPERATURE, opening)


def _at_engine_speed(design: Design, point: Subject, rated: Value) -> Value:
    """A flow in proportion to the engine speed, rated at maximum continuous speed [m3/s]."""
    top = design.subjects.the("engine").given("maximum_continuous.speed", "ω_r")
    return compute(heat.flow_at_speed, rated, point.given("engine_speed", "ω"), top)


def coolant_rates(design: Design, point: Subject, by_air: bool, coolant: Value) -> Value:
    """C_c of the coolant at a point [W/K]; air thins with height and warmth."""
    rated = design.subjects.the("housing").given("coolant_flow", "Q_r")
    if not by_air:
        flow = _at_engine_speed(design, point, rated)
        return compute(oil_cooler.capacity_rate, *_COOLANT, flow)
    flow = compute(heat.flow_at_speed, rated, point.given("airspeed", "w"), _cruise_speed(design))
    pressure = compute(air.pressure, point.given("altitude", "z"))
    return compute(
        oil_cooler.capacity_rate, compute(air.density, pressure, coolant), _AIR_HEAT, flow
    )


def _rated_coolant_rate(design: Design, by_air: bool) -> Value:
    """C_c of the coolant at the rating of the cooler [W/K]."""
    rated = design.subjects.the("housing").given("coolant_flow", "Q_r")
    if not by_air:
        return compute(oil_cooler.capacity_rate, *_COOLANT, rated)
    at_rating = compute(
        air.density,
        assumed(air.SEA_LEVEL_PRESSURE, "Pa", "p_0", "a cooler is rated at sea level"),
        assumed(air.SEA_LEVEL_TEMPERATURE, "K", "T_0", "a cooler is rated on a standard day"),
    )
    return compute(oil_cooler.capacity_rate, at_rating, _AIR_HEAT, rated)


def cooler_conductance(design: Design, by_air: bool) -> Value:
    """UA of the cooler, from its rating [W/K]."""
    case, lubrication = design.subjects.the("housing"), properties.lubrication(design)
    density = properties.density_15(design)
    oil_rate = compute(
        oil_cooler.capacity_rate,
        density,
        compute(heat.oil_heat_capacity, density, _RATED_AT),
        lubrication.given("pump_flow", "Q_r"),
    )
    return compute(
        oil_cooler.cooler_conductance,
        case.given("cooler_rating", "P"),
        case.given("cooler_rated_difference", "ΔT"),
        oil_rate,
        _rated_coolant_rate(design, by_air),
    )


@kept
def oil_properties(design: Design, end: End = "high") -> OilProperties | Unknown:
    """The oil at its thick end, which makes the losses highest, or at the other."""
    half = properties.half_stated(design)
    if half is not None:
        return half
    values = (
        properties.viscosity_40(design, end),
        properties.viscosity_100(design, end),
        properties.density_15(design),
    )
    known = [each for each in values if isinstance(each, Known)]
    if len(known) < len(values):
        return merged([each for each in values if isinstance(each, Unknown)])
    return OilProperties(*known)
