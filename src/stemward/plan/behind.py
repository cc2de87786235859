"""What stands behind a way: the rows that speak of it, and how many of ten stems they let one expect to die."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from stemward.checks import Job
from stemward.checks.case import form_of
from stemward.handbook import Book, Evidence
from stemward.kinds import Content, OthersRate
from stemward.reckon.alike import LIKENESS, believe, share_interval
from stemward.reckon.outcome import Prior, interval, pool, prior_from_percent, ten_stems

LEVEL = 0.90
SECOND_HAND = ("trial cited",)
WORD_ONLY = ("practitioner",)
WIDE = 5
"""So many tenths between the ends, and nobody knows this well."""


@dataclass(frozen=True, slots=True)
class Behind:
    """What speaks of a way at about its strength.

    tier: 3 trials, 2 advice, 1 word only, 0 nothing that speaks for it. kind: the same for all that is known, for or
    against. rows: trials first. low, high: of ten stems, rounded outward, None where no row gives a figure or a
    rating. worth: how many stems the books count for. prior: the books as so many stems. own_dead, own_seen: one's
    own stems, which low and high then hold. books_low, books_high: the ends without them. others_worth: how many of
    worth are stems that others saw.
    """

    tier: int
    kind: int
    rows: tuple[Evidence, ...]
    low: int | None
    high: int | None
    worth: float
    prior: Prior | None = None
    own_dead: int = 0
    own_seen: int = 0
    books_low: int | None = None
    books_high: int | None = None
    others_worth: float = 0.0

    @property
    def wide(self) -> bool:
        """True if the ends are half of all stems or more apart."""
        return self.low is not None and self.high is not None and self.high - self.low >= WIDE


@dataclass(frozen=True, slots=True)
class Asked:
    """The treatment that is looked up. contents: of all its products; share: of the first in the mix."""

    plant: str
    how: str
    contents: tuple[Content, ...]
    share: float
    first: str = ""
    products: int = 1


def asked_of(job: Job) -> Asked:
    """What a job looks up."""
    products = [product for _, product in job.by_product]
    contents = tuple(content for product in products for content in product.contents)
    share = job.way.concentration_frac or 0.0
    return Asked(job.target.species, job.way.how, contents, share, job.way.first, max(len(products), 1))


def behind(
    job: Job, book: Book, dead: Sequence[int] = (), seen: Sequence[int] = (), others: Sequence[OthersRate] = ()
) -> Behind:
    """What the handbook has on this plant, method, ingredients and strength, kill rates of others that are counted,
    and one's own stems by work with it."""
    return with_own(expected(asked_of(job), book, others), dead, seen)


def with_own(books: Behind, dead: Sequence[int], seen: Sequence[int]) -> Behind:
    """The same with one's own stems, by work; unchanged where there are none."""
    if not sum(seen):
        return books
    low, high = ten_stems(*share_interval(believe(books.prior or Prior(0.0, 0.0), dead, seen), LEVEL))
    return replace(books, low=low, high=high, own_dead=sum(dead), own_seen=sum(seen),
                   books_low=books.low, books_high=books.high)  # fmt: skip


def expected(asked: Asked, book: Book, others: Sequence[OthersRate] = ()) -> Behind:
    """What the handbook has, and kill rates of others as far as they are counted.

    Those of others are a power prior: each of their stems counts for a part (Ibrahim, Chen, Power prior distributions
    for regression models, Statistical Science 15(1), 2000), after stems of one day are counted for fewer since they
    go alike (Kish 1965, from memory).
    """
    rows = tuple(r for r in _rows(asked, book) if r.counts)
    weighed = [(row, share) for row in rows if (share := _strength_share(row, asked, book)) > 0]
    near = tuple(row for row, _ in weighed)
    tier = max((TIER[row.kind] for row in near if row.sense == "for"), default=0)
    kind = max((TIER[row.kind] for row in near), default=0)
    tried = _tried(asked, book)
    # Trials with figures and strengths stand in for the same papers' rows among the evidence.
    priors = tried + [
        (prior, share)
        for row, share in weighed
        if not (tried and row.kind == "trial") and (prior := _prior(row, book)) is not None
    ]
    heard = [prior for one in others if (prior := _heard(one, asked, book)) is not None]
    priors += [(prior, 1.0) for prior in heard]
    if not priors:
        return Behind(tier, kind, near, None, None, 0.0)
    most = book.defaults["prior_most_stems"].number
    worth = sum((prior.a + prior.b) * share for prior, share in priors)
    scale = min(1.0, most / worth)
    pooled = pool([prior for prior, _ in priors], [share * scale for _, share in priors])
    # Half a stem each way, so that no book makes a thing certain.
    ends = interval(pooled.a + 0.5, pooled.b + 0.5, LEVEL)
    low, high = ten_stems(*ends)
    told = sum(prior.a + prior.b for prior in heard) * scale
    return Behind(tier, kind, near, low, high, worth * scale, pooled, others_worth=told)


