#!/usr/bin/env python3
"""Draws the laboratory figures of a demo book's bags, as a real season would scatter them.

usage: draw_bags.py SCENARIO SEED         rewrites cp, adf, ndf and tdn in its samples
       draw_bags.py --check SCENARIO SEED fails when the samples are not that draw

Around the class curve, on log CP and logit TDN: a level of the class, of the pasture and of the
year, a green-up that comes early or late, a wandering within the year, and then what each bag, trip
and laboratory adds. Their sizes are those of reference/seasonal_curves.yaml and sampling_error.yaml.
The books are invented: a seed was looked for that tells the story of their comments and of the
README (a good start, then protein short in late summer), so they are no evidence on the program.
"""
import math
import pathlib
import random
import re
import sys

import yaml

ROOT = pathlib.Path(__file__).resolve().parents[2]
CURVES = yaml.safe_load((ROOT / "reference/seasonal_curves.yaml").read_text())
ERRORS = {row["id"]: row for row in yaml.safe_load((ROOT / "reference/sampling_error.yaml").read_text())["figures"]}
NUTRIENTS = {"cp_pct": "log_cp", "tdn_pct": "logit_tdn"}
TOGETHER = CURVES["correlation_log_cp_with_logit_digestibility"]["value"]
# Fibre on the pages of these invented laboratories (assumed): ADF falls as TDN rises, NDF follows
# ADF, more steeply in warm-season grass; each with the spread of one laboratory (facts of print:
# ADF 1.1, NDF 1.8 points, Agrodiversity Experiment, Kirwan et al. 2014, Ecology 95:2680, rounded).
ADF_AT_NO_TDN, ADF_PER_TDN, ADF_SD = 77.5, -0.68, 1.1
NDF_OF_ADF = {"bermuda_bahia": (29.0, 1.05), "": (26.0, 0.97)}
NDF_SD = 1.8


def normal(rng):
    """One standard normal. random() is the one draw Python promises to repeat in every version."""
    return math.sqrt(-2 * math.log(1 - rng.random())) * math.cos(2 * math.pi * rng.random())


def pair(rng, sds, together=TOGETHER):
    """A draw for log CP and logit TDN that go together."""
    first, second = normal(rng), normal(rng)
    return [sds[0] * first, sds[1] * (together * first + math.sqrt(1 - together**2) * second)]


def wandering(rng, days, sds, length):
    """Values of two correlated Matern 3/2 processes on the given days (Cholesky by rows)."""
    def alike(a, b):
        r = math.sqrt(3) * abs(a - b) / length
        return (1 + r) * math.exp(-r)

    lower = []
    for i, day in enumerate(days):
        row = []
        for j in range(i):
            row.append((alike(day, days[j]) - sum(a * b for a, b in zip(row, lower[j]))) / lower[j][j])
        row.append(math.sqrt(1 + 1e-9 - sum(a * a for a in row)))
        lower.append(row)
    shocks = [pair(rng, sds) for _ in days]
    return [[sum(row[j] * shocks[j][k] for j in range(len(row))) for k in (0, 1)] for row in lower]


def curve_at(forage, column, days):
    knots, values, wraps = CURVES["knots_days_after_greenup"], forage[column], CURVES["wraps_at_days"]
    days %= wraps
    for left, right, a, b in zip(knots, knots[1:] + [wraps], values, values[1:] + values[:1]):
        if days <= right:
            return a + (b - a) * (days - left) / (right - left)


def to_scale(column, percent):
    share = percent / 100
    return math.log(share) if column == "cp_pct" else math.log(share / (1 - share))


def from_scale(column, value):
    return 100 * (math.exp(value) if column == "cp_pct" else 1 / (1 + math.exp(-value)))


def sds_of(forage, term):
    spread = next(s for s in CURVES["spreads"] if s["id"] == forage["spread"])
    return [spread[scale][term] for scale in NUTRIENTS.values()]


def class_of(pasture):
    name = re.sub("[- ]", "_", pasture["forage"])
    return next(c for c in CURVES["classes"] if c["id"] == name)


