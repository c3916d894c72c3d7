"""A fixed spec and rulebook for the reports, with measures that give every kind of outcome."""

import datetime
from pathlib import Path

import pytest

from checker.known import Known, Unknown, assumed, compute
from checker.measures.registry import Measure, measures
from checker.mechanics import kinematics
from checker.review.review import review_spec
from checker.review.rulebook import Rulebook, rules_of
from checker.spec.document import read_document

HERE = Path(__file__).parent
DAY = datetime.date(2026, 6, 1)


def _sense(design, drive):
    return Known(False, "", "sense", path=("propeller", "rotation"))


def _peak(design, drive):
    stated = Known(60, "1", "z", path=("gears", "wheel", "teeth"))
    best = compute(kinematics.quotient, stated, assumed(50, "1", "z₀", "a figure of the tests"))
    return Unknown(because="the alternating torque is not known", at_best=best)


def _later(design, drive):
    return Unknown(because="a later version computes it")


def _power(design, drive, point):
    rated = design.subjects.the("engine").given("maximum_continuous.power", "P_rated")
    return compute(kinematics.quotient, point.given("power", "P"), rated)


def _failing(design, mesh):
    raise ZeroDivisionError("division by \x1b[31mzero")


@pytest.fixture
def book(monkeypatch):
    for name, of, unit, function in (
        ("sense_for_tests", "drive", "", _sense),
        ("peak_for_tests", "drive", "1", _peak),
        ("later_for_tests", "drive", "1", _later),
        ("failing_for_tests", "mesh", "1", _failing),
    ):
        measure = Measure(name, of, unit, name, False, "", function)
        monkeypatch.setitem(measures(), (of, name), measure)
    title = "power of the point over the rated power"
    power = Measure("power_for_tests", "drive", "1", title, True, "name", _power)
    monkeypatch.setitem(measures(), ("drive", "power_for_tests"), power)
    document = read_document((HERE / "sheet_rules.yaml").read_bytes(), "sheet_rules.yaml")
    return Rulebook(tuple(rules_of(document, "sheet")))


@pytest.fixture
def spec():
    return (HERE / "sheet_spec.yaml").read_bytes()


@pytest.fixture
def review_of(book):
    """Review a spec by its bytes, with the fixed rulebook."""

    def review(source, name="sheet_spec.yaml", rules=book):
        return review_spec(source, name, rules, DAY)

    return review


@pytest.fixture
def review(review_of, spec):
    return review_of(spec)
