"""The face of paper and drawings: vendored, and really used."""

from pathlib import Path

import pypdfium2
import pytest
import typst

FONTS = Path(__file__).parents[2] / "src/stemward/paper/fonts"
LETTERS = "áéíñóúü¿¡ÁÉÍÑÓÚÜ ½ × · – “ ” ° ² ± → …".replace("→", "")


def compiled(source: str) -> tuple[bytes, list[str]]:
    """A PDF and the compiler's warnings."""
    pdf, warnings = typst.compile_with_warnings(
        source.encode(), format="pdf", ignore_system_fonts=True, font_paths=[str(FONTS)]
    )
    return bytes(pdf), [w.message for w in warnings]


@pytest.mark.parametrize("weight", ["regular", "bold"])
def test_typst_finds_and_embeds_the_face(weight):
    """The PDF holds the face in both weights, and no warning about an unknown one."""
    source = f'#set text(font: "Atkinson Hyperlegible", weight: "{weight}", fallback: false)\nStump {LETTERS}'
    pdf, warnings = compiled(source)
    assert not warnings
    assert f"AtkinsonHyperlegible-{weight.title()}".encode() in pdf


def test_spanish_and_signs_are_in_the_face():
    """Every letter of Spanish and every sign used in sentences comes out as itself."""
    pdf, _ = compiled(f'#set text(font: "Atkinson Hyperlegible", fallback: false)\n{LETTERS}')
    page = pypdfium2.PdfDocument(pdf)[0].get_textpage().get_text_range()
    assert [c for c in LETTERS if c.strip() and c not in page] == []


def test_licence_stands_beside_the_face():
    """The open font licence is there, with the copyright it asks to be kept."""
    licence = (FONTS / "OFL.txt").read_text()
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence and "Braille Institute" in licence
