"""What a damper states against its kind: a field that its kind has no use for is refused."""

from collections.abc import Iterator

from checker.spec.document import Document
from checker.spec.fields import NONE, UNKNOWN
from checker.spec.problem import Problem

_ELASTOMER = ("hot_stiffness", "cold_stiffness", "hot_relative_damping")
_VISCOUS = ("damping_coefficient", "hot_damping_coefficient", "cold_damping_coefficient")
_STRANGE = {
    "elastomer": _VISCOUS,
    "steel spring": (*_ELASTOMER, *_VISCOUS),
    "viscous": (*_ELASTOMER, "relative_damping"),
}
"""Fields that the survey would pass over in silence, by kind of damper."""


def damper_problems(document: Document) -> Iterator[Problem]:
    """What the kind of a damper and its other fields say against each other.

    Args:
        document: the spec as written; a kind that cannot be read is passed over.
    """
    damper = document.data.get("damper")
    kind = damper.get("kind") if isinstance(damper, dict) else None
    if not isinstance(damper, dict) or not isinstance(kind, str) or kind not in _STRANGE:
        return
    for field in _STRANGE[kind]:
        if damper.get(field, UNKNOWN) not in (None, UNKNOWN):
            yield document.problem(
                ("damper", field),
                f"a damper of kind '{kind}' has no use for this",
                f"kind: {kind}",
                f"no {field}, or another kind",
                at_key=True,
            )
    rubber = damper.get("elastomer", UNKNOWN)
    if kind == "elastomer" and rubber == NONE:
        yield document.problem(
            ("damper", "elastomer"),
            "a damper of an elastomer must have one",
            repr(NONE),
            "the name of the elastomer, or another kind",
        )
    if kind == "steel spring" and rubber not in (None, NONE, UNKNOWN):
        yield document.problem(
            ("damper", "elastomer"),
            "a damper of steel springs has no elastomer",
            repr(rubber),
            f"{NONE}, or another kind",
        )
