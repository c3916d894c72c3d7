"""Losses of every part at an operation point, as terms of the oil temperature.

Loss and friction of a mesh come from one part of ISO/TR 14179. What cannot be made out is named,
and then no heat balance is shown.
"""

from collections.abc import Iterator

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.registry import measure, varying_measure
from checker.mechanics import (
    auxiliary_loss,
    bearing_life,
    bearing_loss,
    churning,
    coupling,
    engine,
    heat,
    involute,
    mesh_loss,
)
from checker.mechanics import lubrication as oil_ways
from checker.mechanics.equation import equation_of
from checker.solve.oil_terms import Oil, Term, loaded, term
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.bearing_size import outside
from checker.train.pair import Pair, Wheel

_LIPS = {"plain lip": 1, "pressure lip": 1, "double lip": 1, "back-to-back": 2, "labyrinth": 0}
_LIPS_SOURCE = "lips that run wet by kind of seal; a dust lip runs light"
_PUMP_EFFICIENCY = assumed(0.6, "1", "η_p", "small gear pumps (from memory)")

Losses = Iterator[tuple[str, Term | Unknown]]


@kept
def loss_terms(design: Design, point: Subject) -> dict[str, Term | Unknown]:
    """Every loss at an operation point, by the label of its part."""
    return dict(
        (
            *_meshes(design, point),
            *_gears(design, point),
            *_bearings(design, point),
            *_seals(design, point),
            *_couplings(design, point),
            *_pump(design, point),
        )
    )


def _meshes(design: Design, point: Subject) -> Losses:
    for mesh in design.subjects.all("mesh"):
        pair = design.pairs[mesh.name]
        shaft = str(pair.driver.subject.raw("shaft"))
        speed = design.motion.speed(shaft, point)
        angle = pair.working_pressure_angle()
        teeth = (pair.driver.teeth, pair.driven.teeth)
        base_force = compute(
            mesh_loss.base_tangential_force, design.loads.tangential(mesh, point), angle
        )
        friction = term(
            mesh_loss.mean_friction,
            loaded(base_force),
            pair.common_face_width,
            compute(
                mesh_loss.sum_velocity, design.measure("pitch_line_velocity", mesh, point), angle
            ),
            compute(
                mesh_loss.reduced_radius,
                pair.centre_distance(),
                angle,
                *teeth,
                pair.driver.base_helix_angle,
            ),
            compute(
                mesh_loss.mean_roughness,
                pair.driver.subject.given("flank_roughness", "Ra₁"),
                pair.driven.subject.given("flank_roughness", "Ra₂"),
            ),
            compute(mesh_loss.lubricant_factor, properties.base(design)),
            Oil.DYNAMIC_VISCOSITY,
        )
        torque = design.motion.torque(shaft, point)
        factor = design.measure("tooth_loss_factor", mesh)
        yield mesh.label, term(mesh_loss.mesh_loss, loaded(torque), speed, friction, factor)


def dip(design: Design, gear: Subject, point: Subject, level: str) -> Value:
    """h, depth to which a gear dips at a level of the oil in the attitude of a point [m]."""
    shaft = design.subjects.the("shaft", str(gear.raw("shaft")))
    height = oil_height(design, gear.given("station", "x"), point, level)
    return compute(
        churning.dip_depth, shaft.given("centre.up", "y"), gear.given("tip_diameter", "d_a"), height
    )


def oil_height(design: Design, station: Value, point: Subject, level: str) -> Value:
    """y_oil, height of the oil at a station over the first shaft's axis [m]."""
    case = design.subjects.the("housing")
    installed = design.subjects.the("drive").given("installation")
    if isinstance(installed, Unknown):
        return installed
    forward = Known(1 if installed.value == "tractor" else -1, "1", "s", inputs=(installed,))
    return compute(
        oil_ways.oil_height,
        case.given("bottom", "y_b"),
        properties.lubrication(design).given(level, "h"),
        case.given("sump_from", "x_1"),
        case.given("sump_to", "x_2"),
        station,
        point.given("nose_up", "θ"),
        forward,
    )


def case_oil(design: Design) -> Value:
    """V, oil that stands in the gear case [m3]."""
    lubrication = properties.lubrication(design)
    whole = lubrication.given("volume", "V_oil")
    if lubrication.raw("reservoir") == NONE:
        return whole
    return compute(oil_ways.oil_in_case, whole, lubrication.given("reservoir.oil_volume", "V_res"))


