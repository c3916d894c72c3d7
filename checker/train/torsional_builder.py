"""Makes the torsional model of a drive from its spec, or names all that is missing for it."""

from dataclasses import dataclass, field

from checker.known import Known, Unknown, Value, compute, merged
from checker.mechanics import kinematics
from checker.mechanics import torsional_parts as parts
from checker.spec.subject import Subject, Subjects
from checker.train import torsional_values as values
from checker.train.damper_states import NO_DAMPER, DamperStates, damper_states
from checker.train.graph import Link, Train
from checker.train.motion import Motion
from checker.train.pair import Pair, Wheel
from checker.train.torsional_model import (
    BLADE_DAMPING,
    STEEL_DAMPING,
    JointKind,
    Node,
    TorsionalModel,
)

_UNIT_SPEED = Known(1.0, "rad/s", "ω", origin="any speed: the ratio does not depend on it")
_CRANK = Known(1.0, "1", "i", origin="the crankshaft itself")
_HALF = Known(0.5, "1", "q", origin="half of a shaft's inertia at each end")


def build_model(
    subjects: Subjects, train: Train, motion: Motion, pairs: dict[str, Pair], clutch_torque: Value
) -> TorsionalModel | Unknown:
    """Make the torsional model of a drive, or name everything that is missing for it.

    Args:
        subjects: the parts.
        train: who turns whom.
        motion: speeds, for the ratios.
        pairs: geometry of each mesh.
        clutch_torque: mean torque at which the clutch is squeezed.
    """
    return _Builder(subjects, train, motion, pairs, clutch_torque).model()


@dataclass(frozen=True, slots=True)
class _Joint:
    """How a node is joined to the one before it.

    Attributes:
        kind: kind of joint.
        name: name of the part that makes it.
        stiffness: on its driving side, ``None`` where it is rigid.
        ratio: crankshaft speed over that of its driving side.
        far_side: inertias that it brings to the node it turns.
        gear: the gear by which its torque enters a shaft.
    """

    kind: JointKind
    name: str
    stiffness: Value | None
    ratio: Value
    far_side: list[Value] = field(default_factory=list)
    gear: str | None = None


