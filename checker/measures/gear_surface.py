"""Scuffing, oil film, case depth, hardness and accuracy: what the surface of the teeth bears."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures import oil_properties as properties
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.rating import rated, state, teeth_of, with_application, worst
from checker.measures.registry import measure, varying_measure
from checker.mechanics import (
    case_depth,
    film,
    flank_accuracy,
    iso_materials,
    kinematics,
    oil,
    scuffing,
    tooth_forces,
)
from checker.spec.subject import Subject

_STEEL = (
    assumed(206e9, "Pa", "E", "steel, ISO 6336-2:2006 (from memory)"),
    assumed(0.3, "1", "ν", "steel, ISO 6336-2:2006 (from memory)"),
)


def oil_temperature(design: Design, point: Subject) -> Value:
    """Temperature of the oil that reaches the meshes [K]: the bulk temperature of the point."""
    return point.given("oil_temperature", "Θ_oil")


@kept
def _viscosity(design: Design, point: Subject) -> Value:
    """η of the oil at a point, thin end [Pa s]."""
    temperature = oil_temperature(design, point)
    density = compute(oil.density, properties.density_15(design), temperature)
    return compute(oil.dynamic_viscosity, properties.viscosity(design, temperature, "low"), density)


@varying_measure("mesh", "1", "safety against scuffing", at="centre_distance")
def scuffing_safety(design: Design, mesh: Subject, point: Subject) -> Value:
    """S_B, rise of the contact over the oil that scuffs over the rise that is there."""
    return with_application(lambda best: _scuffing(design, mesh, point, best))


def _scuffing(design: Design, mesh: Subject, point: Subject, best: bool) -> Value:
    found = state(design, mesh, point, best)
    rating, pair = found.rating, found.rating.pair
    load, base = found.full_line_load, properties.base(design)
    temperature = oil_temperature(design, point)
    friction = compute(
        scuffing.mean_friction,
        load,
        found.pitch_line_speed,
        pair.working_pressure_angle(),
        rating.curvature,
        _viscosity(design, point),
        *(each.material.flank_roughness for each in rating.teeth),
        base,
    )
    normal = compute(
        tooth_forces.normal_line_load,
        load,
        pair.driver.transverse_pressure_angle,
        pair.driver.base_helix_angle,
    )
    wheels = (pair.driver, pair.driven)
    path = (
        friction,
        normal,
        *(design.motion.speed(str(each.subject.raw("shaft")), point) for each in wheels),
        *(each.base_diameter for each in wheels),
        pair.working_pressure_angle(),
        pair.driver.base_helix_angle,
        *(pair.addendum_path(each) for each in wheels),
        rating.contact_ratio,
        pair.overlap_ratio,
    )
    bulk = compute(
        scuffing.bulk_temperature,
        temperature,
        design.measure("oiling", mesh),
        _most_mates(design, mesh),
        compute(scuffing.mean_flash_temperature, *path),
    )
    limit = compute(
        scuffing.scuffing_temperature,
        properties.lubrication(design).given("oil.scuffing_load_stage", "S_FZG"),
        compute(scuffing.structure_factor, *(each.material.treatment for each in rating.teeth)),
        base,
    )
    flash = compute(scuffing.greatest_flash_temperature, *path)
    return compute(scuffing.scuffing_safety, limit, temperature, bulk, flash)


def _most_mates(design: Design, mesh: Subject) -> Value:
    """How many mates heat the gear of the pair that has the most."""
    counts = [
        sum(gear in (other.raw("driver"), other.raw("driven")) for other in _meshes(design))
        for gear in (mesh.raw("driver"), mesh.raw("driven"))
    ]
    return Known(max(counts), "1", "n_mesh", origin="mates of the gear with the most of them")


def _meshes(design: Design) -> tuple[Subject, ...]:
    return design.subjects.all("mesh")


@varying_measure("mesh", "m", "least oil film at the pitch point")
def film_thickness(design: Design, mesh: Subject, point: Subject) -> Value:
    """h_min at the pitch point under the full line load [m]."""
    return _film(design, mesh, point, film.minimum_film)


@varying_measure("mesh", "m", "oil film in the middle of the contact at the pitch point")
def central_film_thickness(design: Design, mesh: Subject, point: Subject) -> Value:
    """h_c at the pitch point under the full line load [m]."""
    return _film(design, mesh, point, film.central_film)


def _film(design: Design, mesh: Subject, point: Subject, formula: Callable[..., float]) -> Value:
    return with_application(lambda best: compute(formula, *_contact(design, mesh, point, best)))


def _contact(design: Design, mesh: Subject, point: Subject, best: bool) -> tuple[Value, ...]:
    """What a film formula takes: η_0, u, α_pv, E_r, w, R."""
    found = state(design, mesh, point, best)
    pair = found.rating.pair
    viscosity = _viscosity(design, point)
    load = compute(
        tooth_forces.normal_line_load,
        found.full_line_load,
        pair.driver.transverse_pressure_angle,
        pair.driver.base_helix_angle,
    )
    return (
        viscosity,
        compute(film.entraining_speed, found.pitch_line_speed, pair.working_pressure_angle()),
        compute(film.pressure_viscosity, viscosity, properties.base(design)),
        compute(film.effective_modulus, *_STEEL, *_STEEL),
        load,
        compute(film.normal_curvature, found.rating.curvature, pair.driver.base_helix_angle),
    )


@varying_measure("mesh", "1", "specific film thickness")
def specific_film(design: Design, mesh: Subject, point: Subject) -> Value:
    """λ, film over the roughness of both flanks."""
    rough = [
        compute(film.rms_roughness, each.material.flank_roughness)
        for each in rated(design, mesh).teeth
    ]
    thickness = design.measure("film_thickness", mesh, point)
    if isinstance(thickness, Unknown) and thickness.at_best is not None:
        best = compute(film.specific_film, thickness.at_best, *rough)
        if isinstance(best, Known):
            return Unknown(thickness.missing, thickness.because, at_best=best)
    return compute(film.specific_film, thickness, *rough)


@varying_measure("mesh", "", "lubrication regime of the mesh")
def lubrication_regime(design: Design, mesh: Subject, point: Subject) -> Value:
    """Boundary, mixed or full film; with it goes the risk of micropitting."""
    return compute(film.lubrication_regime, design.measure("specific_film", mesh, point))


@measure("gear", "", "whether the flanks have a hardened case", at="material")
def has_case(design: Design, gear: Subject) -> Value:
    """Whether the gear is case-carburised, nitrided or induction-hardened."""
    treatment = gear.given("material.treatment", "treatment")
    if isinstance(treatment, Unknown):
        return treatment
    return Known(treatment.value != "through-hardened", "", "case", inputs=(treatment,))


@varying_measure("gear", "1", "case depth over the depth that contact needs", at="material")
def case_depth_share(design: Design, gear: Subject, point: Subject) -> Value:
    """Least case depth over that which carries the shear below the flank."""
    depth = gear.given("material.case_depth", "CHD", "low")

    def over_meshes(best: bool) -> Value:
        values = []
        for mesh, tooth in teeth_of(design, gear):
            found = state(design, mesh, point, best)
            pair, wheel = found.rating.pair, tooth.wheel
            needed = compute(
                case_depth.depth_for_contact,
                found.contact_stress(tooth),
                pair.working_diameter(wheel),
                pair.working_pressure_angle(),
                wheel.base_helix_angle,
                wheel.teeth,
                pair.mate(wheel).teeth,
                tooth.material.quality,
            )
            values.append(compute(kinematics.quotient, depth, needed))
        return worst(values)

    return with_application(over_meshes)


@measure("gear", "1", "case depth over the deepest that is sound", at="material")
def case_depth_of_most(design: Design, gear: Subject) -> Value:
    """Greatest case depth over that beyond which tip or tooth is hardened through."""
    wheel = design.wheels[gear.name]
    tip = compute(
        case_depth.length_of_modules, design.measure("tip_thickness", gear), wheel.normal_module
    )
    most = compute(case_depth.deepest_case, wheel.normal_module, tip)
    return compute(kinematics.quotient, gear.given("material.case_depth", "CHD", "high"), most)


@measure("mesh", "1", "how much harder the pinion is than the wheel, over 100 HV")
def hardness_lead(design: Design, mesh: Subject) -> Value:
    """Vickers hardness of the pinion less that of the wheel, in hundreds."""
    pinion, wheel = rated(design, mesh).by_size
    return compute(iso_materials.hardness_lead, pinion.material.surface, wheel.material.surface)


@varying_measure("mesh", "1", "accuracy grades in hand for the pitch-line velocity")
def grades_in_hand(design: Design, mesh: Subject, point: Subject) -> Value:
    """Grades by which the coarser gear is finer than its pitch-line velocity asks for."""
    needed = compute(
        flank_accuracy.coarsest_grade,
        design.measure("pitch_line_velocity", mesh, point),
        design.measure("is_spur", mesh),
    )
    return compute(flank_accuracy.grades_in_hand, needed, rated(design, mesh).grade)
