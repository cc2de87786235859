"""The pages, asked in-process: each answers, words stay words, strangers stay out."""

import io
import json
import re
import time

import pytest
from django.test import Client, override_settings
from django.urls import reverse
from django.urls.converters import IntConverter

from notebook.some import name
from stemward.gate.pieces import Parts, Piece
from stemward.notebook.changes import Asked, begin
from stemward.notebook.models import Change, Tract
from stemward.web.door import COOKIE, door
from stemward.web.urls import urlpatterns
from web.conftest import NOW

OF_A_TRACT = [
    "", "about", "patch", "patch/meadow", "patch/slope/plots", "stems", "stems/rows", "plan.json", "import", "ways",
    "ways/meadow/Frangula alnus/standing", "ways/meadow/Frangula alnus/standing?sort=work&all=1",
    "ways/rim/Elaeagnus umbellata/cut", "findings", "mix", "packet", "day", "after", "shelf", "shelf/new",
    "shelf/imazapyr-2lb/label", "shelf/imazapyr-2lb/jug", "shelf/imazapyr-2lb/edit", "changes", "out", "step",
    "piece/person/owner", "piece/person", "piece/vessel", "piece/measure", "piece/calibration", "piece/spared/oak-1",
    "after/write", "after/other", "after/day/2025-09-20", "after/correct/e1", "labels", "permits",
    "first/2", "first/3", "first/4", "first/5", "first/6", "first/7", "first/8",
]  # fmt: skip
WITHOUT = [
    "/", "/sums", "/sums/stems", "/sums/bottle", "/sums/near", "/sums/plant", "/sums/back", "/settings", "/copies",
    "/bring", "/first",
]  # fmt: skip


def ready(client, tract: str) -> None:
    """Wait until the plan is worked out."""
    for _ in range(200):
        if b"Working it out" not in client.get(f"/land/{tract}/ways").content:
            return
        time.sleep(0.1)
    raise AssertionError("the plan was not worked out")


@pytest.mark.parametrize("address", WITHOUT)
def test_each_page_without_a_tract_answers(client, address):
    """Every page outside of a tract is there, with its policy."""
    answer = client.get(address)
    assert answer.status_code == 200
    assert "script-src 'self'" in answer.headers["Content-Security-Policy"]


def test_each_page_of_a_tract_answers(client, hollow):
    """Every page of the example is there and says no forbidden word."""
    ready(client, hollow)
    for address in OF_A_TRACT:
        answer = client.get(f"/land/{hollow}/{address}")
        assert answer.status_code == 200, address
        text = re.sub(r"<[^>]+>|&[a-z#0-9]+;", " ", answer.content.decode())
        for word in ("safe", "legal", "approved", "compliant", "violation", "Traceback", "None,"):
            assert not re.search(rf"\b{word}\b", text), (address, word)


def test_no_page_has_script_or_style_of_its_own(client, hollow):
    """Nothing inline, so that the policy can be strict."""
    ready(client, hollow)
    for address in OF_A_TRACT:
        text = client.get(f"/land/{hollow}/{address}").content.decode()
        assert not re.search(r"<style|\sstyle=|\son[a-z]+=|<script(?![^>]*src=)|javascript:", text), address


@pytest.mark.parametrize(
    ("query", "words"),
    [
        ("stems?how=cut+stump&sizes=2+in,4+in&count=10", "In all about"),
        ("bottle?amount=24+fl+oz&ratio=1:3", "The two readings differ"),
        ("near?ingredient=imazapyr&how=hack+and+squirt&distance=22+ft&form=salt&kind=other", "shared roots"),
        ("plant?plant=glossy+buckthorn", "Frangula alnus"),
        ("back?seen=stump&seen=late", "dries within minutes"),
    ],
)
def test_quick_sums_need_no_tract(client, query, words):
    """Each sum answers from what stands in its address."""
    answer = client.get(f"/sums/{query}")
    assert answer.status_code == 200
    assert words in answer.content.decode()


@pytest.mark.parametrize(
    "query", ["stems?sizes=big", "stems?sizes=2+in&count=x", "bottle?amount=24", "plant?plant=buckthorm"]
)
def test_a_sum_that_is_not_understood_says_so(client, query):
    """What was typed stays, with a sentence above it."""
    answer = client.get(f"/sums/{query}")
    assert answer.status_code == 422
    assert "Not understood" in answer.content.decode()


