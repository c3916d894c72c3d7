"""The whole spec of a drive."""

from typing import Annotated, Any

from pydantic import Field

from checker.spec.coupling import Clutch, Damper
from checker.spec.fields import UNKNOWN, Count, Section, stated
from checker.spec.gearing import Bearing, Gear, Joint, Mesh, RatioSet, Shaft
from checker.spec.oil_side import Housing, Lubrication, Seal, Vent
from checker.spec.papers import Deviation, Monitoring, Records
from checker.spec.part import Part
from checker.spec.power import Drive, Engine, OperationPoint, Propeller
from checker.spec.states import States

FORMAT = 1


class Spec(Part):
    """A propeller speed-reduction drive as its designer states it."""

    thrustline: Annotated[int, Count(FORMAT, FORMAT)] = Field(
        description="Version of the spec format: 1."
    )
    drive: Drive = Field(description="The drive as a whole: its name, kind and purpose.")
    engine: Engine = Field(description="The engine in front of the drive.")
    operation: list[OperationPoint] = Field(
        default_factory=list, description="Points of operation, with their share of the time."
    )
    shafts: dict[str, Shaft] = Field(min_length=1, description="Rotating members, by name.")
    gears: dict[str, Gear] = Field(min_length=1, description="Gears, by name.")
    meshes: dict[str, Mesh] = Field(min_length=1, description="Meshes, by name.")
    ratio_sets: dict[str, RatioSet] = Field(
        default_factory=dict, description="Exchangeable ratios; each set is reviewed."
    )
    bearings: dict[str, Bearing] = Field(default_factory=dict, description="Bearings, by name.")
    joints: dict[str, Joint] = Field(
        default_factory=dict, description="Joints that carry the torque, by name."
    )
    damper: Annotated[Damper | str | None, Section(Damper)] = stated(
        "Torsional damper or soft coupling, or none."
    )
    clutch: Annotated[Clutch | str | None, Section(Clutch)] = stated("One-way clutch, or none.")
    lubrication: Lubrication | None = stated("How the drive is oiled.")
    vent: Annotated[Vent | str | None, Section(Vent)] = stated("How the case breathes, or none.")
    seals: dict[str, Seal] = Field(default_factory=dict, description="Shaft seals, by name.")
    housing: Housing | None = stated("The gear case.")
    propeller: Propeller = Field(description="The propeller.")
    monitoring: Monitoring | None = stated("What is watched.")
    states: States | None = stated("States beyond the points of operation.")
    deviations: list[Deviation] = Field(
        default_factory=list, description="Findings accepted by a named person."
    )
    records: Records | None = stated("Papers that go with the drive.")


def schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a spec, for editors and other programs."""
    return schema_of(Spec, "Thrustline spec")


def schema_of(model: type[Part], title: str) -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a file that a person writes.

    Args:
        model: what the file is read as.
        title: what it is called.
    """
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": title,
        **_as_written(model.model_json_schema(by_alias=True)),
    }


def _as_written(node: Any) -> Any:
    """A schema node as a person writes the fields: what may be left out may be ``unknown``."""
    if isinstance(node, list):
        return [_as_written(each) for each in node if each != {"type": "null"}]
    if not isinstance(node, dict):
        return node
    kept = {key: value for key, value in node.items() if key != "default"}
    if isinstance(kept.get("title"), str):
        del kept["title"]
    written = {key: _as_written(value) for key, value in kept.items()}
    if written.get("type") == "object" and "properties" in written:
        required = written.get("required", [])
        written["properties"] = {
            name: field if name in required else _or_unknown(field)
            for name, field in written["properties"].items()
        }
    return written


def _or_unknown(field: dict[str, Any]) -> dict[str, Any]:
    """The schema of a field that also takes the word ``unknown``."""
    form = {key: value for key, value in field.items() if key != "description"}
    options = form["anyOf"] if list(form) == ["anyOf"] else [form]
    said = {key: value for key, value in field.items() if key == "description"}
    return {"anyOf": [*options, {"const": UNKNOWN}], **said}
