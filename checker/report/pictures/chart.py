"""Axes, marks and labels of a chart, as SVG that stands in the page.

Every colour is a variable of the palette in a presentation attribute, because the page lets no
picture bring styles of its own. Coordinates are in pixels of the natural width, to a hundredth.
"""

import math
import re
import zlib
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from xml.etree import ElementTree

from checker.report.pictures.picture import Picture
from checker.text import plain

WIDTH = 720.0
SMALL = 11.0
TEXT = 12.0
_LETTER = 0.52
"""Mean width of a letter over the size of the text."""
_VARIABLE = re.compile(r"var\(--([a-z0-9-]+)\)")
_FACES = "Charter, Cambria, Georgia, serif"

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Axis:
    """Where values lie along a picture.

    Attributes:
        low: value at the start.
        high: value at the end.
        start: its pixel.
        end: the pixel of the other.
        logarithmic: whether equal ratios are equal lengths.
    """

    low: float
    high: float
    start: float
    end: float
    logarithmic: bool = False

    def at(self, value: float) -> float:
        """The pixel of a value; beyond the ends it stays at the end."""
        value = min(max(value, self.low), self.high)
        if self.logarithmic:
            share = math.log(value / self.low) / math.log(self.high / self.low)
        else:
            share = (value - self.low) / (self.high - self.low)
        return self.start + share * (self.end - self.start)

    def ticks(self, most: int = 6) -> list[float]:
        """Round values along it."""
        if self.logarithmic:
            first, last = math.floor(math.log10(self.low)), math.ceil(math.log10(self.high))
            rounds = [step * 10.0**power for power in range(first, last + 1) for step in (1, 2, 5)]
            return [each for each in rounds if self.low <= each <= self.high]
        step = _round_step((self.high - self.low) / most)
        first, last = math.ceil(self.low / step - 1e-9), math.floor(self.high / step + 1e-9)
        return [round(index * step, 12) for index in range(first, last + 1)]


def _round_step(least: float) -> float:
    power = 10.0 ** math.floor(math.log10(least))
    return next(
        step * power for step in (1.0, 2.0, 2.5, 5.0, 10.0) if step * power >= 0.999 * least
    )


def reach(values: Sequence[float], *, zero: bool = True) -> tuple[float, float]:
    """Ends of an axis that holds values, with some air; with ``zero`` that is on the axis."""
    low, high = min(values), max(values)
    if zero:
        low, high = min(low, 0.0), max(high, 0.0)
    air = 0.06 * (high - low) or 0.1 * abs(high) or 1.0
    at_zero = zero and high > low
    return (
        low if at_zero and low == 0.0 else low - air,
        high if at_zero and high == 0.0 else high + air,
    )


def identifier(*parts: str | None) -> str:
    """A name fit for ids; parts that differ give names that differ."""
    text = "-".join(part for part in parts if part)
    fit = re.sub(r"[^a-z0-9_]+", "-", text.lower()).strip("-")
    return fit if fit == text else f"{fit[:40]}-{zlib.crc32(text.encode('utf-8', 'replace')):08x}"


def text_width(text: str, size: float = SMALL) -> float:
    """About how wide a text is [px]."""
    return len(text) * size * _LETTER


def shortened(text: str, width: float, size: float = SMALL) -> str:
    """A text harmless to print, cut to about a width [px]."""
    text = plain(text)
    most = max(2, int(width / (size * _LETTER)))
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"


def tick_text(value: float) -> str:
    """A round value as it stands at an axis."""
    return f"{value:.10g}".replace("-", "−")


def thinned(points: Sequence[Point], tolerance: float = 0.15) -> list[Point]:
    """The points of a line that it needs to run where it ran, to a part of a pixel upright."""
    kept = {0, len(points) - 1}
    waiting = [(0, len(points) - 1)]
    while waiting:
        first, last = waiting.pop()
        (x1, y1), (x2, y2) = points[first], points[last]
        slope = (y2 - y1) / (x2 - x1) if x2 != x1 else 0.0
        off = [abs(y - y1 - slope * (x - x1)) for x, y in points[first + 1 : last]]
        if off and max(off) > tolerance:
            middle = first + 1 + off.index(max(off))
            kept.add(middle)
            waiting += [(first, middle), (middle, last)]
    return [points[index] for index in sorted(kept)]


