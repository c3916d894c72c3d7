"""The base of every part of a spec."""

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """A part of the drive as its designer states it. Unknown keys are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)
