"""Measures of the propeller: tip speed, inertia, evidence on vibration."""

from checker.known import Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.stated import stated
from checker.mechanics import air, kinematics
from checker.mechanics import propeller as formulas
from checker.spec.subject import Subject
from checker.train.outside_air import air_temperature


@varying_measure("propeller", "1", "Mach number of the blade tips through the air", at="diameter")
def helical_tip_mach(design: Design, propeller: Subject, point: Subject) -> Value:
    """Ma_tip, helical tip speed over the speed of sound in the air of the point."""
    return compute(
        formulas.helical_tip_mach,
        propeller.given("diameter", "D"),
        design.motion.speed(design.train.last, point),
        point.given("airspeed", "V"),
        compute(air.speed_of_sound, air_temperature(point)),
    )


@measure("propeller", "1", "inertia over the largest allowed", at="inertia")
def inertia_over_limit(design: Design, propeller: Subject) -> Value:
    """Inertia over the largest that engine or drive allow."""
    return compute(
        kinematics.quotient,
        propeller.given("inertia", "I"),
        propeller.given("inertia_limit", "I_max"),
    )


@measure("propeller", "1", "inertia over that of the same mass as a rod", at="inertia")
def inertia_over_rod(design: Design, propeller: Subject) -> Value:
    """Inertia over that of the same mass spread evenly over the diameter."""
    rod = compute(
        formulas.slender_rod_inertia, propeller.given("mass", "m"), propeller.given("diameter", "D")
    )
    return compute(kinematics.quotient, propeller.given("inertia", "I"), rod)


@measure("propeller", "", "whether the origin of the inertia is stated")
def inertia_evidence_stated(design: Design, propeller: Subject) -> Value:
    """Whether it is stated how the inertia is known."""
    return stated(propeller, "inertia_evidence")


@measure("propeller", "", "whether the propeller is a fixed-pitch one of wood")
def is_fixed_wood(design: Design, propeller: Subject) -> Value:
    """Whether blades of wood and a fixed pitch come together; either one missing decides it."""
    traits = [
        _is(propeller.given("material"), "wood"),
        _is(propeller.given("pitch"), "fixed"),
    ]
    for trait in traits:
        if isinstance(trait, Known) and not trait.value:
            return trait
    unknown = [trait for trait in traits if isinstance(trait, Unknown)]
    if unknown:
        return unknown[0]
    known = tuple(trait for trait in traits if isinstance(trait, Known))
    return Known(True, "", "fixed wood", inputs=known)


def _is(value: Value, word: str) -> Value:
    if isinstance(value, Unknown):
        return value
    return Known(value.value == word, "", f"is {word}", inputs=(value,))


@measure("propeller", "", "whether evidence on the vibration stress is stated")
def vibration_evidence_stated(design: Design, propeller: Subject) -> Value:
    """Whether evidence on the vibration stress on this engine and drive is named."""
    return stated(propeller, "vibration_evidence")
