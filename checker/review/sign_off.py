"""Sign-off: what a record binds, when it is refused, and whether it still matches."""

from dataclasses import dataclass

from checker import __version__
from checker.review.digest import rulebook_digest, spec_digest
from checker.review.finding import Finding
from checker.review.review import Review
from checker.spec.sign_off import FORMAT, SIGNABLE, Signature, SignOff, folded

MEANS = (
    "Each person named declares to have read the review of this spec by these rules. Names are "
    "declared and not authenticated.",
    "The digests prove only which text was reviewed, by which rules and by which version of "
    "Thrustline. They prove nothing about the drive that is built.",
    "This record permits neither a run nor a flight. The airworthiness rules of your country and "
    "the persons licensed under them decide.",
)


class Refused(Exception):
    """A sign-off that is not given; the message says why."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A record beside a spec, and what it no longer matches.

    Attributes:
        record: the record.
        differs: what has changed since it was given; empty while it matches.
    """

    record: SignOff
    differs: tuple[str, ...]

    @property
    def matches(self) -> bool:
        """Whether it was given for what is reviewed now."""
        return not self.differs


def signed(review: Review, before: SignOff | None, signature: Signature) -> SignOff:
    """The record of a review with one more signature.

    Args:
        review: the review signed off.
        before: the record that earlier persons signed, ``None`` for a new one.
        signature: the one to add.

    Raises:
        Refused: the review is on hold or has something broken, the record before was given for
            something else, or the same person signed it already.
    """
    if review.has_broken:
        raise Refused("a rule is broken, so that nobody knows what it would have found")
    if review.disposition not in SIGNABLE:
        raise Refused(f"the disposition is {review.disposition}")
    if before is not None:
        _check_next(before, review, signature)
    return _record(review, [*(before.signatures if before else ()), signature])


def _check_next(before: SignOff, review: Review, signature: Signature) -> None:
    """Refuse a further signature under what this person signed, or what no longer matches."""
    differs = differences(before, review)
    if differs:
        raise Refused(
            f"since the record was given, {' and '.join(differs)} changed; begin a new one"
        )
    for each in before.signatures:
        if folded(each.name) == folded(signature.name):
            raise Refused(f"{each.name} has signed already; a second person must be another one")


def _record(review: Review, signatures: list[Signature]) -> SignOff:
    drive = review.loaded.spec.drive
    return SignOff.model_construct(
        thrustline_signoff=FORMAT,
        drive=drive.name,
        revision=drive.revision,
        spec_sha256=spec_digest(review.loaded.document),
        rulebook_sha256=rulebook_digest(review.book),
        version=__version__,
        disposition=review.disposition,
        open=open_lines(review),
        deviations=_deviation_lines(review),
        unanswered=_unanswered_lines(review),
        means=list(MEANS),
        signatures=signatures,
    )


def differences(record: SignOff, review: Review) -> tuple[str, ...]:
    """What differs between what a record was given for and a review, in words.

    Args:
        record: the record.
        review: the review held against it.
    """
    same = {
        "the spec": record.spec_sha256 == spec_digest(review.loaded.document),
        "the rulebook": record.rulebook_sha256 == rulebook_digest(review.book),
        "the version of Thrustline": record.version == __version__,
    }
    differs = tuple(what for what, is_same in same.items() if not is_same)
    then = (record.disposition, record.open, record.deviations)
    now = (review.disposition, open_lines(review), _deviation_lines(review))
    if not differs and then != now:
        return ("what is open",)  # with the date alone: a deviation has expired, say
    return differs


def open_lines(review: Review) -> list[str]:
    """Everything that is open at any level, one line each."""
    return [f"{each.level}, {each.outcome}: {_named(each)}" for each in review.open_findings]


def _deviation_lines(review: Review) -> list[str]:
    return [
        f"{each.level}: {_named(each)}, accepted by {each.deviation.by} until "
        f"{each.deviation.expires}: {each.deviation.reason}"
        for each in review.findings
        if each.deviation is not None
    ]


def _unanswered_lines(review: Review) -> list[str]:
    return [
        f"{each.remark.by} on {each.remark.field or f'{each.remark.rule} at {each.remark.part}'}: "
        f"{each.remark.says}"
        for each in review.remarks
        if not each.is_answered
    ]


def _named(finding: Finding) -> str:
    ratio_set = f", ratio set {finding.ratio_set}" if finding.ratio_set is not None else ""
    return f"{finding.rule.title} ({finding.rule.id}, {finding.subject.address}{ratio_set})"
