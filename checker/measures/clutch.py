"""Measures of the one-way clutch: grip, capacity, contact, overrunning, place in the train."""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.bounded import more_is_worse
from checker.measures.damper import damped_ahead
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.stated import stated
from checker.mechanics import clutch as formulas
from checker.mechanics import hertz, kinematics
from checker.spec.subject import Subject
from checker.train.clutch_rating import contact_bodies, rated_torque_of


def _driving(clutch: Subject) -> str:
    shaft: str = clutch.raw("between")[0]
    return shaft


def _driven(clutch: Subject) -> str:
    shaft: str = clutch.raw("between")[1]
    return shaft


def _usable_fraction(clutch: Subject) -> Value:
    return compute(formulas.usable_fraction_side_by_side, clutch.given("rows", "n"))


@measure("clutch", "1", "usable torque over service factor and peak torque", at="rated_torque")
def capacity_margin(design: Design, clutch: Subject) -> Value:
    """S_T, usable torque over service factor times peak torque; at best that of the floor.

    The rated torque is the stated one. Where the spec says that it is by geometry, that of the
    geometry; where it says nothing, at best that, as the maker may rate the clutch lower.
    """
    factor = clutch.given("service_factor", "K")

    def margin(rated: Value) -> Value:
        usable = compute(formulas.usable_torque, rated, _usable_fraction(clutch))
        return design.peaks.judged(
            lambda peak: compute(formulas.engagement_torque_margin, usable, factor, peak),
            _driving(clutch),
            "clutch",
        )

    return more_is_worse(rated_torque_of(clutch), margin)


@measure("clutch", "1", "friction at hand over friction needed", at="gripping_angle")
def grip_margin(design: Design, clutch: Subject) -> Value:
    """S_g, friction coefficient over the tangent of the gripping angle."""
    return compute(
        formulas.grip_margin,
        clutch.given("friction_coefficient", "μ"),
        clutch.given("gripping_angle", "α"),
    )


@measure("clutch", "", "whether the origin of the friction coefficient is stated")
def friction_evidence_stated(design: Design, clutch: Subject) -> Value:
    """Whether it is stated where the friction coefficient comes from."""
    return stated(clutch, "friction_evidence")


@measure("clutch", "Pa", "contact pressure on the inner race at peak torque", at="element_radius")
def contact_pressure(design: Design, clutch: Subject) -> Value:
    """p_0, Hertz pressure of an element on the inner race; at best that of the floor."""
    return design.peaks.judged(
        lambda peak: _contact_pressure(clutch, peak), _driving(clutch), "clutch"
    )


@measure("clutch", "", "whether the maker states a contact pressure limit of his own")
def maker_limits_pressure(design: Design, clutch: Subject) -> Value:
    """Whether a contact pressure limit is stated."""
    limit = clutch.given("contact_pressure_limit", "p_max")
    if isinstance(limit, Known):
        return Known(True, "", "states a limit", inputs=(limit,))
    return Known(False, "", "states a limit", origin="no contact_pressure_limit in the spec")


@measure("clutch", "1", "maker's pressure limit over contact pressure", at="contact_pressure_limit")
def maker_pressure_margin(design: Design, clutch: Subject) -> Value:
    """Pressure limit of the maker over the Hertz pressure; at best that of the floor."""
    limit = clutch.given("contact_pressure_limit", "p_max")
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, limit, _contact_pressure(clutch, peak)),
        _driving(clutch),
        "clutch",
    )


def element_force(clutch: Subject, peak: Value) -> Value:
    """F_n, force of an element on the inner race of the most loaded clutch [N]."""
    row = compute(
        formulas.most_loaded_row_torque,
        peak,
        clutch.given("rows", "n"),
        _usable_fraction(clutch),
    )
    return compute(
        formulas.element_normal_force,
        row,
        clutch.given("elements", "z"),
        clutch.given("inner_race_radius", "r_i"),
        clutch.given("gripping_angle", "α"),
    )


def _contact_pressure(clutch: Subject, peak: Value) -> Value:
    """Hertz pressure of the most loaded clutch on its inner race at a peak torque."""
    return compute(
        hertz.line_contact_pressure,
        element_force(clutch, peak),
        clutch.given("element_length", "L"),
        *contact_bodies(clutch),
    )


@varying_measure("clutch", "", "whether the propeller turns ahead of the engine")
def overruns(design: Design, clutch: Subject, point: Subject) -> Value:
    """Whether the clutch overruns at the point."""
    return design.motion.overruns(point)


@measure("clutch", "1", "operation points at which the clutch overruns")
def overrun_points(design: Design, clutch: Subject) -> Value:
    """Number of operation points at which the propeller drives and the clutch frees it."""
    if not design.points:
        return Unknown((("operation",),))
    values = [value for _, value in design.over_points("overruns", clutch)]
    unknown = all_known(*values)
    if unknown is not None:
        return unknown
    overrun = [value for value in values if isinstance(value, Known) and value.value]
    origin = "count of the points in operation with driving: propeller"
    return Known(len(overrun), "1", "n", origin=origin, inputs=tuple(overrun))


