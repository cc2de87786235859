"""Quick sums in words: what was typed in, lines out, for the command line and the pages alike."""

from collections.abc import Sequence

from stemward.handbook import Book, Near, load
from stemward.handbook.field import Season
from stemward.plan.known import known_of
from stemward.plan.quick import NearAsked, QuickDose, quick_dose, quick_mix, quick_near
from stemward.reckon.mix import ounces_per_gallon_readings, ratio_readings
from stemward.say import en
from stemward.say.numbers import System, figure
from stemward.units import UnitError, convert, read

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
TOOLS = {"basal bark": "backpack", "foliar": "backpack"}


class NotUnderstood(Exception):
    """Input that cannot be used; its text is a sentence for the person."""


def measure(text: str, dimension: str, unit: str, bare: str | None = None) -> float:
    """A figure as typed, in `unit`; raises NotUnderstood with the sentence of units."""
    try:
        return read(text, dimension, bare).to(unit)
    except UnitError as error:
        raise NotUnderstood(str(error)) from None


def dose_lines(
    how: str,
    sizes: Sequence[str],
    count: int = 1,
    ring: str = "",
    tool: str = "",
    oil: bool = False,
    per_squirt: str = "",
    ingredient: str = "glyphosate",
    strength: str = "4 lb ae/gal",
    concentration: str = "50 %",
    units: System = "us",
) -> list[str]:
    """The dose of each size and the total with its spread. Raises NotUnderstood."""
    book = load()
    leaves = how == "foliar"
    tool = tool or TOOLS.get(how, "squirt bottle")
    to, bare = ("m", "ft") if leaves else ("cm", "in")
    typed = [(text, measure(text, "length", to, bare)) for text in sizes]
    if not typed or not all(0 < size < 10_000 for _, size in typed):
        raise NotUnderstood("Not understood: sizes are above 0.")
    wanted = QuickDose(
        how,
        tuple(text for text, _ in typed),
        () if leaves else tuple(size for _, size in typed),
        count,
        tool,
        measure(ring, "length", "cm", "in") if ring else None,
        ingredient,
        measure(strength, "strength", "g_l"),
        measure(concentration, "fraction", "frac", "%"),
        oil,
        tuple(size for _, size in typed) if leaves else (),
        measure(per_squirt, "volume", "ml", "mL") if per_squirt else 0.0,
    )
    if count < 1 or count > 1_000_000:
        raise NotUnderstood(f"Not understood: --count {count}. Write a number of stems from 1 to 1,000,000.")
    if tool not in book.tools:
        raise NotUnderstood(f"Not understood: --tool {tool}. Write one of: {', '.join(book.tools)}.")
    done = quick_dose(wanted, book)
    lines = []
    for row in done.rows:
        cuts = f", {row.cuts} cuts" if row.cuts is not None else ""
        cuts += f", {figure('wet_frac', row.wet_frac, units)} wet" if row.wet_frac else ""
        cuts += f", {row.strokes} squirts" if row.strokes is not None else ""
        each, total = (figure("mix_ml", ml, units) for ml in (row.each_ml, row.each_ml * count))
        lines.append(f"{row.typed}: {row.each_ml:.1f} mL each ({each}){cuts}; {count} of them {total}")
    low, middle, high = (figure("mix_ml", ml, units) for ml in (done.low_ml, done.need_ml, done.high_ml))
    lines.append(f"In all about {middle} ({low} to {high}).")
    lines += [f"  {c.id} = {c.value:g} {c.unit}: {c.grade}; {c.source}" for c in done.leans_on]
    lines.append("The label decides. Treat 20 stems and measure the bottle to know your own figure.")
    return lines


