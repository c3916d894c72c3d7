"""Measures of the joints that carry the torque."""

from checker.known import Known, Unknown, Value, compute
from checker.measures.bearing_loads import worst_of
from checker.measures.design import Design
from checker.measures.preload import greatest_preload, least_preload
from checker.measures.registry import measure
from checker.measures.stated import described
from checker.measures.stress_raisers import fitted_kinds
from checker.mechanics import joint as formulas
from checker.mechanics import kinematics, load_cases
from checker.spec.subject import Subject


def _over_peak(design: Design, joint: Subject, torque: Value) -> Value:
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, torque, peak), joint.raw("shaft")
    )


@measure("joint", "1", "friction torque over peak torque", at="preload")
def friction_margin(design: Design, joint: Subject) -> Value:
    """Torque that the slackest bolts hold by friction over the peak; at best that of the floor."""
    friction = compute(
        formulas.friction_torque,
        joint.given("bolts", "N"),
        joint.given("friction_coefficient", "μ"),
        least_preload(joint),
        joint.given("friction_radius", "r"),
    )
    return _over_peak(design, joint, friction)


@measure("joint", "1", "stated torque capacity over peak torque", at="torque_capacity")
def capacity_margin(design: Design, joint: Subject) -> Value:
    """Stated torque capacity over the peak torque; at best that of the floor."""
    return _over_peak(design, joint, joint.given("torque_capacity", "T_cap"))


@measure("drive", "", "whether the joint to the propeller is stated")
def propeller_joined(design: Design, drive: Subject) -> Value:
    """Whether a joint of the last shaft to the propeller is stated; unknown where none is."""
    return _joined(design, design.train.last, "propeller")


@measure("drive", "", "whether the joint to the engine is stated")
def engine_joined(design: Design, drive: Subject) -> Value:
    """Whether the first shaft is joined to the engine, or is of one piece with the crankshaft.

    Unknown where neither is stated.
    """
    joined = _joined(design, design.train.first, "engine")
    one_piece = design.subjects.the("engine").given("one_piece", "one piece")
    if isinstance(joined, Known) or isinstance(one_piece, Unknown) or not one_piece.value:
        return joined
    return Known(True, "", "one piece", inputs=(one_piece,))


def _joined(design: Design, shaft: str, to: str) -> Value:
    joints = [joint for joint in design.subjects.all("joint") if joint.raw("shaft") == shaft]
    found = next((joint for joint in joints if joint.raw("to") == to), None)
    if found is not None:
        return Known(True, "", found.label, path=found.place("to"))
    unsaid = tuple(joint.place("to") for joint in joints if joint.raw("to") is None)
    return Unknown(unsaid or (("joints",),), f"no joint from shafts.{shaft} to the {to} is stated")


@measure("shaft", "", "whether a section of it is made for a joint", at="sections")
def has_fitted_section(design: Design, shaft: Subject) -> Value:
    """Whether a section ends in a spline, keyway, press fit or taper."""
    origin = "notch of the sections"
    return Known(bool(fitted_kinds(shaft)), "", "made for a joint", origin=origin)


@measure("shaft", "", "whether each section made for a joint has it stated", at="sections")
def fitted_sections_joined(design: Design, shaft: Subject) -> Value:
    """Whether a joint of the kind stands on the shaft; unknown where none is stated."""
    kinds = [
        joint.raw("kind")
        for joint in design.subjects.all("joint")
        if shaft.name in (joint.raw("shaft"), joint.raw("to"))
    ]
    lacking = [kind for kind in fitted_kinds(shaft) if kind not in kinds]
    if lacking:
        because = f"{shaft.label} has a section for a {lacking[0]}, and no such joint is stated"
        return Unknown((("joints",),), because)
    return Known(True, "", "joined", origin="kinds of the joints on the shaft")


@measure("joint", "1", "torque of start, kick-back or dead engine over peak torque", at="shaft")
def sudden_torque_of_joint(design: Design, joint: Subject) -> Value:
    """The greatest of these torques over the peak torque by which the joint is judged."""
    shaft = str(joint.raw("shaft"))
    peak = design.peaks.peak(shaft)
    return worst_of(
        design.reactions.cases.sudden,
        lambda case: compute(load_cases.sudden_share, case.torque(shaft), peak),
    )


@measure("joint", "1", "preload over proof load of a bolt", at="preload")
def preload_fraction(design: Design, joint: Subject) -> Value:
    """k, preload of a bolt over its proof load, as it is meant."""
    return fraction_of_proof(joint, joint.given("preload", "F"))


@measure("joint", "1", "preload over proof load of the tightest bolt", at="preload")
def highest_preload_fraction(design: Design, joint: Subject) -> Value:
    """k of the bolt that came out tightest."""
    return fraction_of_proof(joint, greatest_preload(joint))


def fraction_of_proof(part: Subject, preload: Value, inside: str = "") -> Value:
    """k, a preload over the proof load of a bolt.

    Args:
        part: what has the bolts.
        preload: of one bolt [N].
        inside: where in the part its bolts are described, with a dot.
    """
    diameter = part.given(f"{inside}bolt_diameter", "d")
    return compute(
        formulas.preload_fraction,
        preload,
        compute(formulas.proof_stress, part.given(f"{inside}bolt_class", "class"), diameter),
        compute(formulas.stress_area, diameter, part.given(f"{inside}bolt_pitch", "P")),
    )


@measure("joint", "", "whether the locking of bolts or nut is described")
def locking_stated(design: Design, joint: Subject) -> Value:
    """Whether it is stated how bolts or nut are kept from turning; false where it is ``none``."""
    return described(joint, "locking")


@measure("joint", "1", "bolts of the hub over bolts of the joint", at="bolts")
def hub_bolt_ratio(design: Design, joint: Subject) -> Value:
    """Number of bolts through the propeller hub over the number of the joint's bolts."""
    return compute(
        kinematics.quotient,
        design.subjects.the("propeller").given("hub_bolts", "N_hub"),
        joint.given("bolts", "N"),
    )
