"""Measures of a gear: its teeth, and the room that its mates leave it, each at the worst corner.

A gear with several mates, such as an idler, is judged by the mate that leaves it the least.
"""

from collections.abc import Callable, Iterator

from checker.known import Known, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import backlash, involute, kinematics, rack, tooth
from checker.spec.subject import Subject
from checker.train.pair import Pair, Wheel


@measure("gear", "", "whether the root diameter is stated", at="root_diameter")
def states_root(design: Design, gear: Subject) -> Value:
    """Whether the root is stated, and not left to the tool."""
    stated = gear.given("root_diameter")
    inputs = (stated,) if isinstance(stated, Known) else ()
    return Known(bool(inputs), "", "root stated", inputs=inputs)


@measure(
    "gear", "1", "difference of the stated root and the tool's, in modules", at="root_diameter"
)
def root_disagreement(design: Design, gear: Subject) -> Value:
    """How far the stated root lies from the one that the tool leaves, in modules."""
    wheel = design.wheels[gear.name]
    return compute(
        rack.root_difference,
        gear.given("root_diameter", "d_f"),
        wheel.tooled_root_diameter(),
        wheel.normal_module,
    )


@measure("gear", "1", "undercut margin as profile shift", at="profile_shift")
def undercut_margin(design: Design, gear: Subject) -> Value:
    """Δx, profile shift in hand against undercut, with the teeth thinned the most."""
    return design.wheels[gear.name].undercut_margin("low")


@measure("gear", "1", "tip thickness in modules", at="tip_diameter")
def tip_thickness(design: Design, gear: Subject) -> Value:
    """s_an/m_n, normal tooth thickness at the highest tip of the thinnest tooth."""
    wheel = design.wheels[gear.name]
    tip = wheel.tip_diameter("high")
    helix = compute(tooth.helix_angle_at_diameter, wheel.helix_angle, wheel.reference_diameter, tip)
    normal = compute(
        tooth.normal_thickness_at_diameter, wheel.thickness_at(tip, thinning="high"), helix
    )
    return compute(tooth.in_modules, normal, wheel.normal_module)


@measure("gear", "1", "use of the line of action by the mate's tip", at="profile_shift")
def interference_reach(design: Design, gear: Subject) -> Value:
    """ι of the mate whose tip reaches nearest to this gear's base circle, or past it."""

    def reach(pair: Pair, wheel: Wheel) -> Value:
        mate = pair.mate(wheel)
        return compute(
            involute.interference_reach,
            mate.active_tip_diameter("high"),
            mate.base_diameter,
            pair.centre_distance("low"),
            pair.working_pressure_angle("low"),
        )

    return _worst(design, gear, reach, max)


@measure("gear", "m", "involute in hand below the mate's tip", at="basic_rack")
def form_clearance(design: Design, gear: Subject) -> Value:
    """c_F, radial room between the end of the active profile and the root fillet [m]."""

    def clearance(pair: Pair, wheel: Wheel) -> Value:
        mate = pair.mate(wheel)
        start = compute(
            involute.start_of_active_profile,
            wheel.base_diameter,
            mate.active_tip_diameter("high"),
            mate.base_diameter,
            pair.centre_distance("low"),
            pair.working_pressure_angle("low"),
        )
        return compute(involute.form_clearance, start, wheel.root_form_diameter("high"))

    return _worst(design, gear, clearance, min)


@measure("gear", "1", "tip clearance to the mate's root in modules", at="tip_diameter")
def tip_clearance(design: Design, gear: Subject) -> Value:
    """c/m_n with centres closest, this tip highest and the mate's root highest."""

    def clearance(pair: Pair, wheel: Wheel) -> Value:
        room = compute(
            backlash.tip_clearance,
            pair.centre_distance("low"),
            wheel.tip_diameter("high"),
            pair.mate(wheel).root_diameter("high"),
        )
        return compute(tooth.in_modules, room, wheel.normal_module)

    return _worst(design, gear, clearance, min)


@measure("gear", "", "whether the gear is an idler")
def is_idler(design: Design, gear: Subject) -> Value:
    """Whether one mate drives the gear and it drives another, so that both flanks work."""
    roles = {
        role: pair.subject.given(role)
        for pair, wheel in _mates(design, gear)
        for role in ("driver" if wheel is pair.driver else "driven",)
    }
    known = tuple(each for each in roles.values() if isinstance(each, Known))
    return Known(len(roles) == 2, "", "idler", inputs=known)


@measure("gear", "1", "peak torque rating of the teeth over peak torque", at="peak_torque_rating")
def peak_torque_margin(design: Design, gear: Subject) -> Value:
    """Rating of the teeth over the peak torque at this gear; at best, with the peak's floor."""
    rating = gear.given("peak_torque_rating", "T_lim")
    return design.peaks.judged(
        lambda peak: compute(kinematics.quotient, rating, peak),
        str(gear.raw("shaft")),
        *(pair.subject.name for pair, _ in _mates(design, gear)),
    )


def _mates(design: Design, gear: Subject) -> Iterator[tuple[Pair, Wheel]]:
    wheel = design.wheels[gear.name]
    for pair in design.pairs.values():
        if wheel in (pair.driver, pair.driven):
            yield pair, wheel


def _worst(
    design: Design,
    gear: Subject,
    value: Callable[[Pair, Wheel], Value],
    pick: Callable[..., Known],
) -> Value:
    """The worst of a value over all mates of a gear; unknown where it is for any."""
    values = [value(pair, wheel) for pair, wheel in _mates(design, gear)]
    known = [each for each in values if isinstance(each, Known)]
    return all_known(*values) or pick(known, key=lambda each: each.number)
