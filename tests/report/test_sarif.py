"""SARIF 2.1.0, held against the schema of OASIS (see tests/reference for its notice)."""

import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from checker.report import status
from checker.report.fault import Unopened
from checker.report.fingerprint import fingerprint_of
from checker.report.json_report import entry, json_report
from checker.report.results import Failed
from checker.report.sarif import FINGERPRINT, sarif_log, sarif_of, uri_of
from checker.report.since import old_report, since_old
from checker.spec.problem import Problem, SpecUnreadable

ROOT = Path(__file__).parents[2]
SCHEMA = ROOT / "tests" / "reference" / "sarif-2.1.0-schema.json"
SPEC = ROOT / "tests" / "report" / "sheet_spec.yaml"


@pytest.fixture(scope="module")
def validator():
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    return jsonschema.Draft4Validator(schema, format_checker=jsonschema.FormatChecker())


@pytest.fixture
def run_of(validator, book):
    """The run of some results, checked against the schema of the standard."""

    def write(*results, since=None, old=None, ending=status.FINDINGS, everything=False):
        parts = [sarif_of(result, since, everything=everything) for result in results]
        log = json.loads(sarif_log(parts, book, "2026-06-01", ending, old))
        validator.validate(log)
        (run,) = log["runs"]
        return run

    return write


@pytest.fixture
def old_of(tmp_path, book):
    def write(review):
        file = tmp_path / "old.json"
        file.write_text(json_report([entry(review)], book, "2026-05-01"), encoding="utf-8")
        return old_report(str(file))

    return write


def result_of(run, rule):
    return next(each for each in run["results"] if each["ruleId"] == rule)


def test_the_schema_is_the_one_of_the_standard():
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    assert "Version 2.1.0" in schema["title"]
    assert schema["properties"]["version"]["enum"] == ["2.1.0"]
    jsonschema.Draft4Validator.check_schema(schema)


def test_a_finding_has_region_level_message_and_fingerprint(run_of, review):
    run = run_of(review)
    result = result_of(run, "sheet.ratio")
    assert (result["kind"], result["level"]) == ("fail", "warning")
    text = result["message"]["text"]
    assert text.startswith("Falls short: The tooth counts give the stated ratio (caution), drive. ")
    assert "asks at most 0.005" in text
    (location,) = result["locations"]
    assert location["physicalLocation"] == {
        "artifactLocation": {"uri": "sheet_spec.yaml"},
        "region": {"startLine": 4, "startColumn": 74},
    }
    assert location["logicalLocations"][0]["fullyQualifiedName"] == "drive"
    assert [each["message"]["text"] for each in result["relatedLocations"]] == [
        "gears.pinion.teeth",
        "gears.wheel.teeth",
    ]
    finding = next(each for each in review.findings if each.rule.id == "sheet.ratio")
    assert result["partialFingerprints"] == {FINGERPRINT: fingerprint_of(finding)}
    assert run["columnKind"] == "unicodeCodePoints"


@pytest.mark.parametrize(
    ("rule", "level", "outcome"),
    [
        ("sheet.power", "error", "falls short"),
        ("sheet.ratio", "warning", "falls short"),
        ("sheet.clearance", "note", "falls short"),
        ("sheet.face", "note", "not shown"),
        ("sheet.broken", "error", "broken"),
    ],
)
def test_our_levels_become_those_of_the_standard(run_of, review, rule, level, outcome):
    found = {each.rule.id: each for each in reversed(review.findings)}[rule]
    expected = {"warning": "error", "caution": "warning", "advisory": "note"}[found.level]
    result = result_of(run_of(review), rule)
    assert result["properties"]["outcome"] == found.outcome == outcome
    assert result["kind"] == "fail"  # only then does a level weigh: clause 3.27.10
    assert result["level"] == expected
    if outcome == "falls short":
        assert expected == level


def test_every_open_or_accepted_finding_is_there_and_no_other(run_of, review_of, spec):
    review = review_of(spec.replace(b"ground_clearance: 180", b"ground_clearance: 500"))
    kept = [each for each in review.findings if each.is_open or each.outcome == "deviation"]
    assert len(run_of(review)["results"]) == len(kept) < len(review.findings)
    everything = run_of(review, everything=True)["results"]
    assert len(everything) == len(review.findings)
    kinds = {each["properties"]["outcome"]: each["kind"] for each in everything}
    assert (kinds["meets"], kinds["does not apply"]) == ("pass", "notApplicable")
    assert {each["level"] for each in everything if each["kind"] != "fail"} == {"none"}


def test_a_deviation_is_suppressed_and_not_dropped(run_of, review):
    result = result_of(run_of(review), "sheet.sense")
    (suppression,) = result["suppressions"]
    assert (suppression["kind"], suppression["status"]) == ("inSource", "accepted")
    assert suppression["justification"] == (
        "The propeller of the other hand is on order. Mitigation: Ground runs without propeller "
        "only. Accepted by A. Builder, from 2026-05-01 to 2026-12-31."
    )
    assert suppression["location"]["physicalLocation"]["region"]["startLine"] == 22
    # Clause 3.27.23: where one result has the property, all have, and empty means not suppressed.
    assert all("suppressions" in each for each in run_of(review)["results"])
    assert result_of(run_of(review), "sheet.power")["suppressions"] == []


