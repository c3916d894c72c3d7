"""Measures of what is watched: which oil system the drive has to watch."""

from checker.known import Known, Unknown, Value
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.spec.subject import Subject


@measure("monitoring", "", "whether the drive has oil of its own")
def has_own_oil(design: Design, monitoring: Subject) -> Value:
    """Whether the drive does not share its oil with the engine."""
    shared = design.subjects.the("lubrication").given("shared_with_engine")
    if isinstance(shared, Unknown):
        return shared
    return Known(not shared.value, "", "own oil", inputs=(shared,))


@measure("monitoring", "", "how the meshes are oiled")
def oil_system(design: Design, monitoring: Subject) -> Value:
    """splash, drip, or by a pump."""
    return design.subjects.the("lubrication").given("system")
