"""Spanish: the plan, its budget, calendar, forecast, phases, the tape and the level. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PLAN: Catalogue = {
    "What it was to cost, what it will cost, and when it will be ready": (
        "Lo que iba a costar, lo que costará y cuándo estará listo"
    ),
    "Is it on budget?": "¿Va dentro del presupuesto?",
    "Yes: {verdict}": "Sí: {verdict}",
    "No: {verdict}": "No: {verdict}",
    "Cannot be told": "No se puede saber",
    "cannot be told": "no se puede saber",
    "A phase that is not done has no plan, so there is no forecast for the whole build.": (
        "Una fase sin terminar no tiene plan, así que no hay proyección para toda la obra."
    ),
    "The whole build is forecast to come to {forecast}, against {plan} planned.": (
        "Según la proyección, la obra entera costará {forecast}, frente a {plan} previstos."
    ),
    "If the rest costs what was planned, the whole build uses up {forecast}; the plan was {plan}.": (
        "Si el resto cuesta lo previsto, toda la obra consumirá {forecast}; se habían previsto {plan}."
    ),
    "The whole build was to cost {plan}.": "Toda la obra debía costar {plan}.",
    "Against the plan: {verdict}.": "Respecto al plan: {verdict}.",
    "Against the plan so far: {verdict}.": "Hasta hoy, respecto al plan: {verdict}.",
    "Of the {kept} kept for overruns, {taken} is taken.": (
        "De los {kept} guardados para sobrecostes, se han tomado {taken}."
    ),
    "The overruns are {amount} more than was kept.": "Los sobrecostes superan en {amount} lo guardado.",
    "Will it be ready?": "¿Estará listo?",
    "Promised for {date}.": "Prometido para el {date}.",
    "the plan gives no hours, or the journal no work week": (
        "el plan no da horas, o el diario no da semana de trabajo"
    ),
    "No date can be told: {why}.": "No se puede dar una fecha: {why}.",
    "the plan has no phases": "el plan no tiene fases",
    "phases wait for each other": "hay fases que se esperan unas a otras",
    "the plan gives no hours for {phases}": "el plan no da horas para {phases}",
    "there are no hours to work in": "no hay horas en las que trabajar",
    "it is too far away to be told": "queda demasiado lejos para saberlo",
    "Safe by {date}: four chances in five.": "Seguro para el {date}: cuatro probabilidades de cinco.",
    "The chance of the promised date is {chance}.": "La probabilidad de la fecha prometida es {chance}.",
    "Likely {date}": "Probable: {date}",
    "No episode gives hours yet, so the work week is taken as promised.": (
        "Ningún episodio da horas todavía, así que la semana de trabajo se toma como prometida."
    ),
    "This rests on {n} weeks, in which {rate} of the promised hours were worked.": {
        "one": "Se apoya en {n} semana, en la que se trabajó el {rate} de las horas prometidas.",
        "many": "Se apoya en {n} de semanas, en las que se trabajó el {rate} de las horas prometidas.",
        "other": "Se apoya en {n} semanas, en las que se trabajó el {rate} de las horas prometidas.",
    },
    "In {n} weeks nobody wrote hours down.": {
        "one": "En {n} semana nadie anotó horas.",
        "many": "En {n} de semanas nadie anotó horas.",
        "other": "En {n} semanas nadie anotó horas.",
    },
    "Was it on budget?": "¿Se cumplió el presupuesto?",
    "Nothing was planned": "No había nada previsto",
    "The whole build came to {cost}, against {plan} planned.": "Toda la obra costó {cost}; lo previsto eran {plan}.",
    "The whole build came to {cost}.": "Toda la obra costó {cost}.",
    "No phase has a plan to hold its cost against.": "Ninguna fase tiene un plan con el que comparar su coste.",
    "Is it ready?": "¿Está listo?",
    (
        "Nobody said how far {phases} got, and more hours than the highest estimate are spent there: it can only get "
        "later."
    ): ("Nadie dijo por dónde va {phases}, y ya lleva más horas que la estimación más alta: solo puede ser más tarde."),
    "Outside every phase": "Fuera de toda fase",
    "Nothing was planned for it.": "No había nada previsto para ella.",
    "More than was kept": "Por encima de lo reservado",
    "Finished": "Terminado",
    "finished": "terminado",
    "finished {date}": "terminado el {date}",
    "Finished {date}": "Terminado el {date}",
    "Done, and ready {date} when the last wait is over": "Todo hecho; listo el {date} cuando acabe la última espera",
    "{finished}, on the promised day": "{finished}, el día prometido",
    "{finished}, {n} days before the promise": {
        "one": "{finished}, {n} día antes de lo prometido",
        "many": "{finished}, {n} de días antes de lo prometido",
        "other": "{finished}, {n} días antes de lo prometido",
    },
    "{finished}, {n} days after the promise": {
        "one": "{finished}, {n} día después de lo prometido",
        "many": "{finished}, {n} de días después de lo prometido",
        "other": "{finished}, {n} días después de lo prometido",
    },
    "job cost, {amount}": "coste de obra, {amount}",
    "What it was to cost, what it did cost, and when it was ready": (
        "Lo que iba a costar, lo que costó y cuándo estuvo lista"
    ),
    "Nothing is planned yet": "Todavía no hay nada previsto",
    "That day is past.": "Ese día ya pasó.",
    "As far as costs are known: {verdict}": "Por lo que se sabe de los costes: {verdict}",
    "As far as costs are known, no phase is over": "Por lo que se sabe de los costes, ninguna fase se pasa del plan",
    "What is to blame?": "¿A qué se debe?",
    "Nothing: no phase is over": "A nada: ninguna fase pasa del plan",
    "{phase}: {verdict}": "{phase}: {verdict}",
    "{name}: {verdict}.": "{name}: {verdict}.",
    "Not planned at all: {amount}, such as {names}.": "Sin prever: {amount}, por ejemplo {names}.",
    "Phases side by side": "Las fases, lado a lado",
    "Job cost by phase, in {currency}": "Coste de obra por fase, en {currency}",
    "Phase": "Fase",
    "Level": "Nivel",
    "Job cost so far": "Coste hasta hoy",
    "Over or under": "De más o de menos",
    "The whole build": "Toda la obra",
    "Taken by overruns": "Tomado por sobrecostes",
    "Left of it": "Queda",
    "Against the plan, over time": "Frente al plan, con el tiempo",
    "Calendar": "Calendario",
    "What was dearer, and what there was more of": "Lo que salió más caro y de lo que hizo falta más",
    "Every planned line stands on the page of its phase.": "Cada partida prevista está en la página de su fase.",
    "The lines furthest from their plan, in {currency}": "Las partidas más alejadas del plan, en {currency}",
    "Still wanted": "Se busca todavía",
    "Still wanted: to be found, not bought": "Se busca todavía: para encontrar, no para comprar",
    "By": "Para el",
    "How the forecast moved": "Cómo se movió la proyección",
    "How the forecast moved, in {currency}": "Cómo se movió la proyección, en {currency}",
    "A mark without a number is an episode too.": "Una marca sin número también es un episodio.",
    "The numbers under the line are episodes.": "Los números bajo la línea son episodios.",
    "The forecast after each episode": "La proyección tras cada episodio",
    "The forecast cost went from {first} to {last}; the plan is {plan}.": (
        "La proyección pasó de {first} a {last}; el plan es de {plan}."
    ),
    "forecast, {amount}": "proyección, {amount}",
    "plan, {amount}": "plan, {amount}",
    "plan {amount}": "plan {amount}",
    "plan, {amount} by {date}": "plan, {amount} para el {date}",
    "After": "Tras",
    "Likely": "Probable",
    "Safe": "Seguro",
    "Chance of the promised date": "Probabilidad de la fecha prometida",
    "likely {likely}, safe {safe}": "probable: {likely}, seguro: {safe}",
    "Earned value": "Valor ganado",
    (
        "For those who know the method. These estimates are not the forecast above: they carry the rate so far "
        "over everything that is left."
    ): (
        "Para quien conozca el método. Estas estimaciones no son la proyección de arriba: extienden el ritmo "
        "actual a todo lo que falta."
    ),
    "The build has one rate of its own, so its estimates are not the sum of those of the phases.": (
        "La obra tiene un ritmo propio; por eso sus estimaciones no son la suma de las de las fases."
    ),
    "At this rate the whole build comes to {amount}. Against the plan: {verdict}.": (
        "A este ritmo, toda la obra costará {amount}; frente al plan: {verdict}."
    ),
    "At this rate the whole build comes to about {amount}. Against the plan: {verdict}.": (
        "A este ritmo, toda la obra costará unos {amount}; frente al plan: {verdict}."
    ),
    "Earned value, in {currency}; here a variance above zero and an index above 1 are favourable": (
        "Valor ganado, en {currency}; aquí una variación positiva y un índice mayor que 1 son favorables"
    ),
    "Budget (BAC)": "Presupuesto (BAC)",
    "Earned (EV)": "Valor ganado (EV)",
    "Actual (AC)": "Coste real (AC)",
    "Cost variance (CV)": "Variación de coste (CV)",
    "Cost index (CPI)": "Índice de coste (CPI)",
    "At completion, at this rate (EAC)": "Al final, a este ritmo (EAC)",
    "At completion, rest as planned (EAC)": "Al final, el resto según lo previsto (EAC)",
    "To complete, at this rate (ETC)": "Falta por gastar, a este ritmo (ETC)",
    "Variance at completion (VAC)": "Variación al final (VAC)",
    "Index needed for the budget (TCPI)": "Índice necesario para el presupuesto (TCPI)",
    "The date hangs on {phases}.": "La fecha depende de {phases}.",
    "{phase} has {n} weekends of slack.": {
        "one": "{phase} tiene {n} fin de semana de holgura.",
        "many": "{phase} tiene {n} de fines de semana de holgura.",
        "other": "{phase} tiene {n} fines de semana de holgura.",
    },
    "The phases on the calendar": "Las fases en el calendario",
    "The calendar as a table": "El calendario como tabla",
    "{phases}; {dates}.": "{phases}; {dates}.",
    "as of {date}": "a {date}",
    "promised for {date}": "prometido para el {date}",
    "likely {date}": "probable: {date}",
    "safe {date}": "seguro: {date}",
    "worked": "trabajado",
    "to come, as forecast": "por venir, según la proyección",
    "waiting": "espera",
    "days worked on": "días trabajados",
    "Begun": "Inicio",
    "Done": "Fin",
    "Wait after it": "Espera después",
    "Weekends of slack": "Fines de semana de holgura",
    "The finish hangs on it in": "El final depende de ella en",
    "as forecast": "según la proyección",
    "Line": "Partida",
    "To be used": "Por usar",
    "Used": "Usado",
    "Because": "Motivo",
    "not planned": "sin prever",
    "not bought": "sin comprar",
    "cheaper than planned, {amount}": "más barato que lo previsto, {amount}",
    "dearer than planned, {amount}": "más caro que lo previsto, {amount}",
    "less of it than planned, {amount}": "menos cantidad que la prevista, {amount}",
    "more of it than planned, {amount}": "más cantidad que la prevista, {amount}",
    "job cost so far, {amount}": "coste de obra hasta hoy, {amount}",
    "Job cost rose to {amount} by {date}.": "El coste de obra subió a {amount} hasta el {date}.",
    "The plan is {amount}.": "El plan es de {amount}.",
    "The forecast is {amount}.": "La proyección es de {amount}.",
    "Job cost over the dates, against the plan": "Coste de obra por fechas, frente al plan",
    "Phase {number} of {all}, {status}": "Fase {number} de {all}, {status}",
    "Lines that belong to no phase": "Partidas que no pertenecen a ninguna fase",
    "planned {likely}, from {low} to {high}": "previsto {likely}, de {low} a {high}",
    "{phase} in figures": "{phase} en cifras",
    "{phase}: {amount} used up so far": "{phase}: {amount} consumidos hasta hoy",
    "used up, of {plan} planned": "consumidos, de {plan} previstos",
    "used up": "consumidos",
    "Every line of {phase}, in {currency}, with tax and delivery": (
        "Todas las partidas de {phase}, en {currency}, con impuestos y transporte"
    ),
    "Job cost against the plan, in {currency}": "Coste de obra frente al plan, en {currency}",
    "This phase was planned as one amount, so it is compared as a whole.": (
        "Esta fase se previó como un solo importe, así que se compara entera."
    ),
    "Nothing has been entered for this phase yet.": "Todavía no se ha anotado nada para esta fase.",
    "Planned and actual, line by line": "Previsto y real, partida por partida",
    "How much was worked out": "Cuánto salió al calcular",
    "what is left of the planned amount": "lo que queda del importe previsto",
    "Shopping list": "Lista de la compra",
    (
        "Whole packages, less what was bought already and what is in stock. Check sizes and quantities against "
        "your own drawings."
    ): (
        "Paquetes enteros, menos lo ya comprado y lo que hay en existencias. Comprueba medidas y cantidades con "
        "tus propios planos."
    ),
    "To buy for {phase}, prices as planned, in {currency}": (
        "Por comprar para {phase}, a los precios previstos, en {currency}"
    ),
    "Buy": "Comprar",
    "About": "Unos",
    "outside every phase": "fuera de toda fase",
    "nothing planned": "nada previsto",
    "nothing to read yet": "nada que leer todavía",
    "{verdict}, as forecast": "{verdict}, según la proyección",
    "under way": "en marcha",
    "under way, {part}": "en marcha, {part}",
    "under way, nobody said how far": "en marcha, nadie dijo cuánto",
    "not begun": "sin empezar",
    "Level of {phase}": "Nivel: {phase}",
    "under": "menos",
    "over": "más",
    "Spent so far, on a tape": "Gastado hasta hoy, en una cinta métrica",
    "A measuring tape pulled out to {spent}; its case stands at the plan, {plan}.": (
        "Una cinta métrica extendida hasta {spent}; su caja está en el plan, {plan}."
    ),
    "A measuring tape pulled out to {spent}; there is no plan to set its case at.": (
        "Una cinta métrica extendida hasta {spent}; no hay plan donde poner su caja."
    ),
}
