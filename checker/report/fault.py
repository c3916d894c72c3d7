"""What went wrong outside a spec, on one line: errors of the system and of the program."""

from checker.spec.problem import Problem, SpecUnreadable
from checker.text import plain


def reason_of(error: OSError) -> str:
    """What the system says of an error, to stand within a sentence."""
    return (error.strerror or type(error).__name__).lower()


def fault_text(error: Exception) -> str:
    """An error of the program, with the place in the program that raised it."""
    trace = error.__traceback__
    while trace is not None and trace.tb_next is not None:
        trace = trace.tb_next
    place = ""
    if trace is not None:
        module = trace.tb_frame.f_globals.get("__name__", "")
        place = f" ({module}, line {trace.tb_lineno})"
    return f"{type(error).__name__}: {error}{place}"


class Unopened(SpecUnreadable):
    """A file that could not be opened: there is no place in it to point at."""

    def __init__(self, file: str, message: str) -> None:
        super().__init__(file, (Problem((), 1, 1, "", "", message),))

    @classmethod
    def because_of(cls, file: str, error: OSError) -> "Unopened":
        """A file that the system does not give out."""
        return cls(file, f"the file cannot be opened: {reason_of(error)}")

    def __str__(self) -> str:
        return plain(f"{self.file}: {self.problems[0].message}")
