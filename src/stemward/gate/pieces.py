"""A tract as pieces: what a notebook stores, row by row, and the texts of a tract folder, one for the other.

The same values stand on both sides, as they were typed, so nothing is rounded on the way. `split` takes texts that
`folder.read_texts` has read without a problem; `join` writes texts that are the same bytes for the same pieces.
"""

import datetime
import json
import re
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from operator import itemgetter
from typing import Any

import tomli_w

from stemward.gate.csv_table import read_cells
from stemward.gate.files import SHELF, hash_of
from stemward.gate.problems import Problems
from stemward.gate.records import KEYS as ENTRY_KEYS
from stemward.kinds import PLOTS, STEMS, Table

LISTS = {"patches": ("patch", "id"), "people": ("person", "role"), "vessels": ("vessel", "id"),
         "measures": ("measure", "id"), "calibrations": ("calibration", "tool"),
         "rates": ("rates", "id")}  # fmt: skip
"""Lists of tables in tract.toml: the kind of piece each makes, and what names it."""
KINDS = ("tract", *(kind for kind, _ in LISTS.values()), "outline", "spared", "product", "choice", "tally")
DAYS = ("read_on", "looked_on")
"""Keys whose words are days: TOML has days, JSON has not."""
STEM_COLUMNS = tuple(column.name for column in STEMS.columns)
PLOT_COLUMNS = tuple(column.name for column in PLOTS.columns)


@dataclass(frozen=True, slots=True)
class Piece:
    """One part of a tract: its kind, a name that is its own within the kind, and what it holds (plain JSON)."""

    kind: str
    key: str
    body: dict[str, Any]


@dataclass(frozen=True, eq=False)
class Parts:
    """A whole tract. stems: rows of cells as typed, in the order of STEM_COLUMNS. entries: what happened, in order."""

    pieces: tuple[Piece, ...]
    stems: Sequence[Sequence[str]] = ()
    entries: tuple[dict[str, Any], ...] = ()


def split(texts: Mapping[str, str]) -> Parts:
    """The pieces of a tract folder's texts."""
    top = _plain(tomllib.loads(texts["tract.toml"]))
    pieces = [Piece("tract", "", {k: v for k, v in top.items() if k not in LISTS and k != "base"})]
    for name, (kind, key) in LISTS.items():
        pieces += _named(kind, ((str(body.get(key, "")), body) for body in top.get(name, ())))
    for file, kind in (("patches.geojson", "outline"), ("spared.geojson", "spared")):
        features = json.loads(texts[file])["features"] if file in texts else ()
        pieces += [Piece(kind, str(one["properties"]["id"]).strip(), one) for one in features]
    for name in sorted(name for name in texts if name.startswith(f"{SHELF}/")):
        body = _plain(tomllib.loads(texts[name]))
        pieces.append(Piece("product", str(body["id"]).strip(), body))
    chosen = _plain(tomllib.loads(texts["choices.toml"])).get("treat", ()) if "choices.toml" in texts else ()
    pieces += _named("choice", ((choice_key(body), body) for body in chosen))
    tallies = _rows(texts["plots.csv"], PLOTS) if "plots.csv" in texts else ()
    pieces += _named("tally", ((_tally_key(row), dict(zip(PLOT_COLUMNS, row, strict=True))) for row in tallies))
    stems = _rows(texts["stems.csv"], STEMS) if "stems.csv" in texts else ()
    lines = texts.get("records.jsonl", "").split("\n")
    return Parts(tuple(pieces), stems, tuple(json.loads(line) for line in lines if line.strip()))


def join(parts: Parts, with_base: bool = False) -> dict[str, str]:
    """The texts of a tract folder, by relative name. with_base: write down what the land is now, for merging."""
    by_kind: dict[str, list[Piece]] = {kind: [] for kind in KINDS}
    for piece in parts.pieces:
        by_kind[piece.kind].append(piece)
    top = dict(by_kind["tract"][0].body)
    lists = {name: [p.body for p in by_kind[kind]] for name, (kind, _) in LISTS.items() if by_kind[kind]}
    texts = {"tract.toml": _toml(top | {"patches": []} | lists)}
    for file, kind in (("patches.geojson", "outline"), ("spared.geojson", "spared")):
        if by_kind[kind]:
            texts[file] = _geojson(p.body for p in by_kind[kind])
    texts |= _shelf(by_kind["product"])
    if by_kind["choice"]:
        texts["choices.toml"] = _toml({"treat": [p.body for p in by_kind["choice"]]})
    if by_kind["tally"]:
        texts["plots.csv"] = _csv(PLOTS, [[p.body.get(name, "") for name in PLOT_COLUMNS] for p in by_kind["tally"]])
    if len(parts.stems):
        texts["stems.csv"] = _csv(STEMS, parts.stems)
    if parts.entries:
        texts["records.jsonl"] = "".join(f"{_entry(one)}\n" for one in parts.entries)
    if with_base:
        texts["tract.toml"] = _toml({"base": land_hash(texts)} | top | {"patches": []} | lists)
    return dict(sorted(texts.items()))


