"""What was mixed on a day, from which jugs, how much of it was put on, and what became of the rest."""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from stemward.kinds import UL_PER_ML, Tract
from stemward.ledger.balances import jugs
from stemward.ledger.mixes import KEPT, Batch, batches
from stemward.ledger.odd import Odd, odd

Sheet = Mapping[str, Any]
Row = tuple[str, str, dict[str, Any]]
USED_UP, NOT_KNOWN = "all of it was used", "not known yet"
FATES = (USED_UP, KEPT, "discarded", "spilled", NOT_KNOWN)
TINY_ML = 1e-9
"""Less than this is how a computer rounds."""


@dataclass(frozen=True, slots=True)
class MixTyped:
    """One mix as typed: mixed today, what was left of it, what became of that, and from which jugs it came.

    drawn_ml: of each product; a product that is not there was drawn as the strength asks. bottle: where the rest is
    kept. before: a batch that was there already and is used on.
    """

    mix: str
    mixed_ml: float | None = None
    left_ml: float | None = None
    fate: str = ""
    bottle: str = ""
    drawn_ml: Mapping[str, float] = field(default_factory=dict)
    jug: Mapping[str, str] = field(default_factory=dict)
    before: str = ""


@dataclass(frozen=True, slots=True)
class Poured:
    """One mix of a day. put_ml: what was put on, None where not known yet; most_ml: all there was.

    frac: share of each product as really mixed. rows: entries that follow, those of the morning first.
    """

    batch: str
    put_ml: float | None
    most_ml: float
    frac: Mapping[str, float]
    rows: tuple[Row, ...]


def poured(
    mix: MixTyped, sheet: Sheet | None, day: datetime.date, times: tuple[str, str], place: str, plan: str, tract: Tract
) -> Poured | Odd:
    """What comes of one mix as typed. sheet: one of those it was for, None where it was mixed and not used.

    times: when the day began and ended, as entries hold them.
    """
    there = batches(tract.entries)
    before = there.get(mix.before)
    if mix.mixed_ml is None and before is None:
        return odd("how_much_mixed", mix=_name(mix, sheet))
    had_ml = max(before.left_ul, 0) / UL_PER_ML if before else 0.0
    total_ml = (mix.mixed_ml or 0.0) + had_ml
    left_ml = 0.0 if mix.left_ml is None and mix.fate == USED_UP else mix.left_ml
    if left_ml is not None and left_ml > total_ml + TINY_ML:
        return odd("more_left", mix=_name(mix, sheet), left_ml=left_ml, there_ml=total_ml)
    frac = _fracs(mix, sheet, before)
    rows: list[Row] = []
    batch = mix.before
    if mix.mixed_ml is not None:
        batch = _free(f"{day.isoformat()} {mix.mix}", there)
        drawn = [
            {"product": product, "jug": mix.jug.get(product, "jug 1"), "ml": _drawn(mix, product, share)}
            for product, share in frac.items()
        ]
        if before is not None and had_ml:  # the older batch was poured into the new one
            rows.append(("mix left", times[0], {"what": "rinsed into", "batch": mix.before, "ml": had_ml}))
            frac = _together(frac, mix.mixed_ml, before, had_ml)
        body = {
            "batch": batch,
            "mixed_ml": round(total_ml, 3),
            "drawn": drawn,
            "concentration_frac": round(next(iter(frac.values()), 0.0), 6),
            "carrier": sheet["carrier"] if sheet else "",
            "place": place,
            "plan": plan,
        }
        rows.append(("batch mixed", times[0], {key: value for key, value in body.items() if value != ""}))
    if left_ml and mix.fate in (KEPT, "discarded", "spilled"):
        rest = {"what": mix.fate, "batch": batch, "ml": left_ml} | ({"bottle": mix.bottle} if mix.bottle else {})
        rows.append(("mix left", times[1], rest))
    return Poured(batch, None if left_ml is None else total_ml - left_ml, total_ml, frac, tuple(rows))


def _name(mix: MixTyped, sheet: Sheet | None) -> str:
    return str(sheet["product_name"]) if sheet else mix.mix


