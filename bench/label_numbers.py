"""Numbers and names that are drawn for invented labels. All are invented; they only look like what labels print."""

import random

STATES = {
    "AK": "Alaska", "CA": "California", "CT": "Connecticut", "FL": "Florida", "HI": "Hawaii", "ID": "Idaho",
    "ME": "Maine", "MA": "Massachusetts", "MN": "Minnesota", "MT": "Montana", "NH": "New Hampshire",
    "NY": "New York", "NC": "North Carolina", "OH": "Ohio", "OR": "Oregon", "RI": "Rhode Island", "TX": "Texas",
    "VT": "Vermont", "WI": "Wisconsin",
}  # fmt: skip
PLANTS = (
    "red maple", "black locust", "tree-of-heaven", "autumn olive", "multiflora rose", "sweetgum", "persimmon",
    "honeysuckle", "common buckthorn", "glossy buckthorn", "sassafras", "box elder", "black cherry", "russian olive",
    "saltcedar", "osage orange", "white oak", "quaking aspen", "green ash", "hackberry", "chinese tallow", "privet",
    "mesquite", "norway maple", "poison ivy", "kudzu", "blackberry", "sumac", "princess tree", "mimosa",
)  # fmt: skip
REVERSED = {
    "Maple, red": "red maple", "Locust, black": "black locust", "Olive, autumn": "autumn olive",
    "Cherry, black": "black cherry", "Oak, white": "white oak", "Ash, green": "green ash",
    "Buckthorn, common": "common buckthorn", "Olive, russian": "russian olive", "Aspen, quaking": "quaking aspen",
}  # fmt: skip
FORMS = (
    ("triclopyr, triethylamine salt", "triclopyr"), ("triclopyr, butoxyethyl ester", "triclopyr"),
    ("glyphosate, isopropylamine salt", "glyphosate"), ("imazapyr, isopropylamine salt", "imazapyr"),
    ("picloram, potassium salt", "picloram"), ("2,4-D, dimethylamine salt", "2,4-D"),
    ("aminopyralid, triisopropanolammonium salt", "aminopyralid"), ("dicamba, diglycolamine salt", "dicamba"),
)  # fmt: skip
MATERIALS = (
    "barrier laminate", "butyl rubber", "nitrile rubber", "neoprene rubber", "natural rubber", "polyethylene",
    "polyvinyl chloride",
)  # fmt: skip
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
WORDS = {
    1: "one", 2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 8: "eight", 10: "ten", 12: "twelve", 14: "fourteen",
    15: "fifteen", 20: "twenty", 21: "twenty-one", 24: "twenty-four", 28: "twenty-eight", 30: "thirty", 48: "forty-eight",
    60: "sixty", 90: "ninety",
}  # fmt: skip
GAL_FL_OZ = 128
L_PER_GAL = 3.785412
GRAMS_PER_LB = 453.592


def _plain(number: float) -> str:
    return f"{number:.4g}"


def drawn(rng: random.Random) -> dict[str, str]:
    """A name and a number for each place that a shape can have."""
    pick = rng.choice
    numbers: dict[str, object] = {}
    for names, draw in _DRAWS:
        numbers.update(zip(names.split(), draw(rng), strict=True))
    maker = rng.randint(90000, 99999)
    reg = f"{maker}-{rng.randint(1, 999)}"
    numbers |= {"reg": reg, "reg3": f"{reg}-{rng.randint(80000, 89999)}", "regdash": reg.replace("-", "–")}
    for name in ("est", "est2"):
        numbers[name] = f"{rng.randint(90000, 99999)}-{pick(list(STATES))}-{pick(('1', '2', '001', '014'))}"
    signal = pick(("caution", "warning", "danger"))
    spanish = {"caution": "PRECAUCIÓN", "warning": "AVISO", "danger": "PELIGRO"}[signal]
    numbers |= {"signal": signal, "SIGNAL": signal.upper(), "SPANISH": spanish}
    numbers |= _ingredients(rng)
    codes = rng.sample(sorted(STATES), 3)
    for n, code in zip(("", "2", "3"), codes, strict=True):
        numbers |= {f"state{n}": STATES[code], f"code{n}": code}
    for n, name in zip(("", "2", "3", "4"), rng.sample(PLANTS, 4), strict=True):
        numbers |= {f"plant{n}": name, f"Plant{n}": name[0].upper() + name[1:]}
    for n, name in zip(("", "2"), rng.sample(sorted(REVERSED), 2), strict=True):
        numbers |= {f"plantrev{n}": name, f"plantr{n}": REVERSED[name]}
    for n, name in zip(("", "2", "3"), rng.sample(MATERIALS, 3), strict=True):
        numbers |= {f"mat{n}": name, f"Mat{n}": name.capitalize()}
    first = rng.randint(0, 7)
    numbers |= {"m1": MONTHS[first], "m2": MONTHS[rng.randint(first + 1, 11)]}
    numbers["n_times"] = {"1": "once", "2": "twice", "3": "three times", "4": "four times"}[str(numbers["n"])]
    for name in ("n", "days", "rei", "rain", "min", "keep"):
        numbers[f"{name}_word"] = WORDS[int(str(numbers[name]))]
    return {name: number if isinstance(number, str) else _plain(number) for name, number in numbers.items()}  # type: ignore[arg-type]


