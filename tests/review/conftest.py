"""A small spec and rulebooks of a few rules for tests of the engine."""

import datetime
import textwrap

import pytest

from checker.review.review import review_spec
from checker.review.rulebook import Rulebook, rules_of
from checker.spec.document import read_document

DAY = datetime.date(2026, 6, 1)
SPEC = """\
thrustline: 1
drive: {name: Test, ratio: 2.5}
engine: {drives: in, rotation: clockwise, internal_reduction: none}
operation:
  - {name: cruise, engine_speed: 5000 rpm, power: 40 kW, oil_temperature: 90 degC}
  - {name: climb, engine_speed: 5500 rpm, power: 50 kW, oil_temperature: 105 degC}
shafts: {in: {}, out: {}}
gears:
  a: {shaft: in, teeth: 24, module: 3 mm, pressure_angle: 20 deg, helix: none}
  b: {shaft: out, teeth: 60, module: 3 mm, pressure_angle: 20 deg, helix: none}
meshes: {first: {driver: a, driven: b, centre_distance: 126 mm}}
propeller: {shaft: out, rotation: anticlockwise}
"""
RULE = """\
- id: test.rule
  title: A rule
  looks_at: {looks_at}
  measure: {measure}
  limits: {limits}
  why: Because.
  remedy: Change it.
  sources: [{{kind: practice, cite: "common practice, no source"}}]
  wrong_when: none known
"""


def rulebook_of(looks_at, measure, limits, more="", rule_id="test.rule"):
    """A rulebook of one rule."""
    text = RULE.format(looks_at=looks_at, measure=measure, limits=limits).replace(
        "test.rule", rule_id
    )
    body = textwrap.indent(text + textwrap.indent(textwrap.dedent(more), "  "), "  ")
    document = read_document(f"family: test\nabout: test\nrules:\n{body}".encode(), "test.yaml")
    return Rulebook(tuple(rules_of(document, "test")))


@pytest.fixture
def rulebook():
    """Builds a rulebook of one rule."""
    return rulebook_of


@pytest.fixture
def review():
    """Reviews the small spec, changed by replacements, with a rulebook."""

    def run(book, *changes, more=""):
        text = SPEC
        for before, after in changes:
            assert before in text
            text = text.replace(before, after)
        return review_spec((text + more).encode(), "test.yaml", book, DAY)

    return run
