"""German: what stands round every page, home, episodes, feed, and what yours would cost. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PAGES: Catalogue = {
    "Home": "Start",
    "Ledger": "Kostenbuch",
    "Plan": "Plan",
    "Sources": "Herkunft",
    "Yours": "Deins",
    "Workings": "Rechenwege",
    "Figures as data": "Zahlen als Daten",
    "Ledger as a table": "Kostenbuch als Tabelle",
    "Feed": "Feed",
    "Pages": "Seiten",
    "Skip to the page": "Zum Inhalt springen",
    (
        "This is an account of how one person built it, not a design and not advice: check your local code and "
        "permits, and ask a licensed professional before you dig, pour, wire or climb."
    ): (
        "Hier steht, wie ein Mensch es gebaut hat; das ist weder ein Entwurf noch ein Rat. Prüfe die "
        "Vorschriften und Genehmigungen an deinem Ort und frag eine zugelassene Fachkraft, bevor du gräbst, "
        "betonierst, Strom verlegst oder hinaufsteigst."
    ),
    "Prices were paid on {day}, in {currency}, with tax and delivery.": (
        "Die Preise wurden am {day} bezahlt, in {currency}, mit Steuer und Lieferung."
    ),
    "Prices were paid from {first} to {last}, in {currency}, with tax and delivery.": (
        "Die Preise wurden vom {first} bis {last} bezahlt, in {currency}, mit Steuer und Lieferung."
    ),
    "Not here": "Nicht hier",
    "There is no page at this address": "Unter dieser Adresse gibt es keine Seite",
    "There is no page at this address. It may have been renamed.": (
        "Unter dieser Adresse gibt es keine Seite. Vielleicht heißt sie jetzt anders."
    ),
    "To the first page": "Zur Startseite",
    ":": ":",
    ";": ";",
    "{name}: {value}": "{name}: {value}",
    "{term}: what it is": "{term}: was das heißt",
    "Newest episode": "Neueste Folge",
    "No episode has been written yet.": "Noch ist keine Folge geschrieben.",
    "Phases": "Phasen",
    "The bubble slides to the side that is over.": (
        "Liegt eine Phase über dem Plan, wandert die Luftblase nach rechts, liegt sie darunter, nach links."
    ),
    "Costs are job cost: what is still on the shelf or will be used again is not in them.": (
        "Es zählen die Baukosten: was noch im Regal liegt oder wieder gebraucht wird, ist nicht darin."
    ),
    "{amount} of {plan}": "{amount} von {plan}",
    "Cost over time": "Kosten im Lauf der Zeit",
    "Each step is an episode.": "Jede Stufe ist eine Folge.",
    "Each step is an episode. The ring is where the build is forecast to end.": (
        "Jede Stufe ist eine Folge. Der Ring zeigt, wo der Bau nach der Prognose endet."
    ),
    "All episodes": "Alle Folgen",
    "What is not in this total": "Was in dieser Summe fehlt",
    "running total {amount}": "laufende Summe {amount}",
    "spent so far": "bisher ausgegeben",
    "spent so far, {job_cost} of it used up": "bisher ausgegeben, {job_cost} davon verbaut",
    "How far": "Stand",
    "{done} of {n} phases done": {
        "one": "{done} von {n} Phase fertig",
        "other": "{done} von {n} Phasen fertig",
    },
    "now: {phases}": "jetzt: {phases}",
    "Promised for": "Versprochen für den",
    "Own work": "Eigenleistung",
    "Episode {number}": "Folge {number}",
    "Episode {number}: {title}": "Folge {number}: {title}",
    "episode {number}": "Folge {number}",
    "Episode": "Folge",
    "Episodes": "Folgen",
    "This episode in figures": "Diese Folge in Zahlen",
    "The video": "Das Video",
    "Watch it on its own site": "Dort ansehen, wo es liegt",
    "What it cost": "Was es gekostet hat",
    "This episode cost nothing.": "Diese Folge hat nichts gekostet.",
    "Running total": "Laufende Summe",
    "Snags": "Mängel",
    "Lessons": "Gelernt",
    "Episodes before and after": "Folgen davor und danach",
    "Before": "Davor",
    "Next": "Danach",
    "What this episode took, in {currency}, with tax and delivery": (
        "Was diese Folge gebraucht hat, in {currency}, mit Steuer und Lieferung"
    ),
    "This episode took": "Diese Folge brauchte",
    "This episode": "Diese Folge",
    "{n} prices are not known": {"one": "{n} Preis ist nicht bekannt", "other": "{n} Preise sind nicht bekannt"},
    "Hours": "Stunden",
    "{n} people": {"one": "{n} Person", "other": "{n} Personen"},
    "none written down": "keine notiert",
    "Helpers": "Helfer",
    "Weather": "Wetter",
    "{part} done": "{part} fertig",
    "done": "fertig",
    "Spent before": "Vorher ausgegeben",
    "Spent so far": "Bisher ausgegeben",
    "Paid and brought in, {in_all}, are as much as job cost, in stock, reusable and elsewhere together.": (
        "Bezahlt und eingebracht, zusammen {in_all}, ist so viel wie Baukosten, auf Lager, wiederverwendbar und "
        "anderweitig zusammen."
    ),
    "done in episode {number}": "erledigt in Folge {number}",
    "from episode {number}": "aus Folge {number}",
    "I said {said} for “{name}”; the ledger has {ledger}. {why}": (
        "Gesagt habe ich {said} für „{name}“; im Kostenbuch steht {ledger}. {why}"
    ),
    "{own} this episode, {running} so far.": "{own} in dieser Folge, {running} bisher.",
    "An account of how one person built it, not advice.": "Ein Bericht, wie ein Mensch es gebaut hat, kein Rat.",
    "What yours would cost": "Was deins kosten würde",
    "The same build at your prices, with your machines and your luck": (
        "Derselbe Bau zu deinen Preisen, mit deinen Maschinen und deinem Glück"
    ),
    "Three answers": "Drei Antworten",
    "As I did it": "So, wie ich es gemacht habe",
    "what this build has taken so far": "was dieser Bau bisher gebraucht hat",
    "With half the luck": "Mit halbem Glück",
    "each thing I found, at half the way to its price new": "jeder Fund auf halbem Weg zu seinem Neupreis",
    "Everything bought new and hired": "Alles neu gekauft und gemietet",
    "starting from nothing, selling no leftovers": "bei null angefangen, ohne Reste zu verkaufen",
    "{n} lines have no price: only what is known of them is in these figures.": {
        "one": "{n} Posten hat keinen Preis: nur was davon bekannt ist, steht in diesen Zahlen.",
        "other": "{n} Posten haben keinen Preis: nur was davon bekannt ist, steht in diesen Zahlen.",
    },
    "{n} lines could not be valued: they stand at what they cost here.": {
        "one": "{n} Posten ließ sich nicht bewerten: er steht mit dem, was er hier gekostet hat.",
        "other": "{n} Posten ließen sich nicht bewerten: sie stehen mit dem, was sie hier gekostet haben.",
    },
    "Your choices": "Deine Wahl",
    "Machines you own or can borrow": "Maschinen, die du hast oder leihen kannst",
    "What you can find instead of buying it new": "Was du finden kannst, statt es neu zu kaufen",
    "{source}: {amount} more when it has to be bought": "{source}: {amount} mehr, wenn es gekauft werden muss",
    "{source}: {amount} less when it is bought new": "{source}: {amount} weniger, wenn es neu gekauft wird",
    "{source}: nobody knows how much more when it has to be bought": (
        "{source}: niemand weiß, wie viel mehr, wenn es gekauft werden muss"
    ),
    "all of it": "alles",
    "half of it": "die Hälfte",
    "none of it": "nichts davon",
    "What serves again": "Was wieder dient",
    "I will use it again, so {amount} of it is not this build's": (
        "Ich verwende es wieder, also gehören {amount} davon nicht zu diesem Bau"
    ),
    "Prices, size and your hours": "Preise, Größe und deine Stunden",
    "Prices where you are": "Preise bei dir",
    "Size, for the materials": "Größe, fürs Material",
    "Your hour is worth (for {hours})": "Deine Stunde ist wert (bei {hours})",
    "Yours would cost": "Deins würde kosten",
    "The address of this page keeps your choices: copy it to share the answer.": (
        "Die Adresse dieser Seite merkt sich deine Wahl: kopier sie, um die Antwort weiterzugeben."
    ),
    "With scripts on, this page reprices the lines with your own choices.": (
        "Sind Skripte erlaubt, rechnet diese Seite die Posten mit deiner eigenen Wahl neu."
    ),
    "What such a figure cannot know": "Was so eine Zahl nicht wissen kann",
    (
        "It cannot know your ground, your local code, your prices or your luck. It reprices the lines of this "
        "build; it does not design yours. Sizes, depths and wiring are for local code and licensed people to say."
    ): (
        "Sie kennt weder deinen Boden noch deine Vorschriften, deine Preise oder dein Glück. Sie rechnet die "
        "Posten dieses Baus neu; sie entwirft nicht deinen. Maße, Tiefen und Leitungen bestimmen die "
        "Vorschriften an deinem Ort und zugelassene Leute."
    ),
    "Every phase is done: the whole build on one page": "Alle Phasen sind fertig: der ganze Bau auf einer Seite",
    "What it cost in the end, and what was learnt": "Was es am Ende gekostet hat und was zu lernen war",
    "spent from {first} to {last}": "ausgegeben vom {first} bis {last}",
    "Unpaid hours": "Unbezahlte Stunden",
    "What I would do otherwise": "Was ich anders machen würde",
}
