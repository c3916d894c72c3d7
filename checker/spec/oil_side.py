"""Oil, vent, seals and housing."""

from typing import Annotated

from pydantic import Field

from checker.mechanics.oil_families import FAMILY_NAMES
from checker.spec.coupling import Elastomer
from checker.spec.fields import (
    Area,
    Attitude,
    Choice,
    Coefficient,
    Count,
    Density,
    Difference,
    Duration,
    Extent,
    Flag,
    Flow,
    FluidTemperature,
    Friction,
    Hardness,
    HeatTransfer,
    KinematicViscosity,
    Length,
    LoadRating,
    Mass,
    Name,
    Number,
    Of,
    Power,
    Section,
    Size,
    Stream,
    Surface,
    Temperature,
    Text,
    TextOrNone,
    Torque,
    Volume,
    stated,
)
from checker.spec.part import Part
from checker.spec.quantity import Quantity


class Oil(Part):
    """The oil of the drive: a generic family, with anything better known stated."""

    name: Annotated[str | None, Choice(FAMILY_NAMES)] = stated(
        "Generic oil family; anything else stated here goes before its typical figures."
    )
    viscosity_40: KinematicViscosity = stated("Kinematic viscosity at 40 degC.")
    viscosity_100: KinematicViscosity = stated("Kinematic viscosity at 100 degC.")
    density_15: Density = stated("Density at 15 degC.")
    additives: Annotated[str | None, Choice(("none", "anti-wear", "EP"))] = stated(
        "Additive class: none, anti-wear, or extreme pressure (sulphur-phosphorus)."
    )
    gl5: Flag = stated("Whether the oil is API GL-5.")
    friction_modified: Flag = stated("Whether the oil holds friction modifiers.")
    solid_lubricant: Annotated[
        str | None, Choice(("none", "molybdenum disulphide", "graphite"))
    ] = stated("Solid lubricant in the oil or added to it.")
    base: Annotated[str | None, Choice(("mineral", "PAO", "PAG", "ester"))] = stated("Base stock.")
    cold_limit: FluidTemperature = stated(
        "Lowest temperature at which the oil still flows to the pump or the parts."
    )
    scuffing_load_stage: Annotated[int | None, Count(1, 14)] = stated(
        "Scuffing load stage of the gear test ISO 14635-1."
    )


class Supply(Part):
    """One way by which oil reaches a part."""

    from_: Text = Field(
        default=None,
        alias="from",
        description="Where the oil comes from: pump, sump, reservoir, engine, engine gallery; or "
        "the name of a gear, mesh, bearing or shaft, clutch or damper.",
    )
    to: Text = stated(
        "Name of the mesh or bearing that it reaches, clutch, damper; or sump, reservoir, engine."
    )
    kind: Annotated[
        str | None,
        Choice(("pressure", "jet", "splash", "dip", "drip", "scroll", "channel", "drain")),
    ] = stated("How it gets there.")
    flow: Flow = stated("Flow.")
    jet_diameter: Size = stated("Diameter of the jet.")


class Reservoir(Part):
    """A tank apart from the gear case."""

    volume: Volume = stated("Volume up to the vent.")
    remote: Flag = stated("Whether it stands apart from the drive.")
    oil_volume: Volume = stated("Oil in it.")
    head: Length = stated(
        "Height of its oil over the places it feeds by weight alone; negative where it is lower."
    )
    surface: Area = stated("Its outside surface, if it is to count for cooling.")
    diameter: Size = stated("Its diameter, for that.")


class Suction(Part):
    """The line from the oil to the inlet of the pump."""

    bore: Size = stated("Inside diameter.")
    length: Size = stated("Length.")
    head: Length = stated("Height of the oil over the pump inlet; negative where the pump lifts.")


