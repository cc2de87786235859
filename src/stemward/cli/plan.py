"""stemward plan FOLDER: plan a tract folder."""

import argparse
from pathlib import Path
from typing import Any


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward plan`."""
    parser.add_argument("folder", type=Path, help="the tract folder")
    parser.add_argument("--pdf", type=Path, metavar="F", help="write the packet to this PDF file")
    parser.add_argument("--json", metavar="F", help="write the plan as JSON to this file, or - to print it")
    parser.add_argument("--as-of", metavar="DATE", help="the day the plan is for, 2026-10-03 (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="gallons and inches, or liters")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter", help="size of the pages")


def run(args: argparse.Namespace) -> int:
    """Plan, print a summary, write what was asked for. 0, 2 unusable input, 3 a finding stops."""
    from stemward.cli.common import Unusable, read_folder, say_unusable, write_whole
    from stemward.handbook import load
    from stemward.plan import as_data, draw_up, to_json
    from stemward.say import Speaker

    book = load()
    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
    except Unusable as error:
        return say_unusable(str(error))
    data = as_data(draw_up(read.tract, book, as_of, read.hash))
    speaker = Speaker(data, args.units)
    try:
        if args.pdf:
            from stemward.paper import packet

            write_whole(args.pdf, packet(data, args.units, args.paper))
        if args.json and args.json != "-":
            write_whole(Path(args.json), to_json(data).encode())
    except Unusable as error:
        return say_unusable(str(error))
    if args.json == "-":
        print(to_json(data), end="")
    else:
        print("\n".join(summary(data, speaker)))
    return 3 if any(f["weight"] == "stop" for f in data["findings"]) else 0


def summary(data: dict[str, Any], speaker: Any) -> list[str]:
    """The plan as lines for a terminal, heaviest findings first."""
    tract = data["tract"]
    lines = [f"{', '.join(w for w in (tract['name'], tract['place']) if w)}   plan {data['code']}, for {data['as_of']}"]
    if tract["invented"]:
        lines.append(speaker.word("invented"))
    lines += ["", speaker.count_line(), ""]
    for said in speaker.findings():
        if said.weight == "checked":
            continue
        about = f"  [{said.about}]" if said.about else ""
        lines.append(f"{said.word.upper()}. {said.text}{about}")
        if said.do:
            lines.append(f"    Do: {said.do}.")
        if said.stands:
            lines.append(f"    {said.stands}")
    lines += ["", *(f"Note: {line}" for line in speaker.doubts()), ""] if data["tract"]["asked"] else [""]
    for item in data["treatments"]:
        lines.append(f"{item['common']} on {item['patch_name']}, stems: {item['stems']}. {speaker.way(item)}")
        if item["product"]:
            low, middle, high = (speaker.number("mix_ml", item[k]) for k in ("need_low_ml", "need_ml", "need_high_ml"))
            lines.append(f"    needs about {middle} of mix ({low} to {high})")
        lines.append(f"    {speaker.why(item)}")
    lines += [speaker.survey(item) for item in data["surveys"]]
    for mix in data["mixes"]:
        lines += ["", f"Mix: {speaker.mix_words(mix)}"]
        for batch in mix["batches"]:
            lines.append("    " + speaker.batch(batch, mix["carrier"]))
    if speaker.draft:
        lines += ["", speaker.word("draft")]
    return lines
