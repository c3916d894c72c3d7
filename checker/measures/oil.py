"""Measures of the oil: what it does to clutch, metals and rubber, and how thick it is."""

from checker.known import Known, Unknown, Value, assumed, compute, merged
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import kinematics, oil, oil_families, vent
from checker.spec.subject import Subject

_CLUTCH_START_VISCOSITY = assumed(
    180e-6,
    "m2/s",
    "ν_max",
    "a clutch maker's list of oils by temperature (seen): VG 10 from -15 °C is its thickest, about "
    "180 mm²/s by ASTM D341",
)


@measure("lubrication", "K", "hottest oil temperature of the operation points")
def hottest_oil_temperature(design: Design, lubrication: Subject) -> Value:
    """T, highest stated oil temperature over the operation points [K]."""
    values = [point.given("oil_temperature", "T_oil") for point in design.points]
    unknown = [value for value in values if isinstance(value, Unknown)]
    if unknown or not values:
        return merged(unknown) if unknown else Unknown((("operation",),))
    known = [value for value in values if isinstance(value, Known)]
    return max(known, key=lambda value: value.number)


@measure("clutch", "", "what the oil does to a one-way clutch", at="approved_oils")
def oil_for_clutch(design: Design, clutch: Subject) -> Value:
    """suits; or harmful, approved; or harmful, not approved: by additives and the maker's list."""
    harmful = properties.harms_clutch(design)
    if isinstance(harmful, Unknown):
        return harmful
    if not harmful.value:
        return Known("suits", "", "oil for the clutch", inputs=harmful.inputs)
    approval = _approval(design, clutch)
    if isinstance(approval, Known):
        inputs = (*harmful.inputs, approval)
        return Known("harmful, approved", "", "oil for the clutch", inputs=inputs)
    return Known("harmful, not approved", "", "oil for the clutch", inputs=harmful.inputs)


@measure("clutch", "", "whether friction modifiers are ruled out or approved", at="approved_oils")
def friction_modifier_cleared(design: Design, clutch: Subject) -> Value:
    """none; or approved: only the maker of the clutch can say that it grips in a modified oil."""
    modified = properties.friction_modified(design)
    if isinstance(modified, Known) and not modified.value:
        return Known("none", "", "friction modifier", inputs=(modified,))
    approval = _approval(design, clutch)
    if isinstance(approval, Known):
        return Known("approved", "", "friction modifier", inputs=(approval,))
    if isinstance(modified, Unknown):
        return merged([modified, approval])
    return Unknown(
        approval.missing,
        "the oil is friction-modified, and only the clutch maker can say that the clutch grips in "
        "it; wet-plate clutch grades say nothing of one-way clutches",
    )


@measure(
    "clutch", "1", "start viscosity over what the clutch engages in", at="highest_start_viscosity"
)
def clutch_start_viscosity_share(design: Design, clutch: Subject) -> Value:
    """Oil viscosity at the coldest start over the highest at which the clutch engages."""
    highest = clutch.given("highest_start_viscosity", "ν_max")
    if isinstance(highest, Unknown):
        highest = _CLUTCH_START_VISCOSITY
    start = _start_viscosity(design)
    return compute(kinematics.quotient, start, highest)


@measure("lubrication", "", "what the oil shared with the engine is", at="oil.name")
def shared_oil(design: Design, lubrication: Subject) -> Value:
    """engine oil, no engine oil, or two oils where the spec names two for one supply."""
    together = properties.oils_together(design)
    found = properties.oil_family(design)
    if isinstance(together, Unknown) or isinstance(found, Unknown):
        return together
    if together.value != "same oil":
        word = "two oils"
    elif found.chemistry.with_engine_oil in ("same", "own kind"):
        word = "engine oil"
    else:
        word = "no engine oil"
    return Known(word, "", "shared oil", inputs=together.inputs)


@measure("lubrication", "", "how bronze and brass bear the oil", at="oil.name")
def yellow_metal_in_oil(design: Design, lubrication: Subject) -> Value:
    """bears it or may be attacked, by the additives."""
    additives = properties.additives(design)
    if isinstance(additives, Known) and additives.value != "EP":
        return Known("bears it", "", "yellow metal", inputs=(additives,))
    found = properties.oil_family(design)
    if isinstance(found, Unknown):
        return found
    # EP that is not of the family's own kind is taken as the active one.
    mild = found.chemistry.yellow_metal == "ok" and found.chemistry.additives == "EP"
    word = "bears it" if mild else "may be attacked"
    inputs = (additives,) if isinstance(additives, Known) else ()
    return Known(word, "", "yellow metal", origin=found.chemistry.source, inputs=inputs)


