"""Measures of a shaft: fatigue, yield, slope, critical speed, torsional stiffness."""

from collections.abc import Iterator, Sequence

from checker.known import Known, Unknown, Value, all_known, compute, merged
from checker.measures.bearing_loads import worst_of
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.measures.stress_raisers import (
    Raiser,
    diameters,
    ends,
    plain_raiser,
    plain_spots,
    raisers_of,
    seat_raisers,
)
from checker.mechanics import beam, kinematics, shaft_loads, torsional_parts, whirling
from checker.mechanics import shaft_strength as strength
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject
from checker.train.carrier import carrier_of
from checker.train.load_cases import LoadCase
from checker.train.pair import Pair, Wheel
from checker.train.reactions import InPlanes
from checker.train.torsional_values import section_stiffness


@measure("shaft", "", "whether the shaft has bearings and load", at="sections")
def is_loaded(design: Design, shaft: Subject) -> Value:
    """Whether gear, propeller or a member on it loads the shaft across."""
    origin = "gears and propeller on the shaft"
    return Known(design.reactions.is_loaded(shaft.name), "", "loaded", origin=origin)


@measure("shaft", "1", "safety against fatigue with the torque of the regulations", at="sections")
def fatigue_safety(design: Design, shaft: Subject) -> Value:
    """n, DE-Goodman, at the worst stress raiser and operation point.

    The torque swings to its peak, and the tooth forces that bend the shaft with it; at best to
    what the factor of the regulations stands for.
    """
    mean = design.peaks.mean(shaft.name)
    cases = design.reactions.cases

    def safety(peak: Value) -> Value:
        swing = compute(strength.torque_swing, peak, mean)
        swung = [cases.at_peak(case, shaft.name, peak, mean) for case in cases.points.values()]
        raisers = _looked_at(design, shaft, swung)
        worst = worst_of(
            swung,
            lambda case: _fatigue(design, shaft, raisers, case, mean, swing),
        )
        return more_is_worse(worst, lambda each: compute(strength.safety_of_use, each))

    return design.peaks.judged(safety, shaft.name)


@measure("shaft", "1", "safety against fatigue under gyroscopic couples", at="sections")
def gyroscopic_fatigue_safety(design: Design, shaft: Subject) -> Value:
    """n, DE-Goodman, with yaw and pitch of CS 23.371 as reversed bending.

    Torque and tooth forces swing as the torsional survey finds at maximum continuous power; at best
    not at all. The torque factor of the regulations stands for that swing and does not count again.
    """
    cases = design.reactions.cases

    def safety(swing: Value) -> Value:
        mean = cases.continuous_torque(shaft.name)
        peak = compute(strength.swung_torque, mean, swing)
        swung = [cases.at_peak(case, shaft.name, peak, mean) for case in cases.gyroscopic]
        raisers = _looked_at(design, shaft, swung)
        use = worst_of(swung, lambda case: _fatigue(design, shaft, raisers, case, mean, swing))
        return more_is_worse(use, lambda each: compute(strength.safety_of_use, each))

    swing = design.peaks.continuous_swing(shaft.name)
    if isinstance(swing, Known):
        return safety(swing)
    steady = safety(Known(0.0, "N m", "T_a", origin="the least that the torque can swing"))
    if isinstance(steady, Unknown):
        return merged([steady, swing])
    return Unknown(swing.missing, swing.because, at_best=steady)


@measure("shaft", "1", "safety against yield in the worst limit case", at="sections")
def yield_safety(design: Design, shaft: Subject) -> Value:
    """n_y at the outer fibre of the worst section in the worst limit case.

    Of the peak torque; at best of the least that this can be.
    """

    def safety(limits: Sequence[LoadCase]) -> Value:
        use = worst_of(limits, lambda case: _yield(design, shaft, case))
        return more_is_worse(use, lambda each: compute(strength.safety_of_use, each))

    return design.reactions.cases.judged(safety, shaft.name)


@measure("shaft", "1", "first lateral critical speed over the highest speed", at="sections")
def critical_speed_margin(design: Design, shaft: Subject) -> Value:
    """Dunkerley's first critical speed, the low estimate, over the highest speed of the shaft."""
    return compute(
        kinematics.quotient,
        _critical_speed(design, shaft, dunkerley=True),
        design.greatest("speed", shaft),
    )


