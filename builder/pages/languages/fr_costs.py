"""French: the ledger, its terms, sources, tables and receipts. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

COSTS: Catalogue = {
    "Spent": "Dépensé",
    "Paid": "Payé",
    "Job cost": "Coût du chantier",
    "In stock": "En stock",
    "Reusable": "Réutilisable",
    "Elsewhere": "Ailleurs",
    "Brought in": "Apporté",
    "Replacement cost": "Coût de remplacement",
    "Saved": "Économisé",
    "Rework": "Reprises",
    "Estimated": "Estimé",
    "Planned": "Prévu",
    "Forecast": "Projection",
    "Travel": "Trajets",
    "Deposits out": "Cautions en cours",
    "Contingency": "Imprévus",
    (
        "What this build has taken so far: what was paid, and leftovers of earlier jobs at what they cost then, "
        "less what went into something else. What is on the shelf or will be used again is still in it."
    ): (
        "Ce que ce chantier a demandé à ce jour : ce qui a été payé, et les restes de travaux antérieurs à leur "
        "coût d’alors, moins ce qui est allé ailleurs. Ce qui est en stock ou resservira y est encore."
    ),
    (
        "Money that left the pocket: the price with its share of the receipt's tax and delivery, less discounts "
        "and refunds."
    ): (
        "L’argent sorti de la poche : le prix avec sa part des taxes et de la livraison du ticket, moins remises "
        "et remboursements."
    ),
    (
        "The part of what was spent that this build used up. Leftovers on the shelf and things that will serve "
        "again are not in it, because they are not gone. The plan is on the same footing."
    ): (
        "La part des dépenses que ce chantier a consommée. Les restes en stock et ce qui resservira n’y sont "
        "pas, puisqu’ils ne sont pas perdus. Le plan compte de la même façon."
    ),
    (
        "Leftovers still on the shelf, at what they cost with tax and delivery. They become job cost on the day "
        "they are used."
    ): (
        "Les restes encore en réserve, à ce qu’ils ont coûté taxes et livraison comprises. Ils deviennent coût "
        "du chantier le jour où ils servent."
    ),
    "The part that will serve other jobs, or this one again: form boards, props, a ladder.": (
        "La part qui servira à d’autres travaux, ou encore à celui-ci : planches de coffrage, étais, une échelle."
    ),
    "The part of a shared purchase that went into something else.": (
        "La part d’un achat partagé qui est allée dans autre chose."
    ),
    "Leftovers of an earlier job, at what they cost then, on the day this build draws them.": (
        "Les restes de travaux antérieurs, à leur coût d’alors, le jour où ce chantier les prend."
    ),
    "What the same things would cost somebody who has to buy them new, or hire them.": (
        "Ce que les mêmes choses coûteraient à qui doit les acheter neuves, ou les louer."
    ),
    "Replacement cost less job cost and what is reusable, over the lines whose replacement cost is known.": (
        "Le coût de remplacement moins le coût du chantier et le réutilisable, sur les lignes dont le "
        "remplacement est connu."
    ),
    "Job cost of doing something twice.": "Le coût de ce qu’il a fallu faire deux fois.",
    "Job cost of the lines whose figures are a judgement and not on a paper.": (
        "Le coût des lignes dont les chiffres sont estimés, sans papier à l’appui."
    ),
    "The budget, with tax inside, on the same footing as job cost.": (
        "Le budget, taxes comprises, compté comme le coût du chantier."
    ),
    (
        "Job cost expected at the end. A phase that is done counts what it cost; one not begun, what was "
        "planned; one under way, what it cost so far and what its planned lines still lack."
    ): (
        "Le coût du chantier attendu à la fin. Une phase finie compte pour ce qu’elle a coûté ; une phase pas "
        "commencée, pour le prévu ; une phase en cours, pour ce qu’elle a coûté et ce qui manque encore à ses "
        "lignes prévues."
    ),
    "Unpaid hours at the journal's rate for an hour. It is in no total.": (
        "Les heures non payées, au tarif horaire de ce journal. Dans aucun total."
    ),
    "Journeys at the journal's rate. It is in no total.": "Les trajets, au tarif de ce journal. Dans aucun total.",
    "Paid out and owed back. Outside what was paid while they are out.": (
        "Versées et à récupérer. Hors de ce qui est payé tant qu’elles sont dehors."
    ),
    "The sum over all episodes up to and including this one, in order of date.": (
        "La somme de tous les épisodes jusqu’à celui-ci compris, par ordre de date."
    ),
    "Kept apart for overruns and never inside a phase. What the overruns of all phases take of it is shown.": (
        "Mis de côté pour les dépassements, jamais dans une phase. On montre ce que les dépassements de toutes "
        "les phases en prennent."
    ),
    "bought": "acheté",
    "secondhand": "d’occasion",
    "salvaged": "récupéré",
    "gift": "offert",
    "own": "à moi",
    "borrowed": "prêté",
    "hired": "loué",
    "unpaid work": "travail non payé",
    "paid work": "travail payé",
    "paid": "payé",
    "returned": "rendu",
    "sold": "vendu",
    "spoiled": "perdu",
    "used again": "réutilisé",
    "taken from stock": "pris en stock",
    "fee": "frais",
    "travel": "trajet",
    "What": "Quoi",
    "How many": "Combien",
    "How much": "Combien",
    "Where from": "D’où",
    "Receipt": "Ticket",
    "Receipts": "Tickets",
    "no. {number}": "n° {number}",
    "paid for before": "déjà payé plus tôt",
    "{amount}, the rest of {paid} went elsewhere": "{amount}, le reste de {paid} est allé ailleurs",
    "Taken from stock": "Pris en stock",
    "Used again": "Réutilisé",
    "Dearer than new by": "Plus cher que neuf de",
    "Came back": "Revenu",
    "{amount} came back": "{amount} sont revenus",
    "more than the same things would cost new; new they are {amount}": (
        "de plus que ne coûteraient neuves les mêmes choses ; neuves, elles font {amount}"
    ),
    "not priced": "sans prix",
    "Not priced": "Sans prix",
    "not valued": "non évalué",
    "Not valued": "Non évalué",
    "{name}, at least": "{name}, au moins",
    "From {where}": "Provenance : {where}",
    "an earlier job": "un chantier antérieur",
    "Worth an hour: {basis}": "Valeur d’une heure : {basis}",
    "price {amount}": "prix {amount}",
    "discount {amount}": "remise {amount}",
    "tax {amount}": "taxes {amount}",
    "delivery {amount}": "livraison {amount}",
    "a judgement, not on a paper": "estimé, sans papier à l’appui",
    "{figures}: a judgement, not on a paper": "{figures} : estimé, sans papier à l’appui",
    "how many": "quantité",
    "price of one": "prix d’un",
    "what it cost": "coût",
    "how much was used": "quantité employée",
    "the part for this build": "la part de ce chantier",
    "the part that serves again": "la part qui resservira",
    "how often it serves": "combien de fois cela sert",
    "what it would cost new": "ce que cela coûterait neuf",
    "fuel": "carburant",
    "how much went back": "combien est revenu au magasin",
    "what came back for it": "ce qui a été remboursé",
    "done twice": "fait deux fois",
    "Done twice": "Fait deux fois",
    "what it cost is not known": "son coût n’est pas connu",
    "what it would cost new is not known": "son prix neuf n’est pas connu",
    "serves {uses} times": "sert {uses} fois",
    "paid as {amount}": "payé {amount}",
    "{quantity} went back for {amount}": "{quantity} rendus pour {amount}",
    "size {size}": "dimensions {size}",
    "deposit {amount}, not in what was paid": "caution {amount}, hors de ce qui est payé",
    "deposit back {amount}": "caution rendue {amount}",
    "no phase": "hors phase",
    "No phase": "Hors phase",
    "Every line item of the build": "Chaque ligne du chantier",
    "Every line, in {currency}, with tax and delivery": "Chaque ligne, en {currency}, taxes et livraison comprises",
    "spent so far, in {n} lines": {
        "one": "dépensés à ce jour, en {n} ligne",
        "many": "dépensés à ce jour, en {n} de lignes",
        "other": "dépensés à ce jour, en {n} lignes",
    },
    "{n} lines, all of them": {
        "one": "{n} ligne, toutes",
        "many": "{n} de lignes, toutes",
        "other": "{n} lignes, toutes",
    },
    "{n} lines": {"one": "{n} ligne", "many": "{n} de lignes", "other": "{n} lignes"},
    "Every line": "Chaque ligne",
    "All lines": "Toutes les lignes",
    "Lines": "Lignes",
    "Choose lines": "Choisir les lignes",
    "Words in it": "Mots contenus",
    "all phases": "toutes les phases",
    "everywhere": "de partout",
    "Nobody knows what these cost, so every total above them says “at least”.": (
        "Personne ne sait ce que celles-ci ont coûté ; chaque total au-dessus dit donc « au moins »."
    ),
    "Nobody knows what these would cost new, so they are in no figure of what was saved.": (
        "Personne ne sait ce que celles-ci coûteraient neuves ; elles ne comptent donc dans aucune économie."
    ),
    "Receipts, in {currency}": "Tickets, en {currency}",
    "Goods": "Articles",
    "Discount": "Remise",
    "Tax": "Taxes",
    "Delivery": "Livraison",
    "Total": "Total",
    "in the prices": "dans les prix",
    "{tax}, in the prices": "{tax}, dans les prix",
    "at least: a line has no price": "au moins : une ligne n’a pas de prix",
    "as on the paper": "comme sur le ticket",
    "saved, of {amount} that the same things would cost new": (
        "économisés, sur {amount} que les mêmes choses coûteraient neuves"
    ),
    "Where things came from, what was saved and what is left": (
        "D’où viennent les choses, ce qui est économisé et ce qui reste"
    ),
    "By source": "Par provenance",
    "What was paid, by where things came from": "Ce qui a été payé, par provenance",
    "What was paid, by where things came from.": "Ce qui a été payé, par provenance.",
    "By where things came from, in {currency}": "Par provenance, en {currency}",
    "Per area, year and hour": "Par surface, année et heure",
    "Job cost per area": "Coût du chantier par surface",
    "Job cost per year of service": "Coût du chantier par année d’usage",
    "Job cost per hour worked": "Coût du chantier par heure de travail",
    "What is left": "Ce qui reste",
    "Nothing is left on the shelf.": "Il ne reste rien en stock.",
    "In stock: leftovers on the shelf": "En stock : les restes sur l’étagère",
    "Leftovers of earlier jobs, not drawn and in no total": (
        "Restes de travaux antérieurs, pas pris et dans aucun total"
    ),
    "Bought to keep: what will serve again": "Acheté pour rester : ce qui resservira",
    "Worth, at cost": "Valeur, au coût",
    "Together": "Ensemble",
    "Machines and tools": "Machines et outils",
    "Machines and tools it took": "Machines et outils qu’il a fallu",
    "Work": "Travail",
    "No hours have been written down.": "Aucune heure n’a été notée.",
    "What doing it twice cost": "Ce qu’a coûté de faire deux fois",
    "Doing it twice": "Fait deux fois",
    "Own hours": "Heures personnelles",
    "Helpers' hours": "Heures des aides",
    "Paid labour": "Main-d’œuvre payée",
    "in job cost": "dans le coût du chantier",
    "in no total": "dans aucun total",
    "{n} lines whose price is not known, so every total says “at least”": {
        "one": "{n} ligne au prix inconnu ; chaque total dit donc « au moins »",
        "many": "{n} de lignes au prix inconnu ; chaque total dit donc « au moins »",
        "other": "{n} lignes au prix inconnu ; chaque total dit donc « au moins »",
    },
    "{amount} that went into something else": "{amount} partis dans autre chose",
    "Unpaid work: {hours}": "Travail non payé : {hours}",
    "The use of own tools, on {n} lines": {
        "one": "L’usage de mes outils, sur {n} ligne",
        "many": "L’usage de mes outils, sur {n} de lignes",
        "other": "L’usage de mes outils, sur {n} lignes",
    },
    "Deposits of {amount} that are still out": "Des cautions de {amount} encore en cours",
    "Leftovers of earlier jobs that this build has not drawn": (
        "Des restes de travaux antérieurs que ce chantier n’a pas pris"
    ),
    "What cost most": "Ce qui a coûté le plus",
    "What cost most, in {currency}": "Ce qui a coûté le plus, en {currency}",
    "All materials, for copying": "Tous les matériaux, à copier",
    "The whole list, with what went in": "La liste entière, avec ce qui a servi",
}
