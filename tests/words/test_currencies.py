"""The minor units of ISO 4217, which money is kept in; not the digits that locale data give for display."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

import iso4217
import pytest
from babel.numbers import get_currency_precision

from builder.words.currencies import codes, minor_units

TABLE = Path(iso4217.__file__).with_name("table.xml")


def published() -> dict[str, str]:
    """Code and minor unit ("N.A." where there is none) as ISO 4217's maintenance agency prints them."""
    entries = ElementTree.parse(TABLE).getroot().iter("CcyNtry")
    pairs = ((entry.findtext("Ccy"), entry.findtext("CcyMnrUnts")) for entry in entries)
    return {code: units for code, units in pairs if code is not None and units is not None}


def test_the_table_is_that_of_iso_4217() -> None:
    """List one of ISO 4217, published 2026-01-01, as the package iso4217 carries it (table.xml)."""
    assert ElementTree.parse(TABLE).getroot().get("Pblshd") == "2026-01-01"
    wanted = {code: int(units) for code, units in published().items() if units.isdigit()}
    assert {code: minor_units(code) for code in codes()} == wanted


def test_the_table_has_every_kind_of_minor_unit() -> None:
    """As many codes of each as the same list has: 139 with 2, 17 with 0, 7 with 3, 2 with 4."""
    assert Counter(map(minor_units, codes())) == {2: 139, 0: 17, 3: 7, 4: 2}
    assert list(codes()) == sorted(codes())


@pytest.mark.parametrize("code", ["XAU", "XXX", "XTS", "XDR", "BGN", "usd", "", "US"])
def test_what_has_no_minor_unit_is_no_currency_of_a_journal(code: str) -> None:
    """Gold, testing codes, and money that is no more (Bulgaria's until 2026)."""
    with pytest.raises(KeyError):
        minor_units(code)


# Where CLDR's digits for display are not ISO 4217's minor units. IQD, and AFN to YER: CLDR 47 (Babel 2.18) and
# CLDR 48; HUF, IDR, PKR, COP: 0 from CLDR 48 on (Unicode CLDR, supplemental currencyData).
DIFFERENT_IN_ALL = "IQD AFN ALL IRR KPW LAK LBP MMK RSD SOS SYP YER".split()
DIFFERENT_FROM_48_ON = "HUF IDR PKR COP".split()


@pytest.mark.parametrize("code", DIFFERENT_IN_ALL)
def test_ours_is_iso_where_locale_data_say_otherwise(code: str) -> None:
    """A price of 12.50 in such a currency keeps its half, whatever the page shows."""
    assert get_currency_precision(code) == 0
    assert minor_units(code) == int(published()[code]) > 0


@pytest.mark.parametrize("code", DIFFERENT_FROM_48_ON)
def test_ours_stays_iso_when_locale_data_change(code: str) -> None:
    """These change with the release of the data; the money of a journal does not."""
    assert minor_units(code) == 2
