"""Torsional vibration of inertias joined by springs as a tree: modes and forced response.

All inertias and stiffnesses are referred to the speed of one shaft, and all phases to it. The tree
floats freely, so its first mode is rotation as a whole. Damping is that of rubber and steel: a loss
per cycle that does not depend on the frequency, which makes each stiffness complex, C (1 + i ψ/2π).
A viscous joint adds i ω c to that.

numpy is imported where it is used: most commands need none of this.
"""

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from checker.mechanics.equation import OutOfRange, equation

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Real = NDArray[np.float64]
    Complex = NDArray[np.complex128]

RIGID = math.inf
_ANGLES_A_PERIOD, _LEAST_ANGLES = 16, 96
_BLOCK = 200
"""Rows summed at once: they stay in the cache, and a product of matrices as small as this is not
spread over threads, which would cost more than it saves."""


@dataclass(frozen=True, slots=True)
class Tree:
    """Inertias, each joined to one that stands before it.

    Attributes:
        inertia: J of each node [kg m²].
        parent: index of the node that each is joined to, lower than its own; -1 for the first.
        stiffness: C of that joint [N m/rad]; ``RIGID`` where it does not twist.
        damping: ψ of that joint, loss per cycle over elastic energy.
        viscous: c of that joint [N m s/rad]; left out where no joint has any.
    """

    inertia: tuple[float, ...]
    parent: tuple[int, ...]
    stiffness: tuple[float, ...]
    damping: tuple[float, ...]
    viscous: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        if self.parent[0] != -1 or any(
            not 0 <= parent < node for node, parent in enumerate(self.parent) if node
        ):
            raise OutOfRange("parent: each node must be joined to one that stands before it")
        if any(each < 0.0 for each in self.inertia) or sum(self.inertia) <= 0.0:
            raise OutOfRange("inertia must not be negative, and not zero as a whole")
        if any(each <= 0.0 for each in self.stiffness[1:]):
            raise OutOfRange("stiffness must be above zero")

    def part(self, kept: tuple[int, ...]) -> "Tree":
        """Some of its nodes as a tree of their own.

        Args:
            kept: the nodes, in order, each joined to one that is kept.
        """
        at = {node: index for index, node in enumerate(kept)}
        return Tree(
            tuple(self.inertia[node] for node in kept),
            tuple(at.get(self.parent[node], -1) for node in kept),
            tuple(self.stiffness[node] for node in kept),
            tuple(self.damping[node] for node in kept),
            tuple(self.viscous[node] for node in kept) if self.viscous else (),
        )


@dataclass(frozen=True)
class Modes:
    """Free vibration of a tree, the lowest first; the first is rotation as a whole.

    Attributes:
        frequency: of each mode [Hz].
        shape: twist angle of each node in each mode, the largest being 1: [mode, node].
        energy: share of each joint in the elastic energy of each mode: [mode, node].
    """

    frequency: "Real"
    shape: "Real"
    energy: "Real"


@equation(
    "f_n",
    "det(K − (2 π f_n)² J) = 0",
    unit="Hz",
    source="Rao, Mechanical Vibrations, free vibration of many degrees of freedom (from memory)",
    tree="J, K []",
)
def natural_modes(tree: Tree) -> Modes:
    """Natural frequencies and mode shapes of a tree that floats freely.

    The symmetric problem J^(-1/2) K J^(-1/2) y = ω² y is solved, after rigid joints and nodes
    without inertia are taken out.

    Source: Rao, Mechanical Vibrations (from memory).
    """
    import numpy as np

    member, inertia, stiffness = _assembled(tree)
    root = 1.0 / np.sqrt(inertia)
    squares, vectors = np.linalg.eigh(root[:, None] * stiffness * root[None, :])
    squares[0] = 0.0
    squares = np.maximum(squares, 0.0)
    shape = (root[:, None] * vectors).T[:, member]
    shape = shape / np.abs(shape).max(axis=1, keepdims=True)
    energy = np.zeros_like(shape)
    for node in range(1, len(tree.parent)):
        if math.isfinite(tree.stiffness[node]):
            twist = shape[:, node] - shape[:, tree.parent[node]]
            energy[:, node] = tree.stiffness[node] * twist**2
    total = energy.sum(axis=1, keepdims=True)
    energy = np.divide(energy, total, out=np.zeros_like(energy), where=total > 0.0)
    energy[0] = 0.0
    return Modes(np.sqrt(squares) / math.tau, shape, energy)


