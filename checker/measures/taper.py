"""Measures of a tapered joint: its grip, its hub, and its seat under the propeller's couples."""

from checker.known import Unknown, Value, compute
from checker.measures.bearing_loads import worst_of
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.fastening import propeller_moment
from checker.measures.preload import greatest_preload, least_preload
from checker.measures.registry import measure
from checker.measures.stress_raisers import ends
from checker.mechanics import fastening, kinematics
from checker.mechanics import taper as formulas
from checker.mechanics.shaft_strength import safety_of_use
from checker.spec.subject import Subject
from checker.train.load_cases import LoadCase


@measure("joint", "1", "friction torque of the taper over peak torque", at="preload")
def taper_margin(design: Design, joint: Subject) -> Value:
    """Torque held with the slackest nut over the peak; at best that of the floor."""
    torque = compute(
        formulas.taper_torque,
        joint.given("friction_coefficient", "μ"),
        least_preload(joint),
        joint.given("diameter", "d_m"),
        joint.given("half_angle", "α"),
    )
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, torque, peak), str(joint.raw("shaft"))
    )


@measure("joint", "1", "safety of the hub of a taper against yield", at="hub_outside")
def taper_hub_safety(design: Design, joint: Subject) -> Value:
    """Yield strength over the hoop stress with the tightest nut, at the thick end of the taper."""
    thick = compute(
        formulas.large_end,
        joint.given("diameter", "d_m"),
        joint.given("length", "L"),
        joint.given("half_angle", "α"),
    )
    stress = compute(
        fastening.hub_hoop_stress,
        _pressure(joint, greatest_preload(joint)),
        thick,
        joint.given("hub_outside", "D"),
    )
    return compute(kinematics.quotient, joint.given("yield_strength", "R_e"), stress)


@measure("joint", "1", "pressure on the taper over what lifts an end of its hub", at="preload")
def taper_seat_safety(design: Design, joint: Subject) -> Value:
    """p/p_M of the seat of the propeller, with the slackest nut, in the worst limit case."""
    use = worst_of(design.reactions.cases.limits, lambda each: _lifting_use(design, joint, each))
    return more_is_worse(use, lambda each: compute(safety_of_use, each))


def _lifting_use(design: Design, joint: Subject, each: LoadCase) -> Value:
    lifting = compute(
        formulas.couple_pressure,
        propeller_moment(design, each, _middle(design, joint)),
        joint.given("diameter", "d_m"),
        joint.given("length", "L"),
    )
    pulled = largest(design.reactions.forces.thrusts_on_shaft(each))
    held = compute(formulas.seating_force, least_preload(joint), pulled)
    return compute(kinematics.quotient, lifting, _pressure(joint, held))


def _pressure(joint: Subject, force: Value) -> Value:
    return compute(
        formulas.taper_pressure,
        joint.given("friction_coefficient", "μ"),
        force,
        joint.given("diameter", "d_m"),
        joint.given("half_angle", "α"),
        joint.given("length", "L"),
    )


def _middle(design: Design, joint: Subject) -> Value:
    """Station of the middle of the section that is made for the taper; the last of such."""
    shaft = design.subjects.the("shaft", str(joint.raw("shaft")))
    sections = shaft.raw("sections") or ()
    made = [index for index, section in enumerate(sections) if section.notch == "taper"]
    if not made:
        because = f"no section of {shaft.label} is made for a taper"
        return Unknown((shaft.place("sections"),), because)
    return compute(formulas.middle, *ends(shaft, made[-1]))
