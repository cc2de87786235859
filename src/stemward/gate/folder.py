"""A tract folder in: every file of it to the values of room `kinds`, or all that is wrong with it."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from stemward.gate.choices_toml import Land, read_choices
from stemward.gate.fields import once, read_toml
from stemward.gate.files import SHELF, gather, hash_of
from stemward.gate.names import FindSpecies
from stemward.gate.outlines import FILE as OUTLINES
from stemward.gate.outlines import Outlines, place_stems, read_outlines, with_outlines
from stemward.gate.plots import read_plots
from stemward.gate.problems import Problem, Problems, Unreadable
from stemward.gate.records import read_records
from stemward.gate.shelf_toml import FactKindLike, Known, read_product
from stemward.gate.spared import read_spared
from stemward.gate.stems import StemsFile, no_stems, read_stems
from stemward.gate.text import clean, decode
from stemward.gate.tract_toml import TractFile, read_tract
from stemward.handbook import load
from stemward.kinds import Choice, Entry, Product, Question, Spared, Tract

Ids = Collection[str] | None
"""Patches of the tract; None if tract.toml could not be read, so that nothing is compared with it."""

__all__ = ["Problem", "Read", "Unreadable", "read", "read_texts"]


@dataclass(frozen=True, eq=False)
class Read:
    """A folder that was read: the tract, what is doubtful in it, and the sha256 of the files read."""

    tract: Tract
    questions: tuple[Question, ...]
    hash: str


def read(
    path: Path,
    find_species: FindSpecies,
    fact_kinds: Mapping[str, FactKindLike],
    tools: Collection[str] | None = None,
    states: Mapping[str, str] | None = None,
) -> Read:
    """Read a tract folder.

    find_species: gives for a typed name an object with `latin`, or one with `candidates`. fact_kinds: what a
    label can say, by name. tools, states (names by postal code): words to compare with; None for those of the
    packaged handbook. Raises Unreadable with all that is wrong; nothing is loaded by halves.
    """
    known = Known(find_species, fact_kinds, load().states if states is None else states)
    problems = Problems()
    files = gather(path, problems)
    texts = {name: decode(raw, clean(name), problems) for name, raw in files.items()}
    tract = _tract(texts, known, load().tools if tools is None else tools, problems)
    return _read(tract, problems, hash_of(files))


def read_texts(texts: Mapping[str, str], find_species: FindSpecies, fact_kinds: Mapping[str, FactKindLike]) -> Read:
    """Read a tract from the texts of its files by relative name, as a notebook keeps them.

    As `read`, but for stems.csv, which may be missing: a tract begins without stems.
    """
    known, problems = Known(find_species, fact_kinds, load().states), Problems()
    tract = _tract({**texts}, known, load().tools, problems, stems_needed=False)
    return _read(tract, problems, hash_of({name: text.encode() for name, text in texts.items()}))


def _read(tract: Tract | None, problems: Problems, digest: str) -> Read:
    problems.raise_if_any()
    if tract is None:
        raise AssertionError("a tract that cannot be built has a problem noted")
    return Read(tract, tract.questions, digest)


def _tract(
    texts: Mapping[str, str | None],
    known: Known,
    tools: Collection[str],
    problems: Problems,
    stems_needed: bool = True,
) -> Tract | None:
    """The tract; None if tract.toml or stems.csv give none. Every other file is looked at all the same."""
    land = _land(texts.get("tract.toml"), known, tools, problems)
    ids: Ids = None if land is None else [patch.id for patch in land.patches if patch.id]
    if stems_needed and not ids:
        ids = None  # that there are no patches is said once, and not of every stem
    shelf = _shelf(texts, known, problems)
    stems = _stems(texts.get("stems.csv"), ids, known, problems)
    if not stems_needed and "stems.csv" not in texts:
        stems = StemsFile(no_stems(), np.zeros(0, np.int64), frozenset())
    outlines = _outlines(texts.get("patches.geojson"), ids, problems)
    spared = _spared(texts.get("spared.geojson"), known, problems)
    # Where either lies wrongly itself, stems outside of outlines tell nothing more.
    if stems is not None and outlines and not problems.about(OUTLINES) and not problems.has("stems.degrees"):
        place_stems(stems, outlines, problems)
    choices = _choices(texts.get("choices.toml"), ids, shelf, stems, known, tools, problems)
    plots_text = texts.get("plots.csv")
    plots = () if plots_text is None else read_plots(plots_text, ids, known.find_species, problems)
    entries = _records(texts.get("records.jsonl"), ids, shelf, problems)
    if land is None or stems is None:
        return None
    patches = with_outlines(land.patches, outlines, land.patch_lines, problems)
    return Tract(
        name=land.name,
        place=land.place,
        state=land.state,
        time_zone=land.time_zone,
        who=land.who,
        invented=land.invented,
        patches=patches,
        stems=stems.stems,
        spared=spared,
        kept_asked=land.kept_asked,
        shelf=shelf,
        people=land.people,
        vessels=land.vessels,
        measures=land.measures,
        choices=choices,
        entries=entries,
        emergency=land.emergency,
        calibrations=land.calibrations,
        rates=land.rates,
        mixing_place=land.mixing_place,
        origin=land.origin,
        wage_cents_h=land.wage_cents_h,
        plots=plots,
        questions=problems.questions,
    )


def _land(text: str | None, known: Known, tools: Collection[str], problems: Problems) -> TractFile | None:
    top = None if text is None else read_toml(text, "tract.toml", problems)
    if top is None:
        return None
    return read_tract(top, known.states, known.choices("equipment"), known.choices("vessel forbidden"), tools)


def _shelf(texts: Mapping[str, str | None], known: Known, problems: Problems) -> tuple[Product, ...]:
    jugs = [(clean(name), text) for name, text in texts.items() if name.startswith(f"{SHELF}/") and text]
    tops = [top for name, text in jugs if (top := read_toml(text, name, problems)) is not None]
    shelf = tuple(read_product(top, known) for top in tops)
    once(zip(tops, (product.id for product in shelf), strict=True))
    return shelf


def _stems(text: str | None, ids: Ids, known: Known, problems: Problems) -> StemsFile | None:
    return None if text is None else read_stems(text, ids, known.find_species, problems)


def _outlines(text: str | None, ids: Ids, problems: Problems) -> Outlines:
    return {} if text is None else read_outlines(text, ids, problems)


def _spared(text: str | None, known: Known, problems: Problems) -> tuple[Spared, ...]:
    return () if text is None else read_spared(text, known.find_species, problems)


def _choices(
    text: str | None,
    ids: Ids,
    shelf: tuple[Product, ...],
    stems: StemsFile | None,
    known: Known,
    tools: Collection[str],
    problems: Problems,
) -> tuple[Choice, ...]:
    top = None if text is None else read_toml(text, "choices.toml", problems)
    if top is None:
        return ()
    targets = None if stems is None else stems.targets
    products = None if problems.about(SHELF) else [product.id for product in shelf]
    return read_choices(top, Land(known.find_species, ids, products, tools, targets))


def _records(text: str | None, ids: Ids, shelf: tuple[Product, ...], problems: Problems) -> tuple[Entry, ...]:
    if text is None:
        return ()
    ingredients = sorted({content.ingredient for product in shelf for content in product.contents})
    return read_records(text, ids, ingredients, problems)
