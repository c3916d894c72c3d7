"""A review held against an older report: what a change made worse, and what stood before."""

from collections.abc import Mapping
from dataclasses import dataclass
from os.path import normpath
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, FiniteFloat, ValidationError

from checker import __version__
from checker.report.fault import Unopened
from checker.report.fingerprint import fingerprint_of, fingerprints_of
from checker.review.changes import way_of
from checker.review.digest import rulebook_digest
from checker.review.finding import Finding, Outcome, gravity
from checker.review.review import Review
from checker.review.rule import LEVELS, Level
from checker.review.rulebook import Rulebook
from checker.spec.problem import dotted

MOST_REPORT_BYTES = 100_000_000
WaySince = Literal["appeared", "worse", "stood before", "better"]
WAYS_SINCE: tuple[WaySince, ...] = ("appeared", "worse", "stood before", "better")
"""What can have become of an open finding."""

_MADE_WORSE = ("appeared", "worse")


class _Told(BaseModel):
    """A part of an older report: what is needed of it, whatever else it holds."""

    model_config = ConfigDict(frozen=True, strict=True)


class _Margin(_Told):
    value: FiniteFloat | None
    text: str


class Stood(_Told):
    """A finding as an older report tells it."""

    fingerprint: str
    rule: str
    title: str
    part: str
    outcome: Outcome
    level: Level | None
    told_margin: Annotated[_Margin | None, Field(alias="margin")]

    @property
    def margin(self) -> float | None:
        """How far inside the limit."""
        return None if self.told_margin is None else self.told_margin.value

    @property
    def margin_text(self) -> str:
        """The margin in words; empty where there is none."""
        return "" if self.told_margin is None else self.told_margin.text

    @property
    def is_open(self) -> bool:
        """Whether something was left to be done about it."""
        return self.outcome in ("falls short", "not shown", "broken")


class _Reviewed(_Told):
    state: Literal["reviewed"]
    file: str
    findings: list[Stood]


class _NotReviewed(_Told):
    state: Literal["unreadable", "failed"]
    file: str


class _Tool(_Told):
    name: Literal["thrustline"]
    version: str


class _Book(_Told):
    sha256: str


class _Report(_Told):
    schema_version: Literal[1]
    tool: _Tool
    on: str
    rulebook: _Book
    reviews: list[Annotated[_Reviewed | _NotReviewed, Field(discriminator="state")]]


@dataclass(frozen=True)
class OldReport:
    """What an older report says.

    Attributes:
        file: its name.
        on: date of its review.
        version: the version that wrote it.
        rulebook_sha256: of the rules it was held against.
        found: its findings by spec and fingerprint; of two with the same the less grave.
    """

    file: str
    on: str
    version: str
    rulebook_sha256: str
    found: Mapping[str, Mapping[str, Stood]]

    def differences(self, book: Rulebook) -> tuple[str, ...]:
        """What besides the specs can have made a difference, as sentences."""
        told = []
        if self.rulebook_sha256 != rulebook_digest(book):
            told.append(
                f"{self.file} was held against other rules (sha256 {self.rulebook_sha256[:12]}, "
                f"now {rulebook_digest(book)[:12]}): what changed may come from them."
            )
        if self.version != __version__:
            told.append(
                f"{self.file} was written by version {self.version}, this is {__version__}: what "
                "changed may come from that."
            )
        return tuple(told)

    def of(self, spec: str, alone: bool) -> Mapping[str, Stood] | None:
        """What it found on a spec, ``None`` where it reviewed no such one.

        Args:
            spec: name of the file.
            alone: whether it is the only spec reviewed now; then it may have had another name.
        """
        if alone and len(self.found) == 1:
            return next(iter(self.found.values()))
        return self.found.get(normpath(spec))


