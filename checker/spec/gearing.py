"""Shafts, gears, meshes, bearings and joints."""

from typing import Annotated

from pydantic import Field

from checker.mechanics.bearing_sizes import SERIES
from checker.spec.fields import (
    Area,
    Choice,
    Coefficient,
    Count,
    Extent,
    Flag,
    Friction,
    Hardness,
    Inertia,
    Length,
    LoadRating,
    Mass,
    Name,
    Number,
    Of,
    ProfileShift,
    Ratio,
    Section,
    Size,
    Stiffness,
    Strength,
    Teeth,
    Text,
    TextOrNone,
    Torque,
    Turning,
    Whole,
    stated,
)
from checker.spec.part import Part
from checker.spec.quantity import Quantity

Toward = Annotated[str | None, Choice(("none", "both", "towards propeller", "towards engine"))]


class Centre(Part):
    """Where a shaft axis stands in the plane across the drive, seen towards the propeller."""

    right: Length = stated("To the right of the first shaft's axis.")
    up: Length = stated("Above the first shaft's axis.")


class ShaftSection(Part):
    """A cylindrical stretch of a shaft."""

    from_: Length = Field(
        default=None,
        alias="from",
        description="Start, as a distance from the engine face towards the propeller.",
    )
    to: Length = stated("End, as a distance from the engine face towards the propeller.")
    outside: Size = stated("Outside diameter.")
    inside: Extent = stated("Bore; '0 mm' if solid.")
    notch: Annotated[
        str | None,
        Choice(("none", "shoulder", "groove", "keyway", "spline", "press fit", "taper", "hole")),
    ] = stated(
        "Stress raiser at the end of the section; a keyway, spline, press fit or taper is taken to "
        "reach all along it."
    )
    notch_radius: Extent = stated("Fillet or notch root radius there.")
    notch_depth: Extent = stated("Depth of a groove below the diameter of this section.")


class Shaft(Part):
    """A member that turns as one. A gear that turns on a shaft is a member of its own."""

    centre: Centre | None = stated("Place of its axis across the drive.")
    material: Text = stated("Steel and heat treatment.")
    tensile_strength: Strength = stated("Tensile strength.")
    yield_strength: Strength = stated("Yield strength.")
    surface_hardness: Hardness = stated("Surface hardness.")
    sections: list[ShaftSection] | None = stated("Stretches from engine to propeller side.")
    inertia: Inertia = stated("Inertia about its axis, without the gears named apart.")
    torsional_stiffness: Stiffness = stated("Torsional stiffness between its ends.")
    turns_freely_on: Text = stated("Name of the shaft it can turn on, if it is mounted on one.")
    finish: Annotated[str | None, Choice(("ground", "machined", "forged"))] = stated(
        "Finish of its surface at the stress raisers."
    )
    end_play: Length = stated(
        "Axial play between two bearings set against each other, when built; with its tolerance."
    )


class Helix(Part):
    """Helix of a gear."""

    angle: Annotated[Quantity | None, Of("angle", at_least="0 deg", below="60 deg")] = stated(
        "Helix angle at the reference cylinder; the hand gives its sense."
    )
    hand: Annotated[str | None, Choice(("right", "left"))] = stated("Hand of the helix.")


class BasicRack(Part):
    """Tool profile that generates the teeth (ISO 53), in modules."""

    addendum: Coefficient = stated("Addendum factor haP*, such as 1.")
    dedendum: Coefficient = stated("Dedendum factor hfP*, such as 1.25.")
    root_radius: Coefficient = stated("Root fillet radius factor rhofP*, such as 0.38.")


class Accuracy(Part):
    """Accuracy class of the teeth."""

    standard: Annotated[str | None, Choice(("ISO 1328-1", "AGMA 2000", "AGMA 2015"))] = stated(
        "Standard of the grade."
    )
    grade: Annotated[int | None, Count(0, 15)] = stated("Grade in that standard.")


