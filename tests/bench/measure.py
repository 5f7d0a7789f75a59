"""Times of whole programs and of Google Benchmark's, and the rows of the table made of them."""
import dataclasses
import json
import os
import statistics
import subprocess
import time

ROUNDS = 7


@dataclasses.dataclass
class Row:
    """One line: ours beside a peer in the same unit, and the ratio that was aimed at."""
    what: str
    ours: float
    peer: float
    unit: str
    peer_name: str
    most: float  # of ours over the peer's

    @property
    def ratio(self):
        return self.ours / self.peer

    def met(self):
        return self.ratio <= self.most


@dataclasses.dataclass
class Run:
    seconds: float  # of the processor
    clock: float
    megabytes: float
    text: str
    status: int


def run_once(words, **more):
    begin = time.monotonic()
    process = subprocess.Popen([str(word) for word in words], stdout=subprocess.PIPE,
                               stderr=subprocess.DEVNULL, **more)
    text = process.stdout.read().decode()
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return Run(used.ru_utime + used.ru_stime, time.monotonic() - begin, used.ru_maxrss / 1024, text,
               process.returncode)


def run(words, rounds=ROUNDS):
    """The median run; a run that fails ends the measuring, since its time means nothing."""
    runs = [run_once(words) for _ in range(rounds)]
    for one in runs:
        if one.status not in (0, 1) or not one.text:
            raise SystemExit(f"{' '.join(map(str, words))}: exit {one.status}, {one.text[:200]!r}")
    by = lambda key: statistics.median(getattr(one, key) for one in runs)
    return Run(by("seconds"), by("clock"), by("megabytes"), runs[0].text, runs[0].status)


def short_run(words, times=200):
    """Seconds of the processor of a program of a millisecond or two: the mean of the faster half of
    many, since what else the machine does only adds."""
    seconds = sorted(run_once(words).seconds for _ in range(times))
    return statistics.mean(seconds[: times // 2])


def benchmarks(program, *options):
    """Median CPU time of every benchmark of a program, by name, in its own unit."""
    text = subprocess.run([program, "--benchmark_format=json", "--benchmark_repetitions=5", *options],
                          check=True, capture_output=True, text=True).stdout
    found = {}
    for one in json.loads(text)["benchmarks"]:
        if one.get("error_occurred"):
            raise SystemExit(f"{one['name']}: {one['error_message']}")
        if one.get("aggregate_name") == "median":
            found[one["run_name"].split("/iterations")[0]] = one["cpu_time"]
    return found
