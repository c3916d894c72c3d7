"""Peak torque of each shaft: the larger of the floor of the regulations and the computed swing.

The peak is the larger of the mean torque times the factor of the regulations and of the mean plus
the alternating torque of the torsional survey, never the product of both allowances. Where the
survey lacks data, the first is the least that the peak can be: enough to fall short on, never
enough to meet.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cached_property

from checker.known import Known, Path, Unknown, Value, all_known, compute, merged
from checker.mechanics import engine as engine_mechanics
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject, Subjects
from checker.train.motion import Motion
from checker.train.torsional_survey import TorsionalSurvey

_SURVEY = (
    "the alternating torque needs the torsional survey; "
    "the mean torque times the factor of the regulations is the least the peak can be"
)
RATINGS = (MAXIMUM_CONTINUOUS, TAKE_OFF) = ("maximum_continuous", "take_off")


class Peaks:
    """Peak torque of shafts and of what joins them, without losses.

    CS-VLA 361(b) and 14 CFR 27.361(b) word the factor for maximum continuous power, CS 22.361 and
    the old 14 CFR 23.361 for take-off power as well. Without a rating, it stands on the largest of
    both and of every operation point; with one, on that rating and the points that belong to it.
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

    @property
    def least_crank_mean(self) -> Value:
        """T, largest mean torque of the crankshaft among those that are known [N m]."""
        return _largest_known(self._means(None))

    def mean(self, shaft: str, rating: str | None = None) -> Value:
        """T, largest mean torque of a shaft [N m] over both ratings and all operation points.

        Of one rating, over that and its points. Unknown while any of them is.
        """
        return all_known(*self._means(rating)) or self._passed_on(shaft, rating)

    def floor(self, shaft: str, rating: str | None = None) -> Value:
        """T_limit, the least that the peak torque of a shaft can be [N m]."""
        return compute(engine_mechanics.limit_torque, self._passed_on(shaft, rating), self._factor)

    def _passed_on(self, shaft: str, rating: str | None) -> Value:
        at_engine = self._motion.torque_behind_engine(_largest_known(self._means(rating)))
        return self._motion.torque_passed_on(at_engine, shaft)

    def peak(self, shaft: str, *joints: str, rating: str | None = None) -> Value:
        """T_peak, peak torque of a shaft [N m], or of some joints that turn or are turned by it.

        Args:
            shaft: the shaft at whose speed the torque is wanted.
            joints: ``damper``, ``clutch`` or names of meshes; without any, all that load the shaft.
            rating: ``take_off`` or ``maximum_continuous``; the torque that the survey finds at
                any speed counts with either, the factor of the regulations with its own mean.
        """
        survey, mean = self._survey(), self.mean(shaft, rating)
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
        """k_T, largest factor of the regulations on the mean torque; its source is what governs."""
        engine = self._subjects.the("engine")
        cylinders = engine.given("cylinders", "z")
        strokes = compute(engine_mechanics.strokes_of, engine.given("cycle", "cycle"))
        factor = compute(engine_mechanics.torque_factor, cylinders, strokes)
        if isinstance(factor, Unknown):
            return factor
        governs = engine_mechanics.source_of_torque_factor(
            *(int(each.number) for each in factor.inputs)
        )
        factor.origin = replace(equation_of(engine_mechanics.torque_factor), source=governs)
        return factor

    def _means(self, rating: str | None) -> tuple[Value, ...]:
        """Mean torque at the crankshaft by a rating and at its operation points [N m]."""
        return tuple(torque for of, torque in self._torques if rating is None or rating in of)

    @cached_property
    def _torques(self) -> tuple[tuple[tuple[str, ...], Value], ...]:
        """Each mean torque at the crankshaft [N m], after the ratings that it belongs to."""
        engine = self._subjects.the("engine")
        ratings = (
            ((rating,), engine.given(f"{rating}.power", "P"), engine.given(f"{rating}.speed", "ω"))
            for rating in RATINGS
        )
        points = (
            (_ratings_of(point), point.given("power", "P"), point.given("engine_speed", "ω"))
            for point in self._subjects.all("point")
        )
        return tuple(
            (of, compute(engine_mechanics.mean_torque, power, speed))
            for of, power, speed in (*ratings, *points)
        )

    @cached_property
    def _unstated(self) -> tuple[Path, ...]:
        """Fields that might show a larger mean torque."""
        unknown = all_known(*self._means(None))
        return unknown.missing if unknown else ()


def _ratings_of(point: Subject) -> tuple[str, ...]:
    """The ratings that a point belongs to: both, while its kind is unknown."""
    kind = point.raw("kind")
    if kind is None:
        return RATINGS
    return (TAKE_OFF,) if kind == "take-off" else (MAXIMUM_CONTINUOUS,)


def _largest_known(torques: Sequence[Value]) -> Value:
    known = [torque for torque in torques if isinstance(torque, Known)]
    if known:
        return max(known, key=lambda torque: torque.number)
    return merged([torque for torque in torques if isinstance(torque, Unknown)])
