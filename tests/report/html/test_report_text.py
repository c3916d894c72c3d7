"""The HTML report as text: links, bytes, and what a spec cannot do to it."""

import datetime
import re
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import pytest

from checker.report.html.handbook import html_handbook
from checker.report.html.report import html_report
from checker.report.results import review_of
from checker.report.sarif import result_text
from checker.report.terminal import review_sheet
from checker.report.words import details_of
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook

DAY = datetime.date(2026, 6, 1)
ROOT = Path(__file__).parents[3]
EVIL = "</style></script><script>alert(1)</script><img src=x onerror=alert(2)>{{ 7*7 }}\"' &amp;"


class Links(HTMLParser):
    """The ids of a page and the fragments it links to."""

    def __init__(self, html):
        super().__init__()
        self.ids, self.targets, self.styled, self.elsewhere = [], set(), [], []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        for name, value in attrs:
            if name == "id":
                self.ids.append(value)
            elif name in ("href", "xlink:href", "src"):
                (self.targets.add if value.startswith("#") else self.elsewhere.append)(value)
            elif name in ("aria-labelledby", "for"):
                self.targets |= {f"#{each}" for each in value.split()}
            elif name == "style" or name.startswith("on"):
                self.styled.append((tag, name))


def reports():
    book = shipped_rulebook()
    for file in ("examples/sorrel.yaml", "examples/tansy-troubled.yaml"):
        yield html_report(review_of(file, book, DAY))
    yield html_handbook(book)


@pytest.mark.parametrize("html", list(reports()), ids=["healthy", "troubled", "handbook"])
def test_every_link_has_its_target_and_none_leads_elsewhere(html):
    links = Links(html)
    assert len(links.ids) == len(set(links.ids))
    assert {target[1:] for target in links.targets} <= set(links.ids)
    assert links.elsewhere == []
    assert links.styled == []  # the policy would forbid them
    assert html.count("<style") == html.count("<script") == 1
    assert len(html.encode()) < 3_000_000


def test_every_finding_stands_in_the_page():
    review = review_of("examples/tansy-troubled.yaml", shipped_rulebook(), DAY)
    html = html_report(review)
    short = [each for each in review.findings if each.outcome == "falls short"]
    assert len(re.findall(r'<li class="card [a-z ]+" id="f\d+"', html)) == len(short)
    for finding in review.findings:
        if finding.outcome in ("falls short", "not shown", "does not apply"):
            assert f"<code>{finding.rule.id}</code>" in html


def test_words_that_belong_to_a_value_stand_under_it_in_every_report():
    review = review_of("examples/tansy-troubled.yaml", shipped_rulebook(), DAY)
    short = [each for each in review.findings if each.outcome == "falls short"]
    html, sheet = html_report(review), review_sheet(review, width=200, colour=False)
    told = [pair for finding in short for pair in details_of(finding)]
    assert {"Case", "Nearest"} <= {label for label, _ in told}
    for label, text in told:
        assert f"<dt>{label}</dt><dd>{text}</dd>" in html
        assert f"    {label:<12}{text}\n" in sheet
    for finding in short:
        assert all(text in result_text(finding) for _, text in details_of(finding))


def test_a_number_leads_to_its_formula_and_on_to_a_line_of_the_spec():
    html = html_report(review_of("examples/tansy-troubled.yaml", shipped_rulebook(), DAY))
    step = re.search(r'<dt>Found</dt><dd><b><a href="#(s\d+)">', html)[1]
    text = re.search(rf'<li id="{step}".*?</li>', html, re.DOTALL)[0]
    inner = re.search(r'href="#(s\d+)"', text)
    while "<code>" not in text or 'href="#L' not in text:
        text = re.search(rf'<li id="{inner[1]}".*?</li>', html, re.DOTALL)[0]
        inner = re.search(r'href="#(s\d+)"', text) or inner
    line = re.search(r"(\S+) = ([^(]*) \(<a href=\"#L(\d+)\">line \3<", text)
    assert f'<span id="L{line[3]}"' in html


def test_a_hostile_spec_stays_text(opened, tmp_path):
    source = (ROOT / "examples/tansy.yaml").read_text(encoding="utf-8")
    quoted = EVIL.replace("'", "''") + "\u202eebircs\u202c"
    source = re.sub(r"\n  purpose: .*", lambda _: f"\n  purpose: '{quoted}'", source, count=1)
    source = source.replace("\n  name: Tansy", '\n  name: "Tan\\e[31msy\\u200b </title><b>"', 1)
    html = html_report(review_spec(source.encode(), "<i>x</i>.yaml", shipped_rulebook(), DAY))
    file = tmp_path / "page.html"
    file.write_text(html, encoding="utf-8")
    page = opened(file)
    assert page.said == []
    assert page.requests == []
    assert page.page.locator("script").count() == 1
    assert page.page.locator("img, b:has-text('sy'), i:has-text('x')").count() == 0
    text = page.page.locator("header").inner_text()
    assert EVIL + r"\u202eebircs\u202c" in text
    assert r"Tan\x1b[31msy\u200b </title><b>" in text
    assert "<i>x</i>.yaml" in text
    assert EVIL.replace("'", "''") in page.page.locator("pre").inner_text()
    assert not set(html) & set("\u202e\u202c\u2028\x1b")


def test_the_same_review_makes_the_same_bytes():
    code = (
        "import datetime, hashlib\n"
        "from checker.report.html.report import html_report\n"
        "from checker.report.results import review_of\n"
        "from checker.review.rulebook import shipped_rulebook\n"
        "review = review_of('examples/tansy.yaml', shipped_rulebook(), datetime.date(2026, 6, 1))\n"
        "print(hashlib.sha256(html_report(review).encode()).hexdigest())\n"
    )
    digests = {
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            cwd=ROOT,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)},
        ).stdout
        for seed in ("1", "2")
    }
    assert len(digests) == 1
