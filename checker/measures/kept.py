"""What is worked out once for a design and asked for by several measures."""

from collections.abc import Callable
from functools import wraps
from typing import TypeVar
from weakref import WeakKeyDictionary

from checker.measures.design import Design
from checker.spec.subject import Subject

Answer = TypeVar("Answer")


def kept(function: Callable[..., Answer]) -> Callable[..., Answer]:
    """Keep the answers of a function of a design and of parts or plain arguments."""
    answers: WeakKeyDictionary[Design, dict[tuple[Subject | str | bool, ...], Answer]]
    answers = WeakKeyDictionary()

    @wraps(function)
    def answer(design: Design, *asked: Subject | str | bool) -> Answer:
        own = answers.setdefault(design, {})
        if asked not in own:
            own[asked] = function(design, *asked)
        return own[asked]

    return answer