def test_a_stranger_is_kept_out(client, hollow):
    """Without the cookie of the link there is a closed door; with a used link as well."""
    stranger = Client(HTTP_HOST="127.0.0.1")
    for address in ("/", f"/land/{hollow}/", f"/land/{hollow}/out/folder"):
        answer = stranger.get(address)
        assert answer.status_code == 403
        assert b"Quarry" not in answer.content
    word = door.new_link()
    assert stranger.get(f"/enter/{word}").status_code == 302
    assert stranger.get("/").status_code == 200
    assert Client(HTTP_HOST="127.0.0.1").get(f"/enter/{word}").status_code == 403


def test_the_cookies_are_our_own_and_strict(client):
    """The key is hidden from scripts and never sent from elsewhere."""
    visitor = Client(HTTP_HOST="127.0.0.1")
    answer = visitor.get(f"/enter/{door.new_link()}")
    cookie = answer.cookies[COOKIE]
    assert (cookie["httponly"], cookie["samesite"]) == (True, "Strict")
    form = visitor.get("/").cookies["stemward_form"]
    assert form["samesite"] == "Strict"


def test_another_host_is_not_answered(client):
    """A page elsewhere that points its own name at this computer gets nothing."""
    answer = client.get("/", HTTP_HOST="elsewhere.example")
    assert answer.status_code == 400


def test_a_form_from_elsewhere_changes_nothing(hollow):
    """Without the form's token a post is refused with a sentence."""
    outsider = Client(HTTP_HOST="127.0.0.1", enforce_csrf_checks=True)
    outsider.cookies[COOKIE] = door.key
    answer = outsider.post(f"/land/{hollow}/remove")
    assert answer.status_code == 403
    assert b"Nothing was changed" in answer.content
    assert Tract.objects.get(id=hollow).removed_at is None


def test_nothing_here_is_a_page_too(client, hollow):
    """Addresses that name nothing say so."""
    for address in (f"/land/{name()}/", f"/land/{hollow}/patch/moon", f"/land/{hollow}/piece/moon", "/moon",
                    f"/land/{hollow}/out/exe", f"/land/{hollow}/shelf/moon/label"):  # fmt: skip
        assert client.get(address).status_code == 404, address


def test_a_tract_that_is_gone_is_nothing_here_everywhere(client):
    """Every address of a tract that was removed answers with the sentence, whatever is asked of it first."""
    gone = [reverse(one.name, kwargs=_filled(one)) for one in urlpatterns if "tract_id" in one.pattern.converters]
    assert len(gone) > 70
    for address in gone:
        for answer in (client.get(address), client.post(address, {"command": name()})):
            assert answer.status_code in (404, 405), address
            assert answer.status_code == 405 or b"Nothing here" in answer.content, address


def _filled(one) -> dict:
    """Something for every part of an address."""
    return {
        part: name() if part == "tract_id" else 1 if isinstance(kind, IntConverter) else "x"
        for part, kind in one.pattern.converters.items()
    }


NAME = '<script>alert(1)</script> & "Fence"'


def test_a_script_in_a_name_stays_words(client, hollow):
    """Names of land, patch, jug and notes are shown as words everywhere."""
    client.post(f"/land/{hollow}/about", {"command": name(), "name": NAME})
    client.post(f"/land/{hollow}/patch/meadow", {"command": name(), "name": NAME, "places-asked": "1", "places": "wet"})
    client.post(f"/land/{hollow}/shelf/imazapyr-2lb/edit", {"command": name(), "name": NAME})
    ready(client, hollow)
    for address in OF_A_TRACT:
        text = client.get(f"/land/{hollow}/{address}").content.decode()
        if not address.endswith((".json", "rows")):
            assert "<script>alert" not in text, address
    assert "&lt;script&gt;alert(1)" in client.get(f"/land/{hollow}/").content.decode()
    assert client.get(f"/land/{hollow}/packet.pdf").status_code == 200


def test_counting_and_taking_back(client, hollow):
    """Counted plants come to the land, undo takes them, redo brings them."""
    url = f"/land/{hollow}/patch/yard"
    answer = client.post(f"{url}/count", {"command": name(), "species": "red maple", "1to3": "12", "height": "chest"})
    assert answer.status_code == 302
    assert "red maple" in client.get(url).content.decode()
    client.post(f"/land/{hollow}/undo", {"command": name()})
    assert "red maple" not in client.get(url).content.decode().partition("Count by size")[0]
    client.post(f"/land/{hollow}/redo", {"command": name()})
    assert "red maple" in client.get(url).content.decode().partition("Count by size")[0]


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"species": "", "under1": "3"}, "Which plant"),
        ({"species": "buckthorm", "under1": "3"}, "No plant of the name"),
        ({"species": "red maple", "under1": "many"}, "Not understood: many"),
        ({"species": "red maple"}, "No number was given"),
        ({"species": "red maple", "under1": "-3"}, "Not understood: -3"),
    ],
)
def test_a_count_that_is_not_understood_changes_nothing(client, hollow, typed, words):
    """A sentence says what was not understood, and the trace stays."""
    before = Change.objects.count()
    answer = client.post(f"/land/{hollow}/patch/yard/count", {"command": name(), **typed})
    assert answer.status_code == 422
    text = answer.content.decode()
    assert words in text
    assert "Nothing was changed" in text
    assert Change.objects.count() == before


