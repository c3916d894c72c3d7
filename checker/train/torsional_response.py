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

    @property
    def swing(self) -> "Real":
        """Largest alternating torque over a cycle, up or down [N m]: [node, speed]."""
        import numpy as np

        return np.maximum(self.up, -self.down)

    def least(self, carried: "Real") -> "Real":
        """Least torque over a cycle, counted the way the mean points [N m]: [node, speed].

        Args:
            carried: mean torque of each joint [N m].
        """
        import numpy as np

        return np.asarray(abs(carried) + np.where(carried < 0.0, -self.up, self.down))


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

    def at(self, here: "slice | NDArray[np.bool_]") -> "Driving":
        """The same at some of the speeds."""
        return Driving(
            {node: each[:, here] for node, each in self.phased.items()},
            {node: each[here] for node, each in self.loose.items()},
        )
