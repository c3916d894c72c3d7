"""What a finding is known by from one revision of a spec to the next."""

import hashlib
import json

from checker.review.finding import Finding


def fingerprint_of(finding: Finding) -> str:
    """The fingerprint of a finding: the same as long as it is about the same thing.

    It is made of the rule, the part and the ratio set, so that neither a line that moves nor a
    value that changes gives a finding another one. Two deviations from one rule on one part share
    theirs.
    """
    return fingerprint(finding.rule.id, _part(finding), finding.ratio_set)


def fingerprints_of(finding: Finding, ratio_sets: list[str]) -> tuple[str, ...]:
    """Its fingerprint first, then those under which another revision may tell it.

    What comes out the same with every ratio set is told once and without a set, so that a change
    with one of them parts what was one finding.

    Args:
        finding: the finding.
        ratio_sets: names of the ratio sets of its spec.
    """
    others = ratio_sets if finding.ratio_set is None else [None]
    sets = dict.fromkeys((finding.ratio_set, *others))
    return tuple(fingerprint(finding.rule.id, _part(finding), each) for each in sets)


def fingerprint(rule: str, part: str, ratio_set: str | None) -> str:
    """The fingerprint of a rule on a part.

    Args:
        rule: id of the rule.
        part: what a person asks for the part by.
        ratio_set: the exchangeable ratio, ``None`` where the outcome is the same with all.
    """
    told = json.dumps([rule, part, ratio_set])
    return hashlib.sha256(told.encode()).hexdigest()[:32]


def _part(finding: Finding) -> str:
    """The part by name: a deviation, too, keeps it when another is put before it."""
    subject = finding.subject
    return f"deviations.{subject.name}" if subject.kind == "deviation" else subject.address
