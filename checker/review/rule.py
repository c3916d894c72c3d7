"""A rule as data, and what a value is worth against its limits."""

import math
from dataclasses import dataclass
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
    """

    kind: LimitKind
    values: tuple[Plain, ...]
    unit: str
    text: str

    def met_by(self, value: Plain) -> bool:
        """Whether a value keeps the limit; a value at the limit keeps it."""
        match self.kind:
            case "at_least":
                return as_number(value) >= as_number(self.values[0])
            case "at_most":
                return as_number(value) <= as_number(self.values[0])
            case "between":
                low, high = map(as_number, self.values)
                return low <= as_number(value) <= high
            case "none_of":
                return value not in self.values
            case _:
                return value in self.values

    def margin(self, value: Plain) -> float | None:
        """How far a value is inside the limit, positive is good; ``None`` for words and truths.

        Temperatures in kelvin, a limit of zero in the value's own unit, all else relative.
        """
        if self.kind not in ("at_least", "at_most", "between"):
            return None
        gaps = []
        if self.kind in ("at_least", "between"):
            low = as_number(self.values[0])
            gaps.append(self._scaled(as_number(value) - low, low))
        if self.kind in ("at_most", "between"):
            high = as_number(self.values[-1])
            gaps.append(self._scaled(high - as_number(value), high))
        return min(gaps)

    def _scaled(self, gap: float, limit: float) -> float:
        if self.margin_is_absolute(limit):
            return gap
        return gap / math.fabs(limit)

    def margin_is_absolute(self, limit: float | None = None) -> bool:
        """Whether the margin is in the value's own unit."""
        if self.unit in _TEMPERATURES:
            return True
        return 0.0 in self.values if limit is None else limit == 0.0


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
    limits: dict[Level, Limit]
    why: str
    remedy: str
    sources: tuple[Source, ...]
    no_deviation: bool
    needs_mitigation: bool
    wrong_when: str
    house: str = ""

    @property
    def highest_level(self) -> Level:
        """The gravest level at which the rule can fall short."""
        return next(level for level in LEVELS if level in self.limits)

    def level_of(self, value: Plain) -> Level | None:
        """The gravest level at which a value falls short; ``None`` where it meets all."""
        for level in LEVELS:
            if level in self.limits and not self.limits[level].met_by(value):
                return level
        return None

    def nearest_limit(self, value: Plain) -> tuple[Level, Limit]:
        """The limit with the least margin for a value."""
        held = [(level, self.limits[level]) for level in LEVELS if level in self.limits]
        return min(held, key=lambda each: _or_infinite(each[1].margin(value)))

    def comparable(self, value: Known) -> bool:
        """Whether a value is in the unit of the limits."""
        return all(value.unit == limit.unit for limit in self.limits.values())


def _or_infinite(margin: float | None) -> float:
    return math.inf if margin is None else margin
