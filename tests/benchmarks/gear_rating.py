"""How long a rating of one mesh at one operation point takes in a warm process. Not a test.

    python tests/benchmarks/gear_rating.py [SPEC]

Geometry is kept with the design; each run makes load factors, stresses and safety factors of both
gears anew, by ISO 6336 with every derivation, and by AGMA 2001 beside it.
"""

import datetime
import sys
import time
from pathlib import Path

from checker.known import Known
from checker.measures import rating
from checker.measures.design import Design
from checker.review.review import review_spec
from checker.review.rulebook import shipped_rulebook
from checker.solve.agma_pair import AgmaState
from checker.solve.iso_state import IsoState
from checker.spec.subject import Subject

ROOT = Path(__file__).parents[2]
RUNS = 2000


def rate_iso(state: IsoState, cycles: tuple[Known, Known]) -> None:
    """Safety of both flanks and roots, from the load on."""
    fresh = IsoState(state.rating, state.torque, state.speed, state.application)
    for tooth, number in zip(fresh.rating.teeth, cycles, strict=True):
        fresh.contact_safety(tooth, number)
        fresh.bending_safety(tooth, number)


def rate_agma(state: AgmaState, cycles: tuple[Known, Known]) -> None:
    """The second opinion on the same mesh and point."""
    fresh = AgmaState(state.sizes, state.torque, state.speed, state.overload)
    for tooth, number in zip(fresh.rating.teeth, cycles, strict=True):
        fresh.contact_safety(tooth, number)
        fresh.bending_safety(tooth, number)


def milliseconds(design: Design, mesh: Subject, point: Subject) -> tuple[float, float]:
    """Time of one rating by each standard."""
    iso = rating.state(design, mesh, point, False)
    agma = rating.agma_state(design, mesh, point, False)
    cycles = tuple(rating.cycles_at(design, each.wheel.subject, point) for each in iso.rating.teeth)
    times = []
    for run, state in ((rate_iso, iso), (rate_agma, agma)):
        run(state, cycles)
        start = time.perf_counter()
        for _ in range(RUNS):
            run(state, cycles)
        times.append((time.perf_counter() - start) / RUNS * 1e3)
    return times[0], times[1]


def main(spec: str) -> None:
    """Print the time for every mesh at its most loaded point."""
    day = datetime.date(2026, 6, 1)
    review = review_spec((ROOT / spec).read_bytes(), spec, shipped_rulebook(), day)
    for design in review.designs.values():
        point = max(design.points, key=lambda each: each.given("power").number)
        for mesh in design.subjects.all("mesh"):
            iso, agma = milliseconds(design, mesh, point)
            print(
                f"{spec} {mesh.label} at {point.name}: ISO {iso:.3f} ms, AGMA {agma:.3f} ms,"
                f" both {iso + agma:.3f} ms"
            )


if __name__ == "__main__":
    for each in sys.argv[1:] or ["examples/tansy.yaml", "examples/marram.yaml"]:
        main(each)
