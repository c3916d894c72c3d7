"""What a rulebook in force is known by."""

import hashlib

from checker.review.rulebook import Rulebook


def rulebook_digest(book: Rulebook) -> str:
    """SHA-256 of the rules in force, with every limit and word, and of what a house changed."""
    return hashlib.sha256(repr((book.rules, book.changes)).encode()).hexdigest()
