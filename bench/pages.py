"""Server time of every page of a tract with ten thousand stems, asked in-process on SQLite.

    python bench/pages.py [STEMS] [TIMES]

Prints the 95th percentile over all pages and asks, and the slowest pages. The plan is worked out beforehand, as it is
while a person reads: pages never wait for it.
"""

import datetime
import os
import sys
import tempfile
import time
import uuid

import numpy as np

AIM_MS = 200.0
NOW = datetime.datetime(2026, 10, 10, 9, tzinfo=datetime.UTC)
PAGES = (
    "", "about", "patch", "patch/meadow", "patch/slope/plots", "plan.json", "stems", "stems/rows", "import", "ways",
    "ways/meadow/Frangula alnus/standing", "ways/meadow/Frangula alnus/standing?all=1", "findings", "mix", "packet",
    "day", "hours", "walks", "after", "shelf", "shelf/new", "shelf/imazapyr-2lb/label", "shelf/imazapyr-2lb/jug",
    "changes", "out", "after/write", "after/day/2025-09-20", "after/back", "after/worked", "after/others", "years",
    "behind/t1", "check/water", "workshop", "paper/season",
    "paper/share", "paper/bid", "phone", "labels", "permits", "ways/meadow/Frangula alnus/standing/arms",
    "piece/person/owner", "piece/spared/oak-1", "first/3", "first/5", "first/6", "first/7", "step",
)  # fmt: skip
WITHOUT = (
    "/",
    "/sums",
    "/sums/stems?how=cut+stump&sizes=2+in",
    "/sums/near",
    "/settings",
    "/copies",
    "/bring",
    "/first",
)


def a_tract(stems: int) -> str:
    """The example with so many stems more on its meadow; its id."""
    from stemward.gate import demo
    from stemward.gate.pieces import Parts, split
    from stemward.notebook.changes import Asked, begin

    parts = split(demo.texts())
    rng = np.random.default_rng(1)
    more = []
    for n in range(stems):
        x, y, size = rng.uniform(70, 130), rng.uniform(45, 100), rng.choice(["1", "1 1/2", "2", "3 1/4"])
        more.append(tuple({"id": f"more{n}", "patch": "meadow", "species": "glossy buckthorn", "x_m": f"{x:.2f}",
                           "y_m": f"{y:.2f}", "diameter_in": str(size), "measured_at": "stump", "stems": "1",
                           "state": "standing"}.get(name, "") for name in _columns()))  # fmt: skip
    tract = str(uuid.uuid4())
    whole = Parts(parts.pieces, [*parts.stems, *more], parts.entries)
    begin(Asked(str(uuid.uuid4()), tract, "owner", "begin"), whole, NOW, example=True)
    return tract


def forecast() -> bytes:
    """A week of hours from now, invented."""
    start = datetime.datetime.now(datetime.UTC).replace(minute=0, second=0, microsecond=0)
    return ("time,temp (F),dew point (F),wind (mph),gust (mph),rain (in),chance (%),cloud (%)\n" + "".join(
        f"{start + datetime.timedelta(hours=h):%Y-%m-%dT%H:00:00Z},{55 + h % 17},44,{h % 9},{4 + h % 13},"
        f"{0.05 if 40 < h < 46 else 0},{h % 30},{h % 90}\n"
        for h in range(156)
    )).encode()  # fmt: skip


def _columns() -> tuple[str, ...]:
    from stemward.gate.pieces import STEM_COLUMNS

    return STEM_COLUMNS


def main() -> int:
    """Ask for every page in turn and print what it took."""
    stems = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    times = int(sys.argv[2]) if len(sys.argv) > 2 else 10
    with tempfile.TemporaryDirectory() as folder:
        os.environ |= {"STEMWARD_DATA": folder, "STEMWARD_TODAY": "2026-10-10",
                       "DJANGO_SETTINGS_MODULE": "stemward.web.settings"}  # fmt: skip
        import django

        django.setup()
        from django.core.management import call_command
        from django.test import Client

        from stemward.notebook import worked
        from stemward.web import clock
        from stemward.web.door import COOKIE, door

        call_command("migrate", verbosity=0)
        tract = a_tract(stems)
        client = Client(HTTP_HOST="127.0.0.1")
        client.cookies[COOKIE] = door.key
        from stemward.web import forecasts

        forecasts.put_place(tract, (40.0, -75.0))
        forecasts.keep(tract, forecast(), "invented.csv", forecasts.site_of((40.0, -75.0), "America/Chicago"))
        start = time.perf_counter()
        worked.plan_of(tract, clock.today())
        print(f"plan worked out in {time.perf_counter() - start:.1f} s, in the background")
        addresses = [f"/land/{tract}/{page}" for page in PAGES] + list(WITHOUT)
        found: dict[str, list[float]] = {}
        first: dict[str, float] = {}
        for turn in range(times + 1):
            for address in addresses:
                start = time.perf_counter()
                answer = client.get(address)
                took = (time.perf_counter() - start) * 1000
                assert answer.status_code == 200, (address, answer.status_code)
                if turn:
                    found.setdefault(address, []).append(took)
                else:
                    first[address] = took
    every = np.concatenate(list(found.values()))
    print(f"{len(addresses)} pages at {stems:,} stems, {times} times each: median {np.median(every):.0f} ms, "
          f"95th percentile {np.percentile(every, 95):.0f} ms, most {every.max():.0f} ms (aim {AIM_MS:g})")  # fmt: skip
    slowest = sorted(found, key=lambda one: -np.median(found[one]))[:6]
    for address in slowest:
        print(f"  {np.median(found[address]):6.0f} ms  {address.replace(tract, '…')}")
    print("first asks: " + ", ".join(f"{first[a]:.0f} ms {a.replace(tract, '…')}" for a in
                                     sorted(first, key=lambda one: -first[one])[:5]))  # fmt: skip
    return 0


if __name__ == "__main__":
    sys.exit(main())
