"""Taking things out, bringing folders back, copies."""

import datetime
import tempfile
import zlib
from collections.abc import Callable, Sequence
from pathlib import Path

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from stemward.gate.out import (
    Due,
    NotAFolder,
    calendar,
    folder_unzip,
    folder_zip,
    geojson,
    geopackage,
    stems_csv,
    stems_xlsx,
)
from stemward.gate.pieces import join, split
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.ledger.revisits import works
from stemward.notebook import copies as keeping
from stemward.notebook import merge as merging
from stemward.notebook import worked
from stemward.notebook.changes import Asked, Edit, Refused, change
from stemward.notebook.edits import new_key
from stemward.notebook.models import GivenOut, Kept
from stemward.notebook.models import Tract as Row
from stemward.say.en.revisits import LOOKS, TITLE
from stemward.web import clock
from stemward.web.door import who
from stemward.web.frame import known_of, page
from stemward.web.steps import LAST_COPY
from stemward.web.views.opening import read_or_refuse

FILES: dict[str, tuple[str, str, str]] = {
    "csv": ("stems.csv", "text/csv; charset=utf-8", "Stems as a table (CSV)"),
    "xlsx": ("stems.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
             "Stems, kept things and patches as a workbook (XLSX)"),
    "geojson": ("tract.geojson", "application/geo+json", "Everything with a place (GeoJSON)"),
    "gpkg": ("tract.gpkg", "application/geopackage+sqlite3", "Everything with a place (GeoPackage)"),
    "ics": ("due.ics", "text/calendar; charset=utf-8", "Due dates for a calendar (.ics)"),
}  # fmt: skip


def out(request: HttpRequest, tract_id: str) -> HttpResponse:
    """What can be taken out of a tract, and a folder brought back."""
    return _out(request, tract_id)


def _out(request: HttpRequest, tract_id: str, lines: Sequence[str] = ()) -> HttpResponse:
    files = [(key, f[2]) for key, f in FILES.items()]
    return page(request, "web/out.html", tract_id, "land", files=files, lines=lines, status=422 if lines else 200)


def file(request: HttpRequest, tract_id: str, what: str) -> HttpResponse:
    """One file of a tract."""
    known = known_of(tract_id)
    land = known.land
    if what == "folder":
        return _folder(tract_id)
    if what not in FILES:
        raise Http404
    make: dict[str, Callable[[], bytes]] = {
        "csv": lambda: stems_csv(land),
        "xlsx": lambda: stems_xlsx(land),
        "geojson": lambda: geojson(land, land.origin),
        "gpkg": lambda: geopackage(land, land.origin),
        "ics": lambda: calendar(dues_of(land), clock.now()),
    }
    name, kind, _ = FILES[what]
    return _download(make[what](), kind, name)


def _download(content: bytes, kind: str, name: str) -> HttpResponse:
    answer = HttpResponse(content, content_type=kind)
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer


def _folder(tract_id: str) -> HttpResponse:
    """The tract folder as one zip; what it was is kept, so that it can be merged when it comes back."""
    known = known_of(tract_id)
    texts = join(known.parts, with_base=True)
    plain = join(known.parts)
    body = zlib.compress(folder_zip({k: v for k, v in plain.items() if k != "records.jsonl"}))
    GivenOut.objects.get_or_create(tract_id=tract_id, hash=known.hash, defaults={"at": clock.now(), "texts": body})
    name = new_key(known.parts, "folder", known.land.name)
    return _download(folder_zip(texts, name), "application/zip", f"{name}.zip")


def dues_of(land: Tract) -> list[Due]:
    """Every look back that nobody has made yet at what was treated."""
    patches, plants = {p.id: p.name for p in land.patches}, load().species
    found = []
    for work in works(land, load()):
        plant = plants[work.species].common if work.species in plants else work.species
        for look, on in work.due:
            title = TITLE.format(patch=patches.get(work.patch, work.patch), plants=plant, day=work.day)
            found.append(Due(f"{work.entries[0]}-{look.replace(' ', '-')}@stemward", on, title, LOOKS[look]))
    return found