def test_a_way_is_taken_and_left_to_the_rule(client, hollow):
    """Taking a way writes a choice; leaving it to the rule takes it away."""
    url = f"/land/{hollow}/ways/slope/Acer rubrum/standing"
    client.post(f"{url}/take", {"command": name(), "how": "cut only"})
    ready(client, hollow)
    said = client.get(url).content.decode().partition("<strong>Chosen:</strong>")[2]
    assert "Cut only" in said.partition("</p>")[0]
    client.post(f"{url}/take", {"command": name(), "leave-to-rule": "1"})
    ready(client, hollow)
    assert "Not chosen yet" in client.get(url).content.decode()


def test_what_if_shows_was_and_is_and_keeps_nothing(client, hollow):
    """Half the strength shows half the herbicide beside what it was; the tract stays."""
    before = Tract.objects.get(id=hollow).version
    url = f"/land/{hollow}/ways/slope/Acer rubrum/standing/if"
    text = client.get(url, {"concentration": "25 %"}).content.decode()
    cells = dict(re.findall(r'<th scope="row">([^<]+)</th><td>(?:<[^>]+>)?([^<]*)', text))
    assert cells["Herbicide"] not in ("", "the same")
    assert 'class="was"' in text
    assert Tract.objects.get(id=hollow).version == before
    assert client.get(url, {"concentration": "lots"}).status_code == 409


def test_what_if_tries_another_tool_day_ring_or_bottle(client, hollow):
    """Each field of the form alone makes a row that says what was and what would be."""
    ready(client, hollow)
    page = f"/land/{hollow}/ways/meadow/Frangula alnus/standing"
    assert 'name="tool"' in client.get(page).content.decode()
    for field, value in (("tool", "backpack"), ("as_of", "2026-05-10"),
                         ("product", "glyphosate-4lb-wet")):  # fmt: skip
        assert 'class="was"' in client.get(f"{page}/if", {field: value}).content.decode(), field
    thick = f"/land/{hollow}/ways/rim/Elaeagnus umbellata/standing/if"  # stumps up to 3 in are wetted whole
    assert 'class="was"' in client.get(thick, {"ring": "1 in"}).content.decode()


def test_the_label_is_read_by_hand(client, hollow):
    """Typed facts are kept with page and reader; not there needs the pages looked at."""
    url = f"/land/{hollow}/shelf/imazapyr-2lb/label"
    answer = client.post(url, {"command": name(), "page": "7", "read_by": "owner", "says-strongest-mix": "33 %",
                               "says-site": ["woods", "non-crop"]})  # fmt: skip
    assert answer.status_code == 302
    from stemward.web.frame import known_of

    facts = known_of(hollow).land.product("imazapyr-2lb").facts
    strongest = [f for f in facts if f.kind == "strongest mix" and f.typed == "33 %"]
    assert (strongest[0].value, strongest[0].page, strongest[0].reading) == (pytest.approx(0.33), "7", "read")
    assert {f.value for f in facts if f.kind == "site"} >= {"woods", "non-crop"}

    refused = client.post(url, {"command": name(), "standing-most-per-year": "not found"})
    assert refused.status_code == 422
    assert "which pages were looked at" in refused.content.decode()
    refused = client.post(url, {"command": name(), "page": "1", "says-strongest-mix": "strong"})
    assert refused.status_code == 422


def test_a_folder_goes_out_is_changed_and_merged(client, hollow):
    """Given out, changed elsewhere, brought back: one difference, taken over, and nothing else."""
    from stemward.gate.out import folder_unzip, folder_zip

    texts = folder_unzip(client.get(f"/land/{hollow}/out/folder").content)
    texts["tract.toml"] = texts["tract.toml"].replace('name = "Quarry rim"', 'name = "North rim"')
    back = io.BytesIO(folder_zip(texts))
    back.name = "back.zip"
    shown = client.post(f"/land/{hollow}/merge", {"folder": back, "command": name()}).content.decode()
    assert "1 difference" in shown
    assert "changed there" in shown
    token = re.search(r'name="differences" value="([^"]+)"', shown)[1]
    client.post(f"/land/{hollow}/merge", {"command": name(), "differences": token, "take-0": "theirs"})
    assert "North rim" in client.get(f"/land/{hollow}/").content.decode()


