"""The picture of the bearings against the numbers it shows."""

import pytest

from checker.known import Known
from checker.report.pictures.bearing import bearing_loads
from tests.report.pictures.charts.reading import SVG, part, value_at


def test_marks_stand_at_the_forces(design):
    picture = bearing_loads(design)
    if picture is None:
        pytest.skip("this drive does not show its forces")
    force = value_at(part(picture, "x"), "x")
    for index, bearing in enumerate(design.subjects.all("bearing")):
        circles = part(picture, f"row-{index}").iter(f"{SVG}circle")
        shown = sorted(force(float(each.get("cx"))) for each in circles)
        expected = sorted(
            abs(value.number) / 1000.0
            for _, value in design.over_points("radial_force", bearing)
            if isinstance(value, Known) and value.number != 0.0
        )
        assert shown == pytest.approx(expected, abs=0.02 * max(expected, default=1.0) + 0.01)


def test_the_words_name_every_bearing(design):
    picture = bearing_loads(design)
    if picture is None:
        pytest.skip("this drive does not show its forces")
    for bearing in design.subjects.all("bearing"):
        assert f"{bearing.name}: " in picture.describes


def test_nothing_is_drawn_where_nothing_is_known(little):
    assert bearing_loads(next(iter(little.designs.values()))) is None
