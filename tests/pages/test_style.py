"""The style sheet: what can be told from it without looking."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from builder.publish.assets import asset

SHEET = Path(__file__).resolve().parents[2] / "templates" / "site.css"


@cache
def sheet() -> str:
    """The style sheet without its comments."""
    return re.sub(r"/\*.*?\*/", "", SHEET.read_text(encoding="utf-8"), flags=re.DOTALL)


@cache
def palettes() -> dict[str, dict[str, str]]:
    """Colours by name: by day, by night (where they differ) and on paper."""
    day, night, paper = re.findall(r":root \{(.*?)\}", sheet(), flags=re.DOTALL)
    by_day = _colours(day)
    return {"light": by_day, "dark": by_day | _colours(night), "print": by_day | _colours(paper)}


def _colours(block: str) -> dict[str, str]:
    return dict(re.findall(r"--([\w-]+): (#[0-9a-f]{3,6});", block))


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2 (definition of the term)."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
    channels = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, two: str) -> float:
    """Contrast ratio, WCAG 2.2 (definition of the term)."""
    light, dark = sorted((luminance(one), luminance(two)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_black_on_white_is_twenty_one_to_one() -> None:
    """The range WCAG 2.2 states for its ratio: 1 to 21."""
    assert contrast("#000", "#ffffff") == pytest.approx(21)
    assert contrast("#777", "#777777") == 1


@pytest.mark.parametrize("mode", ["light", "dark", "print"])
@pytest.mark.parametrize(
    ("front", "back", "least"),
    [
        ("ink", "paper", 7),
        ("ink", "shade", 7),
        ("soft", "paper", 4.5),
        ("soft", "shade", 4.5),
        ("pencil", "paper", 4.5),
        ("chalk", "paper", 4.5),
        ("chalk", "shade", 4.5),
        ("ink", "wood", 4.5),
        ("blade-ink", "blade", 4.5),
        ("edge", "paper", 3),
        ("blade-ink", "vial", 3),
        ("blade-ink", "air", 3),
    ],
)
def test_what_is_written_can_be_read(front: str, back: str, least: float, mode: str) -> None:
    """WCAG 2.2, 1.4.3 (4.5 to 1 for text) and 1.4.11 (3 to 1 for shapes), by day, by night and on paper."""
    colours = palettes()[mode]
    assert contrast(colours[front], colours[back]) >= least


@pytest.mark.parametrize("mode", ["light", "dark"])
def test_squares_are_fainter_than_anything_written(mode: str) -> None:
    """They are there to be drawn on, not to be seen."""
    colours = palettes()[mode]
    assert 1 < contrast(colours["square"], colours["paper"]) < 1.5


def test_the_sheet_asks_nobody_for_anything() -> None:
    """No image, font or other sheet, from another host or this one."""
    assert not re.search(r"url\(|@import|@font-face|https?:", sheet())


def test_the_sheet_turns_round() -> None:
    """Nothing is set from the left or the right, so that it reads in Arabic and Hebrew too."""
    wrong = re.findall(
        r"[^;{]*(?:\b(?:margin|padding|border|inset)-(?:left|right)|(?<=[\s;{])(?:left|right):|float:)[^;}]*", sheet()
    )
    assert wrong == []
    assert not re.search(r"text-align: (left|right)", sheet())


def test_nothing_moves_for_those_who_do_not_want_it() -> None:
    """Every animation stands under the question whether it is welcome."""
    _, _, welcome = sheet().partition("(prefers-reduced-motion: no-preference) {")
    inside = welcome[: welcome.index("\n}")]
    assert "animation:" in inside
    assert sheet().count("animation") == inside.count("animation")
    assert "transition" not in sheet()


def test_the_sheet_is_small() -> None:
    """Under 17 KB as it is served, which is without its comments."""
    assert len(asset("site.css")) < 17_000


def test_every_colour_has_a_name() -> None:
    """Outside the three palettes no colour is spelt out, but the light on a bubble: dark and print miss nothing."""
    rules = re.sub(r":root \{.*?\}", "", sheet(), flags=re.DOTALL)
    assert re.findall(r"#[0-9a-f]{3,8}\b", rules) == ["#fff"]
    assert not re.search(r"\b(rgb|hsl|oklch)a?\(", rules)
