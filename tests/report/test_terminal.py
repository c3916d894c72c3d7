"""The review sheet: two golden widths, colour as a help only, and text that stays text."""

import os
import re
from dataclasses import replace
from pathlib import Path

import pytest

from checker import __version__
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


@pytest.mark.parametrize("width", [60, 80, 120, 200])
def test_no_line_is_wider_than_the_terminal(review, width):
    lines = sheet_of(review, width, everything=True).splitlines()
    assert max(map(len, lines)) <= width
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
        r"Unmet: The tooth counts give the stated ratio\n +Part +drive, ratio set", sheet
    )


def test_nothing_open_says_no_more_than_that(review_of, spec, book):
    kept = replace(
        book, rules=tuple(rule for rule in book.rules if rule.id == "sheet.clutch-damped")
    )
    sheet = sheet_of(review_of(spec, rules=kept))
    assert "Disposition: NO OPEN FINDINGS" in sheet
    assert "No disposition of this sheet permits a run or a flight." in " ".join(sheet.split())
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
    told = (
        "- sheet.power, warning: at most 1.0 becomes at most 1.1, LOOSER, because a trial [red]run"
    )
    assert told in sheet
