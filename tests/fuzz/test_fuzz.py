"""Whatever stands in a file, there is a review or one clear message, and no output is harmful.

``THRUSTLINE_FUZZ=5000 python -m pytest tests/fuzz -s`` runs longer and prints what came out.
"""

import collections
import datetime
import os
import re
from decimal import Decimal
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.report.html.report import html_report
from checker.report.json_report import entry, json_report
from checker.report.terminal import review_sheet
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook, with_house_rules
from checker.spec.document import read_document
from checker.spec.edit import value_at, with_values, written
from checker.spec.problem import SpecUnreadable
from checker.spec.remarks import load_remarks
from checker.spec.sign_off import load_sign_off

ROOT = Path(__file__).parents[2]
DAY = datetime.date(2026, 6, 1)
MANY = int(os.environ.get("THRUSTLINE_FUZZ", "25"))
SPECS = [
    *sorted((ROOT / "examples").glob("*.yaml")),
    *sorted((ROOT / "tests" / "specs").glob("*.yaml")),
]
HARMFUL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u200b]")
STRANGE = (
    "unknown", "none", "0", "-1", "1e308", "1e-308", ".nan", ".inf", "0 mm", "-5 kW", "1e30 mm",
    "99999999", "true", "[]", "{}", "null", "''", "'<script>alert(1)</script>'", "\"\\x1b[31m\"",
    "\"\\u202e\"", "*a", "&a b", "'a.b.c'", "../../etc/passwd", "20 degC", "1 rpm", "1e9 rpm",
    "0.0001 deg", "89.9 deg", "clockwise", "anticlockwise", "1000000 cSt", "'{{ 7 * 7 }}'",
)  # fmt: skip
LONG = settings(
    max_examples=MANY,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
SEEN: collections.Counter[str] = collections.Counter()


@pytest.fixture(scope="module", autouse=True)
def told():
    yield
    if os.environ.get("THRUSTLINE_FUZZ"):
        print(f"\nfuzzed: {', '.join(f'{count} {what}' for what, count in sorted(SEEN.items()))}")


@st.composite
def changed_spec(draw):
    """A spec of ours with some values exchanged, and sometimes lines lost or doubled."""
    lines = draw(st.sampled_from(SPECS)).read_text(encoding="utf-8").splitlines()
    for _ in range(draw(st.integers(1, 4))):
        index = draw(st.integers(0, len(lines) - 1))
        kind = draw(st.sampled_from(("value", "value", "value", "lose", "double", "swap")))
        if kind == "value":
            lines[index] = re.sub(
                r": [^#{}\[\]]+?(?=\s*(#|$|[,}]))",
                lambda _: ": " + draw(st.sampled_from(STRANGE)),
                lines[index],
                count=1,
            )
        elif kind == "lose":
            del lines[index]
        elif kind == "double":
            lines.insert(index, lines[index])
        else:
            other = draw(st.integers(0, len(lines) - 1))
            lines[index], lines[other] = lines[other], lines[index]
    return "\n".join(lines).encode()


DOCUMENTS = [read_document(file.read_bytes(), file.name) for file in SPECS]
NUMBERS = [
    [path for path in document.marks if written(value_at(document, path)) is not None]
    for document in DOCUMENTS
]
FACTORS = st.sampled_from(["0", "-1", "1e-6", "0.01", "0.3", "0.9", "1.1", "3", "30", "1e3", "1e9"])


@st.composite
def scaled_spec(draw):
    """A spec of ours in which some numbers are far from what they were."""
    index = draw(st.integers(0, len(DOCUMENTS) - 1))
    document, numbers = DOCUMENTS[index], NUMBERS[index]
    values = {}
    for path in draw(st.lists(st.sampled_from(numbers), min_size=1, max_size=3, unique=True)):
        number = written(value_at(document, path))
        values[path] = number.at(number.number * Decimal(draw(FACTORS)))
        if draw(st.integers(0, 9)) == 0:
            values[path] = "unknown"
    return with_values(document, values)


def is_clear(unreadable):
    told = str(unreadable)
    assert told
    assert "Traceback" not in told
    assert not HARMFUL.search(told)
    assert all(each.message for each in unreadable.problems)


@LONG
@given(changed_spec() | scaled_spec())
def test_a_changed_spec_is_reviewed_or_refused(source):
    try:
        review = review_spec(source, "fuzzed.yaml", shipped_rulebook(), DAY)
    except SpecUnreadable as unreadable:
        SEEN["refused"] += 1
        is_clear(unreadable)
        return
    SEEN[review.disposition] += 1
    broken = [each for each in review.findings if each.outcome == "broken"]
    assert not broken, [(each.rule.id, each.subject.label, each.reason) for each in broken]
    sheet = review_sheet(review, width=80, colour=False, everything=True)
    report = json_report([entry(review)], review.book, DAY.isoformat())
    assert not HARMFUL.search(sheet)
    assert not HARMFUL.search(report)
    assert "\\u202e" not in report.replace("\\\\", "")


@LONG
@given(
    st.binary(max_size=400)
    | st.text(max_size=400).map(lambda text: text.encode("utf-8", "replace"))
)
def test_any_bytes_are_refused_with_a_clear_message(source):
    for read in (
        lambda: review_spec(source, "fuzzed.yaml", shipped_rulebook(), DAY),
        lambda: load_remarks(source, "fuzzed.remarks"),
        lambda: load_sign_off(source, "fuzzed.signoff"),
    ):
        with pytest.raises(SpecUnreadable) as raised:
            read()
        is_clear(raised.value)


NODES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20)
    | st.sampled_from(["gears.contact-ratio-spur", "caution", "at_least", "1 mm", "mesh"]),
    lambda inner: st.lists(inner, max_size=4)
    | st.dictionaries(
        st.sampled_from(["thrustline_rulebook", "name", "rules", "limits", "rule", "id", "measure",
                         "why", "sources", "looks_at", "reason", "when"]) | st.text(max_size=8),
        inner, max_size=6,
    ),
    max_leaves=25,
)  # fmt: skip


@LONG
@given(NODES)
def test_any_house_rulebook_is_read_or_refused(tmp_path_factory, node):
    file = tmp_path_factory.mktemp("house") / "shop.yaml"
    file.write_text(yaml.safe_dump(node, allow_unicode=True), encoding="utf-8")
    try:
        with_house_rules(shipped_rulebook(), file)
        SEEN["rulebooks read"] += 1
    except SpecUnreadable as unreadable:
        SEEN["rulebooks refused"] += 1
        is_clear(unreadable)


@settings(LONG, max_examples=max(MANY // 8, 3))
@given(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=40))
def test_any_name_stays_text_in_the_page(name):
    source = (ROOT / "tests" / "report" / "sheet_spec.yaml").read_text(encoding="utf-8")
    data = yaml.safe_load(source)
    data["drive"]["name"] = name
    try:
        review = review_spec(
            yaml.safe_dump(data, allow_unicode=True).encode(), "x.yaml", shipped_rulebook(), DAY
        )
    except SpecUnreadable as unreadable:
        is_clear(unreadable)
        return
    page = html_report(review)
    assert not HARMFUL.search(page)
    assert page.count("<script") == 1
    assert page.count("<style") == 1
