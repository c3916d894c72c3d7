"""Ratings of whole gears: laws that hold whatever the formulas, and what an unknown K_A leaves."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from checker.known import Known, Unknown
from checker.measures import gear_limits, rating
from checker.mechanics import hertz
from checker.solve import gear_limit, varied
from checker.solve.iso_state import IsoState

RPM = math.pi / 30.0


@pytest.fixture(scope="module")
def designs(solve_once):
    return {name: solve_once({}, name) for name in ("marram", "tansy", "sorrel")}


def part(design, kind, name=""):
    return design.subjects.the(kind, name)


def state_of(design, mesh, point):
    return rating.state(design, part(design, "mesh", mesh), part(design, "point", point), False)


def safeties(state, cycles=1e8):
    number = Known(cycles, "1", "N", origin="of this test")
    return [
        safety(tooth, number).number
        for tooth in state.rating.teeth
        for safety in (state.contact_safety, state.bending_safety)
    ]


MESHES = [(name, mesh) for name in ("marram", "tansy", "sorrel") for mesh in ("first", "second")]


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_more_torque_never_raises_a_safety_factor(designs, name, mesh):
    """From 100 N/mm up: below, ISO 6336-1 moves the resonance with the load and K_v jumps."""
    state = state_of(designs[name], mesh, "climb")
    least = 100e3 / state.line_load.number

    @settings(max_examples=25)
    @given(st.floats(least, 4.0 * least), st.floats(1.01, 1.5))
    def holds(load, more):
        pairs = zip(
            safeties(state.at_load(load)), safeties(state.at_load(load * more)), strict=True
        )
        assert all(after <= before for before, after in pairs)

    holds()


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_more_face_width_never_lowers_a_safety_factor(designs, name, mesh):
    state = state_of(designs[name], mesh, "take-off")

    @settings(max_examples=20)
    @given(st.floats(0.5, 1.2), st.floats(1.01, 1.2))
    def holds(width, more):
        pair = state.rating.pair
        narrow = state.with_pair(varied.with_face_width(pair, width))
        wide = state.with_pair(varied.with_face_width(pair, width * more))
        pairs = zip(safeties(narrow), safeties(wide), strict=True)
        assert all(after >= before * (1.0 - 1e-9) for before, after in pairs)

    holds()


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_factor_and_torque_count_alike(designs, name, mesh):
    """K_A = 2 on a torque is K_A = 1 on twice the torque."""
    state = state_of(designs[name], mesh, "cruise")
    one, two = (Known(factor, "1", "K_A", origin="test") for factor in (1.0, 2.0))
    pulses = IsoState(state.rating, state.torque, state.speed, two)
    mean = IsoState(state.rating, state.torque, state.speed, one).at_load(2.0)
    assert safeties(pulses) == pytest.approx(safeties(mean))


@pytest.mark.parametrize("mesh", ["first", "second"])
def test_nominal_contact_stress_is_that_of_hertz(designs, mesh):
    """Spur teeth at the pitch point: two cylinders under the normal force, Z_ε taken off."""
    state = state_of(designs["tansy"], mesh, "climb")
    pair = state.rating.pair
    angle = pair.working_pressure_angle().number
    radii = [
        0.5 * wheel.base_diameter.number * math.tan(angle) for wheel in (pair.driver, pair.driven)
    ]
    torque = state.torque.number
    force = torque / (0.5 * pair.driver.base_diameter.number)
    direct = hertz.line_contact_pressure(
        force,
        pair.common_face_width.number,
        hertz.reduced_radius(*radii),
        hertz.reduced_modulus(206e9, 0.3, 206e9, 0.3),
    )
    nominal, _ = state._contact_stress
    assert nominal.number / state.rating.contact_ratio_factor.number == pytest.approx(direct)


def test_idler_stands_seven_tenths_in_bending(designs):
    design = designs["marram"]
    found = rating.rated(design, part(design, "mesh", "first"))
    idler, pinion = found.tooth("idler_gear"), found.tooth("pinion")
    assert idler.is_idler.value is True
    assert pinion.is_idler.value is False
    leaves = {node.symbol: node.number for node in idler.bending_endurance.inputs}
    assert leaves["Y_M"] == 0.7
    # The two roots are of one steel and tool: only 0.7 and the notch tell them apart.
    assert idler.bending_endurance.number / pinion.bending_endurance.number == pytest.approx(
        0.7, rel=0.02
    )


NO_SURVEY = {"engine.inertia": None}
"""Without the inertia of the engine there is no torsional survey."""


def test_application_factor_is_taken_with_its_evidence(solve):
    design = solve({})
    assert design.measure("stated_application_factor", part(design, "drive")).value == 1.5
    mesh, climb = part(design, "mesh", "first"), part(design, "point", "climb")
    assert rating.application_factor(design, mesh, climb).value == 1.5
    unproven = solve({"drive.application_factor.evidence": None})
    mesh, climb = part(unproven, "mesh", "first"), part(unproven, "point", "climb")
    assert rating.application_factor(unproven, mesh, climb).value == 1.5
    unstated = solve({"drive.application_factor.factor": None})
    mesh, climb = part(unstated, "mesh", "first"), part(unstated, "point", "climb")
    surveyed = rating.application_factor(unstated, mesh, climb)
    assert surveyed.value == unstated.measure("application_factor", mesh, climb).value
    assert 1.0 < surveyed.value < 1.5
    silent = solve({"drive.application_factor.evidence": None, **NO_SURVEY})
    mesh, climb = part(silent, "mesh", "first"), part(silent, "point", "climb")
    value = rating.application_factor(silent, mesh, climb)
    assert isinstance(value, Unknown)
    assert ("drive", "application_factor", "evidence") in value.missing
    assert value.at_best.value == 1.5


@pytest.mark.parametrize("field", ["evidence", "factor"])
def test_deleting_a_measured_factor_leaves_the_drive_open(review, field):
    found = review({f"drive.application_factor.{field}": None}).findings
    proof = next(each for each in found if each.rule.id == "rating.application-factor-proven")
    assert (proof.outcome, proof.level) == ("not shown", "caution")


def test_spectrum_with_its_pulses_takes_no_factor(solve):
    design = solve({"drive.application_factor": {"in_spectrum": True, "evidence": "Survey"}})
    assert design.measure("stated_application_factor", part(design, "drive")).value == 1.0


def test_unknown_application_factor_leaves_the_best_case(solve):
    known = solve({"drive.application_factor.factor": 1.0, **NO_SURVEY})
    silent = solve({"drive.application_factor": None, **NO_SURVEY})
    for name in ("contact_safety", "bending_safety", "contact_safety_agma"):
        values = [
            each.measure(name, part(each, "gear", "pinion"), part(each, "point", "climb"))
            for each in (known, silent)
        ]
        assert values[1].at_best.number == pytest.approx(values[0].number)
    for name in ("pitting_life", "bending_life_share"):
        values = [each.measure(name, part(each, "gear", "pinion")) for each in (known, silent)]
        assert values[1].at_best.number == pytest.approx(values[0].number)


def test_missing_material_is_named(solve):
    design = solve({"gears.pinion.material.quality": None})
    value = design.measure(
        "contact_safety", part(design, "gear", "pinion"), part(design, "point", "climb")
    )
    assert value.missing == (("gears", "pinion", "material", "quality"),)


def test_stated_misalignment_goes_before_the_estimate(solve):
    climb = "climb"
    worse, better = (solve({"meshes.first.misalignment": f"{size} um"}) for size in (40.0, 0.0))
    estimated = solve({})
    factors = [
        each.measure("face_load_factor", part(each, "mesh", "first"), part(each, "point", climb))
        for each in (better, estimated, worse)
    ]
    assert factors[0].number < factors[1].number < factors[2].number


def test_overhung_pinion_without_reactions_asks_for_its_misalignment(solve):
    design = solve({"bearings.input_front.station": "170 mm", "shafts.input.sections": None})
    value = design.measure(
        "face_load_factor", part(design, "mesh", "first"), part(design, "point", "climb")
    )
    assert ("meshes", "first", "misalignment") in value.missing
    assert "between bearings" in value.because


def test_mesh_without_torque_is_not_rated(designs):
    design = designs["marram"]
    loaded = design.measure(
        "carries_torque", part(design, "mesh", "first"), part(design, "point", "descent")
    )
    assert loaded.value is False


def test_windmilling_loads_the_other_flank(designs, solve):
    """Without its descent Tansy's flanks live as long: the overrun bears on the other side."""
    full = designs["tansy"]
    assert full.points[5].name == "descent"
    wheel = part(full, "gear", "input_pinion")
    both = full.measure("pitting_life", wheel).number
    unloaded = solve({"operation.5.power": "0 kW"}, "tansy")
    alone = unloaded.measure("pitting_life", part(unloaded, "gear", "input_pinion")).number
    assert alone == pytest.approx(both)


