"""The diet's regression beside the same in numpy and scikit-learn on the same bags."""
import re
import subprocess

from measure import Row

NUMBER = r"([\d.]+)"
FIXED = re.compile(rf"(\d+) bags, fixed: ours {NUMBER} ms, numpy {NUMBER} ms .*?"
                   rf"scikit-learn {NUMBER} ms")
FITTED = re.compile(rf"(\d+) bags, fitted: ours {NUMBER} ms .*?, numpy {NUMBER} ms .*"
                    r"ours more by (-?[\d.]+)")
WORSE = 0.001  # of log likelihood, that a quicker fit may not be bought with


def rows(here, folder):
    text = subprocess.run([here / "beside_numpy", folder], check=True, capture_output=True,
                          text=True).stdout
    for bags, ours, numpy, scikit in FIXED.findall(text):
        what = f"a year's regression, {bags} bags, 1 000 paths"
        yield Row(what, float(ours), float(numpy), "ms", "numpy", 0.6)
        yield Row(what, float(ours), float(scikit), "ms", "scikit-learn", 1 / 5)
    for bags, ours, numpy, more in FITTED.findall(text):
        if float(more) < -WORSE:
            raise SystemExit(f"{bags} bags: the fit ends {more} under numpy's")
        yield Row(f"the same fitted, {bags} bags", float(ours), float(numpy), "ms", "numpy, scipy",
                  1 / 3 if bags == "20" else 0.6)
