"""Curves over one stated value: fields under each other, lines named at their ends."""

from collections.abc import Sequence
from dataclasses import dataclass

from checker.report.pictures.chart import (
    WIDTH,
    Axis,
    Drawing,
    Point,
    identifier,
    reach,
    shortened,
)
from checker.report.pictures.picture import Picture
from checker.spec.units import show

_LEFT, _RIGHT, _SAID = 62.0, 506.0, 522.0
_FIELD, _BETWEEN, _LINE = 140.0, 44.0, 14.0
_DASHES = ("", "7 4", "2 3", "9 3 2 3", "14 4", "4 2")
_SHAPES = ("disc", "square", "triangle", "diamond", "ring", "cross")


@dataclass(frozen=True, slots=True)
class Curve:
    """A line of a field.

    Attributes:
        name: what it is called at its end.
        values: one for each place along, ``None`` where there is none.
    """

    name: str
    values: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Field:
    """Curves that share an axis.

    Attributes:
        title: what the axis shows, with its unit.
        curves: its lines.
    """

    title: str
    curves: tuple[Curve, ...]


def curves(
    name: str, title: str, x: Sequence[float], ys: Sequence[Field], *, along: str, unit: str = ""
) -> Picture:
    """Draw fields of curves over one axis.

    Args:
        name: of the picture.
        title: of the picture.
        x: the places along, in any order.
        ys: the fields; each curve has a value or a gap for each place.
        along: what runs along.
        unit: its unit.
    """
    drawing = Drawing(identifier(name), title)
    low, high = min(x), max(x)
    across = Axis(*((low, high) if high > low else reach(x, zero=False)), _LEFT, _RIGHT)
    top = 30.0
    for index, field in enumerate(ys):
        height = max(_FIELD, _LINE * len(field.curves))
        shown = [each for curve in field.curves for each in curve.values if each is not None]
        y = Axis(*reach(shown or [0.0], zero=False), top + height, top)
        drawing.text(2.0, top - 14.0, shortened(field.title, WIDTH), bold=True)
        drawing.upright(y, _LEFT, _RIGHT, "", key=f"y-{index}")
        ends: list[tuple[float, float, int, str]] = []
        for number, curve in enumerate(field.curves):
            with drawing.group(f"curve-{index}-{number}"):
                points = _curve(drawing, across, y, x, curve, number)
            right, level = max(points, default=(_RIGHT, top))
            ends.append((level, right, number, curve.name))
        _names(drawing, ends, top, top + height)
        top += height + _BETWEEN
    bottom = top - _BETWEEN + 8.0
    drawing.across(across, bottom, unit)
    drawing.text(_LEFT, bottom + 34.0, shortened(along, WIDTH - _LEFT), colour="faint")
    drawing.height = bottom + 44.0
    return drawing.picture(_words(x, ys, along, unit))


def _curve(
    drawing: Drawing, across: Axis, y: Axis, x: Sequence[float], curve: Curve, number: int
) -> list[Point]:
    """A line with a mark at each value, broken where there is none."""
    colour, dashes, shape = _look(number)
    runs: list[list[Point]] = [[]]
    for place, value in sorted(zip(x, curve.values, strict=True), key=lambda each: each[0]):
        if value is None:
            runs.append([])
        else:
            runs[-1].append((across.at(place), y.at(value)))
    for run in runs:
        if len(run) > 1:
            drawing.path(run, colour=colour, width=1.8, dashes=dashes)
        for spot in run:
            drawing.mark(shape, *spot, colour=colour, size=3.0)
    return [spot for run in runs for spot in run]


def _look(number: int) -> tuple[str, str, str]:
    """Colour, dashes and mark of a curve: each of them tells it from its neighbours."""
    again, which = divmod(number, len(_SHAPES))
    return f"series-{which + 1}", _DASHES[which], _SHAPES[(which + again) % len(_SHAPES)]


def _names(
    drawing: Drawing, ends: list[tuple[float, float, int, str]], top: float, bottom: float
) -> None:
    """The name of each curve beside its end, moved apart where they would touch."""
    y = top - _LINE
    places = []
    for end in sorted(ends):
        y = max(y + _LINE, end[0])
        places.append((y, end))
    over = max(0.0, y - bottom)
    for row, (place, (height, right, number, name)) in enumerate(places):
        colour, _, shape = _look(number)
        level = max(place - over, top + _LINE * row)
        drawing.path([(right + 5.0, height), (_SAID - 8.0, level)], colour="rule", width=0.8)
        drawing.mark(shape, _SAID, level, colour=colour, size=3.0)
        drawing.text(_SAID + 9.0, level + 4.0, shortened(name, WIDTH - _SAID - 9.0))


def _words(x: Sequence[float], ys: Sequence[Field], along: str, unit: str) -> str:
    said = [f"Over {along}: {', '.join(f'{each:g}' for each in x)} {unit}".rstrip() + "."]
    for field in ys:
        for curve in field.curves:
            values = ["none" if each is None else show(each, "1") for each in curve.values]
            said.append(f"{field.title}, {curve.name}: {', '.join(values)}.")
    return " ".join(said)