def _heard(one: OthersRate, asked: Asked, book: Book) -> Prior | None:
    """A kill rate of others as so many stems; None where it is of another treatment or is not counted."""
    mine = {content.ingredient for content in asked.contents}
    if not one.share or (one.species, one.method) != (asked.plant, asked.how) or set(one.ingredients) != mine:
        return None
    factor = book.defaults["strength_near_factor"].number
    strength, theirs = 100 * asked.share, one.percent
    if one.ae_g_l and len(asked.contents) == 1:
        strength, theirs = asked.share * asked.contents[0].strength_ae_g_l, one.ae_g_l
    if asked.first or (strength and theirs and not theirs / factor <= strength <= theirs * factor):
        return None
    return prior_from_percent(one.dead / one.seen, counted_stems(one))


def counted_stems(one: OthersRate) -> float:
    """For how many stems a kill rate of others counts, before all that is expected is held to its most."""
    alike = 1 + (one.seen / one.works - 1) * LIKENESS.a / (LIKENESS.a + LIKENESS.b)
    return one.share * one.seen / max(alike, 1.0)


def _tried(asked: Asked, book: Book) -> list[tuple[Prior, float]]:
    """Trials at about this strength as so many stems: their own number where it is published, else as a percent."""
    if len(asked.contents) != 1 or asked.products > 1 or asked.first:
        return []
    content, share = asked.contents[0], asked.share
    factor, stems = (book.defaults[k].number for k in ("strength_near_factor", "prior_percent_stems"))
    found = []
    for trial in book.trials(asked.plant, asked.how, content.ingredient, form_of(book, content)):
        mine, low, high = share * content.strength_ae_g_l, trial.low_g_l, trial.high_g_l
        if low is None:
            mine, low, high = share, trial.low_share, trial.high_share
        if low is None or high is None or not low / factor <= mine <= high * factor:
            continue
        dead = (
            (trial.low_frac or 0.0) + (trial.high_frac if trial.high_frac is not None else trial.low_frac or 0.0)
        ) / 2
        found.append((prior_from_percent(dead, float(trial.n or stems)), 1.0))
    return found


TIER = {"trial": 3, "trial cited": 2, "extension": 2, "handbook": 2, "agency": 2, "practitioner": 1}


def _rows(asked: Asked, book: Book) -> Iterable[Evidence]:
    plant, how, contents = asked.plant, asked.how, asked.contents
    if not contents:
        return book.evidence_without(plant, how)
    if len(contents) == 1:
        rows = book.evidence(plant, how, contents[0].ingredient, form_of(book, contents[0]))
    else:
        rows = book.evidence_together(plant, how, tuple(c.ingredient for c in contents))
    if asked.first in ("cut", "sprouts"):
        return [row for row in rows if _on_sprouts(row)]
    return rows


def _on_sprouts(row: Evidence) -> bool:
    """True if a row on spraying leaves is on the sprouts of plants that were cut."""
    words = f"{row.season} {row.typed} {row.note}".lower()
    return any(word in words for word in ("resprout", "sprouts", "cut june", "cut,", "days later", "after cutting"))


def _strength_share(row: Evidence, asked: Asked, book: Book) -> float:
    """1 where the row's strength is near the way's, less where it is not stated, 0 where it is another treatment."""
    if not asked.contents or row.concentration_low_frac is None:
        return 1.0 if not asked.contents else book.defaults["prior_other_strength_frac"].number
    factor = book.defaults["strength_near_factor"].number
    low, high = row.concentration_low_frac, row.concentration_high_frac or row.concentration_low_frac
    mine = asked.share
    if row.strength_ae_g_l is not None:
        strength = asked.contents[0].strength_ae_g_l
        low, high, mine = low * row.strength_ae_g_l, high * row.strength_ae_g_l, mine * strength
    return 1.0 if low / factor <= mine <= high * factor else 0.0


def _prior(row: Evidence, book: Book) -> Prior | None:
    """A row as so many stems, None where it gives neither a figure nor a rating."""
    default = book.defaults
    if row.low_frac is not None:
        share = (row.low_frac + (row.high_frac if row.high_frac is not None else row.low_frac)) / 2
        prior = prior_from_percent(share, default["prior_percent_stems"].number)
    elif row.rating != "none-stated":
        prior = prior_from_percent(default[f"rating_{row.rating}_frac"].number, default["prior_word_stems"].number)
    else:
        return None
    weight = 1.0
    if row.kind in SECOND_HAND or "old" in row.flags:
        weight *= default["prior_second_hand_frac"].number
    if row.kind in WORD_ONLY:
        weight *= default["prior_word_only_frac"].number
    return Prior(prior.a * weight, prior.b * weight)
