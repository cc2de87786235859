"""What one's own looks back teach of kill rates: by plant, way and product, with what the books let one expect."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemward.handbook import Book
from stemward.kinds import Content, Tract, Way
from stemward.kinds.land import ARMS
from stemward.ledger.revisits import Seen, Work, works
from stemward.plan.apart import Apart, apart, differs
from stemward.plan.behind import LEVEL, Asked, expected
from stemward.reckon.alike import Belief, believe, effect, next_batch, share_interval
from stemward.reckon.compare import Comparison, Group, compare
from stemward.reckon.outcome import Prior, ten_stems, wilson

NEXT_STEMS = 10


@dataclass(frozen=True, slots=True)
class Killed:
    """One way on one plant with all looks that count.

    dead, seen: by work (one day, one mix). books: what the handbook counts for, as so many stems. low, high: of ten
    stems, from books and own stems together. early: works that nobody looked at, or too early only. others_worth: how
    many stems of the books' are those of others.
    """

    species: str
    method: str
    product: str
    ingredients: tuple[str, ...]
    concentration_frac: float
    works: tuple[Work, ...]
    dead: tuple[int, ...]
    seen: tuple[int, ...]
    books: Prior
    books_low: int | None
    books_high: int | None
    belief: Belief
    early: int
    others_worth: float = 0.0

    @property
    def wilson(self) -> tuple[float, float]:
        """What was seen alone, 95 %."""
        return wilson(sum(self.dead), sum(self.seen))

    @property
    def ends(self) -> tuple[float, float]:
        """What is believed, 90 %."""
        return share_interval(self.belief, LEVEL)

    @property
    def ten(self) -> tuple[int, int]:
        """Of ten stems, rounded outward."""
        return ten_stems(*self.ends)

    @property
    def next_ten(self) -> tuple[int, int]:
        """How many of the next ten stems, treated as one batch, will be dead."""
        return next_batch(self.belief, NEXT_STEMS, LEVEL)

    @property
    def effect(self) -> float:
        """By how much own stems count for less since those of one work went alike."""
        return effect(self.belief, sum(self.seen) / len(self.seen)) if self.seen else 1.0


def verdicts(found: Iterable[Work]) -> list[tuple[Work, Seen]]:
    """Works with a look that counts, and that look."""
    return [(work, work.verdict) for work in found if work.verdict is not None]


def killed(tract: Tract, book: Book) -> tuple[Killed, ...]:
    """Every way on every plant of which something was treated, in the order of first use."""
    groups: dict[tuple[str, str, str], list[Work]] = {}
    for work in works(tract, book):
        groups.setdefault((work.species, work.method, work.product), []).append(work)
    return tuple(_killed(key, group, tract, book) for key, group in groups.items())


def _killed(key: tuple[str, str, str], group: Sequence[Work], tract: Tract, book: Book) -> Killed:
    species, method, product = key
    counted = verdicts(group)
    dead = tuple(seen.dead for _, seen in counted)
    judged = tuple(seen.judged for _, seen in counted)
    known = next((p for p in tract.shelf if p.id == product), None)
    contents: tuple[Content, ...] = known.contents if known else ()
    books = expected(Asked(species, method, contents, group[-1].concentration_frac), book, tract.rates)
    prior = books.prior or Prior(0.0, 0.0)
    return Killed(
        species, method, product, group[-1].ingredients, group[-1].concentration_frac, tuple(group), dead, judged,
        prior, books.low, books.high, believe(prior, dead, judged), len(group) - len(counted),
        books.others_worth,
    )  # fmt: skip


def own_of(found: Iterable[Work], species: str, way: Way, factor: float) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Dead and seen by work, of looks that count at a way's own kind of treatment, within `factor` of its strength;
    empty where nobody has looked, and for two products in one mix."""
    if way.partner or way.first:
        return (), ()
    share = way.concentration_frac or 0.0
    counted = verdicts(
        w
        for w in found
        if (w.species, w.method, w.product) == (species, way.how, way.product)
        and (not share or w.concentration_frac / factor <= share <= w.concentration_frac * factor)
    )
    return tuple(s.dead for _, s in counted), tuple(s.judged for _, s in counted)


@dataclass(frozen=True, slots=True)
class Held:
    """Two ways on one plant against each other. other: in what else they differ, so that it may be that, as in
    `apart.differs`. arms: of one test, marked out beforehand."""

    one: Killed
    two: Killed
    result: Comparison
    other: tuple[str, ...]
    arms: bool = False


def comparisons(found: Sequence[Killed], tract: Tract) -> list[Held]:
    """Every two ways on one plant of both of which something was seen."""
    made = []
    for n, one in enumerate(found):
        for two in found[n + 1 :]:
            if one.species == two.species and sum(one.seen) > 0 and sum(two.seen) > 0:
                arms = _are_arms(one, two)
                # Arms of one test share day, weather and hand, so what makes a day good or bad is in both.
                least = 1.0 if arms else max(one.effect, two.effect)
                result = compare(Group(one.dead, one.seen), Group(two.dead, two.seen), least)
                made.append(Held(one, two, result, differs(_looked_at(one), _looked_at(two), tract), arms))
    return made


def parts_of(one: Killed, tract: Tract) -> tuple[Apart, ...]:
    """One way on one plant apart by season, person, strength and minutes."""
    return apart([(work, seen.dead, seen.judged) for work, seen in verdicts(one.works)], tract, one.effect)


def _are_arms(one: Killed, two: Killed) -> bool:
    """True where all works of either were arms of one test: the same patch before the flag, another flag, one day."""
    ends = [{tuple(work.patch.rpartition("-")[::2]) for work in side.works} for side in (one, two)]
    if any(len(end) != 1 for end in ends) or {w.day for w in one.works} != {w.day for w in two.works}:
        return False
    (base, flag), (other, other_flag) = (next(iter(end)) for end in ends)
    return bool(base) and base == other and {flag, other_flag} == set(ARMS)


def _looked_at(one: Killed) -> list[Work]:
    return [work for work, _ in verdicts(one.works)]


@dataclass(frozen=True, slots=True)
class Others:
    """What else looks back teach. Each with how many stand behind it, (0, 0, ...) where nothing does.

    found: (share found in a visit, plants behind it). sprouts: (of one that came back, plants). seedlings: (for one
    plant treated, plants).
    """

    found: tuple[float, int]
    sprouts: tuple[float, int]
    seedlings: tuple[float, int]


def others(tract: Tract, book: Book, species: str = "") -> Others:
    """From all looks at a plant, or at all plants; early looks tell of finding, sprouts and seedlings as well."""
    treated = missed = 0
    sprouts = came_back = seedlings = of = 0.0
    for work in works(tract, book):
        if (species and work.species != species) or not work.seen:
            continue
        last = work.seen[-1]
        treated, missed = treated + work.stems, missed + last.untreated
        if last.sprouts is not None:
            sprouts, came_back = sprouts + last.sprouts * last.resprouting, came_back + last.resprouting
        if last.seedlings is not None:
            seedlings, of = seedlings + last.seedlings, of + work.stems
    return Others(
        (treated / (treated + missed), treated + missed) if treated else (0.0, 0),
        (sprouts / came_back, round(came_back)) if came_back else (0.0, 0),
        (seedlings / of, round(of)) if of else (0.0, 0),
    )
