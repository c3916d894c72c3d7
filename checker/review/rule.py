"""A rule as data, and what a value is worth against its limits."""

import math
from dataclasses import dataclass, field
from typing import Literal, get_args

from checker.known import Known, Plain

Level = Literal["warning", "caution", "advisory"]
LEVELS: tuple[Level, ...] = get_args(Level)
"""From the gravest down; the words of 14 CFR 25.1322."""

LimitKind = Literal["at_least", "at_most", "between", "one_of", "none_of", "is"]
LIMIT_KINDS: tuple[LimitKind, ...] = get_args(LimitKind)
_TEMPERATURES = ("K", "ΔK")


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit.

    Attributes:
        kind: how the value is held against it.
        values: the limit in SI, one number, two for ``between``; words or truths for the rest.
        unit: SI unit of the numbers; ``"1"`` for pure ones, ``""`` for words and truths.
        text: as written in the rulebook.
        low: the lower end of a limit in numbers, if it has one.
        high: its upper end, if it has one.
    """

    kind: LimitKind
    values: tuple[Plain, ...]
    unit: str
    text: str
    low: float | None = field(init=False)
    high: float | None = field(init=False)

    def __post_init__(self) -> None:
        low = as_number(self.values[0]) if self.kind in ("at_least", "between") else None
        high = as_number(self.values[-1]) if self.kind in ("at_most", "between") else None
        object.__setattr__(self, "low", low)
        object.__setattr__(self, "high", high)

    def met_by(self, value: Plain) -> bool:
        """Whether a value keeps the limit; a value at the limit keeps it."""
        if self.low is None and self.high is None:
            return (value in self.values) != (self.kind == "none_of")
        number = as_number(value)
        return (self.low is None or number >= self.low) and (
            self.high is None or number <= self.high
        )

    def margin(self, value: Plain) -> float | None:
        """How far a value is inside the limit, positive is good; ``None`` for words and truths.

        Temperatures in kelvin, a limit of zero in the value's own unit, all else relative.
        """
        if self.low is None and self.high is None:
            return None
        number = as_number(value)
        above = math.inf if self.low is None else self._scaled(number - self.low, self.low)
        below = math.inf if self.high is None else self._scaled(self.high - number, self.high)
        return min(above, below)

    @property
    def margin_is_absolute(self) -> bool:
        """Whether the margin is in the value's own unit: kelvin, or beside an end of zero."""
        return self.unit in _TEMPERATURES or 0.0 in self.values

    def _scaled(self, gap: float, end: float) -> float:
        return gap if self.margin_is_absolute else gap / math.fabs(end)


def as_number(value: Plain) -> float:
    """A plain value as a number.

    Raises:
        TypeError: it is text or a truth.
    """
    if isinstance(value, (str, bool)):
        raise TypeError(f"{value!r} is not a number")
    return value


@dataclass(frozen=True, slots=True)
class Condition:
    """A measure of the same part that must keep a limit for the rule to apply."""

    measure: str
    limit: Limit
    varies: bool


@dataclass(frozen=True, slots=True)
class Source:
    """On whose authority a rule stands.

    Attributes:
        kind: standard, regulation, handbook, report, practice or memory.
        cite: title, edition or amendment.
        clause: clause, table or page.
    """

    kind: str
    cite: str
    clause: str


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of the rulebook; see the rulebook schema for the meaning of each field."""

    id: str
    family: str
    title: str
    looks_at: str
    when: tuple[Condition, ...]
    measure: str
    limits: dict[Level, Limit]  # the gravest level first
    why: str
    remedy: str
    sources: tuple[Source, ...]
    no_deviation: bool
    needs_mitigation: bool
    wrong_when: str
    varies: bool
    house: str = ""

    @property
    def judged_at_points(self) -> bool:
        """Whether the outcome can differ between the operation points."""
        return self.varies or any(condition.varies for condition in self.when)

    @property
    def highest_level(self) -> Level:
        """The gravest level at which the rule can fall short."""
        return next(iter(self.limits))

    def level_of(self, value: Plain) -> Level | None:
        """The gravest level at which a value falls short; ``None`` where it meets all."""
        for level, limit in self.limits.items():
            if not limit.met_by(value):
                return level
        return None

    def nearest_limit(self, value: Plain) -> tuple[Limit, float | None]:
        """The limit with the least margin for a value, and that margin."""
        margins = [(limit, limit.margin(value)) for limit in self.limits.values()]
        return min(margins, key=_least_margin)

    def comparable(self, value: Known) -> bool:
        """Whether a value is in the unit of the limits."""
        return all(value.unit == limit.unit for limit in self.limits.values())


def _least_margin(held: tuple[Limit, float | None]) -> float:
    return math.inf if held[1] is None else held[1]
