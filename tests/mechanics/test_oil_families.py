from pathlib import Path

import pytest
import yaml

from checker.mechanics.oil import CENTISTOKES, viscosity_index
from checker.mechanics.oil_families import FAMILY_NAMES, family, highest_oil_temperature
from checker.mechanics.oil_grades import (
    ENGINE_GRADES,
    ENGINE_WINTER_GRADES,
    GEAR_GRADES,
    GEAR_WINTER_GRADES,
    iso_viscosity_grade,
)

REFERENCE = Path(__file__).parents[1] / "reference" / "oil.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}


def named(*beginnings):
    return [name for name in FAMILY_NAMES if name.startswith(beginnings)]


@pytest.mark.parametrize("name", FAMILY_NAMES)
def test_both_ends_are_pairs_in_order(name):
    oil = family(name)
    assert oil.name == name
    assert oil.viscosity_40_low < oil.viscosity_40_high
    assert oil.viscosity_100_low < oil.viscosity_100_high
    assert oil.viscosity_100_high < oil.viscosity_40_low


@pytest.mark.parametrize("name", [name for name in FAMILY_NAMES if " VG " in name])
def test_straight_grades_reach_ten_percent_to_either_side(name):
    """ISO 3448:1992, OIL-V09."""
    oil, grade = family(name), f"VG {name.rpartition(' ')[2]}"
    assert iso_viscosity_grade(oil.viscosity_40_low) == grade
    assert iso_viscosity_grade(oil.viscosity_40_high) == grade
    assert oil.viscosity_40_high / oil.viscosity_40_low == pytest.approx(1.1 / 0.9)


@pytest.mark.parametrize(
    ("beginning", "index"),
    # Typical indices (from memory), by ASTM D2270.
    [("circulating", 95), ("industrial", 95), ("PAO", 150), ("PAG", 200), ("aviation", 100)],
)
def test_derived_viscosities_keep_their_index(beginning, index):
    for oil in map(family, named(beginning)):
        low = viscosity_index(oil.viscosity_40_low, oil.viscosity_100_low)
        high = viscosity_index(oil.viscosity_40_high, oil.viscosity_100_high)
        assert (low, high) == pytest.approx((index, index), abs=0.3)


@pytest.mark.parametrize(
    ("name", "bands", "hot"),
    # SAE J300 and J306, by OIL-V10 and OIL-V13: the grade in the name is the band at 100 °C.
    [
        ("engine SAE 30", ENGINE_GRADES, "30"),
        ("engine 5W-30", ENGINE_GRADES, "30"),
        ("engine 10W-40", ENGINE_GRADES, "40"),
        ("engine 15W-40", ENGINE_GRADES, "40"),
        ("aviation SAE 50", ENGINE_GRADES, "50"),
        ("gear 75W-90 GL-5", GEAR_GRADES, "90"),
        ("gear 80W-90 GL-5", GEAR_GRADES, "90"),
        ("gear 75W-80 GL-4", GEAR_GRADES, "80"),
    ],
)
def test_sae_grades_fill_their_band(name, bands, hot):
    low, high = bands[hot]
    oil = family(name)
    assert oil.viscosity_100_low == pytest.approx(low * CENTISTOKES)
    assert oil.viscosity_100_high == pytest.approx(high * CENTISTOKES)


@pytest.mark.parametrize("name", named("engine 5", "engine 1", "gear"))
def test_winter_grades_set_the_cold_limit(name):
    """SAE J300 and J306, by OIL-V12 and OIL-V13: the pumping limit and that of 150 Pa s."""
    oil, winter = family(name), name.split()[1].partition("-")[0]
    if name.startswith("gear"):
        assert oil.cold_limit_kind == "150 Pa·s"
        assert oil.cold_limit == pytest.approx(GEAR_WINTER_GRADES[winter].temperature)
    else:
        assert oil.cold_limit_kind == "pumping"
        assert oil.cold_limit == pytest.approx(ENGINE_WINTER_GRADES[winter].pumping_temperature)


@pytest.mark.parametrize(
    ("name", "row"),
    # Rows of OIL-C01 by the oil they name; the solid lubricant of row 3 is not of the family.
    [
        ("gear 75W-90 GL-5", 0),
        ("gear 80W-90 GL-5", 0),
        ("engine SAE 30", 1),
        ("ATF conventional", 2),
    ],
)
def test_one_way_clutches(name, row):
    verdict = CASES["OIL-C01"]["expected"][row]["verdict"]
    assert family(name).chemistry.one_way_clutch == {"fault": "no", "ok": "ok"}[verdict]


def test_no_oil_with_extreme_pressure_additives_suits_a_one_way_clutch():
    for oil in map(family, FAMILY_NAMES):
        assert (oil.chemistry.additives == "EP") == (oil.chemistry.one_way_clutch == "no")


def test_only_polyglycol_never_meets_engine_oil():
    """OIL-C06: PAG must not be mixed with mineral oil; PAO may, as far as its base goes."""
    case = CASES["OIL-C06"]
    mixable = {
        pair[0]: ok
        for pair, ok in zip(case["inputs"]["pair"], case["expected"]["mixable"], strict=True)
    }
    for oil in map(family, FAMILY_NAMES):
        never = oil.chemistry.with_engine_oil == "never"
        assert never == (not mixable.get(oil.chemistry.base, True))


def test_seal_materials_in_mineral_oil():
    case = CASES["OIL-C07"]
    ours = {"excellent": "good", "fair": "limited"}
    elastomers = family("circulating VG 100").chemistry.elastomers
    for material, resistance in zip(
        case["inputs"]["seal"], case["expected"]["resistance"], strict=True
    ):
        assert elastomers[material] == ours[resistance]


@pytest.mark.parametrize("name", [n for n in FAMILY_NAMES if family(n).chemistry.additives == "EP"])
def test_seal_materials_in_oil_with_extreme_pressure_additives(name):
    """OIL-C07, note: silicone is poor and NBR limited."""
    elastomers = family(name).chemistry.elastomers
    assert (elastomers["VMQ"], elastomers["NBR"]) == ("poor", "limited")


@pytest.mark.parametrize(
    ("name", "row"), [("ATF conventional", 0), ("ATF low viscosity", 2)], ids=str
)
def test_transmission_fluid_against_the_used_fluid_minimum(name, row):
    """OIL-C09: used fluid kept 5.5 mm2/s at 210 °F; the thin kind starts below it."""
    kept = family(name).viscosity_100_low >= 5.5 * CENTISTOKES
    assert kept == CASES["OIL-C09"]["expected"]["ok_against_used_minimum"][row]


def test_an_unknown_family():
    with pytest.raises(KeyError, match="castor"):
        family("castor")


def test_rubber_that_swells_in_oil_is_poor_in_every_family():
    """Handbook knowledge (from memory): EPDM and natural rubber do not bear hydrocarbon oil."""
    for oil in map(family, FAMILY_NAMES):
        assert {oil.chemistry.elastomers[name] for name in ("EPDM", "natural rubber")} == {"poor"}


@pytest.mark.parametrize(
    ("base", "celsius"),
    # Common practice, no source; in the order of oxidation stability (from memory).
    [("mineral", 110), ("PAO", 130), ("PAG", 130), ("ester", 150)],
)
def test_temperature_for_long(base, celsius):
    assert highest_oil_temperature(base) - 273.15 == pytest.approx(celsius)
