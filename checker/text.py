"""Text that came from outside, made harmless to print."""

import re

_UNSEEN = re.compile(
    "["
    "\x00-\x1f\x7f-\x9f"  # C0, delete, C1
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f\u3164\uffa0"  # invisible letters
    "\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"  # zero width, breaks, bidi
    "\ufffe\uffff"  # no characters at all, which XML refuses
    "\ufe00-\ufe0f\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e0fff"
    "\ud800-\udfff"  # lone surrogates, which no stream can encode
    "]"
)
_NAMED = {"\n": r"\n", "\r": r"\r", "\t": r"\t"}


def plain(text: str) -> str:
    r"""Return the text on one line, with every control and invisible character spelled out.

    Escape sequences of a terminal, line breaks, bidirectional overrides and zero-width characters
    of a spec can then neither forge a line of output nor hide a part of one.

    >>> print(plain("gear\x1b[2J\u202e"))
    gear\x1b[2J\u202e
    """
    return _UNSEEN.sub(_spelled, text)


def _spelled(match: re.Match[str]) -> str:
    character = match.group()
    code = ord(character)
    if character in _NAMED:
        return _NAMED[character]
    if code < 0x100:
        return f"\\x{code:02x}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"
