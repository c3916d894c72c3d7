"""What a revision changed: every way in which a finding can move, and the inputs by name."""

import pytest

from checker.review.changes import changes
from checker.review.rulebook import Rulebook

COOL = ("oil_temperature: 105 degC", "oil_temperature: 95 degC")
HOT = ("oil_temperature: 105 degC", "oil_temperature: 130 degC")
WARM = ("oil_temperature: 105 degC", "oil_temperature: 106 degC")
SILENT = (", oil_temperature: 105 degC", "")


@pytest.fixture
def compared(review, rulebook):
    limits = "{warning: {at_most: 120 degC}, caution: {at_most: 100 degC}}"
    book = rulebook("point", "oil_temperature", limits)

    def run(before=(), after=()):
        return changes(review(book, *before), review(book, *after))

    return run


def climb(found):
    (moved,) = [each for each in found.moved if each.shown.subject.name == "climb"]
    return moved


@pytest.mark.parametrize(
    ("before", "after", "way"),
    [
        ([COOL], [], "appeared"),
        ([], [COOL], "cleared"),
        ([], [HOT], "worse"),
        ([HOT], [], "better"),
        ([], [WARM], "worse"),
        ([WARM], [], "better"),
        ([COOL], [SILENT], "appeared"),
        ([SILENT], [COOL], "cleared"),
        ([], [SILENT], "worse"),  # not shown counts at the highest level of its rule
        ([COOL], [("105 degC", "96 degC")], "worse"),
    ],
)
def test_ways_in_which_a_finding_moves(compared, before, after, way):
    assert climb(compared(before, after)).way == way


def test_nothing_moves_where_nothing_changed(compared):
    found = compared()
    assert found.moved == ()
    assert found.inputs == ()


def test_a_part_that_is_new_or_gone(compared):
    more = ("operation:\n", "operation:\n  - {name: descent, oil_temperature: 110 degC}\n")
    found = compared([], [more])
    (moved,) = found.moved  # the other points keep their findings, though they moved in the list
    assert (moved.way, moved.before, moved.shown.subject.name) == ("appeared", None, "descent")
    (back,) = compared([more], []).moved
    assert (back.way, back.after) == ("cleared", None)


@pytest.mark.parametrize(
    ("before", "after", "level", "worsens"),
    [
        ([COOL], [], "caution", True),
        ([COOL], [], "warning", False),
        ([], [HOT], "warning", True),
        ([], [WARM], "caution", True),
        ([], [], "caution", False),
        ([HOT], [], "caution", False),
        ([COOL], [("105 degC", "96 degC")], "caution", False),  # it meets its rule in both
    ],
)
def test_only_what_became_worse_counts(compared, before, after, level, worsens):
    assert compared(before, after).worsens(level) is worsens


def test_a_finding_can_move_without_margin(review, rulebook):
    book = rulebook("gear", "helix.hand", "{advisory: {one_of: [both]}}")
    left = ("helix: none}\nmeshes", "helix: {angle: 20 deg, hand: left}}\nmeshes")
    right = (left[0], left[1].replace("left", "right"))
    (moved,) = changes(review(book, left), review(book, right)).moved
    assert (moved.way, moved.shown.subject.name) == ("moved", "b")


def test_inputs_are_told_by_name_with_their_places(compared):
    found = compared(
        [],
        [
            ("power: 40 kW", "power: 41 kW"),
            ("propeller: {", "propeller: {mass: 9 kg, "),
            ("meshes:", "records: {drawn_by: A. Builder}\nmeshes:"),
        ],
    )
    told = {each.name: (each.before, each.after) for each in found.inputs}
    assert told == {
        "operation.cruise.power": ("40 kW", "41 kW"),
        "records": (None, "1 field"),
        "propeller.mass": (None, "9 kg"),
    }
    power = next(each for each in found.inputs if each.name == "operation.cruise.power")
    assert power.old_path == power.new_path == ("operation", 0, "power")


def test_a_part_that_becomes_none_is_one_change(compared):
    vent = ("propeller: {", "vent: {to: outside, inlet_height: 9 mm}\npropeller: {")
    absent = ("propeller: {", "vent: none\npropeller: {")
    (change,) = compared([vent], [absent]).inputs
    assert (change.name, change.before, change.after) == ("vent", "2 fields", "none")


def test_the_gravest_stands_first(review, rulebook):
    rules = [
        *rulebook("point", "power", "{advisory: {at_most: 45 kW}}", rule_id="test.power").rules,
        *rulebook("point", "oil_temperature", "{warning: {at_most: 110 degC}}").rules,
    ]
    book = Rulebook(tuple(rules))
    found = changes(review(book, ("power: 50 kW", "power: 30 kW")), review(book, HOT))
    assert [each.shown.rule.id for each in found.moved if each.after.is_open] == [
        "test.rule",
        "test.power",
    ]