def old_report(file: str) -> OldReport:
    """Read an older report.

    Raises:
        Unopened: it cannot be opened, or is none.
    """
    try:
        with open(file, "rb") as opened:
            source = opened.read(MOST_REPORT_BYTES + 1)
    except OSError as error:
        raise Unopened.because_of(file, error) from None
    if len(source) > MOST_REPORT_BYTES:
        raise Unopened(file, f"the file is larger than {MOST_REPORT_BYTES // 1_000_000} MB")
    try:
        report = _Report.model_validate_json(source)
    except ValidationError as error:
        raise Unopened(file, _no_report(error)) from None
    found = {
        normpath(each.file): _by_fingerprint(each.findings)
        for each in report.reviews
        if isinstance(each, _Reviewed)
    }
    return OldReport(file, report.on, report.tool.version, report.rulebook.sha256, found)


def _no_report(error: ValidationError) -> str:
    """Why a file is no report, in one sentence: by the first thing that is wrong with it."""
    wrong = error.errors(include_url=False, include_input=False, include_context=False)[0]
    said = "the file is no report written by 'thrustline review --format json'"
    if wrong["type"] == "json_invalid":
        return f"{said}: it is not sound JSON"
    return f"{said} in the form of this version: see its {dotted(wrong['loc']) or 'beginning'}"


def _by_fingerprint(findings: list[Stood]) -> dict[str, Stood]:
    gravest_first = sorted(findings, key=_gravity)
    return {each.fingerprint: each for each in gravest_first}


def _gravity(stood: Stood) -> tuple[float, ...]:
    return gravity(stood.outcome, stood.level, stood.margin)


@dataclass(frozen=True)
class Since:
    """A review held against an older report.

    Attributes:
        old: the older report.
        is_new: whether the older report reviewed no such spec, so that everything appeared.
        ways: what became of each open finding, by fingerprint.
        before: what each open finding was, by fingerprint, where the older report has it.
        cleared: what was open and is not now, or is judged no more, the gravest first.
    """

    old: OldReport
    is_new: bool
    ways: Mapping[str, WaySince]
    before: Mapping[str, Stood]
    cleared: tuple[Stood, ...]

    def way(self, finding: Finding) -> WaySince | None:
        """What became of a finding; ``None`` for one that is not open."""
        return self.ways[fingerprint_of(finding)] if finding.is_open else None

    def made_worse(self, finding: Finding) -> bool:
        """Whether a finding is open and was not, or is worse than it was."""
        return self.way(finding) in _MADE_WORSE

    def worsens(self, review: Review, level: Level) -> bool:
        """Whether something at or above a level is worse than it was."""
        at_or_above = LEVELS[: LEVELS.index(level) + 1]
        return any(
            each.level in at_or_above for each in review.open_findings if self.made_worse(each)
        )


def since_old(review: Review, old: OldReport, *, alone: bool) -> Since:
    """Hold a review against an older report.

    Args:
        review: the review.
        old: the older report.
        alone: whether it is the only spec reviewed now.
    """
    before = old.of(review.loaded.document.name, alone)
    stood = before or {}
    sets = [each for each in review.designs if each is not None]
    ways: dict[str, WaySince] = {}
    were: dict[str, Stood] = {}
    still_open: set[str] = set()
    for finding in review.open_findings:
        names = fingerprints_of(finding, sets)
        still_open.update(names)
        was = _before(stood, names)
        way = way_of(was, finding)
        if was is not None:
            were[names[0]] = was
        told: WaySince = way if way in ("appeared", "worse", "better") else "stood before"
        ways[names[0]] = min(told, ways.get(names[0], told), key=WAYS_SINCE.index)
    gone = [each for each in stood.values() if each.is_open and each.fingerprint not in still_open]
    return Since(old, before is None, ways, were, tuple(sorted(gone, key=_gravity)))


def _before(stood: Mapping[str, Stood], names: tuple[str, ...]) -> Stood | None:
    """What a finding was: under its own fingerprint, or else the least grave under the others."""
    if names[0] in stood:
        return stood[names[0]]
    return max((stood[name] for name in names if name in stood), key=_gravity, default=None)


def told_way(since: Since | None, finding: Finding) -> WaySince | None:
    """What became of a finding since the older report, where there is one."""
    return None if since is None else since.way(finding)
