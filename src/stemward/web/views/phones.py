"""On the computer: put the plan on a phone, see what phones brought, settle what is odd."""

import io
import json
import os
import zipfile
from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_GET

from stemward.field import files
from stemward.field.joined import end_phone, new_phone
from stemward.field.receive import receive
from stemward.kinds import Entry, Tract
from stemward.ledger import in_force
from stemward.ledger.stems import unlike
from stemward.notebook.changes import Refused
from stemward.notebook.entries import entry_row
from stemward.notebook.models import Brought, Phone, Photo
from stemward.say.en import phones as words
from stemward.web import clock, share
from stemward.web.door import who
from stemward.web.frame import known_of, page
from stemward.web.tried import tried
from stemward.web.views.land import ask
from stemward.web.views.phone import plan_for_phone, plan_given, read

MOST_SHOWN = 100


def phones(request: HttpRequest, tract_id: str) -> HttpResponse:
    """How a phone gets the plan, which phones have it, what they brought, and what is to be settled."""
    land = known_of(tract_id).land
    made: dict[str, Any] = {}

    def act() -> HttpResponse | None:
        return _act(request, tract_id, land, made)

    answer, lines = tried(request, act)
    if answer is not None:
        return answer
    land = known_of(tract_id).land
    there = Brought.objects.filter(tract_id=tract_id)
    return page(
        request, "web/phones.html", tract_id, "day", lines=lines, made=made, address=address(),
        phones=[_phone(one) for one in _own(tract_id)],
        count=there.filter(state="kept").count(), odd=[_brought(one) for one in _unsettled(tract_id)[:MOST_SHOWN]],
        notes=[_note(entry) for entry in reversed(in_force(land.entries)) if entry.kind == "noted"][:MOST_SHOWN],
        unlike=[_unlike(land, one) for one in unlike_of(land)], files=len(files.names()), version=files.version(),
        shared=share.now(), status=422 if lines else 200,
    )  # fmt: skip


def _act(request: HttpRequest, tract_id: str, land: Tract, made: dict[str, Any]) -> HttpResponse | None:
    """What the page's forms ask for."""
    post = request.POST
    if "new" in post:
        name = " ".join(post.get("name", "").split())[:100] or words.A_PHONE
        link = f"{address()}/phone/#join={new_phone(tract_id, name, clock.now())}"
        made |= {"link": link, "name": name, "code": mark_safe(qr(link))}
        return None
    if "end" in post:
        end_phone(tract_id, post["end"], clock.now())
    elif "settle" in post:
        own = Brought.objects.filter(tract_id=tract_id, id__in=[int(n) for n in post.getlist("settle") if n.isdigit()])
        own.filter(settled_at=None).update(settled_at=clock.now())
    elif "take-back" in post:
        _take_back(request, tract_id, land, post["take-back"])
    elif upload := request.FILES.get("marks"):
        made |= {"read": _carried(tract_id, upload.read())}
        return None
    else:
        raise Refused(words.CHOOSE)
    return redirect("phones", tract_id)


def _take_back(request: HttpRequest, tract_id: str, land: Tract, key: str) -> None:
    """Take back one of two marks that cannot both be. Raises Refused for a mark that is none."""
    if key not in {one for found in unlike_of(land) for one in found.entries}:
        raise Refused(words.NO_SUCH_MARK)
    row = entry_row(
        request.POST["command"], "taken back", clock.there(land), who(), {"why": words.SETTLED}, corrects=key
    )
    ask(request, tract_id, "write down", words={"what": words.SETTLED}, entries=[row])


def _carried(tract_id: str, raw: bytes) -> list[str]:
    """Marks of a file that was carried here: how many were new, known, refused. Raises Refused for no such file."""
    try:
        said = read(raw)
    except (ValueError, RecursionError):
        raise Refused(words.NO_MARKS) from None
    if said.get("tract") not in ("", None, tract_id):
        raise Refused(words.OTHER_LAND)
    rows, states = said["rows"], {"kept": 0, "again": 0, "refused": 0, "wait": 0}
    for first in range(0, len(rows), LOT):
        some = rows[first : first + LOT]
        device = str(said.get("device", ""))[:100]
        for one in receive(tract_id, device, some, None, clock.now(), plan_given(tract_id)):
            states[one.state] += 1
    return [words.READ[state].format(count=count) for state, count in states.items() if count]