def test_rules_carry_why_remedy_and_sources(run_of, review):
    run = run_of(review)
    rules = run["tool"]["driver"]["rules"]
    assert [each["id"] for each in rules] == sorted({each["ruleId"] for each in run["results"]})
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]
    power = next(each for each in rules if each["id"] == "sheet.power")
    assert power["defaultConfiguration"] == {"level": "error"}
    assert power["help"]["text"] == (
        "Why: A point above the rating rests on nothing. Remedy: Lower its power. "
        "Source: A standard, 3; common practice, no source. Misjudges: none known."
    )


def test_the_spec_is_an_artifact_with_its_digest(run_of, review):
    (artifact,) = run_of(review, review)["artifacts"]
    assert artifact["location"] == {"uri": "sheet_spec.yaml"}
    assert artifact["hashes"] == {"sha-256": review.sha256}


@pytest.mark.parametrize(
    ("ending", "successful"),
    [
        (status.CLEAR, True),
        (status.FINDINGS, True),
        (status.UNREADABLE, False),
        (status.BROKEN, False),
    ],
)
def test_the_invocation_tells_the_exit_status(run_of, review, ending, successful):
    (invocation,) = run_of(review, ending=ending)["invocations"]
    assert invocation["exitCode"] == ending
    assert invocation["executionSuccessful"] is successful
    assert invocation["exitCodeDescription"]


def test_what_is_not_reviewed_is_a_notification(run_of):
    problem = Problem(("drive", "ratio"), 4, 7, "'x'", "a number", "not a number", "see {0}")
    results = (
        SpecUnreadable("bad.yaml", (problem, problem)),
        Unopened("gone.yaml", "the file cannot be opened"),
        Failed("odd.yaml", "KeyError: 'gear'"),
    )
    run = run_of(*results, ending=status.BROKEN)
    assert run["results"] == []
    told = run["invocations"][0]["toolExecutionNotifications"]
    assert [each["level"] for each in told] == ["error"] * 4
    assert told[0]["message"]["text"] == (
        "drive.ratio: not a number; found 'x'; expected a number; see {{0}}"
    )
    assert told[0]["locations"][0]["physicalLocation"] == {
        "artifactLocation": {"uri": "bad.yaml"},
        "region": {"startLine": 4, "startColumn": 7},
    }
    assert "region" not in told[2]["locations"][0]["physicalLocation"]
    assert told[3]["message"]["text"] == "internal error: KeyError: 'gear'"
    assert [each["location"]["uri"] for each in run["artifacts"]] == [
        "bad.yaml",
        "gone.yaml",
        "odd.yaml",
    ]


def test_baseline_states_since_an_older_report(run_of, review_of, spec, old_of):
    before = review_of(spec.replace(b"ground_clearance: 180", b"ground_clearance: 500"))
    after = review_of(spec.replace(b"power: 52 kW", b"power: 50 kW"))
    old = old_of(before)
    run = run_of(after, since=since_old(after, old, alone=True), old=old)
    assert result_of(run, "sheet.clearance")["baselineState"] == "new"
    assert result_of(run, "sheet.ratio")["baselineState"] == "unchanged"
    gone = result_of(run, "sheet.power")
    assert gone["baselineState"] == "absent"
    assert gone["message"]["text"].startswith("Cleared, or judged no more: ")
    assert all("baselineState" in each for each in run["results"])
    assert all("baselineState" not in each for each in run_of(after)["results"])
    prints = [each["partialFingerprints"][FINGERPRINT] for each in run["results"]]
    assert len(prints) == len(set(prints))


def test_texts_of_a_spec_make_no_link_placeholder_or_escape(run_of, review_of, spec):
    hostile = b'"[see](http://x.example) {0} \\e[31m <b>\\u202e"'
    changed = spec.replace(b"The propeller of the other hand is on order.", hostile)
    run = run_of(review_of(changed))
    text = json.dumps(run, ensure_ascii=False)
    assert "\x1b" not in text
    assert "\u202e" not in text
    result = result_of(run, "sheet.sense")
    assert "](" not in result["message"]["text"]
    assert r"\x1b[31m" in result["suppressions"][0]["justification"]


@pytest.mark.parametrize(
    ("file", "uri"),
    [
        ("drives/my drive.yaml", "drives/my%20drive.yaml"),
        ("./drives/../a.yaml", "a.yaml"),
        ("a:b#c?.yaml", "a%3Ab%23c%3F.yaml"),
        ("größe.yaml", "gr%C3%B6%C3%9Fe.yaml"),
        ("bad\udcff.yaml", "bad%FF.yaml"),  # a byte that is not UTF-8
    ],
)
def test_files_are_relative_references(file, uri):
    assert uri_of(file) == uri


def test_an_absolute_path_becomes_relative(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert uri_of(str(tmp_path / "drives" / "a.yaml")) == "drives/a.yaml"


def test_the_same_bytes_whatever_the_hash_seed():
    command = [sys.executable, "-m", "checker", "review", "--format", "sarif", "--on", "2026-06-01"]
    outputs = {
        subprocess.run(
            [*command, str(SPEC)],
            env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": seed},
            capture_output=True,
            check=False,
        ).stdout
        for seed in ("0", "1", "4242")
    }
    (output,) = outputs
    assert json.loads(output)["runs"][0]["results"]
