"""Measures of what a one-way clutch goes through, and of the races that bear it."""

from checker.known import Known, Unknown, Value, compute
from checker.measures.bearing_loads import worst_of
from checker.measures.clutch import (
    element_force,
)
from checker.measures.design import Design
from checker.measures.oil_properties import density_15
from checker.measures.registry import measure, varying_measure
from checker.measures.torsion import major_order
from checker.mechanics import (
    auxiliary_loss,
    critical_speed,
    hertz,
    kinematics,
    load_cases,
    torsional_parts,
)
from checker.mechanics import clutch as formulas
from checker.mechanics import clutch_duty as duty
from checker.mechanics.shaft_strength import torque_swing
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.clutch_rating import contact_bodies, rated_torque_of, torque_by_geometry


@measure("clutch", "Pa", "hoop stress of the outer race at peak torque", at="outer_race_outside")
def race_hoop_stress(design: Design, clutch: Subject) -> Value:
    """σ_h at the bore of the outer race, element forces spread evenly; at best that."""
    race = clutch.given("outer_race_radius", "r_o")
    outside = clutch.given("outer_race_outside", "r_out")

    def stress(peak: Value) -> Value:
        pressure = compute(
            formulas.race_pressure,
            clutch.given("elements", "z"),
            element_force(clutch, peak),
            race,
            clutch.given("element_length", "b"),
        )
        return compute(formulas.outer_race_hoop_stress, pressure, race, outside)

    return design.peaks.judged(stress, str(clutch.raw("between")[0]), "clutch")


@measure("clutch", "1", "wall of the outer race over its inside radius", at="outer_race_outside")
def race_thickness_ratio(design: Design, clutch: Subject) -> Value:
    """t/r of the outer race."""
    return compute(
        duty.race_thickness_ratio,
        clutch.given("outer_race_outside", "r_out"),
        clutch.given("outer_race_radius", "r_o"),
    )


@measure("clutch", "1", "case depth over depth of the greatest shear", at="race_case_depth")
def case_over_shear_depth(design: Design, clutch: Subject) -> Value:
    """Case depth over the depth of the greatest shear of the contact; at best that."""

    def ratio(peak: Value) -> Value:
        width = compute(
            hertz.line_contact_half_width,
            element_force(clutch, peak),
            clutch.given("element_length", "L"),
            *contact_bodies(clutch),
        )
        depth = compute(hertz.depth_of_greatest_shear, width)
        return compute(duty.case_over_shear_depth, clutch.given("race_case_depth", "d_c"), depth)

    return design.peaks.judged(ratio, str(clutch.raw("between")[0]), "clutch")


@measure("clutch", "1", "rated torque over the one that its geometry bears", at="rated_torque")
def rating_over_geometry(design: Design, clutch: Subject) -> Value:
    """Rated torque over the torque at the allowed contact pressure by geometry."""
    return compute(kinematics.quotient, rated_torque_of(clutch), torque_by_geometry(clutch))


@measure("clutch", "1", "grip with the races out of centre", at="runout")
def eccentric_grip_margin(design: Design, clutch: Subject) -> Value:
    """S_g at the element that the runout sets the steepest."""
    return compute(
        formulas.grip_margin,
        clutch.given("friction_coefficient", "μ"),
        _angle_out_of_centre(clutch),
    )


def _angle_out_of_centre(clutch: Subject) -> Value:
    """α′ of a roller by geometry, of a sprag by its maker [rad]."""
    kind, angle = clutch.given("kind"), clutch.given("gripping_angle", "α")
    if isinstance(kind, Unknown):
        return kind
    if kind.value == "sprag":
        return compute(
            duty.sprag_angle_out_of_centre,
            angle,
            clutch.given("gripping_angle_out_of_centre", "α_e"),
        )
    return compute(
        duty.roller_angle_out_of_centre,
        angle,
        clutch.given("runout", "e"),
        clutch.given("inner_race_radius", "r_i"),
        clutch.given("element_radius", "r"),
    )


@varying_measure("clutch", "1", "torque cycles in an hour from firing", at="between")
def torque_cycles_per_hour(design: Design, clutch: Subject, point: Subject) -> Value:
    """N_h at a point."""
    return compute(
        duty.firing_cycles_per_hour, point.given("engine_speed", "ω_e"), major_order(design)
    )


@measure("clutch", "1", "torque cycles in the life from firing", at="between")
def torque_cycles_in_life(design: Design, clutch: Subject) -> Value:
    """N over the wanted life, at the speed of the points by their shares."""
    total: Value = Known(0.0, "1", "N", origin="before the first point")
    for point in design.points:
        each = compute(
            duty.cycles_of_point,
            design.measure("torque_cycles_per_hour", clutch, point),
            point.given("share", "q"),
            design.subjects.the("drive").given("target_life", "t"),
        )
        total = compute(duty.cycle_sum, total, each)
    return total if design.points else Unknown((("operation",),))


