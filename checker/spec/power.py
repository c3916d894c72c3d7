"""What goes in and what comes out: drive, engine, operation points, propeller."""

from typing import Annotated

from pydantic import Field

from checker.mechanics.oil_families import FAMILY_NAMES
from checker.spec.fields import (
    Attitude,
    Choice,
    Count,
    Duration,
    Flag,
    Flow,
    FluidTemperature,
    Force,
    Inertia,
    Length,
    Mass,
    Name,
    Number,
    Of,
    Power,
    Ratio,
    Section,
    Share,
    Size,
    Speed,
    Stiffness,
    Stream,
    Temperature,
    Text,
    Torque,
    Turning,
    Whole,
    Words,
    stated,
)
from checker.spec.part import Part
from checker.spec.quantity import Quantity

InflowAngle = Annotated[Quantity | None, Of("angle", at_least="0 deg", at_most="45 deg")]
Sense = Annotated[str | None, Choice(("clockwise", "anticlockwise"))]


class ApplicationFactor(Part):
    """What the gear rating puts on the mean torque for the engine's torque pulses."""

    factor: Annotated[float | None, Number(1.0, 1000.0)] = stated(
        "Peak over mean torque at the gears as the rating of ISO 6336 wants it (K_A)."
    )
    evidence: Text = stated("How it is known: torque measured on the drive, or calculated.")
    in_spectrum: Flag = stated(
        "Whether the powers of the operation points already hold the vibratory torque, so that the "
        "factor is 1."
    )


class Drive(Part):
    """What the drive is and what it is for."""

    name: Name = Field(description="Name of the drive.")
    revision: Text = stated("Revision of the design that this spec describes.")
    purpose: Text = stated("Aircraft and use the drive is meant for.")
    arrangement: Annotated[str | None, Choice(("single", "idler", "compound"))] = stated(
        "Kind of gear train: single (one mesh), idler (a gear between two others) or compound "
        "(two or more steps through lay shafts). Compared with the train as computed."
    )
    ratio: Ratio = stated(
        "Engine speed over propeller speed as designed; compared with the tooth counts."
    )
    installation: Annotated[str | None, Choice(("tractor", "pusher"))] = stated(
        "Tractor: propeller thrust pulls the propeller shaft away from the engine. "
        "Pusher: it pushes the shaft towards the engine."
    )
    limit_load_factor: Annotated[float | None, Number(1.0, 12.0)] = stated(
        "Limit load factor of the aircraft (flight condition A), such as 3.8; three quarters of it "
        "go with the limit torque at take-off, all of it with that at maximum continuous."
    )
    target_life: Duration = stated("Service life wanted between overhauls.")
    build_temperature: Temperature = stated(
        "Temperature at which dimensions and backlash are stated."
    )
    failure_probability: Share = stated(
        "Chance of failure of a gear within the target life that the rating allows, such as 1 %."
    )
    application_factor: ApplicationFactor | None = stated(
        "Application factor of the gear rating, with its evidence."
    )


class Rating(Part):
    """A power at a speed."""

    power: Power = stated("Power at the crankshaft.")
    speed: Turning = stated("Crankshaft speed.")


class Harmonic(Part):
    """One harmonic of the engine's gas torque at maximum continuous power.

    It stands for amplitude x cos(order x crank angle + phase); the torque of the reciprocating
    masses is computed besides.
    """

    order: Annotated[float | None, Number(0.0, 100.0)] = stated(
        "Order per crankshaft revolution, such as 0.5, 1 or 1.5."
    )
    amplitude: Torque = stated("Amplitude of this harmonic of the gas torque.")
    phase: Annotated[Quantity | None, Of("angle")] = stated(
        "Phase of this harmonic at the firing dead centre of the first cylinder."
    )


