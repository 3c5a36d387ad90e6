"""The picture that stands beside a shared link: the title, what is spent, and the tape pulled out to it."""

from __future__ import annotations

import io
import unicodedata

from builder.pages.frame import Card

WIDTH, HEIGHT = 1200, 630
_PAPER, _LINES, _INK = (253, 253, 251), (221, 232, 230), (34, 40, 46)
_BLADE, _CASE, _OVER = (244, 199, 45), (34, 40, 46), (194, 47, 31)
_LEFT, _RIGHT, _TOP, _BOTTOM = 80, 1120, 400, 480


def draw_card(card: Card) -> bytes:
    """The picture as PNG, the same bytes for the same words and amounts."""
    from PIL import Image, ImageDraw, ImageFont  # only a journal with an address has a card

    image = Image.new("RGB", (WIDTH, HEIGHT), _PAPER)
    draw = ImageDraw.Draw(image)
    for at in range(0, WIDTH, 30):
        draw.line([(at, 0), (at, HEIGHT)], fill=_LINES)
    for at in range(0, HEIGHT, 30):
        draw.line([(0, at), (WIDTH, at)], fill=_LINES)
    for top, size, text in ((80, 58, card.title[:48]), (190, 84, card.spent), (310, 36, card.plan)):
        draw.text((_LEFT, top), plain(text, card.currency), fill=_INK, font=ImageFont.load_default(size))
    blade, case = _places(card.spent_amount, card.plan_amount)
    draw.rounded_rectangle([case, _TOP - 60, case + 110, _BOTTOM], radius=20, fill=_CASE)
    draw.rectangle([_LEFT, _TOP, blade, _BOTTOM], fill=_BLADE, outline=_INK, width=3)
    if blade > case:
        draw.rectangle([case, _TOP, blade, _BOTTOM], outline=_OVER, width=8)
    draw.rectangle([_LEFT - 12, _TOP - 14, _LEFT, _BOTTOM + 14], fill=_INK)
    out = io.BytesIO()
    image.quantize(32).save(out, "PNG", optimize=True)
    return out.getvalue()


def plain(text: str, currency: str) -> str:
    """A text in the letters that the library's own font has; "" where that would lose some of its words.

    The font knows little beyond ASCII. Accents go, a currency's sign becomes its code, and a text in
    another script is left out rather than shown as boxes.
    """
    told = []
    for character in unicodedata.normalize("NFKD", text.translate(_SPELT)):
        kind = unicodedata.category(character)
        if character.isascii():
            told.append(character)
        elif kind == "Sc":
            told.append(f" {currency} ")
        elif kind == "Zs":
            told.append(" ")
        elif kind == "Pd":
            told.append("-")
        elif kind[0] == "L" or kind[0] == "N":
            return ""
    return " ".join("".join(told).split())


_SPELT = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "\N{MINUS SIGN}": "-"})


def _places(spent: int, plan: int | None) -> tuple[int, int]:
    """Where the blade ends and where the case begins: both on one scale, the longer at the right edge."""
    whole = max(spent, plan or 0, 1)
    room = _RIGHT - 110 - _LEFT
    blade = _LEFT + max(spent, 0) * room // whole
    case = _LEFT + (plan if plan is not None else max(spent, 0)) * room // whole
    return max(blade, _LEFT + 1), case
