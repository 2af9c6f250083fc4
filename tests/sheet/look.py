"""Sheets looked at in a browser: ten decks, opened in headless Chromium.

For each: no text leaves its page, text can be selected, no dimension stands on another, and every bay and every mark
of the layout, as the JSON gives it, stands in the drawings, read as its exact length reads.

    python3 tests/sheet/look.py PATH-TO-RAILHAND [PATH-TO-CHROMIUM]
"""

import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

USUAL = ["36 high, gap under 3", "overhang 0, skirt 3/4, rim 2x10", "balusters between the rails", "no cap"]
STAIRS = ["front 16 ft corner to corner", "stairs 4 ft wide in the middle of the front", "7 risers 7 1/2 on 10, open both sides"]
DECKS = {
    "one run": ["run 10 ft house to corner"],
    "a short run": ["run 30 in wall to corner", *USUAL],
    "a long run": ["run 62 ft corner to corner", *USUAL],
    "a gate": ["front 16 ft corner to corner", "creek side 12 ft corner to house, 36 inch gate in the middle", *USUAL],
    "three sides": ["u shape, 12 16 12", *USUAL],
    "stairs": [*STAIRS, *USUAL],
    "a tall flight": ["run 8 ft house to stair head", "14 risers 7 1/2 on 10, open both sides", *USUAL],
    "posts close together": ["run 9 ft corner to corner", "8 bays", *USUAL],
    "big posts": ["run 14 ft corner to corner", "6x6 posts", *USUAL],
    "twenty runs": [f"run {n} ft corner to corner" for n in range(8, 28)],
}

# Run in the page: what is wrong with it, and every dimension with its words.
LOOK = """
const bad = [], told = [];
for (const svg of document.querySelectorAll('svg')) {
  const page = svg.getBoundingClientRect();
  const dims = [];
  for (const text of svg.querySelectorAll('text')) {
    const r = text.getBoundingClientRect();
    if (r.left < page.left || r.top < page.top || r.right > page.right || r.bottom > page.bottom) bad.push('off the page: ' + text.textContent);
    if (text.dataset.inches === undefined) continue;
    told.push([text.dataset.inches, text.textContent]);
    for (const [q, other] of dims)
      if (r.left < q.right - 0.5 && q.left < r.right - 0.5 && r.top + 1 < q.bottom - 1 && q.top + 1 < r.bottom - 1)
        bad.push(text.textContent + ' on ' + other);
    dims.push([r, text.textContent]);
  }
}
getSelection().selectAllChildren(document.body);
const chosen = getSelection().toString();
if (!chosen.includes('Layout')) bad.push('text cannot be selected');
document.body.textContent = '';
document.body.dataset.verdict = JSON.stringify({bad, told});
"""


def exact(words):
    """ "54 3/4" as a fraction. """
    return sum((Fraction(part) for part in words.replace('"', "").split()), Fraction(0))


def tape(words):
    """ "4'-6 3/4"" as inches. """
    feet, _, inches = words.rpartition("'-") if "'-" in words else ("0", "", words)
    return 12 * Fraction(feet or "0") + exact(inches)


def lengths(value, found):
    """ Every bay and mark of a JSON answer's layout. """
    for bay in value.get("bays", []):
        found.add(bay["clear"].get("exact") or bay["clear"]["in"])
    for post in value.get("posts", []):
        found.add(post["at"].get("exact") or post["at"]["in"])


def in_pdf(railhand, folder, job, name, dimensions):
    """ What the PDF's text lacks of the dimensions; nothing where no pdftotext is to be had. """
    if not shutil.which("pdftotext"):
        return []
    paper = folder / "deck.pdf"
    subprocess.run([railhand, "sheet", str(job), "-o", str(paper)], check=True)
    text = subprocess.run(["pdftotext", "-raw", str(paper), "-"], capture_output=True, text=True, check=True).stdout
    text = re.sub(r"\s+", " ", text)
    return [f"{name}: the PDF does not say {words}" for words in sorted(set(dimensions)) if words not in text]


def look(railhand, chromium, folder, name, told):
    job = folder / "deck.job"
    job.unlink(missing_ok=True)
    said = [railhand, "--json", "say", "--job", str(job), *told, "layout"]
    answers = subprocess.run(said, capture_output=True, text=True, check=True).stdout.splitlines()
    want = set()
    lengths(json.loads(answers[-1])["values"], want)
    page = folder / "deck.html"
    subprocess.run([railhand, "sheet", str(job), "-o", str(page)], check=True)
    html = page.read_text()
    # The page itself lets no script in.
    html = re.sub(r"<meta http-equiv=\"Content-Security-Policy\"[^>]*>", "", html)
    page.write_text(html.replace("</body>", f"<script>document.fonts.ready.then(() => {{{LOOK}}})</script></body>"))
    flags = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]
    flags += ["--disable-background-networking", "--disable-component-update", f"--user-data-dir={folder / 'profile'}"]
    command = [chromium, *flags, "--virtual-time-budget=5000", "--dump-dom", page.as_uri()]
    verdict = None
    # A browser that does not start at once may at the second try; a page that is wrong stays wrong.
    for _ in range(2):
        seen = subprocess.run(command, capture_output=True, text=True, timeout=120).stdout
        verdict = re.search(r'data-verdict="([^"]*)"', seen)
        if verdict:
            break
    if not verdict:
        return [f"{name}: the page was not looked at"]
    verdict = json.loads(verdict[1].replace("&quot;", '"').replace("&#39;", "'").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))
    bad = [f"{name}: {what}" for what in verdict["bad"]]
    for inches, words in verdict["told"]:
        if abs(exact(inches) - tape(words)) > Fraction(1, 32):
            bad.append(f"{name}: {words} is said of {inches}")
    drawn = {exact(inches) for inches, _ in verdict["told"]}
    missing = [w for w in want if exact(w) not in drawn]
    bad += [f"{name}: {w} is in no drawing" for w in missing]
    bad += in_pdf(railhand, folder, job, name, [words for _, words in verdict["told"]])
    if not want or not drawn:
        bad.append(f"{name}: nothing to compare")
    print(f"{name}: {len(verdict['told'])} dimensions, {len(want)} of the layout's, {len(bad)} wrong")
    return bad


def main():
    railhand = str(pathlib.Path(sys.argv[1]).resolve())
    chromium = sys.argv[2] if len(sys.argv) > 2 else "chromium"
    with tempfile.TemporaryDirectory() as folder:
        bad = [b for name, told in DECKS.items() for b in look(railhand, chromium, pathlib.Path(folder), name, told)]
    for what in bad:
        print(what)
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
