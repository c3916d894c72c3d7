"""Measures of the oil level as the case tilts: how high it stands, and what it floods."""

from checker.known import Value, compute
from checker.measures import oil_properties as properties
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import kinematics, seal, vent
from checker.mechanics import lubrication as oil_ways
from checker.spec.subject import Subject


@varying_measure("lubrication", "m", "depth of the oil at the deep end of the tilted sump")
def tilted_level(design: Design, lubrication: Subject, point: Subject) -> Value:
    """h_max over the case bottom, filled to the mark, in the attitude of the point [m]."""
    case = design.subjects.the("housing")
    return compute(
        oil_ways.deepest_level,
        lubrication.given("running_level", "h"),
        case.given("sump_from", "x_1"),
        case.given("sump_to", "x_2"),
        point.given("nose_up", "θ"),
    )


@measure("lubrication", "m", "highest oil level, stated or tilted", at="highest_level")
def highest_oil(design: Design, lubrication: Subject) -> Value:
    """h, the higher of the level stated and that of all attitudes [m]; at best what is known."""
    return largest(
        [lubrication.given("highest_level", "h_oil"), design.greatest("tilted_level", lubrication)]
    )


@measure("lubrication", "1", "tilted oil over the highest level stated", at="highest_level")
def tilted_share(design: Design, lubrication: Subject) -> Value:
    """h_max of the worst attitude over the stated highest level."""
    return compute(
        kinematics.quotient,
        design.greatest("tilted_level", lubrication),
        lubrication.given("highest_level", "h_oil"),
    )


@varying_measure("seal", "m", "lowest place of the lip over the highest oil", at="diameter")
def height_over_oil(design: Design, each: Subject, point: Subject) -> Value:
    """Δh, lowest place of the running surface over the oil at the deep end of the sump [m]."""
    lubrication = properties.lubrication(design)
    shaft = design.subjects.the("shaft", str(each.raw("shaft")))
    lowest = compute(
        seal.lowest_place,
        shaft.given("centre.up", "y"),
        each.given("diameter", "d"),
        design.subjects.the("housing").given("bottom", "y_b"),
    )
    level = largest(
        [
            lubrication.given("highest_level", "h_oil"),
            design.measure("tilted_level", lubrication, point),
        ]
    )
    return more_is_worse(level, lambda oil: compute(vent.height_above_oil, lowest, oil))
