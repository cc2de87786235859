"""stemward mix: how much product and carrier go into a bottle, without a tract."""

import argparse


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward mix`."""
    parser.add_argument("amount", help='finished mix wanted: "24 fl oz", "1 qt", "500 mL"')
    how = parser.add_mutually_exclusive_group(required=True)
    how.add_argument("--concentration", metavar="C", help='share of product in the mix, by volume: "50 %%"')
    how.add_argument("--ratio", metavar="A:B", help="parts: 1:3 has two readings, and both are shown")
    how.add_argument("--per-gallon", metavar="V", help='"32 fl oz" for each gallon; two readings, both are shown')
    parser.add_argument("--strength", metavar="S", help='strength of the jug, "4 lb ae/gal", for acid equivalent')
    parser.add_argument("--bottle", metavar="V", help="what the bottle holds (default: the amount and a quarter)")
    parser.add_argument("--units", choices=("us", "metric"), default="us")


def run(args: argparse.Namespace) -> int:
    """Print what to pour, in marks of common measures. 0; 2 for unusable input or where it cannot be poured."""
    from stemward.cli.common import Unusable, measure, say_unusable
    from stemward.handbook import load
    from stemward.plan.quick import quick_mix
    from stemward.say import figure

    try:
        amount_ml = measure(args.amount, "volume", "ml")
        bottle_ml = measure(args.bottle, "volume", "ml") if args.bottle else 1.25 * amount_ml
        readings = _readings(args)
        strength = measure(args.strength, "strength", "g_l") if args.strength else None
    except Unusable as error:
        return say_unusable(str(error))
    poured = False
    for words, share in readings:
        print(f"{words}: {figure('share_frac', share, args.units)} product")
        done = quick_mix(amount_ml, share, bottle_ml, load())
        if done.refused:
            print(f"  Cannot be measured with the usual measures ({done.refused}). Try {done.would_do}.")
            continue
        poured = True
        for part in done.parts:
            print(
                f"  {part.what}: {part.ml:.1f} mL ({figure('part_ml', part.ml, args.units)}), "
                f"{part.fills} x {part.measure}"
            )
        print(f"  makes {figure('mix_ml', done.mixed_ml, args.units)} at {figure('c_frac', done.share, args.units)}")
        if strength is not None:
            print(f"  {done.share * strength:.0f} g acid equivalent per liter of mix")
    if len(readings) > 1:
        print("The two readings differ. Unless the label says which it means, find out before mixing.")
    print("The label decides how strong the mix may be. Gloves and eye protection on before the cap comes off.")
    return 0 if poured else 2


def _readings(args: argparse.Namespace) -> list[tuple[str, float]]:
    from stemward.cli.common import Unusable, measure
    from stemward.reckon.mix import ounces_per_gallon_readings, ratio_readings
    from stemward.units import convert

    if args.concentration:
        share = measure(args.concentration, "fraction", "frac", "%")
        if not 0 < share <= 1:
            raise Unusable(f"Not understood: {args.concentration}. Write a share between 0 and 100 %.")
        return [(args.concentration, share)]
    if args.ratio:
        a, colon, b = args.ratio.partition(":")
        try:
            parts = (float(a), float(b))
        except ValueError:
            parts = (0.0, 0.0)
        if not colon or not all(0 < p < 1e6 for p in parts):
            raise Unusable(f"Not understood: {args.ratio}. Write for example 1:3.")
        added, within = ratio_readings(*parts)
        if within > 1:
            return [(f"{args.ratio} as {a} parts added to {b} parts", float(added))]
        return [
            (f"{args.ratio} as {a} parts added to {b} parts", float(added)),
            (f"{args.ratio} as {a} parts in {b} parts of finished mix", float(within)),
        ]
    ounces = measure(args.per_gallon, "volume", "ml") / convert(1.0, "fl oz", "ml")
    if not 0 < ounces <= 128:
        raise Unusable(f"Not understood: {args.per_gallon}. Write an amount up to a gallon, for example 32 fl oz.")
    made, added = ounces_per_gallon_readings(ounces)
    return [
        (f"{args.per_gallon} with carrier to make a gallon", float(made)),
        (f"{args.per_gallon} added to a gallon", float(added)),
    ]
