"""Damage of a load spectrum by Miner's sum, and the life that follows.

Each state of operation takes from the life of a flank or root what its load cycles take from the
load cycles that its stress is stood for (ISO 6336-6:2006, from memory).
"""

from collections.abc import Sequence
from math import inf, log, pi

from checker.mechanics.equation import OutOfRange, equation

_PART_6 = "ISO 6336-6:2006, Palmgren-Miner rule (from memory)"


@equation(
    "N_L",
    "N_L = q L n_mates ω / 2π",
    unit="1",
    source=_PART_6,
    share="q [1]",
    life="L [s]",
    speed="ω [rad/s]",
    mates="n_mates [1]",
)
def load_cycles(share: float, life: float, speed: float, mates: int) -> float:
    """Load cycles of a flank for a share of a life, once for each mate in each turn."""
    return share * life * mates * speed / (2.0 * pi)


@equation(
    "D'",
    "D' = q ω / (2π N)",
    unit="1/s",
    source=_PART_6,
    share="q [1]",
    speed="ω [rad/s]",
    cycles="N [1]",
)
def damage_rate(share: float, speed: float, cycles: float) -> float:
    """Damage that a state of operation adds in each second of running [1/s]."""
    return share * speed / (2.0 * pi * cycles)


@equation(
    "L",
    "L = 1 / Σ D'",
    unit="s",
    source=_PART_6,
    rates="D' [1/s]",
)
def life_of(rates: Sequence[float]) -> float:
    """Running time until the damage adds up to 1 [s]; endless without load.

    Raises:
        OutOfRange: a rate is negative.
    """
    if any(rate < 0.0 for rate in rates):
        raise OutOfRange("rates: damage does not heal")
    total = sum(rates)
    return 1.0 / total if total > 0.0 else inf


@equation(
    "K_R",
    "K_R = 0.658 − 0.0759 ln q below a reliability of 99 %, 0.50 − 0.109 ln q from there, q chance"
    " of failure; 1 at 1 %",
    unit="1",
    source="AGMA 2001-D04 Table 11, fit of Shigley Eq. 14-38 (from memory); scaled to 1 at 1 %, by"
    " 0.2 %",
    failure_probability="q [1]",
)
def reliability_factor(failure_probability: float) -> float:
    """Factor on a stress that holds for 1 % of failures (K_R, Y_Z).

    Raises:
        OutOfRange: ``failure_probability`` is outside 0.0001 to 0.5.
    """
    if not 1e-4 <= failure_probability <= 0.5:
        raise OutOfRange(
            f"failure_probability {failure_probability:g} is outside 0.01 to 50 per cent"
        )
    return _fit(failure_probability) / _fit(0.01)


def _fit(failure_probability: float) -> float:
    if failure_probability > 0.01 * (1.0 + 1e-9):
        return 0.658 - 0.0759 * log(failure_probability)
    return 0.50 - 0.109 * log(failure_probability)
