"""The failure table of a drive: what fails, what it does, how it shows, and what finds it in time.

The one-way clutch stands with both ways to fail, then every single failure that the records list.
"""

from dataclasses import dataclass

from checker.known import Known, Path
from checker.measures.design import Design
from checker.spec.papers import SingleFailure
from checker.spec.subject import Subject


@dataclass(frozen=True, slots=True)
class FailureRow:
    """One failure; a field that the spec leaves open is empty.

    Attributes:
        part: path of the part.
        failure: what fails.
        thrust: effect on thrust.
        engine: effect on the engine.
        shows: how it shows.
        check: check that finds it.
        interval: of that check.
        place: where the spec states it.
    """

    part: str
    failure: str
    thrust: str
    engine: str
    shows: str
    check: str
    interval: str
    place: Path

    @property
    def texts(self) -> tuple[str, ...]:
        """The row in the order of the heads."""
        return (
            self.part,
            self.failure,
            self.thrust,
            self.engine,
            self.shows,
            self.check,
            self.interval,
        )


HEADS = (
    "Part",
    "Failure",
    "Effect on thrust",
    "Effect on the engine",
    "How it shows",
    "Check",
    "Interval",
)
_OVERSPEED = {
    True: "Held below its speed limit",
    False: "Runs beyond its speed limit",
    None: "",
}


def failure_table(design: Design) -> tuple[FailureRow, ...]:
    """The rows of a drive: of the clutch, where there is one, and of the listed single failures."""
    records = design.subjects.the("records")
    place = records.place("single_failures")
    listed: list[SingleFailure] = records.raw("single_failures") or []
    rows = [_of_record(each, (*place, index)) for index, each in enumerate(listed)]
    if not design.subjects.presence("clutch"):
        return tuple(rows)
    found = next((each for each in listed if each.part == "clutch"), None)
    return (*_of_clutch(design.subjects.the("clutch"), found), *rows)


def _of_record(stated: SingleFailure, place: Path) -> FailureRow:
    return FailureRow(
        stated.part,
        stated.failure or "",
        stated.effect or "",
        stated.engine_effect or "",
        stated.detected_by or "",
        stated.check or "",
        stated.interval or "",
        place,
    )


def _of_clutch(clutch: Subject, listed: SingleFailure | None) -> tuple[FailureRow, FailureRow]:
    """Both ways to fail; check and interval are those of the clutch among the single failures."""
    check = (listed.check or "", listed.interval or "") if listed else ("", "")

    def text(way: str, field: str) -> str:
        value = clutch.given(f"failure_evidence.{way}.{field}")
        return str(value.value) if isinstance(value, Known) else ""

    held = clutch.given("failure_evidence.slip.engine_overspeed_limited")
    overspeed = _OVERSPEED[bool(held.value) if isinstance(held, Known) else None]
    locked = (text("locked", "shutdown"), text("locked", "restart"), text("locked", "detected_by"))
    slipping = (text("slip", "effect"), overspeed, text("slip", "detected_by"))
    place = clutch.place("failure_evidence")
    return (
        FailureRow("clutch", "Locks", *locked, *check, (*place, "locked")),
        FailureRow("clutch", "Slips", *slipping, *check, (*place, "slip")),
    )
