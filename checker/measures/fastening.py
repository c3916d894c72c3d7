"""Measures of splines, keys, press fits, lugs, wood and the propeller's bolts."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures.bearing_loads import worst_of
from checker.measures.bounded import largest, more_is_worse
from checker.measures.design import Design
from checker.measures.preload import greatest_preload, least_preload
from checker.measures.registry import measure
from checker.measures.stated import described
from checker.measures.stress_raisers import bore_under, ends
from checker.mechanics import bearing_fit, fastening, kinematics, load_cases, shaft_loads
from checker.mechanics import joint as formulas
from checker.spec.subject import Subject
from checker.train.load_cases import LoadCase

_CARRYING = "half of the splines carry, the upper of a quarter to a half (from memory)"
_STEEL = "Young's modulus of steel, ISO 6336-2 (from memory)"
_POISSON = "Poisson's ratio of steel, ISO 6336-2 (from memory)"


def _judged(design: Design, joint: Subject, of_peak: Callable[[Value], Value]) -> Value:
    """A value of the peak torque of the joint; at best that of the floor."""
    return design.peaks.judged(of_peak, str(joint.raw("shaft")))


@measure("joint", "Pa", "side pressure of the splines at peak torque", at="length")
def spline_pressure(design: Design, joint: Subject) -> Value:
    """p on the splines that carry; at best that of the floor [Pa]."""

    def of_peak(peak: Value) -> Value:
        even = compute(
            formulas.spline_side_pressure,
            peak,
            joint.given("splines", "n"),
            joint.given("length", "L"),
            joint.given("flank_outer", "D"),
            joint.given("flank_inner", "d"),
        )
        share = assumed(0.5, "1", "k", _CARRYING)
        return compute(fastening.uneven_pressure, even, share)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "safety of spline teeth against yield in shear", at="length")
def spline_shear_safety(design: Design, joint: Subject) -> Value:
    """n of the teeth at the pitch line, half of them carrying; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        pitch = compute(
            fastening.pitch_diameter,
            joint.given("flank_outer", "D"),
            joint.given("flank_inner", "d"),
        )
        shear = compute(
            fastening.spline_tooth_shear,
            peak,
            pitch,
            joint.given("length", "L"),
            assumed(0.5, "1", "k", _CARRYING),
        )
        return _shear_safety(joint, shear)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "safety of the root of the spline in torsion", at="flank_inner")
def spline_root_safety(design: Design, joint: Subject) -> Value:
    """n of the section under the splines, with its bore; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        shear = compute(
            fastening.spline_root_shear,
            peak,
            joint.given("flank_inner", "d"),
            _bore(design, joint),
        )
        return _shear_safety(joint, shear)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "safety of the key against yield in shear", at="key_width")
def key_shear_safety(design: Design, joint: Subject) -> Value:
    """n of the key in shear; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        shear = compute(
            formulas.key_shear_stress,
            peak,
            joint.given("diameter", "D"),
            joint.given("key_width", "b"),
            joint.given("length", "L"),
        )
        return _shear_safety(joint, shear)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "safety of the key against crushing", at="key_height")
def key_crush_safety(design: Design, joint: Subject) -> Value:
    """Yield strength over side pressure of the key; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        pressure = compute(
            formulas.key_side_pressure,
            peak,
            joint.given("diameter", "D"),
            joint.given("key_height", "h"),
            joint.given("length", "L"),
        )
        return compute(kinematics.quotient, joint.given("yield_strength", "R_e"), pressure)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "friction torque of the press fit over peak torque", at="interference")
def press_fit_margin(design: Design, joint: Subject) -> Value:
    """Torque held with the least interference over the peak; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        diameter = joint.given("diameter", "d")
        torque = compute(
            fastening.press_fit_torque,
            joint.given("friction_coefficient", "μ"),
            _fit_pressure(design, joint, "low"),
            diameter,
            joint.given("length", "L"),
        )
        return compute(kinematics.quotient, torque, peak)

    return _judged(design, joint, of_peak)


@measure("joint", "1", "safety of the hub of a press fit against yield", at="hub_outside")
def hub_hoop_safety(design: Design, joint: Subject) -> Value:
    """Yield strength over the hoop stress with the greatest interference."""
    stress = compute(
        fastening.hub_hoop_stress,
        _fit_pressure(design, joint, "high"),
        joint.given("diameter", "d"),
        joint.given("hub_outside", "D"),
    )
    return compute(kinematics.quotient, joint.given("yield_strength", "R_e"), stress)


@measure("joint", "", "whether drive lugs or bushings stand behind the friction", at="lugs")
def has_lugs(design: Design, joint: Subject) -> Value:
    """Whether the joint has lugs."""
    lugs = joint.given("lugs", "N")
    if isinstance(lugs, Unknown):
        return lugs
    return Known(lugs.number > 0, "", "lugs", inputs=(lugs,))


