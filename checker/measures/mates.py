"""Measures of a mesh: whether the mates agree, how they share the load, the room between them."""

from checker.known import Known, Unknown, Value, all_known, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import backlash, housing, involute, kinematics, mates, tooth
from checker.spec.subject import Subject

_JET = ("jet", "pressure")
_SPLASH = ("splash", "dip")
_BY_SYSTEM = {"splash": "splash", "pump and jets": "jet", "drip": "drip"}


@measure("mesh", "", "whether the gears are spur gears")
def is_spur(design: Design, mesh: Subject) -> Value:
    """Whether the driver, and with it the pair, has no helix."""
    return design.pairs[mesh.name].driver.is_spur


@measure("mesh", "rad", "working pressure angle", at="centre_distance")
def working_pressure_angle(design: Design, mesh: Subject) -> Value:
    """α_wt, transverse working pressure angle at the stated centre distance [rad]."""
    return design.pairs[mesh.name].working_pressure_angle()


@measure("mesh", "1", "transverse contact ratio, nominal")
def transverse_contact_ratio(design: Design, mesh: Subject) -> Value:
    """ε_α with the sizes as stated, cut off where a mate has no involute left."""
    return design.pairs[mesh.name].transverse_contact_ratio()


@measure("mesh", "1", "transverse contact ratio at the worst corner of tolerances")
def transverse_contact_ratio_least(design: Design, mesh: Subject) -> Value:
    """ε_α with centres farthest apart and tips lowest."""
    return design.pairs[mesh.name].transverse_contact_ratio(worst=True)


@measure("mesh", "1", "overlap ratio")
def overlap_ratio(design: Design, mesh: Subject) -> Value:
    """ε_β over the common face width."""
    return design.pairs[mesh.name].overlap_ratio


@measure("mesh", "1", "total contact ratio at the worst corner of tolerances")
def total_contact_ratio(design: Design, mesh: Subject) -> Value:
    """ε_γ, least transverse contact ratio and overlap ratio together."""
    return compute(
        involute.total_contact_ratio,
        design.measure("transverse_contact_ratio_least", mesh),
        design.measure("overlap_ratio", mesh),
    )


@measure("mesh", "1", "part of the path of contact carried by one pair of teeth")
def single_pair_share(design: Design, mesh: Subject) -> Value:
    """Part of the path over which one pair carries all, at the worst corner of tolerances."""
    return compute(mates.single_pair_share, design.measure("transverse_contact_ratio_least", mesh))


@measure("mesh", "1", "difference of the modules of the mates, relative")
def module_disagreement(design: Design, mesh: Subject) -> Value:
    """How far the normal modules of the two gears differ, relative."""
    pair = design.pairs[mesh.name]
    return compute(
        kinematics.relative_difference, pair.driven.normal_module, pair.driver.normal_module
    )


@measure("mesh", "rad", "difference of the pressure angles of the mates")
def pressure_angle_disagreement(design: Design, mesh: Subject) -> Value:
    """How far the normal pressure angles of the two gears differ [rad]."""
    pair = design.pairs[mesh.name]
    return compute(
        mates.angle_difference,
        pair.driver.normal_pressure_angle,
        pair.driven.normal_pressure_angle,
    )


@measure("mesh", "rad", "difference of the helix angles of the mates")
def helix_disagreement(design: Design, mesh: Subject) -> Value:
    """How far the helix angles of the two gears differ, whatever their hands [rad]."""
    pair = design.pairs[mesh.name]
    return compute(mates.angle_difference, pair.driver.helix_angle, pair.driven.helix_angle)


@measure("mesh", "", "whether the hands of the helices are opposed")
def hands_opposed(design: Design, mesh: Subject) -> Value:
    """Whether one gear of a helical pair is right-hand and the other left-hand."""
    pair = design.pairs[mesh.name]
    return compute(mates.hands_oppose, pair.driver.hand, pair.driven.hand)


@measure("mesh", "m", "disagreement of shaft places and centre distance", at="centre_distance")
def axes_disagreement(design: Design, mesh: Subject) -> Value:
    """How far the distance of the shaft axes lies outside the stated centre distance [m]."""
    pair = design.pairs[mesh.name]
    places = [
        place
        for wheel in (pair.driver, pair.driven)
        for place in _axis(design, str(wheel.subject.raw("shaft")))
    ]
    distance = compute(mates.axis_distance, *places)
    return compute(
        mates.gap_between_ranges,
        distance,
        distance,
        pair.centre_distance("low"),
        pair.centre_distance("high"),
    )


def _axis(design: Design, shaft: str) -> tuple[Value, Value]:
    """Place of a shaft's axis: stated, or that of the shaft before it on the same axis."""
    subject = design.subjects.the("shaft", shaft)
    link = design.train.fed_by.get(shaft)
    if subject.raw("centre") is None and link is None:
        zero = Known(0.0, "m", "x", origin="the places of axes are counted from the first shaft")
        return zero, zero.named("y")
    if subject.raw("centre") is None and link is not None and link.kind != "mesh":
        return _axis(design, link.driver)
    return subject.given("centre.right", "x"), subject.given("centre.up", "y")


@measure("mesh", "m", "normal backlash at the tightest corner of tolerances", at="backlash")
def backlash_least(design: Design, mesh: Subject) -> Value:
    """j_bn with centres closest and teeth thickest; the smaller of the computed and the stated."""
    pair = design.pairs[mesh.name]
    computed = pair.normal_backlash("low")
    stated = compute(
        backlash.normal_backlash,
        mesh.given("backlash", "j_wt", "low"),
        pair.working_pressure_angle("low"),
        pair.driver.base_helix_angle,
    )
    if isinstance(computed, Known) and isinstance(stated, Known):
        return compute(mates.smaller, computed, stated)
    return stated if isinstance(stated, Known) else computed


