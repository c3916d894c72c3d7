"""Torque of the blades as they pass wing or cowling."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from checker.known import Known, Unknown, Value, assumed, compute
from checker.mechanics import excitation as formulas
from checker.spec.subject import Subjects

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_SHARE = assumed(
    0.1,
    "1",
    "q_b",
    "blade passing swings the torque of the propeller by a tenth of its mean, more than a "
    "propeller in free air ahead of a cowling or a wing is known for (from memory)",
)


@dataclass(frozen=True)
class BladeExcitation:
    """How strongly the blades twist the hub as they pass.

    Attributes:
        order: blade-passing order per turn of the crankshaft.
        share: alternating over mean torque of the propeller.
    """

    order: Known
    share: Known

    def torque(self, mean: "NDArray[np.float64]") -> "NDArray[np.float64]":
        """Alternating torque on the hub [N m]; its phase is not known.

        Args:
            mean: mean torque of the propeller as the crankshaft sees it [N m].
        """
        return self.share.number * abs(mean)


def blade_excitation(subjects: Subjects, ratio: Value) -> BladeExcitation | Unknown:
    """The excitation by the blades, or everything that is missing for it.

    Args:
        subjects: the parts.
        ratio: crankshaft speed over propeller speed.
    """
    propeller = subjects.the("propeller")
    order = compute(formulas.blade_order, propeller.given("blades", "z_b"), ratio)
    if isinstance(order, Unknown):
        return order
    share = propeller.given("blade_passing_torque", "q_b")
    return BladeExcitation(order, share if isinstance(share, Known) else _SHARE)
