"""Measures of the stated torques of an engine that kicks back or is dead: are they believable."""

from checker.known import Known, Value, assumed, compute
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import compression, kinematics
from checker.mechanics.excitation import ATMOSPHERE, LEAST_INTAKE
from checker.spec.subject import Subject

_FULL = assumed(ATMOSPHERE, "Pa", "p_1", "a cylinder fills with air of one atmosphere at a start")
_CLOSED = assumed(
    LEAST_INTAKE * ATMOSPHERE,
    "Pa",
    "p_1",
    "intake pressure of a closed throttle, 0.3 of one atmosphere (from memory)",
)


@measure("engine", "1", "kick-back over the compression torque of one cylinder")
def kick_back_over_compression(design: Design, engine: Subject) -> Value:
    """Stated kick-back over the peak torque of one full cylinder that only compresses."""
    return compute(
        kinematics.quotient,
        engine.given("kick_back_torque", "T_gas"),
        _compression_torque(engine, _FULL),
    )


@measure("engine", "1", "drag over the compression torque of one throttled cylinder")
def drag_over_compression(design: Design, engine: Subject) -> Value:
    """Stated drag of the dead engine over the peak torque of one cylinder, throttle closed."""
    return compute(
        kinematics.quotient,
        engine.given("drag_torque", "T_drag"),
        _compression_torque(engine, _CLOSED),
    )


def _compression_torque(engine: Subject, intake: Known) -> Value:
    """T_c of one cylinder [N m]."""
    return compute(
        compression.compression_torque,
        engine.given("bore", "d"),
        engine.given("stroke", "s"),
        engine.given("rod_length", "l"),
        engine.given("compression_ratio", "ε"),
        intake,
    )
