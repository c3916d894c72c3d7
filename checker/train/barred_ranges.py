"""Speeds at which a torque exceeds what a part bears, or at which teeth or clutch reverse."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from checker.known import Unknown, Value, merged
from checker.mechanics import critical_speed
from checker.mechanics.equation import OutOfRange
from checker.spec.subject import Subjects
from checker.train import torsional_values as values
from checker.train.clutch_rating import rated_torque_of
from checker.train.resonance import Crossing
from checker.train.torsional_model import Node
from checker.train.torsional_response import Response
from checker.train.torsional_survey import SPEEDS, TorsionalSurvey, runs

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Limit:
    """A torque that a part bears.

    Attributes:
        kind: of the part.
        name: of the part, empty where there is one only.
        nodes: the joints in which it meets that torque.
        on: whether it limits the alternating torque, or the mean and alternating together.
        rating: what the part bears [N m].
        ratio: crankshaft speed over that of the part.
    """

    kind: Literal["crank", "damper", "clutch", "gear", "shaft"]
    name: str
    nodes: tuple[int, ...]
    on: Literal["swing", "peak"]
    rating: Value
    ratio: float

    @property
    def words(self) -> str:
        """The part in words."""
        return f"{'crankshaft' if self.kind == 'crank' else self.kind} {self.name}".rstrip()

    @property
    def allowed(self) -> float | None:
        """The torque as the crankshaft sees it [N m]; ``None`` where it is not known."""
        return None if isinstance(self.rating, Unknown) else self.rating.number / self.ratio


@dataclass(frozen=True)
class BarredRanges:
    """What bars a speed.

    Attributes:
        survey: torque of every joint at every speed.
        subjects: the parts, for what they are rated for.
    """

    survey: TorsionalSurvey
    subjects: Subjects

    @cached_property
    def limits(self) -> tuple[Limit, ...]:
        """What crank, damper, clutch and both gears of a mesh bear, and what yields a shaft."""
        model = self.survey.model
        found = [
            limit for index, node in enumerate(model.nodes) for limit in self._rated(index, node)
        ]
        for name, ratio in model.ratios.items():
            joints = tuple(model.joints_of(name))
            found += [
                Limit("shaft", name, joints, "peak", torque, ratio.number)
                for torque in values.yield_torques(self.subjects.the("shaft", name))
            ]
        return tuple(found)

    def _rated(self, index: int, node: Node) -> Iterator[Limit]:
        """Ratings of the part that makes a joint."""
        ratio = node.ratio.number
        match node.kind:
            case "crank" if index:  # the first node is turned by nothing
                engine = self.subjects.the("engine")
                swing = engine.given("crankshaft.vibratory_torque_rating", "T_KW")
                yield Limit("crank", "", (index,), "swing", swing, ratio)
            case "damper":
                damper = self.subjects.the("damper")
                swing = damper.given("vibratory_torque_rating", "T_KW")
                peak = damper.given("peak_torque_rating", "T_peak")
                yield Limit("damper", "", (index,), "swing", swing, ratio)
                yield Limit("damper", "", (index,), "peak", peak, ratio)
            case "clutch":
                rated = rated_torque_of(self.subjects.the("clutch"))
                yield Limit("clutch", "", (index,), "peak", rated, ratio)
            case "mesh":
                mesh = self.subjects.spec.meshes[node.name]
                for name in (mesh.driver, mesh.driven):
                    gear = self.subjects.the("gear", name)
                    own = self.survey.model.ratios[str(gear.raw("shaft"))].number
                    peak = gear.given("peak_torque_rating", "T_lim")
                    yield Limit("gear", name, (index,), "peak", peak, own)

    @property
    def missing(self) -> Unknown | None:
        """The ratings that are missing; ``None`` where all are known."""
        unknown = [each.rating for each in self.limits if isinstance(each.rating, Unknown)]
        return merged(unknown) if unknown else None

    @cached_property
    def proved(self) -> tuple[tuple[float, float], ...]:
        """Crankshaft speeds [rad/s] at which a torque exceeds a known rating, or reverses.

        What is barred with one state of the damper is joined with what is barred with the next.
        A rating that is missing can only add to them.
        """
        ranges: list[tuple[float, float]] = []
        before: list[tuple[float, float]] = []
        for barred in self._barred:
            here = runs(barred[:SPEEDS], self.survey.speed[:SPEEDS])
            ranges += here
            if len(here) == len(before):
                ranges += [
                    (min(one[0], other[0]), max(one[1], other[1]))
                    for one, other in zip(here, before, strict=True)
                ]
            before = here
        return tuple(_joined(ranges))

    def at_speed(self, speed: float) -> bool:
        """Whether a crankshaft speed [rad/s] lies in what is proved to be barred."""
        return any(low <= speed <= high for low, high in self.proved)

    def at_point(self, index: int) -> bool:
        """Whether the torque at an operation point of the survey bars it, in any state.

        Args:
            index: of the point, into the speeds of the survey.
        """
        return any(bool(barred[index]) for barred in self._barred)

    def causes(self, low: float, high: float) -> str:
        """What bars the speeds between two [rad/s], in words: parts in the way of the torque."""
        speed = self.survey.speed[:SPEEDS]
        within = (speed >= low) & (speed <= high)
        over: dict[str, None] = {}
        apart: dict[str, None] = {}
        for response in self.survey.responses:
            for limit, words, hit in self._hits(response):
                if hit[:SPEEDS][within].any():
                    (apart if limit is None else over)[words] = None
        found = [f"too much for {', '.join(over)}"] if over else []
        return ", ".join([*found, *apart])

    @cached_property
    def _barred(self) -> "list[NDArray[np.bool_]]":
        """Whether each speed and point of the survey is barred, in each state of the damper."""
        import numpy as np

        found = []
        for response in self.survey.responses:
            barred = np.zeros(len(self.survey.speed), dtype=bool)
            for _, _, hit in self._hits(response):
                barred |= hit
            found.append(barred)
        return found

    def _hits(self, response: Response) -> "Iterator[tuple[Limit | None, str, NDArray[np.bool_]]]":
        """What bars each speed and point in one state of the damper, with its words.

        Limits first, then teeth and clutch that let go.
        """
        import numpy as np

        survey = self.survey
        highest = np.maximum(abs(survey.carried + response.up), abs(survey.carried + response.down))
        for limit in self.limits:
            if limit.allowed is not None:
                torque = response.swing if limit.on == "swing" else highest
                over = (torque[list(limit.nodes)] > limit.allowed).any(axis=0)
                yield limit, limit.words, np.asarray(over)
        turned = response.least(survey.carried) < 0.0
        for index, node in enumerate(survey.model.nodes):
            if node.kind in ("mesh", "clutch") and node.on_path:
                parts = "clutch lets go" if node.kind == "clutch" else f"teeth of {node.name} part"
                yield None, parts, turned[index] & ~survey.open


def marine(survey: TorsionalSurvey, crossing: Crossing) -> tuple[float, float] | None:
    """The marine barred range about a crossing [rad/s], for comparison only."""
    critical = sum(crossing.speeds) / 2.0
    share = critical / survey.reference
    try:
        return (
            critical * critical_speed.marine_lower_limit(share),
            critical * critical_speed.marine_upper_limit(share),
        )
    except OutOfRange:
        return None


def _joined(ranges: list[tuple[float, float]]) -> list[tuple[float, float]]:
    joined: list[tuple[float, float]] = []
    for low, high in sorted(ranges):
        if joined and low <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], high))
        else:
            joined.append((low, high))
    return joined
