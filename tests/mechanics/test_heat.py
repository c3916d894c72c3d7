"""Heat to the air, through joints, streams and coolers."""

from math import pi
from pathlib import Path

import pytest
import yaml
from fluids import ATMOSPHERE_1976
from ht import (
    NTU_from_effectiveness,
    Nu_external_horizontal_plate,
    Nu_horizontal_cylinder_Churchill_Chu,
    Nu_vertical_plate_Churchill,
    effectiveness_from_NTU,
)
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.mechanics import air, convection, cooler, heat
from checker.mechanics.equation import OutOfRange

REFERENCE = Path(__file__).parents[1] / "reference" / "oil-heat.yaml"
CASES = {
    case["id"]: case for case in yaml.safe_load(REFERENCE.read_text(encoding="utf-8"))["cases"]
}
RPM = 2.0 * pi / 60.0


def case_of(name):
    case = CASES[f"OIL-{name}"]
    return case["inputs"], case["expected"], case["tolerance"]


def test_horizontal_cylinder():
    given_, expected, tolerance = case_of("H01")
    difference = given_["Ts_C"] - given_["Tair_C"]
    rayleigh = (
        9.81
        * given_["beta_1_K"]
        * difference
        * given_["diameter_m"] ** 3
        / given_["nu_m2_s"] ** 2
        * given_["Pr"]
    )
    assert rayleigh == pytest.approx(expected["Ra"], rel=tolerance)
    nusselt = convection.cylinder_nusselt(rayleigh, given_["Pr"])
    assert nusselt == pytest.approx(expected["Nu"], rel=tolerance)
    coefficient = nusselt * given_["k_W_mK"] / given_["diameter_m"]
    assert coefficient == pytest.approx(expected["h_W_m2K"], rel=tolerance)
    area = pi * given_["diameter_m"] * given_["length_m"]
    flow = heat.surface_flow(coefficient, area, given_["Ts_C"] + 273.15, given_["Tair_C"] + 273.15)
    assert flow == pytest.approx(expected["Q_W"], rel=tolerance)


@pytest.mark.parametrize("rayleigh", [1e4, 1e6, 1e8, 1e10])
def test_nusselt_against_ht(rayleigh):
    assert convection.cylinder_nusselt(rayleigh, 0.71) == pytest.approx(
        Nu_horizontal_cylinder_Churchill_Chu(0.71, rayleigh / 0.71), rel=1e-9
    )
    assert convection.plate_nusselt(rayleigh, 0.71) == pytest.approx(
        Nu_vertical_plate_Churchill(0.71, rayleigh / 0.71), rel=1e-9
    )


def test_radiation():
    given_, expected, tolerance = case_of("H02")
    coefficient = convection.radiation_coefficient(
        given_["emissivity"], given_["Ts_K"], given_["Tsurr_K"]
    )
    area = pi * given_["diameter_m"] * given_["length_m"]
    flow = heat.surface_flow(coefficient, area, given_["Ts_K"], given_["Tsurr_K"])
    assert flow == pytest.approx(expected["Q_rad_W"], rel=tolerance)


def test_fins():
    given_, expected, tolerance = case_of("H05")
    for coefficient, efficiency in zip(given_["h_W_m2K"], expected["fin_efficiency"], strict=True):
        found = convection.fin_efficiency(
            coefficient,
            given_["k_W_mK"],
            given_["thickness_mm"] / 1e3,
            given_["length_mm"] / 1e3,
        )
        assert found == pytest.approx(efficiency, rel=tolerance)


def test_still_air_on_a_small_case():
    """0.2 m at 90 °C in air of 30 °C: about 6 W/m²K, and with radiation 7 bare and 14 painted.

    Source: the notes on heat of the reference values, derived (OIL-H06).
    """
    warm, cold = 363.15, 303.15
    still = convection.still_air_coefficient(warm, cold, 0.2, 101325.0)
    assert still == pytest.approx(6.0, abs=0.2)
    totals = {
        finish: still + convection.radiation_coefficient(convection.emissivity(finish), warm, cold)
        for finish in ("bare", "oxidised", "painted")
    }
    assert totals["bare"] == pytest.approx(7.0, abs=0.3)
    assert totals["oxidised"] == pytest.approx(8.0, abs=0.3)
    assert totals["painted"] == pytest.approx(14.0, abs=0.4)


