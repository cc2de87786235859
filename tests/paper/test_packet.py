"""The packet: what must stand in it, and that it can be heard as well as seen."""

import datetime
import itertools
import re

import pikepdf
import pypdfium2
import pytest

from checks.build import stems_of
from plan.test_draw_up import plan_of, tract_of
from stemward.handbook import load
from stemward.kinds import Choice
from stemward.paper import packet, packet_data
from stemward.plan import as_data, draw_up
from stemward.say import Speaker

AS_OF = datetime.date(2026, 10, 10)


@pytest.fixture(scope="module")
def plan(demo_tract):
    """The demo's plan."""
    return as_data(draw_up(demo_tract, load(), AS_OF, "land"))


@pytest.fixture(scope="module")
def pdf(plan):
    """The demo's packet."""
    return packet(plan)


def text_of(pdf):
    """All words of a PDF, page by page."""
    document = pypdfium2.PdfDocument(pdf)
    return [document[n].get_textpage().get_text_bounded() for n in range(len(document))]


def squeezed(text):
    """Words without their spacing, so that line ends do not matter."""
    return re.sub(r"\s+", "", text)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_amount_of_the_plan_stands_in_the_packet(plan, units):
    """Each need, each poured part, each batch and each acid equivalent is found in the words of the PDF."""
    words = squeezed(" ".join(text_of(packet(plan, units))))
    speaker = Speaker(plan, units)
    amounts = [
        *(
            ("ml_ml", t[k])
            for t in plan["treatments"]
            if t["product"]
            for k in ("need_ml", "need_low_ml", "need_high_ml")
        ),
        *(("g_g", g) for t in plan["treatments"] for g in t["ae_g"].values()),
        *(
            ("ml_ml", b[k])
            for m in plan["mixes"]
            for b in m["batches"]
            for k in ("assigned_ml", "mixed_ml", "left_over_ml")
        ),
        *(("ml_ml", p["ml"]) for m in plan["mixes"] for b in m["batches"] for p in b["parts"]),
        *(("s_frac", b["concentration_frac"]) for m in plan["mixes"] for b in m["batches"]),
    ]
    assert len(amounts) > 25
    missing = [(name, value) for name, value in amounts if squeezed(speaker.number(name, value)) not in words]
    assert missing == []


def test_a_plan_with_something_open_is_a_draft_on_every_mix_sheet(pdf, plan):
    """Where something stops or is to be found out the mix sheet's heading says not to mix from it."""
    sheets = [t for t in text_of(pdf) if t.strip().startswith("Draft") and "Mix sheet" in t]
    expected = [mix["draft"] for mix in packet_data(plan, "us", "letter")["mixes"] for _ in mix["batches"]]
    assert [("DO NOT MIX FROM THIS PAGE" in s) for s in sheets] == expected
    assert any(expected)


def test_a_plan_with_nothing_open_is_no_draft():
    """Once all is found out there is no draft on any page."""
    plan = plan_of(tract_of(stems_of(), [Choice("slope", "Acer rubrum", "cut stump", "g4", 0.5)]))
    open_ = [f for f in plan["findings"] if f["weight"] in ("stop", "find out")]
    assert open_ == []
    assert "DRAFT" not in " ".join(text_of(packet(plan)))


def test_every_page_carries_the_code_and_says_it_is_invented(pdf, plan):
    """Each sheet stands alone: code, page of pages, and the mark of the example."""
    pages = text_of(pdf)
    for number, text in enumerate(pages, 1):
        assert plan["code"] in text
        assert f"page {number} / {len(pages)}" in text.replace("\r\n", " ")
        assert "Invented example" in text


def test_emergency_is_last_and_on_an_even_page(pdf):
    """Face down on top: the emergency page is the last and even."""
    pages = text_of(pdf)
    assert len(pages) % 2 == 0
    assert "EMERGENCY" in pages[-1]
    assert "1-800-222-1222" in pages[-1] and "911" in pages[-1]


def test_letter_and_a4(plan):
    """Both sizes of paper."""
    for paper, size in (("letter", (612, 792)), ("a4", (595, 842))):
        page = pypdfium2.PdfDocument(packet(plan, "us", paper))[0]
        assert (round(page.get_width()), round(page.get_height())) == size


def test_same_plan_same_bytes(plan):
    """A packet printed twice is the same file."""
    assert packet(plan) == packet(plan)


def elements(pdf):
    """All structure elements of a tagged PDF with their kind."""
    import io

    document = pikepdf.open(io.BytesIO(pdf))
    found = []

    def walk(node):
        if isinstance(node, pikepdf.Array):
            for child in node:
                walk(child)
        elif isinstance(node, pikepdf.Dictionary):
            if "/S" in node:
                found.append(node)
            if "/K" in node:
                walk(node["/K"])

    walk(document.Root.StructTreeRoot)
    return document, found


def test_it_can_be_heard(pdf):
    """Language, title, header cells, alternative texts with their numbers, headings in order: PDF/UA-1 and more."""
    document, found = elements(pdf)
    assert str(document.Root.Lang).startswith("en")
    assert "Quarry Hollow" in str(document.docinfo.get("/Title", "")) or b"Quarry Hollow" in pdf
    assert document.Root.MarkInfo.Marked
    tables = [e for e in found if e["/S"] == "/Table"]
    heads = [e for e in found if e["/S"] == "/TH"]
    assert tables and len(heads) >= len(tables) * 2
    figures = [str(e["/Alt"]) for e in found if e["/S"] == "/Figure"]
    assert len(figures) >= 8
    drawings = [alt for alt in figures if "sign" not in alt]
    assert all(len(alt) >= 15 and re.search(r"\d", alt) for alt in drawings)
    levels = [int(str(e["/S"])[2:]) for e in found if re.fullmatch(r"/H[1-6]", str(e["/S"]))]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))


def test_reading_order_of_the_first_page(pdf):
    """What is open is heard before the treatments, and those before the cautions."""
    first = text_of(pdf)[0]
    places = [
        first.index(w) for w in ("Plan on a page", "Open before any mixing", "Treatments", "Read the whole label")
    ]
    assert places == sorted(places)


def test_words_never_promise(pdf):
    """No page says safe, legal, approved, compliant, fine or OK."""
    words = " ".join(text_of(pdf)).lower()
    assert not re.search(r"\b(safe|legal|approved|compliant|ok|violation)\b", words)


def test_names_are_words_and_never_markup(demo_tract):
    """A patch called like a command of the page language is only a name."""
    from dataclasses import replace

    patches = tuple(replace(p, name='#image("/etc/passwd") *x* $y$ \\ "]') for p in demo_tract.patches)
    plan = as_data(draw_up(replace(demo_tract, patches=patches), load(), AS_OF, "land"))
    assert squeezed('#image("/etc/passwd")*x*$y$\\"]') in squeezed(" ".join(text_of(packet(plan)))).replace(
        "“", '"'
    ).replace("”", '"')
    assert packet_data(plan, "us", "letter")
