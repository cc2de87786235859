"""Pages as labels lay them out: tables, columns under wide lines, lists, run-in headings, letters, pictures."""

import io
import shutil

import pypdfium2
import pytest
import typst

from stemward.gate.label_ocr import lines_from_table
from stemward.gate.label_pdf import page_picture, page_words, read_label
from stemward.label.reader import Line, NotReadable, lines_of, proposed_of, sentences_of

HEAD = '#set page(paper: "us-letter", margin: 40pt)\n#set text(size: 9pt)\n'
TABLES = """
#text(12pt)[*RESTRICTIONS*]

Some words before the table.
#table(columns: (auto, 1fr, 1fr), [Site], [Maximum per application (lb ae/acre)], [Maximum per year (lb ae/acre)],
 [Forests], [4], [8], [Pasture and rangeland], [1], [2])

#text(12pt)[*CUT STUMP TREATMENT*]
#table(columns: 4, [Species group], [Mix (% v/v)], [Carrier], [Time from cut],
 table.cell(rowspan: 2)[All], [20 to 30], [in oil], [any time], [50-100], [water], [within 5 minutes of cutting])
"""


def pdf(body):
    """One label as PDF."""
    return bytes(typst.compile((HEAD + body).encode(), format="pdf"))


def said(raw):
    """Kind, value and scope of all that is proposed."""
    return {(p.kind, p.value, p.scope) for p in proposed_of(sentences_of(lines_of(raw)[0]))}


def test_a_table_s_cells_carry_the_heads_of_their_row_and_column():
    """Units that stand in the head alone, and a cell that stands for two rows."""
    found = said(pdf(TABLES))
    stump, woods, pasture = ("method", ("cut stump",)), ("site", ("woods",)), ("site", ("pasture",))
    assert {
        ("most per application", "4 lb/acre", (woods,)), ("most per year", "8 lb/acre", (woods,)),
        ("most per application", "1 lb/acre", (pasture,)), ("most per year", "2 lb/acre", (pasture,)),
        ("weakest mix", "20 %", (stump,)), ("strongest mix", "30 %", (stump,)), ("carrier", "oil", (stump,)),
        ("strongest mix", "100 %", (stump,)), ("carrier", "water", (stump,)),
        ("longest from cut to treatment", "5 minutes", (stump,)),
    } <= found  # fmt: skip
    assert not {f for f in found if f[0] == "most per year"} - {
        ("most per year", "8 lb/acre", (woods,)), ("most per year", "2 lb/acre", (pasture,)),
    }  # fmt: skip


def test_two_strengths_of_one_way_are_sure_of_neither():
    """30 % and 100 % for stumps, by groups of species: a person reads the table."""
    found = proposed_of(sentences_of(lines_of(pdf(TABLES))[0]))
    assert {p.sure for p in found if p.kind == "strongest mix"} == {"unsure"}


def test_columns_below_and_above_wide_lines_are_read_one_after_the_other():
    """Two columns between two wide paragraphs, and a table across both columns."""
    left = [f"Sentence {n} of the first text says that it is number {n} of all." for n in range(24)]
    body = (
        "A wide line stands above all of it and goes from one side of the page to the other, whatever comes below it.\n"
        f"#columns(2)[{' '.join(left)}]\n"
        "#table(columns: (1fr, 1fr), [Site], [Carrier], [Woods], [oil])\n"
        "A wide line stands below all of it and goes from one side of the page to the other, as the first one did."
    )
    texts = [s.text for s in sentences_of(lines_of(pdf(body))[0])]
    assert texts[0].startswith("A wide line stands above")
    assert texts[1:25] == left
    assert texts[25] == "Site: Woods; Carrier: oil"
    assert texts[26].startswith("A wide line stands below")


def test_lines_of_a_list_stand_under_what_opened_it():
    """The role of those who wear it is said once, above the list."""
    body = """
*PERSONAL PROTECTIVE EQUIPMENT (PPE)*

Mixers and loaders must wear:
- a chemical-resistant apron
- goggles

*ENVIRONMENTAL HAZARDS*

Keep it out of water.
"""
    found = said(pdf(body))
    mixer = (("role", ("mixer",)),)
    assert ("equipment", "chemical-resistant apron", mixer) in found
    assert ("equipment", "goggles", mixer) in found
    assert ("environmental hazard", "Keep it out of water.", ()) in found


def test_a_heading_in_its_paragraph_opens_the_part():
    """The part's name in bold, then its words on the same line."""
    body = "Example, invented\n\n*Basal Bark Treatment:* Mix 20 to 30% of this product in oil.\n\n*WARRANTY* \n\nNone."
    assert ("strongest mix", "30 %", (("method", ("basal bark",)),)) in said(pdf(body))


def test_a_letter_to_the_maker_says_nothing_but_numbers():
    """What an agency writes about rates in its letter is no label."""
    body = """
Dear Sir or Madam,

EPA Reg. No. 99999-12. Do not apply more than 9 lb ae per acre per year, as you wrote.

Sincerely, the branch
#pagebreak()
*RESTRICTIONS*

Do not apply more than 8 lb ae per acre per year.
"""
    found = said(pdf(body))
    assert {(kind, value) for kind, value, _ in found} == {
        ("registration number", "99999-12"),
        ("most per year", "8 lb/acre"),
    }


def pictured(raw):
    """The same pages as pictures without text, a little grey, as a scanner leaves them."""
    from PIL import Image

    pages = [page.render(scale=200 / 72, grayscale=True).to_pil() for page in pypdfium2.PdfDocument(raw)]
    grey = [Image.eval(page, lambda v: min(245, v + 25)) for page in pages]
    out = io.BytesIO()
    grey[0].save(out, "PDF", save_all=True, append_images=grey[1:], resolution=200)
    return out.getvalue()


