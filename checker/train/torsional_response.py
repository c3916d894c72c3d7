"""What drives a torsional model, and how it answers: tables over node, speed and order."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]


@dataclass(frozen=True)
class Response:
    """Vibration of the drive in one state of the damper, as the crankshaft sees it.

    Attributes:
        torque: complex, of the joint ahead of each node, by the cylinder that is weak [N m]:
            [weak, node, speed, order].
        loose: size of the torque whose phase is not known, beside it [N m]: [node, speed, order].
        up: highest of the alternating torque over a cycle, whichever is weak [N m]: [node, speed].
        down: lowest of it, below zero.
    """

    torque: "Complex"
    loose: "Real"
    up: "Real"
    down: "Real"

    @property
    def amplitude(self) -> "Real":
        """Alternating torque of the joint ahead of each node [N m]: [weak, node, speed, order]."""
        return abs(self.torque) + self.loose


@dataclass(frozen=True)
class Driving:
    """Torque on the nodes of the model by order [N m], by node.

    Attributes:
        phased: what the cylinders do in step with each other, by the one that is weak:
            [weak, speed, order].
        loose: what keeps no known phase to it, blade passing and stated torque without a phase:
            [speed, order].
    """

    phased: "dict[int, Complex]"
    loose: "dict[int, Complex]"
