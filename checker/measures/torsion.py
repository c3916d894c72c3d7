"""Measures of the torsional survey of the drive as a whole: modes, crossings, barred ranges."""

import math

from checker.known import Detail, Known, Unknown, Value, compute, merged
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import engine as engine_mechanics
from checker.mechanics import torsion
from checker.mechanics import torsional_parts as parts
from checker.mechanics.equation import equation_of
from checker.spec.subject import Subject
from checker.train import torsional_values as values
from checker.train.barred_ranges import BarredRanges, marine
from checker.train.resonance import COUNTS_ABOVE, Resonances, mode_words
from checker.train.what_moves_it import Movers

_RPM = 60.0 / math.tau
_WANTED = 0.2
_NONE = "none"
_NO_CHANGE = "no single change of damper, inertia or speed"


def at_point(design: Design, point: Subject) -> tuple[Resonances, int] | Unknown:
    """The survey and the index of a point in it, or why there is none."""
    resonances = design.resonances
    if isinstance(resonances, Unknown):
        return resonances
    index = resonances.survey.points.get(point.name)
    if index is None:
        stated = (
            point.given("engine_speed"),
            point.given("power"),
            design.motion.driver(point),
        )
        return merged([each for each in stated if isinstance(each, Unknown)])
    return resonances, index


def torque_passes(design: Design, point: Subject) -> Value:
    """Whether torque passes from engine to propeller at a point, either way."""
    overruns = design.motion.overruns(point)
    if isinstance(overruns, Unknown):
        return overruns
    return Known(not overruns.value, "", "torque passes", inputs=(overruns,))


@varying_measure("drive", "", "whether torque passes between engine and propeller")
def carries(design: Design, drive: Subject, point: Subject) -> Value:
    """Whether torque passes at the point: not where the clutch overruns."""
    return torque_passes(design, point)


@measure("drive", "Hz", "lowest torsional natural frequency, damper as stated")
def lowest_frequency(design: Design, drive: Subject) -> Value:
    """f_1 of the drive with the damper as stated."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    return _mode_frequency(design, survey.model.running)


@measure("drive", "Hz", "lowest torsional natural frequency, damper hot and soft")
def lowest_frequency_hot(design: Design, drive: Subject) -> Value:
    """f_1 of the drive with the damper at the soft end of its stiffness."""
    return _mode_frequency(design, 0)


@measure("drive", "Hz", "lowest torsional natural frequency, damper cold and stiff")
def lowest_frequency_cold(design: Design, drive: Subject) -> Value:
    """f_1 of the drive with the damper at the stiff end of its stiffness."""
    return _mode_frequency(design, -1)


def _mode_frequency(design: Design, state: int) -> Value:
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    frequency = float(survey.modes[state].frequency[1])
    origin = equation_of(torsion.natural_modes)
    return Known(frequency, "Hz", "f₁", origin=origin, inputs=survey.model.inputs)


@measure("drive", "Hz", "frequency of engine against propeller as two masses on the damper")
def two_mass_frequency(design: Design, drive: Subject) -> Value:
    """f of all that stands ahead of the damper against all behind it: a check by hand of f_1."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    nodes = survey.model.nodes
    damper = survey.model.joint("damper")
    spring = nodes[damper].stiffness if damper is not None else None
    if damper is None or spring is None:
        return Unknown(because="no damper stands in the model")
    behind = survey.model.behind(damper)
    return compute(
        parts.two_mass_frequency,
        spring,
        values.summed([node.inertia for index, node in enumerate(nodes) if index not in behind]),
        values.summed([node.inertia for index, node in enumerate(nodes) if index in behind]),
    )


@measure("drive", "", "torsional modes below the highest excitation, in words")
def modes(design: Design, drive: Subject) -> Value:
    """Natural frequencies with what swings against what, and where the twist sits."""
    survey = design.survey
    if isinstance(survey, Unknown):
        return survey
    running = survey.modes[survey.model.running]
    highest = max(survey.orders) * survey.top / math.tau
    lines = [
        f"{frequency:.1f} Hz ({low:.1f} hot, {high:.1f} cold): "
        + mode_words(survey.model, running, mode)
        for mode, (frequency, low, high) in enumerate(
            zip(
                running.frequency,
                survey.modes[0].frequency,
                survey.modes[-1].frequency,
                strict=True,
            )
        )
        if mode and frequency <= highest
    ]
    return survey.found("; ".join(lines) or _NONE, "", "modes")


@measure("drive", "", "orders that meet a natural frequency, each with its torque")
def interference(design: Design, drive: Subject) -> Value:
    """Every crossing of an excited order with a mode up to the top of the survey."""
    resonances = design.resonances
    if isinstance(resonances, Unknown):
        return resonances
    words = [resonances.crossing_words(each) for each in resonances.listed()]
    return resonances.survey.found("; ".join(words) or _NONE, "", "crossings")


