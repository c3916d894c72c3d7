"""Measures of the states beyond the points of operation: start, stops, windmilling, loss of oil."""

from checker.known import Detail, Known, Unknown, Value, all_known
from checker.measures.bounded import largest
from checker.measures.design import Design
from checker.measures.registry import measure
from checker.measures.stated import stated
from checker.spec.subject import Subject

_STATES = (
    "start",
    "kick_back",
    "idle",
    "closed_throttle",
    "shutdown",
    "engine_stopped",
    "oil_loss",
)
_DRIVING, _DRIVEN, _NONE = "engine drives", "propeller drives", "none"
_REVERSES = "reverses"
_STANDS_WITH_ENGINE = ("engine", "driving side")
_NO_SUPPLY = ("none",)


@measure("states", "", "whether direction of torque and effect of every state are described")
def all_described(design: Design, states: Subject) -> Value:
    """Whether torque and effect of each of the seven states are stated; loss of oil by its time."""
    fields = [
        f"{name}.{field}"
        for name in _STATES
        if name != "oil_loss"
        for field in ("torque", "effect")
    ]
    return stated(states, *fields)


@measure("states", "", "whether the stated direction of torque fits the drive")
def torques_agree(design: Design, states: Subject) -> Value:
    """Whether each state is stated with the torque that the drive leaves it.

    Behind a one-way clutch no torque passes when the propeller runs ahead; without one the
    propeller drives. At the start and at idle the engine drives, pulsating through zero at times. A
    kick-back reverses the torque, or a clutch keeps it away; at shutdown the propeller turns on.
    """
    clutch = _clutch_present(design)
    if isinstance(clutch, Unknown):
        return clutch
    overrun = _NONE if clutch.value else _DRIVEN
    expected = {
        "start": (_DRIVING, _REVERSES),
        "kick_back": (_REVERSES, _NONE) if clutch.value else (_REVERSES,),
        "idle": (_DRIVING, _REVERSES),
        "shutdown": (_REVERSES, _NONE) if clutch.value else (_REVERSES, _DRIVEN),
        "closed_throttle": (overrun,),
        "engine_stopped": (overrun,),
    }
    values = {name: states.given(f"{name}.torque", name) for name in expected}
    unknown = all_known(*values.values())
    if unknown is not None:
        return unknown
    known = tuple(value for value in values.values() if isinstance(value, Known))
    agree = all(value.value in expected[name] for name, value in zip(expected, known, strict=True))
    return Known(agree, "", "agree", inputs=(clutch, *known))


@measure("states", "", "whether the engine can be restarted as stated", at="engine_stopped")
def restart_possible(design: Design, states: Subject) -> Value:
    """Whether the stated means of restart can work: not windmilling through a one-way clutch."""
    means = states.given("engine_stopped.restart", "restart")
    clutch = _clutch_present(design)
    if isinstance(means, Unknown) or isinstance(clutch, Unknown):
        return all_known(means, clutch) or means
    possible = not (means.value == "windmilling" and clutch.value)
    return Known(possible, "", "possible", inputs=(means, clutch))


@measure("states", "", "whether a restart in flight is planned at all", at="engine_stopped")
def restart_planned(design: Design, states: Subject) -> Value:
    """Whether the engine is restarted in flight by any means."""
    means = states.given("engine_stopped.restart", "restart")
    if isinstance(means, Unknown):
        return means
    return Known(means.value != _NONE, "", "planned", inputs=(means,))


@measure("states", "", "whether the pump stands still while the propeller turns")
def pump_stands(design: Design, states: Subject) -> Value:
    """Whether the oil pump stops with the engine while the propeller windmills on."""
    lubrication = design.subjects.the("lubrication")
    driven_by, clutch = lubrication.given("pump_driven_by", "pump"), _clutch_present(design)
    if isinstance(driven_by, Unknown) or isinstance(clutch, Unknown):
        return all_known(driven_by, clutch) or driven_by
    stands = bool(clutch.value) and driven_by.value in _STANDS_WITH_ENGINE
    return Known(stands, "", "pump stands", inputs=(driven_by, clutch))


@measure("states", "", "whether what overruns gets oil, engine stopped", at="engine_stopped")
def overrunning_supplied(design: Design, states: Subject) -> Value:
    """Whether the stated supply exists: not the pump where it stands, and not none."""
    supply = states.given("engine_stopped.supply", "supply")
    stands = design.measure("pump_stands", states)
    if isinstance(supply, Unknown) or isinstance(stands, Unknown):
        return all_known(supply, stands) or supply
    missing = supply.value in _NO_SUPPLY or (bool(stands.value) and supply.value == "pump")
    return Known(not missing, "", "supplied", inputs=(supply, stands))


