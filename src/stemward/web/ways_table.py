"""The ways of one target as a table: groups, columns, the one taken, and what something else would come to."""

import datetime
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
from django.http import QueryDict
from django.utils.safestring import mark_safe

from stemward import drawings
from stemward.drawings.tally import ten_stems
from stemward.handbook import Book
from stemward.kinds import Tract, Way
from stemward.notebook.changes import Refused
from stemward.plan.data import way_data
from stemward.plan.draw_up import targets_of
from stemward.plan.ways import weigh_way
from stemward.say import Speaker, en
from stemward.units import UnitError, read

SORTS: dict[str, tuple[str, Callable[[Mapping[str, Any]], Any]]] = {
    "": ("", lambda _: 0),
    "ten": ("Most of ten stems dead first, by the lower figure.", lambda way: -(way["low"] or 0)),
    "keep": ("Least that can reach what you keep first.", lambda way: way["reach"]),
    "work": ("Least work first.", lambda way: way["hours_low"]),
    "mix": ("Least herbicide first.", lambda way: way["ae_g"]),
}


def concerns(finding: Mapping[str, Any], item: Mapping[str, Any]) -> bool:
    """True if a finding is about this treatment."""
    where = finding["where"]
    return all(where[key] in ("", item[key]) for key in ("patch", "species", "product"))


def table(item: Mapping[str, Any], speaker: Speaker, everything: bool, sort: str) -> dict[str, Any]:
    """Pinned ways, then groups; the sentence that says how they are sorted; how many more there are."""
    ways, laid = item["ways"], item["laid_out"]
    sentence, key = SORTS.get(sort, SORTS[""])
    taken = next((n for n, w in enumerate(ways) if _is_taken(w, item)), None)
    groups = [{"heading": "", "rows": [_row(ways[n], n, speaker, n == taken) for n in laid["pinned"]]}]
    shown = set(laid["pinned"])
    for group in laid["groups"]:
        members = sorted(group["ways"], key=lambda n: key(ways[n])) if sort else group["ways"]
        shown |= set(members)
        rows = [_row(ways[n], n, speaker, n == taken) for n in members]
        groups.append({"heading": en.stages.GROUPS[group["group"]], "rows": rows})
    rest = [n for n in range(len(ways)) if n not in shown]
    if everything and rest:
        rows = [_row(ways[n], n, speaker, n == taken) for n in rest]
        groups.append({"heading": "All others", "rows": rows})
    return {
        "groups": groups,
        "sort": sentence or speaker.word("ways_sort"),
        "more": 0 if everything else len(rest),
        "sorts": [{"name": name, "words": words} for name, (words, _) in SORTS.items() if name],
    }


def _is_taken(way: Mapping[str, Any], item: Mapping[str, Any]) -> bool:
    return all(way[key] == item[key] for key in ("how", "first", "partner", "product", "concentration_frac", "carrier"))


def _row(way: Mapping[str, Any], number: int, speaker: Speaker, taken: bool) -> dict[str, Any]:
    """One way in words. Its figures are ranges; the ten stems say the same as the sentence beside them."""
    herbicide = bool(way["product"])
    if not herbicide:
        label = en.stages.WHAT_THEN[way["how"]]
    elif way["stopped_by"]:
        label = speaker.stopped_by(way)
    elif way["to_find_out"]:
        label = speaker.word("open_count", count=way["to_find_out"])
    else:
        label = "nothing open"
    mark = "stop" if way["stopped_by"] else "find out" if way["to_find_out"] else ""
    return {
        "number": number,
        "taken": taken,
        "words": speaker.way(way),
        "shelf": "on your shelf" if way["on_shelf"] and herbicide else "",
        "ten": mark_safe(ten_stems(way["low"], way["high"])) if way["low"] is not None else "",
        "ten_books": mark_safe(ten_stems(way["books_low"], way["books_high"])) if way["books_low"] is not None else "",
        "of_ten": speaker.of_ten(way),
        "when": en.stages.WHEN[way["when"]] if herbicide else "",
        "keep": speaker.word("reach_level", level=en.stages.LEVELS[way["reach"]]) if herbicide else "",
        "label": label if herbicide else "",
        "then": "" if herbicide else label,
        "sign": mark_safe(drawings.sign(mark)) if mark else "",
        "need": speaker.number("need_ml", way["need_ml"]) if herbicide else "",
        "work": speaker.work(way),
        "choice": _choice_fields(way),
    }


def _choice_fields(way: Mapping[str, Any]) -> list[tuple[str, str]]:
    """What the button of a row sends."""
    share = way["concentration_frac"]
    fields = [("how", way["how"]), ("first", way["first"]), ("product", way["product"]), ("carrier", way["carrier"]),
              ("tool", way["tool"]), ("partner", way["partner"])]  # fmt: skip
    if share is not None and way["product"]:
        fields.append(("concentration", f"{100 * share:.6g} %"))
    if way["partner"]:
        fields.append(("partner_concentration", f"{100 * way['partner_frac']:.6g} %"))
    return [(name, str(value)) for name, value in fields if value]


