"""The words of every report: outcomes, values, limits, margins and places as a person reads them.

All text that comes from a spec or a house rulebook leaves here harmless to print.
"""

import re
from functools import lru_cache

from checker.known import Detail, Known, Path
from checker.measures.registry import measures
from checker.review.finding import Finding
from checker.review.review import Disposition, Review
from checker.review.rule import LEVELS, Level, Limit, Rule, Source
from checker.review.rulebook import Change, Rulebook
from checker.spec.document import Document
from checker.spec.problem import dotted
from checker.spec.units import DIMENSIONS, Unit, show, unit_named
from checker.text import plain

LEVEL_MEANS: dict[Level, str] = {
    "warning": "do not run the drive",
    "caution": "fix or justify before flight",
    "advisory": "know it",
}

DISPOSITION_MEANS: dict[Disposition, str] = {
    "hold": (
        "A warning is open, or what would rule one out is not shown, or a rule is broken. "
        "Do not run the drive."
    ),
    "not for flight": (
        "No warning is open, but a caution is, or what would rule one out is not shown. "
        "Fix or justify each before flight."
    ),
    "no open findings": ("Nothing is open at the levels warning and caution. That is all it says."),
}

NO_PERMIT = "No disposition of this sheet permits a run or a flight."

CAUTIONS = (
    "This sheet is an aid that holds stated figures against rules. It finds only what its rules "
    "look for, and it believes what the spec states.",
    "It replaces neither tests, nor inspection, nor the judgement of a qualified engineer. The "
    "airworthiness rules of your country and the persons licensed under them decide.",
    "No finding, and no absence of findings, permits a run or a flight.",
    "Whoever runs a drive for the first time keeps people clear of the propeller disc and of its "
    "plane of rotation, ties the aircraft down and stands ready to cut the ignition.",
)

_MOST_DETAILS = 4
_MANY = 2.0
"""From so many times the limit on, a percentage no longer reads well."""

_LAST_END = re.compile(r"(?:.* )?[-+]?[0-9.]+(?:[eE][-+]?[0-9]+)? ?(?P<unit>[^0-9.\s].*)")
_SENTENCE_END = re.compile(r"(?<=[a-z0-9)%]{3}\.)\s+(?=[A-Z])")


def prose(text: str) -> str:
    """Running text of a rulebook or spec on one line, harmless to print."""
    return plain(" ".join(text.split()))


def first_sentence(text: str) -> str:
    """The first sentence of running text.

    >>> first_sentence("A gap opens. The teeth then meet at the edge, see T. H. Wentzell.")
    'A gap opens.'
    """
    return _SENTENCE_END.split(prose(text), maxsplit=1)[0]


def counted(number: int, noun: str, plural: str = "") -> str:
    """A number with its noun: ``1 rule``, ``2 rules``."""
    return f"{number} {noun if number == 1 else plural or noun + 's'}"


def listed(items: list[str], most: int) -> str:
    """Items in a row, with the number of those beyond the most that are named."""
    named = ", ".join(items[:most])
    return f"{named} and {len(items) - most} more" if len(items) > most else named


def measure_text(rule: Rule) -> str:
    """What a rule judges, in words."""
    measure = measures().get((rule.looks_at, rule.measure))
    return prose(measure.title if measure is not None else rule.measure.replace("_", " "))


def value_text(known: Known) -> str:
    """A value in the unit an engineer reads it in; truths as yes and no."""
    if isinstance(known.value, bool):
        return "yes" if known.value else "no"
    if isinstance(known.value, str):
        return plain(known.value)
    return show(known.value, known.unit)


def limit_text(limit: Limit) -> str:
    """A limit as written in the rulebook; truths as yes and no."""
    if limit.kind in ("is", "one_of", "none_of"):
        words = [_word(value) for value in limit.values]
        start = "" if limit.kind == "is" else f"{limit.kind.replace('_', ' ')} "
        return plain(start + ", ".join(words))
    return plain(limit.text)


