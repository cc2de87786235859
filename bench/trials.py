"""How well trials are foretold from the other sources, one source left out at a time.

    python bench/trials.py

Log score (nearer 0 is better) and coverage of the 90 % range of dead stems, for what the program believes (other
trials, then ratings; the default of the years ahead where it says that no trial is known), for one pooled rate of all
other trials, and for word ratings alone. Rows with a count by themselves; a percent without one as 14 stems beside.
"""

from collections import Counter

import numpy as np
from scipy.stats import betabinom

from stemward.handbook import Book, load
from stemward.handbook.trials import Trial
from stemward.kinds import METHODS, Content
from stemward.plan.ahead import default_kill
from stemward.plan.behind import Asked, expected
from stemward.reckon.alike import _JEFFREYS, believe, next_batch, next_chances
from stemward.reckon.outcome import Prior, pool, prior_from_percent

PERCENT_STEMS = 14


def source_of(text: str) -> str:
    """First author and year, so that a paper known from elsewhere is left out as well."""
    words = text.replace(",", " ").split()
    year = next((w.strip("();/:")[:4] for w in words if w.strip("();/:")[:4].isdigit()), "")
    return f"{words[0]} {year}"


def without(book: Book, source: str) -> Book:
    """The handbook without a source."""
    other = Book(book.folder)
    kept = tuple(t for t in book._trials if source_of(t.cited.source) != source)
    rows = tuple(r for r in book.evidence_rows if source_of(r.source) != source)
    other.__dict__["_trials"], other.__dict__["evidence_rows"] = kept, rows
    return other


def rated(book: Book) -> Book:
    """The handbook's word ratings alone: no trial, no figure."""
    other = Book(book.folder)
    rows = tuple(r for r in book.evidence_rows if r.low_frac is None)
    other.__dict__["_trials"], other.__dict__["evidence_rows"] = (), rows
    return other


def asked_of(trial: Trial) -> Asked:
    """The treatment of a trial."""
    if not trial.ingredient:
        return Asked(trial.plant, trial.method, (), 0.0)
    strength = trial.low_g_l or 0.0
    share = 1.0 if trial.low_g_l else (trial.low_share or 0.0)
    return Asked(trial.plant, trial.method, (Content(trial.ingredient, trial.form, strength),), share)


def share_of(trial: Trial) -> float:
    """Dead share, the middle of a range."""
    low = trial.low_frac or 0.0
    return (low + (trial.high_frac if trial.high_frac is not None else low)) / 2


def pooled(trials: list[Trial]) -> Prior:
    """One rate for all, worth 20 stems as the program's own most."""
    priors = [prior_from_percent(share_of(t), t.n or PERCENT_STEMS) for t in trials]
    total = sum(p.a + p.b for p in priors)
    return pool(priors, [20 / total] * len(priors))


def main() -> int:
    """Print a table for rows with counts and one for all."""
    book = load()
    trials = [t for t in book._trials if t.kill and t.low_frac is not None and t.method in METHODS
              and "+" not in t.ingredient]  # fmt: skip
    for name, rows in (("with a published count", [t for t in trials if t.n]), ("all", trials)):
        scores: dict[str, list[tuple[float, bool]]] = {}
        said: Counter[str] = Counter()
        for trial in rows:
            source = source_of(trial.cited.source)
            rest = without(book, source)
            n = trial.n or PERCENT_STEMS
            dead = round(n * share_of(trial))
            ours, words = (expected(asked_of(trial), b).prior for b in (rest, rated(rest)))
            said["ours"] += ours is not None
            said["ratings alone"] += words is not None
            one = pooled([t for t in trials if source_of(t.cited.source) != source])
            flat = Prior(_JEFFREYS, _JEFFREYS)
            for who, prior in (("ours", ours or default_kill(trial.method, book)), ("ratings alone", words)):
                belief = believe(prior or Prior(0.0, 0.0))
                low, high = next_batch(belief, n)
                chance = float(next_chances(belief, n)[dead])
                scores.setdefault(who, []).append((float(np.log(max(chance, 1e-12))), low <= dead <= high))
            a, b = one.a + flat.a, one.b + flat.b
            low, high = betabinom.ppf([0.05, 0.95], n, a, b)
            scores.setdefault("pooled rate", []).append(
                (float(betabinom.logpmf(dead, n, a, b)), bool(low <= dead <= high))
            )
        sources = len({source_of(t.cited.source) for t in rows})
        print(f"{name}: {len(rows)} rows of {sources} sources; other sources speak of the very way in {said['ours']} "
              f"(ours), ratings in {said['ratings alone']}")  # fmt: skip
        for who, found in scores.items():
            score, held = (float(np.mean([f[k] for f in found])) for k in (0, 1))
            print(f"  {who:14s} mean log score {score:7.3f}   90 % ranges hold {100 * held:.0f} %")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
