"""The sheet: words escaped, cut and wrapped; numbers and colours as they are written."""

from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.report.pictures.frame import fitted, scale_bar
from checker.report.pictures.svg import Sheet, colour, cut, number, width_of, wrapped

HOSTILE = "<script>alert('&')</script>\x1b[2J\u202e\"]]>"


def test_hostile_words_stay_words():
    sheet = Sheet("tried")
    sheet.text((10, 20), HOSTILE)
    picture = sheet.picture(HOSTILE, HOSTILE, 40.0)
    root = ElementTree.fromstring(picture.svg)
    told = [each.text for each in root.iter() if each.text]
    assert told == ["<script>alert('&')</script>\\x1b[2J\\u202e\"]]>"] * 3
    assert "<script" not in picture.svg


def test_a_colour_outside_the_palette_is_refused():
    assert colour("ink") == "var(--ink)"
    with pytest.raises(KeyError):
        colour("red")


@given(st.floats(-1e6, 1e6))
def test_numbers_are_within_half_a_hundredth_and_plain(value):
    text = number(value)
    assert float(text) == pytest.approx(value, abs=0.00501)
    assert "e" not in text
    assert text != "-0"


@settings(max_examples=50)
@given(st.text(max_size=80), st.floats(40, 400))
def test_cut_and_wrapped_words_fit_their_room(text, room):
    assert width_of(cut(text, room)) <= room
    assert all(width_of(line) <= max(room, 8 * 7.2) for line in wrapped(text, room))


@settings(max_examples=50)
@given(st.floats(1e-3, 10), st.floats(1e-3, 10))
def test_the_scale_bar_is_as_long_as_it_says(wide, high):
    sheet = Sheet("bar")
    frame = fitted([(0.0, 0.0), (wide, high)], (40.0, 60.0), (340.0, 480.0))
    scale_bar(sheet, frame, (40.0, 560.0))
    root = ElementTree.fromstring(sheet.picture("bar", "bar", 600.0).svg)
    line = next(each for each in root.iter() if each.get("id") == "bar-scale-bar")
    start, end = (float(step.split()[0]) for step in line.get("d").strip("M").split("L"))
    value, unit = next(each.text for each in root.iter() if each.tag.endswith("text")).split()
    metres = float(value) * {"mm": 1e-3, "um": 1e-6, "m": 1.0, "km": 1e3}[unit]
    assert (end - start) / frame.scale == pytest.approx(metres, abs=0.011 / frame.scale)
    assert 40.0 < end - start <= 160.01
