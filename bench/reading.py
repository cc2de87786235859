"""How well and how fast labels are read: invented labels, scored against what was printed on them.

    python bench/reading.py [--labels N] [--full] [--held-back-misses]

Two sets of labels: of sentences whose like the reader's author may look at (shown), and of a third of the shapes that
are held back. For each kind of fact: precision and recall with Wilson 95 % intervals; how often nothing was proposed;
how often a wrong fact was proposed as sure. A fact is found only with its whole scope (method, site, state, role) and
at its own sentence. Misses on shown shapes are listed and written to build/label_misses.txt; those on held-back shapes
are only counted unless asked for. Then the time for a long label beside a bare extraction of its text.
"""

import argparse
import io
import time
from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from label_match import Score, score
from label_press import Label, Layout, press
from label_scan import scanned

from stemward.gate.label_ocr import can_read_pictures, read_picture
from stemward.label.reader import Line, Proposed, at_each_place, lines_of, propose
from stemward.reckon.outcome import wilson

LABELS, FULL, SCANNED = 72, 400, 12
LONG_PAGES = 120
MISSES = Path("build/label_misses.txt")
GRAVE = (
    "weakest mix", "strongest mix", "most per year", "most per application", "shortest interval", "entry interval",
    "equipment", "site", "site forbidden",
)  # fmt: skip
"""Kinds of which no wrong one should be proposed as sure."""
FEWEST = 60


@dataclass(slots=True)
class Tally:
    """Counts by kind of fact, and the misses by shape: text of the shape to lines about it."""

    right: Counter[str] = field(default_factory=Counter)
    unsure: Counter[str] = field(default_factory=Counter)
    missed: Counter[str] = field(default_factory=Counter)
    nothing: Counter[str] = field(default_factory=Counter)
    wrong: Counter[str] = field(default_factory=Counter)
    sure_wrong: Counter[str] = field(default_factory=Counter)
    misses: dict[tuple[str, str], list[str]] = field(default_factory=lambda: defaultdict(list))
    prints: Counter[tuple[str, str]] = field(default_factory=Counter)
    looks: dict[str, list[int]] = field(default_factory=lambda: defaultdict(lambda: [0, 0, 0]))

    def add(self, label: Label, done: Score) -> None:
        """Count one label."""
        self.prints.update((line.shape.group, line.shape.text) for line in label.lines)
        for look in looks_of(label.layout):
            for n, some in enumerate((done.right, done.missed, done.wrong)):
                self.looks[look][n] += len(some)
        for _, fact, read in done.right:
            self.right[fact.kind] += 1
            self.unsure[fact.kind] += read.sure == "unsure"
        for line, fact, instead in done.missed:
            self.missed[fact.kind] += 1
            self.nothing[fact.kind] += not instead
            got = ", ".join(f"{p.value} {dict(p.scope) or ''}".strip() for p in instead) or "nothing"
            scope = dict(fact.scope) or ""
            self.misses[line.shape.group, line.shape.text].append(
                f"missed {fact.kind}: {fact.value} {scope}, read {got}; printed: {line.plain}"
            )
        for spot, read in done.wrong:
            self.wrong[read.kind] += 1
            self.sure_wrong[read.kind] += read.sure == "sure"
            key = (spot.shape.group, spot.shape.text) if spot else ("", "between the sentences")
            self.misses[key].append(
                f"wrong ({read.sure}) {read.kind}: {read.value} {dict(read.scope) or ''}, read in: {read.words}"
            )


def tally(held_back: bool, labels: int, look: Layout | None = None) -> Tally:
    """Print, read and score some labels of the shown or the held-back shapes."""
    done = Tally()
    for number in range(labels):
        label = press(number, held_back, look)
        done.add(label, score(label.lines, _everywhere(lines_of(label.pdf)[0]), label.furniture))
    return done


def _everywhere(lines: Sequence[Line]) -> list[Proposed]:
    """Each fact at every place at which the reader says that it stands: each printed sentence is held against it."""
    return [place for one in propose(lines) for place in at_each_place(one)]


def looks_of(look: Layout) -> list[str]:
    """What of a layout is told apart."""
    names = [f"{look.columns} columns", f"heads {look.head}", f"flow {look.flow}"]
    return names + ["booklet"] * (look.width_in < 6) + ["divided words"] * look.justify


def scanned_tally(held_back: bool, labels: int) -> Tally:
    """The same on labels that are pictures of pages."""
    done = Tally()
    for number in range(labels):
        label = press(number, held_back, Layout(1 + number % 2, size_pt=9.0, between_em=1.1))
        done.add(
            label,
            score(label.lines, _everywhere(lines_of(scanned(label.pdf, number), read_picture)[0]), label.furniture),
        )
    return done


