"""Untrusted text prints on one line and hides nothing."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.text import plain


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("gear 3 · 20° ± 0.1 µm ΔK", "gear 3 · 20° ± 0.1 µm ΔK"),
        ("a\nb\r\tc", r"a\nb\r\tc"),
        ("\x1b[31mred\x00", r"\x1b[31mred\x00"),
        ("\x7f\x85\x9b", r"\x7f\x85\x9b"),
        ("abc\u202edef\u2066", r"abc\u202edef\u2066"),
        ("a\u200bb\ufeffc\u00add", r"a\u200bb\ufeffc\xadd"),
        ("line\u2028end\u2029", r"line\u2028end\u2029"),
        ("tag\U000e0041", r"tag\U000e0041"),
        ("half\ud800", r"half\ud800"),
    ],
)
def test_control_and_invisible_characters_are_spelled_out(text, printed):
    assert plain(text) == printed


def test_every_control_break_surrogate_and_bidirectional_control_is_spelled_out():
    # General categories and bidirectional classes of the Unicode Character Database, which Python
    # carries; U+061C, U+200E and U+200F are the remaining members of Bidi_Control (UAX #9).
    bidi = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    dangerous = [
        chr(code)
        for code in range(0x110000)
        if unicodedata.category(chr(code)) in {"Cc", "Cs", "Zl", "Zp"}
        or unicodedata.bidirectional(chr(code)) in bidi
        or code in {0x061C, 0x200E, 0x200F}
    ]
    assert len(dangerous) > 2000
    assert [each for each in dangerous if plain(each) == each] == []


@given(st.text())
def test_what_is_printed_can_be_encoded_and_is_stable(text):
    printed = plain(text)
    assert printed.encode().decode() == printed
    assert plain(printed) == printed
    assert len(printed.splitlines()) <= 1
