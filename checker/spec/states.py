"""States of the drive beyond the steady points of operation."""

from typing import Annotated

from checker.spec.fields import Choice, Duration, Text, Written, stated
from checker.spec.part import Part

TORQUES = ("engine drives", "propeller drives", "reverses", "none")
Direction = Annotated[str | None, Choice(TORQUES)]


class State(Part):
    """One state: who drives, and what happens to the drive."""

    torque: Direction = stated("Which way the torque passes through the drive.")
    effect: Text = stated("What it does to the drive, and why the drive bears it.")
    supply: Annotated[
        str | None, Choice(("pump", "splash", "stored oil", "grease", "none needed", "none"))
    ] = stated(
        "How oil reaches the parts that turn or overrun in this state: the pump, splash of turning "
        "gears, oil held in pockets, grease; none needed where nothing turns; or none."
    )


class EngineStopped(State):
    """Engine stopped in flight with the propeller windmilling."""

    restart: Annotated[str | None, Choice(("starter", "windmilling", "none"))] = stated(
        "By what the engine is restarted in flight."
    )
    keeps_oil: list[Written] | None = stated(
        "Clutch and bearings, by name, that keep oil of their own in a pocket, behind a weir or in "
        "a felt; needed where stored oil is the supply."
    )
    time_to_damage: Duration = stated("How long the drive bears it before damage.")


class OilLoss(State):
    """Loss of the oil with the engine in cruise power."""

    time_to_damage: Duration = stated("How long the drive runs on before damage.")
    evidence: Text = stated("Test or analysis that this time rests on.")
    shown_by: Text = stated("How the crew learns of it.")


class States(Part):
    """States beyond the points of operation."""

    start: State | None = stated("Start of the engine.")
    kick_back: State | None = stated("Kick-back at start or shutdown.")
    idle: State | None = stated("Ground idle.")
    closed_throttle: State | None = stated("Descent with the throttle closed.")
    shutdown: State | None = stated("Shutdown on the ground.")
    engine_stopped: EngineStopped | None = stated("Engine stopped in flight, propeller turning.")
    oil_loss: OilLoss | None = stated("Loss of oil.")
