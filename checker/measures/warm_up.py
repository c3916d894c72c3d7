"""Measures of the drive between rest and running: warm-up, cold drag, soak after the stop."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures import heat_model as model
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.heat import sought, worst_of
from checker.measures.kept import kept
from checker.measures.losses import loss_terms
from checker.measures.registry import measure, varying_measure
from checker.mechanics import engine, heat, kinematics, oil
from checker.mechanics.equation import equation_of
from checker.solve.heat_balance import DAY, HeatModel
from checker.solve.oil_terms import Oil, Term, term
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train.bearing_size import outside, width

_WARM_UP_KINDS = ("warm-up", "ground idle", "taxi")  # the first that is stated
_ON_THE_GROUND = ("warm-up", "ground idle", "taxi")
_STILL = Known(0.0, "m/s", "v", origin="no air moves after the stop")


@measure("lubrication", "s", "time to warm the oil for take-off", at="take_off_temperature")
def warm_up_time(design: Design, lubrication: Subject) -> Value:
    """t from the coldest start to the take-off temperature, without heat of the engine [s]."""
    point = _warm_up_point(design)
    if isinstance(point, Unknown):
        return point
    values = (
        lubrication.given("cold_start_temperature", "T_start"),
        lubrication.given("take_off_temperature", "T_end"),
        heat_content(design),
    )
    balance = _alone(design, point, "low")
    known = [each for each in values if isinstance(each, Known)]
    if isinstance(balance, Unknown) or len(known) < len(values):
        return merged([each for each in (*values, balance) if isinstance(each, Unknown)])
    start, end, content = known
    origin = f"∫ C dT/(Σ P_loss - Φ_case) at {point.name}, at most {DAY:.0f} s"
    return sought(
        lambda: balance.warm_up(start.number, end.number, content.number),
        "s",
        "t",
        origin,
        start,
        end,
        content,
    )


@measure("lubrication", "1", "drag of the coldest start over the torque of the starter")
def start_drag_share(design: Design, lubrication: Subject) -> Value:
    """Torque at the crank that the cold drive takes at ground idle speed, over the starter's."""
    start = lubrication.given("cold_start_temperature", "T_start")
    starter = design.subjects.the("engine").given("starter_torque_limit", "T_starter")

    def share(point: Subject) -> Value:
        balance = _alone(design, point, "high")
        if isinstance(balance, Unknown) or isinstance(start, Unknown):
            return merged([each for each in (balance, start) if isinstance(each, Unknown)])
        origin = "Σ P_loss of the unloaded drive at the coldest start"
        drag = sought(lambda: balance.lost(start.number, 0.0), "W", "P", origin, start)
        torque = compute(engine.mean_torque, drag, point.given("engine_speed", "ω_e"))
        return compute(kinematics.quotient, torque, starter)

    return worst_of(design, ("ground idle",), share, largest=True)


@varying_measure("lubrication", "K/s", "warming of the cold drive", at="cold_start_temperature")
def cold_heating_rate(design: Design, lubrication: Subject, point: Subject) -> Value:
    """dT/dt at the coldest start with the power of the point [K/s]."""
    balance = _alone(design, point, "high")
    start = lubrication.given("cold_start_temperature", "T_start")
    if isinstance(balance, Unknown) or isinstance(start, Unknown):
        return merged([each for each in (balance, start) if isinstance(each, Unknown)])
    origin = "Σ P_loss - Φ_case at the coldest start"
    net = sought(lambda: balance.net(start.number), "W", "P", origin, start)
    return compute(heat.heating_rate, net, least_heat_content(design))


@measure("lubrication", "ΔK", "oil limit less what the stopped drive soaks to on the hot day")
def soak_reserve(design: Design, lubrication: Subject) -> Value:
    """How far the oil stays below its limit after the stop, the engine hot beside it [K].

    The most it can reach: as hot as it came in from the ground, or where the heat of the engine
    case through the joint and that of the case wall in still air balance, if that is more.
    """
    limit = design.measure("oil_temperature_limit", lubrication)

    def reserve(point: Subject) -> Value:
        running = design.measure("hot_day_temperature", lubrication, point)
        soaked = compute(heat.soak_temperature, running, _soaked(design, point))
        return compute(oil.temperature_reserve, limit, soaked)

    return worst_of(design, _ON_THE_GROUND, reserve, largest=False)


