"""Reading a label beside its pages: nothing counts until a person has read it, and figures that can hurt are typed."""

import re

import pytest
import typst
from django.core.files.uploadedfile import SimpleUploadedFile

from notebook.some import name
from stemward.notebook import worked
from stemward.notebook.models import LabelFile
from stemward.web.label_items import COVER

PRODUCT = "triclopyr-ester-4lb"
NUMBER = "99999-12"
TEXT = """
#set page(paper: "us-letter", margin: 40pt)
#set text(size: 9pt)
Example herbicide, invented

EPA Reg. No. {number}

*USE RESTRICTIONS*

Do not apply more than {most} lb ae per acre per year.

Allow at least 30 days between applications.

#pagebreak()
*CUT STUMP TREATMENT*

Treat the cut surface within 15 minutes of cutting with a 20 to 30 % solution in oil.

*PERSONAL PROTECTIVE EQUIPMENT (PPE)*

Applicators must wear a long-sleeved shirt and long pants, shoes plus socks, and goggles.
"""


def pdf(most="7", number=NUMBER):
    """A short invented label of two pages."""
    return bytes(typst.compile(TEXT.format(most=most, number=number).encode(), format="pdf"))


def sent(client, tract, raw=None, product=PRODUCT):
    """Send a label file."""
    upload = SimpleUploadedFile("label.pdf", pdf() if raw is None else raw, "application/pdf")
    return client.post(f"/land/{tract}/shelf/{product}/label/pdf", {"command": name(), "label": upload})


def address(tract, product=PRODUCT):
    """The page on which it is read."""
    return f"/land/{tract}/shelf/{product}/label/read"


@pytest.fixture
def reading(client, hollow):
    """A label sent and said to be that of the jug: its address."""
    sent(client, hollow)
    assert client.post(address(hollow), {"command": name(), "number": NUMBER}).status_code == 302
    return hollow


def facts(tract, kind):
    """Facts of that kind as the gate reads them."""
    return [f for f in worked.known(tract).land.product(PRODUCT).facts if f.kind == kind]


def shown(client, tract, kind):
    """The page at a kind of fact, and the name of its question."""
    page = client.get(address(tract), {"kind": kind}).content.decode()
    return page, re.search(r'name="fact" value="([^"]+)"', page)[1]


def answer(client, tract, kind, given, **more):
    """Answer the first question of a kind."""
    key = shown(client, tract, kind)[1]
    return client.post(address(tract), {"command": name(), "fact": key, "kind": kind, "answer": given, **more})


def test_another_product_s_label_is_a_stop(client, hollow):
    """The number on the jug is compared before anything is read; a distributor's third part is the same label."""
    sent(client, hollow)
    page = client.post(address(hollow), {"command": name(), "number": "1-1"})
    assert page.status_code == 422
    assert "another product" in page.content.decode()
    assert not LabelFile.objects.get(product=PRODUCT).confirmed
    assert client.post(address(hollow), {"command": name(), "number": f"{NUMBER}-777"}).status_code == 302
    assert "Is this the label" not in client.get(address(hollow)).content.decode()


def test_a_figure_that_can_hurt_is_covered_until_it_is_typed(client, reading):
    """Neither value nor words show it; typing the same makes it read, at its page, with its words."""
    page, _ = shown(client, reading, "most per year")
    assert f"Do not apply more than {COVER} lb ae" in page
    assert "7 lb" not in page
    assert "stroke-width" in page and "/1.png" in page
    said = answer(client, reading, "most per year", "says", says="7 lb/acre")
    assert said.status_code == 302
    (fact,) = facts(reading, "most per year")
    assert (fact.reading, fact.page, fact.typed) == ("read", "1", "7 lb/acre")
    assert fact.words.startswith("Do not apply more than 7 lb")


def test_typed_otherwise_than_the_reader_saw_is_asked_again(client, reading):
    """Both are shown with the place; typed again it stands as the person says."""
    before = [f.typed for f in facts(reading, "most per year")]
    first = answer(client, reading, "most per year", "says", says="6 lb/acre")
    assert first.status_code == 422
    page = first.content.decode()
    assert "You typed 6 lb/acre" in page and "7 lb/acre on page 1" in page
    assert [f.typed for f in facts(reading, "most per year")] == before
    assert 'name="again" value="6 lb/acre"' in page
    assert answer(client, reading, "most per year", "says", says="6 lb/acre", again="6 lb/acre").status_code == 302
    assert [(f.reading, f.typed) for f in facts(reading, "most per year")] == [("read", "6 lb/acre")]


def test_others_are_nodded_at_and_several_of_one_sentence_together(client, reading):
    """All pieces of equipment in a sentence are one question; the next question that is open follows."""
    said = answer(client, reading, "equipment", "says")
    assert said.status_code == 302
    assert "#fact" in said.headers["Location"]
    found = {f.typed for f in facts(reading, "equipment") if f.reading == "read" and f.page == "2"}
    assert found == {"long-sleeved shirt", "long pants", "shoes and socks", "goggles"}


def test_it_says_something_else_and_for_what(client, reading):
    """A value of one's own with a scope of one's own."""
    done = answer(
        client, reading, "shortest interval", "else", says="45 days", page="1", **{"for-method": ["cut stump"]}
    )
    assert done.status_code == 302
    (fact,) = [f for f in facts(reading, "shortest interval") if f.reading == "read"]
    assert (fact.typed, fact.scope.method) == ("45 days", ("cut stump",))
    wrong = answer(client, reading, "shortest interval", "else", says="many moons")
    assert wrong.status_code == 422
    assert "not understood" in wrong.content.decode()


