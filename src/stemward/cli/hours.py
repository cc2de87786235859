"""stemward hours: which hours ahead are open for the work, and why not the others."""

import argparse
from pathlib import Path
from typing import Any


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward hours`."""
    parser.add_argument("folder", type=Path, nargs="?", help="the tract folder; without it a quick sum")
    parser.add_argument(
        "--forecast", type=Path, metavar="F", help="hours from this file: the weather service's JSON, or a CSV"
    )
    parser.add_argument(
        "--history", type=Path, metavar="F", help="the weeks of the year, from years of hours in this file"
    )
    parser.add_argument("--place", metavar="LAT,LON", help="latitude and longitude in degrees, such as 42.44,-76.50")
    parser.add_argument("--zone", default="", metavar="ZONE", help="time zone, such as America/New_York")
    parser.add_argument("--how", default="foliar", help="cut-stump, basal-bark, hack-and-squirt or foliar (quick sum)")
    parser.add_argument("--in", dest="carrier", default="water", help="water, oil or undiluted (quick sum)")
    parser.add_argument("--form", default="", help="ester, where the product is one (quick sum)")
    parser.add_argument("--as-of", metavar="DATE", help="the day the plan is for (default: today)")
    parser.add_argument("--units", choices=("us", "metric"), default="us", help="miles an hour, or meters a second")
    parser.add_argument("--json", action="store_true", help="print the hours as data")


def run(args: argparse.Namespace) -> int:
    """Print spans by treatment. 0, or 2 for input that cannot be used."""
    import datetime
    import json
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    from stemward.cli.common import say_unusable
    from stemward.gate.weather import NotWeather, read_weather
    from stemward.gate.weather.fetch import NoForecast, get_forecast
    from stemward.handbook import load
    from stemward.kinds import HERBICIDE_METHODS
    from stemward.kinds.hours import Site
    from stemward.plan.open_hours import Doing, judge
    from stemward.plan.weeks import flows_of, weeks_of
    from stemward.say import hours as say
    from stemward.say import weeks as say_weeks
    from stemward.say.en import hours as words

    book, now = load(), datetime.datetime.now(datetime.UTC)
    works: list[tuple[str, Doing]]
    try:
        if args.folder:
            works, place, zone_name = _of_folder(args, book)
        else:
            how = args.how.replace("-", " ")
            if how not in HERBICIDE_METHODS:
                return say_unusable(f"Not understood: {args.how}. Write one of {', '.join(HERBICIDE_METHODS)}.")
            works, place, zone_name = [(how, Doing(how, args.carrier, args.form))], None, args.zone
    except ValueError as wrong:
        return say_unusable(str(wrong))
    try:
        zone: datetime.tzinfo | None = ZoneInfo(args.zone or zone_name) if args.zone or zone_name else None
        place = _place(args.place) if args.place else place
    except (ZoneInfoNotFoundError, ValueError):
        return say_unusable("Write the place as 42.44,-76.50 and the zone as America/New_York.")
    if place is None:
        return say_unusable("Where is it? Give --place LAT,LON: the sun and the forecast go by it.")
    site = Site(place[0], place[1], zone=args.zone or zone_name)
    try:
        source = args.history or args.forecast
        raw, name = (source.read_bytes(), source.name) if source else (get_forecast(*place).raw, "forecast")
        hours, doubts = read_weather(raw, name, site, "history" if args.history else "forecast")
    except OSError as error:
        return say_unusable(f"{source} cannot be read: {error.strerror}.")
    except NoForecast as none:
        return say_unusable(f"{words.NOT_WEATHER[none.message]} Or give a file with --forecast.")
    except NotWeather as wrong:
        return say_unusable(f"{name}: {words.NOT_WEATHER[wrong.message]}")
    # A day that is named is looked at whole; else what is over is left out.
    after = None if args.as_of else now
    found = [(title, doing, judge(doing, hours, book)) for title, doing in works]
    if args.json:
        rows = [
            {"work": title, "needs_dry_h": judged.dry_h, "unread": list(judged.unread),
             "hours": [{"at": f"{at}Z", "state": state}
                       for at, state in zip(hours.at.astype(str).tolist(), judged.states(), strict=True)],
             "spans": [{"state": one.state, "text": one.text}
                       for one in say.span_lines(judged, zone, args.units, after)]}
            for title, _, judged in found
        ]  # fmt: skip
        print(json.dumps({"schema": 1, "works": rows, "odd": say.doubt_lines(doubts)}, indent=1, ensure_ascii=False))
        return 0
    print("\n".join([*say.age_lines(hours, now), *say.doubt_lines(doubts)]))
    if args.history:
        flow = say_weeks.flow_line(flows_of(hours, zone))
        for title, doing, judged in found:
            print(f"\n{title}\n  {say_weeks.season_line(book, doing, title.partition(',')[0])}\n  {flow}")
            lines = say_weeks.week_lines(weeks_of(judged, zone), hours, say_weeks.seasons_of(book, doing))
            print("\n".join(f"  {line}" for line in lines))
        return 0
    for title, doing, judged in found:
        print(f"\n{title}")
        print(f"  {say.next_open(judged, zone, args.units, after)}")
        for one in say.span_lines(judged, zone, args.units, after):
            print(f"  {one.text}")
            if one.state == "open" and (line := say.dry_line(judged, doing, one.first, zone)):
                print(f"    {line}")
        if line := say.unread_line(judged):
            print(f"  {line}")
    print("\nLook at the sky as well. The label, your state's rules and licensed practice decide.")
    return 0


def _place(text: str) -> tuple[float, float]:
    """Latitude and longitude. Raises ValueError."""
    first, _, second = text.partition(",")
    place = float(first), float(second)
    if not (-90 <= place[0] <= 90 and -180 <= place[1] <= 180):
        raise ValueError(text)
    return place


def _of_folder(args: argparse.Namespace, book: Any) -> tuple[list[tuple[str, Any]], tuple[float, float] | None, str]:
    """Works of a tract's plan with their names, where it lies and its zone. Raises ValueError with a sentence."""
    from stemward.cli.common import Unusable, read_folder
    from stemward.plan import as_data, draw_up
    from stemward.plan.open_hours import doings
    from stemward.say import Speaker

    try:
        read, as_of = read_folder(args.folder, args.as_of, book)
    except Unusable as error:
        raise ValueError(str(error)) from None
    data = as_data(draw_up(read.tract, book, as_of, read.hash))
    speaker = Speaker(data, args.units)
    works = [
        (f"{item['common']}, {item['patch_name']}: {speaker.way(item)}", doing)
        for item, doing in doings(read.tract, data["treatments"])
    ]
    return works, read.tract.origin, read.tract.time_zone