def _word(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def margin_is_relative(finding: Finding) -> bool:
    """Whether the margin of a finding is a part of its limit, not an amount in its unit."""
    limit = finding.limit
    return limit is not None and finding.margin is not None and not limit.margin_is_absolute


def margin_text(finding: Finding) -> str:
    """The margin in words: ``short by 4.5 %``, ``over by 12 K``, ``30 % to spare``.

    Relative in per cent, of temperatures in kelvin, of a limit of zero in its unit; where a
    percentage no longer reads well, as a multiple of the limit or in its unit.
    """
    margin, limit, known = finding.margin, finding.limit, finding.known
    if margin is None or limit is None or known is None:
        return ""
    if margin == 0.0:
        return "nothing to spare"
    if not margin_is_relative(finding):
        amount = _amount(abs(margin), limit)
    else:
        times = _multiple(known.number, limit)
        if times >= _MANY:
            return f"{show(float(f'{times:.2g}'), '1')} times the limit"
        amount = show(float(f"{100.0 * abs(margin):.2g}"), "%")
        if margin <= -1.0 or margin > 1.0:
            amount = _amount(_distance(known.number, limit), limit)
    if margin > 0.0:
        return f"{amount} to spare"
    way = {"at_least": "short", "at_most": "over"}.get(limit.kind, "outside")
    return f"{way} by {amount}"


def _multiple(value: float, limit: Limit) -> float:
    """How many times a limit with one end the value is; 0 where that says nothing."""
    end = limit.low if limit.high is None else limit.high
    if limit.kind == "between" or end is None or end <= 0.0:
        return 0.0
    return value / end


def _distance(value: float, limit: Limit) -> float:
    """How far a value is from the nearer end of a limit."""
    return min(abs(value - end) for end in (limit.low, limit.high) if end is not None)


def _amount(amount: float, limit: Limit) -> str:
    """A difference, in the unit in which the limit is written."""
    return show(amount, "ΔK") if limit.unit == "K" else _in_unit_of(limit, amount)


def _in_unit_of(limit: Limit, value: float) -> str:
    """A value in the unit in which a limit is written, so that the two can be compared."""
    unit = _written_unit(limit.text, limit.unit)
    if unit is None:
        return show(value, limit.unit)
    number = unit.from_si(value)
    # Without this, the zero of a scale with an offset would show the noise of the subtraction.
    return f"{show(round(number, 9) if unit.offset else number, '1')} {unit.symbol}"


@lru_cache(maxsize=1024)
def _written_unit(limit: str, si: str) -> Unit | None:
    """The unit that stands in the text of a limit, if one does; bare numbers have none."""
    if si == "1":
        return None
    end = _LAST_END.fullmatch(limit)
    dimension = next((name for name, each in DIMENSIONS.items() if each.si == si), None)
    return unit_named(end["unit"], dimension) if end and dimension else None


def found_text(finding: Finding) -> str:
    """What was found, what the limit asks, and by how much it is kept or missed."""
    limit = finding.limit
    found = judged_text(finding)
    if (
        finding.known is None
        or limit is None
        or (finding.outcome == "meets" and limit.kind == "is")
    ):
        return found
    margin = margin_text(finding)
    return f"{found}; asks {limit_text(limit)}" + (f"; {margin}" if margin else "")


def details_of(finding: Finding) -> list[tuple[str, str]]:
    """Words that belong to the value judged, such as the case that governs, each with its label."""
    found: dict[str, list[str]] = {}
    for each in finding.known.chain() if finding.known is not None else ():
        if isinstance(each.origin, Detail):
            said = found.setdefault(each.symbol, [])
            said += [] if each.value in said else [str(each.value)]
    return [
        (plain(label.capitalize()), prose(listed(said, _MOST_DETAILS)))
        for label, said in found.items()
    ]


def judged_text(finding: Finding) -> str:
    """The value that was judged, in the unit of its limit, and at which operation point."""
    known, limit = finding.known, finding.limit
    if known is None or limit is None:
        return finding.outcome
    best = "at best " if finding.value is not known else ""
    point = f" at {plain(finding.point)}" if finding.point else ""
    is_number = limit.low is not None or limit.high is not None
    value = _in_unit_of(limit, known.number) if is_number else value_text(known)
    return f"{best}{value}{point}"


def judged_title(finding: Finding) -> str:
    """Outcome, title and level: ``Falls short: The teeth stay in contact (warning)``."""
    level = f" ({finding.level})" if finding.level else ""
    return f"{finding.outcome.capitalize()}: {prose(finding.rule.title)}{level}"


def part_text(finding: Finding) -> str:
    """The part a finding is about, with the name that a list entry has, and its ratio set."""
    subject = finding.subject
    name = f" ({prose(subject.name)})" if subject.kind in ("point", "deviation") else ""
    return plain(subject.label) + name + set_text(finding.ratio_set)


def target_text(finding: Finding) -> str:
    """What ``derive`` is asked for the value judged, such as ``meshes.first.overlap_ratio``."""
    return plain(f"{finding.subject.address}.{finding.rule.measure}")


def asked_text(finding: Finding) -> str:
    """The value judged, as ``derive`` is asked for it and at which operation point."""
    point = f" at {plain(finding.point)}" if finding.point else ""
    return f"{target_text(finding)}{point}{set_text(finding.ratio_set)}"


def level_heading(level: Level, count: int) -> str:
    """How many findings fall short at a level, and what that means."""
    noun = counted(count, level, "advisories" if level == "advisory" else "")
    return f"{noun}: {LEVEL_MEANS[level]}"


def broken_heading(count: int) -> str:
    """How many rules are broken, and what that means."""
    return (
        f"{counted(count, 'rule')} broken: a fault of the rule or of the program, not of the drive"
    )


def set_text(ratio_set: str | None) -> str:
    """The ratio set, as it follows the name of a part; empty where a spec has none."""
    return f", ratio set {plain(ratio_set)}" if ratio_set is not None else ""


def place_text(document: Document, path: Path) -> str:
    """File, line, column and field of a path."""
    line, column = document.place(path)
    return plain(f"{document.name} {line}:{column}, {dotted(path)}")


def source_text(source: Source) -> str:
    """A source with its clause."""
    clause = f", {source.clause}" if source.clause else ""
    says_so = source.kind != "memory" or "from memory" in source.cite + source.clause
    memory = "" if says_so else " (from memory)"
    return prose(f"{source.cite}{clause}{memory}")


def sources_text(rule: Rule) -> str:
    """All sources of a rule."""
    return "; ".join(source_text(source) for source in rule.sources)


def change_text(change: Change) -> str:
    """A limit that a house rulebook changed, and which way."""
    before = limit_text(change.before) if change.before else "no limit"
    way = "LOOSER" if change.looser else "tighter"
    reason = f"; reason given: {prose(change.reason)}" if change.reason else ""
    after = limit_text(change.after)
    return f"{plain(change.rule)}, {change.level}: {before} becomes {after}, {way}{reason}"


def rulebook_text(book: Rulebook, version: str, digest: str) -> str:
    """The rulebook by name, version, size and digest."""
    house = f" with house rulebook {prose(book.house)}" if book.house else ""
    return f"Thrustline {version}{house}, {counted(len(book.rules), 'rule')}, sha256 {digest[:12]}"


def open_text(review: Review) -> str:
    """What is open: ``Open: warning 2 fall short, 1 not shown; caution 1 falls short.``"""
    parts = []
    for level in LEVELS:
        counts = outcome_counts(tuple(each for each in review.open_findings if each.level == level))
        short = "falls short" if counts["falls short"] == 1 else "fall short"
        said = {"broken": "broken", "falls short": short, "not shown": "not shown"}
        found = [f"{counts[name]} {word}" for name, word in said.items() if counts[name]]
        if found:
            parts.append(f"{level} {', '.join(found)}")
    return f"Open: {'; '.join(parts)}." if parts else ""


def counts_text(review: Review) -> str:
    """How often each outcome came out, as a sentence."""
    counts = outcome_counts(review.findings)
    said = {
        "broken": ("is broken", "are broken"),
        "falls short": ("falls short", "fall short"),
        "not shown": ("is not shown", "are not shown"),
        "deviation": ("is an accepted deviation", "are accepted deviations"),
        "meets": ("meets its rule", "meet their rules"),
        "does not apply": ("does not apply", "do not apply"),
    }
    always = ("meets", "not shown", "does not apply")
    parts = [
        f"{counts[outcome]} {one if counts[outcome] == 1 else more}"
        for outcome, (one, more) in said.items()
        if counts[outcome] or outcome in always
    ]
    return f"Of {counted(len(review.findings), 'judgement')}, {', '.join(parts)}."


def outcome_counts(findings: tuple[Finding, ...]) -> dict[str, int]:
    """How often each outcome came out."""
    counts = dict.fromkeys(
        ("broken", "falls short", "not shown", "deviation", "meets", "does not apply"), 0
    )
    for finding in findings:
        counts[finding.outcome] += 1
    return counts
