"""The JSON report: its published form, its content, and the same bytes each time."""

import json
import math
import re
from pathlib import Path

import jsonschema
import pytest

from checker.known import Known, compute
from checker.measures.registry import Measure, measures
from checker.mechanics import kinematics
from checker.report.json_report import entry, json_report
from checker.report.json_schema import report_schema
from checker.report.results import Failed
from checker.spec.problem import Problem, SpecUnreadable

SETS = b"""ratio_sets:
  short: {ratio: 2.5}
  long: {ratio: 2.4, gears: {wheel: {teeth: 58}}}
"""


@pytest.fixture
def written(book):
    """The report on some results, checked against its schema, as text and as data."""
    validator = jsonschema.Draft202012Validator(report_schema())

    def write(*results):
        text = json_report([entry(result) for result in results], book, "2026-06-01")
        data = json.loads(text, parse_constant=lambda name: pytest.fail(f"{name} is no JSON"))
        validator.validate(data)
        return text, data

    return write


@pytest.fixture
def data(written, review):
    return written(review)[1]["reviews"][0]


def found(data, rule, part=None):
    return next(
        each for each in data["findings"] if each["rule"] == rule and part in (None, each["part"])
    )


def test_schema_is_the_published_one():
    # A change of this file is a change of the contract: count up SCHEMA_VERSION unless keys are
    # only added. To renew it: thrustline schema report > tests/report/golden/report_schema.json
    published = (Path(__file__).parent / "golden" / "report_schema.json").read_text("utf-8")
    assert report_schema() == json.loads(published)
    jsonschema.Draft202012Validator.check_schema(report_schema())


def test_every_object_of_the_schema_is_closed():
    def objects(node):
        if isinstance(node, dict):
            if "properties" in node and node.get("type") == "object":
                yield node
            for inner in node.values():
                yield from objects(inner)
        elif isinstance(node, list):
            for inner in node:
                yield from objects(inner)

    closed = list(objects(report_schema()))
    assert len(closed) > 15
    for each in closed:
        assert each["additionalProperties"] is False
        assert each["required"] == list(each["properties"])
        assert all(isinstance(inner, dict) and inner for inner in each["properties"].values())


def test_finding_holds_value_limit_margin_and_places(data):
    short = found(data, "sheet.ratio")
    assert (short["outcome"], short["level"], short["part"]) == ("falls short", "caution", "drive")
    assert short["value"] == {"value": pytest.approx(0.04), "unit": "1", "shown": "0.04"}
    assert short["limit"]["text"] == "at most 0.005"
    assert short["margin"]["value"] == pytest.approx(-7.0)
    assert short["margin"]["relative"] is True
    assert short["place"] == {"path": "drive.ratio", "line": 4, "column": 74}
    assert [each["path"] for each in short["related"]] == [
        "gears.pinion.teeth",
        "gears.wheel.teeth",
    ]


def test_margin_of_a_temperature_is_in_kelvin(data):
    hot = found(data, "sheet.oil-temperature")
    assert hot["margin"] == {
        "value": pytest.approx(-8.0),
        "relative": False,
        "unit": "ΔK",
        "text": "over by 8 K",
    }


def test_every_outcome_is_told_apart(data):
    assert found(data, "sheet.broken")["reason"].startswith("ZeroDivisionError")
    assert found(data, "sheet.peak")["at_best"] is True
    assert found(data, "sheet.face", "gears.wheel")["missing"] == ["gears.wheel.face_width"]
    assert found(data, "sheet.clutch-damped")["outcome"] == "does not apply"
    deviation = found(data, "sheet.sense")["deviation"]
    assert deviation["by"] == "A. Builder"
    assert (deviation["date"], deviation["expires"]) == ("2026-05-01", "2026-12-31")
    counts = data["counts"]
    assert sum(counts[each] for each in counts if each != "levels") == len(data["findings"])
    assert counts["levels"]["warning"] == {
        "broken": 0,
        "falls short": 2,
        "not shown": 3,
        "deviation": 0,
    }


