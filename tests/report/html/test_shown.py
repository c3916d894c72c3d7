"""A card leads to the pictures that show what its finding is about."""

import datetime
import re

import pytest

from checker.report.html.report import html_report
from checker.report.html.shown import pictures_of
from checker.report.pictures.charts import charts
from checker.report.pictures.drawings import drawings
from checker.report.results import review_of
from checker.review.rulebook import shipped_rulebook


@pytest.fixture(scope="module")
def review():
    day = datetime.date(2026, 6, 1)
    return review_of("examples/sorrel-troubled.yaml", shipped_rulebook(), day)


@pytest.fixture(scope="module")
def pictures(review):
    design = review.designs[None]
    return (*drawings(design), *charts(review, design))


@pytest.mark.parametrize(
    ("family", "part", "names"),
    [
        ("torsion", "drive", {"interference", "vibratory-torque"}),
        ("shafts", "shafts.lay", {"shaft-lay"}),
        ("gears", "meshes.second", {"mesh-2"}),
        ("heat", "lubrication", {"heat-balance"}),
        ("records", "records", set()),
    ],
)
def test_pictures_by_family_and_part(review, pictures, family, part, names):
    finding = next(
        each
        for each in review.findings
        if each.rule.family == family and each.subject.label == part
    )
    assert {each.name for each in pictures_of(finding, pictures)} == names


def test_each_link_to_a_picture_has_its_picture(review, pictures):
    page = html_report(review, pictures)
    linked = set(re.findall(r'href="#(picture-[^"]+)"', page))
    assert len(linked) > 4
    assert linked <= set(re.findall(r'id="(picture-[^"]+)"', page))


def test_without_pictures_no_card_leads_to_one(review):
    assert "#picture-" not in html_report(review)
