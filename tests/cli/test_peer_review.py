"""Compare, remarks and sign-off as commands, on files."""

import json
import shutil
from pathlib import Path

import jsonschema
import pytest

from checker import cli
from checker.report.json_schema import report_schema

EXAMPLES = Path(__file__).parents[2] / "examples"
REMARKS = """\
thrustline_remarks: 1
remarks:
  - rule: gears.peak-torque-teeth
    part: gears.input_pinion
    by: Ben \x1b[31mOde
    date: 2026-05-02
    says: Which factor?
    answer: That of a twin.
    answered_by: Ada Kort
  - {field: operation.climb.power, by: Ben Ode, date: 2026-05-02, says: Measured?}
  - {field: gears.gone, by: Ben Ode, date: 2026-05-02, says: What of this?}
"""


def run(*arguments) -> int:
    return cli.run([*map(str, arguments), "--on", "2026-06-01"])


@pytest.fixture
def spec(tmp_path):
    return Path(shutil.copy(EXAMPLES / "tansy.yaml", tmp_path))


def sign(spec, name="Ada Kort", *more) -> int:
    return run("signoff", spec, "--name", name, "--role", "designer", *more)


def test_compare_tells_what_appeared_and_what_changed(spec, tmp_path, capsys):
    later = tmp_path / "later.yaml"
    text = spec.read_text()
    assert "ground_clearance:" in text
    later.write_text(text.replace("ground_clearance:", "ground_clearance: unknown #"))
    assert run("compare", spec, later, "--stop-at", "advisory") == 1
    out = capsys.readouterr().out
    assert "Appeared: open now and not before" in out
    assert "not shown, for want of propeller.ground_clearance" in out
    assert "- propeller.ground_clearance: " in out
    assert run("compare", later, spec) == 0
    assert "Cleared: open before and not now" in capsys.readouterr().out


def test_compare_of_the_same_says_so(spec, capsys):
    assert run("compare", spec, spec) == 0
    out = capsys.readouterr().out
    assert "No finding appeared, cleared or moved" in out
    assert "No stated value changed" in out


def test_margins_that_moved_are_counted_and_listed_on_demand(spec, tmp_path, capsys):
    later = tmp_path / "later.yaml"
    later.write_text(spec.read_text().replace("face_width: 36 mm", "face_width: 35 mm"))
    run("compare", spec, later)
    short = capsys.readouterr().out
    run("compare", spec, later, "--all")
    long = capsys.readouterr().out
    assert "lost margin" in short
    assert len(long) >= len(short)
    assert "more with --all" not in long


@pytest.mark.parametrize("which", [0, 1])
def test_compare_with_an_unreadable_spec(spec, tmp_path, capsys, which):
    bad = tmp_path / "bad.yaml"
    bad.write_text("thrustline: 2\n")
    files = [spec, spec]
    files[which] = bad
    assert run("compare", *files) == 2
    assert f"{bad}:1:13: thrustline: unknown version" in capsys.readouterr().err


def test_two_persons_sign_one_record(spec, capsys):
    assert sign(spec) == 0
    assert sign(spec, "Ben Ode") == 0
    out = capsys.readouterr().out
    assert "- Ada Kort, designer, on 2026-06-01" in out
    assert "Names are declared and not" in out
    assert run("review", spec) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "Signed off by Ada Kort (designer) and Ben Ode (designer)" in told
    assert "the record matches what is reviewed here" in told


def test_review_says_when_the_record_no_longer_matches(spec, capsys):
    assert sign(spec) == 0
    spec.write_text(spec.read_text().replace("revision: ", "revision: X"))
    assert run("review", spec) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "THE RECORD NO LONGER MATCHES: since then the spec changed." in told
    before = spec.with_suffix(".signoff").read_bytes()
    assert sign(spec, "Ben Ode") == 1
    assert "begin a new one" in capsys.readouterr().err
    assert spec.with_suffix(".signoff").read_bytes() == before
    assert sign(spec, "Ben Ode", "--afresh") == 0
    assert "Ada" not in spec.with_suffix(".signoff").read_text()


