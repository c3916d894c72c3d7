"""Damper and one-way clutch."""

from typing import Annotated

from pydantic import Field

from checker.mechanics.oil_families import FAMILY_NAMES
from checker.spec.fields import (
    Area,
    Choice,
    Count,
    Damping,
    Extent,
    Flag,
    FluidTemperature,
    Friction,
    Hardness,
    Inertia,
    KinematicViscosity,
    Name,
    Number,
    Of,
    Power,
    Size,
    Stiffness,
    Strength,
    Temperature,
    Text,
    TextOrNone,
    Torque,
    Turning,
    stated,
)
from checker.spec.part import Part
from checker.spec.quantity import Quantity

Between = Annotated[list[Name], Field(min_length=2, max_length=2)]
Elastomer = Annotated[
    str | None,
    Choice(("NBR", "HNBR", "ACM", "FKM", "VMQ", "EPDM", "natural rubber", "polyurethane", "none")),
]


class TwistTest(Part):
    """A static twist test of the damper on the bench."""

    torque: Torque = stated("Torque put on.")
    twist: Annotated[Quantity | None, Of("angle", above="0 deg")] = stated(
        "Angle by which it twists the one side against the other."
    )
    dynamic_factor: Annotated[float | None, Number(0.5, 10.0)] = stated(
        "Dynamic over static stiffness: 1 for steel springs; for rubber by its maker, often 1.2 "
        "to 1.8."
    )


class Damper(Part):
    """Torsionally soft coupling or damper between two shafts."""

    kind: Annotated[str | None, Choice(("elastomer", "steel spring", "viscous"))] = stated(
        "What gives it its softness and damping."
    )
    between: Between = Field(
        description="The two shafts it joins, the one nearer the engine first."
    )
    dynamic_stiffness: Stiffness = stated("Dynamic torsional stiffness, at its stated temperature.")
    stiffness_temperature: Temperature = stated(
        "Temperature of that stiffness, or of the twist test."
    )
    hot_stiffness: Stiffness = stated(
        "Dynamic torsional stiffness of an elastomer at its highest temperature in operation."
    )
    cold_stiffness: Stiffness = stated(
        "Dynamic torsional stiffness of an elastomer at the coldest start; needed where the "
        "stiffness above is that of a warmer one."
    )
    twist_test: TwistTest | None = stated(
        "Static twist test that gives the stiffness where no dynamic one is stated."
    )
    relative_damping: Annotated[float | None, Number(0.0, 10.0)] = stated(
        "Relative damping psi: loss per cycle over elastic energy."
    )
    hot_relative_damping: Annotated[float | None, Number(0.0, 10.0)] = stated(
        "Relative damping of an elastomer at its highest temperature in operation."
    )
    damping_coefficient: Damping = stated(
        "Torque of a viscous damper over the speed at which its sides turn against each other, at "
        "running temperature."
    )
    hot_damping_coefficient: Damping = stated(
        "That coefficient of a viscous damper at its highest temperature in operation."
    )
    cold_damping_coefficient: Damping = stated(
        "That coefficient of a viscous damper at the coldest start."
    )
    twist_limit: Annotated[Quantity | None, Of("angle", above="0 deg")] = stated(
        "Angle by which its maker lets it twist for long."
    )
    rated_torque: Torque = stated("Torque it carries for long.")
    vibratory_torque_rating: Torque = stated("Alternating torque amplitude it carries for long.")
    peak_torque_rating: Torque = stated("Peak torque it bears.")
    heat_rating: Power = stated("Heat it can give off for long.")
    heat_rating_air: Temperature = stated("Temperature of the air for which that heat is rated.")
    elastomer: Elastomer = stated("Elastomer, or none.")
    highest_temperature: Temperature = stated("Highest temperature of the elastomer in operation.")
    running_temperature_limit: Temperature = stated("Temperature limit by its maker.")
    in_oil: Flag = stated("Whether the elastomer is wetted by oil.")
    wetted_surface: Area = stated("Surface of the elastomer that oil wets, both faces together.")
    elastomer_thickness: Size = stated("Thickness of the elastomer between those faces.")
    moves_oil: Flag = stated("Whether a scroll or helix on it pumps oil.")
    inertia_engine_side: Inertia = stated("Inertia of its engine side.")
    inertia_propeller_side: Inertia = stated("Inertia of its propeller side.")
    torque_limiter: Annotated[Quantity | str | None, Of("torque", above="0 N m", or_none=True)] = (
        stated("Torque at which it slips or its stops meet; none where nothing does.")
    )


class LockedFailure(Part):
    """What the drive does when the clutch no longer frees."""

    shutdown: Text = stated("What happens when the engine stops with the propeller locked to it.")
    restart: Text = stated("What happens at a restart with the clutch locked.")
    taxi: Text = stated("What happens at idle and taxi with the clutch locked.")
    starter_bears_it: Flag = stated("Whether starter and ring gear bear the propeller's inertia.")
    mounts_bear_it: Flag = stated("Whether engine and drive mounts bear the torque reversals.")
    detected_by: Text = stated("How the crew finds it before flight.")
    evidence: Text = stated("Analysis or test that these statements rest on.")


