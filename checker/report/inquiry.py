"""What ``PART.MEASURE`` asks for: the part of the drive, and the measure or stated field."""

from dataclasses import dataclass
from difflib import get_close_matches

from checker.known import Known, Value
from checker.measures.design import Design
from checker.measures.registry import measures
from checker.spec.parts import stated_unit
from checker.spec.subject import Subject


class NothingSuch(ValueError):
    """There is no such part, measure or operation point; the message says what there is."""


@dataclass(frozen=True, slots=True)
class Answer:
    """A value that was asked for.

    Attributes:
        part: label of the part.
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
        NothingSuch: there is no such part, measure or point.
    """
    subject, name = _found(design, target)
    points: list[Subject | None] = [None]
    measure = design.measure_named(name, subject)
    if measure is not None and measure.varies:
        points = [each for each in design.points if point in (None, each.name)]
        if not points:
            names = ", ".join(each.name for each in design.points) or "none"
            raise NothingSuch(f"There is no operation point {point!r}; the points are: {names}.")
    return [
        Answer(
            subject.label,
            name,
            each.name if each else None,
            design.subjects.ratio_set,
            design.measure(name, subject, each),
        )
        for each in points
    ]


def _found(design: Design, target: str) -> tuple[Subject, str]:
    named = {
        label: subject
        for subjects in design.subjects.by_kind.values()
        for subject in subjects
        for label in (subject.label, f"operation.{subject.name}")
        if label == subject.label or subject.kind == "point"
    }
    labels = [label for label in named if target.startswith(f"{label}.")]
    if not labels:
        raise NothingSuch(f"There is no part for {target!r}; the parts are: {', '.join(named)}.")
    label = max(labels, key=len)
    subject, name = named[label], target[len(label) + 1 :]
    if (subject.kind, name) not in measures() and stated_unit(subject.kind, name) is None:
        known = sorted(each for kind, each in measures() if kind == subject.kind)
        near = get_close_matches(name, known, n=1)
        hint = f"Near it: {near[0]}." if near else f"Its measures are: {', '.join(known)}."
        raise NothingSuch(f"{label} has no measure {name!r}. {hint}")
    return subject, name