@measure("shaft", "rad/s", "upper bound of the first lateral critical speed", at="sections")
def rayleigh_critical_speed(design: Design, shaft: Subject) -> Value:
    """ω_1, an upper bound [rad/s]: the true one is no higher; Dunkerley's is the lower bound."""
    return _critical_speed(design, shaft, dunkerley=False)


@measure("shaft", "N m/rad", "torsional stiffness from its sections", at="sections")
def section_torsional_stiffness(design: Design, shaft: Subject) -> Value:
    """C of all stated sections one behind the other [N m/rad]."""
    return section_stiffness(shaft)


@measure(
    "shaft", "1", "stated torsional stiffness over that of the sections", at="torsional_stiffness"
)
def stiffness_agreement(design: Design, shaft: Subject) -> Value:
    """Stated stiffness over that of all sections; above one where the torque passes only some."""
    return compute(
        kinematics.quotient,
        shaft.given("torsional_stiffness", "c"),
        design.measure("section_torsional_stiffness", shaft),
    )


@varying_measure("mesh", "rad", "angle between the shafts at the mesh", at="driver")
def shaft_slope(design: Design, mesh: Subject, point: Subject) -> Value:
    """θ between the two shafts by their bending [rad]."""
    pair = design.pairs[mesh.name]
    case = design.reactions.cases.points[point.name]
    return compute(shaft_loads.resultant_slope, *_between(design, pair, case))


@varying_measure("mesh", "m", "movement of the shafts against each other at the mesh", at="driver")
def mesh_deflection(design: Design, mesh: Subject, point: Subject) -> Value:
    """Δv of the two shafts by their bending, in whatever direction [m]."""
    pair = design.pairs[mesh.name]
    case = design.reactions.cases.points[point.name]
    one, other = (
        design.reactions.deflections(
            str(wheel.subject.raw("shaft")), case, wheel.subject.given("station", "x")
        )
        for wheel in (pair.driver, pair.driven)
    )
    apart = (
        compute(shaft_loads.deflection_difference, here, there)
        for here, there in zip(one, other, strict=True)
    )
    return compute(shaft_loads.relative_deflection, *apart)


@varying_measure("mesh", "1", "movement of the shafts at the mesh over the module", at="driver")
def mesh_deflection_share(design: Design, mesh: Subject, point: Subject) -> Value:
    """Δv/m_n."""
    module = design.pairs[mesh.name].driver.subject.given("module", "m_n")
    return compute(kinematics.quotient, design.measure("mesh_deflection", mesh, point), module)


@varying_measure("mesh", "rad", "slope between the shafts along the line of action", at="driver")
def bending_slope(design: Design, mesh: Subject, point: Subject) -> Value:
    """Δθ·t, slope in the direction in which the teeth press on each other [rad]."""
    pair = design.pairs[mesh.name]
    case = design.reactions.cases.points[point.name]
    along = _line_of_action(design, pair, case)
    return compute(shaft_loads.slope_along, *_between(design, pair, case), *along)


@varying_measure("mesh", "m", "misalignment of the faces by bending of the shafts", at="driver")
def bending_misalignment(design: Design, mesh: Subject, point: Subject) -> Value:
    """f_sh along the line of action [m]: what bending adds to K_Hβ."""
    slope = design.measure("bending_slope", mesh, point)
    return compute(shaft_loads.misalignment, design.pairs[mesh.name].common_face_width, slope)


@varying_measure("mesh", "", "whether the mesh carries load at the point")
def carries_load(design: Design, mesh: Subject, point: Subject) -> Value:
    """Whether torque passes the mesh: not while a clutch overruns."""
    force = design.loads.tangential(mesh, point)
    if isinstance(force, Unknown):
        return force
    return Known(force.number > 0.0, "", "carries load", inputs=(force,))


@measure("mesh", "", "whether its misalignment is stated", at="misalignment")
def states_misalignment(design: Design, mesh: Subject) -> Value:
    """Whether the gear rating takes the stated misalignment in place of a computed one."""
    stated = isinstance(mesh.given("misalignment"), Known)
    return Known(stated, "", "stated", origin="field misalignment of the mesh")


