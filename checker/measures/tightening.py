"""Measures of how bolts get the preload that they are counted on with."""

from checker.known import Value, compute
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.mechanics import joint as formulas
from checker.mechanics import kinematics
from checker.spec.subject import Subject


@measure("joint", "1", "tightening torque over what the preload asks", at="tightening_torque")
def tightening_ratio(design: Design, joint: Subject) -> Value:
    """Stated torque on the wrench over K d F."""
    return _ratio(joint, "")


@measure("housing", "1", "tightening torque over what the preload asks", at="mounting")
def mounting_tightening_ratio(design: Design, case: Subject) -> Value:
    """Stated torque on the wrench over K d F of a case bolt."""
    return _ratio(case, "mounting.")


def _ratio(part: Subject, inside: str) -> Value:
    asked = compute(
        formulas.tightening_torque,
        part.given(f"{inside}nut_factor", "K"),
        part.given(f"{inside}bolt_diameter", "d"),
        part.given(f"{inside}preload", "F"),
    )
    return compute(kinematics.quotient, part.given(f"{inside}tightening_torque", "T"), asked)
