"""Spanish: the ledger, its terms, sources, tables and receipts. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

COSTS: Catalogue = {
    "Spent": "Gastado",
    "Paid": "Pagado",
    "Job cost": "Coste de obra",
    "In stock": "En existencias",
    "Reusable": "Reutilizable",
    "Elsewhere": "Para otras cosas",
    "Brought in": "Aportado",
    "Replacement cost": "Coste de reposición",
    "Saved": "Ahorrado",
    "Rework": "Trabajo rehecho",
    "Estimated": "Estimado",
    "Planned": "Previsto",
    "Forecast": "Proyección",
    "Travel": "Desplazamientos",
    "Deposits out": "Fianzas pendientes",
    "Contingency": "Imprevistos",
    (
        "What this build has taken so far: what was paid, and leftovers of earlier jobs at what they cost then, "
        "less what went into something else. What is on the shelf or will be used again is still in it."
    ): (
        "Lo que esta obra se ha llevado hasta hoy: lo pagado y los restos de trabajos anteriores a lo que "
        "costaron entonces, menos lo que fue a otra cosa. Lo que está en existencias o se volverá a usar sigue "
        "dentro."
    ),
    (
        "Money that left the pocket: the price with its share of the receipt's tax and delivery, less discounts "
        "and refunds."
    ): (
        "El dinero que salió del bolsillo: el precio con su parte de impuestos y transporte del recibo, menos "
        "descuentos y devoluciones."
    ),
    (
        "The part of what was spent that this build used up. Leftovers on the shelf and things that will serve "
        "again are not in it, because they are not gone. The plan is on the same footing."
    ): (
        "La parte de lo gastado que esta obra ha consumido. Los restos en existencias y lo que volverá a servir "
        "no están, porque no se han perdido. El plan cuenta igual."
    ),
    (
        "Leftovers still on the shelf, at what they cost with tax and delivery. They become job cost on the day "
        "they are used."
    ): (
        "Restos que siguen guardados, a lo que costaron con impuestos y transporte. Pasan a coste de obra el día "
        "en que se usan."
    ),
    "The part that will serve other jobs, or this one again: form boards, props, a ladder.": (
        "La parte que servirá en otros trabajos, o de nuevo en este: tablas de encofrado, puntales, una escalera."
    ),
    "The part of a shared purchase that went into something else.": (
        "La parte de una compra compartida que fue a otra cosa."
    ),
    "Leftovers of an earlier job, at what they cost then, on the day this build draws them.": (
        "Restos de un trabajo anterior, a lo que costaron entonces, el día en que esta obra los toma."
    ),
    "What the same things would cost somebody who has to buy them new, or hire them.": (
        "Lo que las mismas cosas costarían a quien tuviera que comprarlas nuevas o alquilarlas."
    ),
    "Replacement cost less job cost and what is reusable, over the lines whose replacement cost is known.": (
        "El coste de reposición menos el coste de obra y lo reutilizable, en las partidas cuya reposición se conoce."
    ),
    "Job cost of doing something twice.": "El coste de hacer algo dos veces.",
    "Job cost of the lines whose figures are a judgement and not on a paper.": (
        "El coste de las partidas cuyas cifras son una estimación y no constan en un papel."
    ),
    "The budget, with tax inside, on the same footing as job cost.": (
        "El presupuesto, con impuestos, contado igual que el coste de obra."
    ),
    (
        "Job cost expected at the end. A phase that is done counts what it cost; one not begun, what was "
        "planned; one under way, what it cost so far and what its planned lines still lack."
    ): (
        "El coste de obra que se espera al final. Una fase terminada cuenta por lo que costó; una sin empezar, "
        "por lo previsto; una en marcha, por lo que lleva y lo que aún falta a sus partidas previstas."
    ),
    "Unpaid hours at the journal's rate for an hour. It is in no total.": (
        "Horas sin pagar, a la tarifa por hora de este diario. No está en ningún total."
    ),
    "Journeys at the journal's rate. It is in no total.": (
        "Viajes a la tarifa de este diario. No está en ningún total."
    ),
    "Paid out and owed back. Outside what was paid while they are out.": (
        "Entregadas y por recuperar. Fuera de lo pagado mientras están pendientes."
    ),
    "The sum over all episodes up to and including this one, in order of date.": (
        "La suma de todos los episodios hasta este incluido, por orden de fecha."
    ),
    "Kept apart for overruns and never inside a phase. What the overruns of all phases take of it is shown.": (
        "Se guarda aparte para los sobrecostes y nunca dentro de una fase. Se muestra lo que toman los "
        "sobrecostes de todas las fases."
    ),
    "bought": "comprado",
    "secondhand": "de segunda mano",
    "salvaged": "recuperado",
    "gift": "regalado",
    "own": "propio",
    "borrowed": "prestado",
    "hired": "alquilado",
    "unpaid work": "trabajo sin pagar",
    "paid work": "trabajo pagado",
    "paid": "pagado",
    "returned": "devuelto",
    "sold": "vendido",
    "spoiled": "echado a perder",
    "used again": "usado de nuevo",
    "taken from stock": "tomado de existencias",
    "fee": "gasto",
    "travel": "desplazamiento",
    "What": "Qué",
    "How many": "Cuánto",
    "How much": "Cuánto",
    "Where from": "De dónde",
    "Receipt": "Recibo",
    "Receipts": "Recibos",
    "no. {number}": "n.º {number}",
    "paid for before": "ya pagado antes",
    "{amount}, the rest of {paid} went elsewhere": "{amount}, el resto de {paid} fue a otra parte",
    "Taken from stock": "Tomado de existencias",
    "Used again": "Usado otra vez",
    "Dearer than new by": "Más caro que nuevo en",
    "Came back": "Devuelto",
    "{amount} came back": "volvieron {amount}",
    "more than the same things would cost new; new they are {amount}": (
        "más de lo que costarían nuevas las mismas cosas; nuevas son {amount}"
    ),
    "not priced": "sin precio",
    "Not priced": "Sin precio",
    "not valued": "sin valorar",
    "Not valued": "Sin valorar",
    "{name}, at least": "{name}, al menos",
    "From {where}": "Procede de: {where}",
    "an earlier job": "un trabajo anterior",
    "Worth an hour: {basis}": "Valor por hora: {basis}",
    "price {amount}": "precio {amount}",
    "discount {amount}": "descuento {amount}",
    "tax {amount}": "impuestos {amount}",
    "delivery {amount}": "transporte {amount}",
    "a judgement, not on a paper": "estimado, sin papel",
    "{figures}: a judgement, not on a paper": "{figures}: estimado, sin papel",
    "how many": "cantidad",
    "price of one": "precio de uno",
    "what it cost": "coste",
    "how much was used": "cantidad usada",
    "the part for this build": "la parte de esta obra",
    "the part that serves again": "la parte que servirá otra vez",
    "how often it serves": "cuántas veces sirve",
    "what it would cost new": "lo que costaría nuevo",
    "fuel": "combustible",
    "how much went back": "cuánto se devolvió",
    "what came back for it": "lo que se devolvió por ello",
    "done twice": "hecho dos veces",
    "Done twice": "Hecho dos veces",
    "what it cost is not known": "no se sabe lo que costó",
    "what it would cost new is not known": "no se sabe lo que costaría nuevo",
    "serves {uses} times": "sirve {uses} veces",
    "paid as {amount}": "pagado como {amount}",
    "{quantity} went back for {amount}": "{quantity} devueltos por {amount}",
    "size {size}": "medidas {size}",
    "deposit {amount}, not in what was paid": "fianza {amount}, no está en lo pagado",
    "deposit back {amount}": "fianza devuelta {amount}",
    "no phase": "sin fase",
    "No phase": "Sin fase",
    "Every line item of the build": "Todas las partidas de la obra",
    "Every line, in {currency}, with tax and delivery": (
        "Todas las partidas, en {currency}, con impuestos y transporte"
    ),
    "spent so far, in {n} lines": {
        "one": "gastados hasta hoy, en {n} partida",
        "many": "gastados hasta hoy, en {n} de partidas",
        "other": "gastados hasta hoy, en {n} partidas",
    },
    "{n} lines, all of them": {
        "one": "{n} partida, todas",
        "many": "{n} de partidas, todas",
        "other": "{n} partidas, todas",
    },
    "{n} lines": {"one": "{n} partida", "many": "{n} de partidas", "other": "{n} partidas"},
    "Every line": "Todas las partidas",
    "All lines": "Todas las partidas",
    "Lines": "Partidas",
    "Choose lines": "Elegir partidas",
    "Words in it": "Palabras que contiene",
    "all phases": "todas las fases",
    "everywhere": "de todas partes",
    "Nobody knows what these cost, so every total above them says “at least”.": (
        "Nadie sabe lo que costaron, así que todo total por encima dice «al menos»."
    ),
    "Nobody knows what these would cost new, so they are in no figure of what was saved.": (
        "Nadie sabe lo que costarían nuevas, así que no están en ninguna cifra de lo ahorrado."
    ),
    "Receipts, in {currency}": "Recibos, en {currency}",
    "Goods": "Artículos",
    "Discount": "Descuento",
    "Tax": "Impuestos",
    "Delivery": "Transporte",
    "Total": "Total",
    "in the prices": "dentro de los precios",
    "{tax}, in the prices": "{tax}, dentro de los precios",
    "at least: a line has no price": "al menos: una partida no tiene precio",
    "as on the paper": "como en el papel",
    "saved, of {amount} that the same things would cost new": (
        "ahorrados, de {amount} que costarían las mismas cosas nuevas"
    ),
    "Where things came from, what was saved and what is left": (
        "De dónde vino cada cosa, lo que se ahorró y lo que queda"
    ),
    "By source": "Por procedencia",
    "What was paid, by where things came from": "Lo pagado, por procedencia",
    "What was paid, by where things came from.": "Lo pagado, por procedencia.",
    "By where things came from, in {currency}": "Por procedencia, en {currency}",
    "Per area, year and hour": "Por superficie, año y hora",
    "Job cost per area": "Coste de obra por superficie",
    "Job cost per year of service": "Coste de obra por año de uso",
    "Job cost per hour worked": "Coste de obra por hora trabajada",
    "What is left": "Lo que queda",
    "Nothing is left on the shelf.": "No queda nada en existencias.",
    "In stock: leftovers on the shelf": "En existencias: restos en el estante",
    "Leftovers of earlier jobs, not drawn and in no total": (
        "Restos de trabajos anteriores, sin tomar y en ningún total"
    ),
    "Bought to keep: what will serve again": "Comprado para quedarse: lo que volverá a servir",
    "Worth, at cost": "Valor, al coste",
    "Together": "En total",
    "Machines and tools": "Máquinas y herramientas",
    "Machines and tools it took": "Máquinas y herramientas que hicieron falta",
    "Work": "Trabajo",
    "No hours have been written down.": "No se ha anotado ninguna hora.",
    "What doing it twice cost": "Lo que costó hacerlo dos veces",
    "Doing it twice": "Hecho dos veces",
    "Own hours": "Horas propias",
    "Helpers' hours": "Horas de ayudantes",
    "Paid labour": "Mano de obra pagada",
    "in job cost": "en el coste de obra",
    "in no total": "en ningún total",
    "{n} lines whose price is not known, so every total says “at least”": {
        "one": "{n} partida de precio desconocido, así que cada total dice «al menos»",
        "many": "{n} de partidas de precio desconocido, así que cada total dice «al menos»",
        "other": "{n} partidas de precio desconocido, así que cada total dice «al menos»",
    },
    "{amount} that went into something else": "{amount} que fueron a otra cosa",
    "Unpaid work: {hours}": "Trabajo sin pagar: {hours}",
    "The use of own tools, on {n} lines": {
        "one": "El uso de herramientas propias, en {n} partida",
        "many": "El uso de herramientas propias, en {n} de partidas",
        "other": "El uso de herramientas propias, en {n} partidas",
    },
    "Deposits of {amount} that are still out": "Fianzas de {amount} todavía pendientes",
    "Leftovers of earlier jobs that this build has not drawn": (
        "Restos de trabajos anteriores que esta obra no ha tomado"
    ),
    "What cost most": "Lo que más costó",
    "What cost most, in {currency}": "Lo que más costó, en {currency}",
    "All materials, for copying": "Todos los materiales, para copiar",
    "The whole list, with what went in": "La lista entera, con lo que se usó",
}
