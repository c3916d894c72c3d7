"""Values, limits and margins in words."""

from dataclasses import replace

import pytest

from checker.known import Detail, Known, Unknown
from checker.report.words import (
    counted,
    details_of,
    first_sentence,
    found_text,
    limit_text,
    listed,
    margin_is_relative,
    margin_text,
    source_text,
)
from checker.review.finding import Finding
from checker.review.rule import Limit, Source


def finding(value, unit, kind, values, text="", outcome="falls short"):
    """A finding of a value held against a limit; the rule and the part do not matter here."""
    known = Known(value, unit)
    limit = Limit(kind, values, unit, text or f"{kind} {values}")
    return Finding(None, None, outcome, None, known, limit, limit.margin(value))


@pytest.mark.parametrize(
    ("value", "unit", "kind", "values", "relative", "words"),
    [
        (1.05, "1", "at_least", (1.1,), True, "short by 4.5 %"),
        (1.1, "1", "at_least", (1.1,), True, "nothing to spare"),
        (1.43, "1", "at_least", (1.1,), True, "30 % to spare"),
        (12, "1", "at_most", (1,), True, "12 times the limit"),
        (9, "1", "at_most", (1,), True, "9 times the limit"),
        (1.9, "1", "at_most", (1,), True, "over by 90 %"),
        (121, "1", "at_least", (1,), True, "120 times the limit"),
        (-3, "1", "at_most", (2,), True, "5 to spare"),
        (-3, "1", "at_most", (-4,), True, "over by 25 %"),
        (100, "1", "between", (8, 16), True, "outside by 84"),
        (0, "1", "at_least", (2,), True, "short by 2"),
        (-0.019, "m", "at_least", (0.001,), True, "short by 20 mm"),
        (-1.5, "1", "at_least", (-1.0,), True, "short by 50 %"),
        (391.15, "K", "at_most", (383.15,), False, "over by 8 K"),
        (353.15, "K", "at_most", (383.15,), False, "30 K to spare"),
        (0.002, "m", "at_most", (0,), False, "over by 2 mm"),
        (-500.0, "Pa", "at_least", (0.0,), False, "short by 0.5 kPa"),
        (-0.001, "m", "between", (0.0, 0.01), False, "outside by 1 mm"),
        (0.02, "m", "between", (0.0, 0.01), False, "outside by 10 mm"),
        (1.02, "1", "between", (0.9, 1.1), True, "7.3 % to spare"),
        (0.001, "m", "between", (0.0, 0.01), False, "1 mm to spare"),
    ],
)
def test_margin_in_words(value, unit, kind, values, relative, words):
    found = finding(value, unit, kind, values)
    assert margin_is_relative(found) is relative
    assert margin_text(found) == words


@pytest.mark.parametrize(
    ("value", "unit", "kind", "values", "text", "words"),
    [
        (92.4e-6, "m", "at_most", (20e-6,), "at most 20 um", "92.4 um; asks at most 20 um; 4.6"),
        (0.0002, "m", "at_least", (0.003,), "at least 3 mm", "0.2 mm; asks at least 3 mm; short"),
        (2.0, "kg", "between", (5.0, 30.0), "between 5 kg and 30 kg", "2 kg; asks between 5 kg"),
        (373.15, "K", "at_most", (383.15,), "at most 110 degC", "100 degC; asks at most 110 degC;"),
        (0.002, "m", "at_most", (0.0,), "at most 0 um", "2000 um; asks at most 0 um; over by 2000"),
        (0.4, "1", "at_least", (0.5,), "at least 0.5", "0.4; asks at least 0.5; short by 20 %"),
        (0.4, "m", "at_most", (1.0,), "no such text", "400 mm; asks no such text; 60 % to spare"),
    ],
)
def test_value_is_in_the_unit_of_its_limit(value, unit, kind, values, text, words):
    assert found_text(finding(value, unit, kind, values, text)).startswith(words)


@pytest.mark.parametrize(
    ("kind", "values", "text", "words"),
    [
        ("is", (True,), "is True", "yes"),
        ("is", (False,), "is False", "no"),
        ("one_of", ("roller", "sprag"), "", "one of roller, sprag"),
        ("none_of", ("ball",), "", "none of ball"),
        ("between", (0.1, 0.2), "between 10 % and 20 %", "between 10 % and 20 %"),
        ("at_most", (1,), "at most \x1b[2J", r"at most \x1b[2J"),
    ],
)
def test_limit_in_words(kind, values, text, words):
    assert limit_text(Limit(kind, values, "", text)) == words


def test_truths_and_texts_have_no_margin():
    assert found_text(finding(False, "", "is", (True,))) == "no; asks yes"
    assert found_text(finding(True, "", "is", (True,), outcome="meets")) == "yes"
    assert found_text(finding("b\nal", "", "one_of", ("roller",))) == r"b\nal; asks one of roller"


def test_first_sentence_keeps_initials_and_figures():
    assert first_sentence("See T. H. Wentzell, Fig. 3 there. Then\nmore.") == (
        "See T. H. Wentzell, Fig. 3 there."
    )
    assert first_sentence("No stop") == "No stop"


def test_source_says_once_that_it_is_from_memory():
    assert source_text(Source("memory", "A book", "p. 3")) == "A book, p. 3 (from memory)"
    assert source_text(Source("memory", "A book (from memory)", "")) == "A book (from memory)"


def test_numbers_with_nouns():
    assert (counted(1, "rule"), counted(0, "rule")) == ("1 rule", "0 rules")
    assert counted(2, "advisory", "advisories") == "2 advisories"
    assert listed(["a", "b", "c"], 2) == "a, b and 1 more"
    assert listed(["a", "b"], 2) == "a, b"


def test_details_stand_once_under_their_label_however_deep():
    parts = [Known(f"part {each}", "", "part", origin=Detail("a count")) for each in "abcdef"]
    inner = Known(2.0, "1", "x", inputs=(Known("the worst", "", "case", origin=Detail("y")),))
    silent = Known("elastomer", "", "kind", path=("damper", "kind"))
    found = finding(1.0, "1", "at_least", (2.0,))
    outer = Known(1.0, "1", "z", inputs=(inner, silent, *parts, parts[0]))
    assert details_of(replace(found, value=outer)) == [
        ("Case", "the worst"),
        ("Part", "part a, part b, part c, part d and 2 more"),
    ]
    assert details_of(found) == []
    assert details_of(replace(found, value=Unknown())) == []