@measure("states", "1", "overrunning parts that the stated supply misses", at="engine_stopped")
def overrunning_unreached(design: Design, states: Subject) -> Value:
    """Number of parts that turn on behind the clutch, and itself, that the supply misses.

    A pump reaches what its paths end in, stored oil what keeps it, grease a greased bearing and the
    clutch; splash reaches all if a gear behind the clutch dips where the propeller overruns. That
    none is needed is true of nothing that turns.
    """
    clutch, supply = _clutch_present(design), states.given("engine_stopped.supply", "supply")
    if isinstance(clutch, Unknown) or isinstance(supply, Unknown):
        return all_known(clutch, supply) or supply
    turning = _overrunning_parts(design) if clutch.value else []
    reaches = _REACH.get(str(supply.value))
    reached = reaches(design, states, turning) if reaches else set()
    if isinstance(reached, Unknown):
        return reached
    dry = [name for name in turning if name not in reached]
    origin = Detail("the supply does not reach it")
    inputs = tuple(Known(name, "", "part", origin=origin) for name in dry)
    return Known(len(dry), "1", "n", origin="count of overrunning parts", inputs=(supply, *inputs))


def _piped(design: Design, states: Subject, turning: list[str]) -> set[str] | Unknown:
    """What the paths of the oil end in."""
    paths = design.subjects.the("lubrication").raw("paths")
    return Unknown((("lubrication", "paths"),)) if paths is None else {path.to for path in paths}


def _kept(design: Design, states: Subject, turning: list[str]) -> set[str] | Unknown:
    """What keeps oil of its own."""
    kept = states.raw("engine_stopped.keeps_oil")
    if kept is None or None in kept:
        return Unknown((states.place("engine_stopped.keeps_oil"),))
    return set(kept)


def _greased(design: Design, states: Subject, turning: list[str]) -> set[str]:
    """The greased bearings, and the clutch."""
    bearings = design.subjects.all("bearing")
    return {"clutch", *(each.name for each in bearings if each.raw("lubrication") == "grease")}


def _splashed(design: Design, states: Subject, turning: list[str]) -> set[str] | Unknown:
    """All that turns, if a gear dips."""
    dips = _dips_behind_clutch(design) if turning else None
    if isinstance(dips, Unknown):
        return dips
    return set(turning) if dips and dips.value else set()


_REACH = {"pump": _piped, "stored oil": _kept, "grease": _greased, "splash": _splashed}


def _dips_behind_clutch(design: Design) -> Value:
    """Whether a gear that turns on dips into the oil at each point where the clutch overruns."""
    behind = _shafts_behind(design)
    gears = [each for each in design.subjects.all("gear") if each.raw("shaft") in behind]
    deepest = []
    for point in design.points:
        overruns = design.motion.overruns(point)
        if isinstance(overruns, Unknown):
            return overruns
        if overruns.value:
            deepest.append(largest([design.measure("lowest_dip", each, point) for each in gears]))
    unknown = all_known(*deepest)
    if unknown is not None or not deepest:
        return unknown or Unknown((("operation",),), "no point shows the clutch overrunning")
    known = tuple(each for each in deepest if isinstance(each, Known))
    dips = all(each.number > 0.0 for each in known)
    return Known(dips, "", "dips", origin="lowest level, where the clutch overruns", inputs=known)


def _overrunning_parts(design: Design) -> list[str]:
    """The clutch, and the bearings of the shafts of the power path behind it."""
    behind = _shafts_behind(design)
    bearings = design.subjects.all("bearing")
    on_them = [each.name for each in bearings if each.raw("shaft") in behind]
    return ["clutch", *on_them] if behind else []


def _shafts_behind(design: Design) -> list[str]:
    """The shafts of the power path behind the clutch."""
    between = design.subjects.the("clutch").raw("between")
    shafts = list(design.train.path_shafts)
    if not between or between[1] not in shafts:
        return []
    return shafts[shafts.index(between[1]) :]


@measure("states", "", "whether every state in which parts turn has a supply of oil")
def turning_supplied(design: Design, states: Subject) -> Value:
    """Whether start, idle, descent and shutdown name a supply, and none of them is none."""
    names = ("start", "idle", "closed_throttle", "shutdown")
    supplies = [states.given(f"{name}.supply", name) for name in names]
    unknown = all_known(*supplies)
    known = tuple(supply for supply in supplies if isinstance(supply, Known))
    return unknown or Known(
        all(supply.value not in _NO_SUPPLY for supply in known), "", "supplied", inputs=known
    )


@measure("states", "", "whether evidence and sign of the loss of oil are stated", at="oil_loss")
def oil_loss_shown(design: Design, states: Subject) -> Value:
    """Whether it is stated how the crew learns of it, and what the time to damage rests on."""
    return stated(states, "oil_loss.shown_by", "oil_loss.evidence")


def _clutch_present(design: Design) -> Value:
    present = design.subjects.presence("clutch")
    if present is None:
        return Unknown((("clutch",),))
    return Known(present, "", "clutch", path=("clutch",))
