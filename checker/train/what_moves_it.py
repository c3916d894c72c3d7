"""What moves a resonance, and the smallest change that clears a point of it."""

import math
from collections.abc import Callable

from checker.mechanics import critical_speed
from checker.mechanics.torsion import natural_modes
from checker.train.resonance import Resonances
from checker.train.torsional_survey import TorsionalSurvey

_STEPS = 14


def sensitivity(survey: TorsionalSurvey) -> list[tuple[str, float]]:
    """Change of the lowest frequency for 10 % more of what a designer can move."""
    model, state = survey.model, survey.model.states[survey.model.running]
    base = survey.modes[survey.model.running].frequency[1]
    names = {
        "damper": "damper stiffness",
        "engine": "engine and flywheel inertia",
        "propeller": "propeller inertia",
    }
    return [
        (words, float(natural_modes(model.tree(state, **{key: 1.1})).frequency[1] / base - 1.0))
        for key, words in names.items()
        if key != "damper" or model.joint("damper") is not None
    ]


def clearing(
    resonances: Resonances, speed: float, mean: float, wanted: float
) -> list[tuple[str, float]]:
    """Smallest factor on each thing that a designer can move which gives a separation.

    Only the orders that count today are looked at, each with its mode moved.
    """
    counted = resonances.counting(speed, mean)
    model = resonances.survey.model

    def apart(key: str, factor: float) -> float:
        if key == "speed":
            ends = [(each.lowest, each.highest) for each in counted]
        else:
            low, high = (
                natural_modes(model.tree(state, **{key: factor})).frequency
                for state in (model.states[0], model.states[-1])
            )
            ends = [(float(low[each.mode]), float(high[each.mode])) for each in counted]
        turning = speed * factor if key == "speed" else speed
        return min(
            (
                critical_speed.separation(each.order * turning / math.tau, *span)
                for each, span in zip(counted, ends, strict=True)
            ),
            default=1.0,
        )

    found = []
    for key, words in (
        ("damper", "damper stiffness"),
        ("engine", "engine and flywheel inertia"),
        ("propeller", "propeller inertia"),
        ("speed", "speed"),
    ):
        if key == "damper" and model.joint("damper") is None:
            continue
        factor = _nearest(lambda each, key=key: apart(key, each) - wanted)  # type: ignore[misc]
        if factor is not None:
            found.append((words, factor))
    return sorted(found, key=lambda each: abs(math.log(each[1])))


def _nearest(margin: Callable[[float], float]) -> float | None:
    """The factor nearest to one, from a quarter to four, at which a margin turns positive."""
    if margin(1.0) >= 0.0:
        return None
    for step in range(1, _STEPS + 1):
        for way in (-1.0, 1.0):
            outer = 4.0 ** (way * step / _STEPS)
            if margin(outer) >= 0.0:
                inner = 4.0 ** (way * (step - 1) / _STEPS)
                return _bisected(margin, inner, outer)
    return None


def _bisected(margin: Callable[[float], float], short: float, enough: float) -> float:
    """Where a margin turns positive between a factor that falls short and one that is enough."""
    for _ in range(12):
        middle = math.sqrt(short * enough)
        if margin(middle) >= 0.0:
            enough = middle
        else:
            short = middle
    return enough