def test_life_of_one_state_is_its_cycles_over_its_speed(designs):
    design = designs["tansy"]
    state = state_of(design, "first", "climb")
    tooth = state.rating.tooth("input_pinion")
    speed = Known(5200 * RPM, "rad/s", "ω", origin="test")
    rate = state.contact_damage(tooth, Known(1.0, "1", "q", origin="test"), speed)
    cycles = rate.inputs[2].number
    assert 1.0 / rate.number == pytest.approx(cycles / (5200 / 60.0))


def test_target_life_and_share_set_the_cycles(designs):
    design = designs["marram"]
    gear, point = part(design, "gear", "pinion"), part(design, "point", "cruise")
    # 1500 h, 64 % of the time, 5300 turns a minute
    found = rating.cycles_at(design, gear, point).number
    assert found == pytest.approx(1500 * 60 * 0.64 * 5300)


def test_lower_chance_of_failure_costs_strength(solve):
    values = []
    for chance in ("1 %", "0.1 %"):
        design = solve({"drive.failure_probability": chance})
        point = part(design, "point", "climb")
        gear = part(design, "gear", "pinion")
        values.append(design.measure("contact_safety", gear, point).number)
    # AGMA 2001 Table 11: 1.25 for one failure in a thousand, 1.00 for one in a hundred
    assert values[0] / values[1] == pytest.approx(1.25, rel=0.005)


