"""German, French and Spanish: every word of every page and drawing, and nothing of it left in English."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from functools import cache
from pathlib import Path
from string import Formatter

import pytest
from babel import Locale
from playwright.sync_api import Browser

from builder.journal.language import WORDED
from builder.pages.languages import Catalogue
from builder.pages.languages.de import CATALOGUE as GERMAN
from builder.pages.wording import CATALOGUES, Words
from builder.words.money import Currency
from tests.pages import said
from tests.pages.sentences import (
    FROM_TAKEOFF,
    TABLES,
    code_sentences,
    handed_on,
    plurals,
    sentences,
    template_sentences,
)
from tests.site.folder import kinds, named
from tests.site.window import visited

EURO = Currency.named("EUR")
COUNTRY = {"de": "DE", "fr": "FR", "es": "ES"}

# Other journals made of the same one, in which pages say what the first has no cause to.
OTHERS = {
    "all of it done, in feet and pounds": ("-US", said.EVERYTHING_DONE),
    "tax on top, a week without hours": ("", said.TAX_ON_TOP),
    "no forecast of the finish": ("", said.NO_WORK_WEEK),
    "no plan": ("", said.NO_PLAN),
    "dearer than new": ("", said.DEARER_THAN_NEW),
    "no episode": ("", said.NO_EPISODE),
    "all of it done after the promise": ("", said.FINISHED_LATE),
    "done, and nothing was planned": ("", said.NOTHING_PLANNED),
    "a phase without a plan": ("", said.PLANNED_IN_PART),
}

# Signs, and words that are the same in two languages, or look it: French cautions are deposits.
ALIKE = {
    "de": {
        ":", ";", "Budget (BAC)", "Feed", "Phase", "Plan", "{name}: {value}", "{name}: {verdict}.",
        "{phases}; {dates}.", "{phase}: {verdict}",
    },
    "fr": {
        ":", ";", "Budget (BAC)", "Building Trades Pocketbook (ICS); Estimating in Building Construction, p. 123",
        "Cautions", "Pages", "Phase", "Phases", "Plan", "Total", "joint", "plan {amount}", "plan, {amount}", "stock",
        "volume", "{n} miles", "{name}: {value}", "{name}: {verdict}.", "{phases}; {dates}.", "{phase}: {verdict}",
    },
    "es": {
        ":", ";", "No: {verdict}", "Plan", "Total", "no", "plan {amount}", "plan, {amount}", "{name}: {value}",
        "{name}: {verdict}.", "{phases}; {dates}.", "{phase}: {verdict}",
    },
}  # fmt: skip

# Titles and offices that are cited by their English names.
CITED = (
    "Brazos River Authority",
    "Building Trades Pocketbook",
    "Estimating in Building Construction",
    "Practices of Irrigation and On-farm Water Management",
    "Standard Volume-to-Weight Conversion Factors",
    "Take Care of Texas",
    "Unified Facilities Guide Specification",
)

# Words without which few English sentences get by, and that are none in German, French or Spanish.
ENGLISH = re.compile(
    r"\b(the|of|and|with|that|this|from|which|are|were|was not|your|you|not|for|it|its|by|than|what|when|into|has|have"
    r"|at least|at most|every|each|other)\b",
    re.IGNORECASE,
)


@cache
def catalogue(language: str) -> Catalogue:
    """The catalogue of a language as pages use it."""
    return Words(language, EURO)._catalogue


def forms(told: str | Mapping[str, str]) -> Mapping[str, str]:
    """All texts of an entry by the number they are for; "" where there is only one."""
    return {"": told} if isinstance(told, str) else told


def entries(language: str) -> Iterator[tuple[str, str]]:
    """Every key with each of its texts."""
    for english, told in catalogue(language).items():
        yield from ((english, text) for text in forms(told).values())


def places(text: str) -> list[str]:
    """The names in braces."""
    return sorted({name for _, name, _, _ in Formatter().parse(text) if name is not None})


each_language = pytest.mark.parametrize("language", CATALOGUES)


def test_there_are_three() -> None:
    """A language that is added has its country added here, and is tried like the others; journals in it get no
    warning then.
    """
    assert set(CATALOGUES) == set(COUNTRY) == set(WORDED) - {"en"}


@each_language
class TestACatalogueIsWhole:
    """A language has every sentence that a page, a template or a take-off can say, and no other."""

    def test_it_has_every_sentence(self, language: str) -> None:
        """A new sentence needs its translation before it is published."""
        assert sorted(sentences() - catalogue(language).keys()) == []

    def test_it_has_no_sentence_that_nobody_says(self, language: str) -> None:
        """What a page no longer says goes from the catalogue as well."""
        assert sorted(catalogue(language).keys() - sentences()) == []

    def test_what_goes_into_a_sentence_is_the_same(self, language: str) -> None:
        """No figure is lost in translation, and none is asked for that is not given."""
        wrong = [(english, text) for english, text in entries(language) if places(english) != places(text)]
        assert wrong == []

    def test_what_bends_has_the_forms_of_the_language(self, language: str) -> None:
        """Those of Unicode CLDR 47, as shipped in Babel 2.18; French and Spanish have one for millions."""
        wanted = {*Locale.parse(language).plural_form.tags, "other"}
        found = {
            english: set(forms(told)) for english, told in catalogue(language).items() if not isinstance(told, str)
        }
        assert found == dict.fromkeys(plurals(), wanted)

    def test_every_number_finds_its_form(self, language: str) -> None:
        """Zero, one, two, a thousand and a million, each with what it counts."""
        words = Words(language, EURO)
        for number in (0, 1, 2, 1000, 1_000_000):
            assert words.whole(number) in words.count(number, "{n} line", "{n} lines")

    def test_it_is_translated(self, language: str) -> None:
        """A text is English only where the other language has the same word."""
        same = {english for english, text in entries(language) if text.replace("\u202f", "") == english}
        assert same - ALIKE[language] == set()

    def test_nothing_stands_at_its_ends(self, language: str) -> None:
        """No entry is empty, and none begins or ends with a space that could be lost."""
        wrong = [text for _, text in entries(language) if not text or text.strip(" \n") != text]
        assert wrong == []


@each_language
class TestSignsAreTheLanguagesOwn:
    """Quotation marks, spaces and apostrophes as the language sets them."""

    def test_no_mark_of_a_typewriter(self, language: str) -> None:
        """Straight quotation marks and apostrophes are none of a printed page's."""
        assert [text for _, text in entries(language) if re.search("[\"'`]", text)] == []

    def test_quotation_marks(self, language: str) -> None:
        """„…“ in German, « … » with its narrow spaces in French, «…» in Spanish."""
        marks = {"de": "„…“", "fr": "«\u202f…\u202f»", "es": "«…»"}[language]
        quoted = [text for english, text in entries(language) if "“" in english]
        assert len(quoted) >= 3
        opening, closing = marks.split("…")
        wrong = [text for text in quoted if text.count(opening) != 1 or text.count(closing) != 1]
        assert wrong + [text for _, text in entries(language) if re.search("[“”„«»]", _others(text, marks))] == []

    def test_a_per_cent_sign_holds_on_to_its_number(self, language: str) -> None:
        """By the same space as in a figure: the one of Unicode CLDR 47, which breaks no line."""
        space = Words(language, EURO).percent(Fraction(1))[-2]
        shown = [text for _, text in entries(language) if "%" in text]
        assert len(shown) > 8
        assert [text for text in shown if re.search(f"(?<![{space}])%", text)] == []