class SlipFailure(Part):
    """What the drive does when the clutch no longer grips."""

    effect: Text = stated("Effect on thrust and on the engine.")
    mitigation: TextOrNone = stated(
        "What limits the consequence: a lock-up, a second path, glide range; or none."
    )
    detected_by: Text = stated("How the crew notices the beginning of slip.")
    engine_overspeed_limited: Flag = stated(
        "Whether something holds the engine below its speed limit when the load goes."
    )
    evidence: Text = stated("Analysis or test that these statements rest on.")


class FailureEvidence(Part):
    """Both ways in which a one-way clutch can fail. Both are always reviewed."""

    locked: LockedFailure | None = stated("Fails locked.")
    slip: SlipFailure | None = stated("Fails slipping.")


class OilApproval(Part):
    """Written approval of one oil by the maker of the clutch."""

    oil: Annotated[str | None, Choice(FAMILY_NAMES)] = stated(
        "The oil family approved, as in lubrication.oil.name."
    )
    by: Text = stated("Who approves it.")
    document: Text = stated("The document, with its date.")


class Clutch(Part):
    """One-way clutch between two shafts."""

    kind: Annotated[str | None, Choice(("roller", "sprag"))] = stated("Kind of elements.")
    between: Between = Field(description="The two shafts it joins, the driving one first.")
    outer: Text = stated("Which of the two shafts carries the outer race.")
    rated_torque: Torque = stated(
        "Rated torque of the clutch by catalogue or calculation; the sum where several run side by "
        "side."
    )
    rating_is: Annotated[str | None, Choice(("nominal", "peak", "by geometry"))] = stated(
        "Whether the rated torque is a nominal or a peak figure; or by geometry, of a clutch that "
        "nobody rates: the torque at the allowed contact pressure of its elements then counts."
    )
    service_factor: Annotated[float | None, Number(1.0, 10.0)] = stated(
        "Service factor that its maker asks for, 1 or more."
    )
    elements: Annotated[int | None, Count(3, 200)] = stated(
        "Number of rollers or sprags in one clutch."
    )
    rows: Annotated[int | None, Count(1, 4)] = stated("Clutches side by side.")
    element_radius: Size = stated("Radius of a roller, or of the sprag's cam where it touches.")
    element_length: Size = stated("Loaded length of an element.")
    inner_race_radius: Size = stated("Radius of the inner race.")
    outer_race_radius: Size = stated("Inside radius of the outer race.")
    outer_race_outside: Size = stated("Outside radius of the outer race.")
    gripping_angle: Annotated[Quantity | None, Of("angle", above="0 deg", below="90 deg")] = stated(
        "Angle between strut and radius at the inner race (sprag), or half the wedge angle "
        "(roller)."
    )
    gripping_angle_out_of_centre: Annotated[
        Quantity | None, Of("angle", above="0 deg", below="90 deg")
    ] = stated(
        "Gripping angle of a sprag where the allowed runout widens its gap the most, from its cam "
        "by its maker; that of a roller is computed."
    )
    friction_coefficient: Friction = stated("Friction coefficient in this oil.")
    friction_evidence: Text = stated("Where that coefficient comes from.")
    lift_off: Annotated[str | None, Choice(("contact", "lift-off", "centrifugally engaged"))] = (
        stated(
            "Whether the elements always touch, lift off when overrunning, or need speed to engage."
        )
    )
    lift_off_speed: Turning = stated("Overrunning speed above which the sprags lift off.")
    engagement_speed: Turning = stated("Speed below which centrifugal elements do not engage.")
    overrun_speed_limit: Turning = stated("Highest overrunning speed by its maker.")
    race_hardness: Hardness = stated("Hardness of the races.")
    race_case_depth: Extent = stated("Effective case depth of the races.")
    race_roughness: Extent = stated("Roughness Rz of the races.")
    contact_pressure_limit: Strength = stated("Hertz pressure limit, if the maker states another.")
    own_bearings: Flag = stated(
        "Whether bearings beside the clutch keep the races concentric and carry all loads but "
        "torque."
    )
    torsional_stiffness: Stiffness = stated("Torsional stiffness while it drives, at mean torque.")
    runout: Extent = stated("Radial runout between the races.")
    runout_limit: Size = stated("Radial runout that its maker allows.")
    approved_oils: list[OilApproval] | None = stated(
        "Oils that the clutch maker approves in writing."
    )
    lowest_oil_temperature: FluidTemperature = stated("Lowest oil temperature its maker allows.")
    highest_start_viscosity: KinematicViscosity = stated(
        "Highest oil viscosity at which the clutch engages at once, by its maker."
    )
    overrun_drag_torque: Torque = stated("Torque by which it drags when it overruns.")
    failure_evidence: FailureEvidence | None = stated("Review of both ways to fail.")