def _assembled(tree: Tree) -> tuple[list[int], "Real", "Real"]:
    """Member of each node, inertia of each member, and the stiffness matrix between members.

    Rigidly joined nodes make one member. A member must have inertia.
    """
    import numpy as np

    member: list[int] = []
    count = 0
    for node, parent in enumerate(tree.parent):
        if node and math.isinf(tree.stiffness[node]):
            member.append(member[parent])
        else:
            member.append(count)
            count += 1
    inertia = np.zeros(count)
    np.add.at(inertia, member, tree.inertia)
    if np.any(inertia <= 0.0):
        raise OutOfRange("inertia: a node between two springs has none")
    matrix = np.zeros((count, count))
    for node, parent in enumerate(tree.parent):
        if node and math.isfinite(tree.stiffness[node]):
            near, far, spring = member[parent], member[node], tree.stiffness[node]
            matrix[near, near] += spring
            matrix[far, far] += spring
            matrix[near, far] -= spring
            matrix[far, near] -= spring
    return member, inertia, matrix


@equation(
    "T_a",
    "(K (1 + i ψ/2π) + i ω c − ω² J) φ = T",
    unit="N m",
    source="complex stiffness as in DIN 740-2 for two masses (from memory), derived for a tree",
    tree="J, K, ψ, c []",
    frequency="f [Hz]",
    torque="T [N m]",
)
def forced_response(
    tree: Tree, frequency: "Real", torque: dict[int, "Complex"]
) -> tuple["Complex", "Complex"]:
    """Steady response of a tree to harmonic torques, at many frequencies at once.

    The tree is folded from its ends to its first node, where the angle follows, and unfolded
    again: as exact as solving the whole matrix, and one step over all frequencies for each node.

    Source: complex stiffness, derived.

    Args:
        tree: inertias and springs.
        frequency: f of each excitation [Hz], above zero.
        torque: complex amplitude on a node at each frequency [N m], by node: [..., frequency].

    Returns:
        Complex torque that each joint passes on from its parent [N m], and angle of each node
        [rad], both as [node, ..., frequency].
    """
    import numpy as np

    count = len(tree.parent)
    square = -((math.tau * np.asarray(frequency)) ** 2)
    shape = np.broadcast_shapes(square.shape, *(np.shape(each) for each in torque.values()))
    load = np.zeros((count, *shape), dtype=complex)
    for node, amplitude in torque.items():
        load[node] += amplitude
    dynamic = np.multiply.outer(np.asarray(tree.inertia), square).astype(complex)
    compliance: list[Complex | complex] = [
        0.0 if math.isinf(spring) else 1.0 / (spring * complex(1.0, psi / math.tau))
        for spring, psi in zip(tree.stiffness, tree.damping, strict=True)
    ]
    turning = 1j * math.tau * np.asarray(frequency)
    for node, viscous in enumerate(tree.viscous):
        if viscous and math.isfinite(tree.stiffness[node]):
            spring = tree.stiffness[node] * complex(1.0, tree.damping[node] / math.tau)
            compliance[node] = np.asarray(1.0 / (spring + turning * viscous), dtype=complex)
    passing: list[Complex | float] = [1.0] * count
    for node in range(count - 1, 0, -1):
        parent = tree.parent[node]
        if math.isfinite(tree.stiffness[node]):
            through = 1.0 / (1.0 + compliance[node] * dynamic[node])
            passing[node] = through
            dynamic[parent] += dynamic[node] * through
            load[parent] += load[node] * through
        else:
            dynamic[parent] += dynamic[node]
            load[parent] += load[node]
    angle = np.empty_like(load)
    passed = np.zeros_like(load)
    angle[0] = load[0] / dynamic[0]
    for node in range(1, count):
        turned = angle[tree.parent[node]] + compliance[node] * load[node]
        angle[node] = turned * passing[node]
        passed[node] = dynamic[node] * angle[node] - load[node]
    return passed, angle


