"""Torsional survey: response of the drive at every speed, with the damper from hot to cold.

It runs from idle to the higher of 110 % of the maximum continuous and 103 % of the take-off speed,
along the propeller law, and at each operation point as stated. All torques are kept as the
crankshaft sees them; a part's own torque is that times crankshaft speed over its own.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from checker.known import Known, Plain, Unknown, Value, compute, merged
from checker.mechanics import coupling, critical_speed, torsion
from checker.mechanics.engine import mean_torque
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject, Subjects
from checker.train.engine_excitation import EngineExcitation, engine_excitation
from checker.train.graph import Train
from checker.train.motion import Motion
from checker.train.pair import Pair
from checker.train.torsional_builder import build_model
from checker.train.torsional_model import Movable, State, TorsionalModel

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

SPEEDS = 400


@dataclass(frozen=True)
class Response:
    """Vibration of the drive in one state of the damper, as the crankshaft sees it.

    Attributes:
        torque: complex, of the joint ahead of each node [N m]: [node, speed, order].
        up: highest of the alternating torque over a cycle [N m]: [node, speed].
        down: lowest of it, below zero.
    """

    torque: "Complex"
    up: "Real"
    down: "Real"


class TorsionalSurvey:
    """Modes and response of a drive whose inertias, springs and excitation are known.

    Attributes:
        model: the inertias and springs.
        excitation: what the engine does to them.
        points: index into the speeds of each operation point that can be computed.
        speed: crankshaft speeds [rad/s]: the survey range, then the operation points.
        mean: mean torque of the crankshaft at each [N m].
        open: whether the clutch overruns at each.
        reference: maximum continuous speed [rad/s].
        blade_order: blade-passing order per turn of the crankshaft, if the blades are counted.
    """

    def __init__(
        self,
        model: TorsionalModel,
        excitation: EngineExcitation,
        limits: tuple[Known, Known, Known],
        points: dict[str, tuple[float, float, bool]],
    ) -> None:
        import numpy as np

        self.model = model
        self.excitation = excitation
        self._limits, self._points = limits, points
        idle, top, reference = limits
        self.idle, self.top, self.reference = idle.number, top.number, reference.number
        self.inputs = (*model.inputs, *excitation.inputs, idle, top)
        grid = np.linspace(self.idle, self.top, SPEEDS)
        self.speed: Real = np.concatenate([grid, [each[0] for each in points.values()]])
        law = self.law(grid)
        self.mean: Real = np.concatenate([law, [each[1] for each in points.values()]])
        self.open = np.array([False] * SPEEDS + [each[2] for each in points.values()])
        self.points = {name: SPEEDS + index for index, name in enumerate(points)}

    def changed(self, part: Movable, factor: float) -> "TorsionalSurvey":
        """The survey of the drive with one part changed."""
        model = self.model.changed(part, factor)
        return TorsionalSurvey(model, self.excitation, self._limits, self._points)

    def law(self, speed: "Real | float") -> "Real":
        """Mean torque along the propeller law, through maximum continuous power [N m]."""
        import numpy as np

        torque: Real = np.square(speed / self.reference) * self.excitation.full
        return torque

    @cached_property
    def modes(self) -> tuple[torsion.Modes, ...]:
        """Free vibration in each state."""
        return tuple(torsion.natural_modes(self.model.tree(state)) for state in self.model.states)

    @cached_property
    def responses(self) -> tuple[Response, ...]:
        """Response in each state, with the clutch open where it overruns."""
        return tuple(self._with_overrun(state) for state in self.model.states)

    @cached_property
    def worst(self) -> tuple["Real", "Real"]:
        """Highest and lowest alternating torque of all states [N m]: [node, speed]."""
        import numpy as np

        up = np.max([each.up for each in self.responses], axis=0)
        down = np.min([each.down for each in self.responses], axis=0)
        return up, down

    @cached_property
    def carried(self) -> "Real":
        """Mean torque of the joint ahead of each node [N m]: [node, speed]."""
        import numpy as np

        on_path = np.array([float(node.on_path) for node in self.model.nodes])
        return np.asarray(np.multiply.outer(on_path, np.where(self.open, 0.0, self.mean)))

    def response(
        self,
        state: State,
        speed: "Real",
        mean: "Real",
        kept: frozenset[int] | None = None,
    ) -> Response:
        """Response in one state at some speeds; with ``kept`` only those nodes are there."""
        import numpy as np

        tree = self.model.tree(state)
        if kept is not None:
            tree = _only(tree, kept)
        count = len(tree.parent)
        excited = {
            node: self.excitation.of_cylinders(cylinders, speed, mean)
            for node, cylinders in self.model.throws.items()
        }
        total = np.sum([abs(each).max(axis=0) for each in excited.values()], axis=0)
        active = np.flatnonzero(total > 1e-6 * max(total.max(), 1e-30))
        orders = np.asarray(self.excitation.orders)[active]
        frequency = np.multiply.outer(speed, orders).ravel() / (2.0 * np.pi)
        passed, _ = torsion.forced_response(
            tree, frequency, {node: each[:, active].ravel() for node, each in excited.items()}
        )
        nodes = len(self.model.nodes)
        torque = np.zeros((nodes, len(speed), len(self.excitation.orders)), dtype=complex)
        part = passed.reshape(count, len(speed), len(orders))
        torque[:count, :, active] = part
        up, down = np.zeros((2, nodes, len(speed)))
        if self.excitation.phased:
            up[:count], down[:count] = torsion.swing(part, orders)
        else:
            up[:count] = abs(part).sum(axis=-1)
            down[:count] = -up[:count]
        return Response(torque, up, down)

    def _with_overrun(self, state: State) -> Response:
        whole = self.response(state, self.speed, self.mean)
        if self.open.any():
            here = self.open
            kept = self.model.ahead_of_clutch()
            alone = self.response(state, self.speed[here], self.mean[here], kept)
            for name in ("torque", "up", "down"):
                getattr(whole, name)[:, here] = getattr(alone, name)
        return whole

    def heat(self, response: Response, state: State) -> "Real":
        """Heat in the damper at each speed, the orders summed [W]: [speed]."""
        import numpy as np

        node = self.model.joint("damper")
        assert node is not None
        own = abs(response.torque[node]) * self.model.nodes[node].ratio.number
        frequency = np.multiply.outer(self.speed, self.excitation.orders) / (2.0 * np.pi)
        if state.viscous:
            each = coupling.viscous_heat(state.viscous, frequency, own, state.stiffness)
            return np.asarray(each.sum(axis=-1))
        elastic = coupling.elastic_torque(1.0, state.damping)
        of_one = coupling.heat(state.damping, 1.0, elastic, state.stiffness)
        return np.asarray(of_one * (frequency * own**2).sum(axis=-1))

    def highest(self, shaft: str, *joints: str) -> float:
        """Largest mean plus alternating torque [N m] at a shaft's speed.

        Speeds at which the propeller would ask for more than full power or any operation point
        are left out.

        Args:
            shaft: the shaft.
            joints: names of joints to look at; without any, all that load the shaft.
        """
        nodes = [
            index
            for index in self.model.joints_of(shaft)
            if not joints or self.model.nodes[index].name in joints
        ]
        most = max(self.excitation.full, *abs(self.mean[SPEEDS:]), 0.0)
        total = (abs(self.carried) + self.alternating)[:, abs(self.mean) <= most]
        return float(total[nodes].max()) * self.model.ratios[shaft].number

    def swing_at_rating(self, shaft: str) -> float:
        """Largest alternating torque [N m] at a shaft's speed at maximum continuous power."""
        import numpy as np

        swings = [
            np.interp(self.reference, self.speed[:SPEEDS], self.alternating[index, :SPEEDS])
            for index in self.model.joints_of(shaft)
        ]
        return float(max(swings)) * self.model.ratios[shaft].number

    @cached_property
    def alternating(self) -> "Real":
        """Largest alternating torque of all states, up or down [N m]: [node, speed]."""
        import numpy as np

        up, down = self.worst
        return np.maximum(up, -down)

    @cached_property
    def least(self) -> "Real":
        """Least torque of all states, counted the way the mean points [N m]: [node, speed]."""
        import numpy as np

        up, down = self.worst
        against = np.where(self.carried < 0.0, -up, down)
        return np.asarray(abs(self.carried) + against)

    @cached_property
    def damper_heat(self) -> "Real":
        """Heat in the damper at each speed, the largest of all states [W]: [speed]."""
        import numpy as np

        each = zip(self.responses, self.model.states, strict=True)
        return np.asarray(np.max([self.heat(response, state) for response, state in each], axis=0))

    def releases(self, index: int) -> int:
        """How often in a cycle the torque of the engaged clutch passes zero, the worst state."""
        import numpy as np

        node = self.model.joint("clutch")
        if node is None or self.open[index]:
            return 0
        if not self.excitation.phased:
            return int(self.least[node, index] < 0.0)
        most = 0
        for response in self.responses:
            over = torsion.over_cycle(response.torque[node, index], self.excitation.orders)
            negative = self.carried[node, index] + over < 0.0
            most = max(most, int(np.sum(negative & ~np.roll(negative, 1))))
        return most

    @cached_property
    def chatter(self) -> tuple[tuple[float, float], ...]:
        """Crankshaft speeds between which the torque of the engaged clutch reverses [rad/s]."""
        node = self.model.joint("clutch")
        if node is None:
            return ()
        return tuple(runs(self.least[node, :SPEEDS] < 0.0, self.speed[:SPEEDS]))

    @cached_property
    def run_through(self) -> tuple["Real", "Real"]:
        """Highest torque of each joint below idle, of all states [N m]; and speeds [rad/s].

        A bound: the response is that of standing at each speed, which a start or a stop passes
        through.
        """
        import numpy as np

        speed = np.linspace(0.1 * self.idle, self.idle, 200)
        mean = self.law(speed)
        on_path = np.array([float(node.on_path) for node in self.model.nodes])
        highest = np.zeros(len(self.model.nodes))
        states = self.model.states
        # Every speed is looked at, so that states in between add nothing to the ends.
        for state in {states[0], states[self.model.running], states[-1]}:
            response = self.response(state, speed, mean)
            swing = np.maximum(response.up, -response.down)
            highest = np.maximum(highest, (np.multiply.outer(on_path, mean) + swing).max(axis=1))
        return highest, speed

    def found(self, value: Plain, unit: str, symbol: str, *more: Known) -> Known:
        """A result of the survey, with all that went in."""
        origin = equation_of(torsion.forced_response)
        return Known(value, unit, symbol, origin=origin, inputs=(*self.inputs, *more))


