"""Properties of the oil: as the spec states them, else as its family is known for.

A family's figures have two ends. Films rest on the low one, cold starts on the high one. Whatever
comes from the family is an assumption and is listed as one.
"""

from collections.abc import Callable
from typing import Literal

from checker.known import Known, Plain, Unknown, Value, all_known, assumed, compute, merged
from checker.measures.design import Design
from checker.mechanics import oil
from checker.mechanics.oil_families import OilFamily, family
from checker.spec.subject import Subject

End = Literal["low", "high"]

HARMFUL_TO_CLUTCH = (True, "EP", "molybdenum disulphide", "graphite")
"""What no one-way clutch grips in: GL-5, sulphur-phosphorus additives, solid lubricants."""


def lubrication(design: Design) -> Subject:
    """The part of the spec that states the oil."""
    return design.subjects.the("lubrication")


def oil_family(design: Design) -> OilFamily | Unknown:
    """The family of the oil in the drive."""
    return _family(lubrication(design), "oil.name")


def viscosity(design: Design, temperature: Value, end: End) -> Value:
    """ν at a temperature [m2/s], at the low end for a film or the high end for a start."""
    return half_stated(design) or compute(
        oil.viscosity_at, temperature, viscosity_40(design, end), viscosity_100(design, end)
    )


def half_stated(design: Design) -> Unknown | None:
    """The viscosity that is missing where just one of the two is stated.

    A stated viscosity beside the typical other one is no oil at all: both are stated, or neither.
    """
    stated = [lubrication(design).given(f"oil.viscosity_{at}") for at in (40, 100)]
    unknown = [value for value in stated if isinstance(value, Unknown)]
    return unknown[0] if len(unknown) == 1 else None


def viscosity_40(design: Design, end: End) -> Value:
    """ν at 40 °C [m2/s]."""
    return _stated_or_typical(
        design,
        "viscosity_40",
        "m2/s",
        "ν_40",
        lambda each: each.viscosity_40_low if end == "low" else each.viscosity_40_high,
        end,
    )


def viscosity_100(design: Design, end: End) -> Value:
    """ν at 100 °C [m2/s]."""
    return _stated_or_typical(
        design,
        "viscosity_100",
        "m2/s",
        "ν_100",
        lambda each: each.viscosity_100_low if end == "low" else each.viscosity_100_high,
        end,
    )


def density_15(design: Design) -> Value:
    """ρ at 15 °C [kg/m3]."""
    return _stated_or_typical(
        design, "density_15", "kg/m3", "ρ₁₅", lambda each: each.density_15, "value"
    )


def cold_limit(design: Design) -> Value:
    """Temperature below which the oil may not flow [K]."""
    return _stated_or_typical(
        design, "cold_limit", "K", "T_cold", lambda each: each.cold_limit, "high"
    )


def additives(design: Design) -> Value:
    """Additive class: none, anti-wear or EP."""
    return _stated_or_typical(
        design, "additives", "", "additives", lambda each: each.chemistry.additives
    )


def base(design: Design) -> Value:
    """Base stock."""
    return _stated_or_typical(design, "base", "", "base", lambda each: each.chemistry.base)


def friction_modified(design: Design) -> Value:
    """Whether the oil holds friction modifiers."""
    return _stated_or_typical(
        design,
        "friction_modified",
        "",
        "friction modified",
        lambda each: each.chemistry.friction_modified,
    )


def harms_clutch(design: Design) -> Value:
    """Whether the oil is GL-5, EP or holds a solid lubricant; one of them is enough."""
    values = (
        _stated_or_typical(design, "gl5", "", "GL-5", lambda each: each.chemistry.gl5),
        additives(design),
        lubrication(design).given("oil.solid_lubricant"),
    )
    harmful = tuple(
        each for each in values if isinstance(each, Known) and each.value in HARMFUL_TO_CLUTCH
    )
    if harmful:
        return Known(True, "", "harms the clutch", inputs=harmful)
    missing = all_known(*values)
    if missing:
        return missing
    known = tuple(each for each in values if isinstance(each, Known))
    return Known(False, "", "harms the clutch", inputs=known)


def resistance(design: Design, elastomer: Value) -> Value:
    """How an elastomer bears the oil: good, limited or poor."""
    if isinstance(elastomer, Unknown):
        return elastomer
    found = oil_family(design)
    if isinstance(found, Unknown):
        return found
    word = found.chemistry.elastomers.get(str(elastomer.value))
    if word is None:
        return Unknown(because=f"nothing is known of {elastomer.value} in {found.name}")
    return Known(word, "", "resistance", origin=_typical(found), inputs=(elastomer,))


def oils_together(design: Design) -> Value:
    """What drive oil and engine oil are to each other: same oil, same class, clash, never mix."""
    engine = design.subjects.the("engine")
    ours, theirs = oil_family(design), _family(engine, "oil.name")
    if isinstance(ours, Unknown) or isinstance(theirs, Unknown):
        return merged([each for each in (ours, theirs) if isinstance(each, Unknown)])
    sharing = {each.chemistry.with_engine_oil for each in (ours, theirs)}
    if ours.name == theirs.name:
        word = "same oil"
    elif "never" in sharing:
        word = "never mix"
    else:
        word = "same class" if sharing == {"same"} else "clash"
    names = (lubrication(design).given("oil.name"), engine.given("oil.name"))
    known = tuple(each for each in names if isinstance(each, Known))
    return Known(word, "", "oils together", inputs=known)


def _family(subject: Subject, field: str) -> OilFamily | Unknown:
    name = subject.given(field)
    return name if isinstance(name, Unknown) else family(str(name.value))


def _stated_or_typical(
    design: Design,
    field: str,
    unit: str,
    symbol: str,
    typical: Callable[[OilFamily], Plain | None],
    end: Literal["value", "low", "high"] = "value",
) -> Value:
    stated = lubrication(design).given(f"oil.{field}", symbol, end)
    if isinstance(stated, Known):
        return stated
    found = oil_family(design)
    if isinstance(found, Unknown):
        return merged([stated, found])
    value = typical(found)
    if value is None:
        return Unknown(stated.missing, f"it differs among oils of the family {found.name}")
    return assumed(value, unit, symbol, _typical(found))


def _typical(found: OilFamily) -> str:
    return f"typical of {found.name}; {found.chemistry.source}; {found.source}"
