"""An elastomer in oil, and the drive between rest and running."""

import pytest
from scipy.integrate import solve_bvp

from checker.known import Unknown
from checker.mechanics import elastomer
from checker.mechanics.equation import OutOfRange


def wet(flow="0.4 L/min"):
    way = {"from": "reservoir", "to": "damper", "kind": "channel", "flow": flow}
    return {
        "damper.in_oil": True,
        "damper.wetted_surface": "300 cm2",
        "damper.elastomer_thickness": "15 mm",
        "lubrication.paths.11": way,
    }


def at(design, name):
    return design.subjects.the("point", name)


def test_middle_of_a_slab_against_scipy():
    """Even heat, film of 200 W/m2K on both faces, 0.2 W/mK: solved as a boundary value problem."""
    power, surface, thickness = 80.0, 0.03, 0.015
    source = power / (surface / 2 * thickness)

    def slope(x, y):
        return [y[1], -source / 0.2 + 0.0 * x]

    def ends(left, right):
        return [0.2 * left[1] - 200.0 * left[0], -0.2 * right[1] - 200.0 * right[0]]

    mesh = [thickness * step / 20 for step in range(21)]
    solved = solve_bvp(slope, ends, mesh, [[0.0] * 21, [0.0] * 21])
    assert elastomer.wetted_rise(power, surface, thickness) == pytest.approx(
        solved.sol(thickness / 2)[0], rel=1e-6
    )
    with pytest.raises(OutOfRange, match="wetted"):
        elastomer.wetted_rise(power, 0.0, thickness)


def test_a_thicker_element_and_less_oil_run_hotter(solve):
    def hot(changes):
        design = solve(changes)
        damper = design.subjects.the("damper")
        return design.measure("wetted_temperature", damper, at(design, "cruise")).number

    assert hot({**wet(), "damper.elastomer_thickness": "25 mm"}) > hot(wet())
    assert hot(wet("0.1 L/min")) > hot(wet())
    design = solve(wet())
    oil = design.measure(
        "hot_day_temperature", design.subjects.the("lubrication"), at(design, "cruise")
    )
    assert hot(wet()) > oil.number


def test_what_wets_it_is_not_shown_without_surface(solve):
    design = solve({**wet(), "damper.wetted_surface": "unknown"})
    reserve = design.measure("wetted_reserve", design.subjects.the("damper"), at(design, "climb"))
    assert isinstance(reserve, Unknown)
    assert ("damper", "wetted_surface") in reserve.missing


def test_soak_lies_between_running_oil_and_engine(solve):
    """Heat of the engine case alone warms no drive beyond that case."""
    for temperature in (95.0, 160.0):
        design = solve({"housing.engine_joint.engine_temperature": f"{temperature} degC"})
        lubrication = design.subjects.the("lubrication")
        limit = design.measure("oil_temperature_limit", lubrication).number
        soaked = limit - design.measure("soak_reserve", lubrication).number
        ground = max(
            design.measure("hot_day_temperature", lubrication, at(design, each)).number
            for each in ("idle", "taxi")
        )
        assert ground <= soaked <= max(ground, temperature + 273.15) + 1e-9
