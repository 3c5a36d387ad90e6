"""The picture that stands beside a shared link: the title, what is spent, and the tape pulled out to it."""

from __future__ import annotations

import io

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
    draw.text((_LEFT, 80), card.title[:48], fill=_INK, font=ImageFont.load_default(58))
    draw.text((_LEFT, 190), card.spent, fill=_INK, font=ImageFont.load_default(84))
    draw.text((_LEFT, 310), card.plan, fill=_INK, font=ImageFont.load_default(36))
    blade, case = _places(card.spent_amount, card.plan_amount)
    draw.rounded_rectangle([case, _TOP - 60, case + 110, _BOTTOM], radius=20, fill=_CASE)
    draw.rectangle([_LEFT, _TOP, blade, _BOTTOM], fill=_BLADE, outline=_INK, width=3)
    if blade > case:
        draw.rectangle([case, _TOP, blade, _BOTTOM], outline=_OVER, width=8)
    draw.rectangle([_LEFT - 12, _TOP - 14, _LEFT, _BOTTOM + 14], fill=_INK)
    out = io.BytesIO()
    image.quantize(32).save(out, "PNG", optimize=True)
    return out.getvalue()


def _places(spent: int, plan: int | None) -> tuple[int, int]:
    """Where the blade ends and where the case begins: both on one scale, the longer at the right edge."""
    whole = max(spent, plan or 0, 1)
    room = _RIGHT - 110 - _LEFT
    blade = _LEFT + max(spent, 0) * room // whole
    case = _LEFT + (plan if plan is not None else max(spent, 0)) * room // whole
    return max(blade, _LEFT + 1), case
