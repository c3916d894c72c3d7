"""One or two stated values over a range: what a review says at each step."""

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from checker.known import Path, Unknown
from checker.report import words
from checker.report.inquiry import Answer, inquiries
from checker.review.review import Review, review_spec
from checker.review.rule import LEVELS
from checker.spec.document import Document
from checker.spec.edit import Written, field_named, value_at, with_values, written
from checker.spec.problem import SpecUnreadable
from checker.text import plain

_RANGE = re.compile(r"(?P<field>.+)=(?P<first>[^=]+?)\.\.(?P<last>.+)", re.DOTALL)


class NoRange(ValueError):
    """A range that cannot be walked; the message says why."""


@dataclass(frozen=True, slots=True)
class Range:
    """The values that one field takes.

    Attributes:
        field: the field as it was asked for.
        path: its place in the spec.
        stated: what the spec states there; ``None`` where it leaves it out.
        values: each value as a spec would state it, in order.
        numbers: the same as bare numbers in the unit written.
        unit: that unit; empty for bare numbers.
    """

    field: str
    path: Path
    stated: object
    values: tuple[str | int | float, ...]
    numbers: tuple[float, ...]
    unit: str


@dataclass(frozen=True, slots=True)
class Step:
    """One combination of values and what came out of it.

    Attributes:
        at: the index of the value of each range.
        review: the review, or the spec that cannot be read with these values.
        answers: the measures asked for, in order; empty where it cannot be read.
    """

    at: tuple[int, ...]
    review: Review | SpecUnreadable
    answers: tuple[Answer, ...]


def range_of(document: Document, text: str, steps: int) -> Range:
    """Read a range such as ``operation.climb.power=40 kW..60 kW``.

    Args:
        document: the spec.
        text: the field, an equals sign, and the first and last value between two dots.
        steps: how many values to take; of a count at most one for each whole number.

    Raises:
        NoRange: it is no range, the field is not there, or the units do not agree.
    """
    match = _RANGE.fullmatch(text)
    if match is None:
        raise NoRange(f"{text!r} is no range; expected FIELD=FROM..TO, such as {_EXAMPLE}")
    field = match["field"].strip()
    path, stated = _place_of(document, field)
    first, last = written(_scalar(match["first"])), written(_scalar(match["last"]))
    if first is None or last is None:
        raise NoRange(f"{text!r}: a range goes from one number to another, such as {_EXAMPLE}")
    if first.rest == "" and not last.is_bare:
        first = Written(first.number, last.rest, is_bare=False)
    pattern = _pattern(written(stated), last, text)
    if first.unit != pattern.unit or last.unit != pattern.unit:
        given = f"{first.unit or 'a bare number'} and {last.unit or 'a bare number'}"
        raise NoRange(
            f"{text!r}: the units do not agree; found {given}; "
            f"expected {pattern.unit or 'bare numbers'}, in which the spec states the field"
        )
    numbers = _walk(first.number, last.number, steps, whole=pattern.is_whole and last.is_whole)
    return Range(
        field,
        path,
        stated,
        tuple(pattern.at(number) for number in numbers),
        tuple(float(number) for number in numbers),
        pattern.unit,
    )


_EXAMPLE = "'operation.climb.power=40 kW..60 kW'"


def _scalar(text: str) -> str | int | float:
    """A bound as a spec would hold it: bare where it is only a number."""
    try:
        number = Decimal(text.strip())
    except ArithmeticError:
        return text
    if not number.is_finite():
        return text
    return int(number) if number == number.to_integral_value() else float(number)


def _pattern(stated: Written | None, last: Written, text: str) -> Written:
    """How the values are written: like the stated one, with its tolerance."""
    if stated is None:
        return last
    if stated.is_bare != last.is_bare:
        expected = "bare numbers" if stated.is_bare else f"numbers in {stated.unit}"
        raise NoRange(f"{text!r}: the units do not agree; expected {expected}, as the spec states")
    return stated


def _place_of(document: Document, field: str) -> tuple[Path, object]:
    path = field_named(document, field)
    if path is not None:
        stated = value_at(document, path)
        if isinstance(stated, (dict, list)):
            raise NoRange(f"{field!r} holds several fields; name one of them")
        return path, stated
    parent, _, last = field.rpartition(".")
    around = field_named(document, parent) if parent else None
    if around is None or not isinstance(value_at(document, around), dict):
        raise NoRange(f"the spec has no field {field!r}, and no part that could have it")
    return (*around, last), None


def _walk(first: Decimal, last: Decimal, steps: int, *, whole: bool) -> list[Decimal]:
    """Evenly spaced values from first to last, each once."""
    if first == last:
        return [first]
    step = (last - first) / (steps - 1)
    walked = [first + step * index for index in range(steps)]
    if whole:
        return list(dict.fromkeys(each.to_integral_value() for each in walked))
    return [_short(each) for each in walked]


def _short(number: Decimal) -> Decimal:
    """A number to six significant digits."""
    return Decimal(f"{number:.6g}")


def varied(review: Review, ranges: tuple[Range, ...], targets: tuple[str, ...]) -> Iterator[Step]:
    """Review a spec at every combination of values, the last range going fastest.

    Args:
        review: the review of the spec as it is.
        ranges: the fields to vary.
        targets: measures to ask for, such as ``meshes.first.safety_pitting``.

    Raises:
        NothingSuch: a measure asked for is not there.
    """
    document = review.loaded.document
    for at in itertools.product(*(range(len(each.values)) for each in ranges)):
        values = {each.path: each.values[index] for each, index in zip(ranges, at, strict=True)}
        source = with_values(document, values)
        try:
            found = review_spec(source, document.name, review.book, review.on)
        except SpecUnreadable as unreadable:
            yield Step(at, unreadable, ())
            continue
        answers = tuple(
            answer
            for target in targets
            for design in found.designs.values()
            for answer in inquiries(design, *_target(target))
        )
        yield Step(at, found, answers)


def _target(target: str) -> tuple[str, str | None]:
    """Part and measure, and the operation point behind an ``@`` if there is one."""
    measure, _, point = target.partition("@")
    return measure, point or None


def heads(steps: list[Step]) -> list[str]:
    """What each column of answers is called."""
    answers = next((step.answers for step in steps if step.answers), ())
    return [
        plain(
            f"{each.part}.{each.measure}"
            + (f"@{each.point}" if each.point else "")
            + words.set_text(each.ratio_set)
        )
        for each in answers
    ]


def outcome_cells(step: Step) -> list[str]:
    """Disposition, how much is open at each level, and the gravest finding."""
    if isinstance(step.review, SpecUnreadable):
        problem = step.review.problems[0]
        said = f"; expected {problem.expected}" if problem.expected else ""
        return ["cannot be read", *("-" for _ in LEVELS), plain(f"{problem.message}{said}")]
    open_ = step.review.open_findings
    counts = [str(sum(each.level == level for each in open_)) for level in LEVELS]
    gravest = f"{open_[0].rule.id}, {words.part_text(open_[0])}" if open_ else "-"
    return [step.review.disposition, *counts, gravest]


def answer_cells(step: Step) -> list[str]:
    """The measures asked for, as a person reads them."""
    return [
        "not shown" if isinstance(each.value, Unknown) else words.value_text(each.value)
        for each in step.answers
    ]