def _others(text: str, marks: str) -> str:
    """The text without the marks that belong there."""
    for mark in marks.replace("…", ""):
        text = text.replace(mark, "")
    return text


def test_french_keeps_its_high_signs_from_the_next_line() -> None:
    """A narrow no-break space stands before : ; ? ! and inside « », and no other one."""
    wrong = [text for _, text in entries("fr") if re.search("(?<!\u202f)[:;?!»]|«(?!\u202f)", text)]
    assert wrong == []


class TestNothingIsSaidPastTheCatalogue:
    """What is handed to say() without being a literal comes out of a table that the tests know."""

    def test_every_table_is_known(self) -> None:
        """A new way for a word to reach a page is a new line in `TABLES`, or a literal."""
        assert handed_on() <= {*TABLES, *FROM_TAKEOFF}

    def test_every_table_is_used(self) -> None:
        """And one that goes is taken out."""
        assert {*TABLES, *FROM_TAKEOFF} <= handed_on()

    @pytest.mark.parametrize("what", OTHERS)
    def test_pages_ask_for_no_other_sentence(self, what: str) -> None:
        """Of a whole site made with every kind of thing in it, not one sentence is missed."""
        ending, changes = OTHERS[what]
        assert said.published(f"de{ending}", changes).missed - {"π"} == set()

    def test_these_journals_make_pages_say_nearly_everything(self) -> None:
        """So what holds for their sites holds for others: above 95 of 100 sentences of the pages are heard."""
        heard = set(said.published("de-DE").said)
        for ending, changes in OTHERS.values():
            heard |= said.published(f"de{ending}", changes).said
        of_pages = {text for _, text, _ in code_sentences()} | set(template_sentences())
        assert len(of_pages & heard) > 0.95 * len(of_pages)


class TestNoEnglishIsLeft:
    """The author of the journal writes German, so whatever is English on its pages is the program's."""

    @each_language
    def test_no_key_of_the_catalogue_is_on_a_page(self, language: str) -> None:
        """In no text, title, label or description of a page or drawing, nor in the feed or the show notes."""
        texts = said.published(f"{language}-{COUNTRY[language]}").texts()
        assert english_in(texts, language) == {}

    @pytest.mark.parametrize("what", OTHERS)
    def test_nor_on_the_pages_of_other_journals(self, what: str) -> None:
        """A plan in feet, one without an end, none at all."""
        ending, changes = OTHERS[what]
        assert english_in(said.published(f"de{ending}", changes).texts(), "de") == {}

    @each_language
    def test_nor_a_sentence_that_never_was_in_it(self, language: str) -> None:
        """What somebody forgot to put through the catalogue has words that only English has."""
        texts = said.published(f"{language}-{COUNTRY[language]}").texts()
        assert [text for text in sorted(texts) if ENGLISH.search(_uncited(text))] == []

    def test_the_search_finds_english_where_there_is_some(self) -> None:
        """The same site in English is full of it."""
        texts = said.published("en-GB").texts()
        assert len(english_in(texts, "de")) > 300
        assert sum(ENGLISH.search(text) is not None for text in texts) > 100


