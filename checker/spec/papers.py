"""Monitoring, records and accepted deviations."""

import datetime
from typing import Annotated

from pydantic import Field

from checker.spec.fields import Choice, Date, Day, Flag, Text, TextOrNone, Written, stated
from checker.spec.part import Part


class Monitoring(Part):
    """What the crew can see, and what can be checked on the ground."""

    oil_temperature: Flag = stated("Oil temperature of the drive is shown to the crew.")
    oil_pressure_warning: Flag = stated("Low oil pressure warns the crew.")
    chip_detector: Flag = stated("A chip detector sits in the drive's oil.")
    chip_detector_checked: Flag = stated("Its circuit can be checked by the crew.")
    level_check: Annotated[
        str | None, Choice(("none", "dipstick", "sight glass", "overflow plug"))
    ] = stated("How the oil quantity is checked on the ground.")


class Review(Part):
    """A review of this design by a person."""

    by: Text = stated("Name.")
    role: Text = stated("Role.")
    date: Date = stated("Date.")


class SingleFailure(Part):
    """A single failure that stops the propeller, as the designer lists it."""

    part: Written = Field(description="Path of the part, such as meshes.first or clutch.")
    effect: Text = stated("Effect on thrust and engine.")
    detected_by: Text = stated("How it shows before or when it happens.")
    failure: Text = stated("What fails: fatigue crack, seizure, slip, a lost bolt.")
    engine_effect: Text = stated("Effect on the engine.")
    check: Text = stated("Check or inspection that finds it.")
    interval: Text = stated("Interval of that check.")


class Retention(Part):
    """A part between propeller and gear case: what holds the propeller when it alone fails."""

    part: Written = Field(
        description="Path of the part, such as shafts.prop, or of what belongs to it, with a word: "
        "'bearings.prop_thrust retainer', 'housing bolts'."
    )
    releases_propeller: Flag = stated("Whether its single failure lets the propeller go.")
    retained_by: TextOrNone = stated("What then still holds the propeller; or none.")
    inspection: TextOrNone = stated("Method by which a crack or loosening shows in time; or none.")
    interval: Text = stated("Interval of that inspection.")


class Evidence(Part):
    """Papers on one critical part."""

    part: Written = Field(description="Path of the part, such as gears.pinion.")
    material: Text = stated("Material certificate.")
    heat_treatment: Text = stated("Heat treatment report.")
    hardness: Text = stated("Hardness report.")
    crack_test: Text = stated("Crack test report.")
    gear_inspection: Text = stated("Gear inspection sheet, of a gear.")


class Records(Part):
    """Papers that go with the drive."""

    drawn_by: Text = stated("Who designed it.")
    reviews: list[Review] | None = stated("Reviews made.")
    preflight_checks: list[Written] | None = stated("Checks before each flight.")
    clutch_hand_check: Flag = stated(
        "Preflight list has the hand check of the clutch: grips one way, free the other."
    )
    single_failures: list[SingleFailure] | None = stated("Single failures that stop the propeller.")
    retention: list[Retention] | None = stated(
        "Every part between propeller and gear case, and what its failure does."
    )
    evidence: list[Evidence] | None = stated("Papers of each critical part.")
    material_certificates: Flag = stated("Material certificates of gears and shafts are on file.")
    heat_treatment_reports: Flag = stated("Heat treatment and hardness reports are on file.")
    gear_inspection_sheets: Flag = stated("Gear inspection sheets are on file.")
    crack_test_reports: Flag = stated("Crack test reports are on file.")


class Deviation(Part):
    """A finding accepted by a named person, for one rule and one part."""

    rule: Written = Field(description="Id of the rule.")
    part: Written = Field(description="Path of the part, such as meshes.first.")
    reason: Written = Field(description="Why it is accepted.")
    by: Written = Field(description="Who accepts it.")
    date: Annotated[datetime.date, Day()] = Field(description="When it was accepted.")
    expires: Annotated[datetime.date, Day()] = Field(description="Last day on which it stands.")
    mitigation: Text = stated("What limits the consequence.")
