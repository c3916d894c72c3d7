"""A sheet on which a picture is drawn: shapes and words as an SVG element tree.

Text reaches the tree as text and is escaped when it is written. Colours are given by their name in
the palette and written as variables. Every word keeps its place to itself: the sheet remembers the
boxes that its words fill, by an estimate of 0.6 em for a character.
"""

import textwrap
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import atan2, cos, hypot, sin
from xml.etree import ElementTree
from xml.etree.ElementTree import Element, SubElement

from checker.report.pictures.palette import LIGHT
from checker.report.pictures.picture import Picture
from checker.text import plain

Point = tuple[float, float]

WIDTH = 720.0
"""Natural width of a picture in pixels."""

SIZE = 12.0
"""Usual size of letters in pixels."""

LINE = 16.0
"""From one line of words to the next."""

_EM = 0.6
_WIDE = 1.0
_ARROW_HEAD = (9.0, 3.5)


@dataclass(frozen=True, slots=True)
class Box:
    """What a word or mark takes up on the sheet."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        """Whether two boxes overlap."""
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom


@dataclass(frozen=True, slots=True)
class Pen:
    """How a shape is drawn; colours by their name in the palette.

    Attributes:
        dash: lengths of dashes and gaps, as SVG writes them; empty for a full line.
        hatch: name of a hatching of the sheet that fills the shape.
    """

    stroke: str = "ink"
    width: float = 1.0
    dash: str = ""
    fill: str = "none"
    hatch: str = ""


def number(value: float) -> str:
    """A coordinate to a hundredth of a pixel, the same on every machine.

    >>> number(3.0), number(-0.001), number(2.345678)
    ('3', '0', '2.35')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def colour(name: str) -> str:
    """The variable of a palette colour.

    Raises:
        KeyError: the palette has no such colour.
    """
    if name == "none":
        return name
    if name not in LIGHT:
        raise KeyError(name)
    return f"var(--{name})"