def test_moving_air():
    given_, expected, tolerance = case_of("H07")
    film = given_["T_film_C"] + 273.15
    arguments = (given_["V_m_s"], given_["length_m"], film, float(given_["p_Pa"]))
    assert convection.laminar_coefficient(*arguments) == pytest.approx(
        expected["h_laminar_W_m2K"], rel=tolerance
    )
    assert convection.turbulent_coefficient(*arguments) == pytest.approx(
        expected["h_turbulent_W_m2K"], rel=tolerance
    )


def test_laminar_plate_against_ht():
    film, pressure, speed, length = 333.15, 101325.0, 25.0, 0.2
    reynolds = speed * length * air.density(pressure, film) / air.dynamic_viscosity(film)
    nusselt = Nu_external_horizontal_plate(Re=reynolds, Pr=convection.air_prandtl(film))
    expected = nusselt * convection.air_conductivity(film) / length
    found = convection.laminar_coefficient(speed, length, film, pressure)
    assert found == pytest.approx(expected, rel=0.01)


@pytest.mark.parametrize("temperature", [250.0, 288.15, 330.0, 380.0])
def test_conductivity_of_air_against_fluids(temperature):
    assert convection.air_conductivity(temperature) == pytest.approx(
        ATMOSPHERE_1976.thermal_conductivity(temperature), rel=1e-6
    )
    assert convection.air_prandtl(temperature) == pytest.approx(0.71, abs=0.025)


def test_height_weakens_moving_air():
    given_, expected, tolerance = case_of("H15")
    altitude = given_["altitude_ft"] * 0.3048
    density = air.density(air.pressure(altitude), air.temperature(altitude, 0.0))
    ratio = density / air.density(air.pressure(0.0), air.temperature(0.0, 0.0))
    assert ratio == pytest.approx(expected["density_ratio"], rel=tolerance)
    film = 320.0
    low = convection.turbulent_coefficient(25.0, 0.2, film, 101325.0)
    high = convection.turbulent_coefficient(25.0, 0.2, film, 101325.0 * ratio)
    assert high / low == pytest.approx(expected["h_ratio"], rel=tolerance)


def test_area_for_still_air():
    given_, expected, tolerance = case_of("H08")
    loss = 1e3 * given_["P_in_kW"] * (1.0 - given_["efficiency"])
    difference = given_["T_oil_C"] - given_["T_air_C"]
    for coefficient, area in zip(given_["k_W_m2K"], expected["area_needed_m2"], strict=True):
        flow = heat.surface_flow(coefficient, area, 273.15 + difference, 273.15)
        assert flow == pytest.approx(loss, rel=tolerance)


def test_steady_state_of_a_case():
    given_, expected, tolerance = case_of("H10")
    air_ = given_["T_air_C"] + 273.15
    for coefficient, oil in zip(given_["k_W_m2K"], expected["T_oil_C"], strict=True):
        flow = heat.surface_flow(coefficient, given_["area_m2"], oil + 273.15, air_)
        assert flow == pytest.approx(given_["loss_W"], rel=tolerance)
    needed = heat.surface_flow(
        expected["k_needed_W_m2K"], given_["area_m2"], given_["T_limit_C"] + 273.15, air_
    )
    assert needed == pytest.approx(given_["loss_W"], rel=tolerance)


def test_tank_in_still_air():
    """0.2 m in air of 30 °C, oil of 90 °C: 5.5 of convection and 0.84 of radiation, 60 K, 0.25 m2.

    Convection by ht's cylinder law, radiation 0.1 · 4 σ T³ at the mean of 333 K, by hand.
    """
    found = convection.tank_flow(363.15, 303.15, 101325.0, 0.2, 0.25)
    assert found == pytest.approx((5.5 + 0.84) * 0.25 * 60.0, rel=0.03)
    assert convection.tank_flow(293.15, 303.15, 101325.0, 0.2, 0.25) < 0.0


def test_joint_as_thickness_of_metal():
    given_, expected, tolerance = case_of("H12")
    found = heat.equivalent_thickness(given_["contact_conductance_W_m2K"], given_["k_W_mK"])
    assert found == pytest.approx(expected["equivalent_thickness_cm"] / 100.0, rel=tolerance)


def test_hot_engine_heats_the_drive():
    # 1000 W/m²K on 50 cm², oil 80 °C, engine 100 °C: 5 W/K · -20 K
    assert heat.joint_flow(1000.0, 50e-4, 353.15, 373.15) == pytest.approx(-100.0)


