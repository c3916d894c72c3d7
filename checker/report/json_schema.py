"""The form of the JSON report, as JSON Schema: closed objects whose keys are always all there."""

from typing import Any

from checker.report.json_report import SCHEMA_VERSION
from checker.report.since import WAYS_SINCE
from checker.review.inspection import TIMES
from checker.review.rule import LEVELS, LIMIT_KINDS

_Schema = dict[str, Any]


def report_schema() -> _Schema:
    """JSON Schema (draft 2020-12) of what ``thrustline review --format json`` prints."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Thrustline report",
        **_closed(
            "A report on one or more specs.",
            schema_version={"const": SCHEMA_VERSION, "description": "Version of this form."},
            tool=_closed("The program.", name=_text("Its name."), version=_text("Its version.")),
            on={"type": "string", "format": "date", "description": "Date of the review."},
            rulebook=_closed(
                "The rulebook in force.",
                name=_text("Name of the house rulebook, or of the shipped one."),
                sha256=_digest("Of the rules in force, every limit and word."),
                changes=_list(_change(), "Limits that the house rulebook changed."),
            ),
            rules={
                "type": "object",
                "additionalProperties": _rule(),
                "description": "What each rule says, by its id.",
            },
            cautions=_list(_text("A sentence."), "What to bear in mind with every report."),
            since=_or_null(_old(), "The report it is held against, if any."),
            reviews=_list(
                {"oneOf": [_reviewed(), _unreadable(), _failed()]},
                "One entry for each file, in the order given.",
            ),
        ),
        "$defs": {
            "value": _value(),
            "place": _place(),
            "limit": _limit(),
        },
    }


def _reviewed() -> _Schema:
    return _closed(
        "A spec that was reviewed.",
        state={"const": "reviewed"},
        file=_text("Name of the file."),
        sha256=_digest("Of the bytes reviewed."),
        drive=_closed(
            "The drive.",
            name=_text("Name of the drive."),
            revision=_or_null(_text("Revision of the design.")),
        ),
        disposition={
            "enum": ["hold", "not for flight", "no open findings"],
            "description": "The outcome as a whole; none of them permits a run or a flight.",
        },
        counts=_counts(),
        findings=_list(_finding(), "Every outcome of every rule on every part, the worst first."),
        cleared=_list(_cleared(), "What was open in the older report and is not now."),
        assumptions=_list(
            _assumption(), "What judged values rest on that the spec does not state."
        ),
        tables=_list(_table(), "The drive at a glance, one entry for each ratio set."),
        derivations={
            "type": "object",
            "additionalProperties": _count("Index of the last step in 'steps'."),
            "description": "Of each judged value, by part.measure, '@' with the operation point "
            "and '#' with the ratio set where there is one.",
        },
        steps=_list(_step(), "Steps of all derivations, each after those that go into it."),
        inspections=_list(_inspection(), "What to look at and when, in order of time."),
        remarks=_list(_remark(), "What reviewers say in the file of remarks beside the spec."),
        sign_off=_or_null(_sign_off(), "The record of a sign-off beside the spec, if any."),
    )


def _old() -> _Schema:
    return _closed(
        "An older report.",
        file=_text("Name of its file."),
        on=_text("Date of its review."),
        version=_text("Version of the program that wrote it."),
        rulebook_sha256=_digest("Of its rulebook."),
        differs=_list(_text("A sentence."), "What else than the specs may make the difference."),
    )


def _cleared() -> _Schema:
    return _closed(
        "A finding of the older report.",
        fingerprint=_fingerprint(),
        rule=_text("Id of its rule."),
        title=_text("What a design that meets the rule does."),
        part=_text("Path of the part."),
        level={"enum": list(LEVELS), "description": "Level at which it was open."},
        outcome=_text("What had come out."),
    )


def _remark() -> _Schema:
    return _closed(
        "A remark of a reviewer.",
        rule=_or_null(_text("Rule of the finding it is about.")),
        part=_or_null(_text("Part of that finding.")),
        field=_or_null(_text("Field it is about instead.")),
        by=_text("Who makes it."),
        date=_text("When, ISO 8601."),
        says=_text("The remark."),
        answer=_or_null(_text("What is answered.")),
        answered_by=_or_null(_text("Who answers.")),
        place=_or_null(_ref("place"), "Where it points; null if that is not there any more."),
    )


def _sign_off() -> _Schema:
    signature = _closed(
        "A name under the record, declared and not authenticated.",
        name=_text("Who signs."),
        role=_text("In which role."),
        date=_text("When, ISO 8601."),
    )
    return _closed(
        "The record of a sign-off.",
        spec_sha256=_digest("Of the canonical text of the spec it was given for."),
        rulebook_sha256=_digest("Of the rules it was given for."),
        version=_text("The version it was given for."),
        signatures=_list(signature, "Who signs."),
        matches={"type": "boolean", "description": "Whether it was given for what is reviewed."},
        differs=_list(_text("What changed."), "What changed since it was given."),
    )


def _inspection() -> _Schema:
    return _closed(
        "Something to look at.",
        when={"enum": list(TIMES), "description": "When to look."},
        look=_text("What to do."),
        earlier={"type": "boolean", "description": "Whether it stands a step before its usual."},
        rule=_text("Id of the rule whose finding speaks for it."),
        part=_text("Part of that finding."),
        outcome=_text("Outcome of that finding."),
    )


def _unreadable() -> _Schema:
    problem = _closed(
        "Something that keeps the file from being read.",
        path=_text("The field; empty for the file as a whole."),
        line=_count("Line, from 1.", 1),
        column=_count("Column in characters, from 1.", 1),
        message=_text("What is wrong."),
        found=_text("What is written there."),
        expected=_text("What could be written instead."),
        hint=_text("What to do about it; may be empty."),
    )
    return _closed(
        "A file that could not be read.",
        state={"const": "unreadable"},
        file=_text("Name of the file."),
        problems={**_list(problem, "Every problem found."), "minItems": 1},
    )


def _failed() -> _Schema:
    return _closed(
        "A file on which the program itself failed.",
        state={"const": "failed"},
        file=_text("Name of the file."),
        error=_text("What went wrong."),
    )


def _rule() -> _Schema:
    source = _closed(
        "A source of the rule.",
        kind=_text("standard, regulation, handbook, report, practice or memory."),
        cite=_text("Title, with edition or amendment."),
        clause=_text("Clause, table or page; may be empty."),
    )
    return _closed(
        "A rule.",
        title=_text("What a design that meets the rule does."),
        family=_text("Its family, or the name of the house rulebook."),
        judges=_text("The measure or stated field it judges, in words."),
        why=_text("Why the rule is there: the physics, and what happens in service."),
        remedy=_text("What a designer changes, the easiest first."),
        wrong_when=_text("Known cases in which it misjudges."),
        sources=_list(source, "On whose authority the rule stands."),
    )


def _finding() -> _Schema:
    return _closed(
        "The outcome of one rule on one part.",
        fingerprint=_fingerprint(),
        since=_or_null(
            {"enum": list(WAYS_SINCE)}, "Of what is open, what became of it since the older report."
        ),
        rule=_text("Id of the rule; more about it in 'rules'."),
        family=_text("Family of the rule, or name of the house rulebook."),
        title=_text("What a design that meets the rule does."),
        level=_or_null({"enum": list(LEVELS)}, "Level at which it is open or accepted."),
        outcome={
            "enum": ["meets", "falls short", "not shown", "does not apply", "deviation", "broken"],
            "description": "What came out.",
        },
        part=_text("Path of the part."),
        kind=_text("Kind of the part."),
        ratio_set=_or_null(_text("Ratio set reviewed, where the spec has any.")),
        point=_or_null(_text("Operation point that governs, where the measure varies.")),
        measure=_text("Measure or stated field judged."),
        value=_or_null(_ref("value"), "The value judged; null where it is not shown."),
        at_best={"type": "boolean", "description": "The value is the best that can be, not known."},
        limit=_or_null(_ref("limit"), "The limit that governs."),
        margin=_or_null(_margin()),
        place=_ref("place"),
        related=_list(_ref("place"), "Other stated values involved, or further missing fields."),
        missing=_list(_text("Path of a field."), "Fields to state for it to be shown."),
        reason=_text("Why it is not shown, only known at best, or broken; may be empty."),
        deviation=_or_null(_deviation()),
        derivation=_or_null(_text("Key of the value judged in 'derivations'.")),
    )


def _margin() -> _Schema:
    return _closed(
        "How far inside the limit; positive is good.",
        value=_or_null({"type": "number"}, "Part of the limit, or amount in the unit."),
        relative={"type": "boolean", "description": "Whether it is a part of the limit."},
        unit=_text("SI unit; '1' for a relative margin, 'ΔK' for a temperature."),
        text=_text("In words."),
    )


def _deviation() -> _Schema:
    day = {"type": "string", "format": "date"}
    return _closed(
        "The acceptance of a finding by a named person.",
        by=_text("Who accepts it."),
        reason=_text("Why."),
        mitigation=_or_null(_text("What limits the consequence.")),
        date=_or_null(day, "When it was accepted."),
        expires=_or_null(day, "Last day on which it stands."),
    )


def _counts() -> _Schema:
    open_or_accepted = ("broken", "falls short", "not shown", "deviation")
    by_level = _closed(
        "Of one level.", **{name: _count("Number of findings.") for name in open_or_accepted}
    )
    outcomes = (*open_or_accepted, "meets", "does not apply")
    return _closed(
        "Number of findings by outcome.",
        **{name: _count("Number of findings.") for name in outcomes},
        levels=_closed("The same by level.", **dict.fromkeys(LEVELS, by_level)),
    )


def _table() -> _Schema:
    number = _or_null(_ref("value"), "Null where it is not shown.")
    point = _closed(
        "An operation point.",
        point=_text("Its name."),
        speeds=_list(number, "Speed of each shaft of 'shafts'."),
        torques=_list(number, "Torque of each shaft of 'shafts'."),
    )
    mesh = _closed(
        "A mesh.",
        mesh=_text("Its name."),
        driver=_text("Name of the driving gear."),
        driven=_text("Name of the driven gear."),
        driver_teeth=number,
        driven_teeth=number,
        ratio=number,
        transverse_contact_ratio=number,
        overlap_ratio=number,
    )
    power = _closed(
        "A loaded mesh at an operation point.",
        mesh=_text("Its name."),
        point=_text("Name of the operation point."),
        iso=number,
        agma=number,
        iso_over_agma=number,
    )
    life = _closed(
        "Running time of a gear under the whole spectrum to the stated chance of failure.",
        gear=_text("Its name."),
        pitting=number,
        breakage=number,
    )
    return _closed(
        "The drive with one ratio set.",
        ratio_set=_or_null(_text("The set, where the spec has any.")),
        ratio=number,
        shafts=_list(_text("Name."), "Shafts of the power path at which speed or torque changes."),
        points=_list(point, "Operation points."),
        meshes=_list(mesh, "Meshes."),
        permissible_powers=_list(power, "Power that meshes may carry by ISO 6336 and AGMA 2001."),
        gear_lives=_list(life, "Hours of the gears."),
    )


def _step() -> _Schema:
    return _closed(
        "A step of a derivation: a stated value, one taken as given, or a formula.",
        symbol=_text("Symbol of the result."),
        **_value()["properties"],
        formula=_or_null(_text("The formula; null for what is stated or given.")),
        source=_or_null(_text("Source of the formula or of what is given.")),
        inputs=_list(_count("Index of a step."), "Steps that go in, in the order of the formula."),
        place=_or_null(_ref("place"), "Where the spec states it."),
    )


def _assumption() -> _Schema:
    return _closed(
        "A value taken as given.",
        symbol=_text("Symbol."),
        **_value()["properties"],
        source=_text("Source."),
    )


def _change() -> _Schema:
    return _closed(
        "A limit changed.",
        rule=_text("Id of the rule."),
        level={"enum": list(LEVELS)},
        before=_or_null(_ref("limit"), "Limit before; null where there was none."),
        after=_ref("limit"),
        looser={"type": "boolean", "description": "Whether it lets more through."},
        reason=_text("Why; empty where a tighter limit gives none."),
    )


def _value() -> _Schema:
    plain = {"type": ["number", "string", "boolean", "null"]}
    return _closed(
        "A value.",
        value={**plain, "description": "In SI; null for a number that is not finite."},
        unit=_text("SI unit; '1' for a pure number, empty for texts and truths."),
        shown=_text("In the unit an engineer reads it in."),
    )


def _limit() -> _Schema:
    return _closed(
        "A limit.",
        kind={"enum": list(LIMIT_KINDS), "description": "How the value is held against it."},
        values=_list({"type": ["number", "string", "boolean"]}, "One; two for 'between'."),
        unit=_text("SI unit of numbers."),
        text=_text("As the rulebook writes it."),
    )


def _place() -> _Schema:
    return _closed(
        "A place in the spec.",
        path=_text("The field, with dots; list entries by number from 0."),
        line=_count("Line, from 1; of what is around it where the field is not there.", 1),
        column=_count("Column in characters, from 1.", 1),
    )


def _closed(description: str, **properties: _Schema) -> _Schema:
    return {
        "type": "object",
        "description": description,
        "additionalProperties": False,
        "required": list(properties),
        "properties": properties,
    }


def _text(description: str) -> _Schema:
    return {"type": "string", "description": description}


def _digest(description: str) -> _Schema:
    return {"type": "string", "pattern": "^[0-9a-f]{64}$", "description": f"SHA-256. {description}"}


def _fingerprint() -> _Schema:
    return {
        "type": "string",
        "pattern": "^[0-9a-f]{32}$",
        "description": "Of rule, part and ratio set: the same from one revision to the next.",
    }


def _count(description: str, least: int = 0) -> _Schema:
    return {"type": "integer", "minimum": least, "description": description}


def _list(items: _Schema, description: str) -> _Schema:
    return {"type": "array", "items": items, "description": description}


def _or_null(schema: _Schema, description: str = "") -> _Schema:
    both: _Schema = {"anyOf": [schema, {"type": "null"}]}
    return {**both, "description": description} if description else both


def _ref(name: str) -> _Schema:
    return {"$ref": f"#/$defs/{name}"}
