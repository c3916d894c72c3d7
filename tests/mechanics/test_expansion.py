from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics import expansion, oil
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}


def test_expansion_space_required_exceeds_the_ten_percent_of_the_rule():
    """SAE 460209: 6 to 20 % air from gear trains, besides 6 to 7.5 % thermal growth."""
    growth = oil.thermal_growth(880.0, 288.15, 383.15)
    assert expansion.expansion_space_required(growth, 0.06) == pytest.approx(0.134, abs=0.0005)


@given(st.floats(0.1, 10.0), st.floats(0.01, 1.0))
def test_expansion_space_is_what_the_fill_can_grow_by(capacity, share):
    fill = capacity * share
    assert fill * (1.0 + expansion.expansion_space(capacity, fill)) == pytest.approx(capacity)


def test_an_empty_case_has_no_expansion_space():
    with pytest.raises(OutOfRange, match="fill"):
        expansion.expansion_space(1.0, 0.0)


def test_air_over_the_oil():
    assert expansion.air_volume(6.6e-3, 4.6e-3) == pytest.approx(2.0e-3)


def test_more_oil_than_room():
    with pytest.raises(OutOfRange, match="fill"):
        expansion.air_volume(1.0, 1.1)
