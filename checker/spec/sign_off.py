"""The record of a sign-off: who declares, and in which role, to have read which review."""

import datetime
import unicodedata
from typing import Annotated

from pydantic import Field

from checker.spec.document import survey_document
from checker.spec.fields import Choice, Count, Day, Name, Text, Words, Written, stated
from checker.spec.part import Part
from checker.spec.reading import typed_file

FORMAT = 1
SIGNABLE = ("not for flight", "no open findings")
"""Dispositions that can be signed off; a spec on hold cannot."""
Line = Annotated[str, Words(longest=8000)]
Digest = Annotated[str, Words("a SHA-256 in 64 hexadecimal digits", 64)]


class Signature(Part):
    """One person's name under a record."""

    name: Name = Field(description="Who signs, as declared.")
    role: Name = Field(description="In which role.")
    date: Annotated[datetime.date, Day()] = Field(description="When.")


class SignOff(Part):
    """A record bound to the text of a spec, to a rulebook and to a version of the program."""

    thrustline_signoff: Annotated[int, Count(FORMAT, FORMAT)] = Field(
        description="Version of the format."
    )
    drive: Written = Field(description="Name of the drive.")
    revision: Text = stated("Its revision.")
    spec_sha256: Digest = Field(description="Of the canonical text of the spec.")
    rulebook_sha256: Digest = Field(description="Of the rules in force.")
    version: Name = Field(description="Version of Thrustline.")
    disposition: Annotated[str, Choice(SIGNABLE)] = Field(description="Outcome of the review.")
    open: list[Line] = Field(description="Everything that was open, one line each.")
    deviations: list[Line] = Field(description="Every accepted deviation, one line each.")
    unanswered: list[Line] = Field(description="Every remark without an answer.")
    means: list[Line] = Field(description="What the record says, and what it does not.")
    signatures: list[Signature] = Field(description="Who signs.", min_length=1, max_length=20)


def folded(name: str) -> str:
    """A name as it is compared with another: without differences of form, case and spaces.

    Args:
        name: the name as written.

    >>> folded("  Ada\\u00a0 KORT ") == folded("ada kort")
    True
    """
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def load_sign_off(source: bytes, name: str) -> SignOff:
    """Read a record.

    Args:
        source: bytes of the file.
        name: name of the file, for messages.

    Raises:
        SpecUnreadable: with every problem found, each with its place.
    """
    document = survey_document(source, name)
    return typed_file(document, SignOff, "thrustline_signoff", FORMAT, "the sign-off format")
