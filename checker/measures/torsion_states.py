"""Measures of torsional vibration beside the engaged drive at its points.

Start and stop of each part, the open clutch, the twist under the mean torque, and what is stated
against what the shape of a part gives.
"""

from checker.known import Detail, Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.torsion import at_point
from checker.mechanics import coupling, excitation, kinematics
from checker.mechanics import engine as engine_mechanics
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.clutch_rating import rated_torque_of
from checker.train.overrun import overrun_of
from checker.train.pressure_cycle import indicated_pressure, manifold_pressure
from checker.train.resonance import COUNTS_ABOVE
from checker.train.torsional_survey import TorsionalSurvey

_NO_CLUTCH = "no one-way clutch stands in the model"


def _passing(design: Design, shaft: str, nodes: list[int], words: str) -> Value:
    """Bound on the torque in some joints from standstill to idle, at the speed of a shaft [N m]."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    if not nodes:
        return Unknown(because=f"{words} is no part of the torsional model")
    highest = survey.run_through
    torque = max(float(highest[node]) for node in nodes) * survey.model.ratios[shaft].number
    return survey.found(torque, "N m", "T_bound")


def _nodes(survey: TorsionalSurvey | Unknown, kind: str, name: str) -> list[int]:
    if isinstance(survey, Unknown):
        return []
    if kind == "shaft":
        return survey.model.joints_of(name)
    node = survey.model.joint(kind, name)  # type: ignore[arg-type]
    return [] if node is None else [node]


@measure("mesh", "1", "peak torque rating of the teeth over torque of a start or stop")
def start_stop_margin(design: Design, mesh: Subject) -> Value:
    """Least peak rating of both gears over the bound on the torque from standstill to idle."""
    margins: list[Value] = []
    for wheel in (design.pairs[mesh.name].driver, design.pairs[mesh.name].driven):
        nodes = _nodes(design.survey, "mesh", mesh.name)
        torque = _passing(design, str(wheel.subject.raw("shaft")), nodes, f"mesh {mesh.name}")
        rating = wheel.subject.given("peak_torque_rating", "T_lim")
        margins.append(compute(kinematics.quotient, rating, torque))
    return _least(margins)


@measure("clutch", "1", "peak torque of the clutch over torque of a start or stop")
def start_stop_clutch_margin(design: Design, clutch: Subject) -> Value:
    """Rated torque over the bound on the torque from standstill to idle."""
    nodes = _nodes(design.survey, "clutch", "clutch")
    torque = _passing(design, str(clutch.raw("between")[0]), nodes, "the clutch")
    return compute(kinematics.quotient, rated_torque_of(clutch), torque)


@measure("shaft", "1", "torque that yields the shaft over torque of a start or stop")
def start_stop_shaft_margin(design: Design, shaft: Subject) -> Value:
    """Torque that yields its weakest section over the bound from standstill to idle."""
    nodes = _nodes(design.survey, "shaft", shaft.name)
    torque = _passing(design, shaft.name, nodes, f"shaft {shaft.name}")
    return _least(
        [compute(kinematics.quotient, each, torque) for each in values.yield_torques(shaft)]
    )


def _least(found: list[Value]) -> Value:
    """The least of some values; unknown where any is."""
    known = [each for each in found if isinstance(each, Known)]
    if len(known) < len(found):
        return next(each for each in found if isinstance(each, Unknown))
    return min(known, key=lambda each: each.number)


@measure("drive", "", "modes of the engine's side while the clutch overruns, in words")
def overrun_modes(design: Design, drive: Subject) -> Value:
    """Natural frequencies of what still turns with the engine when the clutch is open."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    overrun = overrun_of(survey)
    if overrun is None:
        return Unknown(because=_NO_CLUTCH)
    return survey.found("; ".join(overrun.words()) or "none", "", "modes")


@varying_measure("drive", "1", "separation from resonance of the engine's side, clutch open")
def overrun_separation(design: Design, drive: Subject, point: Subject) -> Value:
    """s of the orders that count against the modes of what turns with the engine."""
    found = at_point(design, point)
    if isinstance(found, Unknown):
        return found
    resonances, index = found
    survey = resonances.survey
    overrun = overrun_of(survey)
    if overrun is None:
        return Unknown(because=_NO_CLUTCH)
    apart, nearest = overrun.separation(float(survey.speed[index]), float(survey.mean[index]))
    words = Known(nearest, "", "nearest", origin=Detail("torsional survey"))
    return survey.found(apart, "1", "s", COUNTS_ABOVE, words)


@measure("damper", "rad", "twist under the largest mean torque", at="dynamic_stiffness")
def wind_up(design: Design, damper: Subject) -> Value:
    """φ of the hot damper under the largest mean torque of ratings and operation points."""
    torque = design.peaks.mean(str(damper.raw("between")[0]))
    return compute(coupling.twist, torque, values.damper_ends(design.subjects)[0])


