"""What the other ring of a bearing sits on, where that turns as well."""

from checker.spec.subject import Subject, Subjects


def carrier_of(subjects: Subjects, bearing: Subject) -> str | None:
    """Name of the shaft under the other ring of a bearing; ``None`` where that one stands still.

    Stated for the bearing, or for the whole member that it carries.
    """
    member = subjects.the("shaft", str(bearing.raw("shaft")))
    carrier: str | None = bearing.raw("runs_on") or member.raw("turns_freely_on")
    return carrier
