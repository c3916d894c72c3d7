"""Where the bearings of a shaft support it."""

from dataclasses import dataclass

from checker.known import Known, Unknown, Value, all_known, compute, merged
from checker.mechanics import shaft_loads
from checker.mechanics.bearing_kinds import BEARING_KINDS
from checker.mechanics.bearing_load import pressure_centre
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject, Subjects
from checker.train.bearing_size import outside

_WAYS = {"towards propeller": 1, "towards engine": -1}
_OFFSET_KINDS = ("angular contact ball", "tapered roller")
_SET = equation_of(shaft_loads.middle_of_set)


@dataclass(frozen=True)
class Support:
    """A radial support of a shaft: a bearing or a matched set of them."""

    station: Known
    members: tuple[Subject, ...]


def supports_of(subjects: Subjects, shaft: str) -> tuple[Support, ...] | Unknown:
    """The radial supports of a shaft."""
    bearings = [each for each in subjects.all("bearing") if each.raw("shaft") == shaft]
    kinds = [bearing.given("kind", "kind") for bearing in bearings]
    unknown = all_known(*kinds)
    if unknown is not None:
        return unknown
    groups: dict[str, list[Subject]] = {}
    for bearing in bearings:
        if BEARING_KINDS[str(bearing.raw("kind"))].radial:
            groups.setdefault(bearing.raw("matched_set") or f"\0{bearing.name}", []).append(bearing)
    stations = [_station_of(members) for members in groups.values()]
    unknown = all_known(*stations)
    if unknown is not None:
        return unknown
    if len(stations) < 2:
        because = f"shafts.{shaft} has {len(stations)} radial bearings listed; two are needed"
        return Unknown((("bearings",),), because)
    return tuple(
        Support(station, tuple(members))
        for station, members in zip(stations, groups.values(), strict=True)
        if isinstance(station, Known)
    )


def _station_of(members: list[Subject]) -> Value:
    stations = [member.given("station", "x") for member in members]
    if len(members) == 1:
        return _pressure_centre(members[0], stations[0])
    unknown = all_known(*stations)
    if unknown is not None:
        return unknown
    known = tuple(each for each in stations if isinstance(each, Known))
    middle = shaft_loads.middle_of_set([each.number for each in known])
    return Known(middle, "m", "x_set", origin=_SET, inputs=known)


def _pressure_centre(bearing: Subject, station: Value) -> Value:
    if bearing.raw("kind") not in _OFFSET_KINDS:
        return station
    locates = bearing.given("locates")
    if isinstance(locates, Unknown):
        return merged([locates, *([station] if isinstance(station, Unknown) else [])])
    way = _WAYS.get(str(locates.value))
    if way is None:
        return station
    return compute(
        pressure_centre,
        station,
        bearing.given("bore", "d"),
        outside(bearing),
        bearing.given("contact_angle", "α"),
        Known(way, "1", "way", inputs=(locates,)),
    )