def land_hash(texts: Mapping[str, str]) -> str:
    """sha256 of the land alone: entries only ever grow and are no part of it."""
    return hash_of({name: text.encode() for name, text in texts.items() if name != "records.jsonl"})


def choice_key(body: Mapping[str, Any]) -> str:
    """What names a choice: patch, plant as typed, state."""
    return "/".join(str(part).strip() for part in (body["patch"], body["species"], body.get("state", "standing")))


def _tally_key(row: Sequence[str]) -> str:
    cells = dict(zip(PLOT_COLUMNS, row, strict=True))
    return "/".join(cells[name] for name in ("plot", "patch", "species", "low_cm", "low_in"))


def _named(kind: str, found: Iterable[tuple[str, dict[str, Any]]]) -> list[Piece]:
    """Pieces with names of their own; a name that is there already gets a number."""
    pieces: dict[str, Piece] = {}
    for key, body in found:
        own, number = key, 1
        while own in pieces:
            number += 1
            own = f"{key} #{number}"
        pieces[own] = Piece(kind, own, body)
    return list(pieces.values())


def _plain(value: Any) -> Any:
    """TOML's days as words, so that a piece is plain JSON."""
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_plain(one) for one in value]
    return value.isoformat() if isinstance(value, datetime.date | datetime.time) else value


def _days(value: Any, key: str = "") -> Any:
    """The days of a piece as TOML's days again."""
    if isinstance(value, dict):
        return {name: _days(one, name) for name, one in value.items()}
    if isinstance(value, list):
        return [_days(one) for one in value]
    if key in DAYS and isinstance(value, str):
        try:
            return datetime.date.fromisoformat(value)
        except ValueError:
            return value  # no day: the reader then says so
    return value


def _toml(body: Mapping[str, Any]) -> str:
    return tomli_w.dumps(_days(body))


def _geojson(features: Iterable[Mapping[str, Any]]) -> str:
    rows = ",\n".join(json.dumps(one, ensure_ascii=False) for one in features)
    return f'{{"type": "FeatureCollection", "features": [\n{rows}\n]}}\n'


def _shelf(products: Iterable[Piece]) -> dict[str, str]:
    """A file a product, named for it as far as file systems take such names."""
    texts: dict[str, str] = {}
    for product in products:
        base = re.sub(r"[^A-Za-z0-9_-]+", "-", product.key).strip("-").lower() or "product"
        name, number = f"{SHELF}/{base}.toml", 1
        while name in texts:
            number += 1
            name = f"{SHELF}/{base}-{number}.toml"
        texts[name] = _toml(product.body)
    return texts


def _entry(entry: Mapping[str, Any]) -> str:
    ordered = {key: entry[key] for key in ENTRY_KEYS if key in entry}
    return json.dumps(ordered, ensure_ascii=False)


def _rows(text: str, table: Table) -> list[tuple[str, ...]]:
    """The rows of a table as typed, every column of it in order, empty where it has none."""
    cells = read_cells(text, table, table.name, Problems())
    if cells is None:
        return []
    blank = [""] * len(cells)
    columns = [cells.columns[c.name].fill_null("").to_list() if cells.has(c.name) else blank for c in table.columns]
    return list(zip(*columns, strict=True))


def _csv(table: Table, rows: Sequence[Sequence[str]]) -> str:
    """Columns that are required or hold anything, in the table's order."""
    import polars as pl

    # Column by column: turning all rows over at once takes twice as long.
    columns = [list(map(itemgetter(n), rows)) for n in range(len(table.columns))]
    used = [n for n, column in enumerate(table.columns) if column.required or any(columns[n])]
    frame = pl.DataFrame({table.columns[n].name: pl.Series(columns[n], dtype=pl.String) for n in used})
    # An empty cell is written as nothing at all, not as a pair of quotes.
    return frame.with_columns(pl.all().replace("", None)).write_csv(quote_style="necessary")