class _Builder:
    """Walks from the engine through the train and collects nodes, or what is missing."""

    def __init__(
        self,
        subjects: Subjects,
        train: Train,
        motion: Motion,
        pairs: dict[str, Pair],
        clutch_torque: Value,
    ) -> None:
        self._subjects = subjects
        self._train = train
        self._motion = motion
        self._pairs = pairs
        self._clutch_torque = clutch_torque
        self._nodes: list[Node] = []
        self._unknown: list[Unknown] = []
        self._throws: dict[int, tuple[int, ...]] = {}
        self._propeller = 0
        self._ratios: dict[str, Known] = {}
        self._path = set(train.path_shafts)

    def model(self) -> TorsionalModel | Unknown:
        """The model, or everything that is missing."""
        flange = self._engine()
        self._shaft(self._train.first, flange, _Joint("flange", "flange", None, _CRANK))
        damper = self._states()
        if self._unknown:
            return merged(self._unknown)
        blades = any(node.kind == "blades" for node in self._nodes)
        stated = self._subjects.the("propeller").given("blade_damping", "ψ_blades")
        damping = stated if isinstance(stated, Known) else BLADE_DAMPING
        inputs = (
            *(node.inertia for node in self._nodes),
            *(node.stiffness for node in self._nodes if node.stiffness is not None),
            *damper.inputs,
            STEEL_DAMPING,
            *((damping,) if blades else ()),
        )
        return TorsionalModel(
            tuple(self._nodes),
            self._throws,
            damper.states,
            damper.running,
            self._propeller,
            damping,
            self._ratios,
            inputs,
        )

    def _known(self, value: Value) -> Known:
        """The value, or one in its place while what is missing is noted."""
        if isinstance(value, Known):
            return value
        self._unknown.append(value)
        return _CRANK

    def _add(
        self,
        words: str,
        inertia: Value,
        parent: int,
        joint: _Joint,
        *,
        ratio: Value = _CRANK,
        on_path: bool = True,
        shaft: str = "",
    ) -> int:
        """Add a node with its inertia at its own speed; returns its index."""
        driving = self._known(joint.ratio)
        spring = None
        if joint.stiffness is not None:
            spring = self._known(compute(parts.reflected_stiffness, joint.stiffness, driving))
        reduced = self._known(compute(parts.reflected_inertia, inertia, self._known(ratio)))
        self._nodes.append(
            Node(words, shaft, reduced, parent, joint.kind, joint.name, spring, driving, on_path)
        )
        return len(self._nodes) - 1

    def _engine(self) -> int:
        """Nodes of the engine; returns that of its flange."""
        engine = self._subjects.the("engine")
        inertia = engine.given("inertia", "J_e")
        if engine.raw("crankshaft") is not None:
            return self._crankshaft(engine, inertia)
        node = self._add("the engine", inertia, -1, _Joint("crank", "crank", None, _CRANK))
        self._throws[node] = tuple(range(int(engine.raw("cylinders") or 0)))
        return node

    def _crankshaft(self, engine: Subject, inertia: Value) -> int:
        """A node for each throw, the farthest from the drive first, and one for the flange."""
        each = engine.given("crankshaft.throw_inertia", "J_t")
        spring = engine.given("crankshaft.throw_stiffness", "C_t")
        count = self._known(engine.given("cylinders", "z"))
        together = self._known(
            engine.given("crankshaft.cylinders_per_throw", "cylinders per throw")
        )
        order = engine.raw("crankshaft.firing_order") or []
        if sorted(order, key=str) != sorted(range(1, int(count.number) + 1), key=str):
            place = engine.place("crankshaft.firing_order")
            self._unknown.append(Unknown((place,), "the firing order names each cylinder once"))
            order = list(range(1, int(count.number) + 1))
        node, rest = -1, inertia
        for first in range(0, int(count.number), int(together.number)):
            joint = _Joint("crank", "crank", spring, _CRANK)
            node = self._add(f"throw {len(self._nodes) + 1}", each, node, joint)
            cylinders = range(first + 1, first + int(together.number) + 1)
            self._throws[node] = tuple(
                order.index(number) for number in cylinders if number in order
            )
            rest = compute(parts.rest_of_inertia, rest, each)
        output = engine.given("crankshaft.output_stiffness", "C_o")
        return self._add("the crank flange", rest, node, _Joint("crank", "crank", output, _CRANK))

    def _ratio(self, shaft: str) -> Value:
        """Crankshaft speed over the speed of a shaft."""
        speed = self._motion.speed_passed_on(self._motion.speed_behind_engine(_UNIT_SPEED), shaft)
        return compute(kinematics.speed_ratio, _UNIT_SPEED, speed)

    def _shaft(self, name: str, parent: int, joint: _Joint) -> None:
        """Add a shaft that a joint turns, and all that it turns in its turn.

        A shaft whose torque leaves where it enters, such as an idler, is one node; any other has
        one at each end.
        """
        subject = self._subjects.the("shaft", name)
        own = self._known(self._ratio(name))
        self._ratios[name] = own
        leaving = [each for each in self._train.fed_by.values() if each.driver == name]
        beyond = [
            each for each in leaving if joint.gear is None or self._driver_gear(each) != joint.gear
        ]
        twists = bool(beyond) or name == self._train.last
        near, far = self._gear_inertias(subject, {self._driver_gear(each) for each in beyond})
        body = values.shaft_inertia(subject)
        part = compute(parts.share_of_inertia, body, _HALF) if twists else body
        on_path = name in self._path
        entry = self._add(
            f"shaft {name}",
            values.summed([part, *near, *joint.far_side]),
            parent,
            joint,
            ratio=own,
            on_path=on_path,
            shaft=name,
        )
        end = entry
        if twists:
            carries = name == self._train.last or any(each.driven in self._path for each in beyond)
            end = self._add(
                f"shaft {name}",
                values.summed([part, *far, *self._damper_side(beyond)]),
                entry,
                _Joint("shaft", name, values.shaft_stiffness(subject), own),
                ratio=own,
                on_path=on_path and carries,
                shaft=name,
            )
        for each in leaving:
            self._shaft(each.driven, end if each in beyond else entry, self._joint(each, own))
        if name == self._train.last:
            self._hub(end, own)

    def _joint(self, link: Link, ratio: Known) -> _Joint:
        """The joint that a link makes, on the side of the shaft that drives it."""
        if link.kind == "mesh":
            spring = values.mesh_spring(self._pairs[link.name])
            gear = self._subjects.spec.meshes[link.name].driven
            return _Joint("mesh", link.name, spring, ratio, gear=gear)
        if link.kind == "damper":
            damper = self._subjects.the("damper")
            side = damper.given("inertia_propeller_side", "J_d2")
            return _Joint("damper", "damper", values.damper_stiffness(damper), ratio, [side])
        if link.kind == "clutch":
            spring = values.clutch_spring(self._subjects.the("clutch"), self._clutch_torque)
            return _Joint("clutch", "clutch", spring, ratio)
        return _Joint("joint", link.name, None, ratio)

    def _damper_side(self, links: list[Link]) -> list[Value]:
        """Inertia of the damper's engine side, where one of the links is the damper."""
        damper = self._subjects.the("damper")
        side = damper.given("inertia_engine_side", "J_d1")
        return [side for link in links if link.kind == "damper"]

    def _hub(self, parent: int, ratio: Known) -> None:
        """The propeller: rigid, or hub and blades where the blade mode is stated."""
        propeller = self._subjects.the("propeller")
        inertia = values.propeller_inertia(propeller)
        share = propeller.given("blade_inertia_share", "q")
        joint = _Joint("joint", "propeller", None, ratio)
        if isinstance(share, Unknown):
            self._propeller = self._add("the propeller", inertia, parent, joint, ratio=ratio)
            return
        rest = compute(parts.share_of_inertia, inertia, compute(parts.remainder, share))
        self._propeller = self._add("the hub", rest, parent, joint, ratio=ratio)
        blades = compute(parts.share_of_inertia, inertia, share)
        frequency = propeller.given("first_blade_frequency", "f_b")
        spring = compute(parts.blade_stiffness, blades, frequency)
        self._add(
            "the blades",
            blades,
            self._propeller,
            _Joint("blades", "blades", spring, ratio),
            ratio=ratio,
            on_path=False,
        )

    def _driver_gear(self, link: Link) -> str | None:
        """The gear by which torque leaves a shaft through a mesh."""
        return self._subjects.spec.meshes[link.name].driver if link.kind == "mesh" else None

    def _gear_inertias(
        self, shaft: Subject, leaving: set[str | None]
    ) -> tuple[list[Value], list[Value]]:
        """Inertias of the gears of a shaft: of those at its entry, and of those it turns on by."""
        wheels: dict[str, Wheel] = {
            wheel.subject.name: wheel
            for pair in self._pairs.values()
            for wheel in (pair.driver, pair.driven)
            if wheel.subject.raw("shaft") == shaft.name
        }
        near = [
            values.gear_inertia(wheel, shaft)
            for name, wheel in wheels.items()
            if name not in leaving
        ]
        far = [
            values.gear_inertia(wheel, shaft) for name, wheel in wheels.items() if name in leaving
        ]
        return near, far

    def _states(self) -> DamperStates:
        """The damper from hot to cold; one state that says nothing where there is none."""
        if self._subjects.presence("damper") is None:
            self._unknown.append(Unknown((("damper",),)))
        if not any(node.kind == "damper" for node in self._nodes):
            return NO_DAMPER
        found = damper_states(self._subjects)
        if isinstance(found, DamperStates):
            return found
        self._unknown.append(found)
        return NO_DAMPER
