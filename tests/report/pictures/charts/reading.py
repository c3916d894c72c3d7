"""Reading a picture as a person does: values from positions, by the ticks of its axes."""

import math
import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"


def parsed(picture):
    return ElementTree.fromstring(picture.svg)


def part(picture, key):
    """The element with the id of the picture's name and a key."""
    found = parsed(picture).findall(f".//*[@id='{picture.name}-{key}']")
    assert len(found) == 1, key
    return found[0]


def texts(element):
    return [each.text or "" for each in element.iter(f"{SVG}text")]


def points(element):
    """The corners of a path."""
    return [
        tuple(map(float, each.split()))
        for each in re.split("[ML]", element.get("d").rstrip("Z"))[1:]
    ]


def value_at(axis, way, *, logarithmic=False):
    """A function from pixels to values, from the first and last tick of an axis."""
    ticks = [
        (float(each.get(way)) + (-4.0 if way == "y" else 0.0), float(each.text.replace("−", "-")))
        for each in axis.iter(f"{SVG}text")
    ]
    (first, low), (last, high) = ticks[0], ticks[-1]
    if logarithmic:
        low, high = math.log(low), math.log(high)

    def read(pixel):
        value = low + (pixel - first) / (last - first) * (high - low)
        return math.exp(value) if logarithmic else value

    return read
