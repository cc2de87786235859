"""Bottle labels: what stands on them, in which sizes they can be read, and that their code holds the same words."""

import datetime
from dataclasses import replace

import pypdfium2
import pypdfium2.raw as raw
import pytest
import zxingcpp

from ledger.some import hollow
from stemward.handbook import load
from stemward.kinds import LabelFact
from stemward.ledger.mixes import Batch
from stemward.paper.bottle_label import (
    LEAST_PT,
    SIGNAL_PT,
    TooSmall,
    bottle_of,
    bottles_of,
    label_lines,
    label_pdf,
)
from stemward.plan import as_data, draw_up

DAY = datetime.date(2026, 10, 10)


@pytest.fixture(scope="module")
def plan():
    """The example's plan."""
    return as_data(draw_up(hollow(), load(), DAY))


@pytest.fixture(scope="module")
def pdf(plan):
    """Labels of all its mixes, six a sheet."""
    return label_pdf(bottles_of(plan), hollow(), "us", "4 by 3 1/3 in", DAY)


def letters(page):
    """Every run of letters with its size in points."""
    text = page.get_textpage()
    for index in range(text.count_chars()):
        yield text.get_text_range(index, 1), raw.FPDFText_GetFontSize(text.raw, index)


def test_what_the_fields_of_a_service_container_are(plan):
    """Name, number, actives with strength, dilution, recipe, batch, signal word, wear, entry, first aid, phone."""
    said = label_lines(bottles_of(plan)[0], hollow(), "us")
    assert said["signal"] == "DANGER"
    text = said["text"]
    for part in (
        "EPA Reg. No. QH-0002", "KEEP OUT OF REACH OF CHILDREN", "triclopyr (triethylamine salt), 1.5 lb ae/gal",
        "This is a dilution of the product in water", "Holds 27 mL product + 1 fl oz water", "Spring meadow only",
        "Batch", "Mixed on", "Wear long-sleeved shirt", "48 hours", "If in eyes", "1-800-222-1222",
        "Not for food or drink", "Invented example",
    ):  # fmt: skip
        assert part in text, part


def test_what_nobody_has_read_is_not_left_out_in_silence():
    """Without a label read, the bottle says so and points to the label."""
    bare = tuple(replace(p, facts=()) for p in hollow().shelf)
    batch = Batch("b1", "2026-10-10", 100_000, products=("imazapyr-2lb",), concentration_frac=0.5, carrier="water")
    said = label_lines(bottle_of(batch, "owner"), hollow(shelf=bare), "us")
    assert (said["signal"], said["no_signal"]) == ("", "Signal word: not read yet")
    unread = ("What to wear: read", "How long others keep out: read", "First aid: read")
    for part in (*unread, "Mixed on 2026-10-10 by owner"):
        assert part in said["text"]


def test_the_code_holds_the_words_and_no_address(plan, pdf):
    """Read back from the printed page as a phone would, each code is the whole text of its label."""
    page = pypdfium2.PdfDocument(pdf)[0].render(scale=300 / 72).to_pil().convert("L")
    read = {one.text for one in zxingcpp.read_barcodes(page)}
    assert read == {label_lines(bottle, hollow(), "us")["text"] for bottle in bottles_of(plan)}
    assert not any("http" in one for one in read)


@pytest.mark.parametrize("size", ["5 by 7 in", "4 by 5 in", "4 by 3 1/3 in"])
def test_no_letter_is_under_eight_points_and_the_signal_word_is_large(plan, size):
    """Measured on the printed page."""
    document = pypdfium2.PdfDocument(label_pdf(bottles_of(plan), hollow(), "us", size, DAY))
    sizes = [(letter, pt) for page in document for letter, pt in letters(page) if letter.strip()]
    assert min(pt for _, pt in sizes) >= LEAST_PT - 0.01
    whole = "".join(letter for letter, pt in sizes if pt >= SIGNAL_PT - 0.01)
    assert "DANGER" in whole
    assert whole.count("CAUTION") == 3


@pytest.mark.parametrize("size", ["4 by 2 in", "2 5/8 by 1 in", "a stamp"])
def test_a_size_that_cannot_be_read_is_refused(plan, size):
    """With the sizes that can."""
    with pytest.raises(TooSmall) as refused:
        label_pdf(bottles_of(plan), hollow(), "us", size, DAY)
    assert refused.value.fits == ("5 by 7 in", "4 by 5 in", "4 by 3 1/3 in")


def test_a_longer_label_needs_a_larger_size(plan):
    """The same size is refused once the label's own words are long."""
    long = tuple(
        replace(p, facts=tuple(replace(f, value=f.value * 4) if f.kind == "first aid" else f for f in p.facts))
        for p in hollow().shelf
    )
    with pytest.raises(TooSmall):
        label_pdf(bottles_of(plan), hollow(shelf=long), "us", "4 by 3 1/3 in", DAY)


def test_black_on_white(pdf):
    """Nothing on a label is a colour, so it is the same in grey."""
    image = pypdfium2.PdfDocument(pdf)[0].render(scale=1).to_pil().convert("RGB")
    assert all(max(pixel) - min(pixel) < 12 for _, pixel in image.getcolors(1 << 24))


def test_a_batch_says_until_when_the_label_lets_it_be_kept():
    """ "mix keeps" of a day: from the day after, too old."""
    fact = LabelFact("mix keeps", "says", 86400.0, "read", page="3", read_by="owner")
    shelf = tuple(replace(p, facts=(*p.facts, fact)) for p in hollow().shelf)
    batch = Batch("b1", "2026-10-10", 100_000, products=("imazapyr-2lb",), concentration_frac=0.5, carrier="water")
    assert "too old from 2026-10-11" in label_lines(bottle_of(batch), hollow(shelf=shelf), "us")["text"]


def test_the_same_labels_are_the_same_bytes(plan, pdf):
    """No clock and no chance."""
    assert label_pdf(bottles_of(plan), hollow(), "us", "4 by 3 1/3 in", DAY) == pdf
