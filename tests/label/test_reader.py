"""The reading of labels: order of columns, parts, and what is found against what was printed."""

import json
import random
import subprocess
import sys

import pytest
import typst
from hypothesis import given, settings
from hypothesis import strategies as st

from label.made_labels import METHODS, SHAPES, label, score
from stemward.gate.label_pdf import read_label
from stemward.label import KINDS
from stemward.label.reader import Line, NotReadable, Place, Proposed, at_each_place, lines_of, propose
from stemward.label.reader.parts import sentences_of
from stemward.label.reader.text import in_order, plain
from stemward.say.reader import fact_lines

LEAST = 0.97
"""Precision and recall on shapes that the reader was written on; others are the bench's."""


def found_in(raw):
    """Kinds, values and methods that are proposed."""
    return [(p.kind, p.value, dict(p.scope).get("method", ())) for p in propose(lines_of(raw)[0])]


@pytest.mark.parametrize("columns", [1, 2, 3, 4])
def test_what_is_printed_is_found(columns):
    """Over ten labels of each number of columns: nearly all is found, and nearly nothing else."""
    right = missed = wrong = 0
    for seed in range(10):
        raw, expected = label(1000 + seed, columns)
        a, b, c = score(expected, found_in(raw))
        right, missed, wrong = right + len(a), missed + len(b), wrong + len(c)
    assert right / (right + missed) >= LEAST
    assert right / (right + wrong) >= LEAST


def test_every_kind_that_is_tried_is_a_kind_of_fact():
    """And values can be typed as the kinds ask."""
    kinds = {kind for shape in SHAPES for kind, _, _ in shape.says}
    assert kinds <= set(KINDS)
    assert len(kinds) >= 35
    assert set(METHODS) <= set(KINDS["method"].choices)


def page(text, columns=2):
    """One page of columns as PDF."""
    head = '#set page(paper: "us-letter", margin: 40pt)\n#set text(size: 9pt)\n'
    return bytes(typst.compile(f"{head}#columns({columns})[{text}]".encode(), format="pdf"))


def test_columns_are_read_one_after_the_other():
    """Every sentence of a long text in three columns comes out whole and in order."""
    words = [f"Sentence number {n} says that there are {n} of them." for n in range(60)]
    lines, pages = lines_of(page("\n\n".join(words), 3))
    said = [s.text for s in sentences_of(lines)]
    assert said == words
    assert pages == 1


def test_a_word_parted_at_a_line_s_end_is_one_word():
    """A hyphen of the word stays, one that only parts it goes."""
    lines = [
        Line(1, text, (0, 10 * n, 100, 10 * n + 8), 8)
        for n, text in enumerate(("within 4 hours of appli-", "cation of a chemical-", "resistant coat of 2-", "4 mL"))
    ]
    assert [s.text for s in sentences_of(lines)] == [
        "within 4 hours of application of a chemical-resistant coat of 2-4 mL"
    ]


def test_ligatures_and_blanks():
    """As a person would type them."""
    assert plain("e\ufb03cient\u00a0 \ufb01eld") == "efficient field"


def test_running_heads_are_left_out():
    """What stands at the top of every page, but for its number, is no part of the text."""
    text = "#set page(header: [Example label, page #context counter(page).display()])\n" + "#pagebreak()\n".join(
        f"Text of page {n} stands here." for n in range(5)
    )
    lines, pages = lines_of(bytes(typst.compile(text.encode(), format="pdf")))
    assert pages == 5
    assert [line.text for line in lines] == [f"Text of page {n} stands here." for n in range(5)]


def test_each_place_is_on_its_page():
    """The words under a fact's boxes are the fact's words."""
    import pypdfium2

    raw, _ = label(3, 2)
    document = pypdfium2.PdfDocument(raw)
    for one in propose(lines_of(raw)[0]):
        sheet = document[one.page - 1]
        text, height = sheet.get_textpage(), sheet.get_height()
        for left, top, right, bottom in one.boxes:
            assert 0 <= left < right <= sheet.get_width()
            seen = plain(text.get_text_bounded(left, height - bottom, right, height - top))
            assert seen.rstrip("-")[:6] in one.words.replace("- ", "-") or seen[:6] in one.words