def _gears(design: Design, point: Subject) -> Losses:
    for pair in design.pairs.values():
        for wheel in (pair.driver, pair.driven):
            gear = wheel.subject
            speed = design.motion.speed(str(gear.raw("shaft")), point)
            depth = design.measure("running_dip", gear, point)
            diameter = wheel.reference_diameter
            wetted = compute(
                churning.wetted_surface,
                depth,
                diameter,
                wheel.face_width,
                wheel.teeth,
                wheel.tip_diameter(),
                wheel.root_diameter(),
                wheel.transverse_pressure_angle,
                wheel.helix_angle,
            )
            yield (
                f"{gear.label} churning",
                term(
                    churning.churning_loss,
                    speed,
                    depth,
                    wetted,
                    diameter,
                    wheel.face_width,
                    case_oil(design),
                    Oil.DENSITY,
                    Oil.VISCOSITY,
                ),
            )
            yield (
                f"{gear.label} windage",
                term(
                    churning.windage_loss, speed, wheel.face_width, diameter, Oil.DYNAMIC_VISCOSITY
                ),
            )


def _bearings(design: Design, point: Subject) -> Losses:
    if not design.subjects.all("bearing"):
        yield "bearings", Unknown((("bearings",),), "a drive runs on bearings")
    for bearing in design.subjects.all("bearing"):
        kind = bearing.given("kind")
        speed = design.measure("ring_speed", bearing, point)
        diameter = compute(bearing_life.mean_diameter, bearing.given("bore", "d"), outside(bearing))
        drag = compute(bearing_loss.oil_drag_factor, kind, bearing.given("lubrication"))
        yield (
            bearing.label,
            term(
                bearing_loss.bearing_loss,
                term(bearing_loss.oil_drag_moment, drag, speed, diameter, Oil.VISCOSITY),
                term(
                    bearing_loss.load_moment,
                    compute(bearing_loss.load_factor, kind),
                    loaded(_bearing_load(design, bearing, point)),
                    diameter,
                ),
                speed,
            ),
        )


def _bearing_load(design: Design, bearing: Subject, point: Subject) -> Value:
    """F on a bearing for its friction [N]: of its reactions, else estimated."""
    group = bearing.raw("matched_set")
    sharing = sum(
        each.raw("shaft") == bearing.raw("shaft") and each.raw("matched_set") == group
        for each in design.subjects.all("bearing")
    )
    load = compute(
        bearing_loss.load_of_reactions,
        design.measure("radial_force", bearing, point),
        design.measure("axial_force", bearing, point),
        Known(sharing if group else 1, "1", "N", origin=f"bearings in the set of {bearing.label}"),
    )
    return load if isinstance(load, Known) else _estimated_load(design, bearing, point)


def _estimated_load(design: Design, bearing: Subject, point: Subject) -> Value:
    shaft = str(bearing.raw("shaft"))
    forces = tuple(
        compute(
            mesh_loss.base_tangential_force,
            design.loads.tangential(pair.subject, point),
            pair.working_pressure_angle(),
        )
        for pair, _ in design.loads.meshes_on(shaft)
    )
    located = bearing.given("locates")
    on_shaft = sum(each.raw("shaft") == shaft for each in design.subjects.all("bearing"))
    if isinstance(located, Known) and located.value != "none":
        thrust = design.loads.net_thrust(shaft, point)
    else:
        thrust = located if isinstance(located, Unknown) else Known(0.0, "N", "F_x")
    known = tuple(each for each in forces if isinstance(each, Known))
    if len(known) < len(forces) or isinstance(thrust, Unknown):
        unclear = [each for each in (*forces, thrust) if isinstance(each, Unknown)]
        return unclear[0]
    load = bearing_loss.estimated_load(
        tuple(each.number for each in known), on_shaft, thrust.number
    )
    printed = equation_of(bearing_loss.estimated_load)
    count = Known(on_shaft, "1", "N", origin=f"bearings on shafts.{shaft}")
    return Known(load, "N", "F", origin=printed, inputs=(*known, count, thrust))


def _seals(design: Design, point: Subject) -> Losses:
    if not design.subjects.all("seal"):
        yield "seals", Unknown((("seals",),), "a shaft that leaves the case has a seal")
    for seal in design.subjects.all("seal"):
        kind = seal.given("kind")
        lips: Value = kind
        if isinstance(kind, Known):
            lips = Known(_LIPS[str(kind.value)], "1", "N_lip", origin=_LIPS_SOURCE, inputs=(kind,))
        yield (
            seal.label,
            term(
                auxiliary_loss.lip_loss,
                lips,
                seal.given("material"),
                seal.given("diameter", "d"),
                design.motion.speed(str(seal.raw("shaft")), point),
                properties.viscosity_40(design, "high"),
                Oil.TEMPERATURE,
            ),
        )