@measure("clutch", "1", "least torque of a cycle over its mean, with the factor of the regulations")
def least_torque_share(design: Design, clutch: Subject) -> Value:
    """T_min/T with the swing that the factor of the regulations stands for; at best that.

    Below zero the clutch lets go and engages at each firing: indexing.
    """
    shaft = str(clutch.raw("between")[0])
    mean = design.peaks.mean(shaft)
    return design.peaks.judged(
        lambda peak: compute(duty.least_torque_share, mean, compute(torque_swing, peak, mean)),
        shaft,
        "clutch",
    )


@measure("clutch", "", "whether firing lets the clutch go and engage again in each cycle")
def indexes_at_firing(design: Design, clutch: Subject) -> Value:
    """Whether nothing damps the torque ahead of the clutch, so that it indexes with the firing."""
    damped = design.measure("damped", clutch)
    if isinstance(damped, Unknown):
        return damped
    return Known(not damped.value, "", "indexes", inputs=(damped,))


@varying_measure("clutch", "W", "heat of the overrunning clutch", at="overrun_drag_torque")
def overrun_heat(design: Design, clutch: Subject, point: Subject) -> Value:
    """P_d with the engine stopped and the propeller turning as at the point [W]."""
    return compute(
        auxiliary_loss.overrunning_loss,
        clutch.given("overrun_drag_torque", "T_drag"),
        Known(0.0, "rad/s", "ω_a", origin="the engine is stopped"),
        design.motion.speed(str(clutch.raw("between")[1]), point),
    )


@varying_measure("clutch", "ΔK", "warming of its oil while overrunning", at="overrun_drag_torque")
def overrun_oil_warming(design: Design, clutch: Subject, point: Subject) -> Value:
    """ΔT of the oil led to the clutch by its drag [K]."""
    flow = next(
        (
            Known(path.flow.value, "m3/s", "V̇", path=("lubrication", "paths", index, "flow"))
            for index, path in enumerate(design.subjects.the("lubrication").raw("paths") or ())
            if path.to == "clutch" and path.flow is not None
        ),
        None,
    )
    if flow is None:
        return Unknown((("lubrication", "paths"),), "no flow of oil to the clutch is stated")
    heat = design.measure("overrun_heat", clutch, point)
    return compute(duty.oil_warming, heat, density_15(design), flow)


@measure("clutch", "1", "inertia of the propeller at the crank over that of the engine")
def locked_inertia_ratio(design: Design, clutch: Subject) -> Value:
    """J_p/i² over J_e: what a locked clutch adds to starter and crank."""
    return compute(
        kinematics.quotient,
        _reflected(design),
        design.subjects.the("engine").given("inertia", "J_e"),
    )


@measure("clutch", "1", "torque of a dead stop at idle over torque of the damper", at="between")
def locked_stop_ratio(design: Design, clutch: Subject) -> Value:
    """Torque in the damper if the crank stops dead at idle with a locked clutch, over its peak.

    Where its stops meet, what is above their torque goes through teeth and shafts hard.
    """
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    nodes = survey.model.nodes
    node = survey.model.joint("damper")
    if node is None:
        return Unknown(because="no damper stands in the model")
    behind = survey.model.behind(node)
    inertia = values.summed([each.inertia for index, each in enumerate(nodes) if index in behind])
    damper = design.subjects.the("damper")
    stop = compute(
        load_cases.stopping_torque,
        design.motion.speed_behind_engine(
            design.subjects.the("engine").given("idle_speed", "ω_idle")
        ),
        values.damper_ends(design.subjects)[1],
        inertia,
    )
    return compute(kinematics.quotient, stop, damper.given("peak_torque_rating", "T"))


@measure("clutch", "1", "torque of start, kick-back or dead engine over peak torque", at="between")
def sudden_torque_of_clutch(design: Design, clutch: Subject) -> Value:
    """The greatest of these torques over the peak torque by which the clutch is judged.

    Those that come back pass a clutch that has not let go: a locked one, or one still gripping.
    """
    shaft = str(clutch.raw("between")[0])
    peak = design.peaks.peak(shaft, "clutch")
    return worst_of(
        design.reactions.cases.sudden,
        lambda case: compute(load_cases.sudden_share, case.torque(shaft), peak),
    )


@measure("clutch", "1", "critical speed of the locked drive over idle speed", at="between")
def locked_critical_over_idle(design: Design, clutch: Subject) -> Value:
    """Highest engine speed at which the first firing order meets the first mode, over idle."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    frequency = design.measure("lowest_frequency_cold", design.subjects.the("drive"))
    critical = compute(critical_speed.critical_speed, frequency, major_order(design))
    idle = design.subjects.the("engine").given("idle_speed", "ω_idle")
    return compute(kinematics.quotient, critical, idle)


def _reflected(design: Design) -> Value:
    ratio = design.measure("computed_ratio", design.subjects.the("drive"))
    inertia = design.subjects.the("propeller").given("inertia", "J_p")
    return compute(torsional_parts.reflected_inertia, inertia, ratio)
