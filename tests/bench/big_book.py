#!/usr/bin/env python3
"""big_book.py FOLDER PASTURES YEARS BAGS HERDS [FEEDS]: writes an invented book of so many bags.

The bags are spread evenly over the pastures and over the years to 2026, a file a pasture and year;
protein follows a season that falls from June on, with scatter (fixed seed). Each herd stands on a
pasture of its own. The book is only for timing: no figure in it is anybody's."""
import datetime
import pathlib
import random
import sys

LAST_YEAR = 2026
HEAD = """pluckbook: 1
name: Twenty Years
units: us
currency: USD
cover: 80
trip: 18.00
labs: [{id: county, name: County Forage Lab, days: 10}]
"""
KINDS = [  # like, price, ways it may be fed
    ("range cube 20", "355 USD/ton", "[7, 3]"),
    ("cottonseed meal", "410 USD/ton", "[7, 3, 2]"),
    ("ddgs", "240 USD/ton", "[7, 3]"),
    ("alfalfa hay good", "190 USD/ton", "[7, 3]"),
    ("corn cracked", "5.60 USD/56 lb", "[7]"),
]


def feed(number):
    """The five kinds in turn, each time a little richer and dearer."""
    like, price, ways = KINDS[number % len(KINDS)]
    amount, unit = price.split(" ", 1)
    again = number // len(KINDS)
    return (f"- {{id: f{number}, like: {like}, analysis: {{dm: {88 + 0.2 * again:.1f}}},\n"
            f"   quote: {{price: {float(amount) * (1 + again / 50):.2f} {unit}, date: 2026-08-01}},\n"
            f"   feedings_per_week: {ways}}}\n")


def write(file, text):
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text)


def bag(name, plucked, spread):
    """A bag with its page: falling from 14 % protein in late May to 5 % in the dormant months."""
    age = max(0, (plucked - datetime.date(plucked.year, 5, 25)).days)
    protein = 5 + 9 * 0.5 ** (age / 45) * spread.uniform(0.85, 1.15)
    fibre = 60 - 1.8 * protein + spread.uniform(-2, 2)
    sent, received = plucked + datetime.timedelta(2), plucked + datetime.timedelta(12)
    return (f"- bag: {name}\n  plucked: {plucked}\n  stops: {spread.randint(15, 34)}\n"
            f"  sent: {{date: {sent}, lab: county}}\n  results:\n"
            f"    - {{received: {received}, basis: dry matter, dm: 92.1, cp: {protein:.1f}, "
            f"adf: {fibre:.1f}, ndf: {fibre + 24:.1f}, tdn: {88.9 - 0.779 * fibre:.1f}}}\n")


def write_book(folder, pastures, years, bags, herds, feeds=5):
    """The book; returns the bytes of its files."""
    folder = pathlib.Path(folder)
    spread = random.Random(7)
    write(folder / "book.yaml", HEAD)
    write(folder / "feeds.yaml", "".join(map(feed, range(feeds))))
    write(folder / "pastures.yaml", "".join(
        f"- {{id: p{p}, name: Pasture {p}, forage: northern mixed-grass, green_up: 04-20}}\n"
        for p in range(pastures)))
    write(folder / "herds.yaml", "".join(
        f"- {{id: h{h}, head: {80 + h}, class: mature cow, weight: 1250 lb, peak_milk: 22 lb/day,\n"
        "   condition: 5.0, calving: {first: 2026-03-10}, weaning: 2026-10-15}\n"
        for h in range(herds)) or "# none\n")
    write(folder / "grazing.yaml", "".join(
        f"- {{date: 2026-05-10, herd: h{h}, pasture: p{h}}}\n" for h in range(herds)) or "# none\n")
    files = [(LAST_YEAR - years + 1 + y, p) for y in range(years) for p in range(pastures)]
    for at, (year, pasture) in enumerate(files):
        count = bags * (at + 1) // len(files) - bags * at // len(files)
        # The season's bags between late May and 10 August, when the book is asked.
        days = [datetime.date(year, 5, 25) + datetime.timedelta(77 * i // max(1, count))
                for i in range(count)]
        write(folder / f"samples/{year}/p{pasture}.yaml", "".join(
            bag(f"{year % 100:02}-p{pasture}-{i:03}", day, spread) for i, day in enumerate(days))
            or "# none\n")
    return sum(file.stat().st_size for file in folder.rglob("*.yaml"))


if __name__ == "__main__":
    if len(sys.argv) not in (6, 7):
        sys.exit(__doc__)
    print(write_book(sys.argv[1], *map(int, sys.argv[2:])), "bytes")
