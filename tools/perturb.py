"""Change every named constant of the arithmetic by 5 %, one at a time: a published value must then disagree.

    python tools/perturb.py

Named constants are the numbers in capitals in `stemward.units` and `stemward.reckon` (tolerances begin with an
underscore and are not meant). Each is changed in a copy of the source. Exit status 1 if a change goes unseen.
"""

import ast
import os
import shutil
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).parent.parent
ROOMS = ("units", "reckon")
AT_ONCE = 2


def constants() -> list[tuple[Path, str]]:
    """Every named number: its file and name."""
    sys.path.insert(0, str(ROOT / "src"))
    import importlib
    from numbers import Number

    found = []
    for room in ROOMS:
        for path in sorted((ROOT / "src/stemward" / room).rglob("*.py")):
            name = ".".join(path.relative_to(ROOT / "src").with_suffix("").parts)
            module = importlib.import_module(name.removesuffix(".__init__"))
            for node in ast.parse(path.read_text()).body:
                targets = node.targets if isinstance(node, ast.Assign) else []
                for target in targets:
                    name = getattr(target, "id", "")
                    value = getattr(module, name, None)
                    if name.isupper() and not name.startswith("_") and isinstance(value, Number):
                        found.append((path, name))
    return found


def changed(path: Path, name: str) -> str:
    """The source with one constant 5 % larger."""
    text = path.read_text()
    for node in ast.parse(text).body:
        if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == name:
            lines = text.splitlines(keepends=True)
            at = node.end_lineno or node.lineno
            factor = "* Fraction(21, 20)" if "Fraction" in text else "* 1.05"
            lines.insert(at, f"{name} = {name} {factor}\n")
            return "".join(lines)
    raise LookupError(name)


def noticed(pair: tuple[Path, str]) -> tuple[str, int]:
    """How many published values disagree once a constant is changed."""
    path, name = pair
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "stemward"
        shutil.copytree(ROOT / "src/stemward", copy, ignore=shutil.ignore_patterns("__pycache__", "fonts", "demo"))
        (copy / path.relative_to(ROOT / "src/stemward")).write_text(changed(path, name))
        env = {**os.environ, "PYTHONPATH": folder}
        script = str(ROOT / "tests/published/values.py")
        ran = subprocess.run([sys.executable, script], env=env, capture_output=True, text=True)
    if ran.returncode:
        raise SystemExit(ran.stderr[-2000:])
    return f"{path.parent.name}.{path.stem}.{name}", len(ran.stdout.splitlines())


def main() -> int:
    """Say of each constant how many published values notice."""
    found = constants()
    with ThreadPoolExecutor(AT_ONCE) as pool:
        results = list(pool.map(noticed, found))
    unseen = [name for name, count in results if not count]
    for name, count in results:
        print(f"{name}: {count} published values disagree")
    print(f"{len(results)} constants changed by 5 %, {len(unseen)} unseen {unseen or ''}")
    return 1 if unseen or not results else 0


if __name__ == "__main__":
    raise SystemExit(main())
