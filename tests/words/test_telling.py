"""How far along a slow step is."""

from __future__ import annotations

from builder.words.telling import each, quiet


def test_each_thing_is_told_before_it_is_given() -> None:
    """How many are done by then, of how many, and what they are."""
    heard: list[tuple[int, int, str]] = []

    def tell(done: int, of: int, what: str) -> None:
        heard.append((done, of, what))

    things = each("ab", 2, "photos", tell)
    assert heard == []
    assert next(things) == "a"
    assert heard == [(0, 2, "photos")]
    assert list(things) == ["b"]
    assert heard == [(0, 2, "photos"), (1, 2, "photos")]


def test_where_nobody_listens_the_things_are_the_same() -> None:
    """In their order."""
    assert list(each(range(3), 3, "numbers", quiet)) == [0, 1, 2]
