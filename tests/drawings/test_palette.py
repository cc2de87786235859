"""Colours: their contrast, and that dye and brick mean one thing each."""

import re
from pathlib import Path

import pytest

from stemward import drawings
from stemward.drawings import DUSK, LIGHT, SUN, contrast

ROOMS = Path(__file__).parents[2] / "src/stemward"
GROUNDS = ("paper", "page", "white", "dye_wash", "moss_wash", "brick_wash")

# Contrast ratios of ink on ground as the palette was chosen by; formula: W3C, Web Content Accessibility Guidelines
# 2.2, 2023, "contrast ratio". Computed once outside this project's code and rounded to two places.
TABLE = {
    "ink": (16.28, 14.41, 17.40, 12.41, 13.46, 13.35),
    "ash": (9.01, 7.98, 9.64, 6.87, 7.45, 7.39),
    "bark": (11.86, 10.50, 12.68, 9.04, 9.81, 9.72),
    "moss": (5.59, 4.94, 5.97, 4.26, 4.62, 4.58),
    "dye": (8.94, 7.92, 9.56, 6.82, 7.39, 7.33),
    "brick": (6.87, 6.08, 7.34, 5.24, 5.68, 5.63),
    "chaff": (1.77, 1.56, 1.89, 1.35, 1.46, 1.45),
}
SUN_ON_WHITE = {"ink": 21.0, "dye": 12.12, "brick": 9.6, "moss": 10.23}
DUSK_ON_GROUND_AND_RAISED = {
    "ink": (16.23, 13.90),
    "ash": (10.86, 9.30),
    "bark": (7.92, 6.78),
    "moss": (10.63, 9.10),
    "dye": (9.24, 7.91),
    "brick": (9.35, 8.01),
}


@pytest.mark.parametrize("colour", sorted(TABLE))
def test_contrast_is_what_the_palette_was_chosen_for(colour):
    """Each colour on each light ground has the ratio of the table."""
    found = [contrast(LIGHT[colour], LIGHT[ground]) for ground in GROUNDS]
    assert found == pytest.approx(TABLE[colour], abs=0.0051)


def test_sun_and_dusk_have_their_contrasts():
    """The palettes for glare and for the dark have the ratios they were chosen for."""
    for colour, ratio in SUN_ON_WHITE.items():
        assert contrast(SUN[colour], SUN["paper"]) == pytest.approx(ratio, abs=0.051)
    for colour, ratios in DUSK_ON_GROUND_AND_RAISED.items():
        found = [contrast(DUSK[colour], DUSK[ground]) for ground in ("paper", "page")]
        assert found == pytest.approx(ratios, abs=0.0051)


def test_black_on_white_is_twenty_one_to_one():
    """The formula's own ends: 21 for black on white, 1 for a colour on itself."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#4F6B43", "#4F6B43") == 1.0


@pytest.mark.parametrize("theme", [LIGHT, SUN, DUSK])
def test_words_and_lines_keep_their_floors(theme):
    """Words at least 7 : 1 on their ground, lines and symbols at least 4.5 : 1, dye on its own wash too."""
    for ground in ("paper", "page"):
        for words in ("ink", "ash"):
            assert contrast(theme[words], theme[ground]) >= 7
        for lines in ("bark", "dye", "brick", "moss"):
            assert contrast(theme[lines], theme[ground]) >= 4.5
    assert contrast(theme["dye"], theme["dye_wash"]) >= 4.5
    assert contrast(theme["brick"], theme["brick_wash"]) >= 4.5


def test_themes_have_the_same_colours():
    """A colour that exists in one theme exists in all."""
    assert set(LIGHT) == set(SUN) == set(DUSK)


DRY = {
    "bar": drawings.check_bar(5.08, "2 in"),
    "plan": drawings.plan_drawing(
        [("p", [[(0, 0), (50, 0), (50, 40)]])],
        [(3.0, 2.0)],
        [("w", "water", {"kind": "line", "rings": [[(0, 0), (9, 9)]]})],
        "us",
        "paces",
        [("gate", "gate", (1.0, 1.0))],
    ),
    "water only": drawings.pour_ladder(500, [], [("water", 200, False), ("dye", 0.1, False)], ["a", "b"]),
}


@pytest.mark.parametrize("name", sorted(DRY))
def test_no_dye_and_no_brick_where_there_is_no_herbicide(name):
    """Land, water, bars and a bottle without herbicide hold neither dye blue nor brick."""
    for colour in ("dye", "dye_wash", "brick", "brick_wash"):
        assert LIGHT[colour] not in DRY[name].svg


def test_dye_is_named_only_where_herbicide_is_drawn():
    """In the code, dye is used by the wet area, the drop, the wedge of a cut and the treated stem; brick by stop."""
    users = {"dye": set(), "brick": set()}
    for page in (ROOMS / "drawings").glob("*.py"):
        for number, written in enumerate(page.read_text().splitlines(), 1):
            for colour in users:
                if page.stem != "palette" and re.search(rf'"{colour}(_wash)?"', written):
                    users[colour].add((page.stem, number))
    assert {stem for stem, _ in users["dye"]} == {"svg", "cuts", "shapes"}
    assert {stem for stem, _ in users["brick"]} == {"shapes"} and len(users["brick"]) == 1


def test_packet_uses_brick_for_stop_and_dye_for_nothing():
    """The packet's template leaves dye to the drawings, and brick stands only where a stop does."""
    packet = (ROOMS / "paper/packet.typ").read_text()
    assert "dye" not in packet.replace("d.palette.dye", "").split("#set document")[1]
    uses = [line for line in packet.splitlines() if re.search(r"\bbrick(-wash)?\b", line)][2:]
    assert uses and all('"stop"' in line for line in uses)
