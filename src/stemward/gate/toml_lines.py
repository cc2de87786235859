"""Where in a TOML text each key stands. The standard reader gives values without places."""

import re

Path = tuple[str | int, ...]

_KEY = r"""(?:[A-Za-z0-9_-]+|"(?:[^"\\]|\\.)*"|'[^']*')"""
_DOTTED = rf"{_KEY}(?:[ \t]*\.[ \t]*{_KEY})*"
_ARRAY_HEAD = re.compile(rf"[ \t]*\[\[[ \t]*({_DOTTED})[ \t]*\]\]")
_TABLE_HEAD = re.compile(rf"[ \t]*\[[ \t]*({_DOTTED})[ \t]*\]")
_ENTRY = re.compile(rf"[ \t]*({_DOTTED})[ \t]*=")
_PIECE = re.compile(
    r'''(?P<long>"""|\'\'\')|(?P<short>"(?:[^"\\\n]|\\.)*"|'[^'\n]*')|(?P<rest>\#.*)|(?P<open>[\[{])|(?P<shut>[\]}])'''
)


def key_lines(text: str) -> dict[Path, int]:
    """Line of every key and table head, by path: ("patches", 0, "soil", "texture") → 12.

    Keys within an inline table or array stand under the key that holds them. Meant for text that a TOML
    reader has taken; on other text the result is of no use but nothing is raised.
    """
    lines: dict[Path, int] = {}
    counts: dict[Path, int] = {}
    here: Path = ()
    depth, quote = 0, ""
    for number, line in enumerate(text.split("\n"), 1):
        start = 0
        if not depth and not quote:
            head = _ARRAY_HEAD.match(line)
            if head or (head := _TABLE_HEAD.match(line)):
                of_array = line.lstrip().startswith("[[")
                here = (_array if of_array else _within)(_parts(head[1]), counts)
                for upto in range(1, len(here) + 1):
                    lines.setdefault(here[:upto], number)
                continue
            if entry := _ENTRY.match(line):
                parts = _parts(entry[1])
                for upto in range(1, len(parts) + 1):
                    lines.setdefault((*here, *parts[:upto]), number)
                start = entry.end()
        depth, quote = _after(line, start, depth, quote)
    return lines


def line_of(lines: dict[Path, int], path: Path) -> int | None:
    """Line of a path, or of the nearest table that would hold it; None for the top of the file."""
    while path:
        if path in lines:
            return lines[path]
        path = path[:-1]
    return None


def _parts(dotted: str) -> tuple[str, ...]:
    return tuple(part[1:-1] if part[0] in "\"'" else part for part in re.findall(_KEY, dotted))


def _within(parts: tuple[str, ...], counts: dict[Path, int]) -> Path:
    """The path with the number of the latest table wherever a part names an array of tables."""
    path: Path = ()
    for part in parts:
        path = (*path, part)
        if path in counts:
            path = (*path, counts[path] - 1)
    return path


def _array(parts: tuple[str, ...], counts: dict[Path, int]) -> Path:
    path = (*_within(parts[:-1], counts), parts[-1])
    counts[path] = counts.get(path, 0) + 1
    return (*path, counts[path] - 1)


def _after(line: str, start: int, depth: int, quote: str) -> tuple[int, str]:
    """Depth of brackets and open long quote at the end of a line."""
    while start < len(line):
        if quote:
            shut = line.find(quote, start)
            if shut < 0:
                return depth, quote
            start, quote = shut + 3, ""
            continue
        piece = _PIECE.search(line, start)
        if piece is None:
            break
        start = piece.end()
        if piece["long"]:
            quote = piece["long"]
        elif piece["open"]:
            depth += 1
        elif piece["shut"]:
            depth = max(0, depth - 1)
    return depth, quote