def test_a_folder_that_was_sent_becomes_a_tract(client):
    """A zip of the example becomes a tract of its own; a broken one says where."""
    from stemward.gate import demo
    from stemward.gate.out import folder_zip

    raw = io.BytesIO(folder_zip(demo.texts(), "quarry-hollow"))
    raw.name = "q.zip"
    answer = client.post("/bring", {"folder": raw, "command": name()})
    assert answer.status_code == 302
    broken = demo.texts()
    broken["stems.csv"] = broken["stems.csv"].replace("glossy buckthorn", "buckthorm", 1)
    raw = io.BytesIO(folder_zip(broken))
    raw.name = "q.zip"
    answer = client.post("/bring", {"folder": raw, "command": name()})
    assert answer.status_code == 422
    assert "stems.csv, line 2" in answer.content.decode()
    assert Tract.objects.count() == 1


def test_the_packet_is_printed_and_says_when_it_changed(client, hollow):
    """Printing writes the code down; a change of the land after it says so."""
    ready(client, hollow)
    answer = client.post(f"/land/{hollow}/packet.pdf", {"command": name(), "paper": "letter"})
    assert answer.content.startswith(b"%PDF")
    assert "nothing is different since" in client.get(f"/land/{hollow}/packet").content.decode()
    client.post(
        f"/land/{hollow}/patch/rim", {"command": name(), "name": "North rim", "places-asked": "1", "places": "non-crop"}
    )
    ready(client, hollow)
    assert "Changed since" in client.get(f"/land/{hollow}/packet").content.decode()


def test_an_upload_that_is_too_large_says_so(client, hollow):
    """A file over the limit is refused with a sentence and nothing is kept of it."""
    with override_settings(DATA_UPLOAD_MAX_MEMORY_SIZE=1000):
        answer = client.post(f"/land/{hollow}/draw", b"x" * 5000, content_type="application/json")
    assert answer.status_code == 413
    assert "larger than" in answer.content.decode()


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"[]",
        b"{",
        b'{"what": "patch"}',
        b'{"command": "x", "what": "patch", "form": "polygon", "rings": [[["a", 1]]]}',
        b'{"command": "x", "what": "patch", "form": "polygon", "rings": []}',
    ],
)
def test_a_drawing_that_is_not_understood_changes_nothing(client, hollow, body):
    """Broken drawings get a sentence."""
    answer = client.post(f"/land/{hollow}/draw", body, content_type="application/json")
    assert answer.status_code == 400
    assert "Nothing was changed" in json.loads(answer.content)["sentence"]


def test_a_drawing_that_crosses_itself_is_refused(client, hollow):
    """The reader of folders judges drawings too."""
    ring = [[0, 0], [100, 100], [100, 0], [0, 90]]
    body = {"command": name(), "what": "patch", "form": "polygon", "rings": [ring]}
    answer = client.post(f"/land/{hollow}/draw", json.dumps(body), content_type="application/json")
    assert answer.status_code == 422
    assert "crosses itself" in json.loads(answer.content)["sentence"]


def test_cells_changed_elsewhere_are_not_overwritten(client, hollow):
    """A cell that is not what the sheet showed any more is refused and named."""
    cell = {"id": "b1", "column": "diameter_in", "value": "3", "was": "2"}
    asked = {"command": name(), "cells": [cell], "rows": [], "delete": []}
    first = client.post(f"/land/{hollow}/stems/edit", json.dumps(asked), content_type="application/json")
    assert first.status_code == 200
    asked["command"] = name()
    again = client.post(f"/land/{hollow}/stems/edit", json.dumps(asked), content_type="application/json")
    assert again.status_code == 422
    assert "changed elsewhere meanwhile, to 3" in json.loads(again.content)["sentence"]


def test_a_fault_of_the_program_is_a_page_without_its_inside(client, hollow, monkeypatch):
    """When something breaks the person reads a sentence, not a traceback."""
    from stemward.web.views import land as view

    monkeypatch.setattr(view, "patch_words", lambda *_: 1 / 0)
    client.raise_request_exception = False
    answer = client.get(f"/land/{hollow}/")
    assert answer.status_code == 500
    assert "the fault is the program" in answer.content.decode()
    assert "ZeroDivision" not in answer.content.decode()


