"""Rows of a foreign layer taken over as stems, and shapes in metres; what is left out, and why."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from stemward.gate.columns import MOST_SIGNS, by_code, odd
from stemward.gate.figures import PLAIN, FigureError, figure
from stemward.gate.foreign.layer import Layer
from stemward.gate.foreign.match import LATITUDE, LONGITUDE, SIZE, bare
from stemward.gate.names import FindSpecies, look_up
from stemward.gate.outlines import PHONE_OFF_M, outside_by
from stemward.gate.places import to_metres
from stemward.gate.text import clean
from stemward.kinds import STEMS, Shape, Stems

NEAR_M = 0.5
ALIKE_FRAC = 0.1
"""Two rows within half a metre, of one plant and of sizes within a tenth, are one stem: engineering guess."""
COLUMNS = tuple(column.name for column in STEMS.columns)
Cells = NDArray[np.object_]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A row that was not taken: its line in the file, why (a message id of room `say`), and values for the words."""

    line: int
    reason: str
    values: tuple[tuple[str, str | float], ...] = ()


@dataclass(frozen=True)
class Taken:
    """Rows of stems.csv, in the order of COLUMNS, and what was left out. origin: latitude and longitude, if degrees."""

    rows: list[tuple[str, ...]]
    left_out: tuple[LeftOut, ...]
    origin: tuple[float, float] | None = None


def take_stems(
    layer: Layer,
    columns: Mapping[str, str],
    fixed: Mapping[str, str],
    origin: tuple[float, float] | None,
    there: Stems | None,
    find_species: FindSpecies,
    patches: Mapping[str, Shape | None],
) -> Taken:
    """Take rows over as stems.

    columns: heading by column, and by "size" for a diameter whose unit is fixed["unit"]. fixed: a value for columns
    that the file has not (patch, species, state …). origin: of the tract; where it has none and places are degrees,
    the south-west corner of the rows becomes it. there: stems the tract has already. patches: the outline of each,
    None where it is not drawn.
    """
    count = len(layer.rows)
    cells = {name: _column(layer, columns, fixed, name, count) for name in COLUMNS}
    why = np.full(count, "", dtype=object)
    cells, numbers = _sizes(layer, columns, fixed, cells, why)
    named = bare(columns.get("x_m", "")) in LONGITUDE and bare(columns.get("y_m", "")) in LATITUDE
    x, y, origin = _places(layer, cells, origin, named, why)
    _words(cells, why, find_species, tuple(patches))
    _within(_whole(cells["patch"], count), x, y, patches, why)
    ids = _ids(cells["id"], there, why)
    _twice(numbers["diameter_cm"], cells["species"], x, y, there, why, find_species)
    cells["x_m"], cells["y_m"] = (_as_typed(cells[name], axis) for name, axis in (("x_m", x), ("y_m", y)))
    cells["id"] = ids
    kept = np.flatnonzero(why == "")
    rows = list(zip(*(_whole(cells[name], count)[kept].tolist() for name in COLUMNS), strict=True))
    unknown = set(_whole(cells["species"], count)[why == "left.species"].tolist())
    near = {word: look_up(word, find_species).near for word in unknown}
    left = tuple(_left_out(layer, n, str(why[n]), cells, near) for n in np.flatnonzero(why != "").tolist())
    return Taken(rows, left, origin)


def _whole(cells: Cells, count: int) -> Cells:
    """A column of `count` cells, of one that holds a single cell for all rows."""
    return np.broadcast_to(cells, count)


def _as_typed(cells: Cells, values_m: NDArray[np.float64]) -> Cells:
    """Metres as they were typed where they are those, else to a hundredth."""
    import polars as pl

    text = pl.Series(cells.tolist(), dtype=pl.String)
    if len(cells) == len(values_m) and text.str.contains(PLAIN).all() and (_plain(cells) == values_m).all():
        return cells
    return np.array([f"{value:.2f}" for value in values_m.tolist()], object)


def _column(layer: Layer, columns: Mapping[str, str], fixed: Mapping[str, str], name: str, count: int) -> Cells:
    heading = columns.get(name)
    if heading is not None and heading in layer.headings:
        at = layer.headings.index(heading)
        found = np.array([row[at] for row in layer.rows], dtype=object).reshape(count)
        if fixed.get(name):
            found[found == ""] = fixed[name]
        return found
    return np.array([fixed.get(name, "")], dtype=object)  # one cell that stands for every row