class Crankshaft(Part):
    """The crankshaft throw by throw, for the torsional model; left out, it is one inertia."""

    throw_inertia: Inertia = stated(
        "Inertia of one throw with the rotating mass and half the reciprocating mass on it."
    )
    throw_stiffness: Stiffness = stated("Torsional stiffness from one throw to the next.")
    output_stiffness: Stiffness = stated("Torsional stiffness from the last throw to the flange.")
    vibratory_torque_rating: Torque = stated(
        "Alternating torque that the crankshaft bears for long, in its journals and crank pins."
    )
    cylinders_per_throw: Annotated[int | None, Count(1, 2)] = stated("Cylinders on one throw.")
    firing_order: list[Annotated[int | None, Count(1, 12)]] | None = stated(
        "Cylinders in the order in which they fire; cylinder 1 is the farthest from the drive."
    )


class Crankcase(Part):
    """Pressure in the engine crankcase, to which a drive may be vented."""

    pressure: Annotated[Quantity | None, Of("pressure")] = stated(
        "Gauge pressure in the crankcase in operation; suction is negative. No default."
    )
    pressure_evidence: Text = stated("How that pressure is known: measurement, maker's figure.")
    scavenged: Flag = stated("Whether a dry-sump pump draws oil and air out of the crankcase.")


class InternalReduction(Part):
    """A reduction inside the engine, ahead of this drive."""

    ratio: Ratio = stated("Crankshaft speed over speed of the engine's output.")
    reverses: Flag = stated("Whether the output turns against the crankshaft.")


class EngineOil(Part):
    """Oil in the engine itself."""

    name: Annotated[str | None, Choice(FAMILY_NAMES)] = stated("Generic oil family in the engine.")


class Engine(Part):
    """The engine that drives the gearbox."""

    description: Text = stated("What the engine is, in a few words.")
    drives: Name = Field(
        description="Name of the shaft that the crankshaft (or the engine's own reduction) turns."
    )
    one_piece: Flag = stated(
        "Whether that shaft is of one piece with the crankshaft, so that no joint lies between."
    )
    cylinders: Annotated[int | None, Count(1, 12)] = stated("Number of cylinders.")
    layout: Annotated[str | None, Choice(("in-line", "V", "boxer"))] = stated(
        "Arrangement of the cylinders."
    )
    cycle: Annotated[str | None, Choice(("four-stroke", "two-stroke"))] = stated("Working cycle.")
    firing_intervals: list[Annotated[Quantity, Of("angle", at_least="0 deg")]] | None = stated(
        "Crank angles from one firing to the next over one working cycle, in firing order; "
        "they add up to 720 deg (four-stroke) or 360 deg (two-stroke)."
    )
    rotation: Sense = stated(
        "Sense of the crankshaft, seen from the engine looking towards the propeller."
    )
    idle_speed: Annotated[Quantity | None, Of("angular_speed", above="0 rpm")] = stated(
        "Idle speed of the crankshaft."
    )
    dwell_speeds: list[Turning] | None = stated(
        "Other crankshaft speeds at which the engine is held on the ground, such as warm-up and "
        "ignition check."
    )
    maximum_continuous: Rating | None = stated("Maximum continuous power and its speed.")
    take_off: Rating | None = stated("Take-off power and its speed.")
    inertia: Inertia = stated(
        "Inertia of the crankshaft and what turns with it, without the shafts named apart in "
        "shafts."
    )
    crankshaft: Crankshaft | None = stated("The crankshaft throw by throw.")
    first_crank_frequency: Annotated[Quantity | None, Of("frequency", above="0 Hz")] = stated(
        "Lowest torsional frequency of the crankshaft with all that turns on it, its end at the "
        "flywheel held. It shows how far the crankshaft may be taken as one inertia."
    )
    bore: Size = stated("Cylinder bore.")
    stroke: Size = stated("Piston stroke.")
    rod_length: Size = stated("Length of the connecting rod between centres.")
    reciprocating_mass: Mass = stated("Reciprocating mass of one cylinder.")
    compression_ratio: Annotated[float | None, Number(2.0, 50.0)] = stated(
        "Geometric compression ratio."
    )
    cylinder_spread: Annotated[Quantity | None, Of("ratio", at_least="0 %", at_most="50 %")] = (
        stated(
            "How far the work of the weakest cylinder stays behind the mean of all. It leaves a "
            "remainder in every order in which equal cylinders cancel."
        )
    )
    manifold_pressure: Annotated[
        Quantity | None, Of("pressure", at_least="20 kPa", at_most="500 kPa")
    ] = stated(
        "Absolute pressure in the inlet manifold at maximum continuous power; needed of a "
        "supercharged engine."
    )
    idle_manifold_pressure: Annotated[
        Quantity | None, Of("pressure", at_least="10 kPa", at_most="500 kPa")
    ] = stated(
        "Absolute pressure in the inlet manifold at idle; of an engine without a throttle as at "
        "full load."
    )
    torque_harmonics: list[Harmonic] | None = stated(
        "Harmonics of the gas torque of the whole engine at maximum continuous power. What is left "
        "out is computed from bore, stroke, rod and compression ratio."
    )
    output_damped: Flag = stated(
        "Whether the engine itself damps its output torque ahead of the drive (by a damper or "
        "clutch pack of its own)."
    )
    output_damped_evidence: Text = stated(
        "What shows that it does: a document of the engine's maker, or a measurement."
    )
    internal_reduction: Annotated[InternalReduction | str | None, Section(InternalReduction)] = (
        stated("Reduction inside the engine ahead of this drive, or none.")
    )
    crankcase: Crankcase | None = stated("Crankcase pressure and scavenging.")
    oil: EngineOil | None = stated("Oil of the engine.")
    starter_torque_limit: Torque = stated(
        "Torque at the crankshaft that starter and engine bear when the propeller is locked to "
        "the crank."
    )
    kick_back_torque: Torque = stated(
        "Greatest torque by which the gas turns the crankshaft back when it fires too early at a "
        "start, as a size; by measurement, calculation or its maker."
    )
    drag_torque: Torque = stated(
        "Torque at the crankshaft that turns the dead engine, the peak of compression included."
    )


