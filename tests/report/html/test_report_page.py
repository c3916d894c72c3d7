"""The HTML report in a browser: accessible, still, self-contained, whole without scripts."""

import datetime
import re
from dataclasses import replace
from itertools import pairwise

import pytest

from checker.report.first_run_card import html_card
from checker.report.html.compare import html_compare
from checker.report.html.handbook import html_handbook
from checker.report.html.report import html_report
from checker.report.pictures.picture import Picture
from checker.report.results import review_of
from checker.review.changes import changes
from checker.review.first_run import first_run
from checker.review.rulebook import shipped_rulebook

DAY = datetime.date(2026, 6, 1)
PAPERS = {"A4": 180, "Letter": 186}  # width between the margins of 15 mm [mm]
SHORTENED = """
    document.querySelectorAll("details").forEach(each => { each.open = true });
    document.querySelectorAll("main li, article, tr, .sources div, pre span, dd a, p a").forEach(
        each => { if (each.matches(":nth-child(n+5)")) each.remove(); }
    );
    document.querySelectorAll(".closed details:nth-of-type(n+3)").forEach(each => each.remove());
"""
PICTURE = Picture(
    "side",
    "A shaft",
    "A shaft of 30 mm.",
    '<svg role="img" aria-label="A shaft" viewBox="0 0 900 300" width="900" height="300">'
    '<path d="M0 150h900" stroke="var(--ink)"/></svg>',
)
EXAMPLE = "examples/tansy-troubled.yaml"


@pytest.fixture(scope="session")
def pages(tmp_path_factory):
    """A troubled drive whole and by a few rules, a spec of which much is not shown, the handbook.

    axe takes minutes for thousands of steps that are all alike; it gets a few of each kind.
    """
    folder = tmp_path_factory.mktemp("pages")
    book = shipped_rulebook()
    few = replace(book, rules=book.rules[::12])
    made = {
        "troubled": html_report(review_of(EXAMPLE, book, DAY)),
        "few": html_report(review_of(EXAMPLE, few, DAY), (PICTURE,)),
        "unshown": html_report(review_of("tests/report/sheet_spec.yaml", few, DAY)),
        "handbook": html_handbook(book),
        "few handbook": html_handbook(few),
        "card": html_card(first_run(review_of("examples/tansy.yaml", few, DAY))),
        "compared": html_compare(
            changes(review_of("examples/tansy.yaml", few, DAY), review_of(EXAMPLE, few, DAY)),
            (PICTURE,),
        ),
    }
    files = {}
    for name, html in made.items():
        files[name] = folder / f"{name}.html"
        files[name].write_text(html, encoding="utf-8")
    return files


@pytest.mark.parametrize("name", ["few", "unshown", "few handbook", "card", "compared"])
def test_axe_finds_nothing(pages, opened, name):
    page = opened(pages[name])
    page.page.evaluate(SHORTENED)
    for width in (360, 1200):
        page.page.set_viewport_size({"width": width, "height": 900})
        for scheme in ("light", "dark"):
            page.page.emulate_media(color_scheme=scheme)
            assert page.violations() == [], (width, scheme)


@pytest.mark.parametrize("name", ["troubled", "unshown", "handbook"])
def test_a_page_is_still_and_asks_the_network_nothing(pages, opened, name):
    page = opened(pages[name])
    assert page.page.title()
    assert page.said == []
    assert page.requests == []


@pytest.mark.parametrize("name", ["troubled", "unshown", "handbook"])
def test_nothing_is_wider_than_the_window(pages, opened, name):
    page = opened(pages[name])
    for width in (1200, 768, 360):
        page.page.set_viewport_size({"width": width, "height": 900})
        assert page.overflow() <= 0


@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_is_wider_than_the_paper(pages, opened, paper):
    page = opened(pages["troubled"], round(PAPERS[paper] / 25.4 * 96), "dark")
    page.page.emulate_media(media="print")
    assert page.overflow() <= 0
    ground = page.page.evaluate("getComputedStyle(document.documentElement).backgroundColor")
    assert ground == "rgb(255, 255, 255)"
    page = opened(pages["few"])
    assert page.page.pdf(format=paper).startswith(b"%PDF")


def test_paper_shows_what_is_folded_and_leaves_out_what_is_not_asked_for(pages, opened):
    page = opened(pages["troubled"]).page
    page.emulate_media(media="print")
    assert page.locator(".card details dl").first.is_visible()
    assert not page.locator(".calculations").is_visible()
    page.emulate_media(media="screen")
    page.check("#print-calculations")
    page.emulate_media(media="print")
    assert page.locator(".calculations").is_visible()


def test_without_scripts_all_is_there_and_no_filter(pages, opened):
    page = opened(pages["troubled"], scripts=False).page
    assert page.locator(".outcome").inner_text().strip() == "HOLD"
    assert not page.locator("#filters").is_visible()
    cards = page.locator("#findings-list .card")
    assert cards.count() > 50
    cards.first.locator("summary").click()
    assert cards.first.locator("details dl").is_visible()


def test_filters_narrow_the_cards_and_say_how_many_are_left(pages, opened):
    page = opened(pages["troubled"]).page
    cards = page.locator("#findings-list .card")
    total = cards.count()
    page.uncheck("#filters input[value=warning]")
    cautions = cards.locator("visible=true").count()
    assert 0 < cautions < total
    assert page.locator("#shown").inner_text() == f"{cautions} of {total} shown"
    page.fill("#seek", "no such words")
    assert cards.locator("visible=true").count() == 0
    page.goto(page.url.split("#")[0] + "#f1")  # a link to a card shows it
    assert page.locator("#f1").is_visible()


def test_the_keyboard_reaches_skip_link_filters_and_cards(pages, opened):
    page = opened(pages["few"]).page
    page.evaluate(SHORTENED)
    seen = []
    while "SUMMARY" not in seen and len(seen) < 40:
        page.keyboard.press("Tab")
        seen.append(
            page.evaluate(
                "(() => { const at = document.activeElement;"
                " return at.id || at.className || at.tagName })()"
            )
        )
    assert seen[0] == "skip"
    assert {"seek", "unfold", "fold", "print-met", "SUMMARY"} <= set(seen)
    outline = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert outline == "solid"


def test_headings_go_down_one_level_at_a_time(pages):
    for file in pages.values():
        levels = [int(each) for each in re.findall(r"<h([1-6])", file.read_text(encoding="utf-8"))]
        assert levels[0] == 1
        assert levels.count(1) == 1
        assert all(after <= before + 1 for before, after in pairwise(levels))