def _ingredients(rng: random.Random) -> dict[str, object]:
    (ing, acid), (ing2, _) = rng.sample(FORMS, 2)
    pct, pctb = round(rng.uniform(20, 62), rng.choice((1, 1, 2))), round(rng.uniform(2, 15), 1)
    ae = rng.choice((1, 1.5, 2, 2.4, 2.87, 3, 4, 4.5))
    ai = round(ae * rng.uniform(1.15, 1.5), 1)
    grams = GRAMS_PER_LB / L_PER_GAL
    return {
        "ing": ing[0].upper() + ing[1:], "ing2": ing2, "acid": acid, "pct": f"{pct:g}", "rest": f"{100 - pct:.4g}",
        "pctb": f"{pctb:g}", "rest2": f"{100 - pct - pctb:.4g}", "aepct": round(pct * ae / ai, 1), "ae": ae, "ai": ai,
        "aegl": round(ae * grams), "aigl": round(ai * grams), "dens": rng.choice((8.4, 9.2, 9.7, 10.1)),
    }  # fmt: skip


def _strengths(rng: random.Random) -> tuple[object, ...]:
    low, high = rng.choice(((10, 20), (15, 25), (20, 30), (25, 50), (30, 60), (50, 75)))
    parts = rng.choice((1, 2, 3, 4, 9))
    return low, high, 100 - low, 100 - high, parts, 100 / (1 + parts)


def _foliar(rng: random.Random) -> tuple[object, ...]:
    low = rng.choice((0.5, 0.75, 1, 1.5, 2))
    ounces, quarts = rng.choice((1, 2, 3, 5)), rng.choice((2, 3, 4, 6))
    return low, low + rng.choice((0.5, 1, 3)), ounces, 100 * ounces / GAL_FL_OZ, quarts, quarts / 4


def _bark(rng: random.Random) -> tuple[object, ...]:
    first, second = rng.randint(1, 4), rng.randint(5, 20)
    oz1, oz2 = rng.choice((13, 16, 20)), rng.choice((24, 32, 38))
    gal2, gal20 = rng.choice((1, 2, 3)), rng.choice((5, 8, 10))
    return first, second, oz1, oz2, 100 * oz1 / GAL_FL_OZ, 100 * oz2 / GAL_FL_OZ, gal2, gal20, 100 * gal2 / gal20


def _limits(rng: random.Random) -> tuple[object, ...]:
    lb = rng.choice((2, 2.5, 3, 4, 6, 8, 9))
    return lb, rng.choice((0.5, 0.75, 1, 1.5)), rng.choice((1, 1.5, 2, 2.67)), rng.randint(2, 4)


def _lengths(rng: random.Random) -> tuple[object, ...]:
    feet, feet2 = rng.sample((10, 15, 25, 30, 50, 75, 100, 150, 200), 2)
    inches = rng.randint(3, 9)
    return (
        feet,
        feet2,
        round(feet * 0.3048, 1),
        rng.choice((5, 10, 20, 30)),
        inches,
        inches - 2,
        round(inches * 2.54, 1),
    )


def _times(rng: random.Random) -> tuple[object, ...]:
    days, days2 = rng.sample((3, 14, 21, 28, 30, 60, 90), 2)
    return days, days2, rng.randint(2, 8), rng.choice((3, 6, 12)), rng.choice((4, 12, 24, 48)), rng.randint(2, 4)


def _minutes(rng: random.Random) -> tuple[object, ...]:
    return (
        rng.choice((5, 10, 15, 30, 60)),
        rng.randint(2, 4),
        rng.choice((15, 20)),
        rng.choice((8, 24, 48)),
        rng.randint(2, 7),
    )


def _weather(rng: random.Random) -> tuple[object, ...]:
    heat, cold, wind = rng.choice((80, 85, 90, 95)), rng.choice((32, 40, 45, 50)), rng.choice((8, 10, 12, 15))
    rain = rng.choice((2, 3, 4, 6, 8, 24))
    return (
        heat,
        round((heat - 32) / 1.8),
        cold,
        round((cold - 32) / 1.8),
        wind,
        rng.choice((2, 3)),
        round(wind * 1.609),
        rain,
    )


def _rest(rng: random.Random) -> tuple[object, ...]:
    store = rng.choice((10, 20, 28, 32, 40))
    cat = rng.choice("ABCDEFGH")
    return store, round((store - 32) / 1.8), rng.choice((145, 200)), cat, rng.randint(1, 28), rng.randint(1, 28)


_DRAWS = (
    ("lo hi lorest hirest parts partspct", _strengths),
    ("f1 f2 fo fopct fq fqpct", _foliar),
    ("g1 g2 oz1 oz2 oz1pct oz2pct gal2 gal20 galpct", _bark),
    ("lb lbone gal n", _limits),
    ("ft ft2 ftm yd dia dia1 diacm", _lengths),
    ("days days2 weeks months rei reid", _times),
    ("min hrs aid keep keepd", _minutes),
    ("heat heatc cold coldc wind calm kmh rain", _weather),
    ("store storec flash cat d1 d2", _rest),
)
