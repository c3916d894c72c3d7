"""What a rule found on a part."""

from dataclasses import dataclass, replace
from typing import Literal

from checker.known import Known, Path, Unknown, Value
from checker.review.rule import LEVELS, Level, Limit, Rule
from checker.spec.papers import Deviation
from checker.spec.subject import Subject

Outcome = Literal["meets", "falls short", "not shown", "does not apply", "deviation", "broken"]


@dataclass(frozen=True, slots=True)
class Finding:
    """The outcome of one rule on one part.

    Attributes:
        rule: the rule.
        subject: the part it looked at.
        outcome: what came out.
        level: level at which it falls short or deviates; highest level of the rule where it is
            not shown or broken; ``None`` otherwise.
        value: the measure, at the governing point if it varies.
        limit: the limit that governs.
        margin: how far inside the limit, positive is good; see ``Limit.margin``.
        point: the governing operation point.
        place: path in the spec that shows the value judged.
        ratio_set: the exchangeable ratio reviewed, if the spec has any.
        deviation: the acceptance, where the outcome is ``deviation``.
        reason: why it is not shown or broken, in words.
    """

    rule: Rule
    subject: Subject
    outcome: Outcome
    level: Level | None = None
    value: Value | None = None
    limit: Limit | None = None
    margin: float | None = None
    point: str | None = None
    place: Path = ()
    ratio_set: str | None = None
    deviation: Deviation | None = None
    reason: str = ""

    @property
    def known(self) -> Known | None:
        """The value judged, if it is known or known at best."""
        if isinstance(self.value, Unknown):
            return self.value.at_best
        return self.value

    @property
    def related(self) -> tuple[Path, ...]:
        """Paths of the other values involved, or of the further fields that are missing."""
        if isinstance(self.value, Unknown) and self.value.at_best is None:
            paths = self.value.missing
        elif self.known is not None:
            paths = tuple(leaf.path for leaf in self.known.leaves() if leaf.path is not None)
        else:
            paths = ()
        return tuple(path for path in dict.fromkeys(paths) if path != self.place)

    @property
    def result(self) -> tuple[object, ...]:
        """What came out, without the derivation: equal for two findings that say the same."""
        value = self.known.value if self.known is not None else None
        return (self.outcome, self.level, value, self.point, self.place, self.related, self.reason)

    @property
    def is_open(self) -> bool:
        """Whether something is left to be done about it."""
        return self.outcome in ("falls short", "not shown", "broken")

    def accepted(self, deviation: Deviation) -> "Finding":
        """The same finding as an accepted deviation."""
        return replace(self, outcome="deviation", deviation=deviation)


_GRAVITY: dict[Outcome, int] = {
    "broken": 0,
    "falls short": 1,
    "not shown": 2,
    "deviation": 3,
    "meets": 4,
    "does not apply": 5,
}


def gravity(outcome: Outcome, level: Level | None, margin: float | None) -> tuple[float, ...]:
    """Sort key of an outcome: the worst first."""
    broken = 0 if outcome == "broken" else 1
    grade = LEVELS.index(level) if level else len(LEVELS)
    return broken, grade, _GRAVITY[outcome], margin or 0.0


def report_order(finding: Finding) -> tuple[float | str, ...]:
    """Sort key that leaves no ties: gravity first, then names.

    Accepted deviations come after what is open; what meets and does not apply comes last.
    """
    closed = 0 if finding.is_open else _GRAVITY[finding.outcome]
    return (
        closed,
        *gravity(finding.outcome, finding.level, finding.margin),
        finding.rule.id,
        finding.subject.label,
        finding.ratio_set or "",
    )
