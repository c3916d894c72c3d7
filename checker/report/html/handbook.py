"""The rulebook as a handbook: every rule in full, by family, with an index of the sources."""

from dataclasses import dataclass
from itertools import groupby

from checker import __version__
from checker.report import rule_words, words
from checker.report.page import Section, Shell, page
from checker.review.digest import rulebook_digest
from checker.review.rule import Rule
from checker.review.rulebook import Rulebook


@dataclass(frozen=True, slots=True)
class Chapter:
    """A family of rules."""

    name: str
    about: str
    rules: tuple[Rule, ...]


def html_handbook(book: Rulebook) -> str:
    """The whole rulebook as one HTML file.

    Args:
        book: the rulebook.
    """
    chapters = [
        Chapter(name, book.about.get(name, ""), tuple(rules))
        for name, rules in groupby(book.rules, key=lambda rule: rule.family)
    ]
    facts = (
        ("Rulebook", words.rulebook_text(book, __version__, rulebook_digest(book))),
        ("Families", str(len(chapters))),
    )
    contents = (
        *(Section(f"family-{each.name}", each.name.capitalize()) for each in chapters),
        Section("sources", "Sources"),
    )
    return page(
        "handbook.html.j2",
        Shell("The rules of a propeller drive", "Rulebook", facts, contents),
        chapters=chapters,
        sources=_sources(book),
        words=words,
        rule_words=rule_words,
        version=__version__,
    )


def _sources(book: Rulebook) -> list[tuple[str, list[Rule]]]:
    """Every source in order of name, with the rules that rest on it."""
    resting: dict[str, list[Rule]] = {}
    for rule in book.rules:
        for text in dict.fromkeys(words.source_text(source) for source in rule.sources):
            resting.setdefault(text, []).append(rule)
    return sorted(resting.items(), key=lambda entry: (entry[0].casefold(), entry[0]))
