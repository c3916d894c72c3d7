"""From rulebook files to rules: the shipped families, and a house rulebook on top of them."""

import difflib
import itertools
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path as FilePath
from typing import Any

from checker.known import Path, Plain
from checker.measures.registry import measures
from checker.review.rule import (
    LEVELS,
    LIMIT_KINDS,
    Condition,
    Level,
    Limit,
    LimitKind,
    Rule,
    Source,
    as_number,
)
from checker.shipped import shipped
from checker.spec.document import Document, read_document
from checker.spec.fields import spelled
from checker.spec.parts import HARDNESS, stated_unit
from checker.spec.problem import SpecUnreadable
from checker.spec.quantity import QuantityError, parse_quantity
from checker.spec.units import DIMENSIONS

FORMAT = 1


@dataclass(frozen=True, slots=True)
class Change:
    """A limit that a house rulebook changed.

    Attributes:
        rule: id of the rule.
        level: the level changed.
        before: limit of the shipped rulebook, ``None`` where there was none.
        after: limit in force.
        looser: whether it lets more through than before.
        reason: why, required where it is looser.
        house: name of the house rulebook.
    """

    rule: str
    level: Level
    before: Limit | None
    after: Limit
    looser: bool
    reason: str
    house: str


@dataclass(frozen=True, slots=True)
class Rulebook:
    """Rules in the order of their families, and what a house rulebook changed.

    Attributes:
        rules: the rules.
        changes: limits that differ from the shipped ones.
        house: name of the house rulebook.
        about: what each shipped family is for.
    """

    rules: tuple[Rule, ...]
    changes: tuple[Change, ...] = ()
    house: str = ""
    about: Mapping[str, str] = field(default_factory=dict, hash=False)

    def rule(self, rule_id: str) -> Rule | None:
        """The rule of that id."""
        return next((rule for rule in self.rules if rule.id == rule_id), None)


@cache
def shipped_rulebook() -> Rulebook:
    """The rulebook that comes with the program."""
    rules: list[Rule] = []
    about: dict[str, str] = {}
    for file in sorted(shipped("rules").glob("*.yaml")):
        document = read_document(file.read_bytes(), file.name)
        family = str(document.data["family"])
        rules += rules_of(document, family)
        about[family] = str(document.data["about"]).strip()
    return Rulebook(tuple(rules), about=about)


def with_house_rules(book: Rulebook, file: FilePath) -> Rulebook:
    """A rulebook with a house rulebook on top.

    Raises:
        SpecUnreadable: the house rulebook is not well formed, names an unknown rule or measure,
            repeats an id, or loosens a limit without a reason.
        OSError: the file cannot be read.
    """
    from checker.review.rulebook_schema import schema_problems  # jsonschema is slow to import

    document = read_document(file.read_bytes(), str(file))
    problems = schema_problems(document)
    if problems:
        raise SpecUnreadable(document.name, tuple(problems))
    name = str(document.data["name"])
    added = [replace(rule, house=name) for rule in rules_of(document, name)]
    known = {rule.id for rule in book.rules}
    repeated = [
        document.problem(
            ("rules", index, "id"), "this rule id is taken", repr(rule.id), "an id of its own"
        )
        for index, rule in enumerate(added)
        if rule.id in known or rule.id in {earlier.id for earlier in added[:index]}
    ]
    if repeated:
        raise SpecUnreadable(document.name, tuple(repeated))
    rules = {rule.id: rule for rule in book.rules}
    changes: list[Change] = []
    for index, entry in enumerate(document.data.get("limits", [])):
        for change in _changed(rules, document, index, entry, name):
            if any((change.rule, change.level) == (each.rule, each.level) for each in changes):
                found = f"{change.level} of {change.rule} again"
                raise _unfit(document, ("limits", index), found, "each limit once")
            changes.append(change)
    return Rulebook((*rules.values(), *added), tuple(changes), name, book.about)