def _couplings(design: Design, point: Subject) -> Losses:
    for link in design.train.power_path:
        if link.kind == "clutch":
            clutch = design.subjects.the("clutch")
            slides = design.motion.overruns(point)
            if isinstance(slides, Unknown):
                yield clutch.label, slides
            elif slides.value:
                yield (
                    clutch.label,
                    term(
                        auxiliary_loss.overrunning_loss,
                        clutch.given("overrun_drag_torque", "T_drag"),
                        design.motion.speed(link.driver, point),
                        design.motion.speed(link.driven, point),
                    ),
                )
        if link.kind == "damper":
            damper = design.subjects.the("damper")
            wetted = damper.given("in_oil")
            if isinstance(wetted, Unknown):
                yield damper.label, wetted
            elif wetted.value:
                yield damper.label, _damper(design, damper, point)


def _damper(design: Design, damper: Subject, point: Subject) -> Term | Unknown:
    """Heat of a wetted damper by the torsional survey; without one as much as its ratings allow.

    That bound is of relative damping: a viscous damper has none.
    """
    survey = design.measure("heat", damper, point)
    if isinstance(survey, Known):
        return term(auxiliary_loss.damper_heat, survey)
    if damper.raw("kind") == "viscous":
        return survey
    source = design.subjects.the("engine")
    strokes = compute(engine.strokes_of, source.given("cycle"))
    return term(
        auxiliary_loss.damper_heat_at_most,
        damper.given("heat_rating", "P_rated"),
        compute(coupling.most_damping, damper.given("relative_damping", "ψ")),
        damper.given("vibratory_torque_rating", "T_a"),
        compute(engine.firing_events_per_revolution, source.given("cylinders", "N_c"), strokes),
        point.given("engine_speed", "ω_e"),
        values.damper_ends(design.subjects)[0],
    )


def _pump(design: Design, point: Subject) -> Losses:
    lubrication = properties.lubrication(design)
    system = lubrication.given("system")
    if isinstance(system, Unknown):
        yield "pump", system
    elif "pump" in str(system.value):
        yield (
            "pump",
            term(
                auxiliary_loss.pump_loss,
                oil_flow(design, point),
                lubrication.given("pump_pressure", "Δp"),
                _PUMP_EFFICIENCY,
            ),
        )


def oil_flow(design: Design, point: Subject) -> Value:
    """Q of the pump at a point [m3/s], in proportion to the speed of what turns it."""
    lubrication = properties.lubrication(design)
    rated = lubrication.given("pump_flow", "Q_r")
    driver = lubrication.given("pump_driven_by", "pump")
    if isinstance(driver, Unknown):
        return driver
    if driver.value == "electric":
        return rated
    top = design.subjects.the("engine").given("maximum_continuous.speed", "ω_r")
    if driver.value != "propeller side":
        return compute(heat.flow_at_speed, rated, point.given("engine_speed", "ω"), top)
    shaft = design.train.last
    turned = design.motion.speed_passed_on(design.motion.speed_behind_engine(top), shaft)
    return compute(heat.flow_at_speed, rated, design.motion.speed(shaft, point), turned)


@measure("mesh", "1", "tooth loss factor")
def tooth_loss_factor(design: Design, mesh: Subject) -> Value:
    """H_v, mean sliding of the teeth weighted with the load."""
    pair = design.pairs[mesh.name]
    return compute(
        mesh_loss.tooth_loss_factor,
        pair.driver.teeth,
        pair.driven.teeth,
        pair.driver.base_helix_angle,
        _beyond_pitch(pair, pair.driver),
        _beyond_pitch(pair, pair.driven),
    )


def _beyond_pitch(pair: Pair, wheel: Wheel) -> Value:
    """ε₁ or ε₂, contact ratio beyond the pitch point at the tip of one of the gears."""
    other = Known(0.0, "m", "g_a2", origin="the tip of one gear alone")
    path = pair.addendum_path(wheel)
    return compute(involute.transverse_contact_ratio, path, other, pair.driver.base_pitch)


@varying_measure("gear", "m", "depth to which the gear dips at the running level", at="shaft")
def running_dip(design: Design, gear: Subject, point: Subject) -> Value:
    """h at the running level, in the attitude of the point [m]."""
    return dip(design, gear, point, "running_level")


@varying_measure("gear", "m", "depth to which the gear dips at the lowest level", at="shaft")
def lowest_dip(design: Design, gear: Subject, point: Subject) -> Value:
    """h at the lowest level, in the attitude of the point [m]."""
    return dip(design, gear, point, "lowest_level")


@varying_measure("gear", "1", "dip of the gear at the running level, in modules", at="shaft")
def dip_in_modules(design: Design, gear: Subject, point: Subject) -> Value:
    """h/m_n at the running level."""
    depth = design.measure("running_dip", gear, point)
    return compute(oil_ways.dip_in_modules, depth, gear.given("module", "m_n"))