def test_plots_are_laid_and_tallied(client, hollow):
    """A sheet to carry, a tally kept, a plot of 0 counted, a wrong one refused."""
    url = f"/land/{hollow}/patch/slope/plots"
    assert client.get(f"{url}/sheet.pdf", {"count": "6", "how": "grid"}).content.startswith(b"%PDF")
    assert client.get(f"{url}/plots.gpx").status_code == 409
    kept = client.post(url, {"command": name(), "plot": "99", "species": "red maple", "size": "0.01 acre"})
    assert kept.status_code == 302
    twice = client.post(url, {"command": name(), "plot": "99", "species": "red maple", "size": "0.01 acre"})
    assert twice.status_code == 422
    assert client.post(url, {"command": name(), "plot": "1", "species": "x", "size": "big"}).status_code == 422


@pytest.mark.parametrize(("profile", "silenced"), [("shared", 0), ("loopback", 4)])
def test_deployment_checks_pass(profile, silenced, tmp_path):
    """The shared profile has nothing to say; the loopback one silences exactly the four that need https."""
    import os
    import subprocess
    import sys

    code = "import django; django.setup(); from django.conf import settings; from django.core.management import call_command; call_command('check', deploy=True, fail_level='WARNING'); print(len(getattr(settings, 'SILENCED_SYSTEM_CHECKS', ())))"  # noqa: E501
    env = {**os.environ, "STEMWARD_PROFILE": profile, "STEMWARD_DATA": str(tmp_path),
           "DJANGO_SETTINGS_MODULE": "stemward.web.settings"}  # fmt: skip
    done = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip().splitlines()[-1] == str(silenced)


def test_a_shared_notebook_lets_nobody_in_yet(client, hollow):
    """Without accounts the shared profile is closed, key or no key."""
    with override_settings(PROFILE="shared"):
        answer = client.get(f"/land/{hollow}/")
    assert answer.status_code == 403
    assert "needs accounts" in answer.content.decode()


def test_a_long_import_tells_how_far_it_has_come(client, hollow, monkeypatch):
    """While stems are written, another request is told how many of how many."""
    from stemward.notebook import store
    from stemward.web import bring

    seen, asked = [], f"/land/{hollow}/import/far?of=last"

    def watched(token):
        tell = teller(token)

        def telling(*far):
            tell(*far)
            seen.append(client.get(asked).json())

        return telling

    teller = bring.teller
    monkeypatch.setattr(bring, "teller", watched)
    monkeypatch.setattr(store, "LOT", 10)
    rows = "".join(f"q{n},{3 + n % 3},{80 + n},{60 + n}\n" for n in range(25))
    upload = io.BytesIO(b"Tag,DBH,x,y\n" + rows.encode())
    upload.name = "list.csv"
    command = name()
    client.post(f"/land/{hollow}/import", {"command": command, "file": upload})
    columns = {"column-id": "Tag", "column-size": "DBH", "column-x_m": "x", "column-y_m": "y"}
    fixed = {"fixed-patch": "meadow", "fixed-species": "glossy buckthorn", "fixed-unit": "in"}
    answer = client.post(f"/land/{hollow}/import", {"command": "last", "token": command, **columns, **fixed})
    assert "25 brought in" in answer.content.decode()
    assert [one["done"] for one in seen] == [0, 10, 20, 25]
    assert seen[0]["words"] == "Comparing 25 rows with each other and with what is here"
    assert seen[-1] == {"words": "Writing: 25 of 25 stems", "done": 25, "of": 25}


def test_an_outline_for_a_counted_patch_takes_what_was_counted_along(client, hollow):
    """A patch without a map gets one: its counted plants stand in it, and what is kept is as far away as was said."""
    page = f"/land/{hollow}/patch"
    before = {*client.get(f"/land/{hollow}/plan.json").json()["stems"]["id"]}
    client.post(page, {"command": name(), "name": "Fence row", "places-asked": "1", "places": "woods"})
    counted = {"command": name(), "species": "glossy buckthorn", "to1": "", "to3": "7", "height": "head"}
    names = re.findall(r'id="c-([^"]+)"', client.get(f"{page}/fence-row").content.decode())
    counted[names[1]] = "7"
    assert client.post(f"{page}/fence-row/count", counted).status_code == 302
    near = {"command": name(), "kept": "tree", "far-tree": "30 ft", "kept-plant": "bur oak"}
    assert client.post(f"{page}/fence-row/kept", near).status_code == 302

    ring = [[400, 100], [440, 100], [440, 140], [400, 140]]
    asked = {"command": name(), "what": "patch", "form": "polygon", "id": "fence-row", "rings": [ring]}
    answer = client.post(f"/land/{hollow}/draw", json.dumps(asked), content_type="application/json")
    assert answer.status_code == 200, answer.content
    land = client.get(f"/land/{hollow}/plan.json").json()
    at = [n for n, key in enumerate(land["stems"]["id"]) if key not in before]
    spots = {(land["stems"]["x"][n], land["stems"]["y"][n]) for n in at}
    assert spots == {(420.0, 120.0)}
    oak = next(one for one in land["spared"] if one["id"].startswith("fence-row-tree"))
    assert oak["rings"][0][0] == [420.0, round(120 + 30 * 0.3048, 2)]
    assert next(p for p in land["all"] if p["id"] == "fence-row")["drawn"]

    client.post(f"/land/{hollow}/undo", {"command": name()})
    assert not next(p for p in client.get(f"/land/{hollow}/plan.json").json()["all"] if p["id"] == "fence-row")["drawn"]


