"""Papers for others: the season's report, the cost-share report, the bid packet; as parts for screen and paper."""

import datetime
import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from stemward.handbook import Book
from stemward.kinds import Entry, Tract
from stemward.ledger import in_force
from stemward.ledger.permits import permits
from stemward.ledger.revisits import Work, works
from stemward.plan.killed import killed
from stemward.say.en import season as words
from stemward.say.en.revisits import LOOK_NAMES
from stemward.say.en.stages import HOW
from stemward.say.numbers import System, figure
from stemward.say.parts import Part
from stemward.say.revisits import work_words
from stemward.say.worked import plant_name, way_name

NEXT_MOST = 12
BID_SHARE, BID_COUNT, BID_FIND = 85, 30, 95
"""Usual figures of a bid, to be changed by the owner: engineering guess, no source."""


@dataclass(frozen=True, slots=True)
class Season:
    """What a paper is about: one year of a tract, told on a day."""

    tract: Tract
    book: Book
    year: int
    today: datetime.date
    units: System = "us"

    @property
    def names(self) -> dict[str, str]:
        """Patches and products by id."""
        return {p.id: p.name for p in self.tract.patches} | {p.id: p.name for p in self.tract.shelf}

    @property
    def done(self) -> list[Work]:
        """Works of the year."""
        return [w for w in works(self.tract, self.book) if w.day.year == self.year]

    def entries(self, kind: str) -> list[Entry]:
        """Entries of a kind of the year."""
        return [e for e in in_force(self.tract.entries) if e.kind == kind and e.at[:4] == str(self.year)]


def footer(about: Season) -> str:
    """What stands at the foot of each page."""
    return words.FOOTER.format(tract=about.tract.name, day=about.today)


def title(which: str, about: Season) -> str:
    """The head of a paper."""
    return words.TITLES[which].format(year=about.year, tract=about.tract.name)


def season_parts(about: Season, plan: Mapping[str, Any] | None) -> list[Part]:
    """One sentence, ten stems, what was done, what it cost, what died, what is next."""
    parts = [Part(lines=(*_invented(about), sentence(about))), _died(about), _done(about), _cost(about), _seen(about)]
    parts += [_next(about, plan), _pictures(about)]
    return [p for p in parts if p.lines or p.points or p.rows or p.tens or p.pictures]


MOST_PHOTOS = 12
"""Photos on one paper, the latest of the year: engineering guess."""


def _photos(about: Season) -> list[tuple[int, Entry]]:
    """Looks and notes of the year with a photo, in order of time and numbered from 1; of many the latest."""
    taken = [e for kind in ("seen again", "noted") for e in about.entries(kind) if _DIGEST.fullmatch(_photo(e))]
    return list(enumerate(sorted(taken, key=lambda e: e.at)[-MOST_PHOTOS:], 1))


def _photo(entry: Entry) -> str:
    return str(entry.body.get("photo", ""))


_DIGEST = re.compile("[0-9a-f]{64}")


def _pictures(about: Season) -> Part:
    return Part(words.PHOTOS, pictures=tuple(
        (_photo(e), words.PHOTO.format(
            number=n, day=e.at[:10], patch=about.names.get(str(e.body.get("patch", "")), about.tract.name),
            note=f": {e.body['note']}" if e.body.get("note") else "",
        )) for n, e in _photos(about)
    ))  # fmt: skip


def _invented(about: Season) -> tuple[str, ...]:
    return (words.INVENTED,) if about.tract.invented else ()


def sentence(about: Season) -> str:
    """The season in one sentence or two."""
    done = about.done
    looks = [s for w in works(about.tract, about.book) for s in w.seen if s.day.year == about.year]
    if not done and not looks:
        return words.SENTENCE_NONE.format(year=about.year)
    days = len({w.day for w in done})
    text = words.SENTENCE if done and looks else words.SENTENCE_DONE if done else words.SENTENCE_SEEN
    said = text.format(
        year=about.year, stems=sum(w.stems for w in done), seen=sum(s.judged for s in looks),
        days=words.ONE_DAY if days == 1 else words.DAYS.format(count=days),
    )  # fmt: skip
    late = [s for s in looks if not s.early]
    if not late:
        return said
    dead, judged = sum(s.dead for s in late), sum(s.judged for s in late)
    return f"{said} {words.SENTENCE_DEAD.format(dead=dead, judged=judged)}"


