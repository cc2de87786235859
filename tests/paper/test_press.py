"""Invented labels say what their facts say, on the page they are said to, and nothing where nothing was found."""

import datetime
import io
from dataclasses import replace

import pikepdf
import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checks.build import PRODUCT, fact
from stemward.kinds import Scope
from stemward.label import KINDS
from stemward.paper import press_words as words
from stemward.paper.press import press, sentence

AS_OF = datetime.date(2026, 10, 10)


def pages(pdf):
    """The text of each page without line breaks and double blanks."""
    document = pypdfium2.PdfDocument(pdf)
    return [" ".join(document[n].get_textpage().get_text_range().split()) for n in range(len(document))]


@pytest.fixture(scope="module")
def shelf(demo_tract):
    return demo_tract.shelf


def test_every_kind_of_fact_has_words_and_a_part():
    """The closed list and the words are one list; every part has a heading."""
    assert set(words.SAYS) == set(KINDS)
    assert {part for part, _ in words.SAYS.values()} <= set(words.PARTS) == set(words.HEADINGS)


def test_every_fact_stands_on_its_page(shelf):
    """Each product of the example: every sentence is found on the page that is named, and all that is said is named."""
    for product in shelf:
        made = press(product, AS_OF)
        text = pages(made.pdf)
        assert len(text) == made.pages
        said = {n for n, f in enumerate(product.facts) if f.standing != "not found"}
        assert {one.fact for one in made.printed} == said
        for one in made.printed:
            assert " ".join(one.sentence.split()) in text[one.page - 1]


def test_what_was_not_found_is_not_printed():
    """Not found means nothing stands there; no limit and does not apply stand in words of their own."""
    assert sentence(fact("most per year", standing="not found")) == ""
    assert "no such limit" in sentence(fact("most per year", standing="no limit"))
    assert "does not apply" in sentence(fact("entry interval", standing="does not apply"))
    scoped = fact("strongest mix", "50 %", scope=Scope(method=("cut stump",), site=("woods",)))
    assert sentence(scoped).endswith("for cut stump on woods.")


def test_every_page_says_that_it_is_invented_and_no_real_label_is_made_up(shelf):
    """The mark is on each page; a product that is not marked invented is refused."""
    made = press(shelf[0], AS_OF)
    assert all(words.INVENTED in text for text in pages(made.pdf))
    with pytest.raises(ValueError, match="not marked invented"):
        press(replace(shelf[0], invented=False), AS_OF)


def test_the_same_label_gives_the_same_bytes_and_is_tagged(shelf):
    """No clock, no chance; language, title and table heads are there."""
    one, other = press(shelf[0], AS_OF), press(shelf[0], AS_OF)
    assert one.pdf == other.pdf
    with pikepdf.open(io.BytesIO(one.pdf)) as pdf:
        assert str(pdf.Root.Lang) == "en"
        assert b"/TH" in b"".join(bytes(str(o), "utf-8") for o in pdf.objects if isinstance(o, pikepdf.Dictionary))


@settings(max_examples=15, deadline=None)
@given(st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=60).filter(str.strip))
def test_odd_words_neither_break_nor_inject(text):
    """Whatever someone types is words on the page, never markup."""
    product = replace(PRODUCT, facts=(fact("first aid", text), fact("disposal", f"#set page(fill: red) $ * _ {text}")))
    made = press(product, AS_OF)
    assert len(made.printed) == 2
