"""What ``PART.MEASURE`` asks for: the part of the drive, and the measure or stated field."""

from dataclasses import dataclass
from difflib import get_close_matches

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.registry import measures
from checker.spec.parts import MODELS, stated_unit
from checker.spec.subject import Subject

_MAY_BE_ABSENT = ("damper", "clutch", "vent")


class NothingSuch(ValueError):
    """There is no such part, measure or operation point; the message says what there is."""


@dataclass(frozen=True, slots=True)
class Answer:
    """A value that was asked for.

    Attributes:
        part: name of the part, as it is asked for.
        measure: the measure or stated field.
        point: the operation point, where the measure varies.
        ratio_set: the ratio set, where the spec has any.
        value: the value.
    """

    part: str
    measure: str
    point: str | None
    ratio_set: str | None
    value: Value

    @property
    def is_shown(self) -> bool:
        """Whether the value is known."""
        return isinstance(self.value, Known)


def inquiries(design: Design, target: str, point: str | None) -> list[Answer]:
    """Ask a design for a measure, at the operation point named or at all of them.

    Args:
        design: the design.
        target: part and measure, such as ``meshes.first.circular_backlash``.
        point: name of an operation point, ``None`` for all.

    Raises:
        NothingSuch: there is no such part, measure or point, or the part or its measure has
            nothing to do with the point.
    """
    subject, name = _found(design, target)
    measure = design.measure_named(name, subject)
    varies = measure is not None and measure.varies
    if point is not None:
        _check_point(design, target, point, varies=varies)

    def answer(value: Value, at: str | None = None) -> Answer:
        return Answer(subject.address, name, at, design.subjects.ratio_set, value)

    absent = _absent(design, subject)
    if absent is not None:
        return [answer(absent)]
    if not varies:
        return [answer(design.measure(name, subject))]
    if not design.points:
        return [answer(Unknown((("operation",),)))]
    asked = [each for each in design.points if point in (None, each.name)]
    return [answer(design.measure(name, subject, each), each.name) for each in asked]


def _check_point(design: Design, target: str, point: str, *, varies: bool) -> None:
    names = [each.name for each in design.points]
    if point not in names:
        there = ", ".join(names) or "none"
        raise NothingSuch(f"There is no operation point {point!r}; the points are: {there}.")
    if not varies:
        raise NothingSuch(f"{target} is the same at every operation point: leave out the point.")


def _absent(design: Design, subject: Subject) -> Unknown | None:
    """What stands in the way where the part itself is not described; no measure expects that."""
    if subject.kind not in _MAY_BE_ABSENT:
        return None
    present = design.subjects.presence(subject.kind)
    if present is False:
        raise NothingSuch(f"This drive has no {subject.kind}: the spec says none.")
    return None if present else Unknown((subject.path,))


def _found(design: Design, target: str) -> tuple[Subject, str]:
    parts = [each for of_kind in design.subjects.by_kind.values() for each in of_kind]
    named = {part.address: part for part in parts}
    known_as = {part.label: part for part in parts} | named
    asked = [label for label in known_as if target.startswith(f"{label}.")]
    if not asked:
        raise NothingSuch(f"There is no part for {target!r}; the parts are: {', '.join(named)}.")
    label = max(asked, key=len)
    subject, name = known_as[label], target[len(label) + 1 :]
    if (subject.kind, name) not in measures() and stated_unit(subject.kind, name) is None:
        raise NothingSuch(_nothing_named(subject, name))
    return subject, name


def _nothing_named(subject: Subject, name: str) -> str:
    computed = sorted(each for kind, each in measures() if kind == subject.kind)
    stated = [
        each
        for each in MODELS[subject.kind].model_fields
        if stated_unit(subject.kind, each) is not None
    ]
    near = get_close_matches(name, [*computed, *stated], n=1)
    message = f"{subject.address} has no measure or stated field {name!r}."
    if near:
        return f"{message} Near it: {near[0]}."
    if computed:
        message += f" Its measures are: {', '.join(computed)}."
    return f"{message} Its stated fields are: {', '.join(stated)}."