def test_correction_to_the_hot_day():
    given_, expected, tolerance = case_of("H16")
    for row, value in zip(given_, expected, strict=True):
        altitude = row["altitude_ft"] * 0.3048
        hot = heat.hot_day((100.0 + 459.67) / 1.8, altitude)
        assert hot - 273.15 == pytest.approx(value["max_ambient_C"], rel=tolerance)
        corrected = heat.corrected_to_hot_day(
            row["oil_temp_measured_C"] + 273.15, hot, row["OAT_C"] + 273.15
        )
        assert corrected - 273.15 == pytest.approx(value["oil_temp_corrected_C"], rel=tolerance)


def test_heat_capacity_of_oil():
    given_, expected, tolerance = case_of("V21")
    density = given_["specific_gravity_60F"] * 999.1
    for celsius, capacity in zip(given_["t_C"], expected["cp_kJ_kgK"], strict=True):
        found = heat.oil_heat_capacity(density, celsius + 273.15)
        assert found == pytest.approx(1e3 * capacity, rel=tolerance)


def test_flow_for_a_loss():
    given_, expected, tolerance = case_of("L08")
    arguments = (given_["heat_W"], given_["rho_kgm3"], given_["cp_J_kgK"])
    flow = heat.flow_for_heat(*arguments, given_["dT_K"])
    assert flow * 6e4 == pytest.approx(expected["flow_L_min"], rel=tolerance)
    assert heat.rise_of_oil(*arguments, flow) == pytest.approx(given_["dT_K"])
    carried = heat.stream_flow(*arguments[1:], flow, 373.15, 373.15 - given_["dT_K"])
    assert carried == pytest.approx(given_["heat_W"])


@pytest.mark.parametrize("units", [0.1, 0.7, 2.0])
@pytest.mark.parametrize("ratio", [0.0, 0.3, 0.8, 1.0])
def test_counterflow_against_ht(units, ratio):
    share = cooler.effectiveness(units, ratio)
    assert share == pytest.approx(effectiveness_from_NTU(units, ratio, "counterflow"), rel=1e-9)
    if ratio < 1.0:
        back = NTU_from_effectiveness(share, ratio, "counterflow")
        assert cooler.transfer_units(share, ratio) == pytest.approx(back, rel=1e-6)
    assert cooler.transfer_units(share, ratio) == pytest.approx(units, rel=1e-6)


@settings(max_examples=40)
@given(st.floats(20.0, 200.0), st.floats(20.0, 300.0), st.floats(100.0, 1000.0))
def test_a_cooler_gives_its_rating_back(oil_rate, coolant_rate, rating):
    if rating >= 0.95 * 50.0 * min(oil_rate, coolant_rate):
        return
    conductance = cooler.cooler_conductance(rating, 50.0, oil_rate, coolant_rate)
    carried = cooler.cooler_flow(conductance, oil_rate, coolant_rate, 380.0, 330.0)
    assert carried == pytest.approx(rating, rel=1e-6)
    size = cooler.cooler_size_needed(rating, conductance, oil_rate, coolant_rate, 380.0, 330.0)
    assert size == pytest.approx(1.0, rel=1e-6)


def test_no_size_of_cooler_beats_its_streams():
    with pytest.raises(OutOfRange, match="whatever its size"):
        cooler.cooler_size_needed(2000.0, 50.0, 30.0, 100.0, 383.15, 333.15)
    with pytest.raises(OutOfRange, match="at most"):
        cooler.cooler_conductance(2000.0, 50.0, 30.0, 100.0)
    assert cooler.cooler_flow(50.0, 30.0, 0.0, 383.15, 333.15) == 0.0


def test_thermostat_opens_over_eight_kelvin():
    assert cooler.behind_thermostat(800.0, 345.0, 348.0) == 0.0
    assert cooler.behind_thermostat(800.0, 352.0, 348.0) == pytest.approx(400.0)
    assert cooler.behind_thermostat(800.0, 380.0, 348.0) == 800.0


def test_heat_content_and_rate():
    # 4 kg of oil, 7 kg of aluminium, 6 kg of steel: 4 · 2000 + 7 · 900 + 6 · 460 = 17 060 J/K
    content = heat.heat_content(4.0, 2000.0, 7.0, 900.0, 6.0)
    assert content == pytest.approx(17_060.0)
    assert heat.heating_rate(341.2, content) == pytest.approx(0.02)
