"""Make the demo's land files: places, sizes and counts are invented, drawn with a fixed seed.

    python tools/make_demo.py src/stemward/gate/demo/quarry-hollow

Writes stems.csv, patches.geojson, spared.geojson and the shelf; tract.toml and choices.toml are kept by hand.
"""

import json
import pathlib
import sys

import numpy as np
from shapely import Point, Polygon

from demo_shelf import write_shelf

SEED = 20261125

MEADOW = [(30, 18), (95, 12), (170, 22), (236, 40), (228, 118), (150, 132), (78, 126), (34, 92), (30, 18)]
RIM = [(60, 262), (128, 252), (206, 268), (212, 312), (150, 330), (74, 318), (60, 262)]
STREAM = [(0, 6), (60, 2), (130, 9), (200, 20), (262, 34)]
ORCHIDS = [(176, 96), (192, 94), (196, 106), (182, 112), (174, 106), (176, 96)]
SLOPE = [(40, 352), (170, 345), (330, 360), (470, 420), (480, 560), (330, 620), (150, 600), (52, 520), (40, 352)]
YARD = [(232, 160), (386, 152), (387, 262), (240, 258), (232, 160)]
LANE = [(380, 200), (330, 196), (286, 214), (270, 228)]
BOUNDARY = [(388, 130), (388, 330)]
WIRE = [(388, 162), (300, 166), (262, 224)]
GARDEN = [(268, 196), (288, 196), (288, 210), (268, 210), (268, 196)]


def scatter(rng, outline, centres, spread_m, count, keep_off=()):
    """Points in clumps inside an outline and outside the polygons of `keep_off`. Metres, one decimal."""
    area, points = Polygon(outline), []
    shut = [Polygon(ring).buffer(2.0) for ring in keep_off]
    while len(points) < count:
        at = centres[rng.integers(len(centres))] + rng.normal(0.0, spread_m, 2)
        spot = Point(np.round(at, 1))
        if area.buffer(-1.0).contains(spot) and not any(s.contains(spot) for s in shut):
            points.append((spot.x, spot.y))
    return points


def sizes_in(rng, count, middle, spread, low, high):
    """Log-normal diameters in inches, to the nearest quarter inch."""
    drawn = np.clip(np.exp(rng.normal(np.log(middle), spread, count)), low, high)
    return np.round(drawn * 4) / 4


def inches(size):
    """A quarter-inch figure as people write it: 2 3/4."""
    whole, part = divmod(round(size * 4), 4)
    words = {0: "", 1: "1/4", 2: "1/2", 3: "3/4"}[part]
    return f"{whole} {words}".strip() if whole else words


def feature(shape, coordinates, **properties):
    return {
        "type": "Feature",
        "properties": properties,
        "geometry": {"type": shape, "coordinates": coordinates},
    }


