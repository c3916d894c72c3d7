"""The damper from hot and soft to cold and stiff, in steps that miss no resonance."""

import math
from dataclasses import dataclass

from checker.known import Known, Unknown, Value, merged
from checker.spec.subject import Subjects
from checker.train import torsional_values as values
from checker.train.torsional_model import State

_RUNNING, _BETWEEN = "running", "between hot and cold"
_LEAST_STEPS, _MOST_STEPS = 2, 80
"""A damper of steel springs needs 80 at a relative damping of 0.04, less than plain steel has."""
_TOO_SHARP = (
    "with so little damping in the damper, its resonance is too sharp to be sought in "
    f"{_MOST_STEPS} steps from hot to cold"
)


@dataclass(frozen=True, slots=True)
class DamperStates:
    """States of a damper.

    Attributes:
        states: from hot and soft to cold and stiff.
        running: index of the state as stated.
        inputs: everything they were made of.
    """

    states: tuple[State, ...]
    running: int
    inputs: tuple[Known, ...]


NO_DAMPER = DamperStates((State("as stated", 1.0, 0.0, 0.0),), 0, ())


def damper_states(subjects: Subjects) -> DamperStates | Unknown:
    """From hot and soft to cold and stiff in even steps, the stated state among them."""
    damper = subjects.the("damper")
    stiffness = (*values.damper_ends(subjects), values.damper_stiffness(damper))
    if damper.raw("kind") == "viscous":
        coefficient = (*values.viscous_ends(damper), damper.given("damping_coefficient", "c"))
        idle = subjects.the("engine").given("idle_speed", "ω_idle")
        found = _all_known(*stiffness, *coefficient, idle)
        states = found if isinstance(found, Unknown) else _viscous(*found)
        least = "hot_damping_coefficient"
    else:
        found = _all_known(*stiffness, *values.damper_damping(damper))
        states = found if isinstance(found, Unknown) else _hysteretic(*found)
        least = "relative_damping"
    return Unknown((damper.place(least),), _TOO_SHARP) if states is None else states


def _all_known(*each: Value) -> tuple[Known, ...] | Unknown:
    known = tuple(value for value in each if isinstance(value, Known))
    if len(known) == len(each):
        return known
    return merged([value for value in each if isinstance(value, Unknown)])


def _hysteretic(
    low: Known, high: Known, nominal: Known, soft: Known, stiff: Known, most: Known
) -> DamperStates | None:
    """Steel spring or elastomer: the damping goes with the stiffness."""
    ladder = _ladder(low, nominal, high, min(soft.number, stiff.number))
    if ladder is None:
        return None
    whole = math.log(high.number / low.number)
    states = []
    for words, stiffness in ladder:
        share = 1.0 if words == _RUNNING else math.log(stiffness / low.number) / whole
        damping = soft.number + (stiff.number - soft.number) * share
        states.append(State(words, stiffness, damping, most.number))
    return _found(states, low, high, nominal, soft, stiff, most)


def _viscous(
    low: Known, high: Known, nominal: Known, least: Known, most: Known, stated: Known, idle: Known
) -> DamperStates | None:
    """Viscous damper: each stiffness with the least and with the most damping.

    In resonance the least lets it swing the most; above it, a stiff dashpot passes more on.
    """
    # ψ = 2π ω c / C, the least at half an order of idle: nothing slower excites it in the survey.
    slowest = idle.number / 2.0
    ladder = _ladder(low, nominal, high, math.tau * slowest * least.number / high.number)
    if ladder is None:
        return None
    states = []
    for words, stiffness in ladder:
        beside = _BETWEEN if words == _RUNNING else words
        states.append(State(beside, stiffness, 0.0, 0.0, least.number, most.number))
        if words == _RUNNING:
            states.append(State(words, stiffness, 0.0, 0.0, stated.number, stated.number))
        states.append(State(beside, stiffness, 0.0, 0.0, most.number, most.number))
    return _found(states, low, high, nominal, least, most, stated)


def _found(states: list[State], *inputs: Known) -> DamperStates:
    running = next(index for index, state in enumerate(states) if state.words == _RUNNING)
    return DamperStates(tuple(states), running, inputs)


def _ladder(
    low: Known, nominal: Known, high: Known, damping: float
) -> list[tuple[str, float]] | None:
    """Stiffnesses [N m/rad] from hot to cold in words, the stated one among them.

    No step moves a resonance by more than half its width: the frequency goes with the root of the
    stiffness, and the width at half power is ψ/2π of it. ``None`` where that takes too many steps.
    """
    if damping <= 0.0:
        return None
    below = _steps(low.number, nominal.number, damping)
    above = _steps(nominal.number, high.number, damping)
    if len(below) + len(above) > _MOST_STEPS:
        return None
    between = [(_BETWEEN, each) for each in (*below[1:], nominal.number, *above[1:])]
    between[len(below) - 1] = (_RUNNING, nominal.number)
    return [("hot", low.number), *between, ("cold", high.number)]


def _steps(low: float, high: float, damping: float) -> list[float]:
    """Stiffnesses in even ratios from one up to another, which is left out [N m/rad]."""
    count = max(math.ceil(math.log(high / low) * math.tau / damping), _LEAST_STEPS)
    return [low * (high / low) ** (step / count) for step in range(count)]
