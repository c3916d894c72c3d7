"""Sections of a shaft and the stress raisers between them, with their notch factors."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from checker.known import Known, Unknown, Value, all_known, assumed, compute, merged
from checker.mechanics import bearing_fit, notch
from checker.mechanics import shaft_strength as strength
from checker.spec.subject import Subject
from checker.train.bearing_size import width

# The joint that a section with such a notch is made for.
JOINT_OF_NOTCH = {
    "spline": "spline",
    "keyway": "key",
    "press fit": "press fit",
    "taper": "taper",
}
_FINISH_SOURCE = "machined, the rougher of the usual finishes, as the spec states none"
_RELIABILITY_SOURCE = "99 % of shafts, Shigley's Mechanical Engineering Design, Table 6-5"


@dataclass(frozen=True)
class Raiser:
    """A stress raiser between two sections of a shaft.

    Attributes:
        station: where it is [m].
        outside: outside diameter of the weaker section [m].
        inside: its bore [m].
        bending: K_f.
        torsion: K_fs.
        endurance: S_e of the finished section [Pa].
    """

    station: Known
    outside: Known
    inside: Known
    bending: Value
    torsion: Value
    endurance: Value


def raisers_of(shaft: Subject, stations: Iterable[Known]) -> Iterator[Raiser | Unknown]:
    """Each stress raiser of a shaft: at the end of a section, between it and the next.

    What is fitted on a section raises the stress all along it, so that it is looked at where the
    section begins and at each station in it as well: the torque may leave the shaft before its end.
    """
    sections = shaft.raw("sections")
    if not sections:
        yield Unknown((shaft.place("sections"),))
        return
    spots = list(plain_spots(shaft, stations))
    for index in range(len(sections)):
        kind = _given(shaft, index, "notch")
        if isinstance(kind, Unknown):
            yield kind
            continue
        if kind.value in JOINT_OF_NOTCH:
            factors = _fitted_factors(str(kind.value), shaft.given("tensile_strength", "R_m"))
            size = diameters(shaft, index)
            for section, station in spots:
                if section == index:
                    yield _of_section(shaft, station, size, *factors)
        raiser = _raiser(shaft, index, str(kind.value))
        if raiser is not None:
            yield raiser


def plain_spots(shaft: Subject, stations: Iterable[Known]) -> Iterator[tuple[int, Value]]:
    """Where the plain sections of a shaft are looked at: index of the section, and station.

    Both ends of each section, and each given station in the sections that reach it; a gap between
    sections goes with the section before.
    """
    stated = list(stations)
    ended = [ends(shaft, index) for index in range(len(shaft.raw("sections") or ()))]
    for index, (start, end) in enumerate(ended):
        yield index, start
        yield index, end
        if isinstance(start, Unknown) or isinstance(end, Unknown):
            continue
        starts = [each.number for each, _ in ended if isinstance(each, Known)]
        reach = max(end.number, min((x for x in starts if x >= end.number), default=end.number))
        for station in stated:
            if start.number <= station.number <= reach:
                yield index, station


def seat_raisers(seats: Iterable[Subject], shaft: Subject) -> Iterator[Raiser | Unknown]:
    """The edges of each bearing ring that is pressed on a shaft, in the sections they stand on."""
    bending, torsion = _fitted_factors("press fit", shaft.given("tensile_strength", "R_m"))
    for bearing in seats:
        pressed = bearing.given("inner_interference", "U_i", "high")
        if isinstance(pressed, Unknown):
            yield pressed
            continue
        if pressed.number <= 0.0:
            continue
        middle, length = bearing.given("station", "x"), width(bearing)
        edges = [
            compute(edge, middle, length)
            for edge in (bearing_fit.rear_edge, bearing_fit.front_edge)
        ]
        unknown = all_known(*edges)
        if unknown is not None:
            yield unknown
            continue
        known = [edge for edge in edges if isinstance(edge, Known)]
        for index, station in plain_spots(shaft, known):
            if any(station is edge for edge in known):
                yield _of_section(shaft, station, diameters(shaft, index), bending, torsion)


def plain_raiser(shaft: Subject, index: int, station: Value) -> Raiser | Unknown:
    """A section without stress raiser, at a station of it."""
    size = diameters(shaft, index)
    plain = Known(1.0, "1", "K_f", origin="no stress raiser there")
    return _of_section(shaft, station, size, plain, plain)


def _raiser(shaft: Subject, index: int, kind: str) -> Raiser | Unknown | None:
    """The raiser at the end of a section; none where the shaft goes on as it is."""
    _, station = ends(shaft, index)
    here = diameters(shaft, index)
    beyond = diameters(shaft, index + 1) if index + 1 < len(shaft.raw("sections")) else here
    unknown = all_known(station, *here, *beyond)
    if unknown is not None:
        return unknown
    steps = _number(here[0]) != _number(beyond[0])
    contradiction = {
        ("shoulder", False): "a shoulder is stated where the diameter does not change: no step "
        "to judge",
        ("none", True): "no notch is stated where the diameter changes: a step is a notch",
    }.get((kind, steps))
    if contradiction:
        place = (*shaft.place("sections"), index, "notch")
        return Unknown((place,), f"{shaft.label}: {contradiction}")
    if kind == "none":
        return None
    weaker = min((here, beyond), key=_section_modulus)
    large = max(here[0], beyond[0], key=_number)
    tensile = shaft.given("tensile_strength", "R_m")
    radius = _given(shaft, index, "notch_radius", "r")
    bending, torsion = _factors(shaft, index, kind, (large, weaker[0], radius), tensile)
    return _of_section(shaft, station, weaker, bending, torsion)


def _of_section(
    shaft: Subject, station: Value, size: tuple[Value, Value], bending: Value, torsion: Value
) -> Raiser | Unknown:
    outside, inside = size
    if isinstance(station, Unknown) or isinstance(outside, Unknown) or isinstance(inside, Unknown):
        return merged([each for each in (station, outside, inside) if isinstance(each, Unknown)])
    tensile = shaft.given("tensile_strength", "R_m")
    endurance = compute(
        strength.endurance_limit,
        tensile,
        compute(strength.surface_factor, tensile, _finish(shaft)),
        compute(strength.size_factor, outside),
        compute(
            strength.reliability_factor,
            assumed(99, "1", "reliability in %", _RELIABILITY_SOURCE),
        ),
    )
    return Raiser(station, outside, inside, bending, torsion, endurance)


def _factors(
    shaft: Subject, index: int, kind: str, step: tuple[Value, Value, Value], tensile: Value
) -> tuple[Value, Value]:
    """K_f in bending and K_fs in torsion of a stress raiser."""
    large, small, radius = step
    if kind in JOINT_OF_NOTCH:
        return _fitted_factors(kind, tensile)
    if kind == "hole":
        return compute(notch.hole_bending), compute(notch.hole_torsion)
    if kind == "groove":
        small = compute(notch.groove_diameter, small, _given(shaft, index, "notch_depth", "t"))
    bending, torsion = (
        _of_corner(kind, load, (large, small, radius), tensile) for load in ("bending", "torsion")
    )
    return bending, torsion


def _fitted_factors(kind: str, tensile: Value) -> tuple[Value, Value]:
    """K_f and K_fs under what is fitted on a section."""
    if kind == "spline":
        return (
            compute(notch.spline_bending_fatigue, tensile),
            compute(notch.spline_torsion_fatigue, tensile),
        )
    if kind == "keyway":
        return compute(notch.keyway_bending), compute(notch.keyway_torsion)
    # A taper grips and frets as a press fit does.
    return (
        compute(notch.press_fit_bending_fatigue, tensile),
        compute(notch.press_fit_torsion_fatigue, tensile),
    )


_THEORETICAL: dict[tuple[str, str], Callable[[float, float, float], float]] = {
    ("shoulder", "bending"): notch.shoulder_bending,
    ("shoulder", "torsion"): notch.shoulder_torsion,
    ("groove", "bending"): notch.groove_bending,
    ("groove", "torsion"): notch.groove_torsion,
}


def _of_corner(kind: str, load: str, step: tuple[Value, Value, Value], tensile: Value) -> Value:
    """K_f of a shoulder or a groove under one kind of load."""
    large, small, _ = step
    words = (
        Known(word, "", symbol, origin="the notch")
        for word, symbol in ((kind, "kind"), (load, "load"))
    )
    radius = compute(notch.governing_radius, *words, *step, tensile)
    sensitivity = notch.bending_sensitivity if load == "bending" else notch.torsion_sensitivity
    return compute(
        notch.fatigue_factor,
        compute(_THEORETICAL[kind, load], large, small, radius),
        compute(sensitivity, tensile, radius),
    )


def _finish(shaft: Subject) -> Value:
    stated = shaft.given("finish", "finish")
    if isinstance(stated, Known):
        return stated
    return assumed("machined", "", "finish", _FINISH_SOURCE)


def _section_modulus(size: tuple[Value, Value]) -> float:
    outside, inside = _number(size[0]), _number(size[1])
    return (outside**4 - inside**4) / outside


def _number(value: Value) -> float:
    return value.number if isinstance(value, Known) else 0.0


def ends(shaft: Subject, index: int) -> tuple[Value, Value]:
    """Start and end of a section of a shaft [m]."""
    return _given(shaft, index, "from", "x₁"), _given(shaft, index, "to", "x₂")


def diameters(shaft: Subject, index: int) -> tuple[Value, Value]:
    """Outside diameter and bore of a section of a shaft [m]."""
    return _given(shaft, index, "outside", "D"), _given(shaft, index, "inside", "d")


def fitted_kinds(shaft: Subject) -> list[str]:
    """The kinds of joint that the sections of a shaft are made for, each once."""
    sections = range(len(shaft.raw("sections") or ()))
    stated = [_given(shaft, index, "notch") for index in sections]
    kinds = [JOINT_OF_NOTCH.get(str(each.value)) for each in stated if isinstance(each, Known)]
    return list(dict.fromkeys(kind for kind in kinds if kind))


def bore_under(shaft: Subject, kind: str) -> Value:
    """Bore of a shaft under a joint of a kind [m].

    The widest of its sections that are made for such a joint, else of all its sections.
    """
    sections = shaft.raw("sections")
    if not sections:
        return Unknown((shaft.place("sections"),))
    made = [
        index
        for index, section in enumerate(sections)
        if JOINT_OF_NOTCH.get(str(section.notch)) == kind
    ]
    bores = [diameters(shaft, index)[1] for index in made or range(len(sections))]
    unknown = [bore for bore in bores if isinstance(bore, Unknown)]
    return merged(unknown) if unknown else max(bores, key=_number)


def _given(shaft: Subject, index: int, field: str, symbol: str = "") -> Value:
    """A stated value of one section of a shaft."""
    section = shaft.raw("sections")[index]
    place = (*shaft.place("sections"), index)
    return Subject("section", str(index), place, section).given(field, symbol)
