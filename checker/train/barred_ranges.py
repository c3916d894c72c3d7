"""Speeds at which a torque exceeds what a part bears, or at which teeth or clutch reverse."""

from dataclasses import dataclass
from functools import cached_property

from checker.known import Unknown, Value, merged
from checker.mechanics import critical_speed
from checker.mechanics.equation import OutOfRange
from checker.spec.subject import Subjects
from checker.train.resonance import Crossing
from checker.train.torsional_survey import SPEEDS, TorsionalSurvey, runs


@dataclass(frozen=True)
class BarredRanges:
    """What bars a speed.

    Attributes:
        survey: torque of every joint at every speed.
        subjects: the parts, for what they are rated for.
    """

    survey: TorsionalSurvey
    subjects: Subjects

    def limits(self) -> list[tuple[int, str, float]] | Unknown:
        """Allowable torques as the crankshaft sees them: node, whether on the swing or the peak."""
        model = self.survey.model
        found: list[tuple[int, str, Value, float]] = []
        for index, node in enumerate(model.nodes):
            ratio = node.ratio.number
            if node.kind == "damper":
                damper = self.subjects.the("damper")
                swing = damper.given("vibratory_torque_rating", "T_KW")
                found += [
                    (index, "swing", swing, ratio),
                    (index, "peak", damper.given("peak_torque_rating", "T_peak"), ratio),
                ]
            elif node.kind == "clutch":
                clutch = self.subjects.the("clutch")
                found.append((index, "peak", clutch.given("rated_torque", "T_r"), ratio))
            elif node.kind == "mesh":
                mesh = self.subjects.spec.meshes[node.name]
                gear = self.subjects.the("gear", mesh.driver)
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
    def ranges(self) -> tuple[tuple[float, float], ...] | Unknown:
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
