"""From metres of the drive to pixels of a sheet, and what shows the scale."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, log10

from checker.report.pictures.svg import Pen, Point, Sheet
from checker.spec.units import show

_LONGEST_BAR = 160.0


@dataclass(frozen=True, slots=True)
class Frame:
    """A scale, and where the origin stands; upwards on the drive is upwards on the sheet.

    Attributes:
        scale: pixels for a metre.
        origin: the point of the sheet at which both coordinates are zero.
    """

    scale: float
    origin: Point

    def to(self, x: float, y: float) -> Point:
        """The point of the sheet for a place on the drive."""
        return self.origin[0] + self.scale * x, self.origin[1] - self.scale * y


def fitted(corners: Sequence[Point], corner: Point, size: Point) -> Frame:
    """The frame that shows every given place, as large as a rectangle of the sheet allows.

    Args:
        corners: places on the drive, in metres.
        corner: upper left corner of the rectangle.
        size: its width and height.
    """
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    low, high = min(y for _, y in corners), max(y for _, y in corners)
    least = 1e-3  # a drive without any extent still gets a scale
    scale = min(size[0] / max(right - left, least), size[1] / max(high - low, least))
    spare = 0.5 * (size[0] - scale * (right - left))
    return Frame(scale, (corner[0] + spare - scale * left, corner[1] + scale * high))


def scale_bar(sheet: Sheet, frame: Frame, at: Point) -> None:
    """A bar of a round length with that length beside it."""
    length = _round_length(_LONGEST_BAR / frame.scale)
    x, y = at
    end = x + frame.scale * length
    sheet.line((x, y), (end, y), Pen("ink", 2.0), part="scale-bar")
    for each in (x, end):
        sheet.line((each, y - 4.0), (each, y + 4.0), Pen("ink", 1.0))
    sheet.text((end + 8.0, y + 4.0), show(length, "m"))


def up_arrow(sheet: Sheet, at: Point) -> None:
    """Which way is up."""
    x, y = at
    sheet.arrow(((x, y), (x, y - 30.0)), Pen("ink", 1.2))
    sheet.text((x + 7.0, y - 14.0), "up")


def _round_length(longest: float) -> float:
    """The greatest of 1, 2, 5, 10 ... of a decimal unit that is not longer."""
    unit: float = 10.0 ** floor(log10(longest))
    return next(step * unit for step in (5.0, 2.0, 1.0) if step * unit <= longest * (1 + 1e-9))
