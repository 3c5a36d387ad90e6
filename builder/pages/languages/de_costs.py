"""German: the ledger, its terms, sources, tables and receipts. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

COSTS: Catalogue = {
    "Spent": "Ausgegeben",
    "Paid": "Bezahlt",
    "Job cost": "Baukosten",
    "In stock": "Auf Lager",
    "Reusable": "Wiederverwendbar",
    "Elsewhere": "Anderweitig",
    "Brought in": "Eingebracht",
    "Replacement cost": "Wiederbeschaffung",
    "Saved": "Gespart",
    "Rework": "Nacharbeit",
    "Estimated": "Geschätzt",
    "Planned": "Geplant",
    "Forecast": "Prognose",
    "Travel": "Fahrten",
    "Deposits out": "Offene Kautionen",
    "Contingency": "Reserve",
    (
        "What this build has taken so far: what was paid, and leftovers of earlier jobs at what they cost then, "
        "less what went into something else. What is on the shelf or will be used again is still in it."
    ): (
        "Was dieser Bau bisher gebraucht hat: das Bezahlte und Reste früherer Arbeiten zu dem, was sie damals "
        "gekostet haben, ohne das, was in etwas anderes ging. Was im Regal liegt oder wieder gebraucht wird, ist "
        "noch darin."
    ),
    (
        "Money that left the pocket: the price with its share of the receipt's tax and delivery, less discounts "
        "and refunds."
    ): (
        "Geld, das die Tasche verlassen hat: der Preis mit seinem Anteil an Steuer und Lieferung des Belegs, "
        "ohne Rabatte und Erstattungen."
    ),
    (
        "The part of what was spent that this build used up. Leftovers on the shelf and things that will serve "
        "again are not in it, because they are not gone. The plan is on the same footing."
    ): (
        "Der Teil des Ausgegebenen, den dieser Bau verbraucht hat. Reste im Regal und Dinge, die wieder dienen, "
        "sind nicht darin, denn sie sind nicht weg. Der Plan rechnet genauso."
    ),
    (
        "Leftovers still on the shelf, at what they cost with tax and delivery. They become job cost on the day "
        "they are used."
    ): (
        "Reste, die noch im Regal liegen, zu dem, was sie mit Steuer und Lieferung gekostet haben. An dem Tag, "
        "an dem sie gebraucht werden, werden sie zu Baukosten."
    ),
    "The part that will serve other jobs, or this one again: form boards, props, a ladder.": (
        "Der Teil, der anderen Arbeiten oder dieser noch einmal dient: Schalbretter, Stützen, eine Leiter."
    ),
    "The part of a shared purchase that went into something else.": (
        "Der Teil eines gemeinsamen Einkaufs, der in etwas anderes ging."
    ),
    "Leftovers of an earlier job, at what they cost then, on the day this build draws them.": (
        "Reste einer früheren Arbeit, zu dem, was sie damals gekostet haben, an dem Tag, an dem dieser Bau sie holt."
    ),
    "What the same things would cost somebody who has to buy them new, or hire them.": (
        "Was dieselben Dinge jemanden kosten würden, der sie neu kaufen oder mieten muss."
    ),
    "Replacement cost less job cost and what is reusable, over the lines whose replacement cost is known.": (
        "Wiederbeschaffung ohne Baukosten und Wiederverwendbares, über die Posten, deren Wiederbeschaffung bekannt ist."
    ),
    "Job cost of doing something twice.": "Baukosten dafür, etwas zweimal zu machen.",
    "Job cost of the lines whose figures are a judgement and not on a paper.": (
        "Baukosten der Posten, deren Zahlen geschätzt sind und auf keinem Beleg stehen."
    ),
    "The budget, with tax inside, on the same footing as job cost.": (
        "Das Budget, mit Steuer, auf derselben Grundlage wie die Baukosten."
    ),
    (
        "Job cost expected at the end. A phase that is done counts what it cost; one not begun, what was "
        "planned; one under way, what it cost so far and what its planned lines still lack."
    ): (
        "Die Baukosten, die am Ende zu erwarten sind. Eine fertige Phase zählt mit dem, was sie gekostet hat, "
        "eine nicht begonnene mit dem Geplanten, eine laufende mit dem bisherigen und dem, was ihren geplanten "
        "Posten noch fehlt."
    ),
    "Unpaid hours at the journal's rate for an hour. It is in no total.": (
        "Unbezahlte Stunden zum Stundensatz dieses Bautagebuchs. In keiner Summe enthalten."
    ),
    "Journeys at the journal's rate. It is in no total.": (
        "Fahrten zum Satz dieses Bautagebuchs. In keiner Summe enthalten."
    ),
    "Paid out and owed back. Outside what was paid while they are out.": (
        "Ausgelegt und zurückzubekommen. Solange sie offen sind, zählen sie nicht zum Bezahlten."
    ),
    "The sum over all episodes up to and including this one, in order of date.": (
        "Die Summe über alle Folgen bis einschließlich dieser, nach Datum."
    ),
    "Kept apart for overruns and never inside a phase. What the overruns of all phases take of it is shown.": (
        "Für Überschreitungen zurückgelegt und nie Teil einer Phase. Gezeigt wird, was die Überschreitungen "
        "aller Phasen davon nehmen."
    ),
    "bought": "gekauft",
    "secondhand": "gebraucht",
    "salvaged": "geborgen",
    "gift": "geschenkt",
    "own": "eigen",
    "borrowed": "geliehen",
    "hired": "gemietet",
    "unpaid work": "unbezahlte Arbeit",
    "paid work": "bezahlte Arbeit",
    "paid": "bezahlt",
    "returned": "zurückgegeben",
    "sold": "verkauft",
    "spoiled": "verdorben",
    "used again": "wieder verwendet",
    "taken from stock": "aus dem Lager geholt",
    "fee": "Nebenkosten",
    "travel": "Fahrt",
    "What": "Was",
    "How many": "Wie viel",
    "How much": "Wie viel",
    "Where from": "Woher",
    "Receipt": "Beleg",
    "Receipts": "Belege",
    "no. {number}": "Nr. {number}",
    "paid for before": "schon früher bezahlt",
    "{amount}, the rest of {paid} went elsewhere": "{amount}, der Rest von {paid} ging anderswohin",
    "Taken from stock": "Aus dem Lager geholt",
    "Used again": "Wieder verwendet",
    "Dearer than new by": "Teurer als neu um",
    "Came back": "Zurückgekommen",
    "{amount} came back": "{amount} kamen zurück",
    "more than the same things would cost new; new they are {amount}": (
        "mehr, als dieselben Dinge neu kosten würden; neu sind es {amount}"
    ),
    "not priced": "ohne Preis",
    "Not priced": "Ohne Preis",
    "not valued": "nicht bewertet",
    "Not valued": "Nicht bewertet",
    "{name}, at least": "{name}, mindestens",
    "From {where}": "Aus {where}",
    "an earlier job": "einer früheren Arbeit",
    "Worth an hour: {basis}": "Wert einer Stunde: {basis}",
    "price {amount}": "Preis {amount}",
    "discount {amount}": "Rabatt {amount}",
    "tax {amount}": "Steuer {amount}",
    "delivery {amount}": "Lieferung {amount}",
    "a judgement, not on a paper": "geschätzt, ohne Beleg",
    "{figures}: a judgement, not on a paper": "{figures}: geschätzt, ohne Beleg",
    "how many": "Anzahl",
    "price of one": "Preis für eines",
    "what it cost": "Kosten",
    "how much was used": "verbrauchte Menge",
    "the part for this build": "der Teil für diesen Bau",
    "the part that serves again": "der Teil, der wieder dient",
    "how often it serves": "wie oft es dient",
    "what it would cost new": "was es neu kosten würde",
    "fuel": "Kraftstoff",
    "how much went back": "wie viel zurückging",
    "what came back for it": "was dafür zurückkam",
    "done twice": "zweimal gemacht",
    "Done twice": "Zweimal gemacht",
    "what it cost is not known": "was es gekostet hat, ist nicht bekannt",
    "what it would cost new is not known": "was es neu kosten würde, ist nicht bekannt",
    "serves {uses} times": "dient {uses}-mal",
    "paid as {amount}": "bezahlt mit {amount}",
    "{quantity} went back for {amount}": "{quantity} zurückgegeben für {amount}",
    "size {size}": "Größe {size}",
    "deposit {amount}, not in what was paid": "Kaution {amount}, nicht im Bezahlten",
    "deposit back {amount}": "Kaution zurück {amount}",
    "no phase": "ohne Phase",
    "No phase": "Ohne Phase",
    "Every line item of the build": "Jeder Posten des Baus",
    "Every line, in {currency}, with tax and delivery": "Jeder Posten, in {currency}, mit Steuer und Lieferung",
    "spent so far, in {n} lines": {
        "one": "bisher ausgegeben, in {n} Posten",
        "other": "bisher ausgegeben, in {n} Posten",
    },
    "{n} lines, all of them": {"one": "{n} Posten, alle", "other": "{n} Posten, alle"},
    "{n} lines": {"one": "{n} Posten", "other": "{n} Posten"},
    "Every line": "Jeder Posten",
    "All lines": "Alle Posten",
    "Lines": "Posten",
    "Choose lines": "Posten auswählen",
    "Words in it": "Worte darin",
    "all phases": "alle Phasen",
    "everywhere": "egal woher",
    "Nobody knows what these cost, so every total above them says “at least”.": (
        "Niemand weiß, was diese gekostet haben, darum sagt jede Summe darüber „mindestens“."
    ),
    "Nobody knows what these would cost new, so they are in no figure of what was saved.": (
        "Niemand weiß, was diese neu kosten würden, darum stehen sie in keiner Zahl des Gesparten."
    ),
    "Receipts, in {currency}": "Belege, in {currency}",
    "Goods": "Waren",
    "Discount": "Rabatt",
    "Tax": "Steuer",
    "Delivery": "Lieferung",
    "Total": "Summe",
    "in the prices": "in den Preisen",
    "{tax}, in the prices": "{tax}, in den Preisen",
    "at least: a line has no price": "mindestens: ein Posten hat keinen Preis",
    "as on the paper": "wie auf dem Beleg",
    "saved, of {amount} that the same things would cost new": (
        "gespart, von {amount}, die dieselben Dinge neu kosten würden"
    ),
    "Where things came from, what was saved and what is left": (
        "Woher die Dinge kamen, was gespart wurde und was übrig ist"
    ),
    "By source": "Nach Herkunft",
    "What was paid, by where things came from": "Was bezahlt wurde, nach Herkunft",
    "What was paid, by where things came from.": "Was bezahlt wurde, nach Herkunft.",
    "By where things came from, in {currency}": "Nach Herkunft, in {currency}",
    "Per area, year and hour": "Je Fläche, Jahr und Stunde",
    "Job cost per area": "Baukosten je Fläche",
    "Job cost per year of service": "Baukosten je Nutzungsjahr",
    "Job cost per hour worked": "Baukosten je Arbeitsstunde",
    "What is left": "Was übrig ist",
    "Nothing is left on the shelf.": "Im Regal liegt nichts mehr.",
    "In stock: leftovers on the shelf": "Auf Lager: Reste im Regal",
    "Leftovers of earlier jobs, not drawn and in no total": (
        "Reste früherer Arbeiten, nicht geholt und in keiner Summe"
    ),
    "Bought to keep: what will serve again": "Gekauft und behalten: was wieder dient",
    "Worth, at cost": "Wert zu Kosten",
    "Together": "Zusammen",
    "Machines and tools": "Maschinen und Werkzeug",
    "Machines and tools it took": "Maschinen und Werkzeug, die es brauchte",
    "Work": "Arbeit",
    "No hours have been written down.": "Es sind keine Stunden notiert.",
    "What doing it twice cost": "Was zweimal machen gekostet hat",
    "Doing it twice": "Zweimal gemacht",
    "Own hours": "Eigene Stunden",
    "Helpers' hours": "Stunden der Helfer",
    "Paid labour": "Bezahlte Arbeit",
    "in job cost": "in den Baukosten",
    "in no total": "in keiner Summe",
    "{n} lines whose price is not known, so every total says “at least”": {
        "one": "{n} Posten, dessen Preis nicht bekannt ist, darum sagt jede Summe „mindestens“",
        "other": "{n} Posten, deren Preis nicht bekannt ist, darum sagt jede Summe „mindestens“",
    },
    "{amount} that went into something else": "{amount}, die in etwas anderes gingen",
    "Unpaid work: {hours}": "Unbezahlte Arbeit: {hours}",
    "The use of own tools, on {n} lines": {
        "one": "Der Einsatz eigener Geräte, bei {n} Posten",
        "other": "Der Einsatz eigener Geräte, bei {n} Posten",
    },
    "Deposits of {amount} that are still out": "Kautionen von {amount}, die noch offen sind",
    "Leftovers of earlier jobs that this build has not drawn": (
        "Reste früherer Arbeiten, die dieser Bau nicht geholt hat"
    ),
    "What cost most": "Was am meisten gekostet hat",
    "What cost most, in {currency}": "Was am meisten gekostet hat, in {currency}",
    "All materials, for copying": "Alles Material, zum Kopieren",
    "The whole list, with what went in": "Die ganze Liste, mit dem, was hineinging",
}
