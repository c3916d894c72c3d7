"""What flows, as pictures take it: sums and ends agree with the measures."""

import datetime
from pathlib import Path

import pytest

from checker.measures import flows
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ("marram", "tansy", "sorrel")


@pytest.fixture(scope="module", params=NAMES)
def design(request):
    source = (EXAMPLES / f"{request.param}.yaml").read_bytes()
    review = review_spec(source, request.param, shipped_rulebook(), datetime.date(2026, 6, 1))
    return review.designs[None]


def test_heat_in_and_out_are_equal_to_a_part_in_a_thousand_million(design):
    for point in design.points:
        balance = flows.heat_balance(design, point)
        lost = sum(each.watts for each in balance.sources)
        assert lost == pytest.approx(sum(each.watts for each in balance.sinks), rel=1e-9)


def test_vent_pressures_run_from_the_case_to_the_outlet(design):
    the_vent = design.subjects.the("vent")
    for point in design.points:
        line = flows.vent_line(design, point)
        inside = design.measure("inside_pressure", design.subjects.the("drive"), point)
        drop = design.measure("line_drop", the_vent, point)
        assert line.nodes[0].pressure == pytest.approx(inside.number)
        assert line.end_pressure == pytest.approx(inside.number - drop.number)
        assert len(line.nodes) == len(the_vent.raw("path")) + 1


def test_every_stated_way_of_the_oil_is_there(design):
    stated = design.subjects.the("lubrication").raw("paths")
    for point in design.points:
        ways = flows.oil_ways(design, point)
        assert [(way.source, way.to) for way in ways] == [(way.from_, way.to) for way in stated]
        assert all(way.runs is not None for way in ways)