def _died(about: Season) -> Part:
    tens = []
    for one in killed(about.tract, about.book):
        if sum(one.seen):
            low, high = one.ten
            books = words.DIED_ALONE if one.books_low is None else words.DIED_BOOKS
            said = words.DIED_TEN.format(
                plant=plant_name(one.species, about.book).capitalize(), way=way_name(one, about.names).lower(),
                low=low, high=high, seen=sum(one.seen), books=books,
            )  # fmt: skip
            alt = words.TEN_ALT.format(low=low, may=high - low, live=10 - high)
            tens.append((said, low, high, alt))
    return Part(words.DIED, tens=tuple(tens))


def _done(about: Season) -> Part:
    rows = []
    by_id = {e.id: e.body for e in about.entries("treated")}
    for work in about.done:
        used: dict[str, float] = {}
        for body in (by_id[i] for i in work.entries if i in by_id):
            for product, ml in body.get("product_ml", {}).items():
                used[product] = used.get(product, 0.0) + ml
        product = "; ".join(f"{figure('used_ml', ml, about.units)} {about.names.get(p, p)}" for p, ml in used.items())
        plants = f"{work.stems} {plant_name(work.species, about.book)}"
        rows.append((work.day.isoformat(), about.names.get(work.patch, work.patch), plants,
                     HOW.get(work.method, work.method), product, ", ".join(work.people)))  # fmt: skip
    return _table(words.DONE, words.DONE_HEAD, rows, (1, 1.2, 1.4, 1.1, 2, 1.2))


def _cost(about: Season) -> Part:
    timed = [*about.entries("work"), *about.entries("seen again")]
    hours = sum(float(e.body.get("person_h") or 0) for e in timed)
    wage = about.tract.wage_cents_h
    rows, total = [], 0.0
    if hours:
        money = hours * wage / 100 if wage is not None else None
        total += money or 0.0
        rows.append((words.HOURS, figure("work_h", hours, about.units), _money(money, words.NO_WAGE)))
    used: dict[str, float] = {}
    for entry in about.entries("treated"):
        for product, ml in entry.body.get("product_ml", {}).items():
            used[product] = used.get(product, 0.0) + ml
    for product, ml in used.items():
        each = _price_ml(about.tract, product)
        money = None if each is None else ml * each
        total += money or 0.0
        amount = figure("used_ml", ml, about.units)
        rows.append((about.names.get(product, product), amount, _money(money, words.NO_PRICE)))
    if rows:
        rows.append((words.TOTAL, "", _money(total, "")))
    return _table(words.COST, words.COST_HEAD, rows)


def _table(
    head: str, head_row: tuple[str, ...], rows: Sequence[tuple[str, ...]], widths: tuple[float, ...] = ()
) -> Part:
    """A part with a table; an empty part where it has no rows."""
    return Part(head, head_row=head_row, rows=tuple(rows), widths=widths) if rows else Part()


def _price_ml(tract: Tract, product: str) -> float | None:
    """Dollars for a millilitre; None where no price is written down."""
    jugs = [c for p in tract.shelf if p.id == product for c in p.containers if c.price_cents is not None]
    return (jugs[0].price_cents or 0) / 100 / (jugs[0].capacity_ul / 1000) if jugs else None


def _money(value: float | None, none: str) -> str:
    return none if value is None else f"${value:,.2f}"


def _seen(about: Season) -> Part:
    rows = []
    for work in works(about.tract, about.book):
        said = work_words(work, about.names, about.today, about.book)
        for seen, line in zip(work.seen, said["seen"], strict=True):
            if seen.day.year == about.year:
                rows.append((said["day"], f"{said['what']}, {said['patch']}", line))
    return _table(words.SEEN, words.SEEN_HEAD, rows, (1, 2, 3))


def _next(about: Season, plan: Mapping[str, Any] | None) -> Part:
    due = sorted(
        ((on, look, work) for work in works(about.tract, about.book) for look, on in work.due), key=lambda d: d[0]
    )
    points = [
        words.NEXT_LINE.format(on=on, look=LOOK_NAMES[look], patch=about.names.get(work.patch, work.patch),
                               what=f"{work.stems} {plant_name(work.species, about.book)}")
        for on, look, work in due[:NEXT_MOST]
    ]  # fmt: skip
    for item in plan["treatments"] if plan else ():
        said = {"plants": item["common"].capitalize(), "patch": item["patch_name"], "stems": item["stems"]}
        points.append(words.OPEN_LINE.format(**said))
    return Part(words.NEXT, points=tuple(points or [words.NEXT_NONE]))