def a_picture() -> io.BytesIO:
    """A small green picture."""
    from PIL import Image

    out = io.BytesIO()
    Image.new("RGB", (8, 6), (10, 200, 30)).save(out, "PNG")
    out.seek(0)
    out.name = "green.png"
    return out


def test_a_picture_is_laid_under_the_drawing(client, hollow):
    """Given with two corners in feet it lies there; three corners turn it; it is served as a picture and taken away."""
    page = f"/land/{hollow}/background"
    answer = client.post(page, {"command": name(), "picture": a_picture()})
    assert answer.status_code == 422
    assert "Not understood: nothing" in answer.content.decode()
    fields = {"corners_in": "ft", "upper_left": "0, 100", "lower_right": "200, 0"}
    assert client.post(page, {"command": name(), "picture": a_picture(), **fields}).status_code == 302
    told = client.get(f"/land/{hollow}/plan.json").json()["background"]
    assert told["corners"] == [[0, 30.48], [60.96, 30.48], [60.96, 0], [0, 0]]
    served = client.get(told["url"])
    assert (served["Content-Type"], served["X-Content-Type-Options"]) == ("image/jpeg", "nosniff")

    fields = {"corners_in": "m", "upper_left": "0, 0", "upper_right": "0, 10", "lower_right": "20, 10"}
    client.post(page, {"command": name(), "picture": a_picture(), **fields})
    told = client.get(f"/land/{hollow}/plan.json").json()["background"]
    assert told["corners"] == [[0, 0], [0, 10], [20, 10], [20, 0]]
    flat = {"corners_in": "m", "upper_left": "0, 0", "lower_right": "20, 0"}
    assert client.post(page, {"command": name(), "picture": a_picture(), **flat}).status_code == 422

    client.post(page, {"take-away": "1"})
    assert client.get(f"/land/{hollow}/plan.json").json()["background"] is None
    assert client.get(told["url"]).status_code == 404


def test_degrees_need_to_know_where_the_land_lies(client, hollow):
    """A tract in metres of its own says so; with a latitude and longitude given, corners in degrees are turned."""
    page = f"/land/{hollow}/background"
    fields = {"corners_in": "degrees", "upper_left": "43.001, -90", "lower_right": "43, -89.999"}
    client.post(f"/land/{hollow}/undo", {"command": name()})
    answer = client.post(page, {"command": name(), "picture": a_picture(), **fields})
    assert "is not known yet" in answer.content.decode()
    assert client.post(page, {"command": name(), "origin": "430, 2"}).status_code == 422
    assert client.post(page, {"command": name(), "origin": "43, -90"}).status_code == 302
    assert client.post(page, {"command": name(), "picture": a_picture(), **fields}).status_code == 302
    corners = client.get(f"/land/{hollow}/plan.json").json()["background"]["corners"]
    # A degree of latitude at 43 degrees is 111.1 km, one of longitude 81.5 km (WGS 84, by series; from memory).
    assert corners[0] == pytest.approx([0, 111.1], abs=0.1)
    assert corners[2] == pytest.approx([81.5, 0], abs=0.1)


def test_tiles_come_only_from_the_address_that_was_given(client, hollow):
    """The one page with the drawing lets pictures in from that host, and from no other; odd addresses are refused."""
    page = f"/land/{hollow}/background"
    client.post(page, {"command": name(), "origin": "43, -90"})
    for wrong in ("javascript:alert(1)//{z}{x}{y}", "https://a.example/{z}/{x}.png", "https://*/{z}/{x}/{y}",
                  "https://u:p@a.example/{z}/{x}/{y}", "https://a.example; script-src *//{z}/{x}/{y}", ""):  # fmt: skip
        answer = client.post(page, {"command": name(), "tiles": wrong})
        assert answer.status_code == 422, wrong
    assert "a.example" not in client.get(f"/land/{hollow}/")["Content-Security-Policy"]
    client.post(page, {"command": name(), "tiles": "https://a.example/{z}/{x}/{y}.png"})
    policy = client.get(f"/land/{hollow}/")["Content-Security-Policy"]
    assert "img-src 'self' https://a.example data: blob:;" in policy
    assert "script-src 'self';" in policy
    assert "a.example" not in client.get(f"/land/{hollow}/ways")["Content-Security-Policy"]


