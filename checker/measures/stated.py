"""Whether a thing is stated at all: what is left out is not shown, and never falls short."""

from checker.known import Known, Unknown, Value, all_known
from checker.spec.fields import NONE
from checker.spec.subject import Subject


def stated(subject: Subject, *fields: str) -> Value:
    """True where every one of these fields is given; else unknown, naming those that are not."""
    values = [subject.given(field) for field in fields]
    inputs = tuple(value for value in values if isinstance(value, Known))
    return all_known(*values) or Known(True, "", "stated", inputs=inputs)


def described(subject: Subject, field: str) -> Value:
    """Whether a field says that there is something: false where it is ``none``."""
    said = subject.given(field)
    if isinstance(said, Unknown):
        return said
    return Known(said.value != NONE, "", "described", inputs=(said,))