@measure("mesh", "m", "normal backlash at the tightest corner in the cold drive", at="backlash")
def backlash_least_cold(design: Design, mesh: Subject) -> Value:
    """j_bn least, with case and gears at the lowest temperature of standing or start [m]."""
    pair = design.pairs[mesh.name]
    case = design.subjects.the("housing")
    cold = compute(
        backlash.centre_distance_at_temperature,
        pair.centre_distance("low"),
        compute(housing.thermal_expansion, case.given("material", "material")),
        design.measure("coldest", case),
        design.subjects.the("drive").given("build_temperature", "θ_0"),
    )
    gained = compute(
        backlash.normal_backlash_gained,
        pair.driver.base_diameter,
        pair.driven.base_diameter,
        pair.working_pressure_angle("low"),
        pair.pressure_angle_at(cold),
        pair.driver.base_helix_angle,
    )
    return compute(backlash.backlash_sum, design.measure("backlash_least", mesh), gained)


@measure("mesh", "m", "disagreement of stated and computed backlash", at="backlash")
def backlash_disagreement(design: Design, mesh: Subject) -> Value:
    """How far the computed circular backlash lies outside the stated range [m]."""
    return compute(
        mates.outside_range,
        design.pairs[mesh.name].circular_backlash(),
        mesh.given("backlash", "j_low", "low"),
        mesh.given("backlash", "j_high", "high"),
    )


@measure("mesh", "1", "least backlash over the recommended one", at="backlash")
def backlash_over_recommended(design: Design, mesh: Subject) -> Value:
    """Least normal backlash over that recommended for centre distance and module."""
    pair = design.pairs[mesh.name]
    recommended = compute(
        backlash.recommended_normal_backlash, pair.centre_distance(), pair.driver.normal_module
    )
    return compute(kinematics.quotient, design.measure("backlash_least", mesh), recommended)


@measure("mesh", "1", "part of the narrower face that meets the mate")
def face_overlap_share(design: Design, mesh: Subject) -> Value:
    """Common face width over the narrower of the two faces."""
    pair = design.pairs[mesh.name]
    return compute(
        mates.face_overlap_share,
        pair.common_face_width,
        pair.driver.face_width,
        pair.driven.face_width,
    )


@measure("mesh", "1", "common face width over pinion diameter")
def face_width_to_diameter(design: Design, mesh: Subject) -> Value:
    """b/d_1 with the reference diameter of the smaller gear."""
    pair = design.pairs[mesh.name]
    unknown = all_known(pair.driver.teeth, pair.driven.teeth)
    if unknown is not None:
        return unknown
    pinion = min(
        (pair.driver, pair.driven),
        key=lambda wheel: wheel.teeth.number if isinstance(wheel.teeth, Known) else 0.0,
    )
    return compute(involute.face_width_ratio, pair.common_face_width, pinion.reference_diameter)


@measure("mesh", "1", "common face width in modules")
def face_width_in_modules(design: Design, mesh: Subject) -> Value:
    """b/m_n, common face width in normal modules."""
    pair = design.pairs[mesh.name]
    return compute(tooth.in_modules, pair.common_face_width, pair.driver.normal_module)


@varying_measure("mesh", "m/s", "pitch-line velocity")
def pitch_line_velocity(design: Design, mesh: Subject, point: Subject) -> Value:
    """v_t at the working pitch circles [m/s]."""
    pair = design.pairs[mesh.name]
    shaft = str(pair.driver.subject.raw("shaft"))
    return compute(
        involute.pitch_line_velocity,
        design.motion.speed(shaft, point),
        pair.working_diameter(pair.driver),
    )


@measure("mesh", "", "how oil reaches the mesh: jet, splash or drip")
def oiling(design: Design, mesh: Subject) -> Value:
    """How this mesh is oiled: by the path that names it, or else by the system as a whole."""
    lubrication = design.subjects.the("lubrication")
    kinds = [path.kind for path in lubrication.raw("paths") or () if path.to == mesh.name]
    place = lubrication.place("paths")
    if None in kinds:
        return Unknown((place,), f"the kind of an oil path to {mesh.label} is not stated")
    if kinds:
        jet = any(kind in _JET for kind in kinds)
        word = "jet" if jet else "splash" if any(kind in _SPLASH for kind in kinds) else "drip"
        return Known(word, "", "oiling", path=place)
    system = lubrication.given("system")
    if isinstance(system, Unknown):
        return system
    if system.value not in _BY_SYSTEM:
        return Unknown((place,), f"no oil path says how {mesh.label} is oiled")
    return Known(_BY_SYSTEM[str(system.value)], "", "oiling", inputs=(system,))


@measure("mesh", "", "whether a baffle keeps the gears from churning the settled oil")
def oil_baffled(design: Design, mesh: Subject) -> Value:
    """Whether the oil that the gears dip into is baffled."""
    return design.subjects.the("lubrication").given("baffled")


@varying_measure("mesh", "N", "tangential force at the working circle")
def tangential_force(design: Design, mesh: Subject, point: Subject) -> Value:
    """F_tw [N]."""
    return design.loads.tangential(mesh, point)


@varying_measure("mesh", "N", "radial force")
def radial_force(design: Design, mesh: Subject, point: Subject) -> Value:
    """F_r, which parts the shafts [N]."""
    return design.loads.radial(mesh, point)


@varying_measure("mesh", "N", "axial force on the driver, positive towards the propeller")
def axial_force_driver(design: Design, mesh: Subject, point: Subject) -> Value:
    """F_x on the driving gear [N]; the driven one has the opposite."""
    return design.loads.axial(mesh, design.pairs[mesh.name].driver, point)