def test_a_comment_does_not_undo_a_record(spec, capsys):
    assert sign(spec) == 0
    spec.write_text("# a comment\n" + spec.read_text())
    run("review", spec)
    assert "the record matches" in " ".join(capsys.readouterr().out.split())


def test_the_same_person_does_not_sign_twice(spec, capsys):
    assert sign(spec) == 0
    assert sign(spec, "ADA  KORT") == 1
    assert "Ada Kort has signed already" in capsys.readouterr().err


def test_a_hold_is_not_signed(tmp_path, capsys):
    spec = Path(shutil.copy(EXAMPLES / "tansy-troubled.yaml", tmp_path))
    assert sign(spec) == 1
    assert capsys.readouterr().err == f"{spec}: not signed: the disposition is hold\n"
    assert not spec.with_suffix(".signoff").exists()


@pytest.mark.parametrize("name", ["", "  ", "none", "n/a"])
def test_a_name_says_something(spec, capsys, name):
    assert sign(spec, name) == 3
    assert "--name" in capsys.readouterr().err


def test_standard_input_is_not_signed(capsys):
    assert sign("-") == 3


def test_a_record_that_is_no_record_keeps_the_spec_from_being_reviewed(spec, capsys):
    record = spec.with_suffix(".signoff")
    record.write_text("thrustline_signoff: 1\ndrive: A\n")
    assert run("review", spec) == 2
    assert f"{record}:1:1: field 'spec_sha256' is missing" in capsys.readouterr().err


def test_remarks_stand_in_the_review(spec, capsys):
    spec.with_suffix(".remarks").write_text(REMARKS.replace("\x1b", "\\x1b"))
    assert run("review", spec) == 0
    out = capsys.readouterr().out
    sheet = out[out.index("Remarks of reviewers") :]
    assert "Which factor?" in sheet
    assert "That of a twin. (Ada Kort)" in sheet
    assert "nothing of this name is here now" in sheet
    assert sheet.count("none yet") == 2


def test_remarks_and_record_stand_in_the_json(spec, capsys):
    spec.with_suffix(".remarks").write_text(REMARKS.replace("\x1b", ""))
    assert sign(spec) == 0
    assert "- Ben Ode on operation.climb.power: Measured?" in capsys.readouterr().out
    assert run("review", spec, "--format", "json") == 0
    report = json.loads(capsys.readouterr().out)
    jsonschema.validate(report, report_schema())
    (entry,) = report["reviews"]
    assert [each["place"] is None for each in entry["remarks"]] == [False, False, True]
    assert entry["sign_off"]["matches"] is True
    assert entry["sign_off"]["signatures"][0]["name"] == "Ada Kort"


def test_remarks_with_a_fault_are_told_by_place(spec, capsys):
    file = spec.with_suffix(".remarks")
    file.write_text("thrustline_remarks: 1\nremarks: [{field: a}]\n")
    assert run("review", spec) == 2
    assert f"{file}:2:11: remarks.0: field 'by' is missing" in capsys.readouterr().err


def test_compare_writes_a_page(spec, tmp_path, capsys):
    later, page = tmp_path / "later.yaml", tmp_path / "compare.html"
    text = spec.read_text().replace("ground_clearance:", "ground_clearance: unknown #")
    later.write_text(text.replace("name: Tansy", "name: <b>Tansy</b>"))
    run("compare", spec, later, "--report", page)
    written = page.read_text()
    assert "<b>Tansy</b>" not in written
    assert "&lt;b&gt;Tansy&lt;/b&gt;" in written
    assert "Appeared: open now and not before (1)" in written
    assert "propeller.ground_clearance" in written
    first = page.read_bytes()
    run("compare", spec, later, "--report", page)
    assert page.read_bytes() == first
