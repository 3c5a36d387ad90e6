"""French: the plan, its budget, calendar, forecast, phases, the tape and the level. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PLAN: Catalogue = {
    "What it was to cost, what it will cost, and when it will be ready": (
        "Ce que cela devait coûter, ce que cela coûtera, et quand ce sera prêt"
    ),
    "Is it on budget?": "Le budget est-il tenu ?",
    "Yes: {verdict}": "Oui : {verdict}",
    "No: {verdict}": "Non : {verdict}",
    "Cannot be told": "Impossible à dire",
    "cannot be told": "impossible à dire",
    "A phase that is not done has no plan, so there is no forecast for the whole build.": (
        "Une phase pas finie n’a pas de plan ; il n’y a donc pas de projection pour tout le chantier."
    ),
    "The whole build is forecast to come to {forecast}, against {plan} planned.": (
        "Selon la projection, tout le chantier reviendra à {forecast}, pour {plan} prévus."
    ),
    "If the rest costs what was planned, the whole build uses up {forecast}; the plan was {plan}.": (
        "Si le reste coûte ce qui était prévu, tout le chantier consommera {forecast} ; {plan} étaient prévus."
    ),
    "The whole build was to cost {plan}.": "Tout le chantier devait coûter {plan}.",
    "Against the plan: {verdict}.": "Par rapport au plan : {verdict}.",
    "Against the plan so far: {verdict}.": "À ce jour, par rapport au plan : {verdict}.",
    "Of the {kept} kept for overruns, {taken} is taken.": (
        "Sur les {kept} gardés pour les dépassements, {taken} sont pris."
    ),
    "The overruns are {amount} more than was kept.": ("Les dépassements font {amount} de plus que ce qui était gardé."),
    "Will it be ready?": "Sera-ce prêt ?",
    "Promised for {date}.": "Promis pour le {date}.",
    "the plan gives no hours, or the journal no work week": (
        "le plan ne donne pas d’heures, ou le journal pas de semaine de travail"
    ),
    "No date can be told: {why}.": "Impossible de donner une date : {why}.",
    "the plan has no phases": "le plan n’a pas de phases",
    "phases wait for each other": "des phases s’attendent l’une l’autre",
    "the plan gives no hours for {phases}": "le plan ne donne pas d’heures pour {phases}",
    "there are no hours to work in": "il n’y a pas d’heures pour travailler",
    "it is too far away to be told": "c’est trop loin pour être dit",
    "Safe by {date}: four chances in five.": "Sûr pour le {date} : quatre chances sur cinq.",
    "The chance of the promised date is {chance}.": "La date promise a {chance} de chances d’être tenue.",
    "Likely {date}": "Probable le {date}",
    "No episode gives hours yet, so the work week is taken as promised.": (
        "Aucun épisode ne donne encore d’heures ; la semaine de travail est donc prise comme promise."
    ),
    "This rests on {n} weeks, in which {rate} of the promised hours were worked.": {
        "one": "Cela repose sur {n} semaine, où {rate} des heures promises ont été faites.",
        "many": "Cela repose sur {n} de semaines, où {rate} des heures promises ont été faites.",
        "other": "Cela repose sur {n} semaines, où {rate} des heures promises ont été faites.",
    },
    "In {n} weeks nobody wrote hours down.": {
        "one": "Pendant {n} semaine, personne n’a noté d’heures.",
        "many": "Pendant {n} de semaines, personne n’a noté d’heures.",
        "other": "Pendant {n} semaines, personne n’a noté d’heures.",
    },
    "Was it on budget?": "Le budget a-t-il été tenu ?",
    "Nothing was planned": "Rien n’était prévu",
    "The whole build came to {cost}, against {plan} planned.": (
        "Tout le chantier est revenu à {cost}, pour {plan} prévus."
    ),
    "The whole build came to {cost}.": "Tout le chantier est revenu à {cost}.",
    "No phase has a plan to hold its cost against.": "Aucune phase n’a de plan auquel comparer son coût.",
    "Is it ready?": "Est-ce prêt ?",
    (
        "Nobody said how far {phases} got, and more hours than the highest estimate are spent there: it can only get "
        "later."
    ): (
        "Personne n’a dit où en est {phases}, et on y a passé plus d’heures que l’estimation la plus haute : ce ne "
        "peut être que plus tard."
    ),
    "Outside every phase": "Hors de toute phase",
    "Nothing was planned for it.": "Rien n’était prévu pour elle.",
    "More than was kept": "Au-delà de ce qui était gardé",
    "Finished": "Fini",
    "finished": "fini",
    "finished {date}": "fini le {date}",
    "Finished {date}": "Fini le {date}",
    "Done, and ready {date} when the last wait is over": "Fait, et prêt le {date} à la fin de la dernière attente",
    "{finished}, on the promised day": "{finished}, le jour promis",
    "{finished}, {n} days before the promise": {
        "one": "{finished}, {n} jour avant la date promise",
        "many": "{finished}, {n} de jours avant la date promise",
        "other": "{finished}, {n} jours avant la date promise",
    },
    "{finished}, {n} days after the promise": {
        "one": "{finished}, {n} jour après la date promise",
        "many": "{finished}, {n} de jours après la date promise",
        "other": "{finished}, {n} jours après la date promise",
    },
    "job cost, {amount}": "coût du chantier, {amount}",
    "What it was to cost, what it did cost, and when it was ready": (
        "Ce que cela devait coûter, ce que cela a coûté et quand c’était prêt"
    ),
    "Nothing is planned yet": "Rien n’est encore prévu",
    "That day is past.": "Ce jour est passé.",
    "As far as costs are known: {verdict}": "Pour ce dont le coût est connu : {verdict}",
    "As far as costs are known, no phase is over": "Pour ce dont le coût est connu, aucune phase ne dépasse le plan",
    "What is to blame?": "À quoi est-ce dû ?",
    "Nothing: no phase is over": "À rien : aucune phase ne dépasse le plan",
    "{phase}: {verdict}": "{phase} : {verdict}",
    "{name}: {verdict}.": "{name} : {verdict}.",
    "Not planned at all: {amount}, such as {names}.": "Pas prévu du tout : {amount}, par exemple {names}.",
    "Phases side by side": "Les phases côte à côte",
    "Job cost by phase, in {currency}": "Coût du chantier par phase, en {currency}",
    "Phase": "Phase",
    "Level": "Niveau",
    "Job cost so far": "Coût à ce jour",
    "Over or under": "En plus ou en moins",
    "The whole build": "Tout le chantier",
    "Taken by overruns": "Pris par les dépassements",
    "Left of it": "Il en reste",
    "Against the plan, over time": "Face au plan, au fil du temps",
    "Calendar": "Calendrier",
    "What was dearer, and what there was more of": "Ce qui a coûté plus cher, et ce qu’il a fallu en plus",
    "Every planned line stands on the page of its phase.": "Chaque ligne prévue se trouve sur la page de sa phase.",
    "The lines furthest from their plan, in {currency}": "Les lignes les plus éloignées du plan, en {currency}",
    "Still wanted": "Encore recherché",
    "Still wanted: to be found, not bought": "Encore recherché : à trouver, pas à acheter",
    "By": "Pour le",
    "How the forecast moved": "Comment la projection a bougé",
    "How the forecast moved, in {currency}": "Comment la projection a bougé, en {currency}",
    "A mark without a number is an episode too.": "Un trait sans numéro est aussi un épisode.",
    "The numbers under the line are episodes.": "Les numéros sous la ligne sont les épisodes.",
    "The forecast after each episode": "La projection après chaque épisode",
    "The forecast cost went from {first} to {last}; the plan is {plan}.": (
        "La projection est passée de {first} à {last} ; le plan est de {plan}."
    ),
    "forecast, {amount}": "projection, {amount}",
    "plan, {amount}": "plan, {amount}",
    "plan {amount}": "plan {amount}",
    "plan, {amount} by {date}": "plan, {amount} pour le {date}",
    "After": "Après",
    "Likely": "Probable",
    "Safe": "Sûr",
    "Chance of the promised date": "Chances de la date promise",
    "likely {likely}, safe {safe}": "probable le {likely}, sûr le {safe}",
    "Earned value": "Valeur acquise",
    (
        "For those who know the method. These estimates are not the forecast above: they carry the rate so far "
        "over everything that is left."
    ): (
        "Pour qui connaît la méthode. Ces estimations ne sont pas la projection ci-dessus : elles étendent le "
        "rythme actuel à tout ce qui reste."
    ),
    "The build has one rate of its own, so its estimates are not the sum of those of the phases.": (
        "Le chantier a un rythme qui lui est propre : ses estimations ne sont donc pas la somme de celles des phases."
    ),
    "At this rate the whole build comes to {amount}. Against the plan: {verdict}.": (
        "À ce rythme, tout le chantier reviendra à {amount} ; face au plan : {verdict}."
    ),
    "At this rate the whole build comes to about {amount}. Against the plan: {verdict}.": (
        "À ce rythme, tout le chantier reviendra à environ {amount} ; face au plan : {verdict}."
    ),
    "Earned value, in {currency}; here a variance above zero and an index above 1 are favourable": (
        "Valeur acquise, en {currency} ; ici, un écart positif et un indice supérieur à 1 sont favorables"
    ),
    "Budget (BAC)": "Budget (BAC)",
    "Earned (EV)": "Valeur acquise (EV)",
    "Actual (AC)": "Coût réel (AC)",
    "Cost variance (CV)": "Écart de coût (CV)",
    "Cost index (CPI)": "Indice de coût (CPI)",
    "At completion, at this rate (EAC)": "À la fin, à ce rythme (EAC)",
    "At completion, rest as planned (EAC)": "À la fin, le reste comme prévu (EAC)",
    "To complete, at this rate (ETC)": "Reste à dépenser, à ce rythme (ETC)",
    "Variance at completion (VAC)": "Écart à la fin (VAC)",
    "Index needed for the budget (TCPI)": "Indice requis pour le budget (TCPI)",
    "The date hangs on {phases}.": "La date tient à {phases}.",
    "{phase} has {n} weekends of slack.": {
        "one": "{phase} a {n} week-end de marge.",
        "many": "{phase} a {n} de week-ends de marge.",
        "other": "{phase} a {n} week-ends de marge.",
    },
    "The phases on the calendar": "Les phases sur le calendrier",
    "The calendar as a table": "Le calendrier en tableau",
    "{phases}; {dates}.": "{phases} ; {dates}.",
    "as of {date}": "au {date}",
    "promised for {date}": "promis pour le {date}",
    "likely {date}": "probable le {date}",
    "safe {date}": "sûr le {date}",
    "worked": "travaillé",
    "to come, as forecast": "à venir, selon la projection",
    "waiting": "attente",
    "days worked on": "jours travaillés",
    "Begun": "Début",
    "Done": "Fin",
    "Wait after it": "Attente après",
    "Weekends of slack": "Week-ends de marge",
    "The finish hangs on it in": "La fin en dépend dans",
    "as forecast": "selon la projection",
    "Line": "Ligne",
    "To be used": "À consommer",
    "Used": "Consommé",
    "Because": "Raison",
    "not planned": "pas prévu",
    "not bought": "pas acheté",
    "cheaper than planned, {amount}": "moins cher que prévu, {amount}",
    "dearer than planned, {amount}": "plus cher que prévu, {amount}",
    "less of it than planned, {amount}": "en moindre quantité que prévu, {amount}",
    "more of it than planned, {amount}": "en plus grande quantité que prévu, {amount}",
    "job cost so far, {amount}": "coût du chantier à ce jour, {amount}",
    "Job cost rose to {amount} by {date}.": "Le coût du chantier est monté à {amount} au {date}.",
    "The plan is {amount}.": "Le plan est de {amount}.",
    "The forecast is {amount}.": "La projection est de {amount}.",
    "Job cost over the dates, against the plan": "Coût du chantier par date, face au plan",
    "Phase {number} of {all}, {status}": "Phase {number} sur {all}, {status}",
    "Lines that belong to no phase": "Lignes qui n’appartiennent à aucune phase",
    "planned {likely}, from {low} to {high}": "prévu {likely}, de {low} à {high}",
    "{phase} in figures": "{phase} en chiffres",
    "{phase}: {amount} used up so far": "{phase} : {amount} consommés à ce jour",
    "used up, of {plan} planned": "consommés, sur {plan} prévus",
    "used up": "consommés",
    "Every line of {phase}, in {currency}, with tax and delivery": (
        "Chaque ligne de {phase}, en {currency}, taxes et livraison comprises"
    ),
    "Job cost against the plan, in {currency}": "Coût du chantier face au plan, en {currency}",
    "This phase was planned as one amount, so it is compared as a whole.": (
        "Cette phase était prévue comme un seul montant ; elle est donc comparée en bloc."
    ),
    "Nothing has been entered for this phase yet.": "Rien n’est encore noté pour cette phase.",
    "Planned and actual, line by line": "Prévu et réel, ligne par ligne",
    "How much was worked out": "Ce qui a été calculé",
    "what is left of the planned amount": "ce qui reste du montant prévu",
    "Shopping list": "Liste d’achats",
    (
        "Whole packages, less what was bought already and what is in stock. Check sizes and quantities against "
        "your own drawings."
    ): (
        "Des paquets entiers, moins ce qui est déjà acheté et ce qui est en stock. Vérifiez tailles et quantités "
        "sur vos propres plans."
    ),
    "To buy for {phase}, prices as planned, in {currency}": "À acheter pour {phase}, aux prix prévus, en {currency}",
    "Buy": "Acheter",
    "About": "Environ",
    "outside every phase": "hors de toute phase",
    "nothing planned": "rien de prévu",
    "nothing to read yet": "rien à lire encore",
    "{verdict}, as forecast": "{verdict}, selon la projection",
    "under way": "en cours",
    "under way, {part}": "en cours, {part}",
    "under way, nobody said how far": "en cours, personne n’a dit où on en est",
    "not begun": "pas commencée",
    "Level of {phase}": "Niveau : {phase}",
    "under": "moins",
    "over": "plus",
    "Spent so far, on a tape": "Dépensé à ce jour, sur un mètre ruban",
    "A measuring tape pulled out to {spent}; its case stands at the plan, {plan}.": (
        "Un mètre ruban tiré jusqu’à {spent} ; son boîtier est posé au plan, {plan}."
    ),
    "A measuring tape pulled out to {spent}; there is no plan to set its case at.": (
        "Un mètre ruban tiré jusqu’à {spent} ; il n’y a pas de plan où poser son boîtier."
    ),
}
