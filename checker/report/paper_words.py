"""The words for what lies beside a spec: remarks of reviewers and the record of a sign-off."""

from checker.report.words import counted, place_text, prose
from checker.review.remarks import Attached
from checker.review.sign_off import Standing
from checker.spec.document import Document
from checker.spec.remarks import Remark


def sign_off_text(standing: Standing) -> str:
    """Who signed the record beside the spec, and whether it was given for what is reviewed."""
    record = standing.record
    names = " and ".join(f"{prose(each.name)} ({prose(each.role)})" for each in record.signatures)
    last = max(each.date for each in record.signatures)
    given = f"Signed off by {names}, last on {last.isoformat()}"
    if standing.matches:
        return f"{given}; the record matches what is reviewed here."
    changed = " and ".join(standing.differs)
    return f"{given}. THE RECORD NO LONGER MATCHES: since then {changed} changed."


def target_of(attached: Attached) -> str:
    """What a remark is about, as the reviewer names it."""
    remark = attached.remark
    return prose(remark.field or f"{remark.rule} at {remark.part}")


def about_text(attached: Attached, document: Document) -> str:
    """Where a remark points, and what the rules say there."""
    if attached.path is None:
        return "nothing of this name is here now"
    place = place_text(document, attached.path)
    if attached.remark.field is None:
        return f"{place}: {', '.join(dict.fromkeys(each.outcome for each in attached.findings))}"
    if not attached.findings:
        return f"{place}: no finding rests on it"
    count = counted(len(attached.findings), "finding")
    rests = "rests" if len(attached.findings) == 1 else "rest"
    still_open = sum(each.is_open for each in attached.findings)
    return f"{place}: {count} {rests} on it, {still_open} of them open"


def answer_text(remark: Remark) -> str:
    """The answer to a remark, with who gave it."""
    if remark.answer is None:
        return "none yet"
    by = f" ({prose(remark.answered_by)})" if remark.answered_by else ""
    return f"{prose(remark.answer)}{by}"
