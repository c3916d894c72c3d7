"""A review held against an older report: only what a change made worse counts."""

import json
from dataclasses import replace

import pytest

from checker import __version__
from checker.report import status
from checker.report.fault import Unopened
from checker.report.json_report import entry, json_report
from checker.report.results import status_of
from checker.report.since import old_report, since_old
from checker.report.terminal import review_sheet

SETS = b"""ratio_sets:
  short: {ratio: 2.5}
  long: {ratio: 2.4, gears: {wheel: {teeth: 58}}}
"""


@pytest.fixture
def old_of(tmp_path, monkeypatch, book):
    """The older report on some reviews, read from its file."""

    def write(*reviews, change=lambda data: None):
        data = json.loads(json_report([entry(each) for each in reviews], book, "2026-05-01"))
        change(data)
        (tmp_path / "old.json").write_text(json.dumps(data), encoding="utf-8")
        monkeypatch.chdir(tmp_path)
        return old_report("old.json")

    return write


@pytest.fixture
def held(old_of, review_of, spec):
    """The spec after some replacements, held against the spec before."""

    def hold(*pairs, before=spec, after=spec):
        for old, new in pairs:
            assert old in after
            after = after.replace(old, new)
        review = review_of(after)
        return review, since_old(review, old_of(review_of(before)), alone=True)

    return hold


def ways(review, since) -> dict[str, str]:
    return {
        f"{each.rule.id} {each.subject.address}": since.way(each) for each in review.open_findings
    }


def test_the_same_again_stood_before(held):
    review, since = held((b"drive:", b"# a comment\ndrive:"))
    assert set(ways(review, since).values()) == {"stood before"}
    assert since.cleared == ()
    assert review.reaches("warning")
    assert not since.worsens(review, "advisory")


@pytest.mark.parametrize(
    ("old", "new", "rule", "way"),
    [
        (b"power: 52 kW", b"power: 56 kW", "sheet.power drive", "worse"),
        (b"power: 52 kW", b"power: 51 kW", "sheet.power drive", "better"),
        (
            b"oil_temperature: 95 degC",
            b"oil_temperature: 115 degC",
            "sheet.oil-temperature operation.cruise",
            "worse",
        ),
        (
            b"date: 2026-05-01\n    expires: 2026-12-31",
            b"date: 2026-05-01\n    expires: 2026-05-02",
            "sheet.sense drive",
            "appeared",
        ),
        (b"ground_clearance: 180 mm", b"mass: 9 kg", "sheet.clearance propeller", "stood before"),
    ],
)
def test_a_change_is_told_its_way(held, old, new, rule, way):
    review, since = held((old, new))
    told = ways(review, since)
    assert told.pop(rule) == way
    assert set(told.values()) <= {"stood before", way}
    is_worse = way in ("appeared", "worse")
    assert since.worsens(review, "advisory") is is_worse
    expected = status.FINDINGS if is_worse else status.CLEAR
    whole = replace(review, findings=tuple(f for f in review.findings if f.outcome != "broken"))
    assert status_of(whole, "advisory", since) == expected


def test_a_broken_rule_counts_whatever_stood(held):
    review, since = held()
    assert review.has_broken
    assert status_of(review, "warning", since) == status.BROKEN


def test_what_cleared_is_listed(held):
    _, since = held((b"power: 52 kW", b"power: 50 kW"))
    assert [(each.rule, each.part) for each in since.cleared] == [("sheet.power", "drive")]


@pytest.mark.parametrize(
    "stated",
    [
        b"power: 52 kW",
        b"oil_temperature: 118 degC",
        b"oil_temperature: 95 degC",
        b"ground_clearance: 180 mm",
        b"ratio: 2.4",
        b"rotation: anticlockwise",
        b"centre_distance: 126 +/- 0.02 mm",
        b"engine_speed: 5500 rpm",
    ],
)
def test_to_leave_a_value_out_makes_nothing_better(held, stated):
    field = stated.partition(b":")[0]
    _, since = held((stated, field + b": unknown"))
    assert "better" not in since.ways.values()
    assert since.cleared == ()


@pytest.mark.parametrize("turned", [False, True])
def test_ratio_sets_do_not_make_a_finding_new(held, spec, turned):
    before, after = (spec + SETS, spec) if turned else (spec, spec + SETS)
    review, since = held(before=before, after=after)
    told = ways(review, since)
    assert told["sheet.power drive"] == "stood before"
    appeared = {rule for rule, way in told.items() if way == "appeared"}
    assert appeared <= {"sheet.ratio drive"}
    assert [each.rule for each in since.cleared if each.rule != "sheet.ratio"] == []