def mix_lines(
    amount: str,
    concentration: str = "",
    ratio: str = "",
    per_gallon: str = "",
    strength: str = "",
    bottle: str = "",
    units: System = "us",
) -> tuple[list[str], bool]:
    """What to pour, in marks of common measures, and whether any reading can be poured. Raises NotUnderstood."""
    amount_ml = measure(amount, "volume", "ml")
    bottle_ml = measure(bottle, "volume", "ml") if bottle else 1.25 * amount_ml
    readings = _readings(concentration, ratio, per_gallon)
    strength_g_l = measure(strength, "strength", "g_l") if strength else None
    poured, lines = False, []
    for words, share in readings:
        lines.append(f"{words}: {figure('share_frac', share, units)} product")
        done = quick_mix(amount_ml, share, bottle_ml, load())
        if done.refused:
            lines.append(f"  Cannot be measured with the usual measures ({done.refused}). Try {done.would_do}.")
            continue
        poured = True
        lines += [
            f"  {part.what}: {part.ml:.1f} mL ({figure('part_ml', part.ml, units)}), {part.fills} x {part.measure}"
            for part in done.parts
        ]
        lines.append(f"  makes {figure('mix_ml', done.mixed_ml, units)} at {figure('c_frac', done.share, units)}")
        if strength_g_l is not None:
            lines.append(f"  {done.share * strength_g_l:.0f} g acid equivalent per liter of mix")
    if len(readings) > 1:
        lines.append("The two readings differ. Unless the label says which it means, find out before mixing.")
    lines.append("The label decides how strong the mix may be. Gloves and eye protection on before the cap comes off.")
    return lines, poured


def _readings(concentration: str, ratio: str, per_gallon: str) -> list[tuple[str, float]]:
    if concentration:
        share = measure(concentration, "fraction", "frac", "%")
        if not 0 < share <= 1:
            raise NotUnderstood(f"Not understood: {concentration}. Write a share between 0 and 100 %.")
        return [(concentration, share)]
    if ratio:
        a, colon, b = ratio.partition(":")
        try:
            parts = (float(a), float(b))
        except ValueError:
            parts = (0.0, 0.0)
        if not colon or not all(0 < p < 1e6 for p in parts):
            raise NotUnderstood(f"Not understood: {ratio}. Write for example 1:3.")
        added, within = ratio_readings(*parts)
        first = (f"{ratio} as {a} parts added to {b} parts", float(added))
        return [first] if within > 1 else [first, (f"{ratio} as {a} parts in {b} parts of finished mix", float(within))]
    ounces = measure(per_gallon, "volume", "ml") / convert(1.0, "fl oz", "ml")
    if not 0 < ounces <= 128:
        raise NotUnderstood(f"Not understood: {per_gallon}. Write an amount up to a gallon, for example 32 fl oz.")
    made, added = ounces_per_gallon_readings(ounces)
    return [
        (f"{per_gallon} with carrier to make a gallon", float(made)),
        (f"{per_gallon} added to a gallon", float(added)),
    ]


def near_lines(
    ingredient: str,
    how: str,
    distance: str,
    form: str = "salt",
    kind: str = "other",
    clone: bool = False,
    trunk: str = "",
    crown: str = "",
    units: System = "us",
) -> list[str]:
    """The four routes, each with its level and the numbers behind it. Raises NotUnderstood."""
    book = load()
    asked = NearAsked(
        ingredient.strip().lower() if ingredient != "2,4-D" else ingredient,
        form,
        how,
        {"oaks": "kin"}.get(kind, kind),
        clone,
        measure(distance, "length", "m", "ft"),
        measure(trunk, "length", "cm", "in") if trunk else 0.0,
        measure(crown, "length", "m", "ft") if crown else 0.0,
    )
    try:
        routes = quick_near(asked, book)
    except KeyError:
        names = ", ".join(sorted({name for name, _ in book.ingredients}))
        raise NotUnderstood(f"Nothing is on record for {ingredient} as {form}. On record are: {names}.") from None
    lines = []
    for route in routes:
        lines.append(f"{route.name}: {en.stages.LEVELS[route.level]}")
        said = {name: figure(name, value, units) for name, value in route.numbers}
        lines.append("  " + en.sheets.NEAR[route.name].format(**{"left_frac": "an unknown share", **said}))
        for cited in route.leans_on:
            value = f"{cited.value:g} {cited.unit}" if isinstance(cited.value, float | int) else cited.value
            lines.append(f"  {cited.id} = {value}: {cited.grade}; {cited.source}".rstrip("; "))
    return [*lines, en.sheets.NEAR["closing"]]