@varying_measure("drive", "1", "separation of the nearest order that counts from resonance")
def separation(design: Design, drive: Subject, point: Subject) -> Value:
    """s, least |f − f_n| / f_n of the orders whose torque is more than a tenth of the mean."""
    found, movers = at_point(design, point), design.movers
    if isinstance(found, Unknown):
        return found
    if isinstance(movers, Unknown):
        return movers
    resonances, index = found
    survey = resonances.survey
    return _separation(movers, float(survey.speed[index]), float(survey.mean[index]))


@measure("drive", "1", "separation from resonance at idle and where the engine is held")
def dwell_separation(design: Design, drive: Subject) -> Value:
    """s at the idle speed of the engine and its dwell speeds, along the propeller law."""
    movers = design.movers
    if isinstance(movers, Unknown):
        return movers
    engine = design.subjects.the("engine")
    stated = engine.raw("dwell_speeds") or []
    if None in stated:
        return Unknown((engine.place("dwell_speeds"),))
    survey = movers.survey
    apart = [_separation(movers, speed, float(survey.law(speed))) for speed in survey.held]
    return min(apart, key=lambda value: value.number)


def _separation(movers: Movers, speed: float, mean: float) -> Known:
    """s at a speed [rad/s] and mean torque [N m], with the order that is nearest."""
    resonances, survey = movers.resonances, movers.survey
    apart, nearest = resonances.separation(speed, mean)
    words = resonances.crossing_words(nearest) if nearest else "no order counts here"
    details = [COUNTS_ABOVE, Known(words, "", "nearest", origin=Detail("torsional survey"))]
    if apart < _WANTED and (speed, mean) in movers.worst:
        words = _clearing(movers, speed, mean)
        details.append(Known(words, "", "cleared by", origin=Detail("torsional survey")))
    return survey.found(apart, "1", "s", *details)


def _clearing(movers: Movers, speed: float, mean: float) -> str:
    changes = [
        f"{words} times {factor:.3g}"
        + (f" ({speed * factor * _RPM:.0f} rpm)" if words == "speed" else "")
        for words, factor in movers.clearing(speed, mean, _WANTED)
    ]
    return "; ".join(changes) or _NO_CHANGE


@measure("drive", "", "smallest changes that clear the worst separation")
def smallest_change(design: Design, drive: Subject) -> Value:
    """The factor on damper, inertias or speed that gives every counting order 20 % separation.

    It is that for the operation point, idle or held speed that stands nearest to resonance, and
    brings no other of them nearer than that.
    """
    movers = design.movers
    if isinstance(movers, Unknown):
        return movers
    speed, mean = min(movers.worst, key=lambda each: movers.resonances.separation(*each)[0])
    words = _NONE
    if movers.resonances.separation(speed, mean)[0] < _WANTED:
        words = _clearing(movers, speed, mean)
    return movers.survey.found(words, "", "change")


@measure("drive", "", "what moves the lowest natural frequency, and what idle speed does")
def sensitivity(design: Design, drive: Subject) -> Value:
    """Lowest frequency, and the major order at idle over it, for a tenth more of each thing."""
    movers = design.movers
    if isinstance(movers, Unknown):
        return movers
    survey, major = movers.survey, major_order(design)
    words = []
    for moved in movers.sensitivity():
        text = f"10 % more {moved.words}: {100.0 * moved.change:+.1f} % on the lowest frequency"
        if isinstance(major, Known):
            ratio = major.number * moved.idle / math.tau / moved.cold
            text += f", order {major.number:g} at idle at {ratio:.2f} times the cold one"
        words.append(text)
    return survey.found("; ".join(words), "", "sensitivity")


@measure("drive", "", "barred speed ranges of the crankshaft")
def barred_ranges(design: Design, drive: Subject) -> Value:
    """Speeds at which a torque exceeds what is allowed or teeth or clutch reverse, or none.

    Each with what bars it. The marine formula about the strongest crossing in such a range stands
    beside it for comparison.
    """
    resonances, barred = design.resonances, design.barred
    if isinstance(resonances, Unknown):
        return resonances
    if isinstance(barred, Unknown):
        return barred
    words = []
    for low, high in barred.proved:
        text = f"{low * _RPM:.0f} to {high * _RPM:.0f} rpm, {barred.causes(low, high)}"
        meeting = [
            each for each in resonances.listed() if each.speeds[0] <= high and each.speeds[1] >= low
        ]
        strongest = max(meeting, key=lambda each: each.torque, default=None)
        beside = strongest and marine(barred.survey, strongest)
        if strongest and beside:
            text += (
                f" ({strongest.words.rstrip(',')}; marine formula, from memory, for comparison "
                f"only: {beside[0] * _RPM:.0f} to {beside[1] * _RPM:.0f} rpm)"
            )
        words.append(text)
    return _as_far_as_rated(barred, barred.survey.found("; ".join(words) or _NONE, "", "barred"))


