"""How cost grows with the size of what is asked: CPU time of whole commands, and the power it grows by
from the smallest size to the largest (1: in proportion; 2: quadratic)."""
import datetime
import math
import pathlib
import tempfile

import big_book
import measure

AS_OF = datetime.date(2026, 8, 10)
USUAL = {"pastures": 1, "years": 10, "bags": 200, "herds": 1, "feeds": 5, "days": 180}


def seconds(program, command, **changed):
    size = {**USUAL, **changed}
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        big_book.write_book(folder, size["pastures"], size["years"], size["bags"], size["herds"],
                            size["feeds"])
        until = AS_OF + datetime.timedelta(size["days"])
        words = [program, *command, "--book", folder, "--as-of", AS_OF, "--until", until]
        return measure.run(words, 5).seconds


def series(program):
    """What grows, the command, and the sizes."""
    yield "bags of one pasture", ["outlook", "h0"], [{"bags": n} for n in (50, 200, 800, 3200)]
    yield "herds, a pasture each", ["outlook"], [
        {"herds": n, "pastures": n, "bags": 200 * n} for n in (1, 5, 20)]
    yield "feeds on offer", ["price", "h0"], [{"feeds": n} for n in (5, 10, 20, 40)]
    yield "days ahead", ["outlook", "h0"], [{"days": n} for n in (90, 180, 365, 730)]
    yield "days ahead", ["plan", "h0"], [{"days": n} for n in (90, 180, 365)]


def say(folder):
    program = folder / "pluckbook"
    print("\n| what grows | command | size: ms of the processor | power |\n|---|---|---|---|")
    for what, command, sizes in series(program):
        times = [(max(size.values()) if what != "herds, a pasture each" else size["herds"],
                  seconds(program, command, **size)) for size in sizes]
        (least, first), (most, last) = times[0], times[-1]
        power = math.log(last / first) / math.log(most / least)
        told = ", ".join(f"{size}: {time * 1000:.0f}" for size, time in times)
        print(f"| {what} | `{command[0]}` | {told} | {power:.2f} |", flush=True)
