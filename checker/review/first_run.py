"""A card for the first run of a drive: what to check, the speeds to step through, when to stop.

It is drawn from what the rules found and from the torsional survey, as an aid to the builder's own
plan. A drive on hold gets none.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.review.finding import Finding
from checker.review.inspection import Inspection, inspection_plan
from checker.review.review import Review
from checker.train.resonance import Resonances

STEPS = 6
_CLEAR = 0.2
"""Separation from resonance that a speed to be held should have (common practice)."""
_GRID = 50
_RPM = 60.0 / math.tau

GROUND = (
    "Aircraft tied down and chocked; nobody in the propeller disc, nor in its plane of rotation",
    "Fire extinguisher and a second person with a view of the drive at hand; signals agreed",
    "Oil in the drive to its mark; no oil on the outside, so that a leak shows",
    "Propeller turned by hand, ignition off: it turns freely, without a catch or a scrape",
    "Recorders on: engine speed, oil temperature, oil pressure where there is a pump",
)
"""Before the engine is started (common practice, no source)."""

STOP = (
    "Oil pressure, where there is a pump, missing after ten seconds or falling at a constant speed",
    "A temperature at its limit below, or rising without end at a constant speed",
    "A new noise: knock, whine or rattle; where teeth rattle at one speed, leave that speed first",
    "Vibration that was not there, or a speed at which it grows",
    "Oil from the vent, a seal or a joint; smoke or a smell of burnt rubber or oil",
    "Engine speed that rises while thrust does not: the drive slips",
    "A chip light, or metal that was not there at the last look",
)
"""What ends the run at once (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Step:
    """A speed to hold.

    Attributes:
        engine: crankshaft speed [rad/s].
        propeller: speed of the propeller [rad/s].
        minutes: how long.
        separation: from the nearest resonance that counts.
        moved: whether it was moved out of a barred range or away from a resonance.
    """

    engine: float
    propeller: float
    minutes: int
    separation: float
    moved: bool

    @property
    def is_close(self) -> bool:
        """Whether a resonance stands nearer than it should."""
        return self.separation < _CLEAR


@dataclass(frozen=True, slots=True)
class Watch:
    """A temperature to watch.

    Attributes:
        what: what it is of.
        computed: the highest one computed of all operation points.
        point: where.
        limit: at which the run ends.
    """

    what: str
    computed: Value
    point: str
    limit: Value


@dataclass(frozen=True, slots=True)
class Card:
    """What a first run goes by.

    Attributes:
        review: the review it was drawn from.
        before: what to look at before the start, with the findings that speak for it.
        steps: the speeds to hold, in order; none where the survey is not shown.
        barred: crankshaft speeds to pass without stopping [rad/s]; none where not shown.
        unknown: why steps or barred ranges are not shown; ``None`` where both are.
        watched: temperatures to watch.
        after: what to look at after the first hour.
        open: what is open at the levels warning and caution, which the builder answers for.
    """

    review: Review
    before: tuple[Inspection, ...]
    steps: tuple[Step, ...]
    barred: tuple[tuple[float, float], ...]
    unknown: Unknown | None
    watched: tuple[Watch, ...]
    after: tuple[Inspection, ...]
    open: tuple[Finding, ...]


class OnHold(Exception):
    """A drive that must not be run gets no card for its first run."""


def first_run(review: Review) -> Card:
    """The card of a review.

    Args:
        review: the review; of several ratio sets the first is used for the speeds.

    Raises:
        OnHold: the disposition is hold.
    """
    if review.disposition == "hold":
        raise OnHold("the disposition is hold: what is open must not be run")
    design = next(iter(review.designs.values()))
    plan = inspection_plan(review)
    resonances, ranges = design.resonances, design.barred
    unknown = ranges if isinstance(ranges, Unknown) else ranges.missing
    barred: tuple[tuple[float, float], ...] = ()
    steps: tuple[Step, ...] = ()
    if not isinstance(resonances, Unknown) and not isinstance(ranges, Unknown):
        barred = ranges.proved
        # Where a rating is missing, a speed that is not barred is not shown to be clear.
        steps = () if unknown else _steps(design, resonances, barred)
    return Card(
        review,
        tuple(each for each in plan if each.when == "before flight" and not each.earlier),
        steps,
        barred,
        unknown,
        tuple(_watched(design)),
        tuple(each for each in plan if each.when == "after the first hour"),
        tuple(each for each in review.open_findings if each.level in ("warning", "caution")),
    )


def _watched(design: Design) -> Iterator[Watch]:
    """Temperatures that the crew or a probe can follow, each with the limit of what it heats."""
    for kind, what, measure, limit in (
        ("lubrication", "oil of the drive", "computed_temperature", "oil_temperature_limit"),
        ("damper", "damper", "computed_temperature", "running_temperature_limit"),
    ):
        if kind == "damper" and design.subjects.presence("damper") is not True:
            continue
        subject = design.subjects.the(kind)
        values = [
            (value, point.name)
            for point, value in design.over_points(measure, subject)
            if isinstance(value, Known)
        ]
        bears = design.measure(limit, subject)
        if values:
            hottest, point = max(values, key=lambda each: each[0].number)
            yield Watch(what, hottest, point, bears)
        else:
            yield Watch(what, Unknown((subject.path,)), "", bears)


def _steps(
    design: Design, resonances: Resonances, barred: tuple[tuple[float, float], ...]
) -> tuple[Step, ...]:
    """Speeds from idle to maximum continuous, each as near to an even spacing as may be."""
    survey = resonances.survey
    ratio = survey.model.ratios[design.train.last].number
    span = (survey.reference - survey.idle) / (STEPS - 1)
    found: list[Step] = []
    for index in range(STEPS):
        wanted = survey.idle + index * span
        speed, apart = _nearest_clear(resonances, barred, wanted, 0.5 * span if index else 0.0)
        if apart >= 0.0:
            minutes = 10 if index == 0 else 3
            moved = abs(speed - wanted) * _RPM > _GRID
            found.append(Step(speed, speed / ratio, minutes, apart, moved))
    return tuple(found)


def _nearest_clear(
    resonances: Resonances,
    barred: tuple[tuple[float, float], ...],
    wanted: float,
    reach: float,
) -> tuple[float, float]:
    """The speed nearest to one wanted that is not barred and clear, and its separation.

    Where none within reach is clear, it is the one that stands clearest; a separation below zero
    says that all are barred.
    """
    step = _GRID / _RPM
    count = int(reach / step)
    best = (wanted, -1.0)
    for offset in sorted(range(-count, count + 1), key=abs):
        speed = _rounded(wanted + offset * step) if reach else wanted
        if any(low <= speed <= high for low, high in barred):
            continue
        apart, _ = resonances.separation(speed, float(resonances.survey.law(speed)))
        if apart >= _CLEAR:
            return speed, apart
        if apart > best[1]:
            best = (speed, apart)
    return best


def _rounded(speed: float) -> float:
    """A speed to the nearest 50 rpm, as a person can hold it."""
    return round(speed * _RPM / _GRID) * _GRID / _RPM
