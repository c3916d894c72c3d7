"""Values of which only a bound is known: enough to fall short on, never enough to meet."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, merged


def larger(one: Value, other: Value) -> Value:
    """The larger of two; where one is unknown, at best the other."""
    known = [each for each in (one, other) if isinstance(each, Known)]
    largest = max(known, key=lambda each: each.number, default=None)
    if largest is not None and len(known) == 2:
        return largest
    missing = merged([each for each in (one, other) if isinstance(each, Unknown)])
    return Unknown(missing.missing, missing.because, largest)


def more_is_worse(bound: Value, judged: Callable[[Value], Value]) -> Value:
    """A value that gets worse as another grows: at best that of the least the other can be."""
    value = judged(bound)
    if isinstance(value, Known) or isinstance(bound, Known) or bound.at_best is None:
        return value
    best = judged(bound.at_best)
    at_best = best if isinstance(best, Known) else best.at_best
    missing = merged([value, best]) if isinstance(best, Unknown) else value
    return Unknown(missing.missing, missing.because, at_best)