@measure("joint", "1", "safety of the drive lugs against yield in shear", at="lug_diameter")
def lug_safety(design: Design, joint: Subject) -> Value:
    """n of the lugs if friction lets go; at best that of the floor."""

    def of_peak(peak: Value) -> Value:
        shear = compute(
            fastening.pin_shear,
            peak,
            joint.given("lugs", "N"),
            joint.given("lug_diameter", "d"),
            joint.given("lug_radius", "r"),
        )
        return _shear_safety(joint, shear)

    return _judged(design, joint, of_peak)


@measure("joint", "", "whether it clamps a wooden hub", at="wood")
def clamps_wood(design: Design, joint: Subject) -> Value:
    """Whether the joint holds a propeller of wood."""
    if joint.raw("to") != "propeller":
        return Known(False, "", "wood", path=joint.place("to"))
    material = design.subjects.the("propeller").given("material", "material")
    if isinstance(material, Unknown):
        return material
    return Known(material.value == "wood", "", "wood", inputs=(material,))


@measure("joint", "1", "pressure of the bolts on the wood over what it bears", at="clamped_area")
def wood_crush_use(design: Design, joint: Subject) -> Value:
    """N F/A of the tightest bolts over the crush limit across the grain."""
    pressure = compute(
        formulas.clamping_pressure,
        joint.given("bolts", "N"),
        greatest_preload(joint),
        joint.given("clamped_area", "A"),
    )
    limit = compute(fastening.wood_crush_limit, joint.given("wood", "species"))
    return compute(kinematics.quotient, pressure, limit)


@measure("joint", "", "whether retightening of a wooden hub is described", at="retorque")
def retorque_stated(design: Design, joint: Subject) -> Value:
    """Whether the bolts are tightened again at stated times; false where it is ``none``."""
    return described(joint, "retorque")


@measure("joint", "1", "preload over the tension that opens the propeller flange", at="preload")
def flange_opening_safety(design: Design, joint: Subject) -> Value:
    """F_V/F_t of the most loaded propeller bolt, at its slackest, in the worst limit case."""
    worst = worst_of(
        design.reactions.cases.limits, lambda each: _flange_tension(design, joint, each)
    )
    held = least_preload(joint)
    return more_is_worse(worst, lambda pull: compute(fastening.opening_factor, held, pull))


def _flange_tension(design: Design, joint: Subject, each: LoadCase) -> Value:
    """Tension of a propeller bolt by weight, thrust, gyroscopic couple and yawed flow [N]."""
    shaft, forces = design.subjects.the("shaft", design.train.last), design.reactions.forces
    sections = shaft.raw("sections")
    if not sections:
        return Unknown((shaft.place("sections"),))
    _, face = ends(shaft, len(sections) - 1)
    return compute(
        fastening.bolt_tension,
        propeller_moment(design, each, face),
        largest(forces.thrusts_on_shaft(each)),
        joint.given("bolts", "N"),
        joint.given("friction_radius", "r"),
    )


def propeller_moment(design: Design, each: LoadCase, station: Value) -> Value:
    """Bending moment by which the propeller acts at a station of its shaft [N m].

    By weight, gyroscopic couple and yawed flow.
    """
    forces = design.reactions.forces
    up, right = forces.gyroscopic_couples(each)
    return compute(
        shaft_loads.resultant_moment,
        right,
        compute(shaft_loads.plane_couple, up, hanging_moment(design, each, station)),
        forces.yawed_flow(each),
    )


def hanging_moment(design: Design, each: LoadCase, station: Value) -> Value:
    """Moment of the weight of the propeller about a station [N m]."""
    mass = design.subjects.the("propeller").given("mass", "m_p")
    return compute(
        fastening.weight_moment,
        compute(load_cases.weight, mass, each.load_factor),
        design.reactions.forces.blade_plane,
        station,
    )


def _shear_safety(joint: Subject, shear: Value) -> Value:
    return compute(fastening.shear_yield_factor, joint.given("yield_strength", "R_e"), shear)


def _fit_pressure(design: Design, joint: Subject, end: str) -> Value:
    modulus, contraction = (assumed(206e9, "Pa", "E", _STEEL), assumed(0.3, "1", "ν", _POISSON))
    return compute(
        bearing_fit.fit_pressure,
        joint.given("interference", "U", end),
        joint.given("diameter", "d"),
        joint.given("hub_outside", "D_h"),
        _bore(design, joint),
        modulus,
        contraction,
        modulus,
        contraction,
    )


def _bore(design: Design, joint: Subject) -> Value:
    """Bore of the shaft that a joint sits on, under the joint [m]."""
    shaft = design.subjects.the("shaft", str(joint.raw("shaft")))
    return bore_under(shaft, str(joint.raw("kind")))
