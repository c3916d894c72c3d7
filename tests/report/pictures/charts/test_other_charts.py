"""Margins, heat, shafts, paths and curves: what is plotted is what the measures say."""

import pytest

from checker.known import Unknown
from checker.measures import flows
from checker.report import words
from checker.report.pictures.chart import Drawing
from checker.report.pictures.curves import Curve, Field, curves
from checker.report.pictures.heat import heat_balance
from checker.report.pictures.margins import margins
from checker.report.pictures.oil_ways import draw_ways
from checker.report.pictures.paths import vent_and_oil_paths
from checker.report.pictures.shaft import greatest_point, shaft_diagrams
from tests.report.pictures.charts.reading import SVG, parsed, part, points, texts, value_at


def _marks(element):
    """Marks of a chart: discs and rings, and filled corners; not rules or crosses."""
    shapes = [each for each in element.iter(f"{SVG}path") if each.get("fill") != "none"]
    return len(shapes) + len(list(element.iter(f"{SVG}circle")))


def test_every_margin_has_a_mark_and_every_family_its_counts(review):
    picture = margins(review)
    judged = [each for each in review.findings if each.outcome != "does not apply"]
    relative = [each for each in judged if words.margin_is_relative(each)]
    assert _marks(part(picture, "relative")) == len(relative)
    for family in {each.rule.family for each in judged}:
        of_family = [each.outcome for each in judged if each.rule.family == family]
        said = f"{family}: {of_family.count('meets')} meets, {of_family.count('falls short')} falls"
        assert said in picture.describes


def test_marks_stand_on_the_side_of_the_limit_where_the_judgement_is(review):
    picture = margins(review)
    group = part(picture, "relative")
    limit = next(each for each in group.iter(f"{SVG}path") if each.get("stroke") == "var(--ink)")
    at = points(limit)[0][0]
    for each in group.iter(f"{SVG}path"):
        if each.get("fill") != "none":
            xs = [x for x, _ in points(each)]
            assert (min(xs) + max(xs)) / 2 <= at + 0.01  # only what falls short is filled
    for each in group.iter(f"{SVG}circle"):
        is_open = each.get("fill") == "var(--ground)"
        assert (float(each.get("cx")) >= at - 0.01) == is_open


@pytest.fixture
def balance(design):
    """The picture of the heat; a spec that does not show it has none."""
    picture = heat_balance(design)
    if any(isinstance(flows.heat_balance(design, point), Unknown) for point in design.points):
        assert picture is None
        pytest.skip("the heat of this design is not shown")
    return picture


@pytest.fixture
def path_picture(design):
    """The picture of vent and oil at the first point; a spec that does not show both has none."""
    found = flows.vent_line(design, design.points[0]), flows.oil_ways(design, design.points[0])
    picture = vent_and_oil_paths(design, design.points[0])
    assert (picture is None) == all(isinstance(each, Unknown) for each in found)
    return picture, *found


def test_bars_are_as_long_as_the_heat(design, balance):
    picture = balance
    balances = [flows.heat_balance(design, point) for point in design.points]
    bars = [
        (
            float(each.get("width")),
            round(sum(one.watts for one in balance.sinks if one.name == "case")),
        )
        for row, balance in enumerate(balances)
        for each in [part(picture, f"out-0-{row}")]
    ]
    scale = bars[0][0] / bars[0][1]
    for width, watts in bars:
        assert width == pytest.approx(watts * scale, rel=0.02, abs=0.1)


def test_the_oil_stands_at_its_temperature_against_its_limit(design, balance):
    picture = balance
    celsius = value_at(part(picture, "x"), "x")
    limit = design.measure("oil_temperature_limit", design.subjects.the("lubrication")).number
    assert celsius(points(part(picture, "limit"))[0][0]) == pytest.approx(limit - 273.15, abs=0.1)
    for row, point in enumerate(design.points):
        oil = flows.heat_balance(design, point).oil_temperature
        mark = next(iter(part(picture, f"oil-{row}")))
        is_disc = mark.tag == f"{SVG}circle"
        x = float(mark.get("cx")) if is_disc else points(mark)[0][0]
        assert celsius(x) == pytest.approx(oil - 273.15, abs=0.1)
        assert is_disc == (oil <= limit)


