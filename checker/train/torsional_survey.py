"""Torsional survey: response of the drive at every speed, with the damper from hot to cold.

It runs from idle to the higher of 110 % of the maximum continuous and 103 % of the take-off speed,
along the propeller law, and at each operation point as stated. All torques are kept as the
crankshaft sees them; a part's own torque is that times crankshaft speed over its own.
"""

import math
from functools import cached_property
from typing import TYPE_CHECKING

from checker.known import Known, Plain, Unknown, Value, compute, merged
from checker.mechanics import coupling, critical_speed, torsion
from checker.mechanics.engine import mean_torque
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject, Subjects
from checker.train.blade_excitation import BladeExcitation, blade_excitation
from checker.train.engine_excitation import EngineExcitation, engine_excitation
from checker.train.graph import Train
from checker.train.motion import Motion
from checker.train.pair import Pair
from checker.train.torsional_builder import build_model
from checker.train.torsional_model import Movable, State, TorsionalModel
from checker.train.torsional_response import Driving, Response

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

SPEEDS = 400
_SLOWEST = 0.1
"""Speed over idle below which a start or stop is not looked at: it lasts less than a cycle."""


class TorsionalSurvey:
    """Modes and response of a drive whose inertias, springs and excitation are known.

    Attributes:
        model: the inertias and springs.
        excitation: what the engine does to them.
        blades: what the blades do to them.
        orders: per turn of the crankshaft, those of the engine and last that of blade passing.
        weak: the cylinders of which each may be the weak one.
        points: index into the speeds of each operation point that can be computed.
        speed: crankshaft speeds [rad/s]: the survey range, then the operation points.
        mean: mean torque of the crankshaft at each [N m].
        open: whether the clutch overruns at each.
        reference: maximum continuous speed [rad/s].
        held: idle and the other speeds at which the engine is held [rad/s].
    """

    def __init__(
        self,
        model: TorsionalModel,
        excitation: EngineExcitation,
        blades: BladeExcitation,
        limits: tuple[Known, Known, Known],
        points: dict[str, tuple[float, float, bool]],
        dwell: tuple[float, ...],
    ) -> None:
        import numpy as np

        self.model = model
        self.excitation = excitation
        self.blades = blades
        self.orders = (*excitation.orders, blades.order.number)
        self.weak = excitation.weak(lumped=len(model.throws) == 1)
        self._limits, self._points, self._dwell = limits, points, dwell
        idle, top, reference = limits
        self.idle, self.top, self.reference = idle.number, top.number, reference.number
        blade_inputs = (blades.order, blades.share)
        self.held = (self.idle, *dwell)
        self.inputs = (*model.inputs, *excitation.inputs, *blade_inputs, idle, top)
        grid = np.linspace(self.idle, self.top, SPEEDS)
        self.speed: Real = np.concatenate([grid, [each[0] for each in points.values()]])
        law = self.law(grid)
        self.mean: Real = np.concatenate([law, [each[1] for each in points.values()]])
        self.open = np.array([False] * SPEEDS + [each[2] for each in points.values()])
        self.points = {name: SPEEDS + index for index, name in enumerate(points)}

    def changed(self, part: Movable, factor: float) -> "TorsionalSurvey":
        """The survey of the drive with one part changed."""
        return self._with(self.model.changed(part, factor), self.excitation)

    def _with(self, model: TorsionalModel, excitation: EngineExcitation) -> "TorsionalSurvey":
        """The survey of another model or excitation at the same speeds."""
        return TorsionalSurvey(
            model, excitation, self.blades, self._limits, self._points, self._dwell
        )

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

    @cached_property
    def _driving(self) -> Driving:
        """What drives the model at the speeds of the survey, whatever the state of the damper."""
        return self.driving(self.speed, self.mean)

    def driving(self, speed: "Real", mean: "Real") -> Driving:
        """What drives the model at some crankshaft speeds [rad/s] and mean torques [N m]."""
        import numpy as np

        phased, loose = {}, {}
        for node, cylinders in self.model.throws.items():
            phased[node] = np.zeros((len(self.weak), len(speed), len(self.orders)), dtype=complex)
            for index, weak in enumerate(self.weak):
                torque = self.excitation.of_cylinders(cylinders, speed, mean, weak)
                phased[node][index, :, :-1] = torque
            loose[node] = np.zeros((len(speed), len(self.orders)), dtype=complex)
            loose[node][:, :-1] = self.excitation.unphased_of(cylinders, mean)
        blades = np.zeros((len(speed), len(self.orders)), dtype=complex)
        blades[:, -1] = self.blades.torque(mean)
        return Driving(phased, {**loose, self.model.propeller: blades})

    def response(self, state: State, speed: "Real", mean: "Real") -> Response:
        """Response in one state at some crankshaft speeds [rad/s] and mean torques [N m]."""
        return self._driven(state, speed, self.driving(speed, mean))

    def _driven(
        self,
        state: State,
        speed: "Real",
        driving: Driving,
        kept: tuple[int, ...] | None = None,
    ) -> Response:
        """Response to what drives at some speeds; with ``kept`` only those nodes are there."""
        import numpy as np

        part, acting = self._passed(state, speed, driving.phased, kept)
        with_loose, loosely = self._passed(state, speed, driving.loose, kept)
        count, nodes, orders = len(self.weak), len(self.model.nodes), len(self.orders)
        here = np.arange(nodes) if kept is None else np.array(kept)
        torque = np.zeros((count, nodes, len(speed), orders), dtype=complex)
        loose, (up, down) = np.zeros((nodes, len(speed), orders)), np.zeros((2, nodes, len(speed)))
        every = np.arange(len(speed))
        torque[np.ix_(np.arange(count), here, every, acting)] = part.swapaxes(0, 1)
        loose[np.ix_(here, every, loosely)] = abs(with_loose)
        if acting.size:
            high, low = torsion.swing(part, np.asarray(self.orders)[acting])
            up[here], down[here] = high.max(axis=1), low.min(axis=1)
        return Response(torque, loose, up + loose.sum(axis=-1), down - loose.sum(axis=-1))

    def _passed(
        self,
        state: State,
        speed: "Real",
        torque: "dict[int, Complex]",
        kept: tuple[int, ...] | None,
    ) -> "tuple[Complex, NDArray[np.int_]]":
        """What each joint passes on of torques on nodes [N m]: [node, ..., speed, order].

        Only the orders that act are looked at; their indexes go with it.
        """
        import numpy as np

        nodes = tuple(range(len(self.model.nodes))) if kept is None else kept
        driven = {nodes.index(node): each for node, each in torque.items() if node in nodes}
        size = sum(abs(each).reshape(-1, len(self.orders)).max(axis=0) for each in driven.values())
        acting = np.flatnonzero(size > 1e-6 * max(size.max(), 1e-30))
        frequency = np.multiply.outer(speed, np.asarray(self.orders)[acting]).ravel() / math.tau
        passed, _ = torsion.forced_response(
            self.model.tree(state, kept),
            frequency,
            {
                node: each[..., acting].reshape(*each.shape[:-2], -1)
                for node, each in driven.items()
            },
        )
        return passed.reshape(*passed.shape[:-1], len(speed), len(acting)), acting

    def _with_overrun(self, state: State, first: int = 0) -> Response:
        """Response in a state from one of the speeds on, with the clutch open where it overruns."""
        speed, driving, here = (
            self.speed[first:],
            self._driving.at(slice(first, None)),
            self.open[first:],
        )
        whole = self._driven(state, speed, driving)
        if here.any():
            ahead = self.model.ahead_of_clutch()
            alone = self._driven(state, speed[here], driving.at(here), ahead)
            whole.torque[:, :, here] = alone.torque
            for name in ("loose", "up", "down"):
                getattr(whole, name)[:, here] = getattr(alone, name)
        return whole

    def heat(self, response: Response, state: State, speed: "Real") -> "Real":
        """Heat in the damper at each speed of a response, the orders summed [W]: [speed]."""
        import numpy as np

        node = self.model.joint("damper")
        assert node is not None
        own = response.amplitude[:, node] * self.model.nodes[node].ratio.number
        frequency = np.multiply.outer(speed, self.orders) / (2.0 * np.pi)
        if state.viscous:
            each = coupling.viscous_heat(state.viscous, frequency, own, state.stiffness)
            return np.asarray(each.sum(axis=-1).max(axis=0))
        elastic = coupling.elastic_torque(1.0, state.damping)
        of_one = coupling.heat(state.damping, 1.0, elastic, state.stiffness)
        return np.asarray(of_one * (frequency * own**2).sum(axis=-1).max(axis=0))

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
        swings = [self.at_rating(self.alternating[each]) for each in self.model.joints_of(shaft)]
        return max(swings) * self.model.ratios[shaft].number

    def at_rating(self, torque: "Real") -> float:
        """A torque over speed [N m] at maximum continuous power, along the propeller law."""
        import numpy as np

        return float(np.interp(self.reference, self.speed[:SPEEDS], torque[:SPEEDS]))

    @cached_property
    def alternating(self) -> "Real":
        """Largest alternating torque of all states, up or down [N m]: [node, speed]."""
        import numpy as np

        return np.asarray(np.max([each.swing for each in self.responses], axis=0))

    @cached_property
    def least(self) -> "Real":
        """Least torque of all states, counted the way the mean points [N m]: [node, speed]."""
        import numpy as np

        each = [response.least(self.carried) for response in self.responses]
        return np.asarray(np.min(each, axis=0))

    @cached_property
    def damper_heat(self) -> dict[str, float]:
        """Heat in the damper at each operation point, the largest of all states [W].

        In resonance the least damping makes the most heat, elsewhere the most; between the two
        the heat has at most one crest.
        """
        import numpy as np

        speed = self.speed[SPEEDS:]
        heats = [
            self.heat(self._with_overrun(damped, SPEEDS), damped, speed)
            for state in self.model.states
            for damped in state.damped()
        ]
        return dict(zip(self.points, np.max(heats, axis=0).tolist(), strict=True))

    def releases(self, index: int) -> int:
        """How often in a cycle the torque of the engaged clutch passes zero, the worst state."""
        import numpy as np

        node = self.model.joint("clutch")
        if node is None or self.open[index]:
            return 0
        most = 0
        for response in self.responses:
            torque = response.torque[:, node, index, :-1]
            over = torsion.over_cycle(torque, self.excitation.orders)
            least = self.carried[node, index] + over - response.loose[node, index].sum()
            negative = least < 0.0
            begins = negative & ~np.roll(negative, 1, axis=-1)
            # Where blades or torque without a phase hold it open the whole cycle, it lets go once.
            most = max(most, int(begins.sum(axis=-1).max()), int(negative.any()))
        return most

    @cached_property
    def chatter(self) -> tuple[tuple[float, float], ...]:
        """Crankshaft speeds between which the torque of the engaged clutch reverses [rad/s]."""
        node = self.model.joint("clutch")
        if node is None:
            return ()
        return tuple(runs(self.least[node, :SPEEDS] < 0.0, self.speed[:SPEEDS]))

    @cached_property
    def run_through(self) -> "Real":
        """Highest torque of each joint at a start or a stop, of all states [N m].

        A bound: the response is that of standing at each speed from a tenth of idle to idle, the
        crossings of every state among them, with the cylinders filled as by an open throttle,
        whether they fire or not.
        """
        import numpy as np

        on_path = np.array([float(node.on_path) for node in self.model.nodes])
        highest = np.zeros(len(self.model.nodes))
        open_throttle = self._with(self.model, self.excitation.unthrottled())
        # Every speed is looked at, so that states in between add nothing to the ends.
        for index in self.model.bounding:
            met = np.divide.outer(math.tau * self.modes[index].frequency[1:], self.orders).ravel()
            speed = np.concatenate([np.linspace(_SLOWEST * self.idle, self.idle, 200), met])
            speed = speed[(speed >= _SLOWEST * self.idle) & (speed <= self.idle)]
            fired = self.law(speed)
            for mean in (fired, np.full_like(fired, self.excitation.motored())):
                response = open_throttle.response(self.model.states[index], speed, mean)
                carried = np.multiply.outer(on_path, np.maximum(mean, 0.0))
                highest = np.maximum(highest, (carried + response.swing).max(axis=1))
        return highest

    def found(self, value: Plain, unit: str, symbol: str, *more: Known) -> Known:
        """A result of the survey, with all that went in."""
        origin = equation_of(torsion.forced_response)
        return Known(value, unit, symbol, origin=origin, inputs=(*self.inputs, *more))


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
    ratio = model if isinstance(model, Unknown) else model.ratios[train.last]
    blades = blade_excitation(subjects, ratio)
    unknown = [
        each
        for each in (model, excitation, blades, idle, reference, top)
        if isinstance(each, Unknown)
    ]
    if (
        isinstance(model, Unknown)
        or isinstance(excitation, Unknown)
        or isinstance(blades, Unknown)
        or not (isinstance(idle, Known) and isinstance(top, Known) and isinstance(reference, Known))
    ):
        return merged(unknown)
    if idle.number >= top.number:
        return Unknown((engine.place("idle_speed"),), "idle lies above the top of the survey")
    points = {}
    for point in subjects.all("point"):
        stated = _point(motion, point)
        if stated is not None:
            points[point.name] = stated
    dwell = tuple(each.value for each in engine.raw("dwell_speeds") or () if each is not None)
    return TorsionalSurvey(model, excitation, blades, (idle, top, reference), points, dwell)


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
