"""What the page on which a label is read shows: the question, the sheet with its marks, the lists beside it."""

from collections.abc import Mapping, Sequence
from typing import Any

from django.http import HttpRequest

from stemward.gate.label_pdf import search
from stemward.label import KINDS
from stemward.label.reader import NotReadable
from stemward.notebook.changes import Refused
from stemward.notebook.models import LabelFile
from stemward.say.en import label_read as words
from stemward.say.en import reader
from stemward.say.en.forms import ON_LABELS
from stemward.units import EXAMPLE
from stemward.web import label_files
from stemward.web.frame import known_of
from stemward.web.label_items import COVER, Item, answered, ask_words, next_open, of_item
from stemward.web.views.shelf import fact_words

MARGIN_PT = 6.0
LINES_AROUND_PT = 30.0
"""White round a marked place, and about three lines above and below it where only the place is shown."""


def named(tract_id: str, product: str) -> dict[str, Any]:
    """What every page about a label is told: the product and its name in addresses."""
    return {"product": known_of(tract_id).land.product(product), "key": product}


def shown(
    request: HttpRequest, tract_id: str, product: str, have: dict[str, Any], file: LabelFile, items: Sequence[Item],
    item: Item,
) -> dict[str, Any]:  # fmt: skip
    """What the reading page shows."""
    reading, kind = file.reading, KINDS[item.kind]
    facts = have.get("facts", ())
    number = int(asked) if (asked := request.GET.get("page", "")).isdigit() else item.page or 1
    number = min(max(1, number), reading["pages"])
    hits, query = found_words(request, tract_id, product, file)
    here = query["at"] if query["words"] and hits else None
    marks = item.boxes if item.page == number else ()
    if here is not None:
        number, marks = hits[here].page, hits[here].boxes
    group = [one for one in items if one.deciding == item.deciding]
    place = next((n + 1 for n, one in enumerate(group) if one.key == item.key), 0)
    scope = dict(item.scope)
    posted = request.method == "POST"
    return {
        **named(tract_id, product), "file": file, "item": item,
        "ask": ask_words(item.kind), "place_in": f"{place} of {len(group)}" if place else "",
        "sheet": sheet(file, number, marks, [h.boxes for n, h in enumerate(hits) if h.page == number and n != here]),
        "number": number, "pages": reading["pages"], "page_numbers": range(1, reading["pages"] + 1),
        "crop": crop(file, item.page, item.boxes) if item.boxes else None,
        "way": way_of(kind), "options": [(one, ON_LABELS.get(one, one), one in item.values) for one in kind.choices],
        "example": EXAMPLE.get(kind.dimension, "") if kind.value == "number" else "",
        "values": [ON_LABELS.get(v, v) for v in item.values], "cover": COVER,
        "sure": words.SURE.get(item.sure, ""), "no_limit": kind.no_limit,
        "typed": request.POST.get("says", "") if posted else "",
        "asked_again": request.POST.get("says", "") if posted else "",
        "scopes": [
            {"name": name, "words": title, "open": bool(scope.get(name)),
             "options": [(v, ON_LABELS.get(v, v), v in scope.get(name, ())) for v in scope_choices(name, scope)]}
            for name, title in words.SCOPES.items()
        ],
        "read_here": [fact_words(f) for f in facts if "read_by" in f and of_item(f, item)],
        "lists": [
            {"title": title, "rows": [
                {"key": one.key, "ask": ask_words(one.kind), "page": one.page, "read": answered(one, facts),
                 "now": one.key == item.key} for one in items if one.deciding == lead and (one.said or lead)
            ]} for lead, title in ((True, words.DECIDE), (False, words.OTHERS))
        ],
        "left": sum(1 for one in items if one.deciding and not answered(one, facts)),
        "later": next_open(items, item, facts), "all_read": "all" in request.GET,
        "parts": [
            {**one, "number": n, "words": words.PARTS.get(one["name"], one["name"])}
            for n, one in enumerate(reading["parts"])
        ],
        "sentences": [
            {"number": n, "text": item.covered if s["text"] == item.said else s["text"], "boxes": s["boxes"],
             "chosen": s["text"] == item.said}
            for n, s in enumerate(reading["sentences"]) if s["page"] == number
        ],
        "kinds": [(name, ask_words(name)) for name in KINDS],
        "query": query, "hits": hits, "pictures": reading.get("pictures"),
    }  # fmt: skip


def way_of(kind: Any) -> str:
    """How a value is given: ticked from a list, chosen, or typed."""
    if kind.value == "yes-no":
        return "yes-no"
    return ("many" if kind.many else "one") if kind.choices else "text"


def scope_choices(name: str, scope: Mapping[str, Sequence[str]]) -> Sequence[str]:
    """What a fact may be limited to: words of the lists, for states those that the label names."""
    if name == "state":
        return tuple(scope.get("state", ()))
    if name == "role":
        return ("mixer", "early entry")
    return KINDS[name].choices


def sheet(file: LabelFile, number: int, marks: Sequence[Any], hits: Sequence[Sequence[Any]]) -> dict[str, Any]:
    """A page as it is drawn: its size in points, and the places marked on it."""
    width, height = file.reading["sizes"][number - 1]
    return {
        "width": round(width, 1), "height": round(height, 1), "number": number,
        "marks": [_around(box) for box in marks], "hits": [_around(box) for boxes in hits for box in boxes],
    }  # fmt: skip


def _around(box: Sequence[float]) -> dict[str, float]:
    left, top, right, bottom = box
    return {
        "x": round(left - 2, 1), "y": round(top - 2, 1), "width": round(right - left + 4, 1),
        "height": round(bottom - top + 4, 1),
    }  # fmt: skip


def crop(file: LabelFile, number: int, boxes: Sequence[Any]) -> dict[str, Any]:
    """The marked place with a few lines above and below, for narrow screens."""
    width, height = file.reading["sizes"][number - 1]
    left = max(0.0, min(box[0] for box in boxes) - MARGIN_PT)
    right = min(width, max(box[2] for box in boxes) + MARGIN_PT)
    top = max(0.0, min(box[1] for box in boxes) - LINES_AROUND_PT)
    bottom = min(height, max(box[3] for box in boxes) + LINES_AROUND_PT)
    return {
        "view": f"{left:.1f} {top:.1f} {right - left:.1f} {bottom - top:.1f}", "width": round(width, 1),
        "height": round(height, 1), "number": number, "marks": [_around(box) for box in boxes],
    }  # fmt: skip


def found_words(
    request: HttpRequest, tract_id: str, product: str, file: LabelFile
) -> tuple[Sequence[Any], dict[str, Any]]:
    """Places of the words that are searched for, and which of them is shown."""
    asked = request.GET.get("find", "").strip()
    try:
        hits = search(label_files.content_of(tract_id, product, file.digest), asked) if asked else []
    except NotReadable as wrong:
        raise Refused(reader.NOT_READABLE[wrong.message]) from None
    at = int(request.GET.get("at", "0")) if request.GET.get("at", "0").isdigit() else 0
    at = at % len(hits) if hits else 0
    told = words.FOUND.format(count=len(hits), at=at + 1) if hits else words.NOT_FOUND.format(words=asked)
    return hits, {
        "words": asked,
        "at": at,
        "before": (at - 1) % max(1, len(hits)),
        "after": at + 1,
        "told": told if asked else "",
    }