def _free(name: str, there: Mapping[str, Batch]) -> str:
    found, number = name, 2
    while found in there:
        found, number = f"{name}-{number}", number + 1
    return found


def _together(frac: Mapping[str, float], mixed_ml: float, before: Batch, had_ml: float) -> dict[str, float]:
    """Strengths after an older batch of the same product was poured in."""
    older = before.concentration_frac
    return {
        product: (share * mixed_ml + (older or share) * had_ml) / (mixed_ml + had_ml) for product, share in frac.items()
    }


def _fracs(mix: MixTyped, sheet: Sheet | None, before: Batch | None) -> dict[str, float]:
    """Share of each product in what was mixed: as drawn where that was measured, else as planned."""
    if sheet is None:
        return {p: ml / mix.mixed_ml for p, ml in mix.drawn_ml.items() if mix.mixed_ml}
    planned = {sheet["product"]: sheet["concentration_frac"] or 0.0}
    if sheet["partner"]:
        planned[sheet["partner"]] = sheet["partner_frac"] or 0.0
    if mix.mixed_ml:
        return {p: mix.drawn_ml.get(p, share * mix.mixed_ml) / mix.mixed_ml for p, share in planned.items()}
    if before is not None and before.concentration_frac and len(planned) == 1:
        return {sheet["product"]: before.concentration_frac}
    return planned


def _drawn(mix: MixTyped, product: str, share: float) -> float:
    return float(round(mix.drawn_ml.get(product, share * (mix.mixed_ml or 0.0)), 3))


def draws_asked(rows: Sequence[Row], tract: Tract) -> list[Odd]:
    """Draws of a day that take more than a jug is known to hold: asked about, never quietly allowed."""
    balance, _ = jugs(tract.entries, tract.shelf)
    taken: dict[tuple[str, str], int] = {}
    for kind, _, body in rows:
        for draw in body["drawn"] if kind == "batch mixed" else ():
            key = (str(draw["product"]), str(draw["jug"]))
            taken[key] = taken.get(key, 0) + round(draw["ml"] * UL_PER_ML)
    asked = []
    for (product, jug), ul in taken.items():
        have = balance.get((product, jug))
        if have is not None and have.left_ul is not None and ul > have.left_ul:
            asked.append(
                odd("overdrawn", f"draw {product} {jug}", product=product, jug=jug, drawn_ml=ul / UL_PER_ML,
                    left_ml=max(have.left_ul, 0) / UL_PER_ML)
            )  # fmt: skip
        elif have is None:
            asked.append(odd("no_such_jug", f"draw {product} {jug}", product=product, jug=jug))
    return asked


def amounts(mix_ml: float, frac: Mapping[str, float], tract: Tract) -> dict[str, Any]:
    """What an amount of mix holds: product by product, and acid equivalent by ingredient."""
    ae_g: dict[str, float] = {}
    for product in tract.shelf:
        for content in product.contents if product.id in frac else ():
            grams = mix_ml / 1000 * frac[product.id] * content.strength_ae_g_l
            ae_g[content.ingredient] = round(ae_g.get(content.ingredient, 0.0) + grams, 6)
    product_ml = {name: round(mix_ml * share, 3) for name, share in frac.items()}
    return {"mix_ml": round(mix_ml, 3), "product_ml": product_ml, "ae_g": ae_g}


def remeasured(was: Mapping[str, Any], now: Mapping[str, Any], tract: Tract) -> dict[str, Any]:
    """A treatment's body with product and acid as its mix and strength say, where one of those was corrected."""
    same = all(was.get(name) == now.get(name) for name in ("mix_ml", "concentration_frac"))
    if same or not now.get("product") or now.get("mix_ml") is None:
        return dict(now)
    before, share = was.get("mix_ml"), now.get("concentration_frac") or 0.0
    frac = {p: ml / before for p, ml in was.get("product_ml", {}).items()} if before else {}
    return {**now, **amounts(now["mix_ml"], {**frac, now["product"]: share}, tract)}
