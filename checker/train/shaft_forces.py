"""What acts on a shaft besides its bearings: tooth forces, weights, the propeller."""

from dataclasses import dataclass
from functools import cached_property

from checker.known import Known, Unknown, Value, all_known, assumed, compute
from checker.mechanics import load_cases, shaft_loads, tooth, tooth_forces
from checker.mechanics.propeller import disc_speed_of_thrust
from checker.spec.subject import Subjects
from checker.train.graph import Train
from checker.train.load_cases import LoadCase, Torques
from checker.train.loads import Loads
from checker.train.motion import Motion
from checker.train.pair import Pair, Wheel

_DRIVEN, _DRIVING = 1, -1
_LIFT_SLOPE = "thin aerofoil theory; a finite blade that disturbs its own flow has less"
_EITHER = "state how far the thrust of a blade swings, or the yawed flow and the chord of a blade"
_ROLES = {_DRIVEN: "its mate drives this gear", _DRIVING: "this gear drives its mate"}


@dataclass(frozen=True)
class Force:
    """What acts across a shaft at one station.

    Attributes:
        station: where [m].
        right: force to the right [N].
        up: force upwards [N].
        couple_right: couple in the horizontal plane [N m].
        couple_up: couple in the vertical plane [N m].
        turning: force that turns with the shaft [N].
        yawed: force by yawed flow, in whatever plane that bends the propeller shaft [N].
        yawed_couple: couple of yawed flow in that plane [N m].
    """

    station: Known
    right: Known | None = None
    up: Known | None = None
    couple_right: Known | None = None
    couple_up: Known | None = None
    turning: Known | None = None
    yawed: Known | None = None
    yawed_couple: Known | None = None

    @property
    def parts(self) -> tuple[Known, ...]:
        """Everything known that is in it."""
        across = (self.right, self.up, self.couple_right, self.couple_up)
        stated = (*across, self.turning, self.yawed, self.yawed_couple)
        return (self.station, *(each for each in stated if each is not None))