LOT = 500
"""Rows of a file taken in one transaction."""


def unlike_of(land: Tract) -> Any:
    """Stems that two phones marked so that not both can be."""
    counts = {str(i): int(n) for i, n in zip(land.stems.id, land.stems.stems, strict=True)}
    return unlike(land.entries, counts)


def _own(tract_id: str) -> Any:
    return Phone.objects.filter(tract_id=tract_id).order_by("-made_at")


def _unsettled(tract_id: str) -> list[Brought]:
    """What is refused or odd and nobody has seen to, the newest first."""
    own = Brought.objects.filter(tract_id=tract_id, settled_at=None, is_odd=True).order_by("-id")
    return list(own[: MOST_SHOWN + 1])


def _phone(one: Any) -> dict[str, Any]:
    seen = clock.time_of_day(one.seen_at) + f", {one.seen_at:%b} {one.seen_at.day}" if one.seen_at else ""
    return {"id": one.id, "name": one.name, "seen": seen, "ended": one.ended_at is not None}


def _brought(one: Brought) -> dict[str, Any]:
    body = one.row.get("body") if isinstance(one.row, dict) else {}
    body = body if isinstance(body, dict) else {}
    rows = body.get("rows") if isinstance(body.get("rows"), dict) else {}
    what = f"{body.get('what', one.row.get('kind', ''))} {', '.join(map(str, list(rows)[:5]))}".strip()
    return {"id": one.id, "device": one.device, "what": what, "at": one.row.get("at", ""), "why": " ".join(one.why),
            "refused": one.state == "refused", "row": json.dumps(one.row, ensure_ascii=False)}  # fmt: skip


def _note(entry: Entry) -> dict[str, Any]:
    body = entry.body
    place = ""
    if "latitude_deg" in body and "longitude_deg" in body:
        place = words.PLACE.format(latitude=f"{body['latitude_deg']:.5f}", longitude=f"{body['longitude_deg']:.5f}")
    return {"at": entry.at[:16].replace("T", " "), "by": entry.by, "what": words.NOTED[body["what"]],
            "stems": ", ".join(body.get("rows", {})), "text": body.get("text", ""), "photo": body.get("photo", ""),
            "place": place}  # fmt: skip


def _unlike(land: Tract, one: Any) -> dict[str, Any]:
    by = {entry.id: entry for entry in land.entries}
    rows = [
        {"id": key, "words": words.MARK.format(device=by[key].device, what=by[key].body["what"], at=by[key].at[11:16])}
        for key in one.entries
    ]
    return {"stem": one.stem, "day": one.day, "rows": rows}


def address() -> str:
    """Under which address a phone reaches this notebook; "" where none does."""
    named = os.environ.get("STEMWARD_ADDRESS", "").rstrip("/")
    if named.startswith("https://"):
        return named
    return share.now().address if share.now() else ""


def qr(text: str) -> str:
    """A code to scan, as SVG without a script or a style of its own."""
    import segno

    out = io.BytesIO()
    segno.make(text, error="m").save(out, kind="svg", scale=5, border=4, xmldecl=False, svgns=True, omitsize=False)
    return out.getvalue().decode()


@require_GET
def plan_file(request: HttpRequest, tract_id: str) -> HttpResponse:
    """The plan as a file to carry to a phone. Raises Http404 while it is worked out."""
    found = plan_for_phone(request, tract_id)
    if found is None:
        raise Http404
    answer = HttpResponse(json.dumps(found, ensure_ascii=False), content_type="application/json")
    answer["Content-Disposition"] = f'attachment; filename="{found["code"]}-phone.json"'
    return answer


@require_GET
def page_zip(_request: HttpRequest, tract_id: str) -> HttpResponse:
    """The phone's page as a folder, for any host with https."""
    known_of(tract_id)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for name in files.names():
            packed.writestr(name, files.content(name))
    answer = HttpResponse(out.getvalue(), content_type="application/zip")
    answer["Content-Disposition"] = 'attachment; filename="stemward-phone-page.zip"'
    return answer


@require_GET
def photo(_request: HttpRequest, tract_id: str, digest: str) -> HttpResponse:
    """A picture from the woods. Raises Http404 where there is none."""
    found = Photo.objects.filter(tract_id=tract_id, digest=digest).values_list("content", flat=True).first()
    if found is None:
        raise Http404
    return HttpResponse(bytes(found), content_type="image/jpeg")