def _sizes(
    layer: Layer, columns: Mapping[str, str], fixed: Mapping[str, str], cells: dict[str, Cells], why: Cells
) -> tuple[dict[str, Cells], dict[str, NDArray[np.float64]]]:
    """Cells with the size under its unit, and numbers; rows whose figures cannot be read are marked."""
    unit = fixed.get("unit", "in")
    if SIZE in columns:
        own = _column(layer, {SIZE: columns[SIZE]}, {}, SIZE, len(layer.rows))
        cells["diameter_cm" if unit == "cm" else "diameter_in"] = own
    both = (cells["diameter_cm"] != "") & (cells["diameter_in"] != "")
    cells["diameter_cm"] = np.where(both, "", cells["diameter_cm"])
    numbers = {}
    for column in STEMS.columns:
        if column.type in ("number", "count") and column.name not in ("x_m", "y_m"):
            numbers[column.name] = _figures(cells[column.name], column.name, why)
    inch = 2.54
    numbers["diameter_cm"] = np.where(
        np.isnan(numbers["diameter_in"]), numbers["diameter_cm"], numbers["diameter_in"] * inch
    )
    numbers["diameter_cm"] = np.broadcast_to(numbers["diameter_cm"], len(why))
    why[(why == "") & np.isnan(numbers["diameter_cm"])] = "left.no_size"
    return cells, numbers


def _figures(cells: Cells, name: str, why: Cells) -> NDArray[np.float64]:
    """Cells as numbers, NaN where empty; each different text is read once. Rows out of range are marked."""
    import polars as pl

    column = STEMS.column(name)
    text = pl.Series(cells.tolist(), dtype=pl.String).replace("", None)
    value = text.cast(pl.Float64, strict=False)
    plain = text.str.contains(PLAIN).fill_null(True)
    found = np.array(value.fill_null(np.nan).to_numpy(), float)
    read: dict[str, float] = {}
    for typed in text.filter(~plain).unique().to_list():
        try:
            read[typed] = figure(typed, column)
        except FigureError:
            read[typed] = np.nan
    if read:
        for n in np.flatnonzero(~plain.to_numpy()).tolist():
            found[n] = read[cells[n]]
    full = text.is_not_null().to_numpy()
    low, high = column.low or 0.0, column.high or np.inf
    with np.errstate(invalid="ignore"):
        wrong = full & (np.isnan(found) | (found < low) | (found > high))
    if column.type == "count":
        wrong |= full & ~np.isnan(found) & (found != np.floor(found))
    why[(why == "") & wrong] = f"left.figure:{name}"
    return found


def _places(
    layer: Layer, cells: dict[str, Cells], origin: tuple[float, float] | None, named_degrees: bool, why: Cells
) -> tuple[NDArray[np.float64], NDArray[np.float64], tuple[float, float] | None]:
    """Metres east and north: of shapes, or of cells; degrees are turned about the origin."""
    if any(shape is not None for shape in layer.shapes):
        points = [s.rings[0][0] if s is not None and s.kind == "point" else (np.nan, np.nan) for s in layer.shapes]
        x, y = np.array([p[0] for p in points], float), np.array([p[1] for p in points], float)
        degrees = layer.degrees
    else:
        x, y = (np.broadcast_to(_plain(cells[name]), len(why)).copy() for name in ("x_m", "y_m"))
        degrees = named_degrees or _are_degrees(x, y)
    missing = ~(np.isfinite(x) & np.isfinite(y))
    why[(why == "") & missing] = "left.no_place"
    if degrees and not missing.all():
        if origin is None:
            origin = round(float(np.nanmin(y)), 6), round(float(np.nanmin(x)), 6)
        good = ~missing
        x[good], y[good] = to_metres(x[good], y[good], origin)
    with np.errstate(invalid="ignore"):
        far = np.hypot(x, y) > 1e6
    why[(why == "") & far & degrees] = "left.far"
    return x, y, origin


def _plain(cells: Cells) -> NDArray[np.float64]:
    import polars as pl

    return np.array(pl.Series(cells.tolist(), dtype=pl.String).cast(pl.Float64, strict=False).fill_null(np.nan), float)


def _are_degrees(x: NDArray[np.float64], y: NDArray[np.float64]) -> bool:
    """True for places that span less than a degree and lie where degrees of land can: no tract is that small."""
    good = np.isfinite(x) & np.isfinite(y)
    if not good.any():
        return False
    inside = (np.abs(x[good]) <= 180).all() and (np.abs(y[good]) <= 90).all()
    fine = bool((np.abs(x[good] * 1000 % 1) > 1e-9).any())
    return bool(inside and fine and np.ptp(x[good]) < 1 and np.ptp(y[good]) < 1 and (np.abs(x[good]) > 10).all())


def _words(cells: dict[str, Cells], why: Cells, find_species: FindSpecies, patches: Sequence[str]) -> None:
    """Marks rows whose words are unknown, too long, or hold signs that cannot be printed."""
    import polars as pl

    for column in STEMS.columns:
        if column.type not in ("text", "id", "choice"):
            continue
        text = pl.Series(cells[column.name].tolist(), dtype=pl.String)
        if column.type == "choice":
            text = text.str.to_lowercase()
            cells[column.name] = np.array(text.to_list(), dtype=object)
        bad = odd(text) | (text.str.len_chars() > MOST_SIGNS.get(column.type, 40)).to_numpy()
        if column.type == "choice":
            bad |= ~text.is_in([*column.choices, ""]).to_numpy()
        why[(why == "") & bad] = f"left.word:{column.name}"
        if column.name in ("species", "patch"):
            distinct, code = by_code(text)
            if column.name == "species":
                wrong = [n for n, word in enumerate(distinct) if not word or not look_up(word, find_species).latin]
            else:
                wrong = [n for n, word in enumerate(distinct) if word not in patches]
            why[(why == "") & np.isin(code, wrong)] = f"left.{column.name}"


