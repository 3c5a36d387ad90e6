"""The currencies of ISO 4217 list one, published 2026-01-01, by how many decimals their minor unit has.

The digits that locale data give for display are not these (the Hungarian forint has 2 here and 0 there):
money is kept in ISO minor units, and only the wording of a page asks the locale.
"""

from __future__ import annotations

_TWO = """
AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF
CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD
GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL
MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR
PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP
TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG
"""
_DIGITS = {
    **dict.fromkeys(_TWO.split(), 2),
    **dict.fromkeys("BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF".split(), 0),
    **dict.fromkeys("BHD IQD JOD KWD LYD OMR TND".split(), 3),
    **dict.fromkeys("CLF UYW".split(), 4),
}


def minor_units(code: str) -> int:
    """How many decimals the minor unit of an ISO 4217 code has; KeyError if it is no such code."""
    return _DIGITS[code]


def codes() -> tuple[str, ...]:
    """Every code that has a minor unit, in alphabetical order."""
    return tuple(sorted(_DIGITS))
