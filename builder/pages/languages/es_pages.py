"""Spanish: what stands round every page, home, episodes, feed, and what yours would cost. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

PAGES: Catalogue = {
    "Home": "Inicio",
    "Ledger": "Cuentas",
    "Plan": "Plan",
    "Sources": "Procedencia",
    "Yours": "El tuyo",
    "Workings": "Cálculos",
    "Figures as data": "Cifras como datos",
    "Ledger as a table": "Cuentas como tabla",
    "Feed": "Canal de novedades",
    "Pages": "Páginas",
    "Skip to the page": "Saltar al contenido",
    (
        "This is an account of how one person built it, not a design and not advice: check your local code and "
        "permits, and ask a licensed professional before you dig, pour, wire or climb."
    ): (
        "Aquí se cuenta cómo lo construyó una persona; no es un proyecto ni un consejo. Comprueba las normas y "
        "permisos de tu zona y pregunta a un profesional titulado antes de cavar, hormigonar, cablear o subirte."
    ),
    "Prices were paid on {day}, in {currency}, with tax and delivery.": (
        "Los precios se pagaron el {day}, en {currency}, con impuestos y transporte."
    ),
    "Prices were paid from {first} to {last}, in {currency}, with tax and delivery.": (
        "Los precios se pagaron del {first} al {last}, en {currency}, con impuestos y transporte."
    ),
    "Not here": "Aquí no",
    "There is no page at this address": "No hay ninguna página en esta dirección",
    "There is no page at this address. It may have been renamed.": (
        "No hay ninguna página en esta dirección. Quizá haya cambiado de nombre."
    ),
    "To the first page": "A la primera página",
    ":": ":",
    ";": ";",
    "{name}: {value}": "{name}: {value}",
    "{term}: what it is": "{term}: qué es",
    "Newest episode": "Último episodio",
    "No episode has been written yet.": "Todavía no hay ningún episodio escrito.",
    "Phases": "Fases",
    "The bubble slides to the side that is over.": (
        "Si una fase pasa del plan, la burbuja va a la derecha; si queda por debajo, a la izquierda."
    ),
    "Costs are job cost: what is still on the shelf or will be used again is not in them.": (
        "Los importes son el coste de obra: lo que sigue en existencias o se volverá a usar no está incluido."
    ),
    "{amount} of {plan}": "{amount} de {plan}",
    "Cost over time": "El coste con el tiempo",
    "Each step is an episode.": "Cada escalón es un episodio.",
    "Each step is an episode. The ring is where the build is forecast to end.": (
        "Cada escalón es un episodio. El anillo marca dónde acabará la obra según la proyección."
    ),
    "All episodes": "Todos los episodios",
    "What is not in this total": "Lo que no está en este total",
    "running total {amount}": "total acumulado {amount}",
    "spent so far": "gastados hasta hoy",
    "spent so far, {job_cost} of it used up": "gastados hasta hoy, {job_cost} de ellos consumidos",
    "How far": "Avance",
    "{done} of {n} phases done": {
        "one": "{done} de {n} fase terminada",
        "many": "{done} de {n} de fases terminadas",
        "other": "{done} de {n} fases terminadas",
    },
    "now: {phases}": "ahora: {phases}",
    "Promised for": "Prometido para el",
    "Own work": "Trabajo propio",
    "Episode {number}": "Episodio {number}",
    "Episode {number}: {title}": "Episodio {number}: {title}",
    "episode {number}": "episodio {number}",
    "Episode": "Episodio",
    "Episodes": "Episodios",
    "This episode in figures": "Este episodio en cifras",
    "The video": "El vídeo",
    "Watch it on its own site": "Verlo en su propio sitio",
    "What it cost": "Lo que ha costado",
    "This episode cost nothing.": "Este episodio no ha costado nada.",
    "Running total": "Total acumulado",
    "Snags": "Pendientes",
    "Lessons": "Lecciones",
    "Episodes before and after": "Episodios anterior y siguiente",
    "Before": "Anterior",
    "Next": "Siguiente",
    "What this episode took, in {currency}, with tax and delivery": (
        "Lo que se llevó este episodio, en {currency}, con impuestos y transporte"
    ),
    "This episode took": "Este episodio se llevó",
    "This episode": "Este episodio",
    "{n} prices are not known": {
        "one": "{n} precio no se conoce",
        "many": "{n} de precios no se conocen",
        "other": "{n} precios no se conocen",
    },
    "Hours": "Horas",
    "{n} people": {"one": "{n} persona", "many": "{n} de personas", "other": "{n} personas"},
    "none written down": "ninguna anotada",
    "Helpers": "Ayudantes",
    "Weather": "Tiempo",
    "{part} done": "{part} hecho",
    "done": "terminada",
    "Spent before": "Gastado antes",
    "Spent so far": "Gastado hasta hoy",
    "Paid and brought in, {in_all}, are as much as job cost, in stock, reusable and elsewhere together.": (
        "Lo pagado y lo aportado, {in_all} en total, suman lo mismo que coste de obra, en existencias, "
        "reutilizable y para otras cosas juntos."
    ),
    "done in episode {number}": "resuelto en el episodio {number}",
    "from episode {number}": "del episodio {number}",
    "I said {said} for “{name}”; the ledger has {ledger}. {why}": (
        "Dije {said} para «{name}»; las cuentas dicen {ledger}. {why}"
    ),
    "{own} this episode, {running} so far.": "{own} en este episodio, {running} hasta hoy.",
    "An account of how one person built it, not advice.": (
        "El relato de cómo lo construyó una persona, no un consejo."
    ),
    "What yours would cost": "Lo que costaría el tuyo",
    "The same build at your prices, with your machines and your luck": (
        "La misma obra a tus precios, con tus máquinas y tu suerte"
    ),
    "Three answers": "Tres respuestas",
    "As I did it": "Como lo hice yo",
    "what this build has taken so far": "lo que esta obra se ha llevado hasta hoy",
    "With half the luck": "Con la mitad de suerte",
    "each thing I found, at half the way to its price new": "cada hallazgo, a medio camino de su precio nuevo",
    "Everything bought new and hired": "Todo comprado nuevo o alquilado",
    "starting from nothing, selling no leftovers": "empezando de cero, sin vender sobrantes",
    "{n} lines have no price: only what is known of them is in these figures.": {
        "one": "{n} partida no tiene precio: solo lo que se sabe de ella está en estas cifras.",
        "many": "{n} de partidas no tienen precio: solo lo que se sabe de ellas está en estas cifras.",
        "other": "{n} partidas no tienen precio: solo lo que se sabe de ellas está en estas cifras.",
    },
    "{n} lines could not be valued: they stand at what they cost here.": {
        "one": "{n} partida no se pudo valorar: cuenta por lo que costó aquí.",
        "many": "{n} de partidas no se pudieron valorar: cuentan por lo que costaron aquí.",
        "other": "{n} partidas no se pudieron valorar: cuentan por lo que costaron aquí.",
    },
    "Your choices": "Tus opciones",
    "Machines you own or can borrow": "Máquinas que tienes o te prestan",
    "What you can find instead of buying it new": "Lo que puedes encontrar en vez de comprarlo nuevo",
    "{source}: {amount} more when it has to be bought": "{source}: {amount} más si hay que comprarlo",
    "{source}: {amount} less when it is bought new": "{source}: {amount} menos si se compra nuevo",
    "{source}: nobody knows how much more when it has to be bought": (
        "{source}: nadie sabe cuánto más si hay que comprarlo"
    ),
    "all of it": "todo",
    "half of it": "la mitad",
    "none of it": "nada",
    "What serves again": "Lo que vuelve a servir",
    "I will use it again, so {amount} of it is not this build's": (
        "Lo volveré a usar, así que {amount} no son de esta obra"
    ),
    "Prices, size and your hours": "Precios, tamaño y tus horas",
    "Prices where you are": "Precios donde vives",
    "Size, for the materials": "Tamaño, para los materiales",
    "Your hour is worth (for {hours})": "Tu hora vale (por {hours})",
    "Yours would cost": "El tuyo costaría",
    "The address of this page keeps your choices: copy it to share the answer.": (
        "La dirección de esta página guarda tus opciones: cópiala para compartir la respuesta."
    ),
    "With scripts on, this page reprices the lines with your own choices.": (
        "Con los scripts activados, esta página recalcula las partidas con tus propias opciones."
    ),
    "What such a figure cannot know": "Lo que una cifra así no puede saber",
    (
        "It cannot know your ground, your local code, your prices or your luck. It reprices the lines of this "
        "build; it does not design yours. Sizes, depths and wiring are for local code and licensed people to say."
    ): (
        "No conoce tu terreno, tus normas, tus precios ni tu suerte. Recalcula las partidas de esta obra; no "
        "proyecta la tuya. Medidas, profundidades e instalación eléctrica las dicen las normas locales y gente "
        "titulada."
    ),
    "Every phase is done: the whole build on one page": "Todas las fases terminadas: toda la obra en una página",
    "What it cost in the end, and what was learnt": "Lo que costó al final y lo que se aprendió",
    "spent from {first} to {last}": "gastados del {first} al {last}",
    "Unpaid hours": "Horas sin pagar",
    "What I would do otherwise": "Lo que haría de otra manera",
}
