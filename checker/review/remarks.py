"""Remarks of reviewers, each put to the finding or field it is about."""

from dataclasses import dataclass

from checker.known import Path
from checker.review.finding import Finding
from checker.spec.document import Document
from checker.spec.edit import field_named
from checker.spec.remarks import Remark


@dataclass(frozen=True, slots=True)
class Attached:
    """A remark with what it is about.

    Attributes:
        remark: what was said.
        findings: the findings of its rule and part; of a field, those that judge or rest on it.
        path: its field in the spec; of a finding, the value judged.
    """

    remark: Remark
    findings: tuple[Finding, ...]
    path: Path | None

    @property
    def is_loose(self) -> bool:
        """Whether what it is about is not there (any more)."""
        return self.path is None

    @property
    def is_answered(self) -> bool:
        """Whether it has an answer."""
        return self.remark.answer is not None


def attach(
    remarks: tuple[Remark, ...], findings: tuple[Finding, ...], document: Document
) -> tuple[Attached, ...]:
    """Put each remark to what it is about, in the order of the file.

    Args:
        remarks: what the reviewers said.
        findings: every finding of the review.
        document: the spec.
    """
    return tuple(_attached(remark, findings, document) for remark in remarks)


def _attached(remark: Remark, findings: tuple[Finding, ...], document: Document) -> Attached:
    if remark.field is not None:
        path = field_named(document, remark.field)
        about = () if path is None else tuple(each for each in findings if _rests_on(each, path))
        return Attached(remark, about, path)
    about = tuple(
        each
        for each in findings
        if each.rule.id == remark.rule and remark.part in (each.subject.label, each.subject.address)
    )
    return Attached(remark, about, about[0].place if about else None)


def _rests_on(finding: Finding, path: Path) -> bool:
    """Whether a finding judges a field, or a value that was computed from it."""
    return any(each[: len(path)] == path for each in (finding.place, *finding.related))