def test_looked_for_and_not_there_never_becomes_no_limit(client, reading):
    """It needs pages; it stands as not found; no limit needs a page of its own."""
    assert answer(client, reading, "distance to water", "not there", looked="").status_code == 422
    assert answer(client, reading, "distance to water", "not there", looked="1-2").status_code == 302
    (fact,) = [f for f in facts(reading, "distance to water") if f.reading == "read" and f.page == "1-2"]
    assert fact.standing == "not found"
    assert answer(client, reading, "distance to water", "no limit", page="2").status_code == 302
    assert "no limit" in {f.standing for f in facts(reading, "distance to water")}
    assert answer(client, reading, "signal word", "no limit", page="2").status_code == 422


def test_an_answer_is_taken_back(client, reading):
    """As any change of the land."""
    before = facts(reading, "most per year")
    answer(client, reading, "most per year", "says", says="7 lb/acre")
    assert facts(reading, "most per year") != before
    client.post(f"/land/{reading}/undo", {"command": name()})
    assert facts(reading, "most per year") == before


def test_words_of_the_page_become_a_fact(client, reading):
    """Any sentence, with the kind a person says it is about."""
    page = client.get(address(reading), {"page": "2"}).content.decode()
    number = re.search(r'<option value="(s\d+)"[^>]*>Treat the cut surface', page)[1]
    body = {
        "command": name(),
        "fact": number,
        "kind": "season forbidden",
        "answer": "else",
        "says": "spring",
        "page": "2",
    }
    assert client.post(address(reading), body).status_code == 302
    (fact,) = facts(reading, "season forbidden")
    assert (fact.typed, fact.page) == ("spring", "2")
    assert fact.words.startswith("Treat the cut surface")


def test_search_parts_plain_text_and_print(client, reading):
    """Places of words with how many; a part as large text; what is read, to print."""
    page = client.get(address(reading), {"find": "apply", "at": "0"}).content.decode()
    assert "1 places; 1 of 1" in page or "2 places; 1 of 2" in page
    assert "was not found" in client.get(address(reading), {"find": "xyzzy"}).content.decode()
    part = client.get(f"/land/{reading}/shelf/{PRODUCT}/label/part/1").content.decode()
    assert "Do not apply more than 7 lb" in part
    assert client.get(f"/land/{reading}/shelf/{PRODUCT}/label/part/99").status_code == 404
    answer(client, reading, "most per year", "says", says="7 lb/acre")
    assert "7 lb/acre" in client.get(f"/land/{reading}/shelf/{PRODUCT}/label/facts").content.decode()


def test_a_page_is_a_picture_and_nothing_else(client, reading):
    """PNG of that file's page; other digests and pages are not there."""
    digest = LabelFile.objects.get(product=PRODUCT).digest
    lead = f"/land/{reading}/shelf/{PRODUCT}/label"
    picture = client.get(f"{lead}/{digest}/2.png")
    assert picture.status_code == 200
    assert picture.headers["Content-Type"] == "image/png"
    assert picture.content.startswith(b"\x89PNG")
    assert client.get(f"{lead}/{digest}/3.png").status_code == 404
    assert client.get(f"{lead}/{'0' * 64}/1.png").status_code == 404


def test_a_newer_label_shows_what_differs_and_asks_again(client, reading):
    """What was read of the older and stands otherwise is proposed once more; the rest stays read."""
    answer(client, reading, "most per year", "says", says="7 lb/acre")
    answer(client, reading, "shortest interval", "says")
    done = sent(client, reading, pdf(most="4"))
    assert done.headers["Location"].endswith("/label/differs")
    page = client.get(done.headers["Location"]).content.decode()
    assert "Most on an acre in a year" in page and "see page 1" in page
    assert "Shortest interval" not in page and "4 lb/acre" not in page
    client.post(done.headers["Location"], {"command": name()})
    assert [(f.reading, f.typed) for f in facts(reading, "most per year")] == [("proposed", "4 lb/acre")]
    assert "read" in {f.reading for f in facts(reading, "shortest interval")}


def test_a_finding_about_reading_leads_to_the_place(client, reading):
    """The link beside it opens the reading page at that kind of fact."""
    from stemward.say import Speaker
    from stemward.web import clock

    plan = worked.plan_of(reading, clock.today(worked.known(reading).land))
    said = [f for f in Speaker(plan).findings() if f.fact]
    assert said
    page = client.get(f"/land/{reading}/findings").content.decode()
    one = said[0]
    assert f"/shelf/{one.product}/label/read?kind={one.fact.replace(' ', '%20')}#fact" in page


def test_without_a_file_it_is_read_from_the_booklet(client, hollow):
    """The link of a finding then leads to the place on the other page."""
    answer_ = client.get(address(hollow), {"kind": "signal word"})
    assert answer_.status_code == 302
    assert answer_.headers["Location"].endswith("/label#fact-signal-word")


def test_water_as_a_carrier_is_no_stream(client, hollow):
    """On the page with the file, and where it is typed from the booklet."""
    raw = bytes(
        typst.compile(TEXT.format(most="7", number=NUMBER).replace("in oil", "in water").encode(), format="pdf")
    )
    typed = client.get(f"/land/{hollow}/shelf/{PRODUCT}/label").content.decode()
    assert "stream, pond, ditch" not in typed
    sent(client, hollow, raw)
    for _ in range(2):
        client.post(address(hollow), {"command": name(), "number": NUMBER})
    page, _ = shown(client, hollow, "carrier")
    assert "stream, pond, ditch" not in page
    assert ">water<" in page
