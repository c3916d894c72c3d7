"""What a torsional survey says in words: modes, crossings, barred ranges, what moves them."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from checker.known import Unknown, Value, merged
from checker.mechanics import critical_speed
from checker.mechanics.equation import OutOfRange
from checker.mechanics.torsion import Modes, forced_response, natural_modes
from checker.spec.subject import Subjects
from checker.train.torsional_model import TorsionalModel
from checker.train.torsional_survey import SPEEDS, TorsionalSurvey, runs

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]

COUNTS_ABOVE = 0.1
"""Share of the mean torque above which an order counts for the separation."""
_SEEN_BEYOND = 1.3
_NOTHING = 1e-3
_RPM = 60.0 / math.tau
_STEPS = 14


@dataclass(frozen=True, slots=True)
class Crossing:
    """An order that meets a natural frequency.

    Attributes:
        order: per turn of the crankshaft.
        mode: index of the mode.
        lowest: frequency with the hot damper [Hz].
        highest: frequency with the cold damper [Hz].
        node: node whose joint it loads the most, from crank throws to blades and branches.
        torque: alternating torque of the mode there, the largest of all states [N m].
    """

    order: float
    mode: int
    lowest: float
    highest: float
    node: int
    torque: float

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
    """Crossings and barred ranges of a survey."""

    def __init__(self, survey: TorsionalSurvey, subjects: Subjects) -> None:
        self.survey = survey
        self._subjects = subjects

    @cached_property
    def crossings(self) -> tuple[Crossing, ...]:
        """Every order that meets a natural frequency, excited as along the propeller law there."""
        import numpy as np

        pairs = self._pairs
        survey = self.survey
        highest = survey.modes[-1].frequency
        speed = np.array(
            [math.tau * highest[mode] / survey.excitation.orders[k] for mode, k in pairs]
        )
        return self._excited(speed, survey.law(speed))

    def crossings_at(self, speed: float, mean: float) -> tuple[Crossing, ...]:
        """The same crossings, excited as at a crankshaft speed [rad/s] and mean torque [N m]."""
        import numpy as np

        count = len(self._pairs)
        return self._excited(np.full(count, speed), np.full(count, mean))

    @cached_property
    def _pairs(self) -> list[tuple[int, int]]:
        """Mode and index of the order of each crossing below 1.3 times the top of the survey."""
        survey = self.survey
        limit = _SEEN_BEYOND * survey.top / math.tau
        lowest = survey.modes[0].frequency
        return [
            (mode, index)
            for mode in range(1, len(lowest))
            for index, order in enumerate(survey.excitation.orders)
            if lowest[mode] <= limit * order
        ]

    def _excited(self, speed: "Real", mean: "Real") -> tuple[Crossing, ...]:
        """Crossings with the torque of their mode in the joint that it loads the most."""
        import numpy as np

        survey, pairs = self.survey, self._pairs
        if not pairs:
            return ()
        rows = np.arange(len(pairs))
        mode, order = np.array(pairs).T
        throws = survey.model.throws
        torque = [
            survey.excitation.of_cylinders(cylinders, speed, mean)[rows, order]
            for cylinders in throws.values()
        ]
        largest = np.zeros((len(pairs), len(survey.model.nodes)))
        for modes, gain in zip(survey.modes, self._gain, strict=True):
            driven = sum(
                modes.shape[mode, node] * each for node, each in zip(throws, torque, strict=True)
            )
            largest = np.maximum(largest, abs(driven)[:, None] * gain[mode])
        low, high = survey.modes[0].frequency, survey.modes[-1].frequency
        return tuple(
            Crossing(
                survey.excitation.orders[index],
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
        return [each for each in larger if each.torque > max(COUNTS_ABOVE * abs(mean), _NOTHING)]

    def separation(self, speed: float, mean: float) -> tuple[float, Crossing | None]:
        """Least separation of an order that counts at a speed [rad/s] and mean torque [N m]."""
        least, nearest = 1.0, None
        for crossing in self.counting(speed, mean):
            excitation = crossing.order * speed / math.tau
            apart = critical_speed.separation(excitation, crossing.lowest, crossing.highest)
            if apart < least:
                least, nearest = apart, crossing
        return least, nearest

    def blade_separation(self, speed: float, order: float, share: float) -> float:
        """Least separation of the blade-passing order at a crankshaft speed [rad/s].

        Args:
            speed: of the crankshaft.
            order: blade-passing order per turn of the crankshaft.
            share: its torque over the mean torque of the propeller.
        """
        low, high = self.survey.modes[0].frequency, self.survey.modes[-1].frequency
        return min(
            (
                critical_speed.separation(
                    order * speed / math.tau, float(low[mode]), float(high[mode])
                )
                for mode, gain in enumerate(self._blade_gain, 1)
                if share * gain > COUNTS_ABOVE
            ),
            default=1.0,
        )

    @cached_property
    def _blade_gain(self) -> list[float]:
        """Largest torque in a joint over that on the propeller, at each mode but the first."""
        import numpy as np

        survey = self.survey
        joints = [index for index, node in enumerate(survey.model.nodes) if index and node.on_path]
        gain = np.zeros(len(survey.modes[0].frequency) - 1)
        for state, modes in zip(survey.model.states, survey.modes, strict=True):
            passed, _ = forced_response(
                survey.model.tree(state),
                modes.frequency[1:],
                {survey.model.propeller: np.ones(len(gain), dtype=complex)},
            )
            gain = np.maximum(gain, abs(passed[joints]).max(axis=0))
        return [float(each) for each in gain]

    def limits(self) -> list[tuple[int, str, float]] | Unknown:
        """Allowable torques as the crankshaft sees them: node, whether on the swing or the peak."""
        model = self.survey.model
        found: list[tuple[int, str, Value, float]] = []
        for index, node in enumerate(model.nodes):
            ratio = node.ratio.number
            if node.kind == "damper":
                damper = self._subjects.the("damper")
                swing = damper.given("vibratory_torque_rating", "T_KW")
                found += [
                    (index, "swing", swing, ratio),
                    (index, "peak", damper.given("peak_torque_rating", "T_peak"), ratio),
                ]
            elif node.kind == "clutch":
                clutch = self._subjects.the("clutch")
                found.append((index, "peak", clutch.given("rated_torque", "T_r"), ratio))
            elif node.kind == "mesh":
                mesh = self._subjects.spec.meshes[node.name]
                gear = self._subjects.the("gear", mesh.driver)
                found.append((index, "peak", gear.given("peak_torque_rating", "T_lim"), ratio))
        unknown = [value for _, _, value, _ in found if isinstance(value, Unknown)]
        if unknown:
            return merged(unknown)
        return [
            (index, kind, value.number / ratio)
            for index, kind, value, ratio in found
            if not isinstance(value, Unknown)
        ]

    @cached_property
    def barred(self) -> tuple[tuple[float, float], ...] | Unknown:
        """Crankshaft speeds [rad/s] at which a torque exceeds what is allowed, or reverses.

        What is barred with one state of the damper is joined with what is barred with the next.
        """
        import numpy as np

        limits = self.limits()
        if isinstance(limits, Unknown):
            return limits
        survey = self.survey
        carried = abs(survey.carried[:, :SPEEDS])
        reversing = [
            index
            for index, node in enumerate(survey.model.nodes)
            if node.kind in ("mesh", "clutch") and node.on_path
        ]
        ranges: list[tuple[float, float]] = []
        before: list[tuple[float, float]] = []
        for response in survey.responses:
            up, down = response.up[:, :SPEEDS], response.down[:, :SPEEDS]
            barred = np.zeros(SPEEDS, dtype=bool)
            for index, kind, allowed in limits:
                if kind == "swing":
                    barred |= np.maximum(up[index], -down[index]) > allowed
                else:
                    barred |= carried[index] + up[index] > allowed
            for index in reversing:
                barred |= carried[index] + down[index] < 0.0
            here = runs(barred, survey.speed[:SPEEDS])
            ranges += here
            if len(here) == len(before):
                ranges += [
                    (min(one[0], other[0]), max(one[1], other[1]))
                    for one, other in zip(here, before, strict=True)
                ]
            before = here
        return tuple(_joined(ranges))

    def marine(self, crossing: Crossing) -> tuple[float, float] | None:
        """The marine barred range about a crossing [rad/s], for comparison only."""
        critical = sum(crossing.speeds) / 2.0
        share = critical / self.survey.reference
        try:
            return (
                critical * critical_speed.marine_lower_limit(share),
                critical * critical_speed.marine_upper_limit(share),
            )
        except OutOfRange:
            return None

    def listed(self) -> list[Crossing]:
        """Crossings up to the top of the survey whose order the engine excites."""
        return [
            each
            for each in self.crossings
            if each.torque > _NOTHING and each.speeds[0] <= self.survey.top
        ]

    def crossing_words(self, crossing: Crossing) -> str:
        """A crossing in words, with its torque at the part's own speed."""
        survey = self.survey
        node = survey.model.nodes[crossing.node]
        low, high = (each * _RPM for each in crossing.speeds)
        below = " (passed at start and stop)" if crossing.speeds[1] < survey.idle else ""
        return (
            f"order {crossing.order:g} at {low:.0f} to {high:.0f} rpm{below}: "
            f"{crossing.torque * node.ratio.number:.1f} N m in {node.joint_words}"
        )

    def sensitivity(self) -> list[tuple[str, float]]:
        """Change of the lowest frequency for 10 % more of what a designer can move."""
        survey = self.survey
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

    def clearing(self, speed: float, mean: float, wanted: float) -> list[tuple[str, float]]:
        """Smallest factor on each thing that a designer can move which gives a separation.

        Only the orders that count today are looked at, each with its mode moved.
        """
        counted = self.counting(speed, mean)
        model = self.survey.model

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


def _joined(ranges: list[tuple[float, float]]) -> list[tuple[float, float]]:
    joined: list[tuple[float, float]] = []
    for low, high in sorted(ranges):
        if joined and low <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], high))
        else:
            joined.append((low, high))
    return joined
