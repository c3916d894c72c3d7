"""Remarks of reviewers: a file beside the spec, so that who reviews need not write into it."""

import datetime
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field, model_validator

from checker.spec.document import Document, survey_document
from checker.spec.fields import Count, Day, Name, Text, Written, refused, stated
from checker.spec.model import schema_of
from checker.spec.part import Part
from checker.spec.reading import typed_file

FORMAT = 1


class Remark(Part):
    """What a reviewer says about a finding or about a field, and what was answered."""

    rule: Text = stated("Id of the rule of the finding it is about.")
    part: Text = stated("Part of that finding, such as meshes.first.")
    field: Text = stated("Field it is about instead, such as gears.pinion.face_width.")
    by: Name = Field(description="Who makes it.")
    date: Annotated[datetime.date, Day()] = Field(description="When it was made.")
    says: Written = Field(description="The remark.")
    answer: Text = stated("What the designer answers.")
    answered_by: Text = stated("Who answers.")

    @model_validator(mode="after")
    def _has_one_target(self) -> "Remark":
        on_finding, on_part = self.rule is not None, self.part is not None
        if on_finding != on_part or on_finding == (self.field is not None):
            given = [name for name in ("rule", "part", "field") if getattr(self, name) is not None]
            refused(
                " and ".join(given) or "none of them",
                "rule and part of a finding, or a field",
                "unclear what the remark is about",
            )
        return self


class RemarksFile(Part):
    """The remarks on one spec."""

    thrustline_remarks: Annotated[int, Count(FORMAT, FORMAT)] = Field(
        description="Version of the format."
    )
    remarks: list[Remark] = Field(description="The remarks, in any order.", max_length=1000)


@dataclass(frozen=True, slots=True)
class Remarks:
    """Remarks with the document they were read from."""

    document: Document
    remarks: tuple[Remark, ...]


def load_remarks(source: bytes, name: str) -> Remarks:
    """Read a file of remarks.

    Args:
        source: bytes of the file.
        name: name of the file, for messages.

    Raises:
        SpecUnreadable: with every problem found, each with its place.
    """
    document = survey_document(source, name)
    read = typed_file(document, RemarksFile, "thrustline_remarks", FORMAT, "the remarks format")
    return Remarks(document, tuple(read.remarks))


def remarks_schema() -> dict[str, Any]:
    """JSON Schema of a file of remarks."""
    return schema_of(RemarksFile, "Thrustline remarks")
