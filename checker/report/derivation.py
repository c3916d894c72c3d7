"""A derivation for the eye: each step with formula, numbers, result, source and place."""

from checker.known import Known, Unknown
from checker.mechanics.equation import Equation
from checker.report import words
from checker.report.awaited import may_be_none
from checker.report.awaited_words import hint_lines
from checker.report.inquiry import Answer
from checker.report.sheet import Sheet
from checker.spec.document import Document
from checker.text import plain

_INDENT = 5
_LABEL = 9


def derivation_sheets(
    answers: list[Answer], document: Document, *, width: int, colour: bool
) -> str:
    """Write the whole calculation of each value, or what keeps it from being shown.

    Args:
        answers: the values asked for.
        document: the spec that states what goes into them.
        width: columns of the terminal.
        colour: whether styles are printed.
    """
    sheet = Sheet(width, colour=colour)
    for number, answer in enumerate(answers):
        if number:
            sheet.gap()
        _answer(sheet, answer, document)
    return sheet.text()


def _answer(sheet: Sheet, answer: Answer, document: Document) -> None:
    point = f" at {answer.point}" if answer.point else ""
    title = f"{answer.part}.{answer.measure}{point}" + words.set_text(answer.ratio_set)
    known = answer.value
    if isinstance(known, Unknown):
        sheet.line(plain(f"{title}: not shown"), style="bold")
        for path in known.missing:
            none = ", or none if there is none" if may_be_none(path) else ""
            sheet.line(f"State {words.place_text(document, path)}{none}", indent=2)
        for hint in hint_lines(known.missing):
            sheet.line(hint, indent=2)
        if known.because:
            sheet.line(words.prose(known.because), indent=2)
        if known.at_best is None:
            return
        sheet.line(f"At best {words.value_text(known.at_best)}, as follows.", indent=2)
        known = known.at_best
    else:
        sheet.line(plain(f"{title} = {words.value_text(known)}"), style="bold")
    steps = known.chain()
    numbers = {id(step): number for number, step in enumerate(steps, 1)}
    for number, step in enumerate(steps, 1):
        sheet.gap()
        _step(sheet, step, number, numbers, document)


def _step(
    sheet: Sheet, step: Known, number: int, numbers: dict[int, int], document: Document
) -> None:
    origin = step.origin
    symbol = plain(step.symbol) or "value"
    result = words.value_text(step)
    label = f"{number:>3}"
    if isinstance(origin, Equation):
        sheet.line(origin.text, indent=_INDENT, label=label)
        _row(sheet, "with", _inputs(step, numbers, origin.arguments))
        _row(sheet, "result", f"{symbol} = {result}")
        _row(sheet, "source", words.prose(origin.source))
        return
    sheet.line(f"{symbol} = {result}", indent=_INDENT, label=label)
    if step.inputs:
        _row(sheet, "from", _inputs(step, numbers, ()))
    if step.path is not None:
        _row(sheet, "stated", words.place_text(document, step.path))
    if isinstance(origin, str):
        _row(sheet, "given", words.prose(origin))


def _row(sheet: Sheet, label: str, text: str) -> None:
    if text:
        sheet.line(text, indent=_INDENT + _LABEL, label=f"{'':{_INDENT}}{label}")


def _inputs(step: Known, numbers: dict[int, int], arguments: tuple[tuple[str, str], ...]) -> str:
    """The values that go in, under the symbols of the formula where it takes them one by one."""
    symbols = [inner.symbol for inner in step.inputs]
    if len(arguments) == len(symbols):
        symbols = [symbol for symbol, _ in arguments]
    return "; ".join(
        f"{plain(symbol)} = {words.value_text(inner)} ({_where(inner, symbol, numbers)})"
        for symbol, inner in zip(symbols, step.inputs, strict=True)
    )


def _where(inner: Known, symbol: str, numbers: dict[int, int]) -> str:
    """The step a value comes from, with its symbol there if it is another one."""
    there = f", there {plain(inner.symbol)}" if inner.symbol not in ("", symbol) else ""
    return f"{numbers[id(inner)]}{there}"
