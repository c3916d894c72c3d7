"""What to look at and when, drawn from what the rules found.

Each task belongs to rules. It is listed where one of them applies, and one step earlier where one
of them is open, accepted as a deviation, or met with little to spare.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from checker.review.finding import Finding, report_order
from checker.review.review import Review

TIMES = (
    "before flight",
    "after the first hour",
    "after 10 hours",
    "every 25 hours",
    "every 100 hours",
)
_LITTLE = 0.1  # of a limit
_FEW_KELVIN = 10.0


@dataclass(frozen=True, slots=True)
class Task:
    """Something to look at.

    Attributes:
        look: what to do, in words.
        usual: the times at which it is done.
        rules: ids of the rules it belongs to, or beginnings that end in a dot or dash.
    """

    look: str
    usual: tuple[str, ...]
    rules: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Inspection:
    """A task with its time and the finding that speaks for it most.

    Attributes:
        when: one of ``TIMES``.
        look: what to do.
        earlier: whether it stands a step earlier than usual.
        because: the gravest finding of its rules.
    """

    when: str
    look: str
    earlier: bool
    because: Finding


TASKS = (
    Task(
        "Oil level, with the drive level; note what was added",
        ("before flight",),
        (
            "monitoring.oil-level",
            "supply.mesh-reached",
            "supply.bearing-reached",
            "supply.tilted-level",
            "seals.above-oil",
            "vent.expansion-",
        ),
    ),
    Task(
        "Vent outlet open, hose in place and free of sags; catch bottle empty",
        ("before flight",),
        (
            "vent.outlet-ice",
            "vent.outlet-faces",
            "vent.no-low-loop",
            "breathing.blocked",
            "breathing.low-loop",
        ),
    ),
    Task("Circuit of the chip detector", ("before flight",), ("monitoring.chip-detector-circuit",)),
    Task(
        "One-way clutch by hand: grips one way, runs free the other",
        ("before flight",),
        ("clutch.", "oil.clutch-", "oil.one-way-clutch", "supply.clutch-reached"),
    ),
    Task("Witness marks of propeller and flange bolts", ("before flight",), ("joints.",)),
    Task(
        "Oil at the seals, the joint of the case and the end of the vent",
        ("after the first hour", "every 25 hours"),
        ("seals.", "vent.", "breathing."),
    ),
    Task(
        "Oil temperature in long climb and cruise against the computed one; note the outside air",
        ("after the first hour", "after 10 hours"),
        ("heat.", "oil.temperature", "oil.hot-viscosity"),
    ),
    Task(
        "Oil temperature in the quarter of an hour after the stop, on a hot day",
        ("after the first hour",),
        ("heat.ground-idle", "heat.soak"),
    ),
    Task(
        "Oil at each jet, drip and channel with the pump turned by hand or motor",
        ("after the first hour", "every 100 hours"),
        ("supply.bearing-heat", "supply.passed-on", "supply.jet-heat", "supply.jet-pressure"),
    ),
    Task(
        "Pressure of the crankcase and of the case, at idle and full power",
        ("after the first hour", "every 100 hours"),
        ("vent.crankcase-", "breathing.oil-lift", "breathing.siphon", "seals.pressure"),
    ),
    Task(
        "Magnetic plug, filter and strainer: what they hold, kept and dated",
        ("after the first hour", "after 10 hours", "every 25 hours"),
        ("oil.magnetic-plug", "oil.filter-bypass", "gears.", "bearings.", "supply.jet-"),
    ),
    Task(
        "Oil in the catch bottle or lost since the last look",
        ("after the first hour", "after 10 hours"),
        ("vent.bottle-size", "breathing.mist", "supply.drain-back", "aeration.room"),
    ),
    Task(
        "Oil in a glass after a run: foam, milk, smell; then change it as stated",
        ("after 10 hours", "every 25 hours"),
        ("aeration.", "oil.change-interval", "oil.residence-time"),
    ),
    Task(
        "Damper: cracks, swelling, play, loose bonds or springs",
        ("every 25 hours",),
        ("damper.", "oil.damper-elastomer", "supply.damper-"),
    ),
    Task(
        "Cooler, fins and air ways clean; hoses of the oil",
        ("every 25 hours",),
        ("heat.hot-day", "heat.cooler-size", "supply.pump-inlet", "supply.pump-demand"),
    ),
    Task(
        "Backlash at several turns of each mesh, contact pattern through a port",
        ("every 100 hours",),
        ("gears.", "housing.stiffness-shown", "oil.mesh-viscosity"),
    ),
    Task(
        "Case round bearings and engine joint: cracks, fretting, seats that turn",
        ("every 100 hours",),
        ("housing.", "bearings."),
    ),
    Task(
        "Run-out and hardness marks of the shafts under the seals; end play of the propeller shaft",
        ("every 100 hours",),
        ("seals.runout", "seals.shaft-", "bearings.located-"),
    ),
)


def inspection_plan(review: Review) -> tuple[Inspection, ...]:
    """The tasks of a review, in order of time."""
    planned = [each for task in TASKS for each in _planned(task, review)]
    return tuple(sorted(planned, key=lambda each: TIMES.index(each.when)))


def _planned(task: Task, review: Review) -> Iterator[Inspection]:
    """A task at each of its times, and one step before the first where something asks for it."""
    findings = [
        each
        for each in review.findings
        if each.outcome != "does not apply" and _belongs(task, each.rule.id)
    ]
    if not findings:
        return
    gravest = min(findings, key=report_order)
    pressing = [each for each in findings if _is_pressing(each)]
    first = TIMES.index(task.usual[0])
    if pressing and first > 0:
        because = min(pressing, key=report_order)
        yield Inspection(TIMES[first - 1], task.look, True, because)
    for when in task.usual:
        yield Inspection(when, task.look, False, gravest)


def _belongs(task: Task, rule: str) -> bool:
    return any(
        rule.startswith(each) if each.endswith((".", "-")) else rule == each for each in task.rules
    )


def _is_pressing(finding: Finding) -> bool:
    """Whether a finding is open, accepted, or met with little to spare."""
    if finding.outcome != "meets":
        return True
    limit, known = finding.limit, finding.known
    if finding.margin is None or limit is None or known is None:
        return False
    if isinstance(known.value, int) or (limit.low is not None and limit.high is not None):
        return False  # a count stands at its limit as a rule, and a band has no one end
    if limit.unit in ("K", "ΔK"):
        return finding.margin < _FEW_KELVIN
    return not limit.margin_is_absolute and finding.margin < _LITTLE
