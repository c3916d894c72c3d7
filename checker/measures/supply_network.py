"""The ways of the oil as a graph: what is reached at an operation point, in its attitude.

A way runs while its source does. A pump's ways run while its inlet stays covered, a dip while a
gear still reaches the oil at its lowest level, and what a gear throws while that gear has oil.
"""

from checker.known import Known, Path, Unknown, Value, all_known, assumed, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.heat import steady
from checker.measures.heat_model import heat_model
from checker.measures.losses import oil_flow, oil_height
from checker.measures.registry import measure, varying_measure
from checker.measures.supply import is_dry
from checker.mechanics import churning, heat, kinematics
from checker.mechanics import lubrication as oil_ways
from checker.mechanics.equation import equation_of
from checker.solve.oil_terms import Oil
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train.bearing_size import outside

_RISE = assumed(25.0, "ΔK", "ΔT", "rise of the oil in a mesh of an aircraft gearbox (from memory)")
_PARTS = ("mesh", "bearing", "clutch", "damper", "gear")
ENGINE_SOURCES = ("engine", "engine gallery")
_PUMP_SOURCES = ("pump", "sump", "reservoir")
_BY_WEIGHT = ("drip", "channel", "jet", "pressure")
_BY_PUMP = ("channel", "jet", "pressure")
_ENDS = ("reservoir", "engine")


@varying_measure("mesh", "", "whether oil reaches the mesh in this attitude")
@varying_measure("bearing", "", "whether oil reaches the bearing in this attitude")
@varying_measure("clutch", "", "whether oil reaches the clutch in this attitude")
@varying_measure("damper", "", "whether oil reaches the damper in this attitude")
def is_reached(design: Design, part: Subject, point: Subject) -> Value:
    """Whether a way of the oil to the part runs at the point."""
    return _reached(design, part, point, frozenset())


@measure("mesh", "1", "speed of the jets over the pitch-line speed")
def jet_speed_share(design: Design, mesh: Subject) -> Value:
    """v_j over v at the fastest operation point; the slowest jet where there are several."""
    jets = _jets(design, mesh)
    if isinstance(jets, Unknown):
        return jets
    slowest = min(jets, key=lambda each: each.number)
    return compute(kinematics.quotient, slowest, design.greatest("pitch_line_velocity", mesh))


@measure("mesh", "1", "pressure that the jets take over that of the pump")
def jet_pressure_share(design: Design, mesh: Subject) -> Value:
    """Δp_j of the fastest jet, loss-free, over the pressure of the pump."""
    jets = _jets(design, mesh)
    if isinstance(jets, Unknown):
        return jets
    fastest = max(jets, key=lambda each: each.number)
    taken = compute(oil_ways.jet_pressure, fastest, properties.density_15(design))
    pump = properties.lubrication(design).given("pump_pressure", "Δp")
    return compute(kinematics.quotient, taken, pump)


@varying_measure("mesh", "m3/s", "oil flow that carries the loss of the mesh at a rise of 25 K")
def flow_needed(design: Design, mesh: Subject, point: Subject) -> Value:
    """Q that the mesh needs on the hot day [m3/s]."""
    found = _loss_and_state(design, mesh, point)
    if isinstance(found, Unknown):
        return found
    lost, state = found
    return compute(heat.flow_for_heat, lost, state[Oil.DENSITY], state[Oil.HEAT_CAPACITY], _RISE)


@measure("bearing", "", "whether a stated flow of oil is led to the bearing")
def fed_by_flow(design: Design, part: Subject) -> Value:
    """Whether every way to the part states what it carries; mist, splash and dips do not."""
    ways = _ways_to(design, part.name or part.kind)
    if isinstance(ways, Unknown):
        return ways
    flows = tuple(way.given("flow", "Q") for way in ways)
    known = tuple(each for each in flows if isinstance(each, Known))
    return Known(
        bool(flows) and len(known) == len(flows),
        "",
        "flow stated",
        inputs=known,
        path=_place(design),
    )


