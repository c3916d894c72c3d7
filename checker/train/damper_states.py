"""The damper from hot and soft to cold and stiff, in steps that miss no resonance."""

import math
from dataclasses import dataclass

from checker.known import Known, Unknown, Value, merged
from checker.spec.subject import Subjects
from checker.train import torsional_values as values
from checker.train.torsional_model import State

_LEAST_STEPS, _MOST_STEPS = 4, 60


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
        return found if isinstance(found, Unknown) else _viscous(*found)
    found = _all_known(*stiffness, *values.damper_damping(damper))
    return found if isinstance(found, Unknown) else _hysteretic(*found)


def _all_known(*each: Value) -> tuple[Known, ...] | Unknown:
    known = tuple(value for value in each if isinstance(value, Known))
    if len(known) == len(each):
        return known
    return merged([value for value in each if isinstance(value, Unknown)])


def _hysteretic(
    low: Known, high: Known, nominal: Known, soft: Known, stiff: Known, most: Known
) -> DamperStates:
    """Steel spring or elastomer: the damping goes with the stiffness."""
    steps = _steps(low.number, high.number, min(soft.number, stiff.number))
    states = [
        State(
            "between hot and cold",
            low.number * (high.number / low.number) ** (step / steps),
            soft.number + (stiff.number - soft.number) * step / steps,
            most.number,
        )
        for step in range(steps + 1)
    ]
    states[0] = State("hot", low.number, soft.number, most.number)
    states[-1] = State("cold", high.number, stiff.number, most.number)
    running = min(range(1, steps), key=lambda each: abs(states[each].stiffness - nominal.number))
    states[running] = State("running", nominal.number, stiff.number, most.number)
    return DamperStates(tuple(states), running, (low, high, nominal, soft, stiff, most))


def _viscous(
    low: Known, high: Known, nominal: Known, least: Known, most: Known, stated: Known, idle: Known
) -> DamperStates:
    """Viscous damper: each stiffness with the least and with the most damping.

    In resonance the least lets it swing the most; above it, a stiff dashpot passes more on.
    """
    # ψ = 2π ω c / C, the least at half an order of idle: nothing slower excites it in the survey.
    slowest = idle.number / 2.0
    steps = _steps(low.number, high.number, math.tau * slowest * least.number / high.number)
    states = [
        State(
            "hot" if step == 0 else "cold" if step == steps else "between hot and cold",
            low.number * (high.number / low.number) ** (step / steps),
            0.0,
            0.0,
            damping.number,
            most.number,
        )
        for step in range(steps + 1)
        for damping in (least, most)
    ]
    running = sum(each.stiffness < nominal.number for each in states)
    as_stated = State("running", nominal.number, 0.0, 0.0, stated.number, stated.number)
    states.insert(running, as_stated)
    return DamperStates(tuple(states), running, (low, high, nominal, least, most, stated))


def _steps(low: float, high: float, damping: float) -> int:
    """Steps from soft to stiff, such that none moves a resonance by more than half its width.

    The frequency goes with the root of the stiffness, and the width at half power is ψ/2π of it.
    """
    if low <= 0.0 or high <= low or damping <= 0.0:
        return _MOST_STEPS if high > low > 0.0 else _LEAST_STEPS
    needed = math.log(high / low) / 2.0 / (damping / (2.0 * math.tau))
    return min(max(math.ceil(needed), _LEAST_STEPS), _MOST_STEPS)
