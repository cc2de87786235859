"""GeoJSON text to features with checked shapes, in metres of the tract (RFC 7946 but for its degrees)."""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from stemward.gate.degrees import looks_like_degrees
from stemward.gate.problems import Problems
from stemward.gate.shapes import read_shape
from stemward.gate.text import clean
from stemward.kinds import Shape

MOST_FEATURES = 200_000
FINE_DECIMALS = 5
MOSTLY_FINE = 0.8
"""Share of coordinates written finely; JSON does not keep closing zeros, so a few may look coarser."""


class _RefusedError(ValueError):
    """Something that is valid for the JSON reader and not for us; args are message id and value."""


@dataclass(frozen=True)
class Feature:
    """One feature: its properties, checked shape (None if that was refused), and where it stands."""

    properties: dict[str, Any]
    shape: Shape | None
    line: int | None
    key_lines: dict[str, int]

    def line_of(self, key: str) -> int | None:
        """Line of a property, or of the feature."""
        return self.key_lines.get(key, self.line)


def parse_json(text: str, file: str, problems: Problems, first_line: int = 1) -> Any:
    """The value of a JSON text; None with a problem if it is none, repeats a key or holds no real number."""
    try:
        return json.loads(text, object_pairs_hook=_object, parse_constant=_constant)
    except json.JSONDecodeError as error:
        problems.add("json.syntax", file, first_line + error.lineno - 1, at=error.colno)
    except RecursionError:
        problems.add("json.too_deep", file, first_line)
    except _RefusedError as error:
        message, name, value = error.args
        problems.add(message, file, first_line, **{name: value})
    except ValueError:  # a whole number of more digits than Python converts
        problems.add("json.number", file, first_line, typed="…")
    return None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) < len(pairs):
        seen: set[str] = set()
        twice = next(key for key, _ in pairs if key in seen or seen.add(key))  # type: ignore[func-returns-value]
        raise _RefusedError("json.key_twice", "name", clean(twice))
    return made


def _constant(word: str) -> float:
    raise _RefusedError("json.number", "typed", word)


def read_features(text: str, file: str, wanted: tuple[str, ...], problems: Problems) -> list[Feature]:
    """The features of a FeatureCollection; wanted: geometry types that are taken. Wrong ones are noted."""
    data = parse_json(text, file, problems)
    if data is None:
        return []
    if not isinstance(data, dict) or data.get("type") != "FeatureCollection" or not _is_list(data, "features"):
        what = clean(str(data.get("type", ""))) if isinstance(data, dict) else type(data).__name__
        problems.add("geo.not_a_collection", file, 1, "type", '"type": "FeatureCollection"', what=what)
        return []
    _named_system(data, file, problems)
    if len(data["features"]) > MOST_FEATURES:
        problems.add("key.too_many", file, count=len(data["features"]), most=MOST_FEATURES)
        return []
    features = []
    for one, (line, lines) in zip(data["features"], _places(text, data["features"]), strict=True):
        if not isinstance(one, dict) or one.get("type") != "Feature":
            problems.add("geo.not_a_feature", file, line, "type", '"type": "Feature"')
            continue
        properties = one.get("properties")
        if not isinstance(properties, dict):
            problems.add("geo.no_properties", file, line, "properties", '"properties": {"id": "rim"}')
            properties = {}
        shape = read_shape(one.get("geometry"), wanted, file, lines.get("geometry", line), problems)
        features.append(Feature(properties, shape, line, lines))
    _degrees(features, file, problems)
    return features


def _is_list(data: dict[str, Any], key: str) -> bool:
    return isinstance(data.get(key), list)


def _named_system(data: dict[str, Any], file: str, problems: Problems) -> None:
    """A coordinate system named in the file, as before RFC 7946: degrees are refused, others asked about."""
    named = data.get("crs")
    if named is None:
        return
    properties = named.get("properties") if isinstance(named, dict) else None
    system = clean(str(properties.get("name", "") if isinstance(properties, dict) else named))
    if re.search(r"CRS84|EPSG:+(4326|4269|4267)\b", system):
        problems.add("geo.degrees_named", file, 1, "crs", "[12.5, 48.0]", system=system)
    else:
        problems.ask("ask.grid", file, 1, "crs", system=system)


def _places(text: str, features: list[Any]) -> Iterator[tuple[int | None, dict[str, int]]]:
    """Line of each feature and of the keys within it; unknown where they cannot be followed in the text."""
    start = re.search(r'"features"\s*:\s*\[', text)
    decoder, at, line, counted = json.JSONDecoder(), start.end() if start else -1, 1, 0
    for _ in features:
        if at >= 0:
            at = _skip(text, at)
            try:
                _, end = decoder.raw_decode(text, at)
            except (ValueError, RecursionError):
                at = -1
        if at < 0:
            yield None, {}
            continue
        line, counted = line + text.count("\n", counted, at), at
        yield line, _key_lines(text[at:end], line)
        at = end


def _skip(text: str, at: int) -> int:
    while at < len(text) and text[at] in " \t\n\r,":
        at += 1
    return at


def _key_lines(piece: str, line: int) -> dict[str, int]:
    found: dict[str, int] = {}
    counted = 0
    for match in re.finditer(r'"([a-z_]{1,40})"\s*:', piece):
        line, counted = line + piece.count("\n", counted, match.start()), match.start()
        found.setdefault(match[1], line)
    return found


def _degrees(features: list[Feature], file: str, problems: Problems) -> None:
    corners = [corner for f in features if f.shape for ring in f.shape.rings for corner in ring]
    if not corners:
        return
    x, y = np.asarray(corners, dtype=float).T
    fine = np.mean([len(repr(n).partition(".")[2]) >= FINE_DECIMALS for corner in corners for n in corner])
    verdict = looks_like_degrees(x, y, bool(fine >= MOSTLY_FINE))
    if verdict == "sure":
        spans = {"span_x": float(np.ptp(x)), "span_y": float(np.ptp(y))}
        problems.add("geo.degrees", file, features[0].line, "coordinates", "[12.5, 48.0]", **spans)
    elif verdict == "maybe":
        problems.ask("ask.degrees", file, features[0].line, "coordinates")