class Lubrication(Part):
    """How the drive is oiled."""

    oil: Oil | None = stated("The oil.")
    shared_with_engine: Flag = stated("Whether drive and engine use one oil supply.")
    system: Annotated[
        str | None, Choice(("splash", "pump and jets", "pump and splash", "drip"))
    ] = stated("How the meshes are oiled.")
    volume: Volume = stated("Oil in the drive and its reservoir when filled.")
    capacity: Volume = stated(
        "Volume of case and reservoir that the oil can rise into, with the oil itself, gears and "
        "shafts taken off."
    )
    running_level: Length = stated(
        "Oil level above the case bottom while running, case level, filled to the mark."
    )
    lowest_level: Length = stated(
        "The same at the least oil with which it may be run; both levels count at the bottom of "
        "the gears, and may be negative in a dry sump."
    )
    highest_level: Length = stated(
        "Highest oil level above the case bottom, in the worst attitude of flight or ground."
    )
    reservoir: Annotated[Reservoir | str | None, Section(Reservoir)] = stated(
        "Reservoir apart from the case, or none."
    )
    baffled: Flag = stated("Whether a baffle keeps the gears from churning the settled oil.")
    settling_volume: Volume = stated("Oil that stands quiet, out of reach of the gears.")
    pump_flow: Flow = stated("Flow of the pump at maximum continuous speed.")
    pump_driven_by: Annotated[
        str | None, Choice(("engine", "driving side", "propeller side", "electric", "none"))
    ] = stated(
        "What turns the oil pump: the engine, the driving or the propeller side of the clutch, "
        "a motor; or none where there is no pump."
    )
    circulating_flow: Flow = stated("Flow that leaves the meshes for the reservoir.")
    settling_depth: Size = stated("Depth of the oil that stands quiet.")
    pump_pressure: Annotated[Quantity | None, Of("pressure", at_least="0 kPa")] = stated(
        "Pressure of the pump."
    )
    pump_suction: Suction | None = stated("The line from the oil to the pump.")
    covered_nose_up: Attitude = stated(
        "Greatest nose-up attitude in which the pump inlet stays under the least oil."
    )
    covered_nose_down: Attitude = stated(
        "Greatest nose-down attitude, as a positive angle, in which it stays under the least oil."
    )
    engine_flow: Flow = stated(
        "Flow of engine oil through the drive at maximum continuous speed, where it is shared."
    )
    engine_oil_temperature: FluidTemperature = stated(
        "Temperature at which shared oil comes from the engine on the hot day."
    )
    take_off_temperature: FluidTemperature = stated("Least oil temperature for take-off.")
    paths: list[Supply] | None = stated("How oil reaches each part and comes back.")
    cold_start_temperature: FluidTemperature = stated(
        "Lowest oil temperature at which it is started."
    )
    fill_temperature: FluidTemperature = stated(
        "Temperature at which the oil is filled and measured."
    )
    filter: Annotated[str | None, Choice(("none", "with bypass", "without bypass"))] = stated(
        "Oil filter of the drive."
    )
    magnetic_plug: Flag = stated("Whether a magnet catches wear.")
    change_interval: Duration = stated("Oil change interval.")
    yellow_metals: Flag = stated("Whether bronze or brass parts are wetted.")


class VentStretch(Part):
    """A stretch of the vent line, from the case outwards."""

    name: Text = stated("What it is.")
    bore: Size = stated("Inside diameter.")
    length: Size = stated("Length.")
    rise: Length = stated("Height of its end above its start; negative where it falls.")
    loss_coefficient: Coefficient = stated("Loss coefficient of its bends, screens and valves.")


class CatchBottle(Part):
    """Bottle at the end of the vent line."""

    volume: Volume = stated("Volume.")
    vented: Flag = stated("Whether it is open to the outside air.")


class Vent(Part):
    """The way by which the air in the case breathes."""

    inlet_height: Length = stated("Height of the vent's mouth in the case above the case bottom.")
    behind_baffle: Flag = stated("Whether a baffle stands between the mouth and the gears.")
    in_thrown_oil: Flag = stated("Whether oil thrown by gears or bearings can hit the mouth.")
    path: list[VentStretch] | None = stated("The line, stretch by stretch, from the case outwards.")
    to: Annotated[str | None, Choice(("outside", "catch bottle", "crankcase", "closed"))] = stated(
        "Where it ends."
    )
    outlet_protected_from_ice: Flag = stated(
        "Whether the outlet cannot freeze or has a second opening in warm air."
    )
    outlet_faces: Annotated[str | None, Choice(("forward", "across", "aft", "sheltered"))] = stated(
        "How the outlet (of line or catch bottle) faces the stream of air: forward, across, aft; "
        "or sheltered, in the still air of a cowling."
    )
    outlet_clear: Flag = stated(
        "Whether mist from the outlet keeps clear of exhaust, intake, windscreen and brakes."
    )
    catch_bottle: Annotated[CatchBottle | str | None, Section(CatchBottle)] = stated(
        "Catch bottle, or none."
    )


class Seal(Part):
    """A radial shaft seal."""

    shaft: Name = Field(description="Shaft it runs on.")
    diameter: Size = stated("Diameter of the surface the lip runs on.")
    kind: Annotated[
        str | None, Choice(("plain lip", "pressure lip", "double lip", "labyrinth", "back-to-back"))
    ] = stated("Type.")
    material: Elastomer = stated("Lip material, or none.")
    lip_faces: Annotated[str | None, Choice(("inside", "outside", "both"))] = stated(
        "Which side the sealing lip faces: the inside of the case, the outside, or both."
    )
    other_side: Annotated[str | None, Choice(("outside air", "engine crankcase"))] = stated(
        "What is on the other side of the seal."
    )
    pressure_limit: Annotated[Quantity | None, Of("pressure", at_least="0 kPa")] = stated(
        "Pressure difference it bears at its speed, by its maker."
    )
    leak_gap: Extent = stated(
        "Radial gap round the shaft: of a labyrinth, or what a lip leaves that pressure lifts."
    )
    shaft_hardness: Hardness = stated("Hardness of the running surface.")
    shaft_roughness: Extent = stated("Roughness Ra of the running surface.")
    runout: Extent = stated("Runout of the running surface.")
    surface_finish: Annotated[
        str | None, Choice(("plunge ground", "ground with feed", "turned", "polished"))
    ] = stated("How the running surface was finished last: a feed leaves a lead that pumps oil.")