def share_parts(about: Season, code: str = "", number: str = "") -> list[Part]:
    """What a cost-share programme commonly asks: practice code, area, days, photos, approvals, receipts."""
    patches = {p.id: p for p in about.tract.patches}
    bodies = {e.id: e.body for e in about.entries("treated")}
    photos: dict[str, list[str]] = {}
    for which, entry in _photos(about):
        photos.setdefault(str(entry.body.get("patch", "")), []).append(str(which))
    rows = []
    for work in about.done:
        area = sum(float(bodies[i].get("area_m2") or 0) for i in work.entries if i in bodies)
        patch = patches.get(work.patch)
        said = figure("area_m2", area, about.units) if area else ""
        if not said and patch is not None and patch.area_m2:
            said = words.AREA_PATCH.format(area=figure("area_m2", patch.area_m2, about.units))
        seen = ", ".join(photos.get(work.patch, ())) or words.BLANK
        rows.append((work.day.isoformat(), about.names.get(work.patch, work.patch), said or words.BLANK,
                     f"{work.stems} {plant_name(work.species, about.book)}", HOW.get(work.method, work.method),
                     about.names.get(work.product, work.product), seen))  # fmt: skip
    granted = [
        words.SHARE_PERMIT.format(name=p.name, what=p.what, step=p.step, on=p.granted_on or p.asked or "",
                                  number=f", {p.number}" if p.number else "")
        for p in permits(about.tract.entries).values()
    ]  # fmt: skip
    what = tuple(line.format(code=code or words.BLANK, number=number or words.BLANK) for line in words.SHARE_WHAT)
    empty = tuple(("", "", "", "") for _ in range(5))
    taken = _pictures(about)
    return [
        Part(lines=(*_invented(about), *what)),
        _table(words.DONE, words.SHARE_HEAD, rows, (1.1, 1.2, 1.2, 1.3, 1.1, 1.6, 1.2))
        if rows
        else Part(words.DONE, (words.SENTENCE_NONE.format(year=about.year),)),
        _cost(about),
        Part(words.SHARE_PERMITS, points=tuple(granted or [words.SHARE_NONE])),
        Part(words.SHARE_RECEIPTS, head_row=words.RECEIPT_HEAD, rows=empty, to_fill=True),
        *([taken] if taken.pictures else []),
        Part(lines=(words.SIGN,)),
    ]  # fmt: skip


def bid_parts(about: Season, plan: Mapping[str, Any], ways: Mapping[str, str]) -> list[Part]:
    """What is to be done, what must come to no harm, what a bid shows, what is looked at, when it counts as done.

    ways: a treatment's way in words by its id.
    """
    rows, expect = [], []
    for item in plan["treatments"]:
        own = about.tract.stems
        sizes = own.diameter_cm[(own.patch == item["patch"]) & (own.species == item["species"])]
        size = "" if not len(sizes) else " to ".join(
            figure("size_cm", float(v), about.units) for v in (sizes.min(), sizes.max())
        )  # fmt: skip
        rows.append((item["patch_name"], item["common"], str(item["stems"]), size, ways[item["id"]]))
        said = {"plant": item["common"].capitalize(), "way": ways[item["id"]]}
        seen = item["behind"]
        text = words.NO_EXPECT if seen["low"] is None else words.EXPECT
        expect.append(text.format(low=seen["low"], high=seen["high"], **said))
    stops = sum(f["weight"] == "stop" for f in plan["findings"])
    draft = (words.BID_STOPPED.format(count=stops),) if stops else ()
    numbers = {"months": 12, "share": BID_SHARE, "count": BID_COUNT, "find": BID_FIND}
    return [
        Part(lines=(*draft, *_invented(about))),
        Part(words.SCOPE, tuple(line.format(day=about.today) for line in words.SCOPE_NOTE), head_row=words.SCOPE_HEAD,
             rows=tuple(rows), widths=(1.2, 1.4, 0.7, 1.3, 3)),
        Part(words.KEEP, points=_kept(about) or (words.KEEP_NONE,)),
        Part(words.ASKED, points=words.ASKS),
        Part(words.INSPECT, points=words.INSPECTS),
        Part(words.KILL, tuple(line.format(**numbers) for line in words.KILLS), tuple(expect)),
    ]  # fmt: skip


def _kept(about: Season) -> tuple[str, ...]:
    """What must come to no harm, alike things counted."""
    counts = Counter(plant_name(s.species, about.book) if s.species else s.kind for s in about.tract.spared)
    return tuple(name.capitalize() if count == 1 else f"{count} × {name}" for name, count in counts.items())
