"""The table of units against pint, and the spellings and readings built on it."""

import re

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.spec import unit_words
from checker.spec.quantity import parse_quantity
from checker.spec.units import (
    DIMENSIONS,
    UNITS,
    canonical,
    closest,
    dimensions_of,
    show,
    si_unit,
    unit_named,
    units_of,
)

REGISTRY = pint.UnitRegistry()

# Every unit of the table as pint writes it, and the SI unit of its dimension as pint writes it.
# Hardness scales and the diametral pitch are no units to pint; they are checked apart.
PINT = {
    "length": (
        "m",
        {
            "mm": "mm",
            "cm": "cm",
            "m": "m",
            "km": "km",
            "um": "um",
            "in": "inch",
            "ft": "foot",
            "thou": "thou",
        },
    ),
    "angle": ("rad", {"deg": "degree", "rad": "rad", "arcmin": "arcminute"}),
    "speed": (
        "m/s",
        {"m/s": "m/s", "km/h": "km/hour", "kt": "knot", "mph": "mph", "ft/min": "foot/minute"},
    ),
    "angular_speed": ("rad/s", {"rpm": "rpm", "rad/s": "rad/s"}),
    "acceleration": ("m/s**2", {"m/s2": "m/s**2", "g": "standard_gravity"}),
    "mass": ("kg", {"kg": "kg", "g": "gram", "lb": "pound", "oz": "ounce"}),
    "force": (
        "N",
        {"N": "N", "kN": "kN", "daN": "daN", "lbf": "force_pound", "kgf": "force_kilogram"},
    ),
    "torque": (
        "N*m",
        {
            "N m": "N*m",
            "lbf ft": "force_pound*foot",
            "lbf in": "force_pound*inch",
            "kgf m": "force_kilogram*m",
            "oz in": "force_ounce*inch",
        },
    ),
    "power": ("W", {"kW": "kW", "W": "W", "hp": "horsepower", "PS": "metric_horsepower"}),
    "energy": ("J", {"J": "J", "kJ": "kJ"}),
    "pressure": (
        "Pa",
        {
            "kPa": "kPa",
            "MPa": "MPa",
            "GPa": "GPa",
            "Pa": "Pa",
            "bar": "bar",
            "mbar": "mbar",
            "hPa": "hPa",
            "psi": "psi",
            "ksi": "ksi",
            "in Hg": "inch_Hg",
            "mm Hg": "mmHg",
            "in H2O": "inch_H2O",
            "mm H2O": "mmH2O",
        },
    ),
    "temperature": ("K", {"degC": "degC", "degF": "degF", "K": "K"}),
    "temperature_difference": ("K", {"K": "K"}),
    "time": ("s", {"s": "s", "min": "minute", "h": "hour"}),
    "frequency": ("Hz", {"Hz": "Hz"}),
    "area": ("m**2", {"mm2": "mm**2", "cm2": "cm**2", "m2": "m**2", "in2": "inch**2"}),
    "volume": (
        "m**3",
        {
            "L": "liter",
            "mL": "mL",
            "cm3": "cm**3",
            "m3": "m**3",
            "in3": "inch**3",
            "US gal": "US_liquid_gallon",
            "US qt": "US_liquid_quart",
            "imp gal": "imperial_gallon",
            "imp qt": "imperial_quart",
        },
    ),
    "volume_flow": (
        "m**3/s",
        {
            "L/min": "liter/minute",
            "mL/min": "mL/minute",
            "m3/s": "m**3/s",
            "US gal/min": "US_liquid_gallon/minute",
        },
    ),
    "inertia": (
        "kg*m**2",
        {
            "kg m2": "kg*m**2",
            "kg cm2": "kg*cm**2",
            "g cm2": "gram*cm**2",
            "lb ft2": "pound*foot**2",
            "lb in2": "pound*inch**2",
            "slug ft2": "slug*foot**2",
        },
    ),
    "unbalance": ("kg*m", {"g mm": "gram*mm", "kg m": "kg*m", "oz in": "ounce*inch"}),
    "density": (
        "kg/m**3",
        {"kg/m3": "kg/m**3", "g/cm3": "gram/cm**3", "lb/in3": "pound/inch**3"},
    ),
    "dynamic_viscosity": ("Pa*s", {"mPa s": "mPa*s", "Pa s": "Pa*s"}),
    "kinematic_viscosity": ("m**2/s", {"cSt": "centistokes", "m2/s": "m**2/s"}),
    "torsional_damping": ("N*m*s/rad", {"N m s/rad": "N*m*s/rad"}),
    "torsional_stiffness": (
        "N*m/rad",
        {
            "N m/rad": "N*m/rad",
            "kN m/rad": "kN*m/rad",
            "N m/deg": "N*m/degree",
            "lbf in/rad": "force_pound*inch/rad",
            "lbf ft/deg": "force_pound*foot/degree",
        },
    ),
    "linear_stiffness": ("N/m", {"N/mm": "N/mm", "N/m": "N/m", "lbf/in": "force_pound/inch"}),
    "heat_transfer": ("W/m**2/K", {"W/m2 K": "W/m**2/K"}),
    "pressure_speed": (
        "W/m**2",
        {
            "MPa m/s": "MPa*m/s",
            "W/m2": "W/m**2",
            "psi ft/min": "force_pound/inch**2*foot/minute",
        },
    ),
    "ratio": ("", {"%": "percent", "": ""}),
}

