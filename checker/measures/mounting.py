"""Measures of the bolted face between gear case and engine."""

from collections.abc import Sequence

from checker.known import Unknown, Value, compute
from checker.measures.bearing_loads import worst_of
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.fastening import hanging_moment
from checker.measures.joints import fraction_of_proof
from checker.measures.preload import greatest_preload, least_preload
from checker.measures.registry import measure
from checker.measures.stated import described
from checker.mechanics import fastening, kinematics, load_cases, shaft_loads
from checker.mechanics import joint as formulas
from checker.mechanics.shaft_strength import safety_of_use
from checker.spec.subject import Subject
from checker.train.load_cases import LIMIT_TORQUE, LoadCase

_PRELOAD = "mounting.preload"


@measure("housing", "1", "safety of the case bolts against slip in the worst case", at="mounting")
def mounting_slip_safety(design: Design, case: Subject) -> Value:
    """μ (F_V − F_t)/F_s of the most loaded bolt, at its slackest, in the worst limit case."""

    def safety(limits: Sequence[LoadCase]) -> Value:
        use = worst_of(
            limits,
            lambda each: compute(
                fastening.slip_use,
                case.given("mounting.friction_coefficient", "μ"),
                least_preload(case, _PRELOAD),
                _bolt_tension(design, case, each),
                _bolt_shear(design, case, each),
            ),
        )
        return more_is_worse(use, lambda each: compute(safety_of_use, each))

    return design.reactions.cases.judged(safety, design.train.last)


@measure("housing", "1", "preload over the tension that opens the face", at="mounting")
def mounting_opening_safety(design: Design, case: Subject) -> Value:
    """F_V/F_t of the most loaded bolt, at its slackest, in the worst limit case."""
    worst = worst_of(design.reactions.cases.limits, lambda each: _bolt_tension(design, case, each))
    held = least_preload(case, _PRELOAD)
    return more_is_worse(worst, lambda pull: compute(fastening.opening_factor, held, pull))


@measure("housing", "1", "fatigue strength over stress amplitude of the case bolts", at="mounting")
def mounting_fatigue_safety(design: Design, case: Subject) -> Value:
    """σ_A/σ_a with the gyroscopic couple as a swinging load of every bolt."""
    diameter = case.given("mounting.bolt_diameter", "d")
    area = compute(formulas.stress_area, diameter, case.given("mounting.bolt_pitch", "P"))
    worst = worst_of(
        design.reactions.cases.gyroscopic,
        lambda each: compute(
            fastening.bolt_stress_amplitude,
            case.given("mounting.load_share", "Φ"),
            _bolt_tension(design, case, each),
            area,
        ),
    )
    strength = compute(fastening.bolt_fatigue_strength, diameter)
    return more_is_worse(worst, lambda swing: compute(kinematics.quotient, strength, swing))


@measure("housing", "1", "preload over proof load of a case bolt", at="mounting")
def mounting_preload_fraction(design: Design, case: Subject) -> Value:
    """k of a case bolt, as it is meant."""
    return fraction_of_proof(case, case.given(_PRELOAD, "F"), "mounting.")


@measure("housing", "1", "preload over proof load of the tightest case bolt", at="mounting")
def mounting_highest_preload_fraction(design: Design, case: Subject) -> Value:
    """k of the case bolt that came out tightest."""
    return fraction_of_proof(case, greatest_preload(case, _PRELOAD), "mounting.")


@measure("housing", "", "whether the locking of the case bolts is described", at="mounting")
def mounting_locking_stated(design: Design, case: Subject) -> Value:
    """Whether the case bolts are kept from turning; false where it is ``none``."""
    return described(case, "mounting.locking")


def _bolt_shear(design: Design, case: Subject, each: LoadCase) -> Value:
    """Shear of a case bolt by torque reaction, weight and side load [N]."""
    torque = _case_torque(design, each)
    factor = compute(load_cases.side_load_factor, each.load_factor)
    across = compute(
        fastening.cross_force, _weight(design, case, each), _hanging_mass(design, case), factor
    )
    return compute(
        fastening.bolt_shear_force,
        torque,
        across,
        case.given("mounting.bolts", "N"),
        case.given("mounting.circle_radius", "r"),
    )


def _case_torque(design: Design, each: LoadCase) -> Value:
    """Torque that the case takes between the shaft that enters it and that of the propeller [N m].

    The peaks of both do not come at once: where they relieve each other, the mean of the entering
    shaft stands against the peak of the last.
    """
    entering, last = _entering(design), design.train.last
    if entering is None:
        return Unknown((("bearings",),), "no bearing tells which shaft enters the case")
    senses = design.motion.sense(last), design.motion.sense(entering)
    alike = compute(kinematics.senses_agree, *senses)
    if isinstance(alike, Unknown):
        return alike
    relieved = each.kind == LIMIT_TORQUE and alike.value
    mean = design.peaks.mean(entering, each.rating)
    taken_in = mean if relieved else each.torque(entering)
    return compute(fastening.case_torque, each.torque(last), taken_in, *senses)


def _entering(design: Design) -> str | None:
    """The first shaft of the power path that a bearing of the drive carries."""
    carried = {bearing.raw("shaft") for bearing in design.subjects.all("bearing")}
    return next((shaft for shaft in design.train.path_shafts if shaft in carried), None)


def _bolt_tension(design: Design, case: Subject, each: LoadCase) -> Value:
    """Tension of a case bolt by weights, thrust, gyroscopic couple and yawed flow [N]."""
    face = case.given("mounting.station", "x_f")
    forces = design.reactions.forces
    moment_up, moment_right = forces.gyroscopic_couples(each)
    drive = compute(
        fastening.weight_moment,
        compute(load_cases.weight, case.given("mounting.drive_mass", "m"), each.load_factor),
        case.given("mounting.mass_station", "x"),
        face,
    )
    propeller = hanging_moment(design, each, face)
    vertical = compute(fastening.moment_sum, moment_up, drive, propeller)
    moment = compute(shaft_loads.resultant_moment, moment_right, vertical, forces.yawed_flow(each))
    return compute(
        fastening.bolt_tension,
        moment,
        largest(forces.thrusts_on_shaft(each)),
        case.given("mounting.bolts", "N"),
        case.given("mounting.circle_radius", "r"),
    )


def _hanging_mass(design: Design, case: Subject) -> Value:
    return compute(
        fastening.mass_sum,
        case.given("mounting.drive_mass", "m"),
        design.subjects.the("propeller").given("mass", "m_p"),
    )


def _weight(design: Design, case: Subject, each: LoadCase) -> Value:
    return compute(load_cases.weight, _hanging_mass(design, case), each.load_factor)