def test_moment_and_torque_along_a_shaft_are_those_of_the_reactions(design):
    drawn = 0
    for shaft in design.subjects.all("shaft"):
        point = greatest_point(design, shaft)
        if point is None:
            continue
        drawn += 1
        picture = shaft_diagrams(design, shaft, point)
        mm = value_at(part(picture, "x"), "x")
        moment = value_at(part(picture, "y-bending"), "y")
        pixel = abs(moment(1.0) - moment(0.0))
        line = [(mm(x), moment(y)) for x, y in points(part(picture, "bending"))]
        case = design.reactions.cases.points[point.name]
        stations = design.reactions.diagram(shaft.name, case)
        for station, bending, _ in stations:
            near = [value for x, value in line if abs(x - station * 1000) < 0.2]
            assert min(abs(value - bending) for value in near) < 0.05 * pixel
        most = max(value for _, value in line)
        assert most == pytest.approx(max(each[1] for each in stations), abs=0.05 * pixel)
    assert drawn >= 3


def test_a_shaft_whose_loads_are_unknown_is_not_drawn(little):
    design = next(iter(little.designs.values()))
    for shaft in design.subjects.all("shaft"):
        assert greatest_point(design, shaft) is None
        assert all(shaft_diagrams(design, shaft, point) is None for point in design.points)


def test_the_vent_runs_along_its_heights_with_its_pressures(path_picture):
    picture, line, _ = path_picture
    if isinstance(line, Unknown):
        assert "air" not in picture.describes
        return
    along = value_at(part(picture, "along"), "x")
    height = value_at(part(picture, "height"), "y")
    drawn = [(along(x), height(y)) for x, y in points(part(picture, "line"))]
    for (far, high), node in zip(drawn, line.nodes, strict=True):
        assert far == pytest.approx(node.along, abs=2e-3)
        assert high == pytest.approx(node.height, abs=2e-3)


def test_every_way_of_the_oil_is_drawn_from_left_to_right(path_picture):
    picture, _, ways = path_picture
    lines = list(part(picture, "ways"))
    assert len(lines) == len(ways)
    for line, way in zip(lines, ways, strict=True):
        start, *_, end = points(line)
        assert start[0] < end[0]
        assert (line.get("stroke-dasharray") is None) == (way.runs is True)
        assert f"Oil from {way.source} to {way.to}: {way.kind}" in picture.describes


def test_oil_that_runs_in_a_circle_is_drawn_once_for_each_place():
    ways = tuple(
        flows.OilWay(source, to, "pipe", None, runs)
        for source, to, runs in (
            ("a", "b", True),
            ("b", "a", None),
            ("b", "c", False),
            ("c", "c", True),
        )
    )
    drawing = Drawing("circle", "A circle")
    drawing.height = draw_ways(drawing, ways, 0.0)
    picture = drawing.picture("")
    bold = [each.text for each in part(picture, "places").iter() if each.get("font-weight")]
    assert bold == ["a", "b", "c"]
    assert len(list(part(picture, "ways"))) == 4


def test_curves_are_plotted_with_gaps_where_there_is_nothing():
    field = Field(
        "Ratio", (Curve("one", (1.0, 2.0, None, 4.0)), Curve("two", (4.0, 3.0, 2.0, 1.0)))
    )
    picture = curves(
        "test", "A test", (10.0, 20.0, 30.0, 40.0), (field,), along="speed", unit="rpm"
    )
    x, y = value_at(part(picture, "x"), "x"), value_at(part(picture, "y-0"), "y")
    marks = [
        (x(float(each.get("cx"))), y(float(each.get("cy"))))
        for each in part(picture, "curve-0-0").iter(f"{SVG}circle")
    ]
    assert [each for mark in marks for each in mark] == pytest.approx(
        [10, 1, 20, 2, 40, 4], abs=0.01
    )
    assert len([each for each in part(picture, "curve-0-0") if each.tag == f"{SVG}path"]) == 1
    assert {"one", "two"} <= set(texts(parsed(picture)))


def test_a_single_value_makes_a_picture():
    picture = curves("test", "A test", (5.0,), (Field("y", (Curve("one", (None,)),)),), along="x")
    assert "none" in picture.describes
