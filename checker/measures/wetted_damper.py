"""Measures of an elastomer that runs in oil: its own heat, what carries it off, how hot it gets."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.heat import heat_parts
from checker.measures.registry import measure, varying_measure
from checker.mechanics import elastomer
from checker.spec.fields import NONE
from checker.spec.subject import Subject


@measure("damper", "", "whether its elastomer runs in oil or pumps it", at="in_oil")
def elastomer_is_wetted(design: Design, damper: Subject) -> Value:
    """Whether there is an elastomer, and oil wets it or is moved by it."""
    rubber, wetted = damper.given("elastomer"), damper.given("in_oil")
    moves = damper.given("moves_oil")
    if isinstance(rubber, Known) and rubber.value == NONE:
        return Known(False, "", "wetted", inputs=(rubber,))
    for each in (wetted, moves):
        if isinstance(each, Known) and each.value:
            return Known(True, "", "wetted", inputs=(each,))
    unknown = [each for each in (rubber, wetted, moves) if isinstance(each, Unknown)]
    if unknown:
        return merged(unknown)
    return Known(False, "", "wetted", path=damper.place("in_oil"))


@varying_measure("damper", "K", "middle of the wetted elastomer, hot day", at="wetted_surface")
def wetted_temperature(design: Design, damper: Subject, point: Subject) -> Value:
    """T_e: the oil of the hot day, its rise through the damper, film and rubber [K]."""
    found = heat_parts(design, point)
    if isinstance(found, Unknown):
        return found
    _, parts = found
    made = parts.get(damper.label)
    if made is None:
        return Unknown((damper.place("in_oil"),), "the heat of the damper is not counted")
    return compute(
        elastomer.wetted_temperature,
        design.measure("hot_day_temperature", properties.lubrication(design), point),
        design.measure("oil_rise", damper, point),
        compute(
            elastomer.wetted_rise,
            made,
            damper.given("wetted_surface", "A"),
            damper.given("elastomer_thickness", "t"),
        ),
    )


@varying_measure("damper", "ΔK", "limit of the wetted elastomer less its middle", at="elastomer")
def wetted_reserve(design: Design, damper: Subject, point: Subject) -> Value:
    """ΔT below the lesser of what its maker allows and what the elastomer bears for long [K]."""
    limits = (
        damper.given("running_temperature_limit", "T_max"),
        compute(elastomer.lasting_temperature, damper.given("elastomer", "elastomer")),
    )
    known = [each for each in limits if isinstance(each, Known)]
    if len(known) < len(limits):
        return merged([each for each in limits if isinstance(each, Unknown)])
    least = min(known, key=lambda each: each.number)
    return compute(
        elastomer.temperature_reserve, least, design.measure("wetted_temperature", damper, point)
    )
