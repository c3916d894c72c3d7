"""What moves a resonance, and the smallest change that clears a point of it."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from checker.train.resonance import Resonances
from checker.train.torsional_model import Movable

_STEPS, _HALVINGS = 14, 6
_MORE = 1.1


@dataclass(frozen=True, slots=True)
class Moved:
    """What a tenth more of something that a designer can move does.

    Attributes:
        words: what it is.
        change: of the lowest natural frequency with the damper as stated, over that frequency.
        cold: lowest natural frequency then, with the cold damper [Hz].
        idle: idle speed then [rad/s].
    """

    words: str
    change: float
    cold: float
    idle: float


class Movers:
    """Surveys of a drive in which one thing is changed; each is made once."""

    def __init__(self, resonances: Resonances) -> None:
        self.resonances = resonances
        self.survey = resonances.survey
        self._tried: dict[tuple[Movable, float], Resonances] = {}
        self._cleared: dict[tuple[float, float, float], list[tuple[str, float]]] = {}

    @cached_property
    def worst(self) -> list[tuple[float, float]]:
        """Of the operation points, and of the speeds that are held, that nearest to resonance."""
        apart = dict(zip(self.held, self._as_is, strict=True))
        count = len(self.held) - len(self.survey.held)
        parts = (self.held[:count], self.held[count:])
        return [min(part, key=lambda each: apart[each]) for part in parts if part]

    @cached_property
    def held(self) -> tuple[tuple[float, float], ...]:
        """Crankshaft speed [rad/s] and mean torque [N m] wherever the drive dwells.

        Operation points where torque passes, then idle and the other speeds that are held.
        """
        survey = self.survey
        points = [
            (float(survey.speed[index]), float(survey.mean[index]))
            for index in survey.points.values()
            if not survey.open[index]
        ]
        return (*points, *((speed, float(survey.law(speed))) for speed in survey.held))

    @property
    def parts(self) -> list[tuple[Movable, str]]:
        """What can be changed in the drive, with its words."""
        model = self.survey.model
        found: list[tuple[Movable, str]] = []
        if model.joint("damper") is not None:
            found.append(("damper", "damper stiffness"))
        found.append(("engine", "engine inertia"))
        if model.flywheel:
            found.append(("flywheel", f"flywheel inertia (shaft {model.flywheel})"))
        return [*found, ("propeller", "propeller inertia")]

    def sensitivity(self) -> list[Moved]:
        """What a tenth more of each part does to the lowest frequency, and what idle speed does."""
        survey = self.survey
        running = survey.model.running
        base = float(survey.modes[running].frequency[1])
        found = []
        for part, words in self.parts:
            modes = survey.changed(part, _MORE).modes
            change = float(modes[running].frequency[1]) / base - 1.0
            found.append(Moved(words, change, float(modes[-1].frequency[1]), survey.idle))
        cold = float(survey.modes[-1].frequency[1])
        return [*found, Moved("idle speed", 0.0, cold, survey.idle * _MORE)]

    def clearing(self, speed: float, mean: float, wanted: float) -> list[tuple[str, float]]:
        """Smallest factor on each thing that a designer can move which gives a separation.

        Each factor is one with which the drive was surveyed again: every order that counts then,
        in every state of the damper, is as far off as wanted, and no other speed at which the
        drive dwells comes nearer to resonance than that. A change of speed takes the mean torque
        along the propeller law and stays within the survey.

        Args:
            speed: of the crankshaft [rad/s].
            mean: mean torque of the crankshaft there [N m].
            wanted: separation.
        """
        key = (speed, mean, wanted)
        if key not in self._cleared:
            self._cleared[key] = self._clearing(speed, mean, wanted)
        return self._cleared[key]

    def _clearing(self, speed: float, mean: float, wanted: float) -> list[tuple[str, float]]:
        def with_part(part: Movable) -> Callable[[float], float]:
            return lambda factor: self._apart(part, factor, speed, mean, wanted) - wanted

        def at_speed(factor: float) -> float:
            if not self.survey.idle <= factor * speed <= self.survey.top:
                return -wanted
            return self.resonances.separation(factor * speed, factor**2 * mean)[0] - wanted

        found = [(words, _nearest(with_part(part))) for part, words in self.parts]
        found.append(("speed", _nearest(at_speed)))
        known = [(words, factor) for words, factor in found if factor is not None]
        return sorted(known, key=lambda each: abs(math.log(each[1])))

    def _apart(
        self, part: Movable, factor: float, speed: float, mean: float, wanted: float
    ) -> float:
        """Separation at a speed with one part changed, or where another now falls short of it."""
        if (part, factor) not in self._tried:
            self._tried[part, factor] = Resonances(self.survey.changed(part, factor))
        changed = self._tried[part, factor]
        here = changed.separation(speed, mean)[0]
        if here < wanted:
            return here
        others = (
            now
            for now, before in zip(
                (changed.separation(*each)[0] for each in self.held), self._as_is, strict=True
            )
            if now < min(before, wanted)
        )
        return min(others, default=here)

    @cached_property
    def _as_is(self) -> tuple[float, ...]:
        """Separation wherever the drive dwells, nothing changed."""
        return tuple(self.resonances.separation(*each)[0] for each in self.held)


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
    for _ in range(_HALVINGS):
        middle = math.sqrt(short * enough)
        if margin(middle) >= 0.0:
            enough = middle
        else:
            short = middle
    return enough