def main(folder):
    rng = np.random.default_rng(SEED)
    rows = []

    def add(prefix, patch, species, points, sizes, at, form, height):
        for n, ((x, y), size) in enumerate(zip(points, sizes, strict=True), 1):
            rows.append(f"{prefix}{n},{patch},{species},{x:g},{y:g},{inches(size)},{at},1,{height(size):.1f},{form}")

    clumps = np.array([(70, 60), (110, 95), (150, 50), (205, 70), (60, 105), (130, 115)])
    add(
        "b", "meadow", "glossy buckthorn",
        scatter(rng, MEADOW, clumps, 13.0, 76, [ORCHIDS]), sizes_in(rng, 76, 1.25, 0.45, 0.5, 3.0),
        "stump", "shrub", lambda s: 1.5 + 1.1 * s,
    )  # fmt: skip
    add(
        "a", "rim", "tree-of-heaven",
        scatter(rng, RIM, np.array([(96, 288), (150, 300), (186, 286)]), 9.0, 34),
        sizes_in(rng, 34, 4.0, 0.4, 2.0, 9.0),
        "breast", "tree", lambda s: 4.0 + 1.3 * s,
    )  # fmt: skip
    add(
        "o", "rim", "autumn olive",
        scatter(rng, RIM, np.array([(120, 270), (84, 308)]), 10.0, 21), sizes_in(rng, 21, 1.75, 0.35, 0.75, 4.0),
        "stump", "shrub", lambda s: 1.8 + 0.6 * s,
    )  # fmt: skip
    trees = np.array([(110, 420), (180, 470), (250, 440), (330, 500), (400, 520), (140, 540), (280, 560), (220, 400)])
    add(
        "m", "slope", "red maple",
        scatter(rng, SLOPE, trees, 22.0, 92), sizes_in(rng, 92, 4.0, 0.32, 2.0, 7.0),
        "breast", "tree", lambda s: 4.5 + 1.5 * s,
    )  # fmt: skip
    add(
        "r", "slope", "multiflora rose",
        scatter(rng, SLOPE, np.array([(90, 380), (430, 480), (360, 590)]), 11.0, 28),
        sizes_in(rng, 28, 0.75, 0.3, 0.5, 1.5), "stump", "shrub", lambda s: 1.4 + 0.5 * s,
    )  # fmt: skip
    add(
        "h", "slope", "bush honeysuckles",
        scatter(rng, SLOPE, np.array([(150, 380), (260, 390), (300, 470)]), 14.0, 64),
        sizes_in(rng, 64, 1.25, 0.4, 0.5, 3.0), "stump", "shrub", lambda s: 1.5 + 0.7 * s,
    )  # fmt: skip
    add(
        "p", "yard", "callery pear",
        [(384.3, 198.0), (384.3, 206.5), *scatter(rng, YARD, np.array([(340, 204), (356, 188)]), 8.0, 13)],
        sizes_in(rng, 15, 1.5, 0.35, 0.75, 3.0), "stump", "tree", lambda s: 2.0 + 1.2 * s,
    )  # fmt: skip
    cut = scatter(rng, RIM, np.array([(78, 300)]), 5.0, 6)
    for n, ((x, y), size) in enumerate(zip(cut, sizes_in(rng, 6, 3.0, 0.3, 1.5, 5.0), strict=True), 1):
        rows.append(f"c{n},rim,autumn olive,{x:g},{y:g},{inches(size)},stump,1,0.2,shrub,cut")
    rows = [row if row.endswith(",cut") else f"{row},standing" for row in rows]
    tallies = ["plot,patch,species,low_in,high_in,count,plot_m2"]
    for plot in range(1, 13):
        thick = rng.gamma(1.2, 6.0)
        for low, high, share in ((0, 1, 0.6), (1, 2, 0.3), (2, 4, 0.1)):
            tallies.append(f"{plot},slope,bush honeysuckles,{low},{high},{rng.poisson(thick * share)},40.47")
    (folder / "plots.csv").write_text("\n".join(tallies) + "\n", encoding="utf-8")
    oaks = scatter(rng, SLOPE, trees, 30.0, 46)
    girths = np.round(np.clip(np.exp(rng.normal(np.log(16), 0.3, 46)), 8, 30))
    heading = "id,patch,species,x_m,y_m,diameter_in,measured_at,stems,height_m,form,state"
    (folder / "stems.csv").write_text("\n".join([heading, *rows]) + "\n", encoding="utf-8")
    write(
        folder / "patches.geojson",
        [
            feature("Polygon", [outline], id=name)
            for name, outline in (("meadow", MEADOW), ("rim", RIM), ("slope", SLOPE), ("yard", YARD))
        ],
    )
    write(
        folder / "spared.geojson",
        [
            feature("LineString", STREAM, id="stream", kind="water", note="spring-fed, along the south edge"),
            feature("Point", [150, 126], id="spring", kind="water", note="spring at the foot of the quarry"),
            feature("Polygon", [ORCHIDS], id="orchids", kind="small plants", note="a patch of orchids"),
            feature("Point", [214, 60], id="willow-1", kind="tree", species="black willow", dbh_in="9"),
            feature("Point", [52, 74], id="willow-2", kind="tree", species="black willow", dbh_in="6"),
            feature("Point", [168, 322], id="oak-1", kind="tree", species="bur oak", dbh_in="19"),
            feature("Point", [110, 317], id="oak-2", kind="tree", species="bur oak", dbh_in="14"),
            *(
                feature("Point", [x, y], id=f"oak-{n}", kind="tree", species=kind, dbh_in=f"{girth:g}")
                for n, ((x, y), girth, kind) in enumerate(
                    zip(oaks, girths, ["bur oak", "white oak"] * 23, strict=True), 3
                )
            ),
            feature("Point", [292, 244], id="sugar-maple", kind="tree", species="sugar maple", dbh_in="22"),
            feature("LineString", LANE, id="lane", kind="lane", note="gravel lane to the house"),
            feature("LineString", BOUNDARY, id="east line", kind="boundary", note="boundary with the neighbor"),
            feature("LineString", WIRE, id="wire", kind="wire", note="service line to the house"),
            feature("Point", [276, 224], id="well", kind="well", note="drilled well by the house"),
            feature("Polygon", [GARDEN], id="garden", kind="garden", note="vegetables"),
            feature("Point", [262, 232], id="house", kind="building", note="the house"),
        ],
    )


def write(path, features):
    data = {"type": "FeatureCollection", "features": features}
    path.write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
    write_shelf(pathlib.Path(sys.argv[1]))
