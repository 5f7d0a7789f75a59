#!/usr/bin/env python3
"""Opens the report of each demo book in headless Chromium, at telephone, laptop and print size.

usage: report_in_browser.py PLUCKBOOK SCENARIOS [PICTURES]

Fails when the page writes to the console, asks for anything, runs over the side, has a chart
without name and description, text or marks of too little contrast, or a fold that the keyboard
cannot open. With PICTURES (a folder) the screens are kept there to be looked at.
Exits 77 when chromedriver is not installed.
"""
import base64
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.request

DEMOS = [("northern", "2026-08-20"), ("southern", "2026-11-10")]
SCREENS = {"telephone": (320, 640), "laptop": (1280, 800)}
FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync"]

# Runs inside the page: everything a reader would stumble on, as sentences.
LOOK = """
const troubles = [];
const width = document.documentElement.clientWidth;
if (document.documentElement.scrollWidth > width)
  troubles.push('runs over the side: ' + document.documentElement.scrollWidth + ' > ' + width);
for (const el of document.querySelectorAll('main *')) {
  const box = el.getBoundingClientRect();
  if (box.width > 0 && el.closest('thead') === null && box.right > width + 1)
    troubles.push('runs over the side: ' + el.tagName + ' ' + el.textContent.slice(0, 40));
}
const channel = (c) => { c /= 255; return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4; };
const luminance = (rgb) => 0.2126 * channel(rgb[0]) + 0.7152 * channel(rgb[1]) + 0.0722 * channel(rgb[2]);
const parse = (text) => (text.match(/[\\d.]+/g) || []).map(Number);
const ground = (el) => {
  for (; el; el = el.parentElement) {
    const c = parse(getComputedStyle(el).backgroundColor);
    if (c.length === 3 || c[3] > 0) return c;
  }
  return [255, 255, 255];
};
const contrast = (a, b) => {
  const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (x + 0.05) / (y + 0.05);
};
let texts = 0, marks = 0;
for (const el of document.querySelectorAll('main *')) {
  const own = [...el.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== '');
  if (!own || el.closest('title, desc, details:not([open]) > :not(summary)')) continue;
  const style = getComputedStyle(el);
  const ink = parse(el.closest('svg') ? style.fill : style.color);
  const ratio = contrast(ink, ground(el));
  ++texts;
  if (ratio < 4.5) troubles.push('text at ' + ratio.toFixed(2) + ':1: ' + el.textContent.slice(0, 40));
}
for (const el of document.querySelectorAll('svg [data-series]')) {
  const shape = el.tagName === 'g' ? el.firstElementChild : el;
  const style = getComputedStyle(shape);
  const ink = parse(style.fill === 'none' ? style.stroke : style.fill);
  const ratio = contrast(ink, ground(el));
  ++marks;
  if (ratio < 3) troubles.push('mark at ' + ratio.toFixed(2) + ':1: ' + el.dataset.series);
}
for (const svg of document.querySelectorAll('svg')) {
  const said = (svg.getAttribute('aria-labelledby') || '').split(' ').map((id) => document.getElementById(id));
  if (svg.getAttribute('role') !== 'img' || said.length !== 2 || said.some((el) => !el || !el.textContent))
    troubles.push('a chart without name and description');
}
let level = 0;
for (const h of document.querySelectorAll('h1, h2, h3, h4, h5, h6')) {
  const next = Number(h.tagName[1]);
  if (next > level + 1) troubles.push('a heading level is skipped before: ' + h.textContent);
  level = next;
}
for (const fold of document.querySelectorAll('details')) {
  fold.firstElementChild.focus();
  if (document.activeElement !== fold.firstElementChild)
    troubles.push('a fold out of reach of the keyboard: ' + fold.firstElementChild.textContent);
}
return {troubles, texts, marks, charts: document.querySelectorAll('svg').length,
        folds: document.querySelectorAll('details').length};
"""


