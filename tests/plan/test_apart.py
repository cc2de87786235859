"""One way apart by season, person, strength and minutes, with what else may have made the difference."""

from ledger.some import hollow
from ledger.test_revisits import seen, treated
from stemward.handbook import load
from stemward.kinds import Entry
from stemward.plan.apart import median_cm
from stemward.plan.killed import killed, parts_of
from stemward.reckon.outcome import newcombe
from stemward.say.worked import apart_words

BOOK = load()
HALF = {"product": "glyphosate-4lb-wet", "concentration_frac": 0.5}


def parts(*entries):
    tract = hollow(entries=entries)
    (one,) = killed(tract, BOOK)
    return {found.by: found for found in parts_of(one, tract)}


def two(first, second):
    """Nineteen of twenty dead in the first work, six in the second."""
    return parts(
        treated("t1", **HALF | first), treated("t2", **{"at": "2025-09-21T10:00"} | HALF | second),
        seen("s1", "2026-09-25", ["t1"], 19, 1), seen("s2", "2026-09-25", ["t2"], 6, 14),
    )  # fmt: skip


def test_nothing_is_apart_where_all_is_alike():
    assert parts(treated(**HALF), seen("s", "2026-09-25", ["t1"], 12, 8)) == {}
    assert two({}, {}) == {}


def test_by_season_with_the_numbers_behind_it():
    """Autumn 19 of 20 against June 6 of 20; the interval is Newcombe's (Statistics in Medicine 17, 1998)."""
    found = two({}, {"at": "2025-06-10T09:00"})
    assert set(found) == {"season"}
    season = found["season"]
    assert [(part.value, part.dead, part.seen) for part in season.parts] == [(2, (6,), (20,)), (3, (19,), (20,))]
    worth = season.result.effect
    assert worth > 1 and season.result.verdict == "less"
    assert (season.result.low, season.result.high) == newcombe(6 / worth, 20 / worth, 19 / worth, 20 / worth)
    (said,) = apart_words(list(found.values()))
    assert said["parts"][1].startswith("September to November: 19 of 20 dead")
    assert said["lines"][0].startswith("September to November killed more than June to August")


def test_one_good_day_does_not_pass_for_a_better_season():
    """12 of 20 against 18 of 20 would be told apart if stems stood alone (Newcombe); two days' works are not."""
    assert newcombe(18, 20, 12, 20)[0] > 0
    found = parts(
        treated("t1", **HALF), treated("t2", "2025-06-10T09:00", **HALF),
        seen("s1", "2026-09-25", ["t1"], 18, 2), seen("s2", "2026-09-25", ["t2"], 12, 8),
    )  # fmt: skip
    assert found["season"].result.verdict == "not told apart"


def test_by_person_and_by_strength_each_warns_of_the_other():
    found = two({"people": ["ann"]}, {"people": ["bo"], "concentration_frac": 0.2})
    assert set(found) == {"person", "strength"}
    assert found["person"].other == ("strength",) and found["strength"].other == ("person",)
    said = apart_words(list(found.values()))
    assert any("it may be the strength" in line for line in said[0]["lines"])
    assert [part.value for part in found["strength"].parts] == [20, 50]


def marked(id_, day, rows, waited_s):
    body = {"what": "treated", "patch": "meadow", "rows": rows, "waited_s": waited_s, "limit_s": 900}
    return Entry(id_, "marked", f"{day}T10:05", -300, "owner", body)


def test_by_minutes_only_where_they_were_timed():
    rows = [{f"b{n}": 1 for n in range(1, 21)}, {f"b{n}": 1 for n in range(21, 41)}]
    looks = (seen("s1", "2026-09-25", ["t1"], 18, 2), seen("s2", "2026-09-25", ["t2"], 18, 2))
    works = (treated("t1", rows=rows[0], **HALF), treated("t2", "2025-09-21T10:00", rows=rows[1], **HALF))
    assert "minutes" not in parts(*works, *looks)
    timed = (marked("m1", "2025-09-20", {"b1": 1}, 200.0), marked("m2", "2025-09-21", {"b21": 1}, 1200.0))
    found = parts(*works, *timed, *looks)["minutes"]
    assert [part.value for part in found.parts] == [0, 2] and found.result.verdict == "not told apart"
    (said,) = apart_words([found])
    assert said["parts"][0].startswith("up to 5 minutes: 18 of 20") and "over 15 minutes" in said["parts"][1]


def test_a_difference_in_size_is_said():
    """Twenty of the thickest in autumn against twenty of the thinnest in June."""
    stems = hollow().stems
    own = sorted((float(cm), str(i)) for i, cm in zip(stems.id, stems.diameter_cm, strict=True) if str(i)[0] == "b")
    thin, thick = ({i: 1 for _, i in some} for some in (own[:20], own[-20:]))
    found = two({"rows": thick}, {"rows": thin, "at": "2025-06-10T09:00"})["season"]
    tract = hollow()
    sizes = [median_cm(part.works, tract) for part in found.parts]
    assert sizes[1] >= 1.5 * sizes[0] and found.other == ("size",)
    assert any("their size" in line for line in apart_words([found])[0]["lines"])
    alike = two({"rows": thick}, {"rows": thick, "at": "2025-06-10T09:00"})["season"]
    assert alike.other == ()
