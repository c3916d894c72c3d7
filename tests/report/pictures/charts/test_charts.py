"""What holds of every chart: labels, variables for colours, still bytes, texts that stay texts."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from checker.known import Unknown
from checker.report.pictures.chart import Drawing, identifier, standalone
from checker.report.pictures.charts import charts
from checker.report.pictures.palette import DARK, LIGHT
from checker.review.review import review_spec
from checker.review.rulebook import Rulebook
from tests.report.pictures.charts.conftest import DAY, EXAMPLES
from tests.report.pictures.charts.reading import SVG, parsed, texts

COLOUR = re.compile(r"none|var\(--(?P<name>[a-z0-9-]+)\)|url\(#(?P<id>[a-z0-9_-]+)\)")
HOSTILE = "$x^2$<script>alert(1)</script>"


def test_every_picture_is_labelled_by_title_and_words(pictures):
    assert len({each.name for each in pictures}) == len(pictures) > 5
    for each in pictures:
        root = parsed(each)
        assert root.get("role") == "img"
        for reference, text in (
            ("aria-labelledby", each.title),
            ("aria-describedby", each.describes),
        ):
            named = root.findall(f".//*[@id='{root.get(reference)}']")
            assert [one.text for one in named] == [text]
        assert re.search(r"\d", each.describes)


def test_ids_are_of_the_picture_and_its_own(pictures):
    ids = [one.get("id") for each in pictures for one in parsed(each).iter() if one.get("id")]
    assert len(set(ids)) == len(ids)
    for each in pictures:
        for one in parsed(each).iter():
            assert one.get("id", each.name).startswith(each.name)


def test_every_colour_is_a_variable_of_the_palette(pictures):
    for each in pictures:
        ids = {one.get("id") for one in parsed(each).iter()}
        for one in parsed(each).iter():
            for attribute in ("fill", "stroke"):
                match = COLOUR.fullmatch(one.get(attribute, "none"))
                assert match, one.get(attribute)
                assert match["name"] is None or match["name"] in LIGHT
                assert match["id"] is None or match["id"] in ids


def test_no_picture_brings_styles_scripts_or_links(pictures):
    for each in pictures:
        tags = {one.tag.removeprefix(SVG) for one in parsed(each).iter()}
        assert tags <= {"svg", "title", "desc", "g", "path", "rect", "circle", "text", "pattern"}
        assert all("style" not in one.attrib for one in parsed(each).iter())


def test_texts_are_large_enough_and_inside_the_picture(pictures):
    for each in pictures:
        root = parsed(each)
        width, height = float(root.get("width")), float(root.get("height"))
        assert width == 720
        for one in root.iter(f"{SVG}text"):
            assert float(one.get("font-size")) >= 11
            assert 0 <= float(one.get("x")) <= width
            assert 8 <= float(one.get("y")) <= height, one.text


def test_the_same_review_gives_the_same_bytes(review, design, pictures):
    assert charts(review, design) == pictures


def test_what_is_not_known_is_not_drawn(little):
    design = next(iter(little.designs.values()))
    assert isinstance(design.survey, Unknown)
    assert [each.name for each in charts(little, design)] == ["margins"]
    assert charts(replace(little, findings=()), design) == ()


def test_a_picture_that_fails_leaves_the_others_and_says_so(review, design, pictures, monkeypatch):
    def failing(design):
        raise ZeroDivisionError("division by <zero>")

    monkeypatch.setattr("checker.report.pictures.charts.interference_diagram", failing)
    made = charts(review, design)
    assert len(made) == len(pictures)
    (other,) = set(made) - set(pictures)
    assert other.title == "Not drawn: interference"
    assert "ZeroDivisionError: division by <zero>" in other.describes
    assert parsed(other)


def test_hostile_names_stay_text():
    source = (EXAMPLES / "tansy.yaml").read_text(encoding="utf-8")
    assert "name: climb" in source
    assert "name: case elbow" in source
    source = source.replace("name: climb", f"name: '{HOSTILE}'")
    source = source.replace("name: case elbow", f"name: '{HOSTILE}'")
    review = review_spec(source.encode(), "hostile.yaml", Rulebook(()), DAY)
    made = charts(review, review.designs[None])
    said = [text for each in made for text in texts(parsed(each))]
    assert any(text.startswith("$x^2$<scr") for text in said)
    assert any(HOSTILE in text for text in said)
    assert all("<script" not in each.svg for each in made)


def test_control_characters_are_spelled_out():
    drawing = Drawing("x", "a\x1b[2Jb")
    drawing.text(10, 20, "c\x00d")
    picture = drawing.picture("e\u202ef")
    assert parsed(picture)
    assert picture.title == r"a\x1b[2Jb"


def test_a_file_of_its_own_has_its_colours_written_out(pictures):
    for palette in (LIGHT, DARK):
        svg = standalone(pictures[0], palette)
        assert ElementTree.fromstring(svg).tag == f"{SVG}svg"
        assert "var(" not in svg
        assert palette["meets"] in svg


@pytest.mark.parametrize(
    ("one", "other"), [("a b", "a-b"), ("Pump", "pump"), ("ö", "ü"), ("x" * 60, "x" * 61)]
)
def test_names_that_differ_give_ids_that_differ(one, other):
    made = {identifier("shaft", one), identifier("shaft", other)}
    assert len(made) == 2
    assert all(re.fullmatch("[a-z][a-z0-9_-]*", each) for each in made)
