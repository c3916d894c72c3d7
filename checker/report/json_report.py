"""The report as JSON: the same bytes for the same input, closed to what ``json_schema`` says."""

import datetime
from collections.abc import Sequence

from checker import __version__
from checker.known import Known, Path, Unknown, Value
from checker.measures.design import Design
from checker.mechanics.equation import Equation
from checker.report import words
from checker.report.drive_table import DriveTable, MeshRow, drive_table
from checker.report.fingerprint import fingerprint_of
from checker.report.gear_table import life_rows, power_rows
from checker.report.json_value import Json, finite, json_text, value_json, value_or_none
from checker.report.results import Failed, Result
from checker.report.since import OldReport, Since, Stood, told_way
from checker.review.digest import rulebook_digest
from checker.review.finding import Finding
from checker.review.inspection import Inspection, inspection_plan
from checker.review.remarks import Attached
from checker.review.review import Review
from checker.review.rule import LEVELS, Limit, Rule
from checker.review.rulebook import Change, Rulebook
from checker.review.sign_off import Standing
from checker.spec.document import Document
from checker.spec.papers import Deviation
from checker.spec.problem import Problem, SpecUnreadable, dotted

SCHEMA_VERSION = 1


def json_report(
    reviews: Sequence[Json], book: Rulebook, on: str, old: OldReport | None = None
) -> str:
    """The whole report.

    Args:
        reviews: what ``entry`` made of the result of each file, in order.
        book: the rulebook held against them.
        on: date of the review, ISO 8601.
        old: the report it is held against, if any.
    """
    report: Json = {
        "schema_version": SCHEMA_VERSION,
        "tool": {"name": "thrustline", "version": __version__},
        "on": on,
        "rulebook": {
            "name": book.house or "Thrustline",
            "sha256": rulebook_digest(book),
            "changes": [_change(change) for change in book.changes],
        },
        "rules": {rule.id: _rule(rule) for rule in book.rules},
        "cautions": list(words.CAUTIONS),
        "since": None if old is None else _old(old, book),
        "reviews": reviews,
    }
    return json_text(report)


def _old(old: OldReport, book: Rulebook) -> Json:
    """The report that this one is held against."""
    return {
        "file": old.file,
        "on": old.on,
        "version": old.version,
        "rulebook_sha256": old.rulebook_sha256,
        "differs": list(old.differences(book)),
    }


def entry(result: Result, since: Since | None = None) -> Json:
    """What became of one file, and since an older report where it is held against one."""
    if isinstance(result, SpecUnreadable):
        return _unreadable(result.file, result.problems)
    if isinstance(result, Failed):
        return {"state": "failed", "file": result.file, "error": result.fault}
    return _reviewed(result, since)


def _unreadable(file: str, problems: tuple[Problem, ...]) -> Json:
    return {
        "state": "unreadable",
        "file": file,
        "problems": [
            {
                "path": dotted(problem.path),
                "line": problem.line,
                "column": problem.column,
                "message": problem.message,
                "found": problem.found,
                "expected": problem.expected,
                "hint": problem.hint,
            }
            for problem in problems
        ],
    }


def _reviewed(review: Review, since: Since | None) -> Json:
    """Every outcome, the worst first."""
    document = review.loaded.document
    drive = review.loaded.spec.drive
    steps = _Steps(document)
    return {
        "state": "reviewed",
        "file": document.name,
        "sha256": review.sha256,
        "drive": {"name": drive.name, "revision": drive.revision},
        "disposition": review.disposition,
        "counts": _counts(review),
        "findings": [_finding(finding, document, steps, since) for finding in review.findings],
        "cleared": [] if since is None else [_cleared(each) for each in since.cleared],
        "assumptions": [_assumption(known) for known in review.assumptions],
        "tables": [
            {**_table(drive_table(design)), **_gears(design)} for design in review.designs.values()
        ],
        "derivations": dict(sorted(steps.derivations.items())),
        "steps": steps.rows,
        "inspections": [_inspection(each) for each in inspection_plan(review)],
        "remarks": [_remark(each, document) for each in review.remarks],
        "sign_off": None if review.sign_off is None else _sign_off(review.sign_off),
    }


