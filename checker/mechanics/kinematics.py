"""Speed and torque through a gear train, without losses."""

import math

from checker.mechanics.equation import OutOfRange, equation


@equation(
    "ω₂",
    "ω₂ = ω₁ z₁ / z₂",
    unit="rad/s",
    source="ISO 21771:2007, gear ratio of a pair (from memory)",
    speed="ω₁ [rad/s]",
    teeth="z₁ [1]",
    mate_teeth="z₂ [1]",
)
def driven_speed(speed: float, teeth: int, mate_teeth: int) -> float:
    """Speed of the gear that is turned by another.

    Args:
        speed: ω₁, speed of the first gear [rad/s].
        teeth: z₁, its teeth [1].
        mate_teeth: z₂, teeth of the other gear [1].
    """
    return speed * teeth / mate_teeth


@equation(
    "T₂",
    "T₂ = T₁ z₂ / z₁",
    unit="N m",
    source="power balance of a pair without losses",
    torque="T₁ [N m]",
    teeth="z₁ [1]",
    mate_teeth="z₂ [1]",
)
def driven_torque(torque: float, teeth: int, mate_teeth: int) -> float:
    """Torque at the gear that is turned by another, without losses.

    Args:
        torque: T₁, torque at the first gear [N m].
        teeth: z₁, its teeth [1].
        mate_teeth: z₂, teeth of the other gear [1].
    """
    return torque * mate_teeth / teeth


@equation(
    "ω_out",
    "ω_out = ω / i",
    unit="rad/s",
    source="definition of the ratio",
    speed="ω [rad/s]",
    ratio="i [1]",
)
def reduced_speed(speed: float, ratio: float) -> float:
    """Speed behind a reduction of known ratio.

    Args:
        speed: ω, speed ahead of it [rad/s].
        ratio: i, speed ahead over speed behind, above 0 [1].

    Raises:
        OutOfRange: the ratio is not above zero.
    """
    if ratio <= 0.0:
        raise OutOfRange(f"a ratio of {ratio:g} is not above zero")
    return speed / ratio


@equation(
    "T_out",
    "T_out = T i",
    unit="N m",
    source="power balance without losses",
    torque="T [N m]",
    ratio="i [1]",
)
def multiplied_torque(torque: float, ratio: float) -> float:
    """Torque behind a reduction of known ratio, without losses.

    Args:
        torque: T, torque ahead of it [N m].
        ratio: i, speed ahead over speed behind [1].
    """
    return torque * ratio


@equation(
    "i",
    "i = ω_engine / ω_propeller",
    unit="1",
    source="definition of the ratio",
    engine_speed="ω_engine [rad/s]",
    propeller_speed="ω_propeller [rad/s]",
)
def speed_ratio(engine_speed: float, propeller_speed: float) -> float:
    """Engine speed over propeller speed.

    Raises:
        OutOfRange: the propeller stands still.
    """
    if propeller_speed == 0.0:
        raise OutOfRange("the propeller stands still: there is no ratio")
    return engine_speed / propeller_speed


@equation(
    "ΔX",
    "ΔX = |X / X₀ − 1|",
    unit="1",
    source="definition",
    value="X [1]",
    reference="X₀ [1]",
)
def relative_difference(value: float, reference: float) -> float:
    """How far a value lies from a reference, relative to it.

    Raises:
        OutOfRange: the reference is zero.
    """
    if reference == 0.0:
        raise OutOfRange("the value to compare with is zero: there is no relative difference")
    return math.fabs(value / reference - 1.0)


@equation(
    "s",
    "s = +1 clockwise, −1 anticlockwise, seen from the engine towards the propeller",
    unit="1",
    source="definition",
    rotation="rotation []",
)
def sense_of(rotation: str) -> int:
    """Sense of rotation as a sign; +1 is right-handed about the axis from engine to propeller."""
    return 1 if rotation == "clockwise" else -1


@equation(
    "s_out",
    "s_out = −s where the reduction reverses, else s",
    unit="1",
    source="definition",
    sense="s [1]",
    reverses="reverses []",
)
def sense_after_engine(sense: int, reverses: bool) -> int:
    """Sense behind a reduction inside the engine."""
    return -sense if reverses else sense


@equation(
    "s",
    "s = s_e (−1)^N_mesh",
    unit="1",
    source="each external mesh reverses the sense; T. H. Wentzell, Machine Design, Ex. 11.2",
    sense="s_e [1]",
    meshes="N_mesh [1]",
)
def sense_after(sense: int, meshes: int) -> int:
    """Sense of a shaft behind a number of external meshes."""
    return sense if meshes % 2 == 0 else -sense


@equation(
    "T",
    "T = −T_e",
    unit="N m",
    source="the propeller drives the engine",
    torque="T_e [N m]",
)
def reversed_torque(torque: float) -> float:
    """Torque where the propeller drives the engine with the power the engine absorbs."""
    return -torque


@equation(
    "i",
    "i = i′ z₂ / z₁",
    unit="1",
    source="ISO 21771:2007, gear ratio of a pair (from memory)",
    ratio="i′ [1]",
    teeth="z₁ [1]",
    mate_teeth="z₂ [1]",
)
def step_ratio(ratio: float, teeth: int, mate_teeth: int) -> float:
    """Ratio of a train with one more step.

    Args:
        ratio: i′, ratio ahead of the step [1].
        teeth: z₁, teeth of its driver [1].
        mate_teeth: z₂, teeth of its driven gear [1].
    """
    return ratio * mate_teeth / teeth


@equation(
    "agree",
    "agree = (s₁ = s₂)",
    unit="",
    source="definition",
    sense="s₁ [1]",
    other="s₂ [1]",
)
def senses_agree(sense: int, other: int) -> bool:
    """Whether two senses of rotation are the same."""
    return sense == other


@equation(
    "Σq",
    "Σq = q₁ + q₂",
    unit="1",
    source="definition",
    share="q₁ [1]",
    other="q₂ [1]",
)
def sum_of_shares(share: float, other: float) -> float:
    """Sum of two shares of the running time."""
    return share + other


@equation(
    "q",
    "q = X / X₀",
    unit="1",
    source="definition",
    value="X [1]",
    reference="X₀ [1]",
)
def quotient(value: float, reference: float) -> float:
    """One value over another of the same unit.

    Raises:
        OutOfRange: the reference is zero.
    """
    if reference == 0.0:
        raise OutOfRange("the value to compare with is zero: there is no ratio to it")
    return value / reference


@equation(
    "ω_rel",
    "ω_rel = |ω₁ − ω₂|",
    unit="rad/s",
    source="definition, for two members that turn the same way",
    speed="ω₁ [rad/s]",
    other="ω₂ [rad/s]",
)
def relative_speed(speed: float, other: float) -> float:
    """Speed of a member against another on the same axis that turns the same way."""
    return math.fabs(speed - other)
