"""What worked, in plain sentences with the numbers behind them."""

from collections.abc import Mapping, Sequence
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Tract
from stemward.ledger.revisits import Work
from stemward.plan.apart import MINUTES, Apart, Value
from stemward.plan.killed import Held, Killed, Others, killed
from stemward.plan.why_failed import Reason
from stemward.reckon.compare import Comparison
from stemward.reckon.outcome import wilson
from stemward.say.en import revisits as words
from stemward.say.en.arms import ARMS as ARMS_WORDS
from stemward.say.en.stages import HOW
from stemward.say.numbers import OTHERS_TOLD, System, figures


def way_name(one: Killed, names: Mapping[str, str]) -> str:
    """Method and product."""
    how = HOW.get(one.method, one.method)
    return f"{how}, {names.get(one.product, one.product)}" if one.product else how


def plant_name(species: str, book: Book) -> str:
    """A plant's common name, else its Latin one."""
    return book.species[species].common if species in book.species else species


def _before(worth: float, others_worth: float) -> str:
    """Who speaks beside one's own stems: "books", "others" or "both"."""
    if others_worth < OTHERS_TOLD:
        return "books"
    return "others" if worth - others_worth < OTHERS_TOLD else "both"


def killed_words(one: Killed, names: Mapping[str, str], book: Book) -> dict[str, Any]:
    """One way on one plant: name, lines, ends of ten for the books and others (None where silent) and for all, and
    the heads to set over both."""
    lines = []
    worth = one.books.a + one.books.b
    before = _before(worth, one.others_worth) if one.books_low is not None else ""
    if one.books_low is not None:
        told = {"stems": worth, "others": one.others_worth, "low": one.books_low, "high": one.books_high}
        lines.append(words.BEFORE_OWN[before].format(**told))
    else:
        lines.append(words.BOOKS_NONE)
    dead, seen = sum(one.dead), sum(one.seen)
    if seen:
        low, high = one.wilson
        works = words.ONE_WORK if len(one.seen) == 1 else words.WORKS.format(count=len(one.seen))
        lines.append(words.SEEN.format(dead=dead, seen=seen, works=works, share=100 * dead / seen,
                                       low=100 * low, high=100 * high))  # fmt: skip
        if one.effect >= 1.05:
            lines.append(words.ALIKE.format(seen=seen, worth=seen / one.effect))
        least, most = one.next_ten
        lines.append(words.TOGETHER.format(low=one.ten[0], high=one.ten[1], least=least, most=most))
    else:
        lines.append(words.SEEN_NONE)
        early = [w.seen[-1] for w in one.works if w.seen and w.seen[-1].judged]
        if early:
            counts = {"dead": sum(s.dead for s in early), "seen": sum(s.judged for s in early)}
            lines.append(words.EARLY_SEEN.format(**counts))
    if one.early and seen:
        lines.append(words.EARLY_WORKS.format(count=one.early))
    return {
        "plant": plant_name(one.species, book), "way": way_name(one, names), "lines": lines,
        "books": (one.books_low, one.books_high) if one.books_low is not None else None,
        "ten": one.ten if seen else None,
        "books_head": words.BEFORE_OWN_HEADS.get(before, ""), "ten_head": words.WITH_OWN_HEADS[before],
    }  # fmt: skip


def worked_lines(tract: Tract, book: Book) -> list[str]:
    """What was seen of each way, and what is expected of it, as lines for a terminal; none where nobody looked."""
    names = {p.id: p.name for p in tract.patches} | {p.id: p.name for p in tract.shelf}
    said = [killed_words(one, names, book) for one in killed(tract, book) if one.seen]
    return [
        line for one in said for line in (f"{one['plant']}: {one['way']}", *(f"    {told}" for told in one["lines"]))
    ]


def why_words(
    work: Work, reasons: Sequence[Reason], names: Mapping[str, str], book: Book, units: System
) -> dict[str, Any]:
    """Why plants of a work came back: a heading and, by what the record says, its sentences with who says so."""
    seen = next(one for one in reversed(work.seen) if one.judged)
    day = f"{work.day:%b} {work.day.day}, {work.day.year}"
    groups = []
    for says, head in words.WHY_GROUPS.items():
        own = [_why(reason, units) for reason in reasons if reason.says == says]
        if own:
            groups.append({"head": head, "lines": own})
    back = words.WHY_SEEN.format(back=seen.resprouting, judged=seen.judged, day=day)
    place = f"{plant_name(work.species, book)}, {names.get(work.patch, work.patch)}"
    return {"place": place, "seen": back, "groups": groups}


def _why(reason: Reason, units: System) -> str:
    values = {name: value for name, value in reason.values if name != "until"}
    until = next((f" after {value}" for name, value in reason.values if name == "until"), "")
    text = words.WHY[reason.id][reason.says].format(**figures(values, units), until=until)
    if reason.cited is None or not reason.cited.source:
        return text
    return words.WHY_SOURCE.format(text=text, source=reason.cited.source)


def held_words(held: Held, names: Mapping[str, str], book: Book) -> list[str]:
    """Two ways against each other: the sentence, its numbers, and what else it may be."""
    one, two, result = held.one, held.two, held.result
    said = words.VERDICTS[result.verdict].format(
        one=way_name(one, names), two=way_name(two, names), plants=plant_name(one.species, book),
        a=sum(one.dead), n=sum(one.seen), b=sum(two.dead), m=sum(two.seen),
    )  # fmt: skip
    numbers = _numbers(result)
    last = ARMS_WORDS if held.arms else words.ELSE["unknown"]
    return [said, numbers, *(words.ELSE[name] for name in held.other), last]


def _numbers(result: Comparison) -> str:
    return words.NUMBERS.format(
        apart=100 * result.apart, low=100 * result.low, high=100 * result.high, effect=result.effect, p=result.p
    )


def apart_words(found: Sequence[Apart]) -> list[dict[str, Any]]:
    """One way apart by season, person, strength and minutes: of each a heading, its parts, what follows and what else
    it may be."""
    said = []
    for one in found:
        values = [_value(one.by, part.value) for part in one.parts]
        parts = []
        for value, part in zip(values, one.parts, strict=True):
            low, high = wilson(sum(part.dead), sum(part.seen))
            parts.append(words.APART_PART.format(value=value, dead=sum(part.dead), seen=sum(part.seen),
                                                 low=100 * low, high=100 * high))  # fmt: skip
        told = words.APART_SAID[one.result.verdict].format(one=values[0], two=values[1])
        numbers = _numbers(one.result)
        lines = [told[0].upper() + told[1:], numbers, *(words.ELSE[name] for name in one.other)]
        said.append({"head": words.APART_BY[one.by], "parts": parts, "lines": lines})
    return said


def _value(by: str, value: Value) -> str:
    if by == "season":
        return words.SEASONS[int(value)]
    if by == "minutes":
        return words.MINUTES[int(value)].format(low=MINUTES[0], high=MINUTES[1])
    return f"{value:g} %" if by == "strength" else str(value)


def other_words(found: Others) -> Sequence[str]:
    """What else looks back teach; nothing where nobody counted."""
    lines = []
    if found.found[1]:
        lines.append(words.FOUND.format(share=100 * found.found[0], count=found.found[1]))
    if found.sprouts[1]:
        lines.append(words.SPROUTS.format(each=found.sprouts[0], count=found.sprouts[1]))
    if found.seedlings[1]:
        lines.append(words.SEEDLINGS.format(each=found.seedlings[0], count=found.seedlings[1]))
    return lines
