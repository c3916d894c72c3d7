"""The smallest change of one stated number that clears a finding.

Each number in the derivation of the value judged is moved a little to see which way the margin
goes; those that need least are then moved until the finding clears. Nothing is assumed about the
rule or the measure but that they can be judged again.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from fnmatch import fnmatchcase

from checker.known import Path
from checker.review.changes import Changes, changes
from checker.review.finding import Finding, gravity
from checker.review.judge import judge_part
from checker.review.review import Review, designs_of, review_spec
from checker.review.rule import LEVELS
from checker.spec.edit import Written, value_at, with_values, written
from checker.spec.loading import load_spec
from checker.spec.problem import SpecUnreadable, dotted

_AIR = "the air is as it is"
_ENGINE = "the engine is as it is"
_FACT = "a property of a material or of an oil, not a choice by itself"
_DECLARED = "a declared allowance: changing it changes no part"
_MEASURED = "measured or declared: it follows from the drive"
NOT_REMEDIES = (
    ("operation.*.air_temperature", _AIR),
    ("operation.*.altitude", _AIR),
    ("operation.*.airspeed", _AIR),
    ("*.inflow_angle", _AIR),
    ("*.yawed_flow.*", _AIR),
    ("*.hot_day", _AIR),
    ("*.cold_*_temperature", _AIR),
    ("engine.cylinders", _ENGINE),
    ("engine.inertia", "the engine is as it is; a flywheel is a shaft"),
    ("engine.bore", _ENGINE),
    ("engine.stroke", _ENGINE),
    ("engine.rod_length", _ENGINE),
    ("engine.reciprocating_mass", _ENGINE),
    ("engine.compression_ratio", _ENGINE),
    ("*.tensile_strength", _FACT),
    ("*.yield_strength", _FACT),
    ("*.density_15", _FACT),
    ("*.friction_coefficient", _FACT),
    ("*.nut_factor", _FACT),
    ("*.service_factor", _DECLARED),
    ("*.limit_load_factor", _DECLARED),
    ("*.failure_probability", _DECLARED),
    ("*.factor", _DECLARED),
    ("*.target_life", _DECLARED),
    ("*.share", _DECLARED),
    ("*.blade_thrust_variation", _DECLARED),
    ("*.blade_passing_torque", _MEASURED),
    ("*.oil_temperature", _MEASURED),
    ("*.thrust", _MEASURED),
)
"""Fields that are no remedy, each with why; the first pattern that fits a field decides."""

_NUDGE = Decimal("0.002")
_LADDER = tuple(map(Decimal, ("0.25", "0.5", "1", "1.5", "2.5", "5", "10")))
"""How far a value is moved, in shares of what its sensitivity promises."""
_FURTHEST = Decimal(3)
"""A value is moved up to fourfold, or down to a quarter."""
_MOST_COUNTS = 12
_MOST_FIELDS = 15
_HALVINGS = 10
_MOVES = 1e-6
_HOPELESS = 30.0
"""A number that would have to move so many times itself is not tried any further."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change of one stated number that clears a finding.

    Attributes:
        path: the field.
        before: what the spec states.
        after: what clears the finding.
        share: how far that is from what is stated, as a share of it.
        changes: what the change does to the whole review.
    """

    path: Path
    before: object
    after: str | int | float
    share: float
    changes: Changes

    @property
    def opens(self) -> tuple[Finding, ...]:
        """What it opens or makes worse at the levels warning and caution."""
        return tuple(
            each.after
            for each in self.changes.of("appeared", "worse")
            if each.after is not None and each.after.is_open and each.after.level in LEVELS[:2]
        )


Progress = Callable[[int, int], None]


def is_remediable(finding: Finding) -> bool:
    """Whether a number can clear it: it falls short of a limit that has a distance."""
    return finding.outcome == "falls short" and finding.margin is not None


def remedies(
    review: Review, finding: Finding, progress: Progress = lambda done, of: None
) -> list[Remedy]:
    """The changes of one stated number that clear a finding, the best first.

    The best open nothing else at the levels warning and caution, and of these the smallest.

    Args:
        review: the review that found it.
        finding: one that falls short, with a margin.
        progress: told how many of how many fields have been tried.
    """
    trial = _Trial(review, finding)
    stated = dict(_numbers(review, finding))
    movers: list[tuple[float, Path, Written, int]] = []
    for index, (path, number) in enumerate(stated.items()):
        progress(index, len(stated) + _MOST_FIELDS)
        mover = _sensitivity(trial, path, number)
        if mover is not None:
            movers.append((mover[0], path, number, mover[1]))
    movers.sort(key=lambda each: (each[0], dotted(each[1])))
    found: list[Remedy] = []
    for index, (share, path, number, sense) in enumerate(movers[:_MOST_FIELDS]):
        progress(len(stated) + index, len(stated) + _MOST_FIELDS)
        cleared = _least(trial, path, number, sense, share)
        if cleared is not None:
            found.append(_remedy(review, path, number, cleared))
    progress(len(stated) + _MOST_FIELDS, len(stated) + _MOST_FIELDS)
    return sorted(found, key=lambda each: (len(each.opens) > 0, abs(each.share), dotted(each.path)))


def _numbers(review: Review, finding: Finding) -> Iterator[tuple[Path, Written]]:
    """The stated numbers that the value judged was computed from, but for what is no choice."""
    if finding.known is None:
        return
    document = review.loaded.document
    for leaf in finding.known.leaves():
        if leaf.path is None or leaf.path not in document.marks or why_not(leaf.path):
            continue
        number = written(value_at(document, leaf.path))
        if number is not None and number.number != 0:
            yield leaf.path, number


def why_not(path: Path) -> str:
    """Why a field is no remedy; empty where it may be one."""
    name = dotted(path)
    return next((why for pattern, why in NOT_REMEDIES if fnmatchcase(name, pattern)), "")


class _Trial:
    """Judges one rule on one part again with another value somewhere in the spec."""

    def __init__(self, review: Review, finding: Finding) -> None:
        self._review = review
        self._finding = finding
        self.margin = finding.margin or 0.0

    def judged(self, path: Path, value: str | int | float) -> Finding | None:
        """The finding with another value; ``None`` where the spec cannot be read with it."""
        document = self._review.loaded.document
        rule, address = self._finding.rule, self._finding.subject.address
        try:
            loaded = load_spec(with_values(document, {path: value}), document.name)
            designs = designs_of(loaded)
        except SpecUnreadable:
            return None
        found = [
            judge_part(rule, subject, design, ratio_set)
            for ratio_set, design in designs.items()
            for subject in design.subjects.all(rule.looks_at)
            if subject.address == address
        ]
        return min(found, key=_grave, default=None)

    def clears(self, path: Path, value: str | int | float) -> bool:
        """Whether the finding no longer falls short at its level or a graver one."""
        found = self.judged(path, value)
        level = self._finding.level
        assert level is not None
        if found is None or found.outcome in ("broken", "not shown"):
            return False
        return found.level is None or LEVELS.index(found.level) > LEVELS.index(level)


def _grave(finding: Finding) -> tuple[float, ...]:
    return gravity(finding.outcome, finding.level, finding.margin)


def _sensitivity(trial: _Trial, path: Path, number: Written) -> tuple[float, int] | None:
    """About what share of itself a number must move, and which way; ``None`` where none helps."""
    for sense in (1, -1):
        step = Decimal(sense) if number.is_whole else abs(number.number) * _NUDGE * sense
        found = trial.judged(path, number.at(number.number + step))
        share = abs(step / number.number)
        if found is None or found.margin is None or found.outcome not in ("meets", "falls short"):
            continue
        if found.outcome == "meets":
            return float(share), sense
        gain = found.margin - trial.margin
        if abs(gain) <= _MOVES * max(abs(trial.margin), abs(found.margin)):
            return None
        needed = float(share) * abs(trial.margin / gain)
        return (needed, sense if gain > 0.0 else -sense) if needed < _HOPELESS else None
    return None


def _least(trial: _Trial, path: Path, number: Written, sense: int, share: float) -> Decimal | None:
    """The value nearest to the stated one that clears the finding, going one way."""
    if number.is_whole:
        for count in range(1, _MOST_COUNTS + 1):
            value = number.number + sense * count
            if trial.clears(path, number.at(value)):
                return value
        return None
    short = number.number
    for rung in _LADDER:
        moved = min(rung * Decimal(max(share, float(_NUDGE))), _FURTHEST)
        value = _moved(number.number, moved, sense)
        if trial.clears(path, number.at(value)):
            return _nearest(trial, path, number, short, value)
        if moved == _FURTHEST:
            return None
        short = value
    return None


def _moved(number: Decimal, share: Decimal, sense: int) -> Decimal:
    """A number moved by a share: up by 1 + share, down by the same factor."""
    return number * (1 + share) if sense > 0 else number / (1 + share)


def _nearest(trial: _Trial, path: Path, number: Written, short: Decimal, clear: Decimal) -> Decimal:
    """Between a value that does not clear and one that does, a short one that does."""
    for _ in range(_HALVINGS):
        middle = (short + clear) / 2
        if trial.clears(path, number.at(middle)):
            clear = middle
        else:
            short = middle
    rounded = _rounded(clear, away_from=number.number)
    return rounded if trial.clears(path, number.at(rounded)) else clear


def _rounded(number: Decimal, away_from: Decimal) -> Decimal:
    """A number to as few digits as tell it from another one, on the far side of that."""
    digits = Decimal(1).scaleb(min(number.adjusted(), (number - away_from).adjusted()) - 1)
    upwards = number > away_from
    return number.quantize(digits, rounding=ROUND_CEILING if upwards else ROUND_FLOOR)


def _remedy(review: Review, path: Path, number: Written, value: Decimal) -> Remedy:
    document = review.loaded.document
    after = number.at(value)
    source = with_values(document, {path: after})
    new = review_spec(source, document.name, review.book, review.on)
    share = float((value - number.number) / abs(number.number))
    return Remedy(path, value_at(document, path), after, share, changes(review, new))