SCAN = "*RESTRICTIONS*\n\nDo not apply more than 8 lb ae per acre per year.\n\nDo not apply when wind exceeds 10 mph."


@pytest.mark.skipif(not shutil.which("tesseract"), reason="Tesseract is not installed")
def test_pictures_of_pages_are_made_out_and_never_sure():
    """The figures are found, each unsure, and the whole says that it comes from pictures."""
    found = read_label(pictured(pdf(f"#set text(size: 12pt)\n{SCAN}")))
    assert found.pictures
    assert {("most per year", "8 lb/acre"), ("strongest wind", "10 mph")} <= {(p.kind, p.value) for p in found.proposed}
    assert {p.sure for p in found.proposed} == {"unsure"}


def test_words_made_out_are_put_together_by_line():
    """Tesseract's table, invented, with a word it is not sure of and a line that is no line."""
    names = "level page_num block_num par_num line_num word_num left top width height conf text".split()
    rows = [
        "5 1 1 1 1 1 300 300 150 50 96.1 Within".split(),
        "5 1 1 1 1 2 480 300 60 50 91.0 4".split(),
        "5 1 1 1 1 3 560 300 60 50 12.0 ~~".split(),
        "5 1 1 1 2 1 300 400 150 50 95.5 hours".split(),
        "4 1 1 1 2 0 300 400 150 50 -1".split(),
    ]
    lines = lines_from_table("\n".join("\t".join(row) for row in [names, *rows]), 3)
    assert [(line.text, line.page, line.picture) for line in lines] == [("Within 4", 3, True), ("hours", 3, True)]
    assert lines[0].box == (72.0, 72.0, pytest.approx(129.6), pytest.approx(84.0))


def test_parts_words_and_pictures_of_a_page():
    """What a page needs to show a label: its parts in order, words with places, and a picture of the size asked for."""
    raw = pdf(f"Example, invented\n\n{SCAN}\n\n*STORAGE AND DISPOSAL*\n\nKeep it dry.")
    found = read_label(raw)
    assert [(part.name, part.heading) for part in found.parts] == [
        ("front", ""), ("restrictions", "RESTRICTIONS"), ("storage", "STORAGE AND DISPOSAL"),
    ]  # fmt: skip
    assert found.parts[1].text.split() == SCAN.partition("\n")[2].split()
    assert found.parts[1].top_pt < found.parts[2].top_pt
    words = page_words(raw, 1)
    assert (words.width_pt, words.height_pt) == (612.0, 792.0)
    assert "RESTRICTIONS" in [word.text for word in words.words]
    from PIL import Image

    assert Image.open(io.BytesIO(page_picture(raw, 1, 2.0))).size == (1224, 1584)
    for act in (page_words, page_picture):
        with pytest.raises(NotReadable) as wrong:
            act(raw, 2)
        assert wrong.value.message == "no_page"


NAMES = """
#text(12pt)[*WOODY PLANTS CONTROLLED*]
#table(columns: 3, [Red maple], [Kudzu], [Black locust], [Box elder], [Sweetgum], [Privet])

#text(12pt)[*DIRECTIONS FOR USE*]

The following plants are tolerant and will not be controlled:
#table(columns: 3, [White oak], [Green ash], [Red pine])
"""


def test_a_table_of_names_has_no_heads():
    """Each cell is a name, the first row's too; what is tolerant is no plant that it works on."""
    plants = {value for kind, value, _ in said(pdf(NAMES)) if kind == "plant"}
    assert plants == {"red maple", "kudzu", "black locust", "box elder", "sweetgum", "privet"}


NO_RULES = """
#text(12pt)[*ENVIRONMENTAL HAZARDS*]

Keep these distances when you spray.

#grid(columns: (90pt, 60pt), row-gutter: 8pt, [*From*], [*Feet*], [Streams and lakes], [50 feet], [Wells], [100 feet])

#text(12pt)[*RESTRICTIONS*]

#grid(columns: (90pt, 90pt), row-gutter: 8pt, [*Site*], [*Most per year*],
  [Forests], [8 lb ae/acre], [Pastures], [2 lb ae/acre])
"""


def test_a_table_without_rules_is_read_row_by_row():
    """Its heads open the rows, and what a row begins with is what its figure is for."""
    found = said(pdf(NO_RULES))
    assert {("distance to water", "50 ft", ()), ("distance to wells", "100 ft", ())} <= found
    assert ("most per year", "8 lb/acre", (("site", ("woods",)),)) in found
    assert ("most per year", "2 lb/acre", (("site", ("pasture",)),)) in found


def test_a_short_line_ends_its_paragraph():
    """A row without a stop does not run into the sentence under it."""
    lines = [
        Line(1, text, (0, 12 * n, wide, 12 * n + 8), 8)
        for n, (text, wide) in enumerate(
            [
                ("RESTRICTIONS", 80),
                ("Do not treat more than half of the trees of any one stand", 240),
                ("in one season, and leave the rest to stand for another year.", 240),
                ("Entry interval: 4 hours", 90),
                ("Workers may come back at once where no more than a tenth of", 240),
                ("the stand was treated by cut stump work alone this year.", 220),
            ]
        )
    ]
    texts = [one.text for one in sentences_of(lines)]
    assert "Entry interval: 4 hours" in texts
    assert texts[-1].startswith("Workers may come back")