def _cleared(stood: Stood) -> Json:
    """A finding that was open in the older report and is not now."""
    return {
        "fingerprint": stood.fingerprint,
        "rule": stood.rule,
        "title": stood.title,
        "part": stood.part,
        "level": stood.level,
        "outcome": stood.outcome,
    }


def _remark(attached: Attached, document: Document) -> Json:
    """What a reviewer says, with the place of what it is about."""
    remark = attached.remark
    return {
        "rule": remark.rule,
        "part": remark.part,
        "field": remark.field,
        "by": remark.by,
        "date": remark.date.isoformat(),
        "says": remark.says,
        "answer": remark.answer,
        "answered_by": remark.answered_by,
        "place": None if attached.path is None else _place(document, attached.path),
    }


def _sign_off(standing: Standing) -> Json:
    """The record beside the spec, and what it no longer matches."""
    record = standing.record
    return {
        "spec_sha256": record.spec_sha256,
        "rulebook_sha256": record.rulebook_sha256,
        "version": record.version,
        "signatures": [
            {"name": each.name, "role": each.role, "date": each.date.isoformat()}
            for each in record.signatures
        ],
        "matches": standing.matches,
        "differs": list(standing.differs),
    }


def _inspection(inspection: Inspection) -> Json:
    """What to look at and when, with the finding that speaks for it."""
    because = inspection.because
    return {
        "when": inspection.when,
        "look": inspection.look,
        "earlier": inspection.earlier,
        "rule": because.rule.id,
        "part": because.subject.label,
        "outcome": because.outcome,
    }


def _rule(rule: Rule) -> Json:
    """What a rule says, once for all its findings."""
    return {
        "title": rule.title,
        "family": rule.family,
        "judges": words.measure_text(rule),
        "why": rule.why,
        "remedy": rule.remedy,
        "wrong_when": rule.wrong_when,
        "sources": [
            {"kind": source.kind, "cite": source.cite, "clause": source.clause}
            for source in rule.sources
        ],
    }


class _Steps:
    """Every step of every derivation, each once; a derivation is known by its last step."""

    def __init__(self, document: Document) -> None:
        self._document = document
        self._numbers: dict[int, int] = {}
        self.rows: list[Json] = []
        self.derivations: dict[str, Json] = {}

    def derivation(self, finding: Finding) -> str | None:
        """The key of the derivation of the value judged; it is worked out on first use."""
        if finding.known is None:
            return None
        point = f"@{finding.point}" if finding.point else ""
        ratio_set = f"#{finding.ratio_set}" if finding.ratio_set is not None else ""
        key = f"{finding.subject.label}.{finding.rule.measure}{point}{ratio_set}"
        if key not in self.derivations:
            self.derivations[key] = self._number(finding.known)
        return key

    def _number(self, known: Known) -> int:
        if id(known) not in self._numbers:
            for step in known.chain():
                if id(step) not in self._numbers:
                    self._numbers[id(step)] = len(self.rows)
                    self.rows.append(self._row(step))
        return self._numbers[id(known)]

    def _row(self, known: Known) -> Json:
        origin = known.origin
        formula: str | None = None
        source: str | None = None
        if isinstance(origin, Equation):
            formula, source = origin.text, origin.source
        else:
            source = origin
        return {
            "symbol": known.symbol,
            **value_json(known),
            "formula": formula,
            "source": source,
            "inputs": [self._numbers[id(inner)] for inner in known.inputs],
            "place": None if known.path is None else _place(self._document, known.path),
        }


def _finding(finding: Finding, document: Document, steps: _Steps, since: Since | None) -> Json:
    rule, known, limit = finding.rule, finding.known, finding.limit
    missing = finding.value.missing if isinstance(finding.value, Unknown) else ()
    return {
        "fingerprint": fingerprint_of(finding),
        "since": told_way(since, finding),
        "rule": rule.id,
        "family": rule.family,
        "title": rule.title,
        "level": finding.level,
        "outcome": finding.outcome,
        "part": finding.subject.label,
        "kind": finding.subject.kind,
        "ratio_set": finding.ratio_set,
        "point": finding.point,
        "measure": rule.measure,
        "value": None if known is None else value_json(known),
        "at_best": known is not None and known is not finding.value,
        "limit": None if limit is None else _limit(limit),
        "margin": _margin(finding),
        "place": _place(document, finding.place),
        "related": [_place(document, path) for path in finding.related],
        "missing": [dotted(path) for path in missing],
        "reason": finding.reason,
        "deviation": None if finding.deviation is None else _deviation(finding.deviation),
        "derivation": steps.derivation(finding),
    }


