"""How long a review takes, as ratios in one run. Not a test: nothing here can fail a build.

    python tests/benchmarks/speed.py [SPEC]

Cold start is held against an interpreter that imports pydantic and yaml and parses the same file;
warm speed is reviews per second in one process, from bytes to findings.
"""

import datetime
import statistics
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
RUNS = 15
WARM_SECONDS = 3.0
BARE = (
    "import sys, pydantic, yaml\n"
    "from pydantic import BaseModel\n"
    "class Model(BaseModel):\n"
    "    thrustline: int\n"
    "data = yaml.load(open(sys.argv[1], encoding='utf-8'), Loader=yaml.CSafeLoader)\n"
    "Model.model_validate(data)\n"
)


def seconds(command: list[str]) -> float:
    """Wall time of one run of a command, whatever its exit status."""
    start = time.perf_counter()
    subprocess.run(command, cwd=ROOT, capture_output=True, check=False)
    return time.perf_counter() - start


def cold_start(spec: str) -> None:
    """Median times of whole processes, taken in turns so that drift hits all alike."""
    review = [sys.executable, "-m", "checker", "review", spec]
    commands = {
        "bare interpreter, pydantic, yaml, file parsed": [sys.executable, "-c", BARE, spec],
        "review, terminal report": review,
        "review, JSON report": [*review, "--format", "json"],
    }
    times: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(RUNS):
        for name, command in commands.items():
            times[name].append(seconds(command))
    medians = {name: statistics.median(taken) for name, taken in times.items()}
    base = next(iter(medians.values()))
    print(f"cold start of {spec}, median of {RUNS}")
    for name, median in medians.items():
        print(f"  {name:48} {median * 1e3:7.0f} ms   ratio {median / base:4.2f}")


def warm(spec: str) -> None:
    """Reviews per second in one process, and what each room takes of one review."""
    from checker.review.review import review_spec
    from checker.review.rulebook import shipped_rulebook
    from checker.spec.document import read_document
    from checker.spec.loading import load_spec

    source = (ROOT / spec).read_bytes()
    book = shipped_rulebook()
    day = datetime.date(2026, 6, 1)
    stages = {
        "document": lambda: read_document(source, spec),
        "spec (document included)": lambda: load_spec(source, spec),
        "review (all included)": lambda: review_spec(source, spec, book, day),
    }
    print(f"warm, {spec}, {len(source.splitlines())} lines, {len(book.rules)} rules")
    for name, run in stages.items():
        run()
        count, start = 0, time.perf_counter()
        while time.perf_counter() - start < WARM_SECONDS / len(stages):
            run()
            count += 1
        taken = (time.perf_counter() - start) / count
        print(f"  {name:48} {taken * 1e3:7.2f} ms   {1 / taken:6.0f} per second")


if __name__ == "__main__":
    chosen = sys.argv[1:] or ["examples/tansy.yaml", "examples/marram.yaml"]
    for each in chosen:
        cold_start(each)
        warm(each)