@pytest.fixture
def bare(client) -> str:
    """A tract with nothing but its name."""
    del client
    tract = name()
    begin(Asked(name(), tract, "owner", "begin"), Parts((Piece("tract", "", {"name": "Bare"}),)), NOW)
    return tract


def brought(client, tract: str, content: bytes, **fields: str):
    """A file sent to the import page and brought in with these answers."""
    upload, token = io.BytesIO(content), name()
    upload.name = "file"
    matched = client.post(f"/land/{tract}/import", {"command": token, "file": upload})
    assert matched.status_code == 200, matched.content.decode()
    return client.post(f"/land/{tract}/import", {"command": name(), "token": token, **fields})


TREES = b"""<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="43.1" lon="-89.5"><name>Big oak</name></wpt><wpt lat="43.1009" lon="-89.5"/>
<trk><trkseg><trkpt lat="43.1" lon="-89.5"/><trkpt lat="43.101" lon="-89.5"/></trkseg></trk></gpx>"""


def test_trees_to_keep_come_from_a_gps_file(client, bare):
    """Waypoints become things to keep, named as in the file; where degrees are counted from is written down."""
    answer = brought(client, bare, TREES, what="kept", kept_kind="tree", kept_plant="bur oak")
    assert "2 brought in, 0 left out" in answer.content.decode()
    land = client.get(f"/land/{bare}/plan.json").json()
    assert [(one["id"], one["kind"], one["name"]) for one in land["spared"]] == [
        ("big-oak", "tree", "Big oak"),
        ("tree-2", "tree", "tree"),
    ]
    x, y = land["spared"][1]["rings"][0][0]
    assert (x, y) == pytest.approx((0, 100), abs=0.2)  # 0.0009 degrees of latitude
    again = brought(client, bare, TREES, what="kept", kept_kind="tree")
    assert "2 brought in" in again.content.decode()
    keys = [one["id"] for one in client.get(f"/land/{bare}/plan.json").json()["spared"]]
    assert len(keys) == len(set(keys)) == 4
    odd = brought(client, bare, TREES, what="kept", kept_kind="dragon")
    assert "no kind of thing called dragon" in odd.content.decode()


def test_outlines_come_from_a_map_file(client, bare):
    """Areas become patches with outlines; a line among them is left out with its reason; undo takes all back."""
    ring = [[-89.5, 43.1], [-89.499, 43.1], [-89.499, 43.101], [-89.5, 43.1]]
    shapes = [{"type": "Polygon", "coordinates": [ring]}, {"type": "LineString", "coordinates": ring[:2]},
              {"type": "MultiPolygon", "coordinates": [[ring], [ring]]}]  # fmt: skip
    features = [
        {"type": "Feature", "properties": {"NAME": f"East {n}"}, "geometry": shape} for n, shape in enumerate(shapes)
    ]
    raw = json.dumps({"type": "FeatureCollection", "features": features}).encode()
    text = brought(client, bare, raw, what="outlines").content.decode()
    assert "1 brought in, 2 left out" in text
    assert "a point or a line and no area" in text
    assert "one in several parts" in text
    land = client.get(f"/land/{bare}/plan.json").json()
    assert [(p["id"], p["name"]) for p in land["patches"]] == [("east-0", "East 0")]
    client.post(f"/land/{bare}/undo", {"command": name()})
    assert client.get(f"/land/{bare}/plan.json").json()["all"] == []


def test_degrees_do_not_come_into_land_that_lies_nobody_knows_where(client, hollow):
    """Land drawn from a corner of its own, of unknown place, takes no degrees: they would lie anywhere."""
    answer = brought(client, hollow, TREES, what="kept", kept_kind="tree")
    assert answer.status_code == 422
    assert "is not known yet" in answer.content.decode()
    client.post(f"/land/{hollow}/background", {"command": name(), "origin": "43.1, -89.5"})
    assert "2 brought in" in brought(client, hollow, TREES, what="kept", kept_kind="tree").content.decode()


HOSTILE = [
    (b"", "empty"),
    (b"%PDF-1.7\n1,2\n", "looks like PDF"),
    (b"<OGRVRTDataSource><OGRVRTLayer name='x'><SrcDataSource>/etc/hostname</SrcDataSource></OGRVRTLayer>"
     b"</OGRVRTDataSource>", "none of the kinds"),
    (b'<?xml version="1.0"?><!DOCTYPE g [<!ENTITY e SYSTEM "file:///etc/hostname">]><gpx><wpt lat="1" lon="1">'
     b"<name>&amp;e;</name></wpt></gpx>", "cannot be read"),
    (b"SQLite format 3\x00" + b"\x00" * 84, "cannot be read"),
    (b"Tag,Note\n1,\xff\xfe\x81\x8d\n", "encoding"),
    (b"PK\x03\x04 and then nothing", "cannot be read"),
    (b"{" * 100_000, "cannot be read"),
]  # fmt: skip