@pytest.mark.parametrize(
    ("text", "kind", "value", "sure"),
    [
        ("Rain within 4 hours may lower control.", "hours without rain", "4 hours", "likely"),
        ("Do not apply if rain is forecast within 24 hours.", "hours without rain", "24 hours", "sure"),
        ("Do not apply more than 2.0 lb ai per acre per application or 4.0 lb ai per acre per year.",
         "most per year", "4.0 lb/acre", "unsure"),
        ("Do not exceed 2 gallons of product (8 lb ae) per treated acre in any 12-month period.",
         "most per year", "8 lb/acre", "sure"),
        ("Apply undiluted to the outer ring of freshly cut stumps.", "strongest mix", "100 %", "sure"),
        ("EPA Registration Number: 99999–123–88888", "registration number", "99999-123-88888", "sure"),
        ("RESTRICTED USE PESTICIDE because of harm to plants nearby.", "restricted use", "yes", "sure"),
        ("Use of this product on wetlands is for use in marshes unless the state says otherwise.",
         "site", "wet", "unsure"),
        ("Not for use in Virginia.", "state excluded", "VA", "sure"),
        ("Not for use in West Virginia.", "state excluded", "WV", "sure"),
        ("Avoid use during temperature inversions.", "no inversion", "yes", "likely"),
    ],
)  # fmt: skip
def test_hard_cases(text, kind, value, sure):
    """Ranges, pairs, conditions, advice, names within names (label.md, hard cases)."""
    lines = [Line(1, text, (0, 0, 100, 8), 8)]
    found = [p for p in propose(lines) if p.kind == kind]
    assert [(p.value, p.sure) for p in found] == [(value, sure)]


@pytest.mark.parametrize(
    "text",
    [
        "Rates on other labels may be more than 8 lb per acre.",
        "Wash hands before eating.",
        "Total 100.0 %",
        "Other ingredients 46.2 %",
        "The wind moves spray; watch it.",
    ],
)
def test_what_says_nothing_is_not_proposed(text):
    """No figure out of the blue."""
    kinds = {p.kind for p in propose([Line(1, text, (0, 0, 100, 8), 8)])}
    assert not kinds & {
        "most per year",
        "most per application",
        "strongest wind",
        "ingredient percent",
        "strongest mix",
    }


def test_one_kind_with_two_values_is_sure_of_neither():
    """Two registration numbers on one label: a person looks."""
    lines = [Line(1, f"EPA Reg. No. {n}-1", (0, 20 * n, 100, 20 * n + 8), 8) for n in (1111, 2222)]
    assert {p.sure for p in propose(lines) if p.kind == "registration number"} == {"unsure"}


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (b"", "no_pdf"), (b"not a pdf at all", "no_pdf"), (b"%PDF-1.7\n%%EOF", "no_pdf"),
        (bytes(typst.compile(b"#rect(width: 5cm, height: 5cm)", format="pdf")), "no_text"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_told(raw, message):
    """One word, which the faces turn into a sentence; the same through the child process."""
    with pytest.raises(NotReadable) as wrong:
        read_label(raw)
    assert wrong.value.message == message


def test_a_locked_file():
    """A password is asked for by no one here."""
    import io

    import pikepdf

    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(label(1)[0])) as document:
        document.save(out, encryption=pikepdf.Encryption(owner="a", user="b"))
    with pytest.raises(NotReadable) as wrong:
        read_label(out.getvalue())
    assert wrong.value.message == "locked"


def test_damaged_files_end_in_a_sentence():
    """Two hundred damages of one label: read, or told; never anything else."""
    raw = label(5)[0]
    chance = random.Random(1)
    for _ in range(200):
        broken = bytearray(raw)
        for _ in range(chance.randint(1, 40)):
            broken[chance.randrange(len(broken))] = chance.randrange(256)
        cut = bytes(broken[: chance.randint(1, len(broken))]) if chance.random() < 0.3 else bytes(broken)
        try:
            propose(lines_of(cut)[0])
        except NotReadable as wrong:
            assert wrong.message in {"no_pdf", "locked", "no_pages", "no_text", "too_many_pages"}


@settings(deadline=None)
@given(st.lists(st.text(max_size=60), max_size=12))
def test_any_text_is_read(texts):
    """Whatever stands on the lines, no exception, and every proposal has words and a known kind."""
    lines = [Line(1, text, (0, 10 * n, 100, 10 * n + 8), 8) for n, text in enumerate(texts)]
    assert len(in_order(lines)) == len(lines)
    for one in propose(lines):
        assert one.kind in KINDS
        assert one.words


def cli(*words):
    """The command as a user runs it."""
    return subprocess.run([sys.executable, "-m", "stemward.cli", *words], capture_output=True, text=True, check=False)


