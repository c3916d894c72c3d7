"""Agreement of mates and of what is stated of a pair."""

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics.equation import OutOfRange
from checker.mechanics.mates import (
    angle_difference,
    axis_distance,
    face_overlap_share,
    gap_between_ranges,
    hands_oppose,
    single_pair_share,
)


@pytest.mark.parametrize(
    ("contact_ratio", "share"),
    [
        (0.8, 1.0),  # gaps besides: never more than one pair
        (1.0, 1.0),  # one pair all along
        (1.5, 1.0 / 3.0),  # 1.5 base pitches: 0.5 shared, 0.5 alone, 0.5 shared
        (1.6, 0.25),  # 0.6 shared, 0.4 alone, 0.6 shared
        (2.0, 0.0),  # always two pairs
        (2.3, 0.0),
    ],
)
def test_part_of_the_path_carried_alone(contact_ratio, share):
    assert single_pair_share(contact_ratio) == pytest.approx(share)


@given(st.floats(1.0, 2.0))
def test_pairs_counted_along_the_path_add_up(contact_ratio):
    """Counting teeth at each place of a path stepped finely gives the same share."""
    steps = 2000
    places = [contact_ratio * (step + 0.5) / steps for step in range(steps)]
    alone = sum(
        all(not 0.0 <= place + shift <= contact_ratio for shift in (-1.0, 1.0)) for place in places
    )
    assert single_pair_share(contact_ratio) == pytest.approx(alone / steps, abs=2.0 / steps)


def test_without_a_path_nothing_is_shared():
    with pytest.raises(OutOfRange, match="no path of contact"):
        single_pair_share(0.0)


def test_hands():
    assert hands_oppose(1, -1)
    assert not hands_oppose(1, 1)


@given(st.floats(-1, 1), st.floats(-1, 1))
def test_difference_has_no_sense(first, second):
    assert angle_difference(first, second) == angle_difference(second, first) >= 0.0


@given(*[st.floats(-1, 1)] * 4)
def test_axis_distance_does_not_depend_on_the_order(x, y, u, v):
    assert axis_distance(x, y, u, v) == axis_distance(u, v, x, y)
    assert axis_distance(x, y, 0.0, 0.0) == pytest.approx(hypot(x, y))


@pytest.mark.parametrize(
    ("ranges", "gap"),
    [((1.0, 2.0, 1.5, 3.0), 0.0), ((1.0, 2.0, 2.5, 3.0), 0.5), ((2.5, 3.0, 1.0, 2.0), 0.5)],
)
def test_gap_between_ranges(ranges, gap):
    assert gap_between_ranges(*ranges) == pytest.approx(gap)


def test_share_of_the_narrower_face():
    assert face_overlap_share(0.020, 0.030, 0.025) == pytest.approx(0.8)