class OperationPoint(Part):
    """A steady state in which the drive runs for a share of its life."""

    name: Annotated[str, Words("a name", 80)] = Field(
        description="Name of the point; each name once."
    )
    kind: Annotated[
        str | None,
        Choice(
            (
                "ground idle",
                "taxi",
                "warm-up",
                "take-off",
                "climb",
                "cruise",
                "descent",
                "approach",
            )
        ),
    ] = stated("Phase of flight.")
    engine_speed: Turning = stated("Crankshaft speed.")
    power: Power = stated("Power at the crankshaft.")
    driving: Annotated[str | None, Choice(("engine", "propeller"))] = stated(
        "Who drives: the engine, or the windmilling propeller (overrun)."
    )
    share: Share = stated("Share of the total running time.")
    airspeed: Stream = stated("True airspeed.")
    thrust: Force = stated(
        "Propeller thrust; negative for braking or windmilling. Left out where the engine drives, "
        "the worse of none and that of an ideal propeller counts for bearings, shafts and bolts."
    )
    altitude: Length = stated("Altitude, geometric, above sea level.")
    propeller_speed: Turning = stated(
        "Propeller speed where the clutch overruns; elsewhere it follows from the engine speed."
    )
    vertical_speed: Speed = stated("Climb (positive) or descent (negative) speed.")
    nose_up: Attitude = stated("Attitude of the aircraft, nose up; negative for nose down.")
    air_temperature: FluidTemperature = stated("Temperature of the outside air.")
    oil_temperature: FluidTemperature = stated(
        "Bulk temperature of the drive's oil: measured, or expected by the designer."
    )
    measured_oil_temperature: FluidTemperature = stated(
        "Bulk oil temperature measured at this point once it had settled, in the stated air; it "
        "checks the computed one."
    )
    crankcase_pressure: Annotated[Quantity | None, Of("pressure")] = stated(
        "Gauge pressure in the engine crankcase at this point; suction is negative. Left out, "
        "that of the engine counts, and the drive is not shown for this point."
    )
    inflow_angle: InflowAngle = stated(
        "Angle between the propeller axis and the air that meets it at this point. Left out, the "
        "worst yawed flow of the propeller counts."
    )
    case_air_flow: Flow = stated(
        "Air that the vent must pass besides expansion and climb: scavenge surplus or blow-by."
    )


