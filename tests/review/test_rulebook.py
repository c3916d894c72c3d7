"""The shipped rulebook is well formed; a house one adds, tightens, and says what it loosens."""

import datetime
import itertools
import re

import jsonschema
import pytest

from checker.review.rule import LEVELS
from checker.review.rulebook import shipped_rulebook, with_house_rules
from checker.review.rulebook_schema import family_schema, house_schema, schema_problems
from checker.shipped import shipped
from checker.spec.document import read_document
from checker.spec.problem import SpecUnreadable

FAMILIES = sorted(shipped("rules").glob("*.yaml"))
RULES = shipped_rulebook().rules


@pytest.mark.parametrize("file", FAMILIES, ids=lambda file: file.stem)
def test_each_family_has_the_form(file):
    document = read_document(file.read_bytes(), file.name)
    assert schema_problems(document, family_schema()) == []
    assert document.data["family"] == file.stem


def test_ids_and_titles_are_unique():
    for name in ("id", "title"):
        seen = [getattr(rule, name) for rule in RULES]
        assert sorted(set(seen)) == sorted(seen)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_each_rule_says_why_on_whose_authority_and_what_to_do(rule):
    assert rule.id.startswith(rule.family + ".")
    for text in (rule.why, rule.remedy, rule.wrong_when, rule.title):
        assert not re.search(r"\b(todo|tbd|unknown\.?$|n/a)\b", text, re.IGNORECASE)
    assert len(rule.why.split()) >= 8
    assert len(rule.remedy.split()) >= 3
    for source in rule.sources:
        assert source.cite
        if source.kind == "practice":
            assert "no source" in source.cite or "trade" in source.cite or source.clause
    assert not re.search(r"\b(safe|approved|airworthy)\b", rule.title, re.IGNORECASE)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_graver_level_is_never_the_easier_to_reach(rule):
    """Whatever falls short at a level falls short of the limits below it as well."""
    held = [rule.limits[level] for level in LEVELS if level in rule.limits]
    for graver, milder in itertools.pairwise(held):
        if graver.kind == milder.kind == "at_least":
            assert graver.values[0] < milder.values[0]
        if graver.kind == milder.kind == "at_most":
            assert graver.values[0] > milder.values[0]


def test_there_are_enough_rules():
    assert len(RULES) >= 45


def test_the_schemas_are_schemas():
    for schema in (family_schema(), house_schema()):
        jsonschema.Draft202012Validator.check_schema(schema)


HOUSE = "thrustline_rulebook: 1\nname: Workshop\n"
ADDED = """\
rules:
  - id: shop.two-blades
    title: The propeller has two blades
    looks_at: propeller
    measure: blades
    limits: {advisory: {is: 2}}
    why: The workshop balances two-blade propellers alone, so far.
    remedy: Choose a two-blade propeller.
    sources: [{kind: practice, cite: "our own choice, no source"}]
    wrong_when: none known
"""


def house(tmp_path, text):
    file = tmp_path / "shop.yaml"
    file.write_text(text, encoding="utf-8")
    return with_house_rules(shipped_rulebook(), file)


def test_a_house_rule_is_added_under_its_name(tmp_path):
    rule = house(tmp_path, HOUSE + ADDED).rule("shop.two-blades")
    assert (rule.house, rule.family) == ("Workshop", "Workshop")


def limit_change(limits, reason=""):
    more = f", reason: {reason}" if reason else ""
    return f"limits:\n  - {{rule: train.ratio-as-stated, limits: {limits}{more}}}\n"


def test_a_tighter_limit_needs_no_reason(tmp_path):
    book = house(tmp_path, HOUSE + limit_change("{caution: {at_most: 0.001}}"))
    assert book.rule("train.ratio-as-stated").limits["caution"].values == (0.001,)
    assert [change.looser for change in book.changes] == [False]
    assert shipped_rulebook().rule("train.ratio-as-stated").limits["caution"].values == (0.005,)


def test_a_new_level_is_not_looser(tmp_path):
    book = house(tmp_path, HOUSE + limit_change("{warning: {at_most: 0.1}}"))
    assert list(book.rule("train.ratio-as-stated").limits) == ["warning", "caution"]
    assert book.changes[0].before is None


