"""One line corrected: another takes its place, or none does; both are kept, with the reason."""

from collections.abc import Mapping
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from stemward.gate.text import clean
from stemward.kinds import ENTRY_KINDS, METHODS, Entry, Said, Tract
from stemward.ledger import in_force
from stemward.ledger.in_force import TAKEN_BACK
from stemward.ledger.poured import remeasured
from stemward.notebook.changes import Refused
from stemward.say.en import records as words
from stemward.say.en.stages import HOW
from stemward.say.numbers import figure
from stemward.say.records import rows_words
from stemward.web.day_form import MOST, a_clock, measured, people_of
from stemward.web.door import who
from stemward.web.frame import known_of, page, units_of
from stemward.web.tried import tried
from stemward.web.views.evening import rows_from
from stemward.web.views.land import ask
from stemward.web.views.records import line_of, names_of

EDITED = ("text", "number", "figure", "clock", "choice", "texts", "counts")
FOLLOWS = ("ae_g", "product_ml", "product", "reckoned_ml", "reckoned_h", "plan", "batch", "state", "species", "code",
           "as_of", "day", "of")  # fmt: skip
"""Parts that follow from others or name what the line is about: a line about something else is taken back."""
ONLY_BACK = ("signed", "plan issued")
"""Kinds that are taken back and not changed."""
DIMENSIONS = {"_ml": ("volume", "ml"), "ml": ("volume", "ml"), "_m2": ("area", "m2"), "_frac": ("fraction", "frac"),
              "_h": ("time", "h"), "_m": ("length", "m"),
              "_m_s": ("speed", "m/s"), "_c": ("temperature", "c")}  # fmt: skip
"""How a figure is typed, by the end of its name: dimension and unit it is kept in."""


def correct(request: HttpRequest, tract_id: str, entry: str) -> HttpResponse:
    """The line with its parts to change, or to be taken back."""
    land = known_of(tract_id).land
    was = {e.id: e for e in in_force(land.entries)}.get(entry)
    if was is None or was.kind not in ENTRY_KINDS:
        raise Http404

    def act() -> HttpResponse:
        _correct(request, tract_id, land, was)
        return redirect("after", tract_id) if was.kind in ONLY_BACK else redirect("record-day", tract_id, was.at[:10])

    done, lines = tried(request, act)
    if done:
        return done
    return page(
        request, "web/correct.html", tract_id, "after", typed=request.POST, lines=lines,
        entry=line_of(was, False, units_of(request), names_of(land)), fields=_fields(was, land, request),
        time=request.POST.get("at-time", was.at[11:16]), status=422 if lines else 200,
    )  # fmt: skip


def _parts(was: Entry) -> list[Said]:
    """The parts of a line that can be changed; how many follows from which, where stems are named."""
    if was.kind in ONLY_BACK:
        return []
    left_out = (*FOLLOWS, *(("stems",) if was.body.get("rows") else ("rows",)))
    return [s for s in ENTRY_KINDS[was.kind] if s.sort in EDITED and s.name not in left_out]


def _fields(was: Entry, land: Tract, request: HttpRequest) -> list[dict[str, Any]]:
    units = units_of(request)
    return [
        {
            "name": said.name, "label": words.SAID[said.name].capitalize(), "options": _options(said, land),
            "hint": words.ROWS_HINT if said.sort == "counts" else "",
            "value": request.POST.get(f"say-{said.name}", shown(said, was.body.get(said.name), units)),
        }
        for said in _parts(was)
    ]  # fmt: skip


def _options(said: Said, land: Tract) -> list[tuple[str, str]]:
    if said.name == "patch":
        return [(p.id, p.name) for p in land.patches]
    if said.name == "method":
        return [(how, HOW[how]) for how in METHODS]
    return [(one, words.FATES.get(one, one)) for one in said.options]


def shown(said: Said, value: Any, units: Any) -> str:
    """A part as it stands in the form, in the reader's units."""
    if value in (None, "", [], {}):
        return ""
    if said.sort == "counts":
        return ", ".join(rows_words(value))
    if said.sort == "texts":
        return ", ".join(value)
    if _typed_as(said.name) and isinstance(value, int | float):
        return figure(f"amount_{said.name}", value, units)
    return f"{value:g}" if isinstance(value, int | float) else str(value)


def _typed_as(name: str) -> tuple[str, str] | None:
    fits = (typed for end, typed in DIMENSIONS.items() if name == end or (end[0] == "_" and name.endswith(end)))
    return next(fits, None)


def _correct(request: HttpRequest, tract_id: str, land: Tract, was: Entry) -> None:
    """Raises Refused."""
    why = clean(request.POST.get("why", "").strip(), MOST)
    if not why:
        raise Refused("Why is it corrected? Write a few words; they stand beside it.")
    if "take-back" in request.POST:
        row = (TAKEN_BACK, was.at, {"why": why})
    else:
        body = _changed(request, land, was)
        if body == was.body and request.POST.get("at-time", was.at[11:16]) == was.at[11:16]:
            raise Refused("Nothing is different from what stands there.")
        time = a_clock(request.POST.get("at-time", ""), "Time")
        row = (was.kind, f"{was.at[:10]}T{time}" if time else was.at[:10], body | {"why": why})
    (made,) = rows_from(request.POST["command"], land, [row], who())
    corrected = made | {"offset": was.offset, "corrects": was.id}
    ask(request, tract_id, "write down", words={"what": f"a correction of {was.at[:10]}"}, entries=[corrected])


def _changed(request: HttpRequest, land: Tract, was: Entry) -> dict[str, Any]:
    """The body with what was typed otherwise; what was left as it was shown keeps its exact figure."""
    units, body = units_of(request), dict(was.body)
    for said in _parts(was):
        text = request.POST.get(f"say-{said.name}")
        if text is None or text.strip() == shown(said, was.body.get(said.name), units):
            continue
        value = _from_text(text.strip(), said, was, land)
        if value in ("", None, [], {}):
            if said.needed or said.sort == "counts":
                raise Refused(f"{words.SAID[said.name].capitalize()}: something has to stand there, or take it back.")
            body.pop(said.name, None)
        else:
            body[said.name] = value
    if body.get("rows"):
        body["stems"] = sum(body["rows"].values())
    return remeasured(was.body, body, land) if was.kind == "treated" else body


def _from_text(text: str, said: Said, was: Entry, land: Tract) -> Any:
    """What was typed as the body holds it. Raises Refused."""
    label = words.SAID[said.name].capitalize()
    if said.sort in ("text", "choice"):
        return clean(text, MOST)
    if said.sort == "clock":
        return a_clock(text, label)
    if said.sort == "texts":
        return list(people_of(text))
    if said.sort == "counts":
        return _rows_from(text, was.body.get("rows", {}), land)
    typed = _typed_as(said.name)
    if typed:
        value = measured(text, *typed, label)
        return None if value is None else round(value, 6)
    if text and not text.isdigit():
        raise Refused(f"{label}: not understood: {clean(text)}. Write a whole number.")
    return int(text) if text else None


def _rows_from(text: str, was: Mapping[str, int], land: Tract) -> dict[str, int]:
    """Stems by id, as they stand on the land or in the line. Raises Refused for one that is neither."""
    known = {*was, *land.stems.id.tolist()}
    found: dict[str, int] = {}
    for part in filter(None, (one.strip() for one in text.split(","))):
        stem, _, count = (one.strip() for one in part.partition(":"))
        if stem not in known or (count and not count.isdigit()):
            raise Refused(f"Stems: {clean(part)} is no stem here. {words.ROWS_HINT}")
        found[stem] = int(count or 1)
    return found