@measure("bearing", "", "whether a pump feeds the bearing", at="lubrication")
def fed_by_pump(design: Design, bearing: Subject) -> Value:
    """Whether a jet, channel or pressed way leads to the bearing, and a pump fills it."""
    ways = _ways_to(design, bearing.name)
    if isinstance(ways, Unknown):
        return ways
    values = [_pumped(design, way) for way in ways if not is_dry(way.given("flow", "Q"))]
    known = tuple(each for each in values if isinstance(each, Known))
    fed = next((each for each in known if each.value), None)
    place = None if known else _place(design)
    return fed or all_known(*values) or Known(False, "", "fed by a pump", inputs=known, path=place)


def _pumped(design: Design, way: Subject) -> Value:
    """Whether the pump of the drive, or of an engine that shares its oil, fills a way."""
    lubrication = properties.lubrication(design)
    source, kind = way.given("from", "from"), way.given("kind", "supply")
    if isinstance(source, Unknown) or isinstance(kind, Unknown):
        return all_known(source, kind) or source
    by_engine = source.value in ENGINE_SOURCES
    pump = lubrication.given("shared_with_engine" if by_engine else "system")
    if isinstance(pump, Unknown):
        return pump
    runs = bool(pump.value) if by_engine else "pump" in str(pump.value)
    return Known(runs and kind.value in _BY_PUMP, "", "fed by a pump", inputs=(source, kind, pump))


@varying_measure("mesh", "ΔK", "rise of the oil that is fed to the mesh")
@varying_measure("bearing", "ΔK", "rise of the oil that is fed to the bearing")
@varying_measure("damper", "ΔK", "rise of the oil that is fed to the damper")
def oil_rise(design: Design, part: Subject, point: Subject) -> Value:
    """ΔT of the oil that carries the loss of the part away on the hot day [K]."""
    found, fed = _loss_and_state(design, part, point), _fed_here(design, part, point)
    if isinstance(found, Unknown):
        return found
    lost, state = found
    return compute(heat.rise_of_oil, lost, state[Oil.DENSITY], state[Oil.HEAT_CAPACITY], fed)


@measure("lubrication", "", "where the oil goes from the meshes", at="paths")
def way_back(design: Design, lubrication: Subject) -> Value:
    """``rests in the case``, ``drained``, or ``not drained`` though it should leave the case."""
    reservoir = lubrication.raw("reservoir")
    shared = lubrication.given("shared_with_engine")
    if reservoir is None or isinstance(shared, Unknown):
        missing = Unknown((lubrication.place("reservoir"),)) if reservoir is None else shared
        return all_known(missing, shared) or missing
    if reservoir == NONE and not shared.value:
        place = lubrication.place("reservoir")
        return Known("rests in the case", "", "way back", path=place)
    drains = drains_back(design)
    if isinstance(drains, Unknown):
        return drains
    word = "drained" if drains else "not drained"
    return Known(word, "", "way back", path=_place(design))


def _loss_and_state(
    design: Design, part: Subject, point: Subject
) -> tuple[Value, dict[Oil, Known]] | Unknown:
    """Loss of a part and state of the oil on the hot day."""
    balance = heat_model(design, point, True)
    temperature = steady(design, point, True)
    if isinstance(balance, Unknown):
        return balance
    if isinstance(temperature, Unknown):
        return temperature
    state = balance.oil.known(temperature)
    if isinstance(state, Unknown):
        return state
    return balance.losses[part.label].known(state), state


def _jets(design: Design, mesh: Subject) -> list[Known] | Unknown:
    """Speed of every jet on a mesh."""
    ways = _ways_to(design, mesh.name)
    if isinstance(ways, Unknown):
        return ways
    jets = [
        compute(oil_ways.jet_speed, way.given("flow", "Q"), way.given("jet_diameter", "d"))
        for way in ways
        if way.raw("kind") == "jet"
    ]
    known = [each for each in jets if isinstance(each, Known)]
    if not known or len(known) < len(jets):
        return all_known(*jets) or Unknown((_place(design),), "no jet leads to this mesh")
    return known


def _reached(design: Design, part: Subject, point: Subject, above: frozenset[str]) -> Value:
    name = part.name or part.kind
    ways = _ways_to(design, name)
    if isinstance(ways, Unknown):
        return ways
    unclear: list[Unknown] = []
    found: list[Known] = []
    for way in ways:
        if way.raw("kind") == "drain" or way.raw("from") in above:
            continue
        flow = way.given("flow", "Q")
        if isinstance(flow, Known) and is_dry(flow):
            found.append(flow)
            continue
        runs = _runs(design, way, part, point, above | {name})
        if isinstance(runs, Unknown):
            unclear.append(runs)
        elif runs.value:
            return Known(True, "", "reached", inputs=(runs,))
        else:
            found.append(runs)
    if unclear:
        return merged(unclear)
    return Known(False, "", "reached", inputs=tuple(found), path=_place(design))


