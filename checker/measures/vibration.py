"""Measures of what vibrates: torque, reversal and heat of meshes, shafts, clutch and damper."""

import math

from checker.known import Detail, Known, Unknown, Value, assumed, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.torsion import at_point, major_order, torque_passes
from checker.mechanics import coupling, critical_speed, elastomer, kinematics
from checker.mechanics import engine as engine_mechanics
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.torsional_survey import TorsionalSurvey

_RATED_AIR = assumed(
    303.15, "K", "T_ref", "air of 30 degC for which a coupling's heat is rated (from memory)"
)
_OFF_PATH = "it carries no mean torque between engine and propeller"


def _node(survey: TorsionalSurvey, subject: Subject, index: int) -> int | None:
    """The joint that a part stands for; of a shaft, the one that swings the most at a speed.

    Args:
        survey: torque of every joint at every speed.
        subject: the part.
        index: of the speed.
    """
    if subject.kind != "shaft":
        kind = "mesh" if subject.kind == "mesh" else subject.kind
        return survey.model.joint(kind, subject.name or subject.kind)  # type: ignore[arg-type]
    joints = [each for each in survey.model.joints_of(subject.name) if _carries(survey, each)]
    return max(joints, key=lambda joint: survey.alternating[joint, index], default=None)


def _carries(survey: TorsionalSurvey, joint: int) -> bool:
    return survey.model.nodes[joint].on_path


def _own_ratio(survey: TorsionalSurvey, subject: Subject, node: int) -> float:
    if subject.kind == "shaft":
        return survey.model.ratios[subject.name].number
    return survey.model.nodes[node].ratio.number


def _torques(
    design: Design, subject: Subject, point: Subject
) -> tuple[TorsionalSurvey, Known, Known, Known] | Unknown:
    """Mean, alternating and least torque of a part at a point, at its own speed [N m]."""
    found = at_point(design, point)
    if isinstance(found, Unknown):
        return found
    resonances, index = found
    survey = resonances.survey
    node = _node(survey, subject, index)
    if node is None or not _carries(survey, node):
        return Unknown(because=_OFF_PATH)
    ratio = _own_ratio(survey, subject, node)
    mean = _mean(design, subject, point)
    if isinstance(mean, Unknown):
        return mean
    swing = survey.found(float(survey.alternating[node, index]) * ratio, "N m", "T_a")
    least = survey.found(float(survey.least[node, index]) * ratio, "N m", "T_min")
    return survey, mean, swing, least


def _mean(design: Design, subject: Subject, point: Subject) -> Value:
    """Mean torque of a part at a point as a size, at its own speed [N m]."""
    if subject.kind == "mesh":
        shaft = str(design.pairs[subject.name].driver.subject.raw("shaft"))
    elif subject.kind == "shaft":
        shaft = subject.name
    else:
        shaft = str(subject.raw("between")[0])
    torque = design.motion.torque(shaft, point)
    if isinstance(torque, Known) and torque.number < 0.0:
        return compute(kinematics.reversed_torque, torque)
    return torque


def _alternating(design: Design, subject: Subject, point: Subject) -> Value:
    found = _torques(design, subject, point)
    return found if isinstance(found, Unknown) else found[2]


def _factor(design: Design, subject: Subject, point: Subject) -> Value:
    found = _torques(design, subject, point)
    if isinstance(found, Unknown):
        return found
    return compute(critical_speed.application_factor, found[1], found[2])


def _least_share(design: Design, subject: Subject, point: Subject) -> Value:
    found = _torques(design, subject, point)
    if isinstance(found, Unknown):
        return found
    return compute(critical_speed.share_of_mean, found[3], found[1])


@varying_measure("mesh", "", "whether torque passes through the mesh")
def carries(design: Design, mesh: Subject, point: Subject) -> Value:
    """Whether torque passes at the point: not where the clutch overruns, nor in an accessory."""
    main = design.measure("on_power_path", mesh)
    return torque_passes(design, point) if isinstance(main, Known) and main.value else main


