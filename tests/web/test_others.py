"""Kill rates of others: brought in, chosen, taken out, undone; a wrong table changes nothing."""

from django.core.files.uploadedfile import SimpleUploadedFile

from notebook.some import name
from stemward.notebook import worked

HEAD = "species,method,ingredients,percent,season,works,dead,seen,months"
GOOD = f"# seen by others\n{HEAD}\nFrangula alnus,cut stump,glyphosate salt 480 g ae/L,50,summer,3,6,24,13\n"


def send(client, tract, table, whose="the crew next door"):
    upload = SimpleUploadedFile("rates.csv", table.encode(), "text/csv")
    return client.post(f"/land/{tract}/after/others", {"command": name(), "whose": whose, "table": upload})


def rates(tract):
    return worked.known(tract).land.rates


def test_brought_in_they_count_only_once_that_is_chosen(client, hollow):
    assert send(client, hollow, GOOD).status_code == 302
    (one,) = rates(hollow)
    assert (one.share, one.whose, one.dead, one.seen, one.ae_g_l) == (0, "the crew next door", 6, 24, 240)
    page = f"/land/{hollow}/after/others"
    text = client.get(page).content.decode()
    assert "does not count" in text and "6 of 24 dead, 3 days" in text
    assert "others saw" not in client.get(f"/land/{hollow}/after/worked").content.decode()
    client.post(page, {"command": name(), "weigh": "yes", "share-r1": "0.5"})
    assert rates(hollow)[0].share == 0.5
    assert "counts for 7.1 stems" in client.get(page).content.decode()  # half of 24, each day's 8 for 8 / 1.7
    assert "are stems that others saw" in client.get(f"/land/{hollow}/after/worked").content.decode()


def test_a_second_table_stands_beside_the_first_and_rows_go_and_come_back(client, hollow):
    send(client, hollow, GOOD)
    send(client, hollow, GOOD, "the county")
    assert [(one.id, one.whose) for one in rates(hollow)] == [("r1", "the crew next door"), ("r1-2", "the county")]
    client.post(f"/land/{hollow}/after/others", {"command": name(), "weigh": "yes", "gone-r1": "on"})
    assert [one.id for one in rates(hollow)] == ["r1-2"]
    client.post(f"/land/{hollow}/undo", {"command": name()})
    assert sorted(one.id for one in rates(hollow)) == ["r1", "r1-2"]


def test_a_wrong_table_is_told_line_by_line_and_changes_nothing(client, hollow):
    answer = send(client, hollow, f"{GOOD}No plant at all,cut stump,glyphosate,50,summer,1,5,3,13\n")
    text = answer.content.decode()
    assert answer.status_code == 422 and rates(hollow) == ()
    assert (
        "line 4" in text.lower() and "No plant of the name No plant at all" in text and "More plants are dead" in text
    )
    assert "Nothing was changed" in text
    for table, whose in (("", "someone"), (GOOD, "")):
        assert send(client, hollow, table, whose).status_code == 422 and rates(hollow) == ()
