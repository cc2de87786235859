"""How well and how fast labels are read: invented labels in one to four columns, scored against what was printed.

    python bench/reading.py [LABELS]

Prints precision and recall by kind of fact with Wilson intervals, apart for the shapes of sentences that the reader
was first written on, those that it was widened by, and those that it was not changed for; then the time for a long
label beside a bare extraction of its text.
"""

import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from label.made_labels import SHAPES, Shape, label, score
from stemward.label.reader import lines_of, propose
from stemward.reckon.outcome import wilson

OTHERS = (
    Shape("front", "Registered with EPA under EPA Reg. No. {reg}.", (("registration number", "{reg}", ""),)),
    Shape("front", "Signal word: {SIGNAL}", (("signal word", "{signal}", ""),)),
    Shape(
        "equipment",
        "Handlers wear long pants, a long sleeved shirt, socks and shoes.",
        (("equipment", "long-sleeved shirt", ""), ("equipment", "long pants", ""),
         ("equipment", "shoes and socks", "")),
    ),
    Shape("equipment", "Waterproof gloves are required for all handlers.", (("equipment", "waterproof gloves", ""),)),
    Shape("farm workers", "REI: {rei} hours.", (("entry interval", "{rei} hours", ""),)),
    Shape("others", "Nobody may go in before the spray is dry.", (("keep out until dry", "yes", ""),)),
    Shape("restrictions", "The yearly limit is {lb} lb ae/A.", (("most per year", "{lb} lb/acre", ""),)),
    Shape("restrictions", "Stay at or below {one} lb a.e. per acre in any one treatment.",
          (("most per application", "{one} lb/acre", ""),)),
    Shape("restrictions", "Do not retreat within {days} days.", (("shortest interval", "{days} days", ""),)),
    Shape("restrictions", "Limit use to {n} applications each year.", (("most applications", "{n}", ""),)),
    Shape("sites", "This product may be used in woodlands and along roadsides.",
          (("site", "woods", ""), ("site", "right-of-way", ""))),
    Shape("sites", "Do not use around homes or in gardens.",
          (("site forbidden", "yard", ""), ("site forbidden", "crop", ""))),
    Shape("sites", "Use is not permitted in {state}.", (("state excluded", "{code}", ""),)),
    Shape("cut stump", "Apply no later than {min} minutes after felling.",
          (("longest from cut to treatment", "{min} minutes", "cut stump"),)),
    Shape("cut stump", "Use a mix of {low} to {high} percent by volume with water.",
          (("weakest mix", "{low} %", "cut stump"), ("strongest mix", "{high} %", "cut stump"),
           ("carrier", "water", "cut stump"))),
    Shape("basal bark", "For stems up to {dia} inches in diameter.", (("greatest stem", "{dia} in", "basal bark"),)),
    Shape("drift", "Allow {rain} hours without rain after treatment.", (("hours without rain", "{rain} hours", ""),)),
    Shape("drift", "Stop work if sustained wind is above {wind} mph.", (("strongest wind", "{wind} mph", ""),)),
    Shape("drift", "Not for use when an inversion is present.", (("no inversion", "yes", ""),)),
    Shape("drift", "Do not use in air temperatures over {heat} degrees F.", (("greatest heat", "{heat} F", ""),)),
    Shape("environment", "Leave {ft} ft untreated beside streams and lakes.", (("distance to water", "{ft} ft", ""),)),
    Shape("environment", "Keep mixing and loading at least {ft} feet away from any well.",
          (("mixing distance to wells", "{ft} ft", ""),)),
    Shape("grazing", "Hay may not be cut until {wait} days have passed.", (("hay wait", "{wait} days", ""),)),
    Shape("grazing", "Livestock stays off for {wait} days.", (("grazing wait", "{wait} days", ""),)),
    Shape("mixing", "Use spray mixtures within {keep} hours of mixing.", (("mix keeps", "{keep} hours", ""),)),
    Shape("storage", "Keep from freezing; do not store below {cold} °F.", (("least storage heat", "{cold} F", ""),)),
)  # fmt: skip
"""Shapes that the reader was widened by: on them it found 63 of 100 before."""
HELD = (
    Shape("front", "Reg. No. (EPA): {reg}", (("registration number", "{reg}", ""),)),
    Shape("equipment", "All people who handle it have on coveralls over a short-sleeved shirt, and goggles.",
          (("equipment", "coveralls", ""), ("equipment", "goggles", ""))),
    Shape("restrictions", "In a calendar year the total must not be greater than {lb} lb ae/acre.",
          (("most per year", "{lb} lb/acre", ""), ("year means", "calendar year", ""))),
    Shape("restrictions", "Treatments must be {days} or more days apart.", (("shortest interval", "{days} days", ""),)),
    Shape("sites", "Suited to pasture and range land.", (("site", "pasture", ""),)),
    Shape("cut stump", "Cut surfaces are treated inside {min} minutes.",
          (("longest from cut to treatment", "{min} minutes", "cut stump"),)),
    Shape("cut stump", "Blend one part of product to {parts} parts water.",
          (("strongest mix", "{ratio} %", "cut stump"),)),
    Shape("basal bark", "Stems thinner than {dia} inches at the base.", (("greatest stem", "{dia} in", "basal bark"),)),
    Shape("drift", "Rainfall sooner than {rain} hours after treatment washes it off.",
          (("hours without rain", "{rain} hours", ""),)),
    Shape("drift", "Wind must be {wind} mph or less.", (("strongest wind", "{wind} mph", ""),)),
    Shape("drift", "If it grows hotter than {heat} °F, stop.", (("greatest heat", "{heat} F", ""),)),
    Shape("environment", "Keep {ft} feet back from any stream.", (("distance to water", "{ft} ft", ""),)),
    Shape("grazing", "Do not let animals eat treated plants for {wait} days.", (("grazing wait", "{wait} days", ""),)),
    Shape("mixing", "Mixed spray does not keep longer than {keep} hours.", (("mix keeps", "{keep} hours", ""),)),
)  # fmt: skip
"""Shapes that the reader was not changed for. They are by the same hand, so they say less than a stranger's would."""
LONG_PAGES = 120