def _changed(
    rules: dict[str, Rule], document: Document, index: int, entry: dict[str, Any], house: str
) -> list[Change]:
    place = ("limits", index)
    rule = rules.get(entry["rule"])
    if rule is None:
        near = difflib.get_close_matches(entry["rule"], rules, n=1, cutoff=0.6)
        hint = f"did you mean '{near[0]}'?" if near else ""
        problem = document.problem(
            (*place, "rule"), "no such rule", repr(entry["rule"]), "the id of a shipped rule", hint
        )
        raise SpecUnreadable(document.name, (problem,))
    reason = str(entry.get("reason", "")).strip()
    limits = dict(rule.limits)
    changes = []
    for level, written in _limits(document, (*place, "limits"), entry["limits"], rule).items():
        before = rule.limits.get(level)
        looser = before is not None and not _tighter(written, before)
        if looser and not reason:
            problem = document.problem(
                (*place, "limits", level),
                "this loosens a limit and gives no reason",
                written.text,
                f"a limit no looser than {before.text if before else ''}, or a reason",
            )
            raise SpecUnreadable(document.name, (problem,))
        limits[level] = written
        changes.append(Change(rule.id, level, before, written, looser, reason, house))
    in_order = {level: limits[level] for level in LEVELS if level in limits}
    _check_order(document, (*place, "limits"), in_order)
    rules[rule.id] = replace(rule, limits=in_order)
    return changes


def _unfit(document: Document, place: Path, found: str, expected: str) -> SpecUnreadable:
    problem = document.problem(place, "not a limit of this rule", found, expected)
    return SpecUnreadable(document.name, (problem,))


def _check_order(document: Document, place: Path, limits: dict[Level, Limit]) -> None:
    """Refuse a grave level that is easier to reach than a milder one.

    Raises:
        SpecUnreadable: what falls short at a level would not fall short at a level below it.
    """
    for (graver, first), (milder, second) in itertools.pairwise(limits.items()):
        numbers = first.kind == second.kind and first.kind in ("at_least", "at_most", "between")
        if numbers and not _tighter(second, first):
            found = f"{milder} {second.text}, looser than {graver} {first.text}"
            raise _unfit(document, place, found, "the milder the level the tighter its limit")


def _tighter(new: Limit, old: Limit) -> bool:
    """Whether everything that keeps the new limit keeps the old one as well."""
    if new.kind != old.kind:
        return False
    if new.kind in ("at_least", "at_most", "between"):
        ends = [as_number(value) for value in new.values]
        old_ends = [as_number(value) for value in old.values]
        no_lower = new.kind == "at_most" or ends[0] >= old_ends[0]
        no_higher = new.kind == "at_least" or ends[-1] <= old_ends[-1]
        return no_lower and no_higher
    if new.kind == "none_of":
        return set(new.values) >= set(old.values)
    return set(new.values) <= set(old.values)


def rules_of(document: Document, family: str) -> list[Rule]:
    """The rules of one rulebook file.

    Raises:
        SpecUnreadable: a measure is unknown, or a limit is not in the measure's unit.
    """
    return [
        _rule(document, ("rules", index), entry, family)
        for index, entry in enumerate(document.data.get("rules", []))
    ]


def _rule(document: Document, place: Path, entry: dict[str, Any], family: str) -> Rule:
    looks_at = entry["looks_at"]
    rule = Rule(
        id=entry["id"],
        family=family,
        title=entry["title"],
        looks_at=looks_at,
        when=tuple(
            _condition(document, (*place, "when", index), each, looks_at)
            for index, each in enumerate(entry.get("when", []))
        ),
        measure=entry["measure"],
        limits={},
        why=entry["why"].strip(),
        remedy=entry["remedy"].strip(),
        sources=tuple(
            Source(each["kind"], each["cite"], str(each.get("clause", "")))
            for each in entry["sources"]
        ),
        no_deviation=entry.get("no_deviation", False),
        needs_mitigation=entry.get("needs_mitigation", False),
        wrong_when=entry["wrong_when"].strip(),
        varies=_varies(looks_at, entry["measure"]),
    )
    limits = _limits(document, (*place, "limits"), entry["limits"], rule)
    _check_order(document, (*place, "limits"), limits)
    return replace(rule, limits=limits)


