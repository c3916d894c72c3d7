"""A whole review: from the bytes of a spec to findings in order and a disposition."""

import datetime
import hashlib
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from checker.known import Assumption, Known
from checker.measures.design import Design
from checker.review.deviations import settle, standing_value
from checker.review.finding import Finding, report_order
from checker.review.judge import judge_rule, judge_value
from checker.review.remarks import Attached
from checker.review.rule import LEVELS, Level
from checker.review.rulebook import Rulebook
from checker.spec.loading import LoadedSpec, load_spec
from checker.spec.problem import SpecUnreadable
from checker.train.graph import Train, TrainUnclear, build_train

if TYPE_CHECKING:
    from checker.review.sign_off import Standing

Disposition = Literal["hold", "not for flight", "no open findings"]


@dataclass(frozen=True)
class Review:
    """What the rules found on one spec.

    Attributes:
        loaded: the spec with its document.
        source: the bytes reviewed.
        sha256: of these bytes.
        book: the rulebook held against it.
        on: date of the review.
        designs: the solved design of each ratio set; one, named ``None``, where there are no sets.
        findings: every outcome, the worst first.
        remarks: what reviewers said of it.
        sign_off: the record of a sign-off beside it, and whether it still matches.
    """

    loaded: LoadedSpec
    source: bytes
    sha256: str
    book: Rulebook
    on: datetime.date
    designs: dict[str | None, Design]
    findings: tuple[Finding, ...]
    remarks: tuple[Attached, ...] = ()
    sign_off: "Standing | None" = None

    @property
    def open_findings(self) -> tuple[Finding, ...]:
        """What falls short, is not shown or is broken."""
        return tuple(finding for finding in self.findings if finding.is_open)

    @property
    def has_broken(self) -> bool:
        """Whether a rule or measure failed."""
        return any(finding.outcome == "broken" for finding in self.findings)

    @property
    def disposition(self) -> Disposition:
        """The outcome as a whole. None of them permits a run."""
        levels = {finding.level for finding in self.open_findings}
        if self.has_broken or "warning" in levels:
            return "hold"
        return "not for flight" if "caution" in levels else "no open findings"

    def reaches(self, level: Level) -> bool:
        """Whether an open finding stands at or above a level."""
        at_or_above = LEVELS[: LEVELS.index(level) + 1]
        return any(finding.level in at_or_above for finding in self.open_findings)

    @property
    def assumptions(self) -> tuple[Known, ...]:
        """Every assumption that a judged value rests on, each once."""
        found: dict[tuple[str, str], Known] = {}
        for finding in self.findings:
            if finding.known is None:
                continue
            for leaf in finding.known.leaves():
                if isinstance(leaf.origin, Assumption):
                    found.setdefault((leaf.symbol, leaf.origin), leaf)
        return tuple(found[key] for key in sorted(found))


def review_spec(source: bytes, name: str, book: Rulebook, on: datetime.date) -> Review:
    """Review a spec.

    Args:
        source: bytes of the spec file.
        name: its name, for messages.
        book: the rulebook.
        on: date of the review, which decides on expiry.

    Raises:
        SpecUnreadable: the spec, or the train it describes, cannot be made out.
    """
    loaded = load_spec(source, name)
    designs = designs_of(loaded)
    findings = _by_set({each: _findings(design, each, book) for each, design in designs.items()})
    findings = _with_deviations(findings, next(iter(designs.values())), book, on)
    return Review(
        loaded,
        source,
        hashlib.sha256(source).hexdigest(),
        book,
        on,
        designs,
        tuple(sorted(findings, key=report_order)),
    )


def designs_of(loaded: LoadedSpec) -> dict[str | None, Design]:
    """The solved design of each ratio set; one, named ``None``, where there are no sets.

    Raises:
        SpecUnreadable: the train cannot be made out.
    """
    train = _train(loaded)
    sets: list[str | None] = [*loaded.spec.ratio_sets] or [None]
    return {each: Design(loaded.spec, train, each) for each in sets}


def _train(loaded: LoadedSpec) -> Train:
    try:
        return build_train(loaded.spec)
    except TrainUnclear as unclear:
        document = loaded.document
        problems = tuple(
            document.problem(fault.path, fault.message, fault.found, fault.expected)
            for fault in unclear.faults
        )
        raise SpecUnreadable(document.name, problems) from None


def _findings(design: Design, ratio_set: str | None, book: Rulebook) -> list[Finding]:
    return [
        finding
        for rule in book.rules
        if rule.looks_at != "deviation"
        for finding in judge_rule(rule, design, ratio_set)
    ]


def _by_set(found: dict[str | None, list[Finding]]) -> list[Finding]:
    """The findings of all ratio sets; what is the same with every set stands once."""
    if len(found) == 1:
        return next(iter(found.values()))
    together: list[Finding] = []
    for alike in zip(*found.values(), strict=True):
        same = len({finding.result for finding in alike}) == 1
        together += [replace(alike[0], ratio_set=None)] if same else list(alike)
    return together


def _with_deviations(
    findings: list[Finding], design: Design, book: Rulebook, on: datetime.date
) -> list[Finding]:
    subjects = design.subjects.all("deviation")
    if not subjects:
        return findings
    parts = frozenset(
        subject.label for all_ in design.subjects.by_kind.values() for subject in all_
    )
    settled = settle(findings, design.subjects.spec.deviations, book, parts, on)
    own = [
        judge_value(rule, subject, standing_value(subject, settled.standings))
        for rule in book.rules
        if rule.looks_at == "deviation"
        for subject in subjects
    ]
    return [*settled.findings, *own]
