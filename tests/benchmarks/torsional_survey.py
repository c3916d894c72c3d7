"""How long the torsional survey takes. Not a test: nothing here can fail a build.

    python tests/benchmarks/torsional_survey.py

One state of the damper is the survey of 400 speeds by 12 orders, response and swing of every
joint; a drive is surveyed with the damper in five states from hot to cold. The engine here is a
V twin that fires unevenly, so that all twelve orders are there.
"""

import copy
import statistics
import time
from pathlib import Path

import yaml

from checker.measures.design import Design
from checker.spec.loading import load_spec
from checker.train.graph import build_train

ROOT = Path(__file__).parents[2]
RUNS = 25


def uneven(name: str) -> bytes:
    """An example with firing intervals that cancel no order."""
    data = copy.deepcopy(yaml.safe_load((ROOT / f"examples/{name}.yaml").read_text()))
    data["engine"]["layout"] = "V"
    data["engine"]["firing_intervals"] = ["315 deg", "405 deg"]
    return yaml.safe_dump(data).encode()


def timed(action) -> float:
    """Milliseconds of one call."""
    start = time.perf_counter()
    action()
    return 1e3 * (time.perf_counter() - start)


def steps_of(design: Design) -> dict:
    """The steps of a survey, each built on those before."""
    return {
        "model and excitation": lambda: design.survey,
        "modes, five states": lambda: design.survey.modes,
        "response, one state, 400 speeds x 12 orders": lambda: design.survey.response(
            design.survey.model.states[0], design.survey.speed[:400], design.survey.mean[:400]
        ),
        "response, five states, with points": lambda: design.survey.worst,
        "crossings": lambda: design.resonances.crossings,
        "barred ranges": lambda: design.barred.proved,
        "start and stop": lambda: design.survey.run_through,
    }


def main() -> None:
    """Print the median time of each step."""
    spec = load_spec(uneven("marram"), "marram").spec
    train = build_train(spec)
    taken: dict[str, list[float]] = {}
    for _ in range(RUNS):
        for name, step in steps_of(Design(spec, train)).items():
            taken.setdefault(name, []).append(timed(step))
    for name, times in taken.items():
        print(f"  {name:46} {statistics.median(times[3:]):7.2f} ms")


if __name__ == "__main__":
    main()