def way_runs(design: Design, way: Subject, point: Subject) -> Value:
    """Whether a way of the oil has oil at its source at a point; drains run where any is fed."""
    flow = way.given("flow", "Q")
    if way.raw("kind") == "drain" or (isinstance(flow, Known) and is_dry(flow)):
        return Known(not is_dry(flow), "", "runs", path=way.place("kind"))
    part = part_named(design, str(way.raw("to")))
    if part is None:
        return Unknown((way.place("to"),), f"{way.raw('to')} is no part that is oiled")
    return _runs(design, way, part, point, frozenset({part.name or part.kind}))


def _runs(
    design: Design, way: Subject, part: Subject, point: Subject, above: frozenset[str]
) -> Value:
    """Whether a way has oil at its source."""
    source, kind = way.given("from", "from"), way.given("kind", "supply")
    if isinstance(source, Unknown) or isinstance(kind, Unknown):
        return all_known(source, kind) or source
    if kind.value == "dip":
        return _dips(design, part, point)
    origin = part_named(design, str(source.value))
    if origin is None:
        return _brings(design, way, source, kind, point)
    if origin.kind == "gear":
        return _throws(design, origin, point, above)
    if origin.kind == "damper" and kind.value == "scroll" and not origin.raw("moves_oil"):
        return origin.given("moves_oil")
    return _reached(design, origin, point, above)


def _throws(design: Design, gear: Subject, point: Subject, above: frozenset[str]) -> Value:
    """Whether a gear has oil to throw: it dips, or one of its meshes is reached."""
    dips = _gear_dips(design, gear, point)
    if isinstance(dips, Known) and dips.value:
        return dips
    fed = [
        _reached(design, pair.subject, point, above)
        for pair in design.pairs.values()
        if gear.name in (pair.driver.subject.name, pair.driven.subject.name)
        and pair.subject.name not in above
    ]
    wet = next((each for each in fed if isinstance(each, Known) and each.value), None)
    return wet or all_known(*fed) or dips


def _dips(design: Design, part: Subject, point: Subject) -> Value:
    """Whether a mesh by one of its gears, or a bearing, reaches the oil at its lowest level."""
    if part.kind == "bearing":
        return _bearing_dips(design, part, point)
    if part.kind != "mesh":
        return Unknown((_place(design),), f"where the {part.kind} reaches down to is not stated")
    pair = design.pairs[part.name]
    gears = (pair.driver.subject, pair.driven.subject)
    values = [_gear_dips(design, gear, point) for gear in gears]
    wet = next((each for each in values if isinstance(each, Known) and each.value), None)
    return wet or all_known(*values) or values[0]


def _gear_dips(design: Design, gear: Subject, point: Subject) -> Value:
    depth = design.measure("lowest_dip", gear, point)
    module = gear.given("module", "m_n")
    if isinstance(depth, Unknown) or isinstance(module, Unknown):
        return all_known(depth, module) or depth
    return Known(depth.number >= module.number, "", "dips by a module", inputs=(depth, module))


def _bearing_dips(design: Design, bearing: Subject, point: Subject) -> Value:
    shaft = design.subjects.the("shaft", str(bearing.raw("shaft")))
    depth = compute(
        churning.dip_depth,
        shaft.given("centre.up", "y"),
        outside(bearing),
        oil_height(design, bearing.given("station", "x"), point, "lowest_level"),
    )
    if isinstance(depth, Unknown):
        return depth
    return Known(depth.number > 0.0, "", "dips", inputs=(depth,))


