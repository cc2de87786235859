"""Test two ways first: split with a button, each arm a patch with a flag through plan and paper, undone by undo."""

from axe_playwright_python.sync_playwright import Axe

from notebook.some import name
from stemward.notebook import worked
from stemward.plan import as_data, draw_up
from stemward.say.en.arms import ARMS
from stemward.web import clock
from web.conftest import opened
from web.test_looks import OVERFLOW, RULES, settled

TARGET = "ways/meadow/Frangula alnus/standing"


def plan_of(tract):
    from stemward.handbook import load

    land = worked.known(tract).land
    return as_data(draw_up(land, load(), clock.today(land), "x"))


def test_two_arms_reach_the_plan_and_undo_puts_them_back(client, hollow):
    before = plan_of(hollow)
    page = client.get(f"/land/{hollow}/{TARGET}/arms").content.decode()
    assert "are told apart from" in page and "the verdict is due from" in page
    assert client.post(f"/land/{hollow}/{TARGET}/arms", {"command": name(), "each": "15"}).status_code == 302
    plan = plan_of(hollow)
    rows = {t["patch"]: t["rows"] for t in plan["treatments"] if t["species"] == "Frangula alnus"}
    assert rows == {"meadow": 46, "meadow-blue": 15, "meadow-orange": 15}
    names = {p["id"]: p["name"] for p in plan["tract"]["patches"]}
    assert names["meadow-blue"] == "Spring meadow, blue flag"
    arms = [t for t in plan["treatments"] if t["patch"] in ("meadow-blue", "meadow-orange")]
    whole = next(t for t in before["treatments"] if t["patch"] == "meadow")
    assert all(t[key] == whole[key] for t in arms for key in ("how", "product", "chosen_by"))
    # Splitting a patch changes no dose.
    need = sum(t["need_ml"] for t in plan["treatments"] if t["species"] == "Frangula alnus")
    assert abs(need - whole["need_ml"]) < 1e-6
    stops = {f["check"] for f in before["findings"] if f["weight"] == "stop" and f["where"]["patch"] == "meadow"}
    # Which plants stand near water goes with the plants; what holds of the patch holds of every part of it.
    own = [f for f in plan["findings"] if f["weight"] == "stop"]
    assert stops <= {f["check"] for f in own if f["where"]["patch"].startswith("meadow") or not f["where"]["patch"]}
    client.post(f"/land/{hollow}/undo", {"command": name()})
    assert plan_of(hollow)["treatments"] == before["treatments"]


def test_refused_with_a_sentence(client, hollow):
    for each, said in (("40", "at most 38 fit"), ("2", "5 or more"), ("some", "whole number")):
        answer = client.post(f"/land/{hollow}/{TARGET}/arms", {"command": name(), "each": each})
        assert answer.status_code == 422 and said in answer.content.decode()
    client.post(f"/land/{hollow}/{TARGET}/arms", {"command": name(), "each": "15"})
    again = client.post(
        f"/land/{hollow}/{TARGET.replace('meadow', 'meadow-blue')}/arms", {"command": name(), "each": "5"}
    )
    assert "itself an arm" in again.content.decode()
    assert client.get(f"/land/{hollow}/ways/meadow/No such/standing/arms").status_code == 404


def test_plants_that_were_counted_are_to_be_listed_first(client, hollow):
    typed = {"command": name(), "species": "Japanese barberry", "1to3": "40", "height": "chest"}
    assert client.post(f"/land/{hollow}/patch/yard/count", typed).status_code == 302
    address = f"/land/{hollow}/ways/yard/Berberis thunbergii/standing/arms"
    page = client.get(address).content.decode()
    assert "counted by size" in page and "Make the two arms" not in page
    refused = client.post(address, {"command": name(), "each": "10"})
    assert refused.status_code == 422 and "List them one by one first" in refused.content.decode()


def test_arms_marked_out_beforehand_are_told_as_that():
    from ledger.some import hollow as tract_with
    from ledger.test_revisits import seen, treated
    from stemward.handbook import load
    from stemward.plan.killed import comparisons, killed
    from stemward.say.worked import held_words

    made = tract_with(
        entries=(
            treated("t1", product="glyphosate-4lb-wet", patch="meadow-blue"),
            treated("t2", product="triclopyr-amine-3lb", patch="meadow-orange", ae_g={"triclopyr": 9.0}),
            seen("s1", "2026-10-01T10:00", ["t1"], 18, 2, patch="meadow-blue"),
            seen("s2", "2026-10-01T10:00", ["t2"], 9, 11, patch="meadow-orange"),
        )
    )
    (held,) = comparisons(killed(made, load()), made)
    lines = held_words(held, {}, load())
    assert lines[-1] == ARMS and "18 of 20 against 9 of 20" in lines[0]


def test_the_page_in_a_browser(chromium, served, example):
    found = []
    with opened(chromium, served) as page:
        for width in (320, 1440):
            page.set_viewport_size({"width": width, "height": 900})
            settled(page, f"{example}{TARGET}/arms")
            over, which = page.evaluate(OVERFLOW)
            assert over <= 0, (width, which)
            result = Axe().run(page, options={"runOnly": {"type": "tag", "values": RULES}})
            found += [(width, v["id"], v["nodes"][0]["html"][:120]) for v in result.response["violations"]]
    assert found == []
