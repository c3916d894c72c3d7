"""Measures of the flow balance of the oil: pump, drains, what is fed, and every node between."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.supply import is_dry
from checker.measures.supply_network import (
    ENGINE_SOURCES,
    all_ways,
    drains_back,
    part_named,
    total_flow,
)
from checker.mechanics import kinematics
from checker.spec.subject import Subject


@measure("lubrication", "1", "what the ways ask of the pump over its flow", at="pump_flow")
def demand_share(design: Design, lubrication: Subject) -> Value:
    """Σ Q of all ways that start at the pump or its reservoir, over the flow of the pump."""
    ways = all_ways(design)
    if isinstance(ways, Unknown):
        return ways
    first = [
        way
        for way in ways
        if way.raw("kind") != "drain" and part_named(design, str(way.raw("from"))) is None
    ]
    return compute(kinematics.quotient, total_flow(first), lubrication.given("pump_flow", "Q_p"))


@measure("lubrication", "1", "what the drains take over what comes in", at="paths")
def drain_share(design: Design, lubrication: Subject) -> Value:
    """Σ Q of the drains to reservoir or engine over the flow that circulates."""
    drains = drains_back(design)
    if isinstance(drains, Unknown):
        return drains
    circulating = lubrication.given("circulating_flow", "Q")
    return compute(kinematics.quotient, total_flow(drains), circulating)


@measure("lubrication", "1", "what is fed over the flow said to circulate", at="circulating_flow")
def fed_share(design: Design, lubrication: Subject) -> Value:
    """Flow of the pump, or without one Σ Q of the ways that bring oil in, over that stated."""
    system = lubrication.given("system")
    if isinstance(system, Unknown):
        return system
    if "pump" in str(system.value):
        fed = lubrication.given("pump_flow", "Q_p")
    else:
        ways = all_ways(design)
        if isinstance(ways, Unknown):
            return ways
        fed = total_flow([way for way in ways if way.raw("from") in (*ENGINE_SOURCES, "reservoir")])
    return compute(kinematics.quotient, fed, lubrication.given("circulating_flow", "Q"))


@measure("lubrication", "1", "most that a part passes on over what it gets", at="paths")
def passed_on_share(design: Design, lubrication: Subject) -> Value:
    """Greatest Σ Q out over Σ Q in of a part that passes a stated flow on; 0 where none does."""
    ways = all_ways(design)
    if isinstance(ways, Unknown):
        return ways
    shares = [_passed_on(ways, name) for name in _passing(design, ways)]
    known = [each for each in shares if isinstance(each, Known)]
    worst = max(known, key=lambda each: each.number, default=None)
    if len(known) < len(shares):
        missing = merged([each for each in shares if isinstance(each, Unknown)])
        return Unknown(missing.missing, missing.because, worst)
    place = lubrication.place("paths")
    return worst or Known(0.0, "1", "Q_out/Q_in", path=place)


def _passing(design: Design, ways: list[Subject]) -> list[str]:
    """Names of the parts from which a way with a stated flow starts, each once."""
    names = [
        str(way.raw("from"))
        for way in ways
        if way.raw("from") and way.raw("flow") and not is_dry(way.given("flow"))
    ]
    return [each for each in dict.fromkeys(names) if part_named(design, each) is not None]


def _passed_on(ways: list[Subject], name: str) -> Value:
    out = total_flow([each for each in ways if each.raw("from") == name and each.raw("flow")])
    gets = [each for each in ways if each.raw("to") == name]
    if not gets:
        place = ways[0].path[:-1]
        return Unknown((place,), f"no way leads oil to {name}, which passes it on")
    return compute(kinematics.quotient, out, total_flow(gets))
