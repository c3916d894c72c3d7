"""The rulebook for the eye: its rules by family, or one rule in full."""

from itertools import groupby

from checker.report import rule_words, words
from checker.report.sheet import Sheet
from checker.review.rule import Rule
from checker.review.rulebook import Rulebook
from checker.text import plain

_LABEL = 12


def rulebook_list(book: Rulebook, *, width: int, colour: bool) -> str:
    """List every rule with its levels, by family."""
    sheet = Sheet(width, colour=colour)
    sheet.line(f"Rulebook of {words.counted(len(book.rules), 'rule')}", style="bold")
    for family, rules in groupby(book.rules, key=lambda rule: rule.family):
        sheet.heading(plain(family))
        for rule in rules:
            sheet.line(f"{plain(rule.id)} ({', '.join(rule.limits)})", indent=2)
            sheet.line(words.prose(rule.title), indent=4)
    return sheet.text()


def rule_in_full(rule: Rule, *, width: int, colour: bool) -> str:
    """Everything a rule says."""
    sheet = Sheet(width, colour=colour)
    sheet.line(plain(rule.id), style="bold")
    sheet.line(words.prose(rule.title))
    sheet.gap()
    _row(sheet, "Looks at", f"each {rule.looks_at}")
    for condition in rule.when:
        _row(sheet, "When", rule_words.condition_text(rule, condition))
    _row(sheet, "Measure", rule_words.measure_text(rule, rule.measure))
    for level, limit in rule.limits.items():
        _row(sheet, level.capitalize(), rule_words.asks_text(level, limit))
    _row(sheet, "Why", words.prose(rule.why))
    _row(sheet, "Remedy", words.prose(rule.remedy))
    for source in rule.sources:
        _row(sheet, source.kind.capitalize(), words.source_text(source))
    _row(sheet, "Wrong when", words.prose(rule.wrong_when))
    _row(sheet, "Deviation", rule_words.deviation_text(rule))
    return sheet.text()


def _row(sheet: Sheet, label: str, text: str) -> None:
    sheet.line(text, indent=_LABEL, label=label)
