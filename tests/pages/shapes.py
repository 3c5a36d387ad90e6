"""Reading a drawing back: its shapes by the class they carry, and every drawing there is, for laws about all."""

from __future__ import annotations

from fractions import Fraction

from lxml import etree

from builder.pages.calendar import Calendar, DateSign, Month, PhaseRow, Sign, Span, Stretch, draw_calendar
from builder.pages.cutting import Board, Cutting, Piece, draw_cutting
from builder.pages.level import Level, draw_level
from builder.pages.shares import Share, Shares, draw_shares
from builder.pages.steps import Point, Rule, Steps, draw_steps
from builder.pages.svg import Svg
from builder.pages.tape import Graduation, Tape, TapeMark, draw_tape
from builder.pages.wall import Measure, Opening, Wall, draw_wall


def root(svg: str) -> etree._Element:
    """The drawing as XML; a drawing that is not well formed fails here."""
    return etree.fromstring(svg)


def shapes(svg: str, kind: str) -> list[etree._Element]:
    """The shapes that carry a class, in the order they are drawn."""
    return [shape for shape in root(svg).iter("{*}*") if kind in (shape.get("class") or "").split()]


def shape(svg: str, kind: str) -> etree._Element:
    """The one shape of a class."""
    (only,) = shapes(svg, kind)
    return only


def at(element: etree._Element, *names: str) -> tuple[Fraction, ...]:
    """Lengths of a shape."""
    return tuple(Fraction(element.get(name) or "0") for name in names)


def texts(svg: str) -> list[str]:
    """All that is written on a drawing, apart from its name and description."""
    return ["".join(text.itertext()) for text in root(svg).iter("{*}text")]


def every_drawing(text: str, key: str = "one") -> list[Svg]:
    """One drawing of each kind, with the same words wherever words go."""
    named = {"key": key, "title": text, "description": text}
    return [
        draw_tape(
            Tape(
                **named,
                spent=130_00,
                plan=100_00,
                spent_label=text,
                plan_label=text,
                at_least=True,
                marks=(TapeMark(amount=40_00, label=text, name=text, href=f"episodes/{text}/"),),
                graduations=(Graduation(amount=50_00, label=text), Graduation(amount=100_00, label=text)),
            )
        ),
        draw_level(Level(**named, over=5, plan=100, under_label=text, over_label=text)),
        draw_steps(
            Steps(
                **named,
                so_far=(Point(day=1, amount=5), Point(day=9, amount=7)),
                so_far_label=text,
                plan=(Point(day=0, amount=0), Point(day=20, amount=10)),
                plan_label=text,
                forecast=Point(day=21, amount=11),
                forecast_label=text,
                amounts=(Rule(at=5, label=text),),
                dates=(Rule(at=10, label=text),),
            )
        ),
        draw_shares(Shares(**named, shares=(Share(label=text, amount=7, amount_label=text),))),
        draw_calendar(
            Calendar(
                **named,
                rows=(PhaseRow(label=text, stretches=(Stretch(first=3, last=9, span=Span.WAIT),), worked_on=(4,)),),
                signs=tuple(DateSign(day=12 + n, sign=sign, label=text) for n, sign in enumerate(Sign)),
                months=(Month(day=1, label=text),),
                span_labels=tuple((span, text) for span in Span),
                worked_label=text,
            )
        ),
        draw_cutting(
            Cutting(
                **named,
                boards=(Board(length=96, label=text, pieces=(Piece(length=40, label=text),), offcut_label=text),),
                kerf=Fraction(1, 8),
            )
        ),
        draw_wall(
            Wall(
                **named,
                length=120,
                height=84,
                length_label=text,
                height_label=text,
                openings=(Opening(left=10, sill=30, width=100, height=40, label=text),),
                measures=(Measure(start=0, end=10, label=text),),
            )
        ),
    ]
