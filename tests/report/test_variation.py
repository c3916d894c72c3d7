"""A variation says what a review of a spec edited by hand says."""

import csv
import datetime
import io
from pathlib import Path

import pytest

from checker.report.inquiry import NothingSuch, inquiries
from checker.report.variation import NoRange, range_of, varied
from checker.report.variation_sheet import variation_csv, variation_sheet
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook
from checker.spec.problem import SpecUnreadable

SPEC = Path(__file__).parents[2] / "examples" / "tansy.yaml"
DAY = datetime.date(2026, 6, 1)


def reviewed(text):
    return review_spec(text.encode(), "tansy.yaml", shipped_rulebook(), DAY)


@pytest.fixture(scope="module")
def tansy():
    return reviewed(SPEC.read_text())


def walked(review, *texts, steps=3, targets=()):
    ranges = tuple(range_of(review.loaded.document, each, steps) for each in texts)
    return ranges, list(varied(review, ranges, targets))


def test_each_step_is_the_review_of_the_edited_file(tansy):
    target = "meshes.first.transverse_contact_ratio"
    text = "meshes.first.centre_distance=64.00..64.20 mm"
    ranges, steps = walked(tansy, text, targets=(target,))
    stated = str(ranges[0].stated)
    assert stated in SPEC.read_text()
    for step, value in zip(steps, ranges[0].values, strict=True):
        edited = reviewed(
            SPEC.read_text().replace(f"centre_distance: {stated}", f"centre_distance: {value}")
        )
        assert [each.result for each in step.review.findings] == [
            each.result for each in edited.findings
        ]
        (expected,) = inquiries(edited.designs[None], target, None)
        assert step.answers[0].value.value == expected.value.value
    values = [step.answers[0].value.value for step in steps]
    assert values[0] > values[1] > values[2]  # teeth that stand further apart touch for less long


@pytest.mark.parametrize(
    ("text", "values", "unit"),
    [
        ("operation.climb.power=30 kW..60 kW", ("30 kW", "45 kW", "60 kW"), "kW"),
        ("operation.climb.power=30..60 kW", ("30 kW", "45 kW", "60 kW"), "kW"),
        ("gears.input_pinion.teeth=24..26", (24, 25, 26), ""),
        ("gears.input_pinion.teeth=24..25", (24, 25), ""),
        ("gears.input_pinion.teeth=24..24", (24,), ""),
        ("operation.climb.power=60 kW..30 kW", ("60 kW", "45 kW", "30 kW"), "kW"),
    ],
)
def test_ranges(tansy, text, values, unit):
    found = range_of(tansy.loaded.document, text, 3)
    assert (found.values, found.unit) == (values, unit)


def test_a_tolerance_is_kept(tansy):
    found = range_of(tansy.loaded.document, "meshes.first.backlash=0.1..0.2 mm", 2)
    assert all("+/-" in each and each.endswith(" mm") for each in found.values)


def test_a_field_that_is_not_stated_yet(tansy):
    document = tansy.loaded.document
    found = range_of(document, "propeller.blade_inertia_share=10 %..20 %", 2)
    assert found.path[-1] == "blade_inertia_share"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("operation.climb.power", "is no range; expected FIELD=FROM..TO"),
        ("operation.climb.power=1 kW", "is no range"),
        ("operation.climb.power=1 kW..much", "from one number to another"),
        ("operation.climb.power=1 hp..2 hp", "found hp and hp; expected kW"),
        ("operation.climb.power=1..2", "expected numbers in kW"),
        ("gears.input_pinion.teeth=24 mm..30 mm", "expected bare numbers"),
        ("operation.descend.power=1 kW..2 kW", "no field 'operation.descend.power'"),
        ("operation.climb=1..2", "holds several fields"),
        ("gears.input_pinion.teeth=nan..inf", "from one number to another"),
    ],
)
def test_what_is_no_range(tansy, text, told):
    with pytest.raises(NoRange) as raised:
        range_of(tansy.loaded.document, text, 3)
    assert told in str(raised.value)


def test_two_fields_give_every_combination(tansy):
    ranges, steps = walked(
        tansy, "operation.climb.power=30 kW..40 kW", "gears.input_pinion.teeth=24..25", steps=2
    )
    assert [step.at for step in steps] == [(0, 0), (0, 1), (1, 0), (1, 1)]
    rows = list(csv.reader(io.StringIO(variation_csv(ranges, steps))))
    assert rows[0][:2] == ["operation.climb.power [kW]", "gears.input_pinion.teeth [1]"]
    assert [row[:2] for row in rows[1:]] == [
        ["30.0", "24.0"],
        ["30.0", "25.0"],
        ["40.0", "24.0"],
        ["40.0", "25.0"],
    ]


def test_a_value_that_no_spec_may_hold_is_a_row_of_its_own(tansy):
    ranges, steps = walked(tansy, "gears.input_pinion.teeth=4..24", steps=2)
    assert isinstance(steps[0].review, SpecUnreadable)
    sheet = variation_sheet(tansy, ranges, steps, width=120, colour=False)
    assert "cannot be read" in sheet
    assert "out of range" in sheet


def test_a_measure_that_varies_has_a_column_for_each_point(tansy):
    target = "lubrication.oil_temperature_computed"
    with pytest.raises(NothingSuch):
        walked(tansy, "operation.climb.power=30 kW..40 kW", targets=(target,))
    _, steps = walked(
        tansy, "operation.climb.power=30 kW..40 kW", targets=("gears.input_pinion.contact_safety",)
    )
    points = [each.name for each in tansy.designs[None].points]
    assert [each.point for each in steps[0].answers] == points
    _, steps = walked(
        tansy,
        "operation.climb.power=30 kW..40 kW",
        targets=("gears.input_pinion.contact_safety@climb",),
    )
    (answers,) = {len(step.answers) for step in steps}
    assert answers == 1


def test_no_cell_of_the_csv_is_a_formula(tansy):
    hostile = SPEC.read_text().replace("name: climb", "name: '=1+1'")
    ranges, steps = walked(reviewed(hostile), "operation.=1+1.power=30 kW..40 kW", steps=2)
    text = variation_csv(ranges, steps)
    assert all(not cell.startswith("=") for row in csv.reader(io.StringIO(text)) for cell in row)