PHONE = 390  # CSS pixels

LAID_OUT = """() => ({
    direction: getComputedStyle(document.body).direction,
    width: document.documentElement.scrollWidth,
    amounts: [...document.querySelectorAll('.money, .sum')].length,
    bare: [...document.querySelectorAll('.money, .sum')]
        .filter(e => getComputedStyle(e).unicodeBidi !== 'isolate').map(e => e.outerHTML.slice(0, 80)),
    start: document.querySelector('main h1').getBoundingClientRect().right,
    drawings: [...document.querySelectorAll('svg.drawing')].filter(e => getComputedStyle(e).direction !== 'ltr').length,
})"""


HEBREW = ("he-IL", (("journal.yaml", "currency: EUR", "currency: ILS"),))


def test_amounts_are_kept_apart_from_words_that_go_the_other_way() -> None:
    """In Hebrew every amount with its currency stands between FIRST STRONG ISOLATE and POP DIRECTIONAL ISOLATE
    (Unicode Standard Annex 9, 2.4.1), wherever it stands on a page: Hebrew before it, English after it.
    """
    texts = said.published(*HEBREW).texts()
    amounts = [text for text in texts if "₪" in text]
    assert len(amounts) > 50
    assert [text for text in amounts if "₪" in re.sub("\u2068[^\u2069]*\u2069", "", text)] == []


@pytest.mark.browser
def test_a_language_that_runs_from_right_to_left(browser: Browser, tmp_path: Path) -> None:
    """Hebrew has no catalogue yet, and still the page turns round: nothing hangs over the edge of a phone, no
    amount is mixed up with the words beside it, and drawings stay as they are measured.
    """
    for name, content in said.published(*HEBREW).files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    amounts, found = 0, {}
    for path, page in visited(browser, kinds(tmp_path), PHONE):
        assert page.locator("html").get_attribute("dir") == "rtl"
        laid_out = page.evaluate(LAID_OUT)
        amounts += laid_out.pop("amounts")
        found[named(tmp_path, path)] = laid_out
    upright = {"direction": "rtl", "width": PHONE, "bare": [], "drawings": 0}
    assert {name: {key: laid_out[key] for key in upright} for name, laid_out in found.items()} == dict.fromkeys(
        found, upright
    )
    assert all(laid_out["start"] > PHONE / 2 for laid_out in found.values())
    assert amounts > 50


def english_in(texts: frozenset[str], language: str) -> dict[str, str]:
    """Keys whose translation differs, each with a text in which it stands; names that are cited aside."""
    together = "\n".join(sorted(map(_uncited, texts)))
    wrong = {}
    for english, told in catalogue(language).items():
        pattern = _pattern(english)
        if pattern and _longest(english) in together and not _inside(english, told):
            found = re.search(pattern, together)
            if found and english not in ALIKE[language]:
                wrong[english] = together[found.start() : together.find("\n", found.end())]
    return wrong


def _longest(english: str) -> str:
    """The longest piece of a key that stands in a text as it is: a quick look before a search."""
    return max((text for text, _, _, _ in Formatter().parse(english)), key=len)


def _inside(english: str, told: str | Mapping[str, str]) -> bool:
    """Whether a translation holds the very words: `cost` is in no German word, `plan` is in `plan.yaml`."""
    return any(re.search(rf"\b{re.escape(english)}\b", text) for text in forms(told).values())


def _pattern(english: str) -> str:
    """A key as it would stand in a text: whole words, with anything where a figure goes; "" if it has no word."""
    parts = [text for text, _, _, _ in Formatter().parse(english)]
    if not re.search(r"[^\W\d_]{2}", "".join(parts)):
        return ""
    pieces = [re.escape(text) for text, name, _, _ in Formatter().parse(english)]
    body = ".+?".join(pieces) + (".+?" if english.endswith("}") else "")
    return rf"(?<!\w){body}(?!\w)"


def _uncited(text: str) -> str:
    for title in CITED:
        text = text.replace(title, "")
    return text


def test_german_in_switzerland_has_no_sharp_s() -> None:
    """Maßband is Massband there, in single words and in plurals; Germany and Austria keep it."""
    assert any("ß" in text for _, text in entries("de"))
    for language, has in (("de-CH", False), ("de-LI", False), ("de-AT", True), ("de-DE", True), ("de", True)):
        words = Words(language, Currency.named("EUR"))
        said = [words.say(english) for english, told in GERMAN.items() if isinstance(told, str)]
        assert any("ß" in text for text in said) == has, language