def _brings(design: Design, way: Subject, source: Known, kind: Known, point: Subject) -> Value:
    """Whether a source that is no part of the train has oil, and something that moves it."""
    lubrication = properties.lubrication(design)
    if source.value in ENGINE_SOURCES:
        shared = lubrication.given("shared_with_engine")
        if isinstance(shared, Unknown):
            return shared
        origin = "the engine's own oil pump feeds it" if shared.value else ""
        return Known(bool(shared.value), "", "runs", origin=origin, inputs=(source, shared))
    system = lubrication.given("system")
    if isinstance(system, Unknown):
        return system
    pumped = "pump" in str(system.value) and source.value in _PUMP_SOURCES
    if pumped and kind.value != "splash":
        return _covered(design, source, point)
    if source.value == "reservoir" and kind.value in _BY_WEIGHT:
        return _falls(lubrication, source)
    because = (
        f"nothing stated moves the oil from {source.value}: a dip, a gear that throws or a pump"
    )
    return Unknown((way.place("from"),), because)


def _falls(lubrication: Subject, source: Known) -> Value:
    """Whether oil runs from a tank by its weight."""
    head = lubrication.given("reservoir.head", "h")
    if isinstance(head, Unknown):
        return head
    return Known(head.number > 0.0, "", "runs by its weight", inputs=(source, head))


def _covered(design: Design, source: Known, point: Subject) -> Value:
    """Whether the inlet of the pump stays under oil in the attitude."""
    lubrication = properties.lubrication(design)
    attitude = point.given("nose_up", "θ")
    up = lubrication.given("covered_nose_up", "θ_up")
    down = lubrication.given("covered_nose_down", "θ_down")
    unknown = all_known(attitude, up, down)
    if unknown is not None or not (
        isinstance(attitude, Known) and isinstance(up, Known) and isinstance(down, Known)
    ):
        return unknown or attitude
    covered = -down.number <= attitude.number <= up.number
    return Known(covered, "", "inlet covered", inputs=(source, attitude, up, down))


def part_named(design: Design, name: str) -> Subject | None:
    """The part of the train that a way names; ``None`` for tank, sump, pump and engine."""
    for kind in _PARTS:
        for subject in design.subjects.all(kind):
            if name == (subject.name or subject.kind):
                return subject
    return None


def _fed_here(design: Design, part: Subject, point: Subject) -> Value:
    """Σ Q to a part at a point [m3/s]: a pump gives in proportion to what turns it."""
    lubrication = properties.lubrication(design)
    ways, system = _ways_to(design, part.name or part.kind), lubrication.given("system")
    if isinstance(ways, Unknown) or isinstance(system, Unknown):
        return merged([each for each in (ways, system) if isinstance(each, Unknown)])
    stated = total_flow(ways)
    if "pump" not in str(system.value):
        return stated
    full = lubrication.given("pump_flow", "Q_p")
    return compute(oil_ways.flow_in_proportion, stated, oil_flow(design, point), full)


def total_flow(ways: list[Subject]) -> Value:
    """Σ Q of ways [m3/s]; unknown where one of them states no flow."""
    flows = [way.given("flow", "Q") for way in ways]
    known = tuple(each for each in flows if isinstance(each, Known))
    if len(known) < len(flows):
        return merged([each for each in flows if isinstance(each, Unknown)])
    total = oil_ways.flow_sum(tuple(each.number for each in known))
    return Known(total, "m3/s", "Σ Q", origin=equation_of(oil_ways.flow_sum), inputs=known)


def _ways_to(design: Design, name: str) -> list[Subject] | Unknown:
    ways = all_ways(design)
    if isinstance(ways, Unknown):
        return ways
    unclear = tuple(way.place("to") for way in ways if way.raw("to") is None)
    found = [way for way in ways if way.raw("to") == name]
    return Unknown(unclear) if unclear and not found else found


def drains_back(design: Design) -> list[Subject] | Unknown:
    """The drains that lead oil out of the case to where it rests."""
    ways = all_ways(design)
    if isinstance(ways, Unknown):
        return ways
    drains = [way for way in ways if way.raw("kind") == "drain"]
    unclear = tuple(way.place("to") for way in drains if way.raw("to") is None)
    if unclear:
        return Unknown(unclear)
    return [way for way in drains if way.raw("to") in _ENDS]


def all_ways(design: Design) -> list[Subject] | Unknown:
    """Every stated way of the oil."""
    place = _place(design)
    ways = properties.lubrication(design).raw("paths")
    if ways is None:
        return Unknown((place,))
    return [Subject("supply", "", (*place, index), each) for index, each in enumerate(ways)]


def _place(design: Design) -> Path:
    return properties.lubrication(design).place("paths")
