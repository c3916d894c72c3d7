"""Measures of the damper, and of what the engine's pulsation meets without one."""

from checker.known import Known, Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import described
from checker.mechanics import elastomer, kinematics
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.coldest import coldest


def damped_ahead(design: Design, shaft: str) -> Value:
    """Whether the engine's own damping, or the damper, stands between engine and shaft.

    That the engine damps its torque itself counts with evidence alone.
    """
    damper = design.train.upstream_link("damper", shaft)
    if damper is not None:
        origin = f"a damper stands between the engine and shafts.{shaft}"
        return Known(True, "", "damped", origin=origin)
    source = design.subjects.the("engine")
    engine = source.given("output_damped", "output damped")
    if isinstance(engine, Known) and engine.value:
        evidence = source.given("output_damped_evidence", "evidence")
        if isinstance(evidence, Unknown):
            return evidence
        return Known(True, "", "damped", origin="as its evidence says", inputs=(engine, evidence))
    if design.subjects.presence("damper") is None:
        missing = engine.missing if isinstance(engine, Unknown) else ()
        return Unknown((("damper",), *missing))
    return engine


@measure("drive", "", "whether the engine torque is damped ahead of the first mesh")
def damped(design: Design, drive: Subject) -> Value:
    """Whether a damper, or the engine's own damping, stands ahead of the first mesh."""
    meshes = [link for link in design.train.power_path if link.kind == "mesh"]
    return damped_ahead(design, meshes[0].driver if meshes else design.train.last)


@measure("damper", "1", "rated torque over the largest mean torque", at="rated_torque")
def rated_torque_margin(design: Design, damper: Subject) -> Value:
    """Rated torque over the largest mean torque of ratings and operation points."""
    return compute(
        kinematics.quotient,
        damper.given("rated_torque", "T_rated"),
        design.peaks.mean(_engine_side(damper)),
    )


@measure("damper", "1", "peak torque rating over the peak torque", at="peak_torque_rating")
def peak_torque_margin(design: Design, damper: Subject) -> Value:
    """Peak torque rating over the peak torque; at best that over the floor of the peak."""
    rating = damper.given("peak_torque_rating", "T_rated")
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, rating, peak), _engine_side(damper), "damper"
    )


@measure("damper", "ΔK", "elastomer below its highest temperature", at="highest_temperature")
def elastomer_reserve(design: Design, damper: Subject) -> Value:
    """ΔT between what the elastomer bears for a short time and its highest temperature."""
    return compute(
        elastomer.temperature_reserve,
        compute(elastomer.highest_temperature, damper.given("elastomer", "elastomer")),
        damper.given("highest_temperature", "T"),
    )


@measure("damper", "ΔK", "damper below its maker's temperature limit", at="highest_temperature")
def reserve_to_maker_limit(design: Design, damper: Subject) -> Value:
    """ΔT between the temperature limit of its maker and its highest temperature."""
    return compute(
        elastomer.temperature_reserve,
        damper.given("running_temperature_limit", "T_max"),
        damper.given("highest_temperature", "T"),
    )


@measure("damper", "", "whether it is softer the warmer it is stated", at="stiffness_temperature")
def stiffness_in_order(design: Design, damper: Subject) -> Value:
    """Whether no stated stiffness is above that of a colder damper."""
    at_start, nominal = coldest(design.subjects), values.damper_stiffness(damper)
    stated = [
        (temperature, stiffness)
        for temperature, stiffness in (
            (at_start, damper.given("cold_stiffness", "C_cold")),
            (damper.given("stiffness_temperature", "T"), nominal),
            (damper.given("highest_temperature", "T_hot"), damper.given("hot_stiffness", "C_hot")),
        )
        if isinstance(stiffness, Known)
    ]
    known = [
        (temperature, stiffness)
        for temperature, stiffness in stated
        if isinstance(temperature, Known)
    ]
    if isinstance(nominal, Unknown) or len(known) < len(stated):
        pairs = [(nominal, nominal), *stated]
        return merged([each for each, _ in pairs if isinstance(each, Unknown)])
    in_order = all(
        one[1].number >= other[1].number
        for one in known
        for other in known
        if one[0].number < other[0].number
    )
    inputs = tuple(each for pair in known for each in pair)
    return Known(in_order, "", "in order", origin="rubber softens as it warms", inputs=inputs)


@measure("damper", "", "whether it slips or its stops meet", at="torque_limiter")
def limits_torque(design: Design, damper: Subject) -> Value:
    """Whether there is a torque at which it slips or its stops meet."""
    return described(damper, "torque_limiter")


@measure("damper", "1", "torque at which its stops meet over the peak torque", at="torque_limiter")
def limiter_margin(design: Design, damper: Subject) -> Value:
    """Torque of stops or slip over the peak torque; at best that over the floor of the peak."""
    limiter = damper.given("torque_limiter", "T_stop")
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, limiter, peak), _engine_side(damper), "damper"
    )


def _engine_side(damper: Subject) -> str:
    shaft: str = damper.raw("between")[0]
    return shaft
