"""What lies under the drawing of the land: a picture with corners, a GeoTIFF, or map tiles from an address."""

import re
from typing import Any
from urllib.parse import urlsplit

import numpy as np
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_GET

from stemward.gate.foreign import look_at_picture
from stemward.gate.places import to_metres
from stemward.gate.problems import Unreadable
from stemward.notebook import edits
from stemward.notebook.changes import Asked, Edit, Refused, change
from stemward.notebook.models import Background
from stemward.notebook.worked import Known
from stemward.say.en.bring import BACKGROUND
from stemward.say.problems import problem_sentence
from stemward.units import convert
from stemward.web import clock
from stemward.web.door import who
from stemward.web.frame import known_of, page
from stemward.web.middleware import POLICY
from stemward.web.tried import tried

HOST = re.compile(r"[a-z0-9]([a-z0-9.-]*[a-z0-9])?(:[0-9]{1,5})?", re.IGNORECASE)
PARTS = ("{z}", "{x}", "{y}")
Spot = tuple[float, float]


def background_page(request: HttpRequest, tract_id: str) -> HttpResponse:
    """See, give or take away what lies under the drawing."""
    known = known_of(tract_id)

    def act() -> HttpResponse:
        try:
            _kept(request, tract_id, known)
        except Unreadable as unreadable:
            raise Refused(*(problem_sentence(one) for one in unreadable.problems)) from None
        return redirect("background", tract_id)

    done, lines = tried(request, act)
    if done:
        return done
    have = Background.objects.filter(tract_id=tract_id).defer("content").first()
    return page(
        request, "web/background.html", tract_id, "land", lines=lines, have=have.body if have else None,
        origin=known.land.origin, typed=request.POST, status=422 if lines else 200,
    )  # fmt: skip


def _kept(request: HttpRequest, tract_id: str, known: Known) -> None:
    """Raises Refused or Unreadable."""
    asked = request.POST
    if "take-away" in asked:
        Background.objects.filter(tract_id=tract_id).delete()
        return
    if "origin" in asked:
        _put_origin(request, tract_id, known, _two(asked["origin"], BACKGROUND["degrees"]))
        return
    if "tiles" in asked:
        address = asked["tiles"].strip()
        if host_of(address) is None:
            raise Refused(BACKGROUND["address"])
        if known.land.origin is None:
            raise Refused(BACKGROUND["no_origin"])
        _put(tract_id, {"sort": "tiles", "name": address, "address": address})
        return
    upload = request.FILES.get("picture")
    if upload is None:
        raise Refused(BACKGROUND["no_file"])
    picture = look_at_picture(upload.read(), upload.name or "the file")
    if picture.corners and not any(asked.get(name, "").strip() for name in ("upper_left", "lower_right")):
        corners = _in_metres(request, tract_id, known, picture.corners)
    else:
        corners = _typed_corners(request, tract_id, known)
    body = {"sort": "picture", "name": upload.name or "", "corners": [[round(v, 3) for v in spot] for spot in corners]}
    _put(tract_id, body, picture.media, picture.content)


def _put(tract_id: str, body: dict[str, Any], media: str = "", content: bytes = b"") -> None:
    Background.objects.update_or_create(tract_id=tract_id, defaults={"body": body, "media": media, "content": content})


def _put_origin(request: HttpRequest, tract_id: str, known: Known, degrees: Spot) -> None:
    body = edits.body_of(known.parts, "tract") or {}
    origin = {"lat": degrees[0], "lon": degrees[1]}
    change(
        Asked(request.POST["command"], tract_id, who(), "put", {"what": "where the land lies"},
              [Edit("tract", "", body | {"origin": origin})]), clock.now(),
    )  # fmt: skip


def _in_metres(request: HttpRequest, tract_id: str, known: Known, degrees: tuple[Spot, ...]) -> list[Spot]:
    """Corners (longitude, latitude) as metres; a tract with nothing on it yet takes the lower left for its origin."""
    origin = known.land.origin
    if origin is None:
        if edits.mapped(known.parts):
            raise Refused(BACKGROUND["no_origin"])
        origin = round(degrees[3][1], 6), round(degrees[3][0], 6)
        _put_origin(request, tract_id, known, origin)
    lon, lat = np.array(degrees).T
    x, y = to_metres(lon, lat, origin)
    return list(zip(x.tolist(), y.tolist(), strict=True))


