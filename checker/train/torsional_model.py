"""The torsional model of a drive: inertias and springs from crankshaft to propeller, as a tree."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from checker.known import Known, assumed
from checker.mechanics import torsion
from checker.mechanics import torsional_parts as parts

JointKind = Literal["crank", "flange", "shaft", "mesh", "damper", "clutch", "joint", "blades"]
Movable = Literal["damper", "engine", "flywheel", "propeller"]
_RATIO = 1.7
"""Of one damping to the next: whichever makes the most heat, one of them makes 96 % of it."""
STEEL_DAMPING = assumed(
    0.05, "1", "ψ_steel", "loss per cycle in steel shafts, teeth and joints (from memory)"
)
BLADE_DAMPING = assumed(
    0.05,
    "1",
    "ψ_blades",
    "loss per cycle in blades that swing in their plane, where the air damps little (from memory)",
)


@dataclass(frozen=True, slots=True)
class Node:
    """An inertia and the joint by which what stands before it turns it.

    Attributes:
        words: what it is.
        shaft: the shaft it belongs to; empty for engine and propeller.
        inertia: as the crankshaft sees it [kg m²].
        parent: index of the node before it; -1 for the first.
        kind: kind of the joint to that node.
        name: name of the part that makes the joint: shaft, mesh, or the kind itself.
        stiffness: of the joint as the crankshaft sees it [N m/rad]; ``None`` where it is rigid.
        ratio: crankshaft speed over the speed of the driving side of the joint.
        on_path: whether the mean torque passes the joint.
    """

    words: str
    shaft: str
    inertia: Known
    parent: int
    kind: JointKind
    name: str
    stiffness: Known | None
    ratio: Known
    on_path: bool

    @property
    def joint_words(self) -> str:
        """The joint in words."""
        match self.kind:
            case "shaft":
                return f"shaft {self.name}"
            case "mesh":
                return f"mesh {self.name}"
            case "crank":
                return "the crankshaft"
            case "blades":
                return "the blades"
        return f"the {self.kind}"


@dataclass(frozen=True, slots=True)
class State:
    """The damper at one end of its stiffness, or in between.

    Attributes:
        words: hot, running, cold.
        stiffness: of the damper [N m/rad].
        damping: its least relative damping, with which it swings the most.
        most_damping: its largest, with which it may grow hotter.
        viscous: its viscous damping coefficient [N m s/rad]; zero where it has none.
        most_viscous: its largest, with which it may grow hotter.
    """

    words: str
    stiffness: float
    damping: float
    most_damping: float
    viscous: float = 0.0
    most_viscous: float = 0.0

    def damped(self) -> Iterator["State"]:
        """The state with its least damping, its largest, and in between in even ratios."""
        most = self.most_viscous if self.viscous else self.most_damping
        least = self.viscous or self.damping
        steps = math.ceil(math.log(most / least) / math.log(_RATIO)) if most > least > 0.0 else 0
        for step in range(steps + 1):
            more = (most / least) ** (step / steps) if steps else 1.0
            yield replace(self, damping=self.damping * more, viscous=self.viscous * more)


@dataclass(frozen=True)
class TorsionalModel:
    """Inertias and springs of a drive.

    Attributes:
        nodes: the engine first, each after the one that turns it.
        throws: nodes on which cylinders act, with the cylinders counted in firing order; one node
            with all of them where the engine is one inertia.
        states: damper from hot and soft to cold and stiff; one where there is no damper.
        running: index of the state as stated.
        propeller: index of the node of the hub.
        blade_damping: relative damping of the blades, where they swing.
        ratios: crankshaft speed over the speed of each shaft.
        inputs: everything it was made of.
    """

    nodes: tuple[Node, ...]
    throws: dict[int, tuple[int, ...]]
    states: tuple[State, ...]
    running: int
    propeller: int
    blade_damping: Known
    ratios: dict[str, Known]
    inputs: tuple[Known, ...]

    def joints_of(self, shaft: str) -> list[int]:
        """Nodes whose joints a shaft takes part in: the one that turns it, its own, and onward."""
        own = [index for index, node in enumerate(self.nodes) if node.shaft == shaft]
        return [
            index
            for index, node in enumerate(self.nodes)
            if index and (index in own or node.parent in own)
        ]

    def behind(self, joint: int) -> frozenset[int]:
        """Nodes that turn by way of a joint."""
        found = {joint}
        for index, node in enumerate(self.nodes):
            if node.parent in found:
                found.add(index)
        return frozenset(found)

    def joint(self, kind: JointKind, name: str = "") -> int | None:
        """Index of the node that such a joint turns."""
        for index, node in enumerate(self.nodes):
            if index and node.kind == kind and node.name == (name or kind):
                return index
        return None

    def tree(self, state: State, kept: tuple[int, ...] | None = None) -> torsion.Tree:
        """Numbers of the model in a state.

        Args:
            state: the damper's.
            kept: the nodes that are there, each behind one that is kept; all where left out.
        """
        damper = self.joint("damper")
        stiffness, damping = [torsion.RIGID], [0.0]
        for index, node in enumerate(self.nodes[1:], 1):
            if index == damper:
                reduced = parts.reflected_stiffness(state.stiffness, node.ratio.number)
                stiffness.append(reduced)
                damping.append(state.damping)
            else:
                stiffness.append(node.stiffness.number if node.stiffness else torsion.RIGID)
                own = self.blade_damping if node.kind == "blades" else STEEL_DAMPING
                damping.append(own.number)
        inertia = tuple(node.inertia.number for node in self.nodes)
        parent = tuple(node.parent for node in self.nodes)
        viscous: tuple[float, ...] = ()
        if damper is not None and state.viscous:
            reduced = parts.reflected_stiffness(state.viscous, self.nodes[damper].ratio.number)
            viscous = tuple(reduced if node == damper else 0.0 for node in range(len(parent)))
        whole = torsion.Tree(inertia, parent, tuple(stiffness), tuple(damping), viscous)
        return whole if kept is None else whole.part(kept)

    @property
    def bounding(self) -> tuple[int, ...]:
        """States at either end of the stiffness, whatever their damping, and the one as stated."""
        ends = (self.states[0].stiffness, self.states[-1].stiffness)
        return tuple(
            index
            for index, state in enumerate(self.states)
            if state.stiffness in ends or index == self.running
        )

    @property
    def flywheel(self) -> str:
        """The shaft at the flange of the engine; empty where there is none."""
        return next((node.shaft for node in self.nodes if node.kind == "flange"), "")

    def changed(self, part: Movable, factor: float) -> "TorsionalModel":
        """The model with the stiffness of the damper, or the inertia of a part, times a factor."""
        if part == "damper":
            states = (replace(each, stiffness=each.stiffness * factor) for each in self.states)
            return replace(self, states=tuple(states))
        match part:
            case "engine":
                moved = [node.kind == "crank" for node in self.nodes]
            case "flywheel":
                moved = [node.shaft == self.flywheel for node in self.nodes]
            case "propeller":
                hub = self.nodes[self.propeller]
                moved = [node is hub or node.kind == "blades" for node in self.nodes]
        nodes = (
            replace(node, inertia=_times(node.inertia, factor)) if here else node
            for node, here in zip(self.nodes, moved, strict=True)
        )
        return replace(self, nodes=tuple(nodes))

    def ahead_of_clutch(self) -> tuple[int, ...]:
        """Nodes that still turn with the engine when the clutch overruns."""
        clutch = self.joint("clutch")
        beyond = frozenset() if clutch is None else self.behind(clutch)
        return tuple(node for node in range(len(self.nodes)) if node not in beyond)


def _times(inertia: Known, factor: float) -> Known:
    return Known(
        inertia.number * factor, inertia.unit, inertia.symbol, origin="changed", inputs=(inertia,)
    )