def _within(
    patch: Cells, x: NDArray[np.float64], y: NDArray[np.float64], patches: Mapping[str, Shape | None], why: Cells
) -> None:
    """Marks rows that stand farther outside their patch than a phone errs."""
    for name, shape in patches.items():
        if shape is not None:
            rows = np.flatnonzero((why == "") & (patch == name))
            why[rows[outside_by(shape, x[rows], y[rows]) > PHONE_OFF_M]] = "left.outside"


def _ids(cells: Cells, there: Stems | None, why: Cells) -> Cells:
    """The ids of the file, or new ones where it has none; rows whose id is used already are marked."""
    have = set(there.id.tolist()) if there is not None else set()
    made, number = _whole(cells, len(why)).copy(), 0
    keys: list[str] = made.tolist()
    seen = set(keys)
    if "" not in seen and len(seen) == len(keys) and seen.isdisjoint(have):
        return made
    seen = set()
    for n, key in enumerate(keys):
        if key:
            if key in have:
                why[n] = why[n] or "left.id_there"
            elif key in seen:
                why[n] = why[n] or "left.id_twice"
            seen.add(key)
    taken = have | seen
    for n, key in enumerate(keys):
        if not key:
            number += 1
            while f"i{number}" in taken:
                number += 1
            made[n] = f"i{number}"
    return made


def _twice(
    size_cm: NDArray[np.float64],
    species: Cells,
    x: NDArray[np.float64],
    y: NDArray[np.float64],
    there: Stems | None,
    why: Cells,
    find_species: FindSpecies,
) -> None:
    """Marks rows that stand where a stem of the same plant and about the same size stands already."""
    rows = np.flatnonzero(why == "")
    if not rows.size:
        return
    latin = {word: look_up(word, find_species).latin for word in set(species.tolist())}
    own = _whole(np.array([latin[word] for word in species.tolist()]), len(why))[rows]
    spots, sizes, names = np.column_stack([x[rows], y[rows]]), size_cm[rows], own
    old = 0
    if there is not None and len(there):
        old = len(there)
        spots = np.vstack([np.column_stack([there.x_m, there.y_m]), spots])
        sizes, names = np.concatenate([there.diameter_cm, sizes]), np.concatenate([there.species.astype(str), own])
    pairs = cKDTree(spots).query_pairs(NEAR_M, output_type="ndarray")
    if not len(pairs):
        return
    first, second = pairs[:, 0], pairs[:, 1]
    alike = np.abs(sizes[first] - sizes[second]) <= ALIKE_FRAC * np.maximum(sizes[first], sizes[second])
    same = alike & (names[first] == names[second]) & (second >= old)
    for one, other in zip(first[same].tolist(), second[same].tolist(), strict=True):
        row = rows[other - old]
        # Of two rows of the file the later one goes; a row whose twin went already stays.
        if one < old or why[rows[one - old]] == "":
            why[row] = "left.twice_there" if one < old else "left.twice"


def _left_out(layer: Layer, n: int, why: str, cells: Mapping[str, Cells], near: Mapping[str, str]) -> LeftOut:
    reason, _, name = why.partition(":")
    values: list[tuple[str, str | float]] = []

    def typed(column: str) -> str:
        return clean(str(_whole(cells[column], len(layer.rows))[n]))

    if name:
        values = [("column", name), ("typed", typed(name))]
    elif reason == "left.species":
        values = [("typed", typed("species")), ("near", near[_whole(cells["species"], len(layer.rows))[n]])]
    elif reason in ("left.patch", "left.outside"):
        values = [("typed", typed("patch"))]
    elif reason.startswith("left.id"):
        values = [("typed", typed("id"))]
    return LeftOut(layer.lines[n], reason, tuple(values))


def shape_in_metres(shape: Shape, layer: Layer, origin: tuple[float, float] | None) -> dict[str, Any]:
    """A shape of a layer as a GeoJSON geometry in metres of the tract; degrees are turned about the origin."""
    rings = []
    for ring in shape.rings:
        x, y = (np.array([corner[axis] for corner in ring], float) for axis in (0, 1))
        if layer.degrees and origin is not None:
            x, y = to_metres(x, y, origin)
        rings.append([[round(float(a), 2), round(float(b), 2)] for a, b in zip(x, y, strict=True)])
    kinds = {"point": ("Point", rings[0][0]), "line": ("LineString", rings[0]), "polygon": ("Polygon", rings)}
    name, places = kinds[shape.kind]
    return {"type": name, "coordinates": places}