def _share(part: int, whole: int) -> str:
    if not whole:
        return "   none            "
    low, high = wilson(part, whole)
    return f"{part / whole:.3f} ({low:.2f} to {high:.2f})"


def told(name: str, done: Tally) -> None:
    """Print the table of one set."""
    print(f"\n{name}\n  {'':30}precision             recall               cases  nothing  unsure  sure but wrong")
    kinds = sorted(set(done.right) | set(done.missed) | set(done.wrong))
    precisions, recalls = [], []
    for kind in kinds:
        right, missed, wrong = done.right[kind], done.missed[kind], done.wrong[kind]
        precisions += [right / (right + wrong)] if right + wrong else []
        recalls += [right / (right + missed)] if right + missed else []
        few = " (few)" if right + missed < FEWEST else ""
        print(
            f"  {kind:30}{_share(right, right + wrong)}  {_share(right, right + missed)}  {right + missed:5d}"
            f"  {done.nothing[kind]:7d}  {done.unsure[kind]:6d}  {done.sure_wrong[kind]:5d}{few}"
        )
    right, missed, wrong = (sum(c.values()) for c in (done.right, done.missed, done.wrong))
    grave = sum(done.sure_wrong[kind] for kind in GRAVE)
    macro = [sum(shares) / len(shares) for shares in (precisions, recalls)]
    print(f"  macro average: precision {macro[0]:.3f}, recall {macro[1]:.3f}")
    print(f"  all: precision {_share(right, right + wrong)}, recall {_share(right, right + missed)}")
    print(
        f"  {right + missed} facts; nothing proposed for {sum(done.nothing.values())}; "
        f"sure but wrong {sum(done.sure_wrong.values())}, {grave} of them of the grave kinds"
    )
    for name, (right, missed, wrong) in sorted(done.looks.items()):
        print(f"    {name:20} precision {right / max(1, right + wrong):.3f}, recall {right / (right + missed):.3f}")


def misses_of(done: Tally) -> str:
    """The misses, by shape, each with how often it was printed and its first two cases."""
    out = []
    for (group, text), rows in sorted(done.misses.items()):
        out.append(f"[{group}] {text}   ({len(rows)} misses in {done.prints[group, text]} printed)")
        seen: dict[str, str] = {}
        for row in rows:
            seen.setdefault(row.split(":")[0], row)
        out += [f"    {row[:300]}" for row in list(seen.values())[:4]]
    return "\n".join(out)


def speed() -> None:
    """Time for a long label, beside a bare extraction of its text in the same run."""
    import pypdfium2

    document = pypdfium2.PdfDocument.new()
    for number in range(400):
        part = press(number, look=Layout(2, size_pt=7.0)).pdf
        document.import_pages(pypdfium2.PdfDocument(part))
        if len(document) >= LONG_PAGES:
            break
    out = io.BytesIO()
    document.save(out)
    start = time.perf_counter()
    bare = pypdfium2.PdfDocument(out.getvalue())
    for number in range(len(bare)):
        bare[number].get_textpage().get_text_range()
    plain_s = time.perf_counter() - start
    start = time.perf_counter()
    lines, pages = lines_of(out.getvalue())
    found = propose(lines)
    read_s = time.perf_counter() - start
    print(
        f"\n{pages} pages, {len(found)} facts: {read_s:.2f} s; bare text {plain_s:.2f} s; ratio {read_s / plain_s:.1f}"
    )


def main() -> int:
    """Score both sets, list the misses that may be seen, and time a long label."""
    asked = argparse.ArgumentParser(description="How well and how fast labels are read.")
    asked.add_argument("--labels", type=int, default=LABELS, help="labels of each set")
    asked.add_argument("--full", action="store_true", help=f"{FULL} labels of each set, and {SCANNED} as pictures")
    asked.add_argument("--held-back-misses", action="store_true", help="not for whoever writes the reader")
    words = asked.parse_args()
    labels = FULL if words.full else words.labels
    shown, held = tally(False, labels), tally(True, labels)
    MISSES.parent.mkdir(exist_ok=True)
    MISSES.write_text(misses_of(shown) + "\n", encoding="utf-8")
    print(misses_of(held if words.held_back_misses else shown))
    told(f"Shown shapes, {labels} labels in one to four columns", shown)
    told(f"Held-back shapes, {labels} labels in one to four columns", held)
    if words.full and can_read_pictures():
        told(f"Scanned look, shown shapes, {SCANNED} labels", scanned_tally(False, SCANNED))
        told(f"Scanned look, held-back shapes, {SCANNED} labels", scanned_tally(True, SCANNED))
    print(
        f"\nMisses on shown shapes are in {MISSES}; misses on held-back shapes: {sum(map(len, held.misses.values()))}"
    )
    speed()
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
