"""A file of remarks: what it may say, and one message for each thing it may not."""

import jsonschema
import pytest
import yaml

from checker.spec.problem import SpecUnreadable
from checker.spec.remarks import load_remarks, remarks_schema

HEAD = "thrustline_remarks: 1\nremarks:\n"
SIGNED = "    by: A. Reader\n    date: 2026-05-01\n    says: Why?\n"


def told(text):
    with pytest.raises(SpecUnreadable) as raised:
        load_remarks(text.encode(), "drive.remarks")
    return str(raised.value)


def test_remarks_are_read():
    text = f"{HEAD}  - field: gears.a.teeth\n{SIGNED}    answer: Because.\n"
    (remark,) = load_remarks(text.encode(), "drive.remarks").remarks
    assert (remark.field, remark.by, remark.says) == ("gears.a.teeth", "A. Reader", "Why?")
    assert (remark.date.isoformat(), remark.answer) == ("2026-05-01", "Because.")


@pytest.mark.parametrize(
    ("target", "found"),
    [
        ("rule: a.b", "rule"),
        ("part: gears.a", "part"),
        ("rule: a.b\n    part: gears.a\n    field: gears.a.teeth", "rule and part and field"),
        ("answer: None of it.", "none of them"),
    ],
)
def test_a_remark_is_about_one_thing(target, found):
    assert told(f"{HEAD}  - {target}\n{SIGNED}") == (
        "drive.remarks:3:5: remarks.0: unclear what the remark is about; "
        f"found {found}; expected rule and part of a finding, or a field"
    )


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[]", "drive.remarks:1:1: not the remarks format; found a list"),
        ("remarks: []\n", "drive.remarks:1:1: no version; found no field 'thrustline_remarks'"),
        ("thrustline_remarks: 2\nremarks: []\n", "drive.remarks:1:21: thrustline_remarks: unknown"),
        (HEAD.replace("remarks:\n", "remark: []\n", 1), "unknown field; found 'remark'"),
        (f"{HEAD}  - fild: a\n{SIGNED}", "(did you mean 'field'?)"),
        (f"{HEAD}  - field: a\n{SIGNED}".replace("Why?", "'-'"), "this says nothing"),
        (f"{HEAD}  - field: a\n{SIGNED}".replace("2026-05-01", "May"), "a date such as"),
        (HEAD + "  - {field: a, field: b}\n", "the field is given twice"),
    ],
)
def test_what_is_wrong_is_told_with_its_place(text, expected):
    assert expected in told(text)


def test_the_schema_takes_what_is_read():
    quoted = SIGNED.replace("2026-05-01", "'2026-05-01'")
    data = yaml.safe_load(f"{HEAD}  - field: gears.a.teeth\n{quoted}")
    jsonschema.validate(data, remarks_schema())
    data["remarks"][0]["fild"] = "a"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(data, remarks_schema())