def _overrun_speed(design: Design, clutch: Subject, point: Subject) -> Value:
    """Δω of the races when the engine has stopped and the propeller windmills as at the point."""
    at_rest = Known(0.0, "rad/s", "ω_driving", origin="the engine stops at this point")
    return compute(formulas.overrun_speed, design.motion.speed(_driven(clutch), point), at_rest)


@varying_measure("clutch", "rad/s", "speed by which the driven race leads the driving one")
def overrun_lead(design: Design, clutch: Subject, point: Subject) -> Value:
    """Δω, driven race less driving race; negative where the clutch would grip and drive."""
    return compute(
        formulas.overrun_speed,
        design.motion.speed(_driven(clutch), point),
        design.motion.speed(_driving(clutch), point),
    )


@varying_measure("clutch", "1", "overrun speed limit over overrun speed", at="overrun_speed_limit")
def overrun_speed_margin(design: Design, clutch: Subject, point: Subject) -> Value:
    """Overrun speed limit of the maker over the overrun speed with the engine stopped."""
    return compute(
        kinematics.quotient,
        clutch.given("overrun_speed_limit", "Δω_max"),
        _overrun_speed(design, clutch, point),
    )


@varying_measure("clutch", "m/s", "sliding speed on the race with the engine stopped")
def race_sliding_speed(design: Design, clutch: Subject, point: Subject) -> Value:
    """v_s, sliding speed on the outer race, the faster of the two, with the engine stopped."""
    return compute(
        formulas.race_sliding_speed,
        clutch.given("outer_race_radius", "r_o"),
        _overrun_speed(design, clutch, point),
    )


@varying_measure("clutch", "1", "overrunning race over lift-off speed", at="lift_off_speed")
def overrun_lift_off_margin(design: Design, clutch: Subject, point: Subject) -> Value:
    """S_lift, speed of the overrunning race over the lift-off speed."""
    return compute(
        formulas.overrun_lift_off_margin,
        design.motion.speed(_driven(clutch), point),
        clutch.given("lift_off_speed", "ω_lift"),
    )


@varying_measure("clutch", "1", "lift-off speed over driving speed", at="lift_off_speed")
def drive_lift_off_margin(design: Design, clutch: Subject, point: Subject) -> Value:
    """S_drive, lift-off speed over the speed at which the clutch drives."""
    return compute(
        formulas.drive_lift_off_margin,
        clutch.given("lift_off_speed", "ω_lift"),
        design.motion.speed(_driven(clutch), point),
    )


@varying_measure("clutch", "1", "driving speed over engagement speed", at="engagement_speed")
def engagement_margin(design: Design, clutch: Subject, point: Subject) -> Value:
    """S_e, speed at which the clutch drives at the point over the engagement speed."""
    return compute(
        formulas.engagement_speed_margin,
        design.motion.speed(_driving(clutch), point),
        clutch.given("engagement_speed", "ω_e"),
    )


@measure("clutch", "1", "speed at engine idle over engagement speed", at="engagement_speed")
def idle_engagement_margin(design: Design, clutch: Subject) -> Value:
    """S_e, speed of the clutch at the idle speed of the engine over the engagement speed."""
    idle = design.subjects.the("engine").given("idle_speed", "ω_idle")
    speed = design.motion.speed_passed_on(design.motion.speed_behind_engine(idle), _driving(clutch))
    return compute(formulas.engagement_speed_margin, speed, clutch.given("engagement_speed", "ω_e"))


@measure("clutch", "1", "runout over the runout that its maker allows", at="runout")
def runout_ratio(design: Design, clutch: Subject) -> Value:
    """Radial runout between the races over what the maker allows."""
    return compute(
        kinematics.quotient,
        clutch.given("runout", "f"),
        clutch.given("runout_limit", "f_max"),
    )


@measure(
    "clutch", "ΔK", "coldest start above the lowest oil temperature", at="lowest_oil_temperature"
)
def cold_start_reserve(design: Design, clutch: Subject) -> Value:
    """ΔT between the coldest oil at a start and the lowest temperature the clutch may have."""
    return compute(
        formulas.cold_start_reserve,
        design.subjects.the("lubrication").given("cold_start_temperature", "T_start"),
        clutch.given("lowest_oil_temperature", "T_min"),
    )


@measure("clutch", "1", "mean torque at the clutch over that of the crankshaft", at="between")
def torque_over_engine(design: Design, clutch: Subject) -> Value:
    """Mean torque at the clutch over the mean torque of the crankshaft."""
    one = Known(1.0, "N m", "T", origin="any torque: the ratio does not depend on it")
    behind_engine = design.motion.torque_behind_engine(one)
    at_clutch = design.motion.torque_passed_on(behind_engine, _driving(clutch))
    return compute(kinematics.quotient, at_clutch, one)


@measure("clutch", "", "whether the torque is damped between engine and clutch", at="between")
def damped(design: Design, clutch: Subject) -> Value:
    """Whether a damper, or the engine's own damping, stands ahead of the clutch."""
    return damped_ahead(design, _driving(clutch))