def test_derivation_can_be_followed_to_the_spec(data):
    """The ratio of 60 over 24 teeth is 2.5; stated are 2.4, so they differ by 4 % (by hand)."""
    steps = data["steps"]
    assert all(inner < number for number, step in enumerate(steps) for inner in step["inputs"])
    last = steps[data["derivations"][found(data, "sheet.ratio")["derivation"]]]
    assert last["formula"].startswith("ΔX = ")
    stated, computed = (steps[number] for number in last["inputs"])
    assert stated["place"]["path"] == "drive.ratio"
    assert (stated["value"], computed["value"]) == (2.4, 2.5)
    assert found(data, "sheet.power")["derivation"] == "drive.power_for_tests@climb"


def test_ratio_sets_have_their_own_derivations(written, review_of, spec):
    data = written(review_of(spec + SETS))[1]["reviews"][0]
    assert [table["ratio_set"] for table in data["tables"]] == ["short", "long"]
    keys = {
        each["ratio_set"]: each["derivation"]
        for each in data["findings"]
        if each["rule"] == "sheet.ratio"
    }
    assert keys == {
        "short": "drive.ratio_disagreement#short",
        "long": "drive.ratio_disagreement#long",
    }


def test_a_number_that_is_not_finite_is_left_to_its_text(written, review_of, spec, monkeypatch):
    measure = Measure(
        "peak_for_tests", "drive", "1", "", False, "", lambda *_: Known(math.inf, "1")
    )
    monkeypatch.setitem(measures(), ("drive", "peak_for_tests"), measure)
    data = written(review_of(spec))[1]["reviews"][0]
    peak = found(data, "sheet.peak")
    assert peak["value"] == {"value": None, "unit": "1", "shown": "inf"}
    assert peak["margin"]["value"] is None


def test_unread_and_failed_files_have_their_own_entries(written, review):
    problem = Problem(("gears", "a"), 3, 4, "'x'", "a number", "unreadable value")
    _, data = written(
        review, SpecUnreadable("b.yaml", (problem,)), Failed("c.yaml", "KeyError: 'x'")
    )
    assert [each["state"] for each in data["reviews"]] == ["reviewed", "unreadable", "failed"]
    assert data["reviews"][1]["problems"][0]["path"] == "gears.a"


def test_the_same_input_gives_the_same_bytes(written, review_of, spec):
    assert written(review_of(spec))[0] == written(review_of(spec))[0]


@pytest.mark.parametrize(
    "text", [r"\e[31mred", r"\u009b2J", r"one\ntwo", "[bold]x", r"\u202egnihton"]
)
def test_text_of_a_spec_is_harmless_even_when_decoded(written, review_of, spec, text):
    source = spec.replace(b"name: Sheet", f'name: "{text}"'.encode())
    source = source.replace(b"{name: climb", f'{{name: "{text}"'.encode())
    report, data = written(review_of(source, "a\x1b[2J\udcff.yaml"))
    unseen = re.compile("[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e]")
    assert not unseen.search(report.removesuffix("\n"))
    assert not unseen.search(data["reviews"][0]["drive"]["name"])
    assert data["reviews"][0]["file"] == r"a\x1b[2J\udcff.yaml"
    report.encode()


def test_a_derivation_may_be_longer_than_the_stack_is_deep(
    written, review_of, spec, book, monkeypatch
):
    def summed(design, drive):
        total = Known(0.0, "1", "q")
        for _ in range(2000):
            total = compute(kinematics.sum_of_shares, total, Known(0.001, "1", "q"))
        return total

    measure = Measure("peak_for_tests", "drive", "1", "", False, "", summed)
    monkeypatch.setitem(measures(), ("drive", "peak_for_tests"), measure)
    data = written(review_of(spec))[1]["reviews"][0]
    last = data["derivations"]["drive.peak_for_tests"]
    assert data["steps"][last]["inputs"] == [last - 2, last - 1]
    assert data["steps"][last]["value"] == pytest.approx(2.0)