# Aliases that pint knows as a unit of its own, in place of the row they share.
PINT_ALIASES = {
    ("length", "micron"): "micron",
    ("length", "mil"): "mil_length",
    ("speed", "kph"): "kph",
    ("speed", "fpm"): "foot/minute",
    ("speed", "mi/h"): "mile/hour",
    ("angular_speed", "r/min"): "revolution/minute",
    ("force", "kp"): "kilopond",
    ("pressure", "N/mm2"): "N/mm**2",
    ("pressure", "N/m2"): "N/m**2",
    ("pressure", "lbf/in2"): "force_pound/inch**2",
    ("volume", "dm3"): "dm**3",
    ("volume", "cc"): "cc",
    ("volume_flow", "cc/min"): "cc/minute",
    ("inertia", "lbf ft s2"): "force_pound*foot*s**2",
    ("density", "kg/L"): "kg/liter",
    ("density", "g/mL"): "gram/mL",
    ("dynamic_viscosity", "cP"): "centipoise",
    ("kinematic_viscosity", "mm2/s"): "mm**2/s",
    ("linear_stiffness", "kN/m"): "kN/m",
    ("torsional_stiffness", "in lbf/rad"): "inch*force_pound/rad",
}

ROWS = [
    (dimension, symbol, expression, si)
    for dimension, (si, units) in PINT.items()
    for symbol, expression in units.items()
] + [
    (dimension, alias, expression, PINT[dimension][0])
    for (dimension, alias), expression in PINT_ALIASES.items()
]


def test_every_unit_is_checked():
    hardness_and_pitch = {unit for unit in UNITS if unit.dimension.startswith(("hard", "diam"))}
    checked = {(dimension, symbol) for dimension, symbol, *_ in ROWS}
    assert {(unit.dimension, unit.symbol) for unit in set(UNITS) - hardness_and_pitch} <= checked
    assert {unit.symbol for unit in hardness_and_pitch} == {"HRC", "HV", "HB", "DP"}


@pytest.mark.parametrize(("dimension", "symbol", "expression", "si"), ROWS)
def test_factor_and_zero_agree_with_pint(dimension, symbol, expression, si):
    unit = unit_named(symbol, dimension)
    zero, one = (REGISTRY.Quantity(value, expression).to(si).magnitude for value in (0.0, 1.0))
    assert unit.to_si(0.0) == pytest.approx(zero, rel=1e-12, abs=1e-12)
    assert unit.to_si(1.0) == pytest.approx(one, rel=1e-12)
    assert unit.factor == pytest.approx(one - zero, rel=1e-12)


@pytest.mark.parametrize("dimension", PINT)
def test_the_si_unit_of_a_dimension_has_factor_one(dimension):
    si = {"ratio": "", "temperature_difference": "K"}.get(dimension, si_unit(dimension))
    unit = unit_named(si, dimension)
    assert (unit.factor, unit.offset) == (1.0, 0.0)


