"""What swings at the engine while the clutch overruns: the drive ahead of it, by itself."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from checker.mechanics import critical_speed, torsion
from checker.train.resonance import COUNTS_ABOVE
from checker.train.torsional_response import Driving
from checker.train.torsional_survey import TorsionalSurvey

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]


@dataclass(frozen=True)
class Overrun:
    """The drive ahead of the open clutch.

    Attributes:
        survey: the survey of the whole drive.
        kept: its nodes that still turn with the engine.
    """

    survey: TorsionalSurvey
    kept: tuple[int, ...]

    @cached_property
    def trees(self) -> tuple[torsion.Tree, ...]:
        """Its inertias and springs in each state of the damper."""
        model = self.survey.model
        return tuple(model.tree(state, self.kept) for state in model.states)

    @cached_property
    def modes(self) -> tuple[torsion.Modes, ...]:
        """Its free vibration in each state."""
        return tuple(torsion.natural_modes(tree) for tree in self.trees)

    def words(self) -> list[str]:
        """Its modes below the highest excitation, from hot to cold."""
        survey = self.survey
        highest = max(survey.orders) * survey.top / math.tau
        low, high = self.modes[0].frequency, self.modes[-1].frequency
        running = self.modes[survey.model.running]
        return [
            f"{low[mode]:.1f} to {high[mode]:.1f} Hz: twist in "
            + survey.model.nodes[self.kept[int(running.energy[mode].argmax())]].joint_words
            for mode in range(1, len(low))
            if low[mode] <= highest
        ]

    def separation(self, speed: float, mean: float) -> tuple[float, str]:
        """Least separation of an order that counts at a crankshaft speed, and which order it is.

        An order counts where its torque at resonance is more than a tenth of the mean torque at
        maximum continuous power: at the point itself no mean torque passes. Of the excitation at
        the speed and that where the order meets the mode the larger one is taken.

        Args:
            speed: of the crankshaft [rad/s].
            mean: mean torque of the crankshaft at the point [N m].
        """
        least, nearest = 1.0, "no order counts here"
        survey = self.survey
        counts = self._torque(speed, mean) > COUNTS_ABOVE.number * survey.excitation.full
        low, high = self.modes[0].frequency, self.modes[-1].frequency
        for mode, index in zip(*counts.nonzero(), strict=True):
            order = survey.orders[index]
            ends = float(low[mode + 1]), float(high[mode + 1])
            apart = critical_speed.separation(order * speed / math.tau, *ends)
            if apart < least:
                least, nearest = apart, f"order {order:g} near {ends[0]:.0f} to {ends[1]:.0f} Hz"
        return least, nearest

    def _torque(self, speed: float, mean: float) -> "Real":
        """Largest torque in a joint where each order meets each mode [N m]: [mode - 1, order]."""
        import numpy as np

        survey = self.survey
        orders = np.asarray(survey.orders)
        largest = np.zeros((len(self.modes[0].frequency) - 1) * len(orders))
        for tree, modes in zip(self.trees, self.modes, strict=True):
            frequency = np.repeat(modes.frequency[1:], len(orders))
            order = np.tile(np.arange(len(orders)), len(modes.frequency) - 1)
            meeting = math.tau * frequency / orders[order]
            for at in (np.full_like(meeting, speed), meeting):
                driving = survey.driving(at, np.full_like(at, mean))
                passed = self._passed(tree, frequency, order, driving)
                largest = np.maximum(largest, passed.max(axis=(0, 1)))
        return np.asarray(largest.reshape(-1, len(orders)))

    def _passed(
        self,
        tree: torsion.Tree,
        frequency: "Real",
        order: "NDArray[np.int_]",
        driving: Driving,
    ) -> "Real":
        """Torque in a joint where an order acts at a frequency [N m]: [node, weak, frequency]."""
        import numpy as np

        rows = np.arange(len(order))
        parts = []
        for torque in (driving.phased, driving.loose):
            acting = {
                self.kept.index(node): each[..., rows, order]
                for node, each in torque.items()
                if node in self.kept
            }
            parts.append(abs(torsion.forced_response(tree, frequency, acting)[0]))
        phased, loose = parts
        return np.asarray(phased + loose[:, None])


def overrun_of(survey: TorsionalSurvey) -> Overrun | None:
    """The drive ahead of the clutch; ``None`` where there is no clutch in the model."""
    if survey.model.joint("clutch") is None:
        return None
    return Overrun(survey, survey.model.ahead_of_clutch())
