"""One rule on one part: the outcome, with the operation point that governs."""

from collections.abc import Iterator
from dataclasses import replace

from checker.known import Known, Path, Unknown, Value
from checker.measures.design import Design
from checker.review.finding import Finding, gravity
from checker.review.rule import Condition, Rule
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
        try:
            finding = _judge(rule, subject, design)
        except Exception as error:
            reason = f"{type(error).__name__}: {error}"
            finding = Finding(
                rule, subject, "broken", rule.highest_level, place=subject.path, reason=reason
            )
        yield finding if ratio_set is None else replace(finding, ratio_set=ratio_set)


def judge_value(rule: Rule, subject: Subject, known: Known) -> Finding:
    """Hold a value found outside the measures against a rule."""
    return _held(rule, subject, known, known, known.path or subject.path, None)


def _judge(rule: Rule, subject: Subject, design: Design) -> Finding:
    if subject.kind in _MAY_BE_ABSENT:
        present = design.subjects.presence(subject.kind)
        if present is False:
            return Finding(rule, subject, "does not apply", place=subject.path)
        if present is None:
            return _not_shown(rule, subject, Unknown((subject.path,)))
    if not _varies(rule, subject, design):
        return _at(rule, subject, design, None)
    if not design.points:
        return _not_shown(rule, subject, Unknown((("operation",),)))
    return min((_at(rule, subject, design, point) for point in design.points), key=gravity)


def _varies(rule: Rule, subject: Subject, design: Design) -> bool:
    names = (rule.measure, *(condition.measure for condition in rule.when))
    measures = (design.measure_named(name, subject) for name in names)
    return any(measure is not None and measure.varies for measure in measures)


def _at(rule: Rule, subject: Subject, design: Design, point: Subject | None) -> Finding:
    unknown = None
    for condition in rule.when:
        holds = _holds(condition, design.measure(condition.measure, subject, point))
        if holds is False:
            return Finding(rule, subject, "does not apply", place=subject.path)
        if isinstance(holds, Unknown) and unknown is None:
            unknown = holds
    if unknown is not None:
        return _not_shown(rule, subject, unknown, point)
    value = design.measure(rule.measure, subject, point)
    if isinstance(value, Known):
        return _held(rule, subject, value, value, _place(rule, subject, value, design), point)
    best = value.at_best
    # At a milder level than the gravest one, that one would still be open: not shown.
    if (
        best is not None
        and rule.comparable(best)
        and rule.level_of(best.value) == rule.highest_level
    ):
        return _held(rule, subject, best, value, _place(rule, subject, best, design), point)
    return _not_shown(rule, subject, value, point)


def _holds(condition: Condition, value: Value) -> bool | Unknown:
    if isinstance(value, Unknown):
        return value
    return condition.limit.met_by(value.value)


def _held(
    rule: Rule, subject: Subject, known: Known, value: Value, place: Path, point: Subject | None
) -> Finding:
    if not rule.comparable(known):
        unit = next(iter(rule.limits.values())).unit
        because = f"it is stated in {known.unit}, the limit is in {unit}"
        return _not_shown(rule, subject, Unknown((known.path or subject.path,), because), point)
    level = rule.level_of(known.value)
    if level is None:
        _, limit = rule.nearest_limit(known.value)
    else:
        limit = rule.limits[level]
    return Finding(
        rule,
        subject,
        "meets" if level is None else "falls short",
        level,
        value,
        limit,
        limit.margin(known.value),
        point.name if point else None,
        place,
        reason=value.because if isinstance(value, Unknown) else "",
    )


def _place(rule: Rule, subject: Subject, known: Known, design: Design) -> Path:
    if known.path is not None:
        return known.path
    measure = design.measure_named(rule.measure, subject)
    return subject.place(measure.at) if measure is not None and measure.at else subject.path


def _not_shown(
    rule: Rule, subject: Subject, unknown: Unknown, point: Subject | None = None
) -> Finding:
    return Finding(
        rule,
        subject,
        "not shown",
        rule.highest_level,
        unknown,
        point=point.name if point else None,
        place=unknown.missing[0] if unknown.missing else subject.path,
        reason=unknown.because,
    )
