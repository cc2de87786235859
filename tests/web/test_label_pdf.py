"""A label's PDF on the shelf: places are proposed, nothing counts until it was read."""

from django.core.files.uploadedfile import SimpleUploadedFile

from label.made_labels import label
from notebook.some import name
from stemward.notebook import worked


def sent(client, tract, raw, product="imazapyr-2lb"):
    """Send a file for a product."""
    body = {"command": name(), "label": SimpleUploadedFile("label.pdf", raw, "application/pdf")}
    return client.post(f"/land/{tract}/shelf/{product}/label/pdf", body)


def facts(tract, product="imazapyr-2lb"):
    """Facts of the product as the gate reads them."""
    return worked.known(tract).land.product(product).facts


def test_places_are_proposed_beside_what_was_read(client, hollow):
    """What a person read stays as it was; what is new is proposed, with page and words, and shown so."""
    before = facts(hollow)
    assert sent(client, hollow, label(3, 2)[0]).status_code == 302
    after = facts(hollow)
    assert [f for f in after if f.reading == "read"] == [f for f in before if f.reading == "read"]
    proposed = [f for f in after if f.reading == "proposed"]
    assert len(proposed) > 10
    assert all(f.page == "1" and f.words for f in proposed)
    page = client.get(f"/land/{hollow}/shelf/imazapyr-2lb/label").content.decode()
    assert "Proposed, not read: page 1" in page


def test_a_figure_that_can_hurt_is_typed_before_it_is_shown(client, hollow):
    """The page is named, the figure is not."""
    sent(client, hollow, label(3, 2)[0], "triclopyr-ester-4lb")
    page = client.get(f"/land/{hollow}/shelf/triclopyr-ester-4lb/label").content.decode()
    assert "Read it there, then type it." in page


def test_sending_it_again_proposes_it_once(client, hollow):
    """The newer reading takes the place of the older."""
    sent(client, hollow, label(3, 2)[0])
    first = facts(hollow)
    sent(client, hollow, label(3, 2)[0])
    assert facts(hollow) == first


def test_what_cannot_be_read_is_said_and_changes_nothing(client, hollow):
    """No file, no PDF, a damaged one."""
    before = facts(hollow)
    assert client.post(f"/land/{hollow}/shelf/imazapyr-2lb/label/pdf", {"command": name()}).status_code == 422
    for raw, said in ((b"no pdf", "This is no PDF"), (label(3)[0][:3000], "is no PDF")):
        answer = sent(client, hollow, raw)
        assert answer.status_code == 422
        assert said in answer.content.decode()
    assert facts(hollow) == before


def test_it_can_be_taken_back(client, hollow):
    """As any change of the land."""
    before = facts(hollow)
    sent(client, hollow, label(3, 2)[0])
    client.post(f"/land/{hollow}/undo", {"command": name()})
    assert facts(hollow) == before