@pytest.mark.parametrize("name", ["marram", "tansy", "sorrel"])
def test_ranking_is_in_order_and_names_its_first(designs, name):
    design = designs[name]
    ranking = gear_limits.ranking(design)
    in_hand = [each.load_in_hand.number for each in ranking]
    assert in_hand == sorted(in_hand)
    limiting = design.measure("limiting_gear", part(design, "drive"))
    assert limiting.value == ranking[0].text
    assert {each.mode for each in ranking} == {"pitting", "breakage"}


@pytest.mark.parametrize("name", ["marram", "tansy", "sorrel"])
def test_first_limit_is_reached_at_its_load(designs, name):
    """The load found by the solve brings the least load in hand to one; scipy finds the same."""
    design = designs[name]
    drive = part(design, "drive")
    found = design.measure("load_at_first_limit", drive).number
    point = gear_limits.ranking(design)[0].point
    duties = [
        gear_limits._duty(design, mesh, part(design, "point", point))
        for mesh in design.subjects.all("mesh")
    ]

    def least(load):
        return min(
            limit.load_in_hand.number
            for duty in duties
            for limit in gear_limit.limits_of(duty, duty.state.at_load(load))
        )

    assert least(found) == pytest.approx(1.0, abs=1e-4)
    assert found == pytest.approx(brentq(lambda load: least(load) - 1.0, 0.1, 20.0), rel=1e-4)
    stated = part(design, "point", point).given("power").number
    power = design.measure("power_at_first_limit", drive).number
    assert power == pytest.approx(found * stated)


@pytest.mark.parametrize(
    ("measure", "field", "path"),
    [
        ("face_width_at_limit", "face_width", "face_width"),
        ("module_at_limit", "module", "module"),
    ],
)
def test_size_at_the_limit_is_smaller_in_a_healthy_drive(designs, measure, field, path):
    design = designs["tansy"]
    limiting = gear_limits.ranking(design)[0]
    stated = part(design, "gear", limiting.gear).given(field).number
    assert design.measure(measure, part(design, "drive")).number < stated


def test_face_width_at_limit_restores_a_gear_that_falls_short(solve):
    short = solve({"drive.application_factor.factor": 2.4}, "tansy")
    drive = part(short, "drive")
    first = gear_limits.ranking(short)[0]
    assert first.load_in_hand.number < 1.0
    needed = short.measure("face_width_at_limit", drive).number
    stated = part(short, "gear", first.gear).given("face_width").number
    assert needed > stated
    gears = [short.subjects.spec.meshes[first.mesh].driver]
    gears.append(short.subjects.spec.meshes[first.mesh].driven)
    wider = {
        f"gears.{gear}.face_width": (
            f"{1e3 * part(short, 'gear', gear).given('face_width').number * needed / stated} mm"
        )
        for gear in gears
    }
    restored = solve({"drive.application_factor.factor": 2.4, **wider}, "tansy")
    again = [each for each in gear_limits.ranking(restored) if each.mesh == first.mesh]
    assert min(each.load_in_hand.number for each in again) == pytest.approx(1.0, abs=1e-3)


def test_hardness_at_limit_of_soft_gears(solve):
    """Through-hardened gears that fall short are restored by hardness, up to what is rated."""
    changes = {"drive.application_factor.factor": 1.0}
    for gear in ("pinion", "idler_gear", "prop_gear"):
        changes[f"gears.{gear}.material"] = {
            "treatment": "through-hardened",
            "quality": "MQ",
            "steel": "42CrMo4",
            "surface_hardness": "280 HB",
            "core_hardness": "280 HB",
        }
    design = solve(changes)
    first = gear_limits.ranking(design)[0]
    needed = design.measure("hardness_at_limit", part(design, "drive"))
    assert isinstance(needed, Known)
    assert (needed.number > 280.0) == (first.load_in_hand.number < 1.0)


