"""Room between parts on neighbouring axes, against distances by hand and by shapely."""

import datetime
from pathlib import Path

import pytest
import shapely

from checker.known import Known, Unknown
from checker.mechanics import clearance
from checker.review.review import review_spec
from checker.review.rulebook import Rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"


def solved(name, *changes):
    text = (EXAMPLES / f"{name}.yaml").read_text()
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    source = text.encode()
    return review_spec(source, name, Rulebook(()), datetime.date(2026, 6, 1)).designs[None]


def room(design, name):
    return design.measure("room", design.subjects.the("bearing", name))


def test_gap_against_shapely():
    one = shapely.Point(0.0, 0.0).buffer(31.0, quad_segs=512)
    other = shapely.Point(40.0, 71.055).buffer(42.5, quad_segs=512)
    distance = clearance.axis_distance(0.0, 0.0, 40.0, 71.055)
    assert clearance.gap(distance, 31.0, 42.5) == pytest.approx(one.distance(other), abs=1e-3)


def test_bearings_side_by_side_by_hand():
    # 53.4 mm between the axes, 55/2 and 62/2 mm of bearing: 5.1 mm too little.
    side_by_side = solved("tansy", ("station: 69 mm", "station: 84 mm"))
    assert room(side_by_side, "input_rear").number == pytest.approx(-5.1e-3, abs=1e-6)
    assert room(solved("tansy"), "input_rear").number >= 3e-3


@pytest.mark.parametrize("name", ["marram", "tansy", "sorrel"])
def test_the_healthy_drives_can_be_put_together(name):
    design = solved(name)
    for kind, measure in (("bearing", "room"), ("gear", "gear_room")):
        for subject in design.subjects.all(kind):
            found = design.measure(measure, subject)
            assert isinstance(found, Unknown) or found.number > 0.0, subject.label


def test_what_stands_alone_has_no_neighbour():
    design = solved("marram")
    subject = design.subjects.the("bearing", "carrier_front")
    assert design.measure("has_neighbour", subject).value is False


def test_a_part_without_size_leaves_the_room_open_but_known_at_best():
    design = solved(
        "tansy", ("station: 69 mm", "station: 84 mm"), ("outside: 72 mm", "outside: unknown")
    )
    found = room(design, "input_rear")
    assert isinstance(found, Unknown)
    assert isinstance(found.at_best, Known)
    assert found.at_best.number == pytest.approx(-5.1e-3, abs=1e-6)
