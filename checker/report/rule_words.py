"""The words for what a rule looks at, asks and allows."""

from checker.measures.registry import measures
from checker.report.words import LEVEL_MEANS, limit_text
from checker.review.rule import Condition, Level, Limit, Rule
from checker.text import plain


def condition_text(rule: Rule, condition: Condition) -> str:
    """When a rule applies."""
    return f"{measure_text(rule, condition.measure)}: {limit_text(condition.limit)}"


def measure_text(rule: Rule, name: str) -> str:
    """A measure of the part that a rule looks at, by name and in words."""
    measure = measures().get((rule.looks_at, name))
    title = measure.title if measure is not None else "as the spec states it"
    at_points = ", at every operation point" if measure is not None and measure.varies else ""
    return plain(f"{name} ({title}{at_points})")


def asks_text(level: Level, limit: Limit) -> str:
    """What a rule asks at a level, and what it means where that is not kept."""
    return f"asks {limit_text(limit)}; otherwise: {LEVEL_MEANS[level]}"


def deviation_text(rule: Rule) -> str:
    """Who may accept that a rule is not kept."""
    if rule.no_deviation:
        return "nobody may accept one"
    if rule.needs_mitigation:
        return "may be accepted by a named person who states a mitigation"
    return "may be accepted by a named person"