@varying_measure("mesh", "m", "misalignment by bending beyond the stated one", at="misalignment")
def bending_beyond_stated(design: Design, mesh: Subject, point: Subject) -> Value:
    """f_sh of both shafts by their whole bending less the stated one, which goes into K_Hβ [m]."""
    return compute(
        shaft_loads.misalignment_beyond,
        design.measure("bending_misalignment", mesh, point),
        mesh.given("misalignment", "f_sh"),
    )


@varying_measure("bearing", "rad", "slope of the shaft in the bearing", at="station")
def bearing_slope(design: Design, bearing: Subject, point: Subject) -> Value:
    """θ of the shaft in the middle of the bearing, against what its other ring sits on [rad]."""
    case = design.reactions.cases.points[point.name]
    station = bearing.given("station", "x")
    own = design.reactions.slopes(str(bearing.raw("shaft")), case, station)
    carrier = carrier_of(design.subjects, bearing)
    if carrier is None:
        return compute(shaft_loads.resultant_slope, *own)  # the case is taken as stiff
    under = design.reactions.slopes(carrier, case, station)
    return compute(shaft_loads.resultant_slope, *_differences(own, under))


def _differences(one: InPlanes, other: InPlanes) -> Iterator[Value]:
    """What bends one way against another: to the right, upwards, by yawed flow."""
    for here, there in zip(one, other, strict=True):
        yield compute(shaft_loads.slope_difference, here, there)


def _between(design: Design, pair: Pair, case: LoadCase) -> Iterator[Value]:
    """Δθ of the driver against the driven: to the right, upwards, by yawed flow [rad]."""
    return _differences(*(_slopes(design, wheel, case) for wheel in (pair.driver, pair.driven)))


def _slopes(design: Design, wheel: Wheel, case: LoadCase) -> InPlanes:
    shaft, station = str(wheel.subject.raw("shaft")), wheel.subject.given("station", "x")
    return design.reactions.slopes(shaft, case, station)


def _line_of_action(design: Design, pair: Pair, case: LoadCase) -> tuple[Value, Value]:
    """Direction of the transverse tooth force on the driver: its parts over their resultant."""
    force = design.reactions.forces.of_mesh(pair, pair.driver, case)
    if isinstance(force, Unknown):
        return force, force
    return (
        compute(shaft_loads.share_of_resultant, force.right or _none(), force.up or _none()),
        compute(shaft_loads.share_of_resultant, force.up or _none(), force.right or _none()),
    )


def _none() -> Known:
    return Known(0.0, "N", "F", origin="no force this way")


def _looked_at(design: Design, shaft: Subject, cases: Sequence[LoadCase]) -> list[Raiser | Unknown]:
    """The stress raisers of a shaft, and its plain sections where something acts or they end."""
    stations = design.reactions.stations(shaft.name, cases[0]) if cases else ()
    plain = (plain_raiser(shaft, *spot) for spot in plain_spots(shaft, stations))
    return [*raisers_of(shaft, stations), *seat_raisers(_seats_on(design, shaft), shaft), *plain]


def _seats_on(design: Design, shaft: Subject) -> list[Subject]:
    """The bearings whose inner ring sits on a shaft: its own, and those of a hub around it."""
    found = []
    for bearing in design.subjects.all("bearing"):
        around = bearing.raw("outer_seat") == "shaft" and carrier_of(design.subjects, bearing)
        if (around or bearing.raw("shaft")) == shaft.name and bearing.raw("kind") != "plain":
            found.append(bearing)
    return found


def _fatigue(
    design: Design,
    shaft: Subject,
    raisers: Sequence[Raiser | Unknown],
    case: LoadCase,
    mean: Value,
    swing: Value,
) -> Value:
    """u of the worst stress raiser in a state of load."""
    found = [
        _raiser_fatigue(design, shaft, case, raiser, mean, swing)
        if isinstance(raiser, Raiser)
        else raiser
        for raiser in raisers
    ]
    return _greatest(found, shaft)