class YawedFlow(Part):
    """The worst flow askew to the propeller axis: in a steep climb, a sideslip or a pull-up."""

    angle: InflowAngle = stated(
        "Angle between the propeller axis and the air that meets it, wing upwash included."
    )
    airspeed: Stream = stated("Airspeed in that flow, at sea level.")


class SwingTest(Part):
    """A swing of the propeller about its axis, hung level on wires that run down in parallel."""

    wires: Annotated[int | None, Count(2, 3)] = stated("Number of wires: two or three.")
    mass: Mass = stated("Mass that hangs on the wires.")
    spacing: Size = stated(
        "Distance between two wires; with three wires, the diameter of the circle they stand on."
    )
    length: Size = stated("Length of the wires.")
    period: Duration = stated("Time of one whole swing.")


class Propeller(Part):
    """The propeller on the output shaft."""

    shaft: Name = Field(description="Name of the shaft that carries the propeller.")
    blades: Annotated[int | None, Count(2, 8)] = stated("Number of blades.")
    diameter: Size = stated("Diameter.")
    mass: Mass = stated("Mass with hub and spinner.")
    inertia: Inertia = stated("Polar moment of inertia about the propeller axis.")
    swing_test: SwingTest | None = stated("Swing test that gives the inertia where none is stated.")
    inertia_evidence: Text = stated("How the inertia is known: swing test, maker, estimate.")
    inertia_limit: Inertia = stated("Largest propeller inertia that engine or drive allow.")
    pitch: Annotated[
        str | None, Choice(("fixed", "ground adjustable", "in-flight adjustable", "constant speed"))
    ] = stated("How the pitch is set.")
    material: Annotated[str | None, Choice(("wood", "composite", "metal"))] = stated(
        "Material of the blades."
    )
    rotation: Sense = stated(
        "Sense of rotation, seen from the engine looking towards the propeller."
    )
    overhang: Length = stated("Distance of the blade plane beyond the outermost bearing.")
    landing_gear: Annotated[str | None, Choice(("nose wheel", "tail wheel", "water"))] = stated(
        "What the aircraft stands on: a nose wheel, a tail wheel, or water (floats, a hull; an "
        "amphibian too)."
    )
    ground_clearance: Length = stated("Clearance to ground or water in the worst attitude.")
    vibration_evidence: Text = stated(
        "Vibration stress evidence for this propeller on this engine and drive."
    )
    first_blade_frequency: Annotated[Quantity | None, Of("frequency", at_least="1 Hz")] = stated(
        "Frequency of the first flexible blade mode in the plane of rotation, hub held."
    )
    blade_inertia_share: Share = stated(
        "Share of the inertia that swings in that mode. Left out, the torsional model takes the "
        "propeller as rigid."
    )
    blade_damping: Annotated[float | None, Number(0.0, 1.0)] = stated(
        "Relative damping psi of that mode, by a tap test: loss per cycle over elastic energy, "
        "twice the logarithmic decrement. Left out, a low one is assumed."
    )
    blade_passing_torque: Share = stated(
        "Alternating torque at blade-passing frequency, as a share of the propeller's mean torque."
    )
    hub_bolts: Whole = stated("Number of bolts through the hub.")
    unbalance: Annotated[Quantity | None, Of("unbalance", at_least="0 kg m")] = stated(
        "Largest unbalance left: difference of mass between blades times its radius."
    )
    blade_thrust_variation: Annotated[float | None, Number(0.0, 5.0)] = stated(
        "How far the thrust of one blade swings about its mean in each turn in the worst yawed "
        "flow, over that mean. Left out, yawed_flow and blade_chord tell the moment of it."
    )
    blade_chord: Size = stated("Chord of one blade at two thirds of the radius.")
    yawed_flow: YawedFlow | None = stated(
        "Worst yawed flow, from which the moment of the blades on the hub is computed unless "
        "blade_thrust_variation is stated; it counts in every limit case."
    )
