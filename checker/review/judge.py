"""One rule on one part: the outcome, with the operation point that governs."""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from checker.known import Known, Path, Unknown, Value
from checker.measures.design import Design
from checker.review.finding import Finding, Outcome, gravity
from checker.review.rule import Condition, Level, Limit, Rule
from checker.spec.subject import Subject

_MAY_BE_ABSENT = ("damper", "clutch", "vent")
_SECTIONS = {
    "bearing": "bearings",
    "seal": "seals",
    "joint": "joints",
    "point": "operation",
}


def judge_rule(rule: Rule, design: Design, ratio_set: str | None) -> Iterator[Finding]:
    """Hold every part of the rule's kind against it.

    Args:
        rule: the rule.
        design: the solved design.
        ratio_set: name of the ratio set reviewed, ``None`` where there are no sets.
    """
    subjects = design.subjects.all(rule.looks_at)
    if not subjects and rule.looks_at in _SECTIONS:
        drive = design.subjects.the("drive")
        yield _not_shown(rule, drive, Unknown(((_SECTIONS[rule.looks_at],),)))
    for subject in subjects:
        yield judge_part(rule, subject, design, ratio_set)


def judge_part(rule: Rule, subject: Subject, design: Design, ratio_set: str | None) -> Finding:
    """Hold one part against a rule.

    Args:
        rule: the rule.
        subject: a part of the rule's kind.
        design: the solved design.
        ratio_set: name of the ratio set reviewed, ``None`` where there are no sets.
    """
    try:
        finding = _judge(rule, subject, design)
    except Exception as error:
        reason = f"{type(error).__name__}: {error}"
        finding = Finding(
            rule, subject, "broken", rule.highest_level, place=subject.path, reason=reason
        )
    return finding if ratio_set is None else replace(finding, ratio_set=ratio_set)


def judge_value(rule: Rule, subject: Subject, known: Known) -> Finding:
    """Hold a value found outside the measures against a rule."""
    return _finding(rule, subject, _held(rule, known, known), known.path or subject.path)


class _Result(NamedTuple):
    """What came out at one operation point, or of a measure that does not vary."""

    outcome: Outcome
    level: Level | None = None
    value: Value | None = None
    limit: Limit | None = None
    margin: float | None = None


def _judge(rule: Rule, subject: Subject, design: Design) -> Finding:
    if subject.kind in _MAY_BE_ABSENT:
        present = design.subjects.presence(subject.kind)
        if present is False:
            return _finding(rule, subject, _Result("does not apply"), subject.path)
        if present is None:
            return _not_shown(rule, subject, Unknown((subject.path,)))
    fixed = [condition for condition in rule.when if not condition.varies]
    result = _unmet(rule, fixed, subject, design, None)
    if result is None and not rule.judged_at_points:
        result = _measured(rule, subject, design, None)
    if result is not None:
        return _finding(rule, subject, result, _place(rule, subject, result, design))
    if not design.points:
        return _not_shown(rule, subject, Unknown((("operation",),)))
    results = [(_at(rule, subject, design, point), point) for point in design.points]
    result, point = min(results, key=_worst)
    named = None if result.outcome == "does not apply" else point.name
    return _finding(rule, subject, result, _place(rule, subject, result, design), named)


def _worst(at_point: tuple[_Result, Subject]) -> tuple[float, ...]:
    result = at_point[0]
    return gravity(result.outcome, result.level, result.margin)


def _at(rule: Rule, subject: Subject, design: Design, point: Subject) -> _Result:
    varying = [condition for condition in rule.when if condition.varies]
    unmet = _unmet(rule, varying, subject, design, point)
    return unmet or _measured(rule, subject, design, point)


def _unmet(
    rule: Rule,
    conditions: list[Condition],
    subject: Subject,
    design: Design,
    point: Subject | None,
) -> _Result | None:
    """Why the rule is not judged, if a condition does not hold or is unknown."""
    unknown = None
    for condition in conditions:
        holds = design.measure(condition.measure, subject, point)
        if isinstance(holds, Unknown):
            unknown = unknown or holds
        elif not condition.limit.met_by(holds.value):
            return _Result("does not apply")
    return _Result("not shown", rule.highest_level, unknown) if unknown else None


def _measured(rule: Rule, subject: Subject, design: Design, point: Subject | None) -> _Result:
    value = design.measure(rule.measure, subject, point)
    if isinstance(value, Known):
        return _held(rule, value, value)
    best = value.at_best
    # At a milder level than the gravest one, that one would still be open: not shown.
    if (
        best is not None
        and rule.comparable(best)
        and rule.level_of(best.value) == rule.highest_level
    ):
        return _held(rule, best, value)
    return _Result("not shown", rule.highest_level, value)


def _held(rule: Rule, known: Known, value: Value) -> _Result:
    """A known value against the limits; ``value`` is itself or the unknown it is the best of."""
    if not rule.comparable(known):
        unit = next(iter(rule.limits.values())).unit
        because = f"it is stated in {known.unit}, the limit is in {unit}"
        missing = () if known.path is None else (known.path,)
        return _Result("not shown", rule.highest_level, Unknown(missing, because))
    level = rule.level_of(known.value)
    if level is None:
        return _Result("meets", None, value, *rule.nearest_limit(known.value))
    limit = rule.limits[level]
    return _Result("falls short", level, value, limit, limit.margin(known.value))


def _place(rule: Rule, subject: Subject, result: _Result, design: Design) -> Path:
    """What a person should look at: a missing field, the value judged, or its part."""
    value = result.value
    if isinstance(value, Unknown) and result.outcome == "not shown":
        return value.missing[0] if value.missing else subject.path
    if isinstance(value, Known) and value.path is not None:
        return value.path
    measure = design.measure_named(rule.measure, subject)
    return subject.place(measure.at) if measure is not None and measure.at else subject.path


def _not_shown(rule: Rule, subject: Subject, unknown: Unknown) -> Finding:
    result = _Result("not shown", rule.highest_level, unknown)
    return _finding(rule, subject, result, unknown.missing[0])


def _finding(
    rule: Rule, subject: Subject, result: _Result, place: Path, point: str | None = None
) -> Finding:
    because = result.value.because if isinstance(result.value, Unknown) else ""
    return Finding(
        rule,
        subject,
        result.outcome,
        result.level,
        result.value,
        result.limit,
        result.margin,
        point,
        place,
        reason=because,
    )