def bag_noise(rng, stops):
    """What one bag strays: stops, trip and laboratory, apart for the two nutrients."""
    return [math.sqrt(ERRORS["stop_sd"][s]**2 / stops + ERRORS["trip_sd"][s]**2 + ERRORS["lab_sd_same"][s]**2) *
            normal(rng) for s in NUTRIENTS.values()]


def season(rng, pasture, bags, level, year, late):
    """The figures of one pasture's bags of one year, by bag: cp, adf, ndf, tdn in % of dry matter."""
    forage = class_of(pasture)
    month, day = map(int, pasture["green_up"].split("-"))
    length = math.sqrt(math.prod(sds_of(forage, "wiggle_length_days")))
    since = [(bag["plucked"] - bag["plucked"].replace(month=month, day=day)).days for bag in bags]
    weather = wandering(rng, since, sds_of(forage, "wiggle_sd"), length)
    drawn = {}
    for bag, days, own in zip(bags, since, weather):
        noise = bag_noise(rng, bag["stops"])
        cp, tdn = (from_scale(column, to_scale(column, curve_at(forage, column, days - late)) + level[k] + year[k] +
                              own[k] + noise[k]) for k, column in enumerate(NUTRIENTS))
        adf = ADF_AT_NO_TDN + ADF_PER_TDN * tdn + ADF_SD * normal(rng)
        base, slope = NDF_OF_ADF.get(forage["id"], NDF_OF_ADF[""])
        drawn[bag["bag"]] = {"cp": cp, "adf": adf, "ndf": base + slope * adf + NDF_SD * normal(rng), "tdn": tdn}
    return drawn


def draw(scenario, seed):
    """The figures of every plucked bag of the book."""
    rng = random.Random(seed)
    files = sorted(scenario.glob("samples/*/*.yaml"))
    pastures = sorted(yaml.safe_load((scenario / "pastures.yaml").read_text()), key=lambda p: p["id"])
    forages = {class_of(p)["id"]: class_of(p) for p in pastures}
    class_sd = [CURVES["curve_level_sd"][s] for s in NUTRIENTS.values()]
    class_level = {name: pair(rng, class_sd) for name in sorted(forages)}
    levels = {}
    for pasture in pastures:
        own = pair(rng, sds_of(class_of(pasture), "pasture_sd"))
        levels[pasture["id"]] = [a + b for a, b in zip(class_level[class_of(pasture)["id"]], own)]
    drawn = {}
    for year in sorted({path.parent.name for path in files}):
        weather, late = pair(rng, [1, 1]), normal(rng)  # one for the ranch, each class answers by its own size
        for pasture in pastures:
            bags = [b for b in yaml.safe_load((scenario / f"samples/{year}/{pasture['id']}.yaml").read_text())
                    if b["method"] != "clipped"]
            forage = class_of(pasture)
            of_year = [w * sd for w, sd in zip(weather, sds_of(forage, "year_sd"))]
            drawn |= season(rng, pasture, bags, levels[pasture["id"]], of_year, late * forage["greenup_sd_days"])
    return drawn


def rewritten(text, drawn):
    """The file with the drawn figures; a sheet that was superseded keeps the protein it had wrong."""
    bag, lines = None, text.splitlines(keepends=True)
    for at, line in enumerate(lines):
        if named := re.match(r"- bag: (\S+)", line):
            bag = named[1]
        if bag not in drawn or "received:" not in line:
            continue
        dry = float(re.search(r"dm: ([\d.]+)", line)[1]) / 100 if "as received" in line else 1
        wrong = any("supersedes" in later for later in lines[at + 1:at + 3])
        for name, value in drawn[bag].items():
            if not (wrong and name == "cp"):
                line = re.sub(rf"\b{name}: [\d.]+", f"{name}: {value * dry:.1f}", line)
        lines[at] = line
    return "".join(lines)


def main():
    check, (scenario, seed) = "--check" in sys.argv, [a for a in sys.argv[1:] if a != "--check"]
    scenario = pathlib.Path(scenario)
    drawn = draw(scenario, int(seed))
    for path in sorted(scenario.glob("samples/*/*.yaml")):
        text = path.read_text()
        new = rewritten(text, drawn)
        if check and new != text:
            sys.exit(f"{path} is not the draw of seed {seed}")
        if not check:
            path.write_text(new)


if __name__ == "__main__":
    main()
