"""The record of a sign-off: as the file that is kept, and as a sheet to read."""

import yaml

from checker.report import words
from checker.report.sheet import Sheet
from checker.spec.sign_off import SignOff
from checker.text import plain

_LABEL = 12
_HEAD = "# Written by thrustline signoff. Changed by hand, it is no longer a record of anything.\n"


def record_text(record: SignOff) -> str:
    """The record as the YAML file that ``load_sign_off`` reads back.

    Args:
        record: the record.
    """
    content = record.model_dump(mode="json", exclude_none=True)
    dumped: str = yaml.safe_dump(_harmless(content), sort_keys=False, allow_unicode=True, width=100)
    return _HEAD + dumped


def _harmless(node: object) -> object:
    """The same content with control and invisible characters spelled out."""
    if isinstance(node, str):
        return plain(node)
    if isinstance(node, list):
        return [_harmless(each) for each in node]
    if isinstance(node, dict):
        return {key: _harmless(value) for key, value in node.items()}
    return node


def sign_off_sheet(record: SignOff, file: str, *, width: int, colour: bool) -> str:
    """Write what was signed, by whom, and what it says.

    Args:
        record: the record.
        file: name of the file that keeps it.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    revision = f", revision {words.prose(record.revision)}" if record.revision else ""
    sheet.line(f"Sign-off: {words.prose(record.drive)}{revision}", style="bold")
    for label, text in (
        ("Record", plain(file)),
        ("Spec", f"canonical text, sha256 {record.spec_sha256[:12]}"),
        ("Against", f"Thrustline {record.version}, rules sha256 {record.rulebook_sha256[:12]}"),
        ("Disposition", record.disposition),
    ):
        sheet.line(text, indent=_LABEL, label=label)
    for heading, lines in (
        ("Open when it was signed", record.open or ["nothing"]),
        ("Deviations accepted in the spec", record.deviations),
        ("Remarks without an answer", record.unanswered),
        ("Signed by", [signature_text(record, each) for each in range(len(record.signatures))]),
        ("What this says, and what it does not", record.means),
    ):
        if lines:
            sheet.heading(heading)
        for line in lines:
            sheet.line(words.prose(line), indent=2, label="-")
    return sheet.text()


def signature_text(record: SignOff, index: int) -> str:
    """One signature as a line of text."""
    each = record.signatures[index]
    return words.prose(f"{each.name}, {each.role}, on {each.date.isoformat()}")
