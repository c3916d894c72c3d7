"""Scuffing, film and case depth against worked cases and plain physics."""

from math import cos, exp, pi, radians, sin, sqrt, tan
from pathlib import Path

import numpy as np
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import trapezoid

from checker.mechanics import case_depth, film, scuffing
from checker.mechanics.equation import OutOfRange

_FILE = Path(__file__).parents[1] / "reference" / "gear-rating.yaml"
CASES = {case["id"]: case for case in yaml.safe_load(_FILE.read_text("utf-8"))["cases"]}
ALPHA = radians(20.0)
MM = 1e-3


def published(case_id, key):
    """The expected value of a case, with the case's own tolerance."""
    case = CASES[case_id]
    return pytest.approx(case["expected"][key], rel=case["tolerance"])


def flash_case():
    """Lengths and speeds of the 27/62 case: base diameters, path beyond the pitch point, load."""
    given_ = CASES["flash-temperature-27-62"]["inputs"]
    bases = [z * 3 * MM * cos(ALPHA) for z in (27, 62)]
    tips = [(z + 2) * 3 * MM for z in (27, 62)]
    paths = [
        0.5 * sqrt(tip**2 - base**2) - 0.5 * base * tan(ALPHA)
        for tip, base in zip(tips, bases, strict=True)
    ]
    speed = given_["n1_rpm"] * pi / 30.0
    load = given_["T1_Nm"] / (0.5 * bases[0]) / 0.035
    ratio = sum(paths) / (pi * 3 * MM * cos(ALPHA))
    return bases, paths, (speed, speed * 27 / 62), load, ratio


def test_flash_temperature_at_the_ends_of_the_path():
    bases, paths, speeds, load, ratio = flash_case()
    rises = scuffing.flash_temperatures(0.05, load, *speeds, *bases, ALPHA, 0.0, *paths, ratio, 0.0)
    assert rises[0] == published("flash-temperature-27-62", "T_start_K")
    assert rises[-1] == published("flash-temperature-27-62", "T_end_K")


def test_mean_flash_temperature_is_the_integral_over_the_path():
    bases, paths, speeds, load, ratio = flash_case()
    path = (0.05, load, *speeds, *bases, ALPHA, 0.0, *paths, ratio, 0.0)
    integral = trapezoid(scuffing.flash_temperatures(*path), dx=1.0 / 24.0)
    assert scuffing.mean_flash_temperature(*path) == pytest.approx(integral)


def test_flash_temperature_is_near_that_of_blok():
    """A band of heat that moves over a half space, by quadrature, against the handbook form."""
    bases, paths, speeds, load, _ = flash_case()
    expected = CASES["flash-temperature-27-62"]["expected"]
    rho = [0.5 * bases[0] * tan(ALPHA) - paths[1], 0.5 * bases[1] * tan(ALPHA) + paths[1]]
    v = [r * s for r, s in zip(rho, speeds, strict=True)]
    share = load / 3.0
    modulus = 206e9 / (2 * (1 - 0.09))
    half = sqrt(4 * share * rho[0] * rho[1] / sum(rho) / (pi * modulus))
    # Rise of a half space under a semi-elliptic band of heat q, each body taking the part that
    # makes both surfaces equally hot; thermal contact coefficient 13.6 N/(mm s^½ K).
    heat = 0.05 * share * abs(v[0] - v[1]) / (pi * half / 2.0)

    def weight(end):
        # Of the root of the distance behind, so that the integrand stays finite.
        root = np.linspace(0.0, sqrt(end), 4001)
        place = (end - root**2 - half) / half
        return 2.0 * np.trapezoid(np.sqrt(np.maximum(0.0, 1.0 - place**2)), root)

    rise = max(weight(end) for end in np.linspace(0.5, 2.0, 61) * half)
    blok = heat * rise / (sqrt(pi) * 13.6e3 * (sqrt(v[0]) + sqrt(v[1])))
    assert blok == pytest.approx(expected["T_blok_start_K"], rel=0.02)
    flash = scuffing.flash_temperature(0.05, share, half, *v)
    assert flash == pytest.approx(blok, rel=0.04)


def test_no_flash_at_the_pitch_point():
    assert scuffing.flash_temperature(0.05, 1e5, 1e-4, 5.0, 5.0) == 0.0


@settings(max_examples=60)
@given(st.floats(1.05, 1.95))
def test_spur_pairs_share_the_whole_load(ratio):
    """Where two pairs are in contact, a base pitch apart, their shares add up to one."""
    for along in np.linspace(0.001, 0.999, 7) * (ratio - 1.0):
        first = scuffing.load_share(along / ratio, ratio, 0.0)
        second = scuffing.load_share((along + 1.0) / ratio, ratio, 0.0)
        assert first + second == pytest.approx(1.0)


def test_helical_pairs_share_the_load_evenly():
    assert scuffing.load_share(0.5, 1.5, 1.2) == pytest.approx(1.0 / 1.5)
    assert scuffing.load_share(0.0, 1.5, 1.2) == pytest.approx(1.3 / 1.5)


@pytest.mark.parametrize(("stage", "celsius"), [(6, 161.0), (9, 262.25), (12, 404.0)])
def test_scuffing_temperature_of_a_load_stage(stage, celsius):
    # 80 + 2.25 stage², worked by hand for case-carburised gears in mineral oil
    found = scuffing.scuffing_temperature(stage, 1.0, "mineral")
    assert found - 273.15 == pytest.approx(celsius)


