"""Temperatures of coupling elastomers."""

from pathlib import Path

import pytest
import yaml

from checker.mechanics.elastomer import highest_temperature, temperature_reserve
from checker.mechanics.equation import OutOfRange

_REFERENCE = Path(__file__).parents[1] / "reference" / "loads.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_REFERENCE.read_text())["cases"]}


def test_hottest_of_nitrile_rubbers():  # CP-06 AZoM article 537 and a trade page
    expected = CASES["CP-06"]["expected"]["service_temperature_C"]
    computed = [highest_temperature(name) - 273.15 for name in ("HNBR", "NBR")]
    assert computed == pytest.approx([hottest for _, hottest in expected])


def test_hottest_of_rubber_blocks():  # CP-07 rubber coupling maker's technical data page
    expected = CASES["CP-07"]["expected"]["max_listed_temperature_C"]
    assert highest_temperature("natural rubber") - 273.15 == pytest.approx(expected)


def test_an_elastomer_without_figure_is_named():
    with pytest.raises(OutOfRange, match="elastomer"):
        highest_temperature("none")


def test_reserve_has_the_sign_of_a_margin():
    assert temperature_reserve(393.15, 373.15) == pytest.approx(20.0)
    assert temperature_reserve(373.15, 393.15) == pytest.approx(-20.0)
