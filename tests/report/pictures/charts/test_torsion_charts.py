"""Interference diagram and vibratory torque: what is plotted is what the survey found."""

import math

import pytest

from checker.report.pictures.interference import interference_diagram
from checker.report.pictures.vibration import vibratory_torque
from checker.train.torsional_survey import SPEEDS
from tests.report.pictures.charts.reading import SVG, part, points, texts, value_at

RPM = 60.0 / math.tau


@pytest.fixture(scope="module")
def diagram(design):
    return interference_diagram(design)


@pytest.fixture(scope="module")
def fields(design):
    return vibratory_torque(design)


def test_bands_lie_at_the_natural_frequencies(design, diagram):
    hertz = value_at(part(diagram, "y"), "y", logarithmic=True)
    low, high = design.survey.modes[0].frequency, design.survey.modes[-1].frequency
    heights = [hertz(y) for _, y in points(part(diagram, "mode-1"))]
    thin = abs(math.log(high[1] / low[1])) < 0.02
    assert min(heights) == pytest.approx(low[1], rel=0.02 if thin else 1e-3)
    assert max(heights) == pytest.approx(high[1], rel=0.02 if thin else 1e-3)


def key(order, of_blades):
    return f"{'blades' if of_blades else 'order'}-{order:g}".replace(".", "-")


def name(order, of_blades):
    return f"blades {order:.3g}" if of_blades else f"order {order:g}"


def test_order_lines_are_the_order_times_the_speed(design, diagram):
    hertz = value_at(part(diagram, "y"), "y", logarithmic=True)
    rpm = value_at(part(diagram, "x"), "x")
    orders = {(each.order, each.of_blades) for each in design.resonances.listed()}
    for order, of_blades in orders:
        line = points(part(diagram, key(order, of_blades)))
        x, y = line[-1]
        assert rpm(x) == pytest.approx(design.survey.top * RPM, abs=0.2)
        for x, y in line[20:]:
            assert hertz(y) == pytest.approx(order * rpm(x) / 60.0, rel=2e-3)


def test_the_strongest_crossings_in_the_range_are_numbered_and_all_are_told(design, diagram):
    idle, listed = design.survey.idle, design.resonances.listed()
    within = [each for each in listed if each.speeds[1] >= idle]
    numbers = [each for each in texts(part(diagram, "crossings")) if each]
    least = 0.1 * min(max(each.torque for each in within), design.survey.excitation.full)
    strong = [each for each in within if each.torque >= least]
    assert sorted(numbers) == sorted(str(index + 1) for index in range(min(12, len(strong))))
    rings = [each for each in part(diagram, "crossings").iter(f"{SVG}circle")]
    assert len(rings) == len(listed)
    for each in listed:
        assert design.resonances.crossing_words(each) in diagram.describes


def test_orders_that_lead_are_named_and_drawn_whole(design, diagram):
    named = [
        each for each in texts(part(diagram, "orders")) if each.startswith(("order ", "blades "))
    ]
    whole = [
        name(*each)
        for each in sorted({(each.order, each.of_blades) for each in design.resonances.listed()})
        if part(diagram, key(*each)).get("stroke-dasharray") is None
    ]
    assert sorted(named) == sorted(whole) != []
    strongest = max(design.resonances.listed(), key=lambda each: each.torque)
    assert name(strongest.order, strongest.of_blades) in named


def test_barred_speeds_are_hatched_where_they_lie(design, diagram):
    rpm = value_at(part(diagram, "x"), "x")
    for index, (low, high) in enumerate(design.barred.proved):
        box = part(diagram, f"barred-{index}")
        start = float(box.get("x"))
        assert rpm(start) == pytest.approx(low * RPM, abs=0.2)
        width = float(box.get("width"))
        assert width == 2.0 or rpm(start + width) == pytest.approx(high * RPM, abs=0.2)


def test_operation_points_stand_at_their_speeds(design, diagram):
    rpm = value_at(part(diagram, "x"), "x")
    drawn = {
        each.text: rpm(float(each.get("x"))) for each in part(diagram, "points").iter(f"{SVG}text")
    }
    survey = design.survey
    stated = {name: float(survey.speed[index]) * RPM for name, index in survey.points.items()}
    assert drawn == pytest.approx(stated, abs=0.2)


def test_torques_are_those_of_the_survey_at_the_speed_of_the_part(design, fields):
    survey = design.survey
    joints = [
        i for i, node in enumerate(survey.model.nodes) if node.kind in ("damper", "clutch", "mesh")
    ]
    for joint in joints:
        ratio = survey.model.nodes[joint].ratio.number
        rpm = value_at(part(fields, f"x-{joint}"), "x")
        torque = value_at(part(fields, f"y-{joint}"), "y")
        pixel = abs(torque(1.0) - torque(0.0))
        for key, values in (("alternating", survey.alternating), ("mean", survey.carried)):
            drawn = dict(points(part(fields, f"{key}-{joint}")))
            for index in (0, SPEEDS - 1):
                speed = float(survey.speed[index]) * RPM
                y = next(y for x, y in drawn.items() if abs(rpm(x) - speed) < 0.5)
                assert torque(y) == pytest.approx(values[joint, index] * ratio, abs=0.02 * pixel)
            most = float(abs(values[joint, :SPEEDS]).max()) * ratio
            assert max(map(torque, drawn.values())) == pytest.approx(most, abs=0.2 * pixel)


def test_allowables_stand_in_the_picture_or_above_it(design, fields):
    limits = {}
    for each in design.barred.limits:
        if each.allowed is not None and each.kind != "shaft":
            for joint in each.nodes:
                least = limits.get((joint, each.on), math.inf)
                limits[joint, each.on] = min(least, each.allowed)
    for (joint, kind), limit in limits.items():
        own = limit * design.survey.model.nodes[joint].ratio.number
        lines = part(fields, f"joint-{joint}").findall(f"*[@id='{fields.name}-{kind}-{joint}']")
        for line in lines:
            torque = value_at(part(fields, f"y-{joint}"), "y")
            pixel = abs(torque(1.0) - torque(0.0))
            assert torque(points(line)[0][1]) == pytest.approx(own, abs=0.02 * pixel)
        said = texts(part(fields, f"joint-{joint}"))
        assert lines or any(text.endswith("↑") for text in said)