def test_a_diametral_pitch_counts_teeth_per_inch():
    # Module in mm = 25.4 / diametral pitch: definition of the diametral pitch.
    assert unit_named("DP", "module").to_si(8.0) == pytest.approx(25.4e-3 / 8, rel=1e-15)
    assert unit_named("DP", "module").from_si(25.4e-3 / 8) == pytest.approx(8.0, rel=1e-15)
    assert unit_named("DP", "length") is None


def test_hardness_scales_stay_apart():
    assert [unit_named(scale, "hardness").dimension for scale in ("HRC", "HV", "HB")] == [
        "hardness_rockwell_c",
        "hardness_vickers",
        "hardness_brinell",
    ]


def test_no_spelling_of_a_dimension_means_two_units():
    for dimension in DIMENSIONS:
        spellings = [
            canonical(spelling)
            for unit in UNITS
            if unit.dimension == dimension
            for spelling in (unit.symbol, *unit.aliases)
        ]
        assert len(spellings) == len(set(spellings)), dimension


@pytest.mark.parametrize(
    ("spelling", "dimension", "symbol"),
    [
        ("N·m", "torque", "N m"),
        ("N*m", "torque", "N m"),
        ("N⋅m", "torque", "N m"),
        ("Nm", "torque", "N m"),
        ("N-m", "torque", "N m"),
        ("ft-lb", "torque", "lbf ft"),
        ("lbf·ft", "torque", "lbf ft"),
        ("kg·m²", "inertia", "kg m2"),
        ("kg m^2", "inertia", "kg m2"),
        ("kg m**2", "inertia", "kg m2"),
        ("slug-ft²", "inertia", "slug ft2"),
        ("µm", "length", "um"),
        ("μm", "length", "um"),
        ("″", "length", None),
        ("°C", "temperature", "degC"),
        ("℃", "temperature", "degC"),
        ("ºF", "temperature", "degF"),
        ("°", "angle", "deg"),
        ("min⁻¹", "angular_speed", "rpm"),
        ("1/min", "angular_speed", "rpm"),
        ("W/(m² K)", "heat_transfer", "W/m2 K"),
        ("W/m²·K", "heat_transfer", "W/m2 K"),
        ("mm²/s", "kinematic_viscosity", "cSt"),
        ("inHg", "pressure", "in Hg"),
        ("N·m/rad", "torsional_stiffness", "N m/rad"),
        ("MN", "force", None),
        ("mN", "force", None),
        ("KW", "power", None),
        ("n m", "torque", None),
        ("RAD", "angle", None),
    ],
)
def test_spellings(spelling, dimension, symbol):
    unit = unit_named(spelling, dimension)
    assert (unit.symbol if unit else None) == symbol


@pytest.mark.parametrize(
    ("spelling", "dimension", "meant"),
    [
        ("KW", "power", "kW"),
        ("Kg", "mass", "kg"),
        ("RPM", "angular_speed", "rpm"),
        ("Mpa", "pressure", "MPa"),
        ("gal", "volume", "US gal"),
        ("lb", "force", "lbf"),
        ("inchs", "length", "in"),
        ("mN", "force", None),
        ("furlong", "length", None),
        ("", "ratio", ""),
        ("kilowatts", "power", "kW"),
        ("kilowatt", "power", "kW"),
        ("Horsepower", "power", "hp"),
        ("newton metres", "torque", "N m"),
        ("Newton-meters", "torque", "N m"),
        ("foot-pounds", "torque", "lbf ft"),
        ("millimetres", "length", "mm"),
        ("millimeter", "length", "mm"),
        ("kilometres", "length", "km"),
        ("degrees celsius", "temperature", "degC"),
        ("Celsius", "temperature", "degC"),
        ("Litres", "volume", "L"),
        ("litres per minute", "volume_flow", "L/min"),
        ("kilowatts", "force", None),
    ],
)
def test_the_unit_that_was_meant(spelling, dimension, meant):
    assert closest(spelling, dimension) == meant


def test_every_unit_in_words_is_a_unit_of_the_table():
    symbols = {canonical(unit.symbol) for unit in UNITS}
    assert {symbol for symbol in unit_words._SYMBOLS.values() if symbol not in symbols} == set()


