"""The steps of a variation as curves: each measure asked for, and how much is open."""

from checker.known import Known
from checker.report.inquiry import Answer
from checker.report.pictures.curves import Curve, Field, curves
from checker.report.pictures.picture import Picture
from checker.report.variation import Range, Step, heads
from checker.review.review import Review
from checker.review.rule import LEVELS
from checker.spec.units import reading_unit


def variation_picture(name: str, ranges: tuple[Range, ...], steps: list[Step]) -> Picture:
    """Draw a variation over the range that goes fastest, a curve for each value of the other.

    Args:
        name: of the spec.
        ranges: the fields varied, one or two.
        steps: every combination.
    """
    along = ranges[-1]
    rows = _rows(ranges, steps)
    fields = [
        field
        for column, head in enumerate(heads(steps))
        if (field := _measured(head, column, rows)) is not None
    ]
    title = f"{name}: {' and '.join(each.field for each in ranges)} varied"
    fields.append(_open(rows))
    return curves("variation", title, along.numbers, fields, along=along.field, unit=along.unit)


def _rows(ranges: tuple[Range, ...], steps: list[Step]) -> list[tuple[str, list[Step]]]:
    """The steps of each value of the slower range, with that value; all, where there is one."""
    if len(ranges) == 1:
        return [("", steps)]
    slow = ranges[0]
    return [
        (str(value), [step for step in steps if step.at[0] == index])
        for index, value in enumerate(slow.values)
    ]


def _measured(head: str, column: int, rows: list[tuple[str, list[Step]]]) -> Field | None:
    """A measure in the unit in which its largest value is read; ``None`` if it is no number."""
    answers = [[_answer(step, column) for step in steps] for _, steps in rows]
    known = [_number(each) for row in answers for each in row]
    numbers = [each for each in known if each is not None]
    if not numbers:
        return None
    si = next(
        each.value.unit for row in answers for each in row if each and _number(each) is not None
    )
    unit = reading_unit(max(numbers, key=abs), si)
    symbol = unit.symbol if unit is not None else si.replace("1", "")

    def read(answer: Answer | None) -> float | None:
        number = _number(answer)
        return unit.from_si(number) if unit is not None and number is not None else number

    lines = [
        Curve(label or "as varied", tuple(read(each) for each in row))
        for (label, _), row in zip(rows, answers, strict=True)
    ]
    return Field(f"{head}, {symbol}" if symbol else head, tuple(lines))


def _answer(step: Step, column: int) -> Answer | None:
    return step.answers[column] if step.answers else None


def _number(answer: Answer | None) -> float | None:
    if answer is None or not isinstance(answer.value, Known):
        return None
    value = answer.value.value
    return None if isinstance(value, (str, bool)) else float(value)


def _open(rows: list[tuple[str, list[Step]]]) -> Field:
    """How many findings are open: by level, or of two ranges by the slower one."""
    if len(rows) > 1:
        lines = [Curve(label, tuple(map(_grave, steps))) for label, steps in rows]
        return Field("Warnings and cautions that are open", tuple(lines))
    steps = rows[0][1]
    lines = [Curve(level, tuple(_count(step, level) for step in steps)) for level in LEVELS]
    return Field("Open findings", tuple(lines))


def _grave(step: Step) -> float | None:
    counts = [_count(step, level) for level in LEVELS[:2]]
    return None if None in counts else sum(each or 0.0 for each in counts)


def _count(step: Step, level: str) -> float | None:
    """Open findings of a level; ``None`` where the spec cannot be read with these values."""
    if not isinstance(step.review, Review):
        return None
    return float(sum(each.level == level for each in step.review.open_findings))