def _condition(
    document: Document, place: Path, written: dict[str, Any], looks_at: str
) -> Condition:
    name = written["measure"]
    limit = {key: value for key, value in written.items() if key != "measure"}
    unit = _unit(document, (*place, "measure"), looks_at, name)
    return Condition(name, _limit(document, place, limit, unit), _varies(looks_at, name))


def _varies(looks_at: str, name: str) -> bool:
    measure = measures().get((looks_at, name))
    return measure is not None and measure.varies


def _limits(
    document: Document, place: Path, written: dict[str, Any], rule: Rule
) -> dict[Level, Limit]:
    unit = _unit(document, (*place[:-1], "measure"), rule.looks_at, rule.measure)
    return {
        level: _limit(document, (*place, level), written[level], unit)
        for level in LEVELS
        if level in written
    }


def _limit(document: Document, place: Path, written: dict[str, Any], unit: str) -> Limit:
    (kind, value), *others = written.items()
    if others or kind not in LIMIT_KINDS:
        problem = document.problem(
            place, "not a limit", ", ".join(written), "one of " + ", ".join(LIMIT_KINDS)
        )
        raise SpecUnreadable(document.name, (problem,))
    several: list[Plain] = value if isinstance(value, list) else [value]
    try:
        ends = [_end(kind, each, unit) for each in several]
    except QuantityError as error:
        problem = document.problem(place, error.message, error.found, error.expected, error.hint)
        raise SpecUnreadable(document.name, (problem,)) from None
    if kind == "between" and as_number(ends[0][0]) > as_number(ends[1][0]):
        raise _unfit(document, place, f"{several[0]} before {several[1]}", "the lower end first")
    words = " and ".join(
        str(each).lower() if each in (True, False) else str(each) for each in several
    )
    return Limit(
        kind, tuple(end for end, _ in ends), ends[0][1], f"{kind.replace('_', ' ')} {words}"
    )


def _end(kind: LimitKind, value: Plain, unit: str) -> tuple[Plain, str]:
    """One end of a limit in SI, and its unit; only a hardness has another than the measure.

    Raises:
        QuantityError: the measure has no such limit.
    """
    is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
    message, found = "not a limit of this measure", spelled(value)
    if unit == "":
        if is_number or kind in ("at_least", "at_most", "between"):
            words = "one_of, none_of or is, with words or truths"
            raise QuantityError(message, f"{kind} {found}", words)
        return value, unit
    if unit == "1":
        if not is_number:
            raise QuantityError(message, found, "a bare number")
        return value, unit
    if not isinstance(value, str):
        raise QuantityError(message, found, f"a quantity with its unit; the measure is in {unit}")
    quantity = parse_quantity(value, _DIMENSION_OF[unit])
    return quantity.value, DIMENSIONS[quantity.dimension].si


_DIMENSION_OF: dict[str, str] = {}
for _name, _dimension in DIMENSIONS.items():
    _DIMENSION_OF.setdefault(_dimension.si, _name)
_DIMENSION_OF[HARDNESS] = "hardness"


def _unit(document: Document, place: Path, looks_at: str, name: str) -> str:
    """Unit of a measure, or of a stated field of the part the rule looks at."""
    measure = measures().get((looks_at, name))
    if measure is not None:
        return measure.unit
    unit = stated_unit(looks_at, name)
    if unit is None:
        problem = document.problem(
            place, "no such measure", repr(name), f"a measure or a stated field of a {looks_at}"
        )
        raise SpecUnreadable(document.name, (problem,))
    return unit
