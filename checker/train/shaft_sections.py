"""The bending stiffness of a shaft along its sections, and what it rests on."""

from checker.known import Known, Unknown
from checker.mechanics import beam
from checker.mechanics.beam import Stretch
from checker.mechanics.equation import OutOfRange
from checker.spec.subject import Subject


def section_values(shaft: Subject) -> tuple[Known, ...]:
    """What the bending stiffness of a shaft rests on, for derivations."""
    place = shaft.place("sections")
    return tuple(
        Known(value.value, "m", symbol, path=(*place, index, field))
        for index, section in enumerate(shaft.raw("sections") or ())
        for field, symbol, value in (
            ("from", "x₁", section.from_),
            ("to", "x₂", section.to),
            ("outside", "D", section.outside),
            ("inside", "d", section.inside),
        )
        if value is not None
    )


def stretches_of(shaft: Subject) -> tuple[Stretch, ...] | Unknown:
    """E I along a shaft from its sections, gaps taken over by the section before."""
    sections = shaft.raw("sections")
    place = shaft.place("sections")
    if not sections:
        return Unknown((place,))
    missing = tuple(
        (*place, index, name)
        for index, section in enumerate(sections)
        for name, value in (
            ("from", section.from_),
            ("to", section.to),
            ("outside", section.outside),
            ("inside", section.inside),
        )
        if value is None
    )
    if missing:
        return Unknown(missing)
    ordered = sorted(sections, key=lambda section: float(section.from_.value))
    try:
        stiffness = [
            beam.bending_stiffness(s.outside.value, s.inside.value, beam.YOUNGS_MODULUS)
            for s in ordered
        ]
    except OutOfRange as outside:
        return Unknown(because=f"{shaft.label}: {outside}")
    ends = [*(s.from_.value for s in ordered[1:]), ordered[-1].to.value]
    return tuple(
        Stretch(s.from_.value, max(end, s.from_.value), each)
        for s, end, each in zip(ordered, ends, stiffness, strict=True)
    )
