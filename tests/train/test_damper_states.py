"""The damper from hot to cold and from least to most damping, against finer steps."""

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from checker.known import Unknown
from checker.train.torsional_survey import SPEEDS
from tests.train.test_resonance import viscous
from tests.train.test_torsional_survey import ask, design


def heats(survey, state, damping):
    """Heat at each operation point with some other damping."""
    damped = replace(state, damping=float(damping))
    speed = survey.speed[SPEEDS:]
    return survey.heat(survey.response(damped, speed, survey.mean[SPEEDS:]), damped, speed)


def test_heat_is_the_largest_between_least_and_most_damping():  # 80 dampings of each state
    # Cruise at 5300 rpm: with this spring firing order 1 is above resonance or, stiff, in it.
    for stiffness in (1800, 6000, 9000, 12000, 20000):
        survey = design({"damper.dynamic_stiffness": f"{stiffness} N m/rad"}).survey
        finer = np.max(
            [
                heats(survey, state, damping)
                for state in survey.model.states
                for damping in np.geomspace(0.8 * 0.6, 1.2 * 0.6, 80)
            ],
            axis=0,
        )
        found = [survey.damper_heat[name] for name in survey.points]
        assert found == pytest.approx(finer, rel=0.04)
        assert np.all(found <= finer * (1 + 1e-9))


def test_heat_away_from_resonance_grows_with_the_damping():  # P ∝ ψ where T hardly depends on it
    survey = design({"damper.dynamic_stiffness": "200 N m/rad"}).survey
    cold = survey.model.states[-1]
    least, most = (heats(survey, cold, 0.6 * factor)[0] for factor in (0.8, 1.2))
    assert most / least == pytest.approx(1.5, rel=0.01)
    assert survey.damper_heat["cruise"] == pytest.approx(most, rel=1e-9)


def test_heat_counts_the_larger_of_stated_and_hot_damping():
    rubber = {
        "damper.kind": "elastomer",
        "damper.hot_stiffness": "1500 N m/rad",
        "damper.cold_stiffness": "2100 N m/rad",
    }
    for hot in (0.5, 0.7):
        states = design({**rubber, "damper.hot_relative_damping": hot}).survey.model.states
        assert [each.most_damping for each in states] == [pytest.approx(1.2 * max(0.6, hot))] * len(
            states
        )
        tried = [each.damping for each in states[0].damped()]
        assert (tried[0], tried[-1]) == pytest.approx((0.8 * hot, 1.2 * max(0.6, hot)))
        assert max(more / less for less, more in pairwise(tried)) <= 1.7


def test_a_damper_of_unknown_kind_has_no_ends():
    solved = design({"damper.kind": None, "damper.hot_stiffness": "1500 N m/rad"})
    assert solved.survey.missing == (("damper", "kind"),)
    assert ask(solved, "damper", "softest_stiffness").missing == (("damper", "kind"),)


HOUSED = {"housing": {"cold_soak_temperature": "-20 degC"}}
RUBBER = {**HOUSED, "damper.kind": "elastomer", "damper.hot_stiffness": "1500 N m/rad"}


@pytest.mark.parametrize(
    ("stated", "more", "missing"),
    [
        ("70 degC", {}, ["damper.cold_stiffness"]),
        ("-19 degC", {}, ["damper.cold_stiffness"]),
        ("-20 degC", {}, None),
        ("-20 degC", {"lubrication": {"cold_start_temperature": "-25 degC"}},
         ["damper.cold_stiffness"]),
        ("-25 degC", {"lubrication": {"cold_start_temperature": "-25 degC"}}, None),
        ("70 degC", {"damper.cold_stiffness": "2500 N m/rad"}, None),
        (None, {}, ["damper.cold_stiffness", "damper.stiffness_temperature"]),
        ("-30 degC", {"housing": {}}, ["damper.cold_stiffness", "housing.cold_soak_temperature"]),
    ],
)  # fmt: skip
def test_a_warm_stiffness_does_not_stand_for_the_cold_one(stated, more, missing):
    temperature = {"damper.stiffness_temperature": stated} if stated else {}
    solved = design({**RUBBER, **temperature, **more})
    stiffest = ask(solved, "damper", "stiffest_stiffness")
    if missing is None:
        cold = 2500.0 if "damper.cold_stiffness" in more else 1800.0
        assert stiffest.number == pytest.approx(1.2 * cold)
        assert solved.survey.model.states[-1].stiffness == pytest.approx(1.2 * cold)
    else:
        assert [".".join(path) for path in stiffest.missing] == missing
        assert set(stiffest.missing) <= set(solved.survey.missing)


