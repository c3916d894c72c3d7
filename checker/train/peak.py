"""Peak torque of each shaft: the larger of the floor of the regulations and the computed swing.

The peak is the larger of the mean torque times the factor of the regulations and of the mean plus
the alternating torque of the torsional survey, never the product of both allowances. Where the
survey lacks data, the first is the least that the peak can be: enough to fall short on, never
enough to meet.
"""

from collections.abc import Callable
from functools import cached_property

from checker.known import Known, Path, Unknown, Value, all_known, compute, merged
from checker.mechanics import engine as engine_mechanics
from checker.spec.subject import Subjects
from checker.train.motion import Motion
from checker.train.torsional_survey import TorsionalSurvey

_SURVEY = (
    "the alternating torque needs the torsional survey; "
    "the mean torque times the factor of the regulations is the least the peak can be"
)
_RATINGS = ("maximum_continuous", "take_off")


class Peaks:
    """Peak torque of shafts and of what joins them, without losses.

    CS-VLA 361(b) and 14 CFR 27.361(b) word the factor for maximum continuous power, CS 22.361 for
    take-off power as well. Here it stands on the largest of both and of every operation point.
    """

    def __init__(
        self,
        subjects: Subjects,
        motion: Motion,
        survey: Callable[[], TorsionalSurvey | Unknown],
    ) -> None:
        self._subjects = subjects
        self._motion = motion
        self._survey = survey

    @cached_property
    def least_crank_mean(self) -> Value:
        """T, largest mean torque of the crankshaft among those that are known [N m]."""
        known = [torque for torque in self._means if isinstance(torque, Known)]
        if known:
            return max(known, key=lambda torque: torque.number)
        return merged([torque for torque in self._means if isinstance(torque, Unknown)])

    def mean(self, shaft: str) -> Value:
        """T, largest mean torque of a shaft [N m] over both ratings and all operation points.

        Unknown while any of them is.
        """
        return all_known(*self._means) or self._passed_on(shaft)

    def floor(self, shaft: str) -> Value:
        """T_limit, the least that the peak torque of a shaft can be [N m]."""
        return compute(engine_mechanics.limit_torque, self._passed_on(shaft), self._factor)

    def _passed_on(self, shaft: str) -> Value:
        at_engine = self._motion.torque_behind_engine(self.least_crank_mean)
        return self._motion.torque_passed_on(at_engine, shaft)

    def peak(self, shaft: str, *joints: str) -> Value:
        """T_peak, peak torque of a shaft [N m], or of some joints that turn or are turned by it.

        Args:
            shaft: the shaft at whose speed the torque is wanted.
            joints: ``damper``, ``clutch`` or names of meshes; without any, all that load the shaft.
        """
        survey, mean = self._survey(), self.mean(shaft)
        if isinstance(survey, Unknown):
            return survey
        if isinstance(mean, Unknown):
            return mean
        excess = survey.found(survey.highest(shaft, *joints) - mean.number, "N m", "T_a")
        return compute(engine_mechanics.peak_torque, mean, self._factor, excess)

    def continuous_swing(self, shaft: str) -> Value:
        """T_a, alternating torque of a shaft at maximum continuous power by the survey [N m]."""
        survey = self._survey()
        if isinstance(survey, Unknown):
            return survey
        return survey.found(survey.swing_at_rating(shaft), "N m", "T_a")

    def judged(self, of_peak: Callable[[Value], Value], shaft: str, *joints: str) -> Value:
        """A value that gets worse with the peak torque: of the peak, or at best of the floor."""
        peak = self.peak(shaft, *joints)
        if isinstance(peak, Known):
            return of_peak(peak)
        return self._at_best(of_peak(self.floor(shaft)), peak)

    def _at_best(self, value: Value, peak: Unknown) -> Unknown:
        """What a value computed with the floor is worth: the best it can be, and no more."""
        survey = merged([Unknown(self._unstated, _SURVEY), peak])
        if isinstance(value, Known):
            return Unknown(survey.missing, survey.because, at_best=value)
        both = merged([value, survey])
        return Unknown(both.missing, both.because, at_best=value.at_best)

    @cached_property
    def _factor(self) -> Value:
        """k_T, factor on the mean torque."""
        engine = self._subjects.the("engine")
        strokes = compute(engine_mechanics.strokes_of, engine.given("cycle", "cycle"))
        return compute(engine_mechanics.torque_factor, engine.given("cylinders", "z"), strokes)

    @cached_property
    def _means(self) -> tuple[Value, ...]:
        """Mean torque at the crankshaft by each rating and at each operation point [N m]."""
        engine = self._subjects.the("engine")
        ratings = (
            (engine.given(f"{rating}.power", "P"), engine.given(f"{rating}.speed", "ω"))
            for rating in _RATINGS
        )
        points = (
            (point.given("power", "P"), point.given("engine_speed", "ω"))
            for point in self._subjects.all("point")
        )
        return tuple(
            compute(engine_mechanics.mean_torque, *power_and_speed)
            for power_and_speed in (*ratings, *points)
        )

    @cached_property
    def _unstated(self) -> tuple[Path, ...]:
        """Fields that might show a larger mean torque."""
        unknown = all_known(*self._means)
        return unknown.missing if unknown else ()