def test_the_dimensions_of_a_unit():
    assert dimensions_of("g") == ("acceleration", "mass")
    assert dimensions_of("K") == ("temperature", "temperature_difference")
    assert dimensions_of("mm") == ("length",)
    assert dimensions_of("parsec") == ()


def test_the_units_of_a_field_are_listed_usual_ones_first():
    assert units_of("length") == ("mm", "cm", "m", "um", "km", "in", "ft", "thou")
    assert units_of("module") == ("mm", "cm", "m", "um", "km", "in", "ft", "thou", "DP")
    assert units_of("hardness") == ("HRC", "HV", "HB")


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (0.0, "m", "0 mm"),
        (0.0762, "m", "76.2 mm"),
        (12.3e-6, "m", "0.0123 mm"),
        (0.43e-6, "m", "0.43 um"),
        (1.72, "m", "1720 mm"),
        (2438.4, "m", "2438 m"),
        (-0.001, "m", "-1 mm"),
        (0.3490658503988659, "rad", "20 deg"),
        (607.3745796940267, "rad/s", "5800 rpm"),
        (51.4444, "m/s", "51.44 m/s"),
        (999.96, "N", "1000 N"),
        (12345.6, "N", "12.35 kN"),
        (1234.56, "N m", "1235 N m"),
        (12345.6, "N m", "12346 N m"),
        (850.0, "W", "850 W"),
        (55927.49, "W", "55.93 kW"),
        (101325.0, "Pa", "101.3 kPa"),
        (1.2e9, "Pa", "1200 MPa"),
        (206e9, "Pa", "206 GPa"),
        (358.15, "K", "85 degC"),
        (273.15, "K", "0 degC"),
        (12.34567, "ΔK", "12.35 K"),
        (1.2e-5, "m2/s", "12 cSt"),
        (0.0123, "Pa s", "12.3 mPa s"),
        (0.09, "kg m2", "0.09 kg m2"),
        (0.09, "kg·m²", "0.09 kg m2"),
        (1.2e-4, "kg m2", "1.2 kg cm2"),
        (870.0, "kg/m3", "870 kg/m3"),
        (1.45678, "1", "1.457"),
        (1.45678, "", "1.457"),
        (0.0018, "m3", "1.8 L"),
        (5e-5, "m3", "50 mL"),
        (1e-4, "m3/s", "6 L/min"),
        (42.0, "s", "42 s"),
        (7.2e6, "s", "2000 h"),
        (87.654, "Hz", "87.65 Hz"),
        (2500.0, "N m/rad", "2500 N m/rad"),
        (2.5e5, "N m/rad", "250 kN m/rad"),
        (3e-4, "m2", "300 mm2"),
        (0.35, "m2", "0.35 m2"),
        (60.0, "HRC", "60 HRC"),
        (2.3e-8, "1/Pa", "2.300e-08 1/Pa"),
        (1.2e12, "1", "1.200e+12"),
        (float("inf"), "s", "inf h"),
    ],
)
def test_values_are_shown_in_the_unit_an_engineer_reads(value, unit, shown):
    assert show(value, unit) == shown


SHOWN = sorted(
    set(DIMENSIONS)
    - {"module", "hardness", "ratio", "diametral_pitch", "temperature", "temperature_difference"}
)


@settings(max_examples=200)
@given(st.sampled_from(SHOWN), st.floats(1e-9, 1e9), st.sampled_from([1, -1]))
def test_what_is_shown_can_be_written_in_a_spec(dimension, magnitude, sign):
    value = sign * magnitude
    read = parse_quantity(show(value, si_unit(dimension)), dimension)
    assert read.value == pytest.approx(value, rel=5.01e-4)


@given(st.floats(0.0, 2000.0))
def test_a_temperature_that_is_shown_can_be_written_in_a_spec(kelvin):
    read = parse_quantity(show(kelvin, "K"), "temperature")
    assert read.value == pytest.approx(kelvin, abs=5.01e-4 * max(abs(kelvin - 273.15), 1e-6))


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_shown_number_has_four_digits_or_all_its_whole_ones(number):
    digits = re.sub(r"e.*|[-.]", "", show(number, "1")).lstrip("0")
    assert len(digits) <= 7