def plant_lines(typed: str, state: str = "") -> list[str]:
    """Three ways for a plant, their months, what fails, and who says so. Raises NotUnderstood with near names."""
    book = load()
    found = book.find_species(typed)
    if isinstance(found, Near):
        meant = ", ".join(f"{common} ({latin})" for common, latin in found.candidates[:5])
        raise NotUnderstood(f"No plant of the name {typed} is known." + (f" Did you mean: {meant}?" if meant else ""))
    known, words = known_of(found, book), en.handbook.WORDS
    lines = [
        words["plant"].format(common=found.common, latin=found.latin),
        words["grows"].format(stump=found.stump_sprouts, suckers=found.root_suckers),
    ]
    if found.cautions:
        lines.append(words["cautions"].format(cautions=found.cautions))
    lines += [f"  {h.hazard}: {h.what} ({h.cited.grade}; {_who(h.cited.source)})" for h in known.hazards]
    for number, way in enumerate(known.ways, 1):
        names = f", {' + '.join(way.ingredients)}" if way.ingredients else ""
        lines.append(f"{number}. {en.stages.HOW[way.how]}{names}")
        for row in way.rows[:3]:
            strength = f", {_share(row.concentration_low_frac, row.concentration_high_frac)}"
            season = f", {row.season}" if row.season else ""
            said = row.typed or row.rating
            lines.append(f"   {row.kind}: {said}{strength}{season} [{row.id}; {_who(row.source)}]")
        best = [s for s in way.seasons if s.best]
        poor = [s for s in way.seasons if not s.best]
        lines.append("   " + words["best"].format(months="; ".join(_span(s) for s in best) or words["no_months"]))
        if poor:
            months = "; ".join(f"{_span(s)} ({s.why})" for s in poor)
            lines.append("   " + words["poor"].format(months=months))
    if not known.ways:
        lines.append(words["no_trial"])
    if known.fails or known.weak or found.cut_first == "worse":
        lines.append(words["fails"])
        if found.cut_first == "worse":
            lines.append(f"  {words['cut_first']} [{_who(found.cited_cut_first.source)}]")
        for row in known.fails:
            names = f", {' + '.join(row.ingredients)}" if row.ingredients else ""
            lines.append(f"  {row.method}{names}: {row.typed or row.rating} [{row.id}; {_who(row.source)}]")
        lines += [f"  {cited.value}: {cited.id} [{_who(cited.source)}]" for cited in known.weak]
    if state:
        lines += _rules(state.upper(), book, words)
    return [*lines, words["closing"]]


def _rules(state: str, book: Book, words: dict[str, str]) -> list[str]:
    lines = []
    for topic in (
        "water permit",
        "licence for hire",
        "licence on public land",
        "licence to advise",
        "stricter label rule",
    ):
        rules = book.state_rules(state, topic)
        lines += [f"{state}, {topic}: {rule.what} ({rule.cited.grade})" for rule in rules]
        if not rules:
            lines.append(words["no_rule"].format(state=state, topic=topic))
    return lines


def _share(low: float | None, high: float | None) -> str:
    if low is None:
        return "strength not stated"
    if high is None or high == low:
        return f"{low * 100:.3g} %"
    return f"{low * 100:.3g} to {high * 100:.3g} %"


def _span(season: Season) -> str:
    (first_month, first_day), (last_month, last_day) = season.first, season.last
    return f"{MONTHS[first_month - 1]} {first_day} to {MONTHS[last_month - 1]} {last_day}"


def _who(source: str) -> str:
    """Who says so, without addresses and in short."""
    return " ".join(word for word in source.split() if "://" not in word)[:110]
