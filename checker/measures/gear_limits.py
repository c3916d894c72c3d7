"""Which gear limits the drive: flanks and roots ranked, and what would restore the first."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from checker.known import Known, Unknown, Value, compute
from checker.measures import rating
from checker.measures.design import Design
from checker.measures.kept import kept
from checker.measures.registry import measure
from checker.mechanics import agma_rating
from checker.solve import gear_limit, varied
from checker.solve.gear_limit import AT_FAILURE, Duty, Limit, Minima
from checker.solve.root import Root
from checker.spec.fields import NONE
from checker.spec.subject import Subject
from checker.train.pair import Pair


def _method(root: Root) -> str:
    """How a root was found, with what is left of the logarithm of the load in hand."""
    return (
        "root of the rating of ISO 6336 in one unknown, by Brent's method between two ends;"
        f" residual {root.residual:.1e} after {root.steps} steps"
    )


@kept
def ranking(design: Design) -> tuple[Limit, ...] | Unknown:
    """Every flank and root at every loaded operation point, the least load in hand first."""
    found: list[Limit] = []
    for mesh in design.subjects.all("mesh"):
        for point in design.points:
            carries = rating.loaded(design, mesh, point)
            if isinstance(carries, Unknown):
                return carries
            if not carries:
                continue
            limits = gear_limit.limits_of(_duty(design, mesh, point))
            if isinstance(limits, Unknown):
                return limits
            found += limits
    if not found:
        return Unknown((("operation",),), "no operation point loads a mesh")
    return tuple(sorted(found, key=lambda each: each.load_in_hand.number))


def _duty(design: Design, mesh: Subject, point: Subject) -> Duty:
    found = rating.state(design, mesh, point, False)
    driver, driven = (
        rating.cycles_at(design, each.wheel.subject, point) for each in found.rating.teeth
    )
    return Duty(found, mesh.name, point.name, (driver, driven))


def _first(design: Design) -> Limit | Unknown:
    found = ranking(design)
    return found if isinstance(found, Unknown) else found[0]


@measure("drive", "", "the flank or root that limits the drive")
def limiting_gear(design: Design, drive: Subject) -> Value:
    """Mode, gear, mesh and operation point with the least load in hand."""
    found = _first(design)
    if isinstance(found, Unknown):
        return found
    return Known(found.text, "", "first limit", inputs=(found.safety, found.load_in_hand))


@measure("drive", "1", "load in hand at the first limit")
def first_load_in_hand(design: Design, drive: Subject) -> Value:
    """Load at the first limit over the load that is there, factors held: S_F or S_H²."""
    found = _first(design)
    return found if isinstance(found, Unknown) else found.load_in_hand


@measure("drive", "1", "load at the first limit over the load that is there")
def load_at_first_limit(design: Design, drive: Subject) -> Value:
    """Multiple of the load at the limiting point that brings the first mesh to its limit.

    With load factors that follow the load, so it is not quite the load in hand.
    """
    found = _first(design)
    if isinstance(found, Unknown):
        return found
    point = design.subjects.the("point", found.point)
    duties = [_duty(design, mesh, point) for mesh in design.subjects.all("mesh")]
    load = gear_limit.load_at_first_limit(duties)
    if isinstance(load, Unknown):
        return load
    first = Known(found.text, "", "first limit", inputs=(found.safety,))
    return Known(load.value, "1", "k_1", origin=_method(load), inputs=(first,))


@measure("drive", "W", "power at which the first limit is reached")
def power_at_first_limit(design: Design, drive: Subject) -> Value:
    """Power at the crankshaft, at the speed of the limiting point [W]."""
    found, load = _first(design), design.measure("load_at_first_limit", drive)
    if isinstance(found, Unknown):
        return found
    power = design.subjects.the("point", found.point).given("power", "P")
    return compute(agma_rating.permissible_power, power, load)


@measure("drive", "", "whether both standards name the same gear")
def standards_name_one_gear(design: Design, drive: Subject) -> Value:
    """Whether ISO and AGMA name the same gear as the one that limits the drive."""
    found = _first(design)
    if isinstance(found, Unknown):
        return found
    other = _first_of_agma(design)
    if isinstance(other, Unknown):
        return other
    gear, known = other
    return Known(
        gear == found.gear,
        "",
        "one gear",
        origin=f"ISO 6336 names {found.gear}, AGMA 2001 names {gear}",
        inputs=(found.load_in_hand, known),
    )


def _first_of_agma(design: Design) -> tuple[str, Known] | Unknown:
    least: tuple[str, Known] | None = None
    for gear in design.subjects.all("gear"):
        for point in design.points:
            carries = design.measure("is_loaded", gear, point)
            if isinstance(carries, Unknown):
                return carries
            if not carries.value:
                continue
            bending = design.measure("bending_safety_agma", gear, point)
            contact = design.measure("contact_safety_agma", gear, point)
            for value, power in ((bending, 1), (contact, 2)):
                if isinstance(value, Unknown):
                    return Unknown(value.missing, value.because)
                in_hand = value.number**power
                if least is None or in_hand < least[1].number:
                    least = gear.name, Known(in_hand, "1", "f_P", inputs=(value,))
    return least or Unknown((("operation",),), "no operation point loads a gear")


@measure("drive", "m", "face width at which the limiting mesh just bears its load")
def face_width_at_limit(design: Design, drive: Subject) -> Value:
    """Face width of the limiting gear, both faces changed alike [m]."""
    return size_at_limit(design, "face_width")


@measure("drive", "m", "module at which the limiting mesh just bears its load")
def module_at_limit(design: Design, drive: Subject) -> Value:
    """Normal module of the limiting gear, teeth kept and centre distance following [m]."""
    return size_at_limit(design, "module")


@measure("drive", "", "hardness at which the limiting mesh just bears its load")
def hardness_at_limit(design: Design, drive: Subject) -> Value:
    """Surface hardness of the limiting gear, where its limits depend on it at all."""
    return size_at_limit(design, "material.surface_hardness")


@measure("drive", "rad", "helix angle at which the limiting mesh just bears its load")
def helix_at_limit(design: Design, drive: Subject) -> Value:
    """Helix angle of the limiting gear on the same reference circles [rad]."""
    return size_at_limit(design, "helix.angle")


_SIZES: Mapping[str, tuple[Callable[[Pair, float], Pair], str]] = MappingProxyType(
    {
        "face_width": (varied.with_face_width, "b"),
        "module": (varied.with_module, "m_n"),
        "material.surface_hardness": (varied.with_hardness, "H"),
        "helix.angle": (varied.with_helix, "β"),
    }
)


def size_at_limit(design: Design, field: str, minima: Minima = AT_FAILURE) -> Value:
    """The value of a stated size of the limiting gear at which its mesh just keeps its safety."""
    ranked = ranking(design)
    if isinstance(ranked, Unknown):
        return ranked
    found = minima.first(ranked)
    gear = design.subjects.the("gear", found.gear)
    if field == "helix.angle" and gear.raw("helix") == NONE:
        return Unknown(because="a spur gear has no helix to change")
    change, symbol = _SIZES[field]
    mesh, point = (
        design.subjects.the(*each) for each in (("mesh", found.mesh), ("point", found.point))
    )
    times = gear_limit.factor_at_limit(_duty(design, mesh, point), change, minima)
    stated = gear.given(field, symbol)
    if isinstance(times, Unknown) or isinstance(stated, Unknown):
        return times if isinstance(times, Unknown) else stated
    return Known(
        times.value * stated.number,
        stated.unit,
        f"{symbol} at limit",
        origin=_method(times),
        inputs=(stated, found.safety),
    )
