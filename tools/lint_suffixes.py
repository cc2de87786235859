"""Find quantities of different units that meet: `mix_ml=volume_l`, `a_ml + b_l`, `x_cm = y_m`.

    python tools/lint_suffixes.py src

Names carry their metric unit as a suffix; two names that meet must carry the same one. Exit status 1 on findings.
"""

import ast
import sys
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

SUFFIXES = (
    "ml_cm2", "ae_g_l", "g_m2", "g_l", "ml_g", "m2", "cm2", "ml", "ul", "l", "cm", "mm", "m", "km", "in", "ft", "g",
    "kg", "lb", "s", "h", "min", "days", "c", "frac", "days", "ha", "acre",
)  # fmt: skip
SAME = {"ae_g_l": "g_l"}


def unit_of(node: ast.AST) -> str | None:
    """The unit a name or attribute carries, None for anything else or a name without one."""
    name = node.id if isinstance(node, ast.Name) else node.attr if isinstance(node, ast.Attribute) else ""
    for suffix in SUFFIXES:
        if name.endswith(f"_{suffix}"):
            return SAME.get(suffix, suffix)
    return None


def _pairs(node: ast.AST) -> Iterator[tuple[int, ast.AST, ast.AST]]:
    """Pairs of expressions that must be of one unit: sums, comparisons, plain assignments."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
        yield node.lineno, node.left, node.right
    elif isinstance(node, ast.Compare):
        sides = [node.left, *node.comparators]
        yield from ((node.lineno, a, b) for a, b in pairwise(sides))
    elif isinstance(node, ast.Assign) and len(node.targets) == 1:
        yield node.lineno, node.targets[0], node.value


def findings(source: str) -> Iterator[tuple[int, str]]:
    """Line and message of every meeting of two units."""
    for node in ast.walk(ast.parse(source)):
        for line, one, other in _pairs(node):
            first, second = unit_of(one), unit_of(other)
            if first and second and first != second:
                yield line, f"{ast.unparse(one)} meets {ast.unparse(other)}"
        if isinstance(node, ast.Call):
            for keyword in node.keywords:
                wanted = unit_of(ast.Name(keyword.arg or ""))
                given = unit_of(keyword.value)
                if wanted and given and wanted != given:
                    yield keyword.value.lineno, f"{keyword.arg}={ast.unparse(keyword.value)}"


def main() -> int:
    """Print every finding below the given folders."""
    count = 0
    for folder in sys.argv[1:]:
        for path in sorted(Path(folder).rglob("*.py")):
            for line, message in findings(path.read_text(encoding="utf-8")):
                print(f"{path}:{line}: {message}")
                count += 1
    return 1 if count else 0


if __name__ == "__main__":
    raise SystemExit(main())
