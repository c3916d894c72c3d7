"""Derivations and rules as a person reads them."""

import pytest

from checker.report.derivation import derivation_sheets
from checker.report.inquiry import NothingSuch, inquiries
from checker.report.rulebook_sheet import rule_in_full, rulebook_list


@pytest.fixture
def design(review):
    return review.designs[None]


def sheet_of(review, target, point=None, width=80):
    answers = inquiries(review.designs[None], target, point)
    return derivation_sheets(answers, review.loaded.document, width=width, colour=False)


def test_whole_calculation_with_places(review):
    """52 kW at 5500 rpm is 52000 / (5500 · 2π / 60) = 90.28 N m (by hand)."""
    sheet = sheet_of(review, "shafts.input.torque", "climb")
    assert sheet.startswith("shafts.input.torque at climb = 90.28 N m\n")
    assert "stated   sheet_spec.yaml 11:50, operation.0.power" in sheet
    assert "with     P = 52 kW (1); ω = 5500 rpm (2, there ω_e)" in sheet
    assert "result   T = 90.28 N m" in sheet


def test_without_a_point_all_points_are_told(review):
    sheet = sheet_of(review, "shafts.prop.speed")
    assert "shafts.prop.speed at climb = 2200 rpm" in sheet
    assert "shafts.prop.speed at cruise = 2000 rpm" in sheet


def test_what_is_missing_is_named(review):
    sheet = sheet_of(review, "gears.pinion.face_width")
    assert sheet == (
        "gears.pinion.face_width: not shown\n"
        "  State sheet_spec.yaml 15:11, gears.pinion.face_width\n"
    )


def test_a_part_left_out_is_what_is_missing(review_of, spec):
    for field in (b"clutch: none\n", b"operation:\n", b"  - {name: climb", b"  - {name: cruise"):
        spec = b"".join(line for line in spec.splitlines(True) if not line.startswith(field))
    review = review_of(spec)
    state = "State sheet_spec.yaml 2:1, "
    assert sheet_of(review, "clutch.capacity_margin") == (
        f"clutch.capacity_margin: not shown\n  {state}clutch, or none if there is none\n"
    )
    assert sheet_of(review, "shafts.prop.speed").splitlines()[1] == f"  {state}operation"


def test_value_known_at_best_is_derived(review):
    sheet = sheet_of(review, "drive.peak_for_tests")
    assert "the alternating torque is not known" in sheet
    assert "At best 1.2, as follows." in sheet
    assert "given    a figure of the tests" in sheet


def test_stated_field_and_point_by_name(review):
    assert sheet_of(review, "operation.climb.oil_temperature").startswith("operation.climb.oil")
    by_number = sheet_of(review, "operation.0.oil_temperature")
    assert by_number == sheet_of(review, "operation.climb.oil_temperature")
    assert "1  ratio = 2.4" in sheet_of(review, "drive.ratio")


@pytest.mark.parametrize(
    ("target", "point", "message"),
    [
        ("gears.pignon.teeth", None, r"no part for 'gears\.pignon\.teeth'; the parts are: drive,"),
        (
            "shafts.input.torqe",
            None,
            r"input has no measure or stated field 'torqe'\. Near it: torque",
        ),
        ("shafts.input.torque", "glide", r"no operation point 'glide'; the points are: climb, cr"),
        ("gears.pinion.teeth", "glide", "no operation point 'glide'"),
        ("gears.pinion.teeth", "climb", "the same at every operation point: leave out the point"),
        ("operation.glide.power", None, r"the parts are: drive, engine, operation\.climb, op"),
        ("operation.climb.zzz", None, r"'zzz'\..* Its stated fields are: name, kind, engine_speed"),
        ("monitoring.zzz", None, "Its stated fields are: "),
        ("clutch.capacity_margin", None, "This drive has no clutch: the spec says none"),
        ("drive", None, "no part for 'drive'"),
        ("gears.pinion.helix", None, "has no measure or stated field 'helix'"),
    ],
)
def test_a_question_without_an_answer_says_what_there_is(design, target, point, message):
    with pytest.raises(NothingSuch, match=message):
        inquiries(design, target, point)


def test_rules_by_family(book):
    sheet = rulebook_list(book, width=80, colour=False)
    assert sheet.startswith("Rulebook of 11 rules\n\nsheet\n  sheet.ratio (caution, advisory)\n")
    assert "    The tooth counts give the stated ratio\n" in sheet


def test_rule_in_full(book):
    sheet = rule_in_full(book.rule("sheet.ratio"), width=80, colour=False)
    for line in (
        "Looks at    each drive",
        "Measure     ratio_disagreement (difference of stated and computed ratio)",
        "Caution     asks at most 0.005; otherwise: fix or justify before flight",
        "Advisory    asks at most 0.001; otherwise: know it",
        "Remedy      Correct the ratio. Or correct the tooth counts.",
        "Memory      Handbook of ratios, table 2 (from memory)",
        "Wrong when  none known",
        "Deviation   may be accepted by a named person",
    ):
        assert f"{line}\n" in sheet
