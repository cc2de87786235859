"""Print the labels of all invented products of a tract folder, each with what stands where beside it.

    python tools/press_labels.py OUTDIR [FOLDER]

FOLDER: the example if none is named.
"""

import datetime
import json
import sys
import tempfile
from dataclasses import asdict
from pathlib import Path

from stemward.gate import folder
from stemward.gate.demo import texts
from stemward.gate.folder_write import write_texts
from stemward.handbook import load
from stemward.label import KINDS
from stemward.paper.press import press

AS_OF = datetime.date(2026, 10, 10)


def main() -> int:
    """Write a PDF and a JSON file a product."""
    out = Path(sys.argv[1])
    out.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as temp:
        where = Path(sys.argv[2]) if len(sys.argv) > 2 else Path(temp) / "tract"
        if len(sys.argv) <= 2:
            write_texts(texts(), where)
        for product in folder.read(where, load().find_species, KINDS).tract.shelf:
            made = press(product, AS_OF)
            (out / f"{product.id}.pdf").write_bytes(made.pdf)
            told = [{**asdict(one), "kind": product.facts[one.fact].kind} for one in made.printed]
            (out / f"{product.id}.json").write_text(json.dumps(told, indent=1) + "\n", encoding="utf-8")
            print(f"{product.id}: {made.pages} pages, {len(made.printed)} facts")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