@measure("damper", "", "how the elastomer bears the oil", at="elastomer")
def elastomer_in_oil(design: Design, damper: Subject) -> Value:
    """good, limited or poor, by the family of the oil."""
    return properties.resistance(design, damper.given("elastomer"))


@measure("lubrication", "ΔK", "coldest start over the cold limit of the oil", at="oil.name")
def cold_start_reserve(design: Design, lubrication: Subject) -> Value:
    """How far the coldest start stays above where the oil may no longer flow [K]."""
    return compute(
        oil.temperature_reserve, _start_temperature(design), properties.cold_limit(design)
    )


@measure("lubrication", "m2/s", "oil viscosity at the coldest start", at="cold_start_temperature")
def start_viscosity(design: Design, lubrication: Subject) -> Value:
    """ν at the coldest start, at the high end of what the oil may be [m2/s]."""
    return _start_viscosity(design)


@measure("lubrication", "m2/s", "oil viscosity at the hottest oil temperature", at="oil.name")
def hot_viscosity(design: Design, lubrication: Subject) -> Value:
    """ν at the hottest stated oil temperature, at the low end of what the oil may be [m2/s]."""
    hottest = design.measure("hottest_oil_temperature", lubrication)
    return properties.viscosity(design, hottest, "low")


@measure("lubrication", "1", "viscosity index of the oil", at="oil.viscosity_40")
def viscosity_index(design: Design, lubrication: Subject) -> Value:
    """VI of the two viscosities at 40 and 100 °C, at the low end of what the oil may be."""
    return properties.half_stated(design) or compute(
        oil.viscosity_index,
        properties.viscosity_40(design, "low"),
        properties.viscosity_100(design, "low"),
    )


@measure(
    "lubrication", "ΔK", "what the base oil bears for long less the hottest oil", at="oil.name"
)
def heat_reserve(design: Design, lubrication: Subject) -> Value:
    """How far the hottest stated oil temperature stays below what the base stock bears [K]."""
    return compute(
        oil.temperature_reserve,
        compute(oil_families.highest_oil_temperature, properties.base(design)),
        design.measure("hottest_oil_temperature", lubrication),
    )


@measure("lubrication", "s", "time that oil rests to give up air", at="settling_volume")
def residence_time(design: Design, lubrication: Subject) -> Value:
    """t_r, settled oil over circulating flow [s]."""
    return compute(
        vent.residence_time,
        lubrication.given("settling_volume", "V_oil"),
        lubrication.given("circulating_flow", "Q"),
    )


@varying_measure("mesh", "1", "tooth force over the largest of all operation points")
def load_share(design: Design, mesh: Subject, point: Subject) -> Value:
    """F_tw at the point over the largest F_tw."""
    return compute(
        kinematics.quotient,
        design.measure("tangential_force", mesh, point),
        design.greatest("tangential_force", mesh),
    )


@varying_measure("mesh", "1", "viscosity at 40 °C over what the pitch-line speed asks for")
def viscosity_over_need(design: Design, mesh: Subject, point: Subject) -> Value:
    """ν_40 over 500/√v."""
    need = compute(oil.required_viscosity_40, design.measure("pitch_line_velocity", mesh, point))
    return compute(kinematics.quotient, properties.viscosity_40(design, "low"), need)


def _start_temperature(design: Design) -> Value:
    return properties.lubrication(design).given("cold_start_temperature", "T_start")


def _start_viscosity(design: Design) -> Value:
    return properties.viscosity(design, _start_temperature(design), "high")


def _approval(design: Design, clutch: Subject) -> Value:
    """The maker's written approval of this oil; unknown names what an incomplete one lacks."""
    name = properties.lubrication(design).given("oil.name")
    if isinstance(name, Unknown):
        return name
    place = clutch.place("approved_oils")
    lacking = []
    for index, entry in enumerate(clutch.raw("approved_oils") or ()):
        if entry.oil is None or _folded(entry.oil) != _folded(str(name.value)):
            continue
        absent = [field for field in ("by", "document") if getattr(entry, field) is None]
        if not absent:
            return Known(True, "", "approval", path=(*place, index))
        lacking += [(*place, index, field) for field in absent]
    return Unknown(tuple(lacking) or (place,))


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())
