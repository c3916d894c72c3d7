"""Words beside a drawing, each led to the point that they speak of."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker.report.pictures.svg import LINE, Pen, Point, Sheet


@dataclass(frozen=True, slots=True)
class Callout:
    """Words beside a drawing and the point they speak of."""

    at: Point
    lines: tuple[str, ...]


def column(
    sheet: Sheet, callouts: Sequence[Callout], x: float, top: float, *, bold: int = 1
) -> float:
    """Callouts below each other, each as near its height as the others let it.

    Returns:
        where the column ends.
    """
    ordered = sorted(callouts, key=lambda each: (each.at[1], each.at[0]))
    for each in ordered:
        tall = LINE * len(each.lines)
        start = max(top, each.at[1] - 0.5 * tall)
        middle = start + 0.5 * LINE
        sheet.path((each.at, (x - 12.0, middle), (x - 4.0, middle)), Pen("faint", 0.8))
        sheet.circle(each.at, 1.8, Pen("faint", 0.8, fill="faint"))
        top = sheet.lines((x, start + 0.8 * LINE), each.lines, bold=bold) - 0.8 * LINE + 8.0
    return top
