"""How a problem is printed."""

from checker.spec.problem import Problem, SpecUnreadable, dotted, problem_line, quoted


def test_a_problem_is_one_line():
    problem = Problem(
        ("operation", 0, "power"), 12, 5, "'40 kg', a mass", "a power: kW", "wrong unit", "a hint"
    )
    assert problem_line("drive.yaml", problem) == (
        "drive.yaml:12:5: operation.0.power: wrong unit; "
        "found '40 kg', a mass; expected a power: kW (a hint)"
    )


def test_what_is_empty_is_left_out():
    assert problem_line("drive.yaml", Problem((), 1, 1, "", "", "empty")) == (
        "drive.yaml:1:1: empty"
    )


def test_text_of_the_spec_cannot_forge_a_line():
    problem = Problem(("a\nb",), 1, 1, quoted("x\x1b[2J\r\u202e"), "y", "odd")
    assert problem_line("dr\nive.yaml", problem) == (
        r"dr\nive.yaml:1:1: a\nb: odd; found 'x\x1b[2J\r\u202e'; expected y"
    )


def test_long_text_is_cut_short():
    assert len(quoted("x" * 1000)) < 70
    assert len(problem_line("f", Problem(("x" * 1000,), 1, 1, "", "", "long"))) < 250


def test_all_problems_are_printed_in_order():
    first, second = (Problem(("a",), line, 1, "x", "y", "wrong") for line in (1, 2))
    error = SpecUnreadable("f", (first, second))
    assert str(error).splitlines() == [problem_line("f", first), problem_line("f", second)]


def test_a_path_is_written_with_dots():
    assert dotted(("gears", "pinion", "teeth")) == "gears.pinion.teeth"
