"""The review sheet: two golden widths, colour as a help only, and text that stays text."""

import os
import re
from dataclasses import replace
from pathlib import Path

import pytest
from rich.cells import cell_len

from checker import __version__
from checker.known import Known, Unknown, assumed
from checker.measures.registry import Measure, measures
from checker.report.derivation import derivation_sheets
from checker.report.inquiry import inquiries
from checker.report.terminal import review_sheet
from checker.review.rulebook import Change

GOLDEN = Path(__file__).parent / "golden"
ESCAPE = re.compile(r"\x1b\[[0-9;]*m")
SETS = b"""ratio_sets:
  short: {ratio: 2.5}
  long: {ratio: 2.4, gears: {wheel: {teeth: 58}}}
"""


def sheet_of(review, width=80, colour=False, everything=False) -> str:
    return review_sheet(review, width=width, colour=colour, everything=everything)


def flat(sheet: str) -> str:
    """The sheet as one line, whatever its width."""
    return " ".join(sheet.split())


def settled(sheet: str) -> str:
    """The sheet without what changes with each version: version number and digest of the rules."""
    sheet = sheet.replace(f"Thrustline {__version__}", "Thrustline 0.0.0")
    return re.sub(r"sha256 [0-9a-f]{12}", "sha256 000000000000", sheet)


@pytest.mark.parametrize(("width", "everything"), [(60, False), (100, True)])
def test_sheet_reads_as_kept(review, width, everything):
    # To renew after a wanted change: WRITE_GOLDEN=1 pytest tests/report/test_terminal.py
    sheet = settled(sheet_of(review, width, everything=everything))
    file = GOLDEN / f"sheet_{width}.txt"
    if os.environ.get("WRITE_GOLDEN"):
        file.write_text(sheet, encoding="utf-8")
    assert sheet == file.read_text(encoding="utf-8")


@pytest.mark.parametrize("width", [40, 60, 80, 120, 200])
@pytest.mark.parametrize("name", ["climb", "αβγ" * 9, "歯車" * 12])
def test_no_line_is_wider_than_the_terminal(review_of, spec, width, name):
    review = review_of(spec.replace(b"climb", name.encode()))
    target = f"operation.{name}.engine_speed"
    answers = inquiries(review.designs[None], target, None)
    answers += inquiries(review.designs[None], "shafts.input.torque", name)
    document = review.loaded.document
    lines = [
        *sheet_of(review, width, everything=True).splitlines(),
        *derivation_sheets(answers, document, width=width, colour=False).splitlines(),
    ]
    assert max(map(cell_len, lines)) <= width
    assert lines == [line.rstrip() for line in lines]


def test_colour_is_only_a_help(review):
    coloured = sheet_of(review, colour=True)
    assert "\x1b[" in coloured
    lines = [line.rstrip() for line in ESCAPE.sub("", coloured).splitlines()]
    assert lines == sheet_of(review).splitlines()


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        (r"\e[31mred", r"\x1b[31mred"),
        (r"\u009b2J", r"\x9b2J"),
        (r"one\ntwo\r\nthree", "one two three"),
        ("[bold red]loud[/] [link=file:///x]y[/link] :gear:", None),
        (r"\u202egnihton\u2066", r"\u202egnihton\u2066"),
        (r"\u200bnothing", r"\u200bnothing"),
    ],
)
def test_text_of_a_spec_stays_text(review_of, spec, written, shown):
    source = spec.replace(b"name: Sheet", f'name: "{written}"'.encode())
    source = source.replace(b"{name: climb", f'{{name: "{written}"'.encode())
    source = source.replace(b"by: A. Builder", f'by: "{written}"'.encode())
    shown = shown or written
    for colour in (False, True):
        sheet = sheet_of(review_of(source), 120, colour)
        assert not re.search(
            "[\x00-\x09\x0b-\x1a\x1c-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066]", sheet
        )
        bare = ESCAPE.sub("", sheet)
        assert "\x1b" not in bare
        assert f"Design review: {shown}, revision B" in bare
        assert f"Accepted    by {shown}: The propeller" in bare
        assert bare.splitlines()[1].startswith("Purpose")


