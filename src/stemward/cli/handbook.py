"""stemward handbook: what is known of treating one plant, and from where."""

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stemward.handbook import Book
    from stemward.handbook.field import Season

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward handbook`."""
    parser.add_argument("species", nargs="+", help="common or Latin name, for example glossy buckthorn")
    parser.add_argument("--state", default="", help="two letters: adds the state's rules that are on record")


def run(args: argparse.Namespace) -> int:
    """Print three ways, their months, what fails, and who says so. 0, or 2 for a name that is not one plant."""
    from stemward.cli.common import say_unusable
    from stemward.handbook import Near, load
    from stemward.plan.known import known_of
    from stemward.say import en

    book = load()
    typed = " ".join(args.species)
    found = book.find_species(typed)
    if isinstance(found, Near):
        meant = ", ".join(f"{common} ({latin})" for common, latin in found.candidates[:5])
        return say_unusable(f"No plant of the name {typed} is known." + (f" Did you mean: {meant}?" if meant else ""))
    known = known_of(found, book)
    words = en.handbook.WORDS
    print(words["plant"].format(common=found.common, latin=found.latin))
    print(words["grows"].format(stump=found.stump_sprouts, suckers=found.root_suckers))
    if found.cautions:
        print(words["cautions"].format(cautions=found.cautions))
    for hazard in known.hazards:
        print(f"  {hazard.hazard}: {hazard.what} ({hazard.cited.grade}; {_who(hazard.cited.source)})")
    for number, way in enumerate(known.ways, 1):
        print(f"{number}. {en.stages.HOW[way.how]}" + (f", {' + '.join(way.ingredients)}" if way.ingredients else ""))
        for row in way.rows[:3]:
            strength = f", {_share(row.concentration_low_frac, row.concentration_high_frac)}"
            season = f", {row.season}" if row.season else ""
            print(f"   {row.kind}: {row.typed or row.rating}{strength}{season} [{row.id}; {_who(row.source)}]")
        best = [s for s in way.seasons if s.best]
        poor = [s for s in way.seasons if not s.best]
        print("   " + words["best"].format(months="; ".join(_span(s) for s in best) or words["no_months"]))
        if poor:
            print("   " + words["poor"].format(months="; ".join(f"{_span(s)} ({s.why})" for s in poor)))
    if not known.ways:
        print(words["no_trial"])
    if known.fails or known.weak or found.cut_first == "worse":
        print(words["fails"])
        if found.cut_first == "worse":
            print(f"  {words['cut_first']} [{_who(found.cited_cut_first.source)}]")
        for row in known.fails:
            names = f", {' + '.join(row.ingredients)}" if row.ingredients else ""
            print(f"  {row.method}{names}: {row.typed or row.rating} [{row.id}; {_who(row.source)}]")
        for cited in known.weak:
            print(f"  {cited.value}: {cited.id} [{_who(cited.source)}]")
    if args.state:
        _rules(args.state.upper(), book, words)
    print(words["closing"])
    return 0


def _rules(state: str, book: "Book", words: dict[str, str]) -> None:
    topics = ("water permit", "licence for hire", "licence on public land", "licence to advise", "stricter label rule")
    for topic in topics:
        rules = book.state_rules(state, topic)
        for rule in rules:
            print(f"{state}, {topic}: {rule.what} ({rule.cited.grade})")
        if not rules:
            print(words["no_rule"].format(state=state, topic=topic))


def _share(low: float | None, high: float | None) -> str:
    if low is None:
        return "strength not stated"
    if high is None or high == low:
        return f"{low * 100:.3g} %"
    return f"{low * 100:.3g} to {high * 100:.3g} %"


def _span(season: "Season") -> str:
    (first_month, first_day), (last_month, last_day) = season.first, season.last
    return f"{MONTHS[first_month - 1]} {first_day} to {MONTHS[last_month - 1]} {last_day}"


def _who(source: str) -> str:
    """Who says so, without addresses and in short."""
    return " ".join(word for word in source.split() if "://" not in word)[:110]
