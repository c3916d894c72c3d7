"""``--report``: the HTML page of a review, and the handbook."""

import shutil

from checker.cli import run

SPEC = "examples/tansy.yaml"
REMARKS = """\
thrustline_remarks: 1
remarks:
  - {field: operation.climb.power, by: Ben Ode, date: 2026-05-02, says: "Measured <b>twice</b>?"}
  - {field: gears.gone, by: Ben Ode, date: 2026-05-02, says: What of this?}
"""


def test_a_report_is_written_beside_the_usual_output(tmp_path, capsys):
    file = tmp_path / "out.html"
    assert run(["review", SPEC, "--report", str(file)]) == 0
    assert "Disposition" in capsys.readouterr().out
    html = file.read_text(encoding="utf-8")
    assert html.startswith("<!doctype html>")
    assert "NO OPEN FINDINGS" in html
    assert html.count('class="picture"') > 5


def test_one_report_holds_one_spec(tmp_path, capsys):
    file = tmp_path / "out.html"
    assert run(["review", SPEC, "examples/marram.yaml", "--report", str(file)]) == 3
    assert "A report holds one spec" in capsys.readouterr().err
    assert not file.exists()


def test_what_cannot_be_read_leaves_an_older_report_alone(tmp_path):
    spec, file = tmp_path / "spec.yaml", tmp_path / "out.html"
    spec.write_text("thrustline: 1\n", encoding="utf-8")
    file.write_text("older", encoding="utf-8")
    assert run(["review", str(spec), "--report", str(file)]) == 2
    assert file.read_text(encoding="utf-8") == "older"


def test_a_report_that_cannot_be_written_is_a_failure(tmp_path, capsys):
    assert run(["review", SPEC, "--report", str(tmp_path)]) == 4
    assert "cannot be written" in capsys.readouterr().err


def test_the_rulebook_is_written_as_a_handbook(tmp_path, capsys):
    file = tmp_path / "rules.html"
    assert run(["rulebook", "--report", str(file)]) == 0
    assert capsys.readouterr().out == ""
    html = file.read_text(encoding="utf-8")
    assert "The clutch carries the peak torque times its service factor" in html
    assert 'href="#gears.contact-ratio-spur"' in html


def test_the_handbook_is_of_all_rules(tmp_path):
    file = str(tmp_path / "rules.html")
    assert run(["rulebook", "gears.contact-ratio-spur", "--report", file]) == 3


def test_remarks_and_sign_off_beside_the_spec_stand_in_the_report(tmp_path):
    spec, file = tmp_path / "tansy.yaml", tmp_path / "out.html"
    shutil.copy(SPEC, spec)
    spec.with_suffix(".remarks").write_text(REMARKS, encoding="utf-8")
    signing = ["--name", "Ada Kort", "--role", "designer", "--on", "2026-06-01"]
    assert run(["signoff", str(spec), *signing]) == 0
    assert run(["review", str(spec), "--report", str(file), "--on", "2026-06-01"]) == 0
    html = file.read_text(encoding="utf-8")
    assert "Measured &lt;b&gt;twice&lt;/b&gt;? (Ben Ode, 2026-05-02)" in html
    assert "nothing of this name is here now" in html
    assert "Signed off by Ada Kort (designer)" in html
    assert "No sign-off is recorded" not in html
    spec.write_text(spec.read_text(encoding="utf-8").replace("ground_clearance:", "#"))
    run(["review", str(spec), "--report", str(file), "--on", "2026-06-01"])
    assert "THE RECORD NO LONGER MATCHES" in file.read_text(encoding="utf-8")
