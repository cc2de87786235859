"""Which treatments have been tried or advised on which plants, and which are known to be weak."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from stemward.handbook.tables import Row, cite, figure, parts, read_table
from stemward.handbook.values import Evidence, frozen
from stemward.kinds import Cited

TIERS = {"trial": 3, "trial cited": 2, "extension": 2, "handbook": 2, "agency": 2, "practitioner": 1}
"""What stands behind a treatment: 3 trials, 2 advice, or a trial known from another paper, 1 word only."""


def load_evidence(folder: Path) -> tuple[Evidence, ...]:
    """Every row, trials first, then advice, then word only."""
    rows = [_evidence(row) for row in read_table(folder, "evidence.csv")]
    return tuple(sorted(rows, key=lambda r: (-TIERS[r.kind], r.kind)))


def _evidence(row: Row) -> Evidence:
    return Evidence(
        id=row["id"],
        plant=row["plant"],
        method=row["method"],
        ingredients=parts(row["ingredients"]),
        joined=row["joined"],
        form=row["form"],
        rating=row["rating"],  # type: ignore[arg-type]
        rating_high=row["rating_high"],
        low_frac=figure(row, "low_frac"),
        high_frac=figure(row, "high_frac"),
        typed=row["typed"],
        sense=row["sense"],  # type: ignore[arg-type]
        concentration_low_frac=figure(row, "concentration_low_frac"),
        concentration_high_frac=figure(row, "concentration_high_frac"),
        strength_ae_g_l=figure(row, "strength_ae_g_l"),
        strength_typed=row["strength_typed"],
        season=row["season"],
        kind=row["kind"],  # type: ignore[arg-type]
        flags=parts(row["flags"]),
        note=row["note"],
        source=row["source"],
        place=row["place"],
        grade=row["grade"],  # type: ignore[arg-type]
        read=row["read"],
    )


def by_plant(rows: Iterable[Evidence], folder: Path) -> Mapping[str, tuple[Evidence, ...]]:
    """Rows by Latin name: those that name the plant, then those of groups listed by hand to stand for it."""
    found: dict[str, list[Evidence]] = {}
    stands: dict[str, tuple[str, ...]] = {
        row["plant"]: parts(row["species"]) for row in read_table(folder, "stands_for.csv")
    }
    for row in rows:
        for latin in dict.fromkeys((row.plant, *stands.get(row.plant, ()))):
            found.setdefault(latin, []).append(row)
    return frozen({latin: tuple(some) for latin, some in found.items()})


def speaks_of(row: Evidence, method: str, ingredient: str, form: str = "") -> bool:
    """True if a row is on this way with this ingredient alone, in this form where both name one.

    An amine or choline is a salt.
    """
    if row.method != method or ingredient not in row.ingredients:
        return False
    if len(row.ingredients) > 1 and row.joined != "or":
        return False
    return not row.form or not form or row.form == form or (row.form == "salt" and form in ("amine", "choline"))


def tier(rows: Iterable[Evidence]) -> int:
    """The best of what speaks for a treatment: 3 trials, 2 advice, 1 word only, 0 nothing known."""
    return max((TIERS[r.kind] for r in rows if r.counts and r.sense == "for"), default=0)


def load_weak(folder: Path) -> tuple[Row, ...]:
    """Resistant or weak pairs, kept by hand."""
    return tuple(read_table(folder, "weak.csv"))


def weak_pair(rows: Iterable[Row], latin: str, method: str, ingredient: str, form: str = "") -> Cited | None:
    """The first row that says so; an empty method or form in a row means: any."""
    for row in rows:
        if (
            row["ingredient"] == ingredient
            and row["method"] in ("", method)
            and (not form or row["form"] in ("", form))
            and latin in parts(row["plants"])
        ):
            return cite(row, row["id"], row["value"])
    return None


def failed(rows: Iterable[Evidence]) -> Cited | None:
    """The first trial that found a treatment poor, if no trial found it better."""
    trials = [r for r in rows if r.counts and r.kind == "trial" and r.sense != "none"]
    if trials and all(r.sense == "against" for r in trials):
        r = trials[0]
        return Cited(r.id, "weak", "", r.source, r.place, r.grade, f"as published: {r.typed}")
    return None