class GearMaterial(Part):
    """Material and heat treatment of a gear."""

    treatment: Annotated[
        str | None,
        Choice(("case-carburised", "nitrided", "induction-hardened", "through-hardened")),
    ] = stated("Heat treatment.")
    quality: Annotated[str | None, Choice(("ML", "MQ", "ME"))] = stated(
        "Material quality of ISO 6336-5."
    )
    steel: Text = stated("Steel designation.")
    surface_hardness: Hardness = stated("Hardness of the flanks.")
    root_hardened: Flag = stated(
        "Whether induction hardening took in the tooth roots; of that treatment alone."
    )
    core_hardness: Hardness = stated("Hardness of the core.")
    case_depth: Extent = stated("Effective case depth of the finished flank.")


class Gear(Part):
    """A toothed wheel. All gears are external, with a common normal module per mesh."""

    shaft: Name = Field(description="Name of the shaft it turns with.")
    teeth: Teeth = stated("Number of teeth.")
    module: Annotated[Quantity | None, Of("module", above="0 mm")] = stated(
        "Normal module; a diametral pitch may be written as '8 DP'."
    )
    pressure_angle: Annotated[Quantity | None, Of("angle", at_least="5 deg", at_most="45 deg")] = (
        stated("Normal pressure angle.")
    )
    helix: Annotated[Helix | str | None, Section(Helix)] = stated(
        "Helix angle and hand, or none for a spur gear."
    )
    face_width: Size = stated("Face width.")
    station: Length = stated("Middle of the face, from the engine face towards the propeller.")
    profile_shift: ProfileShift = stated("Profile shift coefficient x, in modules.")
    tip_diameter: Size = stated("Tip diameter, with tolerance; after tip shortening.")
    root_diameter: Size = stated("Root diameter.")
    tip_chamfer: Extent = stated("Radial height of the tip chamfer; '0 mm' if there is none.")
    basic_rack: BasicRack | None = stated("Tool profile.")
    thickness_allowance: Length = stated(
        "How much thinner the teeth are than their profile shift alone gives, in the normal "
        "section at the reference circle; positive, '0 mm' for none."
    )
    accuracy: Accuracy | None = stated("Accuracy grade of the teeth.")
    flank_roughness: Extent = stated("Roughness Ra of the flanks.")
    root_roughness: Extent = stated("Roughness Ra of the root fillets.")
    rim_thickness: Size = stated(
        "Thickness of the rim below the tooth root; of a solid gear down to bore or axis."
    )
    finished_flanks: Annotated[str | None, Choice(("one", "both"))] = stated(
        "Whether one flank of each tooth or both are finished to that accuracy."
    )
    material: GearMaterial | None = stated("Material and heat treatment.")
    inertia: Inertia = stated("Inertia about its axis.")
    mass: Mass = stated("Mass.")
    peak_torque_rating: Torque = stated(
        "Peak torque at this gear that its teeth may carry, with its evidence in the records."
    )


class Mesh(Part):
    """Two gears in contact; the driver is nearer the engine in the power path."""

    driver: Name = Field(description="Name of the driving gear.")
    driven: Name = Field(description="Name of the driven gear.")
    centre_distance: Size = stated("Working centre distance, with its tolerance.")
    backlash: Extent = stated(
        "Circular backlash measured at the working pitch circle, cold, with its tolerance."
    )
    ratio_set: Annotated[str | None, Choice(("fixed", "swappable"))] = stated(
        "Whether these gears are exchanged for other ratios (see ratio_sets)."
    )
    stiffness: Stiffness = stated("Torsional mesh stiffness referred to the driver.")
    misalignment: Extent = stated(
        "Misalignment of the flanks over the common face at full load, from shafts, bearings and "
        "case, by calculation or measurement; without the deviations of the teeth themselves."
    )