def test_a_lone_spec_may_have_had_another_name(old_of, review_of, spec, review):
    other = old_of(review_of(spec, name="before/sheet.yaml"))
    assert not since_old(review, other, alone=True).is_new
    among_others = since_old(review, other, alone=False)
    assert among_others.is_new
    assert {among_others.way(each) for each in review.open_findings} == {"appeared"}
    same = old_of(review_of(spec, name="./sheet_spec.yaml"))
    assert not since_old(review, same, alone=False).is_new


def test_other_rules_and_another_version_are_said(old_of, review, book):
    assert old_of(review).differences(book) == ()
    fewer = replace(book, rules=book.rules[1:])
    (rules,) = old_of(review).differences(fewer)
    assert "was held against other rules (sha256 " in rules

    def older(data):
        data["tool"]["version"] = "0.0.9"

    (version,) = old_of(review, change=older).differences(book)
    assert f"was written by version 0.0.9, this is {__version__}" in version


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "it is not sound JSON"),
        (b"{", "it is not sound JSON"),
        (b"\xff\xfe{}", "it is not sound JSON"),
        (b"[" * 100_000, "it is not sound JSON"),
        (b"[]", "see its beginning"),
        (b"{}", "see its schema_version"),
        (b'{"$schema": "x", "version": "2.1.0", "runs": []}', "see its schema_version"),
        (b"thrustline: 1\n", "it is not sound JSON"),
    ],
)
def test_what_is_no_report_is_one_clear_message(tmp_path, content, said):
    file = tmp_path / "old.json"
    file.write_bytes(content)
    with pytest.raises(Unopened) as refused:
        old_report(str(file))
    message = str(refused.value)
    assert message.startswith(f"{file}: the file is no report written by 'thrustline review ")
    assert message.endswith(said)
    assert "\n" not in message


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("schema_version",), 2),
        (("reviews", 0, "findings", 0, "fingerprint"), None),
        (("reviews", 0, "findings", 0, "outcome"), "fine"),
        (("reviews", 0, "findings", 0, "level"), "grave"),
        (("reviews", 0, "state"), "unknown"),
        (("rulebook", "sha256"), 7),
    ],
)
def test_a_report_of_another_form_is_refused_by_place(old_of, review, path, value):
    def spoil(data):
        for step in path[:-1]:
            data = data[step]
        data[path[-1]] = value

    with pytest.raises(Unopened, match="in the form of this version: see its "):
        old_of(review, change=spoil)


@pytest.mark.parametrize("name", ["missing.json", "."])
def test_a_report_that_cannot_be_opened(tmp_path, name):
    with pytest.raises(Unopened, match="the file cannot be opened"):
        old_report(str(tmp_path / name))


def test_a_report_that_is_too_large(tmp_path, monkeypatch):
    monkeypatch.setattr("checker.report.since.MOST_REPORT_BYTES", 10)
    (tmp_path / "old.json").write_bytes(b" " * 11)
    with pytest.raises(Unopened, match="larger than"):
        old_report(str(tmp_path / "old.json"))


def test_files_without_a_review_had_no_findings(old_of, review):
    def unread(data):
        data["reviews"] = [{"state": "failed", "file": "sheet_spec.yaml", "error": "x"}]

    assert since_old(review, old_of(review, change=unread), alone=True).is_new


def test_the_sheet_tells_first_what_is_worse(held):
    review, since = held(
        (b"power: 52 kW", b"power: 56 kW"), (b"ground_clearance: 180", b"ground_clearance: 500")
    )
    sheet = review_sheet(review, width=80, colour=False, since=since)
    lines = sheet.splitlines()
    worse, stood = (
        next(i for i, line in enumerate(lines) if line.startswith(start))
        for start in ("Worse since ", "Stood before: ")
    )
    cleared = next(i for i, line in enumerate(lines) if line.startswith("Cleared since then"))
    assert worse < cleared < stood
    first = next(line for line in lines[worse:] if line.startswith(" 1  "))
    assert first == " 1  Falls short: No point asks more than the rating"
    assert "    Before      falls short at the level warning; over by 4 %" in lines
    assert "sheet.clearance" in "\n".join(lines[cleared:stood])
    numbers = [line[:2].strip() for line in lines if line[2:4] == "  " and line[:2].strip()]
    assert numbers == [str(number + 1) for number in range(len(numbers))]
    assert max(map(len, lines)) <= 80


def test_the_sheet_of_what_is_not_worse_says_so(held):
    review, since = held()
    sheet = review_sheet(review, width=80, colour=False, since=since)
    assert " of 2026-05-01: nothing\n" in sheet
    assert "Stood before: " in sheet