def test_hardness_does_not_restore_a_hardened_gear(designs):
    design = designs["tansy"]
    value = design.measure("hardness_at_limit", part(design, "drive"))
    assert isinstance(value, Unknown)
    assert value.because


@pytest.mark.parametrize(("name", "mesh"), MESHES)
def test_two_standards_are_of_one_mind_at_full_power(designs, name, mesh):
    """Permissible power at equal life and reliability lies within a factor of one and a half."""
    design = designs[name]
    ratio = design.measure(
        "standards_ratio", part(design, "mesh", mesh), part(design, "point", "take-off")
    )
    assert 1.0 / 1.5 < ratio.number < 1.5


def test_every_factor_of_both_standards_is_in_the_derivation(designs):
    design = designs["marram"]
    gear, point = part(design, "gear", "pinion"), part(design, "point", "climb")
    wanted = {
        "contact_safety": {"K_A", "K_v", "K_Hβ", "K_Hα", "Z_H", "Z_E", "Z_ε", "Z_β", "Z_B", "Z_L",
                           "Z_v", "Z_R", "Z_W", "Z_X", "σ_Hlim"},
        "bending_safety": {"K_A", "K_v", "K_Fβ", "K_Fα", "Y_F", "Y_S", "Y_ε", "Y_β", "Y_B", "Y_DT",
                           "Y_δrelT", "Y_RrelT", "Y_X", "Y_M", "σ_Flim"},
        "contact_safety_agma": {"K_v", "K_m", "K_s", "I", "Z_E", "s_ac"},
        "bending_safety_agma": {"K_v", "K_m", "J", "Y_B", "s_at"},
    }  # fmt: skip
    for name, symbols in wanted.items():
        value = design.measure(name, gear, point)
        assert symbols <= {node.symbol for node in value.chain()}


def test_no_limit_of_one_standard_meets_a_stress_of_the_other(designs):
    design = designs["marram"]
    gear, point = part(design, "gear", "pinion"), part(design, "point", "climb")
    for name, foreign in (
        ("contact_safety", {"s_ac", "σ_c", "I"}),
        ("bending_safety", {"s_at", "σ_t"}),
        ("contact_safety_agma", {"σ_Hlim", "σ_H", "σ_HG"}),
        ("bending_safety_agma", {"σ_Flim", "σ_F", "σ_FG"}),
    ):
        chain = design.measure(name, gear, point).chain()
        assert not {node.symbol for node in chain} & foreign
        sources = " ".join(getattr(node.origin, "source", "") for node in chain)
        assert ("AGMA 908" in sources) == name.endswith("agma")


def test_hot_drive_has_less_contact_and_more_backlash(designs):
    for design in designs.values():
        for mesh in design.subjects.all("mesh"):
            cold = design.measure("transverse_contact_ratio_least", mesh).number
            assert design.measure("contact_ratio_hot", mesh).number < cold
            pair = design.pairs[mesh.name]
            module = pair.driver.normal_module.number
            most = pair.normal_backlash("high").number / module
            assert design.measure("backlash_most_hot", mesh).number > most


def test_hot_centre_distance_by_hand(designs):
    """Marram's first mesh from 20 to 95 °C: 89.92 mm grows by (23 − 11.5) µm/m K."""
    from checker.measures import gear_heat

    design = designs["marram"]
    pair = design.pairs["first"]
    hot = gear_heat.centre_distance(design, pair, "high", "hottest")
    assert hot.number == pytest.approx(89.92e-3 * (1 + 11.5e-6 * 75.0), rel=1e-9)


def test_scuffing_rests_on_the_stage_of_the_oil_in_the_drive(solve):
    found = []
    for stage in (6, 9):
        design = solve({"lubrication.oil.scuffing_load_stage": stage})
        found.append(
            design.measure(
                "scuffing_safety", part(design, "mesh", "first"), part(design, "point", "climb")
            ).number
        )
    # 80 + 2.25 stage² °C over oil at 90 °C
    assert found[1] / found[0] == pytest.approx((80 + 2.25 * 81 - 90) / (80 + 2.25 * 36 - 90))


