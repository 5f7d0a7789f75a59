"""Whole commands: to begin at all, on large books, and built for this processor alone."""
import contextlib
import pathlib
import tempfile

import big_book
import measure
from measure import Row

AS_OF = ["--as-of", "2026-08-10"]
ONE_HERD = {"diet": ["diet", "p0"], "outlook": ["outlook", "h0"], "price": ["price", "h0"]}
# pastures, years, bags, herds. The herd asked about stands on a pasture of 200 bags in all three.
BOOKS = {"200": (1, 10, 200, 1), "10 000": (50, 10, 10_000, 20), "100 000": (500, 10, 100_000, 20)}


@contextlib.contextmanager
def books():
    """The folder and the bytes of each book."""
    with tempfile.TemporaryDirectory() as name:
        made = {}
        for bags, size in BOOKS.items():
            folder = pathlib.Path(name) / bags.replace(" ", "")
            made[bags] = (folder, big_book.write_book(folder, *size))
        yield made


def beginning(program, hello):
    begins = measure.short_run([hello]) * 1000
    need = ["need", "--weight", "1250 lb", "--milk", "22 lb", "--month", "3"]
    for words, most in ((["--version"], 1.3), (["--help"], 1.3), (need, 2)):
        yield Row(f"`{' '.join(words[:1])}`, no book", measure.short_run([program, *words]) * 1000,
                  begins, "ms", "hello", most)


def one_herd(program, hello, made):
    begins = measure.run([hello], 25).seconds * 1000
    times = {bags: {name: measure.run([program, *words, "--book", folder, *AS_OF])
                    for name, words in ONE_HERD.items()} for bags, (folder, _) in made.items()}
    for name in ONE_HERD:
        yield Row(f"`{name}`, book of 10 000 bags", times["10 000"][name].seconds * 1000, begins, "ms",
                  "hello", 30)
    for name in ONE_HERD:
        yield Row(f"`{name}`, book of 100 000 bags", times["100 000"][name].seconds * 1000,
                  times["200"][name].seconds * 1000, "ms", "same, 200 bags", 1.5)
    for name in ONE_HERD:
        yield Row(f"`{name}`, book of 100 000 bags, memory", times["100 000"][name].megabytes,
                  times["200"][name].megabytes, "MB", "same, 200 bags", 1.5)


def whole_book(program, nodes, made):
    for bags in ("10 000", "100 000"):
        folder, size = made[bags]
        plain = measure.run([nodes, folder], 5)
        raw = measure.run([nodes, folder, "raw"], 5)
        for name in ("check", "bags"):
            ours = measure.run([program, name, "--book", folder], 5)
            yield Row(f"`{name}`, {bags} bags, by the clock", ours.clock * 1000, plain.clock * 1000,
                      "ms", "yaml-cpp nodes", 0.4)
            yield Row(f"`{name}`, {bags} bags, memory", ours.megabytes, size / 1e6, "MB",
                      "bytes of its text", 6)
        yield Row(f"yaml-cpp nodes, {bags} bags, for scale", plain.clock * 1000, raw.clock * 1000, "ms",
                  "raw read", float("inf"))


def many_herds(program, made):
    """There is no peer: the herds of a book are set beside one herd asked as many times."""
    folder, _ = made["10 000"]
    herds = BOOKS["10 000"][3]
    each = measure.run([program, "outlook", "h0", "--book", folder, *AS_OF]).clock * 1000
    every = measure.run([program, "outlook", "--book", folder, *AS_OF], 3).clock * 1000
    yield Row(f"`outlook`, 50 pastures, {herds} herds, by the clock", every, herds * each, "ms",
              f"{herds} times one herd", 1)


def native(program, other, made):
    folder, _ = made["200"]
    for name, words in ONE_HERD.items():
        words = [*words, "--book", folder, *AS_OF]
        ours, theirs = measure.run([program, *words]), measure.run([other, *words])
        if ours.text != theirs.text:
            raise SystemExit(f"{name}: built for this processor it prints other digits")
        yield Row(f"`{name}`, as packaged", ours.seconds * 1000, theirs.seconds * 1000, "ms",
                  "-march=native", 1.3)


def report(program, made):
    """Against two seconds."""
    folder, _ = made["10 000"]
    for what, herds in (("one herd", ["h0"]), ("all 20 herds", [])):
        with tempfile.TemporaryDirectory() as name:
            page = pathlib.Path(name) / "page.html"
            run = measure.run([program, "report", *herds, "--book", folder, "--output", page, *AS_OF], 3)
        yield Row(f"`report` of {what}, 10 000 bags, by the clock", run.clock * 1000, 2000, "ms",
                  "two seconds", 1)


def rows(program, folder, native_program):
    hello, nodes = folder / "hello", folder / "yaml_nodes"
    yield from beginning(program, hello)
    with books() as made:
        yield from one_herd(program, hello, made)
        yield from whole_book(program, nodes, made)
        yield from many_herds(program, made)
        yield from report(program, made)
        yield from native(program, native_program, made)
