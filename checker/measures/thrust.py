"""Measures of the axial forces on a shaft: what pushes it, which way, and what is left over.

A member that turns freely on a shaft passes the thrust of its gears to that shaft.
"""

from checker.known import Known, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import tooth_forces
from checker.spec.subject import Subject


@measure("shaft", "", "whether the shaft needs bearings of its own")
def needs_bearings(design: Design, shaft: Subject) -> Value:
    """Whether a gear or the propeller loads it; a hub has its bearings on the shaft it turns on."""
    on_it = [wheel.subject.given("shaft") for _, wheel in design.loads.meshes_on(shaft.name)]
    if shaft.name == design.train.last:
        on_it.append(design.subjects.the("propeller").given("shaft"))
    known = tuple(each for each in on_it if isinstance(each, Known))
    return Known(bool(on_it), "", "needs bearings", inputs=known)


@measure("shaft", "", "whether axial load can occur on the shaft")
def axial_load_occurs(design: Design, shaft: Subject) -> Value:
    """Whether a helical gear or the propeller can push the shaft.

    Where they can, they can both ways: the torque reverses in overrun, at idle and with a locked
    clutch, and a propeller pulls and brakes.
    """
    if shaft.name == design.train.last:
        carries = design.subjects.the("propeller").given("shaft")
        inputs = (carries,) if isinstance(carries, Known) else ()
        return Known(True, "", "axial load", inputs=inputs)
    spurs = [wheel.is_spur for _, wheel in design.loads.meshes_on(shaft.name)]
    known = tuple(each for each in spurs if isinstance(each, Known))
    if any(each.value is False for each in known):
        return Known(True, "", "axial load", inputs=known)
    return all_known(*spurs) or Known(False, "", "axial load", inputs=known)


@varying_measure("shaft", "N", "net axial force on the shaft, positive towards the propeller")
def net_thrust(design: Design, shaft: Subject, point: Subject) -> Value:
    """ΣF_x of gears and propeller [N]."""
    return design.loads.net_thrust(shaft.name, point)


@varying_measure("shaft", "1", "axial force of the gears left over on the shaft")
def residual_thrust_share(design: Design, shaft: Subject, point: Subject) -> Value:
    """|ΣF_x| / Σ|F_x| of the gears: 0 where they cancel, 1 where they add up."""
    net: Value = Known(0.0, "N", "ΣF_x")
    sizes: Value = Known(0.0, "N", "Σ|F_x|")
    for _, thrust in design.loads.gear_thrusts(shaft.name, point):
        net = compute(tooth_forces.axial_sum, net, thrust)
        sizes = compute(tooth_forces.axial_size_sum, sizes, thrust)
    return compute(tooth_forces.residual_thrust_share, net, sizes)


@varying_measure("shaft", "N m", "couples of the axial forces of the gears, added up")
def axial_couple(design: Design, shaft: Subject, point: Subject) -> Value:
    """Σ|F_x| d_w/2, which the bearings take as radial load, also where the forces cancel [N m]."""
    total: Value = Known(0.0, "N m", "ΣM_x")
    for pair, wheel in design.loads.meshes_on(shaft.name):
        couple = compute(
            tooth_forces.axial_couple,
            design.loads.axial(pair.subject, wheel, point),
            pair.working_diameter(wheel),
        )
        total = compute(tooth_forces.couple_sum, total, couple)
    return total


@measure("shaft", "", "whether one gear drives the shaft and another is driven by it, both helical")
def is_helical_lay_shaft(design: Design, shaft: Subject) -> Value:
    """Whether exactly one driven and one driving gear load the shaft, and both are helical."""
    meshes = design.loads.meshes_on(shaft.name)
    driving = {wheel.subject.name for pair, wheel in meshes if wheel is pair.driver}
    driven = {wheel.subject.name for pair, wheel in meshes if wheel is pair.driven}
    if len(driving) != 1 or len(driven) != 1 or driving == driven:
        return Known(False, "", "helical lay shaft")
    spurs = [wheel.is_spur for _, wheel in meshes]
    known = tuple(each for each in spurs if isinstance(each, Known))
    helical = all(each.value is False for each in known)
    return all_known(*spurs) or Known(helical, "", "helical lay shaft", inputs=known)


@measure("shaft", "", "hands of the helices on the lay shaft: same or opposite")
def lay_shaft_hands(design: Design, shaft: Subject) -> Value:
    """``same`` or ``opposite``; same hands let the axial forces work against each other."""
    hands = [wheel.hand for _, wheel in design.loads.meshes_on(shaft.name)]
    unknown = all_known(*hands)
    if unknown is not None:
        return unknown
    known = tuple(each for each in hands if isinstance(each, Known))
    word = "same" if len({each.value for each in known}) == 1 else "opposite"
    return Known(word, "", "hands", inputs=known)