def _as_far_as_rated(barred: BarredRanges, found: Known) -> Value:
    """What the ratings that are stated prove; with one missing it is the best there can be."""
    missing = barred.missing
    if missing is None:
        return found
    return Unknown(missing.missing, missing.because, at_best=found)


@varying_measure("drive", "", "whether the point lies outside every barred range")
def outside_barred(design: Design, drive: Subject, point: Subject) -> Value:
    """Whether the crankshaft speed of the point is in no barred range.

    The ranges stand on the propeller law; the torque at the point itself bars it as well.
    """
    speed = point.given("engine_speed", "ω")
    barred, found = design.barred, at_point(design, point)
    if isinstance(barred, Unknown) or isinstance(speed, Unknown) or isinstance(found, Unknown):
        return merged([each for each in (barred, speed, found) if isinstance(each, Unknown)])
    inside = barred.at_point(found[1]) or barred.at_speed(speed.number)
    return _free(barred, inside, speed)


@measure("drive", "", "whether idle and held speeds lie outside every barred range")
def dwell_outside_barred(design: Design, drive: Subject) -> Value:
    """Whether idle and the speeds at which the engine is held are in no barred range."""
    barred, engine = design.barred, design.subjects.the("engine")
    if isinstance(barred, Unknown):
        return barred
    survey = barred.survey
    if any(barred.at_speed(speed) for speed in survey.held):
        return _free(barred, True)
    if None in (engine.raw("dwell_speeds") or ()):
        return Unknown((engine.place("dwell_speeds"),))
    beyond = [speed for speed in survey.held if not survey.idle <= speed <= survey.top]
    if beyond:
        return Unknown(
            because=f"{beyond[0] * _RPM:.0f} rpm lies outside the surveyed speeds, "
            f"{survey.idle * _RPM:.0f} to {survey.top * _RPM:.0f} rpm"
        )
    return _free(barred, False)


def _free(barred: BarredRanges, inside: bool, *speed: Known) -> Value:
    found = barred.survey.found(not inside, "", "outside", *speed)
    # No rating that is still missing can lift the bar of another part.
    return found if inside else _as_far_as_rated(barred, found)


@measure("drive", "", "whether the blades swing in the model")
def blade_mode_in_model(design: Design, drive: Subject) -> Value:
    """Whether the first blade mode is part of the torsional model."""
    share = design.subjects.the("propeller").given("blade_inertia_share", "q")
    if isinstance(share, Known):
        return Known(True, "", "blades swing", inputs=(share,))
    return Known(False, "", "blades swing", origin="no blade_inertia_share: taken as rigid")


@measure("drive", "", "whether the crankshaft twists in the model")
def crank_in_model(design: Design, drive: Subject) -> Value:
    """Whether the throws of the crankshaft are part of the torsional model."""
    engine = design.subjects.the("engine")
    if engine.raw("crankshaft") is None:
        return Known(False, "", "crank twists", origin="no engine.crankshaft: taken as rigid")
    return Known(True, "", "crank twists", path=engine.place("crankshaft"))


def major_order(design: Design) -> Value:
    """First major order of the engine, firings per turn of the crankshaft."""
    engine = design.subjects.the("engine")
    strokes = compute(engine_mechanics.strokes_of, engine.given("cycle", "cycle"))
    return compute(
        engine_mechanics.firing_events_per_revolution, engine.given("cylinders", "z"), strokes
    )


@measure("propeller", "kg m2", "inertia by the swing test", at="swing_test")
def swung_inertia(design: Design, propeller: Subject) -> Value:
    """J from the period of a swing on two or three wires."""
    return values.swung_inertia(propeller)


@measure("propeller", "kg m2", "inertia in the torsional model", at="inertia")
def inertia_used(design: Design, propeller: Subject) -> Value:
    """J as stated, or by the swing test."""
    return values.propeller_inertia(propeller)


@measure("gear", "kg m2", "inertia in the torsional model", at="inertia")
def gear_inertia_used(design: Design, gear: Subject) -> Value:
    """J as stated, or of a steel disc."""
    shaft = design.subjects.the("shaft", str(gear.raw("shaft")))
    return values.gear_inertia(design.wheels[gear.name], shaft)


@measure("shaft", "kg m2", "inertia in the torsional model", at="inertia")
def shaft_inertia_used(design: Design, shaft: Subject) -> Value:
    """J as stated, or of its sections in steel."""
    return values.shaft_inertia(shaft)


@measure("shaft", "N m/rad", "stiffness in the torsional model", at="torsional_stiffness")
def shaft_stiffness_used(design: Design, shaft: Subject) -> Value:
    """C as stated, or of its sections in steel."""
    return values.shaft_stiffness(shaft)


@measure("mesh", "N m/rad", "torsional stiffness in the torsional model", at="stiffness")
def mesh_stiffness_used(design: Design, mesh: Subject) -> Value:
    """C_m on the driver as stated, or by ISO 6336-1."""
    return values.mesh_spring(design.pairs[mesh.name])
