"""Files beside a spec: remarks of reviewers, and the record of a sign-off.

They carry the name of the spec with an ending of their own, so that ``*.yaml`` finds specs only.
"""

from dataclasses import replace
from pathlib import Path

from checker.report.fault import Unopened
from checker.review.remarks import attach
from checker.review.review import Review
from checker.review.sign_off import Standing, differences
from checker.spec.remarks import load_remarks
from checker.spec.sign_off import SignOff, load_sign_off
from checker.spec.source import MOST_BYTES


def remarks_file(spec: str) -> str:
    """Name of the file of remarks on a spec."""
    return str(Path(spec).with_suffix(".remarks"))


def sign_off_file(spec: str) -> str:
    """Name of the record of a sign-off of a spec."""
    return str(Path(spec).with_suffix(".signoff"))


def sign_off_beside(spec: str) -> SignOff | None:
    """The record beside a spec, if there is one.

    Raises:
        SpecUnreadable: it cannot be read.
    """
    file = sign_off_file(spec)
    source = _bytes(file)
    return None if source is None else load_sign_off(source, file)


def with_papers(review: Review, spec: str) -> Review:
    """A review with the remarks and the sign-off that lie beside its spec.

    Args:
        review: the review.
        spec: path of its spec.

    Raises:
        SpecUnreadable: one of the files cannot be read.
    """
    file = remarks_file(spec)
    source = _bytes(file)
    if source is not None:
        remarks = load_remarks(source, file)
        attached = attach(remarks.remarks, review.findings, review.loaded.document)
        review = replace(review, remarks=attached)
    record = sign_off_beside(spec)
    if record is not None:
        review = replace(review, sign_off=Standing(record, differences(record, review)))
    return review


def _bytes(file: str) -> bytes | None:
    """The bytes of a file that may be missing, and no more than make it too large."""
    try:
        with open(file, "rb") as opened:
            return opened.read(MOST_BYTES + 1)
    except FileNotFoundError:
        return None
    except OSError as error:
        raise Unopened.because_of(file, error) from None