@measure("mesh", "", "whether the mesh stands between engine and propeller")
def on_power_path(design: Design, mesh: Subject) -> Value:
    """Whether the torque of the propeller passes the mesh: not that of an accessory."""
    main = any(each.kind == "mesh" and each.name == mesh.name for each in design.train.power_path)
    return Known(main, "", "on the power path", origin="meshes between engine and propeller")


@varying_measure("mesh", "N m", "alternating torque on the driver")
def alternating_torque(design: Design, mesh: Subject, point: Subject) -> Value:
    """T_a on the driver, the largest from the hot to the cold damper."""
    return _alternating(design, mesh, point)


@varying_measure("mesh", "1", "application factor from the torsional survey")
def application_factor(design: Design, mesh: Subject, point: Subject) -> Value:
    """K_A = (T + T_a) / T of the mesh."""
    return _factor(design, mesh, point)


@varying_measure("mesh", "1", "least torque of a cycle over the mean torque")
def least_torque_share(design: Design, mesh: Subject, point: Subject) -> Value:
    """Below zero the teeth part and strike their backs."""
    return _least_share(design, mesh, point)


@measure("mesh", "1", "alternating over mean torque at maximum continuous speed")
def alternating_share_at_rating(design: Design, mesh: Subject) -> Value:
    """T_a / T of the mesh at maximum continuous power."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    node = survey.model.joint("mesh", mesh.name)
    if node is None or not survey.model.nodes[node].on_path:
        return Unknown(because=_OFF_PATH)
    mean = survey.found(survey.at_rating(survey.carried[node]), "N m", "T")
    swing = survey.found(survey.at_rating(survey.alternating[node]), "N m", "T_a")
    return compute(critical_speed.share_of_mean, swing, mean)


@varying_measure("shaft", "N m", "alternating torque")
def alternating_shaft_torque(design: Design, shaft: Subject, point: Subject) -> Value:
    """T_a of the shaft where it is loaded the most."""
    return _alternating(design, shaft, point)


@varying_measure("shaft", "1", "application factor from the torsional survey")
def shaft_application_factor(design: Design, shaft: Subject, point: Subject) -> Value:
    """K_A = (T + T_a) / T of the shaft where it is loaded the most."""
    return _factor(design, shaft, point)


@varying_measure("clutch", "N m", "alternating torque")
def alternating_clutch_torque(design: Design, clutch: Subject, point: Subject) -> Value:
    """T_a of the engaged clutch."""
    return _alternating(design, clutch, point)


@varying_measure("clutch", "1", "application factor from the torsional survey")
def clutch_application_factor(design: Design, clutch: Subject, point: Subject) -> Value:
    """K_A = (T + T_a) / T of the engaged clutch."""
    return _factor(design, clutch, point)


@varying_measure("clutch", "1", "times the clutch lets go in one working cycle")
def releases_per_cycle(design: Design, clutch: Subject, point: Subject) -> Value:
    """How often the torque of the engaged clutch passes through zero downwards."""
    found = at_point(design, point)
    if isinstance(found, Unknown):
        return found
    resonances, index = found
    survey = resonances.survey
    return survey.found(survey.releases(index), "1", "N_release")


@measure("clutch", "", "speeds at which the clutch lets go and engages each cycle")
def chatter_range(design: Design, clutch: Subject) -> Value:
    """Crankshaft speeds of the survey at which the torque of the clutch reverses, or none."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    ranges = survey.chatter
    rpm = 60.0 / math.tau
    words = [f"{low * rpm:.0f} to {high * rpm:.0f} rpm" for low, high in ranges]
    return survey.found("; ".join(words) or "none", "", "chatter")


