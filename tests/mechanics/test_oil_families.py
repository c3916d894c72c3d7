from pathlib import Path

import pytest
import yaml

from checker.mechanics.oil import CENTISTOKES, viscosity_index
from checker.mechanics.oil_families import FAMILY_NAMES, family, highest_oil_temperature

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


def grade_of(name):
    return name.rpartition(" ")[2]


@pytest.mark.parametrize("name", [name for name in FAMILY_NAMES if " VG " in name])
def test_straight_grades_reach_ten_percent_to_either_side(name):
    """ISO 3448:1992, OIL-V09."""
    oil, midpoint = family(name), float(grade_of(name))
    assert oil.viscosity_40_low == pytest.approx(0.9 * midpoint * CENTISTOKES)
    assert oil.viscosity_40_high == pytest.approx(1.1 * midpoint * CENTISTOKES)


def holds(low, viscosity, high):
    """Whether a band holds a viscosity; both are in mm2/s but for the last digit."""
    return round(low / CENTISTOKES, 6) <= viscosity <= round(high / CENTISTOKES, 6)


@pytest.mark.parametrize("name", [name for name in FAMILY_NAMES if " VG " in name])
def test_a_viscosity_is_of_a_straight_grade_or_of_none(name):
    oil, case = family(name), CASES["OIL-V09"]
    for viscosity, grade in zip(case["inputs"]["nu40_cSt"], case["expected"]["grade"], strict=True):
        inside = holds(oil.viscosity_40_low, viscosity, oil.viscosity_40_high)
        assert inside == (grade == f"VG {grade_of(name)}")


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
    ("name", "low", "high"),
    # The grade in the name is the band at 100 °C in mm2/s: SAE J300 (January 2015, public
    # reproduction) of engine oils, J306 (OIL-V13, note) of gear oils.
    [
        ("engine SAE 30", 9.3, 12.5),
        ("engine 5W-30", 9.3, 12.5),
        ("engine 10W-40", 12.5, 16.3),
        ("engine 15W-40", 12.5, 16.3),
        ("aviation SAE 50", 16.3, 21.9),
        ("gear 75W-90 GL-5", 13.5, 18.5),
        ("gear 80W-90 GL-5", 13.5, 18.5),
        ("gear 75W-80 GL-4", 8.5, 11.0),
    ],
)
def test_sae_grades_fill_their_band(name, low, high):
    oil = family(name)
    assert oil.viscosity_100_low == pytest.approx(low * CENTISTOKES)
    assert oil.viscosity_100_high == pytest.approx(high * CENTISTOKES)


def in_sae_band(oil, viscosity):
    """Whether an SAE band holds a viscosity at 100 °C in mm2/s: its upper limit is excluded."""
    low, high = oil.viscosity_100_low, oil.viscosity_100_high
    return holds(low, viscosity, high) and viscosity < round(high / CENTISTOKES, 6)


@pytest.mark.parametrize(
    ("name", "case", "grade"),
    [
        *[(name, "OIL-V10", name[-2:]) for name in named("engine")],
        ("gear 75W-90 GL-5", "OIL-V13", "90"),
        ("gear 75W-80 GL-4", "OIL-V13", "80"),
    ],
)
def test_a_viscosity_is_of_an_sae_grade_or_not(name, case, grade):
    oil = family(name)
    if case == "OIL-V10":
        rows = [row["nu100_cSt"] for row in CASES[case]["inputs"]]
        grades = [row["hot_grade"] for row in CASES[case]["expected"]]
    else:
        rows, grades = CASES[case]["inputs"]["nu100_cSt"], CASES[case]["expected"]["grade"]
    for viscosity, expected in zip(rows, grades, strict=True):
        assert in_sae_band(oil, viscosity) == (expected == grade)


def test_gear_grades_are_those_since_2005():
    case = CASES["OIL-V14"]
    assert not in_sae_band(family("gear 80W-90 GL-5"), case["inputs"]["nu100_cSt"])


@pytest.mark.parametrize(("name", "grade"), [("engine 15W-40", "40"), ("aviation SAE 50", "50")])
def test_a_gear_90_is_an_engine_40_to_50(name, grade):
    gear, engine = family("gear 80W-90 GL-5"), family(name)
    overlap = (
        max(gear.viscosity_100_low, engine.viscosity_100_low),
        min(gear.viscosity_100_high, engine.viscosity_100_high),
    )
    expected = CASES["OIL-V15"]["expected"]["overlap_cSt_100C"][grade]
    assert [each / CENTISTOKES for each in overlap] == pytest.approx(expected)


@pytest.mark.parametrize("name", named("engine 5", "engine 1", "gear"))
def test_winter_grades_set_the_cold_limit(name):
    """SAE J300 and J306, by OIL-V12 and OIL-V13: the pumping limit and that of 150 Pa s."""
    oil, winter = family(name), name.split()[1].partition("-")[0]
    if name.startswith("gear"):
        assert oil.cold_limit_kind == "150 Pa·s"
        celsius = {"75W": -40, "80W": -26}[winter]  # OIL-V13, note
    else:
        assert oil.cold_limit_kind == "pumping"
        case = CASES["OIL-V12"]
        row = case["inputs"]["w_grade"].index(winter)
        celsius = case["expected"]["pumping_t_C"][row]
    assert oil.cold_limit == pytest.approx(celsius + 273.15)


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