def _raiser_fatigue(
    design: Design, shaft: Subject, case: LoadCase, raiser: Raiser, mean: Value, swing: Value
) -> Value:
    moment = design.reactions.moment(shaft.name, case, raiser.station)
    mean = design.reactions.torque_at(shaft.name, mean, raiser.station)
    swing = design.reactions.torque_at(shaft.name, swing, raiser.station)
    tensile = shaft.given("tensile_strength", "R_m")
    size = (raiser.outside, raiser.inside)
    none = Known(0.0, "Pa", "σ", origin="a bending moment fixed in the airframe has no mean")
    amplitude = compute(
        strength.distortion_energy_stress,
        compute(strength.bending_stress, moment, *size),
        compute(strength.torsion_stress, swing, *size),
        raiser.bending,
        raiser.torsion,
    )
    steady = compute(
        strength.distortion_energy_stress,
        none,
        compute(strength.torsion_stress, mean, *size),
        raiser.bending,
        raiser.torsion,
    )
    return compute(strength.goodman_use, amplitude, steady, raiser.endurance, tensile)


def _yield(design: Design, shaft: Subject, case: LoadCase) -> Value:
    sections = shaft.raw("sections")
    if not sections:
        return Unknown((shaft.place("sections"),))
    found: list[Value] = []
    torque = case.torque(shaft.name)
    axials = design.reactions.forces.net_axials(shaft.name, case)
    for index, station in plain_spots(shaft, design.reactions.stations(shaft.name, case)):
        if isinstance(station, Unknown):
            found.append(station)
            continue
        size = diameters(shaft, index)
        moment = design.reactions.moment(shaft.name, case, station)
        found += [
            compute(
                strength.yield_use,
                compute(strength.bending_stress, moment, *size),
                compute(strength.axial_stress, axial, *size),
                compute(
                    strength.torsion_stress,
                    design.reactions.torque_at(shaft.name, torque, station),
                    *size,
                ),
                shaft.given("yield_strength", "R_e"),
            )
            for axial in axials
        ]
    return _greatest(found, shaft)


def _greatest(found: list[Value], shaft: Subject) -> Value:
    return largest(found) if found else Unknown((shaft.place("sections"),))


def _critical_speed(design: Design, shaft: Subject, *, dunkerley: bool) -> Value:
    supports = design.reactions.supports(shaft.name)
    stretches = design.reactions.stretches(shaft.name)
    masses = [*design.reactions.forces.masses_on(shaft.name), *_section_masses(shaft)]
    unknown = [each for each in (supports, stretches) if isinstance(each, Unknown)]
    lacking = all_known(*(value for pair in masses for value in pair))
    if unknown or lacking or isinstance(supports, Unknown) or isinstance(stretches, Unknown):
        return merged([*unknown, *([lacking] if lacking else [])])
    known = [(x, m) for x, m in masses if isinstance(x, Known) and isinstance(m, Known)]
    places = [support.station.number for support in supports]
    inputs = tuple(value for pair in known for value in pair)
    weights = [mass.number for _, mass in known]
    if dunkerley:
        gives = []
        for station, _ in known:
            unit = beam.bend(places, [beam.Load(station.number, 1.0)], stretches)
            gives.append(beam.deflection(unit, station.number, places, stretches))
        value = whirling.dunkerley_speed(weights, gives)
        origin = equation_of(whirling.dunkerley_speed)
    else:
        low, high = min(places), max(places)
        loads = [
            # Each weight to the side to which its place sags, as in the first mode.
            beam.Load(x.number, 9.80665 * m.number * (1.0 if low <= x.number <= high else -1.0))
            for x, m in known
        ]
        bent = beam.bend(places, loads, stretches)
        sags = [beam.deflection(bent, x.number, places, stretches) for x, _ in known]
        value = whirling.rayleigh_speed(weights, sags)
        origin = equation_of(whirling.rayleigh_speed)
    return Known(value, "rad/s", "ω_1", origin=origin, inputs=inputs)


def _section_masses(shaft: Subject) -> list[tuple[Value, Value]]:
    found: list[tuple[Value, Value]] = []
    for index in range(len(shaft.raw("sections") or ())):
        start, end = ends(shaft, index)
        length = compute(torsional_parts.section_length, start, end)
        mass = compute(whirling.section_mass, length, *diameters(shaft, index))
        found.append((compute(shaft_loads.middle, start, end), mass))
    return found
