"""Measures of the drive as a whole and of its shafts: ratio, sense, speeds, torques."""

from itertools import pairwise

from checker.known import Known, Unknown, Value, compute
from checker.measures.design import Design
from checker.measures.registry import measure, varying_measure
from checker.mechanics import involute, kinematics
from checker.spec.subject import Subject


@varying_measure("shaft", "rad/s", "speed")
def speed(design: Design, shaft: Subject, point: Subject) -> Value:
    """ω, speed of the shaft [rad/s]."""
    return design.motion.speed(shaft.name, point)


@varying_measure("shaft", "N m", "torque, positive where the engine drives")
def torque(design: Design, shaft: Subject, point: Subject) -> Value:
    """T, torque carried by the shaft [N m]."""
    return design.motion.torque(shaft.name, point)


@measure("shaft", "1", "sense of rotation, +1 clockwise from the engine towards the propeller")
def sense(design: Design, shaft: Subject) -> Value:
    """Sense of rotation as a sign."""
    return design.motion.sense(shaft.name)


@measure("drive", "1", "engine speed over propeller speed", at="ratio")
def computed_ratio(design: Design, drive: Subject) -> Value:
    """i, ratio by tooth counts."""
    unit_speed = Known(1.0, "rad/s", "ω", origin="any speed: the ratio does not depend on it")
    ratio: Value = compute(kinematics.speed_ratio, unit_speed, unit_speed)
    for link in design.train.power_path:
        if link.kind == "mesh":
            pair = design.pairs[link.name]
            ratio = compute(kinematics.step_ratio, ratio, pair.driver.teeth, pair.driven.teeth)
    return ratio


@measure("drive", "1", "difference of stated and computed ratio", at="ratio")
def ratio_disagreement(design: Design, drive: Subject) -> Value:
    """How far the stated ratio lies from the tooth counts, relative."""
    return compute(
        kinematics.relative_difference,
        _stated_ratio(design, drive),
        design.measure("computed_ratio", drive),
    )


def _stated_ratio(design: Design, drive: Subject) -> Value:
    name = design.subjects.ratio_set
    if name is None:
        return drive.given("ratio", "i")
    place = ("ratio_sets", name, "ratio")
    stated = design.subjects.spec.ratio_sets[name].ratio
    return Unknown((place,)) if stated is None else Known(stated, "1", "i", path=place)


@measure("drive", "", "arrangement of the gear train as computed", at="arrangement")
def computed_arrangement(design: Design, drive: Subject) -> Value:
    """single, idler, compound or mixed, by the power path."""
    meshes = [link for link in design.train.power_path if link.kind == "mesh"]
    pairs = [design.pairs[link.name] for link in meshes]
    inner = [(before.driven, after.driver) for before, after in pairwise(pairs)]
    idlers = [arriving is leaving for arriving, leaving in inner]
    if not idlers:
        word = "single"
    elif all(idlers):
        word = "idler"
    elif not any(idlers):
        word = "compound"
    else:
        word = "mixed"
    return Known(word, "", "arrangement", origin="order of the gears in the power path")


@measure("drive", "", "whether stated and computed arrangement agree", at="arrangement")
def arrangement_agrees(design: Design, drive: Subject) -> Value:
    """Whether the stated arrangement is the one that the parts make."""
    stated = drive.given("arrangement")
    computed = design.measure("computed_arrangement", drive)
    if isinstance(stated, Unknown) or isinstance(computed, Unknown):
        return stated
    agrees = stated.value == computed.value
    return Known(agrees, "", "agree", inputs=(stated, computed))


@measure("drive", "", "whether the propeller turns as stated", at="installation")
def propeller_sense_agrees(design: Design, drive: Subject) -> Value:
    """Whether the stated sense of the propeller is the one that the train gives it."""
    propeller = design.subjects.the("propeller")
    stated = compute(kinematics.sense_of, propeller.given("rotation", "rotation"))
    turns = design.motion.sense(design.train.last)
    return compute(kinematics.senses_agree, stated, turns)


@measure("drive", "1", "sum of the shares of the operation points")
def share_sum(design: Design, drive: Subject) -> Value:
    """Σ share over the operation points; one if they cover the whole life."""
    if not design.points:
        return Unknown((("operation",),))
    total: Value = design.points[0].given("share", "q")
    for point in design.points[1:]:
        total = compute(kinematics.sum_of_shares, total, point.given("share", "q"))
    return total


@measure("point", "1", "power of the point over the rated power", at="power")
def power_over_rating(design: Design, point: Subject) -> Value:
    """Power over the take-off rating at take-off, over the maximum continuous one elsewhere."""
    engine = design.subjects.the("engine")
    kind = point.given("kind")
    if isinstance(kind, Unknown):
        return kind
    field = "take_off.power" if kind.value == "take-off" else "maximum_continuous.power"
    return compute(kinematics.quotient, point.given("power", "P"), engine.given(field, "P_rated"))


@measure("mesh", "1", "common factor of the tooth counts")
def hunting_common_factor(design: Design, mesh: Subject) -> Value:
    """Common factor of the tooth counts; one where every tooth meets every other."""
    pair = design.pairs[mesh.name]
    return compute(involute.hunting_common_factor, pair.driver.teeth, pair.driven.teeth)