class EngineJoint(Part):
    """The joint by which the case passes heat to the engine, or takes it."""

    area: Area = stated("Area in contact.")
    conductance: HeatTransfer = stated("Contact conductance, with any gasket or spacer.")
    engine_temperature: FluidTemperature = stated("Engine case at the joint on the hot day.")


class Mounting(Part):
    """The bolted face between gear case and engine."""

    station: Length = stated("Place of the face, from the engine face towards the propeller.")
    bolts: Annotated[int | None, Count(1)] = stated("Number of bolts.")
    bolt_diameter: Size = stated("Nominal diameter of the bolts.")
    bolt_pitch: Size = stated("Thread pitch.")
    bolt_class: Text = stated("Strength class, such as 8.8 or 10.9.")
    preload: LoadRating = stated(
        "Preload of one bolt as assembled, with its range, such as 24 +/- 5 kN; without one, the "
        "scatter of a torque wrench is assumed."
    )
    tightening_torque: Torque = stated(
        "Torque on the wrench that gives a bolt its preload, without the running torque of a "
        "self-locking nut."
    )
    nut_factor: Friction = stated(
        "Nut factor K of that torque, T = K d F, as the threads are oiled: about 0.2 dry, 0.15 to "
        "0.18 oiled."
    )
    circle_radius: Size = stated(
        "Radius of the circle of bolts; the least, where they stand apart."
    )
    friction_coefficient: Friction = stated("Friction coefficient of the faces.")
    load_share: Annotated[float | None, Number(0.0, 5.0)] = stated(
        "Share of the working load that swings the bolt and not the face, such as 0.2."
    )
    drive_mass: Mass = stated("Mass of the drive that hangs on the face, without the propeller.")
    mass_station: Length = stated("Station of its centre of mass.")
    locking: TextOrNone = stated("How the bolts are kept from turning, or none.")


class Housing(Part):
    """The gear case."""

    material: Annotated[str | None, Choice(("aluminium", "magnesium", "steel", "cast iron"))] = (
        stated("Material.")
    )
    alloy: Text = stated("Alloy and temper.")
    bottom: Length = stated("Height of the case bottom over the first shaft's axis (negative).")
    sump_from: Length = stated("Start of the sump along the shafts, from the engine face.")
    sump_to: Length = stated("End of the sump along the shafts, from the engine face.")
    height: Size = stated("Height of the case walls.")
    mass: Mass = stated("Mass of the case.")
    surface: Area = stated("Outside surface without fins.")
    fin_surface: Surface = stated("Surface of the fins; '0 m2' if there are none.")
    fin_length: Size = stated("Length of a fin from root to tip.")
    fin_thickness: Size = stated("Mean thickness of a fin.")
    wall_thickness: Size = stated("Wall thickness.")
    finish: Annotated[str | None, Choice(("bare", "oxidised", "painted"))] = stated(
        "Outside finish."
    )
    cooling_air: Annotated[
        str | None, Choice(("slipstream", "cowled with ducted air", "cowled, still air"))
    ] = stated("Air around the case.")
    cooling_air_speed: Stream = stated("Speed of that air in cruise.")
    air_rise: Difference = stated(
        "How much warmer the air round the case is than the outside air, in a cowling."
    )
    hot_day: FluidTemperature = stated(
        "Air at sea level on the hottest day; it falls by 3.6 degF for each 1000 ft."
    )
    engine_joint: Annotated[EngineJoint | str | None, Section(EngineJoint)] = stated(
        "Joint to the engine case that passes heat, or none."
    )
    cooler: Annotated[str | None, Choice(("none", "oil to air", "oil to water"))] = stated(
        "Oil cooler."
    )
    cooler_rating: Power = stated("Heat the cooler carries at its stated point.")
    cooler_rated_difference: Difference = stated(
        "Oil inlet less coolant inlet temperature at that point."
    )
    thermostat: Annotated[
        Quantity | str | None,
        Of("temperature", at_least="-90 degC", at_most="400 degC", or_none=True),
    ] = stated("Oil temperature at which a thermostat begins to open the cooler, or none.")
    coolant_flow: Flow = stated(
        "Flow of air (in cruise, where it is rated) or of coolant (at maximum continuous speed) "
        "through the cooler."
    )
    coolant_temperature: FluidTemperature = stated("Coolant at the cooler inlet on the hot day.")
    stress_evidence: Text = stated("Analysis or test of the stress in the case.")
    stiffness_evidence: Text = stated("Analysis or test of the stiffness of the case.")
    cold_soak_temperature: Temperature = stated("Lowest temperature of the standing drive.")
    highest_temperature: Temperature = stated("Highest temperature of the case in operation.")
    mounting: Mounting | None = stated("Bolted face between gear case and engine.")
