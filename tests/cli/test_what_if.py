"""Vary and remedy as commands, on files."""

import csv
import io
import shutil
from pathlib import Path
from xml.etree import ElementTree

import pytest

from checker import cli

EXAMPLES = Path(__file__).parents[2] / "examples"


def run(*arguments) -> int:
    return cli.run([*map(str, arguments), "--on", "2026-06-01"])


@pytest.fixture
def spec(tmp_path):
    return Path(shutil.copy(EXAMPLES / "tansy.yaml", tmp_path))


def test_vary_prints_a_table_and_leaves_the_spec_alone(spec, capsys):
    before = spec.read_bytes()
    asked = ("--measure", "drive.power_reserve", "--steps", "3")
    assert run("vary", spec, "gears.input_pinion.face_width=24..36 mm", *asked) == 0
    out = capsys.readouterr().out
    assert [line.split()[0] for line in out.splitlines() if " mm " in line[:8]] == [
        "24",
        "30",
        "36",
    ]
    assert "(a) drive.power_reserve" in out
    assert spec.read_bytes() == before


def test_vary_draws_curves_beside_its_table(spec, tmp_path, capsys):
    file = tmp_path / "curves.svg"
    asked = ("--measure", "drive.power_reserve", "--steps", "3", "--svg", file)
    assert run("vary", spec, "gears.input_pinion.face_width=24..36 mm", *asked) == 0
    assert "(a) drive.power_reserve" in capsys.readouterr().out
    svg = ElementTree.fromstring(file.read_text(encoding="utf-8"))
    said = [each.text for each in svg.iter("{http://www.w3.org/2000/svg}text")]
    assert "gears.input_pinion.face_width" in said
    assert {"drive.power_reserve", "Open findings", "caution"} <= set(said)


def test_vary_draws_a_curve_for_each_value_of_a_second_field(spec, tmp_path):
    file = tmp_path / "curves.svg"
    ranges = ("operation.cruise.power=20..24 kW", "operation.climb.power=30..40 kW")
    asked = ("--measure", "lubrication.hot_day_temperature@climb", "--steps", "2", "--svg", file)
    assert run("vary", spec, *ranges, *asked) == 0
    svg = file.read_text(encoding="utf-8")
    assert "lubrication.hot_day_temperature, degC" in svg
    assert "climb, 20 kW" in svg
    assert "climb, 24 kW" in svg


def test_curves_that_cannot_be_written_are_a_failure(spec, tmp_path, capsys):
    assert (
        run("vary", spec, "operation.climb.power=30..40 kW", "--steps", "2", "--svg", tmp_path) == 4
    )
    assert "cannot be written" in capsys.readouterr().err


def test_vary_prints_csv(spec, capsys):
    assert (
        run("vary", spec, "operation.climb.power=30..40 kW", "--steps", "2", "--format", "csv") == 0
    )
    head, *rows = csv.reader(io.StringIO(capsys.readouterr().out))
    assert head[:2] == ["operation.climb.power [kW]", "disposition"]
    assert [row[0] for row in rows] == ["30.0", "40.0"]


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["a=1..2", "b=1..2", "c=1..2"], "At most two fields"),
        (["operation.climb.power=1..2 kW", "operation.climb.power=1..2 kW"], "the same field"),
        (["operation.climb.power=1..2 hp"], "the units do not agree"),
        (["operation.climb.power=1..2 kW", "--measure", "gears.none.x"], "There is no part"),
        (["operation.climb.power=1..2 kW", "--steps", "1"], "--steps"),
    ],
)
def test_vary_says_what_is_wrong_with_the_question(spec, capsys, arguments, told):
    assert run("vary", spec, *arguments) == 3
    assert told in capsys.readouterr().err


def test_remedy_of_a_finding_by_rule_and_part(spec, capsys):
    spec.write_text(
        spec.read_text().replace("ground_clearance: 240 mm", "ground_clearance: 100 mm")
    )
    assert run("remedy", spec, "propeller.ground-clearance@propeller") == 0
    out = capsys.readouterr().out
    # 178 mm is the first whole one above the 7 in that the rule asks
    assert "propeller.ground_clearance: 100 mm becomes 178 mm" in out
    assert "+78.0%" in out
    assert "no instruction" in " ".join(out.split())


def test_remedy_of_what_is_not_shown_names_what_to_state(spec, capsys):
    spec.write_text(
        spec.read_text().replace("ground_clearance: 240 mm", "ground_clearance: unknown")
    )
    assert run("remedy", spec, "propeller.ground-clearance") == 0
    out = capsys.readouterr().out
    assert "Not shown: " in out
    assert "State " in out
    assert "propeller.ground_clearance" in out


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("propeller.ground-clearance", "No open finding of a rule"),
        ("no.rule", "No open finding of a rule 'no.rule'"),
        ("supply.bearing-heat@clutch", "is not open at 'clutch'; it is open at: bearings."),
    ],
)
def test_remedy_says_what_is_wrong_with_the_question(spec, capsys, asked, told):
    assert run("remedy", spec, asked) == 3
    assert told in capsys.readouterr().err


def test_remedy_where_nothing_falls_short(tmp_path, capsys):
    house = tmp_path / "house.yaml"
    small = EXAMPLES.parent / "tests" / "report" / "sheet_spec.yaml"
    assert run("remedy", small, "--rulebook", house) == 2  # a rulebook that is not there
    assert "cannot be opened" in capsys.readouterr().err
