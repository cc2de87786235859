"""A redraw of the land's drawing with 20,000 stems, against one bare path of the same symbols on the same canvas.

    python bench/redraw.py [STEMS]

In headless Chromium without a graphics card. Each redraw is measured until its pixels are there (one is read back).
Prints the median and 95th percentile over a scripted drag, and the ratio. Needs Chromium; says so where there is none.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile

AIM_MS = 40.0
MEASURE = """async () => {
  const land = document.querySelector('.land').drawingOfLand, pen = land.pen, found = { ours: [], bare: [] };
  const seen = () => pen.getImageData(0, 0, 1, 1).data[0];
  const size = land.symbol(), dots = size < 10, r = size / 2;
  for (let n = 0; n < 60; n++) {
    land.east += 0.4; land.north += (n % 2 ? 0.2 : -0.2);
    let start = performance.now();
    land.paintNow(); seen();
    found.ours.push(performance.now() - start);
    start = performance.now();
    const path = new Path2D();
    pen.clearRect(0, 0, land.width, land.height);
    for (let i = 0; i < land.land.x.length; i++) {
      const x = land.px(land.land.x[i]), y = land.py(land.land.y[i]);
      if (x < -r || y < -r || x > land.width + r || y > land.height + r) continue;
      if (dots) path.rect(x - 1.5, y - 1.5, 3, 3);
      else { path.moveTo(x + r, y); path.arc(x, y, r, 0, 2 * Math.PI); }
    }
    pen.lineWidth = 2; pen.fill(path); if (!dots) pen.stroke(path);
    seen();
    found.bare.push(performance.now() - start);
    await new Promise(requestAnimationFrame);
  }
  return found;
}"""


def body(stems: int) -> str:
    """What the page is told of land with so many stems, all in view and large enough to be circles."""
    side = int(stems**0.5) + 1
    return json.dumps({
        "patches": [{"id": "a", "name": "A", "rings": [[[0, 0], [side, 0], [side, side], [0, side], [0, 0]]]}],
        "stems": {"id": [f"s{n}" for n in range(stems)], "x": [n % side for n in range(stems)],
                  "y": [n // side for n in range(stems)], "cm": [5.0] * stems, "species": ["red maple"] * stems,
                  "state": [("standing", "cut")[n % 2] for n in range(stems)]},
        "spared": [], "all": [], "background": None,
    })  # fmt: skip


def main() -> int:
    """Serve a notebook, draw, print."""
    import numpy as np
    from playwright.sync_api import sync_playwright

    stems = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        print("no Chromium here; nothing was measured")
        return 0
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        server = subprocess.Popen(
            [sys.executable, "-m", "stemward.cli", "serve", "--data", folder, "--no-browser", "--example"],
            stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONUNBUFFERED": "1"},
        )  # fmt: skip
        link = next(line.strip() for line in server.stdout if line.startswith("http"))
        browser = play.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-gpu"])
        context = browser.new_context(viewport={"width": 1440, "height": 900})
        for name, scale in (("dots, all in view", 0.0), ("circles and half circles, a part in view", 12.0)):
            page = context.new_page()
            page.route("**/plan.json", lambda route: route.fulfill(body=body(stems)))
            page.goto(link)
            link = page.url
            page.get_by_text(f"{stems} plants to treat").wait_for()
            page.evaluate(
                "(s) => { const l = document.querySelector('.land').drawingOfLand; if (s) l.scale = s; }", scale
            )
            found = page.evaluate(MEASURE)
            ours, bare = (np.array(found[which][5:]) for which in ("ours", "bare"))
            print(f"{stems:,} stems, {name}: median {np.median(ours):.1f} ms, 95th percentile "
                  f"{np.percentile(ours, 95):.1f} ms (aim {AIM_MS:g}), bare {np.median(bare):.1f} ms, "
                  f"ratio {np.median(ours) / np.median(bare):.2f}")  # fmt: skip
        browser.close()
        server.terminate()
        server.wait(20)
        server.stdout.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