CHOICE_KEYS = (
    "how",
    "first",
    "product",
    "carrier",
    "tool",
    "partner",
    "concentration",
    "partner_concentration",
    "ring",
)


def choice_from(typed: QueryDict, patch: str, species: str, state: str) -> dict[str, Any]:
    """The piece of a choice from what a button or form sent."""
    body: dict[str, Any] = {"patch": patch, "species": species}
    if state != "standing":
        body["state"] = state
    for key in CHOICE_KEYS:
        value = typed.get(key, "").strip()
        if value:
            body[key] = value
    return body


def asked_of(item: Mapping[str, Any], speaker: Speaker) -> dict[str, Any]:
    """What can be tried otherwise for the way taken, with what it is now."""
    ring = speaker.number("ring_cm", item["ring_cm"]) if item["ring_cm"] else ""
    share = f"{100 * item['concentration_frac']:.6g} %" if item["concentration_frac"] else ""
    return {"concentration": share, "tool": item["tool"], "ring": ring, "as_of": speaker.plan["as_of"]}


def groups(findings: Sequence[Mapping[str, Any]], speaker: Speaker) -> list[dict[str, Any]]:
    """Findings in the four weights, those that say the same words once."""
    said = Speaker({**speaker.plan, "findings": list(findings)}, speaker.units).findings()
    made = []
    for weight in ("stop", "find out", "know", "checked"):
        rows = list({(f.text, f.do, f.about): f for f in said if f.weight == weight}.values())
        if rows:
            made.append({"weight": weight, "class": weight.replace(" ", "-"), "heading": en.findings.WEIGHTS[weight],
                         "sign": mark_safe(drawings.sign(weight)), "rows": rows})  # fmt: skip
    return made


def tried(
    land: Tract, item: Mapping[str, Any], typed: QueryDict, as_of: datetime.date, book: Book, speaker: Speaker
) -> list[dict[str, Any]]:
    """Rows of (what, was, is) for the way taken with another day, product, strength, tool or ring.

    Raises Refused with a sentence for what cannot be read.
    """
    now = Way(item["how"], item["product"], item["concentration_frac"], item["carrier"], item["tool"], item["ring_cm"],
              item["first"], item["partner"], item["partner_frac"])  # fmt: skip
    then, day = _changed(now, typed, as_of, land, book)
    was, would = (_weighed(land, item, way, on, book) for way, on in ((now, as_of), (then, day)))
    rows = []
    for name, say in (
        ("Way", speaker.way),
        ("Of 10 stems", speaker.of_ten),
        ("When", lambda w: en.stages.WHEN[w["when"]]),
        ("What it can reach", lambda w: en.stages.LEVELS[w["reach"]]),
        ("Stops", lambda w: str(w["stops"])),
        ("To find out", lambda w: str(w["to_find_out"])),
        ("Mix", lambda w: speaker.number("need_ml", w["need_ml"])),
        ("Herbicide", lambda w: speaker.number("ae_g", w["ae_g"])),
        ("Work", speaker.work),
    ):
        before, after = say(was), say(would)
        rows.append({"name": name, "was": before, "is": after, "changed": before != after})
    return rows


def _changed(way: Way, typed: QueryDict, as_of: datetime.date, land: Tract, book: Book) -> tuple[Way, datetime.date]:
    day = as_of
    if typed.get("as_of", "").strip():
        try:
            day = datetime.date.fromisoformat(typed["as_of"].strip())
        except ValueError:
            raise Refused(f"Not understood: {typed['as_of']}. Write a day like 2026-10-03.") from None
    product = typed.get("product", "")
    if product and product != way.product and product in {p.id for p in land.shelf}:
        from stemward.plan.ways import way_with

        other = way_with(way.how, land.product(product), land.patches[0], land, book)
        if other is None:
            raise Refused("No strength is on record for that product with this method.")
        way = replace(other, first=way.first)
    if typed.get("tool") in book.tools:
        way = replace(way, tool=typed["tool"])
    for key, dimension, unit in (("concentration", "fraction", "frac"), ("ring", "length", "cm")):
        words = typed.get(key, "").strip()
        if words:
            try:
                value = read(words, dimension, "%" if dimension == "fraction" else "in").to(unit)
            except UnitError as error:
                raise Refused(str(error)) from None
            way = replace(way, concentration_frac=value) if key == "concentration" else replace(way, ring_cm=value)
    if way.concentration_frac is not None and not 0 < way.concentration_frac <= 1:
        raise Refused("A strength lies above 0 and up to 100 %.")
    return way, day


def _weighed(land: Tract, item: Mapping[str, Any], way: Way, as_of: datetime.date, book: Book) -> dict[str, Any]:
    target = next(
        t for t in targets_of(land) if (t.patch, t.species, t.state) == (item["patch"], item["species"], item["state"])
    )
    stems = land.stems.where(np.asarray(target.stem_rows))
    patch, species = land.patch(target.patch), book.species[target.species]
    return way_data(weigh_way(way, target, patch, species, stems, land, book, as_of, {}))
