"""Measures of the heat balance: how hot the oil gets, what that leaves, and what would help."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute, merged
from checker.measures import heat_model as model
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.heat_model import heat_model
from checker.measures.kept import kept
from checker.measures.losses import oil_flow
from checker.measures.registry import measure, varying_measure
from checker.measures.seals import lip_of
from checker.mechanics import convection, heat, kinematics, oil, oil_families
from checker.mechanics import cooler as oil_cooler
from checker.mechanics.equation import OutOfRange
from checker.solve.heat_balance import HeatModel, added, limiting_power
from checker.solve.oil_terms import Oil
from checker.spec.fields import NONE
from checker.spec.subject import Subject

_LIP_RISE = assumed(
    20.0, "ΔK", "ΔT_lip", "seal makers (seen): the lip runs at least 20 K over the oil"
)
_MOST_POWER = 4.0  # times the power of the point: beyond, nobody asks


@varying_measure("lubrication", "K", "computed oil temperature on the hot day")
def hot_day_temperature(design: Design, lubrication: Subject, point: Subject) -> Value:
    """T_oil, steady on the stated hot day [K]."""
    return steady(design, point, True)


@varying_measure("lubrication", "K", "computed oil temperature on the day of the point")
def computed_temperature(design: Design, lubrication: Subject, point: Subject) -> Value:
    """T_oil, steady in the air that the point states [K]."""
    return steady(design, point, False)


@kept
def steady(design: Design, point: Subject, hot: bool) -> Value:
    """T_oil of a point on the hot day or on its own [K]."""
    balance = heat_model(design, point, hot)
    return balance if isinstance(balance, Unknown) else balance.steady()


@measure("lubrication", "ΔK", "computed against known oil temperature", at="oil.name")
def temperature_disagreement(design: Design, lubrication: Subject) -> Value:
    """|ΔT| of computed and known oil temperature, in the air stated [K].

    Known is what was measured, at any point, and what is stated for long cruise.
    """

    def apart(point: Subject) -> Value:
        computed = design.measure("computed_temperature", lubrication, point)
        return compute(heat.distance, known_temperature(point), computed)

    points = [each for each in design.points if each.raw("kind") == "cruise" or _is_measured(each)]
    return _worst(points, "cruise", apart, largest=True)


def known_temperature(point: Subject) -> Value:
    """Oil temperature of a point, measured where it was, else as stated [K]."""
    measured = point.given("measured_oil_temperature", "T_meas")
    return measured if isinstance(measured, Known) else point.given("oil_temperature", "T_stated")


def _is_measured(point: Subject) -> bool:
    return isinstance(point.given("measured_oil_temperature"), Known)


@measure("lubrication", "K", "what the oil and all it wets bear", at="oil.name")
def oil_temperature_limit(design: Design, lubrication: Subject) -> Value:
    """T_lim, least of what base stock, seal lips and a wetted elastomer bear [K]."""
    limits = [compute(oil_families.highest_oil_temperature, properties.base(design))]
    limits += [
        _borne_by_lip(seal) for seal in design.subjects.all("seal") if seal.raw("material") != NONE
    ]
    damper = design.subjects.the("damper")
    if damper.raw("in_oil") and damper.raw("elastomer") != "none":
        limits.append(damper.given("running_temperature_limit", "T_damper"))
    known = [each for each in limits if isinstance(each, Known)]
    if len(known) < len(limits):
        return merged([each for each in limits if isinstance(each, Unknown)])
    return min(known, key=lambda each: each.number).named("T_lim")


def _borne_by_lip(seal: Subject) -> Value:
    """Oil temperature at which a lip reaches what its material bears [K]."""
    lip = lip_of(seal)
    if isinstance(lip, Unknown):
        return lip
    borne = assumed(lip.hottest, "K", "T_lip", f"{lip.name} lip: {lip.temperature_source}")
    return compute(heat.cooler_than, borne, _LIP_RISE)


@varying_measure("lubrication", "ΔK", "oil limit less computed oil on the hot day", at="oil.name")
def hot_day_reserve(design: Design, lubrication: Subject, point: Subject) -> Value:
    """How far the oil of the hot day stays below what it and all it wets bear [K]."""
    return compute(
        oil.temperature_reserve,
        design.measure("oil_temperature_limit", lubrication),
        design.measure("hot_day_temperature", lubrication, point),
    )


@varying_measure("lubrication", "ΔK", "oil limit less the stated oil, corrected to the hot day")
def corrected_reserve(design: Design, lubrication: Subject, point: Subject) -> Value:
    """How far the stated oil temperature, corrected degree for degree, stays below its limit [K].

    The correction of 14 CFR 23.1043 is for measured temperatures; it touches no computed one.
    """
    corrected = compute(
        heat.corrected_to_hot_day,
        known_temperature(point),
        model.outside_air(design, point, True),
        point.given("air_temperature", "T_air"),
    )
    limit = design.measure("oil_temperature_limit", lubrication)
    return compute(oil.temperature_reserve, limit, corrected)


@measure("lubrication", "ΔK", "oil limit less the oil after a ground idle on the hot day")
def ground_idle_reserve(design: Design, lubrication: Subject) -> Value:
    """How far the oil stays below its limit after long ground idle in still air [K]."""

    def reserve(point: Subject) -> Value:
        return design.measure("hot_day_reserve", lubrication, point)

    return worst_of(design, ("ground idle",), reserve, largest=False)


@measure("lubrication", "m2/s", "oil viscosity at the hottest point of the hot day", at="oil.name")
def hot_day_viscosity(design: Design, lubrication: Subject) -> Value:
    """ν at the hottest computed oil temperature of the hot day, at its low end [m2/s]."""
    hottest = design.greatest("hot_day_temperature", lubrication)
    return properties.viscosity(design, hottest, "low")


@varying_measure("drive", "W", "heat of all losses on the hot day")
def losses(design: Design, drive: Subject, point: Subject) -> Value:
    """Σ P_loss at the oil temperature of the hot day [W]."""
    found = heat_parts(design, point)
    if isinstance(found, Unknown):
        return found
    balance, parts = found
    return added(tuple(parts[name] for name in balance.losses), "Σ P_loss")


@measure("drive", "1", "efficiency at the greatest power, on the hot day")
def efficiency(design: Design, drive: Subject) -> Value:
    """η, power that reaches the propeller over that of the engine."""
    powers = [(each, each.given("power", "P")) for each in design.points]
    known = [(each, power) for each, power in powers if isinstance(power, Known)]
    if not known or len(known) < len(powers):
        missing = merged([power for _, power in powers if isinstance(power, Unknown)])
        return missing if powers else Unknown((("operation",),))
    point, power = max(known, key=lambda each: each[1].number)
    return compute(heat.efficiency, design.measure("losses", drive, point), power)


@measure("drive", "1", "power at which the oil reaches its limit, over that of climb and cruise")
def power_reserve(design: Design, drive: Subject) -> Value:
    """Least P_lim/P of climb and cruise on the hot day, up to four times the power."""

    def reserve(point: Subject) -> Value:
        limit = design.measure("power_at_limit", drive, point)
        return compute(kinematics.quotient, limit, point.given("power", "P"))

    return worst_of(design, ("climb", "cruise"), reserve, largest=False)


@varying_measure("drive", "W", "continuous power at which the oil reaches its limit")
def power_at_limit(design: Design, drive: Subject, point: Subject) -> Value:
    """P_lim on the hot day at the speed of the point, at most four times its power [W]."""
    lubrication = properties.lubrication(design)
    balance = heat_model(design, point, True)
    limit = design.measure("oil_temperature_limit", lubrication)
    power = point.given("power", "P")
    if isinstance(balance, Unknown) or not (isinstance(limit, Known) and isinstance(power, Known)):
        return merged([each for each in (balance, limit, power) if isinstance(each, Unknown)])
    factor = sought(
        lambda: balance.power_factor(limit.number, _MOST_POWER),
        "1",
        "x",
        "bracketed root of the heat balance",
        limit,
    )
    return compute(limiting_power, power, factor)


@measure("lubrication", "", "whether an oil cooler is there")
def has_cooler(design: Design, lubrication: Subject) -> Value:
    """Whether the spec names a cooler."""
    cooler = design.subjects.the("housing").given("cooler")
    if isinstance(cooler, Unknown):
        return cooler
    return Known(cooler.value != "none", "", "cooler", inputs=(cooler,))


@varying_measure("lubrication", "1", "size of cooler that holds the limit over its size")
def cooler_size(design: Design, lubrication: Subject, point: Subject) -> Value:
    """UA that the limit asks for on the hot day, over the UA of the cooler."""
    case = design.subjects.the("housing")
    cooler = case.given("cooler")
    limit = design.measure("oil_temperature_limit", lubrication)
    needed = design.measure("heat_for_cooler", lubrication, point)
    if isinstance(cooler, Unknown) or isinstance(limit, Unknown) or isinstance(needed, Unknown):
        return merged([each for each in (cooler, limit, needed) if isinstance(each, Unknown)])
    by_air = cooler.value == "oil to air"
    balance = heat_model(design, point, True)
    if isinstance(balance, Unknown):
        return balance
    state = balance.oil.known(limit)
    if isinstance(state, Unknown):
        return state
    flow = oil_flow(design, point)
    coolant = (
        model.outside_air(design, point, True)
        if by_air
        else case.given("coolant_temperature", "T_c")
    )
    return compute(
        oil_cooler.cooler_size_needed,
        needed,
        model.cooler_conductance(design, by_air),
        compute(oil_cooler.capacity_rate, state[Oil.DENSITY], state[Oil.HEAT_CAPACITY], flow),
        model.coolant_rates(design, point, by_air, coolant),
        limit,
        coolant,
    )


@varying_measure("lubrication", "W", "heat left for a cooler when the oil is at its limit")
def heat_for_cooler(design: Design, lubrication: Subject, point: Subject) -> Value:
    """Losses less what leaves by case, joint and oil stream at the limit [W]; the cooler's part."""
    balance = heat_model(design, point, True)
    limit = design.measure("oil_temperature_limit", lubrication)
    if isinstance(balance, Unknown) or isinstance(limit, Unknown):
        return merged([each for each in (balance, limit) if isinstance(each, Unknown)])
    parts = balance.breakdown(limit)
    if isinstance(parts, Unknown):
        return parts
    lost = added(tuple(parts[name] for name in balance.losses), "Σ P_loss")
    passive = [parts[name] for name in balance.sinks if name != "cooler"]
    return compute(heat.heat_left, lost, added(tuple(passive), "Σ Φ"))