class ShaftForces:
    """Forces of meshes, weights and propeller on each shaft in a state of load."""

    def __init__(
        self, subjects: Subjects, train: Train, motion: Motion, loads: Loads, pairs: dict[str, Pair]
    ) -> None:
        self._subjects = subjects
        self._train = train
        self._motion = motion
        self._loads = loads
        self._pairs = pairs
        # Limit cases that differ in the propeller alone share one torque, and with it these.
        self._tooth_forces: dict[tuple[str, str, Torques], Force | Unknown] = {}
        self._axial_forces: dict[tuple[str, str, Torques], Value] = {}
        self._directions: dict[tuple[str, str], tuple[Value, Value]] = {}

    def net_axials(self, shaft: str, case: LoadCase) -> tuple[Value, ...]:
        """ΣF_x of gears and propeller on a shaft [N], positive towards the propeller.

        With each of the bounds of the thrust, between which any may act.
        """
        gears = [self._axial(pair, wheel, case) for pair, wheel in self._loads.meshes_on(shaft)]
        if shaft != self._train.last:
            return (self._sum(gears),)
        return tuple(self._sum([*gears, thrust]) for thrust in self.thrusts_on_shaft(case))

    @staticmethod
    def _sum(parts: list[Value]) -> Value:
        if not parts:
            return Known(0.0, "N", "F_x", origin="neither gear nor propeller sits on this shaft")
        total = parts[0]
        for part in parts[1:]:
            total = compute(tooth_forces.axial_sum, total, part)
        return total

    def masses_on(self, shaft: str) -> list[tuple[Value, Value]]:
        """Station and mass of each gear on a shaft, and of the propeller [m, kg]."""
        found = [
            (gear.given("station", "x"), gear.given("mass", "m"))
            for gear in self._subjects.all("gear")
            if gear.raw("shaft") == shaft
        ]
        if shaft == self._train.last:
            mass = self._subjects.the("propeller").given("mass", "m")
            found.append((self.blade_plane, mass))
        return found

    def on_shaft(self, shaft: str, case: LoadCase) -> list[Force | Unknown]:
        """Every force on a shaft but those of members that turn freely on it."""
        found = [
            self.of_mesh(pair, wheel, case)
            for pair in self._pairs.values()
            for wheel in (pair.driver, pair.driven)
            if wheel.subject.raw("shaft") == shaft
        ]
        found += [self._weight(station, mass, case) for station, mass in self.masses_on(shaft)]
        if shaft == self._train.last:
            found.append(self._propeller(case))
        return found

    def of_mesh(self, pair: Pair, wheel: Wheel, case: LoadCase) -> Force | Unknown:
        """Tooth force on one of the two gears of a mesh."""
        key = (pair.subject.name, wheel.subject.name, case.torque)
        if key not in self._tooth_forces:
            self._tooth_forces[key] = self._tooth_force(pair, wheel, case)
        return self._tooth_forces[key]

    def _tooth_force(self, pair: Pair, wheel: Wheel, case: LoadCase) -> Force | Unknown:
        gear = wheel.subject
        station = gear.given("station", "x")
        tangential, peripheral = self._peripheral(pair, wheel, case)
        radial = compute(tooth_forces.radial_force, tangential, pair.working_pressure_angle())
        axial = self._axial(pair, wheel, case)
        right, up = self.direction(pair, wheel)
        diameter = pair.working_diameter(wheel)
        values = (
            station,
            compute(shaft_loads.force_to_the_right, radial, peripheral, right, up),
            compute(shaft_loads.force_upwards, radial, peripheral, right, up),
            compute(shaft_loads.couple_of_axial_force, axial, diameter, right),
            compute(shaft_loads.couple_of_axial_force, axial, diameter, up),
        )
        unknown = all_known(*values)
        if unknown is not None:
            return unknown
        return Force(*(value for value in values if isinstance(value, Known)))

    def direction(self, pair: Pair, wheel: Wheel) -> tuple[Value, Value]:
        """Unit vector from the axis of a gear to that of its mate, to the right and upwards."""
        key = (pair.subject.name, wheel.subject.name)
        if key not in self._directions:
            self._directions[key] = self._direction(pair, wheel)
        return self._directions[key]

    def _direction(self, pair: Pair, wheel: Wheel) -> tuple[Value, Value]:
        own, mate = (
            self._subjects.the("shaft", str(each.subject.raw("shaft")))
            for each in (wheel, pair.mate(wheel))
        )
        x_1, y_1 = own.given("centre.right", "x₁"), own.given("centre.up", "y₁")
        x_2, y_2 = mate.given("centre.right", "x₂"), mate.given("centre.up", "y₂")
        return (
            compute(shaft_loads.direction, x_1, x_2, y_1, y_2),
            compute(shaft_loads.direction, y_1, y_2, x_1, x_2),
        )

    def _peripheral(self, pair: Pair, wheel: Wheel, case: LoadCase) -> tuple[Value, Value]:
        """F_tw, and F_θ on a gear in its sense [N]."""
        driver_shaft = str(pair.driver.subject.raw("shaft"))
        torque = case.torque(driver_shaft)
        tangential = compute(
            tooth_forces.tangential_force, torque, pair.working_diameter(pair.driver)
        )
        if isinstance(torque, Unknown):
            return tangential, torque
        sense = self._motion.sense(str(wheel.subject.raw("shaft")))
        return tangential, compute(
            tooth_forces.peripheral_force, tangential, sense, _role(pair, wheel, torque)
        )

    def _axial(self, pair: Pair, wheel: Wheel, case: LoadCase) -> Value:
        key = (pair.subject.name, wheel.subject.name, case.torque)
        if key not in self._axial_forces:
            self._axial_forces[key] = self._axial_force(pair, wheel, case)
        return self._axial_forces[key]

    def _axial_force(self, pair: Pair, wheel: Wheel, case: LoadCase) -> Value:
        torque = case.torque(str(pair.driver.subject.raw("shaft")))
        tangential, _ = self._peripheral(pair, wheel, case)
        if isinstance(torque, Unknown):
            return torque
        working_helix = compute(
            tooth.helix_angle_at_diameter,
            wheel.helix_angle,
            wheel.reference_diameter,
            pair.working_diameter(wheel),
        )
        return compute(
            tooth_forces.axial_force,
            tangential,
            working_helix,
            wheel.hand,
            self._motion.sense(str(wheel.subject.raw("shaft"))),
            _role(pair, wheel, torque),
        )

    @staticmethod
    def _weight(station: Value, mass: Value, case: LoadCase) -> Force | Unknown:
        weight = compute(shaft_loads.opposite, compute(load_cases.weight, mass, case.load_factor))
        if isinstance(station, Unknown) or isinstance(weight, Unknown):
            return all_known(station, weight) or Unknown()
        return Force(station, up=weight)

    @cached_property
    def blade_plane(self) -> Value:
        """Station of the blade plane [m]."""
        stations = [
            bearing.given("station", "x")
            for bearing in self._subjects.all("bearing")
            if bearing.raw("shaft") == self._train.last
        ]
        unknown = all_known(*stations)
        if unknown is not None or not stations:
            return unknown or Unknown((("bearings",),))
        known = [station for station in stations if isinstance(station, Known)]
        outermost = max(known, key=lambda station: station.number)
        overhang = self._subjects.the("propeller").given("overhang", "l")
        return compute(shaft_loads.overhung_station, outermost, overhang)

    def thrusts_on_shaft(self, case: LoadCase) -> tuple[Value, ...]:
        """Propeller thrust along its shaft [N], positive towards the propeller: its bounds."""
        installation = self._subjects.the("drive").given("installation")
        return tuple(
            compute(tooth_forces.thrust_on_shaft, thrust, installation)
            for thrust in case.thrust.bounds
        )

    def _propeller(self, case: LoadCase) -> Force | Unknown:
        """Gyroscopic couples, yawed flow and unbalance of the propeller; its weight is apart."""
        in_yaw, in_pitch = self.gyroscopic_couples(case)
        turning = compute(
            load_cases.unbalance_force,
            self._subjects.the("propeller").given("unbalance", "U"),
            case.propeller_speed,
        )
        values = (self.blade_plane, in_pitch, in_yaw, turning, self.yawed_flow(case))
        unknown = all_known(*values)
        if unknown is not None:
            return unknown
        station, right, up, force, yawed = (each for each in values if isinstance(each, Known))
        return Force(station, None, None, right, up, force, yawed_couple=yawed)

    def gyroscopic_couples(self, case: LoadCase) -> tuple[Value, Value]:
        """Gyroscopic couples on the shaft in the vertical and the horizontal plane [N m]."""
        propeller = self._subjects.the("propeller")
        sense, blades = self._motion.sense(self._train.last), propeller.given("blades", "N")
        zero = Known(0.0, "rad/s", "ω_turn", origin="straight flight")
        spin = (propeller.given("inertia", "I"), case.propeller_speed, sense)
        in_yaw = compute(load_cases.couple_of_yaw, *spin, case.yaw_rate or zero, blades)
        in_pitch = compute(load_cases.couple_of_pitch, *spin, case.pitch_rate or zero, blades)
        return in_yaw, in_pitch

    def yawed_flow(self, case: LoadCase) -> Value:
        """M_1P in whatever plane: by the stated swing of the thrust of a blade, or the inflow.

        In a climb it bends the shaft to one side, in a dive to the other, in a skid up or down.
        """
        if case.straight:
            return Known(0.0, "N m", "M_1P", origin="the air meets the propeller along its axis")
        stated = self._subjects.the("propeller").given("blade_thrust_variation", "Δ")
        return self.inflow_moment(case) if isinstance(stated, Unknown) else self.swing_moment(case)

    def swing_moment(self, case: LoadCase) -> Value:
        """M_1P by the stated swing of the thrust of a blade [N m]."""
        propeller = self._subjects.the("propeller")
        return compute(
            load_cases.yawed_flow_moment,
            propeller.given("blade_thrust_variation", "Δ"),
            case.thrust.most,
            propeller.given("diameter", "D"),
            propeller.given("blades", "N"),
        )

    def inflow_moment(self, case: LoadCase) -> Value:
        """M_1P of the blades in the inflow of a state of load [N m]."""
        propeller, inflow = self._subjects.the("propeller"), case.inflow
        if inflow is None:
            either = ("blade_thrust_variation", "yawed_flow")
            return Unknown(tuple(propeller.place(field) for field in either), _EITHER)
        diameter = propeller.given("diameter", "D")
        return compute(
            load_cases.inflow_moment,
            compute(load_cases.cross_flow, inflow.airspeed, inflow.angle),
            case.thrust.most,
            case.propeller_speed,
            compute(
                disc_speed_of_thrust, case.thrust.most, inflow.airspeed, diameter, inflow.density
            ),
            propeller.given("blade_chord", "c"),
            assumed(load_cases.THIN_AEROFOIL_LIFT_SLOPE, "1", "a", _LIFT_SLOPE),
            inflow.density,
            diameter,
            propeller.given("blades", "N"),
        )


def _role(pair: Pair, wheel: Wheel, torque: Known) -> Known:
    role = _DRIVEN if wheel is pair.driven else _DRIVING
    if torque.number < 0.0:
        role = -role
    return Known(role, "1", "role", origin=_ROLES[role])
