"""A solved design: the spec, its train and loads, ready to be asked for measures."""

from functools import cached_property

from checker.known import Known, Unknown, Value
from checker.measures.registry import Measure, measures
from checker.spec.model import Spec
from checker.spec.subject import Subject, Subjects
from checker.train.barred_ranges import BarredRanges
from checker.train.graph import Train
from checker.train.loads import Loads
from checker.train.motion import Motion
from checker.train.pair import Pair, Wheel
from checker.train.peak import Peaks
from checker.train.reactions import Reactions
from checker.train.resonance import Resonances
from checker.train.torsional_survey import TorsionalSurvey, build_survey
from checker.train.what_moves_it import Movers


class Design:
    """One drive with one ratio set.

    Attributes:
        subjects: its parts.
        train: who turns whom.
        motion: speeds, senses and torques.
        peaks: peak torques.
        loads: tooth forces and thrusts.
        reactions: bearing reactions and bending of each shaft.
        pairs: geometry of each mesh, by name.
        wheels: geometry of each gear, by name.
    """

    def __init__(self, spec: Spec, train: Train, ratio_set: str | None = None) -> None:
        self.subjects = Subjects(spec, ratio_set)
        self.train = train
        self.motion = Motion(self.subjects, train)
        self.peaks = Peaks(self.subjects, self.motion, lambda: self.survey)
        self.wheels = {gear.name: Wheel(gear) for gear in self.subjects.all("gear")}
        self.pairs = {
            mesh.name: Pair(
                mesh,
                self.wheels[spec.meshes[mesh.name].driver],
                self.wheels[spec.meshes[mesh.name].driven],
            )
            for mesh in self.subjects.all("mesh")
        }
        self.loads = Loads(self.subjects, train, self.motion, self.pairs)
        self.reactions = Reactions(
            self.subjects, train, self.motion, self.peaks, self.loads, self.pairs
        )
        self._measures = measures()
        self._answers: dict[tuple[str, Subject, str], Value] = {}

    @cached_property
    def survey(self) -> TorsionalSurvey | Unknown:
        """The torsional survey, or everything that is missing for it."""
        torque = self.peaks.least_crank_mean
        for link in self.train.power_path:
            if link.kind == "clutch":
                torque = self.peaks.mean(link.driver)
        return build_survey(self.subjects, self.train, self.motion, self.pairs, torque)

    @cached_property
    def resonances(self) -> Resonances | Unknown:
        """Crossings of the survey, or everything that is missing for it."""
        survey = self.survey
        return survey if isinstance(survey, Unknown) else Resonances(survey)

    @cached_property
    def movers(self) -> Movers | Unknown:
        """What moves the resonances, or everything that is missing for the survey."""
        resonances = self.resonances
        return resonances if isinstance(resonances, Unknown) else Movers(resonances)

    @cached_property
    def barred(self) -> BarredRanges | Unknown:
        """Barred speed ranges of the torsional survey, or what is missing for it."""
        survey = self.survey
        return survey if isinstance(survey, Unknown) else BarredRanges(survey, self.subjects)

    @property
    def points(self) -> tuple[Subject, ...]:
        """The operation points."""
        return self.subjects.all("point")

    @property
    def kinds_missing(self) -> Unknown | None:
        """The operation points whose kind is unknown, each of which may be of any."""
        missing = tuple(each.place("kind") for each in self.points if each.raw("kind") is None)
        return Unknown(missing) if missing else None

    def measure_named(self, name: str, subject: Subject) -> Measure | None:
        """The computed measure of that name; ``None`` if the name is a stated field."""
        return self._measures.get((subject.kind, name))

    def measure(self, name: str, subject: Subject, point: Subject | None = None) -> Value:
        """The value of a measure, computed once; a name without measure is a stated field."""
        measure = self._measures.get((subject.kind, name))
        if measure is None:
            return subject.given(name)
        if not measure.varies:
            point = None
        key = (name, subject, point.name if point else "")
        if key not in self._answers:
            self._answers[key] = (
                measure.function(self, subject, point)
                if measure.varies
                else measure.function(self, subject)
            )
        return self._answers[key]

    def over_points(self, name: str, subject: Subject) -> list[tuple[Subject, Value]]:
        """A varying measure at every operation point."""
        return [(point, self.measure(name, subject, point)) for point in self.points]

    def greatest(self, name: str, subject: Subject) -> Value:
        """The largest value that a varying measure takes; unknown where any point is."""
        return self._extreme(name, subject, largest=True)

    def least(self, name: str, subject: Subject) -> Value:
        """The smallest value that a varying measure takes; unknown where any point is."""
        return self._extreme(name, subject, largest=False)

    def _extreme(self, name: str, subject: Subject, *, largest: bool) -> Value:
        values = [value for _, value in self.over_points(name, subject)]
        if not values:
            return Unknown((("operation",),))
        known = [value for value in values if isinstance(value, Known)]
        if len(known) < len(values):
            return next(value for value in values if isinstance(value, Unknown))
        pick = max if largest else min
        return pick(known, key=lambda value: value.number)