def _only(tree: torsion.Tree, kept: frozenset[int]) -> torsion.Tree:
    """A tree without the nodes that are not kept: without inertia they carry nothing."""
    count = max(kept) + 1
    inertia = tuple(each if node in kept else 0.0 for node, each in enumerate(tree.inertia[:count]))
    return torsion.Tree(
        inertia,
        tree.parent[:count],
        tree.stiffness[:count],
        tree.damping[:count],
        tree.viscous[:count],
    )


def runs(hit: "NDArray[np.bool_]", speed: "Real") -> list[tuple[float, float]]:
    """Stretches of speed at which something holds, each a step wider at both ends."""
    found: list[tuple[float, float]] = []
    start = None
    last = len(hit) - 1
    for index, here in enumerate(hit):
        if here and start is None:
            start = index
        if start is not None and (not here or index == last):
            found.append((float(speed[max(start - 1, 0)]), float(speed[index])))
            start = None
    return found


def build_survey(
    subjects: Subjects,
    train: Train,
    motion: Motion,
    pairs: dict[str, Pair],
    clutch_torque: Value,
) -> TorsionalSurvey | Unknown:
    """Make the survey of a drive, or name everything that is missing for it."""
    model = build_model(subjects, train, motion, pairs, clutch_torque)
    excitation = engine_excitation(subjects)
    engine = subjects.the("engine")
    idle = engine.given("idle_speed", "ω_idle")
    reference = engine.given("maximum_continuous.speed", "ω_MC")
    top = compute(
        critical_speed.survey_upper_speed, reference, engine.given("take_off.speed", "ω_TO")
    )
    unknown = [
        each for each in (model, excitation, idle, reference, top) if isinstance(each, Unknown)
    ]
    if (
        unknown
        or isinstance(model, Unknown)
        or isinstance(excitation, Unknown)
        or not (isinstance(idle, Known) and isinstance(top, Known) and isinstance(reference, Known))
    ):
        return merged(unknown)
    points = {}
    for point in subjects.all("point"):
        stated = _point(motion, point)
        if stated is not None:
            points[point.name] = stated
    return TorsionalSurvey(model, excitation, (idle, top, reference), points)


def _point(motion: Motion, point: Subject) -> tuple[float, float, bool] | None:
    """Crankshaft speed, mean torque and whether the clutch overruns; ``None`` where not stated."""
    speed = point.given("engine_speed", "ω")
    torque = compute(mean_torque, point.given("power", "P"), speed)
    driver, overruns = motion.driver(point), motion.overruns(point)
    if not (
        isinstance(speed, Known)
        and isinstance(torque, Known)
        and isinstance(driver, Known)
        and isinstance(overruns, Known)
    ):
        return None
    sign = -1.0 if driver.value == "propeller" else 1.0
    return speed.number, sign * torque.number, bool(overruns.value)