def test_start_passes_the_limit_of_the_starter(designs):
    """Tansy has no clutch: 120 N m at the crank against the peak."""
    design = designs["tansy"]
    gear = part(design, "gear", "input_pinion")
    start = design.measure("start_bending_safety", gear).number
    limit = design.measure("static_bending_safety", gear).number
    ultimate = design.measure("ultimate_bending_safety", gear).number
    assert start > limit > ultimate


def test_ratio_of_the_standards_is_not_known_without_the_application_factor(solve):
    design = solve({"drive.application_factor": None, **NO_SURVEY})
    asked = part(design, "mesh", "first"), part(design, "point", "climb")
    ratio = design.measure("standards_ratio", *asked)
    powers = [
        design.measure(name, *asked).at_best.number
        for name in ("permissible_power", "permissible_power_agma")
    ]
    assert isinstance(ratio, Unknown)
    assert ratio.at_best.number == pytest.approx(powers[0] / powers[1])


@pytest.mark.parametrize(("stated", "hottest"), [("95 degC", 95.0), ("60 degC", 90.0)])
def test_hot_drive_is_as_hot_as_case_and_oil(solve, stated, hottest):
    """Marram's hottest oil is 90 °C, in the climb."""
    design = solve({"housing.highest_temperature": stated})
    case = part(design, "housing")
    assert design.measure("hottest", case).number == pytest.approx(hottest + 273.15)
    assert design.measure("case_below_oil", case).number == pytest.approx(
        hottest - float(stated.split()[0])
    )


@pytest.mark.parametrize(("start", "coldest"), [("0 degC", -15.0), ("-20 degC", -20.0)])
def test_cold_drive_is_as_cold_as_standing_and_start(solve, start, coldest):
    design = solve({"lubrication.cold_start_temperature": start})
    assert design.measure("coldest", part(design, "housing")).number == coldest + 273.15


def test_point_without_time_is_rated_as_a_single_overload(solve):
    design = solve({"operation.2.share": "0 %"})
    gear, point = part(design, "gear", "pinion"), part(design, "point", "take-off")
    for name in ("contact_safety", "bending_safety", "contact_safety_agma", "bending_safety_agma"):
        assert design.measure(name, gear, point).number > 1.0


def test_flank_with_two_mates_bears_twice_in_each_turn(solve_once):
    design = solve_once({"meshes.second.driver": "pinion"})
    counts = {
        gear: rating.mates_on_one_flank(design, part(design, "gear", gear)).value
        for gear in ("pinion", "idler_gear", "prop_gear")
    }
    assert counts == {"pinion": 2, "idler_gear": 1, "prop_gear": 1}


def test_ratings_reached_by_hand(solve):
    """Take-off at 57 of 60 kW; then the climb at 6000 rpm against 51.5 kW at 5800 rpm."""
    design = solve({"operation.2.power": "57 kW", "operation.2.engine_speed": "5900 rpm"})
    found = design.measure("ratings_reached", part(design, "drive"))
    assert found.number == pytest.approx(57.0 / 60.0)
    design = solve({"operation.3.power": "51 kW", "operation.3.engine_speed": "6000 rpm"})
    found = design.measure("ratings_reached", part(design, "drive"))
    assert found.number == pytest.approx(51.0 / 6000.0 / (51.5 / 5800.0))


def test_face_width_restores_the_safety_that_is_asked_for(designs):
    design = designs["tansy"]
    first = gear_limits.ranking(design)[0]
    asked = gear_limit.Minima(pitting=1.2, breakage=1.2)
    assert asked.in_hand(first) == pytest.approx((first.safety.number / 1.2) ** 2)
    wider = gear_limits.size_at_limit(design, "face_width", asked).number
    stated = part(design, "gear", first.gear).given("face_width").number
    plain = gear_limits.size_at_limit(design, "face_width").number
    assert plain < stated < wider


INDUCTION = {
    "gears.input_pinion.material.treatment": "induction-hardened",
    "gears.input_pinion.material.surface_hardness": "54 HRC",
    "gears.input_pinion.material.core_hardness": "280 HB",
}


def test_root_left_out_of_induction_hardening_is_rated_by_its_core(solve):
    found = {}
    for hardened in (True, False, None):
        design = solve(
            {**INDUCTION, "gears.input_pinion.material.root_hardened": hardened}
            if (hardened is not None)
            else INDUCTION,
            "tansy",
        )
        gear, climb = part(design, "gear", "input_pinion"), part(design, "point", "climb")
        for name in ("bending_safety", "bending_safety_agma"):
            found[name, hardened] = design.measure(name, gear, climb)
    for name in ("bending_safety", "bending_safety_agma"):
        assert found[name, False].number < found[name, True].number
        path = ("gears", "input_pinion", "material", "root_hardened")
        assert path in found[name, None].missing