@measure("clutch", "1", "peak ratings over torque of a start or stop with the clutch locked")
def locked_run_through_margin(design: Design, clutch: Subject) -> Value:
    """Least of rating over torque of damper, clutch and teeth from standstill to idle, locked.

    A locked clutch passes the torque both ways. The torque is a bound: that of standing at each
    speed with the whole of its resonance.
    """
    return _run_through(design, ("damper", "clutch", "gear"))


@measure("damper", "1", "peak torque rating over torque of a start or stop")
def run_through_margin(design: Design, damper: Subject) -> Value:
    """Peak rating over the bound on the torque from standstill to idle."""
    return _run_through(design, ("damper",))


def _run_through(design: Design, kinds: tuple[str, ...]) -> Value:
    barred = design.barred
    if isinstance(barred, Unknown):
        return barred
    survey = barred.survey
    highest = survey.run_through
    limits = [each for each in barred.limits if each.on == "peak" and each.kind in kinds]
    if not limits:
        return Unknown(because="nothing with a peak torque rating stands in the model")
    margins = []
    for limit in limits:
        node = survey.model.nodes[limit.nodes[0]]
        where = Known(node.joint_words, "", "where", origin=Detail("the least of the margins"))
        torque = float(highest[limit.nodes[0]]) * limit.ratio
        bound = survey.found(
            torque, "N m", "T_bound", where, *_stops_met(design, limit.kind, torque)
        )
        margins.append(compute(kinematics.quotient, limit.rating, bound))
    known = [each for each in margins if isinstance(each, Known)]
    least = min(known, key=lambda each: each.number, default=None)
    missing = merged([each for each in margins if isinstance(each, Unknown)])
    if least is not None and len(known) == len(margins):
        return least
    return Unknown(missing.missing, missing.because, at_best=least)


def _stops_met(design: Design, kind: str, torque: float) -> tuple[Known, ...]:
    """That the stops of the damper meet on the way, where the bound is above their torque."""
    limiter = design.subjects.the("damper").given("torque_limiter", "T_stop")
    if kind != "damper" or not isinstance(limiter, Known) or limiter.value == NONE:
        return ()
    if torque <= limiter.number:
        return ()
    words = "it slips or its stops meet below this torque: the linear figure is no bound any more"
    return (Known(words, "", "stops", origin="T_stop against T_bound", inputs=(limiter,)),)


@measure(
    "damper",
    "1",
    "torque at which its stops meet over torque of a start or stop",
    at="torque_limiter",
)
def run_through_limiter_margin(design: Design, damper: Subject) -> Value:
    """Torque of stops or slip over the bound on the torque from standstill to idle."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    node = survey.model.joint("damper")
    if node is None:
        return Unknown(because=_OFF_PATH)
    torque = float(survey.run_through[node]) * survey.model.nodes[node].ratio.number
    bound = survey.found(torque, "N m", "T_bound")
    return compute(kinematics.quotient, damper.given("torque_limiter", "T_stop"), bound)


@measure("clutch", "1", "least torque of the teeth over the mean at idle with the clutch locked")
def locked_idle_share(design: Design, clutch: Subject) -> Value:
    """Least torque over mean torque of the worst mesh at idle, the clutch passing it both ways."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    nodes = [
        index
        for index, node in enumerate(survey.model.nodes)
        if node.kind == "mesh" and node.on_path
    ]
    worst = min(nodes, key=lambda index: survey.least[index, 0])
    least = survey.found(float(survey.least[worst, 0]), "N m", "T_min")
    mean = survey.found(float(survey.carried[worst, 0]), "N m", "T")
    return compute(critical_speed.share_of_mean, least, mean)


@varying_measure("damper", "N m", "alternating torque")
def alternating_damper_torque(design: Design, damper: Subject, point: Subject) -> Value:
    """T_a in the damper, the largest from hot to cold."""
    return _alternating(design, damper, point)


