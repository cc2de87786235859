"""Labels for bottles that a mix is carried or kept in, in several sizes, with a code that holds the text itself."""

import datetime
import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from stemward.kinds import Product, Tract
from stemward.label import listed
from stemward.ledger.mixes import Batch
from stemward.ledger.records import entry_h
from stemward.paper.compile import query, to_pdf
from stemward.say.en import labels as words
from stemward.say.en.sheets import SIGNAL_ORDER
from stemward.say.numbers import System, figure
from stemward.units import UnitError, read

LEAST_PT = 8.0
SIGNAL_PT = 18.0
"""Least sizes of text and of the signal word; what does not fit a size with these is refused. Rule of thumb."""
TRIED_PT = (12.0, 11.0, 10.0, 9.0, LEAST_PT)
LEAST_MODULE_MM = 0.25
"""Least side of one square of the code that a phone reads from paper: engineering guess."""
IN_MM = 25.4


@dataclass(frozen=True, slots=True)
class Size:
    """One size of label: how large, and how many across and down a letter sheet; one a sheet for plain paper."""

    name: str
    width_mm: float
    height_mm: float
    across: int
    down: int


SIZES = {
    size.name: size
    for size in (
        Size("5 by 7 in", 7 * IN_MM, 5 * IN_MM, 1, 1),
        Size("4 by 5 in", 4 * IN_MM, 5 * IN_MM, 2, 2),
        Size("4 by 3 1/3 in", 4 * IN_MM, 10 / 3 * IN_MM, 2, 3),
        Size("4 by 2 in", 4 * IN_MM, 2 * IN_MM, 2, 5),
        Size("2 5/8 by 1 in", 2.625 * IN_MM, 1 * IN_MM, 3, 10),
    )
}


class TooSmall(Exception):
    """A size on which the text would not be readable. fits: sizes on which it is."""

    def __init__(self, size: str, fits: Sequence[str]) -> None:
        self.size, self.fits = size, tuple(fits)
        super().__init__(words.TOO_SMALL.format(size=size, fits=", ".join(fits) or words.NONE))


@dataclass(frozen=True, slots=True)
class Bottle:
    """What is in one bottle. shares: product id to its share of the mix; they are of the tract's shelf.

    mixed: day or "", batch: its name. parts: what was poured together, mL. methods: what it is used for. patches:
    where. by: who answers for it.
    """

    shares: Mapping[str, float]
    carrier: str
    batch: str
    mixed: str = ""
    parts: tuple[tuple[str, float], ...] = ()
    methods: tuple[str, ...] = ()
    patches: tuple[str, ...] = ()
    by: str = ""


def bottle_of(batch: Batch, by: str = "") -> Bottle:
    """The bottle of a batch that was really mixed."""
    share = batch.concentration_frac if len(batch.products) == 1 else 0.0
    parts = (
        (("product", batch.mixed_ul / 1000 * share), ("carrier", batch.mixed_ul / 1000 * (1 - share))) if share else ()
    )
    return Bottle(dict.fromkeys(batch.products, share), batch.carrier, batch.batch, batch.day, parts, by=by)


def bottles_of(plan: Mapping[str, Any]) -> list[Bottle]:
    """Bottles of a plan's mixes, one a mix; day and person are left to be written by hand."""
    found = []
    for mix in plan["mixes"]:
        own = [t for t in plan["treatments"] if t["id"] in mix["treatments"]]
        shares = {mix["product"]: mix["concentration_frac"]} | (
            {mix["partner"]: mix["partner_frac"]} if mix["partner"] else {}
        )
        found.append(
            Bottle(
                shares, mix["carrier"], f"{plan['code']} {mix['id']}",
                parts=tuple((part["what"], part["ml"]) for part in mix["batches"][0].get("parts", ())),
                methods=tuple(dict.fromkeys(t["how"] for t in own)),
                patches=tuple(dict.fromkeys(t["patch_name"] for t in own)),
            )
        )  # fmt: skip
    return found


def label_lines(bottle: Bottle, tract: Tract, units: System) -> dict[str, Any]:
    """What stands on a label: signal word, name, and lines; `text` is the whole, as the code holds it."""
    products = [p for p in tract.shelf if p.id in bottle.shares]
    signal = _signal(products)
    waits = [h for p in products for h in [entry_h(p, tract, bottle.methods or ("",))] if h is not None]
    gear = list(dict.fromkeys(str(f.value) for p in products for f in listed(p.facts, "equipment", None)))
    aid = list(dict.fromkeys(str(f.value) for p in products for f in listed(p.facts, "first aid", None)))
    diluted = any(0 < share < 1 for share in bottle.shares.values())
    lines = [
        words.CHILDREN,
        *[_holds(p, bottle.shares[p.id], units) for p in products],
        words.DILUTED.format(carrier=bottle.carrier or "carrier") if diluted else words.UNDILUTED,
        _recipe(bottle, units),
        words.FOR.format(patches=", ".join(bottle.patches)) if bottle.patches else "",
        words.MIXED.format(batch=bottle.batch, day=bottle.mixed or words.BLANK, by=bottle.by or words.BLANK),
        words.KEEPS.format(day=keeps_until(products, bottle.mixed)) if keeps_until(products, bottle.mixed) else "",
        words.WEAR.format(gear=", ".join(gear)) if gear else words.WEAR_UNREAD,
        words.ENTRY.format(hours=figure("entry_h", max(waits), units)) if waits else words.ENTRY_UNREAD,
        " ".join(aid) if aid else words.AID_UNREAD,
        words.POISON,
        words.FOLLOW,
        words.WHERE.format(where=dict(tract.emergency).get("where", "")) if dict(tract.emergency).get("where") else "",
        words.INVENTED if tract.invented else "",
    ]
    name = "; ".join(words.NAME.format(name=p.name, number=p.number or words.NO_NUMBER) for p in products)
    kept = [line for line in lines if line]
    shown = signal.upper() if signal not in ("", "none") else ""
    return {
        "signal": shown, "no_signal": words.SIGNAL_UNREAD if not signal else "", "name": name, "lines": kept,
        "text": "\n".join([one for one in (shown, name) if one] + kept),
    }  # fmt: skip


