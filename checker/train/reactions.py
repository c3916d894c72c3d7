"""Bearing reactions of each shaft in space, its bending, and what follows from both.

Each radial bearing is a rigid support; a matched set is one, in its middle. A single angular
contact or tapered bearing supports where its lines of contact meet the axis. A member that turns
freely on a shaft stands on it through its bearings and loads it there. The weight of gears and
propeller counts, that of the shafts themselves does not.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

from checker.known import Known, Unknown, Value, compute, merged
from checker.mechanics import beam, shaft_loads
from checker.mechanics.beam import Bent, Load, Stretch
from checker.mechanics.equation import OutOfRange, equation_of
from checker.spec.subject import Subject, Subjects
from checker.train.carrier import carrier_of
from checker.train.graph import Train
from checker.train.load_cases import LoadCase, LoadCases
from checker.train.loads import Loads
from checker.train.motion import Motion
from checker.train.pair import Pair
from checker.train.peak import Peaks
from checker.train.shaft_forces import Force, ShaftForces
from checker.train.shaft_sections import section_values, stretches_of
from checker.train.supports import Support, supports_of

InPlanes = tuple[Value, Value, Value]
"""How something bends: to the right, upwards, and by yawed flow in whatever plane that acts."""


@dataclass(frozen=True)
class Carried:
    """A shaft on its supports in one state of load.

    Attributes:
        supports: in the order of the spec.
        forces: what acts on it besides.
        right: its bending in the horizontal plane.
        up: its bending in the vertical plane.
        turning: its bending by what turns with it.
        yawed: its bending by yawed flow, in whatever plane that acts.
        sections: what its bending stiffness rests on, where more than two supports share by it.
    """

    supports: tuple[Support, ...]
    forces: tuple[Force, ...]
    right: Bent
    up: Bent
    turning: Bent
    yawed: Bent
    sections: tuple[Known, ...] = ()

    @cached_property
    def inputs(self) -> tuple[Known, ...]:
        """Everything that the reactions were computed from."""
        stations = tuple(support.station for support in self.supports)
        loads = (part for force in self.forces for part in force.parts)
        return (*stations, *loads, *self.sections)

    @cached_property
    def stations(self) -> tuple[Known, ...]:
        """Where something acts on the shaft, supports included."""
        found = [support.station for support in self.supports]
        found += [force.station for force in self.forces]
        return tuple({station.number: station for station in found}.values())

    def moment(self, x: float, *, before: bool) -> float:
        """M of the forces fixed in the airframe on one side of a station [N m]."""
        planes = (self.right, self.up, self.yawed)
        return shaft_loads.resultant_moment(*(bent.moment(x, before=before) for bent in planes))

    def support_of(self, bearing: Subject) -> int | None:
        """Index of the support that a bearing is or belongs to."""
        for index, support in enumerate(self.supports):
            if any(member.name == bearing.name for member in support.members):
                return index
        return None


class Reactions:
    """Reactions, moments and deflections of every shaft in every state of load."""

    def __init__(
        self,
        subjects: Subjects,
        train: Train,
        motion: Motion,
        peaks: Peaks,
        loads: Loads,
        pairs: dict[str, Pair],
    ) -> None:
        self._subjects = subjects
        self._train = train
        self._loads = loads
        self.forces = ShaftForces(subjects, train, motion, loads, pairs)
        self.cases = LoadCases(subjects, train, motion, peaks)
        self._carried: dict[tuple[str, str], Carried | Unknown] = {}
        self._supports: dict[str, tuple[Support, ...] | Unknown] = {}
        self._radial: dict[tuple[str, str], Value] = {}
        self._bends: dict[tuple[str, str, str, float], InPlanes] = {}

    def is_loaded(self, shaft: str) -> bool:
        """Whether a gear, the propeller, or a member that turns on it loads the shaft."""
        return shaft == self._train.last or any(True for _ in self._loads.meshes_on(shaft))

    def carried(self, shaft: str, case: LoadCase) -> Carried | Unknown:
        """The shaft on its supports in a state of load."""
        key = (shaft, case.name)
        if key not in self._carried:
            self._carried[key] = self._carry(shaft, case)
        return self._carried[key]

    def radial(self, bearing: Subject, case: LoadCase) -> Value:
        """F_r, radial force on the support that a bearing is or belongs to [N]."""
        key = (bearing.name, case.name)
        if key not in self._radial:
            self._radial[key] = self._radial_force(bearing, case)
        return self._radial[key]

    def _radial_force(self, bearing: Subject, case: LoadCase) -> Value:
        carried = self.carried(str(bearing.raw("shaft")), case)
        if isinstance(carried, Unknown):
            return carried
        index = carried.support_of(bearing)
        if index is None:
            return Known(0.0, "N", "F_r", origin="its kind carries no radial force")
        parts = [
            Known(bent.reactions[index], "N", symbol, origin=_BEND, inputs=carried.inputs)
            for bent, symbol in (
                (carried.right, "R_right"),
                (carried.up, "R_up"),
                (carried.turning, "R_turn"),
                (carried.yawed, "R_yaw"),
            )
        ]
        return compute(shaft_loads.radial_reaction, *parts)

    def stations(self, shaft: str, case: LoadCase) -> tuple[Known, ...]:
        """Where gears, bearings and propeller act on a shaft; none while they are unknown."""
        carried = self.carried(shaft, case)
        return () if isinstance(carried, Unknown) else carried.stations

    def moment(self, shaft: str, case: LoadCase, station: Known) -> Value:
        """M of the forces fixed in the airframe [N m]: an amplitude in the turning shaft.

        Where a couple acts, that of the side on which it is larger.
        """
        carried = self.carried(shaft, case)
        if isinstance(carried, Unknown):
            return carried
        x = station.number
        before = max((False, True), key=lambda side: carried.moment(x, before=side))
        parts = [
            Known(
                beam.bending_moment(bent, x, before),
                "N m",
                symbol,
                origin=_MOMENT,
                inputs=(station, *carried.inputs),
            )
            for bent, symbol in (
                (carried.right, "M_right"),
                (carried.up, "M_up"),
                (carried.yawed, "M_yaw"),
            )
        ]
        return compute(shaft_loads.resultant_moment, *parts)

    def diagram(self, shaft: str, case: LoadCase) -> list[tuple[float, float, float]] | Unknown:
        """Stations with bending moment and torque there, in order: for reports [m, N m, N m]."""
        carried = self.carried(shaft, case)
        if isinstance(carried, Unknown):
            return carried
        torque = case.torque(shaft)
        if isinstance(torque, Unknown):
            return torque
        stations = sorted({load.station for load in carried.right.acting})
        low, high = self._torque_ends(shaft)
        return [
            (
                x,
                max(carried.moment(x, before=before) for before in (True, False)),
                torque.number if low <= x <= high else 0.0,
            )
            for x in stations
        ]

    def torque_at(self, shaft: str, torque: Value, station: Known) -> Value:
        """The torque of a shaft at a station [N m]: none outside the stretch that it passes."""
        low, high = self._torque_ends(shaft)
        if low <= station.number <= high:
            return torque
        return Known(0.0, "N m", "T", origin="no torque passes there", inputs=(station,))

    def _torque_ends(self, shaft: str) -> tuple[float, float]:
        """Stations between which a shaft passes its torque.

        Gears stand where they are stated; damper, clutch and joint are taken at the end of the
        shaft that looks to them, the propeller beyond everything.
        """
        gears = {
            gear.name: gear.given("station")
            for gear in self._subjects.all("gear")
            if gear.raw("shaft") == shaft
        }
        places: list[float] = []
        for link in self._train.power_path:
            if shaft not in (link.driver, link.driven):
                continue
            end = math.inf if link.driver == shaft else -math.inf
            if link.kind == "mesh":
                mesh = self._subjects.spec.meshes[link.name]
                station = gears.get(mesh.driver if link.driver == shaft else mesh.driven)
                end = station.number if isinstance(station, Known) else end
            places.append(end)
        if shaft == self._train.last:
            places.append(math.inf)
        if shaft == self._train.first:
            places.append(-math.inf)
        return (min(places), max(places)) if places else (0.0, 0.0)

    def slopes(self, shaft: str, case: LoadCase, station: Value) -> InPlanes:
        """θ of a shaft at a station [rad], with that of what it turns on."""
        return self._bending(beam.slope, shaft_loads.tilted_seat, shaft, case, station)

    def deflections(self, shaft: str, case: LoadCase, station: Value) -> InPlanes:
        """v of a shaft at a station [m], with that of what it turns on."""
        return self._bending(beam.deflection, shaft_loads.moved_seat, shaft, case, station)

    def _bending(
        self,
        bending: Callable[..., float],
        seated: Callable[..., float],
        shaft: str,
        case: LoadCase,
        station: Value,
    ) -> InPlanes:
        if isinstance(station, Unknown):
            return station, station, station
        key = (bending.__name__, shaft, case.name, station.number)
        if key not in self._bends:
            own = self._own_bending(bending, shaft, case, station)
            under = self._under(shaft, case)
            if under is not None:
                first, last, moved = under
                right, up, yawed = (
                    compute(seated, each, station, first, last, *ends)
                    for each, ends in zip(own, moved, strict=True)
                )
                own = right, up, yawed
            self._bends[key] = own
        return self._bends[key]

    def _under(
        self, shaft: str, case: LoadCase
    ) -> tuple[Known, Known, list[tuple[Value, ...]]] | None:
        """Outer supports of a member on another shaft, and how that one moves under them."""
        supports = self.supports(shaft)
        if isinstance(supports, Unknown):
            return None
        first, last = (pick(supports, key=lambda each: each.station.number) for pick in (min, max))
        carriers = [carrier_of(self._subjects, each.members[0]) for each in (first, last)]
        if not any(carriers):
            return None
        still = Known(0.0, "m", "v", origin="the case is taken as stiff")
        moved = [
            self.deflections(carrier, case, each.station) if carrier else (still, still, still)
            for carrier, each in zip(carriers, (first, last), strict=True)
        ]
        return first.station, last.station, list(zip(*moved, strict=True))

    def _own_bending(
        self, bending: Callable[..., float], shaft: str, case: LoadCase, station: Known
    ) -> InPlanes:
        """Slope or deflection by the bending of the shaft itself between its supports."""
        carried = self.carried(shaft, case)
        stretches = self.stretches(shaft)
        unknown = [each for each in (carried, stretches) if isinstance(each, Unknown)]
        if unknown or isinstance(carried, Unknown) or isinstance(stretches, Unknown):
            missing = merged(unknown)
            return missing, missing, missing
        places = [support.station.number for support in carried.supports]
        equation = equation_of(bending)
        right, up, yawed = (
            Known(
                bending(bent, station.number, places, stretches),
                equation.unit,
                f"{equation.symbol}_{side}",
                origin=equation,
                inputs=(*carried.inputs, *self._section_values(shaft)),
            )
            for bent, side in (
                (carried.right, "right"),
                (carried.up, "up"),
                (carried.yawed, "yaw"),
            )
        )
        return right, up, yawed

    def supports(self, shaft: str) -> tuple[Support, ...] | Unknown:
        """The radial supports of a shaft."""
        if shaft not in self._supports:
            self._supports[shaft] = supports_of(self._subjects, shaft)
        return self._supports[shaft]

    def stretches(self, shaft: str) -> tuple[Stretch, ...] | Unknown:
        """E I along a shaft."""
        return stretches_of(self._subjects.the("shaft", shaft))

    def _section_values(self, shaft: str) -> tuple[Known, ...]:
        return section_values(self._subjects.the("shaft", shaft))

    def _carry(self, shaft: str, case: LoadCase) -> Carried | Unknown:
        supports = self.supports(shaft)
        forces = self._forces(shaft, case)
        unknown = [each for each in (supports, forces) if isinstance(each, Unknown)]
        if unknown or isinstance(supports, Unknown) or isinstance(forces, Unknown):
            return merged(unknown)
        stretches = self.stretches(shaft) if len(supports) > 2 else ()
        if isinstance(stretches, Unknown):
            return stretches
        places = [support.station.number for support in supports]
        planes = (
            [Load(f.station.number, _of(f.right), _of(f.couple_right)) for f in forces],
            [Load(f.station.number, _of(f.up), _of(f.couple_up)) for f in forces],
            [Load(f.station.number, _of(f.turning)) for f in forces],
            [Load(f.station.number, _of(f.yawed), _of(f.yawed_couple)) for f in forces],
        )
        try:
            right, up, turning, yawed = (beam.bend(places, loads, stretches) for loads in planes)
        except OutOfRange as outside:
            return Unknown((("bearings",),), because=f"shafts.{shaft}: {outside}")
        sections = self._section_values(shaft) if len(supports) > 2 else ()
        return Carried(supports, forces, right, up, turning, yawed, sections)

    def _forces(self, shaft: str, case: LoadCase) -> tuple[Force, ...] | Unknown:
        found = self.forces.on_shaft(shaft, case)
        for member in self._members_on(shaft):
            found += self._from_member(member, shaft, case)
        unknown = [each for each in found if isinstance(each, Unknown)]
        if unknown:
            return merged(unknown)
        return tuple(each for each in found if isinstance(each, Force))

    def _members_on(self, shaft: str) -> tuple[str, ...]:
        """The members of which a bearing runs on a shaft."""
        members = (
            str(bearing.raw("shaft"))
            for bearing in self._subjects.all("bearing")
            if carrier_of(self._subjects, bearing) == shaft
        )
        return tuple(dict.fromkeys(members))

    def _from_member(self, member: str, shaft: str, case: LoadCase) -> Iterator[Force | Unknown]:
        """What a member puts on a shaft through those of its bearings that run on it."""
        if not any(True for _ in self._loads.meshes_on(member)):
            return
        carried = self.carried(member, case)
        if isinstance(carried, Unknown):
            yield carried
            return
        for index, support in enumerate(carried.supports):
            if carrier_of(self._subjects, support.members[0]) != shaft:
                continue
            right, up, turning, yawed = (
                _put_on(bent.reactions[index], carried.inputs)
                for bent in (carried.right, carried.up, carried.turning, carried.yawed)
            )
            yield Force(support.station, right, up, turning=turning, yawed=yawed)


def _put_on(reaction: float, inputs: tuple[Known, ...]) -> Known | None:
    """What a support that bears a reaction puts on the shaft under it; none where that is zero."""
    if reaction == 0.0:
        return None
    borne = Known(reaction, "N", "R", origin=_BEND, inputs=inputs)
    printed = equation_of(shaft_loads.opposite)
    return Known(
        shaft_loads.opposite(reaction),
        printed.unit,
        printed.symbol,
        origin=printed,
        inputs=(borne,),
    )


def _of(known: Known | None) -> float:
    return 0.0 if known is None else known.number


_BEND = equation_of(beam.bend)
_MOMENT = equation_of(beam.bending_moment)
