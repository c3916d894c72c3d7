"""What the meshes and the propeller put on the shafts."""

from collections.abc import Iterator

from checker.known import Known, Unknown, Value, compute
from checker.mechanics import tooth_forces
from checker.spec.subject import Subject, Subjects
from checker.train.graph import Train
from checker.train.motion import Motion
from checker.train.pair import Pair, Wheel

_DRIVEN, _DRIVING = 1, -1


class Loads:
    """Tooth forces of each mesh and thrust of each shaft; bearing reactions will follow here.

    A member that turns freely on a shaft passes its axial forces to that shaft.
    """

    def __init__(
        self, subjects: Subjects, train: Train, motion: Motion, pairs: dict[str, Pair]
    ) -> None:
        self._subjects = subjects
        self._train = train
        self._motion = motion
        self._pairs = pairs
        self._meshes: dict[str, list[tuple[Pair, Wheel]]] = {}
        self._tangential: dict[tuple[str, str], Value] = {}
        self._axial: dict[tuple[str, str, str], Value] = {}

    def tangential(self, mesh: Subject, point: Subject) -> Value:
        """F_tw, tangential force at the working circle [N]."""
        key = (mesh.name, point.name)
        if key not in self._tangential:
            pair = self._pairs[mesh.name]
            torque = self._motion.torque(self._shaft(pair.driver), point)
            self._tangential[key] = compute(
                tooth_forces.tangential_force, torque, pair.working_diameter(pair.driver)
            )
        return self._tangential[key]

    def radial(self, mesh: Subject, point: Subject) -> Value:
        """F_r, force that parts the shafts [N]."""
        pair = self._pairs[mesh.name]
        return compute(
            tooth_forces.radial_force, self.tangential(mesh, point), pair.working_pressure_angle()
        )

    def axial(self, mesh: Subject, wheel: Wheel, point: Subject) -> Value:
        """F_x on one of the two gears [N], positive towards the propeller."""
        key = (mesh.name, wheel.subject.name, point.name)
        if key not in self._axial:
            self._axial[key] = self._axial_force(mesh, wheel, point)
        return self._axial[key]

    def _axial_force(self, mesh: Subject, wheel: Wheel, point: Subject) -> Value:
        pair = self._pairs[mesh.name]
        shaft = self._shaft(wheel)
        torque = self._motion.torque(self._shaft(pair.driver), point)
        if isinstance(torque, Unknown):
            return torque
        role = _DRIVEN if wheel is pair.driven else _DRIVING
        if torque.number < 0.0:
            role = -role
        return compute(
            tooth_forces.axial_force,
            self.tangential(mesh, point),
            pair.working_helix_angle(wheel),
            wheel.hand,
            self._motion.sense(shaft),
            Known(role, "1", "role", origin=_ROLES[role]),
        )

    def meshes_on(self, shaft: str) -> list[tuple[Pair, Wheel]]:
        """Every mesh that loads a shaft axially, with the gear on it or on a member it carries."""
        if shaft not in self._meshes:
            self._meshes[shaft] = [
                (pair, wheel)
                for pair in self._pairs.values()
                for wheel in (pair.driver, pair.driven)
                if shaft in (self._shaft(wheel), self._carrier(wheel))
            ]
        return self._meshes[shaft]

    def gear_thrusts(self, shaft: str, point: Subject) -> Iterator[tuple[Wheel, Value]]:
        """The axial force of every such mesh on a shaft [N], with the gear."""
        for pair, wheel in self.meshes_on(shaft):
            yield wheel, self.axial(pair.subject, wheel, point)

    def propeller_thrust(self, shaft: str, point: Subject) -> Value | None:
        """Propeller thrust on its shaft [N], positive towards the propeller; ``None`` elsewhere."""
        if shaft != self._train.last:
            return None
        return compute(
            tooth_forces.thrust_on_shaft,
            point.given("thrust", "F_p"),
            self._subjects.the("drive").given("installation"),
        )

    def net_thrust(self, shaft: str, point: Subject) -> Value:
        """Net axial force on a shaft [N], positive towards the propeller."""
        parts = [thrust for _, thrust in self.gear_thrusts(shaft, point)]
        propeller = self.propeller_thrust(shaft, point)
        if propeller is not None:
            parts.append(propeller)
        if not parts:
            return Known(0.0, "N", "F_x", origin="neither gear nor propeller sits on this shaft")
        total = parts[0]
        for part in parts[1:]:
            total = compute(tooth_forces.axial_sum, total, part)
        return total

    def _carrier(self, wheel: Wheel) -> str | None:
        """Shaft on which the member of a gear turns freely, if it does."""
        member = self._subjects.the("shaft", self._shaft(wheel))
        carrier: str | None = member.raw("turns_freely_on")
        return carrier

    @staticmethod
    def _shaft(wheel: Wheel) -> str:
        shaft: str = wheel.subject.raw("shaft")
        return shaft


_ROLES: dict[int, str] = {
    _DRIVEN: "its mate drives this gear",
    _DRIVING: "this gear drives its mate",
}
