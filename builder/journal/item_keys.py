"""The keys of a line item and of a receipt, as data."""

from __future__ import annotations

from fractions import Fraction

from builder.journal.keys import Group, Key
from builder.journal.kinds import (
    COUNT,
    LABEL,
    PHASE_NAMED,
    QUANTITY,
    RATE,
    TEXT,
    YES_NO,
    Anything,
    Listed,
    choice,
    judged,
)
from builder.journal.money_kinds import (
    AMOUNT,
    AMOUNT_OR_RATE,
    COST,
    DEPOSITED,
    PART,
    PRICE,
    SHARE_OF_LINE,
    SIZE,
    TAX,
    WAS,
)
from builder.journal.records.item import Kind, Source, TaxTold
from builder.journal.records.written import Node
from builder.journal.source_words import ALSO_SOURCES
from builder.words.judged import Judged
from builder.words.money import Money

MATERIAL = Key(
    name="material",
    also=("name", "what", "item", "thing", "product", "description"),
    kind=TEXT,
    meaning="a material",
    example="Crushed stone",
)
EQUIPMENT = Key(
    name="equipment",
    also=("tool", "machine", "hire", "rental"),
    kind=TEXT,
    meaning="a machine or tool, or its key in owned.yaml",
    example="Turf cutter",
)
LABOUR = Key(
    name="labour",
    also=("labor", "work", "help"),
    kind=TEXT,
    meaning="work done by somebody",
    example="Help with the pour",
)
TRAVEL = Key(
    name="travel",
    also=("mileage", "trip", "journey", "miles"),
    kind=TEXT,
    meaning="a journey for the build",
    example="Two trips to the yard",
)
FEE = Key(
    name="fee",
    also=("permit", "charge", "licence", "license"),
    kind=TEXT,
    meaning="a permit, a charge, a thank-you",
    example="Building permit",
)
WHAT = {
    Kind.MATERIAL: MATERIAL,
    Kind.EQUIPMENT: EQUIPMENT,
    Kind.LABOUR: LABOUR,
    Kind.TRAVEL: TRAVEL,
    Kind.FEE: FEE,
}

NUMBER_OF = Key(
    name="quantity",
    also=("qty", "count", "amount", "how_many", "number", "units"),
    kind=judged(QUANTITY),
    meaning="how many or how much; absent, it is 1 where there is a unit_cost and otherwise not said",
    example="36 bag",
)
UNIT_COST = Key(
    name="unit_cost",
    also=("unit_price", "price_each", "each", "price_per_unit", "rate"),
    kind=judged(PRICE),
    meaning="price of one unit, any digits",
    example="6.10",
)
COST_OF = Key(
    name="cost",
    also=("price", "paid", "amount_paid", "sum", "spent"),
    kind=judged(COST),
    meaning="price of the whole line; unknown; rest inside a receipt takes its printed total less the other "
    "lines. Where quantity x unit_cost differs, cost holds and a warning says so",
    example="219.60",
)
SOURCE = Key(
    name="source",
    also=("from_where", "origin", "how", "status"),
    kind=choice(*(source.value for source in Source), also=ALSO_SOURCES),
    meaning="where it came from, or how it left: material bought (default), secondhand, salvaged, gift, "
    "stock; equipment owned, borrowed, hired, bought; labour unpaid (default, unless it cost something), "
    "paid; leaving returned, sold, spoiled",
    example="salvaged",
)
USED = Key(
    name="used",
    kind=judged(PART),
    meaning="how much of quantity went in; the rest is in stock. Default: all that was not returned",
    example="30 bag",
)
SHARE = Key(
    name="share",
    also=("part", "portion"),
    kind=SHARE_OF_LINE,
    meaning="the part of this purchase that went into this build, as a rate or as an amount of the line's "
    "own cost; the rest is elsewhere",
    example="55%",
)
REUSABLE_SHARE = Key(name="reusable_share", kind=judged(RATE), meaning="the part that will serve again", example="75%")
USES = Key(
    name="uses",
    also=("times",),
    kind=judged(COUNT),
    meaning="how often it serves: 4 makes three quarters reusable",
    example="4",
)
REPLACEMENT = Key(
    name="replacement_cost",
    also=("worth", "value", "new_price", "replacement"),
    kind=judged(PRICE),
    meaning="what one unit costs somebody who has to buy it new, or hire it; owned equipment takes its worth "
    "from owned.yaml",
    example="14.50",
)
FUEL = Key(name="fuel", kind=judged(AMOUNT), meaning="fuel paid for and used up by the machine", example="12.40")
DEPOSIT = Key(
    name="deposit",
    kind=DEPOSITED,
    meaning="paid out and owed back; outside paid while it is out",
    example="100",
)
DEPOSIT_BACK = Key(
    name="deposit_back",
    kind=DEPOSITED,
    meaning="how much of a deposit came back, with from; what was kept is paid that day",
    example="100",
)
RETURNED = Key(
    name="returned",
    also=("return", "sent_back"),
    kind=judged(QUANTITY),
    meaning="how many went back to the shop",
    example="4 bag",
)
REFUND = Key(
    name="refund",
    also=("money_back",),
    kind=judged(AMOUNT),
    meaning="money back for what was returned; by default goods less discount plus tax, never delivery",
    example="24.40",
)
RECEIPT_OF = Key(name="receipt", kind=LABEL, meaning="the receipt it stands on", example="yard")
TAXED = Key(name="taxed", kind=YES_NO, meaning="no leaves the line out of the receipt's tax", example="no")
FROM = Key(
    name="from",
    kind=LABEL,
    meaning="the id of the line, or the key in owned.yaml, that it draws from or gives back; without it, "
    "first in first out by material",
    example="mix",
)
AGAINST = Key(
    name="against",
    kind=Listed(LABEL, lone=True),
    meaning="key, or keys, of the planned lines it answers to",
    example="mix",
)
REWORK = Key(
    name="rework",
    also=("redo", "redone"),
    kind=YES_NO,
    meaning="yes: this was doing something again",
    example="yes",
)
ESTIMATED = Key(
    name="estimated",
    also=("estimate", "guess", "approx"),
    kind=YES_NO,
    meaning="yes: the whole line is a judgement",
    example="yes",
)
SIZE_OF = Key(name="size", kind=SIZE, meaning="of a window, door or sheet", example="24 in x 48 in")
WAS_PAID = Key(name="was", kind=WAS, meaning="the amount in another currency, printed only", example="41.20 EUR")
PHASE_OF = Key(
    name="phase", kind=PHASE_NAMED, meaning="its own phase, where that is not the episode's", example="frame"
)
ID = Key(name="id", kind=LABEL, meaning="a name for the line, one per journal", example="stone")
NOTE = Key(
    name="note",
    also=("notes", "comment", "remark"),
    kind=TEXT,
    meaning="a sentence printed under the line",
    example="The rest went on the path.",
)