def test_the_command(tmp_path):
    """Lines with pages; data; a shelf's facts that the gate reads as proposed."""
    raw, _ = label(7, 3)
    (tmp_path / "label.pdf").write_bytes(raw)
    done = cli("label", str(tmp_path / "label.pdf"), "--toml", str(tmp_path / "facts.toml"))
    assert done.returncode == 0, done.stderr
    assert "None is read" in done.stdout
    assert "Page 1" in done.stdout
    data = json.loads(cli("label", str(tmp_path / "label.pdf"), "--json").stdout)
    assert data["pages"] == 1
    assert len(data["proposed"]) > 20
    from stemward.gate.demo import texts
    from stemward.gate.folder import read_texts
    from stemward.handbook import load

    files = texts()
    head = files["shelf/imazapyr-2lb.toml"].partition("[[facts]]")[0]
    files["shelf/imazapyr-2lb.toml"] = head + (tmp_path / "facts.toml").read_text()
    (product,) = [p for p in read_texts(files, load().find_species, KINDS).tract.shelf if p.id == "imazapyr-2lb"]
    assert len(product.facts) == len(data["proposed"])
    assert {fact.reading for fact in product.facts} == {"proposed"}
    assert cli("label", str(tmp_path / "none.pdf")).returncode == 2
    (tmp_path / "no.pdf").write_bytes(b"no")
    said = cli("label", str(tmp_path / "no.pdf"))
    assert said.returncode == 2
    assert "This is no PDF" in said.stderr + said.stdout


def test_a_fact_said_twice_is_one_with_both_places():
    """The surer place leads, the other is kept; the same words twice are one place."""
    lines = [
        Line(1, "RESTRICTIONS", (0, 0, 100, 8), 8),
        Line(1, "If wind exceeds 10 mph, do not apply.", (0, 20, 100, 28), 8),
        Line(2, "RESTRICTIONS", (0, 0, 100, 8), 8),
        Line(2, "Do not apply when wind speed is above 10 mph.", (0, 20, 100, 28), 8),
        Line(3, "RESTRICTIONS", (0, 0, 100, 8), 8),
        Line(3, "Do not apply when wind speed is above 10 mph.", (0, 20, 100, 28), 8),
    ]
    (wind,) = [p for p in propose(lines) if p.kind == "strongest wind"]
    assert [place.page for place in (wind, *wind.also)] in ([1, 2], [2, 1])
    assert {one.words for one in at_each_place(wind)} == {lines[1].text, lines[3].text}


def test_a_way_named_by_a_heading_points_at_the_heading():
    lines = [
        Line(1, "BASAL BARK TREATMENT", (0, 0, 100, 8), 8),
        Line(1, "Old bark takes longer to wet.", (0, 20, 100, 28), 8),
    ]
    (way,) = [p for p in propose(lines) if p.kind == "method"]
    assert (way.value, way.words, way.boxes) == ("basal bark", "BASAL BARK TREATMENT", ((0, 0, 100, 8),))


def test_a_heading_in_capitals_within_a_paragraph_ends_the_part_before():
    lines = [
        Line(1, "ENVIRONMENTAL HAZARDS", (0, 0, 100, 8), 8),
        Line(1, "This product is toxic to fish. DIRECTIONS FOR USE: It is a violation of", (0, 20, 100, 28), 8),
        Line(1, "Federal law to use it in a manner inconsistent with its labeling.", (0, 30, 100, 38), 8),
    ]
    said = [p.value for p in propose(lines) if p.kind == "environmental hazard"]
    assert said == ["This product is toxic to fish."]


def test_the_command_line_names_the_other_pages():
    place = Place(7, ((0.0, 0.0, 1.0, 1.0),), "Never apply in winds over 10 mph.")
    one = Proposed("strongest wind", "10 mph", 3, ((0.0, 0.0, 1.0, 1.0),), "No spraying above 10 mph.", also=(place,))
    assert "Page 3, again on 7; " in "\n".join(fact_lines([one], 9))


def test_a_sentence_with_a_list_of_its_own_leaves_the_one_before():
    """What mixers wear opens no list for the handlers' own."""
    texts = ("EQUIPMENT", "Mixers must wear:", "• Goggles", "• Handlers must use: coveralls; long pants; a respirator.")
    found = propose([Line(1, text, (0, 20 * n, 100, 20 * n + 8), 8) for n, text in enumerate(texts)])
    roles = {p.value: dict(p.scope).get("role") for p in found if p.kind == "equipment"}
    assert roles == {"goggles": ("mixer",), "coveralls": None, "long pants": None, "respirator": None}


def test_where_two_sentences_ran_into_one_nothing_is_sure():
    """For want of a stop a figure may be for what the other speaks of."""
    text = "REI: 4 HRS The interval stands with the directions for each crop."
    assert [(p.value, p.sure) for p in propose([Line(1, text, (0, 0, 300, 8), 8)]) if p.kind == "entry interval"] == [
        ("4 hours", "likely")
    ]