def _recipe(bottle: Bottle, units: System) -> str:
    names = words.PARTS | {"carrier": bottle.carrier or "carrier"}
    said = [f"{figure('part_ml', ml, units)} {names.get(what, what)}" for what, ml in bottle.parts if ml]
    return words.RECIPE.format(recipe=" + ".join(said)) if len(said) > 1 else ""


def _signal(products: Sequence[Product]) -> str:
    said = [str(f.value) for p in products for f in listed(p.facts, "signal word", None)]
    return max(said, key=SIGNAL_ORDER.index, default="")


def _holds(product: Product, share: float, units: System) -> str:
    """Active ingredients with their part of this mix."""
    percents = [str(f.value) for f in listed(product.facts, "ingredient percent", None)]
    said = []
    for number, content in enumerate(product.contents):
        of_mix = figure("ae_g_l", content.strength_ae_g_l * (share or 1.0), units)
        percent = _percent(percents[number], share) if number < len(percents) and share else ""
        said.append(words.HOLDS.format(ingredient=content.ingredient, form=content.form, strength=of_mix) + percent)
    return "; ".join(said) + ("." if share else words.OF_PRODUCT)


def _percent(text: str, share: float) -> str:
    for part in text.replace("%", " % ").split():
        try:
            return words.PERCENT.format(percent=f"{read(f'{part} %', 'fraction').to('frac') * 100 * share:.3g}")
        except UnitError:
            continue
    return ""


def keeps_until(products: Sequence[Product], mixed: str) -> str:
    """The day on which the first of the labels says that a mix is too old; "" where none was read to say so."""
    seconds = [f.value for p in products for f in listed(p.facts, "mix keeps", None) if isinstance(f.value, float)]
    if not seconds or not mixed:
        return ""
    return (datetime.date.fromisoformat(mixed[:10]) + datetime.timedelta(seconds=min(seconds))).isoformat()


def label_pdf(bottles: Sequence[Bottle], tract: Tract, units: System, size: str, on: datetime.date) -> bytes:
    """Labels of one size as PDF/UA, filled sheets of it where there are several. Raises TooSmall."""
    data = [label_lines(bottle, tract, units) for bottle in bottles]
    if size not in SIZES or not _fits(data, SIZES[size], LEAST_PT):
        raise TooSmall(size, [name for name in SIZES if _fits(data, SIZES[name], LEAST_PT)])
    tried = ((pt, beside) for pt in TRIED_PT for beside in (True, False))
    text_pt, beside = next(one for one in tried if _fits(data, SIZES[size], *one))
    return to_pdf("bottle_label.typ", _template(data, SIZES[size], text_pt, beside), on)


def _template(data: Sequence[Mapping[str, Any]], size: Size, text_pt: float, beside: bool) -> dict[str, Any]:
    labels = [{**one, "code": code(str(one["text"]))} for one in data]
    return {
        "title": words.TITLE, "width_mm": size.width_mm, "height_mm": size.height_mm, "across": size.across,
        "down": size.down, "labels": labels, "text_pt": text_pt, "beside": beside,
        "signal_pt": max(SIGNAL_PT, 2 * text_pt),
        "code_mm": code_mm(size), "alt": words.ALT, "cut": words.CUT,
    }  # fmt: skip


def code_mm(size: Size) -> float:
    """Side of the code on a label."""
    return min(size.width_mm * 0.3, size.height_mm * 0.42)


def _fits(data: Sequence[Mapping[str, Any]], size: Size, text_pt: float, beside: bool = False) -> bool:
    """True if all text stands on the label at a size of type, and the code can be read.

    beside: all text stands beside the code, else most of it under it.
    """
    drawn = _template(data, size, text_pt, beside)
    if any(code_mm(size) / one["code"]["squares"] < LEAST_MODULE_MM for one in drawn["labels"]):
        return False
    return all(
        float(height) <= size.height_mm - 2 * MARGIN_MM for height in query("bottle_label.typ", drawn, "<height>")
    )


MARGIN_MM = 3.0
"""White at a label's edge, since printers and scissors are not exact: engineering guess."""


def code(text: str) -> dict[str, Any]:
    """The text as a code of squares (ISO/IEC 18004), as SVG; squares: how many on a side, the quiet ones included."""
    import segno

    made = segno.make(text, error="l", micro=False, boost_error=False)
    out = io.BytesIO()
    made.save(out, kind="svg", border=4, xmldecl=False, svgns=True, omitsize=True)
    return {"svg": out.getvalue().decode(), "squares": made.symbol_size(border=4)[0]}