def rows_apart(spans: Sequence[tuple[float, float]], gap: float = 6.0) -> list[int]:
    """The row of each span, from 0, such that none touches another in its row."""
    ends: list[float] = []
    rows = []
    for low, high in spans:
        row = next((row for row, end in enumerate(ends) if low >= end + gap), len(ends))
        if row == len(ends):
            ends.append(high)
        ends[row] = high
        rows.append(row)
    return rows


class Drawing:
    """A picture in the making."""

    def __init__(self, name: str, title: str, height: float = 400.0) -> None:
        self.name = name
        self.title = plain(title)
        self.height = height
        self._root = ElementTree.Element("g")
        self._open = [self._root]

    @contextmanager
    def group(self, key: str) -> Iterator[None]:
        """What is drawn inside belongs together under the id ``name-key``."""
        made = ElementTree.SubElement(self._open[-1], "g", {"id": f"{self.name}-{key}"})
        self._open.append(made)
        yield
        self._open.pop()

    def text(
        self,
        x: float,
        y: float,
        text: str,
        *,
        colour: str = "ink",
        size: float = SMALL,
        anchor: str = "start",
        bold: bool = False,
        over: bool = False,
    ) -> None:
        """A text on its base line; with ``over`` it keeps clear of lines that pass below it."""
        made = self._add("text", x=x, y=y, fill=_var(colour), font_size=size)
        if anchor != "start":
            made.set("text-anchor", anchor)
        if bold:
            made.set("font-weight", "600")
        if over:
            made.set("stroke", _var("ground"))
            made.set("stroke-width", "4")
            made.set("stroke-linejoin", "round")
            made.set("paint-order", "stroke")
        made.text = plain(text)

    def path(
        self,
        points: Sequence[Point],
        *,
        colour: str = "ink",
        width: float = 1.5,
        dashes: str = "",
        closed: bool = False,
        fill: str = "none",
        key: str = "",
    ) -> None:
        """A line through points; with ``key`` it has the id ``name-key``."""
        steps = "L".join(f"{_pixel(x)} {_pixel(y)}" for x, y in points)
        stroke = _var(colour) if width else "none"
        made = self._add("path", d=f"M{steps}{'Z' if closed else ''}", stroke=stroke)
        made.set("fill", fill if fill == "none" or fill.startswith("url(") else _var(fill))
        if width:
            made.set("stroke-width", _pixel(width))
            made.set("stroke-linejoin", "round")
        if dashes:
            made.set("stroke-dasharray", dashes)
        if key:
            made.set("id", f"{self.name}-{key}")

    def box(
        self, x: float, y: float, width: float, height: float, *, fill: str, key: str = ""
    ) -> None:
        """A filled box."""
        made = self._add("rect", x=x, y=y, width=width, height=height)
        made.set("fill", fill if fill.startswith("url(") else _var(fill))
        if key:
            made.set("id", f"{self.name}-{key}")

    def mark(
        self, shape: str, x: float, y: float, *, colour: str = "ink", size: float = 4.0
    ) -> None:
        """A mark: ring, disc, square, triangle, diamond, cross or bar."""
        s = size
        if shape in ("ring", "disc"):
            made = self._add("circle", cx=x, cy=y, r=s, stroke=_var(colour))
            made.set("fill", _var(colour if shape == "disc" else "ground"))
            return
        corners = {
            "square": [(-s, -s), (s, -s), (s, s), (-s, s)],
            "triangle": [(0.0, -1.2 * s), (1.2 * s, s), (-1.2 * s, s)],
            "diamond": [(0.0, -1.3 * s), (1.3 * s, 0.0), (0.0, 1.3 * s), (-1.3 * s, 0.0)],
            "bar": [
                (-0.3 * s, -1.3 * s),
                (0.3 * s, -1.3 * s),
                (0.3 * s, 1.3 * s),
                (-0.3 * s, 1.3 * s),
            ],
        }
        if shape == "cross":
            self.path([(x - s, y - s), (x + s, y + s)], colour=colour)
            self.path([(x - s, y + s), (x + s, y - s)], colour=colour)
            return
        points = [(x + right, y + down) for right, down in corners[shape]]
        self.path(points, colour=colour, width=0.0, closed=True, fill=colour)

    def hatching(self, key: str, colour: str) -> str:
        """A hatching, as the filling of boxes and paths."""
        made = self._add("pattern", width=7.0, height=7.0)
        made.set("id", f"{self.name}-{key}")
        made.set("patternUnits", "userSpaceOnUse")
        made.set("patternTransform", "rotate(45)")
        line = ElementTree.SubElement(made, "path", {"d": "M0 0V7", "stroke": _var(colour)})
        line.set("stroke-width", "2")
        return f"url(#{self.name}-{key})"

    def across(self, axis: Axis, y: float, unit: str, most: int = 6, key: str = "x") -> None:
        """The values of an axis along a base line, the unit behind the last."""
        with self.group(key):
            self.path([(axis.start, y), (axis.end, y)], colour="faint", width=1.0)
            ticks = axis.ticks(most)
            for tick in ticks:
                x = axis.at(tick)
                self.path([(x, y), (x, y + 4.0)], colour="faint", width=1.0)
                self.text(x, y + 16.0, tick_text(tick), colour="faint", anchor="middle")
        x = axis.at(ticks[-1]) + text_width(tick_text(ticks[-1])) / 2.0 + 4.0
        self.text(x, y + 16.0, unit, colour="faint")

    def upright(
        self, axis: Axis, x: float, right: float, unit: str, most: int = 5, key: str = "y"
    ) -> None:
        """The values of an axis left of a field, with faint rules through it to ``right``."""
        with self.group(key):
            ticks = axis.ticks(most)
            for tick in ticks:
                y = axis.at(tick)
                self.path([(x, y), (right, y)], colour="rule", width=0.7)
                self.text(x - 6.0, y + 4.0, tick_text(tick), colour="faint", anchor="end")
        self.text(x - 6.0, min(axis.start, axis.end) - 8.0, unit, colour="faint", anchor="end")

    def picture(self, describes: str) -> Picture:
        """The picture, with the words that say the same."""
        describes = plain(describes)
        width, height = _pixel(WIDTH), _pixel(self.height)
        root = ElementTree.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "role": "img",
                "aria-labelledby": f"{self.name}-title",
                "aria-describedby": f"{self.name}-words",
                "viewBox": f"0 0 {width} {height}",
                "width": width,
                "height": height,
            },
        )
        for tag, key, text in (("title", "title", self.title), ("desc", "words", describes)):
            ElementTree.SubElement(root, tag, {"id": f"{self.name}-{key}"}).text = text
        root.extend(self._root)
        svg = ElementTree.tostring(root, encoding="unicode")
        return Picture(self.name, self.title, describes, svg)

    def _add(self, tag: str, **attributes: str | float) -> ElementTree.Element:
        given = {
            name.replace("_", "-"): each if isinstance(each, str) else _pixel(each)
            for name, each in attributes.items()
        }
        return ElementTree.SubElement(self._open[-1], tag, given)


def standalone(picture: Picture, palette: Mapping[str, str]) -> str:
    """A picture as a file of its own: colours written out, on a ground."""
    svg = _VARIABLE.sub(lambda match: palette[match[1]], picture.svg)
    head, bracket, rest = svg.partition(">")
    ground = f'<rect width="100%" height="100%" fill="{palette["ground"]}"/>'
    return f'{head} font-family="{_FACES}"{bracket}{ground}{rest}\n'


def _var(name: str) -> str:
    return f"var(--{name})"


def _pixel(value: float) -> str:
    return f"{round(value, 2) + 0.0:g}" if abs(value) < 1000.0 else f"{value:.2f}"
