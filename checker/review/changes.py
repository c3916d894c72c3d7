"""What a revision of a spec changed: findings that appeared, cleared or moved, and inputs."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, Protocol

from checker.known import Path
from checker.review.finding import Finding, Outcome, gravity, report_order
from checker.review.review import Review
from checker.review.rule import LEVELS, Level

Way = Literal["appeared", "worse", "moved", "better", "cleared"]
_Key = tuple[str, str, str | None]
_SAME = 1e-3
"""A margin that moves by a smaller share of itself reads the same before and after."""


@dataclass(frozen=True, slots=True)
class Moved:
    """A rule on a part whose outcome is not what it was.

    Attributes:
        way: ``appeared`` and ``cleared`` for what was not or is no longer open; ``worse`` and
            ``better`` by outcome, level or margin; ``moved`` where none of these tells.
        before: the finding on the old spec, ``None`` where it had no such rule or part.
        after: the finding on the new one.
    """

    way: Way
    before: Finding | None
    after: Finding | None

    @property
    def is_open_in_one(self) -> bool:
        """Whether it is or was open; otherwise only its margin moved."""
        return any(each is not None and each.is_open for each in (self.before, self.after))

    @property
    def shown(self) -> Finding:
        """The finding that stands for it: the new one where there is one."""
        finding = self.after or self.before
        assert finding is not None
        return finding


@dataclass(frozen=True, slots=True)
class InputChange:
    """A stated value that is not what it was.

    Attributes:
        name: the field, entries of a list by their name.
        before: what the old spec states, ``None`` where it has no such field.
        after: what the new one states.
        old_path: its place in the old spec, or of what is around it.
        new_path: its place in the new one.
    """

    name: str
    before: str | None
    after: str | None
    old_path: Path
    new_path: Path


@dataclass(frozen=True)
class Changes:
    """Everything that differs between two reviews.

    Attributes:
        old: the review of the old spec.
        new: the review of the new one, by the same rules on the same day.
        moved: findings that differ, the gravest first.
        inputs: stated values that differ, in the order of the new spec.
    """

    old: Review
    new: Review
    moved: tuple[Moved, ...]
    inputs: tuple[InputChange, ...]

    def of(self, *ways: Way) -> tuple[Moved, ...]:
        """The findings that went one of these ways."""
        return tuple(each for each in self.moved if each.way in ways)

    def worsens(self, level: Level) -> bool:
        """Whether something open at or above a level appeared or became worse."""
        at_or_above = LEVELS[: LEVELS.index(level) + 1]
        return any(
            each.after is not None and each.after.is_open and each.after.level in at_or_above
            for each in self.of("appeared", "worse")
        )


def changes(old: Review, new: Review) -> Changes:
    """Compare two reviews by the same rulebook on the same day.

    Args:
        old: the review of the old spec.
        new: the review of the new one.
    """
    before, after = _by_key(old), _by_key(new)
    moved = [
        found
        for key in dict.fromkeys((*after, *before))
        if (found := _moved(before.get(key), after.get(key))) is not None
    ]
    inputs = _inputs(_stated(old), _stated(new))
    in_order = sorted(moved, key=lambda each: report_order(each.shown))
    return Changes(old, new, tuple(in_order), tuple(inputs))


def _stated(review: Review) -> "_Stated":
    return _Stated(review.loaded.document.data, ())


def _by_key(review: Review) -> dict[_Key, Finding]:
    """Findings by what stays the same from one revision to the next."""
    return {(each.rule.id, each.subject.address, each.ratio_set): each for each in review.findings}


class Judged(Protocol):
    """What of a finding tells whether another one of the same rule and part is worse."""

    @property
    def outcome(self) -> Outcome:
        """What came out."""

    @property
    def level(self) -> Level | None:
        """Level at which it is open."""

    @property
    def margin(self) -> float | None:
        """How far inside the limit."""

    @property
    def is_open(self) -> bool:
        """Whether something is left to be done about it."""


def way_of(before: Judged | None, after: Judged | None) -> Way | None:
    """How a finding moved by outcome, level and margin; ``None`` where these are the same.

    Args:
        before: what came out before, ``None`` where there was no such rule or part.
        after: what comes out now.
    """
    was_open = before is not None and before.is_open
    is_open = after is not None and after.is_open
    if was_open != is_open:
        return "appeared" if is_open else "cleared"
    return None if before is None or after is None else _way_of_both(before, after)


def _way_of_both(before: Judged, after: Judged) -> Way | None:
    """How a finding moved that is open in both, or closed in both."""
    ranks = [gravity(each.outcome, each.level, 0.0) for each in (before, after)]
    if ranks[0] != ranks[1]:
        if not before.is_open:  # from does not apply to meets, say
            return "moved"
        if (before.outcome, before.level, after.outcome) == (
            "falls short",
            after.level,
            "not shown",
        ):
            return "moved"  # to leave a value out makes nothing better
        return "worse" if ranks[1] < ranks[0] else "better"
    if before.margin is None or after.margin is None:
        return None
    change = after.margin - before.margin
    if abs(change) > _SAME * max(abs(before.margin), abs(after.margin)):
        return "better" if change > 0.0 else "worse"
    return None


def _moved(before: Finding | None, after: Finding | None) -> Moved | None:
    """How a finding moved, ``None`` where it did not."""
    way = way_of(before, after)
    if way is None and before is not None and after is not None:
        no_margin = before.margin is None or after.margin is None
        way = "moved" if no_margin and _told(before) != _told(after) else None
    return None if way is None else Moved(way, before, after)


def _told(finding: Finding) -> tuple[object, ...]:
    """What a finding without margin says: its value, or the fields that it waits for."""
    value = finding.known.value if finding.known is not None else None
    missing = () if finding.known is not None else (finding.place, *finding.related)
    return (value, missing, finding.reason)


@dataclass(frozen=True, slots=True)
class _Stated:
    """A value of a spec with its place; ``_ABSENT`` where the spec has no such field."""

    data: object
    path: Path


_ABSENT = object()


def _inputs(old: _Stated, new: _Stated, name: tuple[str, ...] = ()) -> Iterator[InputChange]:
    """What differs between two values, down to the single ones that both have."""
    inside_old, inside_new = _inner(old), _inner(new)
    if inside_old is None or inside_new is None:
        if inside_old is not inside_new or _as_text(old.data) != _as_text(new.data):
            before, after = _as_text(old.data), _as_text(new.data)
            yield InputChange(".".join(name), before, after, old.path, new.path)
        return
    for key in dict.fromkeys((*inside_new, *inside_old)):
        yield from _inputs(
            inside_old.get(key, _Stated(_ABSENT, old.path)),
            inside_new.get(key, _Stated(_ABSENT, new.path)),
            (*name, key),
        )


def _inner(stated: _Stated) -> dict[str, _Stated] | None:
    """What is inside a mapping or a list, by name; ``None`` for a single value."""
    data, path = stated.data, stated.path
    if isinstance(data, dict):
        return {key: _Stated(value, (*path, key)) for key, value in data.items()}
    if isinstance(data, list):
        return {
            name: _Stated(value, (*path, index))
            for index, (name, value) in enumerate(zip(_entry_names(data), data, strict=True))
        }
    return None


def _entry_names(entries: list[object]) -> list[str]:
    """What the entries of a list are called: by their names where each has one of its own."""
    names: list[object] = [each.get("name") if isinstance(each, dict) else None for each in entries]
    if all(isinstance(each, str) for each in names) and len(set(names)) == len(names):
        return [str(each) for each in names]
    return [str(index) for index in range(len(entries))]


def _as_text(data: object) -> str | None:
    """A value in words: of a mapping or list only how much is in it."""
    if data is _ABSENT:
        return None
    if isinstance(data, dict):
        return f"{len(data)} {'field' if len(data) == 1 else 'fields'}"
    if isinstance(data, list):
        return f"{len(data)} {'entry' if len(data) == 1 else 'entries'}"
    return str(data).lower() if isinstance(data, bool) else str(data)
