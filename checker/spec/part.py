"""The base of every part of a spec."""

from typing import Any

from pydantic import BaseModel, ConfigDict, model_validator

from checker.spec.fields import UNKNOWN


class Part(BaseModel):
    """A part of the drive as its designer states it.

    Unknown keys are refused. A field that says ``unknown`` is as good as left out: what rests on
    it is not shown. A field that must be there cannot be unknown; it refuses the word itself.
    """

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    @model_validator(mode="before")
    @classmethod
    def _leave_out_unknown(cls, data: Any) -> Any:
        if not isinstance(data, dict) or UNKNOWN not in data.values():
            return data
        optional = {
            field.alias or name
            for name, field in cls.model_fields.items()
            if not field.is_required()
        }
        return {
            key: value for key, value in data.items() if value != UNKNOWN or key not in optional
        }