def test_a_viscous_damper_is_soft_and_stiff_with_little_and_much_damping():
    survey = design(viscous(3.0, 0.5, 2.0)).survey
    model = survey.model
    states = model.states
    ends = [(state.stiffness, state.viscous) for state in states[:2] + states[-2:]]
    soft, stiff, least, most = 0.8 * 1800, 1.2 * 1800, 0.8 * 1.5, 1.2 * 6.0
    crossed = [(soft, least), (soft, most), (stiff, least), (stiff, most)]
    assert np.array(ends) == pytest.approx(np.array(crossed))
    as_stated = states[model.running]
    assert (as_stated.stiffness, as_stated.viscous) == (1800.0, 3.0)
    stiffness = [each.stiffness for each in states]
    assert stiffness == sorted(stiffness)
    assert {states[each].viscous for each in model.bounding} > {as_stated.viscous}
    assert len(model.bounding) == 5


def test_a_cold_viscous_damper_passes_on_what_it_does():  # any pair of values within the ends
    survey = design(viscous(3.0, 0.5, 2.0)).survey
    node = survey.model.joint("damper")
    mild = design(viscous(3.0)).survey
    # Far above resonance a stiff dashpot passes on more: at full speed the cold one governs.
    assert survey.alternating[node, 399] > 1.5 * mild.alternating[node, 399]
    speed, mean = survey.speed[:SPEEDS:7], survey.mean[:SPEEDS:7]
    for stiffness in (1500.0, 1800.0, 2100.0):
        for damping in (1.3, 2.0, 4.0, 7.0):
            within = replace(survey.model.states[0], stiffness=stiffness, viscous=damping)
            response = survey.response(within, speed, mean)
            highest = np.maximum(response.up[node], -response.down[node])
            assert np.all(highest <= 1.05 * survey.alternating[node, :SPEEDS:7])


def test_heat_of_a_viscous_damper_is_the_largest_between_its_ends():
    survey = design(viscous(3.0, 0.3, 3.0)).survey
    speed, mean = survey.speed[SPEEDS:], survey.mean[SPEEDS:]
    finer = np.zeros(len(speed))
    for state in survey.model.states:
        for damping in np.geomspace(0.8 * 0.9, 1.2 * 9.0, 40):
            damped = replace(state, viscous=float(damping))
            response = survey.response(damped, speed, mean)
            finer = np.maximum(finer, survey.heat(response, damped, speed))
    found = [survey.damper_heat[name] for name in survey.points]
    assert found == pytest.approx(finer, rel=0.04)


@pytest.mark.parametrize(("damping", "least"), [(1.2, 4), (0.1, 31), (0.05, 63), (0.04, 79)])
def test_states_lie_within_half_a_width_of_resonance(damping, least):
    # Width at half power of a hysteretic resonance: psi/2π of its frequency (textbook).
    states = design({"damper.relative_damping": damping}).survey.model.states
    assert len(states) > least
    assert all(each.damping == pytest.approx(0.8 * damping) for each in states)
    step = (states[-1].stiffness / states[0].stiffness) ** (0.5 / (len(states) - 1)) - 1.0
    assert step <= 1.05 * 0.8 * damping / (2.0 * math.tau)


def test_a_light_spring_is_sought_finely_enough():
    # A resonance half a step aside, a quarter of its width, shows 1/√(1 + (2/4)²) of its torque.
    survey = design({"damper.relative_damping": 0.05}).survey
    states, node = survey.model.states, survey.model.joint("damper")
    speed, mean = survey.speed[:SPEEDS:3], survey.mean[:SPEEDS:3]
    finer = np.zeros(len(speed))
    for stiffness in np.geomspace(states[0].stiffness, states[-1].stiffness, 500):
        response = survey.response(replace(states[0], stiffness=float(stiffness)), speed, mean)
        finer = np.maximum(finer, np.maximum(response.up[node], -response.down[node]))
    share = survey.alternating[node, :SPEEDS:3] / finer
    assert share.min() > 0.98 / math.sqrt(1.25)
    assert share.max() < 1.01


@pytest.mark.parametrize("damping", [0.039, 0.001, 0.0])
def test_a_resonance_too_sharp_to_be_sought_is_not_shown(damping):
    survey = design({"damper.relative_damping": damping}).survey
    assert survey.missing == (("damper", "relative_damping"),)
    assert "too sharp" in survey.because


def test_a_viscous_resonance_too_sharp_to_be_sought_is_not_shown():
    # ψ = 2π ω c / C at half an order of idle, 84 rad/s, with 0.8 c over 1.2 of 1800 N m/rad.
    for coefficient, shown in ((0.17, True), (0.15, False)):
        survey = design(viscous(coefficient)).survey
        assert isinstance(survey, Unknown) is not shown
        damping = math.tau * 1600 / 2 * math.tau / 60 * 0.8 * coefficient / (1.2 * 1800)
        assert (math.log(1.5) / 2 / (damping / (2 * math.tau)) <= 80) is shown
        if not shown:
            assert survey.missing == (("damper", "hot_damping_coefficient"),)
