"""Ratings of a bearing or its matched set: stated, or of a generic bearing by formula."""

from collections.abc import Callable

from checker.known import Known, Unknown, Value, assumed, compute
from checker.measures.design import Design
from checker.mechanics import bearing_load as loads
from checker.mechanics import bearing_sizes as generic
from checker.spec.subject import Subject
from checker.train.bearing_size import outside, width

BALLS = (
    "deep groove ball",
    "angular contact ball",
    "double-row angular contact ball",
    "four-point contact ball",
    "self-aligning ball",
    "thrust ball",
    "double-direction thrust ball",
)
CYLINDERS = tuple(f"cylindrical roller {ribs}" for ribs in ("N", "NU", "NJ", "NUP"))
_ROWS_EXPONENT = {True: 0.7, False: 7.0 / 9.0}


def dynamic_rating(design: Design, bearing: Subject) -> Value:
    """C of a bearing or its set [N]: stated, or of a generic bearing."""
    rating = _rating(
        bearing, "dynamic_rating", "C", generic.generic_ball_rating, generic.generic_roller_rating
    )
    members = _members(design, bearing)
    if members is None:
        return rating
    kind = bearing.given("kind", "kind")
    if isinstance(kind, Unknown):
        return kind
    rows = Known(_ROWS_EXPONENT[kind.value in BALLS], "1", "q", origin="ISO 281:2007 (from memory)")
    return compute(loads.set_dynamic_rating, rating, members, rows)


def static_rating(design: Design, bearing: Subject) -> Value:
    """C_0 of a bearing or its set [N]: stated, or of a generic bearing."""
    rating = own_static_rating(bearing)
    members = _members(design, bearing)
    return rating if members is None else compute(loads.set_static_rating, rating, members)


def own_static_rating(bearing: Subject) -> Value:
    """C_0 of one bearing, whatever set it belongs to [N]."""
    return _rating(
        bearing,
        "static_rating",
        "C_0",
        generic.generic_ball_static_rating,
        generic.generic_roller_static_rating,
    )


def _rating(
    bearing: Subject,
    field: str,
    symbol: str,
    balls: Callable[..., float],
    rollers: Callable[..., float],
) -> Value:
    stated = bearing.given(field, symbol)
    if isinstance(stated, Known) or bearing.raw("generic_series") is None:
        return stated
    bore, around = bearing.given("bore", "d"), outside(bearing)
    if bearing.raw("kind") == "deep groove ball":
        rating = compute(balls, bore, around)
    elif bearing.raw("kind") in CYLINDERS:
        rating = compute(rollers, bore, around, width(bearing))
    else:
        return stated
    if isinstance(rating, Unknown):
        return rating
    note = assumed(generic.GENERIC, "", "rating", generic.GENERIC)
    return Known(rating.value, "N", symbol, origin=rating.origin, inputs=(*rating.inputs, note))


def _members(design: Design, bearing: Subject) -> Known | None:
    name = bearing.raw("matched_set")
    if name is None:
        return None
    named = tuple(
        Known(each.name, "", "member", path=each.path)
        for each in design.subjects.all("bearing")
        if each.raw("matched_set") == name
    )
    return Known(len(named), "1", "N", inputs=named)
