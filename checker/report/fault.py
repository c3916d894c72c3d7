"""What went wrong outside a spec, on one line: errors of the system and of the program."""


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
