"""A mesh in a case that grows round it: contact, room at tips and backlash from cold to hot.

Gears and case stand at one temperature: the coldest of the standing drive or of the start, or the
hottest of case and oil in operation.
"""

from functools import reduce

from checker.known import Known, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import backlash, housing, involute, oil, tooth
from checker.spec.subject import Subject
from checker.train.coldest import coldest as coldest_start
from checker.train.pair import End, Pair


@measure("housing", "K", "hottest of case and oil in operation", at="highest_temperature")
def hottest(design: Design, case: Subject) -> Value:
    """The stated highest temperature of the case, or the hottest oil where that is hotter [K]."""
    stated = case.given("highest_temperature", "θ_case")
    oils = [each.given("oil_temperature", "θ_oil") for each in design.points]
    return reduce(_hotter, oils, stated)


@measure("housing", "K", "coldest of standing drive and start", at="cold_soak_temperature")
def coldest(design: Design, case: Subject) -> Value:
    """The lowest temperature of the standing drive, or of the cold start if that is lower [K]."""
    return coldest_start(design.subjects)


@measure("housing", "ΔK", "hottest oil above the stated highest case", at="highest_temperature")
def case_below_oil(design: Design, case: Subject) -> Value:
    """How far the stated highest temperature of the case lies below the hottest oil [ΔK]."""
    stated = case.given("highest_temperature", "θ_case")
    return compute(oil.temperature_reserve, design.measure("hottest", case), stated)


def _hotter(one: Value, other: Value) -> Value:
    return compute(housing.hotter, one, other)


def centre_distance(design: Design, pair: Pair, at: End, extreme: str) -> Value:
    """a_w at an end of its tolerance, in the ``hottest`` or the ``coldest`` drive [m]."""
    case = design.subjects.the("housing")
    return compute(
        backlash.centre_distance_at_temperature,
        pair.centre_distance(at),
        compute(housing.thermal_expansion, case.given("material", "material")),
        design.measure(extreme, case),
        design.subjects.the("drive").given("build_temperature", "θ_0"),
    )


@measure("mesh", "1", "transverse contact ratio at the worst corner of the hot drive")
def contact_ratio_hot(design: Design, mesh: Subject) -> Value:
    """ε_α with centres farthest apart in the hottest case and tips lowest."""
    pair = design.pairs[mesh.name]
    centre = centre_distance(design, pair, "high", "hottest")
    return pair.contact_ratio_at(centre, "high")


@measure("mesh", "1", "total contact ratio at the worst corner of the hot drive")
def total_contact_ratio_hot(design: Design, mesh: Subject) -> Value:
    """ε_γ of the hottest drive."""
    return compute(
        involute.total_contact_ratio,
        design.measure("contact_ratio_hot", mesh),
        design.measure("overlap_ratio", mesh),
    )


@measure("mesh", "1", "tip clearance at the tightest corner of the cold drive, in modules")
def tip_clearance_cold(design: Design, mesh: Subject) -> Value:
    """c/m_n of the worse gear, centres closest in the coldest case, tips and roots highest."""
    pair = design.pairs[mesh.name]
    centre = centre_distance(design, pair, "low", "coldest")
    rooms = [
        compute(
            tooth.in_modules,
            compute(
                backlash.tip_clearance,
                centre,
                wheel.tip_diameter("high"),
                pair.mate(wheel).root_diameter("high"),
            ),
            wheel.normal_module,
        )
        for wheel in (pair.driver, pair.driven)
    ]
    known = [each for each in rooms if isinstance(each, Known)]
    return all_known(*rooms) or min(known, key=lambda each: each.number)


@measure("mesh", "1", "greatest normal backlash of the hot drive, in modules", at="backlash")
def backlash_most_hot(design: Design, mesh: Subject) -> Value:
    """j_bn/m_n with centres farthest apart in the hottest case and teeth thinnest."""
    pair = design.pairs[mesh.name]
    hot = centre_distance(design, pair, "high", "hottest")
    gained = compute(
        backlash.normal_backlash_gained,
        pair.driver.base_diameter,
        pair.driven.base_diameter,
        pair.working_pressure_angle("high"),
        pair.pressure_angle_at(hot),
        pair.driver.base_helix_angle,
    )
    most = compute(backlash.backlash_sum, pair.normal_backlash("high"), gained)
    return compute(tooth.in_modules, most, pair.driver.normal_module)
