"""The torque that a one-way clutch is rated for: stated, or by its geometry."""

from checker.known import Known, Unknown, Value, assumed, compute
from checker.mechanics import clutch as formulas
from checker.mechanics import clutch_duty as duty
from checker.mechanics import hertz
from checker.spec.subject import Subject

_NOMINAL: Value = assumed(
    4200e6, "Pa", "p_max", "nominal Hertz pressure of sprag guides, trade source"
)
_BY_GEOMETRY = "by geometry"
_NO_RATING = "by the geometry of its elements, as no rated_torque is stated"


def rated_torque_of(clutch: Subject) -> Value:
    """T_r, stated or by geometry; at best by geometry where nothing is said of it [N m]."""
    stated = clutch.given("rated_torque", "T_r")
    if isinstance(stated, Known):
        return stated
    found, told = torque_by_geometry(clutch), clutch.given("rating_is", "rating")
    by_geometry = isinstance(told, Known) and told.value == _BY_GEOMETRY
    if isinstance(found, Unknown):
        return found if by_geometry else stated
    rated = Known(found.number, "N m", "T_r", origin=_NO_RATING, inputs=(found,))
    if by_geometry:
        return rated
    return Unknown(stated.missing, "its maker may rate it lower than its geometry", rated)


def torque_by_geometry(clutch: Subject) -> Value:
    """T, torque of all rows together at the allowed contact pressure on the inner race [N m]."""
    maker = clutch.given("contact_pressure_limit", "p_max")
    allowed = _NOMINAL
    if isinstance(maker, Known):
        allowed = compute(duty.lower_pressure, _NOMINAL, maker)
    force = compute(
        hertz.line_contact_force,
        allowed,
        clutch.given("element_length", "L"),
        *contact_bodies(clutch),
    )
    row = compute(
        formulas.torque_capacity,
        clutch.given("elements", "z"),
        clutch.given("inner_race_radius", "r_i"),
        clutch.given("gripping_angle", "α"),
        force,
    )
    return compute(duty.torque_of_rows, row, clutch.given("rows", "n"))


def contact_bodies(clutch: Subject) -> tuple[Value, Value]:
    """R and E* of an element on the inner race [m, Pa]."""
    steel = assumed(206e9, "Pa", "E", "Young's modulus of steel, ISO 6336-2 (from memory)")
    contraction = assumed(0.3, "1", "ν", "Poisson's ratio of steel, ISO 6336-2 (from memory)")
    return (
        compute(
            hertz.reduced_radius,
            clutch.given("element_radius", "r_1"),
            clutch.given("inner_race_radius", "r_i"),
        ),
        compute(hertz.reduced_modulus, steel, contraction, steel, contraction),
    )
