"""The form of a rulebook file, as JSON Schema, and the problems of a file that keeps another."""

from typing import Any

import jsonschema

from checker.known import Path
from checker.review.rule import LEVELS, LIMIT_KINDS
from checker.review.rulebook import FORMAT
from checker.spec.document import Document
from checker.spec.fields import spelled
from checker.spec.parts import MODELS
from checker.spec.problem import Problem

_TEXT = {"type": "string", "minLength": 1, "pattern": r"\S"}
_BARE = {"type": ["number", "string", "boolean"]}
_LIMIT = {
    "type": "object",
    "minProperties": 1,
    "maxProperties": 1,
    "additionalProperties": False,
    "properties": {
        "at_least": {"type": ["number", "string"], "description": "Number, or quantity with unit."},
        "at_most": {"type": ["number", "string"], "description": "Number, or quantity with unit."},
        "between": {
            "type": "array",
            "minItems": 2,
            "maxItems": 2,
            "items": {"type": ["number", "string"]},
            "description": "Lower and upper end, both allowed.",
        },
        "one_of": {"type": "array", "minItems": 1, "items": _BARE},
        "none_of": {"type": "array", "minItems": 1, "items": _BARE},
        "is": _BARE,
    },
}
assert tuple(_LIMIT["properties"]) == LIMIT_KINDS  # type: ignore[arg-type]
_LIMITS = {
    "type": "object",
    "minProperties": 1,
    "additionalProperties": False,
    "properties": dict.fromkeys(LEVELS, _LIMIT),
    "description": "A limit for each level at which the rule can fall short.",
}
_RULE = {
    "type": "object",
    "additionalProperties": False,
    "required": [
        "id",
        "title",
        "looks_at",
        "measure",
        "limits",
        "why",
        "remedy",
        "sources",
        "wrong_when",
    ],
    "properties": {
        "id": {
            "type": "string",
            "pattern": r"^[a-z]+\.[a-z0-9-]+$",
            "description": "Family and name, never used again for another rule.",
        },
        "title": {**_TEXT, "description": "What a design that meets the rule does."},
        "looks_at": {"enum": sorted(MODELS), "description": "Kind of part it looks at."},
        "when": {
            "type": "array",
            "description": "Conditions under which it applies; all must hold.",
            "items": {
                "type": "object",
                "required": ["measure"],
                "minProperties": 2,
                "maxProperties": 2,
                "properties": {"measure": _TEXT, **_LIMIT["properties"]},  # type: ignore[dict-item]
                "additionalProperties": False,
            },
        },
        "measure": {**_TEXT, "description": "Measure or stated field of that part."},
        "limits": _LIMITS,
        "why": {**_TEXT, "description": "The physics, and what happens in service."},
        "remedy": {**_TEXT, "description": "What a designer changes, the easiest first."},
        "sources": {
            "type": "array",
            "minItems": 1,
            "items": {
                "type": "object",
                "required": ["kind", "cite"],
                "additionalProperties": False,
                "properties": {
                    "kind": {
                        "enum": [
                            "standard",
                            "regulation",
                            "handbook",
                            "report",
                            "practice",
                            "memory",
                        ]
                    },
                    "cite": _TEXT,
                    "clause": _TEXT,
                },
            },
        },
        "no_deviation": {"type": "boolean", "description": "Nobody may accept a deviation."},
        "needs_mitigation": {
            "type": "boolean",
            "description": "A deviation must state a mitigation.",
        },
        "wrong_when": {**_TEXT, "description": "Known cases in which it misjudges."},
    },
}


def family_schema() -> dict[str, Any]:
    """JSON Schema of a shipped rulebook file."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Thrustline rulebook family",
        "type": "object",
        "required": ["family", "about", "rules"],
        "additionalProperties": False,
        "properties": {
            "family": {"type": "string", "pattern": "^[a-z]+$"},
            "about": {**_TEXT, "description": "What the family is for."},
            "rules": {"type": "array", "minItems": 1, "items": _RULE},
        },
    }


def house_schema() -> dict[str, Any]:
    """JSON Schema of a house rulebook."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Thrustline house rulebook",
        "type": "object",
        "required": ["thrustline_rulebook", "name"],
        "additionalProperties": False,
        "properties": {
            "thrustline_rulebook": {"const": FORMAT, "description": "Version of the format."},
            "name": {**_TEXT, "description": "Name of the house rulebook."},
            "rules": {"type": "array", "items": _RULE, "description": "Rules added."},
            "limits": {
                "type": "array",
                "description": "Limits changed; a looser one needs a reason.",
                "items": {
                    "type": "object",
                    "required": ["rule", "limits"],
                    "additionalProperties": False,
                    "properties": {"rule": _TEXT, "limits": _LIMITS, "reason": _TEXT},
                },
            },
        },
    }


def schema_problems(document: Document, schema: dict[str, Any] | None = None) -> list[Problem]:
    """Where a rulebook differs from the form it should have.

    Args:
        document: the rulebook.
        schema: the form; that of a house rulebook if left out.
    """
    validator = jsonschema.Draft202012Validator(schema or house_schema())
    problems = []
    for error in sorted(validator.iter_errors(document.data), key=lambda each: each.json_path):
        path: Path = tuple(error.absolute_path)
        found, expected = _in_words(error)
        problems.append(document.problem(path, "not the form of a rulebook", found, expected))
    return problems


def _in_words(error: jsonschema.ValidationError) -> tuple[str, str]:
    """What a rulebook has at a place, and what it should have."""
    instance: Any = error.instance
    value: Any = error.validator_value
    schema: Any = error.schema
    found = spelled(instance)
    expected = schema.get("description", error.message)
    if error.validator == "additionalProperties":
        known = schema.get("properties", {})
        found = ", ".join(repr(key) for key in instance if key not in known)
        expected = "one of " + ", ".join(known)
    elif error.validator == "required":
        found = "no " + ", ".join(key for key in value if key not in instance)
        expected = "all of " + ", ".join(value)
    elif error.validator in ("enum", "const"):
        expected = "one of " + ", ".join(map(str, value)) if isinstance(value, list) else str(value)
    elif error.validator == "type":
        types: list[str] = value if isinstance(value, list) else [value]
        expected = " or ".join(_TYPES.get(each, each) for each in types)
    elif str(error.validator).startswith(("min", "max")) and not isinstance(instance, str):
        bound = "at least" if str(error.validator).startswith("min") else "at most"
        found, expected = f"{len(instance)} entries", f"{bound} {value}"
    elif instance == str(instance) and not str(instance).strip():
        found, expected = "an empty text", "a text that says something"
    return found, expected


_TYPES = {
    "object": "a mapping of fields",
    "array": "a list",
    "string": "a text",
    "number": "a number",
    "boolean": "true or false",
}