def test_a_looser_limit_with_a_reason_is_recorded(tmp_path):
    book = house(
        tmp_path, HOUSE + limit_change("{caution: {at_most: 0.02}}", "rounded on our sheets")
    )
    (change,) = book.changes
    assert change.looser
    assert change.reason == "rounded on our sheets"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (limit_change("{caution: {at_most: 0.02}}"), "gives no reason"),
        (limit_change("{caution: {at_least: 0.001}}"), "gives no reason"),
        (limit_change("{caution: {at_most: 0.02}}", "' '"), "not the form"),
        (limit_change("{warning: {at_most: 0.001}}"), "the tighter its limit"),
        ("limits: [{rule: train.shares-complete, limits: {caution: {between: [1.0, 0.9]}}}]\n",
         "lower end first"),
        ("limits:\n  - {rule: train.ratio-as-stated, limits: {caution: {at_most: 0.002}}}\n"
         "  - {rule: train.ratio-as-stated, limits: {caution: {at_most: 0.001}}}\n",
         "each limit once"),
        ("limits: [{rule: train.hunting-toth, limits: {advisory: {at_most: 1}}}]\n",
         "did you mean 'train.hunting-tooth'?"),
        ("danger: true\n", "one of thrustline_rulebook, name, rules, limits"),
        (limit_change("{caution: {at_most: many}}"), "a bare number"),
        (limit_change("{caution: {about: 1}}"), "not the form"),
        (limit_change("{caution: {at_most: 0.1, at_least: 0}}"), "not the form"),
        ("limits: [{rule: no.such, limits: {caution: {at_most: 1}}}]\n", "no such rule"),
        (ADDED.replace("measure: blades", "measure: feathers"), "no such measure"),
        (ADDED.replace("    why:", "    because:"), "not the form"),
        (ADDED.replace("shop.two-blades", "train.hunting-tooth"), "id is taken"),
        (ADDED.replace("is: 2", "is: 2, at_most: 3"), "not the form"),
        (ADDED.replace("measure: blades\n    limits: {advisory: {is: 2}}",
                       "measure: diameter\n    limits: {advisory: {at_most: 2}}"), "with its unit"),
        (ADDED.replace("measure: blades\n    limits: {advisory: {is: 2}}",
                       "measure: diameter\n    limits: {advisory: {at_most: 2 kg}}"), "length"),
    ],
)  # fmt: skip
def test_a_faulty_house_rulebook_is_refused_with_its_place(tmp_path, text, words):
    with pytest.raises(SpecUnreadable) as caught:
        house(tmp_path, HOUSE + text)
    assert words in str(caught.value)
    assert re.search(r"shop\.yaml:\d+:\d+: ", str(caught.value))


def test_a_house_rulebook_without_its_head_is_refused(tmp_path):
    with pytest.raises(SpecUnreadable, match="thrustline_rulebook"):
        house(tmp_path, ADDED)


def test_a_house_rulebook_is_data(tmp_path):
    """Tags that would run code or read files are refused by the reader."""
    with pytest.raises(SpecUnreadable, match="tag"):
        house(tmp_path, HOUSE + "rules: !!python/object/apply:os.system ['true']\n")


def test_a_rule_added_by_a_house_is_held_against_the_spec(tmp_path, review):
    found = review(
        house(tmp_path, HOUSE + ADDED),
        ("{shaft: out, rotation", "{shaft: out, blades: 3, rotation"),
    )
    finding = next(each for each in found.findings if each.rule.id == "shop.two-blades")
    assert (finding.outcome, finding.level) == ("falls short", "advisory")
    assert found.on == datetime.date(2026, 6, 1)


@pytest.mark.parametrize("rule", shipped_rulebook().rules, ids=lambda rule: rule.id)
def test_each_limit_is_kept_at_its_end_and_missed_just_beyond(rule):
    for level, limit in rule.limits.items():
        for end, beyond in ((limit.low, -1.0), (limit.high, 1.0)):
            if end is None:
                continue
            step = max(abs(end) * 1e-9, 1e-12)
            assert limit.met_by(end), (level, limit.text)
            assert not limit.met_by(end + beyond * step), (level, limit.text)
            inside = end - beyond * step
            assert limit.met_by(inside) or limit.low == limit.high, (level, limit.text)
