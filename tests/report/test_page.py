"""The shell of the pages: what it lets through, and what it makes of text."""

import base64
import hashlib
import re

import pytest
from jinja2 import UndefinedError
from markupsafe import Markup

from checker.report.page import Section, Shell, page

SHELL = Shell("A drive", "Design review", (("Held", "on 2026-06-01"),), (Section("a", "First"),))


def sha256_of(html, element):
    text = re.search(f"<{element}>(.*?)</{element}>", html, re.DOTALL)[1]
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def test_the_policy_names_the_style_and_the_script_and_nothing_else():
    # CSP Level 3, 6.7.3: a hash source is the digest of the very text of the element.
    html = page("page.html.j2", SHELL)
    policy = re.search(r'Content-Security-Policy" content="([^"]*)"', html)[1].replace("&#39;", "'")
    assert policy == (
        f"default-src 'none'; style-src 'sha256-{sha256_of(html, 'style')}'; "
        f"script-src 'sha256-{sha256_of(html, 'script')}'; base-uri 'none'; form-action 'none'"
    )


def test_the_policy_stands_before_what_it_rules():
    html = page("page.html.j2", SHELL)
    assert html.index("Content-Security-Policy") < html.index("<style>") < html.index("<script>")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"),
        ("{{ 7 * 7 }}{% endblock %}", "{{ 7 * 7 }}{% endblock %}"),
        ("a\x1b[31m\u202e", r"a\x1b[31m\u202e"),
        ("\"'&", "&#34;&#39;&amp;"),
    ],
)
def test_text_stays_text(text, shown):
    html = page("page.html.j2", Shell(text, "k", ((text, text),), (Section("a", text),)))
    assert html.count(shown) == 5  # in title, heading, label, text and contents
    assert text == shown or text not in html


def test_no_style_stands_in_an_attribute():
    assert " style=" not in page("page.html.j2", SHELL)


def test_a_template_cannot_leave_out_what_it_asks_for(monkeypatch):
    from checker.report.page import _environment

    template = _environment().from_string("{{ missing }}")
    with pytest.raises(UndefinedError):
        template.render()


def test_markup_of_ours_is_not_escaped():
    from checker.report.page import _environment

    assert _environment().from_string("{{ a }}").render(a=Markup("<b>")) == "<b>"