def _counts(review: Review) -> Json:
    """How many findings came out which way, in all and at each level."""
    levels = {
        level: words.outcome_counts(
            tuple(finding for finding in review.findings if finding.level == level)
        )
        for level in LEVELS
    }
    return {
        **words.outcome_counts(review.findings),
        "levels": {
            level: {
                name: counts[name] for name in ("broken", "falls short", "not shown", "deviation")
            }
            for level, counts in levels.items()
        },
    }


def _limit(limit: Limit) -> Json:
    return {
        "kind": limit.kind,
        "values": list(limit.values),
        "unit": limit.unit,
        "text": words.limit_text(limit),
    }


def _margin(finding: Finding) -> Json:
    if finding.margin is None or finding.limit is None:
        return None
    relative = words.margin_is_relative(finding)
    unit = "ΔK" if finding.limit.unit == "K" else finding.limit.unit
    return {
        "value": finite(finding.margin),
        "relative": relative,
        "unit": "1" if relative else unit,
        "text": words.margin_text(finding),
    }


def _place(document: Document, path: Path) -> Json:
    line, column = document.place(path)
    return {"path": dotted(path), "line": line, "column": column}


def _deviation(deviation: Deviation) -> Json:
    return {
        "by": deviation.by,
        "reason": deviation.reason,
        "mitigation": deviation.mitigation,
        "date": _day(deviation.date),
        "expires": _day(deviation.expires),
    }


def _day(day: datetime.date | None) -> str | None:
    return None if day is None else day.isoformat()


def _assumption(known: Known) -> Json:
    return {"symbol": known.symbol, **value_json(known), "source": str(known.origin)}


def _change(change: Change) -> Json:
    return {
        "rule": change.rule,
        "level": change.level,
        "before": None if change.before is None else _limit(change.before),
        "after": _limit(change.after),
        "looser": change.looser,
        "reason": change.reason,
    }


def _table(table: DriveTable) -> dict[str, Json]:
    return {
        "ratio_set": table.ratio_set,
        "ratio": value_or_none(table.ratio),
        "shafts": [shaft for group in table.shafts for shaft in group],
        "points": [
            {
                "point": row.point,
                "speeds": _of_each_shaft(table, row.speeds),
                "torques": _of_each_shaft(table, row.torques),
            }
            for row in table.points
        ],
        "meshes": [_mesh(row) for row in table.meshes],
    }


def _gears(design: Design) -> dict[str, Json]:
    """What each mesh may carry by both standards, and how long each gear lasts."""
    return {
        "permissible_powers": [
            {
                "mesh": row.mesh,
                "point": row.point,
                "iso": value_or_none(row.iso),
                "agma": value_or_none(row.agma),
                "iso_over_agma": value_or_none(row.ratio),
            }
            for row in power_rows(design)
        ],
        "gear_lives": [
            {
                "gear": row.gear,
                "pitting": value_or_none(row.pitting),
                "breakage": value_or_none(row.breakage),
            }
            for row in life_rows(design)
        ],
    }


def _of_each_shaft(table: DriveTable, values: tuple[Value, ...]) -> Json:
    return [
        value_or_none(value)
        for group, value in zip(table.shafts, values, strict=True)
        for _ in group
    ]


def _mesh(row: MeshRow) -> Json:
    return {
        "mesh": row.mesh,
        "driver": row.driver,
        "driven": row.driven,
        "driver_teeth": value_or_none(row.teeth),
        "driven_teeth": value_or_none(row.mate_teeth),
        "ratio": value_or_none(row.ratio),
        "transverse_contact_ratio": value_or_none(row.transverse_contact_ratio),
        "overlap_ratio": value_or_none(row.overlap_ratio),
    }