def _typed_corners(request: HttpRequest, tract_id: str, known: Known) -> list[Spot]:
    asked = request.POST
    unit = asked.get("corners_in", "ft")
    example = BACKGROUND["degrees"] if unit == "degrees" else BACKGROUND["east_north"]
    first, last = (_two(asked.get(name, ""), example) for name in ("upper_left", "lower_right"))
    turned = _two(asked["upper_right"], example) if asked.get("upper_right", "").strip() else None
    if unit == "degrees":
        spots = [(lon, lat) for lat, lon in (first, turned or (first[0], last[1]), last)]
        spots.append((spots[0][0] + spots[2][0] - spots[1][0], spots[0][1] + spots[2][1] - spots[1][1]))
        return _in_metres(request, tract_id, known, tuple(spots))
    scale = 1.0 if unit == "m" else convert(1.0, "ft", "m")
    (ax, ay), (bx, by), (cx, cy) = first, turned or (last[0], first[1]), last
    if (bx - ax) * (cy - by) - (by - ay) * (cx - bx) == 0:
        raise Refused(BACKGROUND["flat"])
    return [(x * scale, y * scale) for x, y in ((ax, ay), (bx, by), (cx, cy), (ax + cx - bx, ay + cy - by))]


def _two(typed: str, example: str) -> Spot:
    found = re.fullmatch(r"\s*(-?\d+(?:\.\d+)?)\s*[,; ]\s*(-?\d+(?:\.\d+)?)\s*", typed)
    if not found:
        raise Refused(BACKGROUND["not_understood"].format(typed=typed.strip()[:40] or "nothing", example=example))
    first, second = float(found[1]), float(found[2])
    if example == BACKGROUND["degrees"] and not (abs(first) <= 90 and abs(second) <= 180):
        raise Refused(BACKGROUND["not_understood"].format(typed=typed.strip()[:40], example=example))
    return first, second


def host_of(address: str) -> str | None:
    """Scheme and host of an address of tiles that can be used; None for any other."""
    if len(address) > 300 or not all(part in address for part in PARTS) or re.search(r"[\s;,'\"<>\\]", address):
        return None
    try:
        parts = urlsplit(address)
    except ValueError:
        return None
    if parts.scheme not in ("http", "https") or not HOST.fullmatch(parts.netloc):
        return None
    return f"{parts.scheme}://{parts.netloc}"


def shown(tract_id: str, origin: Spot | None) -> dict[str, Any] | None:
    """What the drawing is told of its background."""
    from django.urls import reverse

    have = Background.objects.filter(tract_id=tract_id).defer("content").first()
    if have is None:
        return None
    if have.body["sort"] == "picture":
        return {"url": reverse("background-picture", args=[tract_id]), "corners": have.body["corners"]}
    if origin is None:
        return None
    # Metres for each degree at the origin: within a kilometre of it the grid differs from this by under 0.2 m.
    step = 0.001
    lat, lon = origin
    x, y = to_metres([lon + step, lon], [lat, lat + step], origin)
    east, north = float(x[0]) / step, float(y[1]) / step
    return {"tiles": have.body["address"], "lat": lat, "lon": lon, "east": east, "north": north}


def with_policy(answer: HttpResponse, tract_id: str) -> HttpResponse:
    """A page that may show pictures of the one host whose tiles the person asked for."""
    have = Background.objects.filter(tract_id=tract_id).defer("content").first()
    host = host_of(have.body["address"]) if have and have.body["sort"] == "tiles" else None
    if host:
        answer["Content-Security-Policy"] = POLICY.replace("img-src 'self'", f"img-src 'self' {host}")
    return answer


@require_GET
def background_picture(_request: HttpRequest, tract_id: str) -> HttpResponse:
    """The picture itself."""
    known_of(tract_id)
    have = Background.objects.filter(tract_id=tract_id).first()
    if have is None or not have.media:
        raise Http404
    return HttpResponse(bytes(have.content), content_type=have.media)