ITEM = Group(
    name="a line item",
    keys=(
        *WHAT.values(),
        NUMBER_OF,
        UNIT_COST,
        COST_OF,
        SOURCE,
        USED,
        SHARE,
        REUSABLE_SHARE,
        USES,
        REPLACEMENT,
        FUEL,
        DEPOSIT,
        DEPOSIT_BACK,
        RETURNED,
        REFUND,
        RECEIPT_OF,
        TAXED,
        FROM,
        AGAINST,
        REWORK,
        ESTIMATED,
        SIZE_OF,
        WAS_PAID,
        PHASE_OF,
        ID,
        NOTE,
    ),
)

_LINES = {"type": "array", "items": {"anyOf": [{"type": "string"}, {"$ref": "#/$defs/item"}]}}
LINES = Anything("a list of line items", _LINES)

SELLER = Key(
    name="seller",
    also=("shop", "store", "supplier", "vendor", "merchant"),
    kind=TEXT,
    meaning="who sold it",
    example="Builders' yard",
)
TAX_ON: Key[Judged[Money | Fraction | TaxTold]] = Key(
    name="tax",
    also=("vat", "sales_tax", "tax_rate"),
    kind=judged(TAX),
    meaning="tax as a rate, as an amount, or included in the prices",
    example="8.25%",
)
DELIVERY = Key(
    name="delivery",
    also=("shipping", "carriage", "postage", "freight"),
    kind=judged(AMOUNT),
    meaning="what bringing it cost",
    example="35",
)
DELIVERY_TAXED = Key(
    name="delivery_taxed",
    kind=YES_NO,
    meaning="yes where the tax is on delivery too (default no)",
    example="yes",
)
DISCOUNT: Key[Judged[Money | Fraction]] = Key(
    name="discount",
    also=("rebate", "off"),
    kind=judged(AMOUNT_OR_RATE),
    meaning="taken off the goods before tax, as a rate or an amount",
    example="5%",
)
TOTAL = Key(name="total", kind=AMOUNT, meaning="what the paper says, checked to the cent", example="457.49")
LINES_ON: Key[Node] = Key(
    name="items",
    also=("lines", "purchases"),
    kind=LINES,
    meaning="the lines that stand on it",
    example='["Galvanised nails, 36.90"]',
)
RECEIPT = Group(name="a receipt", keys=(SELLER, TAX_ON, DELIVERY, DELIVERY_TAXED, DISCOUNT, TOTAL, LINES_ON))