def test_name_of_a_file_stays_text(review_of, spec):
    sheet = sheet_of(review_of(spec, "a\x1b]0;title\x07[red].yaml"), 120)
    assert r"Spec        a\x1b]0;title\x07[red].yaml, sha256" in sheet


def test_each_ratio_set_is_named(review_of, spec):
    sheet = sheet_of(review_of(spec + SETS))
    assert "The drive, ratio set short, ratio 2.5" in sheet
    assert "The drive, ratio set long, ratio 2.417" in sheet
    assert re.search(
        r"Falls short: The tooth counts give the stated ratio\n +Part +drive, ratio set", sheet
    )


def test_nothing_open_says_no_more_than_that(review_of, spec, book):
    kept = replace(
        book, rules=tuple(rule for rule in book.rules if rule.id == "sheet.clutch-damped")
    )
    sheet = sheet_of(review_of(spec, rules=kept))
    assert "Disposition: NO OPEN FINDINGS" in sheet
    assert "No disposition of this sheet permits a run or a flight." in flat(sheet)
    assert "Open:" not in sheet
    for word in ("approved", "airworthy"):
        assert word not in sheet.lower()


def test_limits_that_a_house_changed_are_told(review_of, spec, book):
    rule = book.rule("sheet.power")
    before = rule.limits["warning"]
    after = replace(before, values=(1.1,), text="at most 1.1")
    change = Change(rule.id, "warning", before, after, True, "a trial [red]run", "Shop")
    sheet = sheet_of(review_of(spec, rules=replace(book, changes=(change,), house="Shop")), 120)
    assert "with house rulebook Shop, 11 rules" in sheet
    assert "Limits changed by house rulebook Shop" in sheet
    told = "- sheet.power, warning: at most 1.0 becomes at most 1.1, LOOSER; reason given: "
    assert f"{told}a trial [red]run" in flat(sheet)


def test_shafts_that_turn_as_one_share_a_column(review_of, spec):
    source = spec.replace(b"drives: input", b"drives: crank").replace(
        b"{input: {}", b"{crank: {}, input: {}"
    )
    source += b"joints: {flange: {shaft: crank, to: input}}\n"
    sheet = sheet_of(review_of(source))
    assert re.search(r"^Speed and torque +crank, input +prop$", sheet, re.MULTILINE)


def test_dashes_say_what_would_fill_them(review_of, spec):
    sheet = sheet_of(review_of(spec.replace(b"  internal_reduction: none\n", b"")))
    field = "engine.internal_reduction (line 6)"
    assert f"State {field}, or none if there is none, to fill the dashes." in flat(sheet)


def test_what_is_missing_is_told_with_its_reason(review_of, spec, monkeypatch):
    def bearings(design, drive):
        return Unknown((("bearings",),), "no bearing of shafts.prop is listed")

    measure = Measure("later_for_tests", "drive", "1", "", False, "", bearings)
    monkeypatch.setitem(measures(), ("drive", "later_for_tests"), measure)
    sheet = flat(sheet_of(review_of(spec.replace(b"clutch: none\n", b""))))
    assert "- State bearings: no bearing of shafts.prop is listed; sheet.later waits" in sheet
    assert "- State clutch, or none if there is none: sheet.clutch-damped waits for it" in sheet


def test_assumptions_of_a_source_stand_together(review_of, spec, monkeypatch):
    def assuming(design, drive):
        values = ((38.0, "v_guide"), (38.0, "v_max"), (14.0, "v_min"))
        known = tuple(assumed(value, "m/s", symbol, "a maker") for value, symbol in values)
        return Known(2.0, "1", "S", inputs=known)

    measure = Measure("later_for_tests", "drive", "1", "", False, "", assuming)
    monkeypatch.setitem(measures(), ("drive", "later_for_tests"), measure)
    assert "- a maker: v_guide, v_max = 38 m/s; v_min = 14 m/s" in sheet_of(review_of(spec))


def test_findings_name_what_derive_is_asked_for(review):
    sheet = sheet_of(review)
    for measure in ("operation.climb.oil_temperature", "drive.ratio_disagreement"):
        assert f"    Measure     {measure}\n" in sheet
        assert inquiries(review.designs[None], measure, None)