def scored(shapes: tuple[Shape, ...], labels: int, first: int) -> tuple[Counter[str], Counter[str], Counter[str]]:
    """Right, missed and wrong by kind."""
    right: Counter[str] = Counter()
    missed: Counter[str] = Counter()
    wrong: Counter[str] = Counter()
    kinds = {kind for shape in shapes for kind, _, _ in shape.says}
    for seed in range(labels):
        raw, expected = label(first + seed, 1 + seed % 4, shapes=shapes)
        found = [(p.kind, p.value, dict(p.scope).get("method", ())) for p in propose(lines_of(raw)[0])]
        for counter, some in zip((right, missed, wrong), score(expected, found), strict=True):
            counter.update(kind for kind, _, _ in some if kind in kinds)
    return right, missed, wrong


def told(name: str, shapes: tuple[Shape, ...], labels: int, first: int) -> None:
    """Print the table of one set of shapes."""
    right, missed, wrong = scored(shapes, labels, first)
    print(f"{name}: {labels} labels in one to four columns")
    precisions, recalls = [], []
    for kind in sorted(set(right) | set(missed) | set(wrong)):
        r, m, w = right[kind], missed[kind], wrong[kind]
        precision, recall = (r / (r + w) if r + w else None), (r / (r + m) if r + m else 0.0)
        precisions += [] if precision is None else [precision]
        recalls.append(recall)
        low, high = wilson(r, r + m) if r + m else (0.0, 1.0)
        shown = "none  " if precision is None else f"{precision:.2f}"
        print(f"  {kind:32} precision {shown}  recall {recall:.2f} ({low:.2f} to {high:.2f} of {r + m})")
    print(
        f"  macro average: precision {sum(precisions) / len(precisions):.3f}, recall {sum(recalls) / len(recalls):.3f}"
    )


def speed() -> None:
    """Time for a long label, beside a bare extraction of its text in the same run."""
    import pypdfium2

    raw, _ = label(1, 2, pages=1 + LONG_PAGES // 3)
    document = pypdfium2.PdfDocument(raw)
    while len(document) < LONG_PAGES:
        document.import_pages(pypdfium2.PdfDocument(raw))
    import io

    out = io.BytesIO()
    document.save(out)
    long = out.getvalue()
    start = time.perf_counter()
    bare = pypdfium2.PdfDocument(long)
    for number in range(len(bare)):
        bare[number].get_textpage().get_text_range()
    plain_s = time.perf_counter() - start
    start = time.perf_counter()
    lines, pages = lines_of(long)
    found = propose(lines)
    read_s = time.perf_counter() - start
    ratio = read_s / plain_s
    print(f"{pages} pages, {len(found)} places: {read_s:.2f} s; bare text {plain_s:.2f} s; ratio {ratio:.1f}")


def main() -> int:
    """Score the three sets of shapes and time a long label."""
    labels = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    told("Shapes it was first written on", SHAPES, labels, 50_000)
    told("Shapes it was widened by", OTHERS, labels, 90_000)
    told("Shapes it was not changed for", HELD, labels, 130_000)
    speed()
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