@pytest.mark.parametrize(("raw", "words"), HOSTILE)
@pytest.mark.parametrize("way", ["import", "background", "bring", "copies"])
def test_hostile_uploads_get_a_sentence_and_store_nothing(client, bare, raw, words, way):
    """Whatever is sent to whichever page: no traceback, a sentence, and the notebook as it was."""
    before = (Change.objects.count(), Tract.objects.count(), client.get(f"/land/{bare}/plan.json").content)
    upload = io.BytesIO(raw)
    upload.name = "a\u202eb<script>.gpx"
    address = f"/land/{bare}/{way}" if way in ("import", "background") else f"/{way}"
    field = {"import": "file", "background": "picture", "bring": "folder", "copies": "copy"}[way]
    answer = client.post(address, {"command": name(), field: upload})
    text = answer.content.decode()
    assert answer.status_code == 422, text
    assert "Nothing was changed" in text
    assert "<script>.gpx" not in text
    if way == "import":
        assert words in text
    assert (Change.objects.count(), Tract.objects.count(), client.get(f"/land/{bare}/plan.json").content) == before


def test_a_row_that_begins_like_a_formula_comes_out_as_words(client, bare):
    """What a spreadsheet would work out is led by an apostrophe in what is given out."""
    client.post(f"/land/{bare}/patch", {"command": name(), "name": "Fence"})
    list_ = b"Tag,DBH,x,y,note\n1,3,1,2,=HYPERLINK(0)\n"
    columns = {"column-id": "Tag", "column-size": "DBH", "column-x_m": "x", "column-y_m": "y", "column-note": "note"}
    fixed = {"fixed-patch": "fence", "fixed-species": "glossy buckthorn", "fixed-unit": "in"}
    assert "1 brought in" in brought(client, bare, list_, **columns, **fixed).content.decode()
    assert b"'=HYPERLINK" in client.get(f"/land/{bare}/out/csv").content


def test_a_patch_can_wait_and_be_taken_up_again(client, bare):
    """Not now: the next step turns to something else until the day that was given; it is written down with its why."""
    client.post(f"/land/{bare}/patch", {"command": name(), "name": "Fence"})

    def step() -> str:
        for _ in range(100):
            text = client.get(f"/land/{bare}/step").content.decode()
            if "sentence" in text:
                return text.partition('class="sentence">')[2].partition("</p>")[0]
            time.sleep(0.05)
        raise AssertionError("no step")

    assert "Fence" in step()
    refused = client.post(f"/land/{bare}/aside/fence", {"command": name(), "until": "2026-10-10"})
    assert "is not to come" in refused.content.decode()
    assert (
        "Not understood"
        in client.post(f"/land/{bare}/aside/fence", {"command": name(), "until": "soon"}).content.decode()
    )
    client.post(f"/land/{bare}/aside/fence", {"command": name(), "until": "2026-10-20", "why": "too wet"})
    assert "Fence" not in step()
    assert "Set aside until 2026-10-20" in client.get(f"/land/{bare}/").content.decode()
    assert "too wet" in client.get(f"/land/{bare}/after").content.decode()
    client.post(f"/land/{bare}/aside/fence", {"command": name(), "bring-back": "1"})
    assert "Fence" in step()
    assert client.post(f"/land/{bare}/aside/moon", {"command": name(), "until": "2026-10-20"}).status_code == 404


@pytest.mark.parametrize("sort", ["ten", "keep", "work", "mix"])
def test_ways_are_sorted_by_their_column_heads(client, hollow, sort):
    """Each head leads to its own order, whose sentence stands above the table; no way is lost by it."""
    ready(client, hollow)
    page = f"/land/{hollow}/ways/slope/Acer rubrum/standing"
    usual, sorted_ = (client.get(address).content.decode() for address in (page, f"{page}?sort={sort}"))
    assert f'<a href="?sort={sort}">' in usual.partition("<thead>")[2].partition("</thead>")[0]
    rows = [sorted(re.findall(r'<th scope="row" class="how">([^<]+)', text)) for text in (usual, sorted_)]
    assert rows[0] == rows[1] != []
    assert "In each group: least that can reach" in usual
    assert "In each group: least that can reach" not in sorted_
