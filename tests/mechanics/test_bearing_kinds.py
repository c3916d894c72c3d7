"""What each kind of bearing can carry."""

import pytest

from checker.mechanics.bearing_kinds import BEARING_KINDS, SET_AXIAL, Axial, tandem_axial_rating


# common practice, no source
@pytest.mark.parametrize(
    ("name", "radial", "axial"),
    [
        ("deep groove ball", True, "both ways"),
        ("angular contact ball", True, "one way"),
        ("double-row angular contact ball", True, "both ways"),
        ("four-point contact ball", True, "both ways"),
        ("self-aligning ball", True, "both ways"),
        ("cylindrical roller N", True, "none"),
        ("cylindrical roller NU", True, "none"),
        ("cylindrical roller NJ", True, "one way"),
        ("cylindrical roller NUP", True, "both ways"),
        ("needle roller", True, "none"),
        ("toroidal roller", True, "none"),
        ("tapered roller", True, "one way"),
        ("spherical roller", True, "both ways"),
        ("thrust ball", False, "one way"),
        ("double-direction thrust ball", False, "both ways"),
        ("thrust roller", False, "one way"),
        ("plain", True, "none"),
    ],
)
def test_what_a_kind_carries(name, radial, axial):
    kind = BEARING_KINDS[name]
    assert (kind.name, kind.radial, kind.axial) == (name, radial, Axial(axial))


def test_only_ribbed_rollers_need_a_stated_axial_rating():
    needing = {name for name, kind in BEARING_KINDS.items() if kind.axial_rating_needed}
    assert needing == {"cylindrical roller NJ", "cylindrical roller NUP"}


@pytest.mark.parametrize("kind", BEARING_KINDS.values(), ids=lambda kind: kind.name)
def test_kinds_make_sense(kind):
    assert kind.radial or kind.axial is not Axial.NONE
    assert kind.source
    if kind.needs_partner:
        assert kind.axial is Axial.ONE_WAY
    if kind.axial_rating_needed:
        assert kind.axial is not Axial.NONE


def test_a_set_turned_against_itself_carries_both_ways():
    both = {name for name, axial in SET_AXIAL.items() if axial is Axial.BOTH_WAYS}
    assert both == {"back-to-back", "face-to-face"}
    assert SET_AXIAL["tandem"] is Axial.ONE_WAY


def test_tandem_bearings_share():
    assert tandem_axial_rating(18e3, 2) == pytest.approx(36e3)