@equation(
    "T(θ)",
    "T(θ) = Σ Re(T_h exp(i h θ))",
    unit="N m",
    source="Fourier sum over one working cycle, derived",
    amplitude="T_h [N m]",
    orders="h [1]",
)
def swing(amplitude: "Complex", orders: "Real") -> tuple["Real", "Real"]:
    """Highest and lowest value of a sum of orders over one working cycle.

    Sixteen angles to each period of the highest order meet its crest within 2 %, those of lower
    orders closer. Half a cycle on, every even multiple of the lowest order is as it was and every
    odd one has turned its sign: half the angles show both halves of the cycle.

    Source: Fourier sum, derived. Valid for orders that repeat over two turns.

    Args:
        amplitude: complex amplitude of each order [N m]: [..., order].
        orders: order of each per turn.
    """
    import numpy as np

    rows = amplitude.reshape(-1, amplitude.shape[-1])
    high, low = np.empty((2, len(rows)))
    odd, waves = _half_cycle(orders)
    even_waves, odd_waves = waves[:, ~odd], waves[:, odd]
    even_rows, odd_rows = (np.ascontiguousarray(rows[:, each]) for each in (~odd, odd))
    for start in range(0, len(rows), _BLOCK):
        block = slice(start, start + _BLOCK)
        same = _added(even_waves, even_rows[block])
        turned = np.abs(_added(odd_waves, odd_rows[block]))
        high[block] = (same + turned).max(axis=0)
        low[block] = (same - turned).min(axis=0)
    shape = amplitude.shape[:-1]
    return high.reshape(shape), low.reshape(shape)


def over_cycle(amplitude: "Complex", orders: "Real | tuple[float, ...]") -> "Real":
    """Sum of all orders over a cycle at the angles of ``swing``: [..., angle].

    The cycle is two turns, or one where every order is whole.

    Args:
        amplitude: complex amplitude of each order: [..., order].
        orders: order of each per turn.
    """
    import numpy as np

    odd, waves = _half_cycle(orders)
    rows = amplitude.reshape(-1, amplitude.shape[-1])
    same, turned = (
        _added(waves[:, each], np.ascontiguousarray(rows[:, each])) for each in (~odd, odd)
    )
    found = np.concatenate([same + turned, same - turned]).T
    return np.asarray(found.reshape(*amplitude.shape[:-1], -1))


def _half_cycle(orders: "Real | tuple[float, ...]") -> tuple["NDArray[np.bool_]", "Real"]:
    """Which orders are odd multiples of half an order or, where all are whole, of the first one.

    And the cosine and the negative sine of each over half a cycle: [angle, order, part].
    """
    import numpy as np

    halves = np.rint(2.0 * np.asarray(orders)).astype(int)
    multiple = halves if np.any(halves % 2) else halves // 2
    count = max(_LEAST_ANGLES, _ANGLES_A_PERIOD * int(multiple.max()))
    angle = np.multiply.outer(np.arange(count // 2) * (math.tau / count), multiple)
    return multiple % 2 == 1, np.stack([np.cos(angle), -np.sin(angle)], axis=-1)


def _added(waves: "Real", amplitude: "Complex") -> "Real":
    """Sum of orders: [angle, row]."""
    real: Real = amplitude.view(float)
    return waves.reshape(len(waves), -1) @ real.T
