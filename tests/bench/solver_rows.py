"""The least-cost solver beside GLPK, CLP and scipy's linprog on the same programs."""
import re
import subprocess

import measure
from measure import Row

SIZES = ("8/12", "15/25", "25/40")


def beside_benchmarks(folder):
    times = measure.benchmarks(folder / "lp_bench", "--benchmark_filter=^(cold|glpk|clp|warm|season)")
    for size in SIZES:
        rows, columns = size.split("/")
        of = f"{rows} x {columns}"
        pairs = [("cold, proven", "cold", "GLPK", "glpk", 1 / 4, "us"),
                 ("cold, proven", "cold", "CLP", "clp", 1 / 4, "us"),
                 ("with both rangings", "cold_with_ranging", "GLPK", "glpk_with_ranging", 1 / 5, "us"),
                 ("next day, last basis", "warm", "GLPK", "glpk_warm", 1 / 5, "us"),
                 ("a season, mixes and feeds alone", "season", "GLPK, mixes", "glpk_season_of_mixes",
                  1 / 10, "ms")]
        for what, ours, peer_name, peer, most, unit in pairs:
            yield Row(f"least cost {of}, {what}", times[f"{ours}/{size}"], times[f"{peer}/{size}"],
                      unit, peer_name, most)


def beside_scipy(here, folder):
    text = subprocess.run([here / "beside_scipy", folder], check=True, capture_output=True,
                          text=True).stdout
    found = re.findall(r"(\d+)x(\d+): ours ([\d.]+) us, linprog ([\d.]+) us", text)
    for rows, columns, ours, theirs in found:
        yield Row(f"least cost {rows} x {columns}, cold, proven", float(ours), float(theirs), "us",
                  "scipy linprog", 1 / 40)


def rows(here, folder):
    yield from beside_benchmarks(folder)
    yield from beside_scipy(here, folder)
