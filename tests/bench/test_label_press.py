"""The press for invented labels: it prints what it says, holds a third back, and counts fairly."""

import io
import random
import re
from collections import Counter
from dataclasses import dataclass, replace

import pypdfium2
import pytest
from label_match import same_value, score, twin
from label_press import LAYOUTS, Layout, layout, press
from label_scan import scanned
from label_shapes import Fact, Printed, Shape, all_shapes, groups, printed, split

from stemward.label.facts import KINDS


def bare(text: str) -> str:
    """Letters and figures alone: lines are broken and words divided as the layout needs it."""
    return re.sub(r"[^\w%°½]", "", text.casefold())


def text_of(pdf: bytes) -> str:
    """The text as it is kept in the file, pages one after the other, without running heads and feet."""
    document = pypdfium2.PdfDocument(io.BytesIO(pdf))
    return "\n".join(page.get_textpage().get_text_range() for page in document)


@pytest.mark.parametrize("held_back", [False, True])
@pytest.mark.parametrize("number", [*range(8)])
def test_what_it_says_it_printed_stands_in_the_file(number: int, held_back: bool) -> None:
    label = press(number, held_back, replace(layout(number), running_head=False, feet=False))
    found = bare(text_of(label.pdf))
    for line in label.lines:
        assert bare(line.plain) in found, line.plain


def test_every_number_of_a_fact_stands_in_its_sentence_or_comes_from_its_numbers() -> None:
    for n, shape in enumerate(all_shapes()):
        line = printed(shape, random.Random(n))
        for fact in (f for f in line.says if re.match(r"[\d.]+ (lb|days|hours|feet|ft|mph|F)", f.value)):
            assert re.search(rf"(?<![\d.]){re.escape(fact.value.split()[0])}(?![\d])", line.text), line


def test_a_third_of_the_shapes_of_each_group_is_held_back() -> None:
    for group in groups():
        some = [s for s in all_shapes() if s.group == group and not s.decoy]
        assert len(some) >= 9, group
        assert sum(s.held_back for s in some) == round(len(some) / 3), group
        decoys = [s for s in all_shapes() if s.group == group and s.decoy]
        assert decoys, group


def test_the_split_does_not_hang_on_the_order_of_the_lines() -> None:
    some = [replace(s, held_back=False) for s in all_shapes() if s.group == groups()[3]]
    turned = split(some[::-1])
    assert {s.text for s in split(some) if s.held_back} == {s.text for s in turned if s.held_back}


def test_a_label_of_shown_shapes_prints_none_that_is_held_back() -> None:
    for number in range(4):
        assert not any(line.shape.held_back for line in press(number).lines)
        assert all(line.shape.held_back for line in press(number, held_back=True).lines)


def test_the_same_number_prints_the_same_label() -> None:
    assert press(5).lines == press(5).lines


def test_all_kinds_are_kinds_a_label_can_say() -> None:
    assert {fact.kind for shape in all_shapes() for fact in shape.says} <= set(KINDS)


def test_layouts_go_through_all_that_there_are() -> None:
    some = [layout(n) for n in range(LAYOUTS)]
    assert Counter(look.columns for look in some).keys() == {1, 2, 3, 4}
    assert {look.head for look in some} >= {"block", "run-in", "numbered"}
    assert {look.flow for look in some} == {"lines", "bullets", "together"}
    for name in ("old", "spanish", "boxed", "running_head", "justify", "marks", "letter"):
        assert {getattr(look, name) for look in some} == {True, False}


def test_a_scanned_label_has_its_words_in_pictures_only() -> None:
    from stemward.gate.label_ocr import can_read_pictures
    from stemward.gate.label_pdf import read_label

    label = press(0, look=Layout(2, size_pt=8.0, between_em=1.0))
    raw = scanned(label.pdf, 1)
    assert text_of(raw).strip() == ""
    if not can_read_pictures():
        pytest.skip("no Tesseract here")
    read = read_label(raw)
    assert read.pictures
    number = next(fact.value for line in label.lines for fact in line.says if fact.kind == "registration number")
    assert number in {p.value for p in read.proposed if p.kind == "registration number"}


# the matcher


@dataclass(frozen=True)
class Read:
    """A proposal as the reader gives it."""

    kind: str
    value: str
    words: str
    sure: str = "sure"
    scope: tuple[tuple[str, tuple[str, ...]], ...] = ()


def line(text: str, *says: Fact, part: str = "restrictions") -> Printed:
    return Printed(Shape("any", part, text, says), text, says)


YEAR = line("Do not apply more than 8 lb ae per acre per year.", Fact("most per year", "8 lb/acre"))
PASTURE = line(
    "On pasture do not go above 1 lb ae/A/yr.", Fact("most per year", "1 lb/acre", (("site", "pasture"),))
)  # fmt: skip
DECOY = line("Fish tastes best in autumn.")


