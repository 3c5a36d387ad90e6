"""German: the plan, its budget, calendar, forecast, phases, the tape and the level. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PLAN: Catalogue = {
    "What it was to cost, what it will cost, and when it will be ready": (
        "Was es kosten sollte, was es kosten wird und wann es fertig ist"
    ),
    "Is it on budget?": "Bleibt es im Budget?",
    "Yes: {verdict}": "Ja: {verdict}",
    "No: {verdict}": "Nein: {verdict}",
    "Cannot be told": "Lässt sich nicht sagen",
    "cannot be told": "lässt sich nicht sagen",
    "A phase that is not done has no plan, so there is no forecast for the whole build.": (
        "Eine Phase, die nicht fertig ist, hat keinen Plan; darum gibt es für den ganzen Bau keine Prognose."
    ),
    "The whole build is forecast to come to {forecast}, against {plan} planned.": (
        "Der ganze Bau kommt nach der Prognose auf {forecast}, geplant waren {plan}."
    ),
    "If the rest costs what was planned, the whole build uses up {forecast}; the plan was {plan}.": (
        "Wenn der Rest kostet, was geplant war, werden im Ganzen {forecast} verbaut; geplant waren {plan}."
    ),
    "The whole build was to cost {plan}.": "Der ganze Bau sollte {plan} kosten.",
    "Against the plan: {verdict}.": "Am Ende: {verdict}.",
    "Against the plan so far: {verdict}.": "Bisher: {verdict}.",
    "Of the {kept} kept for overruns, {taken} is taken.": (
        "Von den {kept} für Überschreitungen sind {taken} aufgebraucht."
    ),
    "The overruns are {amount} more than was kept.": (
        "Die Überschreitungen sind {amount} höher als das Zurückgelegte."
    ),
    "Will it be ready?": "Wird es fertig?",
    "Promised for {date}.": "Versprochen für den {date}.",
    "the plan gives no hours, or the journal no work week": (
        "der Plan nennt keine Stunden oder das Bautagebuch keine Arbeitswoche"
    ),
    "No date can be told: {why}.": "Ein Datum lässt sich nicht nennen: {why}.",
    "the plan has no phases": "der Plan hat keine Phasen",
    "phases wait for each other": "Phasen warten aufeinander",
    "the plan gives no hours for {phases}": "der Plan nennt keine Stunden für {phases}",
    "there are no hours to work in": "es gibt keine Stunden, in denen gearbeitet werden kann",
    "it is too far away to be told": "es liegt zu weit in der Zukunft",
    "Safe by {date}: four chances in five.": "Sicher bis {date}: vier Chancen von fünf.",
    "The chance of the promised date is {chance}.": "Die Chance für das versprochene Datum ist {chance}.",
    "Likely {date}": "Wahrscheinlich {date}",
    "No episode gives hours yet, so the work week is taken as promised.": (
        "Noch nennt keine Folge Stunden, darum gilt die Arbeitswoche wie versprochen."
    ),
    "This rests on {n} weeks, in which {rate} of the promised hours were worked.": {
        "one": "Das stützt sich auf {n} Woche, in der {rate} der versprochenen Stunden gearbeitet wurden.",
        "other": "Das stützt sich auf {n} Wochen, in denen {rate} der versprochenen Stunden gearbeitet wurden.",
    },
    "In {n} weeks nobody wrote hours down.": {
        "one": "In {n} Woche hat niemand Stunden notiert.",
        "other": "In {n} Wochen hat niemand Stunden notiert.",
    },
    "Was it on budget?": "Blieb es im Budget?",
    "Nothing was planned": "Geplant war nichts",
    "The whole build came to {cost}, against {plan} planned.": "Der ganze Bau kam auf {cost}, geplant waren {plan}.",
    "The whole build came to {cost}.": "Der ganze Bau kam auf {cost}.",
    "No phase has a plan to hold its cost against.": (
        "Keine Phase hat einen Plan, an dem sich ihre Kosten messen ließen."
    ),
    "Is it ready?": "Ist es fertig?",
    (
        "Nobody said how far {phases} got, and more hours than the highest estimate are spent there: it can only get "
        "later."
    ): (
        "Wie weit {phases} ist, hat niemand gesagt, und dort stecken schon mehr Stunden als höchstens geschätzt: es "
        "kann nur später werden."
    ),
    "Outside every phase": "Außerhalb aller Phasen",
    "Nothing was planned for it.": "Dafür war nichts geplant.",
    "More than was kept": "Mehr als zurückgelegt",
    "Finished": "Fertig geworden",
    "finished": "fertig",
    "finished {date}": "fertig {date}",
    "Finished {date}": "Fertig geworden am {date}",
    "Done, and ready {date} when the last wait is over": (
        "Alles getan; bereit am {date}, wenn die letzte Wartezeit vorbei ist"
    ),
    "{finished}, on the promised day": "{finished}, am versprochenen Tag",
    "{finished}, {n} days before the promise": {
        "one": "{finished}, {n} Tag vor dem versprochenen Tag",
        "other": "{finished}, {n} Tage vor dem versprochenen Tag",
    },
    "{finished}, {n} days after the promise": {
        "one": "{finished}, {n} Tag nach dem versprochenen Tag",
        "other": "{finished}, {n} Tage nach dem versprochenen Tag",
    },
    "job cost, {amount}": "Baukosten, {amount}",
    "What it was to cost, what it did cost, and when it was ready": (
        "Was es kosten sollte, was es gekostet hat und wann es fertig war"
    ),
    "Nothing is planned yet": "Noch ist nichts geplant",
    "That day is past.": "Dieser Tag ist vorbei.",
    "As far as costs are known: {verdict}": "Soweit die Kosten bekannt sind: {verdict}",
    "As far as costs are known, no phase is over": "Soweit die Kosten bekannt sind, liegt keine Phase über dem Plan",
    "What is to blame?": "Woran liegt es?",
    "Nothing: no phase is over": "An nichts: keine Phase liegt über dem Plan",
    "{phase}: {verdict}": "{phase}: {verdict}",
    "{name}: {verdict}.": "{name}: {verdict}.",
    "Not planned at all: {amount}, such as {names}.": "Gar nicht geplant: {amount}, etwa {names}.",
    "Phases side by side": "Die Phasen nebeneinander",
    "Job cost by phase, in {currency}": "Baukosten nach Phasen, in {currency}",
    "Phase": "Phase",
    "Level": "Wasserwaage",
    "Job cost so far": "Baukosten bisher",
    "Over or under": "Über oder unter Plan",
    "The whole build": "Der ganze Bau",
    "Taken by overruns": "Durch Überschreitungen verbraucht",
    "Left of it": "Davon übrig",
    "Against the plan, over time": "Gegen den Plan, im Lauf der Zeit",
    "Calendar": "Kalender",
    "What was dearer, and what there was more of": "Was teurer war und wovon es mehr brauchte",
    "Every planned line stands on the page of its phase.": "Jeder geplante Posten steht auf der Seite seiner Phase.",
    "The lines furthest from their plan, in {currency}": (
        "Die Posten, die am weitesten vom Plan abweichen, in {currency}"
    ),
    "Still wanted": "Noch gesucht",
    "Still wanted: to be found, not bought": "Noch gesucht: zu finden, nicht zu kaufen",
    "By": "Bis",
    "How the forecast moved": "Wie sich die Prognose bewegt hat",
    "How the forecast moved, in {currency}": "Wie sich die Prognose bewegt hat, in {currency}",
    "A mark without a number is an episode too.": "Auch ein Strich ohne Zahl ist eine Folge.",
    "The numbers under the line are episodes.": "Die Zahlen unter der Linie sind Folgen.",
    "The forecast after each episode": "Die Prognose nach jeder Folge",
    "The forecast cost went from {first} to {last}; the plan is {plan}.": (
        "Die Prognose ging von {first} auf {last}; der Plan ist {plan}."
    ),
    "forecast, {amount}": "Prognose, {amount}",
    "plan, {amount}": "Plan, {amount}",
    "plan {amount}": "Plan {amount}",
    "plan, {amount} by {date}": "Plan, {amount} bis {date}",
    "After": "Nach",
    "Likely": "Wahrscheinlich",
    "Safe": "Sicher",
    "Chance of the promised date": "Chance für das versprochene Datum",
    "likely {likely}, safe {safe}": "wahrscheinlich {likely}, sicher {safe}",
    "Earned value": "Fertigstellungswert",
    (
        "For those who know the method. These estimates are not the forecast above: they carry the rate so far "
        "over everything that is left."
    ): (
        "Für alle, die das Verfahren kennen. Diese Schätzungen sind nicht die Prognose oben: sie übertragen das "
        "bisherige Tempo auf alles, was noch fehlt."
    ),
    "The build has one rate of its own, so its estimates are not the sum of those of the phases.": (
        "Der Bau hat eine eigene Rate; seine Schätzungen sind deshalb nicht die Summe derer der Phasen."
    ),
    "At this rate the whole build comes to {amount}. Against the plan: {verdict}.": (
        "Bei diesem Tempo kommt der ganze Bau auf {amount}: {verdict}."
    ),
    "At this rate the whole build comes to about {amount}. Against the plan: {verdict}.": (
        "Bei diesem Tempo kommt der ganze Bau auf etwa {amount}: {verdict}."
    ),
    "Earned value, in {currency}; here a variance above zero and an index above 1 are favourable": (
        "Fertigstellungswert, in {currency}; hier sind eine Abweichung über null und ein Index über 1 günstig"
    ),
    "Budget (BAC)": "Budget (BAC)",
    "Earned (EV)": "Fertigstellungswert (EV)",
    "Actual (AC)": "Istkosten (AC)",
    "Cost variance (CV)": "Kostenabweichung (CV)",
    "Cost index (CPI)": "Kostenindex (CPI)",
    "At completion, at this rate (EAC)": "Am Ende, bei diesem Tempo (EAC)",
    "At completion, rest as planned (EAC)": "Am Ende, Rest wie geplant (EAC)",
    "To complete, at this rate (ETC)": "Noch nötig, bei diesem Tempo (ETC)",
    "Variance at completion (VAC)": "Abweichung am Ende (VAC)",
    "Index needed for the budget (TCPI)": "Nötiger Index für das Budget (TCPI)",
    "The date hangs on {phases}.": "Das Datum hängt an {phases}.",
    "{phase} has {n} weekends of slack.": {
        "one": "{phase} hat {n} Wochenende Puffer.",
        "other": "{phase} hat {n} Wochenenden Puffer.",
    },
    "The phases on the calendar": "Die Phasen im Kalender",
    "The calendar as a table": "Der Kalender als Tabelle",
    "{phases}; {dates}.": "{phases}; {dates}.",
    "as of {date}": "Stand {date}",
    "promised for {date}": "versprochen für den {date}",
    "likely {date}": "wahrscheinlich {date}",
    "safe {date}": "sicher {date}",
    "worked": "gearbeitet",
    "to come, as forecast": "steht noch an, nach der Prognose",
    "waiting": "warten",
    "days worked on": "Tage, an denen gearbeitet wurde",
    "Begun": "Begonnen",
    "Done": "Fertig",
    "Wait after it": "Wartezeit danach",
    "Weekends of slack": "Wochenenden Puffer",
    "The finish hangs on it in": "Das Ende hängt daran in",
    "as forecast": "nach der Prognose",
    "Line": "Posten",
    "To be used": "Vorgesehen",
    "Used": "Verbraucht",
    "Because": "Grund",
    "not planned": "nicht geplant",
    "not bought": "nicht gekauft",
    "cheaper than planned, {amount}": "billiger als geplant, {amount}",
    "dearer than planned, {amount}": "teurer als geplant, {amount}",
    "less of it than planned, {amount}": "weniger davon als geplant, {amount}",
    "more of it than planned, {amount}": "mehr davon als geplant, {amount}",
    "job cost so far, {amount}": "Baukosten bisher, {amount}",
    "Job cost rose to {amount} by {date}.": "Die Baukosten stiegen bis {date} auf {amount}.",
    "The plan is {amount}.": "Der Plan ist {amount}.",
    "The forecast is {amount}.": "Die Prognose ist {amount}.",
    "Job cost over the dates, against the plan": "Baukosten nach Datum, gegen den Plan",
    "Phase {number} of {all}, {status}": "Phase {number} von {all}, {status}",
    "Lines that belong to no phase": "Posten, die zu keiner Phase gehören",
    "planned {likely}, from {low} to {high}": "geplant {likely}, zwischen {low} und {high}",
    "{phase} in figures": "{phase} in Zahlen",
    "{phase}: {amount} used up so far": "{phase}: bisher {amount} verbaut",
    "used up, of {plan} planned": "verbaut, von {plan} geplant",
    "used up": "verbaut",
    "Every line of {phase}, in {currency}, with tax and delivery": (
        "Jeder Posten von {phase}, in {currency}, mit Steuer und Lieferung"
    ),
    "Job cost against the plan, in {currency}": "Baukosten gegen den Plan, in {currency}",
    "This phase was planned as one amount, so it is compared as a whole.": (
        "Diese Phase wurde als ein Betrag geplant und wird darum als Ganzes verglichen."
    ),
    "Nothing has been entered for this phase yet.": "Für diese Phase ist noch nichts eingetragen.",
    "Planned and actual, line by line": "Geplant und wirklich, Posten für Posten",
    "How much was worked out": "Wie viel ausgerechnet wurde",
    "what is left of the planned amount": "was vom geplanten Betrag übrig ist",
    "Shopping list": "Einkaufsliste",
    (
        "Whole packages, less what was bought already and what is in stock. Check sizes and quantities against "
        "your own drawings."
    ): (
        "Ganze Packungen, ohne das, was schon gekauft ist und auf Lager liegt. Prüfe Größen und Mengen anhand "
        "deiner eigenen Zeichnungen."
    ),
    "To buy for {phase}, prices as planned, in {currency}": (
        "Zu kaufen für {phase}, Preise wie geplant, in {currency}"
    ),
    "Buy": "Kaufen",
    "About": "Etwa",
    "outside every phase": "außerhalb aller Phasen",
    "nothing planned": "nichts geplant",
    "nothing to read yet": "noch nichts abzulesen",
    "{verdict}, as forecast": "{verdict}, nach der Prognose",
    "under way": "läuft",
    "under way, {part}": "läuft, {part}",
    "under way, nobody said how far": "läuft, niemand hat gesagt, wie weit",
    "not begun": "nicht begonnen",
    "Level of {phase}": "Wasserwaage: {phase}",
    "under": "darunter",
    "over": "darüber",
    "Spent so far, on a tape": "Bisher ausgegeben, auf einem Maßband",
    "A measuring tape pulled out to {spent}; its case stands at the plan, {plan}.": (
        "Ein Maßband, ausgezogen bis {spent}; sein Gehäuse steht beim Plan, {plan}."
    ),
    "A measuring tape pulled out to {spent}; there is no plan to set its case at.": (
        "Ein Maßband, ausgezogen bis {spent}; es gibt keinen Plan, an dem sein Gehäuse stehen könnte."
    ),
}
