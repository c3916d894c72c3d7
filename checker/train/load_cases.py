"""The states in which the shafts are loaded: each operation point, and the limit cases."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial

from checker.known import Detail, Known, Unknown, Value, assumed, compute, merged
from checker.mechanics import air, engine, load_cases, propeller, shaft_loads
from checker.spec.subject import Subject, Subjects
from checker.train.graph import Train
from checker.train.motion import Motion
from checker.train.outside_air import air_density
from checker.train.peak import MAXIMUM_CONTINUOUS, TAKE_OFF, Peaks

POINT, LIMIT_TORQUE, GYROSCOPIC, REVERSE, START, KICK_BACK = (
    "operation point",
    "limit torque",
    "gyroscopic",
    "reverse torque",
    "start",
    "kick-back",
)
_LEVEL_FLIGHT = "level flight or ground"
_NO_THRUST = "a propeller that the engine drives pulls or does nothing, where no thrust is stated"

Torques = Callable[[str], Value]
"""Torque of a shaft by its name [N m]."""
_TORQUE_CASES = (
    (TAKE_OFF, "take-off", load_cases.TAKE_OFF_SHARE),
    (MAXIMUM_CONTINUOUS, "maximum continuous", load_cases.MAXIMUM_CONTINUOUS_SHARE),
)


@dataclass(frozen=True)
class Inflow:
    """The air that meets the propeller askew.

    Attributes:
        angle: between it and the propeller axis [rad].
        airspeed: true airspeed [m/s].
        density: of the air [kg/m3].
    """

    angle: Value
    airspeed: Value
    density: Value


@dataclass(frozen=True)
class Thrust:
    """How much the propeller pulls; less than none where it brakes.

    Attributes:
        least: that it can be [N].
        most: that it can be [N]; the same value where it is stated.
    """

    least: Value
    most: Value

    @property
    def bounds(self) -> tuple[Value, ...]:
        """Both, or the one that it is."""
        return (self.most,) if self.least is self.most else (self.most, self.least)


@dataclass(frozen=True)
class LoadCase:
    """One state of load.

    Attributes:
        name: of the point, or of the limit case.
        kind: operation point, limit torque, gyroscopic, reverse torque, start or kick-back.
        torque: torque of a shaft by its name [N m]; negative where the propeller drives.
        propeller_speed: of the propeller [rad/s].
        thrust: of the propeller.
        load_factor: on every weight.
        inflow: the air that meets the propeller; none where the spec says nothing of it.
        straight: whether it meets the propeller along its axis for certain.
        yaw_rate: of the aircraft [rad/s].
        pitch_rate: of the aircraft [rad/s].
        rating: of the engine, of which a limit torque is.
    """

    name: str
    kind: str
    torque: Torques
    propeller_speed: Value
    thrust: Thrust
    load_factor: Value
    inflow: Inflow | None
    yaw_rate: Known | None = None
    pitch_rate: Known | None = None
    rating: str | None = None
    straight: bool = False

    @property
    def known_name(self) -> Known:
        """The name of the case, for derivations."""
        return Known(self.name, "", "case", origin=Detail(f"the {self.kind} case that governs"))


class LoadCases:
    """All states of load of a drive."""

    def __init__(self, subjects: Subjects, train: Train, motion: Motion, peaks: Peaks) -> None:
        self._subjects = subjects
        self._train = train
        self._motion = motion
        self._peaks = peaks
        self._engine = subjects.the("engine")

    @cached_property
    def points(self) -> dict[str, LoadCase]:
        """The operation points, by name."""
        return {point.name: self._at(point) for point in self._subjects.all("point")}

    @cached_property
    def limits(self) -> tuple[LoadCase, ...]:
        """The limit cases, with the peak torque: unknown while the torsional survey is."""
        return (
            *(
                self._limit_torque("limit torque", self._peaks.peak, *each)
                for each in _TORQUE_CASES
            ),
            *self.gyroscopic,
            *self.sudden,
        )

    @cached_property
    def least_limits(self) -> tuple[LoadCase, ...]:
        """The limit cases, with the least that the peak torque can be.

        Those of a rating are left out while nothing of it is known: the rest is a bound.
        """
        return (
            *(
                self._limit_torque("least limit torque", self._peaks.floor, *each)
                for each in _TORQUE_CASES
                if isinstance(self._peaks.floor(self._train.last, each[0]), Known)
                and isinstance(self._rated_speed(each[0]), Known)
            ),
            *self.gyroscopic,
            *self.sudden,
        )

    def judged(self, of_limits: Callable[[tuple[LoadCase, ...]], Value], shaft: str) -> Value:
        """A value of the limit cases that gets worse with the torque.

        By the peak torque, or at best by the least that this can be.
        """
        known = isinstance(self._peaks.peak(shaft), Known)
        limits = self.limits if known else self.least_limits
        return self._peaks.judged(lambda _: of_limits(limits), shaft)

    def straight(self, point: Subject) -> LoadCase:
        """A point without yawed flow and bounds, for what gets worse the less a shaft carries."""
        case, stated = self.points[point.name], point.given("thrust", "F_p")
        name = f"{case.name}, straight"
        return replace(case, name=name, straight=True, thrust=Thrust(stated, stated))

    def at_peak(self, case: LoadCase, shaft: str, peak: Value, mean: Value) -> LoadCase:
        """A case in the moment in which the torque of a shaft swings from its mean to its peak.

        Every tooth force on the shaft goes with its torque; weight and propeller do not.
        """
        return replace(
            case,
            name=f"{case.name}, torque of {shaft} at its peak",
            torque=lambda each: compute(shaft_loads.torque_at_peak, case.torque(each), peak, mean),
        )

    @cached_property
    def gyroscopic(self) -> tuple[LoadCase, ...]:
        """Yaw and pitch together, each in both senses (CS 23.371(a)(2))."""
        case, source = load_cases.CS_23_371, load_cases.GYROSCOPIC_SOURCE
        return tuple(
            LoadCase(
                f"gyroscopic, yaw {yaw_word}, pitch {pitch_word}",
                GYROSCOPIC,
                self.continuous_torque,
                self._continuous_speed,
                self._continuous_thrust,
                Known(case.load_factor, "1", "n", origin=source),
                self._worst_inflow,
                Known(yaw * case.yaw_rate, "rad/s", "ω_yaw", origin=source),
                Known(pitch * case.pitch_rate, "rad/s", "ω_pitch", origin=source),
            )
            for yaw, yaw_word in ((1, "right"), (-1, "left"))
            for pitch, pitch_word in ((1, "up"), (-1, "down"))
        )

    @cached_property
    def sudden(self) -> tuple[LoadCase, ...]:
        """The limit cases of a torque beside that of operation: start, kick-back, dead engine."""
        return (self._reverse, self._start, self._kick_back)

    @cached_property
    def _continuous_thrust(self) -> Thrust:
        """F_p at maximum continuous: the least of the points in power to the largest of all."""
        points = self._subjects.all("point")
        in_power = self._may_be("take-off", "climb", "cruise") or points
        return Thrust(self._least_thrust(in_power), self._largest_thrust(points))

    @cached_property
    def _take_off_thrust(self) -> Thrust:
        """F_p of the take-off points; as at maximum continuous where none is a take-off."""
        if not any(point.raw("kind") == "take-off" for point in self._subjects.all("point")):
            return self._continuous_thrust
        points = self._may_be("take-off")
        return Thrust(self._least_thrust(points), self._largest_thrust(points))

    def _may_be(self, *kinds: str) -> list[Subject]:
        """The points of some kinds in which the engine drives; while unknown, they may be."""
        return [
            point
            for point in self._subjects.all("point")
            if point.raw("kind") in (*kinds, None) and point.raw("driving") != "propeller"
        ]

    def thrust_at(self, point: Subject) -> Thrust:
        """F_p at a point: as stated, or from none to that of an ideal propeller.

        No real one reaches the ideal one, in the air that is stated. That a propeller may brake a
        little between no thrust and no torque, in a fast descent, is not counted.
        """
        stated, ideal = point.given("thrust", "F_p"), self.ideal_thrust(point)
        bounded = point.raw("driving") == "engine" and point.raw("air_temperature") is not None
        if isinstance(stated, Known) or isinstance(ideal, Unknown) or not bounded:
            return Thrust(stated, stated)
        return Thrust(assumed(0.0, "N", "F_p", _NO_THRUST), ideal)

    def ideal_thrust(self, point: Subject) -> Value:
        """Thrust of the actuator disc at the power of a point [N]: an upper bound."""
        return compute(
            propeller.ideal_thrust,
            point.given("power", "P"),
            point.given("airspeed", "V"),
            self._subjects.the("propeller").given("diameter", "D"),
            air_density(point),
        )

    def _inflow_at(self, point: Subject) -> Inflow | None:
        if point.raw("inflow_angle") is None:
            return self._worst_inflow
        return Inflow(
            point.given("inflow_angle", "ψ"),
            point.given("airspeed", "V"),
            air_density(point),
        )

    @cached_property
    def _worst_inflow(self) -> Inflow | None:
        blades = self._subjects.the("propeller")
        if blades.raw("yawed_flow") is None:
            return None
        return Inflow(
            blades.given("yawed_flow.angle", "ψ"),
            blades.given("yawed_flow.airspeed", "V"),
            _sea_level_density(),
        )

    def _least_thrust(self, points: Sequence[Subject]) -> Value:
        return _extreme(min, [self.thrust_at(point).least for point in points])

    def _largest_thrust(self, points: Sequence[Subject]) -> Value:
        return _extreme(max, [self.thrust_at(point).most for point in points])

    def _at(self, point: Subject) -> LoadCase:
        return LoadCase(
            point.name,
            POINT,
            lambda shaft: self._motion.torque(shaft, point),
            self._motion.speed(self._train.last, point),
            self.thrust_at(point),
            _one(_LEVEL_FLIGHT),
            self._inflow_at(point),
        )

    def _limit_torque(
        self, name: str, torques: Callable[..., Value], rating: str, word: str, share: float
    ) -> LoadCase:
        """The limit torque of a rating with its share of the limit loads of flight condition A.

        CS 22.361(a) and the old 14 CFR 23.361(a): (1) take-off, 75 %; (2) maximum continuous, all.
        """
        return LoadCase(
            f"{name} at {word}",
            LIMIT_TORQUE,
            partial(torques, rating=rating),
            self._propeller_speed(self._rated_speed(rating)),
            self._take_off_thrust if rating == TAKE_OFF else self._continuous_thrust,
            compute(
                load_cases.load_factor_of_torque_case,
                self._subjects.the("drive").given("limit_load_factor", "n_A"),
                Known(share, "1", "q_A", origin=load_cases.ENGINE_TORQUE_SOURCE),
            ),
            self._worst_inflow,
            rating=rating,
        )

    @cached_property
    def _reverse(self) -> LoadCase:
        """A dead engine turned by the propeller through a locked clutch, or without one."""
        drag = compute(
            load_cases.reverse_torque,
            self._engine.given("drag_torque", "T_drag"),
            Known(1.0, "1", "i", origin="at the crankshaft itself"),
        )
        braking = self._least_thrust(self._subjects.all("point"))
        return LoadCase(
            "reverse torque of a dead engine",
            REVERSE,
            lambda shaft: self._passed_on(drag, shaft),
            self._idle_speed,
            Thrust(braking, braking),
            _one(_LEVEL_FLIGHT),
            self._worst_inflow,
        )

    @cached_property
    def _start(self) -> LoadCase:
        starter = self._engine.given("starter_torque_limit", "T_start")
        still = Known(0.0, "N", "F_p", origin="no thrust at the start")
        return LoadCase(
            "start",
            START,
            lambda shaft: self._passed_on(starter, shaft),
            self._idle_speed,
            Thrust(still, still),
            _one(_LEVEL_FLIGHT),
            self._worst_inflow,
        )

    @cached_property
    def _kick_back(self) -> LoadCase:
        """An engine that fires too early and turns back, against a clutch that does not let go."""
        gas = self._engine.given("kick_back_torque", "T_gas")
        kick = compute(load_cases.kick_back_torque, gas)
        still = Known(0.0, "N", "F_p", origin="no thrust at the start")
        return LoadCase(
            "kick-back",
            KICK_BACK,
            lambda shaft: self._passed_on(kick, shaft),
            self._idle_speed,
            Thrust(still, still),
            _one(_LEVEL_FLIGHT),
            self._worst_inflow,
        )

    @cached_property
    def _idle_speed(self) -> Value:
        return self._propeller_speed(self._engine.given("idle_speed", "ω_idle"))

    @cached_property
    def _continuous_speed(self) -> Value:
        return self._propeller_speed(self._rated_speed(MAXIMUM_CONTINUOUS))

    def _rated_speed(self, rating: str) -> Value:
        return self._engine.given(f"{rating}.speed", "ω_e")

    @cached_property
    def _continuous_mean(self) -> Value:
        return compute(
            engine.mean_torque,
            self._engine.given("maximum_continuous.power", "P"),
            self._rated_speed(MAXIMUM_CONTINUOUS),
        )

    def continuous_torque(self, shaft: str) -> Value:
        """T, mean torque of a shaft at maximum continuous power [N m]."""
        return self._passed_on(self._continuous_mean, shaft)

    def _propeller_speed(self, crank: Value) -> Value:
        return self._motion.speed_passed_on(
            self._motion.speed_behind_engine(crank), self._train.last
        )

    def _passed_on(self, torque: Value, shaft: str) -> Value:
        return self._motion.torque_passed_on(self._motion.torque_behind_engine(torque), shaft)


def _extreme(pick: Callable[..., Known], values: Sequence[Value]) -> Value:
    unknown = [value for value in values if isinstance(value, Unknown)]
    if unknown or not values:
        return merged(unknown) if unknown else Unknown((("operation",),))
    return pick(
        (value for value in values if isinstance(value, Known)), key=lambda value: value.number
    )


def _sea_level_density() -> Value:
    level = Known(0.0, "m", "z", origin="yawed flow is stated for sea level")
    standard = assumed(0.0, "ΔK", "ΔT", "worst yawed flow in the density of the standard day")
    return compute(
        air.density, compute(air.pressure, level), compute(air.temperature, level, standard)
    )


def _one(origin: str) -> Known:
    return Known(1.0, "1", "n", origin=origin)
