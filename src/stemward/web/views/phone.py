"""What a phone asks for: its page, the plan, and to take its rows. A word of its own lets each phone in."""

import datetime
import json
import uuid
from collections.abc import Callable
from pathlib import Path
from typing import Any

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_GET, require_POST

from stemward.field import files
from stemward.field.bundle import bundle
from stemward.field.joined import phone_of
from stemward.field.receive import put_photo, receive
from stemward.notebook import worked
from stemward.notebook.changes import Asked, Refused, change
from stemward.notebook.entries import ISSUED, entry_row
from stemward.notebook.models import Kept, Phone
from stemward.web import clock, share, walked
from stemward.web.door import who
from stemward.web.frame import known_of, units_of
from stemward.web.views.plan import issue

WORD = "X-Stemward-Phone"
MOST_BYTES = 2 * 1024 * 1024
"""A request of a phone; fifty rows have 30 kB and a photo under 300: engineering guess."""
WAIT_S = 8.0
"""How long a phone's request waits for a plan that is being worked out."""


@require_GET
def page_file(_request: HttpRequest, name: str = files.FIRST) -> HttpResponse:
    """A file of the phone's page, which holds nothing of anyone. Raises Http404 for no such file."""
    try:
        raw = files.content(name)
    except KeyError:
        raise Http404 from None
    kind = next(kind for suffix, kind in files.TYPES.items() if name.endswith(suffix))
    answer = HttpResponse(raw, content_type=kind)
    answer["Cache-Control"] = "no-cache"
    return answer


@require_GET
def authority(_request: HttpRequest) -> HttpResponse:
    """The authority that vouches for this computer on the local network. Raises Http404 where there is none."""
    found = share.authority(Path(settings.DATA))
    if found is None:
        raise Http404
    return HttpResponse(found, content_type="application/x-x509-ca-cert")


def joined(act: Callable[[HttpRequest, Phone], HttpResponse]) -> Callable[[HttpRequest], HttpResponse]:
    """Lets in who brings a phone's word."""

    def answer(request: HttpRequest) -> HttpResponse:
        phone = phone_of(request.headers.get(WORD, ""), clock.now())
        if phone is None:
            return JsonResponse({"why": "This phone is not known here."}, status=403)
        return act(request, phone)

    return answer


@require_GET
@joined
def plan(request: HttpRequest, phone: Phone) -> HttpResponse:
    """The plan as a phone takes it along; 503 while it is worked out."""
    found = plan_for_phone(request, phone.tract_id)
    return JsonResponse({"why": "The plan is being worked out."}, status=503) if found is None else JsonResponse(found)


def plan_for_phone(request: HttpRequest, tract_id: str) -> dict[str, Any] | None:
    """The bundle of a tract's plan as it is now, and that phones have this one; None while it is worked out."""
    land = known_of(tract_id).land
    drawn = worked.plan_of(tract_id, clock.today(land), WAIT_S)
    if drawn is None:
        return None
    Kept.objects.update_or_create(name=f"phone plan {tract_id}", defaults={"body": drawn["code"]})
    if drawn["code"] not in {e.body.get("code") for e in land.entries if e.kind == ISSUED}:
        # Its numbers go into the woods, so its sheets are kept like those of a printed plan.
        row = entry_row(str(uuid.uuid4()), ISSUED, clock.there(land), who(), issue(drawn))
        words = {"what": f"plan {drawn['code']} put on a phone"}
        change(Asked(str(uuid.uuid4()), tract_id, who(), "write down", words, entries=[row]), clock.now())
    roles = tuple(person.role for person in land.people)
    return bundle(drawn, tract_id, land.origin, roles, clock.now(), units_of(request), walked.taken(tract_id))


@csrf_exempt
@require_POST
@joined
def rows(request: HttpRequest, phone: Phone) -> HttpResponse:
    """Take rows; an answer for each. 400 for what is no such request, 409 where the land takes nothing."""
    try:
        said = read(request.body)
        sent_at = datetime.datetime.fromisoformat(str(said["sent_at"]))
        if sent_at.tzinfo is None:
            raise ValueError("a moment has a zone")
    except (ValueError, KeyError, RecursionError):
        return JsonResponse({"why": "This is not what a phone sends."}, status=400)
    now = clock.now()
    try:
        answers = receive(phone.tract_id, str(said.get("device", ""))[:100] or phone.name, said["rows"], sent_at, now,
                          plan_given(phone.tract_id))  # fmt: skip
    except Refused as refused:
        return JsonResponse({"why": refused.lines[0]}, status=409)
    return JsonResponse(
        {"form": "stemward phone answers", "now": now.isoformat(), "off_s": (sent_at - now).total_seconds(),
         "answers": [{"id": one.id, "state": one.state, "why": one.why} for one in answers]}
    )  # fmt: skip


def read(raw: bytes) -> dict[str, Any]:
    """Rows as a phone sends or saves them. Raises ValueError for anything else."""
    if len(raw) > MOST_BYTES:
        raise ValueError("too large")
    said = json.loads(raw)
    if (
        not isinstance(said, dict)
        or said.get("form") != "stemward phone rows"
        or not isinstance(said.get("rows"), list)
    ):
        raise ValueError("no rows of a phone")
    return said


def plan_given(tract_id: str) -> str:
    """Code of the plan that phones got last, or ""."""
    return str(Kept.objects.filter(name=f"phone plan {tract_id}").values_list("body", flat=True).first() or "")


@csrf_exempt
@require_POST
@joined
def photo(request: HttpRequest, phone: Phone) -> HttpResponse:
    """Keep a small picture."""
    try:
        return JsonResponse({"digest": put_photo(phone.tract_id, request.body, clock.now())})
    except Refused as refused:
        return JsonResponse({"why": refused.lines[0]}, status=400)