def width_of(text: str, size: float = SIZE) -> float:
    """Estimated width of a text in pixels; letters of East Asian width count a full em."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    return size * (_EM * (len(text) - wide) + _WIDE * wide)


def cut(text: str, room: float, size: float = SIZE) -> str:
    """A text harmless to print, with its end left out where it does not fit the room."""
    text = plain(text)
    if width_of(text, size) <= room:
        return text
    while text and width_of(text + "…", size) > room:
        text = text[:-1]
    return text.rstrip() + "…"


def wrapped(text: str, room: float, size: float = SIZE) -> list[str]:
    """A text harmless to print, in lines that fit the room."""
    lines = textwrap.wrap(plain(text), max(8, int(room / (_EM * size))))
    return [cut(line, room, size) for line in lines]


class Sheet:
    """A picture in the making.

    Attributes:
        name: name of the picture, with which its ids begin.
        root: the ``<svg>`` element.
        taken: boxes of the words that stand on it.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        self.root = Element("svg", {"xmlns": "http://www.w3.org/2000/svg", "role": "img"})
        self.root.set("aria-labelledby", f"{self.identity('title')} {self.identity('words')}")
        self._title = SubElement(self.root, "title", {"id": self.identity("title")})
        self._words = SubElement(self.root, "desc", {"id": self.identity("words")})
        self._definitions = SubElement(self.root, "defs")
        self.taken: list[Box] = []

    def identity(self, part: str) -> str:
        """An id of a part of this picture."""
        return f"{self.name}-{part}"

    def hatching(self, part: str, *, stroke: str = "faint", gap: float = 6.0) -> str:
        """Define slanting lines to fill shapes with, and return their name."""
        pattern = SubElement(
            self._definitions,
            "pattern",
            {
                "id": self.identity(part),
                "width": number(gap),
                "height": number(gap),
                "patternUnits": "userSpaceOnUse",
                "patternTransform": "rotate(45)",
            },
        )
        SubElement(
            pattern, "path", {"d": f"M0 0V{number(gap)}", "stroke": colour(stroke), "fill": "none"}
        )
        return part

    def window(self, part: str, corner: Point, size: Point) -> Element:
        """A group that shows only what lies within a rectangle."""
        clip = SubElement(self._definitions, "clipPath", {"id": self.identity(part)})
        SubElement(clip, "rect", _rectangle(corner, size))
        return SubElement(self.root, "g", {"clip-path": f"url(#{self.identity(part)})"})

    def path(
        self,
        points: Iterable[Point],
        pen: Pen,
        *,
        closed: bool = False,
        part: str = "",
        within: Element | None = None,
    ) -> None:
        """A line through points; ``part`` gives it an id."""
        steps = "L".join(f"{number(x)} {number(y)}" for x, y in points)
        self._shape("path", {"d": f"M{steps}{'Z' if closed else ''}"}, pen, part, within)

    def line(
        self, start: Point, end: Point, pen: Pen, *, part: str = "", within: Element | None = None
    ) -> None:
        """A straight line."""
        self.path((start, end), pen, part=part, within=within)

    def circle(
        self,
        centre: Point,
        radius: float,
        pen: Pen,
        *,
        part: str = "",
        within: Element | None = None,
    ) -> None:
        """A full circle."""
        x, y = centre
        place = {"cx": number(x), "cy": number(y), "r": number(radius)}
        self._shape("circle", place, pen, part, within)

    def rectangle(self, corner: Point, size: Point, pen: Pen, *, part: str = "") -> None:
        """A rectangle from its upper left corner."""
        self._shape("rect", _rectangle(corner, size), pen, part, None)

    def arrow(self, points: Sequence[Point], pen: Pen, *, part: str = "") -> None:
        """A line through points with a head at its end."""
        (x0, y0), (x, y) = points[-2], points[-1]
        way = atan2(y - y0, x - x0)
        length, half = _ARROW_HEAD
        back = (x - length * cos(way), y - length * sin(way))
        side = (half * sin(way), -half * cos(way))
        self.path((*points[:-1], back), pen, part=part)
        barbs = [(back[0] + turn * side[0], back[1] + turn * side[1]) for turn in (1.0, -1.0)]
        self.path(((x, y), *barbs), Pen(pen.stroke, 1.0, fill=pen.stroke), closed=True)

    def text(
        self,
        at: Point,
        text: str,
        *,
        anchor: str = "start",
        size: float = SIZE,
        ink: str = "ink",
        bold: bool = False,
    ) -> None:
        """One line of words, its base line at a point, with a rim that parts it from lines."""
        text = plain(text)
        attributes = {
            "x": number(at[0]),
            "y": number(at[1]),
            "font-size": number(size),
            "fill": colour(ink),
            "stroke": colour("ground"),
            "stroke-width": "3",
            "stroke-linejoin": "round",
            "paint-order": "stroke",
        }
        if anchor != "start":
            attributes["text-anchor"] = anchor
        if bold:
            attributes["font-weight"] = "600"
        SubElement(self.root, "text", attributes).text = text
        self.taken.append(text_box(at, text, anchor, size))

    def lines(self, at: Point, lines: Iterable[str], *, ink: str = "ink", bold: int = 0) -> float:
        """Lines below each other, the first ones bold; returns where the next would stand."""
        x, y = at
        for index, line in enumerate(lines):
            self.text((x, y), line, ink=ink, bold=index < bold)
            y += LINE
        return y

    def notes(self, top: float, sentences: Iterable[str]) -> float:
        """Sentences over the whole width; returns where the next would stand."""
        room = WIDTH - 2 * LINE
        for sentence in sentences:
            top = self.lines((LINE, top), wrapped(sentence, room), ink="faint") + 2.0
        return top

    def balloon(self, text: str, anchor: Point, spots: Iterable[Point]) -> None:
        """A number in a circle at the first free spot, with a leader to what it names."""
        radius = 9.0
        for x, y in spots:
            box = Box(x - radius - 1, y - radius - 1, x + radius + 1, y + radius + 1)
            if not any(box.meets(each) for each in self.taken):
                break
        away = hypot(x - anchor[0], y - anchor[1])
        if away > radius:
            share = 1.0 - radius / away
            near = (anchor[0] + share * (x - anchor[0]), anchor[1] + share * (y - anchor[1]))
            self.line(anchor, near, Pen("ink", 0.8))
            self.circle(anchor, 1.5, Pen("ink", 0.8, fill="ink"))
        self.circle((x, y), radius, Pen("ink", 1.0, fill="ground"))
        self.text((x, y + 4.0), text, anchor="middle", size=11.0)
        self.taken.append(box)

    def picture(self, title: str, describes: str, height: float) -> Picture:
        """The finished picture."""
        title, describes = plain(title), plain(describes)
        self._title.text = title
        self._words.text = describes
        if not len(self._definitions):
            self.root.remove(self._definitions)
        for name, value in (("width", WIDTH), ("height", height)):
            self.root.set(name, number(value))
        self.root.set("viewBox", f"0 0 {number(WIDTH)} {number(height)}")
        self.root.set("font-family", "system-ui, sans-serif")
        svg = ElementTree.tostring(self.root, encoding="unicode")
        return Picture(self.name, title, describes, svg)

    def _shape(
        self, tag: str, place: dict[str, str], pen: Pen, part: str, within: Element | None
    ) -> None:
        fill = f"url(#{self.identity(pen.hatch)})" if pen.hatch else colour(pen.fill)
        attributes = {**place, "fill": fill, "stroke": colour(pen.stroke)}
        if pen.stroke != "none":
            attributes["stroke-width"] = number(pen.width)
        if pen.dash:
            attributes["stroke-dasharray"] = pen.dash
        if part:
            attributes["id"] = self.identity(part)
        SubElement(self.root if within is None else within, tag, attributes)


def text_box(at: Point, text: str, anchor: str, size: float) -> Box:
    """The box that a line of words fills, by estimate."""
    x, y = at
    wide = width_of(text, size)
    left = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * wide
    return Box(left, y - size, left + wide, y + 0.25 * size)


def _rectangle(corner: Point, size: Point) -> dict[str, str]:
    names = ("x", "y", "width", "height")
    return {name: number(value) for name, value in zip(names, (*corner, *size), strict=True)}
