"""Plants by Latin name, and finding one by what a person writes."""

import re
from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path

from stemward.handbook.tables import HandbookError, Row, cite, figure, parts, read_table
from stemward.handbook.values import Near, Species, frozen

MOST_CANDIDATES = 6
ALIKE = 0.72
"""How alike two names must be to be offered (0 to 1): engineering guess, no source."""


def load_species(folder: Path) -> Mapping[str, Species]:
    """All plants by Latin name."""
    traits = read_table(folder, "species_traits.csv")
    rows = [*read_table(folder, "species.csv"), *read_table(folder, "species_more.csv")]
    found = {row["latin"]: _species(row, traits) for row in rows}
    if len(found) < len(rows):
        raise HandbookError("species.csv, species_more.csv: a Latin name stands twice. Nothing was loaded.")
    return frozen(found)


def _species(row: Row, traits: list[Row]) -> Species:
    latin = row["latin"]
    genus = latin.split()[0]
    own = {t["trait"]: t for t in traits if t["plants"] in (latin, f"{genus} *")}
    cited = cite(row, f"species.{latin}", row["stump_sprouts"])
    cut_first = own.get("cut_first")
    # Where nothing is on record for cutting first, a plant that does not sucker has nothing to bring up.
    otherwise = "fits" if row["root_suckers"] == "no" else "unknown"
    return Species(
        latin=latin,
        common=row["common"],
        synonyms=parts(row["synonyms"], ";"),
        habit=row["habit"],
        native=row["native"] == "yes",
        stump_sprouts=row["stump_sprouts"],  # type: ignore[arg-type]
        root_suckers=row["root_suckers"],  # type: ignore[arg-type]
        clone="clone" in own and own["clone"]["value"] == "yes",
        grafts="grafts" in own and own["grafts"]["value"] == "yes",
        genus=genus,
        evergreen=row["evergreen"],
        max_dbh_cm=figure(row, "max_dbh_cm"),
        cautions=row["cautions"],
        note=row["note"],
        cut_first=cut_first["value"] if cut_first else otherwise,  # type: ignore[arg-type]
        cited=cited,
        cited_cut_first=cite(cut_first, cut_first["id"], cut_first["value"]) if cut_first else cited,
    )


def bare(text: str) -> str:
    """A name without case, hyphens, blanks and marks, so that spellings of one name are equal."""
    return re.sub(r"[\W_]+", "", text.casefold())


def name_index(species: Mapping[str, Species]) -> Mapping[str, tuple[Species, ...]]:
    """Plants by bare name: common name, Latin name and synonyms. A name of several plants holds them all."""
    index: dict[str, list[Species]] = {}
    for plant in species.values():
        for name in dict.fromkeys(bare(n) for n in (plant.common, plant.latin, *plant.synonyms)):
            index.setdefault(name, []).append(plant)
    return frozen({name: tuple(plants) for name, plants in index.items()})


def _of_last_word(wanted: str, index: Mapping[str, tuple[Species, ...]]) -> list[Species]:
    """Plants whose common name ends in a word like the one that was typed: of "buckthron", the buckthorns."""
    tails: dict[str, list[Species]] = {}
    for plant in dict.fromkeys(plant for some in index.values() for plant in some):
        tails.setdefault(bare(plant.common.split()[-1]), []).append(plant)
    return [plant for tail in get_close_matches(wanted, tails, 1, ALIKE) for plant in tails[tail]]


def find(text: str, index: Mapping[str, tuple[Species, ...]]) -> Species | Near:
    """The plant a person means, or the plants they may mean. Never guesses: only a full name finds one."""
    wanted = bare(text)
    plants = index.get(wanted, ())
    if len(plants) == 1:
        return plants[0]
    if not plants and wanted:
        within = [p for name, some in index.items() if len(wanted) > 2 and wanted in name for p in some]
        alike = [p for name in get_close_matches(wanted, index, MOST_CANDIDATES, ALIKE) for p in index[name]]
        plants = (*alike, *within) or tuple(_of_last_word(wanted, index))
    names = dict.fromkeys((plant.common, plant.latin) for plant in plants)
    return Near(text, tuple(names)[:MOST_CANDIDATES])
