"""Where an order of the engine meets a natural frequency, how strongly, and how far off it is."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from checker.known import assumed
from checker.mechanics import critical_speed
from checker.mechanics.torsion import Modes
from checker.train.torsional_model import TorsionalModel
from checker.train.torsional_survey import TorsionalSurvey

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

COUNTS_ABOVE = assumed(
    0.1,
    "1",
    "q",
    "an order counts where its torque is above this share of the mean; common practice, no source",
)
_SEEN_BEYOND = 1.3
_NOTHING = 1e-3
_RPM = 60.0 / math.tau


@dataclass(frozen=True, slots=True)
class Crossing:
    """An order that meets a natural frequency.

    Attributes:
        order: per turn of the crankshaft.
        of_blades: whether it is blade passing, not an order of the engine.
        mode: index of the mode.
        lowest: frequency with the hot damper [Hz].
        highest: frequency with the cold damper [Hz].
        node: node whose joint it loads the most, from crank throws to blades and branches.
        torque: alternating torque of the mode there, the largest of all states [N m].
    """

    order: float
    of_blades: bool
    mode: int
    lowest: float
    highest: float
    node: int
    torque: float

    @property
    def words(self) -> str:
        """What excites it."""
        return (
            f"blade passing, order {self.order:.3g}," if self.of_blades else f"order {self.order:g}"
        )

    @property
    def speeds(self) -> tuple[float, float]:
        """Crankshaft speeds between which it lies [rad/s]."""
        return math.tau * self.lowest / self.order, math.tau * self.highest / self.order


def mode_words(model: TorsionalModel, modes: Modes, mode: int) -> str:
    """A mode in words: what swings against what, and where the twist sits."""
    shape, energy = modes.shape[mode], modes.energy[mode]
    joint = int(energy.argmax())
    beyond = model.behind(joint)
    motion = [node.inertia.number * shape[i] ** 2 for i, node in enumerate(model.nodes)]
    far = max(beyond, key=lambda index: motion[index])
    near = max(set(range(len(motion))) - beyond, key=lambda index: motion[index])
    twist = model.nodes[joint].joint_words
    others = [
        model.nodes[index].joint_words
        for index in energy.argsort()[::-1]
        if index != joint and energy[index] > 0.25
    ]
    where = " and ".join([twist, *others])
    return f"{model.nodes[far].words} against {model.nodes[near].words}, twist in {where}"


class Resonances:
    """Crossings of a survey."""

    def __init__(self, survey: TorsionalSurvey) -> None:
        self.survey = survey

    @cached_property
    def crossings(self) -> tuple[Crossing, ...]:
        """Every order that meets a natural frequency, excited as along the propeller law there.

        Each state of the damper has its own speed of crossing, and its own excitation.
        """
        import numpy as np

        survey, (mode, order) = self.survey, self._modes_and_orders
        frequency = np.array([modes.frequency for modes in survey.modes])[:, mode]
        speed = math.tau * frequency / np.asarray(survey.orders)[order]
        return self._excited(speed, survey.law(speed))

    def crossings_at(self, speed: float, mean: float) -> tuple[Crossing, ...]:
        """The same crossings, excited as at a crankshaft speed [rad/s] and mean torque [N m]."""
        import numpy as np

        return self._excited(np.array([[speed]]), np.array([[mean]]))

    @cached_property
    def _pairs(self) -> list[tuple[int, int]]:
        """Mode and index of the order of each crossing below 1.3 times the top of the survey."""
        survey = self.survey
        limit = _SEEN_BEYOND * survey.top / math.tau
        lowest = survey.modes[0].frequency
        return [
            (mode, index)
            for mode in range(1, len(lowest))
            for index, order in enumerate(survey.orders)
            if lowest[mode] <= limit * order
        ]

    @property
    def _modes_and_orders(self) -> "tuple[NDArray[np.int_], NDArray[np.int_]]":
        """Mode and index of the order of each crossing."""
        import numpy as np

        mode, order = np.array(self._pairs, dtype=int).reshape(-1, 2).T
        return mode, order

    def _excited(self, speed: "Real", mean: "Real") -> tuple[Crossing, ...]:
        """Crossings with the torque of their mode in the joint that it loads the most.

        Args:
            speed: crankshaft speed [rad/s] of each, or of all: [state, crossing].
            mean: mean torque of the crankshaft [N m] there.
        """
        import numpy as np

        survey, pairs = self.survey, self._pairs
        if not pairs:
            return ()
        mode, order = self._modes_and_orders
        row = np.arange(speed.size).reshape(speed.shape)
        row = np.broadcast_to(row, (len(survey.modes), len(pairs)))
        largest = np.zeros((len(pairs), len(survey.model.nodes)))
        driving = survey.driving(speed.ravel(), mean.ravel())
        for here, modes, gain in zip(row, survey.modes, self._gain, strict=True):
            shape = modes.shape[mode]
            phased, loose = (
                np.sum(
                    [shape[:, node] * each[..., here, order] for node, each in torque.items()],
                    axis=0,
                )
                for torque in (driving.phased, driving.loose)
            )
            strongest = abs(phased).max(axis=0) + abs(loose)
            largest = np.maximum(largest, strongest[:, None] * gain[mode])
        low, high = survey.modes[0].frequency, survey.modes[-1].frequency
        return tuple(
            Crossing(
                survey.orders[index],
                index == len(survey.orders) - 1,
                each,
                float(low[each]),
                float(high[each]),
                int(row.argmax()),
                float(row.max()),
            )
            for (each, index), row in zip(pairs, largest, strict=True)
        )

    @cached_property
    def _gain(self) -> "list[Real]":
        """Torque in each joint per torque on a node that swings by one, at resonance, each state.

        A mode at its resonance swings by F/(i η ω² M): M = Σ J φ² is its mass, F the torque that
        drives it and η = Σ q ψ/2π its loss, q being the share of each joint in its energy. A joint
        passes on what all that stands behind it needs, ω² Σ J φ. What an order drives through a
        joint without any resonance is not in it.
        """
        import numpy as np

        found = []
        for state, modes in zip(self.survey.model.states, self.survey.modes, strict=True):
            tree = self.survey.model.tree(state)
            inertia = np.asarray(tree.inertia)
            passed = modes.shape * inertia
            mass = (passed * modes.shape).sum(axis=1)
            for node in range(len(inertia) - 1, 0, -1):
                passed[:, tree.parent[node]] += passed[:, node]
            passed[:, 0] = 0.0
            loss = modes.energy @ np.asarray(tree.damping) / math.tau
            if tree.viscous:
                yielding = np.asarray(tree.viscous) / np.asarray(tree.stiffness)
                loss = loss + math.tau * modes.frequency * (modes.energy @ yielding)
            loss[0] = math.inf
            found.append(np.asarray(abs(passed) / (loss * mass)[:, None]))
        return found

    def counting(self, speed: float, mean: float) -> list[Crossing]:
        """Crossings whose torque is more than a tenth of the mean torque of a point.

        Of the excitation at the point and that along the propeller law the larger one counts.
        """
        either = zip(self.crossings_at(speed, mean), self.crossings, strict=True)
        larger = [max(pair, key=lambda each: each.torque) for pair in either]
        least = COUNTS_ABOVE.number * abs(mean)
        return [each for each in larger if each.torque > max(least, _NOTHING)]

    def separation(self, speed: float, mean: float) -> tuple[float, Crossing | None]:
        """Least separation of an order that counts at a speed [rad/s] and mean torque [N m]."""
        least, nearest = 1.0, None
        for crossing in self.counting(speed, mean):
            excitation = crossing.order * speed / math.tau
            apart = critical_speed.separation(excitation, crossing.lowest, crossing.highest)
            if apart < least:
                least, nearest = apart, crossing
        return least, nearest

    def listed(self) -> list[Crossing]:
        """Crossings up to the top of the survey whose order is excited."""
        return [
            each
            for each in self.crossings
            if each.torque > _NOTHING and each.speeds[0] <= self.survey.top
        ]

    def crossing_words(self, crossing: Crossing) -> str:
        """A crossing in words, with its torque at the part's own speed."""
        survey = self.survey
        node = survey.model.nodes[crossing.node]
        below = " (passed at start and stop)" if crossing.speeds[1] < survey.idle else ""
        ends = dict.fromkeys(f"{each * _RPM:.0f}" for each in crossing.speeds)
        return (
            f"{crossing.words} at {' to '.join(ends)} rpm{below}: "
            f"{crossing.torque * node.ratio.number:.1f} N m in {node.joint_words}"
        )
