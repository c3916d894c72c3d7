"""The steps of a variation as curves: each measure asked for, and how much is open."""

from checker.known import Known
from checker.report import words
from checker.report.inquiry import Answer
from checker.report.pictures.curves import Curve, Field, curves
from checker.report.pictures.picture import Picture
from checker.report.variation import Range, Step
from checker.review.review import Review
from checker.review.rule import LEVELS
from checker.spec.units import reading_unit

Rows = list[tuple[str, list[Step]]]
"""The steps for each value of the slower range, with that value."""


def variation_picture(name: str, ranges: tuple[Range, ...], steps: list[Step]) -> Picture:
    """Draw a variation over the range that goes fastest, a curve for each value of the other.

    Args:
        name: of the spec.
        ranges: the fields varied, one or two.
        steps: every combination.
    """
    along = ranges[-1]
    rows = _rows(ranges, steps)
    columns = next((step.answers for step in steps if step.answers), ())
    together: dict[tuple[str, str, str | None], list[int]] = {}
    for index, each in enumerate(columns):
        together.setdefault((each.part, each.measure, each.ratio_set), []).append(index)
    fields = [_measured(columns, indices, rows) for indices in together.values()]
    title = f"{name}: {' and '.join(each.field for each in ranges)} varied"
    drawn = [*(each for each in fields if each is not None), _open(rows)]
    return curves("variation", title, along.numbers, drawn, along=along.field, unit=along.unit)


def _rows(ranges: tuple[Range, ...], steps: list[Step]) -> Rows:
    """The steps of each value of the slower range, with that value; all, where there is one."""
    if len(ranges) == 1:
        return [("", steps)]
    slow = ranges[0]
    return [
        (str(value), [step for step in steps if step.at[0] == index])
        for index, value in enumerate(slow.values)
    ]


def _measured(columns: tuple[Answer, ...], indices: list[int], rows: Rows) -> Field | None:
    """A measure of a part, a curve for each operation point and each value of the slower range.

    It is in the unit in which its largest value is read; ``None`` if it is no number.
    """
    found = [
        (
            ", ".join(filter(None, (columns[index].point, label))),
            [_answer(each, index) for each in steps],
        )
        for index in indices
        for label, steps in rows
    ]
    numbers = [each for _, row in found for each in row if each is not None]
    if not numbers:
        return None
    unit = reading_unit(max((each.number for each in numbers), key=abs), numbers[0].unit)
    symbol = unit.symbol if unit is not None else numbers[0].unit.removeprefix("1")

    def read(known: Known | None) -> float | None:
        if known is None:
            return None
        return known.number if unit is None else unit.from_si(known.number)

    asked = columns[indices[0]]
    head = f"{asked.part}.{asked.measure}{words.set_text(asked.ratio_set)}"
    lines = [Curve(name or asked.measure, tuple(map(read, row))) for name, row in found]
    return Field(f"{head}, {symbol}" if symbol else head, tuple(lines))


def _answer(step: Step, column: int) -> Known | None:
    """The number of a measure; ``None`` where it is unknown, in words or a truth."""
    value = step.answers[column].value if step.answers else None
    if not isinstance(value, Known) or isinstance(value.value, (str, bool)):
        return None
    return value


def _open(rows: Rows) -> Field:
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
