from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.mechanics.housing import seat_loosening, thermal_expansion

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}


def test_loosening_of_a_steel_ring_in_an_aluminium_bore():
    """OIL-M07, second row: bearing steel of 12.5e-6."""
    case = CASES["OIL-M07"]
    given_ = case["inputs"]
    lost = seat_loosening(given_["bore_mm"] / 1000, thermal_expansion("aluminium"), given_["dT_K"])
    expected = case["expected"]["interference_lost_um"][1] * 1e-6
    assert lost == pytest.approx(expected, rel=case["tolerance"])


@given(st.floats(0.02, 0.3), st.floats(-60.0, 100.0))
def test_a_seat_of_bearing_steel_loses_nothing(diameter, warming):
    assert seat_loosening(diameter, 12.5e-6, warming) == 0.0


@pytest.mark.parametrize("material", ["steel", "cast iron"])
def test_an_iron_case_tightens_as_it_warms(material):
    """Handbook (from memory): iron and plain steel expand less than bearing steel."""
    assert seat_loosening(0.08, thermal_expansion(material), 80.0) < 0.0
