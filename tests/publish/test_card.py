"""The picture beside a shared link shows the tape: pulled out to what is spent, its case at the plan."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from builder.pages.frame import Card
from builder.publish.card import HEIGHT, WIDTH, draw_card, plain

YELLOW, DARK = (244, 199, 45), (34, 40, 46)


def card(spent: int, plan: int | None) -> Image.Image:
    """The picture of a build."""
    words = Card(
        title="The shed", spent="$1.00", plan="plan $2.00", currency="USD", spent_amount=spent, plan_amount=plan
    )
    words = Card(
        title="The shed", spent="$1.00", plan="plan $2.00", currency="USD", spent_amount=spent, plan_amount=plan
    )
    return Image.open(io.BytesIO(draw_card(words))).convert("RGB")


def near(pixel: object, colour: tuple[int, int, int]) -> bool:
    """Whether a pixel has nearly that colour: the palette is small."""
    assert isinstance(pixel, tuple)
    return all(abs(one - other) < 24 for one, other in zip(pixel, colour, strict=True))


def blade_end(image: Image.Image) -> int:
    """How far the yellow reaches, in pixels."""
    return max(x for x in range(WIDTH) if near(image.getpixel((x, 440)), YELLOW))


def test_the_card_has_the_size_that_links_are_shown_in() -> None:
    """1200 x 630."""
    assert card(100, 200).size == (WIDTH, HEIGHT) == (1200, 630)


@pytest.mark.parametrize(("spent", "plan"), [(0, 100), (50, 100), (100, 100), (150, 100), (80, None)])
def test_the_blade_is_as_long_as_what_is_spent(spent: int, plan: int | None) -> None:
    """In proportion to the plan; past it, it runs on over the case."""
    whole = max(spent, plan or 0)
    reach = 930 * spent // whole
    end = blade_end(card(spent, plan)) if spent else 80
    assert abs(end - (80 + reach)) <= 9
    case = 80 + 930 * (plan if plan is not None else spent) // whole
    assert near(card(spent, plan).getpixel((case + 55, 360)), DARK)


def test_the_same_build_has_the_same_card() -> None:
    """To the byte."""
    words = Card(title="The shed", spent="$1.00", plan="", currency="USD", spent_amount=5, plan_amount=None)
    assert draw_card(words) == draw_card(words)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("mindestens 1.234,50\N{NO-BREAK SPACE}€", "mindestens 1.234,50 EUR"),
        ("Gartenhäuschen – groß", "Gartenhauschen - gross"),
        ("au moins 1\N{NARROW NO-BREAK SPACE}234,50\N{NO-BREAK SPACE}€", "au moins 1 234,50 EUR"),
        ("$1,234.50", "$1,234.50"),
        ("小屋", ""),
    ],
)
def test_words_are_shown_in_letters_the_font_has_or_not_at_all(text: str, shown: str) -> None:
    """Never as boxes, and never without a word that bounds the figure."""
    assert plain(text, "EUR") == shown
