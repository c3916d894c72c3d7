"""Speed, sense of rotation and torque of every shaft at every operation point."""

from checker.known import Known, Unknown, Value, assumed, compute
from checker.mechanics import engine as engine_mechanics
from checker.mechanics import kinematics
from checker.spec.fields import NONE
from checker.spec.subject import Subject, Subjects
from checker.train.graph import Link, Train

_PERHAPS_WINDMILLING = ("descent", "approach")
_ENGINE_DRIVES = "common practice, no source: with power and not in a descent the engine drives"
_NO_TORQUE = "the one-way clutch overruns: no torque passes it but its own friction"
_OFF_PATH = "not in the power path from engine to propeller"


class Motion:
    """How the train turns and what it carries, without losses.

    Torque is positive where the engine drives, negative where the propeller drives the engine.
    """

    def __init__(self, subjects: Subjects, train: Train) -> None:
        self._subjects = subjects
        self._train = train
        self._speeds: dict[tuple[str, str], Value] = {}
        self._torques: dict[tuple[str, str], Value] = {}
        self._senses: dict[str, Value] = {}
        self._behind_clutch = self._shafts_behind_clutch()

    def driver(self, point: Subject) -> Value:
        """Who drives at a point, ``engine`` or ``propeller``.

        Where the spec does not say, the engine does, but for a descent or an approach: there it is
        unknown.
        """
        stated = point.given("driving")
        if isinstance(stated, Known) or point.raw("kind") in _PERHAPS_WINDMILLING:
            return stated
        return assumed("engine", "", f"driving at {point.name}", _ENGINE_DRIVES)

    def overruns(self, point: Subject) -> Value:
        """Whether the propeller turns faster than the clutch drives it at a point."""
        driver = self.driver(point)
        if not self._behind_clutch:
            return Known(False, "", "overruns", origin="no clutch in the power path")
        if isinstance(driver, Unknown):
            return driver
        return Known(driver.value == "propeller", "", "overruns", inputs=(driver,))

    def speed(self, shaft: str, point: Subject) -> Value:
        """ω of a shaft at a point [rad/s], as a size; ``sense`` gives the direction."""
        key = (shaft, point.name)
        if key not in self._speeds:
            self._speeds[key] = self._speed(shaft, point)
        return self._speeds[key]

    def torque(self, shaft: str, point: Subject) -> Value:
        """T carried by a shaft at a point [N m], zero off the power path."""
        key = (shaft, point.name)
        if key not in self._torques:
            self._torques[key] = self._torque(shaft, point)
        return self._torques[key]

    def sense(self, shaft: str) -> Value:
        """Sense of rotation: +1 clockwise seen from the engine towards the propeller, -1 against.

        That is right-handed about the axis from engine to propeller for +1.
        """
        if shaft not in self._senses:
            self._senses[shaft] = self._sense(shaft)
        return self._senses[shaft]

    def engine_output_speed(self, point: Subject) -> Value:
        """ω of the shaft that the engine turns [rad/s]."""
        return self.speed_behind_engine(point.given("engine_speed", "ω_e"))

    def engine_output_torque(self, point: Subject) -> Value:
        """T at the shaft that the engine turns [N m]."""
        torque = compute(
            engine_mechanics.mean_torque,
            point.given("power", "P"),
            point.given("engine_speed", "ω_e"),
        )
        return self.torque_behind_engine(torque)

    def speed_behind_engine(self, speed: Value) -> Value:
        """ω of the shaft that the engine turns, from the speed of the crankshaft [rad/s]."""
        engine = self._subjects.the("engine")
        if engine.raw("internal_reduction") == NONE:
            return speed
        return compute(kinematics.reduced_speed, speed, self._internal_ratio(engine))

    def torque_behind_engine(self, torque: Value) -> Value:
        """T at the shaft that the engine turns, from the torque of the crankshaft [N m]."""
        engine = self._subjects.the("engine")
        if engine.raw("internal_reduction") == NONE:
            return torque
        return compute(kinematics.multiplied_torque, torque, self._internal_ratio(engine))

    def speed_passed_on(self, speed: Value, shaft: str) -> Value:
        """ω of a shaft when the engine turns the first one at a speed [rad/s]."""
        if shaft == self._train.first:
            return speed
        link = self._train.fed_by[shaft]
        return self._across(link, self.speed_passed_on(speed, link.driver))

    def torque_passed_on(self, torque: Value, shaft: str) -> Value:
        """T at a shaft when the engine turns the first one with a torque [N m]."""
        if shaft not in self._train.path_shafts:
            return Known(0.0, "N m", "T", origin=_OFF_PATH)
        if shaft == self._train.first:
            return torque
        link = self._train.fed_by[shaft]
        ahead = self.torque_passed_on(torque, link.driver)
        if link.kind != "mesh":
            return ahead
        return compute(kinematics.driven_torque, ahead, *self._teeth(link))

    @staticmethod
    def _internal_ratio(engine: Subject) -> Value:
        if engine.raw("internal_reduction") is None:
            return Unknown((engine.place("internal_reduction"),))
        return engine.given("internal_reduction.ratio", "i_e")

    def _teeth(self, link: Link) -> tuple[Value, Value]:
        mesh = self._subjects.spec.meshes[link.name]
        driver = self._subjects.the("gear", mesh.driver).given("teeth", "z₁")
        driven = self._subjects.the("gear", mesh.driven).given("teeth", "z₂")
        return driver, driven

    def _speed(self, shaft: str, point: Subject) -> Value:
        if shaft in self._behind_clutch:
            overruns = self.overruns(point)
            if isinstance(overruns, Unknown):
                return overruns
            if overruns.value:
                return self._windmilling_speed(shaft, point)
        if shaft == self._train.first:
            return self.engine_output_speed(point)
        link = self._train.fed_by[shaft]
        return self._across(link, self.speed(link.driver, point))

    def _windmilling_speed(self, shaft: str, point: Subject) -> Value:
        """Speed behind an overrunning clutch, where the propeller sets it."""
        if shaft == self._train.last:
            return point.given("propeller_speed", "ω_p")
        for link in self._train.power_path:
            if link.driver == shaft:
                return self._across(link, self.speed(link.driven, point), backwards=True)
        link = self._train.fed_by[shaft]
        return self._across(link, self.speed(link.driver, point))

    def _across(self, link: Link, speed: Value, *, backwards: bool = False) -> Value:
        """Speed on the other side of a link, from the driver's side or backwards."""
        if link.kind != "mesh":
            return speed
        driver, driven = self._teeth(link)
        near, far = (driven, driver) if backwards else (driver, driven)
        return compute(kinematics.driven_speed, speed, near, far)

    def _torque(self, shaft: str, point: Subject) -> Value:
        driver = self.driver(point)
        if isinstance(driver, Unknown):
            return driver
        torque = self.engine_output_torque(point)
        if driver.value == "propeller":
            if self._behind_clutch and shaft in self._train.path_shafts:
                return Known(0.0, "N m", "T", origin=_NO_TORQUE)
            torque = compute(kinematics.reversed_torque, torque)
        return self.torque_passed_on(torque, shaft)

    def _sense(self, shaft: str) -> Value:
        engine = self._subjects.the("engine")
        crank = compute(kinematics.sense_of, engine.given("rotation", "rotation"))
        reversals = self._train.reversals[shaft]
        turns = Known(
            reversals, "1", "N_mesh", origin=f"meshes between the engine and shafts.{shaft}"
        )
        internal = engine.raw("internal_reduction")
        if internal == NONE:
            return compute(kinematics.sense_after, crank, turns)
        if internal is None:
            return Unknown((engine.place("internal_reduction"),))
        output = compute(
            kinematics.sense_after_engine, crank, engine.given("internal_reduction.reverses")
        )
        return compute(kinematics.sense_after, output, turns)

    def _shafts_behind_clutch(self) -> frozenset[str]:
        """Shafts that turn with the propeller when the clutch overruns."""
        if not any(link.kind == "clutch" for link in self._train.power_path):
            return frozenset()
        return frozenset(
            shaft for shaft in self._subjects.spec.shafts if self._train.before("clutch", shaft)
        )