class Bearing(Part):
    """A rolling bearing on a shaft."""

    shaft: Name = Field(description="Name of the shaft it supports.")
    kind: Annotated[
        str | None,
        Choice(
            (
                "deep groove ball",
                "angular contact ball",
                "double-row angular contact ball",
                "four-point contact ball",
                "self-aligning ball",
                "cylindrical roller N",
                "cylindrical roller NU",
                "cylindrical roller NJ",
                "cylindrical roller NUP",
                "needle roller",
                "toroidal roller",
                "tapered roller",
                "spherical roller",
                "thrust ball",
                "double-direction thrust ball",
                "thrust roller",
                "plain",
            )
        ),
    ] = stated("Type of bearing.")
    runs_on: Text = stated(
        "Name of the shaft that its other ring sits on, where that one turns as well."
    )
    size: Text = stated("Size designation, for the reader.")
    station: Length = stated("Middle of the bearing, from the engine face towards the propeller.")
    bore: Size = stated("Bore.")
    outside: Size = stated("Outside diameter.")
    width: Size = stated("Width.")
    locates: Toward = stated(
        "Which axial shaft movement it stops as built in, by shoulders and retainers on both "
        "rings: towards propeller, towards engine, both or none (floating)."
    )
    shaft_stop: Annotated[
        str | None, Choice(("shoulder", "nut", "retaining ring", "press fit"))
    ] = stated(
        "What takes the shaft's pull towards the propeller into its inner ring, of a bearing that "
        "stops that movement: a shoulder of the shaft itself, a nut, a retaining ring, a press fit."
    )
    matched_set: Text = stated("Name shared by the bearings of one matched set.")
    set_arrangement: Annotated[str | None, Choice(("back-to-back", "face-to-face", "tandem"))] = (
        stated("How the set is mounted.")
    )
    dynamic_rating: LoadRating = stated("Basic dynamic radial (or axial) load rating C.")
    static_rating: LoadRating = stated("Basic static load rating C0.")
    axial_rating: LoadRating = stated("Axial load it may carry for long, by its maker.")
    contact_angle: Annotated[Quantity | None, Of("angle", at_least="0 deg", at_most="90 deg")] = (
        stated("Contact angle.")
    )
    f0: Coefficient = stated("Factor f0 of ISO 76 for deep groove ball bearings.")
    lubrication: Annotated[str | None, Choice(("grease", "oil splash", "oil bath", "oil jet"))] = (
        stated("How oil reaches it.")
    )
    speed_limit: Turning = stated("Speed limit by its maker for that lubrication.")
    generic_series: Annotated[str | None, Choice(SERIES)] = stated(
        "Dimension series of ISO 15. Ratings and sizes that are not stated are then those of a "
        "generic bearing of this series and bore, by formula; no maker's."
    )
    contamination: Annotated[float | None, Number(0.0, 1.0)] = stated(
        "Contamination factor e_C of ISO 281: 1 for clean oil, 0.1 and less for dirty oil."
    )
    internal_clearance: Extent = stated(
        "Radial internal clearance before mounting, with its range."
    )
    outer_seat: Annotated[str | None, Choice(("case", "steel liner", "shaft"))] = stated(
        "What its outer ring sits in: the case itself, a steel liner, or another shaft or hub."
    )
    outer_interference: Length = stated(
        "Interference of the outer ring in its seat when built, with its range; play is negative."
    )
    inner_interference: Length = stated(
        "Interference of the inner ring on its shaft when built, with its range."
    )
    outer_retained: Flag = stated(
        "Whether the outer ring is pinned, keyed or clamped against turning in its seat."
    )
    pressure_limit: Strength = stated(
        "Highest mean pressure that the lining of a plain bearing bears, limit loads included."
    )
    pv_limit: Annotated[Quantity | None, Of("pressure_speed", above="0 MPa m/s")] = stated(
        "Mean pressure times sliding speed that the lining bears for long, with this lubrication."
    )
    thrust_outside: Size = stated(
        "Outside diameter of the thrust face of a plain bearing, which reaches outwards from its "
        "bore; without one it carries no axial force."
    )
    axial_float: Extent = stated(
        "How far shaft and case may move past each other in a floating bearing, to either side."
    )


