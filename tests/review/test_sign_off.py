"""A sign-off is bound to text, rules and version, and is refused where it would mislead."""

import pytest

from checker.report.sign_off_record import record_text
from checker.review import sign_off
from checker.review.digest import spec_digest
from checker.review.sign_off import Refused, differences, signed
from checker.spec.document import read_document
from checker.spec.sign_off import Signature, folded, load_sign_off


def by(name, role="designer", date="2026-06-01"):
    return Signature.model_validate({"name": name, "role": role, "date": date})


@pytest.fixture
def reviewed(review, rulebook):
    """A review with one open advisory, by a rule whose limit can be chosen."""

    def run(*changes, level="advisory", limit="100 degC"):
        limits = f"{{{level}: {{at_most: {limit}}}}}"
        return review(rulebook("point", "oil_temperature", limits), *changes)

    return run


def test_a_record_names_what_was_open_and_who_signed(reviewed):
    record = signed(reviewed(), None, by("Ada Kort"))
    assert record.disposition == "no open findings"
    assert record.open == ["advisory, falls short: A rule (test.rule, operation.climb)"]
    assert [(each.name, each.role) for each in record.signatures] == [("Ada Kort", "designer")]
    assert len(record.spec_sha256) == 64
    assert any("not authenticated" in each for each in record.means)


def test_an_open_caution_is_signed_by_name(reviewed):
    record = signed(reviewed(level="caution"), None, by("Ada Kort"))
    assert record.disposition == "not for flight"
    assert record.open[0].startswith("caution, falls short: ")


def test_what_is_not_shown_is_named(review, rulebook):
    book = rulebook("gear", "face_width", "{caution: {at_least: 5 mm}}")
    assert (
        "caution, not shown: A rule (test.rule, gears.a)"
        in signed(review(book), None, by("Ada Kort")).open
    )


def test_a_deviation_is_named(review, rulebook):
    book = rulebook("point", "oil_temperature", "{caution: {at_most: 100 degC}}")
    more = (
        "deviations:\n  - {rule: test.rule, part: operation.1, reason: Measured in service.,\n"
        "     by: A. Builder, date: 2026-05-01, expires: 2026-12-31}\n"
    )
    record = signed(review(book, more=more), None, by("Ada Kort"))
    assert record.open == []
    (line,) = record.deviations
    assert line == (
        "caution: A rule (test.rule, operation.climb), accepted by A. Builder until 2026-12-31: "
        "Measured in service."
    )


def test_a_hold_is_not_signed(reviewed):
    with pytest.raises(Refused, match="the disposition is hold"):
        signed(reviewed(level="warning"), None, by("Ada Kort"))


def test_what_is_broken_is_not_signed(review, rulebook, monkeypatch):
    from checker.measures.registry import Measure, measures

    failing = Measure("failing", "drive", "1", "", False, "", lambda *_: 1 / 0)
    monkeypatch.setitem(measures(), ("drive", "failing"), failing)
    broken = review(rulebook("drive", "failing", "{advisory: {at_most: 1}}"))
    with pytest.raises(Refused, match="a rule is broken"):
        signed(broken, None, by("Ada Kort"))


def test_a_second_person_signs_the_same_record(reviewed):
    first = signed(reviewed(), None, by("Ada Kort"))
    second = signed(reviewed(), first, by("Ben Ode", "reviewer"))
    assert [each.name for each in second.signatures] == ["Ada Kort", "Ben Ode"]


@pytest.mark.parametrize("name", ["Ada Kort", "ADA KORT", " ada\u00a0 kort ", "Ａｄａ Kort"])
def test_a_second_person_is_another_one(reviewed, name):
    first = signed(reviewed(), None, by("Ada Kort"))
    with pytest.raises(Refused, match="has signed already"):
        signed(reviewed(), first, by(name))


def test_names_are_folded_by_form_case_and_spaces():
    assert folded("STRASSE") == folded("straße")
    assert folded("e\u0301") == folded("\u00c9")
    assert folded("Ada Kort") != folded("Ada Kart")


@pytest.mark.parametrize(
    ("change", "level", "limit", "differs"),
    [
        (("power: 50 kW", "power: 51 kW"), "advisory", "100 degC", ("the spec",)),
        (("power: 50 kW", "power: 50 kW"), "advisory", "101 degC", ("the rulebook",)),
        (("50 kW", "51 kW"), "caution", "100 degC", ("the spec", "the rulebook")),
    ],
)
def test_a_record_tells_what_changed_since(reviewed, change, level, limit, differs):
    record = signed(reviewed(), None, by("Ada Kort"))
    later = reviewed(change, level=level, limit=limit)
    assert differences(record, later) == differs
    with pytest.raises(Refused, match="since the record was given"):
        signed(later, record, by("Ben Ode"))


def test_a_record_tells_another_version(reviewed, monkeypatch):
    record = signed(reviewed(), None, by("Ada Kort"))
    monkeypatch.setattr(sign_off, "__version__", "9.9")
    assert differences(record, reviewed()) == ("the version of Thrustline",)


def test_comments_spaces_and_order_do_not_change_the_text():
    one = read_document(b"thrustline: 1\ndrive: {name: A, ratio: 2.50}\n", "a.yaml")
    same = read_document(b"# new\ndrive:\n  ratio: 2.5\n  name: 'A'\nthrustline: 1\n", "b.yaml")
    other = read_document(b"thrustline: 1\ndrive: {name: A, ratio: '2.5'}\n", "c.yaml")
    assert spec_digest(one) == spec_digest(same)
    assert spec_digest(one) != spec_digest(other)


def test_a_record_is_read_back_as_it_was_written(reviewed):
    record = signed(reviewed(), None, by("Ada \x1b[2J: 'Kort' # {x}", "designer, of the drive"))
    text = record_text(record)
    again = load_sign_off(text.encode(), "drive.signoff")
    assert again.signatures[0].name == r"Ada \x1b[2J: 'Kort' # {x}"
    assert record_text(again) == text
    assert differences(again, reviewed()) == ()
