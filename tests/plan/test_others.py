"""Kill rates of others: counted as chosen, for the same treatment only, never over the most that books count for."""

import datetime
from dataclasses import replace

import pytest

from ledger.some import hollow
from ledger.test_revisits import seen, treated
from plan.test_killed import BOOK, GLYPHOSATE
from stemward.kinds import OthersRate
from stemward.plan import as_data, draw_up
from stemward.plan.ahead import outlook
from stemward.plan.behind import Asked, counted_stems, expected
from stemward.plan.killed import killed
from stemward.say.worked import killed_words

CONTENTS = next(p for p in hollow().shelf if p.id == "glyphosate-4lb-wet").contents
ASKED = Asked("Lonicera maackii", "cut stump", CONTENTS, 0.5)
BAD = OthersRate("r1", "next door", "Lonicera maackii", "cut stump", ("glyphosate",), 4, 4, 40, 50.0, share=1.0)

FRANGULA = replace(BAD, species="Frangula alnus")


def test_nothing_counts_until_it_is_chosen():
    assert expected(ASKED, BOOK, [replace(BAD, share=0.0)]) == expected(ASKED, BOOK)


def test_they_pull_what_is_expected_toward_what_they_saw_the_more_the_larger_their_share():
    means = []
    for share in (0.0, 0.1, 0.5, 1.0):
        prior = expected(ASKED, BOOK, [replace(BAD, share=share)]).prior
        means.append(prior.a / (prior.a + prior.b))
    assert means == sorted(means, reverse=True) and means[0] - means[-1] > 0.1


def test_stems_of_one_day_count_for_fewer():
    """Forty stems of four days: each day's ten count as 10 / (1 + 9 x 0.1), Kish 1965 with the likeness expected."""
    assert counted_stems(BAD) == pytest.approx(40 / 1.9)
    assert counted_stems(replace(BAD, works=40)) == 40
    assert counted_stems(replace(BAD, works=1)) == pytest.approx(40 / 4.9)


def test_all_together_never_count_for_more_than_the_most_of_books():
    most = BOOK.defaults["prior_most_stems"].number
    found = expected(ASKED, BOOK, [replace(BAD, id=str(n), works=40) for n in range(5)])
    assert found.worth == pytest.approx(most) and 0 < found.others_worth < most


@pytest.mark.parametrize(
    "other",
    [
        {"species": "Frangula alnus"},
        {"method": "basal bark"},
        {"ingredients": ("triclopyr",)},
        {"ingredients": ("glyphosate", "imazapyr")},
        {"percent": 2.0},
        {"ae_g_l": 5.0},
    ],
)
def test_another_treatment_says_nothing_of_this_one(other):
    assert expected(ASKED, BOOK, [replace(BAD, **other)]) == expected(ASKED, BOOK)


def test_where_no_book_speaks_they_speak_alone():
    asked = replace(ASKED, how="girdle")
    alone = [replace(BAD, method="girdle")]
    assert expected(asked, BOOK).prior is None
    found = expected(asked, BOOK, alone)
    assert found.low is not None and found.high <= 4


def test_the_years_ahead_and_the_ways_count_them_too():
    """One figure wherever it is asked for: the way on the plan has the tenths of the page of what worked."""
    land = replace(hollow(entries=(treated(**GLYPHOSATE), seen("s", "2026-09-25", ["t1"], 3, 17))), rates=(FRANGULA,))
    (one,) = killed(land, BOOK)
    plan = as_data(draw_up(land, BOOK, datetime.date(2026, 10, 3), "x"))
    item = next(t for t in plan["treatments"] if t["species"] == "Frangula alnus")
    way = next(w for w in item["ways"] if w["how"] == "cut stump" and w["product"] == "glyphosate-4lb-wet")
    assert (way["low"], way["high"]) == one.ten and one.others_worth > 10
    # Of the way that the plan takes others saw next to nothing die.
    taken = {"method": item["how"], "percent": 100 * item["concentration_frac"]}
    names = tuple(one["ingredient"] for one in item["ingredients"])
    left = [
        next(path.band()[2][1] for path in outlook(tract, plan, BOOK).paths if path.name == "treat once")
        for tract in (replace(land, rates=(replace(FRANGULA, ingredients=names, **taken),)), replace(land, rates=()))
    ]
    assert left[0] > left[1]


def test_what_worked_tells_how_many_of_the_stems_are_others():
    land = replace(hollow(entries=(treated(**GLYPHOSATE), seen("s", "2026-09-25", ["t1"], 3, 17))), rates=(FRANGULA,))
    (one,) = killed(land, BOOK)
    (plain,) = killed(replace(land, rates=()), BOOK)
    assert one.belief.mean < plain.belief.mean
    lines = killed_words(one, {}, BOOK)["lines"]
    assert any("are stems that others saw" in line for line in lines)
    assert not any("others saw" in line for line in killed_words(plain, {}, BOOK)["lines"])


def test_the_page_names_who_speaks_beside_the_own_stems():
    """Books are named only where one speaks: with 7 stems of others and none of a book, others speak alone."""
    land = replace(hollow(entries=(treated(**GLYPHOSATE), seen("s", "2026-09-25", ["t1"], 3, 17))), rates=(FRANGULA,))
    (one,) = killed(land, BOOK)
    alone = killed_words(one, {}, BOOK)
    assert (alone["books_head"], alone["ten_head"]) == ("Others", "You, with others")
    assert not any("books alone" in line for line in alone["lines"])
    both = killed_words(replace(one, books=replace(one.books, a=one.books.a + 5)), {}, BOOK)
    assert (both["books_head"], both["ten_head"]) == ("Books and others", "You, with the books and others")
    books = killed_words(replace(one, others_worth=0.0), {}, BOOK)
    assert (books["books_head"], books["ten_head"]) == ("Books", "You, with the books")
    none = killed_words(replace(one, books_low=None, books_high=None, others_worth=0.0), {}, BOOK)
    assert (none["books_head"], none["ten_head"]) == ("", "You")