@measure("lubrication", "W", "heat that no cooler is there for at the limit of the oil")
def uncooled_heat(design: Design, lubrication: Subject) -> Value:
    """Greatest heat left over at the limit on the hot day [W]: the cooler that would restore it."""
    return design.greatest("heat_for_cooler", lubrication)


@measure("housing", "m", "engine joint as a thickness of the case metal", at="engine_joint")
def joint_as_metal(design: Design, case: Subject) -> Value:
    """L_eq, how much solid metal resists like the joint [m]."""
    return compute(
        heat.equivalent_thickness,
        case.given("engine_joint.conductance", "h_c"),
        compute(convection.case_conductivity, case.given("material")),
    )


def sought(
    search: Callable[[], float], unit: str, symbol: str, origin: str, *inputs: Known
) -> Value:
    """What a balance is asked for; unknown where the oil or a part leaves the formulas' range."""
    try:
        number = search()
    except OutOfRange as outside:
        return Unknown(because=str(outside))
    return Known(number, unit, symbol, origin=origin, inputs=inputs)


def worst_of(
    design: Design, kinds: tuple[str, ...], value_at: Callable[[Subject], Value], *, largest: bool
) -> Value:
    """The worst of a value over the points of some kinds; unknown where any of them is.

    A point of unknown kind may be one of them: the others are then the best that it can be.
    """
    points = [each for each in design.points if each.raw("kind") in kinds]
    found = _worst(points, " or ".join(kinds), value_at, largest=largest)
    unsaid = design.kinds_missing
    if unsaid is None:
        return found
    if isinstance(found, Known):
        return Unknown(unsaid.missing, at_best=found)
    return merged([found, unsaid])


def _worst(
    points: list[Subject], sought_for: str, value_at: Callable[[Subject], Value], *, largest: bool
) -> Value:
    if not points:
        return Unknown((("operation",),), f"no point of kind {sought_for} is stated")
    values = [value_at(each) for each in points]
    known = [each for each in values if isinstance(each, Known)]
    if len(known) < len(values):
        return merged([each for each in values if isinstance(each, Unknown)])
    pick = max if largest else min
    return pick(known, key=lambda each: each.number)


@kept
def heat_parts(design: Design, point: Subject) -> tuple[HeatModel, dict[str, Known]] | Unknown:
    """Every loss and sink at the oil temperature of the hot day."""
    balance = heat_model(design, point, True)
    temperature = steady(design, point, True)
    if isinstance(balance, Unknown):
        return balance
    if isinstance(temperature, Unknown):
        return temperature
    parts = balance.breakdown(temperature)
    return parts if isinstance(parts, Unknown) else (balance, parts)
