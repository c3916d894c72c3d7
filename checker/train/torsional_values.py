"""Inertia and stiffness of each part for the torsional model: stated, or from its shape."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute, merged
from checker.mechanics import beam, coupling, iso_root, mesh_stiffness, shaft_strength
from checker.mechanics import torsional_parts as parts
from checker.spec.subject import Subject, Subjects
from checker.train.coldest import coldest
from checker.train.pair import Pair, Wheel

_DENSITY = assumed(7850.0, "kg/m3", "ρ", "density of steel (from memory)")
_SHEAR = assumed(beam.SHEAR_MODULUS, "Pa", "G", "shear modulus of steel, Shigley (from memory)")
_SOLID = Known(0.0, "m", "d", origin="taken as solid to its axis")


def shaft_inertia(shaft: Subject) -> Value:
    """J of a shaft without its gears [kg m²], stated or summed over its sections as steel."""
    stated = shaft.given("inertia", "J")
    if isinstance(stated, Known) or not shaft.raw("sections"):
        return stated
    return section_inertia(shaft)


def section_inertia(shaft: Subject) -> Value:
    """J of all sections of a shaft in steel [kg m²]."""
    sections = shaft.raw("sections")
    if not sections:
        return Unknown((shaft.place("sections"),))
    return summed(
        [_section(shaft, index, parts.cylinder_inertia) for index in range(len(sections))]
    )


def yield_torques(shaft: Subject) -> list[Value]:
    """Torque that yields each section of a shaft [N m]."""
    sections = [
        Subject("shaft", shaft.name, (*shaft.place("sections"), index), part)
        for index, part in enumerate(shaft.raw("sections") or ())
    ]
    if not sections:
        return [Unknown((shaft.place("sections"),))]
    return [
        compute(
            shaft_strength.yield_torque,
            shaft.given("yield_strength", "R_e"),
            section.given("outside", "D"),
            section.given("inside", "d"),
        )
        for section in sections
    ]


def shaft_stiffness(shaft: Subject) -> Value:
    """C of a shaft between its ends [N m/rad], stated or from its sections."""
    stated = shaft.given("torsional_stiffness", "C")
    if isinstance(stated, Known) or not shaft.raw("sections"):
        return stated
    return section_stiffness(shaft)


def section_stiffness(shaft: Subject) -> Value:
    """C of all sections of a shaft one behind the other [N m/rad]."""
    sections = shaft.raw("sections")
    if not sections:
        return Unknown((shaft.place("sections"),))
    total = _section(shaft, 0, parts.cylinder_stiffness)
    for index in range(1, len(sections)):
        total = compute(parts.in_series, total, _section(shaft, index, parts.cylinder_stiffness))
    return total


def _section(shaft: Subject, index: int, formula: Callable[..., float]) -> Value:
    part = shaft.raw("sections")[index]
    section = Subject("shaft", shaft.name, (*shaft.place("sections"), index), part)
    length = compute(parts.section_length, section.given("from", "x₁"), section.given("to", "x₂"))
    modulus = _DENSITY if formula is parts.cylinder_inertia else _SHEAR
    return compute(
        formula,
        length,
        section.given("outside", "D"),
        section.given("inside", "d"),
        modulus,
    )


def gear_inertia(wheel: Wheel, shaft: Subject) -> Value:
    """J of a gear [kg m²], stated or of a steel disc as wide as its face on its shaft."""
    stated = wheel.subject.given("inertia", "J")
    if isinstance(stated, Known):
        return stated
    disc = compute(
        parts.cylinder_inertia,
        wheel.face_width,
        wheel.reference_diameter,
        _bore(wheel, shaft),
        _DENSITY,
    )
    return disc if isinstance(disc, Known) else merged([stated, disc])


def _bore(wheel: Wheel, shaft: Subject) -> Value:
    """Outside diameter of the shaft under a gear; zero where its sections are not stated."""
    station = wheel.subject.given("station", "x")
    for index, part in enumerate(shaft.raw("sections") or ()):
        section = Subject("shaft", shaft.name, (*shaft.place("sections"), index), part)
        ends = section.given("from"), section.given("to")
        if (
            isinstance(station, Known)
            and all(isinstance(end, Known) for end in ends)
            and ends[0].number <= station.number <= ends[1].number  # type: ignore[union-attr]
        ):
            return section.given("outside", "d")
    return _SOLID


def mesh_spring(pair: Pair) -> Value:
    """C of a mesh on its driver [N m/rad], stated or by ISO 6336-1 from its geometry."""
    stated = pair.subject.given("stiffness", "C_m")
    if isinstance(stated, Known):
        return stated
    driver, driven = pair.driver, pair.driven
    single = compute(
        mesh_stiffness.single_stiffness,
        compute(iso_root.virtual_teeth, driver.teeth, driver.base_helix_angle, driver.helix_angle),
        compute(iso_root.virtual_teeth, driven.teeth, driver.base_helix_angle, driver.helix_angle),
        driver.profile_shift,
        driven.profile_shift,
        driver.subject.given("basic_rack.dedendum", "h_fP*"),
        driver.normal_pressure_angle,
        driver.helix_angle,
    )
    spring = compute(
        mesh_stiffness.torsional_mesh_stiffness,
        compute(mesh_stiffness.mesh_stiffness, single, pair.transverse_contact_ratio()),
        pair.common_face_width,
        driver.base_diameter,
    )
    return spring if isinstance(spring, Known) else merged([stated, spring])


def clutch_spring(clutch: Subject, torque: Value) -> Value:
    """C of the engaged clutch [N m/rad], stated or from the squeeze of its elements at a torque."""
    stated = clutch.given("torsional_stiffness", "C_c")
    if isinstance(stated, Known):
        return stated
    spring = compute(
        parts.clutch_stiffness,
        torque,
        clutch.given("elements", "z"),
        clutch.given("rows", "n"),
        clutch.given("inner_race_radius", "r_i"),
        clutch.given("gripping_angle", "α"),
        clutch.given("element_length", "L"),
    )
    return spring if isinstance(spring, Known) else merged([stated, spring])


def propeller_inertia(propeller: Subject) -> Value:
    """J of the propeller [kg m²], stated or from its swing test."""
    stated = propeller.given("inertia", "J_p")
    if isinstance(stated, Known):
        return stated
    if propeller.raw("swing_test") is None:
        return Unknown((*stated.missing, propeller.place("swing_test")))
    return swung_inertia(propeller)


def swung_inertia(propeller: Subject) -> Value:
    """J of the propeller from its swing test [kg m²]."""
    given = {
        name: propeller.given(f"swing_test.{name}")
        for name in ("mass", "spacing", "length", "period")
    }
    wires = propeller.given("swing_test.wires", "wires")
    if isinstance(wires, Unknown):
        return merged([each for each in (wires, *given.values()) if isinstance(each, Unknown)])
    if wires.value == 2:
        return compute(parts.bifilar_inertia, *given.values())
    return compute(
        parts.trifilar_inertia,
        given["mass"],
        compute(parts.radius, given["spacing"]),
        given["length"],
        given["period"],
    )


def damper_stiffness(damper: Subject) -> Value:
    """C of the damper [N m/rad], stated or from its twist test."""
    stated = damper.given("dynamic_stiffness", "C")
    if isinstance(stated, Known):
        return stated
    if damper.raw("twist_test") is None:
        return Unknown((*stated.missing, damper.place("twist_test")))
    return twisted_stiffness(damper)


def twisted_stiffness(damper: Subject) -> Value:
    """C of the damper from its twist test [N m/rad]."""
    return compute(
        parts.dynamic_stiffness,
        compute(
            parts.static_stiffness,
            damper.given("twist_test.torque", "T"),
            damper.given("twist_test.twist", "φ"),
        ),
        damper.given("twist_test.dynamic_factor", "k_dyn"),
    )


def damper_ends(subjects: Subjects) -> tuple[Value, Value]:
    """Softest and stiffest C of the damper [N m/rad] to be reckoned with."""
    damper = subjects.the("damper")
    if isinstance(kind := damper.given("kind"), Unknown):
        return kind, kind
    nominal = damper_stiffness(damper)
    hot = cold = nominal
    if kind.value == "elastomer":
        hot, cold = damper.given("hot_stiffness", "C_hot"), _cold_stiffness(subjects, nominal)
        if isinstance(hot, Unknown):
            factor = assumed(
                coupling.HOT_OVER_COLD_STIFFNESS,
                "1",
                "k",
                "no stiffness of the hot elastomer is stated: least of three grades at 100 degC, "
                "rubber coupling maker's technical data page (seen)",
            )
            hot = compute(coupling.stiffness_at, nominal, factor)
        fields = ("hot_stiffness", "dynamic_stiffness", "cold_stiffness")
        against = _falling(damper, fields, (hot, nominal, cold))
        if against is not None:
            return against, against
    return compute(coupling.softest, hot), compute(coupling.stiffest, cold)


def _cold_stiffness(subjects: Subjects, nominal: Value) -> Value:
    """C of the cold elastomer, or as stated where that is of no warmer an elastomer [N m/rad]."""
    damper = subjects.the("damper")
    cold = damper.given("cold_stiffness", "C_cold")
    if isinstance(cold, Known):
        return cold
    stated, start = damper.given("stiffness_temperature", "T"), coldest(subjects)
    if isinstance(stated, Known) and isinstance(start, Known):
        if stated.number <= start.number:
            return nominal
        return Unknown(cold.missing, "dynamic_stiffness is that of a warmer damper than is started")
    missing = merged([each for each in (cold, stated, start) if isinstance(each, Unknown)])
    return Unknown(
        missing.missing, "without cold_stiffness, how cold dynamic_stiffness holds counts"
    )


def _falling(
    damper: Subject, fields: tuple[str, str, str], found: tuple[Value, Value, Value]
) -> Unknown | None:
    """Why values from hot to cold contradict each other: each must fall as the damper warms."""
    hot, nominal, cold = found
    if isinstance(hot, Unknown) or isinstance(nominal, Unknown) or isinstance(cold, Unknown):
        return None
    if hot.number <= nominal.number <= cold.number:
        return None
    words = f"{fields[0]} must not be above {fields[1]}, nor that above {fields[2]}"
    return Unknown(tuple(damper.place(field) for field in fields), words)


def viscous_ends(damper: Subject) -> tuple[Value, Value]:
    """Least and largest c of a viscous damper [N m s/rad] to be reckoned with."""
    fields = ("hot_damping_coefficient", "damping_coefficient", "cold_damping_coefficient")
    hot, nominal, cold = (
        damper.given(field, symbol)
        for field, symbol in zip(fields, ("c_hot", "c", "c_cold"), strict=True)
    )
    against = _falling(damper, fields, (hot, nominal, cold))
    if against is not None:
        return against, against
    return compute(coupling.least_coefficient, hot), compute(coupling.most_coefficient, cold)


def damper_damping(damper: Subject) -> tuple[Value, Value, Value]:
    """Relative damping ψ of the damper to be reckoned with: least hot, least as stated, most."""
    if isinstance(kind := damper.given("kind"), Unknown):
        return kind, kind, kind
    nominal = damper.given("relative_damping", "ψ")
    hot = nominal
    if damper.raw("kind") == "elastomer":
        hot = damper.given("hot_relative_damping", "ψ_hot")
        if isinstance(hot, Unknown):
            factor = assumed(
                coupling.HOT_OVER_COLD_DAMPING,
                "1",
                "k_ψ",
                "no damping of the hot elastomer is stated: least of three grades at 100 degC, "
                "rubber coupling maker's technical data page (seen), its magnifier read as 2π/ψ",
            )
            hot = compute(coupling.hot_damping, nominal, factor)
    known = [each for each in (nominal, hot) if isinstance(each, Known)]
    highest = max(known, key=lambda each: each.number, default=nominal)
    return (
        compute(coupling.least_damping, hot),
        compute(coupling.least_damping, nominal),
        compute(coupling.most_damping, highest),
    )


def summed(values: list[Value]) -> Value:
    """Sum of inertias [kg m²]."""
    total = values[0]
    for value in values[1:]:
        total = compute(parts.joined_inertia, total, value)
    return total