class Browser:
    """One chromedriver and one session of it."""

    def __init__(self, folder):
        self.log = open(os.path.join(folder, "chromedriver.log"), "w", encoding="utf-8")
        self.driver = subprocess.Popen(["chromedriver", "--port=0"], stdout=subprocess.PIPE,
                                       stderr=self.log, text=True)
        port = None
        while port is None:
            line = self.driver.stdout.readline()
            if not line:
                raise RuntimeError("chromedriver did not start")
            if "successfully on port " in line:
                port = int(line.split("on port ")[-1].strip().rstrip("."))
        self.base = f"http://127.0.0.1:{port}"
        profile = os.path.join(folder, "profile")
        options = {"args": FLAGS + [f"--user-data-dir={profile}"],
                   "perfLoggingPrefs": {"enableNetwork": True}}
        wanted = {"browserName": "chrome", "goog:chromeOptions": options,
                  "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}
        opened = self.ask("POST", "/session", {"capabilities": {"alwaysMatch": wanted}})
        self.session = "/session/" + opened["sessionId"]

    def ask(self, method, path, body=None):
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.base + path, data=data, method=method,
                                         headers={"Content-Type": "application/json"})
        with urllib.request.urlopen(request, timeout=120) as reply:
            return json.load(reply)["value"]

    def go(self, method, path, body=None):
        return self.ask(method, self.session + path, body)

    def run(self, script):
        return self.go("POST", "/execute/sync", {"script": script, "args": []})

    def command(self, name, params):
        return self.go("POST", "/goog/cdp/execute", {"cmd": name, "params": params})

    def close(self):
        self.go("DELETE", "")
        self.driver.terminate()
        self.driver.wait(timeout=20)
        self.log.close()


def requests_of(browser, own):
    """The addresses asked for beside the page's own."""
    asked = []
    for entry in browser.go("POST", "/se/log", {"type": "performance"}):
        message = json.loads(entry["message"])["message"]
        if message["method"] == "Network.requestWillBeSent":
            url = message["params"]["request"]["url"]
            if url != own and not url.startswith("data:"):
                asked.append(url)
    return asked


def look(browser, page, pictures, name):
    """Troubles of one page at every size."""
    url = "file://" + page
    troubles = []
    for screen, (width, height) in SCREENS.items():
        browser.command("Emulation.setDeviceMetricsOverride",
                        {"width": width, "height": height, "deviceScaleFactor": 1,
                         "mobile": screen == "telephone"})
        for scheme in ("light", "dark"):
            browser.command("Emulation.setEmulatedMedia",
                            {"features": [{"name": "prefers-color-scheme", "value": scheme}]})
            browser.go("POST", "/url", {"url": url})
            seen = browser.run(LOOK)
            where = f"{name}, {screen}, {scheme}"
            print(f"{where}: {seen['charts']} charts, {seen['texts']} texts, {seen['marks']} marks, "
                  f"{seen['folds']} folds, {len(seen['troubles'])} troubles")
            if seen["charts"] < 2 or seen["texts"] < 50 or seen["marks"] < 6 or seen["folds"] < 1:
                troubles.append(f"{where}: next to nothing was looked at")
            troubles += [f"{where}: {text}" for text in seen["troubles"]]
            if pictures:
                shot = browser.command("Page.captureScreenshot", {"captureBeyondViewport": True})
                with open(os.path.join(pictures, f"{name}-{screen}-{scheme}.png"), "wb") as out:
                    out.write(base64.b64decode(shot["data"]))
    troubles += [f"{name}: asks for {asked}" for asked in requests_of(browser, url)]
    for entry in browser.go("POST", "/se/log", {"type": "browser"}):
        troubles.append(f"{name}: console: {entry['message']}")
    for paper, (wide, high) in {"Letter": (8.5, 11), "A4": (8.27, 11.69)}.items():
        printed = browser.command("Page.printToPDF", {"paperWidth": wide, "paperHeight": high})
        pdf = base64.b64decode(printed["data"])
        sides = pdf.count(b"/Type /Page\n") + pdf.count(b"/Type /Page/")
        print(f"{name}, {paper}: {sides} sides")
        if not 1 <= sides <= 4:
            troubles.append(f"{name}: {sides} sides of {paper}, more than two sheets")
    return troubles


def main():
    if shutil.which("chromedriver") is None:
        print("chromedriver is not installed: nothing was looked at")
        return 77
    program, scenarios = sys.argv[1], sys.argv[2]
    pictures = sys.argv[3] if len(sys.argv) > 3 else None
    troubles = []
    with tempfile.TemporaryDirectory(prefix="pluckbook-page") as folder:
        browser = Browser(folder)
        browser.go("POST", "/url", {"url": "about:blank"})
        requests_of(browser, "")  # those of the browser's own first page
        try:
            for name, day in DEMOS:
                page = os.path.join(folder, name + ".html")
                subprocess.run([program, "report", "--book", os.path.join(scenarios, name),
                                "--as-of", day, "--output", page], check=True,
                               stdout=subprocess.DEVNULL)
                troubles += look(browser, page, pictures, name)
        finally:
            browser.close()
            time.sleep(0.5)  # the browser lets go of its profile
    for trouble in troubles:
        print("TROUBLE", trouble)
    return 1 if troubles else 0


if __name__ == "__main__":
    sys.exit(main())