def merge(request: HttpRequest, tract_id: str) -> HttpResponse:
    """A folder that comes back: its differences, one at a time, each taken over or left. Nothing is overwritten."""
    known = known_of(tract_id)
    if request.method != "POST":
        return redirect("out", tract_id)
    if "differences" in request.POST:
        return _take_over(request, tract_id)
    upload = request.FILES.get("folder")
    try:
        if upload is None:
            raise NotAFolder("Choose the zip file first.")
        texts = folder_unzip(upload.read())
        read_or_refuse(texts)
    except NotAFolder as error:
        return _out(request, tract_id, [str(error), "Nothing was changed."])
    except Refused as refused:
        return _out(request, tract_id, [*refused.lines, "Nothing was changed."])
    base_hash = merging.base_of(texts)
    kept = GivenOut.objects.filter(tract_id=tract_id, hash=base_hash).first()
    base = split(folder_unzip(zlib.decompress(bytes(kept.texts)))) if kept else None
    found = merging.differences(base, known.parts, split(texts))
    token = merging.keep_for_later(tract_id, found)
    return page(request, "web/merge.html", tract_id, "land", found=found, token=token, has_base=base is not None)


def _take_over(request: HttpRequest, tract_id: str) -> HttpResponse:
    found = merging.kept_for(tract_id, request.POST["differences"])
    if found is None:
        raise Refused("The page was open for too long. Bring the folder again.")
    chosen = [one for one in found if request.POST.get(f"take-{one.number}") == "theirs"]
    if not chosen:
        return redirect("land", tract_id)
    edits, stems, added, taken, entries = merging.as_changes(chosen)
    asked = Asked(
        request.POST["command"], tract_id, who(), "merge", {"count": len(chosen)},
        [Edit(*one) for one in edits], stems, added, taken, entries,
    )  # fmt: skip
    change(asked, clock.now())
    return redirect("land", tract_id)


def copies(request: HttpRequest) -> HttpResponse:
    """Copies of the whole notebook; one put back; land that was removed."""
    lines: list[str] = []
    if request.method == "POST":
        try:
            if "bring-back" in request.POST:
                Row.objects.filter(id=request.POST["bring-back"]).update(removed_at=None)
                worked.forget()
                return redirect("copies")
            if not _is_file():
                raise keeping.NoCopy(
                    "This notebook is in PostgreSQL; copies are put back with that database's own tools."
                )
            _restore(request)
            return redirect("opening")
        except keeping.NoCopy as error:
            lines = [str(error), "Nothing was changed."]
    month_ago = clock.now() - datetime.timedelta(days=30)
    removed = [
        {"id": one.id, "at": one.removed_at, "name": _name(one.id)}
        for one in Row.objects.filter(removed_at__gt=month_ago, example=False)
    ]
    last = Kept.objects.filter(name=LAST_COPY).values_list("body", flat=True).first()
    folder = settings.DATA / keeping.FOLDER
    dated = sorted((path.name for path in folder.glob("notebook-*.sqlite3")), reverse=True) if _is_file() else []
    return page(request, "web/copies.html", lines=lines, removed=removed, last=last, dated=dated, folder=folder,
                is_file=_is_file(), status=422 if lines else 200)  # fmt: skip


def _name(tract_id: str) -> str:
    from stemward.notebook.store import piece_of

    return str((piece_of(tract_id, "tract", "") or {}).get("name", tract_id))


def _is_file() -> bool:
    return "sqlite3" in settings.DATABASES["default"]["ENGINE"]


def notebook_file() -> Path:
    """The notebook's own file. Raises NoCopy where it is a database elsewhere."""
    if not _is_file():
        raise keeping.NoCopy("This notebook is in PostgreSQL; copy it with that database's own tools.")
    return Path(settings.DATABASES["default"]["NAME"])


@require_POST
def copy_now(request: HttpRequest) -> HttpResponse:
    """A whole copy, to be kept elsewhere."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "copy.sqlite3"
        keeping.copy_to(notebook_file(), path)
        content = path.read_bytes()
    today = clock.today()
    Kept.objects.update_or_create(name=LAST_COPY, defaults={"body": today.isoformat()})
    return _download(content, "application/vnd.sqlite3", f"stemward-{today}.sqlite3")


def _restore(request: HttpRequest) -> None:
    upload = request.FILES.get("copy")
    if upload is None:
        raise keeping.NoCopy("Choose the copy first.")
    from django.core.management import call_command
    from django.db import connections

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "copy.sqlite3"
        path.write_bytes(upload.read())
        connections.close_all()
        keeping.restore(path, notebook_file(), clock.now())
    call_command("migrate", verbosity=0, interactive=False)
    worked.forget()
