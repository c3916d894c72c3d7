"""Values of which only a bound is known: enough to fall short on, never enough to meet."""

from collections.abc import Callable, Sequence

from checker.known import Known, Unknown, Value, merged


def largest(values: Sequence[Value]) -> Value:
    """The largest of some values; where any is unknown, at best the largest of what is known."""
    bounds = [each if isinstance(each, Known) else each.at_best for each in values]
    most = max((each for each in bounds if each), key=lambda each: each.number, default=None)
    unknown = [each for each in values if isinstance(each, Unknown)]
    if most is not None and not unknown:
        return most
    missing = merged(unknown)
    return Unknown(missing.missing, missing.because, most)


def more_is_worse(bound: Value, judged: Callable[[Value], Value]) -> Value:
    """A value that gets worse as another grows: at best that of the least the other can be."""
    value = judged(bound)
    if isinstance(value, Known) or isinstance(bound, Known) or bound.at_best is None:
        return value
    best = judged(bound.at_best)
    at_best = best if isinstance(best, Known) else best.at_best
    missing = merged([value, best]) if isinstance(best, Unknown) else value
    return Unknown(missing.missing, missing.because, at_best)
