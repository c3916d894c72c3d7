"""Measures of the shaft seals: pressure and its sense, speed, temperature, running surface."""

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures import oil_properties as properties
from checker.measures.bounded import more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.vent import crankcase_pressure
from checker.mechanics import kinematics, oil
from checker.mechanics import seal as seal_mechanics
from checker.mechanics.seal import LIP_MATERIALS, LipMaterial
from checker.spec.subject import Subject

_LIP_RISE = assumed(
    20.0, "ΔK", "ΔT_lip", "seal makers (seen): the lip runs at least 20 K over the oil"
)
_BORNE = {
    "plain lip": seal_mechanics.plain_lip_pressure,
    "double lip": seal_mechanics.plain_lip_pressure,
    "back-to-back": seal_mechanics.plain_lip_pressure,
    "pressure lip": seal_mechanics.profile_lip_pressure,
}


@varying_measure("seal", "m/s", "surface speed under the lip", at="diameter")
def surface_speed(design: Design, seal: Subject, point: Subject) -> Value:
    """v, speed of the shaft under the lip [m/s]."""
    shaft = str(seal.raw("shaft"))
    return compute(
        seal_mechanics.lip_speed, design.motion.speed(shaft, point), seal.given("diameter", "d")
    )


@varying_measure("seal", "Pa", "pressure difference that the seal bears", at="kind")
def pressure_borne(design: Design, seal: Subject, point: Subject) -> Value:
    """p_lip, the maker's limit, or what a lip of this kind bears at its speed [Pa]."""
    stated = seal.given("pressure_limit", "p_lip")
    if isinstance(stated, Known):
        return stated
    kind = seal.given("kind")
    if isinstance(kind, Unknown):
        return kind
    formula = _BORNE.get(str(kind.value))
    if formula is None:
        return Unknown(stated.missing, f"no general limit for a {kind.value} seal")
    return compute(formula, design.measure("surface_speed", seal, point))


@varying_measure("seal", "Pa", "pressure across the seal, positive from inside", at="other_side")
def pressure_across(design: Design, seal: Subject, point: Subject) -> Value:
    """Δp, inside less the other side [Pa]."""
    beyond = seal.given("other_side", "other side")
    if isinstance(beyond, Unknown):
        return beyond
    if beyond.value == "engine crankcase":
        other = crankcase_pressure(design, point)
    else:
        other = Known(0.0, "Pa", "p_other", inputs=(beyond,))
    inside = design.measure("inside_pressure", design.subjects.the("drive"), point)
    return compute(seal_mechanics.pressure_across, inside, other)


@varying_measure("seal", "1", "pressure across the seal over what it bears", at="kind")
def pressure_share(design: Design, seal: Subject, point: Subject) -> Value:
    """|Δp| / p_lip."""
    return compute(
        seal_mechanics.pressure_share,
        design.measure("pressure_across", seal, point),
        design.measure("pressure_borne", seal, point),
    )


@varying_measure("seal", "Pa", "pressure that lifts the lip off the shaft", at="lip_faces")
def pressure_behind_lip(design: Design, seal: Subject, point: Subject) -> Value:
    """p_back, the part of Δp that acts on the back of the lip [Pa]."""
    return compute(
        seal_mechanics.pressure_behind_lip,
        design.measure("pressure_across", seal, point),
        seal.given("lip_faces", "lip"),
    )


@varying_measure("seal", "1", "surface speed over what the lip material bears", at="material")
def speed_share(design: Design, seal: Subject, point: Subject) -> Value:
    """v over the loosest speed found for the lip material."""
    lip = lip_of(seal)
    if isinstance(lip, Unknown):
        return lip
    borne = assumed(lip.speed_at_most, "m/s", "v_max", f"{lip.name} lip: {lip.speed_source}")
    return compute(kinematics.quotient, design.measure("surface_speed", seal, point), borne)


@varying_measure("seal", "1", "surface speed over the guide value of its material", at="material")
def guide_speed_share(design: Design, seal: Subject, point: Subject) -> Value:
    """v over the tightest speed found for the lip material."""
    lip = lip_of(seal)
    if isinstance(lip, Unknown):
        return lip
    guide = assumed(lip.speed, "m/s", "v_guide", f"{lip.name} lip: {lip.speed_source}")
    return compute(kinematics.quotient, design.measure("surface_speed", seal, point), guide)


@measure("seal", "ΔK", "what the lip material bears less the lip temperature", at="material")
def lip_heat_reserve(design: Design, seal: Subject) -> Value:
    """How far the lip, 20 K over the hottest oil, stays below what its material bears [K]."""
    lip = lip_of(seal)
    if isinstance(lip, Unknown):
        return lip
    hottest = assumed(lip.hottest, "K", "T_max", f"{lip.name} lip: {lip.temperature_source}")

    def reserve(running: Value) -> Value:
        at_lip = compute(seal_mechanics.lip_temperature, running, _LIP_RISE)
        return compute(oil.temperature_reserve, hottest, at_lip)

    running = design.measure("hottest_oil", properties.lubrication(design))
    return more_is_worse(running, reserve)


@measure("seal", "ΔK", "coldest start over the lowest temperature of the lip", at="material")
def lip_cold_reserve(design: Design, seal: Subject) -> Value:
    """How far the coldest start stays above where the lip no longer follows the shaft [K]."""
    lip = lip_of(seal)
    if isinstance(lip, Unknown):
        return lip
    coldest = assumed(lip.coldest, "K", "T_min", f"{lip.name} lip: {lip.temperature_source}")
    start = properties.lubrication(design).given("cold_start_temperature", "T_start")
    return compute(oil.temperature_reserve, start, coldest)


@measure("seal", "", "how the lip material bears the oil", at="material")
def lip_in_oil(design: Design, seal: Subject) -> Value:
    """good, limited or poor, by the family of the oil."""
    return properties.resistance(design, seal.given("material"))


@varying_measure("seal", "1", "hardness under the lip over what it needs", at="shaft_hardness")
def hardness_share(design: Design, seal: Subject, point: Subject) -> Value:
    """Rockwell hardness over 45, or 55 from 4 m/s or where dirt can reach the lip."""
    hardness = seal.given("shaft_hardness", "HRC", "low")
    if isinstance(hardness, Known) and hardness.unit != "HRC":
        place = seal.place("shaft_hardness")
        return Unknown((place,), f"it is stated in {hardness.unit}, the need is known in HRC")
    beyond = seal.given("other_side")
    if isinstance(beyond, Unknown):
        return beyond
    dirt = Known(beyond.value == "outside air", "", "dirt", inputs=(beyond,))
    needed = compute(
        seal_mechanics.shaft_hardness, design.measure("surface_speed", seal, point), dirt
    )
    return compute(kinematics.quotient, hardness, needed)


def lip_of(seal: Subject) -> LipMaterial | Unknown:
    """What is known of the material of a lip; unknown where it is not stated or none is."""
    material = seal.given("material")
    if isinstance(material, Unknown):
        return material
    lip = LIP_MATERIALS.get(str(material.value))
    if lip is None:
        return Unknown(
            (seal.place("material"),), f"no figures are known for lips of {material.value}"
        )
    return lip
