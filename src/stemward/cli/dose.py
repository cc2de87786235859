"""stemward dose: how much mix some stems take, without a tract."""

import argparse

HOW = ("cut stump", "basal bark", "hack and squirt", "foliar")
TOOLS = {"basal bark": "backpack", "foliar": "backpack"}


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward dose`."""
    parser.add_argument("how", choices=[h.replace(" ", "-") for h in HOW], help="the way of treating")
    parser.add_argument(
        "size", nargs="+", help='across the stem, one or more: "6 in" "2 1/2 in" "9 cm"; for foliar how tall: "5 ft"'
    )
    parser.add_argument("--count", type=int, default=1, metavar="N", help="stems of each size (default 1)")
    parser.add_argument("--ring", metavar="W", help='width of the ring wetted on large stumps (default "2 in")')
    parser.add_argument("--tool", help="squirt bottle, dauber, hand trigger, backpack (default: the usual one)")
    parser.add_argument("--oil", action="store_true", help="stumps in oil: bark and root collar are wetted as well")
    parser.add_argument("--per-squirt", metavar="V", help='what one squirt of yours gives, once counted: "0.8 mL"')
    parser.add_argument("--ingredient", default="glyphosate", help="for hack and squirt: sets the spacing of cuts")
    parser.add_argument("--strength", default="4 lb ae/gal", help="for hack and squirt: strength of the jug")
    parser.add_argument("--concentration", default="50 %", help="for hack and squirt: share of product in the mix")
    parser.add_argument("--units", choices=("us", "metric"), default="us")


def run(args: argparse.Namespace) -> int:
    """Print the dose of each size and the total with its spread. 0, or 2 for unusable input."""
    from stemward.cli.common import Unusable, measure, say_unusable
    from stemward.handbook import load
    from stemward.plan.quick import QuickDose, quick_dose
    from stemward.say import figure

    book = load()
    try:
        how = args.how.replace("-", " ")
        leaves = how == "foliar"
        tool = args.tool or TOOLS.get(how, "squirt bottle")
        to, bare = ("m", "ft") if leaves else ("cm", "in")
        sizes = [(text, measure(text, "length", to, bare)) for text in args.size]
        if not all(0 < size < 10_000 for _, size in sizes):
            raise Unusable("Not understood: sizes are above 0.")
        ring_cm = measure(args.ring, "length", "cm", "in") if args.ring else None
        wanted = QuickDose(
            how,
            tuple(text for text, _ in sizes),
            () if leaves else tuple(size for _, size in sizes),
            args.count,
            tool,
            ring_cm,
            args.ingredient,
            measure(args.strength, "strength", "g_l"),
            measure(args.concentration, "fraction", "frac", "%"),
            args.oil,
            tuple(size for _, size in sizes) if leaves else (),
            measure(args.per_squirt, "volume", "ml", "mL") if args.per_squirt else 0.0,
        )
        if args.count < 1 or args.count > 1_000_000:
            raise Unusable(f"Not understood: --count {args.count}. Write a number of stems from 1 to 1,000,000.")
        if tool not in book.tools:
            raise Unusable(f"Not understood: --tool {tool}. Write one of: {', '.join(book.tools)}.")
        done = quick_dose(wanted, book)
    except Unusable as error:
        return say_unusable(str(error))
    for row in done.rows:
        cuts = f", {row.cuts} cuts" if row.cuts is not None else ""
        cuts += f", {figure('wet_frac', row.wet_frac, args.units)} wet" if row.wet_frac else ""
        cuts += f", {row.strokes} squirts" if row.strokes is not None else ""
        each, total = (figure("mix_ml", ml, args.units) for ml in (row.each_ml, row.each_ml * args.count))
        print(f"{row.typed}: {row.each_ml:.1f} mL each ({each}){cuts}; {args.count} of them {total}")
    low, middle, high = (figure("mix_ml", ml, args.units) for ml in (done.low_ml, done.need_ml, done.high_ml))
    print(f"In all about {middle} ({low} to {high}).")
    for cited in done.leans_on:
        print(f"  {cited.id} = {cited.value:g} {cited.unit}: {cited.grade}; {cited.source}")
    print("The label decides. Treat 20 stems and measure the bottle to know your own figure.")
    return 0