@measure("damper", "1", "permitted twist over that under the largest mean torque", at="twist_limit")
def wind_up_margin(design: Design, damper: Subject) -> Value:
    """Twist that its maker permits over the twist of the hot damper."""
    limit = damper.given("twist_limit", "φ_max")
    return compute(kinematics.quotient, limit, design.measure("wind_up", damper))


@measure("drive", "1", "highest order that counts over the first blade frequency")
def rigid_propeller_reach(design: Design, drive: Subject) -> Value:
    """Frequency of the highest order that counts, at the top of the survey, over f of the blades.

    An order counts where the engine drives it by more than a tenth of its mean torque. Above the
    first blade frequency a rigid propeller is no valid model.
    """
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    every = tuple(range(len(survey.excitation.angles)))
    natural = design.subjects.the("propeller").given("first_blade_frequency", "f_b")
    return compute(kinematics.quotient, _highest_excitation(survey, (every,)), natural)


@measure("drive", "1", "highest order that counts over the first crank frequency")
def rigid_crank_reach(design: Design, drive: Subject) -> Value:
    """Frequency of the highest order that counts, at the top of the survey, over f of the crank.

    Here an order counts where the torques of the single cylinders add up to more than a tenth of
    the mean: those that cancel at the flange twist the crankshaft between the throws.
    """
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    each = tuple((cylinder,) for cylinder in range(len(survey.excitation.angles)))
    natural = design.subjects.the("engine").given("first_crank_frequency", "f_c")
    return compute(kinematics.quotient, _highest_excitation(survey, each), natural)


def _highest_excitation(survey: TorsionalSurvey, groups: tuple[tuple[int, ...], ...]) -> Value:
    """Frequency of the highest order that counts at the top of the survey [Hz].

    Args:
        survey: the survey.
        groups: cylinders whose torques add up by their phase; those of the groups by their size.
    """
    import numpy as np

    excitation = survey.excitation
    speed, mean = np.array([survey.top]), np.array([float(survey.law(survey.top))])
    torque = np.sum(
        [
            abs(excitation.of_cylinders(group, speed, mean)[0])
            + abs(excitation.unphased_of(group, mean)[0])
            for group in groups
        ],
        axis=0,
    )
    counts = np.flatnonzero(torque > COUNTS_ABOVE.number * excitation.full)
    highest = excitation.orders[int(counts[-1])] if len(counts) else 0.0
    order = survey.found(float(highest), "1", "h_max", COUNTS_ABOVE)
    top = Known(survey.top, "rad/s", "ω_top", origin="top of the survey", inputs=survey.inputs)
    return compute(engine_mechanics.excitation_frequency, order, top)


@measure(
    "engine",
    "1",
    "indicated mean pressure over manifold pressure, full load",
    at="manifold_pressure",
)
def work_of_charge(design: Design, engine: Subject) -> Value:
    """p_i/p_m: how much work the stated power asks of each charge."""
    return compute(
        excitation.pressure_per_charge, indicated_pressure(engine), manifold_pressure(engine)
    )


@measure("shaft", "", "whether inertia and sections are both stated")
def inertia_stated_twice(design: Design, shaft: Subject) -> Value:
    """Whether the inertia can be held against the shape."""
    both = isinstance(shaft.given("inertia"), Known) and bool(shaft.raw("sections"))
    return Known(both, "", "both stated", origin="inertia and sections of the shaft")


@measure("shaft", "1", "stated inertia over that of its sections in steel", at="inertia")
def inertia_as_shaped(design: Design, shaft: Subject) -> Value:
    """J as stated over J of the sections."""
    return compute(kinematics.quotient, shaft.given("inertia", "J"), values.section_inertia(shaft))


@measure("propeller", "", "whether inertia and swing test are both stated")
def inertia_and_swing_stated(design: Design, propeller: Subject) -> Value:
    """Whether the inertia can be held against a swing test."""
    stated = isinstance(propeller.given("inertia"), Known)
    both = stated and propeller.raw("swing_test") is not None
    return Known(both, "", "both stated", origin="inertia and swing test of the propeller")


@measure("propeller", "1", "stated inertia over that of the swing test", at="inertia")
def inertia_as_swung(design: Design, propeller: Subject) -> Value:
    """J as stated over J by the swing test."""
    return compute(
        kinematics.quotient, propeller.given("inertia", "J_p"), values.swung_inertia(propeller)
    )


@measure("damper", "", "whether stiffness and twist test are both stated")
def stiffness_and_twist_stated(design: Design, damper: Subject) -> Value:
    """Whether the stiffness can be held against a twist test."""
    stated = isinstance(damper.given("dynamic_stiffness"), Known)
    both = stated and damper.raw("twist_test") is not None
    return Known(both, "", "both stated", origin="stiffness and twist test of the damper")


@measure("damper", "1", "stated stiffness over that of the twist test", at="dynamic_stiffness")
def stiffness_as_twisted(design: Design, damper: Subject) -> Value:
    """C as stated over C by the twist test."""
    stated = damper.given("dynamic_stiffness", "C")
    return compute(kinematics.quotient, stated, values.twisted_stiffness(damper))
