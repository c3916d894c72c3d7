"""What the text of a spec and the rulebook in force are known by."""

import hashlib
import json

from checker.review.rulebook import Rulebook
from checker.spec.document import Document


def rulebook_digest(book: Rulebook) -> str:
    """SHA-256 of the rules in force, with every limit and word, and of what a house changed."""
    return hashlib.sha256(repr((book.rules, book.changes)).encode()).hexdigest()


def spec_digest(document: Document) -> str:
    """SHA-256 of what a spec states, whatever its comments, spaces and order of fields.

    The canonical text is JSON: names in order, no spaces, numbers and truths as YAML reads them.

    Args:
        document: the spec.
    """
    canonical = json.dumps(
        document.data, sort_keys=True, ensure_ascii=True, separators=(",", ":"), allow_nan=False
    )
    return hashlib.sha256(canonical.encode()).hexdigest()