@settings(max_examples=40)
@given(st.integers(1, 13), st.floats(2e4, 6e5))
def test_better_oil_and_lighter_load_are_never_worse(stage, load):
    bases, paths, speeds, _, ratio = flash_case()

    def safety(stage_, load_):
        rises = scuffing.flash_temperatures(
            0.05, load_, *speeds, *bases, ALPHA, 0.0, *paths, ratio, 0.0
        )
        bulk = scuffing.bulk_temperature(360.0, "jet", 1, sum(rises) / len(rises))
        limit = scuffing.scuffing_temperature(stage_, 1.0, "mineral")
        if limit <= 360.0:
            return 0.0
        return scuffing.scuffing_safety(limit, 360.0, bulk, max(rises))

    assert safety(stage + 1, load) >= safety(stage, load)
    assert safety(stage, 1.1 * load) <= safety(stage, load)


def test_film_of_a_worked_contact():
    case = "ehl-line-contact-worked"
    given_ = CASES[case]["inputs"]
    diameters = [z * 5 * MM for z in (20, 40)]
    radius = 0.5 * diameters[0] * sin(ALPHA) * 0.5 * diameters[1] * sin(ALPHA)
    radius /= 0.5 * sum(diameters) * sin(ALPHA)
    speed = film.entraining_speed(0.5 * diameters[0] * 2000 * pi / 30.0, ALPHA)
    load = 200.0 / (0.5 * diameters[0] * cos(ALPHA)) / 0.05
    contact = (0.01, speed, 2e-8, 206e9 / 0.91, load, radius)
    assert radius / MM == published(case, "R_mm")
    assert speed == published(case, "u_m_s")
    assert load == published(case, "w_N_m")
    least = film.minimum_film(*contact)
    assert least * 1e6 == published(case, "h_min_um")
    assert film.central_film(*contact) * 1e6 == published(case, "h_c_um")
    rough = given_["roughness_rms_um_each"] * 1e-6
    assert film.specific_film(least, rough, rough) == published(case, "lambda_hmin")


def test_specific_film_of_the_nasa_gears():
    found = film.specific_film(0.65e-6, 0.406e-6, 0.406e-6)
    assert found == published("nasa-lambda-1p13", "lambda")


@pytest.mark.parametrize(
    ("ratio", "regime"), [(0.3, "boundary"), (0.7, "mixed"), (1.0, "full"), (3.0, "full")]
)
def test_regimes_of_dudley(ratio, regime):
    bands = CASES["lambda-guidance"]["expected"]
    assert bands["boundary_below"] == 0.4
    assert bands["mixed_below"] == 1.0
    assert film.lubrication_regime(ratio) == regime


def test_pressure_viscosity_is_that_of_mineral_oil():
    # Tribology handbooks: about 15 to 25 GPa⁻¹ for mineral oils (from memory)
    for viscosity in (0.01, 0.1):
        assert 13e-9 < film.pressure_viscosity(viscosity, "mineral") < 25e-9
    with pytest.raises(OutOfRange):
        film.pressure_viscosity(0.01, "PAG")


@settings(max_examples=40)
@given(st.floats(0.003, 0.2), st.floats(0.5, 30.0), st.floats(1e4, 1e6))
def test_thicker_oil_makes_a_thicker_film(viscosity, speed, load):
    contact = (speed, 2e-8, 226e9, load, 0.01)
    assert film.minimum_film(1.1 * viscosity, *contact) > film.minimum_film(viscosity, *contact)
    assert film.minimum_film(viscosity, *contact) < film.central_film(viscosity, *contact)


def test_case_is_deeper_than_the_greatest_shear():
    """The depth asked for lies well below that of the greatest shear of Hertz, 0.786 b."""
    # 27/62 teeth of 3 mm at 1000 MPa: ρ_red = r1 r2 sin α/(r1 + r2), p0 = E* b/(2 ρ).
    rho = 0.0405 * 0.093 * sin(ALPHA) / (0.0405 + 0.093)
    half_width = 1000e6 * 2.0 * rho / (206e9 / (2 * 0.91))
    depth = case_depth.depth_for_contact(1000e6, 0.081, ALPHA, 0.0, 27, 62, "MQ")
    assert 1.0 < depth / (0.786 * half_width) < 3.0
    assert case_depth.depth_for_contact(1000e6, 0.081, ALPHA, 0.0, 27, 62, "ML") == pytest.approx(
        1.5 * depth
    )


def test_case_must_not_harden_the_tip_through():
    assert case_depth.deepest_case(3 * MM, 1.0 * MM) == pytest.approx(0.56 * MM)
    assert case_depth.deepest_case(2 * MM, 5.0 * MM) == pytest.approx(0.8 * MM)


def test_friction_falls_with_viscosity():
    thin = scuffing.mean_friction(2e5, 10.0, ALPHA, 0.01, 0.01, 0.4e-6, 0.4e-6, "mineral")
    thick = scuffing.mean_friction(2e5, 10.0, ALPHA, 0.01, 0.1, 0.4e-6, 0.4e-6, "mineral")
    assert 0.02 < thick < thin < 0.12
    assert thin / thick == pytest.approx(exp(0.05 * 2.302585), rel=1e-6)
