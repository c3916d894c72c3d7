"""Tooth counts to begin with, from the ratio wanted."""

import math

LEAST_TEETH = 24
"""Teeth of the smallest pinion proposed: above the 17 that undercut a full-depth tooth of 20 deg
without profile shift (2/sin² 20 deg = 17.1), so that the contact ratio keeps its distance from the
least, too (common practice, no source)."""
_WIDEST = 12
_AGREES = 0.01


def step_teeth(ratio: float, least: int = LEAST_TEETH) -> tuple[int, int]:
    """Teeth of a pair with a hunting tooth, near a ratio.

    Every tooth meets every other before a pair comes round again, where the counts have no common
    factor. Of the pairs within 1 % of the ratio, and failing these of the nearest ones, it is the
    one with the fewest teeth.

    Args:
        ratio: teeth of the wheel over teeth of the pinion, u [-], from 1 up.
        least: teeth that the pinion has at least.

    Returns:
        Teeth of pinion and wheel.

    Raises:
        ValueError: the ratio is below 1.

    >>> step_teeth(2.5)
    (25, 62)
    """
    if ratio < 1.0:
        raise ValueError(f"a step of ratio {ratio:g} is no reduction")
    pairs = [
        (pinion, wheel)
        for pinion in range(least, least + _WIDEST)
        for wheel in (math.floor(pinion * ratio), math.floor(pinion * ratio) + 1)
        if math.gcd(pinion, wheel) == 1
    ]

    def badness(pair: tuple[int, int]) -> tuple[float, int]:
        error = abs(pair[1] / pair[0] / ratio - 1.0)
        return (0.0 if error <= _AGREES else error), sum(pair)

    return min(pairs, key=badness)


def idler_teeth(pinion: int, wheel: int) -> int:
    """Teeth of an idler between two gears, of about the size of both, that hunts with both.

    Args:
        pinion: teeth of the driving gear.
        wheel: teeth of the driven gear.
    """
    middle = round(math.sqrt(pinion * wheel))
    steps = (step for reach in range(wheel) for step in (middle + reach, middle - reach))
    return next(
        each for each in steps if math.gcd(each, pinion) == 1 and math.gcd(each, wheel) == 1
    )