def _soaked(design: Design, point: Subject) -> Value:
    """Temperature at which heat of the engine and loss of the case balance, all at rest [K]."""
    case = design.subjects.the("housing")
    outside = model.outside_air(design, point, True)
    joint = case.raw("engine_joint")
    if joint == NONE:
        return outside
    if joint is None:
        return Unknown((case.place("engine_joint"),))
    engine_side = case.given("engine_joint.engine_temperature", "T_e")
    wall = model.case_sink(design, point, outside, _STILL)
    through = term(
        heat.joint_flow,
        case.given("engine_joint.conductance", "h_c"),
        case.given("engine_joint.area", "A_j"),
        Oil.TEMPERATURE,
        engine_side,
    )
    oil_data = model.oil_properties(design)
    values = (outside, engine_side, wall, through, oil_data)
    missing = [each for each in values if isinstance(each, Unknown)]
    if (
        isinstance(wall, Unknown)
        or isinstance(through, Unknown)
        or isinstance(oil_data, Unknown)
        or not (isinstance(outside, Known) and isinstance(engine_side, Known))
    ):
        return merged(missing)
    coldest = min(outside.number, engine_side.number)
    return HeatModel(oil_data, {}, {"case": wall, "joint": through}, coldest).steady()


def heat_content(design: Design) -> Value:
    """C, heat that the whole drive takes for one kelvin, at most [J/K]."""
    inner = [
        each
        for each in design.subjects.all("shaft")
        if any(
            part.raw("shaft") == each.name
            for kind in ("gear", "bearing")
            for part in design.subjects.all(kind)
        )
    ]
    shafts = [mass for each in inner for mass in _section_masses(each)]
    bearings = [
        compute(heat.ring_mass, outside(each), each.given("bore", "d"), width(each))
        for each in design.subjects.all("bearing")
    ]
    return _content(design, [*_gear_masses(design), *shafts, *bearings])


def least_heat_content(design: Design) -> Value:
    """C of oil, case and gears alone: the least, where fast warming is the worse [J/K]."""
    return _content(design, _gear_masses(design))


def _gear_masses(design: Design) -> list[Value]:
    return [gear.given("mass", "m") for gear in design.subjects.all("gear")]


def _section_masses(shaft: Subject) -> list[Value]:
    """Masses of the sections of a shaft [kg]."""
    sections = shaft.raw("sections")
    if not sections:
        return [Unknown((shaft.place("sections"),))]
    parts = [
        Subject("section", "", (*shaft.place("sections"), index), each)
        for index, each in enumerate(sections)
    ]
    return [
        compute(
            heat.ring_mass,
            each.given("outside", "D"),
            each.given("inside", "d"),
            compute(heat.length_between, each.given("from", "x_1"), each.given("to", "x_2")),
        )
        for each in parts
    ]


def _content(design: Design, masses: list[Value]) -> Value:
    lubrication, case = properties.lubrication(design), design.subjects.the("housing")
    density = properties.density_15(design)
    known = [each for each in masses if isinstance(each, Known)]
    if len(known) < len(masses):
        return merged([each for each in masses if isinstance(each, Unknown)])
    steel = Known(
        heat.mass_sum(tuple(each.number for each in known)),
        "kg",
        "m_s",
        origin=equation_of(heat.mass_sum),
        inputs=tuple(known),
    )
    return compute(
        heat.heat_content,
        compute(heat.mass_of, lubrication.given("volume", "V_oil"), density),
        compute(heat.oil_heat_capacity, density, lubrication.given("cold_start_temperature", "T")),
        case.given("mass", "m_h"),
        compute(heat.case_heat_capacity, case.given("material")),
        steel,
    )


@kept
def _alone(design: Design, point: Subject, end: properties.End) -> HeatModel | Unknown:
    """The drive by itself in air as cold as its oil: engine, its oil and cooler give nothing.

    With oil at its thin end, losses that are known only as a bound are left out: they would help.
    """
    start = properties.lubrication(design).given("cold_start_temperature", "T_a")
    losses = loss_terms(design, point)
    if end == "low" and _damper_is_bound(design, point):
        losses = {name: each for name, each in losses.items() if name != "damper"}
    wall = model.case_sink(design, point, start)
    oil_data = model.oil_properties(design, end)
    missing = [
        each for each in (start, *losses.values(), wall, oil_data) if isinstance(each, Unknown)
    ]
    if (
        missing
        or isinstance(oil_data, Unknown)
        or isinstance(wall, Unknown)
        or isinstance(start, Unknown)
    ):
        return merged(missing)
    known = {name: each for name, each in losses.items() if isinstance(each, Term)}
    return HeatModel(oil_data, known, {"case": wall}, start.number)


def _damper_is_bound(design: Design, point: Subject) -> bool:
    """Whether no survey gives the heat of the damper."""
    damper = design.subjects.the("damper")
    return isinstance(design.measure("heat", damper, point), Unknown)


def _warm_up_point(design: Design) -> Subject | Unknown:
    """The point at which the drive warms: warm-up, else idle, which heats least, else taxi."""
    for kind in _WARM_UP_KINDS:
        for point in design.points:
            if point.raw("kind") == kind:
                return point
    return Unknown((("operation",),), "no point on the ground is stated")
