"""Someone who uses the pages and whose every click, key chord, file and typing is counted."""

from collections.abc import Callable
from typing import Any


class Walker:
    """A page with a count of interactions: a click, a key chord or a file is one, typing into one field is one."""

    def __init__(self, page: Any) -> None:
        self.page = page
        self.count = 0
        self.typed: set[str] = set()

    def click(self, name: str, role: str = "button", **more: Any) -> None:
        """Press a button or link by its name."""
        self._one(lambda: self.page.get_by_role(role, name=name, **more).first.click())

    def tick(self, name: str) -> None:
        """Tick a box or choose one of several, by its words."""
        self._one(lambda: self.page.get_by_label(name, exact=True).first.check())

    def type(self, label: str, words: str) -> None:
        """Type into a field found by its label."""
        field = self.page.locator("input, textarea").and_(self.page.get_by_label(label)).first
        self._one(lambda: field.fill(words))

    def choose(self, label: str, value: str) -> None:
        """Choose in a list."""
        self._one(lambda: self.page.get_by_label(label).first.select_option(value))

    def file(self, selector: str, name: str, raw: bytes) -> None:
        """Choose a file."""
        upload = {"name": name, "mimeType": "application/octet-stream", "buffer": raw}
        self._one(lambda: self.page.set_input_files(selector, upload))

    def _one(self, act: Callable[[], Any]) -> None:
        act()
        self.count += 1


class Keys:
    """Someone without a mouse: Tab, Enter, Space, arrows and letters only."""

    def __init__(self, page: Any) -> None:
        self.page = page
        self.presses = 0

    def to(self, words: str, most: int = 200) -> None:
        """Tab until the element of that name has the focus, which must be seen; fails after `most` presses."""
        for _ in range(most):
            self.page.keyboard.press("Tab")
            self.presses += 1
            name, seen = self.page.evaluate(FOCUSED)
            if words.lower() in name.lower():
                assert seen, f"the focus on {words} is not seen"
                return
        raise AssertionError(f"{words} is not reached by Tab")

    def press(self, key: str) -> None:
        """One key."""
        self.page.keyboard.press(key)
        self.presses += 1

    def type(self, label: str, words: str) -> None:
        """Tab to a field and type."""
        self.to(label)
        self.page.keyboard.press("Control+A")
        self.page.keyboard.type(words)

    def go(self, words: str) -> None:
        """Tab to a button or link and press Enter."""
        self.to(words)
        with self.page.expect_navigation():
            self.press("Enter")


FOCUSED = """() => {
  const e = document.activeElement;
  const label = e.labels && e.labels.length ? e.labels[0].textContent : "";
  const name = [e.getAttribute("aria-label"), label, e.textContent, e.value].filter(Boolean).join(" ");
  const style = getComputedStyle(e);
  const seen = parseFloat(style.outlineWidth) >= 2 && style.outlineStyle !== "none";
  return [name.replace(/\\s+/g, " ").trim(), seen];
}"""