@pytest.mark.parametrize(
    ("kind", "one", "other", "same"),
    [
        ("shortest interval", "14 days", "2 weeks", True),
        ("shortest interval", "12 months", "1 year", True),
        ("shortest interval", "12 months", "12 days", False),
        ("entry interval", "4 hours", "4 h", True),
        ("most per year", "8 lb/acre", "8.0 lb/acre", True),
        ("most per year", "8 lb/acre", "8 gal/acre", False),
        ("most per application", "2 qt/acre", "0.5 gal/acre", True),
        ("strongest mix", "1.5625 %", "1.562 %", True),
        ("strongest mix", "25 %", "33.3 %", False),
        ("distance to water", "10 yd", "30 ft", True),
        ("greatest heat", "85 F", "85 °F", True),
        ("acid per volume", "3 lb/gal", "3 lb ae/gal", True),
        ("signal word", "danger", "DANGER", True),
        ("registration number", "99999-1", "99999-12", False),
        ("season forbidden", "sap flow", "heavy sap flow", True),
        ("season forbidden", "snow", "rain", False),
        ("first aid", "If on skin: wash with soap.", "wash with soap", True),
        ("first aid", "If on skin: wash with soap.", "Call a doctor.", False),
        ("most applications", "2", "2", True),
        ("most applications", "2", "3", False),
    ],
)  # fmt: skip
def test_values_are_compared_as_what_they_mean(kind: str, one: str, other: str, same: bool) -> None:
    assert same_value(kind, one, other) is same
    assert same_value(kind, other, one) is same


def test_the_figure_in_brackets_is_the_other_units_twin() -> None:
    assert twin("85 F", "29 C")
    assert not twin("85 F", "35 C")
    assert twin("25 ft", "7.6 m")
    assert not twin("25 ft", "26 ft")


def test_a_fact_with_its_scope_at_its_sentence_is_right() -> None:
    done = score([YEAR, PASTURE], [Read("most per year", "8 lb/acre", YEAR.text)])
    assert [fact.value for _, fact, _ in done.right] == ["8 lb/acre"]
    assert [fact.value for _, fact, _ in done.missed] == ["1 lb/acre"]
    assert done.wrong == []


def test_without_its_scope_it_is_missed_and_wrong() -> None:
    done = score([PASTURE], [Read("most per year", "1 lb/acre", PASTURE.text)])
    assert not done.right
    assert len(done.missed) == 1
    assert [read.value for _, read in done.wrong] == ["1 lb/acre"]


def test_at_another_sentence_it_is_missed() -> None:
    done = score([YEAR, DECOY], [Read("most per year", "8 lb/acre", DECOY.text)])
    assert not done.right
    assert len(done.missed) == len(done.wrong) == 1


def test_anything_out_of_a_decoy_is_wrong() -> None:
    done = score([DECOY], [Read("environmental hazard", DECOY.text, DECOY.text)])
    assert [spot for spot, _ in done.wrong] == [DECOY]


def test_what_may_be_read_or_not_counts_neither_way() -> None:
    either = line("Use only once.", Fact("most applications", "1", counts=False))
    assert score([either], []).missed == []
    done = score([either], [Read("most applications", "1", either.text)])
    assert done.right == done.wrong == []


def test_a_sentence_of_a_part_that_is_read_whole_is_not_held_against_the_reader() -> None:
    buffer = line("Do not apply within 25 feet of ponds.", Fact("distance to water", "25 ft"), part="environment")
    assert score([buffer], [Read("environmental hazard", buffer.text, buffer.text)]).wrong == []
    aid = score([buffer], [Read("first aid", buffer.text, buffer.text)])
    assert len(aid.wrong) == 1


def test_one_fact_proposed_twice_counts_once() -> None:
    done = score(
        [YEAR], [Read("most per year", "8 lb/acre", YEAR.text), Read("most per year", "8 lb/acre", YEAR.text[:-1])]
    )
    assert len(done.right) == 1
    assert done.wrong == []


@pytest.mark.parametrize("number", [*range(6)])
def test_whoever_reads_all_that_is_printed_and_no_more_is_right_in_all(number: int) -> None:
    label = press(number)
    facts = [(line, fact) for line in label.lines for fact in line.says if fact.counts]
    read = [
        Read(f.kind, f.value, line.plain, scope=tuple((k, tuple(v.split("+"))) for k, v in f.scope))
        for line, f in facts
    ]
    done = score(label.lines, read, label.furniture)
    assert (len(done.right), done.missed, done.wrong) == (len(facts), [], [])


@pytest.mark.parametrize("number", [*range(6)])
def test_who_gets_every_figure_wrong_is_right_in_none(number: int) -> None:
    label = press(number)
    facts = [
        (line, f) for line in label.lines for f in line.says if f.counts and re.fullmatch(r"[\d.]+ [a-zF%/]+", f.value)
    ]
    read = [
        Read(f.kind, f"{7 * float(f.value.split()[0]) + 1:.6g} {f.value.split()[1]}", line.plain,
             scope=tuple((k, tuple(v.split("+"))) for k, v in f.scope))
        for line, f in facts
    ]  # fmt: skip
    done = score(label.lines, read, label.furniture)
    assert done.right == []
    assert len(done.wrong) == len({(r.kind, r.value, r.scope, r.words) for r in read})


def test_headings_that_name_a_way_of_treatment_count_neither_way() -> None:
    heading = "CUT STUMP TREATMENT"
    assert score([YEAR], [Read("method", "cut stump", heading)], [heading]).wrong == []
    assert len(score([YEAR], [Read("signal word", "danger", heading)], [heading]).wrong) == 1


def test_a_row_of_a_table_is_place_enough() -> None:
    table = line(
        "#table From & Feet // Streams and lakes & 10 feet // Wells & 30 feet", Fact("distance to wells", "30 ft")
    )
    assert len(score([table], [Read("distance to wells", "30 ft", "Wells 30 feet")]).right) == 1
