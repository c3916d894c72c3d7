"""Designs to draw, and what is read back from a drawing without the drawing's own code."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import pytest
import yaml

from checker.review.review import designs_of
from checker.spec.loading import load_spec

EXAMPLES = Path(__file__).parents[3] / "examples"
SVG = "{http://www.w3.org/2000/svg}"


def design_of(source, name="drive.yaml"):
    return next(iter(designs_of(load_spec(source, name)).values()))


@cache
def example(name):
    return design_of((EXAMPLES / f"{name}.yaml").read_bytes(), name)


def edited(name, change):
    """An example after a change of its fields."""
    fields = yaml.safe_load((EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8"))
    change(fields)
    return design_of(yaml.safe_dump(fields, sort_keys=False, allow_unicode=True).encode())


@dataclass(frozen=True)
class Drawn:
    """A picture read back: its elements by id, its words."""

    picture: object
    root: ElementTree.Element

    def part(self, name):
        identity = f"{self.picture.name}-{name}"
        return next(each for each in self.root.iter() if each.get("id") == identity)

    def points(self, name):
        steps = self.part(name).get("d").strip("MZ").split("L")
        return [tuple(map(float, step.split())) for step in steps]

    def circle(self, name):
        part = self.part(name)
        return tuple(float(part.get(each)) for each in ("cx", "cy", "r"))

    @property
    def words(self):
        return [each.text for each in self.root.iter(f"{SVG}text")]

    @property
    def metres_for_pixel(self):
        """By the scale bar and the label beside it."""
        (left, y), (right, _) = self.points("scale-bar")
        label = next(
            each.text
            for each in self.root.iter(f"{SVG}text")
            if float(each.get("x")) > right and abs(float(each.get("y")) - y) < 6.0
        )
        value, unit = label.split()
        assert unit == "mm"
        return float(value) * 1e-3 / (right - left)


@pytest.fixture
def read():
    def reading(picture):
        return Drawn(picture, ElementTree.fromstring(picture.svg))

    return reading


@pytest.fixture
def drawn_example():
    return example


@pytest.fixture
def edit():
    return edited