class Joint(Part):
    """A joint that carries the torque: flange, spline, key, taper or press fit."""

    kind: Annotated[
        str | None, Choice(("bolted flange", "spline", "key", "taper", "press fit"))
    ] = stated("Kind of joint.")
    shaft: Name = Field(description="Name of the shaft it sits on.")
    to: Text = stated("Name of the shaft it connects rigidly to, or propeller, or engine.")
    bolts: Whole = stated("Number of bolts.")
    bolt_diameter: Size = stated("Nominal diameter of the bolts.")
    bolt_pitch: Size = stated("Thread pitch.")
    bolt_class: Text = stated("Strength class, such as 8.8, 10.9 or SAE 8.")
    preload: Annotated[Quantity | None, Of("force", at_least="0 N")] = stated(
        "Preload of one bolt, or of the nut of a taper, as assembled, with its range; without one, "
        "the scatter of a torque wrench is assumed."
    )
    tightening_torque: Torque = stated(
        "Torque on the wrench that gives a bolt its preload, without the running torque of a "
        "self-locking nut."
    )
    nut_factor: Friction = stated(
        "Nut factor K of that torque, T = K d F, as the threads are oiled: about 0.2 dry, 0.15 to "
        "0.18 oiled."
    )
    friction_radius: Size = stated("Radius at which the friction acts.")
    friction_coefficient: Friction = stated("Friction coefficient of the faces.")
    torque_capacity: Torque = stated("Torque the joint carries, by other evidence.")
    locking: TextOrNone = stated("How bolts or nut are kept from turning, or none.")
    diameter: Size = stated("Shaft diameter in a key, taper (its middle) or press fit.")
    length: Size = stated("Length over which spline, key, taper or press fit bears.")
    interference: Length = stated("Interference of a press fit, with its range.")
    hub_outside: Size = stated("Outside diameter of the hub of a press fit or taper.")
    half_angle: Annotated[Quantity | None, Of("angle", above="0 deg", at_most="45 deg")] = stated(
        "Half angle of a taper."
    )
    splines: Whole = stated("Number of splines.")
    flank_outer: Size = stated("Outer diameter of the spline flanks in contact.")
    flank_inner: Size = stated("Inner diameter of the spline flanks in contact.")
    sliding: Flag = stated("Whether the spline slides under load.")
    key_width: Size = stated("Width of the key.")
    key_height: Size = stated("Height of the key, half of which is in the shaft.")
    yield_strength: Strength = stated("Yield strength of the weaker part: key, spline, hub or lug.")
    lugs: Whole = stated("Number of drive lugs or bushings behind the friction; 0 for none.")
    lug_diameter: Size = stated("Diameter of a drive lug.")
    lug_radius: Size = stated("Radius of the circle of the lugs.")
    wood: Annotated[str | None, Choice(("birch", "maple"))] = stated(
        "Species of a wooden hub, for the pressure that it bears."
    )
    clamped_area: Area = stated("Area of a wooden hub that the bolts press on.")
    retorque: TextOrNone = stated("When the bolts of a wooden hub are tightened again, or none.")


class GearOverride(Part):
    """What differs in a gear of another ratio set."""

    teeth: Teeth = stated("Number of teeth.")
    profile_shift: ProfileShift = stated("Profile shift coefficient x.")
    tip_diameter: Size = stated("Tip diameter.")
    root_diameter: Size = stated("Root diameter.")
    face_width: Size = stated("Face width.")


class RatioSet(Part):
    """Gears of one exchangeable ratio; everything not named stays as in gears."""

    ratio: Ratio = stated("Engine speed over propeller speed with this set.")
    gears: dict[str, GearOverride] = Field(
        default_factory=dict, description="Gears that differ, by name."
    )