@varying_measure("damper", "1", "resonance factor of the first major order, two masses")
def resonance_factor(design: Design, damper: Subject, point: Subject) -> Value:
    """V by DIN 740-2 at the frequency of the first major order: a check by hand of the response."""
    frequency = compute(
        engine_mechanics.excitation_frequency,
        major_order(design),
        point.given("engine_speed", "ω"),
    )
    natural = design.measure("two_mass_frequency", design.subjects.the("drive"))
    return compute(
        coupling.resonance_factor,
        compute(kinematics.quotient, frequency, natural),
        damper.given("relative_damping", "ψ"),
    )


@varying_measure(
    "damper", "1", "vibratory torque rating over alternating torque", at="vibratory_torque_rating"
)
def vibratory_torque_margin(design: Design, damper: Subject, point: Subject) -> Value:
    """Rated alternating torque over the one computed."""
    return compute(
        kinematics.quotient,
        damper.given("vibratory_torque_rating", "T_KW"),
        _alternating(design, damper, point),
    )


@varying_measure("damper", "W", "heat made by vibration")
def heat(design: Design, damper: Subject, point: Subject) -> Value:
    """P, heat of all orders, the largest from hot to cold and from least to most damping."""
    found = at_point(design, point)
    if isinstance(found, Unknown):
        return found
    survey = found[0].survey
    if survey.model.joint("damper") is None:
        return Unknown(because=_OFF_PATH)
    return survey.found(survey.damper_heat[point.name], "W", "P")


@varying_measure("damper", "1", "heat over the heat that it can give off", at="heat_rating")
def heat_share(design: Design, damper: Subject, point: Subject) -> Value:
    """P over the rated heat."""
    return compute(
        kinematics.quotient,
        design.measure("heat", damper, point),
        damper.given("heat_rating", "P_rated"),
    )


@varying_measure("damper", "K", "temperature from its own heat", at="heat_rating")
def computed_temperature(design: Design, damper: Subject, point: Subject) -> Value:
    """T of the damper in the air of the point, heated by its own vibration."""
    reference = damper.given("heat_rating_air", "T_ref")
    return compute(
        coupling.elastomer_temperature,
        point.given("air_temperature", "T_air"),
        damper.given("running_temperature_limit", "T_limit"),
        reference if isinstance(reference, Known) else _RATED_AIR,
        design.measure("heat", damper, point),
        damper.given("heat_rating", "P_rated"),
    )


@varying_measure(
    "damper", "ΔK", "stated highest over computed temperature", at="highest_temperature"
)
def stated_over_computed_temperature(design: Design, damper: Subject, point: Subject) -> Value:
    """ΔT by which the stated highest temperature covers the computed one."""
    return compute(
        elastomer.temperature_reserve,
        damper.given("highest_temperature", "T"),
        design.measure("computed_temperature", damper, point),
    )


@varying_measure(
    "damper", "ΔK", "computed temperature below the maker's limit", at="running_temperature_limit"
)
def computed_reserve(design: Design, damper: Subject, point: Subject) -> Value:
    """ΔT between the temperature limit of its maker and the computed temperature."""
    return compute(
        elastomer.temperature_reserve,
        damper.given("running_temperature_limit", "T_limit"),
        design.measure("computed_temperature", damper, point),
    )


@measure("damper", "N m/rad", "stiffness by the twist test", at="twist_test")
def twisted_stiffness(design: Design, damper: Subject) -> Value:
    """C from torque and twist on the bench, times the dynamic factor."""
    return values.twisted_stiffness(damper)


@measure("damper", "N m/rad", "softest stiffness to reckon with", at="hot_stiffness")
def softest_stiffness(design: Design, damper: Subject) -> Value:
    """0.8 of the stiffness of the hot damper."""
    return values.damper_ends(design.subjects)[0]


@measure("damper", "N m/rad", "stiffest stiffness to reckon with", at="cold_stiffness")
def stiffest_stiffness(design: Design, damper: Subject) -> Value:
    """1.2 of the stiffness of the cold damper."""
    return values.damper_ends(design.subjects)[1]
